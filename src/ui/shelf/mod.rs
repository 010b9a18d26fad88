//! The real book behind the window: opens a logbook, fills the views from the core, writes deeds to the journal.
//!
//! Invariant: "saved" is said only after the writer has flushed; views are made anew from what was read back.

mod beliefs;
mod cards;
mod class;
mod desk;
mod draft;
mod draft_file;
mod first;
mod import;
mod jobs;
mod journal;
mod journal_write;
mod ladders;
mod logged;
mod memory;
mod mend;
mod next;
mod opened;
mod people;
mod refresh;
mod roster;
mod rung_sheet;
mod say;
mod strength;
mod totals;
mod undo;
mod watch;
mod week;
mod weigh_ins;
mod what_if;
mod workshop;
mod write;

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use chrono::NaiveDate;

use crate::clock;
use crate::logbook::Machine;

use super::book::{Book, Deed, Done, News};
use super::gym::GymDeed;
use super::views::{
    AthleteLine, Banner, ClassView, FirstView, FrameView, GymView, ImportView, JournalView, LaddersView,
    NextView, Place, RosterView, Saved, TotalsView, WeekView, WeighInsView, WorkshopView,
};

pub use memory::open_window;

use desk::Desk;
use draft::Drafts;
use jobs::Job;
use journal_write::TakeBack;
use opened::Opened;
use refresh::Refresh;
use undo::SavedClass;
use watch::Watch;
use workshop::Workshop;

/// Lays a fresh copy of the demo gym as of a day, and says where.
pub type LayDemo = Arc<dyn Fn(NaiveDate) -> Result<PathBuf, String> + Send + Sync>;

/// Wakes the window: there is something new to show.
pub type Wake = Arc<dyn Fn() + Send + Sync>;

/// What the window stands on: this machine's logbooks.
pub struct Shelf {
    machine: Machine,
    device: String,
    /// The day that was asked for; today by the clock if none was.
    on: Option<NaiveDate>,
    lay_demo: LayDemo,
    wake: Wake,
    opened: Option<Opened>,
    desk: Desk,
    revision: u64,
    saved: Saved,
    /// What went wrong before anything was open.
    problem: Option<String>,
    /// Why the open logbook can't be read any more; what was read last is shown.
    unread: Option<String>,
    /// Where the logbook lies that is no throw-away copy.
    keeps: Option<PathBuf>,
    /// Long work that the person waits for.
    job: Option<Job>,
    /// Work that was stopped, not yet told.
    ended: Option<(Deed, Done)>,
    refresh: Option<Refresh>,
    /// Read anew as soon as nothing else is read.
    again: bool,
    watch: Option<Watch>,
    /// Lengths of journals as we wrote them, so that our own writes aren't read back as news.
    own: HashMap<PathBuf, u64>,
    /// How often something was written.
    writes: u64,
    import: Option<ImportView>,
    /// The class whose results are typed, by folder.
    class: Vec<String>,
    /// What undo takes back together.
    saved_class: Option<SavedClass>,
    /// What takes the latest changes of single records back, the latest last; empty once something else was written.
    take_backs: Vec<TakeBack>,
    drafts: Drafts,
    workshop: Workshop,
}

impl Shelf {
    /// Nothing open yet.
    pub fn new(machine: Machine, device: String, on: Option<NaiveDate>, lay_demo: LayDemo) -> Self {
        Self {
            machine,
            device,
            on,
            lay_demo,
            wake: Arc::new(|| {}),
            opened: None,
            desk: Desk::default(),
            revision: 1,
            saved: Saved::Nothing,
            problem: None,
            unread: None,
            keeps: None,
            job: None,
            ended: None,
            refresh: None,
            again: false,
            watch: None,
            own: HashMap::new(),
            writes: 0,
            import: None,
            class: Vec::new(),
            saved_class: None,
            take_backs: Vec::new(),
            drafts: Drafts::default(),
            workshop: Workshop::default(),
        }
    }

    /// The same, waking a window.
    pub fn waking(mut self, wake: Wake) -> Self {
        self.wake = wake;
        self
    }

    /// Begins to open the logbook at `root`, with `athlete` (a folder of it) open if there is such a one. What goes wrong is
    /// said on first start. A throw-away copy isn't opened again by a later start.
    pub fn with(mut self, root: &Path, athlete: Option<&str>, is_throw_away: bool) -> Self {
        self.begin_open(None, root.to_owned());
        self.opening_with(athlete, is_throw_away);
        self
    }

    fn today(&self) -> NaiveDate {
        self.on.unwrap_or_else(clock::today)
    }

    fn show(&mut self, change: impl FnOnce(&mut Opened)) -> Done {
        if let Some(opened) = &mut self.opened {
            change(opened);
            self.revision += 1;
        }
        Done::Ok(None)
    }

    fn saved_now(&mut self, words: Option<String>, deed: &Deed) -> Done {
        self.revision += 1;
        self.saved = Saved::At {
            time: clock::now().format("%H:%M").to_string(),
            device: "here".to_owned(),
        };
        if let (Deed::Join { ladder }, Some(opened)) = (deed, &mut self.opened) {
            opened.ladder = Some(ladder.clone());
        }
        Done::Ok(words)
    }

    fn not_saved(&mut self, why: String) -> Done {
        self.revision += 1;
        self.saved = Saved::Not { why: why.clone() };
        Done::Failed(format!("Not saved: {why}"))
    }

    fn banner(&self, opened: &Opened) -> Option<Banner> {
        let broken = opened.broken().map(|problem| Banner::Broken {
            what: problem.what.clone(),
            place: say::place(&problem.place),
            mend: problem.mend.clone(),
        });
        let unread = self.unread.clone().map(|what| Banner::Broken {
            what,
            place: String::new(),
            mend: String::new(),
        });
        let read_only = self.desk.read_only.clone().map(Banner::ReadOnly);
        let typed = || self.class.is_empty().then(|| self.drafts.words())?;
        unread
            .or(read_only)
            .or(broken)
            .or_else(|| typed().map(Banner::Unsaved))
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
        FrameView {
            logbook: opened.title(),
            places: Place::ALL.to_vec(),
            athlete: opened.athlete().map(|(nth, athlete)| AthleteLine {
                name: athlete.line.athlete.clone(),
                nth: nth + 1,
                of: opened.athletes.len(),
            }),
            saved: self.saved.clone(),
            banner: self.banner(opened),
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

    fn totals(&self) -> TotalsView {
        self.opened.as_ref().map(totals::view).unwrap_or_default()
    }

    fn week(&self) -> WeekView {
        self.opened.as_ref().and_then(week::view).unwrap_or_default()
    }

    fn weigh_ins(&self) -> WeighInsView {
        let view = |opened| weigh_ins::view(opened, self.desk.read_only.as_deref());
        self.opened.as_ref().and_then(view).unwrap_or_default()
    }

    fn journal(&self) -> JournalView {
        let view = |opened| journal::view(opened, self.desk.read_only.as_deref());
        self.opened.as_ref().and_then(view).unwrap_or_default()
    }

    fn first(&self) -> FirstView {
        first::view(&self.machine, self.problem.clone())
    }

    fn import(&self) -> Option<ImportView> {
        self.import.clone()
    }

    fn class(&self) -> ClassView {
        let view = |opened| class::view(opened, &self.class, self.drafts.today.clone());
        self.opened.as_ref().map(view).unwrap_or_default()
    }

    fn gym(&self) -> GymView {
        self.opened
            .as_ref()
            .map(|opened| GymView {
                typed: self.drafts.today.athletes(),
                ..people::gym(opened, &self.device)
            })
            .unwrap_or_default()
    }

    fn workshop(&self) -> WorkshopView {
        let view = |opened| workshop::view(opened, &self.workshop, self.desk.read_only.as_deref());
        self.opened.as_ref().map(view).unwrap_or_default()
    }

    fn perform(&mut self, deed: Deed) -> Done {
        match deed {
            Deed::Workshop(deed) => self.workshop_deed(deed),
            Deed::Gym(GymDeed::ShowClass(athletes)) => {
                self.class = athletes;
                self.revision += 1;
                Done::Ok(None)
            }
            Deed::Gym(GymDeed::KeepTyped { typed, leaves }) => self.keep_typed(typed, leaves),
            Deed::Gym(GymDeed::Print { paper, athletes, to }) => match self.print(paper, &athletes, &to) {
                Ok(words) => Done::Ok(words),
                Err(words) => Done::Failed(words),
            },
            Deed::Gym(GymDeed::Picture { png, to }) => match self.picture(&png, &to) {
                Ok(words) => Done::Ok(words),
                Err(words) => Done::Failed(words),
            },
            Deed::Journal(deed) if deed.only_looks() => self.look(&deed),
            Deed::ShowLadder(id) => self.show(|opened| opened.ladder = Some(id)),
            Deed::LookAt(kg) => self.show(|opened| opened.asked_kg = kg),
            Deed::MeetOver(lifts) => self.show(|opened| opened.meet = lifts),
            Deed::ShowLift(movement, side) => self.show(|opened| opened.lift = Some((movement, side))),
            Deed::ShowWeek(back) => self.show(|opened| opened.weeks_back = back),
            Deed::SessionOf(sets) => self.show(|opened| opened.budget = sets),
            Deed::ChooseAthlete(folder) => {
                self.undo_means_the_open_athlete();
                self.take_backs.clear();
                self.show(|opened| opened.choose(&folder))
            }
            Deed::StepAthlete(by) => {
                self.undo_means_the_open_athlete();
                self.take_backs.clear();
                self.show(|opened| opened.step(by))
            }
            Deed::OpenDemo => self.begin_demo(),
            Deed::OpenFolder(folder) => self.begin_open(Some(Deed::OpenFolder(folder.clone())), folder),
            Deed::Start(_) => self.begin_start(deed),
            Deed::PreviewImport(text) => self.begin_preview(Deed::PreviewImport(text.clone()), text),
            Deed::Import(text) => self.begin_import(Deed::Import(text.clone()), text),
            Deed::ReadAgain => {
                self.look_outside(true);
                Done::Ok(None)
            }
            Deed::Close => {
                (self.opened, self.watch, self.refresh) = (None, None, None);
                (self.desk, self.keeps, self.import) = (Desk::default(), None, None);
                (self.saved_class, self.drafts) = (None, Drafts::default());
                self.take_backs.clear();
                self.workshop = Workshop::default();
                self.revision += 1;
                Done::Ok(None)
            }
            record => self.write_deed(record),
        }
    }

    fn poll(&mut self) -> News {
        self.workshop.keep();
        if let Some((deed, done)) = self.ended.take() {
            return News::Ended(deed, done);
        }
        let news = self.look_after_job();
        if news != News::None {
            return news;
        }
        self.look_outside(false);
        let mut changed = self.look_after_refresh();
        if let Some(root) = self.opened.as_ref().map(|opened| opened.book.root.clone())
            && self.desk.look_again(&self.machine, &root)
        {
            // The other window kept what was typed there; here nothing could be typed so far.
            self.workshop = Workshop::of(&self.machine, &root, self.keeps.is_none(), true);
            self.revision += 1;
            changed = true;
        }
        if changed { News::Changed } else { News::None }
    }

    fn progress(&self) -> Option<(String, u64, u64)> {
        self.job.as_ref().map(Job::progress)
    }

    fn stop(&mut self) {
        self.stop_job();
    }

    fn open_athlete(&self) -> Option<String> {
        self.opened.as_ref()?.folder.clone()
    }

    fn folder(&self) -> Option<PathBuf> {
        self.keeps.clone()
    }
}
