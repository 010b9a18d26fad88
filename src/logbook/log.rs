//! One athlete's log as it stands: amended contents in place, retracted records left out, in order.

use chrono::NaiveDate;

use crate::units::Height;

use super::record::{Fact, Record, Sex};

/// One athlete's records after the union of all journals, ordered by (day and time as written, `nth`, id).
#[derive(Debug, Clone, PartialEq)]
pub struct Log {
    /// The name on screen: the newest `Profile` name, else the folder's name.
    pub name: String,
    /// The athlete's folder under `athletes/`.
    pub folder: String,
    /// Records that count, in order; never an amend, retract or restore.
    pub records: Vec<Record>,
}

/// What is known of the athlete's person. Holds for every day, before it was said too.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Person {
    /// Birth date.
    pub born: Option<NaiveDate>,
    /// Sex.
    pub sex: Option<Sex>,
    /// Standing height.
    pub height: Option<Height>,
}

impl Log {
    /// An order of records within a log.
    pub fn order(a: &Record, b: &Record) -> std::cmp::Ordering {
        a.at.cmp_in_day(&b.at)
            .then(a.nth.cmp(&b.nth))
            .then(a.id.cmp(&b.id))
    }

    /// The log as it was before the sets of `day`; everything else of that day stays, a bodyweight that was logged with a
    /// set too. A session's advice comes from it, so that the first set of an evening does not change what is asked of the
    /// second.
    pub fn without_sets_of(&self, day: NaiveDate) -> Self {
        let stays = |record: &Record| match &record.what {
            Fact::Set(set) if record.at.date() == day => set.bodyweight.map(|bodyweight| Record {
                what: Fact::WeighIn {
                    bodyweight,
                    note: None,
                },
                ..record.clone()
            }),
            _ => Some(record.clone()),
        };
        Self {
            name: self.name.clone(),
            folder: self.folder.clone(),
            records: self.records.iter().filter_map(stays).collect(),
        }
    }

    /// Whether the athlete is off the roster on `day`: the latest record up to then that says.
    pub fn is_archived(&self, day: NaiveDate) -> bool {
        let until = self.records.partition_point(|record| record.at.date() <= day);
        let said = self
            .records
            .iter()
            .take(until)
            .rev()
            .find_map(|record| match record.what {
                Fact::Archive { archived, .. } => Some(archived),
                _ => None,
            });
        said.unwrap_or(false)
    }

    /// Birth date, sex and height: the newest value of each.
    pub fn person(&self) -> Person {
        let mut person = Person::default();
        self.records.iter().for_each(|record| person.learn(&record.what));
        person
    }
}

impl Person {
    /// Takes in what a later record says of the person.
    pub fn learn(&mut self, fact: &Fact) {
        if let Fact::Profile {
            born, sex, height_cm, ..
        } = fact
        {
            self.born = born.as_ref().map(super::Written::date).or(self.born);
            self.sex = sex.or(self.sex);
            self.height = height_cm.and_then(|cm| Height::from_cm(cm).ok()).or(self.height);
        }
    }
}
