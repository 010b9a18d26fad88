//! Damage costs what it hits and always says so; a frozen logbook of format 1 opens for ever.

use std::fs;
use std::path::{Path, PathBuf};

use crate::help::chance::Chance;
use crate::help::*;
use rungwright::logbook::journal::{self, Form};
use rungwright::logbook::record::Fact;
use rungwright::logbook::{Logbook, line, merge};
use rungwright::problem::Severity;

/// Reads a broken journal and says what a person sees of it.
fn said_of(file: &Path) -> String {
    let label = file.file_name().unwrap().to_string_lossy().into_owned();
    let bytes = fs::read(file).unwrap();
    let journal = journal::read(&label, &bytes, Form::Journal);
    let problems: Vec<String> = journal
        .problems
        .iter()
        .map(|problem| format!("{problem}\n"))
        .collect();
    let weight = match journal.problems.iter().map(|problem| problem.severity).max() {
        Some(Severity::Error) => "an answer is missing something",
        Some(_) => "nothing is lost",
        None => "nothing is wrong",
    };
    format!(
        "{} records read; {weight}\n{}",
        journal.entries.len(),
        problems.concat()
    )
}

#[test]
fn every_mistake_of_the_gallery_prints_exactly_its_message() {
    // To write the texts anew after a change of words: UPDATE_MISTAKES=1, then read every one of them.
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/mistakes/journals");
    let mut files: Vec<PathBuf> = fs::read_dir(&folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "ron"))
        .collect();
    files.sort();
    assert!(files.len() > 20);
    for file in files {
        let said = said_of(&file);
        let expected = file.with_extension("txt");
        if std::env::var_os("UPDATE_MISTAKES").is_some() {
            fs::write(&expected, &said).unwrap();
        }
        assert_eq!(said, fs::read_to_string(&expected).unwrap(), "{}", file.display());
    }
}

fn journal_bytes(records: u128) -> Vec<u8> {
    (1..=records)
        .map(|n| line::write(&pull_ups(n, 18, 5)) + "\n")
        .collect::<String>()
        .into_bytes()
}

#[test]
fn a_flipped_byte_costs_at_most_its_record_and_is_always_reported() {
    let whole = journal_bytes(3);
    let mut chance = Chance::new(10);
    for at in 0..whole.len() {
        for _ in 0..4 {
            let mut bytes = whole.clone();
            let flip = u8::try_from(1 + chance.below(255)).unwrap();
            bytes[at] ^= flip;
            let journal = journal::read("journal-mill.ron", &bytes, Form::Journal);
            let what = format!("byte {at} ^ {flip:#x}");
            assert!(!journal.problems.is_empty(), "{what} was not reported");
            let hit = whole[..at].iter().filter(|byte| **byte == b'\n').count() + 1;
            let is_line_end = whole[at] == b'\n';
            for problem in &journal.problems {
                assert!(
                    problem.place.line == hit || problem.place.line == hit + 1,
                    "{what}: {problem}"
                );
            }
            let sound = (1..=3usize).filter(|n| *n != hit && !(is_line_end && *n == hit + 1));
            for n in sound {
                let wanted = pull_ups(n as u128, 18, 5);
                assert!(
                    journal.entries.iter().any(|entry| entry.record == wanted),
                    "{what} cost record {n}"
                );
            }
            // Where the record no longer counts, the weight says that an answer is missing.
            let lost = journal.entries.len() < 3;
            let is_said = journal
                .problems
                .iter()
                .any(|problem| problem.severity == Severity::Error);
            assert!(!lost || is_said, "{what} lost a record quietly");
        }
    }
}

#[test]
fn line_ends_marks_blanks_and_zeros_of_other_programs_cost_no_record() {
    let whole = journal_bytes(4);
    let text = String::from_utf8(whole).unwrap();
    for changed in [
        text.replace('\n', "\r\n"),
        format!("\u{feff}{text}"),
        text.replace('\n', "\n\n \t\n"),
        format!("<<<<<<< HEAD\n{text}=======\n{text}>>>>>>> desk\n"),
        format!("{text}{}", "\0".repeat(4096)),
    ] {
        let journal = journal::read("journal-mill.ron", changed.as_bytes(), Form::Journal);
        assert!(journal.entries.len() >= 4, "{changed:.80}");
        assert!(
            journal
                .entries
                .iter()
                .take(4)
                .enumerate()
                .all(|(n, entry)| { entry.record == pull_ups(n as u128 + 1, 18, 5) })
        );
    }
}

#[test]
fn random_bytes_are_read_without_harm() {
    let mut chance = Chance::new(12);
    let whole = journal_bytes(2);
    for _ in 0..3_000 {
        let mut bytes = whole.clone();
        for _ in 0..1 + chance.below(40) {
            let at = usize::try_from(chance.below(bytes.len() as u64)).unwrap();
            let byte = u8::try_from(chance.below(256)).unwrap();
            match chance.below(3) {
                0 => bytes[at] = byte,
                1 => bytes.insert(at, byte),
                _ => {
                    bytes.remove(at);
                }
            }
        }
        for form in [Form::Journal, Form::Pending] {
            let journal = journal::read("journal-mill.ron", &bytes, form);
            assert!(journal.problems.len() <= journal::MOST_PROBLEMS + 1);
        }
    }
}

#[test]
fn a_thousand_mistakes_are_counted_not_listed() {
    let bytes = "no record\n".repeat(1000);
    let journal = journal::read("journal-mill.ron", bytes.as_bytes(), Form::Journal);
    assert_eq!(journal.problems.len(), 101);
    assert_eq!(journal.problems[100].what, "900 more problems are not listed");
    assert_eq!(journal.unread, 1000);
}

#[test]
fn a_line_longer_than_a_mebibyte_is_refused_and_the_next_is_read() {
    let mut bytes = vec![b'x'; journal::LONGEST_LINE + 1];
    bytes.push(b'\n');
    bytes.extend(journal_bytes(1));
    let journal = journal::read("journal-mill.ron", &bytes, Form::Journal);
    assert_eq!((journal.entries.len(), journal.problems.len()), (1, 1));
}

/// A frozen logbook, read with a machine that has nothing to do with it.
fn frozen(which: &str) -> (Logbook, Vec<String>) {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/frozen")
        .join(which);
    let gym = Gym::new();
    let before = tree(&root);
    let (logbook, problems) = Logbook::open(&gym.machine, &root).unwrap();
    assert_eq!(tree(&root), before, "reading changes no byte");
    (
        logbook,
        problems
            .iter()
            .map(|problem| problem.to_string().lines().next().unwrap_or_default().to_owned())
            .collect(),
    )
}

#[test]
fn a_logbook_of_format_1_opens_for_ever() {
    let (logbook, problems) = frozen("format-1");
    assert_eq!(problems, Vec::<String>::new());
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/frozen/format-1.txt");
    let said = said_of_logbook(&logbook);
    if std::env::var_os("UPDATE_MISTAKES").is_some() {
        fs::write(&root, &said).unwrap();
    }
    assert_eq!(said, fs::read_to_string(root).unwrap());
}

#[test]
fn a_newer_versions_kinds_and_fields_are_kept_to_the_byte_and_the_rest_is_read() {
    let (logbook, problems) = frozen("newer-version");
    assert_eq!(
        problems,
        [
            "athletes/ana/journal-mill.ron:3:83: records of kind \"Swing\" are not known to this version; it is kept",
            "athletes/ana/journal-mill.ron:4:114: field \"tempo\" is not known to this version; it is kept",
            "logbook.ron:6:5: field \"bar_height\" is not known to this version; it is kept",
        ]
    );
    assert_eq!(logbook.logs[0].records.len(), 3);
    assert_eq!(logbook.highest_rev(), 5);
    // Writing on beside it keeps every byte.
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/frozen/newer-version");
    let gym = Gym::new();
    for (file, bytes) in tree(&root) {
        let path = gym.logbook().join(&file);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, bytes).unwrap();
    }
    gym.writer("mill")
        .append(&name("ana"), &[note(77, "beside a newer version")])
        .unwrap();
    for (file, bytes) in tree(&root) {
        assert!(
            fs::read(gym.logbook().join(&file)).unwrap().starts_with(&bytes),
            "{file}"
        );
    }
}

/// Every answer of a logbook, in lines.
fn said_of_logbook(logbook: &Logbook) -> String {
    let mut said = logbook.settings.to_text();
    for (log, history) in logbook.logs.iter().zip(&logbook.histories) {
        said += &format!("{} in {}, {:?}\n", log.name, log.folder, log.person());
        for record in &log.records {
            said += &format!("  {}\n", line::write(record));
        }
        for retracted in &history.retracted {
            said += &format!(
                "  retracted by {}: {}\n",
                retracted.by,
                line::write(&retracted.record)
            );
        }
        for amended in &history.amended {
            said += &format!("  amended by {}: {}\n", amended.by, line::write(&amended.was));
        }
        said += &format!("  highest revision {}\n", history.highest_rev);
    }
    said
}

#[test]
fn the_lines_that_contributors_are_shown_are_sound_and_mean_what_is_said_of_them() {
    let manual = include_str!("../../DEVELOPERS.md");
    let shown = manual.lines().filter_map(|line| line.strip_prefix("    (id: "));
    let journal: String = shown.map(|rest| format!("(id: {rest}\n")).collect();
    let read = journal::read("journal-mill.ron", journal.as_bytes(), Form::Journal);
    assert_eq!(read.problems, []);
    assert_eq!(read.entries.len(), 4);
    let (records, history) = merge::merge(read.entries, read.highest_rev);
    let [record] = records.as_slice() else {
        panic!("one set counts")
    };
    assert!(matches!(&record.what, Fact::Set(set) if set.effort.amount() == 5.0));
    assert_eq!((history.retracted.len(), history.highest_rev), (0, 3));
}
