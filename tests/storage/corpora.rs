//! Bytes that a fuzzer found interesting, and every file of the galleries, read once more by the laws that it tried to break.

use std::fs;
use std::path::{Path, PathBuf};

use crate::laws;

/// Every file below a folder of `tests`.
fn files_in(folder: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut left = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("tests").join(folder)];
    while let Some(folder) = left.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                left.push(path)
            } else {
                found.push(path)
            }
        }
    }
    found
}

#[test]
fn no_bytes_that_were_ever_interesting_break_the_law_of_a_reader() {
    type Law = fn(&[u8]);
    let laws: [(Law, &[&str]); 4] = [
        (
            laws::journal,
            &["fuzz/kept/journal", "mistakes/journals", "frozen"],
        ),
        (
            laws::ladder,
            &["fuzz/kept/ladder", "mistakes/ladders", "../progressions"],
        ),
        (laws::spreadsheet, &["fuzz/kept/spreadsheet", "spreadsheets"]),
        (laws::settings, &["fuzz/kept/settings", "frozen"]),
    ];
    for (law, folders) in laws {
        for folder in folders {
            let files = files_in(folder);
            assert!(!files.is_empty(), "{folder}");
            for file in files {
                law(&fs::read(&file).unwrap());
            }
        }
    }
}
