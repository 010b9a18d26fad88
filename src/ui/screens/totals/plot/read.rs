//! What can be read off the plot: the bests with their callouts, and the point that is walked or pointed at.

use egui::{Painter, Pos2, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, vec2};

use crate::coaching::what_if::There;
use crate::ui::pen::{Ink, Line};
use crate::ui::screens::totals::axes::{Axes, callouts};
use crate::ui::screens::totals::capital;
use crate::ui::screens::totals::state::TotalsState;
use crate::ui::theme::{Face, STROKE_NOW, Theme, size};
use crate::ui::views::{BestView, LiftView};

use super::marks::sign;

/// How far the pointer may be from a point to read it.
const REACH: f32 = 10.0;

/// The bests of these repetitions: a sign on each, a callout with leader beside it. Bests of one set share both. Returns
/// where the callouts stand.
pub(super) fn bests(
    painter: &Painter,
    axes: &Axes,
    lift: &LiftView,
    (reps, places): (u16, &[Option<Pos2>]),
    there: Option<&There>,
    theme: &Theme,
) -> Vec<Rect> {
    let mut groups: Vec<(Pos2, Vec<&BestView>)> = Vec::new();
    for best in lift.bests.iter().filter(|best| best.reps == reps) {
        let Some(at) = best.at.map(|(body, load)| axes.at(body, load)) else {
            continue;
        };
        match groups.iter_mut().find(|(place, _)| place.distance(at) < 1.0) {
            Some((_, all)) => all.push(best),
            None => groups.push((at, vec![best])),
        }
    }
    let (plain, strong) = (
        Ink::new(Face::Label, size::TABLE, *theme.ink2),
        Ink::new(Face::LabelStrong, 15.0, *theme.ink),
    );
    let galleys: Vec<_> = groups
        .iter()
        .map(|(_, all)| {
            let lines = all.iter().enumerate().fold(Line::default(), |line, (nth, best)| {
                let line = if nth == 0 { line } else { line.and("\n", plain) };
                line.and(&format!("{}  ", capital(best.title)), plain)
                    .and(&best.value, strong)
            });
            lines.wrapped(painter, 400.0)
        })
        .collect();
    let wanted: Vec<(Pos2, egui::Vec2)> = groups
        .iter()
        .zip(&galleys)
        .map(|((at, _), galley)| (*at, galley.size() + vec2(18.0, 10.0)))
        .collect();
    let mut keep_free: Vec<Pos2> = groups.iter().map(|(at, _)| *at).collect();
    let doubted = lift.points.iter().zip(places).filter(|(point, _)| point.doubted);
    keep_free.extend(doubted.filter_map(|(_, at)| *at));
    if let Some(there) = there {
        let ends = [there.low80, there.system, there.high80];
        keep_free.extend(ends.map(|load| axes.at(there.bodyweight.kg(), lift.for_reps(load.kg(), reps))));
    }
    let placed = callouts(&wanted, &[], &keep_free, axes.frame.expand2(vec2(-2.0, 0.0)));
    // Leaders first: a box covers a leader that must pass behind it.
    for ((at, _), rect) in groups.iter().zip(&placed) {
        painter.line_segment([*at, rect.clamp(*at)], Stroke::new(1.0, *theme.ink));
    }
    for (((at, all), galley), rect) in groups.iter().zip(galleys).zip(&placed) {
        painter.rect(
            *rect,
            3.0,
            *theme.raised,
            Stroke::new(1.0, *theme.ink),
            StrokeKind::Inside,
        );
        painter.galley(rect.min + vec2(9.0, 5.0), galley, *theme.ink);
        if let Some(first) = all.first() {
            sign(painter, *at, first.kind, 7.0, theme);
        }
    }
    placed
}

/// Points by key, pointer and screen reader: the one that is walked or pointed at is ringed and read out.
pub(super) fn walk(
    ui: &mut Ui,
    axes: &Axes,
    lift: &LiftView,
    (places, callouts_of_bests): (&[Option<Pos2>], &[Rect]),
    state: &mut TotalsState,
    theme: &Theme,
) {
    let id = ui.scope_id().with("points");
    let response = ui.interact(axes.frame, id, Sense::click());
    let near = response.hover_pos().and_then(|pointer| nearest(places, pointer));
    if response.clicked() {
        state.walked = near;
        response.request_focus();
    }
    let read = near.or(state.walked);
    let point = read.and_then(|nth| lift.points.get(nth));
    let words = point.map_or_else(
        || format!("{} sets; left and right arrow walk them", lift.points.len()),
        |point| point.words.clone(),
    );
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
    if response.has_focus() {
        ui.painter().rect_stroke(
            axes.frame.expand(3.0),
            3.0,
            Stroke::new(STROKE_NOW, *theme.ink),
            StrokeKind::Outside,
        );
    }
    let (Some(point), Some(at)) = (point, read.and_then(|nth| places.get(nth).copied().flatten())) else {
        return;
    };
    ui.painter()
        .circle_stroke(at, 8.5, Stroke::new(STROKE_NOW, *theme.ink));
    let ink = Ink::new(Face::LabelStrong, 15.0, *theme.on_steel);
    let galley = Line::new(&point.words, ink).wrapped(ui.painter(), (axes.frame.width() - 40.0).min(420.0));
    let wanted = [(at, galley.size() + vec2(18.0, 10.0))];
    let rect = callouts(&wanted, callouts_of_bests, &[at], axes.frame)
        .first()
        .copied()
        .unwrap_or(axes.frame);
    ui.painter().rect_filled(rect, 3.0, *theme.steel);
    ui.painter()
        .galley(rect.min + vec2(9.0, 5.0), galley, *theme.on_steel);
}

/// The point nearest to the pointer, within reach.
fn nearest(places: &[Option<Pos2>], pointer: Pos2) -> Option<usize> {
    let distances = places
        .iter()
        .enumerate()
        .filter_map(|(nth, at)| Some((nth, (*at)?.distance(pointer))));
    distances
        .filter(|(_, far)| *far <= REACH)
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(nth, _)| nth)
}
