//! Plates on hand as people type them: `20 15 10 5 5 2.5`, one of another unit as `45lb`.

use crate::problem::quoted;
use crate::units::{Mass, Typed, Unit};

use super::settings::Settings;

/// Most plates that are kept: what stands in one room. It bounds the sums that are worked out of them.
const MOST: usize = 60;
/// Heaviest single plate or gear, kg, as the settings read it.
const HEAVIEST_KG: f64 = 400.0;

impl Settings {
    /// The plates as they are typed, heaviest first as they stand.
    pub fn plates_text(&self) -> String {
        let words: Vec<String> = self
            .plates
            .iter()
            .map(|plate| mass_text(*plate, self.unit))
            .collect();
        words.join(" ")
    }

    /// Belt, chain and carabiner as typed; empty where they weigh nothing.
    pub fn gear_text(&self) -> String {
        self.gear
            .map_or_else(String::new, |gear| mass_text(gear, self.unit))
    }
}

fn mass_text(mass: Typed, unit: Unit) -> String {
    if mass.unit() == unit {
        mass.value().to_string()
    } else {
        format!("{}{}", mass.value(), mass.unit().sign())
    }
}

/// The plates that `text` lists, with spaces or commas between; a number without a unit is in `unit`.
///
/// # Errors
/// In words, which of them is no plate.
pub fn plates_of(text: &str, unit: Unit) -> Result<Vec<Typed>, String> {
    let words = text.split([' ', ',', ';', '\t']).filter(|word| !word.is_empty());
    let plates: Vec<Typed> = words.map(|word| mass_of(word, unit)).collect::<Result<_, _>>()?;
    if let Some(none) = plates.iter().find(|plate| plate.mass() <= Mass::ZERO) {
        return Err(format!("A plate of {none} is none; leave it out."));
    }
    if plates.len() > MOST {
        return Err(format!("That is {} plates; {MOST} at most.", plates.len()));
    }
    Ok(plates)
}

/// A mass from 0 to 400 kg, like `2.5`, `2.5kg` or `5lb`.
///
/// # Errors
/// In words, what is wrong with it.
pub fn mass_of(text: &str, unit: Unit) -> Result<Typed, String> {
    let text = text.trim();
    let (number, unit) = match (text.strip_suffix("kg"), text.strip_suffix("lb")) {
        (Some(number), _) => (number, Unit::Kg),
        (_, Some(number)) => (number, Unit::Lb),
        _ => (text, unit),
    };
    let number = number.trim_end();
    let plain = !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
    number
        .parse::<f64>()
        .ok()
        .filter(|_| plain)
        .and_then(|value| Typed::new(value, unit).ok())
        .filter(|typed| typed.mass() <= Mass::from_kg(HEAVIEST_KG))
        .ok_or_else(|| format!("{} is no mass; write it like 2.5, 20 or 45lb.", quoted(text)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rack_comes_back_as_it_was_typed() {
        let text = "20 15 2.5 45lb 0.5";
        let mut settings = Settings::fresh(Unit::Kg);
        settings.plates = plates_of(text, Unit::Kg).unwrap();
        assert_eq!(settings.plates_text(), text);
        assert_eq!(settings.plates[3], Typed::new(45.0, Unit::Lb).unwrap());
        assert_eq!(plates_of("20,10, 5", Unit::Lb).unwrap().len(), 3);
        assert_eq!(plates_of("", Unit::Kg).unwrap(), []);
    }

    #[test]
    fn what_is_no_plate_is_named() {
        for wrong in ["twenty", "-5", "1e3", "0", "500", "2,5kg x"] {
            assert!(plates_of(wrong, Unit::Kg).is_err(), "{wrong}");
        }
        assert_eq!(
            plates_of("20 zehn", Unit::Kg).unwrap_err(),
            "\"zehn\" is no mass; write it like 2.5, 20 or 45lb."
        );
    }
}
