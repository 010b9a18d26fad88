//! Which records are shown, kept until filter or view change: scrolling works out nothing anew.

use crate::ui::views::{JournalLine, JournalView};

/// The places of the records that pass the filter.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Order {
    made_of: Option<(String, u64)>,
    places: Vec<usize>,
}

impl Order {
    /// Works it out, if anything it is made of changed; true if it did.
    pub fn refresh(&mut self, view: &JournalView, filter: &str, loaded: u64) -> bool {
        let is_same = |(old, times): &(String, u64)| old == filter && *times == loaded;
        if self.made_of.as_ref().is_some_and(is_same) {
            return false;
        }
        let wanted = filter.to_lowercase();
        let wanted: Vec<&str> = wanted.split_whitespace().collect();
        let passes = |line: &JournalLine| wanted.iter().all(|word| line.says.contains(word));
        let lines = view.lines.iter().enumerate();
        self.places = lines
            .filter(|(_, line)| passes(line))
            .map(|(place, _)| place)
            .collect();
        self.made_of = Some((filter.to_owned(), loaded));
        true
    }

    /// Whether it was made for another filter.
    pub fn is_for_other(&self, filter: &str) -> bool {
        self.made_of.as_ref().is_some_and(|(old, _)| old != filter)
    }

    /// How many are shown.
    pub fn len(&self) -> usize {
        self.places.len()
    }

    /// Whether none is.
    pub fn is_empty(&self) -> bool {
        self.places.is_empty()
    }

    /// The record at a place among those shown.
    pub fn line<'v>(&self, view: &'v JournalView, nth: usize) -> Option<&'v JournalLine> {
        view.lines.get(*self.places.get(nth)?)
    }

    /// Where the record with this id stands among those shown.
    pub fn position(&self, view: &JournalView, id: &str) -> Option<usize> {
        let is_it = |place: &usize| view.lines.get(*place).is_some_and(|line| line.id == id);
        self.places.iter().position(is_it)
    }
}
