//! Quantities of mechanics: angles, lengths of the body, moments of force.

/// Standard acceleration of gravity, m/s². 3rd General Conference on Weights and Measures, 1901.
pub const GRAVITY: f64 = 9.806_65;

/// An angle; degrees where people read it, radians where it is computed with.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Angle(f64);

impl Angle {
    /// No angle at all.
    pub const ZERO: Angle = Angle(0.0);

    /// An angle of so many degrees.
    pub const fn from_degrees(degrees: f64) -> Self {
        Self(degrees)
    }

    /// An angle of so many radians.
    pub fn from_radians(radians: f64) -> Self {
        Self(radians.to_degrees())
    }

    /// Degrees.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// Radians.
    fn radians(self) -> f64 {
        self.0.to_radians()
    }

    pub(super) fn cos(self) -> f64 {
        self.radians().cos()
    }

    pub(super) fn sin(self) -> f64 {
        self.radians().sin()
    }
}

/// A distance on or beside the body, metres.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Length(f64);

impl Length {
    /// No distance.
    pub const ZERO: Length = Length(0.0);

    /// A distance of so many metres.
    pub const fn from_metres(metres: f64) -> Self {
        Self(metres)
    }

    /// A distance of so many centimetres.
    pub const fn from_cm(cm: f64) -> Self {
        Self(cm / 100.0)
    }

    /// Metres.
    pub const fn metres(self) -> f64 {
        self.0
    }
}

/// A moment of force about a joint, newton metres.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Moment(f64);

impl Moment {
    /// A moment of so many newton metres.
    pub const fn from_newton_metres(newton_metres: f64) -> Self {
        Self(newton_metres)
    }

    /// Newton metres.
    pub const fn newton_metres(self) -> f64 {
        self.0
    }

    /// This moment as a part of `other`; a plain number.
    pub fn over(self, other: Moment) -> f64 {
        self.0 / other.0
    }
}
