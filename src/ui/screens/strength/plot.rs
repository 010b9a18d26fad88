//! The plots of strength over time: the band of belief, sets as dots, layoffs and phases shaded, bodyweight below.

use egui::{Align2, RichText, Role, Sense, Stroke, Ui, Vec2, WidgetInfo};
use egui_plot::{
    Axis, AxisHints, FilledArea, GridMark, HoverPosition, Line, LineStyle, MarkerShape, Plot, PlotPoint,
    PlotPoints, Points, Span, Text, VPlacement,
};

use crate::ui::screens::past_days::{day_words, months_between};
use crate::ui::screens::weigh_ins::{even_masses, mass_of, small_scale};
use crate::ui::theme::{Face, STROKE_NOW, Theme, size, translucent};
use crate::ui::views::{DotKind, StrengthDay, StrengthDot, StrengthView};
use crate::ui::widgets::focus_ring;

/// Height of the plot of strength, points.
const HEIGHT: f32 = 250.0;
/// Room for the numbers at the left, points: the same for both plots, so that their months stand under each other.
const AXIS: f32 = 56.0;
/// Most months that have a name on the axis: all of what is shown.
const NAMED: usize = 100;
/// Height of the plot of bodyweight, points.
const BODY_HEIGHT: f32 = 84.0;
/// Room that each named mass needs, and how near to an end of its scale none stands, points.
const MASS_ROOM: f64 = 32.0;
const EDGE: f64 = 9.0;
/// How far a press may be from a set to choose it, points.
const REACH: f32 = 14.0;

/// What is walked to on one plot: the place of the set in its view.
pub(super) type Walked = Option<usize>;

/// Shows strength, and bodyweight below it. Returns whether the plot has the focus, and the set that a press chose.
pub(super) fn plots_ui(ui: &mut Ui, nth: usize, view: &StrengthView, walked: Walked) -> (bool, Walked) {
    let theme = Theme::of(ui);
    let link = ui.scope_id().with(("strength over time", nth));
    ui.scope(|ui| {
        small_scale(ui);
        let touched = strength_plot(ui, nth, view, link, walked, &theme);
        if view.bodyweight.len() > 1 {
            super::quiet(ui, "Bodyweight");
            body_plot(ui, nth, view, link, &theme);
        }
        touched
    })
    .inner
}

/// What a screen reader says of the plot: the set that is walked to, else everything in a few sentences.
fn spoken(view: &StrengthView, walked: Walked) -> String {
    match walked.and_then(|nth| view.sets.get(nth)) {
        Some(dot) => dot.words.clone(),
        None => {
            let lines = [&view.words[..], &view.spans[..]].concat().join(". ");
            let sets = view.sets.len();
            format!(
                "{}: {lines}. {sets} sets; left and right arrow walk them",
                view.title
            )
        }
    }
}

fn base<'p>(id: String, height: f32, link: egui::Id, view: &'p StrengthView, theme: &Theme) -> Plot<'p> {
    let (today, unit, grid) = (view.today, view.unit.clone(), *theme.line);
    let scale = view.unit.clone();
    let masses =
        move |mark: GridMark, _: &std::ops::RangeInclusive<f64>| format!("{} {scale}", mass_of(mark));
    let months = move |mark: GridMark, _: &std::ops::RangeInclusive<f64>| day_words(today, mark.value, "%b");
    let x = AxisHints::new_x().formatter(months).placement(VPlacement::Bottom);
    Plot::new(id)
        .height(height)
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .set_margin_fraction(Vec2::new(0.01, 0.06))
        .include_x(first_day(view))
        .include_x(0.0)
        .custom_x_axes(vec![x])
        .custom_y_axes(vec![AxisHints::new_y().formatter(masses).min_thickness(AXIS)])
        .x_grid_spacer(move |input| months_between(today, input.bounds, NAMED))
        .y_grid_spacer(move |input| masses_inside(input.bounds, f64::from(height)))
        .link_axis(link, [true, false])
        .link_cursor(link, [true, false])
        .sense(Sense::click())
        .grid_color(grid)
        .cursor_color(grid)
        .label_formatter(move |at| hover_words(at, today, &unit))
}

/// Even masses for a scale so high, none at its ends, where the months and the words above stand.
fn masses_inside((low, high): (f64, f64), height: f64) -> Vec<GridMark> {
    let edge = (high - low) * EDGE / height;
    even_masses((low + edge, high - edge), height / MASS_ROOM)
}

/// The first day of both plots, so that they span the same time from the first frame.
fn first_day(view: &StrengthView) -> f64 {
    let days = view.days.iter().map(|day| day.day);
    let sets = view.sets.iter().map(|dot| dot.day);
    let weighed = view.bodyweight.iter().map(|(day, _)| *day);
    let shaded = view.layoffs.iter().map(|span| span.0);
    let phases = view.phases.iter().map(|span| span.0);
    let all = days.chain(sets).chain(weighed).chain(shaded).chain(phases);
    all.fold(0.0, f64::min)
}

/// `from reps · Wed 4 Mar 2026 · 118.4 kg`; nothing where nothing is near.
fn hover_words(at: &HoverPosition<'_>, today: i32, unit: &str) -> Option<String> {
    match at {
        HoverPosition::NearDataPoint {
            plot_name, position, ..
        } => {
            let day = day_words(today, position.x, "%a %-d %b %Y");
            Some(format!("{plot_name}\n{day}\n{:.1} {unit}", position.y))
        }
        HoverPosition::Elsewhere { .. } => None,
    }
}

fn strength_plot(
    ui: &mut Ui,
    nth: usize,
    view: &StrengthView,
    link: egui::Id,
    walked: Walked,
    theme: &Theme,
) -> (bool, Walked) {
    let fill = theme.rail_fill(view.rail);
    let xs: Vec<f64> = view.days.iter().map(|day| day.day).collect();
    let shown = base(format!("strength {nth}"), HEIGHT, link, view, theme).show(ui, |plot| {
        for (from, until) in &view.layoffs {
            plot.add(shade(
                "no training",
                *from,
                *until,
                translucent(*theme.edge, 0.22),
            ));
        }
        for (from, until, word) in &view.phases {
            plot.add(shade(word, *from, *until, translucent(*theme.ember, 0.07)));
        }
        // The widest first, so that the narrower lie over it and the middle is the strongest.
        for (band, alpha) in [(2, 0.16), (1, 0.22), (0, 0.28)] {
            let end = |side: fn((f64, f64)) -> f64| -> Vec<f64> {
                view.days
                    .iter()
                    .filter_map(|day: &StrengthDay| day.bands.get(band).copied().map(side))
                    .collect()
            };
            let area = FilledArea::new("", &xs, &end(|band| band.0), &end(|band| band.1));
            plot.add(area.fill_color(translucent(fill, alpha)).allow_hover(false));
        }
        let middle: PlotPoints<'_> = view.days.iter().map(|day| [day.day, day.middle]).collect();
        plot.add(
            Line::new("believed", middle)
                .color(theme.rail(view.rail))
                .width(1.5)
                .style(LineStyle::dotted_dense()),
        );
        for kind in [
            DotKind::FromReps,
            DotKind::Single,
            DotKind::Missed,
            DotKind::Suspect,
        ] {
            plot.add(dots(view, kind, theme));
        }
        let far = view
            .sets
            .iter()
            .filter_map(|dot| Some((dot, dot.beyond.as_ref()?)));
        for (dot, words) in far {
            let words = RichText::new(format!("   {words}   ")).font(Face::Label.at(size::TABLE));
            let at = PlotPoint::new(dot.day, dot.shows);
            // Beside its mark, on the side that has room.
            let anchor = match dot.day > first_day(view) / 2.0 {
                true => Align2::RIGHT_CENTER,
                false => Align2::LEFT_CENTER,
            };
            plot.add(
                Text::new("", at, words)
                    .anchor(anchor)
                    .color(*theme.plum)
                    .allow_hover(false),
            );
        }
    });
    let (response, transform) = (shown.response, shown.transform);
    let at = |dot: &StrengthDot| transform.position_from_point(&PlotPoint::new(dot.day, dot.shows));
    if let Some(dot) = walked.and_then(|nth| view.sets.get(nth)) {
        let ring = Stroke::new(STROKE_NOW, *theme.ink);
        ui.painter().circle_stroke(at(dot), 8.5, ring);
    }
    let words = spoken(view, walked);
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &words));
    let mut chosen = None;
    if let Some(pointer) = response.interact_pointer_pos().filter(|_| response.clicked()) {
        let far = |dot: &StrengthDot| at(dot).distance(pointer);
        let nearest = (0..view.sets.len()).min_by(|a, b| far(&view.sets[*a]).total_cmp(&far(&view.sets[*b])));
        chosen = nearest.filter(|nth| far(&view.sets[*nth]) <= REACH);
        response.request_focus();
    }
    if response.has_focus() {
        focus_ring(ui.painter(), response.rect, 3.0, theme);
    }
    (response.has_focus(), chosen)
}

fn shade(word: &str, from: f64, until: f64, colour: egui::Color32) -> Span {
    Span::new(word, from..=until)
        .axis(Axis::X)
        .fill(colour)
        .border(Stroke::NONE)
}

fn dots<'p>(view: &StrengthView, kind: DotKind, theme: &Theme) -> Points<'p> {
    let of_kind = view.sets.iter().filter(|dot| dot.kind == kind);
    let points: PlotPoints<'p> = of_kind.map(|dot| [dot.day, dot.shows]).collect();
    let (name, shape, filled, radius, colour) = match kind {
        DotKind::Single => ("single", MarkerShape::Circle, true, 4.0, *theme.ink),
        DotKind::FromReps => ("from reps", MarkerShape::Circle, false, 2.6, *theme.ink2),
        DotKind::Missed => ("missed", MarkerShape::Cross, false, 4.0, *theme.ink),
        DotKind::Suspect => ("looks like a typo", MarkerShape::Diamond, false, 5.5, *theme.plum),
    };
    Points::new(name, points)
        .shape(shape)
        .filled(filled)
        .radius(radius)
        .color(colour)
}

fn body_plot(ui: &mut Ui, nth: usize, view: &StrengthView, link: egui::Id, theme: &Theme) {
    let weighed: PlotPoints<'_> = view.bodyweight.iter().map(|(day, mass)| [*day, *mass]).collect();
    // A bodyweight that never varied still has a scale around it.
    let masses = || view.bodyweight.iter().map(|(_, mass)| *mass);
    let (low, high) = (
        masses().fold(f64::MAX, f64::min),
        masses().fold(f64::MIN, f64::max),
    );
    base(format!("bodyweight {nth}"), BODY_HEIGHT, link, view, theme)
        .include_y(low - 0.5)
        .include_y(high + 0.5)
        .sense(Sense::hover())
        .show_grid([true, false])
        .show(ui, |plot| {
            plot.add(Line::new("bodyweight", weighed).color(*theme.steel).width(1.5));
        });
}
