//! What the roster remembers, and what its actions do to it.

use std::collections::BTreeSet;

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::gym::GymDeed;
use crate::ui::views::{GymView, Need, Paper, Place, RosterView};

use super::order::Order;
use super::over::{NewPerson, Over, Person};

/// What the roster remembers between frames.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RosterState {
    /// The chosen line, among those shown.
    pub chosen: usize,
    /// Only this need, if one is picked.
    pub need: Option<Need>,
    /// What is typed into the filter.
    pub filter: String,
    /// The filter wants the focus.
    pub focus_filter: bool,
    /// Keys of marked athletes.
    pub marked: BTreeSet<String>,
    /// What lies over it.
    pub over: Option<Over>,
    /// A class was asked for, and its view comes with the next loading.
    pub(super) wants_class: bool,
    /// Bring the chosen line into view.
    pub(super) bring: bool,
    /// How often the view was loaded.
    pub(super) loaded: u64,
    pub(super) order: Order,
}

impl RosterState {
    pub(super) fn refresh(&mut self, view: &RosterView) {
        self.order.refresh(view, &self.filter, self.need, self.loaded);
        self.chosen = self.chosen.min(self.order.len().saturating_sub(1));
    }

    /// The athletes that a sheet is for, in the roster's order: the marked ones, else the chosen one.
    pub fn meant(&self, view: &RosterView) -> Vec<String> {
        let marked = view
            .lines
            .iter()
            .filter(|line| self.marked.contains(&line.athlete));
        let marked: Vec<String> = marked.map(|line| line.athlete.clone()).collect();
        if !marked.is_empty() {
            return marked;
        }
        let chosen = self.order.line(view, self.chosen);
        chosen.map(|line| line.athlete.clone()).into_iter().collect()
    }

    /// The athletes whose results are typed: the marked ones, and those of whom something is typed and not saved; without any
    /// the chosen one.
    fn class(&self, view: &RosterView, typed: &[String]) -> Vec<String> {
        let is_meant = |key: &&String| self.marked.contains(*key) || typed.contains(key);
        let keys = view.lines.iter().map(|line| &line.athlete);
        let class: Vec<String> = keys.filter(is_meant).cloned().collect();
        if class.is_empty() { self.meant(view) } else { class }
    }

    /// Performs an action of this place.
    pub fn perform(&mut self, action: Action, view: &RosterView, gym: &GymView, actions: &mut Actions) {
        self.refresh(view);
        let last = self.order.len().saturating_sub(1);
        let chosen = self.order.line(view, self.chosen);
        match action {
            Action::RowUp => self.chosen = self.chosen.saturating_sub(1),
            Action::RowDown => self.chosen = (self.chosen + 1).min(last),
            Action::PageUpRows => self.chosen = self.chosen.saturating_sub(PAGE),
            Action::PageDownRows => self.chosen = (self.chosen + PAGE).min(last),
            Action::NextGroup => {
                let now = chosen.map(|line| line.need);
                let next = (self.chosen..self.order.len())
                    .find(|nth| self.order.line(view, *nth).map(|line| line.need) != now);
                self.chosen = next.unwrap_or(0);
            }
            Action::NeedOnly(nth) => {
                let need = usize::from(nth)
                    .checked_sub(1)
                    .and_then(|nth| Need::ALL.get(nth))
                    .copied();
                self.need = need.filter(|need| self.need != Some(*need));
                self.chosen = 0;
            }
            Action::OpenRow => {
                if let Some(line) = chosen {
                    actions.write(Deed::ChooseAthlete(line.athlete.clone()));
                    actions.ask(Action::Go(Place::Next));
                }
            }
            Action::MarkRow => {
                if let Some(line) = chosen {
                    if !self.marked.remove(&line.athlete) {
                        self.marked.insert(line.athlete.clone());
                    }
                    self.chosen = (self.chosen + 1).min(last);
                }
            }
            Action::MarkShown => self.mark_shown(view),
            Action::TonightsSheet => self.over = Some(Over::print(Paper::Pages, self.meant(view), gym)),
            Action::ProgressReport => {
                let athlete = chosen.map(|line| line.athlete.clone()).into_iter().collect();
                self.over = Some(Over::print(Paper::Progress, athlete, gym));
            }
            Action::TypeResults => {
                let meant = self.class(view, &gym.typed);
                if !meant.is_empty() {
                    self.wants_class = true;
                    actions.write(Deed::Gym(GymDeed::ShowClass(meant)));
                }
            }
            Action::NewAthlete => self.over = Some(Over::New(NewPerson::default())),
            Action::EditAthlete => {
                self.over = Some(Over::Edit(chosen.map(Person::of).unwrap_or_default()));
            }
            Action::NoteRow => {
                if let Some(line) = chosen {
                    self.over = Some(Over::Note(Person::of(line)));
                }
            }
            Action::FilterRoster | Action::Find => self.focus_filter = true,
            Action::Back if self.over.take().is_some() => return,
            Action::Back if !self.filter.is_empty() || self.need.is_some() => {
                self.filter.clear();
                self.need = None;
            }
            Action::Back => self.marked.clear(),
            _ => return,
        }
        self.bring = true;
    }

    /// A place was chosen for the page to print.
    pub fn picked(&mut self, path: &std::path::Path) {
        if let Some(Over::Print(printing)) = &mut self.over {
            printing.picked(path);
        }
    }

    /// Marks all that are shown; where all are marked already, unmarks them.
    fn mark_shown(&mut self, view: &RosterView) {
        let shown: Vec<String> = (0..self.order.len())
            .filter_map(|nth| self.order.line(view, nth))
            .map(|line| line.athlete.clone())
            .collect();
        if shown.iter().all(|athlete| self.marked.contains(athlete)) {
            shown.iter().for_each(|athlete| {
                self.marked.remove(athlete);
            });
        } else {
            self.marked.extend(shown);
        }
    }
}

/// Lines that Page Up and Page Down go.
const PAGE: usize = 25;
