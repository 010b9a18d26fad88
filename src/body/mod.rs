//! What a rung asks of a body: segment physics, measured shares, and every rung's demand.
//!
//! A [`Body`] is built from height, mass and sex, each only if known; it can't be built impossible. What is not known is taken
//! from the tables' own population, with a wider band, and [`Body::unknown`] says what would narrow it. Everything here is for
//! bodies at rest: the shape that is really held is the largest error, larger than the tables'.
//!
//! Invariants: a band holds its centre; the moment is linear in mass and in height and knows nothing of the arms' length; the
//! arms' side and the body's side of the shoulder give one moment; no demand falls along a shipped main line.

mod band;
mod de_leva;
pub mod demand;
pub mod hold;
mod lever;
pub mod one_arm;
mod posture;
pub mod push_up;
mod quantity;
pub mod row;
mod segments;
mod share;

use std::fmt;

use chrono::{Datelike, NaiveDate};

use crate::logbook::Person;
use crate::logbook::record::Sex;
use crate::units::{Bodyweight, Height, Mass, OutOfRange};

pub use band::{Band, Status};
pub use de_leva::{DE_LEVA_FEMALE, DE_LEVA_MALE, Published, Row};
pub use demand::{RungDemand, demands};
pub use lever::{Extra, Lever, lean_for, planche_lean, shape_number};
pub use posture::{Leg, Posture};
pub use quantity::{Angle, GRAVITY, Length, Moment};
pub use segments::{Limb, Segments};
pub use share::{Counted, counted_share, hand_share, moved_mass};

/// What is known of a body; each fact may be missing.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Facts {
    /// Standing height.
    pub height: Option<Height>,
    /// What the scale showed.
    pub mass: Option<Bodyweight>,
    /// Sex, for the segment table.
    pub sex: Option<Sex>,
    /// Age in whole years.
    pub years: Option<i32>,
}

/// A fact that would narrow a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs, reason = "each is what its name says")]
pub enum Fact {
    Height,
    Mass,
    Sex,
}

impl fmt::Display for Fact {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Fact::Height => "height",
            Fact::Mass => "a weigh-in",
            Fact::Sex => "sex",
        })
    }
}

/// A body that can exist.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Body {
    facts: Facts,
    segments: &'static Segments,
}

/// Lowest and highest body mass index that is believed, kg/m². From memory: below and above everyone known.
const MASS_INDEX: std::ops::RangeInclusive<f64> = 6.0..=210.0;
/// Height of the tables' population, m: mean of de Leva's 1.741 (men) and 1.735 (women).
const POPULATION_HEIGHT: f64 = 1.738;
/// How far a body of unknown height may be from it, each side: 11 %, about two standard deviations of adults of both sexes
/// (1.55 to 1.93 m). From memory.
const HEIGHT_SPREAD: f64 = 0.11;
/// Body mass index that the tables' young athletes surround, kg/m²: the adult healthy range and overweight (WHO 18.5–30).
const TABLES_MASS_INDEX: std::ops::RangeInclusive<f64> = 18.5..=30.0;
/// Heights that the tables' young athletes surround, cm: their means ± about 3 standard deviations (from memory 6.2 cm).
const TABLES_HEIGHT_CM: std::ops::RangeInclusive<f64> = 150.0..=195.0;
/// Age from which the tables are meant to hold, years: their subjects were about 16 to 30 (from memory).
const TABLES_FROM_YEARS: i32 = 16;

impl Body {
    /// The body with these facts.
    ///
    /// # Errors
    /// When the mass is outside 20 to 400 kg or not a number, or mass and height together can't be a person's.
    pub fn new(facts: Facts) -> Result<Self, OutOfRange> {
        if let Some(mass) = facts
            .mass
            .filter(|mass| !Bodyweight::BELIEVED_KG.contains(&mass.kg()))
        {
            return Err(OutOfRange::new("bodyweight", mass.kg(), "20 kg", "400 kg"));
        }
        if let Some(index) = mass_index(&facts).filter(|index| !MASS_INDEX.contains(index)) {
            return Err(OutOfRange::new("body mass index", index.round(), "6", "210"));
        }
        let segments = match facts.sex {
            Some(Sex::Male) => &Segments::MALE,
            Some(Sex::Female) => &Segments::FEMALE,
            None => &Segments::MIDWAY,
        };
        Ok(Self { facts, segments })
    }

    /// The body of `person` at this bodyweight, with the age on day `on`.
    ///
    /// # Errors
    /// As [`Body::new`].
    pub fn of(person: &Person, bodyweight: Option<Bodyweight>, on: NaiveDate) -> Result<Self, OutOfRange> {
        Self::new(Facts {
            height: person.height,
            mass: bodyweight,
            sex: person.sex,
            years: person.born.map(|born| years_between(born, on)),
        })
    }

    /// A body of which nothing is known.
    pub fn unknown_body() -> Self {
        Self {
            facts: Facts::default(),
            segments: &Segments::MIDWAY,
        }
    }

    /// What is not known of it; knowing it would narrow the numbers that use it.
    pub fn unknown(&self) -> impl Iterator<Item = Fact> {
        let Facts {
            height, mass, sex, ..
        } = self.facts;
        [
            height.is_none().then_some(Fact::Height),
            mass.is_none().then_some(Fact::Mass),
            sex.is_none().then_some(Fact::Sex),
        ]
        .into_iter()
        .flatten()
    }

    /// The segment table that serves for it.
    pub fn segments(&self) -> &'static Segments {
        self.segments
    }

    /// Every table that may be its own: one where the sex is known, both where it isn't.
    pub fn tables(&self) -> &'static [Segments] {
        match self.facts.sex {
            Some(Sex::Male) => &[Segments::MALE],
            Some(Sex::Female) => &[Segments::FEMALE],
            None => &[Segments::MALE, Segments::FEMALE],
        }
    }

    /// Its height, or the population's.
    pub fn height(&self) -> Length {
        Length::from_metres(self.facts.height.map_or(POPULATION_HEIGHT, Height::metres))
    }

    /// How far the true height may be from [`Body::height`], as a factor.
    pub fn height_band(&self) -> Band {
        match self.facts.height {
            Some(_) => Band::exactly(1.0),
            None => Band::new(1.0, 1.0 - HEIGHT_SPREAD, 1.0 + HEIGHT_SPREAD),
        }
    }

    /// Its mass, if known: no athlete is given another's kilograms.
    pub fn mass(&self) -> Option<Mass> {
        self.facts.mass.map(Bodyweight::mass)
    }

    /// Why numbers for this body are less sure than they look; empty for a body like those that were measured.
    pub fn cautions(&self) -> Vec<BodyCaution> {
        let short_or_young = self.facts.years.map(|years| years < TABLES_FROM_YEARS);
        let index = mass_index(&self.facts).filter(|index| !TABLES_MASS_INDEX.contains(index));
        let height = self
            .facts
            .height
            .map(Height::cm)
            .filter(|cm| !TABLES_HEIGHT_CM.contains(cm));
        [
            (short_or_young == Some(true)).then_some(BodyCaution::Young),
            height.map(BodyCaution::Height),
            index.map(BodyCaution::MassIndex),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}

fn mass_index(facts: &Facts) -> Option<f64> {
    let height = facts.height?.metres();
    Some(facts.mass?.kg() / (height * height))
}

/// Whole years from `born` to `on`.
fn years_between(born: NaiveDate, on: NaiveDate) -> i32 {
    let before_birthday = (on.month(), on.day()) < (born.month(), born.day());
    on.year() - born.year() - i32::from(before_birthday)
}

/// A body unlike those that the tables were measured on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BodyCaution {
    /// A child: other proportions.
    Young,
    /// This height, cm.
    Height(f64),
    /// This body mass index, kg/m².
    MassIndex(f64),
}

impl fmt::Display for BodyCaution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let why = "the body tables come from young, lean adult athletes";
        match self {
            BodyCaution::Young => write!(
                f,
                "{why}; a child is built otherwise, so take these numbers as rough"
            ),
            BodyCaution::Height(cm) => {
                write!(
                    f,
                    "{why} of 150 to 195 cm; at {cm:.0} cm take these numbers as rough"
                )
            }
            BodyCaution::MassIndex(index) => write!(
                f,
                "{why}; at a body mass index of {index:.0} the mass sits elsewhere, so take these numbers as rough"
            ),
        }
    }
}
