//! Which sets of a log belong together: rules ask for those of one form or of one ladder, and a year holds many others.

use crate::catalogue::Ladder;
use crate::units::Side;

use super::{Form, LoggedSet};

/// Places of sets among [`super::Timeline::sets`], in order.
#[derive(Debug, Clone, Default)]
pub(super) struct Kin<'a> {
    /// Sets of one form and side.
    pub(super) forms: Vec<(Form<'a>, Option<Side>, Vec<usize>)>,
    /// Sets logged for one ladder.
    pub(super) ladders: Vec<(&'a Ladder, Vec<usize>)>,
}

impl<'a> Kin<'a> {
    /// Who belongs to whom. Sets come in rows of the same, so each row is looked up once.
    pub(super) fn of(sets: &[LoggedSet<'a>]) -> Self {
        let mut kin = Self::default();
        let mut from = 0;
        for row in sets.chunk_by(are_plainly_kin) {
            let places = from..from + row.len();
            from = places.end;
            let Some(first) = row.first() else { continue };
            if let Some(form) = first.form {
                let is_it = |(known, side, _): &(Form<'a>, Option<Side>, Vec<usize>)| {
                    *known == form && *side == first.side()
                };
                let at = kin.forms.iter().position(is_it).unwrap_or(kin.forms.len());
                match kin.forms.get_mut(at) {
                    Some((_, _, all)) => all.extend(places.clone()),
                    None => kin.forms.push((form, first.side(), places.clone().collect())),
                }
            }
            if let Some(tag) = first.tag {
                let is_it = |(known, _): &(&Ladder, Vec<usize>)| tag.is_on(known);
                let at = kin.ladders.iter().position(is_it).unwrap_or(kin.ladders.len());
                match kin.ladders.get_mut(at) {
                    Some((_, all)) => all.extend(places),
                    None => kin.ladders.push((tag.ladder, places.collect())),
                }
            }
        }
        kin
    }

    /// Sets of `form`, in order, whatever their side.
    pub(super) fn of_form(&self, form: Form<'_>) -> Vec<usize> {
        let mut lists = self.forms.iter().filter(|(known, _, _)| *known == form);
        let mut places = lists
            .next()
            .map_or_else(Vec::new, |(_, _, places)| places.clone());
        let alone = places.len();
        lists.for_each(|(_, _, more)| places.extend(more));
        if places.len() > alone {
            places.sort_unstable();
        }
        places
    }

    /// Sets logged for `ladder`, in order.
    pub(super) fn on_ladder(&self, ladder: &Ladder) -> &[usize] {
        let known = self
            .ladders
            .iter()
            .find(|(known, _)| std::ptr::eq(*known, ladder));
        known.map_or(&[], |(_, places)| places)
    }
}

/// Whether two sets belong together at a glance: what they were logged for lies in one place.
fn are_plainly_kin(a: &LoggedSet<'_>, b: &LoggedSet<'_>) -> bool {
    let ladder = |set: &LoggedSet<'_>| set.tag.map(|tag| std::ptr::from_ref(tag.ladder));
    let help = |form: Form<'_>| form.help.map(std::ptr::from_ref);
    let forms = match (a.form, b.form) {
        (Some(a), Some(b)) => std::ptr::eq(a.movement, b.movement) && help(a) == help(b),
        (a, b) => a.is_none() && b.is_none(),
    };
    forms && a.side() == b.side() && ladder(a) == ladder(b)
}
