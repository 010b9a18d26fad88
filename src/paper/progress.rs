//! The report of one athlete's progress, to hand over.

use crate::report::progress::{BestLine, LadderProgress, NextLine, RailProgress, Report, Strength};
use crate::units::{Mass, Rail, Unit};

use super::face::Face;
use super::page::{Area, Document, HEIGHT, Ink, MARGIN, Mark, Page, WIDTH};
use super::plot::{Plot, draw};
use super::sheet::CARE;
use super::wrap::{fitting, wrap};

const FLOOR: f32 = HEIGHT - MARGIN - 12.0;
const ROOM: f32 = WIDTH - 2.0 * MARGIN;

/// The report.
pub fn document(report: &Report) -> Document {
    let period = format!(
        "{} to {}",
        report.from.format("%-d %B %Y"),
        report.on.format("%-d %B %Y")
    );
    let mut flow = Flow {
        pages: Vec::new(),
        page: Page::default(),
        y: MARGIN,
    };
    flow.head(report, &period);
    flow.ladders(report);
    flow.strengths(report);
    flow.bests(&report.bests);
    flow.bodyweight(report);
    flow.next(report);
    flow.pages.push(flow.page);
    let mut document = Document {
        title: format!("{}, {period}", report.name),
        pages: flow.pages,
    };
    document.own_up();
    document.number(&format!("{} · {period}", report.gym));
    document
}

/// Pages filled from top to bottom.
struct Flow {
    pages: Vec<Page>,
    page: Page,
    y: f32,
}

impl Flow {
    fn make_room(&mut self, height: f32) {
        if self.y + height > FLOOR && self.y > MARGIN + 1.0 {
            self.pages.push(std::mem::take(&mut self.page));
            self.y = MARGIN;
        }
    }

    /// A sentence in lines; goes on over the page.
    fn say(&mut self, x: f32, style: (Face, f32, Ink), words: &str) {
        let line_height = style.1 * 1.35;
        for line in wrap(words, style.0, style.1, WIDTH - MARGIN - x) {
            self.make_room(line_height);
            self.y += line_height;
            self.page.words(x, self.y, style, &line);
        }
    }

    fn section(&mut self, title: &str, needs: f32) {
        self.make_room(30.0 + needs);
        self.y += 24.0;
        self.page
            .words(MARGIN, self.y, (Face::Strong, 13.0, Ink::BLACK), title);
        self.y += 5.0;
        self.page.rule((MARGIN, WIDTH - MARGIN), self.y, 1.0, Ink::BLACK);
        self.y += 3.0;
    }

    fn head(&mut self, report: &Report, period: &str) {
        let quiet = (Face::Label, 10.0, Ink::QUIET);
        self.y += 8.0;
        self.page.words(MARGIN, self.y, quiet, &report.gym);
        self.page.words_to(WIDTH - MARGIN, self.y, quiet, period);
        let size = fitting(&report.name, Face::Strong, &[24.0, 20.0, 16.0, 13.0], ROOM);
        self.y += 8.0;
        self.say(MARGIN, (Face::Strong, size, Ink::BLACK), &report.name);
        self.say(MARGIN, (Face::Text, 11.0, Ink::BLACK), &report.summary.join(" "));
    }

    fn ladders(&mut self, report: &Report) {
        if report.ladders.is_empty() {
            return;
        }
        self.section("Ladders: where the hands were, and where they are", 90.0);
        self.y += 4.0;
        let key = "hollow: at the start · solid: now · a rung's mark is longer where its standard was met in this time";
        self.say(MARGIN, (Face::Label, 9.0, Ink::QUIET), key);
        for ladder in &report.ladders {
            self.ladder(ladder);
        }
    }

    fn ladder(&mut self, ladder: &LadderProgress) {
        self.make_room(58.0 + 18.0 * lines(ladder.rails.len()));
        self.y += 19.0;
        self.page
            .words(MARGIN, self.y, (Face::Strong, 11.0, Ink::BLACK), &ladder.title);
        for rail in &ladder.rails {
            self.y += 20.0;
            lying(&mut self.page, self.y - 4.0, ladder, rail);
            let words = rail_words(rail);
            let left = MARGIN + 232.0;
            let mut first = true;
            for line in wrap(&words, Face::Text, 10.0, WIDTH - MARGIN - left) {
                if !first {
                    self.y += 13.0;
                }
                first = false;
                self.page
                    .words(left, self.y, (Face::Text, 10.0, Ink::BLACK), &line);
            }
        }
    }

    fn strengths(&mut self, report: &Report) {
        if report.strengths.is_empty() {
            return;
        }
        self.section("Strength over time", 150.0);
        let banded = report.strengths.iter().any(|strength| !strength.band.is_empty());
        let band = if banded {
            " · grey: 80 % of what is believed, dashed its middle"
        } else {
            ""
        };
        let key = format!(
            "{} of system load for one rep · solid: a logged single · hollow: worked out from reps (Epley){band}",
            report.unit.sign()
        );
        self.y += 4.0;
        self.say(MARGIN, (Face::Label, 9.0, Ink::QUIET), &key);
        for pair in report.strengths.chunks(2) {
            self.make_room(150.0);
            let half = if pair.len() == 1 {
                ROOM
            } else {
                (ROOM - 18.0) / 2.0
            };
            for (nth, strength) in (0u8..).zip(pair) {
                let area = Area::new(
                    MARGIN + f32::from(nth) * (half + 18.0),
                    self.y + 22.0,
                    half,
                    116.0,
                );
                self.page.words(
                    area.x,
                    self.y + 14.0,
                    (Face::Strong, 10.5, Ink::BLACK),
                    &strength.title,
                );
                plot(&mut self.page, area, strength, report);
            }
            self.y += 144.0;
        }
    }

    fn bests(&mut self, bests: &[BestLine]) {
        if bests.is_empty() {
            return;
        }
        self.section("Bests", 60.0);
        let columns = [
            MARGIN,
            MARGIN + 118.0,
            MARGIN + 196.0,
            MARGIN + 320.0,
            MARGIN + 418.0,
        ];
        let label = (Face::Label, 9.0, Ink::QUIET);
        self.y += 12.0;
        for (x, head) in columns
            .into_iter()
            .zip(["movement", "of", "now", "on", "at the start"])
        {
            self.page.words(x, self.y, label, head);
        }
        for best in bests {
            self.make_room(15.0);
            self.y += 14.5;
            let face = if best.is_new { Face::Strong } else { Face::Text };
            let then = best.then.as_deref().unwrap_or("none yet");
            let cells = [&best.what, &best.measure, &best.value, &best.when].map(String::as_str);
            let cells = [cells[0], cells[1], cells[2], cells[3], then];
            for (nth, cell) in cells.into_iter().enumerate() {
                let x = columns.get(nth).copied().unwrap_or(MARGIN);
                let right = columns.get(nth + 1).copied().unwrap_or(WIDTH - MARGIN);
                let face = if nth == 2 { face } else { Face::Label };
                let size = fitting(cell, face, &[10.0, 9.0, 8.0, 7.0], right - x - 5.0);
                self.page.words(x, self.y, (face, size, Ink::BLACK), cell);
            }
            self.page
                .rule((MARGIN, WIDTH - MARGIN), self.y + 4.0, 0.4, Ink(0xc4));
        }
    }

    fn bodyweight(&mut self, report: &Report) {
        if report.weighed.len() < 2 {
            return;
        }
        self.section("Bodyweight", 110.0);
        let dots: Vec<_> = report
            .weighed
            .iter()
            .map(|(date, kg)| (*date, in_unit(*kg, report.unit), true))
            .collect();
        let area = Area::new(MARGIN, self.y + 10.0, ROOM, 96.0);
        let plot = Plot {
            days: (report.from, report.on),
            dots: &dots,
            band: &[],
            joined: true,
            unit: report.unit.sign(),
        };
        draw(&mut self.page, area, &plot);
        self.y += 110.0;
    }

    fn next(&mut self, report: &Report) {
        self.section("What comes next", 70.0);
        if report.next.is_empty() {
            self.say(MARGIN, (Face::Text, 10.5, Ink::BLACK), "On no ladder yet.");
        }
        for line in &report.next {
            self.next_line(line);
        }
        self.y += 6.0;
        for sentence in &report.care {
            self.say(
                MARGIN,
                (Face::Text, 9.5, Ink::BLACK),
                &format!("Mind: {sentence}"),
            );
        }
        self.y += 4.0;
        self.say(MARGIN, (Face::Strong, 9.5, Ink::BLACK), CARE);
        let estimates = "Estimates and dates are no promise. Follow local rules and licensed practitioners.";
        self.say(MARGIN, (Face::Text, 9.5, Ink::BLACK), estimates);
    }

    fn next_line(&mut self, line: &NextLine) {
        self.make_room(46.0);
        self.y += 8.0;
        let text = (Face::Text, 10.5, Ink::BLACK);
        let title = format!("{} ({})", line.title, line.verdict.id());
        self.say(MARGIN, (Face::Strong, 10.5, Ink::BLACK), &title);
        let work = line.work.as_deref().unwrap_or("No work on this rung for now");
        self.say(MARGIN + 10.0, text, &format!("{work}."));
        self.say(MARGIN + 10.0, (Face::Text, 10.0, Ink::QUIET), &line.why);
    }
}

fn plot(page: &mut Page, area: Area, strength: &Strength, report: &Report) {
    let unit = report.unit;
    let dots: Vec<_> = strength
        .days
        .iter()
        .map(|(date, kg, single)| (*date, in_unit(*kg, unit), *single))
        .collect();
    let band: Vec<_> = strength
        .band
        .iter()
        .map(|band| {
            let [low, middle, high] = [band.low, band.middle, band.high].map(|kg| in_unit(kg, unit));
            (band.date, low, middle, high)
        })
        .collect();
    let plot = Plot {
        days: (report.from, report.on),
        dots: &dots,
        band: &band,
        joined: false,
        unit: unit.sign(),
    };
    draw(page, area, &plot);
}

fn in_unit(kg: f64, unit: Unit) -> f64 {
    Mass::from_kg(kg).in_unit(unit)
}

fn lines(count: usize) -> f32 {
    f32::from(u16::try_from(count).unwrap_or(u16::MAX))
}

/// "Two-finger help → One-finger help. Met: Two-finger help on 3 Nov."
fn rail_words(rail: &RailProgress) -> String {
    let mut words = match (&rail.then, &rail.now) {
        (Some((_, then)), Some((_, now))) if then == now => format!("{now}, as at the start."),
        (Some((_, then)), Some((_, now))) => format!("{then} → {now}."),
        (None, Some((_, now))) => format!("{now}; no record at the start."),
        (_, None) => "No record of this year.".to_owned(),
    };
    let met: Vec<String> = rail
        .passed
        .iter()
        .map(|(title, date)| format!("{title} ({})", date.format("%-d %b")))
        .collect();
    if !met.is_empty() {
        words.push_str(&format!(" Met: {}.", met.join(", ")));
    }
    words
}

/// A rail lying, the ground at the left: a mark a rung, hollow where the hand was, solid where it is.
fn lying(page: &mut Page, y: f32, ladder: &LadderProgress, rail: &RailProgress) {
    page.hand(MARGIN + 10.0, y, 7.0, rail.rail);
    let (from, to) = (MARGIN + 26.0, MARGIN + 220.0);
    page.rule((from, to), y, 2.2, Ink::QUIET);
    let count = lines(ladder.rungs.len()).max(1.0);
    let x = |half_rungs: usize| from + (lines(half_rungs) / 2.0 + 0.5) / count * (to - from);
    for (nth, rung) in ladder.rungs.iter().enumerate() {
        let met = rail.passed.iter().any(|(title, _)| title == rung);
        let reach = if met { 8.0 } else { 4.0 };
        let goal = nth + 1 == ladder.rungs.len();
        let points = vec![(x(2 * nth), y - reach), (x(2 * nth), y + reach)];
        page.line(points, if goal { 2.4 } else { 1.0 }, Ink::QUIET, false);
    }
    let hand = |page: &mut Page, half_rungs: usize, fill: Ink| {
        let r = 4.6;
        match rail.rail {
            Rail::Right => {
                let disc = |r, ink| Mark::Disc {
                    x: x(half_rungs),
                    y,
                    r,
                    fill: Some(ink),
                };
                page.marks.push(disc(r, Ink::BLACK));
                page.marks.push(disc(r - 1.2, fill));
            }
            _ => page.boxed(
                Area::new(x(half_rungs) - r + 0.6, y - r + 0.6, 2.0 * r - 1.2, 2.0 * r - 1.2),
                Some(fill),
                Some((1.2, Ink::BLACK)),
            ),
        }
    };
    if let Some((then, _)) = rail.then {
        hand(page, then, Ink::WHITE);
    }
    if let Some((now, _)) = rail.now {
        hand(page, now, Ink::BLACK);
    }
}
