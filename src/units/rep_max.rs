//! Published rep-max formulas: the one-rep max over a load that allows so many repetitions to failure. Up to how many they are
//! believed, and that a single is its own max, their users say.

/// Epley, Boyd Epley Workout, 1985: 1RM = w (1 + r/30).
pub fn epley(reps: f64) -> f64 {
    1.0 + reps / 30.0
}

/// Brzycki, JOPERD 1993;64(1):88–90: 1RM = w · 36 / (37 − r).
pub fn brzycki(reps: f64) -> f64 {
    36.0 / (37.0 - reps)
}

/// Lander, NSCA Journal 1985;6(6):60–61: 1RM = 100 w / (101.3 − 2.67123 r).
pub fn lander(reps: f64) -> f64 {
    100.0 / (101.3 - 2.671_23 * reps)
}

/// Lombardi, Beginning Weight Training, 1989: 1RM = w · r^0.10.
pub fn lombardi(reps: f64) -> f64 {
    libm::pow(reps, 0.10)
}

/// Mayhew et al., J Appl Sport Sci Res 1992;6(4):200–206: 1RM = 100 w / (52.2 + 41.9 e^(−0.055 r)).
pub fn mayhew(reps: f64) -> f64 {
    100.0 / (52.2 + 41.9 * libm::exp(-0.055 * reps))
}

/// O'Conner et al., Weight Training Today, 1989: 1RM = w (1 + 0.025 r).
pub fn oconner(reps: f64) -> f64 {
    1.0 + 0.025 * reps
}

/// Wathan, Load Assignment, 1994: 1RM = 100 w / (48.8 + 53.8 e^(−0.075 r)).
pub fn wathan(reps: f64) -> f64 {
    100.0 / (48.8 + 53.8 * libm::exp(-0.075 * reps))
}
