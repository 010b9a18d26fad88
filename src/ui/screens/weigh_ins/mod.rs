//! Weigh-ins: bodyweight over time with its trend and phases, numbers and cautions beside it, the records below.

mod over;
mod plot;

use egui::{Rect, ScrollArea, Ui, UiBuilder, pos2, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed};
use crate::ui::journal::JournalDeed;
use crate::ui::pen::{Ink, Line, Pen};
use crate::ui::theme::{COMPACT, Face, NARROW, Theme, size};
use crate::ui::views::{Phrase, WeighInsView};
use crate::ui::widgets::{self, Button, caution_box, explained};

use super::journal::{Columns, JournalState, Over, foot_ui, heads_ui, rows_ui};
use super::{Around, Screen};
use crate::ui::screens::heading;
use over::{Asked, asked_ui};
pub(in crate::ui::screens) use plot::{even_masses, mass_of, small_scale};

/// Weigh-ins as a place of the window.
#[derive(Default)]
pub struct WeighInsScreen {
    /// What is shown.
    pub view: WeighInsView,
    /// What the list below remembers; it is the journal's, of weigh-ins only.
    pub list: JournalState,
    /// A new weigh-in or phase.
    asked: Option<Asked>,
}

impl WeighInsScreen {
    /// A deed is done: what asked for it closes.
    pub fn done(&mut self, deed: &Deed) {
        match deed {
            Deed::Journal(JournalDeed::Add(_)) => self.asked = None,
            Deed::Journal(deed) => self.list.done(deed),
            _ => {}
        }
    }
}

impl Screen for WeighInsScreen {
    fn context(&self) -> Context {
        match self.list.over {
            Some(Over::Record) => Context::Record,
            _ => Context::WeighIns,
        }
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.weigh_ins();
        self.list.loaded(&self.view.journal);
    }

    fn ui(&mut self, ui: &mut Ui, _around: &Around<'_>, actions: &mut Actions) {
        weigh_ins_ui(ui, &self.view, &mut self.list, actions);
        super::journal::over_ui(ui, &self.view.journal, &mut self.list, actions);
        if let Some(asked) = &mut self.asked
            && asked_ui(ui, &self.view, asked, actions)
        {
            self.asked = None;
        }
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        let may_write = self.view.journal.read_only.is_none();
        match action {
            Action::WeighIn if may_write => self.asked = Some(Asked::weigh_in(&self.view)),
            Action::SetPhase if may_write => self.asked = Some(Asked::phase(&self.view)),
            Action::WeighIn | Action::SetPhase => {}
            Action::Back if self.asked.take().is_some() => {}
            action => self.list.perform(action, &self.view.journal, actions),
        }
    }

    fn has_sheet(&self) -> bool {
        self.asked.is_some() || self.list.has_sheet()
    }

    fn leave(&mut self) {
        self.asked = None;
        self.list.over = None;
    }
}

/// Shows Weigh-ins in the whole of `ui`.
pub fn weigh_ins_ui(ui: &mut Ui, view: &WeighInsView, list: &mut JournalState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
    let wide = ui.ctx().content_rect().width() >= NARROW;
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 56.0 } else { 48.0 }));
    header_ui(ui, header, view, actions);
    if view.journal.lines.is_empty() {
        empty_ui(ui, whole, actions);
        return;
    }
    list.refresh(&view.journal);
    let gap = if wide { 20.0 } else { 12.0 };
    let below = whole.with_min_y(header.bottom());
    let height = (below.height() * 0.56).clamp(180.0, 460.0);
    let above = Rect::from_min_size(
        below.min + vec2(gap, gap - 4.0),
        vec2(below.width() - 2.0 * gap, height),
    );
    let side = if wide {
        372.0
    } else {
        (above.width() * 0.4).min(300.0)
    };
    let plot = above.with_max_x(above.right() - side - 12.0);
    widgets::card(ui.painter(), plot, None, &theme);
    let mut child = ui.new_child(UiBuilder::new().max_rect(plot.shrink2(vec2(12.0, 10.0))));
    plot::plot_ui(&mut child, view);
    beside_ui(ui, above.with_min_x(plot.right() + 12.0), view);
    let table = below.with_min_y(above.bottom() + 12.0);
    ui.painter().rect_filled(table, 0.0, *theme.raised);
    let columns = Columns::of_masses(table);
    let heads = Rect::from_min_size(table.min, vec2(table.width(), 28.0));
    heads_ui(ui, heads, &columns, ["bodyweight", "weighed"]);
    // A low window keeps the room for its records.
    let foot = if whole.height() > 620.0 { 46.0 } else { 0.0 };
    let rows = Rect::from_min_max(heads.left_bottom(), table.max - vec2(0.0, foot));
    rows_ui(ui, rows, &view.journal, &columns, list, actions);
    if foot > 0.0 {
        let foot = Rect::from_min_max(rows.left_bottom(), table.max);
        foot_ui(ui, foot, &view.journal, list, ("K", "weigh in"));
    }
}

fn header_ui(ui: &mut Ui, rect: Rect, view: &WeighInsView, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let room = heading::bar(ui, rect, "Weigh-ins");
    if view.journal.read_only.is_some() {
        return;
    }
    let mut right = room.right();
    for (title, action) in [("Weigh in", Action::WeighIn), ("Phase", Action::SetPhase)] {
        let key = action.key();
        let button = Button::plain(title).key(&key);
        let width = button.width(ui.painter(), &theme);
        let at = Rect::from_min_size(pos2(right - width, room.center().y - 17.0), vec2(width, 34.0));
        if at.left() > room.left() && button.show(ui, at).clicked() {
            actions.ask(action);
        }
        right = at.left() - 8.0;
    }
}

/// Numbers and cautions; where they have no room they scroll.
fn beside_ui(ui: &mut Ui, rect: Rect, view: &WeighInsView) {
    let theme = Theme::of(ui);
    widgets::card(ui.painter(), rect, None, &theme);
    let inner = rect.shrink2(vec2(15.0, 12.0));
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner));
    child.shrink_clip_rect(rect.shrink(1.0));
    ScrollArea::vertical()
        .id_salt("numbers")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            let top = ui.cursor().min;
            let mut pen = Pen::new(ui, Rect::from_min_size(top, vec2(inner.width() - 10.0, 0.0)));
            let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
            let strong = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
            for (what, value, how) in &view.numbers {
                let label = pen.write(Line::new(what, quiet));
                let place = pen.write(Line::new(value, strong)).union(label);
                let id = pen.ui.scope_id().with(("how", what));
                explained(pen.ui, place, id, how.clone());
                pen.gap(8.0);
            }
            for words in &view.cautions {
                pen.gap(5.0);
                let phrase = Phrase::plain(words);
                let (height, paint) = caution_box(pen.ui, &phrase, pen.width());
                if let Some(place) = pen.room(height) {
                    paint(pen.ui, place);
                }
            }
            let bottom = pen.y;
            ui.allocate_rect(
                Rect::from_min_max(top, pos2(top.x + inner.width() - 10.0, bottom)),
                egui::Sense::hover(),
            );
        });
}

/// Nobody was weighed yet.
fn empty_ui(ui: &mut Ui, rect: Rect, actions: &mut Actions) {
    let below = if rect.width() < COMPACT { 110.0 } else { 180.0 };
    let at = pos2(rect.center().x, rect.top() + below);
    heading::centred(
        ui,
        at,
        "No weigh-in yet. Weigh in; the trend shows after two weeks.",
    );
    let theme = Theme::of(ui);
    let key = Action::WeighIn.key();
    let button = Button::main("Weigh in today").key(&key);
    let width = button.width(ui.painter(), &theme);
    let rect = Rect::from_min_size(pos2(at.x - width / 2.0, at.y + 44.0), vec2(width, 36.0));
    if button.show(ui, rect).clicked() {
        actions.ask(Action::WeighIn);
    }
}
