//! The ladder as a whole: its words, its main line, its branches, and demands that rise.

use super::{Findings, Movements, Spot, nearest, rung};
use crate::catalogue::read::{RawBranch, RawLadder, RawRung, standard_of};
use crate::catalogue::{Help, Sides};
use crate::problem::quoted;

/// Fewest and most rungs that a drawn ladder shows well. Common practice, no source.
const RUNGS_SHOWN: std::ops::RangeInclusive<usize> = 2..=40;

/// The mistakes of a ladder whose rungs could all be read.
pub(in crate::catalogue) fn ladder(raw: &RawLadder, movements: &Movements) -> Findings {
    let mut found = Findings::default();
    let root = Spot::root();
    found.unless_kebab(root.field("id"), &raw.id, "ladder");
    found.unless_written(root.field("title"), &raw.title, "title");
    found.unless_written(root.field("goal"), &raw.goal, "goal");
    found.unless_sourced(root.field("sources"), &raw.sources, "ladder");
    let rungs = root.field("rungs");
    length(&mut found, rungs.clone(), &raw.rungs);
    let line = Line::of(raw);
    for (at, one) in raw.rungs.iter().enumerate() {
        let spot = rungs.item(at);
        rung(&mut found, &spot, one, movements);
        sides(&mut found, &spot, raw.sides, one, movements);
        if let Some(branch) = &one.branch {
            line.branch(&mut found, &spot.field("branch"), branch);
        }
        line.fall_back(&mut found, spot.field("fall_back"), one);
    }
    found.unless_distinct(
        raw.rungs
            .iter()
            .enumerate()
            .map(|(at, rung)| (rungs.item(at).field("id"), rung.id.as_str())),
        "rung",
    );
    line.rising(&mut found, &rungs);
    found
}

fn length(found: &mut Findings, spot: Spot, rungs: &[RawRung]) {
    let main = rungs.iter().filter(|rung| rung.branch.is_none()).count();
    if main == 0 {
        let what = if rungs.is_empty() {
            "the ladder has no rungs"
        } else {
            "every rung is a branch, so there is no main line to climb"
        };
        found.error(
            spot,
            what,
            "give at least two rungs without branch, the easiest first",
        );
    } else if main < *RUNGS_SHOWN.start() {
        found.warning(
            spot,
            "the main line has a single rung, so nothing leads anywhere",
            "add the next rung",
        );
    } else if rungs.len() > *RUNGS_SHOWN.end() {
        found.warning(
            spot,
            format!("{} rungs are more than a screen shows", rungs.len()),
            format!("split the ladder, so that each has at most {}", RUNGS_SHOWN.end()),
        );
    }
}

fn sides(found: &mut Findings, spot: &Spot, sides: Sides, rung: &RawRung, movements: &Movements) {
    let apart = movements
        .get(&rung.movement)
        .is_some_and(|movement| movement.is_sided());
    if sides == Sides::Together && apart {
        found.warning(
            spot.field("movement"),
            format!(
                "{} is trained left and right apart, but the ladder has one rail",
                rung.movement
            ),
            "write sides: Apart for the ladder, or name a movement of both sides",
        );
    }
}

/// The main line, for asking what stands where.
struct Line<'a> {
    main: Vec<(usize, &'a RawRung)>,
    branches: Vec<&'a RawRung>,
}

impl<'a> Line<'a> {
    fn of(raw: &'a RawLadder) -> Self {
        let numbered = raw.rungs.iter().enumerate();
        Self {
            main: numbered.filter(|(_, rung)| rung.branch.is_none()).collect(),
            branches: raw.rungs.iter().filter(|rung| rung.branch.is_some()).collect(),
        }
    }

    fn place(&self, id: &str) -> Option<usize> {
        self.main.iter().position(|(_, rung)| rung.id == id)
    }

    /// The place of a rung that something leads to; says so when it isn't on the main line.
    fn known(&self, found: &mut Findings, spot: Spot, id: &str, what: &str) -> Option<usize> {
        let place = self.place(id);
        if place.is_some() {
            return place;
        }
        if self.branches.iter().any(|branch| branch.id == id) {
            found.error(
                spot,
                format!("{what} {}, which is itself a branch", quoted(id)),
                "name a rung of the main line",
            );
        } else {
            let main = self.main.iter().map(|(_, rung)| rung.id.as_str());
            let (mend, write) = nearest(id, main, "name a rung of the main line");
            let what = format!("{what} {}, which is no rung of this ladder", quoted(id));
            found.slip(spot, what, mend, write);
        }
        None
    }

    fn branch(&self, found: &mut Findings, spot: &Spot, branch: &RawBranch) {
        let from = self.known(
            found,
            spot.field("from"),
            &branch.from,
            "the branch can't be reached: it leaves from",
        );
        let to = self.known(
            found,
            spot.field("to"),
            &branch.to,
            "the branch leads nowhere: it joins",
        );
        if let (Some(from), Some(to)) = (from, to)
            && from >= to
        {
            found.error(
                spot.field("to"),
                format!(
                    "the branch goes round in a circle: {} does not stand above {}",
                    quoted(&branch.to),
                    quoted(&branch.from)
                ),
                if from == to {
                    "let it join a rung above the one that it leaves".to_owned()
                } else {
                    format!(
                        "swap them: (from: {}, to: {})",
                        quoted(&branch.to),
                        quoted(&branch.from)
                    )
                },
            );
        }
    }

    fn fall_back(&self, found: &mut Findings, spot: Spot, rung: &RawRung) {
        let Some(id) = &rung.fall_back else { return };
        let Some(target) = self.known(found, spot.clone(), id, "it falls back to") else {
            return;
        };
        let lowest_wrong = match &rung.branch {
            None => self.place(&rung.id),
            Some(branch) => self.place(&branch.from).map(|from| from + 1),
        };
        if lowest_wrong.is_some_and(|wrong| target >= wrong) {
            found.error(
                spot,
                format!(
                    "falling back goes round in a circle: {} does not stand below {}",
                    quoted(id),
                    quoted(&rung.id)
                ),
                "name a rung below, or leave fall_back out for the one right below",
            );
        }
    }

    /// Says where a demand falls on the way up.
    fn rising(&self, found: &mut Findings, rungs: &Spot) {
        for pair in self.main.windows(2) {
            let [(_, below), (at, above)] = pair else { continue };
            let Some((lower, higher)) = comparable(below, above) else {
                continue;
            };
            if higher < lower {
                let spot = rungs.item(*at).field(if above.demand.is_some() {
                    "demand"
                } else {
                    "standard"
                });
                found.warning(
                    spot,
                    format!(
                        "the demand falls from {} at {} to {} at {}",
                        round(lower),
                        quoted(&below.id),
                        round(higher),
                        quoted(&above.id)
                    ),
                    "put the easier rung first, or mend the number",
                );
            }
        }
    }
}

/// Two demands on one scale, if the file has them: both stated, or both computed from load and repetitions of one movement.
fn comparable(below: &RawRung, above: &RawRung) -> Option<(f64, f64)> {
    match (&below.demand, &above.demand) {
        (Some((lower, _)), Some((higher, _))) => Some((*lower, *higher)),
        (None, None) if below.movement == above.movement => Some((loaded(below)?, loaded(above)?)),
        _ => None,
    }
}

/// What a loaded rung of repetitions demands of a single repetition, over bodyweight: ratio × (30 + repetitions + reserve) / 30.
/// The rep-max formula is Epley's (1985), as the ladder's contract asks.
fn loaded(rung: &RawRung) -> Option<f64> {
    if rung.help != Help::Added || rung.work.range.is_hold() {
        return None;
    }
    let standard = standard_of(&rung.standard, &rung.work);
    Some(standard.ratio? * (30.0 + standard.reach + rung.work.reserve.unwrap_or(0.0)) / 30.0)
}

fn round(demand: f64) -> f64 {
    (demand * 100.0).round() / 100.0
}
