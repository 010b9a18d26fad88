//! What is wrong in the text, each with its place and its mend.

use egui::{Align2, Rect, Response, Role, ScrollArea, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, letters, named_galley};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::two_rail::heights::many;
use crate::ui::views::{FileView, Mistake};
use crate::ui::widgets::{Button, focus_ring, key_cap, key_cap_width};

use super::state::WorkshopState;

/// Height of the line over the list.
const HEAD: f32 = 46.0;
/// Height of a mistake: its place and what it is, and how to mend it.
const ROW: f32 = 44.0;

/// How high the list is in a text pane of `height`.
pub(super) fn height(open: &FileView, height: f32) -> f32 {
    let most = if height > 420.0 { 3 } else { 1 };
    let rows = open.mistakes.len().min(most);
    // Half a row more shows that there are others.
    let more = if open.mistakes.len() > most {
        ROW * 0.4
    } else {
        0.0
    };
    HEAD + many(rows) * ROW + more + if rows > 0 { 8.0 } else { 0.0 }
}

/// Shows the list in `rect`.
pub(super) fn mistakes_ui(
    ui: &mut Ui,
    rect: Rect,
    open: &FileView,
    state: &mut WorkshopState,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let head = Rect::from_min_size(rect.min, vec2(rect.width(), HEAD));
    head_ui(ui, head, open, state, actions);
    if open.mistakes.is_empty() {
        return;
    }
    let body = Rect::from_min_max(pos2(rect.left() + 12.0, head.bottom()), rect.max - vec2(8.0, 6.0));
    let mut child = ui.new_child(UiBuilder::new().max_rect(body).id_salt("mistakes"));
    child.shrink_clip_rect(body);
    let mut pressed = None;
    ScrollArea::vertical()
        .id_salt("scroll")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            for (nth, mistake) in open.mistakes.iter().enumerate() {
                let is_next = state.mistake.unwrap_or(0) == nth;
                let chosen = state.mistake == Some(nth);
                let response = row_ui(ui, mistake, chosen, is_next);
                if chosen && std::mem::take(&mut state.bring_mistake) {
                    response.scroll_to_me(None);
                }
                if response.clicked() {
                    pressed = Some(nth);
                }
            }
        });
    if let Some(nth) = pressed {
        state.go_to_mistake(open, nth);
    }
}

fn head_ui(ui: &mut Ui, rect: Rect, open: &FileView, state: &WorkshopState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let mut right = rect.right() - 12.0;
    let mut buttons: Vec<(&str, Action)> = Vec::new();
    if open.writable {
        buttons.push(("Save", Action::SaveText));
    }
    let next = open.mistakes.get(state.mistake.unwrap_or(0));
    if next.is_some_and(|mistake| mistake.by_key) && open.writable {
        buttons.push(("Mend", Action::MendMistake));
    }
    if !open.mistakes.is_empty() {
        buttons.push(("Next", Action::NextMistake));
    }
    for (title, action) in buttons {
        let key = action.key();
        let look = if action == Action::SaveText && open.unsaved {
            Button::main(title)
        } else {
            Button::plain(title)
        };
        let button = look.key(&key);
        let width = button.width(ui.painter(), &theme);
        let place = Rect::from_min_size(pos2(right - width, rect.center().y - 16.0), vec2(width, 32.0));
        if button.show(ui, place).clicked() {
            actions.ask(action);
        }
        right = place.left() - 6.0;
    }
    let words = words(open);
    let galley = Line::new(&words, Ink::new(Face::LabelStrong, size::BODY, *theme.ink))
        .squeezed(ui.painter(), right - rect.left() - 22.0);
    let at = pos2(rect.left() + 16.0, rect.center().y - galley.size().y / 2.0);
    named_galley(ui, at, galley);
}

/// `2 mistakes, 1 warning`.
fn words(open: &FileView) -> String {
    let warnings = open.mistakes.iter().filter(|mistake| mistake.is_warning).count();
    let count = |count: usize, noun: &str| match count {
        1 => format!("1 {noun}"),
        count => format!("{count} {noun}s"),
    };
    match (open.mistakes.len() - warnings, warnings) {
        (0, 0) => "No mistakes".to_owned(),
        (0, warnings) => count(warnings, "warning"),
        (errors, 0) => count(errors, "mistake"),
        (errors, warnings) => format!("{}, {}", count(errors, "mistake"), count(warnings, "warning")),
    }
}

/// One mistake; the key that mends it stands beside it where it would mend this one.
fn row_ui(ui: &mut Ui, mistake: &Mistake, chosen: bool, is_next: bool) -> Response {
    let theme = Theme::of(ui);
    let (id, rect) = ui.allocate_space(vec2(ui.available_width() - 8.0, ROW));
    let response = ui.interact(rect, id, Sense::click());
    let kind = if mistake.is_warning {
        "Warning, line"
    } else {
        "Line"
    };
    response.widget_info(|| {
        let Mistake {
            line,
            column,
            what,
            mend,
            ..
        } = mistake;
        WidgetInfo::selected(
            Role::Button,
            true,
            chosen,
            format!("{kind} {line}, column {column}: {what}. Mend: {mend}"),
        )
    });
    let card = rect.shrink2(vec2(2.0, 2.0));
    let fill = if chosen {
        *theme.plum_wash
    } else if response.hovered() {
        *theme.bench
    } else {
        *theme.raised
    };
    ui.painter().rect_filled(card, 4.0, fill);
    let bar = card.with_max_x(card.left() + 4.0);
    let edge = if mistake.is_warning {
        *theme.edge
    } else {
        *theme.plum
    };
    ui.painter().rect_filled(bar, 0.0, edge);
    let painter = ui.painter().clone();
    let mut right = card.right() - 10.0;
    if mistake.by_key && is_next {
        let key = Action::MendMistake.key();
        key_cap(
            &painter,
            pos2(right, card.center().y),
            Align2::RIGHT_CENTER,
            &key,
            *theme.ink2,
            &theme,
        );
        right -= key_cap_width(&painter, &key, &theme) + 8.0;
    }
    let code = Ink::new(Face::Code, size::SMALL, *theme.ink2);
    let place = format!("{}:{}", mistake.line, mistake.column);
    let place = letters(
        &painter,
        card.min + vec2(14.0, 3.0),
        Align2::LEFT_TOP,
        &place,
        code,
    );
    let left = (place.right() + 12.0).max(card.left() + 72.0);
    let strong = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
    let warning = if mistake.is_warning { "Warning: " } else { "" };
    let what = Line::new(warning, Ink::new(Face::Label, 15.0, *theme.ink2))
        .and(&mistake.what, strong)
        .squeezed(&painter, right - left);
    painter.galley(pos2(left, card.top() + 1.0), what, *theme.ink);
    let mend = Line::new("Mend: ", Ink::new(Face::Label, size::TABLE, *theme.ink3))
        .and(&mistake.mend, Ink::new(Face::Label, size::TABLE, *theme.ink2))
        .squeezed(&painter, right - left);
    painter.galley(pos2(left, card.top() + 19.0), mend, *theme.ink2);
    if response.has_focus() {
        focus_ring(ui.painter(), card.shrink(2.0), 4.0, &theme);
    }
    response
}
