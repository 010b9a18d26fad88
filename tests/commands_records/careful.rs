//! What holds for every command: the same bytes everywhere, no missing answer without a word, nothing raw on a terminal,
//! nothing touched that is not ours.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::kit::Home;

/// Commands that only read.
const READING: [&[&str]; 9] = [
    &["next"],
    &["next", "--format", "json"],
    &["roster"],
    &["roster", "--format", "csv"],
    &["totals"],
    &["totals", "--format", "json"],
    &["strength", "--format", "json"],
    &["export"],
    &["check"],
];

/// The command with its day, where it takes one.
fn on_a_day(args: &'static [&'static str]) -> Vec<&'static str> {
    match args.first() {
        Some(&"export" | &"check") => args.to_vec(),
        _ => [args, &["--on", "2026-03-18"]].concat(),
    }
}

/// A home whose logbook holds six weeks of three athletes: both units, two rails, a hold, a sore elbow.
fn gym() -> Home {
    let home = Home::new();
    let mut csv = "athlete,date,movement,side,bodyweight_kg,added_kg,added_lb,reps,hold_s,rir,ladder,rung,pain,pain_site\n".to_owned();
    for day in 1..=14 {
        let date = chrono::NaiveDate::from_ymd_opt(2026, 2, 1).unwrap() + chrono::Days::new(3 * day);
        for set in 0..3 {
            csv += &format!(
                "Ana,{date},pull-up,,7{set}.5,15,,{},,1,weighted-pull-up,plus-25,,\n",
                4 + day % 3
            );
            csv += &format!("Bo,{date},dip,,,,45,{},,2,weighted-dip,plus-25,,\n", 5 + set);
            for side in ["L", "R"] {
                csv += &format!(
                    "Zoë,{date},one-arm-hang,{side},60,,,,{}.5,,one-arm-hang,,,\n",
                    8 + day
                );
            }
        }
    }
    home.import(&(csv + "Bo,2026-03-17,,,,,,,,,,,3,elbow\n"));
    home
}

/// Copies a folder, the files in the reverse order of their names, so that the folder lists them otherwise.
fn copy_backwards(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    let mut entries: Vec<_> = fs::read_dir(from)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    entries.sort();
    for path in entries.iter().rev() {
        let there = to.join(path.file_name().unwrap());
        if path.is_dir() {
            copy_backwards(path, &there);
        } else {
            fs::copy(path, there).unwrap();
        }
    }
}

#[test]
fn the_same_logbook_gives_the_same_bytes_in_any_time_zone_language_home_and_on_any_number_of_threads() {
    let here = gym();
    let there = Home::new().on_device("phone");
    copy_backwards(&here.logbook(), &there.logbook());
    for args in READING {
        let args = on_a_day(args);
        let plain = here
            .command(&args)
            .env("TZ", "UTC")
            .env("LANG", "C")
            .env("RAYON_NUM_THREADS", "1")
            .output()
            .unwrap();
        let other = there
            .command(&args)
            .env("TZ", "Pacific/Kiritimati")
            .env("LANG", "tr_TR.UTF-8")
            .env("LC_ALL", "tr_TR.UTF-8")
            .env("RAYON_NUM_THREADS", "5")
            .output()
            .unwrap();
        let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
        let same =
            |home: &Home, bytes: &[u8]| text(bytes).replace(home.logbook().to_str().unwrap(), "LOGBOOK");
        assert_eq!(
            same(&here, &plain.stdout),
            same(&there, &other.stdout),
            "{args:?}"
        );
        assert_eq!(plain.status.code(), other.status.code(), "{args:?}");
        assert!(!plain.stdout.is_empty(), "{args:?}");
    }
}

/// Every file and folder below `root` with its bytes, time and mode.
fn state_of(root: &Path) -> BTreeMap<String, (Vec<u8>, std::time::SystemTime, String)> {
    fn walk(at: &Path, found: &mut BTreeMap<String, (Vec<u8>, std::time::SystemTime, String)>) {
        let meta = fs::symlink_metadata(at).unwrap();
        let bytes = if meta.is_dir() {
            Vec::new()
        } else {
            fs::read(at).unwrap()
        };
        let mode = format!("{:?}", meta.permissions());
        found.insert(
            at.to_string_lossy().into_owned(),
            (bytes, meta.modified().unwrap(), mode),
        );
        if meta.is_dir() {
            for entry in fs::read_dir(at).unwrap() {
                walk(&entry.unwrap().path(), found);
            }
        }
    }
    let mut found = BTreeMap::new();
    walk(root, &mut found);
    found
}

#[test]
fn reading_changes_no_byte_time_or_mode_and_everything_made_lies_where_the_system_says() {
    let home = gym();
    let before = state_of(&home.logbook());
    for args in READING {
        home.run(&on_a_day(args));
    }
    home.run(&["next", "--athlete", "Nobody"]);
    assert_eq!(state_of(&home.logbook()), before);
    home.log(&["--note", "mine"]);
    // Between commands a logbook holds text files and nothing else.
    for (path, (_, _, _)) in state_of(&home.logbook()) {
        assert!(Path::new(&path).is_dir() || path.ends_with(".ron"), "{path}");
    }
    // The folders of the XDG Base Directory Specification, the spreadsheet, and no other.
    for entry in fs::read_dir(home.path(".")).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        assert!(
            ["data", "state", "cache", "config", "import.csv"].contains(&name.as_str()),
            "{name}"
        );
    }
}

/// Characters that no terminal may get from data: controls but the line end, and those that turn text around
/// (CVE-2021-42574; Unicode Standard Annex 9, section 2).
fn is_raw(c: char) -> bool {
    c.is_control() && c != '\n'
        || matches!(c, '\u{200e}' | '\u{200f}' | '\u{061c}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

#[test]
fn nothing_from_a_file_or_an_argument_reaches_a_terminal_raw() {
    let home = Home::new();
    let evil = "a\u{1b}[31m\u{7}\u{202e}b\u{2066}";
    home.log(&["--place", "first-pull-up", "--note", evil, "--at", "2026-03-01"]);
    home.log(&[
        "--movement",
        "pull-up",
        "--reps",
        "2",
        "--bodyweight",
        "70kg",
        "--note",
        evil,
        "--at",
        "2026-03-01",
    ]);
    let shipped = include_str!("../../progressions/first-pull-up.ron");
    let ladders = home.logbook().join("ladders");
    fs::create_dir(&ladders).unwrap();
    let own = shipped.replace("\"First pull-up\"", r#""First\u{1b}[31m \u{202e}pull-up""#);
    assert_ne!(own, shipped);
    fs::write(ladders.join("first-pull-up.ron"), own).unwrap();
    fs::write(ladders.join("e\u{202e}vil.ron"), format!("({evil}")).unwrap();
    let athletes = home.logbook().join("athletes");
    fs::create_dir(athletes.join("e\u{1b}vil")).unwrap();
    let ana = fs::read_dir(&athletes)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .find(|path| path.join("journal-test.ron").exists());
    fs::write(ana.unwrap().join("journal-pad.ron"), format!("(id: {evil})\n")).unwrap();
    let csv = home.file(
        "evil.csv",
        &format!("athlete,date,movement,reps,{evil}\nA,{evil},{evil},{evil},1\n"),
    );
    let (athlete, map) = (format!("Ana{evil}"), format!("{evil}=note"));
    let asked: [&[&str]; 14] = [
        &["next", "--on", "2026-03-02"],
        &["roster", "--on", "2026-03-02"],
        &["totals", "--on", "2026-03-02"],
        &["check"],
        &["check", evil],
        &["import", &csv],
        &["import", &csv, "--map", &map],
        &["next", "--athlete", &athlete],
        &["log", "--athlete", "Ana", "--movement", evil, "--reps", "1"],
        &["log", "--athlete", "Ana", "--place", evil],
        &["log", "--athlete", "Ana", "--at", evil],
        &["retract", evil],
        &[
            "load",
            "--target-kg",
            "90",
            "--bodyweight-kg",
            "80",
            "--plates-kg",
            evil,
        ],
        &[evil],
    ];
    for args in asked {
        let ran = home.run(args);
        let said = format!("{}{}", ran.out, ran.err);
        assert!(!said.is_empty(), "{args:?}");
        assert!(!said.contains(is_raw), "{args:?}: {said:?}");
    }
}

/// Runs a command by a shell that changes something about it first, `"$0"` being the program.
#[cfg(unix)]
fn by_shell(home: &Home, script: &str, args: &[&str]) -> (Option<i32>, String, String) {
    let program = home.command(args);
    let mut shell = Command::new("sh");
    shell
        .args(["-c", script])
        .arg(program.get_program())
        .args(args)
        .env_clear();
    for (name, value) in program.get_envs() {
        shell.env(name, value.unwrap_or_default());
    }
    let output = shell
        .current_dir(home.path("."))
        .stdin(Stdio::null())
        .output()
        .unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8_lossy(&bytes).into_owned();
    (output.status.code(), text(output.stdout), text(output.stderr))
}

#[cfg(target_os = "linux")]
#[test]
fn an_answer_that_does_not_fit_on_the_disk_is_an_error() {
    let home = gym();
    for args in [READING[0], READING[5], READING[7]] {
        let (code, _, err) = by_shell(&home, "exec \"$0\" \"$@\" > /dev/full", &on_a_day(args));
        assert_eq!(code, Some(1), "{args:?}: {err}");
        assert!(
            err.contains("the answer could not be written: "),
            "{args:?}: {err}"
        );
    }
}

#[cfg(unix)]
#[test]
#[cfg(target_os = "linux")]
fn where_no_folder_can_be_made_the_place_is_said() {
    // The kernel's own file system answers "not found" to whoever makes a folder in it (proc(5)).
    let home = Home::new();
    for args in [
        &["demo", "/proc/gym"][..],
        &[
            "log",
            "--athlete",
            "Ana",
            "--note",
            "hi",
            "--logbook",
            "/proc/gym",
        ],
    ] {
        let ran = home.run(args);
        assert_eq!((ran.code, ran.out.as_str()), (1, ""), "{args:?}: {}", ran.err);
        assert!(
            ran.err.starts_with("rungwright: /proc/gym: cannot be made: "),
            "{}",
            ran.err
        );
    }
}

#[test]
fn a_reader_who_goes_away_hears_no_noise() {
    let home = gym();
    for args in [READING[0], READING[5], READING[7]] {
        let (_, out, err) = by_shell(&home, "\"$0\" \"$@\" | true", &on_a_day(args));
        assert_eq!(out, "");
        assert!(!err.contains("panicked"), "{args:?}: {err}");
        assert!(err.lines().count() <= 1, "{args:?}: {err}");
    }
}

#[cfg(unix)]
#[test]
fn without_a_descriptor_left_a_file_is_named_and_never_left_out_quietly() {
    let home = gym();
    let whole = home.answer(&["export"]);
    let mut refused = 0;
    for limit in [3, 4, 5, 6, 8] {
        let (code, out, err) = by_shell(
            &home,
            &format!("ulimit -n {limit}; exec \"$0\" \"$@\""),
            &["export"],
        );
        match code {
            Some(0) => assert_eq!(out, whole, "limit {limit}"),
            code => {
                assert!(!err.is_empty(), "limit {limit}, {code:?}: {out}");
                assert!(!err.contains("panicked"), "limit {limit}: {err}");
                refused += 1;
            }
        }
    }
    assert!(refused > 0, "so few descriptors are never enough");
}
