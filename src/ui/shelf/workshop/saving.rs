//! What the Workshop writes, removes and brings back: whole files, under the lock, never over what nobody here has seen.

use crate::logbook::whole_file::Replaced;
use crate::logbook::{Trouble, WholeFile, Writer};
use crate::problem::quoted;
use crate::report::numbers::counted;
use crate::ui::shelf::Shelf;
use crate::ui::shelf::desk::NotDone;
use crate::ui::shelf::write::NOTHING_OPEN;

use super::checked::Checked;
use super::typed::Typed;
use super::{Came, Gone, Question, said, saved_text};

impl Shelf {
    pub(super) fn save(&mut self, file: &str) -> Result<Came, NotDone> {
        self.may_type(file)?;
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let Some(typed) = self.workshop.typed.get(file) else {
            let text = self.workshop.text(opened, file).unwrap_or_default();
            let checked = Checked::of(opened, file, &text);
            return Ok(said(&format!("Nothing new to save. {}", verdict(&checked))));
        };
        let seen = typed.seen.clone();
        self.write_typed(file, seen.as_deref().map(str::as_bytes))
    }

    /// Writes what is typed, unless the file is no longer `seen`.
    pub(super) fn write_typed(&mut self, file: &str, seen: Option<&[u8]>) -> Result<Came, NotDone> {
        let whole = whole(file)?;
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let text = self.workshop.text(opened, file).unwrap_or_default();
        let checked = Checked::of(opened, file, &text);
        match self.on_disk(|writer| writer.write_seen(&whole, seen, &text))? {
            Replaced::Changed(theirs) => {
                self.workshop.asks = Some(Question::Settle(theirs));
                Ok(Came::Said(None))
            }
            Replaced::Done => {
                self.workshop.typed.take(file);
                // What fails here is tried again while the window polls.
                let _ = self.workshop.typed.keep();
                self.own_changed(file, Some(text));
                Ok(Came::Saved(format!("Saved. {}", verdict(&checked))))
            }
        }
    }

    pub(super) fn take_theirs(&mut self, file: &str, theirs: Option<Vec<u8>>) -> Result<Came, NotDone> {
        let whole = whole(file)?;
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let mine = self.workshop.text(opened, file).unwrap_or_default();
        self.on_disk(|writer| writer.keep_beside(&whole, &mine))?;
        let typed = self.workshop.typed.take(file);
        self.workshop.gone = Some(Gone {
            file: file.to_owned(),
            text: mine,
            was_saved: false,
            seen: typed.and_then(|typed| typed.seen),
        });
        if let Ok(text) = theirs.map(String::from_utf8).transpose() {
            self.own_changed(file, text);
        }
        self.look_outside(true);
        Ok(said(
            "Theirs holds. What you typed lies among the earlier versions; Ctrl+Z brings it back.",
        ))
    }

    pub(super) fn ask_delete(&mut self, file: &str) -> Result<Came, NotDone> {
        self.may_type(file)?;
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        if saved_text(opened, file).is_none() {
            // Never saved: it is only thrown away, and comes back with one key.
            return Ok(self.throw_away(file));
        }
        self.workshop.asks = Some(Question::Delete);
        Ok(Came::Said(None))
    }

    pub(super) fn delete_file(&mut self, file: &str) -> Result<Came, NotDone> {
        self.may_type(file)?;
        let whole = whole(file)?;
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let saved = saved_text(opened, file).unwrap_or_default();
        let typed = self.workshop.typed.get(file).map(|typed| typed.text.clone());
        let removed = self.on_disk(|writer| {
            if let Some(typed) = &typed {
                writer.keep_beside(&whole, typed)?;
            }
            writer.remove_seen(&whole, saved.as_bytes())
        })?;
        if let Replaced::Changed(_) = removed {
            self.look_outside(true);
            return Err("Somebody else changed it just now, so it was not deleted. Look at it again.".into());
        }
        self.workshop.typed.take(file);
        // As after a save: tried again while the window polls.
        let _ = self.workshop.typed.keep();
        self.workshop.gone = Some(Gone {
            file: file.to_owned(),
            text: typed.unwrap_or(saved),
            was_saved: true,
            seen: None,
        });
        self.own_changed(file, None);
        Ok(Came::Saved(
            "Deleted. Ctrl+Z brings it back; it also lies among the earlier versions.".to_owned(),
        ))
    }

    pub(super) fn throw_away(&mut self, file: &str) -> Came {
        let Some(typed) = self.workshop.typed.take(file) else {
            return said("Nothing is typed that isn't saved.");
        };
        self.workshop.good.remove(file);
        self.workshop.gone = Some(Gone {
            file: file.to_owned(),
            text: typed.text,
            was_saved: false,
            seen: typed.seen,
        });
        said("Back to what is saved. Ctrl+Z brings back what you typed.")
    }

    pub(super) fn take_back_gone(&mut self) -> Result<Came, NotDone> {
        let Some(gone) = self.workshop.gone.take() else {
            return Ok(said(
                "Nothing was deleted or thrown away here. In the text Ctrl+Z takes back typing.",
            ));
        };
        let Gone {
            file,
            text,
            was_saved,
            seen,
        } = gone;
        let typed = Typed { seen, text };
        self.workshop.open = Some(file.clone());
        self.workshop.typed.put(&file, typed);
        if !was_saved {
            return Ok(said("What you typed is back, not saved."));
        }
        match self.write_typed(&file, None)? {
            Came::Saved(_) => Ok(Came::Saved("It is back.".to_owned())),
            came => Ok(came),
        }
    }

    /// Writes under the lock.
    fn on_disk<T>(&mut self, write: impl FnOnce(&mut Writer) -> Result<T, Trouble>) -> Result<T, NotDone> {
        let root = self.opened.as_ref().ok_or(NOTHING_OPEN)?.book.root.clone();
        self.writes += 1;
        self.desk.write(&self.machine, &root, &self.device, write)
    }

    fn own_changed(&mut self, file: &str, text: Option<String>) {
        if let Some(opened) = &mut self.opened {
            opened.own_changed(file, text);
        }
    }
}

fn whole(file: &str) -> Result<WholeFile, String> {
    WholeFile::named(file).ok_or_else(|| format!("{} can't be written here.", quoted(file)))
}

/// What the check says of a text, in a sentence.
fn verdict(checked: &Checked) -> String {
    let errors = checked.errors();
    let warnings = checked.problems.len() - errors;
    match (errors, warnings) {
        (0, 0) => "No mistakes: it is in use now.".to_owned(),
        (0, warnings) => format!("It is in use now, with {}.", counted(warnings, "warning")),
        (errors, _) => format!(
            "It has {}; until it has none, the version before stays in use.",
            counted(errors, "mistake")
        ),
    }
}
