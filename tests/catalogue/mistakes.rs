//! The gallery of mistakes: each file in `tests/mistakes/ladders/` makes one (or a few), and the text beside it is, byte for
//! byte, what the reader says of it. Files that begin with `movements` hold movements, the others a ladder.
//!
//! Outside source: none; the words are this project's own. `RUNGWRIGHT_WRITE_GALLERY=1` writes the texts anew for reading.

use std::fs;
use std::path::PathBuf;

use rungwright::catalogue::Catalogue;
use rungwright::problem::{Problem, Severity};

fn gallery() -> Vec<PathBuf> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/mistakes/ladders");
    let mut files: Vec<PathBuf> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "ron"))
        .collect();
    files.sort();
    files
}

/// What is wrong in a file of the gallery, and whether something of it is in force all the same.
fn read(path: &PathBuf) -> (bool, Vec<Problem>) {
    let name = path.file_name().unwrap().to_str().unwrap();
    let text = fs::read_to_string(path).unwrap();
    if name.starts_with("movements") {
        let (movements, problems) = Catalogue::read_movements(name, &text);
        (!movements.is_empty(), problems)
    } else {
        let (ladder, problems) = Catalogue::shipped().read_ladder(name, &text);
        (ladder.is_some(), problems)
    }
}

#[test]
fn every_mistake_is_told_with_its_place_and_its_mend() {
    let mut wrong = Vec::new();
    let files = gallery();
    for path in &files {
        let (_, problems) = read(path);
        let told: String = problems.iter().map(|problem| format!("{problem}\n")).collect();
        let text = path.with_extension("txt");
        if std::env::var_os("RUNGWRIGHT_WRITE_GALLERY").is_some() {
            fs::write(&text, &told).unwrap();
        }
        let expected = fs::read_to_string(&text).unwrap_or_default();
        if told != expected {
            wrong.push(format!(
                "{}\nexpected:\n{expected}\ntold:\n{told}",
                path.display()
            ));
        }
        assert!(!told.is_empty(), "{} has no mistake", path.display());
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(files.len() >= 60, "only {} files were found", files.len());
}

#[test]
fn an_error_keeps_a_ladder_out_and_a_warning_does_not() {
    for path in gallery() {
        let (in_force, problems) = read(&path);
        let error = problems.iter().any(|problem| problem.severity == Severity::Error);
        let several = path.to_string_lossy().contains("movements-twice");
        assert_eq!(in_force, !error || several, "{}", path.display());
    }
}
