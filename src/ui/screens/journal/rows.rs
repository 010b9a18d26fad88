//! The journal's table: columns by the room there is, a line a record; only what is seen is laid out.

use egui::{Align2, Painter, Rect, Role, ScrollArea, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, letters};
use crate::ui::screens::heading;
use crate::ui::screens::ladders::many;
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{JournalLine, JournalView};
use crate::ui::widgets::{focus_ring, hand_disc};

use super::JournalState;

const ROW: f32 = 24.0;

/// Columns: where each begins; none where the window is too narrow for it.
pub(in crate::ui::screens) struct Columns {
    day: f32,
    time: Option<f32>,
    kind: Option<f32>,
    side: f32,
    what: f32,
    result: f32,
    note: Option<f32>,
    right: f32,
}

impl Columns {
    pub(in crate::ui::screens) fn of(rect: Rect) -> Self {
        let x = |at: f32| rect.left() + at;
        let right = rect.right() - 16.0;
        let (time, kind, side, what, result, note) = if rect.width() >= 1100.0 {
            (Some(148.0), Some(204.0), 296.0, 324.0, 640.0, Some(790.0))
        } else if rect.width() >= 760.0 {
            (Some(136.0), Some(182.0), 262.0, 288.0, 540.0, Some(660.0))
        } else if rect.width() >= 560.0 {
            (None, Some(148.0), 222.0, 246.0, 396.0, None)
        } else {
            (None, None, 142.0, 166.0, rect.width() - 122.0, None)
        };
        Self {
            day: x(20.0),
            time: time.map(x),
            kind: kind.map(x),
            side: x(side),
            what: x(what),
            result: x(result),
            note: note.map(x),
            right,
        }
    }

    /// The same where what a record is about is only a mass, so that the next column gets its room.
    pub(in crate::ui::screens) fn of_masses(rect: Rect) -> Self {
        let columns = Self::of(rect);
        let result = columns.result.min(columns.what + 110.0);
        Self { result, ..columns }
    }
}

pub(in crate::ui::screens) fn heads_ui(ui: &mut Ui, rect: Rect, columns: &Columns, titles: [&str; 2]) {
    let theme = Theme::of(ui);
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, *theme.bench);
    painter.hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.5, *theme.edge));
    let y = rect.center().y;
    let ink = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    for (x, words) in [
        (Some(columns.day), "day, newest first"),
        (columns.time, "time"),
        (columns.kind, "kind"),
        (Some(columns.what), titles[0]),
        (Some(columns.result), titles[1]),
        (columns.note, "note"),
    ] {
        let words = if x == Some(columns.day) && columns.time.is_none() {
            "day"
        } else {
            words
        };
        let Some(x) = x else { continue };
        letters(painter, pos2(x, y), Align2::LEFT_CENTER, words, ink);
    }
}

pub(in crate::ui::screens) fn rows_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &JournalView,
    columns: &Columns,
    state: &mut JournalState,
    actions: &mut Actions,
) {
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect));
    child.spacing_mut().item_spacing.y = 0.0;
    child.shrink_clip_rect(rect);
    if state.order.is_empty() {
        let words = "No record says that. Esc shows all.";
        heading::centred(&mut child, pos2(rect.center().x, rect.top() + 40.0), words);
        return;
    }
    state.page = (1..)
        .take_while(|count| many(*count) * ROW <= rect.height())
        .count()
        .max(2)
        - 1;
    let bring = std::mem::take(&mut state.bring).then_some(state.chosen);
    let mut pressed = None;
    ScrollArea::vertical()
        .id_salt("records")
        .auto_shrink(false)
        .show_rows(&mut child, ROW, state.order.len(), |ui, shown| {
            if let Some(nth) = bring {
                let offset = (many(nth) - many(shown.start)) * ROW;
                let target = Rect::from_min_size(ui.cursor().min + vec2(0.0, offset), vec2(10.0, ROW));
                ui.scroll_to_rect(target, None);
            }
            for nth in shown {
                let Some(line) = state.order.line(view, nth) else {
                    continue;
                };
                let other_day = |nth: Option<usize>, day: &str| {
                    let line = nth.and_then(|nth| state.order.line(view, nth));
                    line.is_none_or(|line| line.day != day)
                };
                let above = nth.checked_sub(1).and_then(|nth| state.order.line(view, nth));
                let begins_day = above.is_none_or(|above| above.day != line.day);
                // Days of one record each need nothing that holds them together.
                let lone = begins_day && other_day(Some(nth + 1), &line.day);
                let lone_above = above.is_some_and(|above| other_day(nth.checked_sub(2), &above.day));
                let look = RowLook {
                    begins_day,
                    parts: begins_day && !(lone && lone_above),
                    chosen: nth == state.chosen,
                };
                let (_, row) = ui.allocate_space(vec2(rect.width(), ROW));
                if row_ui(ui, row, line, look, columns) {
                    pressed = Some(nth);
                }
            }
        });
    if let Some(nth) = pressed {
        if state.chosen == nth {
            actions.ask(Action::OpenRow);
        }
        state.choose(view, nth);
    }
}

/// How a line stands among the others.
#[derive(Debug, Clone, Copy)]
struct RowLook {
    begins_day: bool,
    /// A heavier rule over it.
    parts: bool,
    chosen: bool,
}

/// One record; true when the line was pressed.
fn row_ui(ui: &mut Ui, rect: Rect, line: &JournalLine, look: RowLook, columns: &Columns) -> bool {
    let theme = Theme::of(ui);
    let id = ui.scope_id().with(("record", &line.id));
    let response = ui.interact(rect, id, Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, look.chosen, spoken(line)));
    let painter = ui.painter();
    if look.chosen {
        painter.rect_filled(rect, 0.0, *theme.ember_wash);
        painter.rect_filled(rect.with_max_x(rect.left() + 4.0), 0.0, *theme.ember);
    }
    let rule = if look.parts { *theme.edge } else { *theme.line };
    painter.hline(rect.x_range(), rect.top(), Stroke::new(1.0, rule));
    let y = rect.center().y;
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let plain = Ink::new(Face::Label, size::TABLE, *theme.ink);
    let strong = Ink::new(Face::LabelStrong, size::TABLE, *theme.ink);
    let of_what = |ink: Ink| if line.retracted { quiet } else { ink };
    let put = |x: f32, until: f32, text: &str, ink: Ink| -> f32 {
        let galley = Line::new(text, ink).on_one_line(painter, until - x - 8.0);
        let right = x + galley.size().x;
        painter.galley(pos2(x, y - galley.size().y / 2.0), galley, ink.colour);
        right
    };
    if look.begins_day {
        put(
            columns.day,
            columns.time.or(columns.kind).unwrap_or(columns.side),
            &line.day,
            strong,
        );
    }
    if let Some(x) = columns.time {
        put(x, columns.kind.unwrap_or(columns.side), &line.time, quiet);
    }
    let mut said = line.what.clone();
    match columns.kind {
        Some(x) => {
            put(x, columns.side, line.kind, quiet);
        }
        None if line.kind != "Set" => said = format!("{} {said}", line.kind),
        None => {}
    }
    if let Some(rail) = line.rail {
        hand_disc(painter, pos2(columns.side + 9.0, y), 9.0, rail, &theme);
    }
    let marks = marks(
        painter,
        pos2(columns.right, y),
        line,
        columns.kind.is_none(),
        &theme,
    );
    let end = columns.note.unwrap_or(marks);
    // What has no result may take its room.
    let until = if line.result.is_empty() {
        end
    } else {
        columns.result
    };
    let what = put_what(painter, pos2(columns.what, y), until, &said, of_what(strong));
    let mut ends = vec![(columns.what, what)];
    if !line.result.is_empty() {
        ends.push((
            columns.result,
            put(columns.result, end, &line.result, of_what(plain)),
        ));
    }
    if let Some(x) = columns.note {
        put(x, marks, &line.note, quiet);
    }
    if line.retracted {
        for (from, until) in ends {
            painter.hline(from..=until, y + 0.5, Stroke::new(1.2, *theme.ink2));
        }
    }
    if response.has_focus() {
        focus_ring(painter, rect.shrink(4.0), 3.0, &theme);
    }
    response.clicked()
}

/// What a record is about. Where a title has no room its end goes, never the load behind it. Returns where it ends.
fn put_what(painter: &Painter, at: egui::Pos2, until: f32, said: &str, ink: Ink) -> f32 {
    let room = until - at.x - 8.0;
    let lay = |text: &str, room: f32| Line::new(text, ink).on_one_line(painter, room);
    let is_load = |place: &usize| {
        let after = said[*place..].trim_start_matches([' ', '+', '−']);
        after.starts_with(|first: char| first.is_ascii_digit())
    };
    let signs = [" +", " −"].into_iter();
    let load = signs
        .flat_map(|sign| said.rmatch_indices(sign))
        .map(|(place, _)| place)
        .find(is_load);
    let mut parts = vec![lay(said, room)];
    if let Some(place) = load.filter(|_| parts[0].elided) {
        let load = lay(&said[place..], room);
        parts = vec![lay(&said[..place], room - load.size().x), load];
    }
    let mut x = at.x;
    for part in parts {
        let right = x + part.size().x;
        painter.galley(pos2(x, at.y - part.size().y / 2.0), part, ink.colour);
        x = right;
    }
    x
}

/// What is to be said of a record, at its right end. Returns where it begins.
fn marks(painter: &Painter, right: egui::Pos2, line: &JournalLine, is_slim: bool, theme: &Theme) -> f32 {
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let loud = Ink::new(Face::LabelStrong, size::TABLE, *theme.plum);
    let (words, ink) = match (line.retracted, line.odd, line.amended) {
        // Where there is no room the line through it says so.
        (true, ..) if is_slim => return right.x,
        (true, ..) => ("retracted", quiet),
        (_, Some(odd), _) => (odd, loud),
        (_, _, true) => ("amended", quiet),
        _ => return right.x,
    };
    letters(painter, right, Align2::RIGHT_CENTER, words, ink).left()
}

/// What a screen reader says of the line.
pub(super) fn spoken(line: &JournalLine) -> String {
    let side = line.rail.map_or("", crate::units::Rail::letter);
    let marks = [
        line.retracted.then_some("retracted"),
        line.amended.then_some("amended"),
        line.odd,
    ];
    let marks = marks.into_iter().flatten();
    [
        &line.day,
        &line.time,
        line.kind,
        side,
        &line.what,
        &line.result,
        &line.note,
    ]
    .into_iter()
    .chain(marks)
    .filter(|part| !part.is_empty())
    .collect::<Vec<_>>()
    .join(", ")
}
