//! What the journal remembers, and what its actions do to it.

use crate::logbook::exchange::Column;
use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::journal::JournalDeed;
use crate::ui::views::{JournalLine, JournalView};

use super::order::Order;

/// What the journal remembers between frames.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct JournalState {
    /// The chosen record, among those shown.
    pub chosen: usize,
    /// What is typed into the filter.
    pub filter: String,
    /// The filter wants the focus.
    pub(super) focus_filter: bool,
    /// What lies over it.
    pub over: Option<Over>,
    /// Bring the chosen record into view.
    pub(super) bring: bool,
    /// Rows that a page has.
    pub(super) page: usize,
    /// A list of choices is open; Esc closes it and leaves what is typed.
    pub(super) has_popup: bool,
    pub(super) closes_popup: bool,
    /// How often the view was loaded.
    loaded: u64,
    pub(super) order: Order,
    /// The chosen record's id: it stays chosen where others come or go.
    id: String,
}

/// What lies over the journal.
#[derive(Debug, Clone, PartialEq)]
pub enum Over {
    /// The record in full.
    Record,
    /// Its fields, typed anew; none until they are loaded.
    Form(Option<Typed>),
    /// It is to be retracted, and why.
    Retract(String),
    /// A remark of today.
    Note(String),
}

/// The fields of a record as typed.
#[derive(Debug, Clone, PartialEq)]
pub struct Typed {
    /// The record's id.
    pub id: String,
    /// Every field, changed or not.
    pub fields: Vec<(Column, String)>,
}

impl JournalState {
    /// A deed is done: what asked for it closes.
    pub(in crate::ui::screens) fn done(&mut self, deed: &JournalDeed) {
        if matches!(deed, JournalDeed::Amend(..) | JournalDeed::Retract(..)) && self.over.is_some() {
            self.over = Some(Over::Record);
        }
    }

    /// Whether a sheet lies over it in which something is typed.
    pub(in crate::ui::screens) fn has_sheet(&self) -> bool {
        matches!(self.over, Some(Over::Form(_) | Over::Retract(_) | Over::Note(_)))
    }

    /// The view was loaded anew.
    pub(in crate::ui::screens) fn loaded(&mut self, view: &JournalView) {
        self.loaded += 1;
        self.refresh(view);
        let open = view.open.as_ref();
        match &mut self.over {
            Some(Over::Form(typed @ None)) => {
                *typed = open.map(|open| Typed {
                    id: open.id.clone(),
                    fields: open
                        .fields
                        .iter()
                        .map(|field| (field.column, field.value.clone()))
                        .collect(),
                });
            }
            Some(Over::Form(Some(typed))) if open.is_none_or(|open| open.id != typed.id) => self.over = None,
            Some(Over::Record | Over::Retract(_)) if open.is_none() => self.over = None,
            _ => {}
        }
    }

    pub(in crate::ui::screens) fn refresh(&mut self, view: &JournalView) {
        let other = if self.order.is_for_other(&self.filter) {
            0
        } else {
            self.chosen
        };
        if self.order.refresh(view, &self.filter, self.loaded) {
            let stays = self.order.position(view, &self.id);
            self.choose(view, stays.unwrap_or(other));
            self.bring = true;
        }
    }

    /// The chosen record.
    pub(super) fn line<'v>(&self, view: &'v JournalView) -> Option<&'v JournalLine> {
        self.order.line(view, self.chosen)
    }

    pub(super) fn choose(&mut self, view: &JournalView, nth: usize) {
        self.chosen = nth.min(self.order.len().saturating_sub(1));
        self.id = self.line(view).map_or_else(String::new, |line| line.id.clone());
    }

    fn go(&mut self, view: &JournalView, nth: usize) {
        self.choose(view, nth);
        self.bring = true;
    }

    /// Opens something over the chosen record.
    fn open(&mut self, view: &JournalView, over: Over, actions: &mut Actions) {
        if let Some(line) = self.line(view) {
            self.over = Some(over);
            actions.write(Deed::Journal(JournalDeed::Show(Some(line.id.clone()))));
        }
    }

    /// Performs an action of this place.
    pub fn perform(&mut self, action: Action, view: &JournalView, actions: &mut Actions) {
        self.refresh(view);
        let may_write = view.read_only.is_none();
        let is_retracted = self.line(view).is_some_and(|line| line.retracted);
        let page = self.page.max(1);
        match action {
            Action::RowUp => self.go(view, self.chosen.saturating_sub(1)),
            Action::RowDown => self.go(view, self.chosen + 1),
            Action::PageUpRows => self.go(view, self.chosen.saturating_sub(page)),
            Action::PageDownRows => self.go(view, self.chosen + page),
            Action::FirstRow => self.go(view, 0),
            Action::LastRow => self.go(view, usize::MAX),
            Action::FilterRecords => self.focus_filter = true,
            // Where it can't be done the record itself says why.
            Action::AmendRecord if may_write && !is_retracted => self.open(view, Over::Form(None), actions),
            Action::RetractRecord if may_write && !is_retracted => {
                self.open(view, Over::Retract(String::new()), actions);
            }
            Action::RestoreRecord if may_write && is_retracted => {
                if let Some(line) = self.line(view) {
                    actions.write(Deed::Journal(JournalDeed::Restore(line.id.clone())));
                }
            }
            Action::OpenRow | Action::AmendRecord | Action::RetractRecord | Action::RestoreRecord => {
                self.open(view, Over::Record, actions);
            }
            Action::NoteRow if may_write => self.over = Some(Over::Note(String::new())),
            Action::Back => self.back(view),
            _ => {}
        }
    }

    fn back(&mut self, view: &JournalView) {
        if self.has_popup {
            self.closes_popup = true;
            return;
        }
        match self.over.take() {
            Some(_) => {}
            None => {
                self.filter.clear();
                self.refresh(view);
            }
        }
    }
}
