//! The frame: places as rungs between two rails, the athlete above their places, and below where and when it was saved.

use egui::{Align2, Painter, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};

use super::action::{Action, Actions};
use super::pen::{Ink, Line, letters, named_galley};
use super::theme::{Face, NARROW, Theme, size};
use super::views::{FrameView, Place, Saved};
use super::widgets::focus_ring;

/// Width of the frame's column in a window of `width`.
pub fn column_width(width: f32) -> f32 {
    if width >= NARROW {
        168.0
    } else if width >= 720.0 {
        148.0
    } else {
        52.0
    }
}

/// Draws the column into `rect`.
pub fn frame_ui(ui: &mut Ui, rect: Rect, view: &FrameView, open: Place, actions: &mut Actions) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .vline(rect.right() - 0.5, rect.y_range(), Stroke::new(1.0, *theme.line));
    let slim = rect.width() < 100.0;
    let low = rect.height() < 620.0;
    let mut y = head_ui(ui, rect, view, slim, low);
    let row = if low {
        30.0
    } else if rect.width() > 160.0 {
        38.0
    } else {
        34.0
    };
    let groups: [&[Place]; 3] = [
        &[Place::Roster],
        &[
            Place::Next,
            Place::Ladders,
            Place::Totals,
            Place::Week,
            Place::WeighIns,
            Place::Journal,
        ],
        &[Place::Workshop, Place::Settings],
    ];
    for (nth, group) in groups.into_iter().enumerate() {
        let places: Vec<Place> = group
            .iter()
            .copied()
            .filter(|place| view.places.contains(place))
            .collect();
        if nth == 1 {
            y = athlete_ui(ui, rect, view, y, slim, low);
        }
        if !places.is_empty() {
            y = group_ui(ui, rect, &places, open, y, row, slim, actions) + if low { 6.0 } else { 14.0 };
        }
    }
    if !slim && rect.bottom() - y > 44.0 {
        saved_ui(ui, rect, &view.saved);
    }
}

fn inset(rect: Rect, slim: bool) -> f32 {
    if slim {
        rect.left() + 6.0
    } else {
        rect.left() + 14.0
    }
}

fn head_ui(ui: &mut Ui, rect: Rect, view: &FrameView, slim: bool, low: bool) -> f32 {
    let theme = Theme::of(ui);
    let top = rect.top() + if low { 8.0 } else { 15.0 };
    let left = inset(rect, slim);
    sign(
        ui.painter(),
        Rect::from_min_size(pos2(left, top), vec2(31.0, 31.0)),
        &theme,
    );
    if !slim {
        let width = rect.width() - 62.0;
        let name = Line::new("Rungwright", Ink::new(Face::LabelStrong, size::BODY, *theme.ink))
            .on_one_line(ui.painter(), width);
        named_galley(ui, pos2(left + 40.0, top - 3.0), name);
        let book = Line::new(&view.logbook, Ink::new(Face::Text, size::NOTE, *theme.ink2))
            .on_one_line(ui.painter(), width);
        named_galley(ui, pos2(left + 40.0, top + 17.0), book);
    }
    top + if low { 38.0 } else { 43.0 }
}

fn athlete_ui(ui: &mut Ui, rect: Rect, view: &FrameView, y: f32, slim: bool, low: bool) -> f32 {
    let theme = Theme::of(ui);
    let Some(athlete) = &view.athlete else { return y };
    if slim {
        return y;
    }
    let width = rect.width() - 26.0;
    let name =
        Line::new(&athlete.name, Ink::new(Face::LabelStrong, 15.0, *theme.ink)).squeezed(ui.painter(), width);
    let at = named_galley(ui, pos2(inset(rect, slim), y - if low { 4.0 } else { 6.0 }), name).bottom();
    let after = if low { 5.0 } else { 10.0 };
    if athlete.of == 1 {
        return at + after;
    }
    let keys = if rect.width() > 160.0 {
        " · Alt ↑ ↓"
    } else {
        ""
    };
    let place = format!("{} of {}{keys}", athlete.nth, athlete.of);
    let place =
        Line::new(&place, Ink::new(Face::Text, size::NOTE, *theme.ink2)).on_one_line(ui.painter(), width);
    named_galley(ui, pos2(inset(rect, slim), at), place).bottom() + after
}

/// Places as rungs; the open one is solid.
#[allow(clippy::too_many_arguments, reason = "one column, drawn once")]
fn group_ui(
    ui: &mut Ui,
    rect: Rect,
    places: &[Place],
    open: Place,
    top: f32,
    row: f32,
    slim: bool,
    actions: &mut Actions,
) -> f32 {
    let theme = Theme::of(ui);
    let (left, right) = (inset(rect, slim), rect.right() - if slim { 8.0 } else { 14.0 });
    let height = row * super::two_rail::heights::many(places.len()) + 4.0;
    for (nth, place) in places.iter().enumerate() {
        let y = top + 3.0 + row * super::two_rail::heights::many(nth);
        let rung = Rect::from_min_max(pos2(left, y), pos2(right, y + row - 2.0));
        let response = ui.interact(rung, ui.scope_id().with(("place", *place)), Sense::click());
        let is_open = *place == open;
        response.widget_info(|| WidgetInfo::selected(Role::Button, true, is_open, place.title()));
        let painter = ui.painter();
        let solid = Rect::from_center_size(rung.center(), vec2(rung.width(), (row - 8.0).min(30.0)));
        let ink = if is_open {
            painter.rect_filled(solid, 0.0, *theme.steel);
            *theme.on_steel
        } else {
            if response.hovered() {
                painter.rect_filled(solid, 0.0, *theme.bench);
            }
            painter.hline(left..=right, rung.bottom() + 0.5, Stroke::new(1.5, *theme.line));
            *theme.ink2
        };
        let number = place.number().to_string();
        if slim {
            letters(
                painter,
                rung.center(),
                Align2::CENTER_CENTER,
                &number,
                Ink::new(Face::LabelStrong, 15.0, ink),
            );
        } else {
            letters(
                painter,
                rung.left_center() + vec2(16.0, 0.0),
                Align2::LEFT_CENTER,
                place.title(),
                Ink::new(Face::LabelStrong, 15.0, ink),
            );
            letters(
                painter,
                rung.right_center() - vec2(14.0, 0.0),
                Align2::RIGHT_CENTER,
                &number,
                Ink::new(Face::Text, size::NOTE, ink),
            );
        }
        if response.has_focus() {
            focus_ring(painter, solid.shrink(3.0), 3.0, &theme);
        }
        if response.clicked() {
            actions.ask(Action::Go(*place));
        }
        if slim {
            crate::ui::widgets::hinted(response, format!("{} · Alt+{number}", place.title()));
        }
    }
    for x in [left, right] {
        let rail = Rect::from_min_max(pos2(x - 1.5, top - 1.0), pos2(x + 1.5, top + height));
        ui.painter().rect_filled(rail, 1.5, *theme.steel);
    }
    top + height
}

fn saved_ui(ui: &mut Ui, rect: Rect, saved: &Saved) {
    let theme = Theme::of(ui);
    let (words, colour) = match saved {
        Saved::Nothing => ("Nothing to save".to_owned(), *theme.ink2),
        Saved::At { time, device } => (format!("Saved {time} · {device}"), *theme.ink2),
        Saved::Not { why } => (format!("Not saved: {why}"), *theme.plum),
    };
    let width = rect.width() - 22.0;
    let saved = Line::new(&words, Ink::new(Face::Text, size::NOTE, colour)).wrapped(ui.painter(), width);
    let at = pos2(inset(rect, false), rect.bottom() - 32.0 - saved.size().y);
    let rect_saved = Rect::from_min_size(at, saved.size());
    let response = ui.interact(rect_saved, ui.scope_id().with("saved"), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Status, true, &words));
    ui.painter().galley(at, saved, colour);
    let keys = Ink::new(Face::Text, size::NOTE, *theme.ink2);
    letters(
        ui.painter(),
        pos2(inset(rect, false), rect.bottom() - 12.0),
        Align2::LEFT_BOTTOM,
        "Alt + number · F1 keys",
        keys,
    );
}

/// The program's sign: a ladder, the square left hand, the round right one.
pub fn sign(painter: &Painter, rect: Rect, theme: &Theme) {
    let unit = rect.width() / 64.0;
    let at =
        |x: f32, y: f32, w: f32, h: f32| Rect::from_min_size(rect.min + vec2(x, y) * unit, vec2(w, h) * unit);
    let (ground, steel) = (*theme.sign_ground, *theme.sign_steel);
    painter.rect(
        rect,
        13.5 * unit,
        ground,
        Stroke::new((1.5 * unit).max(1.0), *theme.edge),
        StrokeKind::Inside,
    );
    for x in [16.0, 42.0] {
        painter.rect_filled(at(x, 7.0, 6.0, 50.0), 1.0 * unit, steel);
    }
    for y in [46.0, 34.5] {
        painter.rect_filled(at(21.0, y, 22.0, 6.0), 0.0, steel);
    }
    for y in [13.0, 17.0, 24.0, 28.0] {
        painter.rect_filled(at(22.0, y - 0.9, 20.0, 1.8), 0.0, *theme.edge);
    }
    let halo = Stroke::new(2.5 * unit, ground);
    painter.rect(
        at(9.5, 28.0, 19.0, 19.0),
        5.0 * unit,
        *theme.sign_left,
        halo,
        StrokeKind::Middle,
    );
    painter.circle(
        rect.min + vec2(45.0, 26.0) * unit,
        10.0 * unit,
        *theme.sign_right,
        halo,
    );
}
