//! One rail's card: verdict, numbers, plates, sets, reasons, cautions.

mod why;

use egui::{Rect, Response, Role, Sense, Ui, WidgetInfo, pos2, vec2};

use crate::ui::action::Actions;
use crate::ui::pen::{Ink, Line, Pen};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{Asked, CardView, Phrase, Prescription};
use crate::ui::widgets::{self, SetChip, badge_with_word, caution_box, hand_disc, set_chip};
use crate::units::Rail;

use super::state::NextState;
use super::words::{after_words, amount_words, asked_words, range_words, rest_words};

const BELT: egui::Vec2 = vec2(200.0, 172.0);

/// How much room the cards have.
#[derive(Clone, Copy)]
pub(super) struct Room {
    /// The large type of a wide window.
    pub wide: bool,
    /// Chips of sets also on a card across the whole width of a narrow window.
    pub chips: bool,
}

/// What a card looks like now.
struct Look<'a> {
    card: &'a CardView,
    nth: usize,
    wide: bool,
    chips: bool,
    /// The set that the dock would log, if this is its card: its words.
    next_set: Option<String>,
}

/// Inner margin of a card.
fn padding(wide: bool) -> f32 {
    if wide { 19.0 } else { 12.0 }
}

/// Height of the card in a column of `width`.
pub(super) fn height(ui: &mut Ui, card: &CardView, width: f32, room: Room) -> f32 {
    let Room { wide, chips } = room;
    let look = Look {
        card,
        nth: 0,
        wide,
        chips,
        next_set: None,
    };
    let mut actions = Actions::default();
    let inner = width - 2.0 * padding(wide) - belt_room(card, width);
    let text = Pen::measure(ui, inner, |pen| write(pen, &look, &mut actions)) + 2.0 * padding(wide) - 4.0;
    if belt_room(card, width) > 0.0 {
        text.max(BELT.y + 36.0)
    } else {
        text
    }
}

/// Width that the belt takes beside the words; 0 where nothing hangs or the card is narrow.
fn belt_room(card: &CardView, width: f32) -> f32 {
    let hangs = card.asked.prescription().is_some_and(|work| work.belt.is_some());
    if hangs && width > 560.0 {
        BELT.x + 14.0
    } else {
        0.0
    }
}

/// Draws the card; a press makes it the one that the dock logs for.
pub(super) fn card_ui(
    ui: &mut Ui,
    rect: Rect,
    card: &CardView,
    nth: usize,
    room: Room,
    state: &mut NextState,
    actions: &mut Actions,
) {
    let Room { wide, chips } = room;
    let theme = Theme::of(ui);
    widgets::card(ui.painter(), rect, Some(theme.rail(card.rail)), &theme);
    let is_chosen = state.card == nth;
    let response = whole(ui, rect, card, nth, is_chosen);
    if response.clicked() {
        state.choose(nth);
    }
    if response.has_focus() {
        widgets::focus_ring(ui.painter(), rect.shrink(3.0), 6.0, &theme);
    }
    let next_set = is_chosen.then(|| {
        let is_hold = card
            .asked
            .prescription()
            .is_some_and(|work| work.measure.is_hold());
        amount_words(state.amount_for(card), is_hold)
    });
    let look = Look {
        card,
        nth,
        wide,
        chips,
        next_set,
    };
    let padding = padding(wide);
    let belt = belt_room(card, rect.width());
    let inner = Rect::from_min_max(
        rect.min + vec2(padding, padding),
        rect.max - vec2(padding + belt, padding),
    );
    let mut pen = Pen::new(ui, inner);
    write(&mut pen, &look, actions);
    if belt > 0.0
        && let Some(view) = card.asked.prescription().and_then(|work| work.belt.as_ref())
    {
        let place = Rect::from_min_size(pos2(rect.right() - padding - BELT.x, rect.top() + 16.0), BELT);
        widgets::belt(ui.painter(), place, view, &theme);
        let words =
            Line::phrase(&view.words, plain(&theme), strong(&theme)).on_one_line(ui.painter(), BELT.x + 20.0);
        let lowest = rect.bottom() - padding - words.size().y;
        let at = pos2(
            place.center().x - words.size().x / 2.0,
            lowest.min(place.bottom() + 4.0),
        );
        crate::ui::pen::named_galley(ui, at, words);
    }
}

fn whole(ui: &mut Ui, rect: Rect, card: &CardView, nth: usize, is_chosen: bool) -> Response {
    let response = ui.interact(rect, ui.scope_id().with(("card", nth)), Sense::click());
    let words = format!("{}: {}, {}", card.heading, card.verdict.id(), spoken(card));
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, is_chosen, &words));
    response
}

/// The card in a sentence.
fn spoken(card: &CardView) -> String {
    match &card.asked {
        Asked::Pause(lines) => lines.iter().map(Phrase::text).collect::<Vec<_>>().join(" "),
        Asked::WeighInFirst(_) => "weigh in first".to_owned(),
        Asked::Work(work) => {
            let load = work
                .load
                .as_deref()
                .map_or_else(String::new, |load| format!(" at {load}"));
            format!("{} {} {}{load}", work.title, asked_words(work), after_words(work))
        }
    }
}

fn plain(theme: &Theme) -> Ink {
    Ink::new(Face::Label, 15.0, *theme.ink2)
}

fn strong(theme: &Theme) -> Ink {
    Ink::new(Face::LabelStrong, 15.0, *theme.ink)
}

fn write(pen: &mut Pen<'_>, look: &Look<'_>, actions: &mut Actions) {
    heading(pen, look);
    match &look.card.asked {
        Asked::Work(work) => prescription(pen, look, work, false),
        Asked::WeighInFirst(after) => weigh_in_first(pen, look, after.as_ref()),
        Asked::Pause(lines) => pause(pen, lines),
    }
    why::reasons(pen, look, actions);
    for (nth, caution) in look.card.cautions.iter().enumerate() {
        pen.gap(8.0);
        let (height, paint) = caution_box(pen.ui, &caution.words, pen.width());
        if let Some(rect) = pen.room(height) {
            paint(pen.ui, rect);
            why::explain(pen.ui, rect, caution, (look.nth, "caution", nth));
        }
    }
}

/// Disc, hand and verdict.
fn heading(pen: &mut Pen<'_>, look: &Look<'_>) {
    let theme = Theme::of(pen.ui);
    let Some(rect) = pen.room(28.0) else { return };
    let card = look.card;
    let y = rect.center().y;
    let painter = pen.ui.painter().clone();
    hand_disc(&painter, pos2(rect.left() + 13.0, y), 13.0, card.rail, &theme);
    let colour = if card.rail == Rail::Both {
        *theme.ink
    } else {
        theme.rail(card.rail)
    };
    let word_width = Line::new(card.verdict.id(), Ink::new(Face::LabelStrong, 17.0, colour))
        .on_one_line(&painter, f32::INFINITY)
        .size()
        .x;
    let verdict_left = rect.right() - word_width - 28.0;
    let heading = Line::new(&card.heading, Ink::new(Face::LabelStrong, 17.0, colour))
        .on_one_line(&painter, verdict_left - rect.left() - 46.0);
    let at = pos2(rect.left() + 36.0, y - heading.size().y / 2.0);
    crate::ui::pen::named_galley(pen.ui, at, heading);
    let badge = badge_with_word(
        &painter,
        pos2(verdict_left, y),
        card.verdict,
        20.0,
        17.0,
        *theme.raised,
        &theme,
    );
    let response = pen.ui.interact(
        badge,
        pen.ui.scope_id().with(("verdict", look.nth)),
        Sense::hover(),
    );
    response
        .widget_info(|| WidgetInfo::labeled(Role::Status, true, format!("Verdict {}", card.verdict.id())));
}

/// Title, big numbers, load, sets.
fn prescription(pen: &mut Pen<'_>, look: &Look<'_>, work: &Prescription, later: bool) {
    let theme = Theme::of(pen.ui);
    let ink = |colour| if later { *theme.ink3 } else { colour };
    pen.gap(3.0);
    let title = Line::new(&work.title, Ink::new(Face::LabelStrong, 17.0, ink(*theme.ink)));
    pen.write_apart(title, Line::new(&rest_words(work.rest_secs), plain(&theme)));
    let size = if look.wide { size::PRESCRIPTION } else { 38.0 };
    let asked = Ink::new(Face::Number, size, ink(*theme.ink));
    let after = Ink::new(Face::Label, size::BODY, ink(*theme.ink2));
    let mut line = Line::new(&asked_words(work), asked).gap(10.0, &after_words(work), after);
    if let Some(load) = &work.load {
        let load_ink = Ink::new(Face::Number, if look.wide { 32.0 } else { 28.0 }, ink(*theme.ink));
        line = line.gap(4.0, " at ", after).gap(4.0, load, load_ink);
    }
    pen.write(line.on_base());
    if !work.load_words.is_empty() {
        pen.write(Line::phrase(&work.load_words, plain(&theme), strong(&theme)));
    }
    if let Some(last) = &work.last_time {
        pen.gap(2.0);
        pen.write(Line::phrase(last, plain(&theme), strong(&theme)));
    }
    if let Some(day) = &look.card.not_before {
        pen.gap(2.0);
        let words = Phrase::strong(format!("Not before {day}")).then(": days apart are part of the work.");
        pen.write(Line::phrase(
            &words,
            plain(&theme),
            Ink {
                colour: *theme.ember,
                ..strong(&theme)
            },
        ));
    }
    // In a narrow window a card across the whole width leaves the chips out where they would push it out of sight; the dock
    // counts the sets.
    if !later && (look.wide || look.chips || pen.width() < 520.0 || work.belt.is_none()) {
        pen.gap(8.0);
        sets(pen, look, work);
    }
}

/// A chip a set: done, next, later.
fn sets(pen: &mut Pen<'_>, look: &Look<'_>, work: &Prescription) {
    let theme = Theme::of(pen.ui);
    let count = usize::from(work.sets).max(work.done.len());
    let shown = count.min(if pen.width() > 420.0 { 6 } else { 4 });
    let height = if look.wide { 46.0 } else { 40.0 };
    let Some(rect) = pen.room(height) else { return };
    let first = work
        .done
        .len()
        .saturating_sub(shown.saturating_sub(1))
        .min(count - shown);
    let width = (rect.width() - 6.0 * (super::super::ladders::many(shown) - 1.0))
        / super::super::ladders::many(shown);
    for place in 0..shown {
        let nth = first + place;
        let (kind, words) = match work.done.get(nth) {
            Some(done) => (SetChip::Done, done.clone()),
            None if nth == work.done.len() && look.next_set.is_some() => {
                (SetChip::Next, look.next_set.clone().unwrap_or_default())
            }
            None => (SetChip::Later, range_words(work.measure)),
        };
        let x = rect.left() + super::super::ladders::many(place) * (width + 6.0);
        let chip = Rect::from_min_size(pos2(x, rect.top()), vec2(width, rect.height()));
        // A narrow chip leaves the unit out; the card's big numbers say it.
        let short = words.replace(" reps", "").replace(" rep", "");
        let painted = if width < 96.0 { &short } else { &words };
        set_chip(pen.ui.painter(), chip, nth + 1, kind, painted, &theme);
        let response = pen.ui.interact(
            chip,
            pen.ui.scope_id().with(("set", look.nth, nth)),
            Sense::hover(),
        );
        let state = match kind {
            SetChip::Done => "done",
            SetChip::Next => "next",
            SetChip::Later => "not yet",
        };
        response.widget_info(|| {
            WidgetInfo::labeled(Role::Label, true, format!("Set {}, {state}: {words}", nth + 1))
        });
    }
}

/// A scale field stands where the sets would; what follows is quiet.
fn weigh_in_first(pen: &mut Pen<'_>, look: &Look<'_>, after: Option<&Prescription>) {
    let theme = Theme::of(pen.ui);
    pen.gap(4.0);
    pen.write(Line::new(
        "Weigh in first",
        Ink::new(Face::LabelStrong, 26.0, *theme.ink),
    ));
    let words = "The load follows from what you weigh. Type it in the dock below, then Enter.";
    pen.write(Line::new(words, plain(&theme)));
    if let Some(work) = after {
        pen.gap(10.0);
        pen.write(Line::new(
            "After it",
            Ink::new(Face::Text, size::NOTE, *theme.ink3),
        ));
        prescription(pen, look, work, true);
    }
}

/// Words instead of numbers.
fn pause(pen: &mut Pen<'_>, lines: &[Phrase]) {
    let theme = Theme::of(pen.ui);
    pen.gap(6.0);
    for line in lines {
        let plain = Ink::new(Face::Label, 18.0, *theme.ink);
        let strong = Ink::new(Face::LabelStrong, 18.0, *theme.ink);
        pen.write(Line::phrase(line, plain, strong));
        pen.gap(6.0);
    }
}
