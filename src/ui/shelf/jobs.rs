//! Long work of the shelf, each on a thread: opening, making, importing, waiting for another writer.

use std::path::{Path, PathBuf};

use chrono::NaiveDate;

use crate::logbook::{Machine, Trouble, Writer};
use crate::ui::book::{Deed, Done, ImportText, News};
use crate::ui::views::{ImportView, Saved};
use crate::ui::work::{Outcome, Report, Work};

use super::desk::{Desk, NotDone};
use super::draft::Drafts;
use super::opened::{Ended, Opened};
use super::watch::Watch;
use super::workshop::Workshop;
use super::write::NOTHING_OPEN;
use super::{Shelf, Wake, first, import};

/// A logbook as a thread opened it.
pub(super) struct Brought {
    opened: Opened,
    desk: Desk,
    watch: Option<Watch>,
}

/// Long work that the person waits for.
pub(super) enum Job {
    /// A logbook is opened; `deed` is what asked for it, none at the window's start.
    Open {
        deed: Option<Deed>,
        athlete: Option<String>,
        is_throw_away: bool,
        work: Work<Result<Brought, Ended>>,
    },
    /// A spreadsheet is looked at.
    Preview {
        deed: Deed,
        work: Work<Option<ImportView>>,
    },
    /// Another program writes; `deed` is done when it has ended.
    Wait {
        deed: Deed,
        work: Work<Result<Writer, Trouble>>,
    },
}

/// What a thread that opens a logbook needs.
#[derive(Clone)]
pub(super) struct Bench {
    pub machine: Machine,
    pub device: String,
    pub on: NaiveDate,
    pub wake: Wake,
}

impl Bench {
    fn open(&self, root: &Path, report: &Report) -> Result<Brought, Ended> {
        let opened = Opened::read(&self.machine, root, self.on, None, report)?;
        let mut desk = Desk::at(&self.machine, root, &self.device);
        if opened.book.settings.format > crate::logbook::settings::FORMAT && desk.read_only.is_none() {
            desk.read_only = Some("From a newer version of Rungwright. You can look, not write.".to_owned());
        }
        Ok(Brought {
            opened,
            desk,
            watch: Watch::on(root, self.wake.clone()),
        })
    }
}

impl Job {
    /// What is done, how far it is.
    pub fn progress(&self) -> (String, u64, u64) {
        let (title, progress) = match self {
            Self::Open { work, .. } => (&work.title, work.progress()),
            Self::Preview { work, .. } => (&work.title, work.progress()),
            Self::Wait { work, .. } => (&work.title, work.progress()),
        };
        (title.clone(), progress.done, progress.of)
    }

    pub fn stop(&self) {
        match self {
            Self::Open { work, .. } => work.stop(),
            Self::Preview { work, .. } => work.stop(),
            Self::Wait { work, .. } => work.stop(),
        }
    }
}

impl Shelf {
    fn bench(&self) -> Bench {
        Bench {
            machine: self.machine.clone(),
            device: self.device.clone(),
            on: self.today(),
            wake: self.wake.clone(),
        }
    }

    /// Makes or finds a folder on a thread, and opens it.
    fn begin(
        &mut self,
        deed: Option<Deed>,
        title: &'static str,
        find: impl FnOnce(&Bench, &Report) -> Result<PathBuf, Ended> + Send + 'static,
    ) -> Done {
        let bench = self.bench();
        // The thread marks the folder as open; if it is the one that is open now, that must not stand in its way.
        self.desk = Desk::default();
        let wake = self.wake.clone();
        let work = Work::start(
            title,
            move || wake(),
            move |report| {
                let root = find(&bench, report)?;
                bench.open(&root, report)
            },
        );
        self.job = Some(Job::Open {
            is_throw_away: deed == Some(Deed::OpenDemo),
            deed,
            athlete: None,
            work,
        });
        Done::Working(title)
    }

    /// Opens `root`; at the window's start there is no deed.
    pub(super) fn begin_open(&mut self, deed: Option<Deed>, root: PathBuf) -> Done {
        self.begin(deed, "Opening the logbook", move |_, _| Ok(root))
    }

    /// The athlete to open first, and whether it is a copy that no later start opens again.
    pub(super) fn opening_with(&mut self, open: Option<&str>, throw_away: bool) {
        if let Some(Job::Open {
            athlete,
            is_throw_away,
            ..
        }) = &mut self.job
        {
            *athlete = open.map(str::to_owned);
            *is_throw_away = throw_away;
        }
    }

    pub(super) fn begin_demo(&mut self) -> Done {
        let lay = self.lay_demo.clone();
        self.begin(Some(Deed::OpenDemo), "Making the demo gym", move |bench, _| {
            lay(bench.on).map_err(Ended::Failed)
        })
    }

    pub(super) fn begin_start(&mut self, deed: Deed) -> Done {
        let Deed::Start(new) = deed.clone() else {
            return Done::Ok(None);
        };
        let at = self.at();
        self.begin(Some(deed), "Making the logbook", move |bench, _| {
            first::make(&bench.machine, &bench.device, &at, &new).map_err(Ended::Failed)
        })
    }

    pub(super) fn begin_import(&mut self, deed: Deed, text: ImportText) -> Done {
        if let Some(words) = self.desk.read_only.clone() {
            return self.not_saved(words);
        }
        let open = self.opened.as_ref().map(|opened| opened.book.root.clone());
        self.begin(Some(deed), "Bringing the spreadsheet", move |bench, report| {
            let root = open.unwrap_or_else(|| first::new_folder(&bench.machine));
            import::write(bench, &root, &text, report)?;
            Ok(root)
        })
    }

    pub(super) fn begin_preview(&mut self, deed: Deed, text: ImportText) -> Done {
        let (bench, wake) = (self.bench(), self.wake.clone());
        let open = self.opened.as_ref().map(|opened| opened.book.root.clone());
        let title = "Looking at the spreadsheet";
        let work = Work::start(
            title,
            move || wake(),
            move |report| {
                let root = open.unwrap_or_else(|| first::new_folder(&bench.machine));
                Some(import::preview(&bench, &root, &text, report))
            },
        );
        self.job = Some(Job::Preview { deed, work });
        Done::Working(title)
    }

    /// Waits for another writer on a thread; then `deed` is done.
    pub(super) fn begin_wait(&mut self, deed: Deed) -> Done {
        let Some(root) = self.opened.as_ref().map(|opened| opened.book.root.clone()) else {
            return Done::Failed(NOTHING_OPEN.to_owned());
        };
        let wait = self.desk.wait(&self.machine, &root, &self.device);
        let wake = self.wake.clone();
        let title = "Waiting for another program to finish writing";
        let work = Work::start(title, move || wake(), move |_| wait());
        self.job = Some(Job::Wait { deed, work });
        Done::Working(title)
    }

    /// What long work brought.
    pub(super) fn look_after_job(&mut self) -> News {
        match self.job.take() {
            None => News::None,
            Some(Job::Open {
                deed,
                athlete,
                is_throw_away,
                work,
            }) => match work.poll() {
                Outcome::Running => {
                    self.job = Some(Job::Open {
                        deed,
                        athlete,
                        is_throw_away,
                        work,
                    });
                    News::None
                }
                Outcome::Done(Ok(brought)) => {
                    self.take(brought, athlete.as_deref(), is_throw_away);
                    deed.map_or(News::Changed, |deed| News::Ended(deed, Done::Ok(None)))
                }
                Outcome::Done(Err(Ended::Stopped)) => self.not_opened(deed, "Stopped. Nothing was changed."),
                Outcome::Done(Err(Ended::Failed(words))) => self.not_opened(deed, &words),
                Outcome::Lost => self.not_opened(deed, LOST),
            },
            Some(Job::Preview { deed, work }) => match work.poll() {
                Outcome::Running => {
                    self.job = Some(Job::Preview { deed, work });
                    News::None
                }
                Outcome::Done(view) => {
                    self.import = view;
                    self.revision += 1;
                    News::Ended(deed, Done::Ok(None))
                }
                Outcome::Lost => News::Ended(deed, Done::Failed(LOST.to_owned())),
            },
            Some(Job::Wait { deed, work }) => match work.poll() {
                Outcome::Running => {
                    self.job = Some(Job::Wait { deed, work });
                    News::None
                }
                Outcome::Done(Ok(writer)) => {
                    self.desk.ready(writer);
                    let done = self.write_deed(deed.clone());
                    News::Ended(deed, done)
                }
                Outcome::Done(Err(trouble)) => {
                    let done = self.not_saved(trouble.to_string());
                    News::Ended(deed, done)
                }
                Outcome::Lost => {
                    let done = self.not_saved(LOST.to_owned());
                    News::Ended(deed, done)
                }
            },
        }
    }

    /// Stops long work. What only waits or looks is let go at once; what writes ends by itself, all or nothing.
    pub(super) fn stop_job(&mut self) {
        match self.job.take() {
            Some(Job::Wait { deed, .. }) => {
                self.ended = Some((
                    deed,
                    self.not_saved("stopped waiting; log it again when you like.".to_owned()),
                ));
            }
            Some(Job::Preview { .. }) | None => {}
            Some(job @ Job::Open { .. }) => {
                job.stop();
                self.job = Some(job);
            }
        }
    }

    fn take(&mut self, brought: Brought, athlete: Option<&str>, is_throw_away: bool) {
        let Brought {
            mut opened,
            desk,
            watch,
        } = brought;
        if let Some(athlete) = athlete {
            opened.choose(athlete);
        }
        self.keeps = (!is_throw_away).then(|| opened.book.root.clone());
        (self.saved_class, self.class) = (None, Vec::new());
        self.take_backs.clear();
        let may_write = desk.read_only.is_none();
        self.drafts = Drafts::of(&self.machine, &opened, is_throw_away, may_write);
        // What is typed in the logbook that was open is kept before the new one's is read: they may be the same.
        self.workshop = Workshop::default();
        self.workshop = Workshop::of(&self.machine, &opened.book.root, is_throw_away, may_write);
        self.opened = Some(opened);
        self.desk = desk;
        self.watch = watch;
        self.refresh = None;
        self.import = None;
        self.problem = None;
        self.unread = None;
        self.saved = Saved::Nothing;
        self.revision += 1;
    }

    fn not_opened(&mut self, deed: Option<Deed>, words: &str) -> News {
        self.revision += 1;
        if self.opened.is_none() {
            self.problem = Some(words.to_owned());
        }
        match deed {
            Some(deed) => News::Ended(deed, Done::Failed(words.to_owned())),
            None => News::Changed,
        }
    }

    /// Does a deed that writes one record, or begins to wait until it can be done.
    pub(super) fn write_deed(&mut self, deed: Deed) -> Done {
        if let Deed::Workshop(deed) = deed {
            return self.workshop_deed(deed);
        }
        if deed != Deed::Undo {
            self.undo_means_the_open_athlete();
        }
        if !Self::keeps_take_backs(&deed) {
            self.take_backs.clear();
        }
        let came = match deed.clone() {
            Deed::Undo => self.undo(),
            Deed::MendSet(id) => self.mend_set(&id),
            Deed::Gym(deed) => self.gym_deed(deed),
            Deed::Journal(deed) => self.change_one(deed),
            record => self.record(record),
        };
        match came {
            Ok(words) => self.saved_now(words, &deed),
            Err(NotDone::Busy) => self.begin_wait(deed),
            Err(NotDone::Because(why)) => self.not_saved(why),
        }
    }
}

const LOST: &str = "Something went wrong inside. Nothing of it was written; start the program again.";
