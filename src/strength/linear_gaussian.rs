//! A linear-Gaussian special case against a reference library.
//!
//! With repetitions a thousandth apart a missed set is a plain measurement of the moment's strength with sd `set_sd`; with
//! endurance known and no typos the filter must then be the Kalman filter. Reference: filterpy 2.0.0's `KalmanFilter`
//! with numpy 2.4.6, by this script:
//!
//! ```text
//! import numpy as np, filterpy
//! from filterpy.kalman import KalmanFilter
//! mu, tau, sv, walk, sday, sset, fat = 0.0006, 9.0, 0.0015, 0.0042, 0.02, 0.05, 0.0075
//! k = KalmanFilter(dim_x=4, dim_z=1)                    # level, trend, readiness, fatigue per hard set
//! k.x = np.array([[np.log(116.0)], [mu], [0.0], [fat]])
//! k.P = np.diag([0.18**2, sv**2, 0.0, 0.003**2])
//! k.R = np.array([[sset**2]])
//! for day, (gap, sets) in enumerate([(0, [4.80, 4.83]), (3, [4.79]), (10, [4.85, 4.80, 4.82]), (14, [4.90, 4.88])]):
//!     t = gap / 7; e = np.exp(-t / tau); T = tau * (1 - e)
//!     k.F = np.array([[1, T, 0, 0], [0, e, 0, 0], [0, 0, 0, 0], [0, 0, 0, 1]])
//!     q = sv**2 * tau * (1 - e)**2
//!     k.Q = np.array([[sv**2 * tau * (2*t - tau*(3 - 4*e + e*e)) + walk**2 * t, q, 0, 0],
//!                     [q, sv**2 * (1 - e*e), 0, 0], [0, 0, sday**2, 0], [0, 0, 0, 0]])
//!     k.B = np.eye(4)
//!     k.predict(u=np.array([[mu * (t - T)], [mu * (1 - e)], [0.0], [0.0]]))
//!     for hard, z in enumerate(sets):
//!         k.update(np.array([[z]]), H=np.array([[1.0, 0.0, 1.0, -float(hard)]]))
//! print(filterpy.__version__, np.__version__)
//! print([float('%.12g' % v) for v in k.x[:, 0]])
//! print([float('%.12g' % v) for v in (k.P[0, 0], k.P[1, 1], k.P[2, 2], k.P[3, 3], k.P[0, 1], k.P[0, 2], k.P[0, 3])])
//! ```

use super::Tuning;
use super::curve::Curve;
use super::says::Says;
use super::set::{Observed, learn};
use super::state::{FATIGUE, LEVEL, READINESS, State, TREND};
use super::training::Start;
use super::tuning::Outlier;

#[test]
fn without_reps_and_typos_the_filter_is_the_kalman_filter() {
    let tuning = Tuning {
        day_sd: 0.02,
        set_sd: 0.05,
        reps_cv: 0.0,
        endurance_sd: 0.0,
        endurance_walk: 0.0,
        bias_sd: 0.0,
        missed: Outlier {
            share: 0.0,
            flat: 0.0,
        },
        ..Tuning::published()
    };
    let endurance = -f64::ln(7.5);
    let mut state = State::prior(
        Start {
            level: f64::ln(116.0),
            level_sd: 0.18,
            endurance,
        },
        &tuning,
    );
    // A missed set says 0.96 of the first thousandth, 0.01 of each of the next four: 0.6 thousandths on average.
    let unit = 1e-3;
    let asked = Curve::new(tuning.curve_shape, endurance)
        .log_ratio(5.0 + 0.6 * unit)
        .0;
    let days: [(f64, &[f64]); 4] = [
        (0.0, &[4.80, 4.83]),
        (3.0, &[4.79]),
        (10.0, &[4.85, 4.80, 4.82]),
        (14.0, &[4.90, 4.88]),
    ];
    for (gap, measured) in days {
        state.pass(gap, 0.0, &tuning);
        state.wake(gap, tuning.day_sd * tuning.day_sd, &tuning);
        let mut hard_sets = 0.0;
        for z in measured {
            let log_load = z - asked;
            let set = Observed {
                log_load,
                reps: 5.0,
                unit,
                says: Says::Missed,
                beside: Says::AtLeast,
                more_left: 0.0,
                hard_sets,
                side: 0.0,
            };
            learn(&mut state, &set, true, &tuning);
            hard_sets += 1.0;
        }
    }
    let (m, p) = (&state.mean, &state.cov);
    let said = [
        m[LEVEL],
        m[TREND],
        m[READINESS],
        m[FATIGUE],
        p[LEVEL][LEVEL],
        p[TREND][TREND],
        p[READINESS][READINESS],
        p[FATIGUE][FATIGUE],
        p[LEVEL][TREND],
        p[LEVEL][READINESS],
        p[LEVEL][FATIGUE],
    ];
    let reference = [
        4.83975076438,
        0.000805755234382,
        0.0130847633591,
        0.00745082646457,
        0.000452966728394,
        2.23298101538e-06,
        0.000329471663792,
        8.88212074632e-06,
        4.02888949114e-06,
        -0.000109171209384,
        5.27097936843e-06,
    ];
    for (said, reference) in said.iter().zip(reference) {
        assert!((said - reference).abs() < 1e-6, "{said} is not {reference}");
    }
    // Variances are small themselves: they agree to a thousandth of their size, too.
    for (said, reference) in said.iter().zip(reference).skip(4) {
        assert!((said / reference - 1.0).abs() < 1e-3, "{said} is not {reference}");
    }
}
