//! Values that a record may hold, beyond what its types already refuse.

use crate::logbook::record::{Fact, Load, Record, Set};
use crate::units::{Bodyweight, Height, Mass, Typed};

/// Largest belt load that is read, kg. Common practice, no source.
const MOST_ADDED_KG: f64 = 400.0;

/// Largest measured help that is read, kg. Common practice, no source.
const MOST_ASSISTANCE_KG: f64 = 300.0;

/// Highest pain score on the numerical rating scale from 0.
const WORST_PAIN: u8 = 10;

/// A value that no such record can have.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unsound {
    /// The field that holds it.
    pub field: &'static str,
    /// What is wrong, in words.
    pub what: String,
}

/// Says which value of `record` no such record can have.
///
/// # Errors
/// The first such value.
pub fn check(record: &Record) -> Result<(), Unsound> {
    fact(&record.what)
}

fn fact(what: &Fact) -> Result<(), Unsound> {
    match what {
        Fact::Set(Set { load, bodyweight, .. }) => {
            if let Some(load) = load {
                load_in_range(*load)?;
            }
            bodyweight.map_or(Ok(()), bodyweight_in_range)
        }
        Fact::WeighIn { bodyweight, .. } => bodyweight_in_range(*bodyweight),
        Fact::Pain { score, .. } => hold(*score <= WORST_PAIN, "score", || {
            format!("pain {score} is outside 0 to {WORST_PAIN}")
        }),
        Fact::Profile { height_cm, .. } => match height_cm.map(Height::from_cm) {
            Some(Err(wrong)) => hold(false, "height_cm", || wrong.to_string()),
            _ => Ok(()),
        },
        Fact::Amend { what, .. } => match &**what {
            Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. } => {
                hold(false, "what", || "an amend can only hold a plain fact".to_owned())
            }
            plain => fact(plain),
        },
        _ => Ok(()),
    }
}

fn bodyweight_in_range(bodyweight: Typed) -> Result<(), Unsound> {
    hold(
        Bodyweight::BELIEVED_KG.contains(&bodyweight.mass().kg()),
        "bodyweight",
        || format!("bodyweight {bodyweight} is outside 20 kg to 400 kg"),
    )
}

fn load_in_range(load: Load) -> Result<(), Unsound> {
    let (typed, most, word) = match load {
        Load::Added(typed) => (typed, MOST_ADDED_KG, "added load"),
        Load::Assistance(typed) => (typed, MOST_ASSISTANCE_KG, "assistance"),
    };
    let range = Mass::ZERO..=Mass::from_kg(most);
    hold(range.contains(&typed.mass()), "load", || {
        format!("{word} {typed} is outside 0 to {most} kg")
    })
}

fn hold(holds: bool, field: &'static str, what: impl FnOnce() -> String) -> Result<(), Unsound> {
    if holds {
        Ok(())
    } else {
        Err(Unsound { field, what: what() })
    }
}
