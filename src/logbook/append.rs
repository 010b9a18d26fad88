//! Appending to this device's own journal: one write, one flush, and only then it is saved.

use std::io;
use std::path::{Path, PathBuf};

use super::disk::{self, Disk, Handle, Kind};
use super::journal::{self, Tail};
use super::line;
use super::listing::{ATHLETES, TORN};
use super::record::Record;
use super::trouble::Trouble;
use super::writer::Writer;

impl Writer {
    /// Appends `records` to the journal of the athlete in `folder`.
    pub(super) fn append_records(&mut self, folder: &str, records: &[Record]) -> Result<(), Trouble> {
        if records.is_empty() {
            return Ok(());
        }
        let mut text = String::new();
        for record in records {
            text.push_str(&line::write(record));
            text.push('\n');
        }
        self.append_text(folder, text)
    }

    /// Appends whole lines to the journal of the athlete in `folder`.
    pub(super) fn append_text(&mut self, folder: &str, text: String) -> Result<(), Trouble> {
        let athletes = self.root.join(ATHLETES);
        let home = athletes.join(folder);
        let path = self.journal(&home, folder);
        if self.is_read_only {
            return Err(Trouble::ReadOnly { path });
        }
        self.own_folder(&athletes)?;
        self.own_folder(&home)?;
        let disk = self.machine.disk();
        let (is_empty, mut opened) = open(disk, &path).map_err(Trouble::not_saved(&path))?;
        if is_empty {
            // An earlier try may have made any of these names and failed to flush them.
            for folder in [&home, &athletes, &self.root] {
                disk.flush_folder(folder).map_err(Trouble::not_saved(&path))?;
            }
        }
        let (length, text) = self.repair(&path, &mut *opened, text)?;
        self.repair_others(&home, &path)?;
        if let Err(error) = opened.write_all(text.as_bytes()) {
            // What was written of it is taken back; where that fails too, it is a torn tail for the next writer.
            let taken_back = opened.truncate(length).and_then(|()| opened.flush());
            if taken_back.is_err() {
                self.distrust(folder);
            }
            return Err(Trouble::not_saved(&path)(error));
        }
        if let Err(error) = opened.flush() {
            // The kernel may have dropped the pages and call the next flush good: never believe this file again.
            let _ = opened.truncate(length);
            self.distrust(folder);
            return Err(Trouble::not_saved(&path)(error));
        }
        Ok(())
    }

    /// The journal to write to: the device's own, or after a failed flush a fresh one.
    fn journal(&mut self, home: &Path, folder: &str) -> PathBuf {
        let disk = self.machine.disk();
        let named = |number: u32| home.join(format!("journal-{}.{number}.ron", self.device));
        let Some(number) = self.fresh.get_mut(folder) else {
            return home.join(format!("journal-{}.ron", self.device));
        };
        if *number == 0 {
            let is_free = |number: &u32| disk.stat(&named(*number)).is_err();
            *number = (2..).find(is_free).unwrap_or(2);
        }
        named(*number)
    }

    /// After a failed flush: the next write goes to a fresh journal; after a second one, nothing is written any more.
    fn distrust(&mut self, folder: &str) {
        if self.fresh.insert(folder.to_owned(), 0).is_some() {
            self.is_read_only = true;
        }
    }

    /// Puts the own journal's end right: its flushed length, and the text with what must come before it.
    fn repair(&self, path: &Path, opened: &mut dyn Handle, text: String) -> Result<(u64, String), Trouble> {
        let bytes = self.machine.disk().read(path).map_err(Trouble::not_saved(path))?;
        match journal::tail(&bytes) {
            Tail::Whole => Ok((bytes.len() as u64, text)),
            Tail::NeedsLineEnd => Ok((bytes.len() as u64, format!("\n{text}"))),
            Tail::Torn(offset) => {
                let torn = bytes.get(offset..).unwrap_or_default();
                self.set_aside(path, torn, offset)
                    .map_err(Trouble::not_saved(path))?;
                opened
                    .truncate(offset as u64)
                    .and_then(|()| opened.flush())
                    .map_err(Trouble::not_saved(path))?;
                Ok((offset as u64, text))
            }
        }
    }

    /// Puts the ends of this device's other journals here right: each was a fresh one once.
    fn repair_others(&self, home: &Path, current: &Path) -> Result<(), Trouble> {
        let disk = self.machine.disk();
        let others = (2..).map(|number: u32| home.join(format!("journal-{}.{number}.ron", self.device)));
        for path in others.take_while(|path| disk.stat(path).is_ok()) {
            if path != current {
                let mut opened = disk.open_append(&path).map_err(Trouble::not_saved(&path))?;
                self.repair(&path, &mut *opened, String::new())?;
            }
        }
        Ok(())
    }

    /// Copies torn bytes beside the journal before they are cut off it.
    fn set_aside(&self, path: &Path, torn: &[u8], offset: usize) -> io::Result<()> {
        let disk = self.machine.disk();
        let stem = path.file_stem().unwrap_or_default().to_string_lossy();
        let time = self.now.format("%Y%m%dT%H%M%SZ");
        // A copy that is there may be one whose flush failed: it is never trusted, another one is made.
        let aside = |copy: u32| match copy {
            1 => path.with_file_name(format!("{stem}{TORN}{time}-{offset}.ron")),
            _ => path.with_file_name(format!("{stem}{TORN}{time}-{offset}-{copy}.ron")),
        };
        let free = (1..).map(aside).find(|path| disk.stat(path).is_err());
        let mut file = disk.create_new(&free.unwrap_or_else(|| aside(1)))?;
        file.write_all(torn)?;
        file.flush()?;
        disk.flush_folder(disk::parent_of(path))
    }
}

/// Opens the journal and says whether nothing is in it yet.
fn open(disk: &dyn Disk, path: &Path) -> io::Result<(bool, Box<dyn Handle>)> {
    let is_empty = match disk.stat(path) {
        Ok(stat) if stat.kind == Kind::File => stat.length == 0,
        Ok(_) => {
            return Err(io::Error::other(
                "a link, pipe or folder stands where the journal belongs",
            ));
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound => true,
        Err(error) => return Err(error),
    };
    Ok((is_empty, disk.open_append(path)?))
}
