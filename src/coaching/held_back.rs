//! What holds a rail of a one-arm ladder back: a link that lies below the others, or the place that notes on missed sets name.

use chrono::NaiveDate;

use crate::catalogue::{Companion, Ladder};
use crate::strength::{Coverage, LinkKind, RailBelief};
use crate::timeline::{LoggedSet, Timeline};
use crate::units::Rail;

/// A note on a missed set tells of a weak place for so many days. Twelve weeks: common practice, no source.
const NOTE_DAYS: i64 = 84;

/// Where a repetition failed, as people note it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// Out of the hang.
    Bottom,
    /// Half way.
    Middle,
    /// At the bar.
    Top,
    /// The hand opened.
    Grip,
}

impl Place {
    const ALL: [(Place, &'static [&'static str]); 4] = [
        (Place::Bottom, &["bottom"]),
        (Place::Middle, &["middle", "mid", "halfway"]),
        (Place::Top, &["top"]),
        (Place::Grip, &["grip"]),
    ];

    /// The movement that trains it beside a one-arm ladder. Common practice, no source.
    fn companion(self) -> &'static str {
        match self {
            Place::Bottom | Place::Grip => "one-arm-hang",
            Place::Middle => "one-arm-negative",
            Place::Top => "one-arm-lock-off",
        }
    }
}

/// What holds a rail back, and what trains it.
#[derive(Debug, Clone, PartialEq)]
pub struct HeldBack {
    /// How it is known.
    pub by: Evidence,
    /// The movement's id that trains it.
    pub companion: String,
}

/// How it is known what holds a rail back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Evidence {
    /// One kind of evidence lies clearly below the others, both as 80 % bands on the ladder's scale.
    Link {
        /// Which.
        kind: LinkKind,
        /// Its band.
        own: (f64, f64),
        /// That of the others together.
        others: (f64, f64),
    },
    /// Notes on missed sets name the place.
    Notes {
        /// Where.
        place: Place,
        /// On how many sets.
        sets: usize,
        /// On the latest of them.
        last: NaiveDate,
    },
}

/// What holds a rail of a one-arm ladder back, by its links and by the notes on its missed sets. Empty where nothing stands out.
pub fn held_back(
    timeline: &Timeline<'_>,
    ladder: &Ladder,
    rail: Rail,
    believed: Option<&RailBelief>,
) -> Vec<HeldBack> {
    let by_link = believed
        .and_then(|believed| believed.weakest)
        .and_then(|weakest| {
            let evidence = Evidence::Link {
                kind: weakest.kind,
                own: weakest.own.band(Coverage::Eighty),
                others: weakest.others.band(Coverage::Eighty),
            };
            Some((evidence, weakest.kind.companion()?))
        });
    let by_notes = noted(timeline, ladder, rail)
        .map(|(place, sets, last)| (Evidence::Notes { place, sets, last }, place.companion()));
    [by_link, by_notes]
        .into_iter()
        .flatten()
        .filter_map(|(by, movement)| {
            let companion = companion(ladder, movement)?.movement.clone();
            Some(HeldBack { by, companion })
        })
        .collect()
}

/// The companion of the ladder with this movement, on whichever rung it hangs.
pub fn companion<'l>(ladder: &'l Ladder, movement: &str) -> Option<&'l Companion> {
    let mut all = ladder.rungs.iter().flat_map(|rung| &rung.companions);
    all.find(|companion| companion.movement == movement)
}

/// The place that most notes on missed sets name, the latest of equals; how many, and the last day.
fn noted(timeline: &Timeline<'_>, ladder: &Ladder, rail: Rail) -> Option<(Place, usize, NaiveDate)> {
    let on_ladder = |set: &&LoggedSet<'_>| {
        let climbs = ladder.rungs.iter().any(|rung| rung.movement == set.set.movement);
        climbs && set.failed() && set.counts_for(rail) && timeline.age(set.date) <= NOTE_DAYS
    };
    let notes: Vec<(NaiveDate, String)> = timeline
        .evidence()
        .filter(on_ladder)
        .filter_map(|set| Some((set.date, set.set.note.as_ref()?.to_lowercase())))
        .collect();
    Place::ALL
        .into_iter()
        .filter_map(|(place, words)| {
            let says = |note: &str| {
                note.split(|c: char| !c.is_alphanumeric())
                    .any(|word| words.contains(&word))
            };
            let days: Vec<NaiveDate> = notes
                .iter()
                .filter(|(_, note)| says(note))
                .map(|(date, _)| *date)
                .collect();
            Some((place, days.len(), days.last().copied()?))
        })
        .max_by_key(|(_, sets, last)| (*sets, *last))
}
