//! The rules, each a question to the facts. The arrays here are their order; `next_step` asks them.

mod back_off;
mod begin;
mod carry_on;
mod readiness;
mod step_up;

use crate::coaching::advice::Verdict;
use crate::coaching::facts::Facts;
use crate::coaching::finding::Finding;

/// A rule's answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// The verdict, if this rule decides.
    pub verdict: Verdict,
    /// The numbers behind it.
    pub finding: Finding,
    /// What a back-off leaves of the work load.
    pub cut: f64,
}

impl Found {
    fn new(verdict: Verdict, finding: Finding) -> Self {
        Self {
            verdict,
            finding,
            cut: CUT,
        }
    }

    fn cutting_to(self, cut: f64) -> Self {
        Self { cut, ..self }
    }
}

/// What an ordinary back-off leaves of the work load. Common practice, no source.
const CUT: f64 = 0.95;
/// What a long layoff, or a third pair of misses, leaves of it. Common practice, no source (strength falls with time off:
/// Bosquet et al. 2013).
const DEEP_CUT: f64 = 0.90;
/// What twelve weeks away leave of it. Common practice, no source.
const DEEPEST_CUT: f64 = 0.85;

/// A rule.
pub type Rule = fn(&Facts<'_, '_>) -> Option<Found>;

/// Rules before those that judge work on the rung: whether to work at all.
pub const READINESS: [Rule; 2] = [readiness::pain_stop, readiness::weigh_in_stale];

/// Rules that decide what follows, in order; the first that answers decides.
pub const WORK: [Rule; 16] = [
    begin::placed,
    begin::no_record,
    readiness::layoff,
    readiness::after_pain,
    readiness::deload,
    step_up::passed,
    back_off::missed,
    carry_on::light_only,
    carry_on::held_up,
    step_up::one_more_day,
    carry_on::top_of_range,
    carry_on::last_rung,
    carry_on::reserve_unlogged,
    carry_on::test_due,
    back_off::stalled,
    begin::entry_untested,
];

/// What holds when nothing else does.
pub const ELSE: Rule = carry_on::in_range;
