//! The sheet and the report as files: whole, the same for the same input, and nothing is written over by mistake.

use super::kit::Home;

const CLASS: &str = "athlete,date,movement,side,bodyweight_kg,added_kg,reps,hold_s,rir,ladder,rung\n\
    Ana,2026-03-14,dip,,80,20,6,,1,weighted-dip,plus-25\n\
    Ana,2026-03-17,dip,,80,20,6,,1,weighted-dip,plus-25\n\
    王佳慧,2026-03-17,front-lever,,55,,,12,,front-lever,tuck\n\
    Bo,2026-03-17,one-arm-pull-up,L,70,,3,,1,one-arm-pull-up,fingers-3\n";

fn gym() -> Home {
    let home = Home::new();
    home.import(CLASS);
    home
}

#[test]
fn a_sheet_is_the_same_to_the_byte_wherever_and_whenever_it_is_printed() {
    let home = gym();
    for more in [
        &["sheet"][..],
        &["sheet", "--class"],
        &["report", "--athlete", "Ana"],
        &["sheet", "--meet", "--athlete", "Ana", "--lift", "dip"],
    ] {
        let mut bytes = Vec::new();
        for (zone, name) in [
            ("Pacific/Kiritimati", "one.pdf"),
            ("America/Anchorage", "two.pdf"),
        ] {
            let args = [more, &["--on", "2026-03-20", "--output", name]].concat();
            let output = home
                .command(&args)
                .env("TZ", zone)
                .env("LANG", "ar_EG.UTF-8")
                .output()
                .unwrap();
            assert!(
                output.status.success(),
                "{}",
                String::from_utf8_lossy(&output.stderr)
            );
            bytes.push(std::fs::read(home.path(name)).unwrap());
        }
        assert!(bytes[0].starts_with(b"%PDF-"), "ISO 32000-1, 7.5.2");
        assert_eq!(bytes[0], bytes[1], "{more:?}");
    }
}

#[test]
fn who_is_named_is_on_it_in_that_order_and_a_stranger_is_refused() {
    let home = gym();
    let say = home.answer(&[
        "sheet",
        "--athlete",
        "Bo",
        "--athlete",
        "王佳慧",
        "--on",
        "2026-03-20",
        "--output",
        "s.pdf",
    ]);
    assert_eq!(say, "s.pdf: 2 athletes on 2 pages\n");
    let twice = [
        "sheet",
        "--athlete",
        "Bo",
        "--athlete",
        "Bo",
        "--on",
        "2026-03-20",
        "--output",
        "u.pdf",
    ];
    assert_eq!(home.answer(&twice), "u.pdf: 1 athlete on 1 page\n");
    let ran = home.run(&["sheet", "--athlete", "Bob", "--output", "t.pdf"]);
    assert_eq!(ran.code, 1);
    assert_eq!(
        ran.err,
        "rungwright: no athlete is called \"Bob\"; the nearest are \"Bo\"\n"
    );
    assert!(!home.path("t.pdf").exists());
}

#[test]
fn a_meet_is_printed_for_who_is_named_or_refused_with_its_reason() {
    let home = gym();
    let meet = |more: &[&str]| {
        let args = ["sheet", "--meet", "--on", "2026-03-20", "--output", "m.pdf"];
        home.run(&[&args[..], more].concat())
    };
    let ran = meet(&["--athlete", "Ana"]);
    assert_eq!(ran.code, 1);
    assert_eq!(
        ran.err,
        "rungwright: No meet for Ana. A meet takes at least two lifts that were logged in the last year.\n"
    );
    let ran = meet(&["--athlete", "王佳慧", "--lift", "dip"]);
    assert_eq!(
        ran.err,
        "rungwright: No meet for 王佳慧. No strength is believed yet: log sets of repetitions; they count from the next day on.\n"
    );
    assert!(
        !home.path("m.pdf").exists(),
        "nothing is written where one is refused"
    );
    let ran = meet(&["--athlete", "Ana", "--lift", "Dip", "--lift", "Muscle Up"]);
    assert_eq!((ran.code, ran.out.as_str()), (0, "m.pdf: 1 athlete on 1 page\n"));
    home.log(&["--born", "2010-01-01"]);
    let ran = meet(&["--athlete", "Ana", "--lift", "dip"]);
    assert_eq!(
        ran.err,
        "rungwright: No meet for Ana. Under 18: no maximal tests.\n"
    );
    // Everybody at once, a lift that no meet has, and a table of a meet are wrong use.
    assert_eq!(meet(&[]).code, 2);
    assert_eq!(meet(&["--athlete", "Ana", "--class"]).code, 2);
    assert_eq!(meet(&["--athlete", "Ana", "--lift", "front-lever"]).code, 2);
}

#[test]
fn a_file_that_is_no_pdf_is_never_written_over() {
    let home = gym();
    let journal = home.folder_of("ana").join("journal-test.ron");
    let before = std::fs::read(&journal).unwrap();
    let ran = home.run(&["sheet", "--output", journal.to_str().unwrap()]);
    assert_eq!(ran.code, 1);
    assert!(
        ran.err.contains("something else than a PDF is there"),
        "{}",
        ran.err
    );
    assert_eq!(std::fs::read(&journal).unwrap(), before);
    home.answer(&["sheet", "--output", "s.pdf"]);
    home.answer(&["sheet", "--output", "s.pdf"]);
    assert_eq!(home.run(&["sheet", "--output", "no/such/folder/s.pdf"]).code, 1);
    let left: Vec<_> = std::fs::read_dir(home.path("."))
        .unwrap()
        .map(|entry| entry.unwrap().file_name())
        .collect();
    assert!(
        !left.iter().any(|name| name.to_string_lossy().ends_with(".tmp")),
        "{left:?}"
    );
}

#[cfg(unix)]
#[test]
fn health_data_on_paper_is_its_owners_only_too() {
    use std::os::unix::fs::PermissionsExt;
    let home = gym();
    home.answer(&[
        "report",
        "--athlete",
        "Ana",
        "--on",
        "2026-03-20",
        "--output",
        "r.pdf",
    ]);
    let mode = std::fs::metadata(home.path("r.pdf"))
        .unwrap()
        .permissions()
        .mode();
    assert_eq!(mode & 0o777, 0o600);
}

#[test]
fn a_period_that_ends_before_it_begins_is_wrong_use() {
    let home = gym();
    let args = [
        "report",
        "--athlete",
        "Ana",
        "--from",
        "2026-04-01",
        "--on",
        "2026-03-20",
        "--output",
        "r.pdf",
    ];
    assert_eq!(home.run(&args).code, 2);
}

#[test]
fn an_archived_athlete_is_off_roster_and_sheet_and_comes_back_with_every_record() {
    let home = gym();
    let before = home.answer(&["roster", "--on", "2026-03-20"]);
    let saved = home.log(&["--phase", "archived", "--at", "2026-03-18"]);
    assert!(!home.answer(&["roster", "--on", "2026-03-20"]).contains("Ana"));
    assert!(
        home.answer(&["roster", "--on", "2026-03-17"]).contains("Ana"),
        "she was there then"
    );
    let say = home.answer(&["sheet", "--on", "2026-03-20", "--output", "s.pdf"]);
    assert_eq!(say, "s.pdf: 2 athletes on 2 pages\n");
    assert!(
        home.answer(&["next", "--athlete", "Ana", "--on", "2026-03-20"])
            .contains("Weighted dip")
    );
    home.answer(&["retract", &saved]);
    assert_eq!(home.answer(&["roster", "--on", "2026-03-20"]), before);
    home.log(&["--phase", "archived", "--at", "2026-03-18"]);
    home.log(&["--phase", "active", "--at", "2026-03-19"]);
    assert_eq!(home.answer(&["roster", "--on", "2026-03-20"]), before);
}

#[test]
fn plates_of_the_other_unit_say_theirs() {
    let home = gym();
    let next = |home: &Home| home.answer(&["next", "--athlete", "Ana", "--on", "2026-03-20"]);
    assert!(next(&home).contains("(20)"), "{}", next(&home));
    home.file(
        "data/rungwright/logbook/logbook.ron",
        "(format: 1, unit: lb, gear: kg(0), plates: [kg(20), kg(10), kg(5), kg(2.5)])",
    );
    assert!(next(&home).contains("(20 kg"), "{}", next(&home));
}
