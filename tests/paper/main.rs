//! Pages to print: every number of the view is on them, nothing runs off them, and names of any script stay.

#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod meet;

use std::path::Path;

use chrono::NaiveDate;
use rungwright::coaching::PlatesOnHand;
use rungwright::demo::{Plan, gym};
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::writer::LOCK_WAIT;
use rungwright::logbook::{Fact, Logbook, Machine, Name, Places, Record, Settings, Writer};
use rungwright::paper::face::{Face, lacking, width};
use rungwright::paper::page::{Document, HEIGHT, MARGIN, Mark, WIDTH};
use rungwright::paper::{class, pdf, progress, sheet as pages};
use rungwright::report::progress::{Report, report};
use rungwright::report::sheet::{Sheet, sheet};
use rungwright::units::{Typed, Unit};

fn on() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, 26).unwrap()
}

/// Names that try a page: long, without a space, in many scripts, right to left.
const NAMES: [&str; 8] = [
    "Maximiliana Wolfeschlegelsteinhausenbergerdorff-Featherstonehaugh von und zu Oberwangenthal",
    "Wolfeschlegelsteinhausenbergerdorffwelchevoralternwarengewissenhaftschaferswessenschafe",
    "王佳慧",
    "ليلى الحداد",
    "אביגיל בן־דוד",
    "अर्जुन नांबीसन",
    "สมชาย ใจดี",
    "Ольга Грицак",
];

/// The demo gym on disk, its first members called by [`NAMES`], thinking in `unit`.
fn book(home: &Path, unit: Unit, athletes: usize) -> Logbook {
    let machine = Machine::with(RealDisk, Places::inside(home));
    let root = home.join("book");
    let now = on().and_hms_opt(12, 0, 0).unwrap().and_utc();
    let plan = Plan {
        athletes,
        years: 1,
        seed: 7,
        on: on(),
    };
    let gym = gym(&plan);
    let (mut writer, _) = Writer::lock(&machine, &root, "test".into(), now, LOCK_WAIT).unwrap();
    let mut settings = Settings::fresh(unit);
    settings.name = Some("Kiln Yard".into());
    settings.gear = Typed::new(1.0, unit).ok();
    writer.write_settings(&settings).unwrap();
    let batch = gym
        .athletes
        .into_iter()
        .enumerate()
        .map(|(nth, (name, mut records))| {
            let called = NAMES.get(nth).map_or(name.as_str(), |name| name);
            rename(&mut records, called);
            (Name::parse(called).unwrap(), records)
        });
    writer.commit(batch.collect()).unwrap();
    let (book, problems) = writer.read().unwrap();
    assert!(problems.is_empty(), "{problems:?}");
    book
}

fn rename(records: &mut [Record], called: &str) {
    for record in records {
        if let Fact::Profile { name: Some(name), .. } = &mut record.what {
            called.clone_into(name);
        }
    }
}

fn the_sheet(book: &Logbook) -> Sheet {
    let (catalogue, _) = book.catalogue();
    sheet(book, &catalogue, &PlatesOnHand::of(&book.settings), on(), &[])
}

fn reports(book: &Logbook) -> Vec<Report> {
    let (catalogue, _) = book.catalogue();
    let plates = PlatesOnHand::of(&book.settings);
    let of = |log| report(book, log, &catalogue, &plates, None, on());
    book.logs.iter().map(of).collect()
}

/// All words of a document, page by page, in the order they were set.
fn words(document: &Document) -> String {
    let all: Vec<&str> = document.pages.iter().flat_map(|page| page.text()).collect();
    all.join(" ")
}

/// Every stretch of digits of a text, with its decimal point.
fn numbers(text: &str) -> Vec<String> {
    let parts = text.split(|letter: char| !letter.is_ascii_digit() && letter != '.');
    let trimmed = parts.map(|part| part.trim_matches('.').to_owned());
    trimmed.filter(|part| !part.is_empty()).collect()
}

/// What must be on the page of a card, in words.
fn said(sheet: &Sheet) -> Vec<String> {
    let mut said = Vec::new();
    for athlete in &sheet.athletes {
        said.extend(athlete.weighs.clone());
        said.extend(athlete.hurts.clone());
        for card in &athlete.cards {
            said.extend(card.mind.clone());
            said.extend(card.not_before.clone());
            if let Some(work) = &card.work {
                said.push(format!("{} × {}", work.sets, work.asked));
                said.push(work.rest.clone());
                said.extend(work.reserve.clone());
                said.extend(
                    work.load
                        .iter()
                        .flat_map(|load| [load.hung.clone(), load.plates.clone(), load.in_all.clone()]),
                );
            }
        }
    }
    said
}

#[test]
fn every_number_of_the_sheet_is_on_its_pages_in_kilograms_and_in_pounds() {
    for unit in [Unit::Kg, Unit::Lb] {
        let home = tempfile::tempdir().unwrap();
        let sheet = the_sheet(&book(home.path(), unit, 12));
        let said = said(&sheet);
        assert!(said.iter().any(|words| words.contains(unit.sign())));
        for (document, skips_weighs) in [(pages::document(&sheet), false), (class::document(&sheet), true)] {
            let printed = numbers(&words(&document));
            let weighs: Vec<String> = sheet
                .athletes
                .iter()
                .filter_map(|athlete| athlete.weighs.clone())
                .collect();
            for words in said
                .iter()
                .filter(|words| !(skips_weighs && weighs.contains(words)))
            {
                for number in numbers(words) {
                    assert!(printed.contains(&number), "{number} of {words:?} is nowhere");
                }
            }
        }
    }
}

#[test]
fn nothing_runs_off_a_page_whatever_somebody_is_called() {
    let home = tempfile::tempdir().unwrap();
    let book = book(home.path(), Unit::Lb, 9);
    let sheet = the_sheet(&book);
    let mut documents = vec![pages::document(&sheet), class::document(&sheet)];
    documents.extend(reports(&book).iter().map(progress::document));
    nothing_runs_off(&documents);
}

/// No word of these documents lies in a margin.
fn nothing_runs_off(documents: &[Document]) {
    for document in documents {
        for mark in document.pages.iter().flat_map(|page| &page.marks) {
            if let Mark::Words {
                x,
                y,
                face,
                size,
                words,
                ..
            } = mark
            {
                let right = x + width(words, *face, *size);
                assert!(
                    *x >= MARGIN - 0.5 && right <= WIDTH - MARGIN + 1.0,
                    "{words:?} ends at {right}"
                );
                assert!(
                    *y > MARGIN && *y < HEIGHT - MARGIN + 13.0,
                    "{words:?} stands at {y}"
                );
            }
        }
    }
}

#[test]
fn names_of_any_script_are_on_the_page_to_the_letter() {
    let home = tempfile::tempdir().unwrap();
    let sheet = the_sheet(&book(home.path(), Unit::Kg, 12));
    let squeezed = |text: &str| {
        text.chars()
            .filter(|letter| !letter.is_whitespace())
            .collect::<String>()
    };
    for document in [pages::document(&sheet), class::document(&sheet)] {
        let printed = squeezed(&words(&document));
        for name in NAMES {
            assert!(printed.contains(&squeezed(name)), "{name}");
            assert_eq!(lacking(name), Vec::<char>::new(), "{name} is drawn, not boxed");
        }
        assert!(pdf(&document).unwrap().starts_with(b"%PDF-"));
    }
}

#[test]
fn what_to_mind_of_somebody_is_in_the_class_table_however_long_the_name_is() {
    let home = tempfile::tempdir().unwrap();
    let mut sheet = the_sheet(&book(home.path(), Unit::Kg, 12));
    for (athlete, name) in sheet.athletes.iter_mut().zip(NAMES.iter().cycle()) {
        (*name).clone_into(&mut athlete.name);
        athlete.weigh_in_first = true;
        athlete.hurts = vec!["elbow L 4".into()];
    }
    let document = class::document(&sheet);
    let cards = sheet.athletes.iter().flat_map(|athlete| &athlete.cards);
    let rows = cards.filter(|card| card.work.is_some()).count();
    let printed = words(&document);
    assert_eq!(printed.matches("weigh in first · elbow L 4").count(), rows);
    // They end before the hand's letter and the work begin.
    for mark in document.pages.iter().flat_map(|page| &page.marks) {
        if let Mark::Words {
            x,
            face: face @ Face::Label,
            size,
            words,
            ..
        } = mark
            && *x == MARGIN + 2.0
        {
            assert!(x + width(words, *face, *size) <= MARGIN + 140.0, "{words}");
        }
    }
}

#[test]
fn a_letter_that_no_face_has_is_owned_up_to_on_its_page() {
    let home = tempfile::tempdir().unwrap();
    let mut sheet = the_sheet(&book(home.path(), Unit::Kg, 2));
    sheet.athletes[0].name = "𐌰𐌽𐌰 Gothic".into();
    let document = pages::document(&sheet);
    let first: Vec<&str> = document.pages[0].text().collect();
    assert!(
        first
            .iter()
            .any(|words| words.starts_with("A box stands for a letter") && words.contains("U+10330"))
    );
    assert!(!document.pages[1].text().any(|words| words.starts_with("A box")));
    pdf(&document).unwrap();
}

#[test]
fn pages_are_numbered_and_an_athlete_begins_on_a_fresh_one() {
    let home = tempfile::tempdir().unwrap();
    let sheet = the_sheet(&book(home.path(), Unit::Kg, 12));
    let document = pages::document(&sheet);
    let count = document.pages.len();
    assert!(count >= 12);
    for (nth, page) in document.pages.iter().enumerate() {
        let foot = format!("page {} of {count}", nth + 1);
        assert!(page.text().any(|words| words == foot), "{foot}");
        let names = sheet
            .athletes
            .iter()
            .filter(|athlete| page.text().any(|words| words == athlete.name))
            .count();
        assert!(names <= 1, "two athletes on page {}", nth + 1);
    }
}

#[test]
fn a_card_has_a_box_to_tick_for_each_set() {
    let home = tempfile::tempdir().unwrap();
    let sheet = the_sheet(&book(home.path(), Unit::Kg, 12));
    let sets: usize = sheet
        .athletes
        .iter()
        .flat_map(|athlete| &athlete.cards)
        .filter_map(|card| card.work.as_ref())
        .map(|work| usize::from(work.sets))
        .sum();
    for document in [pages::document(&sheet), class::document(&sheet)] {
        let boxes =
            document.pages.iter().flat_map(|page| &page.marks).filter(
                |mark| matches!(mark, Mark::Box { area, outline: Some(_), fill: None } if area.w < 40.0),
            );
        assert_eq!(boxes.count(), sets);
    }
}

#[test]
fn a_report_says_what_was_what_is_and_what_comes_next_with_care() {
    let home = tempfile::tempdir().unwrap();
    let book = book(home.path(), Unit::Kg, 5);
    for report in reports(&book) {
        let document = progress::document(&report);
        let printed = words(&document);
        for line in &report.next {
            let first = line.title.split(':').next().unwrap();
            assert!(printed.contains(first), "{first}");
        }
        for best in &report.bests {
            for number in numbers(&best.value) {
                assert!(numbers(&printed).contains(&number), "{number} of {}", best.value);
            }
        }
        assert!(
            printed.contains("Stop on sharp pain."),
            "the care sentence is on every report"
        );
        for strength in &report.strengths {
            let low_to_high =
                |band: &rungwright::report::progress::Band| band.low < band.middle && band.middle < band.high;
            assert!(strength.band.iter().all(low_to_high));
            assert!(strength.band.windows(2).all(|pair| pair[0].date < pair[1].date));
        }
    }
}

#[test]
fn an_empty_gym_still_prints_a_page_that_says_so() {
    let home = tempfile::tempdir().unwrap();
    let book = book(home.path(), Unit::Kg, 0);
    let sheet = the_sheet(&book);
    assert_eq!(
        words(&pages::document(&sheet))
            .matches("Nobody is on this sheet.")
            .count(),
        1
    );
    pdf(&class::document(&sheet)).unwrap();
}
