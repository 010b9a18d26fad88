//! Values that a record may hold, beyond what its types already refuse.

use crate::logbook::record::{Fact, Load, Record, Set};
use crate::units::{Height, Mass, Typed};

/// Bodyweights that are read, kg: wider than any athlete. Common practice, no source.
const BODYWEIGHT_KG: std::ops::RangeInclusive<f64> = 20.0..=400.0;

/// Largest belt load that is read, kg. Common practice, no source.
const MOST_ADDED_KG: f64 = 400.0;

/// Largest measured help that is read, kg. Common practice, no source.
const MOST_ASSISTANCE_KG: f64 = 300.0;

/// Highest pain score on the numerical rating scale from 0.
const WORST_PAIN: u8 = 10;

/// Says which value of `record` no such record can have.
///
/// # Errors
/// What is wrong, in words.
pub fn check(record: &Record) -> Result<(), String> {
    fact(&record.what)
}

fn fact(what: &Fact) -> Result<(), String> {
    match what {
        Fact::Set(Set { load, bodyweight, .. }) => {
            if let Some(load) = load {
                load_in_range(*load)?;
            }
            bodyweight.map_or(Ok(()), bodyweight_in_range)
        }
        Fact::WeighIn { bodyweight, .. } => bodyweight_in_range(*bodyweight),
        Fact::Pain { score, .. } if *score > WORST_PAIN => {
            Err(format!("pain {score} is outside 0 to {WORST_PAIN}"))
        }
        Fact::Profile {
            height_cm: Some(cm), ..
        } => Height::from_cm(*cm)
            .map(|_| ())
            .map_err(|wrong| wrong.to_string()),
        Fact::Amend { what, .. } => match &**what {
            Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. } => {
                Err("an amend can only hold a plain fact".to_owned())
            }
            plain => fact(plain),
        },
        _ => Ok(()),
    }
}

fn bodyweight_in_range(bodyweight: Typed) -> Result<(), String> {
    let kg = bodyweight.mass().kg();
    if BODYWEIGHT_KG.contains(&kg) {
        Ok(())
    } else {
        Err(format!("bodyweight {bodyweight} is outside 20 kg to 400 kg"))
    }
}

fn load_in_range(load: Load) -> Result<(), String> {
    let (typed, most, word) = match load {
        Load::Added(typed) => (typed, MOST_ADDED_KG, "added load"),
        Load::Assistance(typed) => (typed, MOST_ASSISTANCE_KG, "assistance"),
    };
    if (Mass::ZERO..=Mass::from_kg(most)).contains(&typed.mass()) {
        Ok(())
    } else {
        Err(format!("{word} {typed} is outside 0 to {most} kg"))
    }
}
