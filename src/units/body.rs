//! Of the body: the share a movement lifts, height, and how much a rung demands.

use super::OutOfRange;

/// The part of bodyweight that a movement lifts, 0 (only outside load) to 1 (all of it).
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Share(f64);

impl Share {
    /// All of the body.
    pub const WHOLE: Share = Share(1.0);
    /// None of it: a barbell or a handle alone is moved.
    pub const OUTSIDE: Share = Share(0.0);

    /// A share of `value`.
    ///
    /// # Errors
    /// When it is not within 0 to 1.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        if (0.0..=1.0).contains(&value) {
            Ok(Self(value))
        } else {
            Err(OutOfRange::new("share", value, "0", "1"))
        }
    }

    /// The share as a number from 0 to 1.
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// Standing height, centimetres.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Height(f64);

impl Height {
    /// Heights that are believed, cm: beyond the shortest and the tallest people known. From memory.
    pub const BELIEVED_CM: std::ops::RangeInclusive<f64> = 50.0..=260.0;

    /// A height of `cm` centimetres.
    ///
    /// # Errors
    /// When it is not within 50 to 260 cm.
    pub fn from_cm(cm: f64) -> Result<Self, OutOfRange> {
        if Self::BELIEVED_CM.contains(&cm) {
            Ok(Self(cm))
        } else {
            Err(OutOfRange::new("height", cm, "50 cm", "260 cm"))
        }
    }

    /// Centimetres.
    pub const fn cm(self) -> f64 {
        self.0
    }

    /// Metres.
    pub fn metres(self) -> f64 {
        self.0 / 100.0
    }
}

/// How strong one must be for a rung, on its ladder's own scale: 1.00 is the goal.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Demand(f64);

impl Demand {
    /// A demand of `value`.
    ///
    /// # Errors
    /// When it is not above 0 and at most 10.
    pub fn new(value: f64) -> Result<Self, OutOfRange> {
        if value > 0.0 && value <= 10.0 {
            Ok(Self(value))
        } else {
            Err(OutOfRange::new("demand", value, "0", "10"))
        }
    }

    /// The demand as a number, 1.00 = the goal.
    pub const fn value(self) -> f64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_share_demand_or_height_is_built_from_what_cannot_be() {
        assert!(Share::new(1.01).is_err());
        assert!(Share::new(f64::NAN).is_err());
        assert!(Height::from_cm(49.9).is_err());
        assert!(Height::from_cm(260.0).is_ok());
        assert!(Demand::new(0.0).is_err());
        assert!(Demand::new(f64::INFINITY).is_err());
    }
}
