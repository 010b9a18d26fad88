//! The real book behind the window: opens a logbook, fills the views from the core, writes deeds to the journal.
//!
//! Invariant: "saved" is said only after the writer has flushed; views are made anew from what was read back.

mod beliefs;
mod cards;
mod first;
mod ladders;
mod logged;
mod memory;
mod mend;
mod next;
mod opened;
mod roster;
mod rung_sheet;
mod say;
mod strength;
mod write;

use std::path::{Path, PathBuf};

use chrono::NaiveDate;

use crate::clock;
use crate::logbook::{Machine, Trouble, Writer};

use super::book::{Book, Deed, Done};
use super::views::{
    AthleteLine, Banner, FirstView, FrameView, ImportView, LaddersView, NextView, Place, RosterView, Saved,
};

pub use memory::open_window;

use opened::Opened;

/// Lays a fresh copy of the demo gym as of a day, and says where.
pub type LayDemo = Box<dyn Fn(NaiveDate) -> Result<PathBuf, String>>;

/// What the window stands on: this machine's logbooks.
pub struct Shelf {
    machine: Machine,
    device: String,
    /// The day that was asked for; today by the clock if none was.
    on: Option<NaiveDate>,
    lay_demo: LayDemo,
    opened: Option<Opened>,
    /// Holds the logbook's lock while the window has it open.
    writer: Option<Writer>,
    /// Why nothing can be written, where somebody else writes.
    read_only: Option<String>,
    revision: u64,
    saved: Saved,
    /// What went wrong before anything was open.
    problem: Option<String>,
    /// Where the logbook lies that is no throw-away copy.
    keeps: Option<PathBuf>,
}

impl Shelf {
    /// Nothing open yet.
    pub fn new(machine: Machine, device: String, on: Option<NaiveDate>, lay_demo: LayDemo) -> Self {
        Self {
            machine,
            device,
            on,
            lay_demo,
            opened: None,
            writer: None,
            read_only: None,
            revision: 1,
            saved: Saved::Nothing,
            problem: None,
            keeps: None,
        }
    }

    /// Opens the logbook at `root`, with `athlete` (a folder of it) open if there is such a one. What goes wrong is said on
    /// first start.
    pub fn with(mut self, root: &Path, athlete: Option<&str>) -> Self {
        if let Err(words) = self.open(root) {
            self.problem = Some(words);
        }
        if let (Some(opened), Some(athlete)) = (&mut self.opened, athlete) {
            opened.choose(athlete);
        }
        self
    }

    /// The same, with what is open now a throw-away copy that no later start opens again.
    pub fn not_kept(mut self) -> Self {
        self.keeps = None;
        self
    }

    fn today(&self) -> NaiveDate {
        self.on.unwrap_or_else(clock::today)
    }

    fn open(&mut self, root: &Path) -> Result<(), String> {
        let opened =
            Opened::read(&self.machine, root, self.today()).map_err(|trouble| trouble.to_string())?;
        self.writer = None;
        self.read_only = None;
        if let Err(trouble) = self.take_writer(root) {
            self.read_only = Some(format!("This logbook is only read: {trouble}"));
        }
        self.opened = Some(opened);
        self.problem = None;
        self.saved = Saved::Nothing;
        self.keeps = Some(root.to_owned());
        self.revision += 1;
        Ok(())
    }

    /// The one who writes, holding the lock from the first call on.
    fn take_writer(&mut self, root: &Path) -> Result<&mut Writer, Trouble> {
        let writer = match self.writer.take() {
            Some(writer) => writer,
            None => {
                let now = clock::now().to_utc();
                let (writer, _) = Writer::lock(
                    &self.machine,
                    root,
                    self.device.clone(),
                    now,
                    std::time::Duration::ZERO,
                )?;
                self.read_only = None;
                writer
            }
        };
        Ok(self.writer.insert(writer))
    }

    fn show(&mut self, change: impl FnOnce(&mut Opened)) -> Done {
        if let Some(opened) = &mut self.opened {
            change(opened);
            self.revision += 1;
        }
        Done::Ok(None)
    }

    fn open_demo(&mut self) -> Result<(), String> {
        let folder = (self.lay_demo)(self.today())?;
        self.open(&folder)
    }

    fn opening(&mut self, came: Result<(), String>) -> Done {
        match came {
            Ok(()) => Done::Ok(None),
            Err(words) => {
                self.problem = Some(words.clone());
                self.revision += 1;
                Done::Failed(words)
            }
        }
    }

    fn writing(&mut self, came: Result<Option<String>, String>) -> Done {
        self.revision += 1;
        match came {
            Ok(words) => {
                self.saved = Saved::At {
                    time: clock::now().format("%H:%M").to_string(),
                    device: "this machine".to_owned(),
                };
                Done::Ok(words)
            }
            Err(why) => {
                self.saved = Saved::Not { why: why.clone() };
                Done::Failed(why)
            }
        }
    }
}

impl Book for Shelf {
    fn is_open(&self) -> bool {
        self.opened.is_some()
    }

    fn revision(&self) -> u64 {
        self.revision
    }

    fn frame(&self) -> FrameView {
        let Some(opened) = &self.opened else {
            return FrameView::default();
        };
        let broken = opened.broken().map(|problem| Banner::Broken {
            what: problem.what.clone(),
            place: format!(
                "{}:{}:{}",
                problem.place.file, problem.place.line, problem.place.column
            ),
            mend: problem.mend.clone(),
        });
        FrameView {
            logbook: opened.title(),
            places: vec![Place::Roster, Place::Next, Place::Ladders],
            athlete: opened.athlete().map(|(nth, athlete)| AthleteLine {
                name: athlete.line.athlete.clone(),
                nth: nth + 1,
                of: opened.athletes.len(),
            }),
            saved: self.saved.clone(),
            banner: self.read_only.clone().map(Banner::ReadOnly).or(broken),
        }
    }

    fn roster(&self) -> RosterView {
        self.opened.as_ref().map(roster::view).unwrap_or_default()
    }

    fn next(&self) -> NextView {
        self.opened.as_ref().and_then(next::view).unwrap_or_default()
    }

    fn ladders(&self) -> LaddersView {
        self.opened.as_ref().map(ladders::view).unwrap_or_default()
    }

    fn first(&self) -> FirstView {
        first::view(&self.machine, self.problem.clone())
    }

    fn import(&self) -> Option<ImportView> {
        None
    }

    fn perform(&mut self, deed: Deed) -> Done {
        match deed {
            Deed::ShowLadder(id) => self.show(|opened| opened.ladder = Some(id)),
            Deed::ChooseAthlete(folder) => self.show(|opened| opened.choose(&folder)),
            Deed::StepAthlete(by) => self.show(|opened| opened.step(by)),
            Deed::OpenDemo => {
                let came = self.open_demo();
                self.opening(came)
            }
            Deed::OpenFolder(folder) => {
                let came = self.open(&folder);
                self.opening(came)
            }
            Deed::Start(new) => {
                let came = self.start(&new);
                self.opening(came)
            }
            Deed::PreviewImport(_) | Deed::Import(_) => Done::Failed(
                "A spreadsheet can't be brought in here yet; run: rungwright import FILE.csv".to_owned(),
            ),
            Deed::MendSet(id) => {
                let came = self.mend_set(&id);
                self.writing(came)
            }
            Deed::Undo => {
                let came = self.undo();
                self.writing(came)
            }
            record => {
                let joins = match &record {
                    Deed::Join { ladder } => Some(ladder.clone()),
                    _ => None,
                };
                let came = self.record(record);
                if let (true, Some(ladder), Some(opened)) = (came.is_ok(), joins, &mut self.opened) {
                    opened.ladder = Some(ladder);
                }
                self.writing(came)
            }
        }
    }

    fn poll(&mut self) -> bool {
        let today = self.today();
        match &mut self.opened {
            Some(opened) if opened.on != today => {
                opened.look_from(today);
                self.revision += 1;
                true
            }
            _ => false,
        }
    }

    fn open_athlete(&self) -> Option<String> {
        self.opened.as_ref()?.folder.clone()
    }

    fn folder(&self) -> Option<PathBuf> {
        self.keeps.clone()
    }
}
