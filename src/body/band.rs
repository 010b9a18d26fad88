//! A number with the range it may lie in, and what it rests on.

/// What a number rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Status {
    /// Measured and published.
    Published,
    /// Computed from published numbers by mechanics or arithmetic.
    Derived,
    /// Computed, and at least one factor is a modelling choice without a source.
    Assumption,
    /// What coaches do; no source.
    CommonPractice,
}

impl Status {
    /// The words that answers and screens use.
    pub fn words(self) -> &'static str {
        match self {
            Status::Published => "published",
            Status::Derived => "derived",
            Status::Assumption => "assumption",
            Status::CommonPractice => "common practice",
        }
    }
}

/// A central value and its band; the centre always lies within it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    centre: f64,
    low: f64,
    high: f64,
}

impl Band {
    /// `centre`, somewhere from `low` to `high`; an end on the wrong side of the centre becomes the centre.
    pub const fn new(centre: f64, low: f64, high: f64) -> Self {
        Self {
            centre,
            low: low.min(centre),
            high: high.max(centre),
        }
    }

    /// A number without a band: true by definition.
    pub const fn exactly(centre: f64) -> Self {
        Self::new(centre, centre, centre)
    }

    /// The central value.
    pub const fn centre(self) -> f64 {
        self.centre
    }

    /// Lower end.
    pub const fn low(self) -> f64 {
        self.low
    }

    /// Upper end.
    pub const fn high(self) -> f64 {
        self.high
    }

    /// Whether `value` lies within the band, ends included.
    pub fn contains(self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }

    /// Centre and ends times `factor` (above 0).
    pub fn times(self, factor: f64) -> Self {
        Self::new(self.centre * factor, self.low * factor, self.high * factor)
    }

    /// The same centre with a band that also holds everything in `other`.
    pub fn and(self, other: Band) -> Self {
        Self::new(self.centre, self.low.min(other.low), self.high.max(other.high))
    }

    /// The band around another centre, widened to hold it.
    pub fn around(self, centre: f64) -> Self {
        Self::new(centre, self.low, self.high)
    }

    /// What is left of 1: for help that takes this part of bodyweight.
    pub fn rest_of_one(self) -> Self {
        Self::new(1.0 - self.centre, 1.0 - self.high, 1.0 - self.low)
    }

    /// One over this band.
    pub fn inverse(self) -> Self {
        Self::new(1.0 / self.centre, 1.0 / self.high, 1.0 / self.low)
    }

    /// Nothing above `cap`.
    pub fn capped(self, cap: f64) -> Self {
        Self::new(self.centre.min(cap), self.low.min(cap), self.high.min(cap))
    }

    /// The product of factors whose errors know nothing of each other: the half-widths on the log scale add as squares, each
    /// side apart (ordinary propagation of independent errors).
    pub fn product(factors: &[Band]) -> Self {
        let centre: f64 = factors.iter().map(|factor| factor.centre).product();
        let spread = |end: fn(&Band) -> f64| {
            let squares = factors
                .iter()
                .map(|factor| (end(factor) / factor.centre).ln().powi(2));
            squares.sum::<f64>().sqrt()
        };
        Self::new(
            centre,
            centre * (-spread(|factor| factor.low)).exp(),
            centre * spread(|factor| factor.high).exp(),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_always_holds_its_centre() {
        let wrong = Band::new(1.0, 1.2, 0.9);
        assert!(wrong.contains(1.0));
        assert_eq!((wrong.low(), wrong.high()), (1.0, 1.0));
    }

    #[test]
    fn independent_errors_add_as_squares_of_logs() {
        // Propagation of independent errors (GUM, JCGM 100:2008, 5.1.2) on the log scale: 3 and 4 make 5.
        let factor = |half: f64| Band::new(2.0, 2.0 * (-half).exp(), 2.0 * half.exp());
        let product = Band::product(&[factor(0.03), factor(0.04)]);
        assert!((product.centre() - 4.0).abs() < 1e-12);
        assert!((product.high() - 4.0 * 0.05f64.exp()).abs() < 1e-12);
        assert!((product.low() - 4.0 * (-0.05f64).exp()).abs() < 1e-12);
    }
}
