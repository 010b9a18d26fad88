//! The sheet of a meet: what is planned is on it, with room for what comes, on one page an athlete; nobody is sent to a maximum
//! who should not be.

use std::sync::OnceLock;

use rungwright::coaching::PlatesOnHand;
use rungwright::logbook::{Fact, Logbook, Written};
use rungwright::paper::face::lacking;
use rungwright::paper::page::{Document, HEIGHT, MARGIN, Mark};
use rungwright::paper::{meet as page_of_a_meet, pdf};
use rungwright::report::meet::{MeetSheet, NAMES, meet};
use rungwright::units::Unit;

use crate::{NAMES as PEOPLE, book, nothing_runs_off, numbers, on, words};

/// Enough of the demo gym that somebody has lifts to plan.
const ATHLETES: usize = 3;
const LIFTS: [&str; 5] = ["muscle-up", "pull-up", "chin-up", "dip", "back-squat"];

fn planned(book: &Logbook, folder: &str, lifts: &[&str]) -> Result<MeetSheet, String> {
    let (catalogue, _) = book.catalogue();
    let plates = PlatesOnHand::of(&book.settings);
    let lifts: Vec<String> = lifts.iter().map(|id| (*id).to_owned()).collect();
    meet(book, &catalogue, &plates, on(), &[folder.to_owned()], &lifts)
}

/// Everybody's meet over all lifts, where one is planned; who comes first has most attempts.
fn meets(unit: Unit) -> &'static [MeetSheet] {
    static KG: OnceLock<Vec<MeetSheet>> = OnceLock::new();
    static LB: OnceLock<Vec<MeetSheet>> = OnceLock::new();
    let of = || {
        let home = tempfile::tempdir().unwrap();
        let book = book(home.path(), unit, ATHLETES);
        let all = book.logs.iter().map(|log| planned(&book, &log.folder, &LIFTS));
        let mut all: Vec<MeetSheet> = all.filter_map(Result::ok).collect();
        all.sort_by_key(|sheet| std::cmp::Reverse(words(&page_of_a_meet::document(sheet)).len()));
        assert!(!all.is_empty(), "somebody of the demo gym lifts");
        all
    };
    if unit == Unit::Kg { &KG } else { &LB }.get_or_init(of)
}

/// Boxes to tick.
fn boxes(document: &Document) -> usize {
    let marks = document.pages.iter().flat_map(|page| &page.marks);
    let is_box =
        |mark: &&Mark| matches!(mark, Mark::Box { area, fill: None, outline: Some(_) } if area.w < 20.0);
    marks.filter(is_box).count()
}

#[test]
fn what_is_planned_is_on_the_page_in_kilograms_and_in_pounds() {
    for unit in [Unit::Kg, Unit::Lb] {
        for sheet in meets(unit) {
            let document = page_of_a_meet::document(sheet);
            let printed = words(&document);
            let athlete = &sheet.athletes[0];
            assert!(printed.contains(athlete.weighs.as_ref().unwrap()));
            let tries = athlete.lifts.iter().flat_map(|lift| &lift.tries);
            let mut said: Vec<&String> = tries
                .flat_map(|one| [&one.hung, &one.plates, &one.in_all, &one.chance])
                .collect();
            said.extend(athlete.totals.iter().flatten());
            said.extend(athlete.lifts.iter().flat_map(|lift| &lift.warm_up));
            for words in said {
                for number in numbers(words) {
                    assert!(
                        numbers(&printed).contains(&number),
                        "{number} of {words:?} is nowhere"
                    );
                }
            }
            assert!(printed.contains(&format!(" {}", unit.sign())));
            let tries: usize = athlete.lifts.iter().map(|lift| lift.tries.len()).sum();
            assert_eq!(
                printed.matches("chance about ").count(),
                tries,
                "said as a chance, never as a promise"
            );
        }
    }
}

#[test]
fn each_attempt_has_its_line_a_box_for_good_and_one_for_no_lift() {
    for sheet in meets(Unit::Kg) {
        let planned = sheet.athletes[0]
            .lifts
            .iter()
            .filter(|lift| lift.refused.is_none());
        let attempts = NAMES.len() * planned.count();
        let document = page_of_a_meet::document(sheet);
        assert_eq!(boxes(&document), 2 * attempts);
        let good = document
            .pages
            .iter()
            .flat_map(|page| page.text())
            .filter(|words| *words == "no lift");
        assert_eq!(good.count(), attempts);
    }
}

#[test]
fn four_lifts_of_one_athlete_fit_on_one_page_and_five_lose_nothing() {
    for unit in [Unit::Kg, Unit::Lb] {
        let mut sheet = meets(unit)[0].clone();
        let athlete = &mut sheet.athletes[0];
        // The fullest block there is, four times.
        let full = athlete
            .lifts
            .iter()
            .max_by_key(|lift| lift.warm_up.join("").len())
            .unwrap()
            .clone();
        assert_eq!(full.refused, None);
        athlete.lifts = vec![full.clone(); 4];
        assert_eq!(page_of_a_meet::document(&sheet).pages.len(), 1);
        sheet.athletes[0].lifts.push(full);
        let document = page_of_a_meet::document(&sheet);
        assert_eq!((document.pages.len(), boxes(&document)), (2, 2 * 3 * 5));
        nothing_runs_off(&[document]);
    }
}

#[test]
fn names_of_any_script_head_their_own_page_and_nothing_runs_off() {
    for name in PEOPLE {
        let mut sheet = meets(Unit::Lb)[0].clone();
        name.clone_into(&mut sheet.athletes[0].name);
        let document = page_of_a_meet::document(&sheet);
        let squeezed = words(&document).replace(' ', "");
        assert!(squeezed.contains(&name.replace(' ', "")), "{name}");
        assert_eq!(lacking(name), Vec::<char>::new());
        nothing_runs_off(std::slice::from_ref(&document));
        assert!(pdf(&document).unwrap().starts_with(b"%PDF-"));
    }
}

#[test]
fn care_stands_on_the_page_and_covers_nothing() {
    let document = page_of_a_meet::document(&meets(Unit::Kg)[0]);
    let printed = words(&document);
    for care in [
        "no promise",
        "spotter for maximal attempts",
        "healthy adults",
        "licensed practitioner",
        "local rules",
        "rack with safeties",
        "Stop on sharp pain.",
    ] {
        assert!(printed.contains(care), "{care}");
    }
    // No two lines of words at one place, and all of it above the foot.
    for page in &document.pages {
        let mut places: Vec<(i64, i64)> = Vec::new();
        for mark in &page.marks {
            if let Mark::Words { x, y, .. } = mark {
                assert!(*y < HEIGHT - MARGIN + 13.0);
                #[allow(clippy::cast_possible_truncation)]
                let place = ((x * 10.0) as i64, (y * 10.0) as i64);
                assert!(!places.contains(&place), "{mark:?}");
                places.push(place);
            }
        }
    }
}

#[test]
fn nobody_under_18_gets_a_sheet_with_attempts() {
    let home = tempfile::tempdir().unwrap();
    let mut book = book(home.path(), Unit::Kg, ATHLETES);
    let who = book
        .logs
        .iter()
        .position(|log| planned(&book, &log.folder, &LIFTS).is_ok())
        .unwrap();
    for record in &mut book.logs[who].records {
        if let Fact::Profile { born, .. } = &mut record.what {
            *born = Written::parse("2010-05-01").ok();
        }
    }
    let folder = book.logs[who].folder.clone();
    let name = book.logs[who].name.clone();
    assert_eq!(
        planned(&book, &folder, &LIFTS),
        Err(format!("No meet for {name}. Under 18: no maximal tests."))
    );
}
