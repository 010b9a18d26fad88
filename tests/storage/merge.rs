//! Any order, repetition and split of merges gives the same log, amend against retract too.

use std::collections::{BTreeMap, BTreeSet};

use crate::help::chance::Chance;
use crate::help::*;
use rungwright::logbook::journal::{self, Form};
use rungwright::logbook::record::{Fact, Id, Record};
use rungwright::logbook::{History, Log, Written, line, merge};

/// How many random logbooks: few by default, 100,000 with RUNGWRIGHT_LONG_TESTS.
fn rounds() -> u64 {
    if std::env::var_os("RUNGWRIGHT_LONG_TESTS").is_some() {
        100_000
    } else {
        200
    }
}

fn merged(journals: &[Vec<String>]) -> (Vec<Record>, History) {
    let texts: Vec<String> = journals.iter().map(|lines| lines.join("\n") + "\n").collect();
    let mut entries = Vec::new();
    let mut rev = 0;
    for text in &texts {
        let journal = journal::read("journal-mill.ron", text.as_bytes(), Form::Journal);
        assert_eq!(journal.problems, []);
        entries.extend(journal.entries);
        rev = rev.max(journal.highest_rev);
    }
    merge::merge(entries, rev)
}

/// Records of five devices that know of each other only in part: the same ids, revisions and targets meet.
fn random_records(chance: &mut Chance) -> Vec<Record> {
    let count = 1 + chance.below(30);
    (0..count)
        .map(|_| {
            let number = 1 + chance.below(12);
            let target = id(u128::from(1 + chance.below(12)));
            let day = 1 + u32::try_from(chance.below(3)).unwrap();
            let reps = u16::try_from(1 + chance.below(4)).unwrap();
            let what = match chance.below(8) {
                0 | 1 => Fact::Amend {
                    target,
                    at: Written::parse(&format!("2026-03-{day:02}")).unwrap(),
                    nth: 0,
                    what: Box::new(pull_ups(0, 1, reps).what),
                },
                2 => Fact::Retract { target, why: None },
                3 => Fact::Restore { target },
                _ => pull_ups(0, 1, reps).what,
            };
            let is_change = matches!(
                what,
                Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. }
            );
            let device = ["desk", "gym", "mill", "pad", "phone"][usize::try_from(chance.below(5)).unwrap()];
            let rev = u32::try_from(chance.below(4)).unwrap() + u32::from(is_change);
            let number = u128::from(number)
                + if is_change {
                    1000 * u128::from(1 + chance.below(9))
                } else {
                    0
                };
            fact(number, rev, device, day, what)
        })
        .collect()
}

/// The rules of merging, said again in the plainest way.
fn by_the_book(records: &[Record]) -> Vec<Record> {
    let key = |record: &Record| {
        let line = line::write(record);
        (
            record.rev,
            record.dev.clone(),
            line::split_checksum(&line).0.to_owned(),
        )
    };
    let mut union: BTreeMap<Id, Record> = BTreeMap::new();
    for record in records {
        let is_higher = union.get(&record.id).is_none_or(|there| key(there) < key(record));
        if is_higher {
            union.insert(record.id, record.clone());
        }
    }
    let gone = |id: Id| {
        let highest = |wanted: &dyn Fn(&Fact) -> bool| {
            union
                .values()
                .filter(|record| wanted(&record.what))
                .map(|record| record.rev)
                .max()
        };
        let retracted = highest(&|what| matches!(what, Fact::Retract { target, .. } if *target == id));
        let restored = highest(&|what| matches!(what, Fact::Restore { target } if *target == id));
        retracted.is_some_and(|rev| restored.is_none_or(|restored| restored <= rev))
    };
    let plain = |record: &&Record| {
        !matches!(
            record.what,
            Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. }
        )
    };
    let mut ids: BTreeSet<Id> = union.values().filter(plain).map(|record| record.id).collect();
    for record in union.values() {
        if let Fact::Amend { target, .. } = record.what
            && !gone(record.id)
        {
            ids.insert(target);
        }
    }
    let mut log: Vec<Record> = ids
        .into_iter()
        .filter(|id| !gone(*id))
        .filter_map(|wanted| {
            let amend = union
                .values()
                .filter(|record| matches!(record.what, Fact::Amend { target, .. } if target == wanted))
                .filter(|record| !gone(record.id))
                .max_by_key(|record| key(record));
            match amend {
                Some(Record {
                    rev,
                    dev,
                    what: Fact::Amend { at, nth, what, .. },
                    ..
                }) => Some(Record {
                    id: wanted,
                    rev: *rev,
                    dev: dev.clone(),
                    at: at.clone(),
                    nth: *nth,
                    what: (**what).clone(),
                }),
                _ => union.get(&wanted).filter(plain).cloned(),
            }
        })
        .collect();
    log.sort_by(Log::order);
    log
}

#[test]
fn the_order_the_split_and_the_repetition_of_journals_change_nothing() {
    for seed in 0..rounds() {
        let mut chance = Chance::new(seed);
        let records = random_records(&mut chance);
        let mut lines: Vec<String> = records.iter().map(line::write).collect();
        let expected = merged(std::slice::from_ref(&lines));
        assert_eq!(expected.0, by_the_book(&records), "seed {seed}");
        let mut journals: Vec<Vec<String>> = vec![Vec::new(); 5];
        chance.shuffle(&mut lines);
        for line in &lines {
            for _ in 0..=chance.below(2) {
                let journal = usize::try_from(chance.below(5)).unwrap();
                journals[journal].push(line.clone());
            }
        }
        assert_eq!(merged(&journals), expected, "seed {seed}");
    }
}

fn retract(number: u128, rev: u32, dev: &str, target: u128) -> Record {
    let what = Fact::Retract {
        target: id(target),
        why: Some("a slip".to_owned()),
    };
    fact(number, rev, dev, 18, what)
}

fn restore(number: u128, rev: u32, target: u128) -> Record {
    fact(number, rev, "mill", 18, Fact::Restore { target: id(target) })
}

fn amend(number: u128, rev: u32, dev: &str, target: u128, reps: u16) -> Record {
    let Record { at, nth, what, .. } = pull_ups(target, 18, reps);
    let what = Fact::Amend {
        target: id(target),
        at,
        nth,
        what: Box::new(what),
    };
    fact(number, rev, dev, 18, what)
}

fn log_of(records: &[Record]) -> (Vec<Record>, History) {
    merged(&[records.iter().map(line::write).collect()])
}

fn reps_of(records: &[Record]) -> Vec<f64> {
    let sets = records.iter().filter_map(|record| match &record.what {
        Fact::Set(set) => Some(set.effort.amount()),
        _ => None,
    });
    sets.collect()
}

#[test]
fn a_retraction_beats_every_amend_made_without_knowledge_of_it() {
    let set = pull_ups(1, 18, 5);
    for (desk, mill) in [(1, 1), (5, 1), (1, 5)] {
        let (records, history) = log_of(&[
            set.clone(),
            amend(2, desk, "desk", 1, 8),
            retract(3, mill, "mill", 1),
        ]);
        assert_eq!(records, []);
        assert_eq!(reps_of(&[history.retracted[0].record.clone()]), [8.0]);
        assert_eq!(history.retracted[0].why.as_deref(), Some("a slip"));
    }
}

#[test]
fn a_restoration_brings_the_amended_set_back() {
    let (set, gone) = (pull_ups(1, 18, 5), retract(3, 2, "mill", 1));
    let (records, history) = log_of(&[
        set.clone(),
        amend(2, 1, "desk", 1, 8),
        gone.clone(),
        restore(4, 3, 1),
    ]);
    assert_eq!(reps_of(&records), [8.0]);
    assert_eq!(history.amended[0].was, set);
    assert_eq!(history.highest_rev, 3);
    // A restoration that did not know of the retraction does not exceed it.
    assert_eq!(log_of(&[set, gone, restore(4, 2, 1)]).0, []);
}

#[test]
fn of_two_amends_the_highest_revision_then_device_holds() {
    let set = pull_ups(1, 18, 5);
    let both = [set.clone(), amend(2, 1, "desk", 1, 6), amend(3, 1, "mill", 1, 7)];
    assert_eq!(reps_of(&log_of(&both).0), [7.0]);
    let later = [set, amend(2, 2, "desk", 1, 6), amend(3, 1, "mill", 1, 7)];
    assert_eq!(reps_of(&log_of(&later).0), [6.0]);
}

#[test]
fn taking_an_amend_back_shows_the_set_as_it_was_logged() {
    let (records, _) = log_of(&[
        pull_ups(1, 18, 5),
        amend(2, 1, "desk", 1, 8),
        retract(3, 2, "mill", 2),
    ]);
    assert_eq!(reps_of(&records), [5.0]);
}

#[test]
fn an_amend_that_arrives_before_its_record_shows_what_it_holds() {
    let (records, _) = log_of(&[amend(2, 1, "desk", 1, 8)]);
    assert_eq!(reps_of(&records), [8.0]);
    assert_eq!(records[0].id, id(1));
}

#[test]
fn a_newer_versions_record_counts_for_the_highest_revision() {
    let newer = line::sealed(r#"(id: "00000000000000000000000009", rev: 41, dev: "mill", at: "2026-03-18", nth: 0, what: Swing(reps: 5))"#.to_owned());
    let journal = journal::read("journal-mill.ron", newer.as_bytes(), Form::Journal);
    assert_eq!(journal.highest_rev, 41);
}
