//! One logbook on several machines, carried by git or by a file-sync tool: nothing is lost, nothing doubled, and every machine
//! answers the same.

use std::path::Path;
use std::process::Command;

use super::kit::Home;

/// Runs git in `folder`; it must work.
fn git(folder: &Path, args: &[&str]) -> String {
    let output = Command::new("git")
        .current_dir(folder)
        .args([
            "-c",
            "user.name=Ana",
            "-c",
            "user.email=ana@example.invalid",
            "-c",
            "core.autocrlf=false",
        ])
        .args(args)
        .env("GIT_CONFIG_GLOBAL", "/dev/null")
        .env("GIT_CONFIG_SYSTEM", "/dev/null")
        .output()
        .expect("this test needs git");
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    let wrong = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "git {args:?}: {said}{wrong}");
    said
}

fn commit(home: &Home, why: &str) {
    git(&home.logbook(), &["add", "--all"]);
    git(&home.logbook(), &["commit", "--quiet", "-m", why]);
}

fn pull(home: &Home, from: &Home) {
    let from = from.logbook();
    let from = from.to_str().unwrap();
    git(
        &home.logbook(),
        &["pull", "--quiet", "--no-rebase", "--no-edit", from, "HEAD"],
    );
}

const YEAR: &str = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir,ladder,rung\n\
    Ana,2026-03-10,dip,80,10,6,1,weighted-dip,plus-25\n\
    Ana,2026-03-14,dip,80,20,6,1,weighted-dip,plus-25\n\
    Ben,2026-03-12,pull-up,71,5,5,2,weighted-pull-up,plus-25\n";

/// Everything that the commands print of a logbook.
fn answers(home: &Home) -> Vec<String> {
    ["export", "next", "roster", "totals"]
        .into_iter()
        .map(|command| match command {
            "export" => home.answer(&["export"]),
            other => home.answer(&[other, "--on", "2026-03-20", "--format", "json"]),
        })
        .collect()
}

/// Two machines with the same logbook: one made it, the other cloned it.
fn two_machines() -> (Home, Home) {
    let (mill, quay) = (Home::new().on_device("mill"), Home::new().on_device("quay"));
    mill.import(YEAR);
    git(&mill.logbook(), &["init", "--quiet"]);
    commit(&mill, "The year so far");
    let from = mill.logbook();
    let to = quay.logbook();
    std::fs::create_dir_all(to.parent().unwrap()).unwrap();
    git(
        to.parent().unwrap(),
        &["clone", "--quiet", from.to_str().unwrap(), "logbook"],
    );
    assert_eq!(answers(&mill), answers(&quay));
    (mill, quay)
}

/// The id of the record whose row of the export holds `words`.
fn id_of(home: &Home, words: &str) -> String {
    let export = home.answer(&["export"]);
    let row = export.lines().find(|line| line.contains(words));
    row.unwrap_or_else(|| panic!("{words} in {export}"))[..26].to_owned()
}

#[test]
fn git_carries_what_two_machines_logged_amended_and_retracted_at_once() {
    let (mill, quay) = two_machines();
    let (light, heavy) = (id_of(&mill, ",10,,6,"), id_of(&mill, ",20,,6,"));

    mill.log(&[
        "--movement",
        "dip",
        "--reps",
        "5",
        "--added",
        "22.5kg",
        "--at",
        "2026-03-18T18:00",
    ]);
    mill.answer(&["amend", &heavy, "--reps", "7"]);
    mill.answer(&["amend", &light, "--reps", "8"]);
    mill.answer(&[
        "log",
        "--athlete",
        "Cleo",
        "--bodyweight",
        "64kg",
        "--at",
        "2026-03-18",
    ]);
    commit(&mill, "Evening at the mill");

    quay.log(&[
        "--movement",
        "dip",
        "--reps",
        "4",
        "--added",
        "25kg",
        "--at",
        "2026-03-18T18:30",
    ]);
    quay.answer(&["retract", &light, "--why", "typed twice"]);
    quay.answer(&["amend", &heavy, "--reps", "5"]);
    quay.answer(&[
        "log",
        "--athlete",
        "Cleo",
        "--pain",
        "knee=2",
        "--at",
        "2026-03-18",
    ]);
    quay.answer(&[
        "log",
        "--athlete",
        "Ben",
        "--phase",
        "archived",
        "--at",
        "2026-03-18",
    ]);
    commit(&quay, "Evening at the quay");

    pull(&mill, &quay);
    pull(&quay, &mill);
    let both = answers(&mill);
    assert_eq!(both, answers(&quay), "both machines answer the same bytes");

    let export = &both[0];
    assert!(
        export.contains("22.5") && export.contains(",25,,4,"),
        "each machine's set is there: {export}"
    );
    assert!(
        !export.contains(&light),
        "a retraction holds against an amend that did not know of it"
    );
    assert_eq!(export.lines().filter(|line| line.starts_with(&heavy)).count(), 1);
    assert_eq!(
        export.matches("Cleo,").count(),
        3,
        "one Cleo: a name, a weigh-in, pain: {export}"
    );
    assert!(!both[2].contains("Ben"), "off the roster on both: {}", both[2]);
    assert_eq!(quay.run(&["check"]).code, 0, "and nothing is wrong in any file");
}

#[test]
fn pulling_again_and_the_other_way_round_changes_nothing() {
    let (mill, quay) = two_machines();
    quay.log(&[
        "--movement",
        "dip",
        "--reps",
        "4",
        "--added",
        "25kg",
        "--at",
        "2026-03-18",
    ]);
    commit(&quay, "One more");
    pull(&mill, &quay);
    let once = answers(&mill);
    pull(&quay, &mill);
    pull(&mill, &quay);
    assert_eq!((once, answers(&quay)), (answers(&mill), answers(&mill)));
}

#[test]
fn a_sync_tools_conflict_copies_are_read_as_journals() {
    let home = Home::new().on_device("mill");
    home.import(YEAR);
    let folder = home.folder_of("ana");
    let journal = folder.join("journal-mill.ron");
    let before = std::fs::read(&journal).unwrap();
    home.log(&[
        "--movement",
        "dip",
        "--reps",
        "3",
        "--added",
        "30kg",
        "--at",
        "2026-03-18",
    ]);
    let whole = answers(&home);
    // The tool kept the longer file beside the shorter one, under a name of its own.
    for copy in [
        "journal-mill.sync-conflict-20260318-181500-QUAYXYZ.ron",
        "journal-mill (conflicted copy).ron",
    ] {
        std::fs::copy(&journal, folder.join(copy)).unwrap();
        assert_eq!(answers(&home), whole, "{copy}: nothing is doubled");
        std::fs::write(&journal, &before).unwrap();
        assert_eq!(answers(&home), whole, "{copy}: nothing is lost");
        std::fs::rename(folder.join(copy), &journal).unwrap();
    }
}
