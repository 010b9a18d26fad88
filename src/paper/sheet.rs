//! Tonight's sheet, a page an athlete: for a clipboard, read at arm's length and written on with a thick pen.

use crate::report::sheet::{AthleteSheet, Card, Sheet, Work};
use crate::report::words::rail_title;
use crate::units::Rail;

use super::face::Face;
use super::page::{Area, Document, HEIGHT, Ink, MARGIN, Page, WIDTH};
use super::wrap::{fitting, wrap};

/// Lowest point that a card may reach; the foot lies below.
pub(super) const FLOOR: f32 = HEIGHT - MARGIN - 30.0;
/// Side of a box to tick.
const TICK: f32 = 21.0;
/// What care asks, on every page.
pub(super) const CARE: &str = "Stop on sharp pain. Check bar, belt, chain and band, keep a safe way down, and have a spotter for \
                               maximal attempts. Loads are estimates, not medical advice.";

/// The sheet, a page an athlete; long lists go on over the page.
pub fn document(sheet: &Sheet) -> Document {
    let day = day(sheet.on);
    let mut pages = Vec::new();
    for athlete in &sheet.athletes {
        pages_of(athlete, sheet, &day, &mut pages);
    }
    bound(&sheet.gym, &day, format!("{}, {day}", sheet.gym), pages)
}

/// "Wednesday 18 November 2026".
pub(super) fn day(on: chrono::NaiveDate) -> String {
    on.format("%A %-d %B %Y").to_string()
}

/// Pages as a numbered document; one that says so where there is nobody.
pub(super) fn bound(gym: &str, day: &str, title: String, mut pages: Vec<Page>) -> Document {
    if pages.is_empty() {
        pages.push(nobody());
    }
    let mut document = Document { title, pages };
    document.own_up();
    document.number(&format!("{gym} · {day}"));
    document
}

fn pages_of(athlete: &AthleteSheet, sheet: &Sheet, day: &str, pages: &mut Vec<Page>) {
    let (mut page, mut y) = head(athlete, sheet, day, false);
    if athlete.cards.is_empty() {
        let words = "On no ladder yet. Place a hand, or write down what was done.";
        page.words(MARGIN, y + 16.0, (Face::Text, 12.0, Ink::QUIET), words);
        y = free_lines(&mut page, y + 34.0, 6);
    }
    for card in &athlete.cards {
        let laid = Laid::of(card);
        if y + laid.height > FLOOR && !page_is_fresh(y) {
            pages.push(std::mem::take(&mut page));
            (page, y) = head(athlete, sheet, day, true);
        }
        laid.draw(&mut page, y);
        y += laid.height + 10.0;
    }
    let free = ((FLOOR - y - 40.0) / 22.0).floor();
    if free >= 1.0 {
        let lines = if free >= 3.0 { 3 } else { 1 };
        page.words(MARGIN, y + 12.0, (Face::Label, 10.0, Ink::QUIET), "Notes");
        free_lines(&mut page, y + 28.0, lines);
    }
    care_line(&mut page);
    pages.push(page);
}

/// A page that says that nobody is on the sheet.
fn nobody() -> Page {
    let mut page = Page::default();
    page.words(
        MARGIN,
        80.0,
        (Face::Text, 12.0, Ink::BLACK),
        "Nobody is on this sheet.",
    );
    page
}

/// What care asks, above the foot.
pub(super) fn care_line(page: &mut Page) {
    let style = (Face::Label, 8.0, Ink::QUIET);
    for (nth, line) in (0u8..).zip(wrap(CARE, style.0, style.1, WIDTH - 2.0 * MARGIN)) {
        page.words(MARGIN, FLOOR + 12.0 + 10.0 * f32::from(nth), style, &line);
    }
}

/// Whether nothing but the head stands on the page, so that a card larger than a page still finds one.
pub(super) fn page_is_fresh(y: f32) -> bool {
    y < 190.0
}

/// A page with an athlete's name, and how low it goes; one that only goes on is ruled off already.
pub(super) fn named_page(gym: &str, day: &str, name: &str, goes_on: bool) -> (Page, f32) {
    let mut page = Page::default();
    let room = WIDTH - 2.0 * MARGIN;
    let quiet = (Face::Label, 10.0, Ink::QUIET);
    page.words(MARGIN, MARGIN + 8.0, quiet, gym);
    page.words_to(WIDTH - MARGIN, MARGIN + 8.0, quiet, day);
    let name = if goes_on {
        format!("{name} (goes on)")
    } else {
        name.to_owned()
    };
    let size = fitting(&name, Face::Strong, &[26.0, 22.0, 18.0, 14.0], room);
    let mut y = MARGIN + 38.0;
    for line in wrap(&name, Face::Strong, size, room) {
        page.words(MARGIN, y, (Face::Strong, size, Ink::BLACK), &line);
        y += size * 1.15;
    }
    y -= size * 1.15;
    if goes_on {
        page.rule((MARGIN, WIDTH - MARGIN), y + 10.0, 1.0, Ink::BLACK);
        return (page, y + 20.0);
    }
    (page, y)
}

/// Name, bodyweight, pain, and lines to write both on. Returns the page and where it goes on.
fn head(athlete: &AthleteSheet, sheet: &Sheet, day: &str, goes_on: bool) -> (Page, f32) {
    let (mut page, mut y) = named_page(&sheet.gym, day, &athlete.name, goes_on);
    let room = WIDTH - 2.0 * MARGIN;
    if goes_on {
        return (page, y);
    }
    y += 24.0;
    let text = (Face::Text, 11.0, Ink::BLACK);
    let weighs = athlete.weighs.as_deref().map_or_else(
        || "Not weighed yet".to_owned(),
        |weighs| format!("Weighs {weighs}"),
    );
    let mut x = page.words(MARGIN, y, text, &weighs);
    let ask = if athlete.weigh_in_first {
        "Weigh in first:"
    } else {
        "Today:"
    };
    let strong = if athlete.weigh_in_first {
        Face::Strong
    } else {
        Face::Text
    };
    x = page.words(x + 18.0, y, (strong, 11.0, Ink::BLACK), ask);
    page.rule((x + 6.0, x + 70.0), y + 2.0, 0.8, Ink::LINE);
    page.words(x + 74.0, y, text, sheet.unit.sign());
    y += 22.0;
    let hurts = match athlete.hurts.as_slice() {
        [] => "Pain today (0–10):".to_owned(),
        some => format!("Hurts: {}. Today (0–10):", some.join(", ")),
    };
    for line in wrap(&hurts, Face::Text, 11.0, room - 150.0) {
        x = page.words(MARGIN, y, text, &line);
        y += 14.0;
    }
    y -= 14.0;
    page.rule((x + 6.0, WIDTH - MARGIN), y + 2.0, 0.8, Ink::LINE);
    y += 12.0;
    for sentence in &athlete.care {
        for line in wrap(sentence, Face::Text, 10.0, room) {
            y += 13.0;
            page.words(MARGIN, y, (Face::Text, 10.0, Ink::BLACK), &line);
        }
    }
    (page, y + 8.0)
}

/// Lines to write on. Returns where they end.
pub(super) fn free_lines(page: &mut Page, top: f32, count: u8) -> f32 {
    for nth in 0..count {
        let y = top + 22.0 * f32::from(nth);
        page.rule((MARGIN, WIDTH - MARGIN), y, 0.6, Ink::LINE);
    }
    top + 22.0 * f32::from(count)
}

/// One rail's work, its lines broken and its height known.
struct Laid<'c> {
    card: &'c Card,
    title: Vec<String>,
    small: Vec<(Face, String)>,
    rows: u8,
    height: f32,
}

const PAD: f32 = 9.0;
/// Left edge of a card's text: beside the hand.
const INDENT: f32 = 40.0;
const SMALL: f32 = 9.5;
const SMALL_LINE: f32 = 12.0;
/// Width of one set's box with its lines to write on.
const SET: f32 = 119.0;
const SET_ROW: f32 = 33.0;

impl<'c> Laid<'c> {
    fn of(card: &'c Card) -> Self {
        let room = WIDTH - 2.0 * MARGIN - INDENT - PAD;
        let title = wrap(&title(card), Face::Strong, 12.0, room - 96.0);
        let mut small = Vec::new();
        let mut say = |face: Face, words: &str| {
            let lines = wrap(words, face, SMALL, room);
            small.extend(lines.into_iter().map(|line| (face, line)));
        };
        if let Some(date) = &card.not_before {
            say(Face::Strong, &format!("Not before {date}."));
        }
        if let Some(work) = &card.work {
            say(Face::Text, &format!("Warm-up: {}.", work.warm_up.join("; ")));
        }
        say(Face::Text, &format!("Why: {}", card.why));
        for note in &card.mind {
            say(Face::Text, &format!("Mind: {note}"));
        }
        let rows = card.work.as_ref().map_or(0, rows_of_sets);
        let body = match &card.work {
            Some(_) => 52.0 + SET_ROW * f32::from(rows),
            None => 35.0,
        };
        let count = lines(small.len());
        let height = PAD + 15.0 * lines(title.len()) + body + SMALL_LINE * count + 7.0;
        Self {
            card,
            title,
            small,
            rows,
            height,
        }
    }

    fn draw(&self, page: &mut Page, top: f32) {
        let card = self.card;
        let area = Area::new(MARGIN, top, WIDTH - 2.0 * MARGIN, self.height);
        page.boxed(area, None, Some((1.0, Ink::LINE)));
        page.hand(MARGIN + 20.0, top + PAD + 11.0, 10.5, card.rail);
        let left = MARGIN
            + if card.rail == Rail::Both {
                PAD + 4.0
            } else {
                INDENT
            };
        let mut y = top + PAD + 11.0;
        let verdict = (Face::Strong, 11.0, Ink::BLACK);
        page.words_to(area.right() - PAD, y, verdict, card.verdict.id());
        for line in &self.title {
            page.words(left, y, (Face::Strong, 12.0, Ink::BLACK), line);
            y += 15.0;
        }
        y += 10.0;
        match &card.work {
            Some(work) => y = self.work(page, work, left, y),
            None => {
                page.words(
                    left,
                    y,
                    (Face::Strong, 14.0, Ink::BLACK),
                    "No work on this rung today.",
                );
                y += 14.0;
            }
        }
        for (face, line) in &self.small {
            y += SMALL_LINE;
            page.words(left, y, (*face, SMALL, Ink::BLACK), line);
        }
    }

    fn work(&self, page: &mut Page, work: &Work, left: f32, top: f32) -> f32 {
        let mut y = top + 6.0;
        let big = (Face::Number, 22.0, Ink::BLACK);
        let mut x = page.words(left, y, big, &format!("{} × {}", work.sets, work.asked));
        if let Some(load) = &work.load {
            x = page.words(x + 20.0, y, big, &load.hung);
            if !load.plates.is_empty() {
                page.words(
                    x + 10.0,
                    y,
                    (Face::Text, 12.0, Ink::BLACK),
                    &format!("plates {}", load.plates),
                );
            }
        } else if let Some(help) = &work.help {
            page.words(x + 20.0, y, (Face::Text, 12.0, Ink::BLACK), help);
        }
        y += 15.0;
        page.words(left, y, (Face::Label, 11.0, Ink::QUIET), &terms(work));
        let across = per_row();
        let mut nth = 0u16;
        y += 8.0;
        for _ in 0..self.rows {
            for column in 0..across {
                if nth >= work.sets {
                    break;
                }
                nth += 1;
                set_box(page, left + SET * f32::from(column), y, nth, work.is_hold);
            }
            y += SET_ROW;
        }
        y + 2.0
    }
}

pub(super) fn lines(count: usize) -> f32 {
    f32::from(u16::try_from(count).unwrap_or(u16::MAX))
}

fn per_row() -> u8 {
    4
}

fn rows_of_sets(work: &Work) -> u8 {
    u8::try_from(work.sets.div_ceil(u16::from(per_row()))).unwrap_or(u8::MAX)
}

/// "97.5 kg in all at 78 kg · 1 in reserve · rest 3–5 min".
pub(super) fn terms(work: &Work) -> String {
    let reserve = work
        .reserve
        .as_ref()
        .map(|reserve| format!("{reserve} in reserve"));
    let all = work.load.as_ref().map(|load| load.in_all.clone());
    let rest = Some(format!("rest {}", work.rest));
    let parts: Vec<String> = [all, reserve, rest].into_iter().flatten().collect();
    parts.join(" · ")
}

/// A box to tick, the set's number, and a line for reps or seconds and for the reserve.
fn set_box(page: &mut Page, x: f32, y: f32, nth: u16, is_hold: bool) {
    let tick = Area::new(x, y, TICK, TICK);
    page.boxed(tick, None, Some((1.2, Ink::BLACK)));
    page.words_around(
        x + TICK / 2.0,
        y + 14.5,
        (Face::Label, 11.0, Ink::LINE),
        &nth.to_string(),
    );
    let base = y + TICK - 1.0;
    let label = (Face::Label, 9.0, Ink::QUIET);
    let line = if is_hold { 60.0 } else { 34.0 };
    page.rule((x + TICK + 4.0, x + TICK + 4.0 + line), base, 0.8, Ink::LINE);
    let unit = if is_hold { "s" } else { "reps" };
    let end = page.words(x + TICK + 6.0 + line, base, label, unit);
    if !is_hold {
        page.rule((end + 4.0, end + 22.0), base, 0.8, Ink::LINE);
        page.words(end + 24.0, base, label, "RIR");
    }
}

/// "One-arm pull-up, left: Two-finger help → One-finger help".
pub(super) fn title(card: &Card) -> String {
    rail_title(
        &card.ladder_title,
        card.rail,
        card.from.as_deref(),
        &card.rung_title,
    )
}
