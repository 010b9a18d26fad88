//! Totals on the real logbook: what is logged moves its numbers at once, and a new best is said as it is logged.

use rungwright::bests::Kind;
use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::views::SetDraft;

use crate::shelf::{draft, started};

fn log(shelf: &mut Shelf, amount: f64) -> Option<String> {
    let set = SetDraft {
        amount,
        ..draft(shelf)
    };
    match shelf.perform(Deed::Log(set)) {
        Done::Ok(words) => words,
        other => panic!("{other:?}"),
    }
}

fn longest_best(shelf: &Shelf) -> u16 {
    let lift = shelf.totals().open.unwrap();
    let loads = lift.bests.iter().filter(|best| best.kind == Kind::System);
    loads.map(|best| best.reps).max().unwrap()
}

#[test]
fn a_new_best_is_said_as_it_is_logged_and_gone_when_it_is_taken_back() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    // Five pull-ups are on record; seven are a best by every measure.
    let said = log(&mut shelf, 7.0).unwrap();
    assert!(said.starts_with("New best for 7 reps, Pull-up: "), "{said}");
    assert!(
        said.ends_with("by system load, added, ratio and size-adjusted"),
        "{said}"
    );
    let line = shelf.next().logged.first().cloned().unwrap();
    assert!(
        line.best.unwrap().starts_with("New best: system load, added"),
        "it stands under its set"
    );
    assert_eq!(longest_best(&shelf), 7);
    assert_eq!(log(&mut shelf, 4.0), None, "fewer is no news");
    assert!(shelf.next().logged.first().unwrap().best.is_none());
    // Both taken back: the old best stands, on every screen.
    assert_eq!(shelf.perform(Deed::Undo), Done::Ok(None));
    assert_eq!(shelf.perform(Deed::Undo), Done::Ok(None));
    assert_eq!(longest_best(&shelf), 5);
}

#[test]
fn totals_of_a_fresh_logbook_say_what_is_missing_and_what_is_there() {
    let home = tempfile::tempdir().unwrap();
    let shelf = started(home.path());
    let view = shelf.totals();
    let lift = view.open.unwrap();
    assert_eq!((lift.title.as_str(), lift.points.len()), ("Pull-up", 1));
    assert_eq!(view.bodyweight.text(), "Bodyweight 74.6 kg on Wed 18 Mar");
    assert!(
        lift.fit.is_none() && lift.fit_words.contains("No fit of your own yet"),
        "{}",
        lift.fit_words
    );
    assert!(
        lift.points[0].words.contains("5 reps at 74.6 kg"),
        "{}",
        lift.points[0].words
    );
    assert!(view.meet.is_none(), "one lift is no meet");
}

#[test]
fn another_bodyweight_moves_the_demands_of_ladders_and_not_those_of_next() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let asked = shelf.ladders().open.unwrap().what_if.unwrap();
    assert_eq!((asked.today_kg, asked.asked_kg), (74.6, None));
    let next = shelf.next();
    shelf.perform(Deed::LookAt(Some(70.0)));
    assert_eq!(
        shelf.ladders().open.unwrap().what_if.unwrap().asked_kg,
        Some(70.0)
    );
    assert_eq!(shelf.next(), next, "advice is for today's bodyweight");
    shelf.perform(Deed::LookAt(None));
    assert_eq!(shelf.ladders().open.unwrap().what_if.unwrap().asked_kg, None);
}
