//! The roster's table: columns by the room there is, a line an athlete.

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, letters};
use crate::ui::screens::heading;
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{RosterLine, RosterView};
use crate::ui::widgets::{badge_with_word, focus_ring, lying};
use crate::units::Rail;
use egui::{Align2, Rect, Role, ScrollArea, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};

use super::RosterState;

const ROW: f32 = 24.0;

/// Columns: where each begins; none where the window is too narrow for it.
pub(super) struct Columns {
    need: f32,
    name: f32,
    glyph: Option<f32>,
    ladder: Option<f32>,
    rung: Option<f32>,
    next: f32,
    weighs: Option<f32>,
    pain: Option<f32>,
    last: Option<f32>,
    right: f32,
}

impl Columns {
    pub(super) fn of(rect: Rect) -> Self {
        let x = |at: f32| rect.left() + at;
        let width = rect.width();
        if width >= 1180.0 {
            Self {
                need: x(20.0),
                name: x(116.0),
                glyph: Some(x(268.0)),
                ladder: Some(x(412.0)),
                rung: Some(x(546.0)),
                next: x(746.0),
                weighs: Some(x(1064.0)),
                pain: Some(x(1122.0)),
                last: Some(x(1210.0)),
                right: rect.right() - 16.0,
            }
        } else if width >= 820.0 {
            Self {
                need: x(20.0),
                name: x(104.0),
                glyph: Some(x(232.0)),
                ladder: Some(x(376.0)),
                rung: None,
                next: x(510.0),
                weighs: None,
                pain: Some(x(width - 100.0)),
                last: None,
                right: rect.right() - 16.0,
            }
        } else {
            Self {
                need: x(20.0),
                name: x(98.0),
                glyph: None,
                ladder: None,
                rung: None,
                next: x(220.0),
                weighs: None,
                pain: None,
                last: None,
                right: rect.right() - 16.0,
            }
        }
    }
}

pub(super) fn heads_ui(ui: &mut Ui, rect: Rect, columns: &Columns) {
    let theme = Theme::of(ui);
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, *theme.bench);
    painter.hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.5, *theme.edge));
    let y = rect.center().y;
    let ink = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let heads = [
        (
            Some(columns.need),
            if columns.rung.is_some() {
                "needs most"
            } else {
                "needs"
            },
        ),
        (Some(columns.name), "athlete"),
        (columns.ladder, "ladder"),
        (columns.rung, "rung now"),
        (Some(columns.next), "next step"),
        (columns.pain, "pain"),
        (columns.last, "last set"),
    ];
    for (x, words) in heads {
        let Some(x) = x else { continue };
        letters(painter, pos2(x, y), Align2::LEFT_CENTER, words, ink);
    }
    if let Some(x) = columns.glyph {
        let side = |colour| Ink::new(Face::LabelStrong, size::TABLE, colour);
        let words = Line::new("L", side(*theme.left))
            .and(" over ", ink)
            .and("R", side(*theme.right))
            .and(", ground to goal", ink)
            .on_one_line(painter, f32::INFINITY);
        painter.galley(pos2(x, y - words.size().y / 2.0), words, ink.colour);
    }
    if let Some(x) = columns.weighs {
        letters(painter, pos2(x, y), Align2::RIGHT_CENTER, "weighs", ink);
        letters(painter, pos2(x + 44.0, y), Align2::RIGHT_CENTER, "ago", ink);
    }
}

pub(super) fn rows_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &RosterView,
    columns: &Columns,
    state: &mut RosterState,
    actions: &mut Actions,
) {
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect));
    child.spacing_mut().item_spacing.y = 0.0;
    child.shrink_clip_rect(rect);
    if state.order.is_empty() {
        heading::centred(
            &mut child,
            pos2(rect.center().x, rect.top() + 40.0),
            "Nobody by that name, ladder or need. Esc shows everyone.",
        );
        return;
    }
    let bring = std::mem::take(&mut state.bring).then_some(state.chosen);
    ScrollArea::vertical()
        .auto_shrink(false)
        .show_rows(&mut child, ROW, state.order.len(), |ui, shown| {
            if let Some(nth) = bring {
                let offset = (crate::ui::screens::ladders::many(nth)
                    - crate::ui::screens::ladders::many(shown.start))
                    * ROW;
                let target = Rect::from_min_size(ui.cursor().min + vec2(0.0, offset), vec2(10.0, ROW));
                ui.scroll_to_rect(target, None);
            }
            for nth in shown {
                let Some(line) = state.order.line(view, nth) else {
                    continue;
                };
                let before = nth
                    .checked_sub(1)
                    .and_then(|nth| state.order.line(view, nth))
                    .map(|line| line.need);
                let (_, row) = ui.allocate_space(vec2(rect.width(), ROW));
                let first = (before != Some(line.need)).then(|| state.order.count(line.need));
                let look = RowLook {
                    first,
                    chosen: nth == state.chosen,
                    marked: state.marked.contains(&line.athlete),
                };
                if row_ui(ui, row, line, look, columns) {
                    if state.chosen == nth {
                        actions.ask(Action::OpenRow);
                    }
                    state.chosen = nth;
                }
            }
        });
}

/// How a line stands among the others.
#[derive(Debug, Clone, Copy)]
struct RowLook {
    /// The first of its need, and how many that need has.
    first: Option<usize>,
    chosen: bool,
    marked: bool,
}

/// A small square with a tick at the line's left end.
fn mark_ui(painter: &egui::Painter, rect: Rect, theme: &Theme) {
    let square = Rect::from_center_size(pos2(rect.left() + 11.0, rect.center().y), vec2(10.0, 10.0));
    painter.rect_filled(square, 2.0, *theme.ink);
    let points = [(-2.8, 0.0), (-0.8, 2.2), (3.0, -2.4)].map(|(x, y)| square.center() + vec2(x, y));
    painter.line(points.to_vec(), Stroke::new(1.5, *theme.raised));
}

/// One athlete; true when the line was pressed.
fn row_ui(ui: &mut Ui, rect: Rect, line: &RosterLine, look: RowLook, columns: &Columns) -> bool {
    let RowLook {
        first,
        chosen,
        marked,
    } = look;
    let theme = Theme::of(ui);
    let response = ui.interact(
        rect,
        ui.scope_id().with(("athlete", &line.athlete)),
        Sense::click(),
    );
    let said = if marked {
        format!("{}, marked", spoken(line))
    } else {
        spoken(line)
    };
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, chosen, &said));
    let painter = ui.painter();
    if chosen {
        painter.rect_filled(rect, 0.0, *theme.ember_wash);
        painter.rect_filled(
            Rect::from_min_size(rect.min, vec2(4.0, rect.height())),
            0.0,
            *theme.ember,
        );
    }
    if marked {
        mark_ui(painter, rect, &theme);
    }
    let heavy = first.is_some();
    painter.hline(
        rect.x_range(),
        rect.top(),
        Stroke::new(1.0, if heavy { *theme.edge } else { *theme.line }),
    );
    let y = rect.center().y;
    let strong = Ink::new(Face::LabelStrong, size::TABLE, *theme.ink);
    let plain = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let put = |x: f32, until: f32, text: &str, ink: Ink| {
        let galley = Line::new(text, ink).on_one_line(painter, until - x - 8.0);
        painter.galley(pos2(x, y - galley.size().y / 2.0), galley, ink.colour);
    };
    if let Some(count) = first {
        let galley = Line::new(line.need.title(), strong)
            .gap(5.0, &count.to_string(), plain)
            .on_one_line(painter, columns.name - columns.need - 4.0);
        painter.galley(pos2(columns.need, y - galley.size().y / 2.0), galley, *theme.ink);
    }
    put(
        columns.name,
        columns.glyph.unwrap_or(columns.next),
        &line.name,
        strong,
    );
    if let (Some(x), Some(view)) = (columns.glyph, &line.glyph) {
        lying(
            painter,
            Rect::from_min_size(pos2(x, y - 8.0), vec2(132.0, 16.0)),
            view,
            &theme,
        );
    }
    if let Some(x) = columns.ladder {
        put(x, columns.rung.unwrap_or(columns.next), &line.ladder, plain);
    }
    if let Some(x) = columns.rung {
        put(x, columns.next, &line.rung, plain);
    }
    let ground = if chosen { *theme.ember_wash } else { *theme.raised };
    verdicts(painter, line, columns, y, ground, &theme);
    if let Some(x) = columns.weighs {
        letters(
            painter,
            pos2(x, y),
            Align2::RIGHT_CENTER,
            &line.weighs,
            Ink {
                colour: *theme.ink,
                ..plain
            },
        );
        let ago = if line.weigh_in_is_old { strong } else { plain };
        letters(
            painter,
            pos2(x + 44.0, y),
            Align2::RIGHT_CENTER,
            &line.weighed_ago,
            ago,
        );
    }
    if let (Some(x), Some(pain)) = (columns.pain, &line.pain) {
        let ink = if line.pain_matters {
            Ink {
                colour: *theme.plum,
                ..strong
            }
        } else {
            plain
        };
        put(x, columns.last.unwrap_or(columns.right + 8.0), pain, ink);
    }
    if let Some(x) = columns.last {
        put(x, columns.right + 8.0, &line.last_set, plain);
    }
    if response.has_focus() {
        focus_ring(painter, rect.shrink(4.0), 3.0, &theme);
    }
    response.clicked()
}

fn verdicts(
    painter: &egui::Painter,
    line: &RosterLine,
    columns: &Columns,
    y: f32,
    ground: egui::Color32,
    theme: &Theme,
) {
    for (nth, (rail, verdict)) in line.verdicts.iter().take(2).enumerate() {
        let x = columns.next + 134.0 * crate::ui::screens::ladders::many(nth);
        if x + 100.0 > columns.pain.unwrap_or(columns.right + 8.0) {
            break;
        }
        let mut at = x;
        if *rail != Rail::Both {
            let ink = Ink::new(Face::LabelStrong, size::TABLE, theme.rail(*rail));
            letters(painter, pos2(x, y), Align2::LEFT_CENTER, rail.letter(), ink);
            at += 12.0;
        }
        badge_with_word(painter, pos2(at, y), *verdict, 15.0, size::TABLE, ground, theme);
    }
}

fn spoken(line: &RosterLine) -> String {
    let steps: Vec<String> = line
        .verdicts
        .iter()
        .map(|(rail, verdict)| format!("{} {}", rail.letter(), verdict.id()))
        .collect();
    let pain = line
        .pain
        .as_deref()
        .map_or_else(String::new, |pain| format!(", pain {pain}"));
    format!(
        "{}: {}, {}, {}{pain}",
        line.name,
        line.need.title(),
        line.ladder,
        steps.join(", ").trim()
    )
}
