//! Totals: the scatter of what was lifted at each bodyweight, bests, another bodyweight, attempts and a meet.

mod axes;
mod cards;
mod header;
mod meet;
mod picture;
mod plot;
mod state;
mod tables;
mod trying;

pub use picture::png_of;
pub use state::{Export, TotalsState};

use egui::{Rect, ScrollArea, Ui, UiBuilder, pos2, vec2};

use crate::coaching::what_if::There;
use crate::report::numbers::tenths;
use crate::report::words::capital;
use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed};
use crate::ui::gym::GymDeed;
use crate::ui::pen::Pen;
use crate::ui::theme::{COMPACT, NARROW, Theme};
use crate::ui::views::{LiftView, StrengthView, TotalsView};
use crate::ui::widgets::{self, Button, Slider};
use crate::units::{Bodyweight, Mass, Unit};

use super::printing::What;
use super::{Around, Screen};
use crate::ui::screens::heading;

/// Totals as a place of the window.
#[derive(Debug, Default)]
pub struct TotalsScreen {
    /// What is shown.
    pub view: TotalsView,
    /// What is remembered.
    pub state: TotalsState,
}

impl Screen for TotalsScreen {
    fn context(&self) -> Context {
        if self.state.strength.is_open() {
            Context::Strength
        } else {
            Context::Totals
        }
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.totals();
        self.state.kept = None;
    }

    fn ui(&mut self, ui: &mut Ui, around: &Around<'_>, actions: &mut Actions) {
        self.state.now = around.now;
        totals_ui(ui, &self.view, &mut self.state, actions);
        self.state.leave_program(ui.ctx(), &self.view);
        self.printing_ui(ui, actions);
        if let Some(trying) = &mut self.state.trying
            && trying.show(ui, &self.view, actions)
        {
            self.state.trying = None;
        }
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        if self.state.strength.is_open() {
            self.state.strength.perform(action, strength(&self.view));
        } else {
            self.state.perform(action, &self.view, actions);
        }
    }

    fn has_sheet(&self) -> bool {
        self.state.printing.is_some() || self.state.trying.is_some()
    }

    fn leave(&mut self) {
        self.state.printing = None;
        self.state.trying = None;
        self.state.strength.close();
    }
}

/// Strength over time of the open lift.
fn strength(view: &TotalsView) -> &[StrengthView] {
    view.open.as_ref().map_or(&[], |lift| lift.strength.as_slice())
}

impl TotalsScreen {
    /// Asks where the sheet of the meet or the picture goes, if one is to be written.
    fn printing_ui(&mut self, ui: &Ui, actions: &mut Actions) {
        let Some(printing) = &mut self.state.printing else {
            return;
        };
        let (meet, open) = (self.view.meet.as_ref(), self.view.open.as_ref());
        let who = match (&printing.what, meet, open) {
            (What::Paper(..), Some(meet), _) => {
                let lifts: Vec<&str> = meet.lifts.iter().map(|lift| lift.title.as_str()).collect();
                format!("{}: {}", meet.name, lifts.join(", "))
            }
            (What::Picture(_), _, Some(lift)) => lift.title.clone(),
            _ => String::new(),
        };
        if printing.show(ui, &who, actions) {
            self.state.printing = None;
        }
    }

    /// A deed is done: the sheet that asked for it closes.
    pub fn done(&mut self, deed: &Deed) {
        match deed {
            Deed::Gym(GymDeed::Picture { .. } | GymDeed::Print { .. }) => self.state.printing = None,
            Deed::LogTry { .. } => self.state.trying = None,
            _ => {}
        }
    }
}

/// Nothing with a system load is logged.
const NO_SET: &str =
    "No set with a load yet. Log a pull-up or a dip with your bodyweight; bests and fits show here.";

/// Shows Totals in the whole of `ui`.
pub fn totals_ui(ui: &mut Ui, view: &TotalsView, state: &mut TotalsState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
    state.keep_within(view);
    let wide = ui.ctx().content_rect().width() >= NARROW;
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 64.0 } else { 48.0 }));
    let main = Rect::from_min_max(header.left_bottom(), whole.max);
    header::header_ui(ui, header, view, state, actions);
    match &view.open {
        Some(lift) => lift_ui(ui, main, lift, view, (state, actions), wide),
        None => empty_ui(ui, main, NO_SET, actions),
    }
    state.strength.show(ui, strength(view), actions);
}

/// The answer for the bodyweight that is asked about; today's before anything is asked.
fn there(lift: &LiftView, state: &TotalsState) -> Option<There> {
    let known = lift.what_if.as_ref()?;
    let today = lift.today_kg.unwrap_or(known.bodyweight.kg());
    let kg = state.asked_kg.unwrap_or(today);
    known.at(Bodyweight::new(Mass::from_kg(kg))).ok()
}

fn lift_ui(
    ui: &mut Ui,
    main: Rect,
    lift: &LiftView,
    view: &TotalsView,
    (state, actions): (&mut TotalsState, &mut Actions),
    wide: bool,
) {
    let there = there(lift, state);
    let gap = if wide { 20.0 } else { 12.0 };
    let area = main.shrink2(vec2(gap, if wide { 16.0 } else { 10.0 }));
    if main.width() < COMPACT {
        // One column: the plot first, then the cards; all of it scrolls.
        let height = (area.width() * 0.8).clamp(320.0, 520.0);
        let mut child = ui.new_child(UiBuilder::new().max_rect(area));
        ScrollArea::vertical()
            .id_salt("totals")
            .auto_shrink(false)
            .show(&mut child, |ui| {
                turn_pages(ui, state);
                let top = ui.cursor().min;
                let plot = Rect::from_min_size(top, vec2(area.width() - 12.0, height));
                plot_card(ui, plot, lift, view.unit, there.as_ref(), state);
                let below =
                    Rect::from_min_size(plot.left_bottom() + vec2(0.0, 10.0), vec2(plot.width(), 0.0));
                let bottom = cards_ui(ui, below, lift, view, there.as_ref(), (state, actions));
                ui.allocate_rect(
                    Rect::from_min_max(top, pos2(plot.right(), bottom)),
                    egui::Sense::hover(),
                );
            });
        return;
    }
    let side = if wide { 392.0 } else { 300.0 };
    let plot = area.with_max_x(area.right() - side - gap);
    plot_card(ui, plot, lift, view.unit, there.as_ref(), state);
    let column = Rect::from_min_max(pos2(plot.right() + gap, area.top()), area.max);
    let mut child = ui.new_child(UiBuilder::new().max_rect(column));
    ScrollArea::vertical()
        .id_salt("totals")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            turn_pages(ui, state);
            let top = ui.cursor().min;
            let bottom = cards_ui(
                ui,
                Rect::from_min_size(top, vec2(side - 4.0, 0.0)),
                lift,
                view,
                there.as_ref(),
                (state, actions),
            );
            ui.allocate_rect(
                Rect::from_min_max(top, pos2(top.x + side - 4.0, bottom)),
                egui::Sense::hover(),
            );
        });
}

/// Scrolls as far as was asked: by most of what is seen, so that a line stays in sight.
fn turn_pages(ui: &Ui, state: &mut TotalsState) {
    let pages = std::mem::take(&mut state.pages);
    if pages != 0.0 {
        ui.scroll_with_delta(vec2(0.0, -pages * 0.8 * ui.clip_rect().height()));
    }
}

fn plot_card(
    ui: &mut Ui,
    card: Rect,
    lift: &LiftView,
    unit: Unit,
    there: Option<&There>,
    state: &mut TotalsState,
) {
    let theme = Theme::of(ui);
    state.card = Some(card);
    widgets::card(ui.painter(), card, None, &theme);
    plot::plot_ui(ui, card, lift, unit, there, state);
    slider_ui(ui, card, lift, unit, there, state);
}

fn slider_ui(
    ui: &mut Ui,
    card: Rect,
    lift: &LiftView,
    unit: Unit,
    there: Option<&There>,
    state: &mut TotalsState,
) {
    let (Some(known), Some(there)) = (&lift.what_if, there) else {
        return;
    };
    let track = plot::track(card, lift);
    let axes = state
        .kept
        .as_ref()
        .and_then(|kept| plot::axes(kept, lift, state.reps(), Some(there), track, unit));
    let Some(axes) = axes else { return };
    let value = tenths(there.bodyweight.kg(), unit);
    let today = lift
        .today_kg
        .map(|kg| (kg, format!("today {}", tenths(kg, unit))));
    let asked = Slider {
        title: "What if I weigh",
        ends: axes.across,
        value: there.bodyweight.kg(),
        words: &value,
        today: today.as_ref().map(|(kg, words)| (*kg, words.as_str())),
        from: known.healthy_from().map(Bodyweight::kg),
        how: "",
    };
    if let Some(kg) = asked.show(ui, track) {
        let tenth = Mass::from_kg(kg).in_unit(unit) * 10.0;
        let kg_of_one = kg / Mass::from_kg(kg).in_unit(unit);
        state.ask(Some(lift), tenth.round() / 10.0 * kg_of_one);
        ui.ctx().request_repaint();
    }
}

/// Every card in one column; returns where it ends.
fn cards_ui(
    ui: &mut Ui,
    column: Rect,
    lift: &LiftView,
    view: &TotalsView,
    there: Option<&There>,
    (state, actions): (&mut TotalsState, &mut Actions),
) -> f32 {
    let theme = Theme::of(ui);
    let mut y = column.top();
    let mut card = |ui: &mut Ui, band: bool, write: &mut dyn FnMut(&mut Pen<'_>)| {
        let inner = column.width() - 34.0;
        let height = Pen::measure(ui, inner, |pen| write(pen)) + 26.0;
        let place = Rect::from_min_size(pos2(column.left(), y), vec2(column.width(), height));
        widgets::card(ui.painter(), place, band.then_some(*theme.ember), &theme);
        write(&mut Pen::new(ui, place.shrink2(vec2(17.0, 13.0))));
        y = place.bottom() + 12.0;
    };
    card(ui, true, &mut |pen| cards::what_if(pen, lift, there, view.unit));
    card(ui, false, &mut |pen| cards::bests(pen, lift, state));
    if let Some(two) = &lift.two_weights {
        card(ui, false, &mut |pen| tables::two_weights(pen, two));
    }
    card(ui, false, &mut |pen| tables::attempts(pen, lift));
    if let Some(meet) = &view.meet {
        card(ui, false, &mut |pen| {
            meet::meet_card(pen, meet, view.unit, actions)
        });
    }
    y
}

/// An empty place: a ladder's outline, one sentence, and the button that leads to Next.
pub(super) fn empty_ui(ui: &mut Ui, main: Rect, words: &str, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let centre = main.center_top() + vec2(0.0, 60.0);
    crate::ui::two_rail::rails_between(
        ui.painter(),
        &[centre.x - 122.0, centre.x + 122.0],
        12.0,
        centre.y..=centre.y + 240.0,
        &theme,
    );
    for nth in 0..5u8 {
        let y = centre.y + 30.0 + 45.0 * f32::from(nth);
        crate::ui::two_rail::rung_open(
            ui.painter(),
            Rect::from_center_size(pos2(centre.x, y), vec2(232.0, 12.0)),
            &theme,
        );
    }
    heading::centred(ui, centre + vec2(0.0, 262.0), words);
    let title = "Go to Next";
    let button = Button::main(title);
    let width = button.width(ui.painter(), &theme);
    let below = if main.width() < COMPACT { 330.0 } else { 306.0 };
    let rect = Rect::from_min_size(pos2(centre.x - width / 2.0, centre.y + below), vec2(width, 38.0));
    if button.show(ui, rect).clicked() {
        actions.ask(Action::Go(crate::ui::views::Place::Next));
    }
}
