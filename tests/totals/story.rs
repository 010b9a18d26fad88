//! One lifter over two cuts and a gain, at five dates: what is said is what a careful coach would say. The numbers are our own.

use chrono::Days;
use serde_json::Value;

use crate::kit::Home;
use crate::mara::{day, one_rep_max, sheet};

fn mara() -> Home {
    let home = Home::new();
    home.import(&sheet());
    home
}

/// What is said on stdout and stderr about another bodyweight on the Sunday after a week.
fn asked(home: &Home, week: u64, bodyweight: &str) -> (String, i32) {
    let on = (day(week) + Days::new(6)).to_string();
    let ran = home.run(&[
        "what-if",
        "--athlete",
        "Mara",
        "--movement",
        "dip",
        "--bodyweight",
        bodyweight,
        "--on",
        &on,
    ]);
    (ran.out + &ran.err, ran.code)
}

fn answer(home: &Home, week: u64, bodyweight: &str) -> Value {
    let on = (day(week) + Days::new(6)).to_string();
    let out = home.answer(&[
        "what-if",
        "--athlete",
        "Mara",
        "--movement",
        "dip",
        "--bodyweight",
        bodyweight,
        "--on",
        &on,
        "--format",
        "json",
    ]);
    serde_json::from_str::<Vec<Value>>(&out).unwrap().remove(0)
}

fn best(home: &Home, week: u64, kind: &str) -> Value {
    let on = (day(week) + Days::new(6)).to_string();
    let out = home.answer(&["totals", "--athlete", "Mara", "--on", &on, "--format", "json"]);
    let rows: Vec<Value> = serde_json::from_str(&out).unwrap();
    rows.into_iter()
        .find(|row| row["kind"] == kind && row["reps"] == 1)
        .unwrap()
}

fn number(value: &Value, key: &str) -> f64 {
    value[key].as_f64().unwrap_or_else(|| panic!("{key} in {value}"))
}

#[test]
fn five_dates_in_the_life_of_a_lifter() {
    let home = mara();

    // 1. Three weeks in: nobody knows her slope yet, and that is said; the general exponent answers with a wide interval.
    let (said, code) = asked(&home, 2, "80kg");
    assert_eq!(code, 0, "{said}");
    assert!(
        said.contains("No fit of your own yet: 3 weeks with a set that counts, 6 are asked"),
        "{said}"
    );
    let early = answer(&home, 2, "80kg");
    assert!(early["slope"].is_null() && early["sets"].is_null());
    let believed = number(&early, "system_kg");
    assert!(
        (number(&early, "low80")..number(&early, "high80")).contains(&one_rep_max(2, 80.0)),
        "{early}"
    );

    // 2. Week 8, the cut has just begun: bodyweight hardly varied, so no slope is made up from noise.
    let (said, code) = asked(&home, 8, "76kg");
    assert_eq!(code, 0);
    assert!(said.contains("your bodyweight hardly varied"), "{said}");

    // 3. The end of the first cut: a slope of her own, near the true 0.6, with an interval; and 74 kg was never logged.
    let cut = answer(&home, 30, "74kg");
    assert!((number(&cut, "slope") - 0.6).abs() < 0.15, "{cut}");
    assert!(
        number(&cut, "slope_low80") < number(&cut, "slope")
            && number(&cut, "slope") < number(&cut, "slope_high80")
    );
    let (said, _) = asked(&home, 30, "74kg");
    assert!(said.contains("74 kg lies outside what you logged (76"), "{said}");
    assert!(
        said.contains("It shows what went together, not what a cut does."),
        "{said}"
    );
    let (light, heavy) = (answer(&home, 30, "76kg"), answer(&home, 30, "82kg"));
    assert!(
        number(&heavy, "system_kg") > number(&light, "system_kg"),
        "more bodyweight, more in all"
    );
    assert!(
        number(&heavy, "ratio") < number(&light, "ratio"),
        "and less for each kilogram of her"
    );

    // 4. The top of the gain: best system load and best added stand here, best ratio stays with the light weeks.
    let [system, added, ratio] = ["system", "added", "ratio"].map(|kind| best(&home, 69, kind));
    assert!(number(&system, "bodyweight_kg") > 83.0 && number(&added, "bodyweight_kg") > 83.0);
    assert!(number(&ratio, "bodyweight_kg") < 78.0, "{ratio}");
    assert!(number(&system, "value") > believed);

    // 5. After the second cut: asked about 84 kg, the answer is what was believed of her when she weighed that; below her
    // healthy range nothing is said.
    let (back, then) = (
        answer(&home, 87, "84kg"),
        number(&answer(&home, 69, "84kg"), "system_kg"),
    );
    assert!(
        (number(&back, "system_kg") / then - 1.0).abs() < 0.03,
        "{back} and {then}"
    );
    assert!((number(&back, "low80")..number(&back, "high80")).contains(&then));
    let (said, code) = asked(&home, 87, "54kg");
    assert_eq!(code, 1);
    // 18.5 × 1.72² = 54.73 kg: the first tenth that is answered is said.
    assert!(
        said.contains("body mass index of 18.3") && said.contains("54.8 kg at this height"),
        "{said}"
    );
    assert!(said.contains("licensed professional"), "{said}");
    assert_eq!(asked(&home, 87, "54.8kg").1, 0);
}

#[test]
fn pounds_ask_the_same_question() {
    let home = mara();
    let (kg, lb) = (
        answer(&home, 60, "80kg"),
        answer(&home, 60, "176.36980974790206lb"),
    );
    for key in ["system_kg", "low80", "high80", "added_kg", "ratio", "slope"] {
        assert!((number(&kg, key) - number(&lb, key)).abs() < 1e-6, "{key}");
    }
}
