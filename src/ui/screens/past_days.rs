//! The axis of a plot whose days count back from today: their words, and where months begin.

use chrono::{Datelike, Days, Months, NaiveDate};
use egui_plot::GridMark;

/// Days between two months on the axis, about.
const MONTH: f64 = 30.0;

/// A day of the plot in words; `today` counts days from the common era, `day` is 0 today and negative before.
pub(super) fn day_words(today: i32, day: f64, form: &str) -> String {
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

/// The first days of months within `bounds`, of more than `named` only every second, third, …, so that the axis can name them.
pub(super) fn months_between(today: i32, bounds: (f64, f64), named: usize) -> Vec<GridMark> {
    let day = |date: NaiveDate| f64::from(date.num_days_from_ce() - today);
    let first = NaiveDate::from_num_days_from_ce_opt(today).and_then(|date| date.with_day(1));
    let all: Vec<NaiveDate> = std::iter::successors(first, |date| date.checked_sub_months(Months::new(1)))
        .take_while(|date| day(*date) >= bounds.0)
        .collect();
    let every = all.len() / named + 1;
    let step_size = MONTH * f64::from(u32::try_from(every).unwrap_or(1));
    let mark = |date| GridMark {
        value: day(date),
        step_size,
    };
    all.into_iter().step_by(every).map(mark).collect()
}
