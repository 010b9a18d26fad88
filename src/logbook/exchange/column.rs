//! The columns of a spreadsheet, and which of somebody's headers means which.

use std::str::FromStr;

use crate::catalogue::fold;
use crate::problem::{did_you_mean, quoted};

use super::options::BadOption;

macro_rules! columns {
    ($($(#[$doc:meta])* $name:ident = $text:literal,)*) => {
        /// A column of import and export, in the order that `export` writes them.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Column { $($(#[$doc])* $name,)* }

        impl Column {
            /// Every column, in the order that `export` writes them.
            pub const ALL: [Column; [$($text),*].len()] = [$(Column::$name),*];

            /// The header that files carry.
            pub fn name(self) -> &'static str {
                match self { $(Column::$name => $text,)* }
            }
        }
    };
}

columns! {
    /// A record's ULID; only `export` writes it.
    Id = "id",
    /// The athlete's name.
    Athlete = "athlete",
    /// The day, or a time; the only column that no file is without.
    Date = "date",
    /// The movement.
    Movement = "movement",
    /// `L`, `R` or empty.
    Side = "side",
    /// Bodyweight in kilograms.
    BodyweightKg = "bodyweight_kg",
    /// Bodyweight in pounds.
    BodyweightLb = "bodyweight_lb",
    /// Belt load in kilograms; below zero it is help.
    AddedKg = "added_kg",
    /// Belt load in pounds; below zero it is help.
    AddedLb = "added_lb",
    /// Completed repetitions.
    Reps = "reps",
    /// Seconds held.
    HoldS = "hold_s",
    /// Repetitions in reserve.
    Rir = "rir",
    /// Rating of perceived exertion, instead of `rir`.
    Rpe = "rpe",
    /// `success`, `fail`, `form` or empty.
    Outcome = "outcome",
    /// The ladder.
    Ladder = "ladder",
    /// The rung of the ladder, or `none`.
    Rung = "rung",
    /// Pain, 0 to 10.
    Pain = "pain",
    /// Where it hurts.
    PainSite = "pain_site",
    /// `cut`, `hold`, `gain` or `deload`; `archived` takes the athlete off the roster, `active` puts them back.
    Phase = "phase",
    /// A rung to reach, `LADDER/RUNG`.
    Goal = "goal",
    /// By when.
    GoalBy = "goal_by",
    /// Height in centimetres.
    HeightCm = "height_cm",
    /// `female` or `male`.
    Sex = "sex",
    /// Birth date.
    Born = "born",
    /// So many equal sets in one row; `export` leaves it empty.
    Sets = "sets",
    /// A remark.
    Note = "note",
}

impl Column {
    /// The column that `header` names, whatever its case, spaces, `-` and `_`.
    pub fn named(header: &str) -> Option<Column> {
        let folded = fold(header);
        Column::ALL
            .into_iter()
            .find(|column| fold(column.name()) == folded)
    }

    /// The column that a mistyped header most likely means.
    fn guessed(header: &str) -> Option<Column> {
        did_you_mean(&header.trim().to_lowercase(), Column::ALL.map(Column::name)).and_then(Column::named)
    }
}

/// One `--map THEIRS=OURS`, or `THEIRS=` to drop a column; an empty THEIRS means columns without a name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Renaming {
    /// The header in the file.
    pub theirs: String,
    /// What it is here; none drops it.
    pub ours: Option<Column>,
}

impl FromStr for Renaming {
    type Err = BadOption;

    fn from_str(text: &str) -> Result<Self, BadOption> {
        let (theirs, ours) = text
            .rsplit_once('=')
            .ok_or_else(|| BadOption(format!("{} is not THEIRS=OURS or THEIRS=", quoted(text))))?;
        let ours = match ours.trim() {
            "" => None,
            ours => Some(Column::named(ours).ok_or_else(|| {
                let known = Column::ALL.map(Column::name).join(", ");
                BadOption(match Column::guessed(ours) {
                    Some(guess) => format!("no column {}; did you mean {}?", quoted(ours), guess.name()),
                    None => format!("no column {}; the columns are {known}", quoted(ours)),
                })
            })?),
        };
        Ok(Self {
            theirs: theirs.to_owned(),
            ours,
        })
    }
}

/// What one header of a file means.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Meaning {
    /// This column.
    Column(Column),
    /// Dropped on request.
    Dropped,
    /// This column, but a header before it means the same one.
    Twice(Column),
    /// Nothing that is known; perhaps a slip for the column named here.
    Unknown(Option<Column>),
}

/// What each of `headers` means under `map`, in order. Pure: the window asks it while a person maps columns.
pub fn meanings<'h>(headers: impl IntoIterator<Item = &'h str>, map: &[Renaming]) -> Vec<Meaning> {
    let mut taken = Vec::new();
    headers
        .into_iter()
        .map(|header| {
            let renamed = map.iter().find(|renaming| fold(&renaming.theirs) == fold(header));
            let found = match renamed {
                Some(Renaming { ours: None, .. }) => return Meaning::Dropped,
                Some(Renaming { ours: Some(ours), .. }) => Some(*ours),
                None => Column::named(header),
            };
            match found {
                None => Meaning::Unknown(Column::guessed(header)),
                Some(column) if taken.contains(&column) => Meaning::Twice(column),
                Some(column) => {
                    taken.push(column);
                    Meaning::Column(column)
                }
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headers_fold_case_spaces_dashes_and_underscores() {
        for header in ["added_kg", "Added KG", " added-kg ", "ADDEDKG"] {
            assert_eq!(Column::named(header), Some(Column::AddedKg), "{header}");
        }
        assert_eq!(Column::named("weight"), None);
        assert!(
            Column::ALL
                .into_iter()
                .all(|column| Column::named(column.name()) == Some(column))
        );
    }

    #[test]
    fn a_mapped_a_dropped_a_double_and_an_unknown_header_are_told_apart() {
        let map: Vec<Renaming> = ["Kilos on belt=added_kg", "Mood=", "="]
            .map(|text| text.parse().unwrap())
            .to_vec();
        assert_eq!(
            meanings(
                ["Date", "kilos_on_belt", "mood", "added kg", "repps", "", "Gym"],
                &map
            ),
            [
                Meaning::Column(Column::Date),
                Meaning::Column(Column::AddedKg),
                Meaning::Dropped,
                Meaning::Twice(Column::AddedKg),
                Meaning::Unknown(Some(Column::Reps)),
                Meaning::Dropped,
                Meaning::Unknown(None),
            ]
        );
    }

    #[test]
    fn a_mapping_to_no_column_says_which_was_meant() {
        assert_eq!(
            "x=repz".parse::<Renaming>().unwrap_err().to_string(),
            "no column \"repz\"; did you mean reps?"
        );
        assert!("reps".parse::<Renaming>().is_err());
        assert_eq!("a=b=note".parse::<Renaming>().unwrap().theirs, "a=b");
    }
}
