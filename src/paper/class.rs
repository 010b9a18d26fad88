//! Tonight's sheet for a whole class: a table a movement, a row a rail, with boxes to tick.

use std::collections::BTreeMap;

use crate::report::sheet::{AthleteSheet, Card, Sheet, Work};

use super::face::Face;
use super::page::{Area, Document, HEIGHT, Ink, MARGIN, Page, WIDTH};
use super::sheet::{bound, care_line, day, terms};
use super::wrap::{fitting, wrap};

/// One rail of one athlete.
type Row<'s> = (&'s AthleteSheet, &'s Card);

/// Left edges of what stands in a row.
const HAND: f32 = MARGIN + 152.0;
const WORK: f32 = MARGIN + 172.0;
const BOXES: f32 = MARGIN + 373.0;
const FLOOR: f32 = HEIGHT - MARGIN - 30.0;
const ROW: f32 = 40.0;
/// Boxes beside each other; more sets go on in a second row of smaller ones.
const ACROSS: u16 = 5;
const BOX: f32 = 28.0;

/// The sheet, a table a movement.
pub fn document(sheet: &Sheet) -> Document {
    let day = day(sheet.on);
    let mut table = Table {
        sheet,
        day: day.clone(),
        pages: Vec::new(),
        page: Page::default(),
        y: FLOOR,
        title: String::new(),
    };
    for (movement, rows) in by_movement(sheet) {
        table.movement(&movement, &rows);
    }
    table.resting();
    table.close();
    bound(&sheet.gym, &day, format!("{}, {day}", sheet.gym), table.pages)
}

/// Rows by movement, the movement most rails do first; within it in the sheet's order.
fn by_movement(sheet: &Sheet) -> Vec<(String, Vec<Row<'_>>)> {
    let mut rows: BTreeMap<&str, Vec<Row<'_>>> = BTreeMap::new();
    for athlete in &sheet.athletes {
        for card in &athlete.cards {
            if let Some(work) = &card.work {
                rows.entry(&work.movement_title)
                    .or_default()
                    .push((athlete, card));
            }
        }
    }
    let mut rows: Vec<(String, Vec<Row<'_>>)> = rows
        .into_iter()
        .map(|(title, rows)| (title.to_owned(), rows))
        .collect();
    rows.sort_by(|(a, one), (b, other)| other.len().cmp(&one.len()).then(a.cmp(b)));
    rows
}

struct Table<'s> {
    sheet: &'s Sheet,
    day: String,
    pages: Vec<Page>,
    page: Page,
    y: f32,
    title: String,
}

impl Table<'_> {
    /// Goes on over the page when `height` more does not fit.
    fn make_room(&mut self, height: f32) {
        if self.y + height <= FLOOR {
            return;
        }
        let began = !self.title.is_empty();
        self.close();
        let quiet = (Face::Label, 10.0, Ink::QUIET);
        self.page.words(MARGIN, MARGIN + 8.0, quiet, &self.sheet.gym);
        self.page.words_to(WIDTH - MARGIN, MARGIN + 8.0, quiet, &self.day);
        self.y = MARGIN + 20.0;
        if began {
            self.head(&format!("{} (goes on)", self.title));
        }
    }

    fn close(&mut self) {
        if !self.page.marks.is_empty() {
            care_line(&mut self.page);
            self.pages.push(std::mem::take(&mut self.page));
        }
    }

    fn head(&mut self, words: &str) {
        let bar = Area::new(MARGIN, self.y, WIDTH - 2.0 * MARGIN, 22.0);
        self.page.boxed(bar, Some(Ink::SHADE), None);
        self.page.words(
            MARGIN + 6.0,
            self.y + 15.5,
            (Face::Strong, 13.0, Ink::BLACK),
            words,
        );
        let label = (Face::Label, 9.0, Ink::QUIET);
        self.page
            .words(BOXES, self.y + 14.5, label, "done: reps or seconds, a box a set");
        self.y += 22.0;
    }

    fn movement(&mut self, title: &str, rows: &[Row<'_>]) {
        self.title.clear();
        let minding = minding(rows);
        self.make_room(22.0 + ROW * 2.0);
        self.head(title);
        self.title = title.to_owned();
        for (athlete, card) in rows {
            self.row(athlete, card, &minding);
        }
        self.notes(&minding);
        self.y += 10.0;
        self.title.clear();
    }

    fn row(&mut self, athlete: &AthleteSheet, card: &Card, minding: &[String]) {
        let Some(work) = &card.work else { return };
        let extra = work.sets.saturating_sub(1) / ACROSS;
        let who = Who::of(athlete, &marks(athlete, card, minding));
        let height = who.height().max(ROW + f32::from(extra) * BOX);
        self.make_room(height);
        let (top, page) = (self.y, &mut self.page);
        who.draw(page, top);
        page.hand(HAND + 6.0, top + 14.0, 7.5, card.rail);
        let big = (Face::Number, 13.0, Ink::BLACK);
        let mut x = page.words(WORK, top + 15.0, big, &format!("{} × {}", work.sets, work.asked));
        x = match &work.load {
            Some(load) => page.words(x + 9.0, top + 15.0, big, &load.hung),
            None => x,
        };
        if let Some(plates) = work
            .load
            .as_ref()
            .map(|load| &load.plates)
            .filter(|plates| !plates.is_empty())
        {
            let size = fitting(plates, Face::Label, &[10.0, 9.0, 8.0], BOXES - x - 10.0);
            page.words(x + 7.0, top + 15.0, (Face::Label, size, Ink::BLACK), plates);
        }
        let rung = format!("{}: {}", card.verdict.id(), card.rung_title);
        let room = BOXES - WORK - 8.0;
        let size = fitting(&rung, Face::Label, &[9.5, 8.5, 7.5], room);
        page.words(WORK, top + 26.0, (Face::Label, size, Ink::BLACK), &rung);
        let terms = short_terms(work);
        let size = fitting(&terms, Face::Label, &[9.0, 8.5, 8.0, 7.5, 7.0], room);
        page.words(WORK, top + 36.5, (Face::Label, size, Ink::QUIET), &terms);
        boxes(page, top + 5.0, work.sets);
        self.y += height;
        self.page.rule((MARGIN, WIDTH - MARGIN), self.y, 0.5, Ink::LINE);
    }

    /// Cautions of the movement's rows, each once, by the number that rows point with.
    fn notes(&mut self, minding: &[String]) {
        for (nth, note) in minding.iter().enumerate() {
            let words = format!("{}  {note}", nth + 1);
            for line in wrap(&words, Face::Text, 9.0, WIDTH - 2.0 * MARGIN - 4.0) {
                self.make_room(12.0);
                self.y += 11.5;
                self.page
                    .words(MARGIN + 2.0, self.y, (Face::Text, 9.0, Ink::BLACK), &line);
            }
        }
    }

    /// Rails without work tonight, and athletes on no ladder: named, so that nobody is missing from the sheet.
    fn resting(&mut self) {
        let mut said: Vec<String> = Vec::new();
        for athlete in &self.sheet.athletes {
            if athlete.cards.is_empty() {
                said.push(format!("{}: on no ladder yet.", athlete.name));
            }
            let paused = athlete.cards.iter().filter(|card| card.work.is_none());
            said.extend(paused.map(|card| {
                format!(
                    "{}, {}: no work today. {}",
                    athlete.name,
                    super::sheet::title(card),
                    card.why
                )
            }));
            said.extend(
                athlete
                    .care
                    .iter()
                    .map(|note| format!("{}: {note}", athlete.name)),
            );
        }
        if said.is_empty() {
            return;
        }
        self.title.clear();
        self.make_room(60.0);
        self.head("Mind who");
        for sentence in said {
            for line in wrap(&sentence, Face::Text, 10.0, WIDTH - 2.0 * MARGIN - 4.0) {
                self.make_room(14.0);
                self.y += 13.5;
                self.page
                    .words(MARGIN + 2.0, self.y, (Face::Text, 10.0, Ink::BLACK), &line);
            }
        }
    }
}

/// The left column: a name and what to mind of it, in as many lines as they take. Neither is ever cut: one tells people apart,
/// the other keeps them well.
struct Who {
    size: f32,
    names: Vec<String>,
    marks: Vec<String>,
}

const MARKS: f32 = 9.0;
const NAME_LINE: f32 = 12.0;
const MARKS_LINE: f32 = 10.5;

impl Who {
    fn of(athlete: &AthleteSheet, marks: &str) -> Self {
        let room = HAND - MARGIN - 14.0;
        let size = fitting(&athlete.name, Face::Strong, &[12.0, 11.0, 10.0, 9.0], room);
        Self {
            size,
            names: wrap(&athlete.name, Face::Strong, size, room),
            marks: wrap(marks, Face::Label, MARKS, room),
        }
    }

    fn height(&self) -> f32 {
        let lines = |lines: &[String]| f32::from(u8::try_from(lines.len()).unwrap_or(u8::MAX));
        12.0 + NAME_LINE * lines(&self.names) + MARKS_LINE * lines(&self.marks)
    }

    fn draw(&self, page: &mut Page, top: f32) {
        let mut y = top + 3.0;
        for line in &self.names {
            y += NAME_LINE;
            page.words(MARGIN + 2.0, y, (Face::Strong, self.size, Ink::BLACK), line);
        }
        y += 3.0;
        for line in &self.marks {
            y += MARKS_LINE;
            page.words(MARGIN + 2.0, y, (Face::Label, MARKS, Ink::QUIET), line);
        }
    }
}

/// Every caution of these rows, once, in the order they come.
fn minding(rows: &[Row<'_>]) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for (_, card) in rows {
        for note in &card.mind {
            if !all.contains(note) {
                all.push(note.clone());
            }
        }
    }
    all
}

/// "weigh in first · elbow L 4 · not before Sat 28 Nov · mind 1 3".
fn marks(athlete: &AthleteSheet, card: &Card, minding: &[String]) -> String {
    let mut parts: Vec<String> = Vec::new();
    if athlete.weigh_in_first {
        parts.push("weigh in first".to_owned());
    }
    parts.extend(athlete.hurts.first().cloned());
    parts.extend(card.not_before.as_ref().map(|date| format!("not before {date}")));
    let numbers: Vec<String> = (1..)
        .zip(minding)
        .filter(|(_, note)| card.mind.contains(note))
        .map(|(number, _): (usize, _)| number.to_string())
        .collect();
    if !numbers.is_empty() {
        parts.push(format!("mind {}", numbers.join(" ")));
    }
    parts.join(" · ")
}

fn short_terms(work: &Work) -> String {
    match (&work.load, &work.help) {
        (None, Some(help)) => format!("{help} · {}", terms(work)),
        _ => terms(work),
    }
}

fn boxes(page: &mut Page, top: f32, sets: u16) {
    for nth in 0..sets {
        let (row, column) = (nth / ACROSS, nth % ACROSS);
        let x = BOXES + f32::from(column) * (BOX + 2.0);
        let y = top + f32::from(row) * BOX;
        page.boxed(Area::new(x, y, BOX, BOX - 2.0), None, Some((1.0, Ink::BLACK)));
        let style = (Face::Label, 7.0, Ink::LINE);
        page.words(x + 2.5, y + 7.5, style, &(nth + 1).to_string());
    }
}
