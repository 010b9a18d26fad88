//! A user's home of one's own, and the binary run in it.

use std::path::PathBuf;
use std::process::{Command, Stdio};

/// A home folder that nobody else has.
pub struct Home {
    folder: tempfile::TempDir,
    device: String,
}

/// What a run printed, and its exit code.
#[derive(Debug)]
pub struct Ran {
    pub out: String,
    pub err: String,
    pub code: i32,
}

impl Home {
    pub fn new() -> Self {
        Self {
            folder: tempfile::tempdir().unwrap(),
            device: "test".to_owned(),
        }
    }

    /// The same home, another device's name.
    pub fn on_device(mut self, device: &str) -> Self {
        self.device = device.to_owned();
        self
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// The logbook in use: the default one.
    pub fn logbook(&self) -> PathBuf {
        self.path("data/rungwright/logbook")
    }

    pub fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_rungwright"));
        command
            .args(args)
            .current_dir(self.folder.path())
            .env_clear()
            .env("HOME", self.folder.path())
            .env("XDG_DATA_HOME", self.path("data"))
            .env("XDG_STATE_HOME", self.path("state"))
            .env("XDG_CACHE_HOME", self.path("cache"))
            .env("XDG_CONFIG_HOME", self.path("config"))
            .env("RUNGWRIGHT_DEVICE", &self.device)
            .env("TZ", "Europe/Berlin")
            .stdin(Stdio::null());
        command
    }

    pub fn run(&self, args: &[&str]) -> Ran {
        let output = self.command(args).output().unwrap();
        Ran {
            out: String::from_utf8(output.stdout).unwrap(),
            err: String::from_utf8(output.stderr).unwrap(),
            code: output.status.code().unwrap(),
        }
    }

    /// Runs what must work, and gives its answer.
    pub fn answer(&self, args: &[&str]) -> String {
        let ran = self.run(args);
        assert_eq!(ran.code, 0, "{args:?}: {}", ran.err);
        ran.out
    }

    /// Logs for Ana and gives the id that is said to be saved.
    pub fn log(&self, args: &[&str]) -> String {
        let all = [&["log", "--athlete", "Ana"], args].concat();
        saved(&self.answer(&all))
    }

    /// What the records in the logbook's journals say, in the order of their lines, device by device.
    pub fn facts(&self) -> Vec<String> {
        self.lines()
            .iter()
            .map(|line| {
                let what = line.split_once("what: ").unwrap().1;
                what.rsplit_once(") //").unwrap().0.to_owned()
            })
            .collect()
    }

    /// The folder of the athlete whose name begins so.
    pub fn folder_of(&self, name: &str) -> PathBuf {
        let folders = std::fs::read_dir(self.logbook().join("athletes")).unwrap();
        let mut folders = folders.map(|entry| entry.unwrap().path());
        let found = folders.find(|path| path.file_name().unwrap().to_string_lossy().starts_with(name));
        found.unwrap()
    }

    /// The lines of all journals.
    pub fn lines(&self) -> Vec<String> {
        let mut files = Vec::new();
        for athlete in std::fs::read_dir(self.logbook().join("athletes")).unwrap() {
            for file in std::fs::read_dir(athlete.unwrap().path()).unwrap() {
                files.push(file.unwrap().path());
            }
        }
        files.sort();
        let texts = files.iter().map(|file| std::fs::read_to_string(file).unwrap());
        texts
            .flat_map(|text| text.lines().map(str::to_owned).collect::<Vec<_>>())
            .collect()
    }

    /// Writes a file into the home and gives its path.
    pub fn file(&self, name: &str, text: &str) -> String {
        let path = self.path(name);
        std::fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    }

    /// Imports a spreadsheet.
    pub fn import(&self, csv: &str) {
        let file = self.file("import.csv", csv);
        self.answer(&["import", &file]);
    }
}

/// The id in the one line `saved ID`.
pub fn saved(out: &str) -> String {
    let id = out
        .strip_prefix("saved ")
        .and_then(|rest| rest.strip_suffix('\n'));
    let id = id.unwrap_or_else(|| panic!("one line, saved ID: {out:?}"));
    assert_eq!(id.len(), 26, "{out:?}");
    id.to_owned()
}
