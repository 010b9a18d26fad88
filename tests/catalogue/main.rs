//! Movements and ladders: what is shipped, what a file may say, and what is said of its mistakes.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

mod any_text;
mod mistakes;
mod movements;
mod own;
mod reading;
mod shipped;

use rungwright::problem::Problem;

const PROGRESSIONS: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/progressions");

fn shipped_text(name: &str) -> String {
    std::fs::read_to_string(format!("{PROGRESSIONS}/{name}")).unwrap()
}

fn shipped_files() -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(PROGRESSIONS)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

fn told(problems: &[Problem]) -> String {
    problems.iter().map(|problem| format!("{problem}\n")).collect()
}

/// A ladder of two rungs by this id.
fn two_rungs(id: &str) -> String {
    format!(
        r#"(id: "{id}", title: "Ring dips", goal: "Ten ring dips.", sides: Together, sources: ["from memory"], rungs: [
            (id: "support", title: "Support", movement: "ring-support", work: (sets: 3, range: Hold(10, 30))),
            (id: "dip", title: "Ring dip", movement: "ring-dip", work: (sets: 3, range: Reps(3, 10), reserve: 1)),
        ])"#
    )
}
