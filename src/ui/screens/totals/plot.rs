//! The scatter: what was lifted at each bodyweight, lines of the same added load, the athlete's own line, and where another
//! bodyweight would lead.

mod kept;
mod marks;
mod read;

pub(super) use kept::Kept;
pub(super) use marks::sign;

use egui::{Align2, Painter, Rect, Shape, Stroke, Ui, pos2, vec2};

use crate::coaching::what_if::There;
use crate::report::numbers::counted;
use crate::report::totals::signed;
use crate::ui::pen::{Ink, Line, letters, named_galley, width_of};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::two_rail::heights::many;
use crate::ui::views::LiftView;
use crate::units::Unit;

use super::axes::Axes;
use super::state::TotalsState;
use marks::{doubts, legend, whisker};
use read::{bests, walk};

/// Room around the frame: ticks at the left, added loads at the right, title and legend above, bodyweights and slider below.
const MARGIN: [f32; 4] = [48.0, 62.0, 96.0, 106.0];

/// Draws the plot's card, and lets the points be walked and read.
pub(super) fn plot_ui(
    ui: &mut Ui,
    card: Rect,
    lift: &LiftView,
    unit: Unit,
    there: Option<&There>,
    state: &mut TotalsState,
) {
    let theme = Theme::of(ui);
    let reps = state.reps();
    let title = format!("{}: what you lifted at each bodyweight", lift.title);
    let ink = Ink::new(Face::LabelStrong, 17.0, *theme.ink);
    let line = Line::new(&title, ink).on_one_line(ui.painter(), card.width() - 40.0);
    let title_end = named_galley(ui, card.min + vec2(22.0, 12.0), line).right();
    let frame = frame(card, lift);
    legend(ui.painter(), card, title_end, lift, reps, &theme);
    let mut kept = Kept::still(state.kept.take(), lift, reps);
    if let Some(axes) = axes(&kept, lift, reps, there, frame, unit) {
        let named = grid(ui.painter(), &axes, reps, there, &theme);
        same_added(ui.painter(), &axes, lift.share, named, &theme);
        let inside = ui.painter().with_clip_rect(frame.expand(6.0));
        let (places, marks) = kept.drawn(&axes, lift, reps, &theme);
        inside.extend(marks.iter().cloned());
        doubts(&inside, lift, places, &theme);
        if let Some(there) = there {
            whisker(ui.painter(), &axes, there, lift, reps, &theme);
        }
        let named = bests(ui.painter(), &axes, lift, (reps, places), there, &theme);
        walk(ui, &axes, lift, (places, &named), state, &theme);
    }
    state.kept = Some(kept);
}

/// Where the plot lies in its card; without a slider there is more room.
fn frame(card: Rect, lift: &LiftView) -> Rect {
    let below = if lift.what_if.is_some() { MARGIN[3] } else { 46.0 };
    Rect::from_min_max(
        card.min + vec2(MARGIN[0] + 12.0, MARGIN[2]),
        card.max - vec2(MARGIN[1], below),
    )
}

/// The line under the plot on which the slider runs.
pub(super) fn track(card: Rect, lift: &LiftView) -> Rect {
    let frame = frame(card, lift);
    Rect::from_center_size(
        pos2(frame.center().x, card.bottom() - 50.0),
        vec2(frame.width(), 30.0),
    )
}

/// Axes around every point, the line's ends and the whisker.
pub(super) fn axes(
    kept: &Kept,
    lift: &LiftView,
    reps: u16,
    there: Option<&There>,
    frame: Rect,
    unit: Unit,
) -> Option<Axes> {
    let today = lift
        .what_if
        .as_ref()
        .map(|known| (known.bodyweight.kg(), lift.for_reps(known.today.kg(), reps)));
    let bests = lift
        .bests
        .iter()
        .filter(|best| best.reps == reps)
        .filter_map(|best| best.at);
    let axes = Axes::around(kept.corners().chain(today).chain(bests), frame, unit)?;
    Some(match there {
        Some(there) => {
            let ends = [there.low80, there.high80].map(|load| lift.for_reps(load.kg(), reps));
            axes.reaching(there.bodyweight.kg(), ends)
        }
        None => axes,
    })
}

/// Digits after the point that all of these ticks need: they stand under each other.
fn digits(ticks: &[(f64, f64)]) -> usize {
    usize::from(
        ticks
            .iter()
            .any(|(_, value)| (value - value.round()).abs() > 0.01),
    )
}

/// Ticks and what they count; returns where the name of the upward axis ends.
fn grid(painter: &Painter, axes: &Axes, reps: u16, there: Option<&There>, theme: &Theme) -> f32 {
    let frame = axes.frame;
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let upward = axes.ticks_upward();
    let places = digits(&upward);
    for (kg, value) in upward {
        let y = axes.y(kg).round() + 0.5;
        painter.hline(frame.x_range(), y, Stroke::new(1.0, *theme.line));
        letters(
            painter,
            pos2(frame.left() - 10.0, y),
            Align2::RIGHT_CENTER,
            &format!("{value:.places$}"),
            quiet,
        );
    }
    let across = format!("bodyweight, {}", axes.unit.sign());
    let at = pos2(frame.right() + 54.0, frame.bottom() + 12.0);
    let named = letters(painter, at, Align2::RIGHT_TOP, &across, quiet);
    // The slider's own number stands below the line that goes down to it; a tick's would lie under that line.
    let asked = there.map(|there| axes.x(there.bodyweight.kg()));
    let ticks = axes.ticks_across();
    let places = digits(&ticks);
    for (kg, value) in ticks {
        let x = axes.x(kg);
        if x + 20.0 > named.left() {
            continue;
        }
        let words = format!("{value:.places$}");
        let half = width_of(painter, &words, quiet) / 2.0;
        if asked.is_some_and(|asked| (asked - x).abs() < half + 4.0) {
            continue;
        }
        painter.vline(
            x,
            frame.bottom() + 4.0..=frame.bottom() + 9.0,
            Stroke::new(1.0, *theme.edge),
        );
        letters(
            painter,
            pos2(x, frame.bottom() + 12.0),
            Align2::CENTER_TOP,
            &words,
            quiet,
        );
    }
    let counted = counted(reps, "rep");
    let upward = format!("system load, {} ({counted})", axes.unit.sign());
    letters(
        painter,
        frame.left_top() + vec2(-38.0, -24.0),
        Align2::LEFT_CENTER,
        &upward,
        quiet,
    )
    .right()
}

/// Lines of the same added load, each with its load where it leaves the frame; right of `free` at the top.
fn same_added(painter: &Painter, axes: &Axes, share: f64, free: f32, theme: &Theme) {
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let stroke = Stroke::new(1.0, *theme.edge);
    let mut last_top = f32::INFINITY;
    for line in axes.same_added(share).iter().rev() {
        painter.extend(Shape::dashed_line(&[line.from, line.to], stroke, 6.0, 5.0));
        let words = signed(line.added_kg, axes.unit);
        if line.at_right {
            letters(
                painter,
                line.to + vec2(6.0, 0.0),
                Align2::LEFT_CENTER,
                &words,
                quiet,
            );
        } else if line.to.x > free + 38.0
            && (last_top - line.to.x).abs() > 76.0
            && axes.frame.right() - line.to.x > 40.0
        {
            letters(
                painter,
                line.to + vec2(0.0, -4.0),
                Align2::CENTER_BOTTOM,
                &words,
                quiet,
            );
            last_top = line.to.x;
        }
    }
}

/// Width of so many equal parts, for rows of boxes.
pub(super) fn parts(width: f32, count: usize, gap: f32) -> f32 {
    (width - gap * many(count.saturating_sub(1))) / many(count.max(1))
}
