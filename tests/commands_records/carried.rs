//! One logbook on several machines: whatever carries the files, nothing is lost, doubled or in conflict.

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::kit::Home;

/// What every reading command answers about the logbook.
fn answers(home: &Home) -> Vec<String> {
    let on = ["--on", "2026-03-20"];
    [
        &["export"][..],
        &[&["next"][..], &on].concat(),
        &[&["roster"][..], &on].concat(),
        &[&["totals"][..], &on].concat(),
    ]
    .into_iter()
    .map(|args| home.answer(args))
    .collect()
}

/// Ana trains on both machines, Bea is made on both on the same day, and some of it is mended on the other one.
fn two_machines() -> (Home, Home) {
    let machines = ["desk", "mill"].map(|device| {
        let home = Home::new().on_device(device);
        let spreadsheet = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir\n";
        home.import(&format!(
            "{spreadsheet}Ana,2026-03-01,pull-up,70,15,5,2\nBea,2026-03-02,dip,60,,8,1\nBea,2026-03-02,dip,60,,8,1\n"
        ));
        let reps = if device == "desk" { "6" } else { "7" };
        home.log(&["--movement", "pull-up", "--reps", reps, "--at", "2026-03-08"]);
        home
    });
    let [desk, mill] = machines;
    (desk, mill)
}

fn git(folder: &Path, args: &[&str]) -> Option<bool> {
    let mut command = Command::new("git");
    command.args(["-c", "user.name=Coach", "-c", "user.email=coach@example.org"]);
    let ran = command
        .args(args)
        .current_dir(folder)
        .env("GIT_CONFIG_GLOBAL", "/dev/null")
        .env("GIT_CONFIG_SYSTEM", "/dev/null")
        .env("GIT_TERMINAL_PROMPT", "0")
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    ran.ok().map(|status| status.success())
}

#[test]
fn git_joins_the_logbooks_of_two_machines_that_never_met_without_a_conflict() {
    let (desk, mill) = two_machines();
    for home in [&desk, &mill] {
        if git(&home.logbook(), &["init", "--initial-branch", "main"]).is_none() {
            // No git on this machine: nothing to see.
            return;
        }
        assert_eq!(git(&home.logbook(), &["add", "--all"]), Some(true));
        assert_eq!(
            git(&home.logbook(), &["commit", "--message", "A week"]),
            Some(true)
        );
    }
    let pull = |home: &Home, from: &Home| {
        let from = from.logbook();
        let args = [
            "pull",
            "--no-rebase",
            "--no-edit",
            "--allow-unrelated-histories",
            from.to_str().unwrap(),
            "main",
        ];
        assert_eq!(git(&home.logbook(), &args), Some(true), "a conflict");
    };
    pull(&desk, &mill);
    pull(&mill, &desk);
    let told = answers(&desk);
    assert_eq!(told, answers(&mill));
    let export = &told[0];
    assert_eq!(
        export.matches(",pull-up,").count(),
        3,
        "Ana's set of the file once, and one of each machine: {export}"
    );
    assert_eq!(
        export.matches(",dip,").count(),
        2,
        "two equal sets stay two: {export}"
    );
    let names = export
        .lines()
        .filter(|row| row.trim_end_matches(',').split(',').count() == 3)
        .count();
    assert_eq!(names, 2, "each athlete is named once: {export}");
    // And on they go, each in their own journal.
    desk.log(&["--note", "after the merge"]);
    mill.log(&["--note", "after the merge"]);
    for home in [&desk, &mill] {
        assert_eq!(git(&home.logbook(), &["add", "--all"]), Some(true));
        assert_eq!(
            git(&home.logbook(), &["commit", "--message", "A day"]),
            Some(true)
        );
    }
    pull(&desk, &mill);
    pull(&mill, &desk);
    assert_eq!(answers(&desk), answers(&mill));
}

/// Copies the files of one logbook into another, as a sync tool does: what differs is kept beside as a conflict copy.
fn carry(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let there = to.join(entry.file_name());
        if entry.path().is_dir() {
            carry(&entry.path(), &there);
        } else if !there.exists() {
            fs::copy(entry.path(), there).unwrap();
        } else if fs::read(&there).unwrap() != fs::read(entry.path()).unwrap() {
            let name = entry.file_name().into_string().unwrap();
            let stem = name.strip_suffix(".ron").unwrap();
            // The name that Syncthing gives a conflict copy (its documentation, "Understanding Synchronization").
            fs::copy(
                entry.path(),
                to.join(format!("{stem}.sync-conflict-20260320-101112-ABCDEFG.ron")),
            )
            .unwrap();
        }
    }
}

#[test]
fn a_sync_tool_that_keeps_both_copies_of_a_journal_loses_and_doubles_nothing() {
    // Both machines were set up from one image, so both write as the same device: the worst case.
    let (desk, mill) = ["image", "image"]
        .map(|device| Home::new().on_device(device))
        .into();
    let ids: Vec<String> = [&desk, &mill]
        .iter()
        .map(|home| home.log(&["--note", "mine", "--at", "2026-03-01"]))
        .collect();
    carry(&mill.logbook(), &desk.logbook());
    carry(&desk.logbook(), &mill.logbook());
    assert_eq!(answers(&desk), answers(&mill));
    let export = desk.answer(&["export"]);
    for id in ids {
        assert_eq!(export.matches(&id).count(), 1, "{export}");
    }
    // A record of the copy can be mended, and nothing of either copy is changed.
    let lines = desk.lines();
    let id = desk
        .answer(&["export"])
        .lines()
        .find(|row| row.contains("mine"))
        .unwrap()[..26]
        .to_owned();
    desk.answer(&["retract", &id]);
    assert!(lines.iter().all(|line| desk.lines().contains(line)));
    assert_eq!(desk.answer(&["export"]).matches("mine").count(), 1);
}

#[test]
fn eight_that_log_at_once_all_come_through_one_after_the_other() {
    let home = Home::new();
    home.log(&["--note", "first"]);
    let writers: Vec<_> = (0..8)
        .map(|n| {
            let note = format!("writer {n}");
            let mut command = home.command(&["log", "--athlete", "Ana", "--note", &note]);
            command
                .stdout(Stdio::null())
                .stderr(Stdio::null())
                .spawn()
                .unwrap()
        })
        .collect();
    for mut writer in writers {
        assert!(writer.wait().unwrap().success());
    }
    let export = home.answer(&["export"]);
    for n in 0..8 {
        assert_eq!(export.matches(&format!("writer {n}")).count(), 1, "{export}");
    }
    assert_eq!(home.answer(&["check"]), "No problems.\n");
}
