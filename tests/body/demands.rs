//! What every rung of the shipped ladders asks of a body, and how it says so.
use proptest::prelude::*;
use rungwright::body::demand::{Measured, demands_with, falls};
use rungwright::body::{Body, Facts, RungDemand, Status, demands};
use rungwright::catalogue::{Catalogue, Ladder};
use rungwright::logbook::record::Sex;
use rungwright::units::{Assistance, Bodyweight, Height, Mass};

fn body(cm: f64, kg: f64, sex: Option<Sex>) -> Body {
    Body::new(Facts {
        height: Height::from_cm(cm).ok(),
        mass: Some(Bodyweight::new(Mass::from_kg(kg))),
        sex,
        years: None,
    })
    .unwrap()
}

fn ladder(id: &str) -> &'static Ladder {
    Catalogue::shipped().ladder(id).unwrap()
}

fn asks(id: &str, body: &Body) -> Vec<RungDemand> {
    demands(ladder(id), Catalogue::shipped(), body)
}

fn rung(demands: &[RungDemand], id: &str) -> RungDemand {
    demands.iter().find(|asked| asked.rung == id).unwrap().clone()
}

fn computed(demands: &[RungDemand], id: &str) -> f64 {
    rung(demands, id).computed.unwrap().demand.centre()
}

fn is(value: f64, expected: f64, allowed: f64) {
    assert!((value - expected).abs() <= allowed, "{value} is not {expected}");
}

#[test]
fn a_man_of_175_cm_and_75_kg_meets_the_table_on_every_lever_ladder() {
    // Independent computation from the published tables, male: M both shoulders, lean, one elbow; demand is M over the full shape's.
    let expected = [
        ("tuck", 166.0, 0.541, 22.3, 46.2),
        ("advanced-tuck", 234.0, 0.766, 32.5, 65.4),
        ("one-leg", 247.0, 0.807, 34.5, 68.9),
        ("straddle", 279.0, 0.910, 39.8, 77.7),
        ("full", 306.0, 1.000, 44.6, 85.4),
    ];
    for id in ["front-lever", "back-lever", "planche"] {
        let demands = asks(id, &body(175.0, 75.0, Some(Sex::Male)));
        for (id, moment, demand, lean, elbow) in expected {
            let asked = rung(&demands, id);
            is(asked.moment.unwrap().centre(), moment, 0.6);
            is(asked.demand.unwrap().centre(), demand, 0.0006);
            is(asked.lean.unwrap().degrees(), lean, 0.06);
            is(asked.elbow.unwrap().newton_metres(), elbow, 0.06);
            assert_eq!(
                (asked.share, asked.system),
                (None, None),
                "a lever is a moment, no load"
            );
        }
    }
}

#[test]
fn the_bands_of_the_shapes_are_the_honest_ones() {
    // Independent computation: bands from the shape alone.
    let demands = asks("front-lever", &body(175.0, 75.0, Some(Sex::Male)));
    let expected = [
        ("tuck", 0.47, 0.61),
        ("advanced-tuck", 0.72, 0.81),
        ("one-leg", 0.80, 0.88),
        ("straddle", 0.85, 0.96),
        ("full", 0.94, 1.00),
    ];
    for (id, low, high) in expected {
        let band = rung(&demands, id).demand.unwrap();
        is(band.low(), low, 0.006);
        is(band.high(), high, 0.006);
    }
}

#[test]
fn the_one_arm_ladder_agrees_with_the_one_arm_scale() {
    // An independent computation of the one-arm scale times the repetitions of the standard over a single (Epley: 30 + reps + reserve over 31).
    let demands = asks("one-arm-pull-up", &body(175.0, 75.0, Some(Sex::Male)));
    let reps = |n: f64| (30.0 + n) / 31.0;
    let expected = [
        ("two-arm", 0.534 * reps(7.0)),
        ("fingers-3", 0.500 * reps(5.0)),
        ("fingers-2", 0.650 * reps(5.0)),
        ("fingers-1", 0.789 * reps(4.0)),
        ("one-arm", 1.000),
        ("one-arm-plus", 1.1 * reps(3.0)),
        ("pulley", 0.905 * reps(4.0)),
        ("archer", 0.787 * reps(6.0)),
        ("lock-offs", 0.922),
    ];
    for (id, demand) in expected {
        is(computed(&demands, id), demand, demand * 0.005);
    }
    // 8 s lies between the printed 5 s (.829) and 10 s (.959).
    let negative = computed(&demands, "negatives");
    assert!((0.829..0.959).contains(&negative));
    // Independent computation, kg at 75 kg: one finger leaves 59.2 kg on the hand; a counterweight of 10 % is logged as 7.5 kg.
    is(rung(&demands, "fingers-1").system.unwrap().kg(), 59.2, 0.05);
    is(rung(&demands, "pulley").system.unwrap().kg(), 67.5, 1e-9);
}

#[test]
fn loads_count_their_repetitions_and_reserve() {
    // Epley 1985 by hand: 1.5 × (30 + 4 + 1) over 2 × (30 + 1 + 1), and so on.
    let demands = asks("weighted-pull-up", &body(180.0, 80.0, Some(Sex::Male)));
    is(computed(&demands, "plus-50"), 52.5 / 64.0, 1e-12);
    is(computed(&demands, "bodyweight"), 40.0 / 64.0, 1e-12);
    is(computed(&demands, "plus-100"), 1.0, 1e-12);
    is(rung(&demands, "plus-50").system.unwrap().kg(), 120.0, 1e-9);
}

#[test]
fn every_number_says_how_it_came_about() {
    let man = body(175.0, 75.0, Some(Sex::Male));
    let text = |ladder: &str, id: &str| rung(&asks(ladder, &man), id).text();
    let has = |text: String, part: &str| assert!(text.contains(part), "{text:?} has no {part:?}");
    has(
        text("front-lever", "tuck"),
        "166 N·m at both shoulders, 306 N·m when full: 166 ÷ 306 = 0.54",
    );
    has(text("one-arm-pull-up", "pulley"), "1 − 0.95 × 0.10 = 0.91");
    has(text("one-arm-pull-up", "fingers-1"), "0.60 × 0.32 × 1.10 = 0.21");
    has(
        text("one-arm-pull-up", "fingers-1"),
        "0.79 × (30 + 3 + 1) ÷ the goal's (30 + 1) = 0.87",
    );
    has(
        text("one-arm-push-up", "hands-60"),
        "0.41 × bodyweight on one hand",
    );
    has(text("planche", "lean"), "arms 18° past the vertical");
    has(text("first-dip", "support"), "common practice");
    assert_eq!(text("first-dip", "strict"), "This is the goal: 1 by definition.");
    has(text("back-lever", "tuck"), "few shoulders turn far enough");
    for ladder in Catalogue::shipped().ladders() {
        for asked in demands(ladder, Catalogue::shipped(), &man) {
            let text = asked.text();
            assert!(text.ends_with('.') && !text.contains("NaN"), "{text}");
        }
    }
}

#[test]
fn what_is_not_known_widens_the_band_and_is_named() {
    let nothing = Body::unknown_body();
    let tuck = rung(&asks("front-lever", &nothing), "tuck");
    let (man, woman) = (
        body(175.0, 75.0, Some(Sex::Male)),
        body(165.0, 60.0, Some(Sex::Female)),
    );
    let [his, hers] = [man, woman].map(|body| rung(&asks("front-lever", &body), "tuck").demand.unwrap());
    let band = tuck.demand.unwrap();
    assert!(his.centre() < band.centre() && band.centre() < hers.centre());
    assert!(band.low() <= his.low() && band.high() >= hers.high());
    assert_eq!(
        (tuck.moment, tuck.elbow),
        (None, None),
        "no newton metres without a weigh-in"
    );
    assert!(
        tuck.text()
            .ends_with("Your height and sex would narrow this, and a weigh-in would give kg and N·m.")
    );

    let no_height = Body::new(Facts {
        mass: Some(Bodyweight::new(Mass::from_kg(75.0))),
        sex: Some(Sex::Male),
        ..Facts::default()
    });
    let unsure = rung(&asks("front-lever", &no_height.unwrap()), "full")
        .moment
        .unwrap();
    let sure = rung(&asks("front-lever", &man), "full").moment.unwrap();
    assert!(unsure.low() < sure.low() && unsure.high() > sure.high());
    assert!(unsure.contains(sure.centre()));
}

#[test]
fn a_band_that_the_athlete_measured_gives_its_own_demand() {
    let man = body(175.0, 75.0, Some(Sex::Male));
    let measured = Measured {
        band: Some(Assistance::new(Mass::from_kg(15.0))),
    };
    let all = demands_with(ladder("one-arm-pull-up"), Catalogue::shipped(), &man, measured);
    // Independent computation: 20 % of bodyweight leaves 0.800 (0.75–0.85); 5 reps with 1 in reserve over a single.
    is(computed(&all, "band"), 0.8 * 36.0 / 31.0, 1e-9);
    is(rung(&all, "band").system.unwrap().kg(), 60.0, 1e-9);
    let whole_body = Measured {
        band: Some(Assistance::new(Mass::from_kg(75.0))),
    };
    let all = demands_with(ladder("one-arm-pull-up"), Catalogue::shipped(), &man, whole_body);
    assert_eq!(rung(&all, "band").computed, None);
}

#[test]
fn a_stated_number_outside_the_computed_band_says_why_it_holds() {
    for ladder in Catalogue::shipped().ladders() {
        for asked in demands(ladder, Catalogue::shipped(), &Body::unknown_body()) {
            assert!(
                !asked.needs_a_reason(),
                "{} {}: {}",
                ladder.id,
                asked.rung,
                asked.text()
            );
        }
    }
}

#[test]
fn a_falling_demand_is_found() {
    let mut ladder = ladder("front-lever").clone();
    ladder.rungs.swap(1, 2);
    let demands = demands(&ladder, Catalogue::shipped(), &Body::unknown_body());
    let falls = falls(&ladder, &demands);
    assert_eq!(falls.len(), 1);
    assert_eq!(
        (falls[0].below.as_str(), falls[0].rung.as_str()),
        ("one-leg", "advanced-tuck")
    );
}

#[test]
fn the_goal_of_a_shipped_ladder_asks_one() {
    for ladder in Catalogue::shipped().ladders() {
        let demands = demands(ladder, Catalogue::shipped(), &Body::unknown_body());
        let goals = demands
            .iter()
            .filter(|asked| asked.demand.unwrap().centre() == 1.0);
        assert_eq!(goals.count(), 1, "{}", ladder.id);
        assert!(
            demands
                .iter()
                .all(|asked| asked.status != Status::Published || asked.stated.is_some())
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 10_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_demand_falls_along_a_shipped_main_line_whatever_the_body(
        cm in 120.0..=210.0f64, kg in 35.0..=160.0f64, male in any::<bool>(),
    ) {
        let sex = if male { Sex::Male } else { Sex::Female };
        let body = body(cm, kg, Some(sex));
        for ladder in Catalogue::shipped().ladders() {
            let demands = demands(ladder, Catalogue::shipped(), &body);
            prop_assert_eq!(falls(ladder, &demands), vec![]);
            for asked in &demands {
                let band = asked.demand.unwrap();
                prop_assert!(band.low() > 0.0 && band.contains(band.centre()) && band.high().is_finite());
                let computed = asked.computed.map(|computed| computed.demand);
                prop_assert!(computed.is_none_or(|band| band.contains(band.centre())));
                prop_assert!(asked.moment.is_none_or(|band| band.contains(band.centre()) && band.low() > 0.0));
            }
        }
    }
}
