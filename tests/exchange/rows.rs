//! What one row says.

use chrono::NaiveDate;
use rungwright::logbook::exchange::{Options, Sheet};
use rungwright::logbook::record::{Fact, Load, PhaseKind, Placed, Sex};
use rungwright::units::{Effort, Given, Outcome, Reps, Seconds, Side, Typed, Unit};

use crate::kit::{good, good_with, only_set, records};

fn reps(count: u16) -> Effort {
    Effort::Reps(Reps::try_from(count).unwrap())
}

fn kg(value: f64) -> Typed {
    Typed::new(value, Unit::Kg).unwrap()
}

fn lb(value: f64) -> Typed {
    Typed::new(value, Unit::Lb).unwrap()
}

fn facts(sheet: &Sheet) -> Vec<Fact> {
    records(sheet)
        .into_iter()
        .map(|record| record.what.clone())
        .collect()
}

#[test]
fn a_set_keeps_every_cell_of_its_row() {
    let set = only_set(
        "athlete,date,movement,side,bodyweight_lb,added_lb,reps,rpe,outcome,ladder,rung,note\n\
         Ana,2026-03-18,One Arm_Pull-UP,r,165.5,-12.5,3,8.5,FAIL,One-Arm Pull-up,Fingers 3,grip gave\n",
    );
    assert_eq!(set.movement, "one-arm-pull-up");
    assert_eq!(set.side, Some(Side::Right));
    assert_eq!(set.bodyweight, Some(lb(165.5)));
    assert_eq!(set.load, Some(Load::Assistance(lb(12.5))));
    assert_eq!(set.effort, reps(3));
    assert_eq!(set.left, Some(Given::rpe(8.5).unwrap()));
    assert_eq!(set.outcome, Outcome::Missed);
    assert_eq!(set.ladder.as_deref(), Some("one-arm-pull-up"));
    assert_eq!(set.rung.as_deref(), Some("fingers-3"));
    assert_eq!(set.note.as_deref(), Some("grip gave"));
}

#[test]
fn an_empty_outcome_is_a_success_and_a_belt_of_zero_is_not_an_empty_cell() {
    let set = only_set("athlete,date,movement,added_kg,reps\nAna,2026-03-18,dip,0,5.0\n");
    assert_eq!((set.outcome, set.effort), (Outcome::Done, reps(5)));
    assert_eq!(set.load, Some(Load::Added(kg(0.0))));
    let plain = only_set("athlete,date,movement,added_kg,reps\nAna,2026-03-18,dip,,5\n");
    assert_eq!(plain.load, None);
}

#[test]
fn a_hold_is_counted_in_seconds_and_may_have_parts() {
    let set = only_set("athlete,date,movement,hold_s\nAna,2026-03-18,dead-hang,32.5\n");
    assert_eq!(set.effort, Effort::Hold(Seconds::try_from(32.5).unwrap()));
}

#[test]
fn a_missed_single_has_no_reps() {
    let set = only_set("athlete,date,movement,added_kg,reps,outcome\nAna,2026-03-18,dip,60,0,fail\n");
    assert_eq!((set.effort, set.outcome), (reps(0), Outcome::Missed));
}

#[test]
fn a_bodyweight_lives_in_its_set_and_only_a_row_without_one_is_a_weigh_in() {
    let sheet = good(
        "athlete,date,movement,bodyweight_kg,reps,note\n\
         Ana,2026-03-18,dip,80.2,5,\n\
         Ana,2026-03-19,,79.9,,after breakfast\n",
    );
    let [Fact::Set(set), weighed] = &facts(&sheet)[..] else {
        panic!("{sheet:?}")
    };
    assert_eq!(set.bodyweight, Some(kg(80.2)));
    let note = Some("after breakfast".to_owned());
    assert_eq!(
        *weighed,
        Fact::WeighIn {
            bodyweight: kg(79.9),
            note
        }
    );
}

#[test]
fn a_ladder_without_a_movement_joins_places_or_sets_aside() {
    let sheet = good(
        "athlete,date,side,ladder,rung,note\n\
         Ana,2026-03-18,,weighted-dip,,\n\
         Ana,2026-03-18,L,one-arm-pull-up,one-arm,coach saw it\n\
         Ana,2026-03-18,,Weighted Pull-Up,None,\n",
    );
    let placed = |ladder: &str, side, rung, why: Option<&str>| Fact::Placement {
        ladder: ladder.into(),
        side,
        rung,
        why: why.map(Into::into),
    };
    assert_eq!(
        facts(&sheet),
        [
            placed("weighted-dip", None, Placed::Joined, None),
            placed(
                "one-arm-pull-up",
                Some(Side::Left),
                Placed::On("one-arm".into()),
                Some("coach saw it")
            ),
            placed("weighted-pull-up", None, Placed::SetAside, None),
        ]
    );
}

#[test]
fn several_facts_of_one_row_share_its_place_and_the_note_goes_to_the_set() {
    let sheet = good(
        "athlete,date,movement,side,reps,pain,pain_site,phase,goal,goal_by,height_cm,sex,born,note\n\
         Ana,2026-03-18,dip,,5,,,,,,,,,\n\
         Ana,2026-03-18,dip,,4,3,elbow,cut,weighted-dip/plus-50,2026-12-31,171,Female,1994-05-02,\"slow, careful\"\n",
    );
    let row = &sheet.rows[1];
    assert_eq!(row.records.len(), 5);
    assert!(row.records.iter().all(|record| record.nth == 1));
    let Fact::Set(set) = &row.records[0].what else {
        panic!("the set comes first")
    };
    assert_eq!(set.note.as_deref(), Some("slow, careful"));
    let day = |y, m, d| Some(NaiveDate::from_ymd_opt(y, m, d).unwrap());
    for record in &row.records[1..] {
        match &record.what {
            Fact::Pain {
                score, side, note, ..
            } => assert_eq!((*score, *side, note), (3, None, &None)),
            Fact::Phase { kind, note } => assert_eq!((*kind, note), (PhaseKind::Cut, &None)),
            Fact::Goal { ladder, rung, by, .. } => {
                assert_eq!((ladder.as_str(), rung.as_str()), ("weighted-dip", "plus-50"));
                assert_eq!(by.as_ref().map(|by| by.date()), day(2026, 12, 31));
            }
            Fact::Profile {
                name,
                born,
                sex,
                height_cm,
            } => {
                assert_eq!((name, *sex, *height_cm), (&None, Some(Sex::Female), Some(171.0)));
                assert_eq!(born.as_ref().map(|born| born.date()), day(1994, 5, 2));
            }
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn a_note_goes_to_the_placement_then_the_weigh_in_the_pain_the_phase_the_goal_else_stands_alone() {
    let header = "athlete,date,ladder,bodyweight_kg,pain,pain_site,phase,goal,sex,note\n";
    let noted = |cells: &str| {
        let sheet = good(&format!("{header}Ana,2026-03-18,{cells},why\n"));
        let takes = |fact: &Fact| match fact {
            Fact::Placement { why: note, .. }
            | Fact::WeighIn { note, .. }
            | Fact::Pain { note, .. }
            | Fact::Phase { note, .. }
            | Fact::Goal { note, .. } => note.is_some(),
            Fact::Note { .. } => true,
            _ => false,
        };
        let facts = facts(&sheet);
        assert_eq!(facts.iter().filter(|fact| takes(fact)).count(), 1, "{facts:?}");
        facts.into_iter().find(takes).unwrap()
    };
    let goal = "weighted-dip/plus-25";
    assert!(matches!(
        noted(&format!("weighted-dip,80,1,knee,cut,{goal},male")),
        Fact::Placement { .. }
    ));
    assert!(matches!(
        noted(&format!(",80,1,knee,cut,{goal},")),
        Fact::WeighIn { .. }
    ));
    assert!(matches!(
        noted(&format!(",,1,knee,cut,{goal},")),
        Fact::Pain { .. }
    ));
    assert!(matches!(noted(&format!(",,,,cut,{goal},")), Fact::Phase { .. }));
    assert!(matches!(noted(&format!(",,,,,{goal},male")), Fact::Goal { .. }));
    assert!(matches!(noted(",,,,,,male"), Fact::Note { .. }));
    assert!(matches!(noted(",,,,,,"), Fact::Note { .. }));
}

#[test]
fn the_date_as_written_counts_and_its_time_is_kept_to_the_letter() {
    let text = "2026-03-18T23:30:00-08:00";
    let sheet = good(&format!("athlete,date,bodyweight_kg\nAna,{text},80\n"));
    assert_eq!(records(&sheet)[0].at.as_str(), text);
    assert_eq!(
        records(&sheet)[0].at.date(),
        NaiveDate::from_ymd_opt(2026, 3, 18).unwrap()
    );
}

#[test]
fn a_semicolon_file_with_decimal_commas_says_the_same_as_its_twin() {
    let options = Options {
        delimiter: ";".parse().unwrap(),
        decimal: ",".parse().unwrap(),
        ..Options::default()
    };
    let comma = good_with(
        "athlete;date;movement;added_kg;reps\nAna;2026-03-18;dip;-2,5;5,0\n",
        &options,
    );
    let point = good("athlete,date,movement,added_kg,reps\nAna,2026-03-18,dip,-2.5,5\n");
    assert_eq!(comma, point);
}

#[test]
fn the_limits_of_every_number_are_inside() {
    let header = "athlete,date,movement,bodyweight_kg,bodyweight_lb,added_kg,added_lb,reps,hold_s,rir,rpe,pain,pain_site,height_cm,sets\n";
    for cells in [
        "dip,20,,,,1,,,,,,,",
        "dip,400,,,,1000,,10,,,,,",
        "dip,,44.1,-300,,1,,0.5,,,,,",
        "dip,,881.8,400,,1,,,5,,,,",
        "dip,,,,-661.3,1,,,10,,,,50",
        "dip,,,,881.8,1,,,,0,back,50,",
        "dead-hang,,,,,,3600,,,10,hip,260,1",
        "dead-hang,,,,,,0.1,,,,,,",
    ] {
        good(&format!("{header}Ana,2026-03-18,{cells}\n"));
    }
    for year in [1900, 2100] {
        good(&format!("athlete,date\nAna,{year}-12-31\n"));
    }
}

#[test]
fn system_loads_at_or_below_zero_are_odd_but_no_error() {
    let set =
        only_set("athlete,date,movement,bodyweight_kg,added_kg,reps\nAna,2026-03-18,pull-up,60,-75,5\n");
    assert_eq!(set.load, Some(Load::Assistance(kg(75.0))));
}

#[test]
fn a_guard_before_a_formula_sign_is_no_part_of_a_cell() {
    let set = only_set("athlete,date,movement,added_kg,reps,note\nAna,2026-03-18,dip,'-15,5,'=easy\n");
    assert_eq!(set.load, Some(Load::Assistance(kg(15.0))));
    assert_eq!(set.note.as_deref(), Some("=easy"));
}
