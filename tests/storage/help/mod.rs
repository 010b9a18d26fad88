//! What the storage tests share: a machine of one's own, and records in a few words.
pub mod chance;
pub mod model;
pub mod steps;

use std::path::{Path, PathBuf};

use chrono::{DateTime, Utc};
use rungwright::logbook::record::{Fact, Id, Load, Record, Set};
use rungwright::logbook::{Machine, Name, Places, Trouble, Writer, Written, disk::RealDisk};
use rungwright::problem::Problem;
use rungwright::units::{Effort, Given, Outcome, Reps, Typed, Unit};

/// A machine in a folder that goes away with the test.
pub struct Gym {
    pub folder: tempfile::TempDir,
    pub machine: Machine,
}

impl Gym {
    pub fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let machine = Machine::with(RealDisk, Places::inside(&folder.path().join("home")));
        Self { folder, machine }
    }

    pub fn logbook(&self) -> PathBuf {
        self.folder.path().join("logbook")
    }

    pub fn journal(&self, folder: &str, device: &str) -> PathBuf {
        self.logbook()
            .join("athletes")
            .join(folder)
            .join(format!("journal-{device}.ron"))
    }

    pub fn writer(&self, device: &str) -> Writer {
        self.try_writer(device).unwrap().0
    }

    pub fn try_writer(&self, device: &str) -> Result<(Writer, Vec<Problem>), Trouble> {
        let wait = std::time::Duration::from_secs(10);
        Writer::lock(&self.machine, &self.logbook(), device.to_owned(), noon(), wait)
    }
}

pub fn noon() -> DateTime<Utc> {
    "2026-03-18T12:00:00Z".parse().unwrap()
}

pub fn name(text: &str) -> Name {
    Name::parse(text).unwrap()
}

pub fn id(number: u128) -> Id {
    Id::from_bytes(number.to_be_bytes())
}

/// A pull-up set of `reps` on the belt, on a day of March 2026.
pub fn pull_ups(number: u128, day: u32, reps: u16) -> Record {
    let set = Set {
        movement: "pull-up".into(),
        side: None,
        load: Some(Load::Added(Typed::new(20.0, Unit::Kg).unwrap())),
        effort: Effort::Reps(Reps::try_from(reps).unwrap()),
        left: Some(Given::rir(1.0).unwrap()),
        outcome: Outcome::Done,
        bodyweight: None,
        ladder: None,
        rung: None,
        note: None,
    };
    fact(number, 0, "mill", day, Fact::Set(set))
}

pub fn fact(number: u128, rev: u32, dev: &str, day: u32, what: Fact) -> Record {
    Record {
        id: id(number),
        rev,
        dev: dev.to_owned(),
        at: Written::parse(&format!("2026-03-{day:02}")).unwrap(),
        nth: 0,
        what,
    }
}

pub fn note(number: u128, text: &str) -> Record {
    fact(
        number,
        0,
        "mill",
        18,
        Fact::Note {
            text: text.to_owned(),
        },
    )
}

/// Every file below `root` with its bytes, by path.
pub fn tree(root: &Path) -> std::collections::BTreeMap<String, Vec<u8>> {
    fn walk(root: &Path, at: &Path, files: &mut std::collections::BTreeMap<String, Vec<u8>>) {
        for entry in std::fs::read_dir(at).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                walk(root, &path, files);
            } else {
                let label = path.strip_prefix(root).unwrap().to_string_lossy().into_owned();
                files.insert(label, std::fs::read(&path).unwrap());
            }
        }
    }
    let mut files = std::collections::BTreeMap::new();
    walk(root, root, &mut files);
    files
}
