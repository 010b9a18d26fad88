//! A logbook's own files add to what is shipped and replace it, and a broken one takes nothing with it.

use std::collections::BTreeSet;

use proptest::prelude::*;
use rungwright::catalogue::{Catalogue, OwnFile};
use rungwright::units::Measure;

use crate::{told, two_rungs};

fn own(path: &str, text: impl Into<String>) -> OwnFile {
    OwnFile::new(path, text)
}

#[test]
fn an_own_ladder_adds_to_the_shipped_ones() {
    let (catalogue, problems) =
        Catalogue::shipped().with_own(&[own("ladders/ring.ron", two_rungs("ring-dips"))]);
    assert_eq!(told(&problems), "");
    assert_eq!(catalogue.ladders().count(), 20);
    assert!(catalogue.ladder_by_name("Ring Dips").is_some());
}

#[test]
fn an_own_ladder_replaces_the_shipped_one_of_its_id() {
    let (catalogue, problems) =
        Catalogue::shipped().with_own(&[own("ladders/mine.ron", two_rungs("first-dip"))]);
    assert_eq!(told(&problems), "");
    assert_eq!(catalogue.ladders().count(), 19);
    assert_eq!(catalogue.ladder("first-dip").unwrap().title, "Ring dips");
}

#[test]
fn an_own_movement_can_be_used_by_an_own_ladder() {
    let movements = r#"[(id: "typewriter", title: "Typewriter", pattern: VerticalPull, sides: Together, share: Whole, measure: Reps,
        class: Compound, joints: [Elbow], direct: [Lats], standard: "From hand to hand over the bar.", sources: ["from memory"])]"#;
    let ladder = two_rungs("typewriters").replace("ring-dip\"", "typewriter\"");
    let files = [own("ladders/a.ron", ladder), own("movements.ron", movements)];
    let (catalogue, problems) = Catalogue::shipped().with_own(&files);
    assert_eq!(told(&problems), "");
    assert!(catalogue.ladder("typewriters").is_some());
    assert!(catalogue.movement_by_name("TypeWriter").is_some());
}

#[test]
fn an_own_movement_may_not_break_a_ladder_that_uses_it() {
    let mut dip = Catalogue::shipped().movement("dip").unwrap().clone();
    dip.title = "Dip, our way".to_owned();
    let sound = Catalogue::movements_text(std::slice::from_ref(&dip));
    let (catalogue, problems) = Catalogue::shipped().with_own(&[own("movements.ron", sound)]);
    assert_eq!(told(&problems), "");
    assert_eq!(catalogue.movement("dip").unwrap().title, "Dip, our way");

    dip.measure = Measure::Hold;
    let held = Catalogue::movements_text(std::slice::from_ref(&dip));
    let (catalogue, problems) = Catalogue::shipped().with_own(&[own("movements.ron", held)]);
    assert_eq!(
        told(&problems),
        "movements.ron:3:13: with this \"dip\" the ladder \"first-dip\" no longer holds\n  3 |         id: \"dip\",\n    |             ^^^^^\n  mend: keep measure, sides and share of the movement that it replaces, or choose another id\n"
    );
    assert_eq!(catalogue.movement("dip").unwrap().measure, Measure::Reps);
}

#[test]
fn two_own_ladders_of_one_id_are_told_and_the_first_holds() {
    let second = two_rungs("ring-dips").replace("Ring dips", "Other dips");
    let files = [
        own("ladders/b.ron", second),
        own("ladders/a.ron", two_rungs("ring-dips")),
    ];
    let (catalogue, problems) = Catalogue::shipped().with_own(&files);
    assert_eq!(problems.len(), 1);
    let told = told(&problems);
    assert!(
        told.starts_with("ladders/b.ron:1:6: ladders/a.ron has a ladder \"ring-dips\" too"),
        "{told}"
    );
    assert_eq!(catalogue.ladder("ring-dips").unwrap().title, "Ring dips");
}

#[test]
fn an_own_name_that_a_spreadsheet_takes_for_another_is_refused() {
    let (catalogue, problems) =
        Catalogue::shipped().with_own(&[own("ladders/a.ron", two_rungs("first-d-ip"))]);
    assert!(told(&problems).contains("differ only in case and hyphens"));
    assert_eq!(catalogue.ladders().count(), 19);
}

#[test]
fn a_broken_ladder_takes_no_other_with_it() {
    let files = [
        own(
            "ladders/broken.ron",
            two_rungs("broken").replace("ring-dip\"", "ring-dipp\""),
        ),
        own("ladders/sound.ron", two_rungs("sound")),
        own("ladders/torn.ron", "(id: \"torn\""),
        own("movements.ron", "[(id: 3)]"),
    ];
    let (catalogue, problems) = Catalogue::shipped().with_own(&files);
    let broken: Vec<&str> = problems
        .iter()
        .map(|problem| problem.place.file.as_str())
        .collect();
    assert_eq!(
        broken,
        ["movements.ron", "ladders/broken.ron", "ladders/torn.ron"]
    );
    assert!(catalogue.ladder("sound").is_some());
    assert_eq!(catalogue.ladders().count(), 20);
}

#[test]
fn the_last_good_version_stays_while_its_file_is_broken() {
    let (last, _) = Catalogue::shipped().with_own(&[own("ladders/a.ron", two_rungs("first-dip"))]);
    let (now, problems) = Catalogue::shipped().with_own(&[own("ladders/a.ron", "(")]);
    assert_eq!(now.ladder("first-dip").unwrap().title, "First dip");
    let broken: BTreeSet<&str> = problems
        .iter()
        .map(|problem| problem.place.file.as_str())
        .collect();
    let kept = now.clone().keeping_last_good(&last, &broken);
    assert_eq!(kept.ladder("first-dip").unwrap().title, "Ring dips");
    let (deleted, _) = Catalogue::shipped().with_own(&[]);
    let after = deleted.keeping_last_good(&kept, &BTreeSet::new());
    assert_eq!(after.ladder("first-dip").unwrap().title, "First dip");
}

proptest! {
    #[test]
    fn the_order_of_own_files_makes_no_difference(order in Just(vec![0usize, 1, 2, 3]).prop_shuffle()) {
        let files = [
            own("ladders/a.ron", two_rungs("ring-dips")),
            own("ladders/b.ron", two_rungs("ring-dips")),
            own("ladders/c.ron", two_rungs("first-dip")),
            own("ladders/d.ron", "(id: "),
        ];
        let shuffled: Vec<OwnFile> = order.iter().map(|at| files[*at].clone()).collect();
        let (straight, straight_problems) = Catalogue::shipped().with_own(&files);
        let (mixed, mixed_problems) = Catalogue::shipped().with_own(&shuffled);
        prop_assert_eq!(straight.ladders().collect::<Vec<_>>(), mixed.ladders().collect::<Vec<_>>());
        prop_assert_eq!(told(&straight_problems), told(&mixed_problems));
    }
}
