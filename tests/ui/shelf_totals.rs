//! Totals on the real logbook: what is logged moves its numbers at once, and a new best is said as it is logged.

use rungwright::bests::Kind;
use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::gym::GymDeed;
use rungwright::ui::shelf::Shelf;
use rungwright::ui::views::{Paper, SetDraft};

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
fn a_set_says_where_it_stands_by_each_of_the_four_measures() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let words = |shelf: &Shelf| -> Vec<String> {
        let points = shelf.totals().open.unwrap().points;
        points.into_iter().map(|point| point.words).collect()
    };
    log(&mut shelf, 7.0);
    // Two sets without a belt at one bodyweight: equal by every measure.
    assert!(
        words(&shelf)
            .iter()
            .all(|words| words.ends_with("; 1st of 2 sets by every measure"))
    );
}

#[test]
fn a_squat_is_entered_plainly_and_counts_in_the_meet_with_its_bar() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let mut tried = |movement: &str, load: f64, good| {
        let movement = movement.to_owned();
        shelf.perform(Deed::LogTry { movement, load, good })
    };
    assert!(matches!(tried("back-squat", 140.0, true), Done::Ok(_)));
    assert!(
        matches!(tried("back-squat", 150.0, false), Done::Ok(_)),
        "no lift is a record too"
    );
    assert!(
        matches!(tried("pull-up", 20.0, true), Done::Ok(Some(words)) if words.starts_with("New best for 1 rep, Pull-up"))
    );
    assert!(matches!(tried("no-such-lift", 20.0, true), Done::Failed(_)));
    let meet = shelf.totals().meet.unwrap();
    let made: Vec<(&str, &str)> = meet
        .lifts
        .iter()
        .map(|lift| (lift.title.as_str(), lift.made.as_str()))
        .collect();
    assert_eq!(made, [("Pull-up", "+20"), ("Back squat", "+140")]);
    assert_eq!(meet.total, "+160");
    // Taken back: of pull-ups the five without a belt stand, which this day had before.
    assert_eq!(shelf.perform(Deed::Undo), Done::Ok(None));
    assert_eq!(shelf.totals().meet.unwrap().total, "+140");
}

#[test]
fn a_picture_is_written_where_it_was_said_and_never_over_something_else() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let to = home.path().join("plot.png");
    let png = b"\x89PNG\r\n\x1a\nrest".to_vec();
    let picture = |to: &std::path::Path| {
        Deed::Gym(GymDeed::Picture {
            png: png.clone(),
            to: to.to_owned(),
        })
    };
    assert!(
        matches!(shelf.perform(picture(&to)), Done::Ok(Some(words)) if words.starts_with("Picture saved: "))
    );
    assert!(
        matches!(shelf.perform(picture(&to)), Done::Ok(_)),
        "a picture may be replaced"
    );
    assert_eq!(std::fs::read(&to).unwrap(), png);
    std::fs::write(&to, "notes").unwrap();
    let Done::Failed(why) = shelf.perform(picture(&to)) else {
        panic!("written over")
    };
    assert!(why.contains("something else than a PNG is there"), "{why}");
    assert_eq!(std::fs::read(&to).unwrap(), b"notes");
}

#[test]
fn the_lifts_of_a_meet_are_chosen_and_its_sheet_is_written() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    log(&mut shelf, 6.0);
    let view = shelf.totals();
    assert_eq!(
        view.no_meet,
        "A meet takes at least two lifts that were logged in the last year."
    );
    shelf.perform(Deed::MeetOver(vec!["pull-up".into()]));
    let meet = shelf.totals().meet.unwrap();
    assert_eq!(meet.lifts.len(), 1, "who names one lift has a meet of one");
    assert_eq!(meet.lifts[0].made, "0", "what was done today without a belt");
    let to = home.path().join("meet.pdf");
    let print = Deed::Gym(GymDeed::Print {
        paper: Paper::Meet,
        athletes: vec![meet.athlete],
        to: to.clone(),
    });
    let done = shelf.perform(print);
    match meet.refused {
        None => assert!(std::fs::read(&to).unwrap().starts_with(b"%PDF-"), "{done:?}"),
        Some(why) => assert!(matches!(done, Done::Failed(words) if words.ends_with(&why))),
    }
    let folder = shelf.open_athlete().unwrap();
    shelf.perform(Deed::ChooseAthlete(folder));
    assert!(shelf.totals().meet.is_none(), "another athlete, another meet");
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
