//! Which lines are shown, kept until filter, need or view change: scrolling works out nothing anew.

use std::collections::BTreeMap;

use crate::ui::views::{Need, RosterLine, RosterView};

/// The places of the lines that pass the filter, and how many of them each need has.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Order {
    made_of: Option<(String, Option<Need>, u64)>,
    places: Vec<usize>,
    counts: BTreeMap<Need, usize>,
    all: BTreeMap<Need, usize>,
}

impl Order {
    /// Works it out, if anything it is made of changed.
    pub fn refresh(&mut self, view: &RosterView, filter: &str, need: Option<Need>, loaded: u64) {
        let same = self.made_of.as_ref().is_some_and(|(old, old_need, old_loaded)| {
            old == filter && *old_need == need && *old_loaded == loaded
        });
        if same {
            return;
        }
        let wanted = filter.trim().to_lowercase();
        let places = view.lines.iter().enumerate().filter(|(_, line)| {
            need.is_none_or(|need| line.need == need) && (wanted.is_empty() || says(line, &wanted))
        });
        self.places = places.map(|(place, _)| place).collect();
        (self.counts, self.all) = (BTreeMap::new(), BTreeMap::new());
        for line in &view.lines {
            *self.all.entry(line.need).or_default() += 1;
        }
        for line in self.places.iter().filter_map(|place| view.lines.get(*place)) {
            *self.counts.entry(line.need).or_default() += 1;
        }
        self.made_of = Some((filter.to_owned(), need, loaded));
    }

    /// How many lines are shown.
    pub fn len(&self) -> usize {
        self.places.len()
    }

    /// Whether none is.
    pub fn is_empty(&self) -> bool {
        self.places.is_empty()
    }

    /// The line at a place among those shown.
    pub fn line<'v>(&self, view: &'v RosterView, nth: usize) -> Option<&'v RosterLine> {
        view.lines.get(*self.places.get(nth)?)
    }

    /// How many of those shown have a need.
    pub fn count(&self, need: Need) -> usize {
        self.counts.get(&need).copied().unwrap_or(0)
    }

    /// Everyone's needs, shown or not, with how many have each.
    pub fn needs(&self) -> impl Iterator<Item = (Need, usize)> + '_ {
        self.all.iter().map(|(need, count)| (*need, *count))
    }
}

fn says(line: &RosterLine, wanted: &str) -> bool {
    [
        line.name.as_str(),
        line.ladder.as_str(),
        line.rung.as_str(),
        line.need.title(),
    ]
    .into_iter()
    .any(|text| text.to_lowercase().contains(wanted))
}
