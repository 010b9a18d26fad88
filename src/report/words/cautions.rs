//! Cautions as sentences.

use crate::catalogue::Caution;
use crate::coaching::CareNote;
use crate::coaching::caps::MILD_PAIN;
use crate::coaching::care::FASTEST_LOSS;
use crate::coaching::facts::STRONG_PAIN;
use crate::timeline::LOWEST_HEALTHY_BMI;

use super::super::numbers::{about, ago, apart, day, kg, number};
use super::Words;

impl Words<'_> {
    /// A caution as a sentence.
    pub fn caution(self, note: &CareNote) -> String {
        match note {
            CareNote::Rung(caution) => rung_caution(*caution).to_owned(),
            CareNote::Spacing { days: count, .. } => {
                format!("You trained this {}; leave a day or two between.", ago(*count))
            }
            CareNote::ContradictoryLog { date, reserve } => format!(
                "On {} a failed set says {} in reserve; it is taken as 0. Mend the entry if it is a slip.",
                day(*date),
                number(*reserve, 1)
            ),
            CareNote::CheckEntry { date, system_kg } => format!(
                "On {} a set says {} in all, far above everything else; it is left out. Check the entry.",
                day(*date),
                kg(*system_kg, self.unit)
            ),
            CareNote::WeighInOdd { date, kg } => format!(
                "The weigh-in of {} ({}) is far off the others and is left out. Check it, or weigh again.",
                day(*date),
                about(*kg, self.unit)
            ),
            CareNote::EntryNotMet { movement, at_least, ratio } => {
                format!("This rung asks {}, which is not logged.", self.asked(movement, *at_least, *ratio))
            }
            CareNote::TestSafety => {
                "Warm up well, have a spotter and a safe way down, and stop with one left in you.".to_owned()
            }
            CareNote::PainProfessional { site } => {
                format!("Have the {} looked at by a licensed professional.", site.word())
            }
            CareNote::Minor { .. } => {
                "Under 18: train with a qualified adult present; technique before load.".to_owned()
            }
            CareNote::Underweight { bmi } => format!(
                "Your body mass index is {}, under the healthy range from {}. Talk to a licensed professional.",
                apart(*bmi, LOWEST_HEALTHY_BMI, 1),
                number(LOWEST_HEALTHY_BMI, 1)
            ),
            CareNote::CutRefused => {
                "Losing weight is not planned here; food and strength come first. Talk to a licensed professional.".to_owned()
            }
            CareNote::CutFast { percent_a_week } => format!(
                "You lose {} % of bodyweight a week; over {} % costs strength. Slow down.",
                apart(percent_a_week.abs(), FASTEST_LOSS, 1),
                number(FASTEST_LOSS, 1)
            ),
            CareNote::CutLong { days } => {
                format!("This cut is {} weeks long; a few weeks at one weight would help.", days / 7)
            }
        }
    }
}

/// A rung's own caution as a sentence.
pub fn rung_caution(caution: Caution) -> &'static str {
    match caution {
        Caution::Band => "Check the band for cracks; it helps least at the top and can snap.",
        Caution::Eccentric => "Lowering work: few reps, days apart; expect sore muscles.",
        Caution::Shoulder => "Shoulders near their limits: controlled depth, no drop, stop on sharp pain.",
        Caution::Elbow => {
            "Elbow tendons adapt slower than muscle. Start straight, shoulder blade set; don't drop into the hang."
        }
        Caution::Grip => "Finger tendons adapt slowly; stop when the grip slips, and keep a safe way down.",
        Caution::Wrist => "Warm the wrists; turn the hands or use bars if they hurt.",
        Caution::Knee => "Knee over the toes, slow down; stop on sharp pain.",
        Caution::Supinated => {
            "Palms toward you load the biceps tendon at the elbow; no jerks, stop on front-of-elbow pain."
        }
        Caution::StraightArm => {
            "Straight arms load the elbow's front and the biceps tendon; not to failure, stop on sharp pain."
        }
        Caution::Belt => "Check belt, chain and carabiner; keep the plates from swinging.",
        Caution::Head => "Head toward the floor: mat, spotter or wall, and a way out.",
    }
}

/// What the rules make of a pain score, under the field that asks for one.
pub fn pain_scale() -> String {
    format!(
        "{} or less: go on. {MILD_PAIN} to {}: not harder. {STRONG_PAIN} or more: pause. Stop on sharp pain.",
        MILD_PAIN - 1,
        STRONG_PAIN - 1
    )
}
