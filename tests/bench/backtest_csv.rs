//! Measures the strength belief on simulated logs.
//!
//! `backtest_csv predict DIR [--published]` reads `DIR/sets.csv` and `DIR/points.csv`, writes `DIR/pred.csv`.
//! `backtest_csv tune [--vary NAME]… DIR…` moves the named constants (all, if none is named) one at a time while that
//! lowers the scores. `backtest_csv score [--published] [--set NAME=VALUE]… DIR…` scores several folders against their `truth.csv`; folders
//! whose names end in the same `-word` make one row.

#![allow(
    clippy::print_stdout,
    clippy::panic,
    clippy::expect_used,
    clippy::unwrap_used,
    missing_docs
)]

mod logs;
mod plain;
mod scores;
mod tune;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use logs::{Series, Target};
use rungwright::strength::{Belief, Coverage, Filter, Prior, TrainingDay, Tuning};
use rungwright::units::{Mass, Share, SystemLoad};
use scores::{Chances, Errors};

fn main() {
    let mut tuning = Tuning::default();
    let mut dirs: Vec<PathBuf> = Vec::new();
    let mut names: Vec<String> = Vec::new();
    let mut args = std::env::args().skip(1);
    let command = args.next().unwrap_or_default();
    while let Some(arg) = args.next() {
        match arg.as_str() {
            "--published" => tuning = Tuning::published(),
            "--set" => tuning = with(&tuning, &args.next().expect("NAME=VALUE after --set")),
            "--from" => {
                let text = std::fs::read_to_string(args.next().expect("FILE after --from")).unwrap();
                tuning = serde_json::from_str(&text).unwrap();
            }
            "--vary" => names.push(args.next().expect("NAME after --vary")),
            _ => dirs.push(arg.into()),
        }
    }
    match command.as_str() {
        "predict" => dirs.iter().for_each(|dir| predict(dir, &tuning)),
        "score" => score(&dirs, &tuning),
        "tune" => tune::tune(&dirs, tuning, &names),
        _ => panic!("say predict, score or tune"),
    }
}

/// A tuning with one constant changed, by its name; dots reach inside.
fn with(tuning: &Tuning, change: &str) -> Tuning {
    let (name, value) = change.split_once('=').expect("NAME=VALUE");
    let mut json = serde_json::to_value(tuning).unwrap();
    let pointer = format!("/{}", name.replace('.', "/"));
    *json
        .pointer_mut(&pointer)
        .unwrap_or_else(|| panic!("no constant {name}")) = serde_json::from_str(value).unwrap();
    serde_json::from_value(json).unwrap()
}

/// Calls `answer` with the belief at each of the series' points, in order of the date it is as of.
fn replay(
    key: &Series,
    days: &[TrainingDay],
    tuning: &Tuning,
    points: impl Iterator<Item = (NaiveDate, NaiveDate)>,
    mut answer: impl FnMut((NaiveDate, NaiveDate), Option<Belief>),
) {
    let mut filter = Filter::new(
        Prior::of(&logs::movement_id(&key.1), Share::WHOLE),
        tuning.clone(),
    );
    let side = if tuning.sides_together {
        logs::side(&key.2)
    } else {
        None
    };
    let mut read = 0;
    for (as_of, on) in points {
        while read < days.len() && days[read].date < as_of {
            filter.learn(&days[read]);
            read += 1;
        }
        let belief = filter.belief(side, as_of);
        let ahead = (on - as_of).num_days() as f64;
        answer(
            (as_of, on),
            if ahead > 0.0 {
                belief.map(|b| b.after_training(ahead))
            } else {
                belief
            },
        );
    }
}

fn predict(dir: &Path, tuning: &Tuning) {
    let all = logs::sets(&dir.join("sets.csv"));
    let mut points: BTreeMap<Series, Vec<(NaiveDate, NaiveDate, String)>> = BTreeMap::new();
    for row in logs::rows(&dir.join("points.csv")) {
        let point = (
            logs::date(&row, "as_of"),
            logs::date(&row, "on"),
            row["system_kg"].clone(),
        );
        points.entry(logs::series(&row)).or_default().push(point);
    }
    let mut out = csv::Writer::from_path(dir.join("pred.csv")).unwrap();
    out.write_record([
        "athlete",
        "movement",
        "side",
        "as_of",
        "on",
        "system_kg",
        "system_1rm_kg",
        "log_sd",
        "low50",
        "high50",
        "low80",
        "high80",
        "low95",
        "high95",
        "chance",
    ])
    .unwrap();
    for (key, list) in &mut points {
        list.sort();
        let days = all.days(key, tuning.sides_together);
        let mut index = 0;
        replay(
            key,
            &days,
            tuning,
            list.clone().into_iter().map(|p| (p.0, p.1)),
            |(as_of, on), belief| {
                let load = &list[index].2;
                index += 1;
                let mut record = vec![
                    key.0.clone(),
                    key.1.clone(),
                    key.2.clone(),
                    as_of.to_string(),
                    on.to_string(),
                    load.clone(),
                ];
                match belief {
                    None => record.extend(std::iter::repeat_n(String::new(), 9)),
                    Some(belief) => {
                        record.push(belief.one_rep_max().kg().to_string());
                        record.push(belief.log_sd().to_string());
                        for coverage in [Coverage::Half, Coverage::Eighty, Coverage::NinetyFive] {
                            let band = belief.band(coverage);
                            record.push(band.low.kg().to_string());
                            record.push(band.high.kg().to_string());
                        }
                        let chance = load
                            .parse()
                            .ok()
                            .map(|kg| belief.chance(SystemLoad::new(Mass::from_kg(kg))));
                        record.push(chance.map_or(String::new(), |c| c.to_string()));
                    }
                }
                out.write_record(&record).unwrap();
            },
        );
    }
    out.flush().unwrap();
}

/// Scores of one folder or, as means, of several.
#[derive(Default)]
struct Sheet {
    now: Errors,
    test: Errors,
    later: Errors,
    cold: Errors,
    cold_later: Errors,
    tries: Chances,
    /// Of the first two days: |log error| of the centre, and of the plain e1RM without and with reserve.
    first: [Vec<f64>; 3],
}

impl Sheet {
    fn add(&mut self, target: &Target, belief: &Belief, is_now: bool) {
        let (rm, sd) = (belief.one_rep_max().kg(), belief.log_sd());
        let warm = target.days >= 3;
        if let Some(truth) = target.now {
            if warm { &mut self.now } else { &mut self.cold }.add(truth, rm, sd);
        }
        if let Some(truth) = target.later {
            if warm {
                &mut self.later
            } else {
                &mut self.cold_later
            }
            .add(truth, rm, sd);
        }
        if let (Some(truth), true) = (target.test, warm) {
            self.test.add(truth, rm, sd);
        }
        if let (Some((load, made)), true, true) = (target.attempt, warm, is_now) {
            self.tries
                .add(belief.chance(SystemLoad::new(Mass::from_kg(load))), made);
        }
    }

    fn row(&self) -> Vec<f64> {
        vec![
            self.now.median_abs(),
            self.now.bias(),
            self.now.crps(),
            self.now.covered(),
            self.now.width(),
            self.test.median_abs(),
            self.later.median_abs(),
            self.later.bias(),
            self.later.crps(),
            self.later.covered(),
            self.tries.brier(),
            self.tries.log_loss(),
            self.cold.crps(),
            self.cold.covered(),
            self.cold_later.crps(),
            self.cold_later.covered(),
            size(&self.first[0]),
            size(&self.first[1]),
            size(&self.first[2]),
            scores::mean(&self.first[0]),
            self.first[0].len() as f64,
        ]
    }
}

/// Mean absolute value.
fn size(errors: &[f64]) -> f64 {
    scores::mean(&errors.iter().map(|e| e.abs()).collect::<Vec<_>>())
}

/// Targets by (as of, on).
type Points = BTreeMap<(NaiveDate, NaiveDate), Target>;

/// A folder in memory: each series' days and points.
struct Loaded {
    world: String,
    series: Vec<(Series, Vec<TrainingDay>, Points)>,
}

fn load(dir: &Path, sides_together: bool) -> Loaded {
    let name = dir.file_name().unwrap_or_default().to_string_lossy().into_owned();
    let world = name
        .split_once('-')
        .map_or(name.clone(), |(_, world)| world.to_owned());
    let all = logs::sets(&dir.join("sets.csv"));
    let series = logs::targets(dir, &all)
        .into_iter()
        .map(|(key, points)| {
            let days = all.days(&key, sides_together);
            (key, days, points)
        })
        .collect();
    Loaded { world, series }
}

/// Mean scores of each world.
fn measure(loaded: &[Loaded], tuning: &Tuning) -> BTreeMap<String, Vec<f64>> {
    let mut groups: BTreeMap<String, Vec<Vec<f64>>> = BTreeMap::new();
    for log in loaded {
        let mut sheet = Sheet::default();
        for (key, days, points) in &log.series {
            replay(key, days, tuning, points.keys().copied(), |point, belief| {
                if let Some(belief) = belief {
                    let target = &points[&point];
                    sheet.add(target, &belief, point.0 == point.1);
                    if let Some(truth) = target.first {
                        let own = plain::of_side(days, key);
                        let say = [
                            Some(belief.one_rep_max().kg()),
                            plain::best(&own, point.0, false),
                            plain::best(&own, point.0, true),
                        ];
                        for (list, kg) in sheet.first.iter_mut().zip(say) {
                            list.extend(kg.map(|kg| 100.0 * (kg / truth).ln()));
                        }
                    }
                }
            });
        }
        groups.entry(log.world.clone()).or_default().push(sheet.row());
    }
    let mean = |rows: Vec<Vec<f64>>| {
        (0..rows[0].len())
            .map(|i| rows.iter().map(|r| r[i]).sum::<f64>() / rows.len() as f64)
            .collect()
    };
    groups
        .into_iter()
        .map(|(world, rows)| (world, mean(rows)))
        .collect()
}

fn score(dirs: &[PathBuf], tuning: &Tuning) {
    let loaded: Vec<Loaded> = dirs.iter().map(|dir| load(dir, tuning.sides_together)).collect();
    println!(
        "log        |   MdAPE  bias  CRPS  cov   w |  test | 8wk Md  bias  CRPS  cov | Brier   logl | cold CRPS cov  8wk CRPS cov | days 1-2 |log error| plain +reserve"
    );
    for (group, m) in measure(&loaded, tuning) {
        println!(
            "{group:10} |   {:5.3} {:5.2} {:6.4} {:4.1} {:4.1}| {:5.2} |  {:5.3} {:5.2} {:6.4} {:4.1} | {:.4} {:.4} | {:6.3} {:4.1} {:6.3} {:4.1} | {:5.2} {:5.2} {:5.2} {:5.2} {:3}",
            m[0],
            m[1],
            m[2],
            m[3],
            m[4],
            m[5],
            m[6],
            m[7],
            m[8],
            m[9],
            m[10],
            m[11],
            m[12],
            m[13],
            m[14],
            m[15],
            m[16],
            m[17],
            m[18],
            m[19],
            m[20]
        );
    }
}
