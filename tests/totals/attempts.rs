//! Attempts, a meet, and standing among others.

use chrono::NaiveDate;
use rungwright::bests::{Formula, Kind, Point, Size, bests, points, rank, size_adjusted};
use rungwright::catalogue::Catalogue;
use rungwright::catalogue::Site;
use rungwright::coaching::PlatesOnHand;
use rungwright::coaching::attempts::{self, NoAttempts, OPENER, Plan, attempts};
use rungwright::coaching::meet::{self, Meet, NoMeet};
use rungwright::coaching::warm_up::WarmUpStep;
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::{Log, Logbook, Machine, Places};
use rungwright::report::totals::standing;
use rungwright::strength::{belief_of, beliefs};
use rungwright::timeline::Timeline;
use rungwright::units::{Bodyweight, Mass, Share, Typed, Unit};

use crate::kit::Home;

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

/// A log of this sheet, read back from a real folder.
fn log(csv: &str) -> Log {
    let home = Home::new();
    home.import(csv);
    let machine = Machine::with(RealDisk, Places::inside(&home.path("machine")));
    let (book, problems) = Logbook::open(&machine, &home.logbook()).unwrap();
    assert!(problems.is_empty());
    book.logs[0].clone()
}

/// Ten weeks of heavy triples at the dip, 80 kg, about 125 kg in all for one.
fn dips() -> Log {
    let mut text = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir\n".to_owned();
    for week in 0..10u64 {
        let date = day("2026-01-05") + chrono::Days::new(7 * week);
        text.push_str(&format!("Ana,{date},dip,80,{},3,1\n", 30.0 + 0.5 * week as f64));
        text.push_str(&format!(
            "Ana,{date},pull-up,80,{},3,1\n",
            15.0 + 0.5 * week as f64
        ));
    }
    log(&text)
}

fn plan(log: &Log, plates: &[f64]) -> Option<Plan> {
    let catalogue = Catalogue::shipped();
    let timeline = Timeline::new(log, catalogue, day("2026-03-16"));
    let believed = belief_of(&timeline, "dip", None).unwrap();
    let plates: Vec<Typed> = plates
        .iter()
        .map(|kg| Typed::new(*kg, Unit::Kg).unwrap())
        .collect();
    let rack = PlatesOnHand::new(&plates, Mass::ZERO);
    let body = Bodyweight::new(Mass::from_kg(80.0));
    attempts(
        &believed.belief,
        catalogue.movement("dip").unwrap(),
        (Share::WHOLE, body),
        &rack,
        false,
    )
}

const FINE: [f64; 9] = [20.0, 15.0, 10.0, 5.0, 5.0, 2.5, 2.5, 1.25, 0.5];

#[test]
fn the_opener_is_as_good_as_sure_and_the_third_worth_a_try() {
    // Common practice of barbell sport, no source: 90 % and more, about 70 %, 35 to 50 %.
    let plan = plan(&dips(), &FINE).unwrap();
    let chances: Vec<f64> = plan.attempts.iter().map(|attempt| attempt.chance).collect();
    assert_eq!(chances.len(), 3);
    assert!(chances[0] >= OPENER, "{chances:?}");
    assert!((chances[1] - 0.70).abs() < 0.08, "{chances:?}");
    assert!((0.35..=0.50).contains(&chances[2]), "{chances:?}");
    for attempt in &plan.attempts {
        let hung: f64 = attempt.load.plates.iter().map(|plate| plate.mass().kg()).sum();
        assert!(
            (hung - attempt.load.added.kg()).abs() < 1e-9,
            "each can be hung from the plates there are"
        );
        assert!((attempt.load.system.kg() - 80.0 - hung).abs() < 1e-9);
    }
    // The heaviest opener that is sure enough: one disc more is not.
    let loads: Vec<f64> = plan
        .attempts
        .iter()
        .map(|attempt| attempt.load.added.kg())
        .collect();
    assert!(loads.is_sorted() && loads[0] < loads[1] && loads[1] < loads[2]);
}

#[test]
fn a_warm_up_leads_to_the_opener() {
    let plan = plan(&dips(), &FINE).unwrap();
    let opener = plan.attempts[0].load.system.kg();
    let loads: Vec<f64> = plan
        .warm_up
        .iter()
        .filter_map(|step| match step {
            WarmUpStep::Load { load, .. } => Some(load.system.kg()),
            _ => None,
        })
        .collect();
    assert_eq!(plan.warm_up[0], WarmUpStep::General);
    // Abad et al. 2011 for the warm-up, common practice for its steps: the last before singles is 85 %.
    assert!(
        loads.iter().all(|load| *load <= 0.85 * opener + 1e-9) && !loads.is_empty(),
        "{loads:?}"
    );
}

#[test]
fn coarse_plates_give_fewer_but_rising_attempts_and_none_where_nothing_is_sure() {
    let coarse = plan(&dips(), &[15.0, 15.0, 15.0]).unwrap();
    let loads: Vec<f64> = coarse
        .attempts
        .iter()
        .map(|attempt| attempt.load.added.kg())
        .collect();
    assert_eq!(loads, [30.0, 45.0], "there is nothing between and nothing above");
    let nobody_can = log(
        "athlete,date,movement,bodyweight_kg,added_kg,reps,rir\nAna,2026-03-01,dip,80,-30,3,1\nAna,2026-03-08,dip,80,-30,3,1\n",
    );
    assert_eq!(plan(&nobody_can, &FINE), None, "the body alone is too heavy yet");
}

/// Today's attempts at the dip after `also` was logged, on the day after the last session.
fn today_with(also: &str) -> Result<Plan, NoAttempts> {
    let sets = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir,pain,pain_site,born\n\
Ana,2026-03-02,dip,80,40,3,1,,,\nAna,2026-03-09,dip,80,40,3,1,,,\nAna,2026-03-16,dip,80,40,3,1,,,\n";
    let log = log(&format!("{sets}{also}\n"));
    let timeline = Timeline::new(&log, Catalogue::shipped(), day("2026-03-17"));
    let dip = Catalogue::shipped().movement("dip").unwrap();
    let believed = belief_of(&timeline, "dip", None).unwrap();
    let plates: Vec<Typed> = FINE.iter().map(|kg| Typed::new(*kg, Unit::Kg).unwrap()).collect();
    let plates = PlatesOnHand::new(&plates, Mass::ZERO);
    attempts::today(&timeline, dip, None, Some(&believed.belief), &plates)
}

#[test]
fn nobody_is_sent_to_a_maximum_with_a_joint_that_hurts_or_under_18() {
    // Pain monitoring (Thomeé 1997; from memory): up to 2 is no reason to change anything. Under 18: our choice.
    let elbow = |score: u8, date: &str| today_with(&format!("Ana,{date},,,,,,{score},elbow,"));
    assert!(elbow(2, "2026-03-17").is_ok());
    let hurts = NoAttempts::Hurts {
        site: Site::Elbow,
        score: 3,
        days: 0,
    };
    assert_eq!(elbow(3, "2026-03-17"), Err(hurts));
    assert!(
        elbow(3, "2026-03-11").is_err() && elbow(3, "2026-03-10").is_ok(),
        "a week on it has passed"
    );
    assert!(
        today_with("Ana,2026-03-17,,,,,,9,ankle,").is_ok(),
        "a dip loads no ankle"
    );
    assert_eq!(
        today_with("Ana,2026-03-17,,,,,,,,2008-03-18"),
        Err(NoAttempts::Minor)
    );
    assert!(today_with("Ana,2026-03-17,,,,,,,,2008-03-17").is_ok(), "18 today");
}

#[test]
fn a_meets_total_is_the_sum_of_the_best_added_loads_of_its_day() {
    let log = log("athlete,date,movement,bodyweight_kg,added_kg,reps,outcome\n\
         Ana,2026-03-15,pull-up,80,60,1,\n\
         Ana,2026-03-16,pull-up,80,35,1,\n\
         Ana,2026-03-16,pull-up,80,40,1,\n\
         Ana,2026-03-16,pull-up,80,42.5,0,fail\n\
         Ana,2026-03-16,dip,80,60,1,\n\
         Ana,2026-03-16,dip,80,65,1,form\n\
         Ana,2026-03-16,back-squat,80,150,1,\n");
    let timeline = Timeline::new(&log, Catalogue::shipped(), day("2026-03-16"));
    let meet = |lifts: &[&str]| {
        Meet::new(
            &timeline,
            timeline.on,
            lifts
                .iter()
                .map(|id| ((*id).to_owned(), Err(NoAttempts::NoBelief)))
                .collect(),
        )
    };
    // 40 + 60 + 150: a failed try and a broken standard don't count, nor does another day; a squat counts its barbell.
    assert_eq!(
        meet(&["pull-up", "dip", "back-squat"])
            .total()
            .map(|total| total.kg()),
        Some(250.0)
    );
    let unfinished = meet(&["muscle-up", "pull-up", "dip"]);
    assert_eq!(unfinished.total(), None, "no total while a lift is missing");
    assert_eq!(meet(&[]).total(), None);
}

/// Lifts on record in the last year, in the order of a meet: all of them, and those that make a meet unasked.
fn lifts_of(csv: &str) -> (Vec<&'static str>, Vec<&'static str>) {
    let log = log(&format!(
        "athlete,date,movement,bodyweight_kg,added_kg,reps\n{csv}"
    ));
    let timeline = Timeline::new(&log, Catalogue::shipped(), day("2026-03-16"));
    (meet::trained(&timeline), meet::usual(&timeline))
}

#[test]
fn a_meet_takes_the_lifts_of_the_last_year_and_the_stronger_of_pull_up_and_chin_up() {
    let (all, usual) = lifts_of(
        "Ana,2026-03-01,dip,80,60,1\nAna,2026-03-01,chin-up,80,45,1\nAna,2026-03-02,pull-up,80,40,1\n\
         Ana,2026-03-02,back-squat,80,150,1\nAna,2025-03-10,muscle-up,80,5,1\nAna,2026-03-02,pistol-squat,80,,1\n",
    );
    assert_eq!(
        all,
        ["pull-up", "chin-up", "dip", "back-squat"],
        "a muscle-up of 371 days ago is none"
    );
    assert_eq!(usual, ["chin-up", "dip", "back-squat"]);
}

/// Ana with dips and squats on record, and this row.
fn planned_with(also: &str, chosen: &[&str]) -> Result<Meet, NoMeet> {
    let mut csv = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir,pain,pain_site,born\n".to_owned();
    for date in ["2026-03-02", "2026-03-09"] {
        csv.push_str(&format!(
            "Ana,{date},dip,80,40,3,1,,,\nAna,{date},back-squat,80,140,3,1,,,\n"
        ));
    }
    let log = log(&format!("{csv}{also}\n"));
    let timeline = Timeline::new(&log, Catalogue::shipped(), day("2026-03-16"));
    let plates: Vec<Typed> = FINE.iter().map(|kg| Typed::new(*kg, Unit::Kg).unwrap()).collect();
    let plates = PlatesOnHand::new(&plates, Mass::ZERO);
    let chosen: Vec<String> = chosen.iter().map(|id| (*id).to_owned()).collect();
    Meet::today(
        &timeline,
        Catalogue::shipped(),
        &beliefs(&timeline),
        &plates,
        &chosen,
    )
}

#[test]
fn a_squat_is_planned_on_its_bar_whatever_hangs_from_the_belt() {
    // 140 × 3 with one in reserve is a one-rep max of about 158 (Epley 1985: 140 × (1 + 4 / 30)); all belt plates together are 61.75.
    let meet = planned_with("", &[]).unwrap();
    let ids: Vec<&str> = meet.lifts.iter().map(|lift| lift.movement.as_str()).collect();
    assert_eq!(ids, ["dip", "back-squat"]);
    let squat = meet.lifts[1].plan.as_ref().unwrap();
    assert_eq!(squat.attempts.len(), 3);
    for attempt in &squat.attempts {
        assert!((130.0..175.0).contains(&attempt.load.added.kg()), "{attempt:?}");
        assert_eq!(
            attempt.load.added.kg() % 2.5,
            0.0,
            "a pair of 1.25 kg discs (common practice, no source)"
        );
        assert!(attempt.load.plates.is_empty());
    }
    assert!(meet.planned(0).is_some() && meet.refused().is_none());
}

#[test]
fn a_meet_is_refused_where_no_lift_has_attempts_and_only_there() {
    // A dip loads the elbow, a squat doesn't: one is refused, the meet stands.
    let sore = planned_with("Ana,2026-03-16,,,,,,5,elbow,", &[]).unwrap();
    assert!(sore.lifts[0].plan.is_err() && sore.lifts[1].plan.is_ok());
    assert_eq!(
        (sore.refused(), sore.planned(0)),
        (None, None),
        "no total where a lift has no opener"
    );
    let only_dips = planned_with("Ana,2026-03-16,,,,,,5,elbow,", &["dip"]).unwrap();
    assert!(matches!(
        only_dips.refused(),
        Some(NoMeet::NoAttempts(NoAttempts::Hurts { score: 5, .. }))
    ));
    let minor = planned_with("Ana,2026-03-16,,,,,,,,2009-01-01", &[]).unwrap();
    assert_eq!(minor.refused(), Some(NoMeet::NoAttempts(NoAttempts::Minor)));
    assert_eq!(
        planned_with("", &["muscle-up"]).unwrap().refused(),
        Some(NoMeet::NoAttempts(NoAttempts::NoBelief))
    );
}

#[test]
fn one_lift_is_a_meet_only_for_who_names_it() {
    let log = dips();
    let timeline = Timeline::new(&log, Catalogue::shipped(), day("2025-12-01"));
    let rack = PlatesOnHand::new(&[], Mass::ZERO);
    let today = |chosen: &[String]| Meet::today(&timeline, Catalogue::shipped(), &[], &rack, chosen);
    assert_eq!(today(&[]), Err(NoMeet::FewLifts), "nothing is logged by then");
    assert_eq!(today(&["dip".into()]).unwrap().lifts.len(), 1);
}

#[test]
fn planned_totals_add_the_attempts() {
    let log = dips();
    let plan = plan(&log, &FINE).ok_or(NoAttempts::NoneSure);
    let timeline = Timeline::new(&log, Catalogue::shipped(), day("2026-03-16"));
    let meet = Meet::new(
        &timeline,
        timeline.on,
        vec![("dip".into(), plan.clone()), ("dip".into(), plan.clone())],
    );
    let openers = plan.unwrap().attempts[0].load.added.kg() * 2.0;
    assert!((meet.planned(0).unwrap().kg() - openers).abs() < 1e-9);
    assert!(meet.planned(0) < meet.planned(1) && meet.planned(1) < meet.planned(2));
    assert_eq!(meet.planned(3), None);
}

#[test]
fn four_measures_give_four_answers() {
    // "+100 kg at 70 or +105 at 80: which was better?" By hand: 170 and 185 in all; 2.429 and 2.3125; 170 ÷ 70^0.67 = 9.869 and
    // 185 ÷ 80^0.67 = 9.820 (Jaric 2002 for the exponent).
    let log = log(
        "athlete,date,movement,bodyweight_kg,added_kg,reps\nAna,2025-01-05,dip,70,100,1\nAna,2026-03-01,dip,80,105,1\n",
    );
    let timeline = Timeline::new(&log, Catalogue::shipped(), day("2026-03-16"));
    let all = bests(&timeline, Formula::Epley);
    let bodyweight = |kind: Kind| {
        let best = all
            .iter()
            .find(|best| best.kind == kind && best.size == Size::Reps(1))
            .unwrap();
        (
            best.bodyweight.unwrap().kg(),
            (best.value * 1000.0).round() / 1000.0,
        )
    };
    assert_eq!(bodyweight(Kind::System), (80.0, 185.0));
    assert_eq!(bodyweight(Kind::Added), (80.0, 105.0));
    assert_eq!(bodyweight(Kind::Ratio), (70.0, 2.429));
    assert_eq!(bodyweight(Kind::SizeAdjusted).0, 70.0);
    // Within one's own history, by each of the four: the lighter day stands first by two of them.
    let points = &points(&timeline, Formula::Epley)[&("dip", None)];
    let light = &points[0];
    let measured = |point: &Point, kind: Kind| {
        let body = point.bodyweight.unwrap();
        match kind {
            Kind::Added => point.added.kg(),
            Kind::Ratio => point.system.ratio(body),
            Kind::SizeAdjusted => size_adjusted(point.system, body),
            _ => point.system.kg(),
        }
    };
    let four = [Kind::System, Kind::Added, Kind::Ratio, Kind::SizeAdjusted];
    let places = four.map(|kind| {
        let all: Vec<f64> = points.iter().map(|point| measured(point, kind)).collect();
        (kind, rank::place(measured(light, kind), &all).unwrap())
    });
    assert_eq!(
        standing(&places),
        "of 2 sets 2nd by system load, 2nd by added, 1st by ratio and 1st size-adjusted"
    );
}
