//! The ladder that the text makes, with its mistakes on their rungs.

use egui::{Align2, Rect, Shape, Stroke, Ui, UiBuilder, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, Pen, letters, named_galley};
use crate::ui::screens::ladders::id_of;
use crate::ui::theme::{Face, RADIUS_CARD, STROKE_NOW, Theme, size};
use crate::ui::two_rail::ladder_ui;
use crate::ui::two_rail::layout::{Layout, Width};
use crate::ui::views::{FileView, LadderView, Spot};
use crate::ui::widgets::Button;

use super::state::WorkshopState;

/// Shows the drawing in `rect`.
pub(super) fn drawing_ui(
    ui: &mut Ui,
    rect: Rect,
    open: &FileView,
    state: &mut WorkshopState,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.bench);
    // The ground ends where the drawing does.
    let ui = &mut ui.new_child(UiBuilder::new().max_rect(rect).id_salt("drawing"));
    ui.shrink_clip_rect(rect);
    let foot = foot_ui(ui, rect, open);
    let Some(ladder) = &open.ladder else {
        nothing_ui(ui, rect.with_max_y(foot), open);
        return;
    };
    let head = Rect::from_min_size(rect.min, vec2(rect.width(), 44.0));
    head_ui(ui, head, open, actions);
    let area = Rect::from_min_max(
        pos2(rect.left() + 14.0, head.bottom() + 6.0),
        pos2(rect.right() - 8.0, foot - 22.0),
    );
    let layout = Layout::of(ladder, area, Width::Workshop, state.scroll);
    (state.height, state.scroll) = (area.height(), state.scroll.min(layout.scroll_max));
    let touch = ladder_ui(ui, ladder, &layout, Width::Workshop, state.rung, true);
    marks_ui(ui, open, ladder, &layout);
    if touch.scrolled != 0.0 {
        state.scroll = (state.scroll + touch.scrolled).clamp(0.0, layout.scroll_max);
    }
    if let Some(spot) = touch.chosen {
        state.go_to_rung(open, spot);
    }
}

/// What is drawn, and for whose body.
fn head_ui(ui: &mut Ui, rect: Rect, open: &FileView, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let key = Action::TurnBody.key();
    let name = format!("For {}", open.body);
    let button = Button::plain(&name).key(&key);
    let width = button.width(ui.painter(), &theme).min(rect.width() - 96.0);
    let place = Rect::from_min_size(
        pos2(rect.right() - 12.0 - width, rect.center().y - 15.0),
        vec2(width, 32.0),
    );
    if button.show(ui, place).clicked() {
        actions.ask(Action::TurnBody);
    }
    let words = if open.drawn_before {
        "Before the mistake"
    } else {
        "As drawn"
    };
    let ink = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
    let galley = Line::new(words, ink).squeezed(ui.painter(), place.left() - rect.left() - 22.0);
    let at = pos2(rect.left() + 14.0, rect.center().y - galley.size().y / 2.0);
    named_galley(ui, at, galley);
}

/// The rungs in whose lines something is wrong, dashed, with the line's number.
fn marks_ui(ui: &mut Ui, open: &FileView, ladder: &LadderView, layout: &Layout) {
    let theme = Theme::of(ui);
    let painter = ui.painter_at(layout.area.expand2(vec2(14.0, 14.0)));
    for (nth, place) in layout.rungs.iter().enumerate() {
        let id = id_of(ladder, Spot::Rung(nth));
        let block = open.rungs.iter().find(|block| Some(&block.id) == id.as_ref());
        let line = block.and_then(|block| {
            let lines = block.first..=block.last;
            let wrong = open.mistakes.iter().find(|mistake| lines.contains(&mistake.line));
            wrong.map(|mistake| mistake.line)
        });
        let Some(line) = line else { continue };
        let rect = place.rect.expand2(vec2(3.0, 4.0));
        painter.rect_filled(rect, 2.0, *theme.plum_wash);
        let corners = [
            rect.left_top(),
            rect.right_top(),
            rect.right_bottom(),
            rect.left_bottom(),
            rect.left_top(),
        ];
        painter.extend(Shape::dashed_line(
            &corners,
            Stroke::new(STROKE_NOW, *theme.plum),
            5.0,
            4.0,
        ));
        letters(
            &painter,
            rect.center(),
            Align2::CENTER_CENTER,
            &format!("line {line}"),
            Ink::new(Face::LabelStrong, size::NOTE, *theme.plum),
        );
    }
}

/// What is in use meanwhile; returns where its box begins.
fn foot_ui(ui: &mut Ui, rect: Rect, open: &FileView) -> f32 {
    let theme = Theme::of(ui);
    let write = |pen: &mut Pen<'_>| {
        pen.write(Line::new(&open.in_use, Ink::new(Face::Label, 15.0, *theme.ink2)));
    };
    let width = rect.width() - 28.0 - 24.0;
    let height = Pen::measure(ui, width, write);
    let card = Rect::from_min_max(
        pos2(rect.left() + 14.0, rect.bottom() - 14.0 - height - 18.0),
        pos2(rect.right() - 14.0, rect.bottom() - 14.0),
    );
    ui.painter().rect(
        card,
        RADIUS_CARD,
        *theme.raised,
        Stroke::new(1.0, *theme.line),
        egui::StrokeKind::Inside,
    );
    write(&mut Pen::new(ui, card.shrink2(vec2(12.0, 9.0))));
    card.top() - 8.0
}

/// No text of this file ever made a ladder, or it holds movements.
fn nothing_ui(ui: &mut Ui, rect: Rect, open: &FileView) {
    let theme = Theme::of(ui);
    let is_movements = open.file.ends_with("movements.ron");
    let words = if is_movements {
        "Movements make no ladder. Each is what a rung trains: pattern, share of the body, joints."
    } else {
        "No ladder to draw yet. It shows as soon as the text has no mistake."
    };
    if !is_movements {
        let centre = rect.center() - vec2(0.0, 60.0);
        crate::ui::two_rail::rails_between(
            ui.painter(),
            &[centre.x - 65.0, centre.x + 65.0],
            12.0,
            centre.y - 90.0..=centre.y + 90.0,
            &theme,
        );
        for nth in 0..4u8 {
            let y = centre.y - 66.0 + 44.0 * f32::from(nth);
            let rung = Rect::from_center_size(pos2(centre.x, y), vec2(118.0, 12.0));
            crate::ui::two_rail::rung_open(ui.painter(), rung, &theme);
        }
    }
    let column = Rect::from_min_max(
        pos2(rect.left() + 28.0, rect.center().y + 50.0),
        pos2(rect.right() - 28.0, rect.bottom()),
    );
    Pen::new(ui, column).write(Line::new(words, Ink::new(Face::Label, size::BODY, *theme.ink2)));
}
