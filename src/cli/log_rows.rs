//! `log --rows`: import's columns as a stream. A row is on disk before its `saved` is printed and before the next is read.

use std::fs::File;
use std::io::{BufRead, BufReader, Read};
use std::path::{Path, PathBuf};

use crate::clock;
use crate::logbook::exchange::{Fed, Feed, Import, Options, Row, Sheet};
use crate::logbook::writer::{LOCK_WAIT, refuse_for_writing};
use crate::logbook::{Id, Machine, Name, Writer};
use crate::problem::visible;

use super::args_record::LogArgs;
use super::output::{say, tell};
use super::{Answer, Failed, import, log, reading};

/// Most bytes read at once, so that a file without line ends doesn't fill the memory: more than the longest row. Own choice.
const LONGEST_READ: u64 = 32 << 20;

/// Where rows go.
struct Desk {
    machine: Machine,
    root: PathBuf,
    device: String,
}

/// Runs `log --rows`.
pub fn run(args: &LogArgs, rows: &Path) -> Result<Answer, Failed> {
    let machine = Machine::this()?;
    let device = reading::device(&machine)?;
    let root = reading::root(&machine, args.logbook.as_ref());
    refuse_for_writing(&machine, &root)?;
    let (catalogue, names) = import::known(&machine, &root)?;
    let file = rows.to_string_lossy().into_owned();
    let unread = |error: std::io::Error| {
        let file = visible(&file);
        Failed::Problem(format!("{file}: cannot be read: {error}"))
    };
    let mut input: Box<dyn BufRead> = if file == "-" {
        Box::new(std::io::stdin().lock())
    } else {
        Box::new(BufReader::new(File::open(rows).map_err(unread)?))
    };
    let options = Options {
        athlete: args.athlete.clone(),
        ..Options::default()
    };
    let import = Import {
        file: &file,
        options: &options,
        catalogue: &catalogue,
        device: &device,
        known: &|name: &Name| names.contains(name.as_str()),
    };
    let desk = Desk {
        machine,
        root,
        device: device.clone(),
    };
    let mut feed = Feed::new(&import);
    let mut line = Vec::new();
    loop {
        line.clear();
        let read = input.by_ref().take(LONGEST_READ).read_until(b'\n', &mut line);
        if read.map_err(unread)? == 0 {
            desk.keep(feed.end())?;
            return Ok(Answer::default());
        }
        desk.keep(feed.line(&line))?;
    }
}

impl Desk {
    /// Saves what a line completed, row by row.
    fn keep(&self, fed: Fed) -> Result<(), Failed> {
        if !fed.notes.is_empty() {
            tell(&fed.notes.to_string());
        }
        for row in fed.rows {
            let line = row.line;
            if let Some(id) = self.save(row)? {
                say(&format!("saved {line} {id}\n")).map_err(|error| {
                    Failed::Problem(format!("line {line} is saved, but saying so failed: {error}"))
                })?;
            }
        }
        match fed.wrong {
            Some(wrong) if wrong.listed.iter().any(|problem| problem.place.line == 1) => {
                Err(Failed::Problem(format!(
                    "{wrong}\n  nothing was saved; --map and --delimiter are options of import, so name the columns here as import does"
                )))
            }
            Some(wrong) => Err(Failed::Problem(format!(
                "{wrong}\n  the rows before it are saved, it and the ones after it are not"
            ))),
            None => Ok(()),
        }
    }

    /// Saves one row under a lock of its own; gives the id of its first record, or none if nothing of it can be saved.
    fn save(&self, row: Row) -> Result<Option<Id>, Failed> {
        let now = clock::now().to_utc();
        let (mut writer, notes) =
            Writer::lock(&self.machine, &self.root, self.device.clone(), now, LOCK_WAIT)?;
        reading::report(&notes);
        let has_id = row.has_id;
        let (name, id) = (row.athlete.clone(), row.records.first().map(|record| record.id));
        let Some(id) = id else {
            // Only who it is, and that is known; a row with an id that came before says nothing either.
            let found = writer.read_athlete(&name)?.filter(|_| !has_id);
            return Ok(found.and_then(|(book, _)| book.logs.first()?.naming()));
        };
        let sheet = Sheet {
            rows: vec![row],
            ..Sheet::default()
        };
        if writer.ensure_settings(sheet.unit())? {
            log::tell_new_logbook(&self.root);
        }
        let records = sheet.rows.into_iter().next().map(|row| row.records);
        let records = records.unwrap_or_default();
        let committed = if has_id {
            writer.append_given(&name, &records)?
        } else {
            writer.append(&name, &records)?
        };
        reading::report(&committed.notes);
        committed.made.iter().for_each(log::tell_new_athlete);
        import::tell_conflicts(&committed);
        let differs = committed
            .conflicting
            .iter()
            .any(|conflict| conflict.record.id == id);
        Ok((!differs).then_some(id))
    }
}
