//! Logs that never vary: the same repetitions with the same reserve for half a year say what they said at first.

use chrono::{Days, NaiveDate};
use rungwright::strength::{Attempt, Filter, Prior, TrainingDay, Tuning};
use rungwright::units::{Added, Bodyweight, Effort, Given, Mass, Outcome, Reps, Share};

/// Sixty days, three apart, of two sets of five with one left at `first` kg in all, `step` more each day; what is believed
/// of each day from the fifth on, beside what Epley's formula (1985) makes of that day's six repetitions.
fn sixty_days(first: f64, step: f64) -> Vec<(f64, f64)> {
    let mut filter = Filter::new(Prior::of("pull-up", Share::WHOLE), Tuning::default());
    let start = NaiveDate::from_ymd_opt(2026, 1, 5).unwrap();
    let mut told = Vec::new();
    for nth in 0..60_u32 {
        let load = first + step * f64::from(nth);
        let set = Attempt {
            side: None,
            bodyweight: Some(Bodyweight::new(Mass::from_kg(80.0))),
            share: Share::WHOLE,
            added: Added::new(Mass::from_kg(load - 80.0)),
            effort: Effort::Reps(Reps::try_from(5).unwrap()),
            left: Some(Given::rir(1.0).unwrap()),
            outcome: Outcome::Done,
        };
        let date = start + Days::new(3 * u64::from(nth));
        filter.learn(&TrainingDay {
            date,
            attempts: vec![set, set],
        });
        let belief = filter.belief(None, date).unwrap();
        told.push((belief.one_rep_max().kg(), load * (1.0 + 6.0 / 30.0)));
    }
    told.split_off(5)
}

#[test]
fn the_same_sets_for_half_a_year_do_not_make_anybody_stronger() {
    // The published formulas make 163 (Brzycki 1993) to 170 kg (Mayhew 1992) of 140 kg × 6.
    for (believed, _) in sixty_days(140.0, 0.0) {
        assert!(
            (160.0..180.0).contains(&believed),
            "{believed:.1} kg of 140 kg × 5 with one left"
        );
    }
}

#[test]
fn who_adds_or_takes_off_a_little_each_day_is_followed() {
    for step in [0.4, -0.25] {
        for (believed, epley) in sixty_days(130.0, step) {
            let off = believed / epley - 1.0;
            assert!(off.abs() < 0.10, "{:.1} % off at {step} kg a day", 100.0 * off);
        }
    }
}
