//! The arrows between folders: data flows one way, and only the rim knows disk, clock and window.

#![allow(missing_docs, clippy::unwrap_used, clippy::manual_strip)]

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// Each folder (or file) of `src`, in the order of the data flow, and what it may use besides itself.
const ARROWS: &[(&str, &str)] = &[
    ("problem", ""),
    ("units", ""),
    ("catalogue", "problem units"),
    ("logbook", "problem units catalogue"),
    ("body", "problem units catalogue logbook"),
    ("timeline", "problem units catalogue logbook body"),
    ("strength", "problem units catalogue logbook body timeline"),
    ("bests", "problem units catalogue logbook body timeline"),
    (
        "coaching",
        "problem units catalogue logbook body timeline strength bests",
    ),
    (
        "report",
        "problem units catalogue logbook body timeline strength bests coaching",
    ),
    ("paper", "units report"),
    (
        "demo",
        "problem units catalogue logbook body timeline strength bests coaching",
    ),
    ("clock", ""),
    (
        "cli",
        "problem units catalogue logbook body timeline strength bests coaching report paper demo clock",
    ),
    (
        "ui",
        "problem units catalogue logbook body timeline strength bests coaching report paper demo clock",
    ),
    ("main", "rungwright"),
    ("lib", ""),
];

/// What is drawn, and what it may name: it reads ready views, so the log's own stages and the book behind it are out of reach.
const DRAWN: &[&str] = &["ui/action", "ui/screens", "ui/two_rail", "ui/views", "ui/widgets"];
const BEHIND_VIEWS: &[&str] = &[
    "catalogue",
    "body",
    "timeline",
    "strength",
    "paper",
    "demo",
    "clock",
];

/// What only some places may name, and where.
const HOMES: &[(&str, &[&str])] = &[
    ("egui", &["ui"]),
    ("eframe", &["ui"]),
    ("egui_plot", &["ui"]),
    ("rfd", &["ui"]),
    ("notify_debouncer_full", &["ui"]),
    ("krilla", &["paper"]),
    ("ttf_parser", &["paper"]),
    ("clap", &["cli"]),
    ("std::fs", &["logbook/disk", "cli", "ui"]),
    ("fs::", &["logbook/disk", "cli", "ui"]),
    ("File::", &["logbook/disk", "cli", "ui"]),
    ("std::env", &["cli", "ui"]),
    ("Instant::now", &["logbook/disk", "ui"]),
    ("Local::now", &["clock"]),
    ("Utc::now", &["clock"]),
    ("SystemTime::now", &["clock"]),
    ("std::net", &[]),
    ("TcpStream", &[]),
    ("UdpSocket", &[]),
];

#[test]
fn every_path_in_the_sources_follows_the_arrows() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut wrong = Vec::new();
    for file in sources(&src) {
        let text = std::fs::read_to_string(&file).unwrap();
        let place = file.strip_prefix(&src).unwrap().with_extension("");
        let place = place.to_string_lossy().replace('\\', "/");
        wrong.extend(faults(&place, &text));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_bad_snippet_is_caught() {
    let caught = |place: &str, text: &str| !faults(place, text).is_empty();
    assert!(caught("units/mass", "use crate::catalogue::Ladder;"));
    assert!(caught(
        "coaching/judge",
        "use crate::{units::Mass, report::words::Words};"
    ));
    assert!(caught(
        "coaching/rules/begin",
        "use crate::{\n    units::Mass,\n    ui,\n};"
    ));
    assert!(caught(
        "timeline/sets",
        "fn f() -> crate::coaching::Verdict { todo!() }"
    ));
    assert!(caught("coaching/mod", "use super::report::words;"));
    assert!(caught("coaching/care", "let today = chrono::Local::now();"));
    assert!(caught(
        "timeline/mod",
        "let text = std::fs::read_to_string(path);"
    ));
    assert!(caught("report/words", "use egui::Ui;"));
    assert!(caught("logbook/record", "use std::net::TcpStream;"));
    assert!(caught("nobody/knows", "use crate::units::Mass;"));
    assert!(caught("ui/screens/next/mod", "use crate::timeline::Timeline;"));
    assert!(caught("ui/widgets/belt", "use crate::ui::shelf::opened::Opened;"));
    assert!(caught("paper/sheet", "use crate::coaching::NextStep;"));
    assert!(caught("logbook/machine", "let home = std::env::var_os(name);"));
}

#[test]
fn a_sound_snippet_passes_and_comments_and_texts_are_not_code() {
    let clean = |place: &str, text: &str| faults(place, text).is_empty();
    assert!(clean(
        "coaching/judge",
        "use crate::units::{Mass, Share};\n// crate::ui is far away\n/* crate::cli */"
    ));
    assert!(clean(
        "coaching/rules/begin",
        "use super::Found;\nuse crate::coaching::facts::Facts;"
    ));
    assert!(clean("report/words", "let text = \"crate::ui\";"));
    assert!(clean("coaching/mod", "mod judge; pub use judge::Went;"));
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// What `text`, lying at `place` (path without extension), uses that it may not.
fn faults(place: &str, text: &str) -> Vec<String> {
    let code = without_comments_and_texts(text);
    let own = place.split('/').next().unwrap_or_default();
    let mut wrong = Vec::new();
    match ARROWS.iter().find(|(folder, _)| *folder == own) {
        None => wrong.push(format!("{place}: the table of arrows does not know {own}")),
        Some(_) if own == "lib" => {}
        Some((_, allowed)) => {
            for used in folders_used(place, &code) {
                if used != own
                    && !allowed.split(' ').any(|allowed| allowed == used)
                    && ARROWS.iter().any(|(folder, _)| *folder == used)
                {
                    wrong.push(format!("{place} uses {used}, which lies behind it"));
                }
            }
        }
    }
    for (name, homes) in HOMES {
        if !lies_in(place, homes) && own != "main" && own != "lib" && names(&code, name) {
            wrong.push(format!("{place} names {name}, whose home is {homes:?}"));
        }
    }
    if lies_in(place, DRAWN) {
        let used = folders_used(place, &code);
        let behind = BEHIND_VIEWS.iter().filter(|folder| used.contains(**folder));
        wrong.extend(behind.map(|folder| format!("{place} uses {folder}, which it sees only as a view")));
        if names(&code, "shelf") {
            wrong.push(format!("{place} names the shelf, which it sees only as a book"));
        }
    }
    wrong
}

fn lies_in(place: &str, homes: &[&str]) -> bool {
    homes
        .iter()
        .any(|home| place == *home || place.starts_with(&format!("{home}/")))
}

/// Whether `code` names `name` as a path of its own, not as the end of a longer word.
fn names(code: &str, name: &str) -> bool {
    code.match_indices(name).any(|(at, _)| {
        let before = code[..at].chars().next_back();
        let after = code[at + name.len()..].chars().next();
        let word = |c: Option<char>| c.is_some_and(|c| c.is_alphanumeric() || c == '_');
        !word(before) && (name.ends_with(':') || !word(after))
    })
}

/// The folders that `crate::…` and `super::…` paths lead to, grouped ones too.
fn folders_used(place: &str, code: &str) -> BTreeSet<String> {
    let mut used = BTreeSet::new();
    for (at, _) in code.match_indices("crate::") {
        heads(&code[at + "crate::".len()..], &mut used);
    }
    let depth = place.trim_end_matches("/mod").split('/').count();
    for (at, _) in code.match_indices("super::") {
        if code[..at].ends_with("super::") {
            continue;
        }
        let mut rest = &code[at..];
        let mut up = 0;
        while let Some(further) = rest.strip_prefix("super::") {
            rest = further;
            up += 1;
        }
        if up >= depth {
            heads(rest, &mut used);
        }
    }
    used
}

/// First names of a path, or of each path of a group `{…}`.
fn heads(path: &str, used: &mut BTreeSet<String>) {
    let path = path.trim_start();
    if let Some(group) = path.strip_prefix('{') {
        let (mut depth, mut start) = (0, 0);
        for (at, c) in group.char_indices() {
            match c {
                '{' => depth += 1,
                '}' if depth == 0 => {
                    heads(&group[start..at], used);
                    return;
                }
                '}' => depth -= 1,
                ',' if depth == 0 => {
                    heads(&group[start..at], used);
                    start = at + 1;
                }
                _ => {}
            }
        }
        return;
    }
    let head: String = path
        .chars()
        .take_while(|c| c.is_alphanumeric() || *c == '_')
        .collect();
    if !head.is_empty() {
        used.insert(head);
    }
}

/// The code with comments, doc comments and string texts blanked.
fn without_comments_and_texts(text: &str) -> String {
    let mut code = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        let skipped = if rest.starts_with("//") {
            rest.find('\n').unwrap_or(rest.len())
        } else if rest.starts_with("/*") {
            rest.find("*/").map_or(rest.len(), |end| end + 2)
        } else if rest.starts_with("r#\"") {
            rest[3..].find("\"#").map_or(rest.len(), |end| end + 5)
        } else if c == '"' {
            text_length(rest)
        } else if rest.starts_with("'\"'") {
            3
        } else {
            0
        };
        if skipped > 0 {
            code.push(' ');
            rest = &rest[skipped..];
        } else {
            code.push(c);
            rest = &rest[c.len_utf8()..];
        }
    }
    code
}

fn text_length(rest: &str) -> usize {
    let mut escaped = false;
    for (at, c) in rest.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return at + 1,
            _ => {}
        }
    }
    rest.len()
}
