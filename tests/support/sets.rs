//! Sets as a training log says them: `3.sets_of(6).with(15.0).leaving(1.0)`.

use rungwright::logbook::record::{Load, Set, Slug};
use rungwright::units::{Effort, Given, Outcome, Reps, Seconds, Side, Typed, Unit};

/// Some sets of one exercise.
#[derive(Debug, Clone)]
pub struct Sets {
    sets: Vec<Set>,
    /// The rung they are logged for, if not the one that the athlete was last put on.
    pub(super) rung: Option<String>,
    pub(super) ladder: Option<String>,
    pub(super) untagged: bool,
}

/// `3.sets_of(6)`, `3.holds_of(20)`.
pub trait Phrase {
    /// So many sets of so many repetitions.
    fn sets_of(self, reps: u16) -> Sets;
    /// So many holds of so many seconds.
    fn holds_of(self, seconds: u16) -> Sets;
}

impl Phrase for i32 {
    fn sets_of(self, count: u16) -> Sets {
        reps(std::iter::repeat_n(count, self as usize))
    }

    fn holds_of(self, length: u16) -> Sets {
        seconds(std::iter::repeat_n(length, self as usize))
    }
}

/// Sets of these repetitions.
pub fn reps(counts: impl IntoIterator<Item = u16>) -> Sets {
    of(counts
        .into_iter()
        .map(|count| Effort::Reps(Reps::try_from(count).unwrap())))
}

/// Holds of these seconds.
pub fn seconds(lengths: impl IntoIterator<Item = u16>) -> Sets {
    of(lengths
        .into_iter()
        .map(|length| Effort::Hold(Seconds::try_from(f64::from(length)).unwrap())))
}

/// A single set.
pub fn one_set(count: u16) -> Sets {
    reps([count])
}

fn of(efforts: impl Iterator<Item = Effort>) -> Sets {
    let sets = efforts.map(|effort| Set {
        movement: Slug::default(),
        side: None,
        load: None,
        effort,
        left: None,
        outcome: Outcome::Done,
        bodyweight: None,
        ladder: None,
        rung: None,
        note: None,
    });
    Sets {
        sets: sets.collect(),
        rung: None,
        ladder: None,
        untagged: false,
    }
}

impl Sets {
    fn each(mut self, change: impl Fn(&mut Set)) -> Self {
        self.sets.iter_mut().for_each(change);
        self
    }

    /// Kilograms on the belt; below zero they help.
    pub fn with(self, kg: f64) -> Self {
        self.with_typed(kg, Unit::Kg)
    }

    /// A mass on the belt as typed; below zero it helps.
    pub fn with_typed(self, mass: f64, unit: Unit) -> Self {
        let typed = Typed::new(mass.abs(), unit).unwrap();
        let load = if mass < 0.0 {
            Load::Assistance(typed)
        } else {
            Load::Added(typed)
        };
        self.each(|set| set.load = Some(load))
    }

    /// Repetitions in reserve.
    pub fn leaving(self, reserve: f64) -> Self {
        self.each(|set| set.left = Some(Given::rir(reserve).unwrap()))
    }

    /// One more was tried and failed, in each.
    pub fn failed(self) -> Self {
        self.each(|set| set.outcome = Outcome::Missed)
    }

    /// The movement's standard was not kept, in each.
    pub fn out_of_form(self) -> Self {
        self.each(|set| set.outcome = Outcome::Form)
    }

    /// With a remark on each.
    pub fn noting(self, note: &str) -> Self {
        self.each(|set| set.note = Some(note.to_owned()))
    }

    /// Weighed at each set, kg.
    pub fn at_bodyweight(self, kg: f64) -> Self {
        self.each(|set| set.bodyweight = Some(Typed::new(kg, Unit::Kg).unwrap()))
    }

    /// On the left.
    pub fn left(self) -> Self {
        self.each(|set| set.side = Some(Side::Left))
    }

    /// On the right.
    pub fn right(self) -> Self {
        self.each(|set| set.side = Some(Side::Right))
    }

    /// Logged for this rung.
    pub fn on(mut self, rung: &str) -> Self {
        self.rung = Some(rung.to_owned());
        self
    }

    /// Logged for a rung of another ladder.
    pub fn on_ladder(mut self, ladder: &str, rung: &str) -> Self {
        self.ladder = Some(ladder.to_owned());
        self.on(rung)
    }

    /// Of a movement, logged for no rung.
    pub fn of(mut self, movement: &str) -> Self {
        self.untagged = true;
        self.each(|set| set.movement = movement.into())
    }

    /// Of a movement, logged for a ladder but for no rung of it.
    pub fn of_for(self, movement: &str, ladder: &str) -> Self {
        self.of(movement).each(|set| set.ladder = Some(ladder.into()))
    }

    /// And these after them, the same day.
    pub fn then(self, more: Sets) -> Session {
        Session(vec![self, more])
    }

    pub(super) fn into_sets(self) -> Vec<Set> {
        self.sets
    }
}

/// A day's sets, in order.
#[derive(Debug, Clone)]
pub struct Session(pub(super) Vec<Sets>);

impl Session {
    /// And these after them.
    pub fn then(mut self, more: Sets) -> Self {
        self.0.push(more);
        self
    }
}

impl From<Sets> for Session {
    fn from(sets: Sets) -> Self {
        Session(vec![sets])
    }
}
