//! The Workshop behind the window: the logbook's ladders as text, checked as they are typed, written whole.
//!
//! Invariant: nothing typed is lost. A text is either on disk, or among the typed ones (kept in the state folder), or, where a
//! person threw it away, there to be taken back; what a save writes over lies among the earlier versions.

mod checked;
mod saving;
mod template;
mod typed;
mod view;

use std::collections::BTreeMap;
use std::path::Path;

use crate::catalogue::Catalogue;
use crate::logbook::{Machine, WholeFile};
use crate::ui::book::{Deed, Done};
use crate::ui::workshop::WorkshopDeed;

use super::Shelf;
use super::desk::NotDone;
use super::opened::Opened;
use super::write::NOTHING_OPEN;
use checked::{Checked, LADDERS, MOVEMENTS, SHIPPED};
use typed::{AllTyped, Typed};
pub(super) use view::view;

/// Longest text that is typed into here, bytes; the longest shipped ladder has 9 kB. Our choice.
const LONGEST_HERE: usize = 256 << 10;

/// What the Workshop remembers of the open logbook.
#[derive(Default)]
pub(super) struct Workshop {
    /// The open file's key, if one was opened.
    open: Option<String>,
    typed: AllTyped,
    /// The last text of each file that made a ladder.
    good: BTreeMap<String, String>,
    /// Demands are computed for the open athlete, not for a body of which nothing is known.
    for_athlete: bool,
    asks: Option<Question>,
    /// What was deleted or thrown away last.
    gone: Option<Gone>,
}

/// What has to be answered.
enum Question {
    Delete,
    /// The file changed on disk; what it holds now.
    Settle(Option<Vec<u8>>),
}

/// A text that can come back.
struct Gone {
    file: String,
    text: String,
    /// It was on disk, not only typed.
    was_saved: bool,
    /// The file on disk when typing began.
    seen: Option<String>,
}

/// What came of a deed of the Workshop.
enum Came {
    /// Something is on disk now.
    Saved(String),
    /// Nothing was written; words, if any.
    Said(Option<String>),
}

impl Workshop {
    /// With what is typed of the logbook at `root`.
    pub fn of(machine: &Machine, root: &Path, is_throw_away: bool, may_write: bool) -> Self {
        let typed = if is_throw_away {
            AllTyped::default()
        } else {
            AllTyped::of(machine, root, may_write)
        };
        Self {
            typed,
            ..Self::default()
        }
    }

    /// Keeps what was typed a moment ago.
    pub fn keep(&mut self) {
        self.typed.keep_in_time();
    }

    /// The open file's key; the first of the list until one is chosen.
    fn open(&self, opened: &Opened) -> Option<String> {
        let files = view::files(opened, self);
        let is_there = |file: &&String| files.iter().any(|line| line.file == **file);
        self.open
            .as_ref()
            .filter(is_there)
            .cloned()
            .or_else(|| files.into_iter().next().map(|line| line.file))
    }

    /// The text of a file as it is shown, without byte order mark; none where it can't be read.
    fn text(&self, opened: &Opened, file: &str) -> Option<String> {
        match self.typed.get(file) {
            Some(typed) => Some(typed.text.clone()),
            None => saved_text(opened, file).map(|text| bare(&text).to_owned()),
        }
    }
}

/// A text without byte order mark.
fn bare(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// The text on disk, or as it is shipped.
fn saved_text(opened: &Opened, file: &str) -> Option<String> {
    if let Some(name) = file.strip_prefix(SHIPPED) {
        let mut shipped = Catalogue::shipped_files();
        return shipped
            .find(|(other, _)| other == name)
            .map(|(_, text)| text.to_owned());
    }
    let own = opened.own_files().into_iter();
    own.filter(|own| own.path == file).map(|own| own.text).next()
}

/// Why a file is shown and not written; none where it may be written.
fn objection(file: &str, text: Option<&str>) -> Option<&'static str> {
    if file.starts_with(SHIPPED) {
        return Some("Shipped: it can be read and copied.");
    }
    if WholeFile::named(file).is_none() {
        return Some(
            "Its name has other letters than a-z, 0-9 and -, so it is only shown here. Rename the file to write it.",
        );
    }
    match text {
        None => Some("It can't be read, so it is only named here."),
        Some(text) if text.len() > LONGEST_HERE => Some("It is too long to be typed into here."),
        Some(_) => None,
    }
}

impl Shelf {
    /// Does a deed of the Workshop.
    pub(super) fn workshop_deed(&mut self, deed: WorkshopDeed) -> Done {
        match self.craft(&deed) {
            Ok(Came::Said(words)) => {
                self.revision += 1;
                Done::Ok(words)
            }
            Ok(Came::Saved(words)) => {
                self.undo_means_the_open_athlete();
                self.saved_now(Some(words), &Deed::Workshop(deed))
            }
            Err(NotDone::Busy) => self.begin_wait(Deed::Workshop(deed)),
            Err(NotDone::Because(why)) => {
                self.revision += 1;
                Done::Failed(why)
            }
        }
    }

    fn craft(&mut self, deed: &WorkshopDeed) -> Result<Came, NotDone> {
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let file = self.workshop.open(opened).ok_or("There is no file.")?;
        if !matches!(
            deed,
            WorkshopDeed::AskDelete | WorkshopDeed::KeepMine | WorkshopDeed::TakeTheirs
        ) {
            // Any other deed leaves the question; what is asked about stays as it is.
            let question = self.workshop.asks.take();
            if matches!((deed, &question), (WorkshopDeed::Delete, Some(Question::Delete))) {
                return self.delete_file(&file);
            }
        }
        match deed {
            WorkshopDeed::Open(file) => {
                self.workshop.open = Some(file.clone());
                Ok(Came::Said(None))
            }
            WorkshopDeed::OpenLadder(id) => {
                let own = opened.catalogue.origin(id).map(str::to_owned);
                self.workshop.open = Some(own.unwrap_or_else(|| format!("{SHIPPED}{id}.ron")));
                Ok(Came::Said(None))
            }
            WorkshopDeed::Type { file, text } => self.type_in(file, text),
            WorkshopDeed::Mend(nth) => self.mend(&file, *nth),
            WorkshopDeed::TurnBody => {
                if opened.open_log().is_none() {
                    return Ok(said("Choose an athlete to see their demands."));
                }
                self.workshop.for_athlete = !self.workshop.for_athlete;
                Ok(Came::Said(None))
            }
            WorkshopDeed::New(title) => self.begin_ladder(title),
            WorkshopDeed::Copy => self.copy(&file),
            WorkshopDeed::Save => self.save(&file),
            WorkshopDeed::AskDelete => self.ask_delete(&file),
            WorkshopDeed::ThrowAway => Ok(self.throw_away(&file)),
            WorkshopDeed::TakeBack => self.take_back_gone(),
            WorkshopDeed::KeepMine | WorkshopDeed::TakeTheirs => {
                let Some(Question::Settle(theirs)) = self.workshop.asks.take() else {
                    return Ok(Came::Said(None));
                };
                if *deed == WorkshopDeed::KeepMine {
                    self.write_typed(&file, theirs.as_deref())
                } else {
                    self.take_theirs(&file, theirs)
                }
            }
            WorkshopDeed::Delete | WorkshopDeed::LeaveIt => Ok(Came::Said(None)),
        }
    }

    fn may_type(&self, file: &str) -> Result<(), String> {
        if let Some(words) = &self.desk.read_only {
            return Err(words.clone());
        }
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let text = self.workshop.text(opened, file);
        objection(file, text.as_deref()).map_or(Ok(()), |words| Err(words.to_owned()))
    }

    fn type_in(&mut self, file: &str, text: &str) -> Result<Came, NotDone> {
        self.may_type(file)?;
        if text.len() > LONGEST_HERE {
            return Err("A ladder needs a few kB; this is too long to be typed into here.".into());
        }
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let saved = saved_text(opened, file);
        let before = self.workshop.typed.take(file);
        let seen = before.map_or_else(|| saved.clone(), |typed| typed.seen);
        // Typed back to what is saved: nothing is left to save.
        if seen != saved || saved.as_deref().map(bare) != Some(text) {
            let text = text.to_owned();
            self.workshop.typed.put(file, Typed { seen, text });
        }
        if file != MOVEMENTS && opened.catalogue.read_ladder(file, text).0.is_some() {
            self.workshop.good.insert(file.to_owned(), text.to_owned());
        }
        Ok(Came::Said(self.workshop.typed.say_refused()))
    }

    fn mend(&mut self, file: &str, nth: usize) -> Result<Came, NotDone> {
        self.may_type(file)?;
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let text = self.workshop.text(opened, file).unwrap_or_default();
        let checked = Checked::of(opened, file, &text);
        let Some(problem) = checked.problems.get(nth) else {
            return Ok(said("There is no mistake to mend."));
        };
        let Some(mended) = checked.mended(opened, file, &text, nth) else {
            return Ok(said(&format!(
                "No key can mend this; you decide: {}.",
                problem.mend
            )));
        };
        let line = problem.place.line;
        self.type_in(file, &mended)?;
        Ok(said(&format!(
            "Line {line} is mended. Ctrl+Z in the text takes it back."
        )))
    }

    fn begin_ladder(&mut self, title: &str) -> Result<Came, NotDone> {
        if let Some(words) = &self.desk.read_only {
            return Err(words.as_str().into());
        }
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let title = title.trim();
        if title.is_empty() {
            return Err("Give the ladder a title.".into());
        }
        let id = template::id_of(title).unwrap_or_else(|| "own-ladder".to_owned());
        let key = |id: &str| format!("{LADDERS}{id}.ron");
        let is_taken = |id: &str| {
            WholeFile::named(&key(id)).is_none()
                || opened.catalogue.ladder_by_name(id).is_some()
                || self.workshop.text(opened, &key(id)).is_some()
        };
        let id = template::free_id(&id, is_taken);
        let text = template::ladder(&id, title);
        self.begin_typing(&key(&id), text);
        Ok(said(
            "Here is a ladder to change. It is nobody's until you save it.",
        ))
    }

    fn begin_typing(&mut self, file: &str, text: String) {
        self.workshop.good.insert(file.to_owned(), text.clone());
        self.workshop.typed.put(file, Typed { seen: None, text });
        self.workshop.open = Some(file.to_owned());
    }

    fn copy(&mut self, file: &str) -> Result<Came, NotDone> {
        if let Some(words) = &self.desk.read_only {
            return Err(words.as_str().into());
        }
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let Some(name) = file.strip_prefix(SHIPPED) else {
            return Ok(said("This is your own already; type into it."));
        };
        let own = if name == MOVEMENTS {
            MOVEMENTS.to_owned()
        } else {
            format!("{LADDERS}{name}")
        };
        if self.workshop.text(opened, &own).is_some() {
            self.workshop.open = Some(own);
            return Ok(said("You have one of your own already; here it is."));
        }
        let shipped = saved_text(opened, file).unwrap_or_default();
        let head = "// Own version; it replaces the shipped one of the same id in this logbook.\n";
        self.begin_typing(&own, format!("{head}{shipped}"));
        Ok(said(
            "A copy of your own, of the same id: once saved it replaces the shipped one in this logbook.",
        ))
    }
}

fn said(words: &str) -> Came {
    Came::Said(Some(words.to_owned()))
}
