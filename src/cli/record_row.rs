//! One record as typed on the command line: its options become the cells of a row, and the row is read by import's own
//! code. So what a record may say is ruled in one place.

use crate::logbook::Written;
use crate::logbook::exchange::{Column, Listing, OneRow, outcome_word};
use crate::problem::{Problem, quoted};
use crate::units::{Outcome, Typed, Unit};

use super::Failed;
use super::args_record::{RecordArgs, YES};

/// A row that options fill.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Cells(OneRow);

impl Cells {
    /// The row itself.
    pub fn row(self) -> OneRow {
        self.0
    }

    /// Changes a row by what was said, each value in place of the one before.
    ///
    /// # Errors
    /// When a value isn't written as its option asks; the row is then as it was.
    pub fn change(row: &mut OneRow, by: impl FnOnce(&mut Self) -> Result<(), Failed>) -> Result<(), Failed> {
        let mut cells = Self(row.clone());
        by(&mut cells)?;
        *row = cells.0;
        Ok(())
    }

    /// Whether there is something in `column`.
    pub fn has(&self, column: Column) -> bool {
        self.0.has(column)
    }

    /// Puts a text into `column`; an empty one empties it.
    pub fn put(&mut self, column: Column, text: &str) {
        self.0.put(column, text);
    }

    /// Puts what was said into the row, each value in place of the one before; an empty one takes it away.
    ///
    /// # Errors
    /// When a value isn't written as its option asks.
    pub fn say(&mut self, said: &RecordArgs) -> Result<(), Failed> {
        for (column, value) in [
            (Column::Movement, &said.movement),
            (Column::Side, &said.side),
            (Column::Ladder, &said.ladder),
            (Column::Rung, &said.rung),
            (Column::Phase, &said.phase),
            (Column::Goal, &said.goal),
            (Column::Sex, &said.sex),
            (Column::Note, &said.note),
        ] {
            if let Some(text) = value {
                self.put(column, text);
            }
        }
        self.one_of((Column::Reps, &said.reps), (Column::HoldS, &said.hold_s));
        self.one_of((Column::Rir, &said.rir), (Column::Rpe, &said.rpe));
        self.date(Column::Date, "--at", &said.at)?;
        self.date(Column::GoalBy, "--by", &said.by)?;
        self.date(Column::Born, "--born", &said.born)?;
        self.load(said)?;
        self.outcome(said)?;
        if let Some(text) = &said.bodyweight {
            self.mass(
                (Column::BodyweightKg, Column::BodyweightLb),
                "--bodyweight",
                "",
                text,
            )?;
        }
        if let Some(text) = &said.height {
            self.put(Column::HeightCm, height(text)?);
        }
        if let Some(text) = &said.pain {
            let (site, score) = pain(text)?;
            self.put(Column::PainSite, site);
            self.put(Column::Pain, score);
        }
        Ok(())
    }

    /// Puts a placement into the row: `LADDER`, `LADDER/RUNG` or `LADDER/none`.
    pub fn place(&mut self, text: &str) {
        let (ladder, rung) = text.split_once('/').unwrap_or((text, ""));
        self.put(Column::Ladder, ladder);
        self.put(Column::Rung, rung);
    }

    /// Two ways to say one thing: the one that is said now takes the other's place.
    fn one_of(&mut self, one: (Column, &Option<String>), other: (Column, &Option<String>)) {
        for ((column, said), (beside, too)) in [(one, other), (other, one)] {
            if let Some(text) = said {
                if too.is_none() {
                    self.put(beside, "");
                }
                self.put(column, text);
            }
        }
    }

    fn date(&mut self, column: Column, option: &str, said: &Option<String>) -> Result<(), Failed> {
        let Some(text) = said else { return Ok(()) };
        if !text.trim().is_empty() {
            Written::parse(text.trim()).map_err(|error| Failed::Usage(format!("{option}: {error}")))?;
        }
        self.put(column, text);
        Ok(())
    }

    fn load(&mut self, said: &RecordArgs) -> Result<(), Failed> {
        let columns = (Column::AddedKg, Column::AddedLb);
        if let Some(text) = &said.added {
            self.mass(columns, "--added", "", text)?;
        }
        if let Some(text) = &said.assist {
            if text.trim().starts_with(['-', '+']) {
                let what = format!("--assist {}: write the help without a sign", quoted(text));
                return Err(Failed::Usage(what));
            }
            self.mass(columns, "--assist", "-", text)?;
        }
        Ok(())
    }

    fn outcome(&mut self, said: &RecordArgs) -> Result<(), Failed> {
        for (option, value, outcome) in [
            ("--missed", &said.missed, Outcome::Missed),
            ("--form", &said.form, Outcome::Form),
        ] {
            match value.as_deref() {
                None => {}
                Some(YES) => self.put(Column::Outcome, outcome_word(outcome)),
                Some("") => self.put(Column::Outcome, ""),
                Some(other) => {
                    let what = format!("{option} stands alone, without {}", quoted(other));
                    return Err(Failed::Usage(what));
                }
            }
        }
        Ok(())
    }

    fn mass(
        &mut self,
        (kg, lb): (Column, Column),
        option: &str,
        sign: &str,
        text: &str,
    ) -> Result<(), Failed> {
        self.put(kg, "");
        self.put(lb, "");
        if text.trim().is_empty() {
            return Ok(());
        }
        let (number, unit) = number_and_unit(text).ok_or_else(|| {
            let text = quoted(text);
            Failed::Usage(format!("{option} {text} is no mass; write it as 20kg or 45lb"))
        })?;
        let column = match unit {
            Unit::Kg => kg,
            Unit::Lb => lb,
        };
        self.put(column, &format!("{sign}{number}"));
        Ok(())
    }
}

/// A mass as an option says it: `20kg`, `45 lb`.
///
/// # Errors
/// When it is no number with a unit.
pub fn typed(option: &str, text: &str) -> Result<Typed, Failed> {
    let read = number_and_unit(text).and_then(|(number, unit)| Typed::new(number.parse().ok()?, unit).ok());
    read.ok_or_else(|| {
        let text = quoted(text);
        Failed::Usage(format!("{option} {text} is no mass; write it as 74kg or 163lb"))
    })
}

/// The number and the unit of a mass as typed; what the number may be is import's to say.
fn number_and_unit(text: &str) -> Option<(&str, Unit)> {
    let text = text.trim();
    let (number, sign) = text.split_at_checked(text.len().checked_sub(2)?)?;
    let unit = [Unit::Kg, Unit::Lb]
        .into_iter()
        .find(|unit| unit.sign().eq_ignore_ascii_case(sign))?;
    let number = number.trim_end();
    is_number(number).then_some((number, unit))
}

fn is_number(text: &str) -> bool {
    let digits = text.strip_prefix(['+', '-']).unwrap_or(text);
    digits.starts_with(|c: char| c.is_ascii_digit() || c == '.')
        && digits
            .bytes()
            .all(|byte| byte.is_ascii_digit() || byte == b'.' || byte == b',')
}

fn height(text: &str) -> Result<&str, Failed> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(text);
    }
    let number = text
        .split_at_checked(text.len().saturating_sub(2))
        .filter(|(_, unit)| unit.eq_ignore_ascii_case("cm"))
        .map(|(number, _)| number.trim_end());
    number.filter(|number| is_number(number)).ok_or_else(|| {
        let text = quoted(text);
        Failed::Usage(format!("--height {text} is no height; write it as 178cm"))
    })
}

fn pain(text: &str) -> Result<(&str, &str), Failed> {
    if text.trim().is_empty() {
        return Ok(("", ""));
    }
    let parts = text
        .split_once('=')
        .filter(|(site, score)| !site.trim().is_empty() && !score.trim().is_empty());
    parts.ok_or_else(|| {
        let text = quoted(text);
        Failed::Usage(format!(
            "--pain {text} says not where and how much; write it as elbow=3"
        ))
    })
}

/// What can't be read at all, in the words of the command line.
pub fn unread(listing: &Listing) -> Failed {
    match listing.listed.first() {
        Some(problem) => wrong(problem),
        None => Failed::Usage("this can't be read as a record".to_owned()),
    }
}

/// What import says of a row is wrong use here.
pub fn wrong(problem: &Problem) -> Failed {
    Failed::Usage(line_of(problem))
}

/// What import says of a row, in one line and in the words of the command line.
pub fn line_of(problem: &Problem) -> String {
    let mut line = problem.what.clone();
    if !problem.mend.is_empty() {
        line.push_str("; ");
        line.push_str(&problem.mend);
    }
    crate::problem::visible(&in_our_words(&line))
}

/// A message in the words of the command line. What a person typed stands in quotes and stays as it is.
fn in_our_words(message: &str) -> String {
    let parts = message.split('"').enumerate().map(|(at, part)| {
        let ours = |text: String, (theirs, ours): &(&str, &str)| text.replace(theirs, ours);
        match at % 2 {
            0 => WORDS.iter().fold(part.to_owned(), ours),
            _ => part.to_owned(),
        }
    });
    parts.collect::<Vec<_>>().join("\"")
}

/// A spreadsheet's words, and what stands for them on the command line.
const WORDS: [(&str, &str); 22] = [
    ("bodyweight_kg", "--bodyweight"),
    ("bodyweight_lb", "--bodyweight"),
    ("added_kg", "--added"),
    ("added_lb", "--added"),
    ("hold_s", "--hold-s"),
    ("pain_site", "pain site"),
    ("goal_by", "--by"),
    ("height_cm", "--height"),
    ("leave the cell empty", "leave it out"),
    ("a cell of more than", "a text of more than"),
    ("shorten the cell, or close the quote before it", "shorten it"),
    ("or an empty cell", "or nothing"),
    ("has the outcome fail", "is --missed"),
    ("outcome fail", "--missed"),
    ("outcome form", "--form"),
    ("outcome success", "neither --missed nor --form"),
    ("a row of its own", "a log of its own"),
    ("the day of the row", "the day of this record"),
    ("fill in ", "give "),
    ("clear ", "leave out "),
    (", or read the file with --decimal ,", ""),
    (
        "write digits with at most one decimal mark, without a unit",
        "write it in digits",
    ),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mass_is_a_number_and_its_unit() {
        assert_eq!(number_and_unit("20kg"), Some(("20", Unit::Kg)));
        assert_eq!(number_and_unit(" 2.5 KG "), Some(("2.5", Unit::Kg)));
        assert_eq!(number_and_unit("-45lb"), Some(("-45", Unit::Lb)));
        for wrong in [
            "", "kg", "20", "20 stone", "1e3kg", "nankg", "twentykg", "٣kg", "2 0kg",
        ] {
            assert_eq!(number_and_unit(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn what_is_said_last_takes_the_place_of_its_other_form() {
        let mut cells = Cells::default();
        cells.put(Column::Reps, "5");
        cells.one_of((Column::Reps, &None), (Column::HoldS, &Some("12".to_owned())));
        assert!(cells.has(Column::HoldS) && !cells.has(Column::Reps));
    }
}
