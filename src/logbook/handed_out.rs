//! Files that are handed out, such as a sheet to print: outside of the logbook, readable by their owner only.

use std::io;
use std::path::Path;

use super::disk::{self, Kind};
use super::machine::Machine;
use super::trouble::Trouble;

/// What every PDF begins with (ISO 32000-1, 7.5.2).
const PDF: &[u8] = b"%PDF-";
/// What every PNG begins with (ISO/IEC 15948, 5.2).
const PNG: &[u8] = b"\x89PNG\r\n\x1a\n";

/// Writes a PDF to `path`: there whole or not at all. A PDF that is there is replaced; anything else stays.
///
/// # Errors
/// When something else is there, or it can't be written.
pub fn hand_out_pdf(machine: &Machine, path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    hand_out(machine, path, bytes, (PDF, "PDF"))
}

/// Writes a PNG to `path`, as [`hand_out_pdf`] does a PDF.
///
/// # Errors
/// When something else is there, or it can't be written.
pub fn hand_out_png(machine: &Machine, path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    hand_out(machine, path, bytes, (PNG, "PNG"))
}

fn hand_out(
    machine: &Machine,
    path: &Path,
    bytes: &[u8],
    (begins, kind): (&[u8], &str),
) -> Result<(), Trouble> {
    let disk = machine.disk();
    match disk.stat(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => {}
        Err(error) => return Err(Trouble::io(path, "cannot be written")(error)),
        Ok(found) => {
            let is_kind =
                found.kind == Kind::File && disk.read(path).is_ok_and(|old| old.starts_with(begins));
            if !is_kind {
                let wrong = format!("something else than a {kind} is there; name another file");
                return Err(Trouble::io(path, "cannot be written")(io::Error::other(wrong)));
            }
        }
    }
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    if name.is_empty() {
        let wrong = io::Error::other("that names no file");
        return Err(Trouble::io(path, "cannot be written")(wrong));
    }
    let temporary = path.with_file_name(format!(".{name}.tmp"));
    disk::write_new(disk, &temporary, bytes)
        .and_then(|()| disk.rename(&temporary, path))
        .and_then(|()| disk::flush_outer_folder(disk, disk::parent_of(path)))
        .map_err(|error| {
            // Best effort: what is left of it is no record.
            let _ = disk.remove(&temporary);
            Trouble::io(path, "cannot be written")(error)
        })
}
