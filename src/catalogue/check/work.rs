//! Work and standard of a rung: numbers that can be trained, and a standard that the work can meet.

use super::{Findings, Spot};
use crate::catalogue::read::{RawRung, RawStandard, RawWork, standard_of};
use crate::catalogue::{Help, Movement, Range};
use crate::units::{Measure, Reps, Reserve, Seconds};

/// Most sets of one rung on one day, as many as a row of an import may stand for. Common practice, no source.
const MOST_SETS: u16 = 50;
/// Longest rest between sets, s. Common practice, no source.
const LONGEST_REST_SECS: u16 = 3600;
/// A rest up to so many seconds was more likely meant in minutes: nobody gets back to the bar so soon. Common practice, no source.
const LIKE_MINUTES: u16 = 10;
/// Most training days of one rung in a week: twice a day. Common practice, no source.
const MOST_EXPOSURES: u8 = 14;
/// Most days on which a standard may be asked, and most days that they may lie apart. Common practice, no source.
const MOST_DAYS: u8 = 60;
/// Highest ratio of system load to bodyweight that a rung may ask; no lift on record comes near. Common practice, no source.
const HIGHEST_RATIO: f64 = 5.0;

/// The mistakes of a rung's work.
pub(super) fn work(found: &mut Findings, spot: &Spot, work: &RawWork, movement: Option<&Movement>) {
    if !(1..=MOST_SETS).contains(&work.sets) {
        found.error(
            spot.field("sets"),
            format!("{} sets can't be asked of a day", work.sets),
            format!("give 1 to {MOST_SETS} sets"),
        );
    }
    range(found, spot.field("range"), work.range, movement);
    reserve(found, spot.field("reserve"), work);
    if let Some((least, most)) = work.rest_secs {
        if least > most || most > LONGEST_REST_SECS {
            found.error(
                spot.field("rest_secs"),
                format!("a rest of {least} to {most} s is no range"),
                format!(
                    "give seconds, the shorter first, at most {LONGEST_REST_SECS}: rest_secs: (180, 300)"
                ),
            );
        } else if (1..=LIKE_MINUTES).contains(&most) {
            found.warning(
                spot.field("rest_secs"),
                format!("a rest of {least} to {most} s reads like minutes"),
                format!("give seconds: rest_secs: ({}, {})", least * 60, most * 60),
            );
        }
    }
    if let Some(days) = work.exposures_a_week
        && !(1..=MOST_EXPOSURES).contains(&days)
    {
        found.error(
            spot.field("exposures_a_week"),
            format!("{days} training days a week are not possible"),
            format!("give 1 to {MOST_EXPOSURES}"),
        );
    }
}

fn range(found: &mut Findings, spot: Spot, range: Range, movement: Option<&Movement>) {
    let (lo, hi) = match range {
        Range::Reps(lo, hi) | Range::Hold(lo, hi) => (lo, hi),
    };
    let longest = if range.is_hold() {
        Seconds::MOST
    } else {
        Reps::MOST.into()
    };
    if lo > hi {
        let right = format!("{}({hi}, {lo})", word(range));
        found.slip(
            spot,
            format!("the range runs from {lo} down to {hi}"),
            format!("write the lower end first: {right}"),
            Some(right),
        );
        return;
    }
    if lo == 0 || f64::from(hi) > longest {
        found.error(
            spot,
            format!("a range of {lo} to {hi} {} can't be trained", unit(range)),
            format!("give 1 to {longest} {}", unit(range)),
        );
        return;
    }
    let Some(movement) = movement else { return };
    let slip = match (movement.measure, range.is_hold()) {
        (Measure::Hold, false) => Some(("a hold, counted in seconds", "Hold")),
        (Measure::Reps, true) => Some(("counted in repetitions", "Reps")),
        _ => None,
    };
    if let Some((how, right)) = slip {
        // Whether the range or the movement is meant, and how many seconds, only a person knows.
        found.error(
            spot,
            format!("{} is {how}, but the work asks {}", movement.id, unit(range)),
            format!("write range: {right}({lo}, {hi}), or name another movement"),
        );
    }
}

fn word(range: Range) -> &'static str {
    if range.is_hold() { "Hold" } else { "Reps" }
}

fn unit(range: Range) -> &'static str {
    if range.is_hold() { "seconds" } else { "repetitions" }
}

fn reserve(found: &mut Findings, spot: Spot, work: &RawWork) {
    let Some(reserve) = work.reserve else { return };
    if Reserve::new(reserve).is_err() {
        found.error(
            spot,
            format!("a set can't keep {reserve} repetitions in reserve"),
            "give 0 to 10 in whole or half repetitions, or leave reserve out",
        );
    } else if work.range.is_hold() {
        found.error(
            spot,
            "a hold has no repetitions to keep in reserve",
            "leave reserve out",
        );
    }
}

/// The mistakes of a rung's standard, alone and against its work.
pub(super) fn standard(found: &mut Findings, spot: &Spot, rung: &RawRung, movement: Option<&Movement>) {
    let (raw, work) = (&rung.standard, &rung.work);
    let full = standard_of(raw, work);
    if full.sets == 0 || full.sets > work.sets {
        found.error(
            spot.field("sets"),
            format!(
                "the standard asks {} sets, but the work gives {}",
                full.sets, work.sets
            ),
            format!("ask 1 to {} sets, or give more work", work.sets),
        );
    }
    if work.range.lo() <= work.range.hi() {
        reach(found, spot.field("reach"), full.reach, work.range);
    }
    let apart = if raw.days_apart.is_some() {
        "days_apart"
    } else {
        "days"
    };
    days(found, spot, spot.field(apart), full.days, full.days_apart);
    if !(0.0..=Seconds::MOST).contains(&full.side_gap) {
        found.error(
            spot.field("side_gap"),
            format!("both sides can't be within {} of each other", full.side_gap),
            "give the repetitions or seconds by which they may differ, 0 or more",
        );
    }
    ratio(found, spot, raw, rung, movement);
}

fn reach(found: &mut Findings, spot: Spot, reach: f64, range: Range) {
    let amount = format!("{reach} {}", unit(range));
    if !(reach > 0.0 && reach.is_finite()) {
        found.error(
            spot,
            format!("a standard of {amount} is none"),
            format!("give {} to {}", range.lo(), range.hi()),
        );
    } else if reach > range.hi() {
        found.error(
            spot,
            format!("the standard asks {amount}, but the work ends at {}", range.hi()),
            format!("ask at most {}, or widen the range", range.hi()),
        );
    } else if !range.is_hold() && reach.fract() != 0.0 {
        found.error(
            spot,
            format!("{amount} can't be counted"),
            "ask whole repetitions",
        );
    } else if reach < range.lo() {
        found.warning(
            spot,
            format!("the standard asks {amount}, fewer than the work's {}", range.lo()),
            format!(
                "ask at least {}, or lower the range: as it is, every set passes",
                range.lo()
            ),
        );
    }
}

fn days(found: &mut Findings, spot: &Spot, gap: Spot, days: u8, apart: u8) {
    if !(1..=MOST_DAYS).contains(&days) {
        found.error(
            spot.field("days"),
            format!("a standard on {days} days can't be met"),
            format!("give 1 to {MOST_DAYS} days"),
        );
    } else if apart > MOST_DAYS || (days == 1 && apart > 0) {
        found.error(
            gap,
            format!(
                "{days} day{} can't lie {apart} days apart",
                if days == 1 { "" } else { "s" }
            ),
            if days == 1 {
                "write days_apart: 0, or ask 2 days".to_owned()
            } else {
                format!("give 0 to {MOST_DAYS}")
            },
        );
    }
}

fn ratio(found: &mut Findings, spot: &Spot, raw: &RawStandard, rung: &RawRung, movement: Option<&Movement>) {
    let loaded = rung.help == Help::Added;
    let Some(ratio) = raw.ratio else {
        if loaded {
            found.warning(
                spot.field("ratio"),
                "the load decides on this rung, but its standard names none",
                "add a ratio of system load to bodyweight, for example ratio: 1.0",
            );
        }
        return;
    };
    let spot = spot.field("ratio");
    if !is_ratio(ratio) {
        impossible_ratio(found, spot, ratio);
    } else if loaded {
        // That a movement has no load to decide is said at `help`.
    } else if let Some(movement) = movement.filter(|movement| movement.share().is_none()) {
        no_system_load(found, spot, &movement.id);
    } else {
        found.error(
            spot,
            "a ratio is asked, but the load does not decide on this rung",
            "write help: Added, or leave ratio out",
        );
    }
}

/// Whether a body can lift so many times its weight.
pub(super) fn is_ratio(ratio: f64) -> bool {
    ratio > 0.0 && ratio <= HIGHEST_RATIO
}

/// Says that nobody lifts so much.
pub(super) fn impossible_ratio(found: &mut Findings, spot: Spot, ratio: f64) {
    let write = (ratio > 10.0 && ratio / 100.0 <= HIGHEST_RATIO).then(|| (ratio / 100.0).to_string());
    let mend = match &write {
        Some(right) => format!("write the ratio, not per cent: {right}"),
        None => {
            format!("give system load over bodyweight, over 0 and at most {HIGHEST_RATIO}; all of you is 1.0")
        }
    };
    let what = format!("a load of {ratio} times bodyweight can't be asked");
    found.slip(spot, what, mend, write);
}

/// Says that a movement's load can't be compared with bodyweight.
pub(super) fn no_system_load(found: &mut Findings, spot: Spot, movement: &str) {
    found.error(
        spot,
        format!("{movement} has no system load, so no ratio can be met"),
        "leave ratio out, or name another movement",
    );
}

/// Whether so many repetitions or seconds are a set at all.
pub(super) fn is_amount(reps: Option<u16>, seconds: Option<f64>) -> bool {
    reps.is_none_or(|reps| reps > 0 && Reps::try_from(reps).is_ok())
        && seconds.is_none_or(|seconds| Seconds::try_from(seconds).is_ok())
}
