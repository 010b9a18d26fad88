//! What a new person typed, and the logbook that it makes.

use chrono::NaiveDate;

use crate::logbook::Settings;
use crate::ui::book::NewLogbook;
use crate::ui::screens::next::typed_number;
use crate::ui::views::{FirstView, LadderChoice};
use crate::units::{Height, Unit};

/// What is typed so far.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StartState {
    pub(super) name: String,
    pub(super) in_lb: bool,
    pub(super) bodyweight: String,
    pub(super) plates: Option<String>,
    pub(super) height: String,
    pub(super) sex: usize,
    pub(super) born: String,
    pub(super) ladder: Option<usize>,
    pub(super) today: Vec<[String; 2]>,
    /// It was asked for by key.
    pub(super) make: bool,
}

/// Which question, and the amount left and right.
type Answers = Vec<(usize, [Option<f64>; 2])>;

/// The plates of a logbook of which nothing is known, as they are typed.
pub(super) fn usual_plates(in_lb: bool) -> String {
    Settings::fresh(if in_lb { Unit::Lb } else { Unit::Kg }).plates_text()
}

impl StartState {
    /// What would be made; none while the name is missing or something typed is no number.
    pub fn ready(&self, view: &FirstView) -> Result<NewLogbook, &'static str> {
        if self.name.trim().is_empty() {
            return Err("Give a name.");
        }
        let plates = self.plates.clone().unwrap_or_else(|| usual_plates(self.in_lb));
        let plates: Option<Vec<f64>> = plates.split_whitespace().map(typed_number).collect();
        let ladder = self.ladder.and_then(|nth| view.ladders.get(nth));
        Ok(NewLogbook {
            name: self.name.trim().to_owned(),
            in_lb: self.in_lb,
            bodyweight: optional(
                &self.bodyweight,
                typed_number,
                "Bodyweight: a number, like 74.6, or leave it empty.",
            )?,
            plates: plates.ok_or("Plates: numbers with spaces between, like 20 10 2.5.")?,
            gear: 0.0,
            height_cm: optional(&self.height, height, "Height: 50 to 260 cm, or leave it empty.")?,
            sex: [None, Some("female"), Some("male")]
                .get(self.sex)
                .copied()
                .flatten(),
            born: optional(
                &self.born,
                |text| NaiveDate::parse_from_str(text.trim(), "%Y-%m-%d").ok(),
                "Birth date: like 1994-05-31, or leave it empty.",
            )?,
            ladder: ladder.map(|ladder| ladder.id.clone()),
            today: self.answers(ladder)?,
        })
    }

    fn answers(&self, ladder: Option<&LadderChoice>) -> Result<Answers, &'static str> {
        let Some(ladder) = ladder else {
            return Ok(Vec::new());
        };
        let wrong = "What you can do today: whole numbers, or leave it empty.";
        let mut answers = Vec::new();
        for (nth, typed) in self.today.iter().take(ladder.questions.len()).enumerate() {
            let left = optional(&typed[0], typed_number, wrong)?;
            let right = if ladder.sided {
                optional(&typed[1], typed_number, wrong)?
            } else {
                left
            };
            if left.is_some() || right.is_some() {
                answers.push((nth, [left, right]));
            }
        }
        Ok(answers)
    }
}

fn height(text: &str) -> Option<f64> {
    typed_number(text).filter(|cm| Height::BELIEVED_CM.contains(cm))
}

fn optional<T>(
    text: &str,
    read: impl Fn(&str) -> Option<T>,
    wrong: &'static str,
) -> Result<Option<T>, &'static str> {
    if text.trim().is_empty() {
        Ok(None)
    } else {
        read(text).map(Some).ok_or(wrong)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_all_that_a_logbook_needs() {
        let view = FirstView::default();
        let mut state = StartState::default();
        assert!(state.ready(&view).is_err());
        state.name = " Ana ".into();
        let made = state.ready(&view).unwrap();
        assert_eq!(
            (made.name.as_str(), made.plates.len(), made.bodyweight),
            ("Ana", 9, None)
        );
    }

    #[test]
    fn what_is_typed_wrong_is_said_and_not_made() {
        let view = FirstView::default();
        let named = StartState {
            name: "Ana".into(),
            ..StartState::default()
        };
        for state in [
            StartState {
                bodyweight: "heavy".into(),
                ..named.clone()
            },
            StartState {
                height: "1.78".into(),
                ..named.clone()
            },
            StartState {
                born: "31.5.1994".into(),
                ..named.clone()
            },
            StartState {
                plates: Some("20, x".into()),
                ..named
            },
        ] {
            assert!(state.ready(&view).is_err(), "{state:?}");
        }
    }
}
