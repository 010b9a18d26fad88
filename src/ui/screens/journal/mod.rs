//! Journal: every record of the open athlete, newest first; one in full, amended, retracted, restored.

mod form;
mod order;
mod over;
mod rows;
mod state;

use egui::{Align2, Rect, Stroke, TextEdit, Ui, pos2, vec2};

use crate::report::numbers::counted;
use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed};
use crate::ui::pen::{Ink, Line, letters, named_galley};
use crate::ui::theme::{COMPACT, Face, NARROW, Theme, size};
use crate::ui::views::{JournalView, Place};
use crate::ui::widgets::{Button, explained, key_cap};

use super::{Around, Screen};
use crate::ui::screens::heading;
pub(super) use over::over_ui;
pub(super) use rows::{Columns, heads_ui, rows_ui};
pub use state::{JournalState, Over, Typed};

/// The journal as a place of the window.
#[derive(Default)]
pub struct JournalScreen {
    /// What is shown.
    pub view: JournalView,
    /// What it remembers.
    pub state: JournalState,
}

impl JournalScreen {
    /// A deed is done: what asked for it closes.
    pub fn done(&mut self, deed: &Deed) {
        match (deed, &self.state.over) {
            (Deed::Journal(deed), _) => self.state.done(deed),
            (Deed::Note(_), Some(Over::Note(_))) => self.state.over = None,
            _ => {}
        }
    }
}

impl Screen for JournalScreen {
    fn context(&self) -> Context {
        match self.state.over {
            Some(Over::Record) => Context::Record,
            _ => Context::Journal,
        }
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.journal();
        self.state.loaded(&self.view);
    }

    fn ui(&mut self, ui: &mut Ui, _around: &Around<'_>, actions: &mut Actions) {
        journal_ui(ui, &self.view, &mut self.state, actions);
        over_ui(ui, &self.view, &mut self.state, actions);
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        self.state.perform(action, &self.view, actions);
    }

    fn has_sheet(&self) -> bool {
        self.state.has_sheet()
    }

    fn leave(&mut self) {
        self.state.over = None;
    }
}

/// Shows the journal in the whole of `ui`.
pub fn journal_ui(ui: &mut Ui, view: &JournalView, state: &mut JournalState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.raised);
    let wide = ui.ctx().content_rect().width() >= NARROW;
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 56.0 } else { 48.0 }));
    header_ui(ui, header, view, state, actions);
    state.refresh(view);
    let mut top = header.bottom();
    if !view.kept.is_empty() {
        top = kept_ui(
            ui,
            Rect::from_min_size(pos2(whole.left(), top), vec2(whole.width(), 30.0)),
            view,
        );
    }
    if view.lines.is_empty() {
        empty_ui(ui, whole, actions);
        return;
    }
    let columns = Columns::of(whole);
    let heads = Rect::from_min_size(pos2(whole.left(), top), vec2(whole.width(), 28.0));
    heads_ui(ui, heads, &columns, ["what", "how much"]);
    let foot_height = if whole.height() > 420.0 { 46.0 } else { 0.0 };
    let rows = Rect::from_min_max(heads.left_bottom(), whole.max - vec2(0.0, foot_height));
    rows_ui(ui, rows, view, &columns, state, actions);
    if foot_height > 0.0 {
        let foot = Rect::from_min_max(rows.left_bottom(), whole.max);
        foot_ui(ui, foot, view, state, ("N", "note"));
    }
}

/// Title, how many, filter, note.
fn header_ui(ui: &mut Ui, rect: Rect, view: &JournalView, state: &mut JournalState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let room = heading::bar(ui, rect, "Journal");
    let key = Action::NoteRow.key();
    let mut button = Button::plain("Note");
    if room.width() > COMPACT {
        button = button.key(&key);
    }
    let width = button.width(ui.painter(), &theme);
    let at = Rect::from_min_size(
        pos2(room.right() - width, room.center().y - 17.0),
        vec2(width, 34.0),
    );
    if view.read_only.is_none() && button.show(ui, at).clicked() {
        actions.ask(Action::NoteRow);
    }
    let wide = room.width() > COMPACT - 100.0;
    let field_width = if wide { 230.0 } else { 140.0 };
    let hint = if wide {
        "movement, note, kind, date"
    } else {
        "filter"
    };
    let field = Rect::from_min_size(
        pos2(at.left() - 8.0 - field_width, room.center().y - 17.0),
        vec2(field_width, 34.0),
    );
    let edit = TextEdit::singleline(&mut state.filter)
        .hint_text(hint)
        .align(Align2::LEFT_CENTER);
    let response = ui
        .put(field, edit)
        .accessible_name("Filter by movement, note, kind or date");
    if std::mem::take(&mut state.focus_filter) {
        crate::ui::screens::sheet::focus_all(ui, &response, &state.filter);
    }
    let leaves = [egui::Key::ArrowDown, egui::Key::Enter];
    if response.has_focus() && ui.input(|input| leaves.iter().any(|key| input.key_pressed(*key))) {
        response.surrender_focus();
    }
    if state.filter.is_empty() && !response.has_focus() {
        let at = field.right_center() - vec2(8.0, 0.0);
        key_cap(ui.painter(), at, Align2::RIGHT_CENTER, "/", *theme.ink2, &theme);
    }
    let all = counted(view.lines.len(), "record");
    let words = if state.filter.trim().is_empty() {
        all
    } else {
        format!("{} of {all}", state.order.len())
    };
    let ink = Ink::new(Face::Label, size::BODY, *theme.ink2);
    let galley = Line::new(&words, ink).on_one_line(ui.painter(), field.left() - room.left() - 12.0);
    named_galley(
        ui,
        pos2(room.left(), room.center().y - galley.size().y / 2.0),
        galley,
    );
}

/// What a newer version wrote: told, and where. Returns where it ends.
fn kept_ui(ui: &mut Ui, rect: Rect, view: &JournalView) -> f32 {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.left_wash);
    let first = view.kept.first().map_or("", String::as_str);
    let words = match view.kept.len() {
        1 => format!("Written by a newer version and kept as it is: {first}"),
        count => format!("{count} lines by a newer version are kept as they are. The first: {first}"),
    };
    let ink = Ink::new(Face::Label, size::TABLE, *theme.ink);
    let galley = Line::new(&words, ink).on_one_line(ui.painter(), rect.width() - 40.0);
    let at = pos2(rect.left() + 20.0, rect.center().y - galley.size().y / 2.0);
    let place = named_galley(ui, at, galley);
    let id = ui.scope_id().with("kept");
    explained(ui, place, id, view.kept.join("\n"));
    rect.bottom()
}

/// Nobody is open, or nothing is on record.
fn empty_ui(ui: &mut Ui, rect: Rect, actions: &mut Actions) {
    let at = pos2(rect.center().x, rect.top() + 180.0);
    heading::centred(
        ui,
        at,
        "No record yet. Log a set or a weigh-in; all of them show here.",
    );
    let theme = Theme::of(ui);
    let button = Button::main("Go to Next");
    let width = button.width(ui.painter(), &theme);
    let rect = Rect::from_min_size(pos2(at.x - width / 2.0, at.y + 44.0), vec2(width, 36.0));
    if button.show(ui, rect).clicked() {
        actions.ask(Action::Go(Place::Next));
    }
}

/// The keys, that of something new last, and the whole note of the chosen record.
pub(in crate::ui::screens) fn foot_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &JournalView,
    state: &JournalState,
    new: (&'static str, &'static str),
) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let Some(line) = state.line(view) else { return };
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let y = rect.center().y;
    let (last, what) = if line.retracted {
        ("B", "restore")
    } else {
        ("R", "retract")
    };
    let mut keys = vec![("Enter", "look"), ("E", "amend"), (last, what), new];
    if view.read_only.is_some() {
        keys.truncate(1);
    } else if line.retracted {
        keys.remove(1);
    }
    let right = keys
        .iter()
        .rev()
        .fold(rect.right() - 16.0, |right, (key, words)| {
            let words = letters(ui.painter(), pos2(right, y), Align2::RIGHT_CENTER, words, quiet);
            let at = pos2(words.left() - 4.0, y);
            key_cap(ui.painter(), at, Align2::RIGHT_CENTER, key, *theme.ink2, &theme).left() - 10.0
        });
    let strong = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
    let plain = Ink::new(Face::Label, 15.0, *theme.ink);
    let mut words = Line::new(&line.day, plain)
        .gap(8.0, line.kind, strong)
        .gap(8.0, &line.what, plain);
    for more in [&line.result, &line.note] {
        words = words.gap(8.0, more, plain);
    }
    let galley = words.on_one_line(ui.painter(), right - rect.left() - 36.0);
    named_galley(ui, pos2(rect.left() + 20.0, y - galley.size().y / 2.0), galley);
}
