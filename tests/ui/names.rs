//! Athletes' names in the world's scripts: each is drawn by an embedded face, and none of those faces is loaded before it is
//! needed.

use egui_kittest::SnapshotResults;
use egui_kittest::kittest::Queryable;
use rungwright::ui::theme::{Choice, Face};
use rungwright::ui::views::Place;

use crate::fake_book::FakeBook;
use crate::kit::SMALL;
use crate::screens::{Opened, window};

/// Greek, Cyrillic, Chinese, Japanese, Korean, Arabic, Hebrew, Devanagari, Thai, Vietnamese: common given and family names.
const NAMES: [&str; 10] = [
    "Ελένη Παππά",
    "Ольга Белова",
    "王佳慧",
    "田辺ゆうき",
    "김지우",
    "ليلى حداد",
    "נועה לוי",
    "अर्जुन शर्मा",
    "สมชาย ใจดี",
    "Bảo Trịnh",
];

fn roster(names: &[&str]) -> Opened {
    let mut book = FakeBook::open();
    for (line, name) in book.roster.lines.iter_mut().zip(names) {
        line.name = (*name).to_owned();
    }
    let mut harness = window(book, Place::Roster, SMALL, Choice::Light);
    harness.run();
    harness
}

/// Faces that were loaded because a letter needed them.
fn loaded(harness: &Opened) -> Vec<String> {
    let found = harness.ctx.fonts(|fonts| {
        let names = fonts.discovered_fonts().iter().map(|font| font.name.clone());
        names.collect::<Vec<_>>()
    });
    let mut found: Vec<String> = found.into_iter().collect();
    found.sort();
    found.dedup();
    found
}

#[test]
fn every_name_is_drawn_and_only_its_own_face_is_loaded() {
    let mut shots = SnapshotResults::new();
    let mut harness = roster(&NAMES);
    for name in NAMES {
        assert!(harness.query_all_by_label_contains(name).count() > 0, "{name}");
    }
    let all_drawn = harness.ctx.fonts_mut(|fonts| {
        let mut letters = NAMES.iter().flat_map(|name| name.chars());
        letters.all(|letter| fonts.has_glyph(&Face::LabelStrong.at(16.0), letter))
    });
    assert!(all_drawn);
    harness.snapshot("roster-names");
    shots.extend_harness(&mut harness);
    assert_eq!(loaded(&roster(&["Ελένη Παππά"])), Vec::<String>::new());
    assert_eq!(loaded(&roster(&["สมชาย ใจดี"])), ["thai"]);
}
