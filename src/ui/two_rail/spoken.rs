//! The ladder in words, for screen readers and tests: every rung and every hand says what it is.

use crate::ui::views::{BranchView, HandView, LadderView, RungState, RungView, Spot};
use crate::units::Rail;

/// `Rung 6, Pulley, demand 0.88, left open, right day 1 of 2`.
pub fn rung_words(view: &LadderView, nth: usize, rung: &RungView) -> String {
    let demand = rung.demand.map_or_else(
        || ", demand not known".to_owned(),
        |demand| format!(", demand {demand:.2}"),
    );
    let goal = if rung.is_goal { ", the goal" } else { "" };
    let state = if view.sided {
        format!(
            "left {}, right {}",
            state_words(rung.state[0]),
            state_words(rung.state[1])
        )
    } else {
        state_words(rung.state[0])
    };
    let status = rung
        .status
        .as_deref()
        .map_or_else(String::new, |status| format!(", {status}"));
    format!(
        "Rung {}, {}{demand}{goal}, {state}{status}",
        nth + 1,
        rung.title.replace('−', "minus ")
    )
}

fn state_words(state: RungState) -> String {
    match state {
        RungState::Passed => "passed".to_owned(),
        RungState::Open => "open".to_owned(),
        RungState::WorkedOn { done, of } => format!("day {done} of {of}"),
    }
}

/// `Branch Pulley, from Two-arm pull-up to One-arm pull-up`.
pub fn branch_words(view: &LadderView, branch: &BranchView) -> String {
    let title = |nth: usize| view.rungs.get(nth).map_or("the top", |rung| rung.title.as_str());
    format!(
        "Branch {}, from {} to {}, {}",
        branch.title,
        title(branch.from),
        title(branch.to),
        branch.line
    )
}

/// `Left hand on rung 5, One finger; next rung today`.
pub fn hand_words(view: &LadderView, hand: &HandView) -> String {
    let whose = match hand.rail {
        Rail::Both => "Both hands",
        Rail::Left => "Left hand",
        Rail::Right => "Right hand",
    };
    let place = match hand.at {
        Spot::Ground => "at the ground".to_owned(),
        Spot::Rung(nth) => match view.rungs.get(nth) {
            Some(rung) => format!("on rung {}, {}", nth + 1, rung.title),
            None => "beyond the top".to_owned(),
        },
        Spot::Branch(nth) => match view.branches.get(nth) {
            Some(branch) => format!("on branch {}", branch.title),
            None => "on a branch".to_owned(),
        },
    };
    let up = if hand.steps_up { "; next rung today" } else { "" };
    format!("{whose} {place}{up}")
}
