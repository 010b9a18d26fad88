//! Strength over time, over the ladder: the band of belief, sets as dots, layoffs and phases shaded, bodyweight below.

use chrono::{Datelike, Days, Months, NaiveDate};
use egui::{Response, Role, Stroke, Ui, Vec2, WidgetInfo};
use egui_plot::{
    Axis, AxisHints, FilledArea, GridMark, HoverPosition, Line, LineStyle, MarkerShape, Plot, PlotPoint,
    PlotPoints, Points, Span, VPlacement,
};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::screens::sheet::SheetFrame;
use crate::ui::theme::{Face, Theme, size, translucent};
use crate::ui::views::{DotKind, LaddersView, StrengthDay, StrengthView};
use crate::ui::widgets::Button;

use super::state::{LaddersState, Over};

/// Width of the sheet, points.
const WIDTH: f32 = 920.0;
/// Height of the plot of strength, points.
const HEIGHT: f32 = 250.0;
/// Room for the numbers at the left, points: the same for both plots, so that their months stand under each other.
const AXIS: f32 = 40.0;
/// Days between two months on the axis, about.
const MONTH: f64 = 30.0;
/// Height of the plot of bodyweight, points.
const BODY_HEIGHT: f32 = 84.0;

/// Shows the sheet while it is open.
pub(super) fn strength_ui(ui: &mut Ui, view: &LaddersView, state: &mut LaddersState, actions: &mut Actions) {
    let mend = std::mem::take(&mut state.mend_first);
    if state.over != Some(Over::Strength) {
        return;
    }
    let first = view
        .strength
        .iter()
        .flat_map(|shown| &shown.suspects)
        .find(|suspect| suspect.mend.is_some());
    if let (true, Some(suspect)) = (mend, first) {
        actions.write(Deed::MendSet(suspect.id.clone()));
    }
    let closed = SheetFrame::new("Strength over time").width(WIDTH).show(ui, |ui| {
        if view.strength.is_empty() {
            quiet(ui, "No estimate yet. It needs sets with a load, and a weigh-in, of an earlier day.");
        }
        let mut key_shown = false;
        for (nth, shown) in view.strength.iter().enumerate() {
            course_ui(ui, nth, shown);
            for suspect in &shown.suspects {
                ui.horizontal_wrapped(|ui| {
                    quiet(ui, &suspect.words);
                    let Some(mend) = &suspect.mend else { return };
                    let key = if key_shown { String::new() } else { Action::MendSet.key() };
                    key_shown = true;
                    if Button::plain(mend).key(&key).flow(ui).clicked() {
                        actions.write(Deed::MendSet(suspect.id.clone()));
                    }
                });
            }
            ui.add_space(14.0);
        }
        quiet(
            ui,
            "Soft: what was believed that morning, 50, 80 and 95 in 100. Solid dots: singles; rings: from reps; crosses: missed; \
             diamonds: look like a typo. Grey: no training for over two weeks. An estimate, not a promise.",
        );
        false
    });
    if closed {
        state.over = None;
    }
}

fn quiet(ui: &mut Ui, words: &str) {
    let theme = Theme::of(ui);
    let text = egui::RichText::new(words)
        .font(Face::Label.at(size::TABLE))
        .color(*theme.ink2);
    ui.label(text);
}

fn course_ui(ui: &mut Ui, nth: usize, view: &StrengthView) {
    let theme = Theme::of(ui);
    ui.label(
        egui::RichText::new(&view.title)
            .font(Face::LabelStrong.at(size::BODY))
            .color(theme.rail(view.rail)),
    );
    for words in &view.words {
        quiet(ui, words);
    }
    let link = ui.scope_id().with(("strength over time", nth));
    let response = strength_plot(ui, nth, view, link, &theme);
    named(&response, view);
    if view.bodyweight.len() > 1 {
        quiet(ui, &format!("Bodyweight, {}", view.unit));
        body_plot(ui, nth, view, link, &theme);
    }
}

/// What a screen reader says of the plot: the same words.
fn named(response: &Response, view: &StrengthView) {
    let words = format!("{}: {}", view.title, view.words.join(". "));
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, words.clone()));
}

fn base<'p>(id: String, height: f32, link: egui::Id, view: &'p StrengthView) -> Plot<'p> {
    let (today, unit) = (view.today, view.unit.clone());
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
        .custom_y_axes(vec![AxisHints::new_y().min_thickness(AXIS)])
        .x_grid_spacer(move |input| months_between(today, input.bounds))
        .link_axis(link, [true, false])
        .link_cursor(link, [true, false])
        .label_formatter(move |at| Some(hover_words(at, today, &unit)))
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

/// `Pull-up · Wed 4 Mar 2026 · 118.4 kg`.
fn hover_words(at: &HoverPosition<'_>, today: i32, unit: &str) -> String {
    let say = |what: &str, point: &PlotPoint| {
        let day = day_words(today, point.x, "%a %-d %b %Y");
        let gap = if what.is_empty() { "" } else { "\n" };
        format!("{what}{gap}{day}\n{:.1} {unit}", point.y)
    };
    match at {
        HoverPosition::NearDataPoint {
            plot_name, position, ..
        } => say(plot_name, position),
        HoverPosition::Elsewhere { position } => say("", position),
    }
}

fn day_words(today: i32, day: f64, form: &str) -> String {
    let date = NaiveDate::from_num_days_from_ce_opt(today);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a day of the plot, clamped before"
    )]
    let back = (-day).clamp(0.0, 40_000.0).round() as u64;
    date.and_then(|date| date.checked_sub_days(Days::new(back)))
        .map_or_else(String::new, |date| date.format(form).to_string())
}

/// The first day of each month within `bounds`, so that the axis can name them.
fn months_between(today: i32, bounds: (f64, f64)) -> Vec<GridMark> {
    let day = |date: NaiveDate| f64::from(date.num_days_from_ce() - today);
    let first = NaiveDate::from_num_days_from_ce_opt(today).and_then(|date| date.with_day(1));
    std::iter::successors(first, |date| date.checked_sub_months(Months::new(1)))
        .take_while(|date| day(*date) >= bounds.0)
        .map(|date| GridMark {
            value: day(date),
            step_size: MONTH,
        })
        .collect()
}

fn strength_plot(ui: &mut Ui, nth: usize, view: &StrengthView, link: egui::Id, theme: &Theme) -> Response {
    let fill = theme.rail_fill(view.rail);
    let xs: Vec<f64> = view.days.iter().map(|day| day.day).collect();
    let shown = base(format!("strength {nth}"), HEIGHT, link, view).show(ui, |plot| {
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
    });
    shown.response
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
    base(format!("bodyweight {nth}"), BODY_HEIGHT, link, view)
        .show_grid([true, false])
        .show(ui, |plot| {
            plot.add(Line::new("bodyweight", weighed).color(*theme.steel).width(1.5));
        });
}
