//! A spreadsheet is brought: a file or pasted rows, columns matched by name, rows and what is wrong with them shown before
//! anything is written.

mod rows;

use std::path::PathBuf;

use egui::{Align2, Rect, ScrollArea, Stroke, TextEdit, Ui, UiBuilder, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::book::{Cells, DatesAre, Deed, ImportText, Source};
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::screens::heading;
use crate::ui::screens::sheet::field_label;
use crate::ui::theme::{Face, Theme};
use crate::ui::views::ImportView;
use crate::ui::widgets::{Button, Choices};

/// What is typed so far.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ImportState {
    /// The spreadsheet and how it is read.
    pub text: ImportText,
    pasted: String,
    path: String,
    /// What the preview was asked for.
    asked: ImportText,
    /// What the preview is of.
    pub seen: Option<ImportText>,
}

impl ImportState {
    /// A file was picked.
    pub fn pick(&mut self, path: PathBuf) {
        self.path = path.to_string_lossy().into_owned();
        self.set(Source::File(path));
    }

    fn set(&mut self, from: Source) {
        self.text = ImportText {
            from,
            columns: Vec::new(),
            ..self.text.clone()
        };
    }

    fn is_empty(&self) -> bool {
        match &self.text.from {
            Source::Text(text) => text.trim().is_empty(),
            Source::File(path) => path.as_os_str().is_empty(),
        }
    }
}

/// Shows the import; true when it should close.
pub fn import_ui(
    ui: &mut Ui,
    view: Option<&ImportView>,
    state: &mut ImportState,
    actions: &mut Actions,
) -> bool {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), 56.0));
    heading::bar(ui, header, "Bring a spreadsheet");
    let foot = Rect::from_min_max(pos2(whole.left(), whole.bottom() - 64.0), whole.max);
    let view = view.filter(|_| !state.is_empty());
    let body = Rect::from_min_max(
        header.left_bottom() + vec2(20.0, 8.0),
        pos2(whole.right() - 20.0, foot.top() - 8.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(body));
    child.shrink_clip_rect(body.expand(4.0));
    ScrollArea::vertical()
        .id_salt("import")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            ui.set_max_width((body.width() - 16.0).min(1100.0));
            source_ui(ui, state, actions);
            reading_ui(ui, view, state);
            if let Some(view) = view {
                rows::columns_ui(ui, view, &mut state.text);
                rows::rows_ui(ui, view);
            }
            ui.add_space(16.0);
        });
    if state.text != state.asked && !state.is_empty() {
        state.asked = state.text.clone();
        actions.write(Deed::PreviewImport(state.text.clone()));
    }
    foot_ui(ui, foot, view, state, actions)
}

/// Where it comes from: a file, by name or picked, or pasted rows.
fn source_ui(ui: &mut Ui, state: &mut ImportState, actions: &mut Actions) {
    let label = field_label(ui, "A CSV file: its path, or drop it on this window");
    ui.horizontal(|ui| {
        let width = (ui.available_width() - 130.0).clamp(160.0, 560.0);
        let field = TextEdit::singleline(&mut state.path)
            .desired_width(width)
            .min_size(vec2(0.0, 34.0))
            .align(Align2::LEFT_CENTER)
            .hint_text("/home/you/sets.csv");
        if ui.add(field).labelled_by(label).changed() {
            let path = PathBuf::from(state.path.trim());
            state.set(Source::File(path));
        }
        if Button::plain("Browse…").flow(ui).clicked() {
            actions.ask(Action::PickSheet);
        }
    });
    let label = field_label(ui, "Or paste the rows, with their header");
    let edit = TextEdit::multiline(&mut state.pasted)
        .desired_rows(4)
        .desired_width(f32::INFINITY)
        .code_editor();
    let pasted = ScrollArea::vertical()
        .id_salt("pasted")
        .max_height(110.0)
        .show(ui, |ui| ui.add(edit).labelled_by(label))
        .inner;
    if pasted.changed() {
        state.path.clear();
        let text = state.pasted.clone();
        state.set(Source::Text(text));
    }
    let dropped: Option<PathBuf> = ui.input(|input| {
        input
            .raw
            .dropped_files
            .first()
            .map(|file| file.path().to_path_buf())
    });
    if let Some(path) = dropped {
        state.pasted.clear();
        state.pick(path);
    }
}

/// How it is read: what a spreadsheet program of another language writes otherwise.
fn reading_ui(ui: &mut Ui, view: Option<&ImportView>, state: &mut ImportState) {
    const CELLS: [Cells; 4] = [Cells::AsFirstLine, Cells::Comma, Cells::Semicolon, Cells::Tab];
    const DATES: [DatesAre; 3] = [DatesAre::YearFirst, DatesAre::DayFirst, DatesAre::MonthFirst];
    ui.horizontal_wrapped(|ui| {
        let text = &mut state.text;
        let dates = DATES.iter().position(|one| *one == text.dates).unwrap_or(0);
        let titles = ["2025-10-31", "31.10.2025", "10/31/2025"];
        if let Some(nth) = choice(ui, "Dates", &titles, dates) {
            text.dates = DATES.get(nth).copied().unwrap_or_default();
        }
        if let Some(nth) = choice(ui, "Decimal mark", &["2.5", "2,5"], usize::from(text.comma)) {
            text.comma = nth == 1;
        }
        let cells = CELLS.iter().position(|one| *one == text.cells).unwrap_or(0);
        let titles = ["as line 1", ",", ";", "Tab"];
        if let Some(nth) = choice(ui, "Between cells", &titles, cells) {
            text.cells = CELLS.get(nth).copied().unwrap_or_default();
        }
        if view.is_some_and(|view| view.asks_athlete) {
            ui.vertical(|ui| {
                let label = field_label(ui, "Whose rows are these?");
                ui.add(TextEdit::singleline(&mut text.athlete).desired_width(200.0))
                    .labelled_by(label);
            });
        }
    });
}

fn choice(ui: &mut Ui, label: &str, titles: &[&str], chosen: usize) -> Option<usize> {
    ui.vertical(|ui| {
        field_label(ui, label);
        let at = ui.cursor().min;
        let (row, pressed) = Choices { titles, chosen }.show(ui, at);
        ui.advance_cursor_after_rect(row.with_max_x(row.right() + 16.0));
        pressed
    })
    .inner
}

/// What would be written, and the buttons.
fn foot_ui(
    ui: &mut Ui,
    rect: Rect,
    view: Option<&ImportView>,
    state: &ImportState,
    actions: &mut Actions,
) -> bool {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let (good, bad) = view.map_or((0, 0), |view| (view.good, view.bad));
    let is_seen = state.seen.as_ref() == Some(&state.text);
    let sound = good > 0 && bad == 0 && is_seen && view.is_some_and(|view| view.problem.is_none());
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect.shrink2(vec2(20.0, 15.0))));
    let mut close = false;
    child.horizontal(|ui| {
        let title = if good == 0 {
            "Write the rows".to_owned()
        } else {
            format!("Write {}", rows::counted(good))
        };
        let written = ui
            .add_enabled_ui(sound, |ui| Button::main(&title).flow(ui).clicked())
            .inner;
        if written {
            actions.write(Deed::Import(state.text.clone()));
        }
        close = Button::plain("Back").key("Esc").flow(ui).clicked();
        let (words, colour) = match view {
            None => ("Nothing is written before you say so.".to_owned(), *theme.ink2),
            Some(_) if !is_seen => ("Looking…".to_owned(), *theme.ink2),
            Some(ImportView {
                problem: Some(problem),
                ..
            }) => (problem.clone(), *theme.plum),
            Some(_) if bad > 0 => {
                let rows = rows::counted(bad);
                let words = format!("{rows} with a problem: nothing is written until they are mended.");
                (words, *theme.plum)
            }
            Some(view) => (view.into.clone(), *theme.ink2),
        };
        let at = ui.cursor().min + vec2(8.0, 0.0);
        let width = (rect.right() - 20.0 - at.x).max(40.0);
        let galley = Line::new(&words, Ink::new(Face::Label, 15.0, colour)).wrapped(ui.painter(), width);
        let top = rect.center().y - galley.size().y / 2.0;
        named_galley(ui, pos2(at.x, top), galley);
    });
    close
}
