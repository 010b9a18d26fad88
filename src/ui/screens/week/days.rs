//! The seven days: what was trained and how many sets; dashed where nothing was.

use egui::{Rect, Shape, Stroke, StrokeKind, Ui, pos2, vec2};

use crate::ui::pen::{Ink, Line};
use crate::ui::theme::{Face, RADIUS_CHIP, STROKE_LINE, STROKE_NOW, Theme};
use crate::ui::two_rail::heights::many;
use crate::ui::views::{DayIs, DayView, WeekView};
use crate::ui::widgets::explained;

/// Height of the strip.
pub(super) fn height(wide: bool) -> f32 {
    if wide { 60.0 } else { 48.0 }
}

pub(super) fn days_ui(ui: &mut Ui, strip: Rect, view: &WeekView) {
    let gap = if strip.width() > 1000.0 { 8.0 } else { 5.0 };
    let count = many(view.days.len()).max(1.0);
    let width = (strip.width() - gap * (count - 1.0)) / count;
    for (nth, day) in view.days.iter().enumerate() {
        let at = strip.min + vec2((width + gap) * many(nth), 0.0);
        day_ui(ui, Rect::from_min_size(at, vec2(width, strip.height())), day);
    }
}

fn day_ui(ui: &mut Ui, card: Rect, day: &DayView) {
    let theme = Theme::of(ui);
    let painter = ui.painter().clone();
    let today = day.is == DayIs::Today;
    match &day.sets {
        Some(_) => {
            let (width, edge) = if today {
                (STROKE_NOW, *theme.ember)
            } else {
                (STROKE_LINE, *theme.line)
            };
            painter.rect(
                card,
                RADIUS_CHIP,
                *theme.raised,
                Stroke::new(width, edge),
                StrokeKind::Inside,
            );
        }
        None => {
            let (width, edge) = if today {
                (STROKE_NOW, *theme.ember)
            } else {
                (STROKE_LINE, *theme.edge)
            };
            let r = card.shrink(0.5);
            let corners = [
                r.left_top(),
                r.right_top(),
                r.right_bottom(),
                r.left_bottom(),
                r.left_top(),
            ];
            painter.extend(Shape::dashed_line(&corners, Stroke::new(width, edge), 4.0, 3.0));
        }
    }
    let pad = match card.width() {
        width if width > 130.0 => 12.0,
        width if width > 90.0 => 8.0,
        _ => 4.0,
    };
    let head = if today { *theme.ember } else { *theme.ink2 };
    let strong = Ink::new(Face::LabelStrong, 14.0, head);
    let quiet = Ink::new(Face::Label, 14.0, *theme.ink2);
    let (top, middle) = (
        card.top() + card.height() * 0.29,
        card.top() + card.height() * 0.71,
    );
    let inner = card.width() - 2.0 * pad;
    let sets = day.sets.as_deref().unwrap_or_default();
    let sets = Line::new(sets, quiet).on_one_line(&painter, inner);
    let name = format!("{} {}", day.weekday, day.number);
    let long = format!("{name}, today");
    let room = inner - sets.size().x - 6.0;
    let whole = Line::new(&long, strong).on_one_line(&painter, f32::INFINITY);
    let name = if today && whole.size().x <= room {
        whole
    } else {
        Line::new(&name, strong).on_one_line(&painter, inner)
    };
    // Where both don't fit beside each other the number of sets is in the words of the card.
    let fits = name.size().x + 6.0 + sets.size().x <= inner;
    painter.galley(pos2(card.left() + pad, top - name.size().y / 2.0), name, head);
    if fits {
        let at = pos2(card.right() - pad - sets.size().x, top - sets.size().y / 2.0);
        painter.galley(at, sets, *theme.ink2);
    }
    let what = match &day.sets {
        Some(_) => Ink::new(Face::LabelStrong, 15.0, *theme.ink),
        None => Ink::new(Face::Label, 15.0, *theme.ink2),
    };
    let whole = Line::new(&day.what, what).squeezed(&painter, inner);
    // The most of the day, where there is no room for more.
    let first = day.what.split(" + ").next().unwrap_or_default();
    let what = if whole.elided {
        Line::new(first, what).squeezed(&painter, inner)
    } else {
        whole
    };
    painter.galley(
        pos2(card.left() + pad, middle - what.size().y / 2.0),
        what,
        *theme.ink,
    );
    let id = ui.scope_id().with(("day", &day.weekday));
    explained(ui, card.shrink(1.0), id, day.how.clone());
}
