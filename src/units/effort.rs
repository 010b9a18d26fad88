//! What a set was: repetitions or a hold, how it ended, what was left, and on which side.

use serde::{Deserialize, Serialize};

use super::OutOfRange;

/// Completed repetitions, 0 to 1000.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "u16", into = "u16")]
pub struct Reps(u16);

impl TryFrom<u16> for Reps {
    type Error = OutOfRange;
    fn try_from(count: u16) -> Result<Self, OutOfRange> {
        if count <= Self::MOST {
            Ok(Self(count))
        } else {
            Err(OutOfRange::new("reps", count, "0", "1000"))
        }
    }
}

impl From<Reps> for u16 {
    fn from(reps: Reps) -> u16 {
        reps.0
    }
}

impl Reps {
    /// Most that is believed of one set: far above any; it only catches slips.
    pub const MOST: u16 = 1000;

    /// How many.
    pub const fn count(self) -> u16 {
        self.0
    }
}

/// The length of a hold, over 0 to 3600 s.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Seconds(f64);

impl TryFrom<f64> for Seconds {
    type Error = OutOfRange;
    fn try_from(seconds: f64) -> Result<Self, OutOfRange> {
        if seconds > 0.0 && seconds <= Self::MOST {
            Ok(Self(seconds))
        } else {
            Err(OutOfRange::new("hold", seconds, "over 0 s", "3600 s"))
        }
    }
}

impl From<Seconds> for f64 {
    fn from(seconds: Seconds) -> f64 {
        seconds.0
    }
}

impl Seconds {
    /// Longest hold that is believed, s: an hour; it only catches slips.
    pub const MOST: f64 = 3600.0;

    /// Seconds.
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// Whether a movement is counted in repetitions or in seconds held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Measure {
    /// Repetitions.
    Reps,
    /// Seconds held.
    Hold,
}

/// What was done in one set.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Effort {
    /// So many repetitions.
    Reps(Reps),
    /// So many seconds.
    Hold(Seconds),
}

impl Effort {
    /// Repetitions or seconds as a plain number, for comparing sets of one movement.
    pub fn amount(self) -> f64 {
        match self {
            Effort::Reps(reps) => f64::from(reps.count()),
            Effort::Hold(seconds) => seconds.value(),
        }
    }

    /// How it was measured.
    pub fn measure(self) -> Measure {
        match self {
            Effort::Reps(_) => Measure::Reps,
            Effort::Hold(_) => Measure::Hold,
        }
    }
}

/// How a set ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Outcome {
    /// All that was tried was done.
    #[default]
    Done,
    /// One more was tried and failed.
    Missed,
    /// The repetitions or seconds were done, but the movement's standard was not kept.
    Form,
}

/// Repetitions in reserve at a set's end, 0 to 10 in halves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Reserve(u8);

impl Reserve {
    /// Nothing left.
    pub const NONE: Reserve = Reserve(0);

    /// `reps` in reserve.
    ///
    /// # Errors
    /// When it is not within 0 to 10 or not a half.
    pub fn new(reps: f64) -> Result<Self, OutOfRange> {
        (0..=20u8)
            .find(|halves| f64::from(*halves) / 2.0 == reps)
            .map(Self)
            .ok_or_else(|| OutOfRange::new("reserve", reps, "0", "10 in halves"))
    }

    /// Repetitions in reserve.
    pub fn reps(self) -> f64 {
        f64::from(self.0) / 2.0
    }
}

/// A reserve as the person gave it: repetitions in reserve, or an RPE on the scale that counts down from them.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "RawGiven", into = "RawGiven")]
pub enum Given {
    /// Repetitions in reserve (RIR).
    Rir(Reserve),
    /// Rating of perceived exertion, 5 to 10 in halves; RIR = 10 − RPE (Zourdos 2016 scale).
    Rpe(Reserve),
}

#[derive(Serialize, Deserialize)]
enum RawGiven {
    #[serde(rename = "rir")]
    Rir(f64),
    #[serde(rename = "rpe")]
    Rpe(f64),
}

impl TryFrom<RawGiven> for Given {
    type Error = OutOfRange;
    fn try_from(raw: RawGiven) -> Result<Self, OutOfRange> {
        match raw {
            RawGiven::Rir(reps) => Given::rir(reps),
            RawGiven::Rpe(rpe) => Given::rpe(rpe),
        }
    }
}

impl From<Given> for RawGiven {
    fn from(given: Given) -> RawGiven {
        match given {
            Given::Rir(reserve) => RawGiven::Rir(reserve.reps()),
            Given::Rpe(reserve) => RawGiven::Rpe(10.0 - reserve.reps()),
        }
    }
}

impl Given {
    /// So many repetitions in reserve.
    ///
    /// # Errors
    /// As [`Reserve::new`].
    pub fn rir(reps: f64) -> Result<Self, OutOfRange> {
        Reserve::new(reps).map(Given::Rir)
    }

    /// An RPE, kept as typed.
    ///
    /// # Errors
    /// When it is not within 5 to 10 in halves: lower ratings say nothing of reserve.
    pub fn rpe(rpe: f64) -> Result<Self, OutOfRange> {
        let wrong = || OutOfRange::new("RPE", rpe, "5", "10 in halves");
        if !(5.0..=10.0).contains(&rpe) {
            return Err(wrong());
        }
        Reserve::new(10.0 - rpe).map(Given::Rpe).map_err(|_| wrong())
    }

    /// The reserve it stands for.
    pub fn reserve(self) -> Reserve {
        match self {
            Given::Rir(reserve) | Given::Rpe(reserve) => reserve,
        }
    }
}

/// A side of the body.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Side {
    /// Left.
    #[serde(rename = "L")]
    Left,
    /// Right.
    #[serde(rename = "R")]
    Right,
}

impl Side {
    /// `L` or `R`, as files write it.
    pub fn letter(self) -> &'static str {
        match self {
            Side::Left => "L",
            Side::Right => "R",
        }
    }
}

/// One side's climb on a ladder; [`Rail::Both`] where both hands work as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Rail {
    /// The only rail of a ladder whose sides climb together.
    Both,
    /// The left rail.
    Left,
    /// The right rail.
    Right,
}

impl Rail {
    /// Empty, `L` or `R`, as files write it.
    pub fn letter(self) -> &'static str {
        self.side().map_or("", Side::letter)
    }

    /// The side, if this rail is one.
    pub fn side(self) -> Option<Side> {
        match self {
            Rail::Both => None,
            Rail::Left => Some(Side::Left),
            Rail::Right => Some(Side::Right),
        }
    }

    /// Whether something on `side` (none = side not known, or both) touches this rail.
    pub fn touched_by(self, side: Option<Side>) -> bool {
        match (self.side(), side) {
            (Some(own), Some(side)) => own == side,
            _ => true,
        }
    }
}

impl From<Option<Side>> for Rail {
    fn from(side: Option<Side>) -> Rail {
        match side {
            None => Rail::Both,
            Some(Side::Left) => Rail::Left,
            Some(Side::Right) => Rail::Right,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reserve_is_whole_or_half_and_at_most_ten() {
        assert_eq!(Reserve::new(2.5).unwrap().reps(), 2.5);
        for wrong in [-0.5, 2.25, 10.5, f64::NAN] {
            assert!(Reserve::new(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn an_rpe_of_eight_leaves_two_in_reserve() {
        // Zourdos et al., JSCR 2016;30(1):267-275, the RIR-based scale: RPE 8 = 2 in reserve.
        assert_eq!(Given::rpe(8.0).unwrap().reserve().reps(), 2.0);
        assert_eq!(Given::rpe(7.5).unwrap().reserve().reps(), 2.5);
        assert!(Given::rpe(4.5).is_err());
        assert_eq!(ron::to_string(&Given::rpe(8.5).unwrap()).unwrap(), "rpe(8.5)");
    }

    #[test]
    fn a_hold_lasts_more_than_nothing_and_an_hour_at_most() {
        assert!(Seconds::try_from(0.0).is_err());
        assert!(Seconds::try_from(3600.0).is_ok());
        assert!(Seconds::try_from(f64::NAN).is_err());
    }

    #[test]
    fn a_report_without_side_touches_both_rails() {
        assert!(Rail::Left.touched_by(None) && Rail::Right.touched_by(None));
        assert!(!Rail::Left.touched_by(Some(Side::Right)));
        assert!(Rail::Both.touched_by(Some(Side::Right)));
    }
}
