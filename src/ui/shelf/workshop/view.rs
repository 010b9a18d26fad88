//! The Workshop's view: the list of files, and the open one with its mistakes and its ladder.

use crate::body::Body;
use crate::catalogue::{Catalogue, Ladder};
use crate::coaching::standing::joined;
use crate::problem::{Severity, visible};
use crate::report::numbers::{about, counted};
use crate::ui::shelf::opened::Opened;
use crate::ui::views::{Asks, FileLine, FileView, RungBlock, Whose, WorkshopView};

use super::checked::{Checked, LADDERS, MOVEMENTS, SHIPPED, drawn, mistake};
use super::{Question, Workshop, objection, saved_text};

/// The Workshop as it is now; with `read_only` nothing can be typed, and that says why.
pub(in crate::ui::shelf) fn view(
    opened: &Opened,
    workshop: &Workshop,
    read_only: Option<&str>,
) -> WorkshopView {
    let files = files(opened, workshop);
    let file = workshop.open(opened);
    let asks = file.as_deref().and_then(|file| asks(opened, workshop, file));
    WorkshopView {
        open: file.map(|file| open(opened, workshop, &file, read_only)),
        files,
        can_take_back: workshop.gone.is_some(),
        asks,
    }
}

/// Every file: own ladders, then the shipped ones; movements at the end of each.
pub(super) fn files(opened: &Opened, workshop: &Workshop) -> Vec<FileLine> {
    let mut own: Vec<String> = opened.own_files().into_iter().map(|file| file.path).collect();
    own.extend(workshop.typed.keys().cloned());
    // A file that can't be read is named all the same.
    let unread = opened.problems.iter().map(|problem| problem.place.file.clone());
    own.extend(unread.filter(|file| file.starts_with(LADDERS) || file == MOVEMENTS));
    own.sort_by_key(|file| (file == MOVEMENTS, file.clone()));
    own.dedup();
    let own = own.into_iter().map(|file| FileLine {
        title: title_of(opened, workshop, &file),
        whose: Whose::Own,
        unsaved: workshop.typed.get(&file).is_some(),
        broken: broken(opened, &file),
        file,
    });
    let mut shipped: Vec<String> = Catalogue::shipped_files().map(|(name, _)| name).collect();
    shipped.sort_by_key(|name| (name == MOVEMENTS, name.clone()));
    let shipped = shipped.into_iter().map(|name| FileLine {
        title: Catalogue::shipped()
            .ladder(stem(&name))
            .map_or_else(|| "All movements".to_owned(), |ladder| ladder.title.clone()),
        file: format!("{SHIPPED}{name}"),
        whose: Whose::Shipped,
        unsaved: false,
        broken: None,
    });
    own.chain(shipped).collect()
}

fn stem(file: &str) -> &str {
    file.rsplit('/').next().unwrap_or(file).trim_end_matches(".ron")
}

/// The ladder in force that came from this file.
fn in_force<'a>(opened: &'a Opened, file: &str) -> Option<&'a Ladder> {
    let mut all = opened.catalogue.ladders();
    all.find(|ladder| opened.catalogue.origin(&ladder.id) == Some(file))
}

fn title_of(opened: &Opened, workshop: &Workshop, file: &str) -> String {
    if file == MOVEMENTS {
        return "Own movements".to_owned();
    }
    let typed = || {
        let good = workshop.good.get(file)?;
        let ladder = opened.catalogue.read_ladder(file, good).0?;
        Some(ladder.title)
    };
    let saved = in_force(opened, file).map(|ladder| ladder.title.clone());
    saved.or_else(typed).unwrap_or_else(|| visible(stem(file)))
}

fn broken(opened: &Opened, file: &str) -> Option<String> {
    let mut all = opened.problems.iter();
    all.find(|problem| problem.severity == Severity::Error && problem.place.file == file)
        .map(|problem| format!("{}:{} {}", problem.place.line, problem.place.column, problem.what))
}

fn open(opened: &Opened, workshop: &Workshop, file: &str, read_only: Option<&str>) -> FileView {
    let text = workshop.text(opened, file);
    let objection = read_only.or_else(|| objection(file, text.as_deref()));
    let unsaved = workshop.typed.get(file).is_some();
    let is_shipped = file.starts_with(SHIPPED);
    let text = text.unwrap_or_default();
    let checked = (!is_shipped).then(|| Checked::of(opened, file, &text));
    let (body, body_words) = body(opened, workshop);
    let draw = |ladder: &Ladder, catalogue: &Catalogue| drawn(ladder, catalogue, &body);
    let now = match &checked {
        Some(checked) => checked
            .ladder
            .as_ref()
            .map(|ladder| draw(ladder, &checked.catalogue)),
        None => shipped_ladder(file).map(|ladder| draw(ladder, &opened.catalogue)),
    };
    let is_drawn_now = now.is_some();
    let before = || {
        let good = workshop
            .good
            .get(file)
            .map(|good| Checked::of(opened, file, good));
        let good = good.and_then(|good| Some(draw(&good.ladder?, &good.catalogue)));
        good.or_else(|| in_force(opened, file).map(|ladder| draw(ladder, &opened.catalogue)))
    };
    let ladder = now.or_else(before);
    FileView {
        file: file.to_owned(),
        writable: objection.is_none(),
        unsaved,
        is_new: unsaved && saved_text(opened, file).is_none(),
        can_copy: is_shipped && read_only.is_none(),
        can_delete: objection.is_none(),
        state: state(opened, workshop, file, objection),
        mistakes: checked
            .iter()
            .flat_map(|checked| checked.problems.iter().map(mistake))
            .collect(),
        rungs: Catalogue::rung_lines(&text).into_iter().map(block).collect(),
        drawn_before: ladder.is_some() && !is_drawn_now,
        ladder,
        body: body_words,
        in_use: in_use(opened, file, unsaved, checked.as_ref()),
        text,
    }
}

fn shipped_ladder(file: &str) -> Option<&'static Ladder> {
    Catalogue::shipped().ladder(stem(file))
}

fn block(lines: crate::catalogue::RungLines) -> RungBlock {
    RungBlock {
        id: lines.id,
        first: lines.first,
        last: lines.last,
    }
}

/// Whose body the demands are for, and how it is called.
fn body(opened: &Opened, workshop: &Workshop) -> (Body, String) {
    let athlete = opened
        .open_log()
        .filter(|_| workshop.for_athlete)
        .and_then(|log| {
            let timeline = opened.timeline(log);
            let body = Body::of(&timeline.person, timeline.bodyweight(), opened.on).ok()?;
            let mass = timeline.bodyweight().map_or_else(String::new, |mass| {
                format!(", {}", about(mass.kg(), opened.book.unit()))
            });
            Some((body, format!("{}{mass}", log.name)))
        });
    athlete.unwrap_or_else(|| (Body::unknown_body(), "any body".to_owned()))
}

fn state(opened: &Opened, workshop: &Workshop, file: &str, objection: Option<&str>) -> String {
    if let Some(words) = objection {
        return words.to_owned();
    }
    match workshop.typed.get(file) {
        None => "saved".to_owned(),
        Some(typed) if typed.seen != saved_text(opened, file) => {
            "not saved; changed on disk since you began".to_owned()
        }
        Some(typed) if typed.seen.is_none() => "new, not saved".to_owned(),
        Some(_) => "not saved".to_owned(),
    }
}

/// What everybody's next steps go by meanwhile.
fn in_use(opened: &Opened, file: &str, unsaved: bool, checked: Option<&Checked>) -> String {
    let Some(checked) = checked else {
        return match file.strip_prefix(SHIPPED) {
            Some(MOVEMENTS) => "Copy it to add movements of your own.".to_owned(),
            _ if opened.catalogue.origin(stem(file)).is_some() => {
                "Your own ladder of this id is in use instead.".to_owned()
            }
            _ => "In use as it is. A copy of your own, once saved, replaces it in this logbook.".to_owned(),
        };
    };
    if file == MOVEMENTS {
        let words = "Movements with a mistake are left out; everything else is in use.";
        return if unsaved {
            "What is typed counts once you save it.".to_owned()
        } else {
            words.to_owned()
        };
    }
    let is_shipped_too = Catalogue::shipped().ladder(stem(file)).is_some();
    match (checked.errors() > 0, unsaved, in_force(opened, file).is_some()) {
        (true, true, true) => "The saved version stays in use. No athlete's next step changes.",
        (true, false, true) => {
            "The last good version stays in use while this window is open. No athlete's next step changes until this file has no mistake."
        }
        (true, _, false) if is_shipped_too => "The shipped ladder stays in use until this file has no mistake and is saved.",
        (true, _, false) => "It is in no list until it has no mistake and is saved.",
        (false, true, true) => "The saved version stays in use until you save.",
        (false, true, false) if is_shipped_too => "The shipped ladder stays in use until you save.",
        (false, true, false) => "It is in no list until you save.",
        (false, false, _) if is_shipped_too => "In use, in place of the shipped ladder of this id.",
        (false, false, _) => "In use.",
    }
    .to_owned()
}

fn asks(opened: &Opened, workshop: &Workshop, file: &str) -> Option<Asks> {
    Some(match workshop.asks.as_ref()? {
        Question::Settle(None) => Asks::Settle(format!(
            "{} is no longer on disk: somebody else deleted or moved it since you began to type.",
            visible(file)
        )),
        Question::Settle(Some(_)) => Asks::Settle(format!(
            "Somebody else changed {} since you began to type. Whichever you take, the other one is kept among the earlier versions of this machine.",
            visible(file)
        )),
        Question::Delete => Asks::Delete(after_deleting(opened, file)),
    })
}

/// What becomes of athletes on the ladder when its file is gone.
fn after_deleting(opened: &Opened, file: &str) -> String {
    let Some(ladder) = in_force(opened, file) else {
        return "It goes to the earlier versions of this machine, and Ctrl+Z brings it back.".to_owned();
    };
    let is_on = |log: &&crate::logbook::Log| {
        !log.is_archived(opened.on) && joined(&opened.timeline(log)).contains(ladder.id.as_str())
    };
    let on_it = opened.book.logs.iter().filter(is_on).count();
    let who = match on_it {
        0 => "Nobody is on it.".to_owned(),
        count => {
            let athletes = counted(count, "athlete");
            let is_shipped = Catalogue::shipped().ladder(&ladder.id).is_some();
            let then = if is_shipped {
                "they go on with the shipped ladder of this id"
            } else {
                "their records stay, but they get no next step on it"
            };
            let are = if count == 1 { "is" } else { "are" };
            format!("{athletes} {are} on it: {then}.")
        }
    };
    format!("{who} The file goes to the earlier versions of this machine, and Ctrl+Z brings it back.")
}
