//! The machine's own file system.

use std::ffi::OsString;
use std::fs::{self, File, Metadata, OpenOptions};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::{Disk, Handle, Held, Kind, NoLock, Stat, lock};

/// The machine's own file system.
#[derive(Debug, Clone, Copy, Default)]
pub struct RealDisk;

impl Disk for RealDisk {
    fn list(&self, folder: &Path) -> io::Result<Vec<OsString>> {
        fs::read_dir(folder)?
            .map(|entry| entry.map(|entry| entry.file_name()))
            .collect()
    }

    fn stat(&self, path: &Path) -> io::Result<Stat> {
        fs::symlink_metadata(path).map(|found| stat_of(&found))
    }

    fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
        let mut file = open_to_read(path)?;
        let found = file.metadata()?;
        if !found.is_file() {
            return Err(io::Error::other("not a plain file"));
        }
        let mut bytes = Vec::with_capacity(usize::try_from(found.len()).unwrap_or(0).min(1 << 28));
        file.read_to_end(&mut bytes)?;
        Ok(bytes)
    }

    fn make_folder(&self, path: &Path) -> io::Result<()> {
        let mut builder = fs::DirBuilder::new();
        #[cfg(unix)]
        std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
        builder.create(path)
    }

    fn open_append(&self, path: &Path) -> io::Result<Box<dyn Handle>> {
        private(OpenOptions::new().append(true).create(true), 0)
            .open(path)
            .map(|file| Box::new(RealHandle(file)) as Box<dyn Handle>)
    }

    fn create_new(&self, path: &Path) -> io::Result<Box<dyn Handle>> {
        private(OpenOptions::new().write(true).create_new(true), 0)
            .open(path)
            .map(|file| Box::new(RealHandle(file)) as Box<dyn Handle>)
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        fs::remove_file(path)
    }

    fn remove_folder(&self, path: &Path) -> io::Result<()> {
        fs::remove_dir(path)
    }

    fn flush_folder(&self, folder: &Path) -> io::Result<()> {
        if cfg!(unix) {
            File::open(folder)?.sync_all()
        } else {
            // Windows makes names durable with the file itself and opens no folders.
            Ok(())
        }
    }

    fn real_path(&self, path: &Path) -> io::Result<PathBuf> {
        fs::canonicalize(path)
    }

    fn lock(&self, path: &Path, wait: Duration) -> Result<Held, NoLock> {
        let mut options = OpenOptions::new();
        let file = private(options.read(true).write(true).create(true), 0).open(path)?;
        lock::take(file, wait)
    }
}

struct RealHandle(File);

impl Handle for RealHandle {
    fn write_all(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.0.write_all(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.0.sync_all()
    }

    fn truncate(&mut self, length: u64) -> io::Result<()> {
        self.0.set_len(length)
    }
}

/// 0600 at creation, and no link is followed.
fn private(options: &mut OpenOptions, flags: i32) -> &mut OpenOptions {
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600).custom_flags(libc::O_NOFOLLOW | flags);
    }
    #[cfg(not(unix))]
    let _ = flags;
    options
}

/// Opens without following a link, without waiting on a pipe, and where the system allows it without a trace.
fn open_to_read(path: &Path) -> io::Result<File> {
    #[cfg(target_os = "linux")]
    {
        let quiet = libc::O_NONBLOCK | libc::O_NOATIME;
        if let Ok(file) = private(OpenOptions::new().read(true), quiet).open(path) {
            return Ok(file);
        }
    }
    // Only a file's owner may read without touching its access time.
    #[cfg(unix)]
    return private(OpenOptions::new().read(true), libc::O_NONBLOCK).open(path);
    #[cfg(not(unix))]
    return File::open(path);
}

fn stat_of(found: &Metadata) -> Stat {
    let kind = if found.is_file() {
        Kind::File
    } else if found.is_dir() {
        Kind::Folder
    } else {
        Kind::Other
    };
    #[cfg(unix)]
    let mark = {
        use std::os::unix::fs::MetadataExt;
        // The change time moves with every write and rename and can't be set back.
        (found.ctime(), found.ctime_nsec(), found.ino())
    };
    #[cfg(not(unix))]
    let mark = {
        let since = found
            .modified()
            .ok()
            .and_then(|time| time.duration_since(std::time::UNIX_EPOCH).ok())
            .unwrap_or_default();
        (
            i64::try_from(since.as_secs()).unwrap_or(i64::MAX),
            i64::from(since.subsec_nanos()),
            0,
        )
    };
    Stat {
        kind,
        length: found.len(),
        mark,
    }
}
