//! Where a value stands: within one's own history, and among the athletes of a gym.

use super::ROUNDING;

/// A place among others, 1 the best; equals share a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place {
    /// The place, from 1.
    pub place: usize,
    /// How many there are.
    pub of: usize,
}

/// The place of `value` among `all` (which hold it); none among nobody.
pub fn place(value: f64, all: &[f64]) -> Option<Place> {
    Ranking::of(all.to_vec()).place(value)
}

/// Values put in order once, for whoever asks for many places.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranking {
    ascending: Vec<f64>,
}

impl Ranking {
    /// The order of `values`.
    pub fn of(mut values: Vec<f64>) -> Self {
        values.sort_by(f64::total_cmp);
        Self { ascending: values }
    }

    /// The place of one of them; none among nobody.
    pub fn place(&self, value: f64) -> Option<Place> {
        let of = self.ascending.len();
        let up_to_it = |other: &f64| *other <= value * (1.0 + ROUNDING);
        let better = of - self.ascending.partition_point(up_to_it);
        (of > 0).then(|| Place {
            place: (better + 1).min(of),
            of,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equals_share_a_place_and_the_next_one_is_left_out() {
        // As in sport (competition ranking): two firsts, then the third.
        let all = [90.0, 100.0, 100.0, 80.0];
        let places: Vec<usize> = all
            .iter()
            .filter_map(|value| Some(place(*value, &all)?.place))
            .collect();
        assert_eq!(places, [3, 1, 1, 4]);
        assert_eq!(place(1.0, &[]), None);
    }
}
