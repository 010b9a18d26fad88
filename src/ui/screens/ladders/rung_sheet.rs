//! The sheet of a rung: demand, standard, entry, work, chance, care, source. Sections and words come with the view.

use egui::{Align2, Rect, Stroke, StrokeKind, pos2, vec2};

use crate::report::belief::between;
use crate::ui::pen::{Ink, Line, Pen};
use crate::ui::theme::{Face, Theme, size, translucent};
use crate::ui::two_rail::soft_bar;
use crate::ui::views::{LadderView, SheetLine, SheetView, Spot};
use crate::ui::widgets::{explained, hand_disc, key_cap};

use super::many;

/// Width of the column of names.
const NAMES: f32 = 78.0;
/// Room for a number under the small scale.
const TICK: f32 = 38.0;
/// Below this width names stand over their lines: long sentences need the room.
const NARROW_SHEET: f32 = 250.0;

/// Writes the sheet of `chosen`.
pub(super) fn write(pen: &mut Pen<'_>, view: &LadderView, chosen: Option<Spot>) {
    let theme = Theme::of(pen.ui);
    let (head, title, sheet) = match chosen {
        Some(Spot::Rung(nth)) => match view.rungs.get(nth) {
            Some(rung) => (
                format!("Rung {} of {}", nth + 1, view.rungs.len()),
                &rung.title,
                &rung.sheet,
            ),
            None => return,
        },
        Some(Spot::Branch(nth)) => match view.branches.get(nth) {
            Some(branch) => ("Branch beside the line".to_owned(), &branch.title, &branch.sheet),
            None => return,
        },
        Some(Spot::Ground) | None => {
            pen.write(Line::new(
                "Choose a rung to see what it asks.",
                Ink::new(Face::Label, size::BODY, *theme.ink2),
            ));
            return;
        }
    };
    let head = pen.write(Line::new(&head, Ink::new(Face::Label, 15.0, *theme.ink2)));
    if !pen.measuring {
        let mut right = pen.right;
        for key in ["↓", "↑"] {
            let at = pos2(right, head.center().y);
            right = key_cap(
                pen.ui.painter(),
                at,
                Align2::RIGHT_CENTER,
                key,
                *theme.ink2,
                &theme,
            )
            .left()
                - 3.0;
        }
    }
    pen.write(Line::new(title, Ink::new(Face::LabelStrong, 24.0, *theme.ink)));
    pen.gap(8.0);
    for (nth, part) in sheet.sections.iter().enumerate() {
        pen.rule(*theme.line);
        pen.gap(8.0);
        let top = pen.y;
        section(pen, &part.name, &part.lines);
        if let Some(how) = part.how.as_ref().filter(|_| !pen.measuring) {
            let rect = Rect::from_min_max(pos2(pen.left, top), pos2(pen.right, pen.y));
            let id = pen.ui.scope_id().with(("how", &part.name));
            explained(pen.ui, rect, id, how.clone());
        }
        if nth == 0 {
            scale(pen, view, sheet);
        }
        pen.gap(8.0);
    }
    set_aside(pen, view);
}

/// How far lines stand in: beside their name, or under it where the sheet is narrow.
fn names(pen: &Pen<'_>) -> f32 {
    if pen.width() < NARROW_SHEET { 0.0 } else { NAMES }
}

/// A name at the left, its lines beside it or under it.
fn section(pen: &mut Pen<'_>, name: &str, lines: &[SheetLine]) {
    let theme = Theme::of(pen.ui);
    let (top, right) = (pen.y, pen.right);
    let beside = names(pen) > 0.0;
    if beside {
        pen.right = pen.left + NAMES - 6.0;
    }
    pen.write(Line::new(name, Ink::new(Face::Label, 15.0, *theme.ink2)));
    pen.right = right;
    let after_name = pen.y;
    if beside {
        pen.y = top;
    }
    for line in lines {
        line_ui(pen, line);
    }
    pen.y = pen.y.max(after_name);
}

fn line_ui(pen: &mut Pen<'_>, line: &SheetLine) {
    let theme = Theme::of(pen.ui);
    let colour = if line.quiet { *theme.ink2 } else { *theme.ink };
    let plain = Ink::new(Face::Label, 15.0, colour);
    let strong = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
    let mut indent = names(pen);
    let middle = pen.y + 11.0;
    if let Some(rail) = line.rail {
        if !pen.measuring {
            hand_disc(
                pen.ui.painter(),
                pos2(pen.left + indent + 10.0, middle),
                9.5,
                rail,
                &theme,
            );
        }
        indent += 27.0;
    }
    if let Some((done, of)) = line.days {
        let rail = line.rail.unwrap_or(crate::units::Rail::Both);
        for day in 0..of.min(6) {
            let centre = pos2(pen.left + indent + 7.0 + 17.0 * f32::from(day), middle);
            if !pen.measuring {
                let fill = if day < done {
                    theme.rail(rail)
                } else {
                    *theme.surface
                };
                let square = Rect::from_center_size(centre, vec2(13.0, 13.0));
                pen.ui.painter().rect(
                    square,
                    0.0,
                    fill,
                    Stroke::new(1.5, theme.rail(rail)),
                    StrokeKind::Inside,
                );
            }
        }
        indent += 17.0 * f32::from(of.min(6)) + 7.0;
    }
    pen.write_at(indent, Line::phrase(&line.words, plain, strong));
    if line.rail.is_some() {
        pen.gap(2.0);
    }
}

/// Demand against what both hands are believed to do, on a short scale.
fn scale(pen: &mut Pen<'_>, view: &LadderView, sheet: &SheetView) {
    let Some((low, high)) = sheet
        .demand_band
        .filter(|(low, high)| high > low || !view.beliefs.is_empty())
    else {
        return;
    };
    let theme = Theme::of(pen.ui);
    pen.gap(8.0);
    let rows = many(view.beliefs.len().max(1)) * 16.0;
    let indent = names(pen);
    let Some(rect) = pen.room(rows + 30.0) else { return };
    let bars = Rect::from_min_max(
        pos2(rect.left() + indent, rect.top()),
        pos2(rect.right() - 16.0, rect.top() + rows),
    );
    let ends = view
        .beliefs
        .iter()
        .fold((low - 0.02, high + 0.02), |(from, to), belief| {
            let reach = (2.0 * belief.log_sd).exp();
            (from.min(belief.median / reach), to.max(belief.median * reach))
        });
    #[allow(clippy::cast_possible_truncation, reason = "a place on the screen")]
    let x = |demand: f64| bars.left() + bars.width() * ((demand - ends.0) / (ends.1 - ends.0)) as f32;
    if let Some(words) = scale_words(view, (low, high)) {
        let id = pen.ui.scope_id().with("scale");
        explained(pen.ui, bars.expand2(vec2(4.0, 6.0)), id, words);
    }
    let painter = pen.ui.painter();
    for (nth, belief) in view.beliefs.iter().enumerate() {
        let bar = Rect::from_min_size(
            pos2(bars.left(), bars.top() + 16.0 * many(nth)),
            vec2(bars.width(), 14.0),
        );
        soft_bar(painter, bar, x, belief, &theme);
    }
    let band = Rect::from_min_max(pos2(x(low), bars.top() - 2.0), pos2(x(high), bars.bottom() + 2.0));
    painter.rect_filled(band, 0.0, translucent(*theme.ink2, 0.35));
    painter.vline(
        band.center().x,
        bars.top() - 5.0..=bars.bottom() + 4.0,
        Stroke::new(2.0, *theme.ink),
    );
    let base = bars.bottom() + 6.0;
    painter.hline(bars.x_range(), base, Stroke::new(1.0, *theme.edge));
    // The finest step whose numbers stand clear of each other.
    let clear = (ends.1 - ends.0) * f64::from(TICK / bars.width().max(1.0));
    let step = [0.05, 0.1, 0.2, 0.5].into_iter().find(|step| *step >= clear);
    let step = step.unwrap_or(1.0);
    let mut tick = (ends.0 / step).ceil() * step;
    while tick <= ends.1 + 1e-9 {
        painter.vline(x(tick), base..=base + 4.0, Stroke::new(1.0, *theme.edge));
        let ink = Ink::new(Face::Text, size::NOTE, *theme.ink2);
        crate::ui::pen::letters(
            painter,
            pos2(x(tick), base + 5.0),
            egui::Align2::CENTER_TOP,
            &format!("{tick:.2}"),
            ink,
        );
        tick += step;
    }
}

/// What the small scale shows; nothing where no belief stands on it.
fn scale_words(view: &LadderView, asked: (f64, f64)) -> Option<String> {
    let hands = view.beliefs.iter().map(|belief| {
        let whose = match belief.rail {
            crate::units::Rail::Both => "both hands",
            crate::units::Rail::Left => "the left hand",
            crate::units::Rail::Right => "the right hand",
        };
        let range = between(belief.interval80);
        format!("{whose} {:.2} (80 %: {range})", belief.median)
    });
    let hands = hands.collect::<Vec<_>>().join(", ");
    let asks = between(asked);
    (!hands.is_empty()).then(|| {
        format!("This rung asks {asks} of the goal, the grey box; believed of {hands}. How that came about: see Estimate below.")
    })
}

/// Rails that are set aside, said once.
fn set_aside(pen: &mut Pen<'_>, view: &LadderView) {
    let theme = Theme::of(pen.ui);
    for rail in &view.set_aside {
        let whose = match rail {
            crate::units::Rail::Both => "This ladder is",
            crate::units::Rail::Left => "The left rail is",
            crate::units::Rail::Right => "The right rail is",
        };
        let words = format!("{whose} set aside: no advice until you place the hand again.");
        pen.write(Line::new(&words, Ink::new(Face::LabelStrong, 15.0, *theme.plum)));
    }
}
