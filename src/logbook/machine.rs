//! This machine: its file system, and where a user's folders lie on it.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use super::disk::{self, Disk, Held, NoLock, RealDisk};
use super::names::base32_letters;
use super::trouble::Trouble;

/// The name of our folder in each of the user's folders.
const OURS: &str = "rungwright";
/// The file in the state folder with the path of the logbook last opened in the window.
const LAST_OPENED: &str = "last-logbook";

/// A user's folders, each our own inside what the system gives (XDG base directories; the system's own elsewhere).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Places {
    /// What the user chose on this machine.
    pub config: PathBuf,
    /// Where a logbook lies by default.
    pub data: PathBuf,
    /// What this machine keeps: its id, locks, drafts, earlier versions.
    pub state: PathBuf,
    /// What can be made again from the logbook.
    pub cache: PathBuf,
}

impl Places {
    /// The folders that HOME and the XDG variables name. Nothing is made yet.
    ///
    /// # Errors
    /// When no home folder is known.
    fn of_user() -> Result<Self, Trouble> {
        use etcetera::BaseStrategy;
        let user = etcetera::choose_base_strategy().map_err(|_| Trouble::NoHome)?;
        let data = user.data_dir().join(OURS);
        Ok(Self {
            config: user.config_dir().join(OURS),
            state: user
                .state_dir()
                .map_or_else(|| data.join("state"), |state| state.join(OURS)),
            cache: user.cache_dir().join(OURS),
            data,
        })
    }

    /// All of them inside one folder, for tests and throw-away copies.
    pub fn inside(folder: &Path) -> Self {
        Self {
            config: folder.join("config"),
            data: folder.join("data"),
            state: folder.join("state"),
            cache: folder.join("cache"),
        }
    }

    /// The logbook that is meant when none is named and none was opened before.
    pub fn default_logbook(&self) -> PathBuf {
        self.data.join("logbook")
    }
}

/// This machine, as far as the logbook is concerned. Cheap to clone.
#[derive(Debug, Clone)]
pub struct Machine {
    disk: Arc<dyn Disk>,
    places: Arc<Places>,
}

impl Machine {
    /// The real file system and the user's folders.
    ///
    /// # Errors
    /// When no home folder is known.
    pub fn this() -> Result<Self, Trouble> {
        Ok(Self::with(RealDisk, Places::of_user()?))
    }

    /// Another disk or other folders.
    pub fn with(disk: impl Disk + 'static, places: Places) -> Self {
        Self {
            disk: Arc::new(disk),
            places: Arc::new(places),
        }
    }

    /// The file system.
    pub fn disk(&self) -> &dyn Disk {
        &*self.disk
    }

    /// The user's folders.
    pub fn places(&self) -> &Places {
        &self.places
    }

    /// The logbook that is meant when none is named: the one last opened in the window while its folder is there, else the
    /// usual one.
    pub fn usual_logbook(&self) -> PathBuf {
        let last = self.disk.read(&self.places.state.join(LAST_OPENED)).ok();
        last.and_then(|bytes| String::from_utf8(bytes).ok())
            .map(|text| PathBuf::from(text.trim_end_matches('\n')))
            .filter(|path| path.is_absolute() && self.disk.list(path).is_ok())
            .unwrap_or_else(|| self.places.default_logbook())
    }

    /// Keeps `logbook` as the one last opened. A path that is no text is not kept.
    ///
    /// # Errors
    /// The system's own, when the state folder can't be written.
    pub fn keep_last_opened(&self, logbook: &Path) -> std::io::Result<()> {
        let Some(text) = logbook.to_str() else {
            return Ok(());
        };
        let folder = &self.places.state;
        disk::make_folders(self.disk(), folder)?;
        let temporary = folder.join(format!(".{LAST_OPENED}.tmp"));
        disk::replace(
            self.disk(),
            &folder.join(LAST_OPENED),
            &temporary,
            text.as_bytes(),
        )
    }

    /// Takes the lock of the logbook whose real path is `root`.
    ///
    /// # Errors
    /// "Busy" after `wait`; or that the state folder or its locks don't work, and that nothing was written.
    pub fn lock(&self, root: &Path, wait: Duration) -> Result<Held, Trouble> {
        self.hold(root, "lock", wait)
    }

    /// Marks the logbook at `root` as open in a window, as long as the mark lives; none while another window has it open.
    /// Writers ask for [`Machine::lock`] besides, for each write, so that a window left open keeps no command waiting.
    ///
    /// # Errors
    /// When the state folder or its locks don't work.
    pub fn mark_window(&self, root: &Path) -> Result<Option<Held>, Trouble> {
        let real = disk::real_path_to_be(self.disk(), root).map_err(Trouble::io(root, "cannot be opened"))?;
        match self.hold(&real, "window", Duration::ZERO) {
            Ok(held) => Ok(Some(held)),
            Err(Trouble::Busy { .. }) => Ok(None),
            Err(trouble) => Err(trouble),
        }
    }

    fn hold(&self, root: &Path, what: &str, wait: Duration) -> Result<Held, Trouble> {
        let folder = self.places.state.join("locks");
        disk::make_folders(self.disk(), &folder).map_err(|error| Trouble::no_lock(&folder, error))?;
        let file = folder.join(format!("{}.{what}", mark_of(root)));
        match self.disk.lock(&file, wait) {
            Ok(held) => Ok(held),
            Err(NoLock::Busy) => Err(Trouble::Busy {
                logbook: root.to_owned(),
            }),
            Err(NoLock::Io(error)) => Err(Trouble::no_lock(&file, error)),
        }
    }
}

/// Letters that stand for a logbook in the state and cache folders, without its name or path.
pub(crate) fn mark_of(root: &Path) -> String {
    base32_letters(xxhash_rust::xxh3::xxh3_64(root.as_os_str().as_encoded_bytes()))
}
