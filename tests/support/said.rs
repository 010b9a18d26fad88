//! What an advice said, for asserting in a word.

use rungwright::coaching::{LoadToday, NextStep, Prescription};

/// Reading an advice.
pub trait Said {
    /// The rule that decided.
    fn rule(&self) -> &'static str;
    /// Every rule in the reasons.
    fn rules(&self) -> Vec<&'static str>;
    /// "verdict rule".
    fn in_short(&self) -> String;
    /// Whether a rule is among the reasons.
    fn gives(&self, rule: &str) -> bool;
    /// Whether there is such a caution.
    fn warns(&self, caution: &str) -> bool;
    /// The work asked; there must be one.
    fn work(&self) -> &Prescription;
    /// The load asked; there must be one.
    fn load(&self) -> &LoadToday;
    /// What hangs from the belt, kg.
    fn belt(&self) -> f64;
    /// Lower and upper end of the range.
    fn range(&self) -> (f64, Option<f64>);
}

impl Said for NextStep {
    fn rule(&self) -> &'static str {
        self.reasons.first().unwrap().rule()
    }

    fn rules(&self) -> Vec<&'static str> {
        self.reasons.iter().map(|reason| reason.rule()).collect()
    }

    fn in_short(&self) -> String {
        format!("{} {}", self.verdict.id(), self.rule())
    }

    fn gives(&self, rule: &str) -> bool {
        self.rules().contains(&rule)
    }

    fn warns(&self, caution: &str) -> bool {
        self.cautions.iter().any(|note| note.rule() == caution)
    }

    fn work(&self) -> &Prescription {
        self.prescription.as_ref().unwrap()
    }

    fn load(&self) -> &LoadToday {
        self.work().load.as_ref().unwrap()
    }

    fn belt(&self) -> f64 {
        self.load().added.kg()
    }

    fn range(&self) -> (f64, Option<f64>) {
        let asked = self.work().asked;
        (asked.lo(), asked.hi())
    }
}
