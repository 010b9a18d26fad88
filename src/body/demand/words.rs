//! A demand as a sentence with its numbers.

use std::fmt;

use super::super::band::{Band, Status};
use super::super::one_arm;
use super::need::{Asked, Scale};
use super::reps::Count;
use super::{Computed, RungDemand, lever};
use crate::body::Fact;

/// How a demand was computed: the numbers, without words.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum How {
    /// It is the goal: 1 by definition.
    Goal,
    /// A straight-arm shape.
    Lever {
        /// Its moment ÷ (weight × height).
        shape: f64,
        /// The full shape's.
        full: f64,
        /// Weight × height, N·m, where the mass is known.
        scale: Option<f64>,
        /// The same demand from the second segment table.
        second_opinion: f64,
        /// A back lever tucked further than shoulders usually turn.
        tucked_back_lever: bool,
    },
    /// A planche lean.
    PlancheLean {
        /// How far the arms are past the vertical, degrees.
        degrees: f64,
        /// The leans that are taken for usual, degrees.
        usual: [f64; 2],
    },
    /// A strength against the goal's, with what repetitions add.
    Strength {
        /// Where it comes from.
        by: Strength,
        /// Strength for one repetition, in the scale's unit.
        strength: f64,
        /// Repetitions and reserve.
        count: Count,
        /// The goal's strength.
        goal: f64,
        /// The goal's repetitions and reserve.
        goal_count: Count,
    },
}

/// Where a strength comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
#[allow(missing_docs, reason = "fields are said with their variant")]
pub enum Strength {
    /// Both hands pull `ratio` × bodyweight; one arm shows `gain` times half of it.
    TwoHands { ratio: f64, gain: f64 },
    /// One hand pulls `ratio` × bodyweight.
    OneHand { ratio: f64 },
    /// A counterweight of this part of bodyweight.
    Pulley { part: f64 },
    /// So many fingers of the other hand.
    Fingers { fingers: u8 },
    /// The athlete's band takes this part.
    Band { part: f64 },
    /// Down in so many seconds.
    Negative { seconds: f64 },
    /// Held for so many seconds.
    LockOff { seconds: f64 },
    /// The other arm straight; this part is left.
    Archer { left: f64 },
    /// This share of bodyweight in so many hands.
    Hand { share: f64, hands: f64 },
    /// This share in both hands, of which the working one keeps `left`.
    ArcherHand { share: f64, left: f64 },
    /// A hang.
    Hang { load: f64, seconds: f64, kept_up: f64 },
    /// System load ÷ bodyweight.
    Ratio { ratio: f64 },
    /// A shape of the body.
    Shape,
}

/// The goal's own demand.
pub(super) fn goal(asked: &Asked, scale: Scale) -> Computed {
    let by_shape = (scale == Scale::Lever).then(|| lever::demand(asked)).flatten();
    by_shape.unwrap_or(Computed {
        demand: Band::exactly(1.0),
        status: Status::Derived,
        how: How::Goal,
    })
}

/// The text of a demand.
pub(super) fn explain(asked: &RungDemand) -> String {
    let mut text = match (&asked.stated, &asked.computed) {
        (_, Some(Computed { how: How::Goal, .. })) => "This is the goal: 1 by definition.".to_owned(),
        (Some(given), Some(computed)) => {
            let which = if asked.disagrees() {
                " The stated number lies outside what was computed; it holds."
            } else {
                ""
            };
            format!(
                "Stated {:.2} ({}). Computed: {computed}.{which}",
                given.demand.value(),
                given.source
            )
        }
        (Some(given), None) => {
            let band = asked.demand.unwrap_or(Band::exactly(given.demand.value()));
            format!(
                "Stated {:.2} ({}), with nothing to compute it from; take it as {:.2} to {:.2}.",
                band.centre(),
                given.source,
                band.low(),
                band.high()
            )
        }
        (None, Some(computed)) => format!("Computed: {computed}."),
        (None, None) => "No demand is stated, and there is nothing to compute it from.".to_owned(),
    };
    text.push_str(what_is_missing(&asked.narrowed_by));
    text
}

/// Which facts of the body would help.
fn what_is_missing(facts: &[Fact]) -> &'static str {
    let missing = |fact| facts.contains(&fact);
    match (missing(Fact::Height), missing(Fact::Sex), missing(Fact::Mass)) {
        (false, false, false) => "",
        (false, false, true) => " A weigh-in would give kg and N·m.",
        (true, false, false) => " Your height would narrow this.",
        (false, true, false) => " Your sex would narrow this: the body tables differ.",
        (true, true, false) => " Your height and sex would narrow this.",
        (true, false, true) => " Your height would narrow this, and a weigh-in would give kg and N·m.",
        (false, true, true) => " Your sex would narrow this, and a weigh-in would give kg and N·m.",
        (true, true, true) => " Your height and sex would narrow this, and a weigh-in would give kg and N·m.",
    }
}

impl fmt::Display for Computed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (centre, low, high) = (self.demand.centre(), self.demand.low(), self.demand.high());
        match self.how {
            How::Goal => write!(f, "the goal, 1 by definition")?,
            How::Lever {
                shape,
                full,
                scale,
                second_opinion,
                tucked_back_lever,
            } => {
                match scale {
                    Some(scale) => {
                        let (shape, full) = (shape * scale, full * scale);
                        write!(
                            f,
                            "{shape:.0} N·m at both shoulders, {full:.0} N·m when full: {shape:.0} ÷ {full:.0} = {centre:.2}"
                        )?;
                    }
                    None => write!(
                        f,
                        "moment ÷ (weight × height) {shape:.3}, when full {full:.3}: {shape:.3} ÷ {full:.3} = {centre:.2}"
                    )?,
                }
                write!(f, "; a second body table says {second_opinion:.2}")?;
                if tucked_back_lever {
                    write!(
                        f,
                        "; few shoulders turn far enough for this shape as drawn, so yours is likely rounder or tilted"
                    )?;
                }
            }
            How::PlancheLean {
                degrees,
                usual: [least, most],
            } => {
                return write!(
                    f,
                    "arms {degrees:.0}° past the vertical with the feet on the floor; the usual {least:.0}° to {most:.0}° ask {low:.2} to {high:.2} of the full shape's moment"
                );
            }
            How::Strength {
                by,
                strength,
                count,
                goal,
                goal_count,
            } => {
                write!(f, "{by}")?;
                against_goal(f, strength, count, goal, goal_count, centre)?;
            }
        }
        let (low, high) = (format!("{low:.2}"), format!("{high:.2}"));
        if low == high {
            return Ok(());
        }
        write!(f, "; anything from {low} to {high} is possible")
    }
}

/// "; 0.65 × (30 + 4 + 1) ÷ (30 + 1) = 0.73", where the goal or the repetitions differ from one single at 1.
fn against_goal(
    f: &mut fmt::Formatter<'_>,
    strength: f64,
    count: Count,
    goal: f64,
    goal_count: Count,
    demand: f64,
) -> fmt::Result {
    let thirty = |count: Count| match (count.reps, count.reserve) {
        (reps, 0.0) => format!("(30 + {reps})"),
        (reps, reserve) => format!("(30 + {reps} + {reserve})"),
    };
    let alike = count.total() == goal_count.total();
    match (alike, goal == 1.0) {
        (true, true) => Ok(()),
        (true, false) => write!(f, "; {strength:.2} ÷ the goal's {goal:.2} = {demand:.2}"),
        (false, true) => write!(
            f,
            "; with repetitions and reserve {strength:.2} × {} ÷ the goal's {} = {demand:.2}",
            thirty(count),
            thirty(goal_count)
        ),
        (false, false) => write!(
            f,
            "; with repetitions and reserve {strength:.2} × {} ÷ the goal's {goal:.2} × {} = {demand:.2}",
            thirty(count),
            thirty(goal_count)
        ),
    }
}

impl fmt::Display for Strength {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Strength::TwoHands { ratio, gain } => write!(
                f,
                "{ratio:.2} × bodyweight in both hands shows {gain:.2} × {ratio:.2} ÷ 2 = {:.2} on one arm",
                gain * ratio / 2.0
            ),
            Strength::OneHand { ratio } => write!(f, "{ratio:.2} × bodyweight on one hand"),
            Strength::Pulley { part } => {
                let kept = one_arm::pulley_efficiency();
                write!(
                    f,
                    "a counterweight of {part:.2} × bodyweight loses a little in the pulley: 1 − {kept:.2} × {part:.2} = {:.2}",
                    1.0 - kept * part
                )
            }
            Strength::Fingers { fingers } => fingers_words(f, fingers),
            Strength::Band { part } => write!(
                f,
                "your band takes {part:.2} × bodyweight where it is hardest: 1 − {part:.2} = {:.2}",
                1.0 - part
            ),
            Strength::Negative { seconds } => {
                let (down, kept) = (one_arm::down_over_up(seconds), one_arm::kept_up(seconds));
                write!(
                    f,
                    "on the way down you are {down:.2} times as strong as up, and {kept:.2} of that lasts {seconds:.0} s: 1 ÷ ({down:.2} × {kept:.2}) = {:.2}",
                    1.0 / (down * kept)
                )
            }
            Strength::LockOff { seconds } => {
                let (held, kept) = (one_arm::held_over_up(), one_arm::kept_up(seconds));
                write!(
                    f,
                    "holding you are {held:.2} times as strong as moving up, and {kept:.2} of that lasts {seconds:.0} s: 1 ÷ ({held:.2} × {kept:.2}) = {:.2}",
                    1.0 / (held * kept)
                )
            }
            Strength::Archer { left } => write!(
                f,
                "the straight arm carries {:.2} of you at the top: 1 − {:.2} = {left:.2}",
                1.0 - left,
                1.0 - left
            ),
            Strength::Hand { share, hands: 1.0 } => write!(f, "{share:.2} × bodyweight on one hand"),
            Strength::Hand { share, hands } => write!(
                f,
                "{share:.2} × bodyweight in both hands: {share:.2} ÷ {hands:.0} = {:.2} on each",
                share / hands
            ),
            Strength::ArcherHand { share, left } => write!(
                f,
                "{share:.2} × bodyweight in both hands, of which the working one keeps about {left:.2}: {share:.2} × {left:.2} = {:.2}",
                share * left
            ),
            Strength::Hang {
                load,
                seconds,
                kept_up,
            } => write!(
                f,
                "{load:.2} × bodyweight on a hand, and {kept_up:.2} of its strength lasts {seconds:.0} s: {load:.2} ÷ {kept_up:.2} = {:.2}",
                load / kept_up
            ),
            Strength::Ratio { ratio } => write!(f, "{ratio:.2} × bodyweight"),
            Strength::Shape => write!(f, "the shape"),
        }
    }
}

fn fingers_words(f: &mut fmt::Formatter<'_>, fingers: u8) -> fmt::Result {
    let (Some(help), Some([used, grip, hang])) =
        (one_arm::finger_help(fingers), one_arm::finger_factors(fingers))
    else {
        return write!(f, "{fingers} fingers help");
    };
    let help = help.centre();
    let fingers = match fingers {
        1 => "1 finger".to_owned(),
        more => format!("{more} fingers"),
    };
    write!(
        f,
        "{fingers} can take {used:.2} × {grip:.2} × {hang:.2} = {help:.2} × bodyweight: 1 − {help:.2} = {:.2}",
        1.0 - help
    )
}
