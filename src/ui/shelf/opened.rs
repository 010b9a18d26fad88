//! A logbook as it was read, and everyone's next steps as they follow from it.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use chrono::NaiveDate;
use rayon::prelude::*;

use crate::bests::{Formula, Kind, Size, bests};
use crate::body::Counted;
use crate::catalogue::{Catalogue, OwnFile};
use crate::coaching::next_step::next_steps;
use crate::coaching::roster::{Line, line_of};
use crate::coaching::session::session_steps;
use crate::coaching::{NextStep, PlatesOnHand, Prescription};
use crate::logbook::{History, Log, Logbook, Machine, Trouble};
use crate::problem::{Problem, Severity};
use crate::strength::{Estimates, Kept};
use crate::timeline::Timeline;
use crate::ui::views::StrengthView;
use crate::ui::work::{Go, Progress, Report};
use crate::units::{Rail, Side};

/// Sets of a session before anybody says how many. Common practice, no source.
const USUAL_BUDGET: u16 = 12;

/// An open logbook.
pub(super) struct Opened {
    pub book: Logbook,
    pub catalogue: Catalogue,
    pub plates: PlatesOnHand,
    /// The day that everything is seen from.
    pub on: NaiveDate,
    /// Everyone, by need, then name.
    pub athletes: Vec<Athlete>,
    /// The open athlete's folder.
    pub folder: Option<String>,
    /// The ladder to show, if one was chosen.
    pub ladder: Option<String>,
    /// The movement and side to show on Totals, if one was chosen.
    pub lift: Option<(String, Option<Side>)>,
    /// The lifts of today's meet, if they were chosen.
    pub meet: Vec<String>,
    /// The bodyweight that Ladders is looked at with, kg.
    pub asked_kg: Option<f64>,
    /// How many weeks before this one Week shows.
    pub weeks_back: u32,
    /// Sets that today's session on Week is built from.
    pub budget: u16,
    /// What is wrong in files.
    pub problems: Vec<Problem>,
    /// What was read of each athlete's sets for the beliefs, by folder.
    kept: Mutex<BTreeMap<String, Arc<Kept>>>,
    /// What was plotted since anybody's log last changed.
    plots: Mutex<BTreeMap<PlotOf, Option<StrengthView>>>,
    /// What the journal keeps between two loadings.
    pub journal: super::journal::Desk,
}

/// Whose strength over time is plotted: folder, movement, side, and the share of the body that was counted.
pub(super) type PlotOf = (String, String, Option<Side>, u64);

/// What is known of one athlete.
pub(super) struct Athlete {
    /// The athlete's folder, which tells people of one name apart.
    pub folder: String,
    /// Roster line.
    pub line: Line,
    /// Next steps now, today's sets included.
    pub steps: Vec<NextStep>,
    /// Next steps as the day began: what this session asks.
    pub session: Vec<NextStep>,
}

/// Why a logbook wasn't opened.
#[derive(Debug)]
pub(super) enum Ended {
    /// Somebody stopped it.
    Stopped,
    /// It can't be opened.
    Failed(String),
}

impl From<Trouble> for Ended {
    fn from(trouble: Trouble) -> Self {
        Self::Failed(trouble.to_string())
    }
}

impl Opened {
    /// Reads the logbook at `root`. Own ladders that are broken now stay as `last` had them.
    pub fn read(
        machine: &Machine,
        root: &Path,
        on: NaiveDate,
        last: Option<&Catalogue>,
        report: &Report,
    ) -> Result<Self, Ended> {
        let (book, mut problems) = Logbook::open(machine, root)?;
        let (mut catalogue, own) = book.catalogue();
        if let Some(last) = last {
            catalogue = catalogue.keeping_last_good(last, &broken_files(&own));
        }
        problems.extend(own);
        let plates = PlatesOnHand::of(&book.settings);
        let athletes = everyone(&book.logs, &catalogue, &plates, on, report).ok_or(Ended::Stopped)?;
        let folder = athletes.first().map(|athlete| athlete.folder.clone());
        Ok(Self {
            book,
            catalogue,
            plates,
            on,
            athletes,
            folder,
            ladder: None,
            lift: None,
            meet: Vec::new(),
            asked_kg: None,
            weeks_back: 0,
            budget: USUAL_BUDGET,
            problems,
            kept: Mutex::default(),
            plots: Mutex::default(),
            journal: super::journal::Desk::default(),
        })
    }

    /// The same athlete and ladder open as in `before`, where they are still there.
    pub fn looking_at(mut self, before: &Opened) -> Self {
        if let Some(folder) = &before.folder {
            self.choose(folder);
        }
        self.ladder = before
            .ladder
            .clone()
            .filter(|id| self.catalogue.ladder(id).is_some());
        (self.weeks_back, self.budget) = (before.weeks_back, before.budget);
        if self.folder == before.folder {
            self.meet.clone_from(&before.meet);
        }
        self
    }

    /// Takes one athlete's log as it was read anew.
    pub fn take(&mut self, fresh: Logbook) {
        self.plots = Mutex::default();
        self.journal.forget_lines();
        for (log, history) in fresh.logs.into_iter().zip(fresh.histories) {
            let new = athlete(&log, &self.catalogue, &self.plates, self.on);
            self.athletes.retain(|athlete| athlete.folder != log.folder);
            if !log.is_archived(self.on) {
                self.athletes.push(new);
            }
            match self.book.logs.iter().position(|old| old.folder == log.folder) {
                Some(at) => {
                    if let (Some(old), Some(before)) =
                        (self.book.logs.get_mut(at), self.book.histories.get_mut(at))
                    {
                        (*old, *before) = (log, history);
                    }
                }
                None => {
                    self.book.logs.push(log);
                    self.book.histories.push(history);
                }
            }
        }
        sort(&mut self.athletes);
    }

    /// The open athlete, and the place among all.
    pub fn athlete(&self) -> Option<(usize, &Athlete)> {
        let folder = self.folder.as_deref()?;
        self.athletes
            .iter()
            .enumerate()
            .find(|(_, athlete)| athlete.folder == folder)
    }

    /// What this session asks of a rail on a rung.
    pub fn asked(&self, folder: &str, ladder: &str, rail: Rail, rung: &str) -> Option<&Prescription> {
        self.athletes
            .iter()
            .find(|athlete| athlete.folder == folder)?
            .session
            .iter()
            .filter(|step| step.ladder == ladder && step.rail == rail)
            .filter_map(|step| step.prescription.as_ref())
            .find(|work| work.rung == rung)
    }

    /// Everyone's next steps anew, after plates or unit changed.
    pub fn reckon(&mut self) {
        self.plots = Mutex::default();
        self.journal.forget_lines();
        self.plates = PlatesOnHand::of(&self.book.settings);
        let mut athletes: Vec<Athlete> = self
            .book
            .logs
            .par_iter()
            .filter(|log| !log.is_archived(self.on))
            .map(|log| athlete(log, &self.catalogue, &self.plates, self.on))
            .collect();
        sort(&mut athletes);
        self.athletes = athletes;
    }

    /// The logbook's own files of movements and ladders, as they were read.
    pub fn own_files(&self) -> Vec<OwnFile> {
        let own = self.book.own_movements.iter().chain(&self.book.own_ladders);
        own.map(|(path, text)| OwnFile::new(path, text)).collect()
    }

    /// An own file holds this now, or is gone; everyone's next steps anew. A ladder that is broken now stays as it was.
    pub fn own_changed(&mut self, file: &str, text: Option<String>) {
        let is_own = |file: &str| file == "movements.ron" || file.starts_with("ladders/");
        let new = text.map(|text| (file.to_owned(), text));
        if file == "movements.ron" {
            self.book.own_movements = new;
        } else {
            self.book.own_ladders.retain(|(path, _)| path != file);
            self.book.own_ladders.extend(new);
            self.book.own_ladders.sort();
        }
        let (catalogue, own) = self.book.catalogue();
        self.catalogue = catalogue.keeping_last_good(&self.catalogue, &broken_files(&own));
        self.problems.retain(|problem| !is_own(&problem.place.file));
        self.problems.extend(own);
        self.kept = Mutex::default();
        self.reckon();
    }

    /// The log of an athlete.
    pub fn log(&self, folder: &str) -> Option<&Log> {
        self.book.logs.iter().find(|log| log.folder == folder)
    }

    /// What lies behind the log of an athlete.
    pub fn history(&self, folder: &str) -> Option<&History> {
        let at = self.book.logs.iter().position(|log| log.folder == folder)?;
        self.book.histories.get(at)
    }

    /// The open athlete's log.
    pub fn open_log(&self) -> Option<&Log> {
        self.log(self.folder.as_deref()?)
    }

    /// The log as seen from the day.
    pub fn timeline<'a>(&'a self, log: &'a Log) -> Timeline<'a> {
        Timeline::new(log, &self.catalogue, self.on)
    }

    /// What the open athlete's sets say; of those that were read before only the changed ones are read again.
    pub fn estimates<'t, 'a>(&'t self, timeline: &'t Timeline<'a>) -> Estimates<'t, 'a> {
        Estimates::keeping(timeline, &self.catalogue, self.kept())
    }

    /// What was read so far of the open athlete's sets.
    pub fn kept(&self) -> Arc<Kept> {
        let folder = self.folder.clone().unwrap_or_default();
        let mut all = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        all.entry(folder).or_default().clone()
    }

    /// A plot as it was last made, else as `make` makes it: a slider over the same ladder asks for it many times a second.
    pub fn plotted(&self, of: PlotOf, make: impl FnOnce() -> Option<StrengthView>) -> Option<StrengthView> {
        let mut plots = self.plots.lock().unwrap_or_else(PoisonError::into_inner);
        plots.entry(of).or_insert_with(make).clone()
    }

    /// The rep-max formula that the logbook chose.
    pub fn formula(&self) -> Formula {
        Formula::chosen(&self.book.settings)
    }

    /// The log as Totals counts the body.
    pub fn counting<'a>(&'a self, log: &'a Log) -> Timeline<'a> {
        Timeline::counting(log, &self.catalogue, self.on, Counted::of(&self.book.settings))
    }

    /// Everybody's bests of a movement and side, for so many repetitions; doubted ones are left out.
    pub fn gym_bests(&self, movement: &str, side: Option<Side>) -> Vec<(Kind, u16, f64)> {
        let of = |log: &Log| -> Vec<(Kind, u16, f64)> {
            let timeline = self.counting(log);
            let all = bests(&timeline, self.formula()).into_iter();
            let mine = all.filter(|best| best.movement == movement && best.side == side && !best.doubted);
            mine.filter_map(|best| match best.size {
                Size::Reps(reps) => Some((best.kind, reps, best.value)),
                Size::Hold(_) | Size::Estimate => None,
            })
            .collect()
        };
        self.book.logs.par_iter().flat_map_iter(of).collect()
    }

    /// Opens an athlete, if there is such a one.
    pub fn choose(&mut self, folder: &str) {
        if self.athletes.iter().any(|athlete| athlete.folder == folder) {
            self.folder = Some(folder.to_owned());
            self.ladder = None;
            self.meet = Vec::new();
            self.asked_kg = None;
        }
    }

    /// Opens the next or the previous athlete, around the ends.
    pub fn step(&mut self, by: i8) {
        let count = self.athletes.len();
        let Some((nth, _)) = self.athlete() else { return };
        let next = if by < 0 { nth + count - 1 } else { nth + 1 } % count.max(1);
        if let Some(folder) = self.athletes.get(next).map(|athlete| athlete.folder.clone()) {
            self.choose(&folder);
        }
    }

    /// The logbook's name, or its folder's.
    pub fn title(&self) -> String {
        self.book.settings.name.clone().unwrap_or_else(|| {
            let folder = self.book.root.file_name().unwrap_or_default();
            crate::problem::visible(&folder.to_string_lossy())
        })
    }

    /// The first file that could not be read.
    pub fn broken(&self) -> Option<&Problem> {
        self.problems
            .iter()
            .find(|problem| problem.severity == Severity::Error)
    }
}

/// The files that an error keeps out of use.
fn broken_files(problems: &[Problem]) -> BTreeSet<&str> {
    let errors = problems
        .iter()
        .filter(|problem| problem.severity == Severity::Error);
    errors.map(|problem| problem.place.file.as_str()).collect()
}

/// Everyone's next steps, by need; none when it was stopped.
fn everyone(
    logs: &[Log],
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    on: NaiveDate,
    report: &Report,
) -> Option<Vec<Athlete>> {
    let of = u64::try_from(logs.len()).unwrap_or(u64::MAX);
    let done = AtomicU64::new(0);
    let mut athletes: Vec<Athlete> = logs
        .par_iter()
        .filter(|log| !log.is_archived(on))
        .map(|log| {
            let athlete = athlete(log, catalogue, plates, on);
            let done = done.fetch_add(1, Ordering::Relaxed) + 1;
            (report.at(Progress { done, of }) == Go::On).then_some(athlete)
        })
        .collect::<Option<_>>()?;
    sort(&mut athletes);
    Some(athletes)
}

fn athlete(log: &Log, catalogue: &Catalogue, plates: &PlatesOnHand, on: NaiveDate) -> Athlete {
    let timeline = Timeline::new(log, catalogue, on);
    let steps = next_steps(&timeline, catalogue, plates);
    let session = session_steps(log, &timeline, catalogue, plates, &steps);
    Athlete {
        folder: log.folder.clone(),
        line: line_of(&timeline, catalogue, &steps),
        steps,
        session,
    }
}

fn sort(athletes: &mut [Athlete]) {
    athletes.sort_by(|a, b| {
        let key = |athlete: &Athlete| {
            (
                athlete.line.need,
                athlete.line.athlete.clone(),
                athlete.folder.clone(),
            )
        };
        key(a).cmp(&key(b))
    });
}
