//! Masses: as typed, as computed, and in the four roles that a set knows.

use std::ops::{Add, Mul, Sub};

use serde::{Deserialize, Serialize};

use super::{OutOfRange, Share};

/// One pound in kilograms, exact by the international yard and pound agreement of 1959.
pub const KG_PER_LB: f64 = 0.453_592_37;

/// The unit that a mass was typed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Unit {
    /// Kilogram.
    #[default]
    #[serde(rename = "kg")]
    Kg,
    /// Avoirdupois pound.
    #[serde(rename = "lb")]
    Lb,
}

impl Unit {
    /// The unit's sign, as people write it after a number.
    pub fn sign(self) -> &'static str {
        match self {
            Unit::Kg => "kg",
            Unit::Lb => "lb",
        }
    }
}

/// A mass as a person typed it: `lb(45)` stays 45 lb for ever. Always finite.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "RawTyped", into = "RawTyped")]
pub struct Typed {
    value: f64,
    unit: Unit,
}

#[derive(Serialize, Deserialize)]
enum RawTyped {
    #[serde(rename = "kg")]
    Kg(f64),
    #[serde(rename = "lb")]
    Lb(f64),
}

impl TryFrom<RawTyped> for Typed {
    type Error = OutOfRange;
    fn try_from(raw: RawTyped) -> Result<Self, OutOfRange> {
        match raw {
            RawTyped::Kg(value) => Typed::new(value, Unit::Kg),
            RawTyped::Lb(value) => Typed::new(value, Unit::Lb),
        }
    }
}

impl From<Typed> for RawTyped {
    fn from(typed: Typed) -> Self {
        match typed.unit {
            Unit::Kg => RawTyped::Kg(typed.value),
            Unit::Lb => RawTyped::Lb(typed.value),
        }
    }
}

impl Typed {
    /// A mass of `value` in `unit`.
    ///
    /// # Errors
    /// When the value is not finite or beyond ±10,000: no such mass comes near an athlete.
    pub fn new(value: f64, unit: Unit) -> Result<Self, OutOfRange> {
        if value.is_finite() && value.abs() <= 10_000.0 {
            // Minus zero would print as "-0" and differ in bytes from the zero it equals.
            Ok(Self {
                value: value + 0.0,
                unit,
            })
        } else {
            Err(OutOfRange::new("mass", value, "-10000", "10000"))
        }
    }

    /// The number as typed, in [`Typed::unit`].
    pub fn value(self) -> f64 {
        self.value
    }

    /// The unit as typed.
    pub fn unit(self) -> Unit {
        self.unit
    }

    /// The same mass for a calculation.
    pub fn mass(self) -> Mass {
        match self.unit {
            Unit::Kg => Mass(self.value),
            Unit::Lb => Mass(self.value * KG_PER_LB),
        }
    }
}

impl std::fmt::Display for Typed {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}", self.value, self.unit.sign())
    }
}

/// A mass or a difference of masses in kilograms: plain arithmetic, no role.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Mass(f64);

impl Mass {
    /// No mass at all.
    pub const ZERO: Mass = Mass(0.0);

    /// `kg` kilograms; what is not finite becomes zero only by [`Typed::new`] refusing it first.
    pub const fn from_kg(kg: f64) -> Self {
        Self(kg)
    }

    /// Kilograms.
    pub const fn kg(self) -> f64 {
        self.0
    }

    /// The number of `unit`s in this mass.
    pub fn in_unit(self, unit: Unit) -> f64 {
        match unit {
            Unit::Kg => self.0,
            Unit::Lb => self.0 / KG_PER_LB,
        }
    }
}

impl Add for Mass {
    type Output = Mass;
    fn add(self, other: Mass) -> Mass {
        Mass(self.0 + other.0)
    }
}

impl Sub for Mass {
    type Output = Mass;
    fn sub(self, other: Mass) -> Mass {
        Mass(self.0 - other.0)
    }
}

impl Mul<f64> for Mass {
    type Output = Mass;
    fn mul(self, factor: f64) -> Mass {
        Mass(self.0 * factor)
    }
}

impl std::iter::Sum for Mass {
    fn sum<I: Iterator<Item = Mass>>(masses: I) -> Mass {
        masses.fold(Mass::ZERO, Add::add)
    }
}

macro_rules! role {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $name(Mass);

        impl $name {
            /// This role for a mass.
            pub const fn new(mass: Mass) -> Self {
                Self(mass)
            }

            /// The mass without its role.
            pub const fn mass(self) -> Mass {
                self.0
            }

            /// Kilograms.
            pub const fn kg(self) -> f64 {
                self.0.kg()
            }
        }
    };
}

role! {
    /// What the scale showed, kg.
    ///
    /// A bodyweight and a belt load don't add up by themselves; [`SystemLoad::of`] knows the share that is lifted:
    /// ```compile_fail
    /// use rungwright::units::{Added, Bodyweight, Mass};
    /// let wrong = Bodyweight::new(Mass::from_kg(80.0)) + Added::new(Mass::from_kg(20.0));
    /// ```
    Bodyweight
}
role! {
    /// What hangs from the belt, kg; below zero it is help, as in a spreadsheet's column.
    ///
    /// It is not a system load, and takes none of its comparisons:
    /// ```compile_fail
    /// use rungwright::units::{Added, Mass, SystemLoad};
    /// let wrong = Added::new(Mass::from_kg(20.0)) < SystemLoad::new(Mass::from_kg(100.0));
    /// ```
    Added
}
role! {
    /// What a counterweight, a band or a hand takes off, kg, never below zero.
    ///
    /// ```compile_fail
    /// use rungwright::units::{Assistance, Mass, SystemLoad};
    /// let wrong = SystemLoad::new(Mass::from_kg(100.0)) - Assistance::new(Mass::from_kg(20.0));
    /// ```
    Assistance
}
role! {
    /// All that was moved: share × bodyweight + added − assistance, kg.
    ///
    /// ```compile_fail
    /// use rungwright::units::{Bodyweight, Mass, SystemLoad};
    /// let wrong: SystemLoad = Bodyweight::new(Mass::from_kg(80.0));
    /// ```
    SystemLoad
}

impl Bodyweight {
    /// Bodyweights that are believed, kg: from the smallest walking children to the heaviest people known. From memory.
    pub const BELIEVED_KG: std::ops::RangeInclusive<f64> = 20.0..=400.0;
}

impl Added {
    /// No belt and no help.
    pub const NONE: Added = Added(Mass::ZERO);

    /// The help that a load below zero stands for.
    pub fn assistance(self) -> Option<Assistance> {
        (self.kg() < 0.0).then(|| Assistance(Mass(-self.kg())))
    }
}

impl From<Assistance> for Added {
    fn from(help: Assistance) -> Added {
        Added(Mass(-help.kg()))
    }
}

impl SystemLoad {
    /// The load in all: `share` of `bodyweight`, and what was added (or, below zero, taken off).
    ///
    /// ```
    /// use rungwright::units::{Added, Bodyweight, Mass, Share, SystemLoad};
    /// let body = Bodyweight::new(Mass::from_kg(80.0));
    /// let load = SystemLoad::of(Share::WHOLE, body, Added::new(Mass::from_kg(20.0)));
    /// assert_eq!(load.kg(), 100.0);
    /// ```
    pub fn of(share: Share, bodyweight: Bodyweight, added: Added) -> Self {
        Self(bodyweight.mass() * share.value() + added.mass())
    }

    /// What has to be hung (below zero: taken off) so that `bodyweight` at `share` moves this load.
    pub fn added_from(self, share: Share, bodyweight: Bodyweight) -> Added {
        Added(self.0 - bodyweight.mass() * share.value())
    }

    /// This load times `factor`.
    pub fn times(self, factor: f64) -> Self {
        Self(self.0 * factor)
    }

    /// System load ÷ bodyweight, the ratio that a standard asks.
    pub fn ratio(self, bodyweight: Bodyweight) -> f64 {
        self.kg() / bodyweight.kg()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pound_is_the_international_one() {
        // International yard and pound agreement, 1959: 1 lb = 0.45359237 kg exactly.
        let plate = Typed::new(45.0, Unit::Lb).unwrap();
        assert_eq!(plate.mass().kg(), 20.411_656_65);
        assert_eq!(plate.mass().in_unit(Unit::Lb), 45.0);
        // NIST conversion: 100 kg = 220.46226218487757 lb.
        assert!((Mass::from_kg(100.0).in_unit(Unit::Lb) - 220.462_262_184_877_57).abs() < 1e-12);
    }

    #[test]
    fn a_mass_as_typed_comes_back_as_typed() {
        let text = ron::to_string(&Typed::new(2.5, Unit::Lb).unwrap()).unwrap();
        assert_eq!(text, "lb(2.5)");
        assert_eq!(
            ron::from_str::<Typed>(&text).unwrap(),
            Typed::new(2.5, Unit::Lb).unwrap()
        );
        assert!(ron::from_str::<Typed>("kg(inf)").is_err());
        assert!(ron::from_str::<Typed>("kg(NaN)").is_err());
    }

    #[test]
    fn going_to_system_load_and_back_gives_the_belt_again() {
        let body = Bodyweight::new(Mass::from_kg(78.75));
        let share = Share::WHOLE;
        let belt = Added::new(Mass::from_kg(36.25));
        let load = SystemLoad::of(share, body, belt);
        assert_eq!(load.kg(), 115.0);
        assert_eq!(load.added_from(share, body), belt);
        assert_eq!(
            Added::new(Mass::from_kg(-15.0)).assistance().map(Assistance::kg),
            Some(15.0)
        );
    }
}
