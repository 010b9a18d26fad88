//! Finding whose record an id is without reading everyone: the id's text is looked for in the bytes of all journals, and only
//! where it stands is anything parsed.

use memchr::memmem;

use crate::problem::Problem;

use super::add::Target;
use super::folder::Logbook;
use super::listing::{self, Scope};
use super::record::Id;
use super::trouble::Trouble;
use super::writer::Writer;

/// A record, and the logbook with only the athlete whose it is.
#[derive(Debug)]
pub struct Holder {
    /// The record.
    pub target: Target,
    /// The logbook with that athlete alone in it.
    pub book: Logbook,
    /// What is wrong in what was read.
    pub problems: Vec<Problem>,
}

impl Writer {
    /// The record `id` and whose it is; none if no athlete has it.
    ///
    /// # Errors
    /// As [`Logbook::open`].
    pub fn holder(&self, id: Id) -> Result<Option<Holder>, Trouble> {
        let finder = memmem::Finder::new(id.to_string().as_bytes()).into_owned();
        let has_it = |bytes: &[u8]| finder.find(bytes).is_some();
        for folder in listing::folders_where(self.machine.disk(), &self.root, has_it)? {
            let snapshot = listing::read(&self.machine, &self.root, Scope::Athlete(&folder), true)?;
            let (book, problems) = Logbook::build(&self.root, snapshot, Some(&folder));
            if let Some(holder) = holder_in(book, problems, id) {
                return Ok(Some(holder));
            }
        }
        // A hand may have written the id in small letters or with escapes, or another machine's batch is half here.
        let (book, problems) = self.read()?;
        Ok(holder_in(book, problems, id))
    }
}

fn holder_in(book: Logbook, problems: Vec<Problem>, id: Id) -> Option<Holder> {
    let target = book.target(id)?;
    Some(Holder {
        target,
        book,
        problems,
    })
}
