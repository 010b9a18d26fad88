//! `roster`: who needs what, on a small invented gym.

use crate::kit::Home;

const ON: &str = "2026-03-18";

/// One athlete for each need, and two for some. The records follow the rules: one need each by hand.
fn gym() -> Home {
    let mut rows = vec![
        "athlete,date,movement,side,bodyweight_kg,added_kg,reps,hold_s,rir,outcome,ladder,rung,pain,pain_site".to_owned(),
    ];
    let mut add = |row: &str| rows.push(row.to_owned());
    // Zoe's left elbow hurts 6 on a rung that loads it; the right arm is free.
    add("Zoe,2026-03-16,one-arm-pull-up,L,62,,2,,2,,one-arm-pull-up,fingers-2,,");
    add("Zoe,2026-03-16,one-arm-pull-up,R,,,3,,2,,one-arm-pull-up,fingers-2,,");
    add("Zoe,2026-03-17,,L,,,,,,,,,6,elbow");
    // Yan's wrist hurts 3: work goes on, and still it comes first.
    add("Yan,2026-03-16,planche-lean,,70,,,15,,,planche,lean,3,wrist");
    // Xia weighed in 20 days ago.
    add("Xia,2026-02-26,pull-up,,65,20,5,,1,,weighted-pull-up,plus-25,,");
    add("Xia,2026-03-15,pull-up,,,20,5,,1,,weighted-pull-up,plus-25,,");
    // Wim did 3 sets of 8 with 2 in reserve on two days: bodyweight is passed.
    for date in ["2026-03-12", "2026-03-16"] {
        for _ in 0..3 {
            add(&format!(
                "Wim,{date},pull-up,,80,,8,,2,,weighted-pull-up,bodyweight,,"
            ));
        }
    }
    // Vic failed under the range on two days in a row.
    for date in ["2026-03-12", "2026-03-16"] {
        for reps in [4, 3, 2] {
            add(&format!(
                "Vic,{date},dip,,75,20,{reps},,,fail,weighted-dip,plus-25,,"
            ));
        }
    }
    // Uma holds 12 of 30 s: eight days, no standard, no miss.
    for day in [2, 4, 6, 8, 10, 12, 14, 16] {
        for _ in 0..4 {
            add(&format!(
                "Uma,2026-03-{day:02},front-lever,,58,,,12,,,front-lever,tuck,,"
            ));
        }
    }
    // Tom has done four easy days in six weeks.
    for day in ["02-20", "02-27", "03-06", "03-16"] {
        for _ in 0..3 {
            add(&format!(
                "Tom,2026-{day},pull-up,,82,10,5,,3,,weighted-pull-up,plus-25,,"
            ));
        }
    }
    // Sia is on no ladder, Rob was placed and has not been there yet.
    add("Sia,2026-03-15,pull-up,,55,,4,,,,,,,");
    add("Rob,2026-03-15,,,90,,,,,,first-pull-up,band,,");
    // Quy does what was asked; the shoulder's 2 is under what counts.
    for _ in 0..3 {
        add("Quy,2026-03-16,pull-up,,71,18,5,,2,,weighted-pull-up,plus-25,,");
    }
    add("Quy,2026-03-16,,R,,,,,,,,,2,shoulder");
    let home = Home::new();
    home.import(&(rows.join("\n") + "\n"));
    home
}

#[test]
fn the_text_is_a_table_in_the_order_of_need_then_name() {
    let table = gym().answer(&["roster", "--on", ON]);
    assert_eq!(
        table,
        "\
need      athlete  weighs  weighed      last set    hurts         on
hurts     Yan      70 kg   2 days ago   2 days ago  wrist 3       planche lean repeat
hurts     Zoe      62 kg   2 days ago   2 days ago  elbow L 6     one-arm-pull-up L fingers-2 pause, R fingers-2 repeat
weigh-in  Xia      65 kg   20 days ago  3 days ago  -             weighted-pull-up plus-25 weigh-in-first
step-up   Wim      80 kg   2 days ago   2 days ago  -             weighted-pull-up bodyweight step-up
stuck     Uma      58 kg   2 days ago   2 days ago  -             front-lever tuck add-reps
stuck     Vic      75 kg   2 days ago   2 days ago  -             weighted-dip plus-25 back-off
test      Tom      82 kg   2 days ago   2 days ago  -             weighted-pull-up plus-25 test
begin     Rob      90 kg   3 days ago   -           -             first-pull-up band begin
begin     Sia      55 kg   3 days ago   3 days ago  -             -
going-on  Quy      71 kg   2 days ago   2 days ago  shoulder R 2  weighted-pull-up plus-25 repeat
"
    );
}

#[test]
fn json_has_every_rail_weigh_in_pain_and_last_set() {
    let home = gym();
    let json: serde_json::Value =
        serde_json::from_str(&home.answer(&["roster", "--on", ON, "--format", "json"])).unwrap();
    let needs: Vec<(&str, &str)> = json
        .as_array()
        .unwrap()
        .iter()
        .map(|line| (line["athlete"].as_str().unwrap(), line["need"].as_str().unwrap()))
        .collect();
    assert_eq!(
        needs,
        [
            ("Yan", "hurts"),
            ("Zoe", "hurts"),
            ("Xia", "weigh-in"),
            ("Wim", "step-up"),
            ("Uma", "stuck"),
            ("Vic", "stuck"),
            ("Tom", "test"),
            ("Rob", "begin"),
            ("Sia", "begin"),
            ("Quy", "going-on"),
        ]
    );
    assert_eq!(
        json[1],
        serde_json::json!({
            "athlete": "Zoe",
            "need": "hurts",
            "rails": [
                {"ladder": "one-arm-pull-up", "side": "L", "rung": "fingers-2", "verdict": "pause"},
                {"ladder": "one-arm-pull-up", "side": "R", "rung": "fingers-2", "verdict": "repeat"},
            ],
            "bodyweight_kg": 62,
            "weighed_on": "2026-03-16",
            "pain": [{"site": "elbow", "side": "L", "score": 6}],
            "last_set": "2026-03-16",
        })
    );
    assert_eq!(
        json[8],
        serde_json::json!({
            "athlete": "Sia", "need": "begin", "rails": [], "bodyweight_kg": 55, "weighed_on": "2026-03-15",
            "pain": [], "last_set": "2026-03-15",
        })
    );
    assert_eq!(
        json[7]["last_set"],
        serde_json::Value::Null,
        "Rob has logged no set"
    );
    assert_eq!(json[9]["pain"][0]["score"], 2);
}

#[test]
fn csv_is_the_json_flattened() {
    let csv = gym().answer(&["roster", "--on", ON, "--format", "csv"]);
    let lines: Vec<&str> = csv.split("\r\n").collect();
    assert_eq!(
        lines[0],
        "athlete,need,rails.ladder,rails.side,rails.rung,rails.verdict,bodyweight_kg,weighed_on,pain.site,pain.side,\
         pain.score,last_set"
    );
    assert_eq!(
        lines[2],
        "Zoe,hurts,one-arm-pull-up one-arm-pull-up,L R,fingers-2 fingers-2,pause repeat,62,2026-03-16,elbow,L,6,2026-03-16"
    );
}

#[test]
fn the_verdicts_are_those_of_next() {
    let home = gym();
    let read = |args: &[&str]| -> serde_json::Value { serde_json::from_str(&home.answer(args)).unwrap() };
    let roster = read(&["roster", "--on", ON, "--format", "json"]);
    let mut rails: Vec<[serde_json::Value; 5]> = Vec::new();
    for line in roster.as_array().unwrap() {
        for rail in line["rails"].as_array().unwrap() {
            rails.push([
                line["athlete"].clone(),
                rail["ladder"].clone(),
                rail["side"].clone(),
                rail["rung"].clone(),
                rail["verdict"].clone(),
            ]);
        }
    }
    let next = read(&["next", "--on", ON, "--format", "json"]);
    let mut steps: Vec<[serde_json::Value; 5]> = next
        .as_array()
        .unwrap()
        .iter()
        .map(|step| ["athlete", "ladder", "side", "rung", "verdict"].map(|key| step[key].clone()))
        .collect();
    let key = |row: &[serde_json::Value; 5]| serde_json::to_string(row).unwrap();
    rails.sort_by_key(key);
    steps.sort_by_key(key);
    assert_eq!(rails, steps);
}

#[test]
fn pain_of_one_side_is_told_and_a_later_report_takes_its_place() {
    let home = Home::new();
    home.import(
        "athlete,date,side,pain,pain_site\n\
         Ana,2026-03-10,,5,elbow\n\
         Ana,2026-03-15,,4,elbow\n\
         Ana,2026-03-16,R,0,elbow\n\
         Ana,2026-02-25,L,7,knee\n\
         Ana,2026-02-25,R,5,knee\n\
         Ana,2026-03-17,L,2,wrist\n\
         Ana,2026-03-17,L,3,wrist\n",
    );
    let json: serde_json::Value =
        serde_json::from_str(&home.answer(&["roster", "--on", ON, "--format", "json"])).unwrap();
    // The elbow's 4 still speaks for the left; a 7 counts four weeks, a 5 one; of two on a day the worse.
    assert_eq!(
        json[0]["pain"],
        serde_json::json!([
            {"site": "elbow", "side": null, "score": 4},
            {"site": "wrist", "side": "L", "score": 3},
            {"site": "knee", "side": "L", "score": 7},
        ])
    );
    assert_eq!(
        json[0]["need"], "hurts",
        "whoever hurts is on no ladder yet, and hurts"
    );
}

#[test]
fn somebody_who_set_every_ladder_aside_goes_on_and_the_future_is_not_there_yet() {
    let home = Home::new();
    home.log(&["--place", "front-lever/none", "--at", "2026-03-01"]);
    let need = |on: &str| {
        let json: serde_json::Value =
            serde_json::from_str(&home.answer(&["roster", "--on", on, "--format", "json"])).unwrap();
        json[0]["need"].clone()
    };
    assert_eq!(need(ON), "going-on");
    assert_eq!(need("2026-02-28"), "begin");
}

#[test]
fn an_empty_logbook_says_what_to_do_first_and_a_missing_one_is_a_problem() {
    let home = Home::new();
    assert_eq!(home.run(&["roster"]).code, 1);
    std::fs::create_dir_all(home.logbook()).unwrap();
    for command in ["roster", "next", "totals", "strength"] {
        assert_eq!(home.answer(&[command, "--format", "json"]), "[]\n");
        assert!(
            home.answer(&[command])
                .starts_with("Nobody is in this logbook yet; log something"),
            "{command}"
        );
    }
}

#[test]
fn without_a_display_the_demo_shows_its_roster_first_then_the_next_steps() {
    let home = Home::new();
    let ran = home.run(&["--demo", "--on", ON]);
    assert_eq!(ran.code, 0);
    assert_eq!(ran.err.lines().count(), 1, "{}", ran.err);
    let folder = home.path("state/rungwright/demo-1");
    let folder = folder.to_str().unwrap();
    let roster = home.answer(&["roster", "--on", ON, "--logbook", folder]);
    let next = home.answer(&["next", "--on", ON, "--logbook", folder]);
    let (first, then) = ran.out.split_at(roster.len());
    assert_eq!(first, roster);
    assert!(next.starts_with(then.trim_start()), "{then}");
    assert_eq!(home.run(&["--logbook", folder, "--on", ON]).out, ran.out);
}
