//! The facts of one rail on one day, gathered once; rules only ask.

use chrono::NaiveDate;

use crate::catalogue::{Catalogue, Caution, Ladder, Movement, Rung, Site};
use crate::timeline::{EVIDENCE_DAYS, LoggedSet, Timeline};
use crate::units::{Bodyweight, Rail, Share, SystemLoad};

use super::entry::Named;
use super::judge::{Exposure, Measure, Went, exposures};
use super::loads::{Loadable, PlatesOnHand};
use super::standing::{Line, Standing};

/// What a fall adds to the range and the standard of a rung without load: 2 reps or 2 s. Common practice, no source.
const FALL_ADDS: f64 = 2.0;
/// Age of a pain report that still counts, days. From memory of pain-monitoring practice (Thomeé 1997).
const PAIN_DAYS: i64 = 6;
/// A report this high counts longer …
pub(crate) const STRONG_PAIN: u8 = 6;
/// … for so many days. Common practice, no source.
pub(crate) const STRONG_PAIN_DAYS: i64 = 27;

/// How the rung is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Known {
    /// By a placement or a tagged set.
    ByRecord,
    /// By no-record, confirmed by recent sets of its form.
    ByForm,
    /// Not at all: the rung is the one to begin at.
    No,
}

/// The worst of the latest pain reports that touch the rung.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PainNow {
    /// How much, 0 to 10.
    pub score: u8,
    /// Where.
    pub site: Site,
    /// When it was reported.
    pub date: NaiveDate,
}

/// Everything that the rules may ask about one rail.
pub struct Facts<'t, 'a> {
    /// The athlete's log on this day.
    pub timeline: &'t Timeline<'a>,
    /// The ladder.
    pub ladder: &'a Ladder,
    /// The main line as the athlete may climb it.
    pub line: Line<'a>,
    /// The rail.
    pub rail: Rail,
    /// The rung now, or the one to begin at.
    pub rung: &'a Rung,
    /// How it is known.
    pub known: Known,
    /// Where the rail would begin (no-record only).
    pub named: Named<'a>,
    /// The rung with what falls have added.
    pub measure: Measure<'a>,
    /// The day of the last fall.
    pub last_fall: Option<NaiveDate>,
    /// Exposures of the stay, in order.
    pub exposures: Vec<Exposure<'t, 'a>>,
    /// The rung's movement.
    pub movement: Option<&'a Movement>,
    /// The worst pain that counts today; none if nothing above 0 was reported.
    pub pain: Option<PainNow>,
    /// The open rung above.
    pub above: Option<&'a Rung>,
    /// The open rung to fall back to.
    pub below: Option<&'a Rung>,
    /// Plates on hand.
    pub plates: &'t PlatesOnHand,
    /// Fewest reps or seconds of the other side's latest judged day, where it stands on the same rung.
    pub other_lowest: Option<f64>,
}

impl<'t, 'a> Facts<'t, 'a> {
    /// The facts of `rail`, given where it stands by record and which rung it would begin at.
    pub fn gather(
        timeline: &'t Timeline<'a>,
        ladder: &'a Ladder,
        rail: Rail,
        standing: Option<Standing<'a>>,
        named: Named<'a>,
        (plates, catalogue): (&'t PlatesOnHand, &'a Catalogue),
    ) -> Self {
        let line = Line::of(ladder, timeline);
        let rung = standing.map_or(named.rung, |standing| standing.rung);
        let falls = falls(timeline, ladder, rail, rung);
        let loaded = Measure::plain(rung).is_loaded();
        let extra = if loaded {
            0.0
        } else {
            falls.iter().map(|_| FALL_ADDS).sum()
        };
        let mut measure = Measure { rung, extra };
        let mut exposures = exposures(
            timeline,
            measure,
            rail,
            standing.and_then(|standing| standing.after),
        );
        let recent = exposures
            .last()
            .is_some_and(|last| timeline.age(last.date) <= RECENT_FORM_DAYS);
        let known = match (standing, recent) {
            (Some(_), _) => Known::ByRecord,
            (None, true) => Known::ByForm,
            (None, false) => Known::No,
        };
        if known == Known::No {
            // Where a rail begins without a record, falls are not counted.
            exposures.clear();
            measure = Measure::plain(rung);
        }
        let movement = catalogue.movement(&rung.movement);
        Self {
            timeline,
            ladder,
            rail,
            rung,
            known,
            named,
            measure,
            last_fall: falls.last().copied(),
            exposures,
            movement,
            pain: pain_now(timeline, movement, rail),
            above: line.above(rung),
            below: line.below(rung),
            line,
            plates,
            other_lowest: None,
        }
    }

    /// Days since `date`.
    pub fn age(&self, date: NaiveDate) -> i64 {
        self.timeline.age(date)
    }

    /// Judged exposures, oldest first.
    pub fn judged(&self) -> impl DoubleEndedIterator<Item = &Exposure<'t, 'a>> + Clone {
        self.exposures.iter().filter(|exposure| !exposure.light)
    }

    /// The latest judged exposure.
    pub fn latest(&self) -> Option<&Exposure<'t, 'a>> {
        self.judged().next_back()
    }

    /// The judged exposure before the latest.
    pub fn before_latest(&self) -> Option<&Exposure<'t, 'a>> {
        self.judged().rev().nth(1)
    }

    /// The last exposure, light ones too.
    pub fn last_exposure(&self) -> Option<NaiveDate> {
        self.exposures.last().map(|exposure| exposure.date)
    }

    /// The work load of the latest judged day, kg.
    pub fn work_kg(&self) -> Option<f64> {
        self.latest().and_then(Exposure::work_kg)
    }

    /// Whether the load decides on this rung.
    pub fn is_loaded(&self) -> bool {
        self.measure.is_loaded()
    }

    /// Whether the rung carries a caution.
    pub fn has(&self, caution: Caution) -> bool {
        self.rung.cautions.contains(&caution)
    }

    /// The days that count toward passing: of the last four judged, after the last fall, those that meet the standard.
    pub fn passed_on(&self) -> Vec<NaiveDate> {
        let mut days: Vec<NaiveDate> = self
            .judged()
            .rev()
            .take(LAST_JUDGED)
            .filter(|exposure| exposure.meets && self.last_fall.is_none_or(|fall| exposure.date > fall))
            .map(|exposure| exposure.date)
            .collect();
        days.reverse();
        days
    }

    /// Whether the rung is passed.
    pub fn is_passed(&self) -> bool {
        let days = self.passed_on();
        let standard = &self.rung.standard;
        let apart = days
            .first()
            .zip(days.last())
            .map_or(0, |(first, last)| (*last - *first).num_days());
        days.len() >= usize::from(standard.days)
            && apart >= i64::from(standard.days_apart)
            && self.latest().is_some_and(|latest| latest.went != Went::Missed)
    }

    /// Whether the athlete ever logged help (a load below zero).
    pub fn ever_helped(&self) -> bool {
        self.timeline.sets.iter().any(|set| set.added.kg() < 0.0)
    }

    /// What can be moved today with the plates on hand on a rung with load; none without bodyweight or share.
    pub fn loadable(&self, with_help: bool) -> Option<Loadable<'t>> {
        let share = self.timeline.share(self.movement?, Some(&self.rung.help))?;
        Some(self.plates.loadable(share, self.bodyweight(share)?, with_help))
    }

    fn bodyweight(&self, share: Share) -> Option<Bodyweight> {
        let none_needed = || (share == Share::OUTSIDE).then(|| Bodyweight::new(crate::units::Mass::ZERO));
        self.timeline.bodyweight().or_else(none_needed)
    }

    /// How high the rail stands, in half rungs.
    pub fn height(&self) -> usize {
        self.ladder.half_rungs(self.rung)
    }

    /// The unit steps by which sides are compared: reps, or seconds on holds.
    pub fn side_gap(&self) -> f64 {
        self.rung.standard.side_gap
    }
}

/// A set of the form in the last so many days lets an unplaced rail stand on the rung that no-record names. Common
/// practice, no source.
const RECENT_FORM_DAYS: i64 = 28;
/// Of so many judged days the standard is looked for. Common practice, no source.
const LAST_JUDGED: usize = 4;

/// The days on which the next rung asked more than was thought: a set above `rung` failed under its own range, and
/// nothing above was tried on the next day on this ladder.
fn falls(timeline: &Timeline<'_>, ladder: &Ladder, rail: Rail, rung: &Rung) -> Vec<NaiveDate> {
    let height = ladder.half_rungs(rung);
    // (day, something above was tried, something above failed under its range)
    let mut days: Vec<(NaiveDate, bool, bool)> = Vec::new();
    let counts = |set: &&LoggedSet<'_>| set.counts_for(rail) && timeline.is_evidence(set);
    for set in timeline.on_ladder(ladder).filter(counts) {
        let Some(tag) = set.tag else { continue };
        let above = tag.height > height;
        let failed = above && set.failed() && set.amount < tag.rung.work.range.lo();
        match days.last_mut() {
            Some((date, tried, fell)) if *date == set.date => {
                *tried |= above;
                *fell |= failed;
            }
            _ => days.push((set.date, above, failed)),
        }
    }
    days.iter()
        .enumerate()
        .filter(|(at, (_, _, fell))| *fell && days.get(at + 1).is_none_or(|(_, tried, _)| !tried))
        .map(|(_, (date, _, _))| *date)
        .collect()
}

/// For each site that touches the movement its latest report, if it still counts; the worst of them.
pub(super) fn pain_now(timeline: &Timeline<'_>, movement: Option<&Movement>, rail: Rail) -> Option<PainNow> {
    Site::ALL
        .into_iter()
        .filter_map(|site| latest_at(timeline, site, movement, rail))
        .filter(|pain| still_counts(pain.score, timeline.age(pain.date)))
        .max_by_key(|pain| (pain.score, pain.date))
}

/// Whether a report of `score` that is `age` days old still counts.
pub(crate) fn still_counts(score: u8, age: i64) -> bool {
    score > 0 && (age <= PAIN_DAYS || (score >= STRONG_PAIN && age <= STRONG_PAIN_DAYS))
}

fn latest_at(
    timeline: &Timeline<'_>,
    site: Site,
    movement: Option<&Movement>,
    rail: Rail,
) -> Option<PainNow> {
    timeline
        .pains
        .iter()
        .filter(|pain| pain.site == site && pain.touches(movement, rail))
        .filter(|pain| timeline.age(pain.date) <= EVIDENCE_DAYS)
        .map(|pain| PainNow {
            score: pain.score,
            site,
            date: pain.date,
        })
        .max_by_key(|pain| (pain.date, pain.score))
}

/// A load in system terms from kilograms.
pub(crate) fn system(kg: f64) -> SystemLoad {
    SystemLoad::new(crate::units::Mass::from_kg(kg))
}
