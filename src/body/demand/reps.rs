//! What repetitions and reserve add to a demand, against the goal's.

use super::super::band::Band;
use crate::catalogue::Rung;
use crate::units::rep_max::{brzycki, lombardi, oconner};

/// Beyond so many repetitions in all, reserve included, no rep-max formula is believed (Reynolds 2006 asks for 10 or fewer in
/// linear equations; 12 is the project's limit).
const BELIEVED: f64 = 12.0;

/// Repetitions and reserve of a rung's standard; a hold counts as one repetition, its seconds are counted elsewhere.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Count {
    /// Repetitions that the standard asks.
    pub reps: f64,
    /// Reserve that the work asks.
    pub reserve: f64,
}

impl Count {
    /// A single, nothing left.
    pub const SINGLE: Count = Count {
        reps: 1.0,
        reserve: 0.0,
    };

    /// What the rung's standard asks.
    pub fn of(rung: &Rung) -> Count {
        if rung.work.range.is_hold() {
            Count::SINGLE
        } else {
            Count {
                reps: rung.standard.reach,
                reserve: rung.work.reserve.map_or(0.0, |reserve| reserve.reps()),
            }
        }
    }

    /// In all.
    pub fn total(self) -> f64 {
        self.reps + self.reserve
    }

    /// Epley's 30 + repetitions: Epley 1985, 1RM = load × (1 + reps ÷ 30).
    pub fn thirty_plus(self) -> f64 {
        30.0 + self.total()
    }

    /// The strength that this count asks over what `goal` asks, at one load: Epley's, with what other published formulas say as
    /// the band; from plain load upward where there are more repetitions than any of them is believed for.
    pub fn over(self, goal: Count) -> Band {
        let (n, of) = (self.total(), goal.total());
        if n == of {
            return Band::exactly(1.0);
        }
        let epley = self.thirty_plus() / goal.thirty_plus();
        if n.max(of) > BELIEVED {
            return Band::new(epley, 1.0, 1.0);
        }
        let others = [
            brzycki(n) / brzycki(of),
            lombardi(n.max(1.0)) / lombardi(of.max(1.0)),
            oconner(n) / oconner(of),
        ];
        let low = others.into_iter().fold(epley, f64::min);
        let high = others.into_iter().fold(epley, f64::max);
        Band::new(epley, low, high)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(reps: f64, reserve: f64) -> Count {
        Count { reps, reserve }
    }

    #[test]
    fn four_reps_with_one_left_ask_thirty_five_thirty_firsts_of_a_single() {
        // Epley 1985: 1 + reps/30 on both sides.
        let over = count(4.0, 1.0).over(Count::SINGLE);
        assert!((over.centre() - 35.0 / 31.0).abs() < 1e-12);
        // Brzycki 1993 at 5 and 1: 36/32 and 1; O'Conner 1989: 1.125/1.025; Lombardi 1989: 1.1746. These are the ends.
        assert!((over.low() - 1.125 / 1.025).abs() < 1e-9);
        assert!((over.high() - 1.174_62).abs() < 1e-4);
    }

    #[test]
    fn the_same_count_asks_the_same() {
        assert_eq!(count(3.0, 1.0).over(count(2.0, 2.0)), Band::exactly(1.0));
    }

    #[test]
    fn beyond_twelve_the_load_alone_is_the_lower_end() {
        let many = count(15.0, 2.0).over(count(3.0, 1.0));
        assert_eq!(many.low(), 1.0);
        assert!((many.centre() - 47.0 / 34.0).abs() < 1e-12);
    }
}
