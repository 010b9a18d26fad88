//! `check`: every mistake with its place and its mend, whatever stands in a file's place.

use std::fs;
use std::path::{Path, PathBuf};

use crate::kit::{Home, Ran};

/// The broken files of one gallery with what is to be said of each, in order of name.
fn gallery(name: &str) -> Vec<(PathBuf, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/mistakes")
        .join(name);
    let mut files: Vec<PathBuf> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.retain(|path| path.extension().is_some_and(|extension| extension == "ron"));
    files.sort();
    files
        .into_iter()
        .map(|path| {
            let said = fs::read_to_string(path.with_extension("txt")).unwrap();
            (path, said)
        })
        .collect()
}

/// What `check` answers about the files of the home's folder `work`, asked from there.
fn checked(home: &Home, files: &[String]) -> Ran {
    let args: Vec<&str> = std::iter::once("check")
        .chain(files.iter().map(String::as_str))
        .collect();
    let output = home
        .command(&args)
        .current_dir(home.path("work"))
        .output()
        .unwrap();
    Ran {
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
        code: output.status.code().unwrap(),
    }
}

fn work(home: &Home) -> PathBuf {
    let folder = home.path("work");
    fs::create_dir_all(&folder).unwrap();
    folder
}

#[test]
fn the_command_says_of_each_broken_ladder_what_its_reader_says() {
    let home = Home::new();
    let folder = work(&home);
    let (mut files, mut expected) = (Vec::new(), String::new());
    // A file of movements is known by its name, which only one file of a folder can have.
    for (path, said) in gallery("ladders")
        .into_iter()
        .filter(|(path, _)| !path.to_string_lossy().contains("/movements"))
    {
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        fs::copy(&path, folder.join(&name)).unwrap();
        expected.push_str(&said);
        files.push(name);
    }
    let ran = checked(&home, &files);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    // The command may know more than the reader: what a body makes of a demand.
    let mut rest = ran.out.as_str();
    for problem in problems(&expected) {
        let at = rest.find(&problem);
        let at = at.unwrap_or_else(|| panic!("{problem}is not told at its place"));
        rest = &rest[at + problem.len()..];
    }
}

/// The problems in a text, each with its excerpt and mend: a line that isn't indented begins one.
fn problems(text: &str) -> Vec<String> {
    let mut problems: Vec<String> = Vec::new();
    for line in text.split_inclusive('\n') {
        match problems.last_mut() {
            Some(last) if line.starts_with(' ') => last.push_str(line),
            _ => problems.push(line.to_owned()),
        }
    }
    problems
}

#[test]
fn the_command_says_of_each_broken_journal_what_its_reader_says() {
    let home = Home::new();
    let folder = work(&home);
    let (mut files, mut expected) = (Vec::new(), String::new());
    for (path, said) in gallery("journals") {
        let old = path.file_name().unwrap().to_str().unwrap();
        let name = format!("journal-{old}");
        fs::copy(&path, folder.join(&name)).unwrap();
        let said = said.split_once('\n').unwrap().1;
        expected.push_str(&said.replace(&format!("{old}:"), &format!("{name}:")));
        files.push(name);
    }
    let ran = checked(&home, &files);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    assert_eq!(
        format!("{}\n", ran.out.trim_end().rsplit_once('\n').unwrap().0),
        expected
    );
}

#[test]
fn a_mistake_in_the_settings_has_its_place_and_its_mend() {
    let home = Home::new();
    fs::write(
        work(&home).join("logbook.ron"),
        "(\n  format: 1,\n  unit: stone,\n  gear: kg(500),\n  plates: [kg(20), kg(0)],\n  formula: \"eply\",\n  \
         plaits: [kg(5)],\n  unit: kg,\n)\n",
    )
    .unwrap();
    let ran = checked(&home, &["logbook.ron".to_owned()]);
    assert_eq!(ran.code, 1);
    assert_eq!(
        ran.out,
        "logbook.ron:3:9: unit cannot be read: \"stone\" is not one of kg, lb\n  mend: mend it, or leave the field out\n\
         logbook.ron:4:9: gear of 500 kg is outside 0 to 400 kg\n  mend: mend it, or leave the field out\n\
         logbook.ron:5:11: a plate of 0 kg is not over 0 and up to 400 kg\n  mend: mend it, or leave the field out\n\
         logbook.ron:6:12: \"eply\" is not one of epley, brzycki, lander, lombardi, mayhew, oconner, wathan; did you mean \
         epley?\n  mend: mend it, or leave the field out\n\
         logbook.ron:7:3: field \"plaits\" is not known to this version; it is kept\n  mend: write plates, or use the \
         version of Rungwright that wrote it\n\
         logbook.ron:8:9: the field \"unit\" stands twice\n  mend: keep one of them\n\
         6 problems, 0 warnings\n"
    );
}

#[test]
fn settings_that_are_none_are_told_and_nothing_is_written_beside_them() {
    let home = Home::new();
    home.log(&["--note", "before"]);
    let file = home.logbook().join("logbook.ron");
    for (text, place) in [
        ("kg and lb\n", ":1:1: "),
        ("", ":1:1: "),
        ("(format: 1, unit: kg\n", ":"),
    ] {
        fs::write(&file, text).unwrap();
        let ran = home.run(&["check"]);
        assert_eq!(ran.code, 1, "{text:?}");
        assert!(ran.out.contains(&format!("logbook.ron{place}")), "{}", ran.out);
        let lines = home.lines();
        assert_eq!(
            home.run(&["log", "--athlete", "Ana", "--note", "after"]).code,
            1,
            "{text:?}"
        );
        assert_eq!(home.lines(), lines);
        // What can be read is read all the same.
        let ran = home.run(&["export"]);
        assert_eq!(ran.code, 1);
        assert!(ran.out.contains("before"), "{}", ran.out);
    }
}

#[test]
fn warnings_alone_are_no_failure() {
    let home = Home::new();
    let folder = work(&home);
    let (path, said) = gallery("ladders")
        .into_iter()
        .find(|(path, _)| path.ends_with("caution-twice.ron"))
        .unwrap();
    fs::copy(path, folder.join("caution-twice.ron")).unwrap();
    let ran = checked(&home, &["caution-twice.ron".to_owned()]);
    assert_eq!((ran.code, ran.out), (0, format!("{said}0 problems, 1 warning\n")));
}

/// A logbook of Ana and Bo with one weigh-in each.
fn two_athletes() -> Home {
    let home = Home::new();
    home.import("athlete,date,bodyweight_kg\nAna,2026-03-01,70\nBo,2026-03-01,80\n");
    home
}

fn folder_of(home: &Home, slug: &str) -> PathBuf {
    let athletes = fs::read_dir(home.logbook().join("athletes")).unwrap();
    let mut folders = athletes.map(|entry| entry.unwrap().path());
    folders
        .find(|path| path.file_name().unwrap().to_string_lossy().starts_with(slug))
        .unwrap()
}

#[test]
fn bytes_that_are_no_journal_cost_themselves_and_nothing_else() {
    let home = two_athletes();
    let journal = folder_of(&home, "ana").join("journal-phone.ron");
    // The first bytes of a PNG picture (W3C PNG specification, section 5.2), then what no text has.
    let mut bytes = vec![0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a];
    bytes.extend((0..=255).cycle().take(4096));
    fs::write(&journal, &bytes).unwrap();
    let ran = home.run(&["check"]);
    assert_eq!(ran.code, 1);
    assert!(
        ran.out
            .contains("journal-phone.ron:1:1: this line is not UTF-8 text and is not read\n"),
        "{}",
        ran.out
    );
    rest_is_there(&home, "journal-phone.ron");
    assert_eq!(
        fs::read(&journal).unwrap(),
        bytes,
        "nobody touches another device's file"
    );
}

#[test]
fn a_folder_in_a_journals_place_is_told_and_costs_nothing_else() {
    let home = two_athletes();
    fs::create_dir(folder_of(&home, "ana").join("journal-phone.ron")).unwrap();
    let ran = home.run(&["check"]);
    assert_eq!(ran.code, 1);
    let said = "journal-phone.ron:1:1: this is no plain file and is not read\n  mend: put the file itself here; links, pipes \
                and folders are not followed\n1 problem, 0 warnings\n";
    assert!(ran.out.ends_with(said), "{}", ran.out);
    rest_is_there(&home, "journal-phone.ron");
}

#[cfg(unix)]
#[test]
fn a_link_in_a_journals_place_is_told_and_not_followed() {
    let home = two_athletes();
    let secret = home.file("secret.ron", "(not ours)\n");
    std::os::unix::fs::symlink(secret, folder_of(&home, "ana").join("journal-phone.ron")).unwrap();
    let ran = home.run(&["check"]);
    assert_eq!(ran.code, 1);
    assert!(!ran.out.contains("not ours"), "{}", ran.out);
    rest_is_there(&home, "journal-phone.ron");
}

#[cfg(unix)]
#[test]
fn a_journal_that_may_not_be_read_is_told_and_costs_nothing_else() {
    use std::os::unix::fs::PermissionsExt as _;
    let home = two_athletes();
    let journal = folder_of(&home, "ana").join("journal-phone.ron");
    fs::write(&journal, "").unwrap();
    fs::set_permissions(&journal, fs::Permissions::from_mode(0o000)).unwrap();
    if fs::read(&journal).is_ok() {
        // Root may read everything: there is nothing to see.
        return;
    }
    let ran = home.run(&["check"]);
    assert_eq!(ran.code, 1);
    assert!(
        ran.out.contains("journal-phone.ron:1:1: this cannot be read: "),
        "{}",
        ran.out
    );
    rest_is_there(&home, "journal-phone.ron");
}

/// Reading says what is missing and exits 1; everything else is answered. Writing exits by what it wrote.
fn rest_is_there(home: &Home, file: &str) {
    let ran = home.run(&["export"]);
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains(file), "{}", ran.err);
    assert!(
        ran.out.contains("Ana,2026-03-01,,,70,") && ran.out.contains("Bo,2026-03-01,,,80,"),
        "{}",
        ran.out
    );
    for athlete in ["Ana", "Bo"] {
        assert_eq!(home.run(&["log", "--athlete", athlete, "--note", "on"]).code, 0);
    }
}

#[test]
fn a_logbooks_own_broken_ladder_is_told_and_the_rest_is_advised() {
    let home = two_athletes();
    home.log(&["--place", "weighted-pull-up/plus-25", "--at", "2026-03-01"]);
    let ladders = home.logbook().join("ladders");
    fs::create_dir(&ladders).unwrap();
    fs::write(ladders.join("ring-row.ron"), "(id: \"ring-row\", rungs: [\n").unwrap();
    let ran = home.run(&["check"]);
    assert_eq!(ran.code, 1);
    assert!(ran.out.contains("ladders/ring-row.ron:1:"), "{}", ran.out);
    let ran = home.run(&["next", "--on", "2026-03-02"]);
    assert_eq!(ran.code, 1);
    assert!(ran.out.contains("Weighted pull-up"), "{}", ran.out);
    assert!(ran.err.contains("ladders/ring-row.ron:1:"), "{}", ran.err);
}

#[test]
fn a_sound_logbook_has_no_problems_and_a_missing_file_is_one() {
    let home = two_athletes();
    assert_eq!(home.answer(&["check"]), "No problems.\n");
    work(&home);
    let ran = checked(&home, &["nothing.ron".to_owned()]);
    assert_eq!(ran.code, 1);
    assert!(
        ran.out.starts_with("nothing.ron:1:1: cannot be read: "),
        "{}",
        ran.out
    );
}

#[test]
fn bytes_set_aside_after_a_crash_are_a_warning() {
    let home = two_athletes();
    let torn = folder_of(&home, "ana").join("journal-test.torn-20260301T120000Z-99.ron");
    fs::write(torn, "(id: \"01KK").unwrap();
    let ran = home.run(&["check"]);
    assert_eq!(ran.code, 0);
    assert!(
        ran.out.contains("warning: torn bytes were set aside here"),
        "{}",
        ran.out
    );
    assert_eq!(home.run(&["export"]).code, 0);
}

#[cfg(unix)]
#[test]
fn somebody_whose_journal_is_out_of_reach_is_not_taken_for_somebody_new() {
    let home = Home::new();
    home.import("athlete,date,bodyweight_kg\nAna,2026-03-01,70\nBo,2026-03-01,80\n");
    // A link is reported and not followed, so that nobody can say who is in it.
    let folder = folder_of(&home, "ana");
    let journal = folder.join("journal-test.ron");
    let kept = home.path("elsewhere.ron");
    fs::rename(&journal, &kept).unwrap();
    std::os::unix::fs::symlink(&kept, &journal).unwrap();
    let more = home.file("more.csv", "athlete,date,bodyweight_kg\nAna,2026-03-02,71\n");
    for args in [
        &["next", "--athlete", "Ana"][..],
        &["log", "--athlete", "Ana", "--bodyweight", "71kg"],
        &["import", &more],
        &["log", "--athlete", "Bo", "--rename", "Ana"],
    ] {
        let ran = home.run(args);
        assert_eq!((ran.code, ran.out.as_str()), (1, ""), "{args:?}: {}", ran.err);
        assert!(
            ran.err
                .contains("journal-test.ron: cannot be read, and \"Ana\" may be in it"),
            "{args:?}: {}",
            ran.err
        );
    }
    assert_eq!(fs::read_dir(home.logbook().join("athletes")).unwrap().count(), 2);
    // The gym goes on for everybody else, new ones too.
    home.answer(&["log", "--athlete", "Bo", "--bodyweight", "81kg"]);
    home.answer(&["log", "--athlete", "Cy", "--bodyweight", "60kg"]);
    fs::remove_file(&journal).unwrap();
    fs::rename(&kept, &journal).unwrap();
    home.answer(&["import", &more]);
    assert!(home.answer(&["export"]).contains("Ana,2026-03-01,,,70,"));
}

#[cfg(unix)]
#[test]
fn a_record_that_may_lie_out_of_reach_is_not_just_unknown() {
    let home = two_athletes();
    std::os::unix::fs::symlink("/dev/null", folder_of(&home, "ana").join("journal-phone.ron")).unwrap();
    let ran = home.run(&["retract", "01ARZ3NDEKTSV4RRFFQ69G5FAV"]);
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains("journal-phone.ron:1:1: "), "{}", ran.err);
    assert!(ran.err.contains("no record has the id"), "{}", ran.err);
}
