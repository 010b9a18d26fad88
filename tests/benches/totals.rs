//! How long a frame of Totals takes with many points, drawing and tessellation together; the bound to keep is 6 ms.
#![allow(
    clippy::unwrap_used,
    dead_code,
    reason = "the sample is shared with the tests of pictures"
)]

#[path = "../ui/sample_totals.rs"]
mod sample_totals;

use rungwright::ui::action::Actions;
use rungwright::ui::screens::totals::{TotalsState, totals_ui};
use rungwright::ui::theme::{self, Choice};

fn main() {
    divan::main();
}

fn input() -> egui::RawInput {
    egui::RawInput {
        screen_rect: Some(egui::Rect::from_min_size(
            egui::Pos2::ZERO,
            egui::vec2(1440.0, 900.0),
        )),
        ..egui::RawInput::default()
    }
}

/// One frame with so many points.
#[divan::bench(args = [5, 500, 5_000])]
fn frame(bencher: divan::Bencher, points: usize) {
    let ctx = egui::Context::default();
    theme::set_type(&ctx);
    theme::apply(&ctx, Choice::Light);
    let view = sample_totals::dip(points);
    let mut state = TotalsState::default();
    let mut draw = || {
        let output = ctx.run_ui(input(), |ui| {
            totals_ui(ui, &view, &mut state, &mut Actions::default())
        });
        ctx.tessellate(output.shapes, output.pixels_per_point).len()
    };
    draw();
    bencher.bench_local(draw);
}

/// The fit of ten years, three days a week.
#[divan::bench]
fn fit_of_ten_years(bencher: divan::Bencher) {
    use rungwright::bests::{Fit, Point};
    use rungwright::logbook::record::Id;
    use rungwright::units::{Added, Bodyweight, Mass, SystemLoad};
    let first = chrono::NaiveDate::from_ymd_opt(2016, 1, 4).unwrap();
    let kg = Mass::from_kg;
    let point = |nth: u32| {
        let bodyweight = 80.0 + 5.0 * (f64::from(nth) / 40.0).sin();
        let max = 150.0 * (bodyweight / 80.0f64).powf(0.6) * (1.0 + 0.01 * (f64::from(nth) * 1.7).sin());
        Point {
            id: Id::from_parts(0, u128::from(nth)),
            date: first + chrono::Days::new(u64::from(nth) * 7 / 3),
            bodyweight: Some(Bodyweight::new(kg(bodyweight))),
            system: SystemLoad::new(kg(max)),
            added: Added::new(kg(max - bodyweight)),
            reps: 1.0,
            missed: false,
            one_rep_max: Some(SystemLoad::new(kg(max))),
            doubted: false,
        }
    };
    let points: Vec<Point> = (0..1560).map(point).collect();
    bencher.bench_local(|| Fit::of(&points));
}
