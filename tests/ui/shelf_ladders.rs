//! Ladders on the real logbook: own ones as they change on disk, and the sheet of a rung.

use std::path::Path;

use rungwright::logbook::record::Placed;
use rungwright::logbook::{Fact, Written};
use rungwright::ui::book::{Book, Deed};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::views::Banner;

use crate::shelf::{machine, started, until};

/// An own ladder, sound or not.
fn own_ladder(home: &Path, text: &str) {
    let folder = machine(home).places().default_logbook().join("ladders");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("towel-hang.ron"), text).unwrap();
}

#[test]
fn a_ladder_saved_in_an_editor_shows_and_a_broken_one_leaves_the_last_good_version() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let shipped = std::fs::read_to_string("progressions/first-pull-up.ron").unwrap();
    let own = shipped
        .replacen("id: \"first-pull-up\"", "id: \"towel-hang\"", 1)
        .replacen("title: \"First pull-up\"", "title: \"Towel hang\"", 1);
    let is_listed = |shelf: &Shelf| {
        shelf
            .ladders()
            .others
            .iter()
            .any(|other| other.id == "towel-hang")
    };
    own_ladder(home.path(), &own);
    assert!(until(&mut shelf, is_listed), "{:?}", shelf.ladders().others);
    shelf.perform(Deed::ShowLadder("towel-hang".into()));
    let rungs = shelf.ladders().open.unwrap().rungs.len();
    own_ladder(home.path(), &own.replacen("rungs: [", "rungs: [ oops", 1));
    let is_broken = |shelf: &Shelf| matches!(shelf.frame().banner, Some(Banner::Broken { .. }));
    assert!(until(&mut shelf, is_broken));
    let open = shelf.ladders().open.unwrap();
    assert_eq!((open.id.as_str(), open.rungs.len()), ("towel-hang", rungs));
    assert!(
        open.broken
            .is_some_and(|words| words.contains("ladders/towel-hang.ron:"))
    );
    own_ladder(home.path(), &own);
    assert!(until(&mut shelf, |shelf| shelf.frame().banner.is_none()));
}

#[test]
fn the_sheet_of_a_rung_falls_back_where_the_rules_do_and_a_minor_to_no_negative() {
    // That minors pass over lowering work is the program's own caution; common practice, no source.
    let falls_back = |born: &str| {
        let home = tempfile::tempdir().unwrap();
        let day = crate::beliefs::today() - chrono::Days::new(30);
        let facts = vec![
            (
                day,
                Fact::Profile {
                    name: None,
                    born: Some(Written::parse(born).unwrap()),
                    sex: None,
                    height_cm: None,
                },
            ),
            (
                day,
                Fact::Placement {
                    ladder: "first-pull-up".into(),
                    side: None,
                    rung: Placed::On("strict".into()),
                    why: None,
                },
            ),
        ];
        let ladder = crate::beliefs::shelf_of(home.path(), facts)
            .ladders()
            .open
            .unwrap();
        let strict = ladder.rungs.iter().find(|rung| rung.id == "strict").unwrap();
        let sections = &strict.sheet.sections;
        let section = sections
            .iter()
            .find(|section| section.name == "Fall back")
            .unwrap();
        let words: String = section.lines[0].words.runs().map(|(_, text)| text).collect();
        let rung = ladder.rungs.iter().find(|rung| rung.title == words).unwrap();
        rung.id.clone()
    };
    assert_eq!(falls_back("1990-05-31"), "negative");
    assert_eq!(falls_back("2012-05-31"), "band");
}
