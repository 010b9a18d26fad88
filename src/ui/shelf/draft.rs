//! A class's results while they are typed: kept as a file of this machine until they are saved or thrown away, so that neither a
//! closed window nor a crash costs a coach the evening's typing. One file a logbook and day; what was typed of another day stays
//! there and is told.

use chrono::NaiveDate;

use crate::logbook::Machine;
use crate::report::numbers::{counted, day};
use crate::ui::book::Done;
use crate::ui::views::TypedClass;

use super::Shelf;
use super::draft_file::{DraftFile, drafts_of, only_in_the_window};
use super::opened::Opened;

/// What is typed and not saved.
#[derive(Default)]
pub(super) struct Drafts {
    /// Of the day that is open.
    pub today: TypedClass,
    /// The latest other day with something typed.
    other: Option<NaiveDate>,
    /// Where today's lie; none where nothing outlives the window, as with a throw-away demo.
    file: Option<DraftFile>,
}

const ENDING: &str = ".ron";

impl Drafts {
    /// What lies in this machine's state folder of the open logbook.
    pub fn of(machine: &Machine, opened: &Opened, is_throw_away: bool, may_write: bool) -> Self {
        if is_throw_away {
            return Self::default();
        }
        let (folder, mark) = drafts_of(machine, &opened.book.root);
        let path = folder.join(format!("{mark}-{}{ENDING}", opened.on));
        let (file, today) = DraftFile::open(machine, path, may_write);
        let names = machine.disk().list(&folder).unwrap_or_default();
        let day_of = |name: &str| -> Option<NaiveDate> {
            let rest = name.strip_prefix(&mark)?.strip_prefix('-')?;
            rest.strip_suffix(ENDING)?.parse().ok()
        };
        let days = names.iter().filter_map(|name| day_of(&name.to_string_lossy()));
        Self {
            today,
            other: days.filter(|day| *day != opened.on).max(),
            file: Some(file),
        }
    }

    /// What to say of it outside its table.
    pub fn words(&self) -> Option<String> {
        if !self.today.cells.is_empty() {
            let sets = counted(self.today.sets(), "set");
            let athletes = counted(self.today.athletes().len(), "athlete");
            return Some(format!(
                "{sets} of {athletes} typed and not saved yet. T on the Roster goes on."
            ));
        }
        let other = self.other?;
        Some(format!(
            "Results of {} were typed and not saved. Start Rungwright with --on {other}; there T goes on.",
            day(other)
        ))
    }

    /// Keeps what is typed now.
    fn keep(&mut self, typed: TypedClass) -> std::io::Result<()> {
        self.today = typed;
        let typed = Some(&self.today).filter(|typed| !typed.cells.is_empty());
        self.file.as_ref().map_or(Ok(()), |file| file.write(typed))
    }
}

impl Shelf {
    /// Keeps what is typed of a class. It is said where it can't be kept.
    pub(super) fn keep_typed(&mut self, typed: TypedClass, leaves: bool) -> Done {
        if leaves {
            self.class.clear();
            self.revision += 1;
        }
        match self.drafts.keep(typed) {
            Ok(()) => Done::Ok(None),
            Err(error) => Done::Failed(only_in_the_window(&error)),
        }
    }

    /// The class is saved: nothing typed is left.
    pub(super) fn typed_is_saved(&mut self) {
        self.class.clear();
        // A file that stays is offered again; its rows then say that they are logged.
        let _ = self.drafts.keep(TypedClass::default());
    }
}
