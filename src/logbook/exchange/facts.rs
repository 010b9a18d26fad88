//! From a row's cells to what happened: which facts a row holds, and which of them takes the note.

use chrono::NaiveDate;

use crate::catalogue::Site;
use crate::logbook::record::{Fact, PhaseKind, Set, Sex};
use crate::problem::{Problem, quoted};
use crate::units::{Bodyweight, Height, Side};

use super::check::Check;
use super::column::Column;
use super::write::{ACTIVE, ARCHIVED, phase_word, sex_word};

/// Most equal sets in one row.
const MOST_SETS: u16 = 50;

impl<'x> Check<'x, '_> {
    /// How many equal sets the row stands for.
    pub(super) fn sets(&mut self) -> u32 {
        let sets = self.whole(Column::Sets, 1, MOST_SETS).unwrap_or(1);
        if self.ours && sets > 1 {
            self.bad(
                Column::Sets,
                "several sets under one id",
                "clear sets, or clear id",
            );
        }
        sets.into()
    }

    /// What the row says, the most telling fact first. The facts are right only if no problem was found.
    pub(super) fn facts(&mut self) -> Vec<Fact> {
        let side = self.side();
        let bodyweight = self.mass(
            Column::BodyweightKg,
            Column::BodyweightLb,
            *Bodyweight::BELIEVED_KG.start(),
            *Bodyweight::BELIEVED_KG.end(),
        );
        let moved = self.text(Column::Movement).is_some();
        let mut facts = Vec::with_capacity(2);
        if moved {
            facts.extend(self.set(side, bodyweight).map(Fact::Set));
        } else {
            self.refuse_half_a_set();
            facts.extend(self.placement(side));
            facts.extend(bodyweight.map(|bodyweight| Fact::WeighIn {
                bodyweight,
                note: None,
            }));
        }
        facts.extend(self.pain(side));
        facts.extend(self.phase());
        facts.extend(self.goal());
        let placed = self.text(Column::Ladder).is_some();
        let hurts = self.text(Column::Pain).is_some();
        if self.text(Column::Side).is_some() && !moved && !placed && !hurts {
            self.bad(
                Column::Side,
                "side without a set, a placement or pain",
                "clear side",
            );
        }
        let mut note = self.note();
        if let Some(
            Fact::Set(Set { note: own, .. })
            | Fact::Placement { why: own, .. }
            | Fact::WeighIn { note: own, .. }
            | Fact::Pain { note: own, .. }
            | Fact::Phase { note: own, .. }
            | Fact::Archive { note: own, .. }
            | Fact::Goal { note: own, .. },
        ) = facts.first_mut()
        {
            *own = note.take();
        }
        facts.extend(self.profile());
        facts.extend(note.map(|text| Fact::Note { text }));
        facts
    }

    /// An export's note comes back to the letter; another file's loses outer spaces, which nobody sees.
    fn note(&self) -> Option<String> {
        let text = if self.ours {
            self.verbatim(Column::Note)
        } else {
            self.text(Column::Note)
        };
        text.map(str::to_owned)
    }

    fn side(&mut self) -> Option<Side> {
        let text = self.text(Column::Side)?;
        match text {
            "L" | "l" => Some(Side::Left),
            "R" | "r" => Some(Side::Right),
            _ => {
                self.not_one_of(Column::Side, text, "L, R or an empty cell");
                None
            }
        }
    }

    fn refuse_half_a_set(&mut self) {
        for column in [
            Column::AddedKg,
            Column::AddedLb,
            Column::Reps,
            Column::HoldS,
            Column::Rir,
            Column::Rpe,
            Column::Outcome,
            Column::Sets,
        ] {
            if self.text(column).is_some() {
                let name = column.name();
                let mend = format!("name the movement, or clear {name}");
                self.bad(column, format!("{name} without a movement"), mend);
            }
        }
    }

    fn pain(&mut self, side: Option<Side>) -> Option<Fact> {
        let score = self
            .whole(Column::Pain, 0, 10)
            .and_then(|score| u8::try_from(score).ok());
        let site = self.text(Column::PainSite);
        let words = || Site::ALL.map(Site::word).join(", ");
        let found = site.and_then(|text| {
            Site::ALL
                .into_iter()
                .find(|site| site.word().eq_ignore_ascii_case(text))
        });
        match (self.text(Column::Pain), site) {
            (Some(_), None) => self.bad(
                Column::Pain,
                "pain without pain_site",
                format!("say where: {}", words()),
            ),
            (None, Some(_)) => self.bad(
                Column::PainSite,
                "pain_site without pain",
                "give pain from 0 to 10, or clear pain_site",
            ),
            (_, Some(text)) if found.is_none() => self.not_one_of(Column::PainSite, text, &words()),
            _ => {}
        }
        Some(Fact::Pain {
            site: found?,
            side,
            score: score?,
            note: None,
        })
    }

    fn phase(&mut self) -> Option<Fact> {
        let text = self.text(Column::Phase)?;
        let known = [
            PhaseKind::Cut,
            PhaseKind::Hold,
            PhaseKind::Gain,
            PhaseKind::Deload,
        ];
        for (word, archived) in [(ARCHIVED, true), (ACTIVE, false)] {
            if word.eq_ignore_ascii_case(text) {
                return Some(Fact::Archive { archived, note: None });
            }
        }
        let found = known
            .into_iter()
            .find(|kind| phase_word(*kind).eq_ignore_ascii_case(text));
        if found.is_none() {
            self.not_one_of(Column::Phase, text, "cut, hold, gain, deload, archived or active");
        }
        Some(Fact::Phase {
            kind: found?,
            note: None,
        })
    }

    /// Notes a birth date after the row's day. It is no error: the day may be a wrong clock's, and that must not keep a row out.
    pub(super) fn born_by(&mut self, day: NaiveDate, facts: &[Fact]) {
        for fact in facts {
            if let Fact::Profile { born: Some(born), .. } = fact
                && born.date() > day
            {
                let place = self.place(Column::Born);
                self.notes.push(Problem::damage(
                    place,
                    format!(
                        "born {} is after {day}, the day of the row",
                        quoted(born.as_str())
                    ),
                    "correct one of the two by amend",
                ));
            }
        }
    }

    /// Birth date, sex and height; the name comes once for the file.
    fn profile(&mut self) -> Option<Fact> {
        let height_cm = self.within(
            Column::HeightCm,
            *Height::BELIEVED_CM.start(),
            *Height::BELIEVED_CM.end(),
            " cm",
        );
        let born = self.date(Column::Born);
        let sex = self.text(Column::Sex).and_then(|text| {
            let found = [Sex::Female, Sex::Male]
                .into_iter()
                .find(|sex| sex_word(*sex).eq_ignore_ascii_case(text));
            if found.is_none() {
                self.not_one_of(Column::Sex, text, "female, male or an empty cell");
            }
            found
        });
        let any = height_cm.is_some() || born.is_some() || sex.is_some();
        any.then_some(Fact::Profile {
            name: None,
            born,
            sex,
            height_cm,
        })
    }
}
