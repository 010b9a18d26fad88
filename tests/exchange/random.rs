//! Rows and logs that nobody would write.

use chrono::{Days, NaiveDate};
use proptest::prelude::*;
use proptest::sample::select;
use rungwright::catalogue::{Catalogue, Site};
use rungwright::logbook::exchange::{Dates, Feed, Import, Options, Row, write};
use rungwright::logbook::record::{Fact, Load, PhaseKind, Placed, Record, Set, Sex};
use rungwright::logbook::{Id, Log, Name, Written};
use rungwright::units::{Effort, Given, Outcome, Reps, Seconds, Side, Typed, Unit};

use crate::kit::{FILE, by_id, good, logs, read_bytes};

/// Text of any characters but NUL, rich in those that CSV and spreadsheet programs take for more than text.
fn text() -> impl Strategy<Value = String> {
    let special = select(vec![
        '"', ',', '\r', '\n', '\'', '=', '+', '-', '@', '\t', ' ', ';', '5', 'é', '\u{202e}', '/',
    ]);
    let any = any::<char>().prop_filter("NUL", |c| *c != '\0');
    prop::collection::vec(prop_oneof![3 => special, 1 => any], 0..12)
        .prop_map(|chars| chars.into_iter().collect())
}

/// A name that no catalogue has.
fn unknown() -> impl Strategy<Value = String> {
    (text(), text()).prop_map(|(before, after)| format!("{before}zzq{after}").replace('/', "|"))
}

fn maybe<T: std::fmt::Debug + Clone + 'static>(
    one: impl Strategy<Value = T> + 'static,
) -> BoxedStrategy<Option<T>> {
    prop::option::of(one).boxed()
}

fn side() -> BoxedStrategy<Option<Side>> {
    maybe(select(vec![Side::Left, Side::Right]))
}

fn at() -> impl Strategy<Value = Written> {
    let times = [
        "",
        "",
        "",
        " 07:30",
        "T18:05:09.25Z",
        "t18:05-08:00",
        "T18:05+02:00",
    ];
    (0..20_u64, select(times.to_vec())).prop_map(|(days, time)| {
        let date = NaiveDate::from_ymd_opt(1969, 12, 25).unwrap() + Days::new(days);
        Written::parse(&format!("{date}{time}")).unwrap()
    })
}

fn mass(low: f64, high: f64) -> BoxedStrategy<Typed> {
    let halves = move |unit: Unit| {
        let factor = if unit == Unit::Kg { 1.0 } else { 2.2 };
        let (low, high) = (low * factor, high * factor);
        prop_oneof![
            (low..high).prop_map(move |value| Typed::new(value, unit).unwrap()),
            (low..high)
                .prop_map(move |value| Typed::new((value * 4.0).floor().max(low) / 4.0, unit).unwrap()),
        ]
    };
    prop_oneof![halves(Unit::Kg), halves(Unit::Lb)]
        .prop_filter("in range", move |typed| (low..=high).contains(&typed.mass().kg()))
        .boxed()
}

/// Ladder and rung: known, half known, unknown.
fn rung() -> BoxedStrategy<(String, String)> {
    let known = select(vec![
        ("weighted-dip", "plus-25"),
        ("one-arm-pull-up", "one-arm"),
        ("weighted-pull-up", "bodyweight"),
    ]);
    prop_oneof![
        known
            .clone()
            .prop_map(|(ladder, rung)| (ladder.to_owned(), rung.to_owned())),
        (known, unknown()).prop_map(|((ladder, _), rung)| (ladder.to_owned(), rung)),
        (unknown(), unknown()),
    ]
    .boxed()
}

fn set() -> impl Strategy<Value = Fact> {
    let movement = prop_oneof![
        select(vec!["dip", "pull-up", "dead-hang", "one-arm-pull-up"]).prop_map(str::to_owned),
        unknown()
    ];
    let load = prop_oneof![
        mass(0.0, 400.0).prop_map(Load::Added),
        mass(0.0, 299.0).prop_map(Load::Assistance)
    ];
    let effort = prop_oneof![
        (0..=1000_u16).prop_map(|count| Effort::Reps(Reps::try_from(count).unwrap())),
        (0.001..3600.0_f64).prop_map(|seconds| Effort::Hold(Seconds::try_from(seconds).unwrap())),
    ];
    let left = prop_oneof![
        (0..=20_u8).prop_map(|halves| Given::rir(f64::from(halves) / 2.0).unwrap()),
        (10..=20_u8).prop_map(|halves| Given::rpe(f64::from(halves) / 2.0).unwrap()),
    ];
    let outcome = select(vec![Outcome::Done, Outcome::Missed, Outcome::Form]);
    let tag = prop_oneof![
        Just((None, None)),
        rung().prop_map(|(ladder, _)| (Some(ladder), None)),
        rung().prop_map(|(_, rung)| (None, Some(rung))),
        rung().prop_map(|(ladder, rung)| (Some(ladder), Some(rung))),
    ];
    let first = (movement, side(), maybe(load), effort, maybe(left));
    (first, outcome, maybe(mass(20.0, 400.0)), tag, maybe(text())).prop_map(
        |((movement, side, load, effort, left), outcome, bodyweight, (ladder, rung), note)| {
            Fact::Set(Set {
                movement: movement.into(),
                side,
                load,
                effort,
                left,
                outcome,
                bodyweight,
                ladder: ladder.map(Into::into),
                rung: rung.map(Into::into),
                note,
            })
        },
    )
}

fn fact() -> impl Strategy<Value = Fact> {
    let placed = prop_oneof![Just(None), Just(Some(true)), Just(Some(false))];
    prop_oneof![
        4 => set(),
        1 => (mass(20.0, 400.0), maybe(text())).prop_map(|(bodyweight, note)| Fact::WeighIn { bodyweight, note }),
        1 => (select(Site::ALL.to_vec()), side(), 0..=10_u8, maybe(text()))
            .prop_map(|(site, side, score, note)| Fact::Pain { site, side, score, note }),
        1 => (rung(), placed, side(), maybe(text())).prop_map(|((ladder, rung), placed, side, why)| {
            let rung = match placed {
                None => Placed::Joined,
                Some(true) => Placed::On(rung),
                Some(false) => Placed::SetAside,
            };
            Fact::Placement { ladder, side, rung, why }
        }),
        1 => (select(vec![PhaseKind::Cut, PhaseKind::Hold, PhaseKind::Gain, PhaseKind::Deload]), maybe(text()))
            .prop_map(|(kind, note)| Fact::Phase { kind, note }),
        1 => (any::<bool>(), maybe(text())).prop_map(|(archived, note)| Fact::Archive { archived, note }),
        1 => (rung(), maybe(at()), maybe(text()))
            .prop_map(|((ladder, rung), by, note)| Fact::Goal { ladder, rung, by, note }),
        1 => (maybe(at()), maybe(select(vec![Sex::Female, Sex::Male])), maybe(50.0..260.0_f64))
            .prop_map(|(born, sex, height_cm)| Fact::Profile { name: None, born, sex, height_cm }),
        1 => text().prop_map(|text| Fact::Note { text }),
    ]
}

fn log() -> impl Strategy<Value = Log> {
    let name = text().prop_filter_map("a name", |text| Name::parse(&text).ok());
    let records = prop::collection::vec((any::<u128>(), at(), 0..4_u32, fact()), 0..12);
    (name, at(), records).prop_map(|(name, first, records)| {
        let mut records: Vec<Record> = records
            .into_iter()
            .map(|(id, at, nth, what)| Record {
                id: Id::from(id),
                rev: 0,
                dev: "test".into(),
                at,
                nth,
                what,
            })
            .collect();
        records.push(name.record(&first, 0, "test"));
        records.sort_by(Log::order);
        Log {
            name: name.as_str().into(),
            folder: "folder".into(),
            records,
        }
    })
}

/// A file of cells that mean something somewhere, in any column.
fn sheet() -> impl Strategy<Value = String> {
    let cell = select(vec![
        "",
        "",
        "",
        "Ana",
        "Ben",
        "2026-03-18",
        "2026-03-19",
        "18.03.2026",
        "dip",
        "Pull Up",
        "dead-hang",
        "L",
        "80",
        "20",
        "-15",
        "5",
        "0",
        "3",
        "2.5",
        "fail",
        "form",
        "weighted-dip",
        "plus-25",
        "none",
        "elbow",
        "cut",
        "weighted-dip/plus-25",
        "female",
        "\"a,\nb\"",
        "'=x",
        "\"",
        "x\"y",
        "1e5",
        "é",
    ]);
    let columns = [
        "athlete",
        "date",
        "movement",
        "side",
        "bodyweight_kg",
        "added_kg",
        "reps",
        "hold_s",
        "rir",
        "rpe",
        "outcome",
        "ladder",
        "rung",
        "pain",
        "pain_site",
        "phase",
        "goal",
        "sex",
        "sets",
        "note",
        "id",
    ];
    let row = prop::collection::vec(cell, columns.len()).prop_map(|cells| cells.join(","));
    prop::collection::vec(row, 0..8)
        .prop_map(move |rows| format!("{}\n{}\n", columns.join(","), rows.join("\n")))
}

/// Rows that are good and often equal.
fn good_rows() -> impl Strategy<Value = Vec<String>> {
    let who = select(vec!["Ana", "Ben"]);
    let when = select(vec!["2026-03-18", "2026-03-19", "2026-03-18 10:00"]);
    let what = select(vec![
        "dip,5,20,,,,",
        "dip,5,20,,,,3",
        "dip,6,,,,,",
        "dip,5,20,3,elbow,,2",
        "dip,5,20,3,elbow,,",
        ",,,3,elbow,,",
        ",,,,,cut,",
        ",,,,,,",
    ]);
    prop::collection::vec(
        (who, when, what).prop_map(|(who, when, what)| format!("{who},{when},{what}")),
        1..10,
    )
}

const GOOD_HEADER: &str = "athlete,date,movement,reps,added_kg,pain,pain_site,phase,sets";

fn fed(bytes: &[u8]) -> (Vec<Row>, bool) {
    let options = Options::default();
    let import = Import {
        file: FILE,
        options: &options,
        catalogue: Catalogue::shipped(),
        device: "test",
        known: &|_| true,
    };
    let mut feed = Feed::new(&import);
    let mut rows = Vec::new();
    for line in bytes.split_inclusive(|byte| *byte == b'\n') {
        let fed = feed.line(line);
        rows.extend(fed.rows);
        if fed.wrong.is_some() {
            return (rows, true);
        }
    }
    let fed = feed.end();
    rows.extend(fed.rows);
    (rows, fed.wrong.is_some())
}

proptest! {
    #[test]
    fn no_bytes_make_the_reading_panic(bytes in prop::collection::vec(any::<u8>(), 0..400), order in select(vec![Dates::Ymd, Dates::Dmy, Dates::Mdy])) {
        let options = Options { dates: order, athlete: Some("Ana".into()), ..Options::default() };
        let _ = read_bytes(&bytes, &options, &|_| false);
        let mut with_header = b"date,athlete,note\n".to_vec();
        with_header.extend(&bytes);
        let _ = read_bytes(&with_header, &options, &|_| false);
        let _ = fed(&with_header);
    }

    #[test]
    fn a_row_is_either_good_or_told_and_no_id_comes_twice(csv in sheet()) {
        if let Ok(sheet) = read_bytes(csv.as_bytes(), &Options::default(), &|_| false) {
            prop_assert!(sheet.problems.listed.len() >= sheet.bad_rows.min(1));
            prop_assert_eq!(by_id(&[&sheet]).len(), sheet.records());
            for problem in &sheet.problems.listed {
                prop_assert!(problem.place.line >= 2 && problem.place.line <= csv.lines().count());
            }
        }
    }

    #[test]
    fn rows_fed_one_at_a_time_are_those_of_the_whole_file(csv in sheet()) {
        let whole = read_bytes(csv.as_bytes(), &Options::default(), &|_| true);
        let (rows, stopped) = fed(csv.as_bytes());
        let Ok(whole) = whole else { prop_assert!(stopped); return Ok(()) };
        prop_assert_eq!(stopped, whole.bad_rows > 0);
        prop_assert_eq!(&rows[..], &whole.rows[..rows.len()]);
        prop_assert!(stopped || rows.len() == whole.rows.len());
    }

    #[test]
    fn the_order_of_rows_changes_no_record(rows in good_rows(), seed in any::<u64>()) {
        let mut turned = rows.clone();
        turned.sort_by_key(|row| row.bytes().fold(seed, |hash, byte| hash.rotate_left(5) ^ u64::from(byte)));
        let read = |rows: &[String]| {
            let csv = format!("{GOOD_HEADER}\n{}\n", rows.join("\n"));
            read_bytes(csv.as_bytes(), &Options::default(), &|_| true).unwrap()
        };
        let (one, other) = (read(&rows), read(&turned));
        prop_assert_eq!(one.bad_rows, 0);
        prop_assert_eq!(by_id(&[&one]), by_id(&[&other]));
    }

    #[test]
    fn any_logbook_comes_back_from_its_export_byte_for_byte(first in log(), second in log()) {
        let (one, two) = if first.name < second.name { (first, second) } else { (second, first) };
        prop_assume!(one.name != two.name);
        let exported = write([&one, &two]);
        let sheet = good(&exported);
        let back = logs(&[&sheet]);
        let ids = |logs: &[&Log]| -> Vec<Id> { logs.iter().flat_map(|log| &log.records).map(|record| record.id).collect() };
        prop_assert_eq!(ids(&back.iter().collect::<Vec<_>>()), ids(&[&one, &two]));
        prop_assert_eq!(write(&back), exported);
    }

    #[test]
    fn no_cell_of_an_export_begins_a_formula(log in log()) {
        // Read apart from this project, by the csv crate.
        let csv = write([&log]);
        for row in csv::ReaderBuilder::new().from_reader(csv.as_bytes()).records() {
            for cell in row.unwrap().iter() {
                let formula = cell.starts_with(['=', '+', '-', '@', '\t', '\r']);
                let number = cell.trim_start_matches(['+', '-']).bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
                prop_assert!(!formula || number, "{cell:?}");
            }
        }
    }
}
