//! A ladder of one's own may ask for other days and another gap between the sides; the reasons say its numbers, not the usual
//! ones. Common practice, no source.

use rungwright::catalogue::{Catalogue, OwnFile};
use rungwright::coaching::{NextStep, next_steps};
use rungwright::report::words::Words;
use rungwright::timeline::Timeline;
use rungwright::units::Unit;

use crate::support::{Ago, Athlete, Day, Phrase, Sets, TODAY, athlete};

/// The first reason on the one-arm hang whose rung "Two fingers help" has this standard.
fn reason(standard: &str, athlete: &Athlete) -> String {
    let file = "one-arm-hang.ron";
    let shipped = Catalogue::shipped_files().find(|(name, _)| name == file);
    let text = shipped.unwrap().1;
    let asked = "help: FingerHelp(2),";
    assert!(text.contains(asked), "{text}");
    let text = text.replace(asked, &format!("{asked} standard: {standard},"));
    let (catalogue, problems) = Catalogue::shipped().with_own(&[OwnFile::new(file, text)]);
    assert!(problems.is_empty(), "{problems:?}");
    let log = athlete.log();
    let timeline = Timeline::new(&log, &catalogue, TODAY.date());
    let steps = next_steps(&timeline, &catalogue, &athlete.plates());
    let step: &NextStep = steps.first().unwrap();
    Words::of(step, &catalogue, Unit::Kg).reason(step.reasons.first().unwrap(), true)
}

fn hung(days: &[Day], both: impl Fn() -> (Sets, Sets)) -> Athlete {
    let placed = athlete().placed_on("one-arm-hang", "fingers-2", 60.days_ago());
    days.iter().fold(placed, |athlete, day| {
        let (left, right) = both();
        athlete.did(*day, left.left().then(right.right()))
    })
}

#[test]
fn the_gap_between_the_sides_that_a_ladder_allows_is_the_one_that_is_said() {
    let uneven = hung(&[24.days_ago(), 13.days_ago(), 3.days_ago()], || {
        (3.holds_of(26), 3.holds_of(20))
    });
    let said = reason(
        "(sets: 3, reach: 20, days: 2, days_apart: 2, side_gap: 4)",
        &uneven,
    );
    assert!(said.ends_with(": bring them within 4 s."), "{said}");
}

#[test]
fn the_days_apart_that_a_ladder_asks_are_the_ones_that_are_said() {
    let once = hung(&[3.days_ago()], || (3.holds_of(20), 3.holds_of(20)));
    let said = reason("(sets: 3, reach: 20, days: 2, days_apart: 5, side_gap: 2)", &once);
    assert!(
        said.ends_with(", day 1 of 2: once more, at least 5 days apart."),
        "{said}"
    );
}
