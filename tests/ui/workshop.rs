//! The Workshop: a ladder is written, mended and saved; what is typed is never lost; whatever the text, the window stands.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::views::{Asks, FileView};
use rungwright::ui::workshop::WorkshopDeed;

use crate::shelf::{again, machine, started, until};

pub fn craft(shelf: &mut Shelf, deed: WorkshopDeed) -> Done {
    shelf.perform(Deed::Workshop(deed))
}

pub fn say(shelf: &mut Shelf, deed: WorkshopDeed) -> String {
    match craft(shelf, deed) {
        Done::Ok(words) => words.unwrap_or_default(),
        other => panic!("{other:?}"),
    }
}

pub fn file(shelf: &Shelf) -> FileView {
    shelf.workshop().open.unwrap()
}

pub fn type_in(shelf: &mut Shelf, change: impl FnOnce(String) -> String) {
    let text = change(file(shelf).text);
    assert_eq!(typed(shelf, text), Done::Ok(None));
}

/// The open file's text is this now.
pub fn typed(shelf: &mut Shelf, text: impl Into<String>) -> Done {
    let (file, text) = (file(shelf).file, text.into());
    craft(shelf, WorkshopDeed::Type { file, text })
}

fn root(home: &Path) -> PathBuf {
    machine(home).places().default_logbook()
}

pub fn on_disk(home: &Path, name: &str) -> Option<String> {
    std::fs::read_to_string(root(home).join("ladders").join(name)).ok()
}

/// What the command `check` prints of a file.
fn checked(path: &Path) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_rungwright"))
        .arg("check")
        .arg(path)
        .output()
        .unwrap();
    String::from_utf8(output.stdout).unwrap()
}

/// A ladder of one's own, saved, with the lifter on it.
pub fn with_own(home: &Path) -> Shelf {
    let mut shelf = started(home);
    craft(&mut shelf, WorkshopDeed::New("Towel pull".into()));
    say(&mut shelf, WorkshopDeed::Save);
    let join = Deed::Join {
        ladder: "towel-pull".into(),
    };
    assert_eq!(shelf.perform(join), Done::Ok(None));
    shelf
}

/// How many rungs the ladder in force has; none where there is no such ladder.
fn rungs(shelf: &mut Shelf, id: &str) -> Option<usize> {
    shelf.perform(Deed::ShowLadder(id.into()));
    let open = shelf.ladders().open.filter(|open| open.id == id);
    open.map(|open| open.rungs.len())
}

#[test]
fn a_ladder_is_written_its_mistake_named_at_its_line_mended_and_saved_and_check_finds_nothing() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    craft(&mut shelf, WorkshopDeed::New("Towel pull".into()));
    let new = file(&shelf);
    assert_eq!(
        (new.file.as_str(), new.mistakes.len()),
        ("ladders/towel-pull.ron", 0)
    );
    assert!(new.unsaved && on_disk(home.path(), "towel-pull.ron").is_none());
    type_in(&mut shelf, |text| {
        text.replacen("movement: \"pull-up\"", "movement: \"pulup\"", 1)
    });
    let wrong = file(&shelf);
    let line = wrong
        .text
        .lines()
        .position(|line| line.contains("pulup"))
        .unwrap()
        + 1;
    assert_eq!(wrong.mistakes.len(), 1, "{:?}", wrong.mistakes);
    let mistake = &wrong.mistakes[0];
    assert_eq!((mistake.line, mistake.column), (line, 23));
    assert_eq!(mistake.mend, "did you mean \"pull-up\"?");
    assert!(
        mistake.by_key && wrong.drawn_before,
        "the drawing is of the text before"
    );
    assert_eq!(wrong.ladder.map(|ladder| ladder.rungs.len()), Some(3));
    say(&mut shelf, WorkshopDeed::Mend(0));
    assert_eq!(file(&shelf).mistakes, []);
    assert_eq!(
        say(&mut shelf, WorkshopDeed::Save),
        "Saved. No mistakes: it is in use now."
    );
    assert_eq!(
        checked(&root(home.path()).join("ladders/towel-pull.ron")),
        "No problems.\n"
    );
    assert_eq!(rungs(&mut shelf, "towel-pull"), Some(3));
    assert!(!file(&shelf).unsaved);
}

#[test]
fn a_broken_save_is_on_disk_and_the_last_good_version_stays_in_use() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_own(home.path());
    type_in(&mut shelf, |text| text.replacen("rungs: [", "rungs: [ oops", 1));
    let said = say(&mut shelf, WorkshopDeed::Save);
    assert!(said.contains("the version before stays in use"), "{said}");
    assert!(on_disk(home.path(), "towel-pull.ron").unwrap().contains("oops"));
    assert_eq!(rungs(&mut shelf, "towel-pull"), Some(3));
    let line = shelf
        .workshop()
        .files
        .into_iter()
        .find(|line| line.file.contains("towel"));
    assert!(line.unwrap().broken.is_some());
    assert!(
        file(&shelf)
            .in_use
            .starts_with("The last good version stays in use")
    );
}

#[test]
fn a_file_that_somebody_changed_meanwhile_is_not_written_over_unasked_and_neither_text_is_lost() {
    for mine_holds in [true, false] {
        let home = tempfile::tempdir().unwrap();
        let mut shelf = with_own(home.path());
        let path = root(home.path()).join("ladders/towel-pull.ron");
        type_in(&mut shelf, |text| format!("// mine\n{text}"));
        let theirs = format!("// theirs\n{}", std::fs::read_to_string(&path).unwrap());
        std::fs::write(&path, &theirs).unwrap();
        assert_eq!(craft(&mut shelf, WorkshopDeed::Save), Done::Ok(None));
        assert!(matches!(shelf.workshop().asks, Some(Asks::Settle(_))));
        assert_eq!(
            std::fs::read_to_string(&path).unwrap(),
            theirs,
            "nothing is written before the answer"
        );
        let answer = if mine_holds {
            WorkshopDeed::KeepMine
        } else {
            WorkshopDeed::TakeTheirs
        };
        say(&mut shelf, answer);
        let (holds, other) = if mine_holds {
            ("// mine", "// theirs")
        } else {
            ("// theirs", "// mine")
        };
        assert!(std::fs::read_to_string(&path).unwrap().starts_with(holds));
        assert!(file(&shelf).text.starts_with(holds));
        assert!(earlier(home.path()).iter().any(|text| text.starts_with(other)));
    }
}

/// Earlier versions of whole files, in the state folder.
fn earlier(home: &Path) -> Vec<String> {
    let folder = machine(home).places().state.join("earlier");
    let marks = std::fs::read_dir(folder).unwrap().flatten();
    let files = marks.flat_map(|mark| std::fs::read_dir(mark.path()).unwrap().flatten());
    files
        .map(|file| std::fs::read_to_string(file.path()).unwrap())
        .collect()
}

#[test]
fn what_is_typed_and_not_saved_is_there_again_in_the_next_window() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_own(home.path());
    type_in(&mut shelf, |text| format!("// half a thought\n{text}"));
    drop(shelf);
    let shelf = again(home.path());
    let open = file(&shelf);
    assert!(
        open.unsaved && open.text.starts_with("// half a thought"),
        "{}",
        open.state
    );
    assert!(
        !on_disk(home.path(), "towel-pull.ron")
            .unwrap()
            .contains("half a thought")
    );
}

#[test]
fn a_deleted_ladder_hurts_nobody_on_it_and_comes_back() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_own(home.path());
    let before = on_disk(home.path(), "towel-pull.ron").unwrap();
    craft(&mut shelf, WorkshopDeed::AskDelete);
    let Some(Asks::Delete(words)) = shelf.workshop().asks else {
        panic!("asks first")
    };
    assert!(
        words.starts_with("1 athlete is on it: their records stay"),
        "{words}"
    );
    say(&mut shelf, WorkshopDeed::Delete);
    assert_eq!(on_disk(home.path(), "towel-pull.ron"), None);
    assert_eq!(rungs(&mut shelf, "towel-pull"), None);
    assert_eq!(shelf.next().ladders.len(), 1, "the other ladder's advice stays");
    say(&mut shelf, WorkshopDeed::TakeBack);
    assert_eq!(on_disk(home.path(), "towel-pull.ron"), Some(before));
    assert_eq!(rungs(&mut shelf, "towel-pull"), Some(3));
}

#[test]
fn a_copy_of_a_shipped_ladder_replaces_it_by_its_id() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    craft(&mut shelf, WorkshopDeed::OpenLadder("first-dip".into()));
    assert!(!file(&shelf).writable);
    assert!(matches!(typed(&mut shelf, "mine now"), Done::Failed(_)));
    let said = say(&mut shelf, WorkshopDeed::Copy);
    assert!(said.contains("replaces the shipped one"), "{said}");
    type_in(&mut shelf, |text| {
        text.replacen("title: \"First dip\"", "title: \"Dip of this gym\"", 1)
    });
    say(&mut shelf, WorkshopDeed::Save);
    shelf.perform(Deed::ShowLadder("first-dip".into()));
    assert_eq!(shelf.ladders().open.unwrap().title, "Dip of this gym");
    assert_eq!(
        file(&shelf).in_use,
        "In use, in place of the shipped ladder of this id."
    );
}

#[test]
fn an_open_text_follows_what_an_editor_writes_while_nothing_is_typed_here() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_own(home.path());
    let path = root(home.path()).join("ladders/towel-pull.ron");
    let theirs = format!("// by an editor\n{}", file(&shelf).text);
    std::fs::write(&path, theirs).unwrap();
    assert!(until(&mut shelf, |shelf| file(shelf)
        .text
        .starts_with("// by an editor")));
}

#[test]
fn a_second_window_shows_the_texts_and_writes_none() {
    let home = tempfile::tempdir().unwrap();
    let _first = with_own(home.path());
    let mut second = again(home.path());
    let open = file(&second);
    assert_eq!(
        (open.file.as_str(), open.writable),
        ("ladders/towel-pull.ron", false)
    );
    for deed in [
        WorkshopDeed::Copy,
        WorkshopDeed::New("Other".into()),
        WorkshopDeed::AskDelete,
    ] {
        assert!(matches!(craft(&mut second, deed), Done::Failed(_)));
    }
    assert!(matches!(typed(&mut second, "x"), Done::Failed(_)));
    drop(second);
    assert_eq!(
        std::fs::read_dir(root(home.path()).join("ladders"))
            .unwrap()
            .count(),
        1
    );
}

/// Every broken file of `tests/mistakes` that a key mends: the mistake is gone then, and no new one takes its place.
#[test]
fn a_mend_by_key_takes_its_mistake_away() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_own(home.path());
    let mut mended = Vec::new();
    for entry in std::fs::read_dir("tests/mistakes/ladders").unwrap().flatten() {
        let path = entry.path();
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let Ok(text) = std::fs::read_to_string(&path) else {
            continue;
        };
        if path.extension().is_none_or(|end| end != "ron") || name.starts_with("movements") {
            continue;
        }
        type_in(&mut shelf, |_| text);
        let before = file(&shelf).mistakes;
        let Some(nth) = before.iter().position(|mistake| mistake.by_key) else {
            continue;
        };
        say(&mut shelf, WorkshopDeed::Mend(nth));
        let after = file(&shelf).mistakes;
        let gone = &before[nth];
        assert!(!after.contains(gone), "{name}: {gone:?}");
        if after.len() < before.len() {
            mended.push(name);
        }
    }
    mended.sort();
    for name in [
        "comma-missing",
        "field-misspelt",
        "movement-spelt-freely",
        "range-upside-down",
        "ratio-in-per-cent",
    ] {
        assert!(
            mended.iter().any(|mended| mended == name),
            "{name} is not mended; {mended:?} are"
        );
    }
}

#[test]
fn where_what_is_typed_cannot_be_kept_the_next_letter_says_so() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    craft(&mut shelf, WorkshopDeed::New("Towel pull".into()));
    let drafts = home.path().join("state/drafts");
    let _ = std::fs::remove_dir_all(&drafts);
    std::fs::write(&drafts, "a file where a folder is wanted").unwrap();
    let is_said_within = |shelf: &mut Shelf, tries: usize| {
        (0..tries).any(|_| {
            shelf.poll();
            std::thread::sleep(Duration::from_millis(10));
            let text = format!("{} ", file(shelf).text);
            matches!(typed(shelf, text), Done::Ok(Some(words)) if words.ends_with("Save it soon."))
        })
    };
    assert!(is_said_within(&mut shelf, 500));
    std::fs::remove_file(&drafts).unwrap();
    assert!(until(&mut shelf, |_| drafts.is_dir()), "it is tried again");
    assert!(!is_said_within(&mut shelf, 1));
}
