//! `logbook.ron`: the format, and what holds for everyone in the logbook.

use crate::problem::{Place, Problem, did_you_mean, quoted};
use crate::units::{Mass, Typed, Unit};

use super::fields::{self, Field};
use super::line::{Mass as Written, quote};

/// The file's name.
pub const FILE: &str = "logbook.ron";

/// The format that this version reads and writes.
pub const FORMAT: u32 = 1;

/// The fields, in the order in which they are written.
const FIELDS: [&str; 7] = [
    "format",
    "name",
    "unit",
    "gear",
    "plates",
    "formula",
    "moved_mass",
];

/// The rep-max formulas that can be chosen, by id; the folder `bests` computes them.
pub const FORMULAS: [&str; 7] = [
    "epley", "brzycki", "lander", "lombardi", "mayhew", "oconner", "wathan",
];

/// Heaviest single plate or gear that is read, kg. Common practice, no source.
const HEAVIEST_KG: f64 = 400.0;

/// What holds for everyone in the logbook.
#[derive(Debug, Clone, PartialEq)]
pub struct Settings {
    /// The format; a higher one than [`FORMAT`] is only read.
    pub format: u32,
    /// The logbook's name on screen.
    pub name: Option<String>,
    /// The unit that people here think in.
    pub unit: Unit,
    /// Belt, chain and carabiner, hung whenever a plate is; none weighs nothing.
    pub gear: Option<Typed>,
    /// Each plate on hand.
    pub plates: Vec<Typed>,
    /// The rep-max formula of the plain e1RM column, by its id.
    pub formula: Option<String>,
    /// Whether Totals leaves the working hands and forearms out of the system load of pull-ups and dips. Standards and next
    /// steps count the whole body all the same: they are written on it.
    pub moved_mass: bool,
    /// Fields of a newer version, name and text, kept as they are.
    pub newer: Vec<(String, String)>,
}

impl Settings {
    /// The settings of a fresh logbook whose people think in `unit`: a belt of no weight and a home gym's plates
    /// (common practice, no source).
    pub fn fresh(unit: Unit) -> Self {
        let plates: &[f64] = match unit {
            Unit::Kg => &[20.0, 15.0, 10.0, 5.0, 5.0, 2.5, 2.5, 1.25, 1.25],
            Unit::Lb => &[45.0, 25.0, 10.0, 10.0, 5.0, 5.0, 2.5],
        };
        let typed = |value| Typed::new(value, unit).ok();
        Self {
            format: FORMAT,
            name: None,
            unit,
            gear: None,
            plates: plates.iter().copied().filter_map(typed).collect(),
            formula: None,
            moved_mass: false,
            newer: Vec::new(),
        }
    }

    /// The file's text; the same settings have the same bytes on every machine.
    pub fn to_text(&self) -> String {
        let plates: Vec<String> = self
            .plates
            .iter()
            .copied()
            .map(|plate| Written(plate).to_string())
            .collect();
        let mut text = format!("(\n    format: {},\n", self.format);
        let mut add = |name: &str, value: Option<String>| {
            if let Some(value) = value {
                text.push_str(&format!("    {name}: {value},\n"));
            }
        };
        add("name", self.name.as_deref().map(quote));
        add("unit", Some(self.unit.sign().to_owned()));
        add(
            "gear",
            Some(match self.gear {
                Some(gear) => Written(gear).to_string(),
                None => format!("{}(0)", self.unit.sign()),
            }),
        );
        add("plates", Some(format!("[{}]", plates.join(", "))));
        add("formula", self.formula.as_deref().map(quote));
        add("moved_mass", self.moved_mass.then(|| true.to_string()));
        for (name, value) in &self.newer {
            add(name, Some(value.clone()));
        }
        text.push_str(")\n");
        text
    }

    /// Reads the file's text; what can't be read keeps the value of a fresh logbook and is a problem.
    pub fn read(file: &str, text: &str) -> (Self, Vec<Problem>) {
        let mut settings = Self::fresh(Unit::Kg);
        let fields = match fields::split(text) {
            Ok(fields) => fields,
            Err((at, what)) => {
                settings.format = 0;
                let problem = Problem::error(
                    fields::place(file, text, at),
                    what,
                    "write the file as ( format: 1, unit: kg, … )",
                );
                return (settings, vec![problem]);
            }
        };
        let mut reader = Reader {
            file,
            text,
            problems: Vec::new(),
        };
        settings.format = 0;
        for (at, field) in fields.iter().enumerate() {
            if fields.iter().take(at).any(|earlier| earlier.name == field.name) {
                let what = format!("the field {} stands twice", quoted(field.name));
                reader.error(field, what, "keep one of them");
                continue;
            }
            reader.take(field, &mut settings);
        }
        if !fields.iter().any(|field| field.name == "format") {
            reader.problems.push(Problem::error(
                Place::whole(file),
                "the format number is missing",
                "add format: 1",
            ));
        }
        if settings.format > FORMAT {
            reader.problems.push(Problem::damage(
                Place::whole(file),
                format!(
                    "this logbook was written by a newer version (format {})",
                    settings.format
                ),
                "use that version to write to it; this one only reads",
            ));
        }
        (settings, reader.problems)
    }
}

struct Reader<'a> {
    file: &'a str,
    text: &'a str,
    problems: Vec<Problem>,
}

impl Reader<'_> {
    fn take(&mut self, field: &Field<'_>, settings: &mut Settings) {
        match field.name {
            "format" => self.value(field, &mut settings.format, |format| {
                (*format < 1).then(|| "the format is a number from 1".to_owned())
            }),
            "name" => self.value(field, &mut settings.name, |_| None),
            "unit" => self.value(field, &mut settings.unit, |_| None),
            "gear" => {
                self.value(field, &mut settings.gear, |gear: &Option<Typed>| {
                    let range = Mass::ZERO..=Mass::from_kg(HEAVIEST_KG);
                    let wrong = gear.filter(|gear| !range.contains(&gear.mass()))?;
                    Some(format!("gear of {wrong} is outside 0 to {HEAVIEST_KG} kg"))
                });
                settings.gear = settings.gear.filter(|gear| gear.value() > 0.0);
            }
            "plates" => self.value(field, &mut settings.plates, |plates: &Vec<Typed>| {
                let wrong = plates.iter().find(|plate| {
                    !(plate.mass() > Mass::ZERO && plate.mass() <= Mass::from_kg(HEAVIEST_KG))
                })?;
                Some(format!(
                    "a plate of {wrong} is not over 0 and up to {HEAVIEST_KG} kg"
                ))
            }),
            "formula" => self.value(field, &mut settings.formula, |formula: &Option<String>| {
                let wrong = formula.as_deref().filter(|id| !FORMULAS.contains(id))?;
                let near = did_you_mean(wrong, FORMULAS).map(|near| format!("; did you mean {near}?"));
                Some(format!(
                    "{} is not one of {}{}",
                    quoted(wrong),
                    FORMULAS.join(", "),
                    near.unwrap_or_default()
                ))
            }),
            "moved_mass" => self.value(field, &mut settings.moved_mass, |_| None),
            newer => {
                let mend = match did_you_mean(newer, FIELDS) {
                    Some(near) => format!("write {near}, or use the version of Rungwright that wrote it"),
                    None => "use the version of Rungwright that wrote it".to_owned(),
                };
                let place = fields::place(self.file, self.text, field.name_at);
                let what = format!("field {} is not known to this version; it is kept", quoted(newer));
                self.problems.push(Problem::damage(place, what, mend));
                settings.newer.push((newer.to_owned(), field.value.to_owned()));
            }
        }
    }

    /// Reads one field; what can't be, or what `wrong` finds, is a problem and leaves the value as it was.
    fn value<T: serde::de::DeserializeOwned>(
        &mut self,
        field: &Field<'_>,
        into: &mut T,
        wrong: impl Fn(&T) -> Option<String>,
    ) {
        match fields::value::<T>(field) {
            Ok(value) => match wrong(&value) {
                None => *into = value,
                Some(what) => self.error(field, what, "mend it, or leave the field out"),
            },
            Err(what) => self.error(
                field,
                format!("{} cannot be read: {what}", field.name),
                "mend it, or leave the field out",
            ),
        }
    }

    fn error(&mut self, field: &Field<'_>, what: String, mend: &str) {
        let place = fields::place(self.file, self.text, field.value_at);
        self.problems.push(Problem::error(place, what, mend));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fresh_settings_come_back_as_they_were_written() {
        for unit in [Unit::Kg, Unit::Lb] {
            let settings = Settings::fresh(unit);
            assert_eq!(Settings::read(FILE, &settings.to_text()), (settings, Vec::new()));
        }
    }

    #[test]
    fn the_moved_mass_is_off_until_somebody_writes_it() {
        let mut settings = Settings::fresh(Unit::Kg);
        assert!(!settings.moved_mass && !settings.to_text().contains("moved_mass"));
        settings.moved_mass = true;
        assert_eq!(Settings::read(FILE, &settings.to_text()), (settings, Vec::new()));
    }

    #[test]
    fn a_newer_version_keeps_its_fields_when_this_one_writes() {
        let text = "(\n    format: 1,\n    unit: lb,\n    gear: lb(2),\n    plates: [lb(45)],\n    bar_height: cm(230), // the low one\n)\n";
        let (mut settings, problems) = Settings::read(FILE, text);
        assert_eq!(problems.len(), 1);
        assert_eq!(
            problems[0].to_string().lines().next(),
            Some("logbook.ron:6:5: field \"bar_height\" is not known to this version; it is kept")
        );
        settings.name = Some("Bar club".to_owned());
        assert!(settings.to_text().contains("    bar_height: cm(230),\n"));
    }

    #[test]
    fn a_mistake_names_its_place_and_costs_only_its_field() {
        let text =
            "(\n  format: 1,\n  unit: stone,\n  gear: kg(-1),\n  plates: [kg(20), kg(0)],\n  name: \"A\",\n)";
        let (settings, problems) = Settings::read(FILE, text);
        let first_lines: Vec<String> = problems
            .iter()
            .filter_map(|problem| problem.to_string().lines().next().map(str::to_owned))
            .collect();
        assert_eq!(
            first_lines,
            [
                "logbook.ron:3:9: unit cannot be read: \"stone\" is not one of kg, lb",
                "logbook.ron:4:9: gear of -1 kg is outside 0 to 400 kg",
                "logbook.ron:5:11: a plate of 0 kg is not over 0 and up to 400 kg",
            ]
        );
        assert_eq!(settings.name.as_deref(), Some("A"));
        assert_eq!(settings.plates, Settings::fresh(Unit::Kg).plates);
    }
}
