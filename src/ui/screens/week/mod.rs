//! Week: hard sets of each muscle group against their range, joints day by day, and today's session from a budget of sets.

mod bars;
mod days;
mod header;
mod joints;
mod session;

use egui::{Rect, ScrollArea, Sense, Ui, UiBuilder, pos2, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed};
use crate::ui::theme::{COMPACT, NARROW, Theme};
use crate::ui::views::WeekView;
use crate::ui::widgets::keep_arrows;

use super::totals::empty_ui;
use super::{Around, Screen};

use session::SessionSheet;

/// Nothing was ever logged.
const NO_SET: &str = "No sets yet. Log one on Next; your week shows here.";

/// Week as a place of the window.
#[derive(Debug, Default)]
pub struct WeekScreen {
    /// What is shown.
    pub view: WeekView,
    /// What is remembered.
    pub state: WeekState,
}

/// What Week remembers between frames.
#[derive(Debug, Default)]
pub struct WeekState {
    session: Option<SessionSheet>,
    /// How many pages to scroll down in the next frame; below zero up.
    pages: f32,
}

impl WeekState {
    /// Performs an action of Week.
    pub fn perform(&mut self, action: Action, view: &WeekView, actions: &mut Actions) {
        match action {
            Action::EarlierWeek => actions.write(Deed::ShowWeek(view.back.saturating_add(1))),
            Action::LaterWeek if view.back > 0 => actions.write(Deed::ShowWeek(view.back - 1)),
            Action::BuildSession if !view.is_empty => {
                self.session = Some(SessionSheet::of(view.session.budget))
            }
            Action::PageUp => self.pages -= 1.0,
            Action::PageDown => self.pages += 1.0,
            Action::Back => self.session = None,
            _ => {}
        }
    }
}

impl Screen for WeekScreen {
    fn context(&self) -> Context {
        Context::Week
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.week();
    }

    fn ui(&mut self, ui: &mut Ui, _around: &Around<'_>, actions: &mut Actions) {
        week_ui(ui, &self.view, &mut self.state, actions);
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        self.state.perform(action, &self.view, actions);
    }

    fn has_sheet(&self) -> bool {
        self.state.session.is_some()
    }

    fn leave(&mut self) {
        self.state.session = None;
    }
}

/// Shows Week in the whole of `ui`.
pub fn week_ui(ui: &mut Ui, view: &WeekView, state: &mut WeekState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
    let wide = ui.ctx().content_rect().width() >= NARROW;
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 64.0 } else { 48.0 }));
    let main = Rect::from_min_max(header.left_bottom(), whole.max);
    header::header_ui(ui, header, view, actions);
    if view.is_empty {
        empty_ui(ui, main, NO_SET, actions);
        return;
    }
    let area = main.shrink2(if wide { vec2(20.0, 14.0) } else { vec2(12.0, 8.0) });
    let mut child = ui.new_child(UiBuilder::new().max_rect(area.with_max_x(main.right() - 3.0)));
    child.set_clip_rect(main);
    ScrollArea::vertical()
        .id_salt("week")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            let pages = std::mem::take(&mut state.pages);
            if pages != 0.0 {
                ui.scroll_with_delta(vec2(0.0, -pages * 0.8 * ui.clip_rect().height()));
            }
            let top = ui.cursor().min;
            let place = Rect::from_min_size(top, area.size());
            let bottom = body_ui(ui, place, view, wide);
            ui.allocate_rect(
                Rect::from_min_max(top, pos2(area.right(), bottom)),
                Sense::hover(),
            );
        });
    keep_arrows(ui);
    if let Some(sheet) = &mut state.session
        && sheet.show(ui, &view.session, view.care, actions)
    {
        state.session = None;
    }
}

/// Days, bars and joints: beside each other where there is room, else one under the other. Returns where they end.
fn body_ui(ui: &mut Ui, place: Rect, view: &WeekView, wide: bool) -> f32 {
    let gap = if wide { 16.0 } else { 10.0 };
    let strip = Rect::from_min_size(place.min, vec2(place.width(), days::height(wide)));
    days::days_ui(ui, strip, view);
    let rest = place.with_min_y(strip.bottom() + gap);
    if place.width() < COMPACT {
        let bars = bars::bars_ui(ui, rest.with_max_y(rest.top()), view);
        return joints::joints_ui(ui, rest.with_min_y(bars + gap).with_max_y(bars + gap), view);
    }
    let middle = (rest.left() + rest.width() * 0.565).round();
    // Both cards are as high as the higher one, and at least as high as the window.
    let left = rest.with_max_x(middle - gap / 2.0);
    let right = rest.with_min_x(middle + gap / 2.0);
    let needed = bars::needed(ui, left.width(), view).max(joints::needed(ui, right.width(), view));
    let bottom = rest.bottom().max(rest.top() + needed);
    bars::bars_ui(ui, left.with_max_y(bottom), view);
    joints::joints_ui(ui, right.with_max_y(bottom), view)
}
