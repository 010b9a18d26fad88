//! Claims about lines: both readers agree, and no flipped byte goes unsaid.

use proptest::prelude::*;

use super::*;
use crate::catalogue::Site;
use crate::logbook::Written;
use crate::logbook::record::{Fact, Id, Load, PhaseKind, Placed, Set, Sex};
use crate::units::{Effort, Given, Outcome, Reps, Seconds, Side, Typed, Unit};

const PULL_UP: &str = r#"(id: "01J9ZC0V7Y3X4W5V6T7S8R9QAB", rev: 0, dev: "mill", at: "2026-03-18", nth: 0, what: Set(movement: "pull-up", load: Added(kg(20)), effort: Reps(5), left: rir(1)))"#;

#[test]
fn a_set_reads_as_a_person_would_say_it() {
    let line = sealed(PULL_UP.to_owned());
    let reading = read(&line);
    assert_eq!(reading.faults, []);
    let record = reading.record.unwrap();
    assert_eq!(write(&record), line);
    assert!(fast::set(PULL_UP).is_some());
}

#[test]
fn the_checksum_is_the_crc_32_of_zlib_and_png() {
    // ITU-T V.42 CRC-32, check value of "123456789": cbf43926 (PNG specification, annex D; zlib's crc32).
    assert_eq!(sealed("123456789".to_owned()), "123456789 //cbf43926");
}

fn typed() -> impl Strategy<Value = Typed> {
    (0u32..400_000, any::<bool>()).prop_map(|(grams, is_lb)| {
        let unit = if is_lb { Unit::Lb } else { Unit::Kg };
        Typed::new(f64::from(grams) / 1000.0, unit).unwrap()
    })
}

fn bodyweight() -> impl Strategy<Value = Typed> {
    (50u32..400).prop_map(|kg| Typed::new(f64::from(kg) + 0.25, Unit::Kg).unwrap())
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z][a-z-]{0,12}",
        any::<String>(),
        Just("\"\\ //0a1b2c3d\n\t\u{202e}é".to_owned()),
        Just("\\u{41}".to_owned()),
    ]
}

fn written() -> impl Strategy<Value = Written> {
    let day = (1900i32..=2100, 1u32..=12, 1u32..=28);
    (day, 0u32..24, 0u32..60, 0u8..5).prop_map(|((year, month, day), hour, minute, form)| {
        let date = format!("{year:04}-{month:02}-{day:02}");
        let text = match form {
            0 => format!("{date}T{hour:02}:{minute:02}+05:30"),
            1 => format!("{date} {hour:02}:{minute:02}"),
            2 => format!("{date}t{hour:02}:{minute:02}:07.25z"),
            _ => date,
        };
        Written::parse(&text).unwrap()
    })
}

fn set() -> BoxedStrategy<Set> {
    let load = prop_oneof![
        typed().prop_map(|mass| Some(Load::Added(mass))),
        (0u32..300).prop_map(|kg| Some(Load::Assistance(Typed::new(f64::from(kg), Unit::Kg).unwrap()))),
        Just(None),
    ]
    .boxed();
    let effort = prop_oneof![
        (0u16..=1000).prop_map(|count| Effort::Reps(Reps::try_from(count).unwrap())),
        (1u32..3_600_000).prop_map(|ms| Effort::Hold(Seconds::try_from(f64::from(ms) / 1000.0).unwrap())),
    ]
    .boxed();
    let left = prop_oneof![
        Just(None),
        (0u8..=20).prop_map(|halves| Some(Given::rir(f64::from(halves) / 2.0).unwrap())),
        (10u8..=20).prop_map(|halves| Some(Given::rpe(f64::from(halves) / 2.0).unwrap())),
    ]
    .boxed();
    let outcome = prop_oneof![Just(Outcome::Done), Just(Outcome::Missed), Just(Outcome::Form)];
    let tags = (
        proptest::option::of(text()),
        proptest::option::of(text()),
        proptest::option::of(text()),
    );
    (
        (text(), side(), load, effort),
        (left, outcome, proptest::option::of(bodyweight()), tags),
    )
        .prop_map(
            |((movement, side, load, effort), (left, outcome, bodyweight, (ladder, rung, note)))| Set {
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
            },
        )
        .boxed()
}

fn side() -> impl Strategy<Value = Option<Side>> {
    prop_oneof![Just(None), Just(Some(Side::Left)), Just(Some(Side::Right))]
}

fn other_fact() -> impl Strategy<Value = Fact> {
    let note = || proptest::option::of(text());
    prop_oneof![
        (
            note(),
            proptest::option::of(written()),
            proptest::option::of(50u16..=260)
        )
            .prop_map(|(name, born, cm)| Fact::Profile {
                name,
                born,
                sex: cm.map(|cm| if cm % 2 == 0 { Sex::Female } else { Sex::Male }),
                height_cm: cm.map(f64::from),
            }),
        (bodyweight(), note()).prop_map(|(bodyweight, note)| Fact::WeighIn { bodyweight, note }),
        (0usize..8, side(), 0u8..=10, note()).prop_map(|(site, side, score, note)| Fact::Pain {
            site: Site::ALL[site],
            side,
            score,
            note,
        }),
        (text(), side(), text(), note()).prop_map(|(ladder, side, rung, why)| Fact::Placement {
            ladder,
            side,
            rung: match rung.len() % 3 {
                0 => Placed::Joined,
                1 => Placed::SetAside,
                _ => Placed::On(rung),
            },
            why,
        }),
        (0usize..4, note()).prop_map(|(kind, note)| Fact::Phase {
            kind: [
                PhaseKind::Cut,
                PhaseKind::Hold,
                PhaseKind::Gain,
                PhaseKind::Deload
            ][kind],
            note,
        }),
        (any::<bool>(), note()).prop_map(|(archived, note)| Fact::Archive { archived, note }),
        (text(), text(), proptest::option::of(written()), note()).prop_map(|(ladder, rung, by, note)| {
            Fact::Goal {
                ladder,
                rung,
                by,
                note,
            }
        }),
        text().prop_map(|text| Fact::Note { text }),
        (any::<u128>(), note()).prop_map(|(target, why)| Fact::Retract {
            target: Id::from_bytes(target.to_be_bytes()),
            why,
        }),
        any::<u128>().prop_map(|target| Fact::Restore {
            target: Id::from_bytes(target.to_be_bytes()),
        }),
        (any::<u128>(), written(), any::<u32>(), set()).prop_map(|(target, at, nth, set)| Fact::Amend {
            target: Id::from_bytes(target.to_be_bytes()),
            at,
            nth,
            what: Box::new(Fact::Set(set)),
        }),
    ]
}

fn record() -> impl Strategy<Value = Record> {
    // Boxed: unboxed trees of choices overflow a debug build's stack.
    let what = prop_oneof![3 => set().prop_map(Fact::Set).boxed(), 2 => other_fact().boxed()].boxed();
    (
        any::<u128>(),
        any::<u32>(),
        "[a-z0-9-]{1,32}",
        written(),
        any::<u32>(),
        what,
    )
        .prop_map(|(id, rev, dev, at, nth, what)| Record {
            id: Id::from_bytes(id.to_be_bytes()),
            rev,
            dev,
            at,
            nth,
            what,
        })
}

proptest! {
    #![proptest_config(ProptestConfig::default())]

    #[test]
    fn what_is_written_is_one_line_and_comes_back(record in record()) {
        let line = write(&record);
        prop_assert!(!line.contains(['\n', '\r']));
        prop_assert!(!line.chars().any(char::is_control));
        let reading = read(&line);
        prop_assert_eq!(reading.faults, vec![]);
        prop_assert_eq!(reading.record, Some(record));
    }

    #[test]
    fn both_readers_agree_on_every_line_that_either_accepts(
        record in record(),
        at in any::<prop::sample::Index>(),
        with in prop_oneof![any::<char>(), prop::sample::select(b" ()\",:.0159-_+eEx\\/aLR".to_vec()).prop_map(char::from)],
        how in 0u8..4,
    ) {
        let line = write(&record);
        let (body, _) = split_checksum(&line);
        let mut chars: Vec<char> = body.chars().collect();
        let at = at.index(chars.len());
        match how {
            0 => {}
            1 => chars[at] = with,
            2 => chars.insert(at, with),
            _ => { chars.remove(at); }
        }
        let body: String = chars.into_iter().collect();
        if let Some(quick) = fast::set(&body) {
            let (slow, unknown) = ron_text::record(&body).unwrap();
            prop_assert_eq!(quick, slow);
            prop_assert_eq!(unknown, Vec::<String>::new());
        }
    }

    #[test]
    fn a_changed_byte_is_always_reported(record in record(), at in any::<prop::sample::Index>(), with in any::<u8>()) {
        let line = write(&record);
        let mut bytes = line.clone().into_bytes();
        let at = at.index(bytes.len());
        prop_assume!(bytes[at] != with);
        bytes[at] = with;
        // Bytes that are no text are reported by the journal, before a line is read.
        if let Ok(text) = std::str::from_utf8(&bytes) {
            prop_assert!(!read(text).faults.is_empty(), "{text}");
        }
    }
}

#[test]
fn sets_as_they_are_written_take_the_quick_way() {
    for what in [
        r#"Set(movement: "dip", effort: Reps(0))"#,
        r#"Set(movement: "one-arm-pull-up", side: L, load: Assistance(lb(12.5)), effort: Reps(3), left: rpe(8.5), outcome: Missed, bodyweight: kg(81.25), ladder: "oap", rung: "x", note: "Zoë's")"#,
        r#"Set(movement: "front-lever", effort: Hold(12.5), outcome: Form, note: "cold")"#,
    ] {
        let body = format!(
            r#"(id: "01J9ZC0V7Y3X4W5V6T7S8R9QAB", rev: 3, dev: "mill", at: "2026-03-18T17:30+01:00", nth: 2, what: {what})"#
        );
        let quick = fast::set(&body).unwrap();
        assert_eq!(write(&quick), sealed(body));
    }
}

#[test]
fn a_newer_versions_kind_is_kept_and_its_revision_counts() {
    let body = PULL_UP
        .replace("rev: 0", "rev: 7")
        .replace("Set(movement", "Swing(bells: [kg(24)], movement");
    let reading = read(&sealed(body));
    assert_eq!(reading.record, None);
    assert_eq!(reading.rev, Some(7));
    assert_eq!(reading.faults[0].severity, Severity::Damage);
    assert!(
        reading.faults[0].what.contains("\"Swing\""),
        "{:?}",
        reading.faults
    );
}

#[test]
fn an_amend_to_a_newer_versions_kind_is_kept_as_that_kind_is() {
    let inner =
        r#"Amend(target: "00000000000000000000000009", at: "2026-03-18", nth: 0, what: Swing(reps: 5))"#;
    let body = format!(
        r#"(id: "0000000000000000000000000A", rev: 3, dev: "mill", at: "2026-03-19", nth: 0, what: {inner})"#
    );
    let reading = read(&sealed(body.clone()));
    assert_eq!((reading.record, reading.rev), (None, Some(3)));
    let fault = &reading.faults[0];
    assert_eq!(fault.severity, Severity::Damage, "{}", fault.what);
    assert!(fault.what.contains("\"Swing\""), "{}", fault.what);
    assert_eq!(fault.column, body.rfind("what").unwrap() + 1);
    // An amend that lacks something is no newer kind.
    let torn = read(&sealed(body.replace("Swing(reps: 5)", "Set(movement: 5)")));
    assert_eq!(torn.faults[0].severity, Severity::Error);
}

#[test]
fn a_newer_versions_field_costs_nothing_of_the_set() {
    let body = PULL_UP.replace("effort", "tempo: (3, 0, 1), effort");
    let reading = read(&sealed(body.clone()));
    assert_eq!(reading.record, fast::set(PULL_UP));
    assert_eq!(reading.faults.len(), 1);
    assert_eq!(reading.faults[0].severity, Severity::Damage);
    assert_eq!(reading.faults[0].column, body.find("tempo").unwrap() + 1);
}

#[test]
fn values_that_cannot_be_count_nowhere() {
    for (from, to, says) in [
        ("Reps(5)", "Reps(1001)", "reps 1001 is outside 0 to 1000"),
        ("kg(20)", "kg(401)", "added load 401 kg is outside 0 to 400 kg"),
        ("kg(20)", "kg(-1)", "added load -1 kg is outside 0 to 400 kg"),
        ("kg(20)", "kg(inf)", "mass inf is outside -10000 to 10000"),
        ("rir(1)", "rir(12)", "reserve 12 is outside 0 to 10 in halves"),
        (
            "2026-03-18",
            "2026-02-30",
            "\"2026-02-30\" is no day of the calendar",
        ),
    ] {
        let reading = read(&sealed(PULL_UP.replace(from, to)));
        assert_eq!(reading.record, None);
        assert!(reading.faults[0].what.contains(says), "{:?}", reading.faults);
        assert_eq!(reading.faults[0].severity, Severity::Error);
    }
}

#[test]
fn deep_nesting_is_refused_before_anything_recurses() {
    let deep = format!("{}{}", "(".repeat(100_000), ")".repeat(100_000));
    assert!(read(&deep).faults[0].what.contains("nest"));
    let in_a_string = PULL_UP.replace("pull-up", &"(".repeat(500));
    assert!(read(&sealed(in_a_string)).record.is_some());
}
