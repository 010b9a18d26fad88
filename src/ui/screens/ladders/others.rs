//! The sheet that opens or joins another ladder.

use egui::{Rect, Role, Sense, Ui, WidgetInfo, pos2, vec2};

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line};
use crate::ui::screens::sheet::SheetFrame;
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{LaddersView, OtherLadder};
use crate::ui::widgets::focus_ring;

use super::state::{LaddersState, Over};

/// Shows the list while it is open.
pub(super) fn others_ui(ui: &mut Ui, view: &LaddersView, state: &mut LaddersState, actions: &mut Actions) {
    if state.over != Some(Over::Others) {
        return;
    }
    let closed = SheetFrame::new("Ladders").width(560.0).show(ui, |ui| {
        view.others
            .iter()
            .map(|other| line_ui(ui, other, actions))
            .fold(false, |any, pressed| any | pressed)
    });
    if closed {
        state.over = None;
    }
}

fn line_ui(ui: &mut Ui, other: &OtherLadder, actions: &mut Actions) -> bool {
    let theme = Theme::of(ui);
    let height = if other.broken.is_some() { 56.0 } else { 36.0 };
    let (id, rect) = ui.allocate_space(vec2(ui.available_width(), height));
    let response = ui.interact(rect, id, Sense::click());
    let said = if other.joined { "open" } else { "join" };
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("{}, {said}", other.title)));
    if response.hovered() {
        ui.painter().rect_filled(rect, 4.0, *theme.bench);
    }
    if response.has_focus() {
        focus_ring(ui.painter(), rect.shrink(3.0), 4.0, &theme);
    }
    let painter = ui.painter();
    let note = if other.joined { "you are on it" } else { "join" };
    let ink = Ink::new(
        if other.joined {
            Face::Label
        } else {
            Face::LabelStrong
        },
        15.0,
        if other.joined { *theme.ink2 } else { *theme.ember },
    );
    let right = Line::new(note, ink).on_one_line(painter, 140.0);
    let title = Line::new(&other.title, Ink::new(Face::LabelStrong, size::BODY, *theme.ink))
        .on_one_line(painter, rect.width() - right.size().x - 30.0);
    painter.galley(
        pos2(rect.right() - 8.0 - right.size().x, rect.top() + 8.0),
        right,
        ink.colour,
    );
    painter.galley(rect.min + vec2(8.0, 7.0), title, *theme.ink);
    if let Some(broken) = &other.broken {
        let words = Line::new(broken, Ink::new(Face::Label, size::TABLE, *theme.plum))
            .on_one_line(painter, rect.width() - 16.0);
        painter.galley(rect.min + vec2(8.0, 30.0), words, *theme.plum);
    }
    let line = Rect::from_min_max(rect.left_bottom(), rect.right_bottom());
    painter.hline(line.x_range(), rect.bottom(), egui::Stroke::new(1.0, *theme.line));
    if response.clicked() {
        if !other.joined {
            actions.write(Deed::Join {
                ladder: other.id.clone(),
            });
        }
        actions.write(Deed::ShowLadder(other.id.clone()));
    }
    response.clicked()
}
