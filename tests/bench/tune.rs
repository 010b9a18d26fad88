//! Tunes constants on simulated logs, one at a time, against the published filter's scores on the same logs.

use std::path::PathBuf;

use rungwright::strength::Tuning;

use crate::{Loaded, load, measure, with};

/// Steps by which a constant is tried, as factors.
const STEPS: [f64; 2] = [1.25, 1.08];

/// Prints each change that lowered the loss.
pub fn tune(dirs: &[PathBuf], mut best: Tuning, names: &[String]) {
    let apart: Vec<Loaded> = dirs.iter().map(|dir| load(dir, false)).collect();
    let base = measure(&apart, &Tuning::published());
    let loaded: Vec<Loaded> = dirs.iter().map(|dir| load(dir, best.sides_together)).collect();
    let loss = |tuning: &Tuning| {
        let mut sum = 0.0;
        for (world, m) in measure(&loaded, tuning) {
            let b = &base[&world];
            // Now counts most; 8 weeks, first days and attempts count too; coverage beyond 78 to 82 % costs. Odd worlds
            // count a third.
            let off = |coverage: f64| ((coverage - 80.0).abs() - 2.0).max(0.0) * 0.01;
            let weight = if ["base", "norir", "dirty"].contains(&world.as_str()) {
                1.0
            } else {
                0.3
            };
            let score = m[2] / b[2] + 0.3 * m[8] / b[8] + 0.1 * m[11] / b[11] + 0.1 * m[12] / b[12];
            sum += weight * (score + off(m[3]) + off(m[9]));
        }
        sum
    };
    let mut least = loss(&best);
    println!("start {least:.5}");
    let all: Vec<String> = if names.is_empty() {
        every_number(&best)
    } else {
        names.to_vec()
    };
    for step in STEPS {
        for name in &all {
            for factor in [step, 1.0 / step] {
                let mut tries = 0;
                loop {
                    let now = number(&best, name);
                    let next = with(&best, &format!("{name}={:?}", now * factor));
                    let here = loss(&next);
                    if here < least - 2e-4 && tries < 6 {
                        println!(
                            "{name} {now:.5} -> {:.5}: {here:.5} ({:+.5})",
                            now * factor,
                            here - least
                        );
                        (best, least) = (next, here);
                        tries += 1;
                    } else {
                        break;
                    }
                }
                if tries > 0 {
                    break;
                }
            }
        }
        println!(
            "step {step}: {least:.5}\n{}",
            serde_json::to_string(&best).unwrap()
        );
    }
}

fn number(tuning: &Tuning, name: &str) -> f64 {
    let json = serde_json::to_value(tuning).unwrap();
    json.pointer(&format!("/{}", name.replace('.', "/")))
        .and_then(serde_json::Value::as_f64)
        .unwrap()
}

fn every_number(tuning: &Tuning) -> Vec<String> {
    let json = serde_json::to_value(tuning).unwrap();
    let mut names = Vec::new();
    for (name, value) in json.as_object().unwrap() {
        match value {
            serde_json::Value::Number(n) if n.as_f64() != Some(0.0) => names.push(name.clone()),
            serde_json::Value::Object(inner) => names.extend(inner.keys().map(|key| format!("{name}.{key}"))),
            _ => {}
        }
    }
    names
}
