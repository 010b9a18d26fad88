//! The sheet of a meet, a page an athlete: what is planned, and room to write what was lifted.

use crate::report::meet::{CARE, LiftOf, MeetOf, MeetSheet, NAMES, TryOf, rest_words};

use super::face::Face;
use super::page::{Area, Document, Ink, MARGIN, Page, WIDTH};
use super::sheet::{FLOOR, bound, care_line, day, free_lines, lines, named_page, page_is_fresh};
use super::wrap::{fitting, wrap};

const PAD: f32 = 8.0;
const LEFT: f32 = MARGIN + PAD;
const RIGHT: f32 = WIDTH - MARGIN - PAD;
/// Where the load of an attempt begins, what makes it, and where the lifter writes.
const LOAD: f32 = LEFT + 48.0;
const MAKES: f32 = LOAD + 88.0;
const WRITTEN: f32 = RIGHT - 164.0;
/// Side of a box to tick.
const TICK: f32 = 14.0;
const SMALL: f32 = 9.5;
const SMALL_LINE: f32 = 11.0;
const QUIET: (Face, f32, Ink) = (Face::Label, SMALL, Ink::QUIET);

/// The sheet, a page an athlete; more lifts than a page holds go on over the page.
pub fn document(sheet: &MeetSheet) -> Document {
    let day = day(sheet.on);
    let mut pages = Vec::new();
    for athlete in &sheet.athletes {
        pages_of(athlete, sheet, &day, &mut pages);
    }
    bound(&sheet.gym, &day, format!("{}, meet, {day}", sheet.gym), pages)
}

fn pages_of(athlete: &MeetOf, sheet: &MeetSheet, day: &str, pages: &mut Vec<Page>) {
    let (mut page, mut y) = head(athlete, sheet, day, false);
    let unit = sheet.unit.sign();
    let mut over_the_page = |page: &mut Page, y: &mut f32, height: f32| {
        if *y + height > FLOOR && !page_is_fresh(*y) {
            care_line(page);
            pages.push(std::mem::take(page));
            (*page, *y) = head(athlete, sheet, day, true);
        }
    };
    for lift in &athlete.lifts {
        let laid = Laid::of(lift);
        over_the_page(&mut page, &mut y, laid.height);
        laid.draw(&mut page, y, unit);
        y += laid.height + 6.0;
    }
    let care = wrap(CARE, Face::Text, SMALL, WIDTH - 2.0 * MARGIN);
    over_the_page(&mut page, &mut y, TOTAL + 12.0 + SMALL_LINE * lines(care.len()));
    totals(&mut page, y, athlete, unit);
    y += TOTAL + 6.0;
    for line in &care {
        y += SMALL_LINE;
        page.words(MARGIN, y, (Face::Text, SMALL, Ink::BLACK), line);
    }
    if FLOOR - y > 70.0 {
        page.words(MARGIN, y + 22.0, QUIET, "Notes");
        free_lines(&mut page, y + 40.0, if FLOOR - y > 110.0 { 3 } else { 1 });
    }
    care_line(&mut page);
    pages.push(page);
}

/// Name and bodyweight, with a line to write today's on. Returns the page and where it goes on.
fn head(athlete: &MeetOf, sheet: &MeetSheet, day: &str, goes_on: bool) -> (Page, f32) {
    let (mut page, mut y) = named_page(&format!("{} · meet", sheet.gym), day, &athlete.name, goes_on);
    if goes_on {
        return (page, y);
    }
    y += 22.0;
    let text = (Face::Text, 11.0, Ink::BLACK);
    let weighs = athlete.weighs.as_deref().unwrap_or("Not weighed yet");
    let x = page.words(MARGIN, y, text, &format!("{weighs}. On the day:"));
    blank(&mut page, x + 6.0, y, 64.0, sheet.unit.sign());
    (page, y + 14.0)
}

/// A line to write on, and the unit after it.
fn blank(page: &mut Page, x: f32, y: f32, width: f32, unit: &str) {
    page.rule((x, x + width), y + 2.0, 0.8, Ink::LINE);
    page.words(x + width + 4.0, y, (Face::Text, 11.0, Ink::BLACK), unit);
}

/// One lift, its lines broken and its height known.
struct Laid<'l> {
    lift: &'l LiftOf,
    /// What makes each attempt, in lines.
    makes: Vec<Vec<String>>,
    small: Vec<String>,
    height: f32,
}

/// The least height of an attempt's row.
const ROW: f32 = 26.0;

fn row_height(lines_of_it: usize) -> f32 {
    (SMALL_LINE * lines(lines_of_it) + 4.0).max(ROW)
}

impl<'l> Laid<'l> {
    fn of(lift: &'l LiftOf) -> Self {
        let room = RIGHT - LEFT;
        let mut small = Vec::new();
        let makes: Vec<Vec<String>> = match &lift.refused {
            Some(why) => {
                small = wrap(why, Face::Text, SMALL, room);
                Vec::new()
            }
            None => (0..NAMES.len())
                .map(|nth| lift.tries.get(nth).map_or_else(Vec::new, makes_of))
                .collect(),
        };
        if !lift.warm_up.is_empty() {
            let words = format!("Warm-up: {}.", lift.warm_up.join("; "));
            small.extend(wrap(&words, Face::Text, SMALL, room));
        }
        let rows: f32 = makes.iter().map(|lines| row_height(lines.len())).sum();
        Self {
            lift,
            height: PAD + 16.0 + rows + SMALL_LINE * lines(small.len()) + PAD,
            makes,
            small,
        }
    }

    fn draw(&self, page: &mut Page, top: f32, unit: &str) {
        let area = Area::new(MARGIN, top, WIDTH - 2.0 * MARGIN, self.height);
        page.boxed(area, None, Some((1.0, Ink::LINE)));
        let mut y = top + PAD + 10.0;
        page.words(LEFT, y, (Face::Strong, 13.0, Ink::BLACK), &self.lift.title);
        if !self.makes.is_empty() {
            page.words_to(RIGHT, y, QUIET, &rest_words());
        }
        y += 6.0;
        for (nth, (makes, name)) in self.makes.iter().zip(NAMES).enumerate() {
            attempt(page, y, (name, makes, self.lift.tries.get(nth)), unit);
            y += row_height(makes.len());
        }
        for line in &self.small {
            y += SMALL_LINE;
            page.words(LEFT, y, (Face::Text, SMALL, Ink::BLACK), line);
        }
    }
}

/// Plates, the load in all and the chance, in lines.
fn makes_of(attempt: &TryOf) -> Vec<String> {
    let room = WRITTEN - MAKES - 8.0;
    let mut said = Vec::new();
    if !attempt.plates.is_empty() {
        said.extend(wrap(
            &format!("plates {}", attempt.plates),
            Face::Label,
            SMALL,
            room,
        ));
    }
    let words = format!("{} · chance {}", attempt.in_all, attempt.chance);
    said.extend(wrap(&words, Face::Label, SMALL, room));
    said
}

/// A row: what is planned, and where it is written what came of it.
fn attempt(page: &mut Page, top: f32, (name, makes, planned): (&str, &[String], Option<&TryOf>), unit: &str) {
    page.rule((LEFT, RIGHT), top, 0.5, Ink::LINE);
    let y = top + 18.0;
    page.words(LEFT, y, (Face::Text, 11.0, Ink::BLACK), name);
    match planned {
        Some(attempt) => {
            let size = fitting(
                &attempt.hung,
                Face::Number,
                &[18.0, 15.0, 12.0, 9.0],
                MAKES - LOAD - 6.0,
            );
            page.words(LOAD, y, (Face::Number, size, Ink::BLACK), &attempt.hung);
        }
        None => {
            page.words(LOAD, y, QUIET, "not planned: these plates give nothing heavier");
        }
    }
    // One line stands beside the load; two and more begin above it.
    let mut line = if makes.len() == 1 {
        y - SMALL_LINE
    } else {
        top + 1.0
    };
    for words in makes {
        line += SMALL_LINE;
        page.words(MAKES, line, QUIET, words);
    }
    let label = (Face::Label, 10.0, Ink::QUIET);
    blank(page, WRITTEN, y, 42.0, unit);
    let mut x = WRITTEN + 64.0;
    for word in ["good", "no lift"] {
        page.boxed(Area::new(x, y - 11.0, TICK, TICK), None, Some((1.2, Ink::BLACK)));
        x = page.words(x + TICK + 4.0, y, label, word) + 10.0;
    }
}

/// The height of the box of totals.
const TOTAL: f32 = 46.0;

/// The day's total by added load: of all openers, seconds and thirds, and what was lifted.
fn totals(page: &mut Page, top: f32, athlete: &MeetOf, unit: &str) {
    let area = Area::new(MARGIN, top, WIDTH - 2.0 * MARGIN, TOTAL - 4.0);
    page.boxed(area, None, Some((1.5, Ink::BLACK)));
    page.words(LEFT, top + 27.0, (Face::Strong, 13.0, Ink::BLACK), "Total, added");
    let plural = ["openers", "seconds", "thirds"];
    for ((x, name), total) in (0u8..).zip(plural).zip(&athlete.totals) {
        let x = LEFT + 88.0 + 84.0 * f32::from(x);
        page.words(x, top + 14.0, QUIET, name);
        let words = total.as_deref().unwrap_or("–");
        page.words(x, top + 33.0, (Face::Number, 15.0, Ink::BLACK), words);
    }
    page.words(
        WRITTEN,
        top + 14.0,
        QUIET,
        "lifted: the heaviest good one of each",
    );
    blank(page, WRITTEN, top + 33.0, 90.0, unit);
}
