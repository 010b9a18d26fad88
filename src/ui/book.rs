//! The boundary between the window and the logbook: the window loads views and hands over deeds; whoever stands behind
//! [`Book`] reads the core, writes the journal and says whether it is on disk. Screens know neither.

use std::path::PathBuf;

use chrono::NaiveDate;

use crate::units::{Rail, Side};

use super::gym::GymDeed;
use super::journal::JournalDeed;
use super::views::{
    ClassView, FirstView, FrameView, GymView, ImportView, JournalView, LaddersView, NextView, RosterView,
    SetDraft, TotalsView, WeekView, WeighInsView, WorkshopView,
};
use super::workshop::WorkshopDeed;

/// Something to write or to open.
#[derive(Debug, Clone, PartialEq)]
pub enum Deed {
    /// Log one set.
    Log(SetDraft),
    /// Take back the newest record of the open athlete.
    Undo,
    /// Amend the set with this id as the belief says that it would fit.
    MendSet(String),
    /// A weigh-in of today, in the logbook's unit.
    WeighIn(f64),
    /// Pain at a site, 0 to 10.
    Pain {
        /// The site's name as the view offered it.
        site: &'static str,
        /// The side; both or unknown is none.
        rail: Rail,
        /// 0 to 10.
        score: u8,
    },
    /// A remark by itself.
    Note(String),
    /// Put a rail on a rung.
    Place {
        /// The ladder's id.
        ladder: String,
        /// The rail.
        rail: Rail,
        /// The rung's id.
        rung: String,
    },
    /// Join a ladder; the rules name the rung.
    Join {
        /// The ladder's id.
        ladder: String,
    },
    /// Set a rail aside until it is placed again.
    SetAside {
        /// The ladder's id.
        ladder: String,
        /// The rail.
        rail: Rail,
    },
    /// Open this movement, of this side where sides are apart, on Totals.
    ShowLift(String, Option<Side>),
    /// Plan today's meet over these movements.
    MeetOver(Vec<String>),
    /// Log one try of today's meet: a single.
    LogTry {
        /// The movement's id.
        movement: String,
        /// On the belt, or bar and discs, in the logbook's unit; below zero it is help.
        load: f64,
        /// Whether it was good.
        good: bool,
    },
    /// Show Ladders as if the open athlete weighed so many kg; none for today's bodyweight.
    LookAt(Option<f64>),
    /// Show the week so many weeks before this one on Week.
    ShowWeek(u32),
    /// Build today's session on Week from so many sets.
    SessionOf(u16),
    /// Open this ladder on Ladders.
    ShowLadder(String),
    /// Open this athlete.
    ChooseAthlete(String),
    /// Open the next (1) or the previous (−1) athlete of the roster.
    StepAthlete(i8),
    /// People, sheets, a class's results, plates.
    Gym(GymDeed),
    /// One record of the open athlete.
    Journal(JournalDeed),
    /// Ladders as text.
    Workshop(WorkshopDeed),
    /// Open a throw-away copy of the demo gym.
    OpenDemo,
    /// Open the logbook in this folder.
    OpenFolder(PathBuf),
    /// Make a logbook, and open it.
    Start(NewLogbook),
    /// Read a spreadsheet's text and show what it would write.
    PreviewImport(ImportText),
    /// Write what the preview showed, into the open logbook or else a new one.
    Import(ImportText),
    /// Read the open logbook anew.
    ReadAgain,
    /// Put the open logbook away: back to first start.
    Close,
}

/// A logbook to be made.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct NewLogbook {
    /// The person's name.
    pub name: String,
    /// `kg` or `lb`.
    pub in_lb: bool,
    /// Bodyweight in that unit, if given.
    pub bodyweight: Option<f64>,
    /// Plates on hand in that unit.
    pub plates: Vec<f64>,
    /// Mass of belt, carabiner and chain in that unit.
    pub gear: f64,
    /// Standing height, cm.
    pub height_cm: Option<f64>,
    /// Female, male or unsaid.
    pub sex: Option<&'static str>,
    /// Birth date.
    pub born: Option<NaiveDate>,
    /// The goal ladder's id.
    pub ladder: Option<String>,
    /// What can be done today: question, and the amount left and right (the same where both hands work as one).
    pub today: Vec<(usize, [Option<f64>; 2])>,
}

/// A spreadsheet, and how it is read.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ImportText {
    /// Where it comes from.
    pub from: Source,
    /// Theirs, ours; an empty `ours` drops the column.
    pub columns: Vec<(String, String)>,
    /// What stands between cells.
    pub cells: Cells,
    /// How its dates are written.
    pub dates: DatesAre,
    /// Whether a comma is the decimal mark.
    pub comma: bool,
    /// Whose rows these are, where no column says it.
    pub athlete: String,
}

/// Where a spreadsheet comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Source {
    /// Pasted or typed.
    Text(String),
    /// A file.
    File(PathBuf),
}

impl Default for Source {
    fn default() -> Self {
        Self::Text(String::new())
    }
}

/// What stands between cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Cells {
    /// What the first line has most of: tab, semicolon or comma.
    #[default]
    AsFirstLine,
    /// A comma.
    Comma,
    /// A semicolon.
    Semicolon,
    /// A tab.
    Tab,
}

/// How dates are written. It is never guessed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DatesAre {
    /// 2025-10-31.
    #[default]
    YearFirst,
    /// 31.10.2025.
    DayFirst,
    /// 10/31/2025.
    MonthFirst,
}

/// What came of a deed.
#[derive(Debug, Clone, PartialEq)]
pub enum Done {
    /// On disk, or opened. Words to show, if any: a new best.
    Ok(Option<String>),
    /// Not done: what happened, and what to do.
    Failed(String),
    /// Long work has begun on a thread.
    Working(&'static str),
}

/// What came since the window last looked.
#[derive(Debug, Clone, PartialEq)]
pub enum News {
    /// Nothing.
    None,
    /// Views would come out differently.
    Changed,
    /// Long work ended: what it was for, and what came of it.
    Ended(Deed, Done),
}

/// What stands behind the window.
pub trait Book {
    /// Whether a logbook is open.
    fn is_open(&self) -> bool;
    /// Counts up whenever a view would come out differently; views are loaded again only then.
    fn revision(&self) -> u64;
    /// The frame.
    fn frame(&self) -> FrameView;
    /// Everyone.
    fn roster(&self) -> RosterView;
    /// Today's prescriptions of the open athlete.
    fn next(&self) -> NextView;
    /// Ladders of the open athlete.
    fn ladders(&self) -> LaddersView;
    /// Totals of the open athlete.
    fn totals(&self) -> TotalsView;
    /// A week of the open athlete.
    fn week(&self) -> WeekView {
        WeekView::default()
    }
    /// Bodyweight of the open athlete.
    fn weigh_ins(&self) -> WeighInsView {
        WeighInsView::default()
    }
    /// Every record of the open athlete.
    fn journal(&self) -> JournalView {
        JournalView::default()
    }
    /// First start.
    fn first(&self) -> FirstView;
    /// What the last [`Deed::PreviewImport`] found.
    fn import(&self) -> Option<ImportView>;
    /// What the class of the last [`GymDeed::ShowClass`] was asked, ready to be typed.
    fn class(&self) -> ClassView {
        ClassView::default()
    }
    /// Plates, machines, ladders, who is off the roster.
    fn gym(&self) -> GymView {
        GymView::default()
    }
    /// Ladders as text.
    fn workshop(&self) -> WorkshopView {
        WorkshopView::default()
    }
    /// Does a deed. Returns only when it is on disk, or begins long work.
    fn perform(&mut self, deed: Deed) -> Done;
    /// Looks for what long work or the folder's watcher brought.
    fn poll(&mut self) -> News;
    /// The open athlete's key, to be open again at the next start.
    fn open_athlete(&self) -> Option<String> {
        None
    }
    /// The folder to open at the next start; none while nothing is open that should be.
    fn folder(&self) -> Option<PathBuf> {
        None
    }
    /// How far long work is: what, done, of how many.
    fn progress(&self) -> Option<(String, u64, u64)> {
        None
    }
    /// Asks long work to stop.
    fn stop(&mut self) {}
}
