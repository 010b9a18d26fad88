//! The plot: weigh-in days as dots, those that look like a slip as rings, the line of the last weeks, phases shaded and named.

use egui::{Align2, RichText, Role, Sense, Stroke, Ui, Vec2, WidgetInfo};
use egui_plot::{
    Axis, AxisHints, GridMark, HoverPosition, Line, MarkerShape, Plot, PlotPoint, PlotPoints, Points, Span,
    Text, VPlacement,
};

use crate::report::numbers::number;
use crate::ui::screens::ladders::many;
use crate::ui::screens::past_days::{day_words, months_between};
use crate::ui::theme::{Face, Theme, size, translucent};
use crate::ui::views::WeighInsView;
use crate::ui::widgets::focus_ring;

/// Room for the numbers at the left, points.
const AXIS: f32 = 56.0;
/// What a weigh-in that looks like a slip is called.
const ODD: &str = "odd weigh-in";
/// Most months that have a name on the axis, and the room that each needs, points.
const NAMED: usize = 7;
const MONTH_ROOM: f32 = 84.0;
/// Room that each named mass needs, points.
const MASS_ROOM: f32 = 36.0;

pub(super) fn plot_ui(ui: &mut Ui, view: &WeighInsView) {
    let theme = Theme::of(ui);
    let (today, unit) = (view.today, view.unit);
    let free = ui.available_size() - Vec2::new(AXIS, 0.0);
    let named = (1..=NAMED)
        .rev()
        .find(|count| many(*count) * MONTH_ROOM <= free.x)
        .unwrap_or(1);
    let first = view.days.iter().map(|(day, ..)| *day).fold(-28.0, f64::min);
    let masses = || {
        view.days
            .iter()
            .filter(|(.., odd)| !odd)
            .map(|(_, mass, _)| *mass)
    };
    let (low, high) = (
        masses().fold(f64::MAX, f64::min),
        masses().fold(f64::MIN, f64::max),
    );
    let room = ((high - low) * 0.25).max(0.5);
    let months =
        move |mark: GridMark, _: &std::ops::RangeInclusive<f64>| day_words(today, mark.value, "%b %y");
    let masses_of =
        move |mark: GridMark, _: &std::ops::RangeInclusive<f64>| format!("{} {unit}", mass_of(mark));
    let mut plot = Plot::new("weigh-ins")
        .height(ui.available_height())
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .set_margin_fraction(Vec2::new(0.02, 0.08))
        .include_x(first)
        .include_x(0.0)
        .custom_x_axes(vec![
            AxisHints::new_x().formatter(months).placement(VPlacement::Bottom),
        ])
        .custom_y_axes(vec![AxisHints::new_y().formatter(masses_of).min_thickness(AXIS)])
        .x_grid_spacer(move |input| months_between(today, input.bounds, named))
        .y_grid_spacer(move |input| even_masses(input.bounds, f64::from(free.y / MASS_ROOM)))
        .sense(Sense::click())
        .grid_color(*theme.line)
        .cursor_color(*theme.line)
        .label_formatter(move |at| hover(at, today, unit));
    // A bodyweight that never varied still has a scale around it.
    if low <= high {
        plot = plot.include_y(low - room).include_y(high + room);
    }
    small_scale(ui);
    let shown = plot.show(ui, |plot| {
        for (from, until, word) in &view.phases {
            let colour = translucent(*theme.ember, if *word == "Deload" { 0.14 } else { 0.07 });
            plot.add(
                Span::new(*word, *from..=until.max(*from + 1.0))
                    .axis(Axis::X)
                    .fill(colour)
                    .border(Stroke::new(1.0, *theme.line)),
            );
        }
        let counting = view.days.iter().filter(|(.., odd)| !odd);
        let points: PlotPoints<'_> = counting.map(|(day, mass, _)| [*day, *mass]).collect();
        plot.add(Points::new("weighed", points).radius(3.4).color(*theme.ink));
        for (day, mass, _) in view.days.iter().filter(|(.., odd)| *odd) {
            // A slip far off stands at the frame, so that it doesn't press all others flat; its name says what it was.
            let at = if low <= high {
                mass.clamp(low - room, high + room)
            } else {
                *mass
            };
            let words = format!("{} {unit}", number(*mass, 1));
            if (at - mass).abs() > f64::EPSILON {
                let (anchor, off) = if at < *mass {
                    (Align2::CENTER_TOP, -room * 0.12)
                } else {
                    (Align2::CENTER_BOTTOM, room * 0.12)
                };
                let said = RichText::new(&words).font(Face::Label.at(size::TABLE));
                plot.add(
                    Text::new("", PlotPoint::new(*day, at + off), said)
                        .anchor(anchor)
                        .color(*theme.plum)
                        .allow_hover(false),
                );
            }
            plot.add(
                Points::new(format!("{ODD}: {words}"), vec![[*day, at]])
                    .shape(MarkerShape::Diamond)
                    .filled(false)
                    .radius(5.5)
                    .color(*theme.plum),
            );
        }
        if let Some(ends) = view.line {
            let ends: PlotPoints<'_> = ends.iter().map(|(day, mass)| [*day, *mass]).collect();
            plot.add(Line::new("trend", ends).color(*theme.ember).width(2.5));
        }
    });
    let words = spoken(view);
    shown
        .response
        .widget_info(|| WidgetInfo::labeled(Role::Image, true, &words));
    if shown.response.has_focus() {
        focus_ring(ui.painter(), shown.response.rect, 3.0, &theme);
    }
}

/// Numbers along a plot are set as in tables.
pub(in crate::ui::screens) fn small_scale(ui: &mut Ui) {
    let styles = &mut ui.style_mut().text_styles;
    styles.insert(egui::TextStyle::Body, Face::Label.at(size::TABLE));
}

/// The number at a mark, with as many digits as the others along its scale.
pub(in crate::ui::screens) fn mass_of(mark: GridMark) -> String {
    let digits = usize::from(mark.step_size < 1.0);
    format!("{:.digits$}", mark.value)
}

/// Even masses within the bounds, `most` at the most.
pub(in crate::ui::screens) fn even_masses((low, high): (f64, f64), most: f64) -> Vec<GridMark> {
    const STEPS: [f64; 10] = [0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0];
    let fits = |step: &&f64| (high - low) / **step <= most.max(1.0);
    let step_size = STEPS.iter().find(fits).copied().unwrap_or(200.0);
    std::iter::successors(Some((low / step_size).ceil()), |nth| Some(nth + 1.0))
        .map(|nth| GridMark {
            value: nth * step_size,
            step_size,
        })
        .take_while(|mark| mark.value <= high)
        .collect()
}

fn spoken(view: &WeighInsView) -> String {
    let odd = view.days.iter().filter(|(.., odd)| *odd).count();
    let numbers = view
        .numbers
        .iter()
        .map(|(what, value, _)| format!("{what} {value}"));
    let phases = view.phases.iter().map(|(from, until, word)| {
        format!(
            "{word} {} to {}",
            day_words(view.today, *from, "%-d %b %Y"),
            day_words(view.today, *until, "%-d %b %Y")
        )
    });
    let rest = numbers.chain(phases).collect::<Vec<_>>().join(". ");
    format!(
        "Bodyweight over time: {} days weighed, {odd} odd. {rest}",
        view.days.len()
    )
}

/// `weighed · Wed 4 Mar 2026 · 74.6 kg`; nothing where nothing is near.
fn hover(at: &HoverPosition<'_>, today: i32, unit: &str) -> Option<String> {
    match at {
        HoverPosition::NearDataPoint {
            plot_name, position, ..
        } => {
            let day = day_words(today, position.x, "%a %-d %b %Y");
            if plot_name.starts_with(ODD) {
                return Some(format!("{plot_name}\n{day}"));
            }
            Some(format!("{plot_name}\n{day}\n{:.1} {unit}", position.y))
        }
        HoverPosition::Elsewhere { .. } => None,
    }
}
