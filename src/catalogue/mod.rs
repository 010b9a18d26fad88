//! Movements and ladders: what can be trained, and the ordered steps toward a skill.
//!
//! The shipped ones lie as RON in `progressions/` and are compiled in; a logbook's own add to them or replace one by id.
//! Invariant: a [`Catalogue`] holds only ladders that passed the check; a broken file is a list of problems beside it.

mod check;
mod climb;
mod ladder;
mod movement;
mod names;
mod own;
mod read;
mod shipped;

use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};

pub use check::hyphened;
pub use ladder::{
    Amount, Caution, Companion, Entry, Given, Help, Ladder, Range, Rung, Shape, Standard, Way, Work,
};
pub use movement::{BodyShare, Class, Joint, Movement, Muscle, Pattern, Sides, Site};
pub use names::fold;
pub use own::OwnFile;
pub use read::{LONGEST_FILE, RungLines, text_of};

use crate::problem::Problem;
use check::Movements;
use shipped::Shipped;

/// All movements and ladders that are in force. A clone is cheap: what is in it is shared.
#[derive(Debug, Clone, Default)]
pub struct Catalogue {
    movements: Arc<Movements>,
    ladders: BTreeMap<String, Held>,
    /// Id by folded name.
    movement_names: Arc<BTreeMap<String, String>>,
    /// Id by folded name.
    ladder_names: BTreeMap<String, String>,
    /// The own file that a ladder's id came from.
    origins: BTreeMap<String, String>,
}

/// A ladder in force.
#[derive(Debug, Clone)]
enum Held {
    /// Read when it is first asked for.
    Shipped(&'static Shipped),
    Own(Arc<Ladder>),
}

impl Held {
    fn ladder(&self) -> Option<&Ladder> {
        match self {
            Held::Shipped(shipped) => shipped.ladder(),
            Held::Own(ladder) => Some(ladder),
        }
    }
}

static SHIPPED: LazyLock<Catalogue> = LazyLock::new(|| {
    let mut catalogue = Catalogue::default();
    for movement in shipped::BY_ID.values() {
        catalogue.put_movement(movement.clone());
    }
    for shipped in &shipped::LADDERS {
        catalogue.put(shipped.id, Held::Shipped(shipped));
    }
    catalogue
});

impl Catalogue {
    /// What the program brings along. A test holds that every shipped file is sound.
    pub fn shipped() -> &'static Catalogue {
        &SHIPPED
    }

    /// The movement with this id.
    pub fn movement(&self, id: &str) -> Option<&Movement> {
        self.movements.get(id)
    }

    /// The ladder with this id.
    pub fn ladder(&self, id: &str) -> Option<&Ladder> {
        self.ladders.get(id)?.ladder()
    }

    /// The movement of this name as a person writes it; case, spaces, `-` and `_` make no difference.
    pub fn movement_by_name(&self, name: &str) -> Option<&Movement> {
        self.movement(name)
            .or_else(|| self.movement(self.movement_names.get(&fold(name))?))
    }

    /// The title of a movement, or its id where it isn't known here.
    pub fn movement_title<'a>(&'a self, id: &'a str) -> &'a str {
        self.movement(id).map_or(id, |movement| &movement.title)
    }

    /// The ladder of this name as a person writes it; case, spaces, `-` and `_` make no difference.
    pub fn ladder_by_name(&self, name: &str) -> Option<&Ladder> {
        self.ladder(name)
            .or_else(|| self.ladder(self.ladder_names.get(&fold(name))?))
    }

    /// The file of the logbook that an own ladder came from; none for a shipped one.
    pub fn origin(&self, id: &str) -> Option<&str> {
        self.origins.get(id).map(String::as_str)
    }

    /// Every movement, by id.
    pub fn movements(&self) -> impl Iterator<Item = &Movement> {
        self.movements.values()
    }

    /// Every ladder, by id.
    pub fn ladders(&self) -> impl Iterator<Item = &Ladder> {
        self.ladders.values().filter_map(Held::ladder)
    }

    /// The movements of a file and what is wrong in it; a movement with an error is left out.
    pub fn read_movements(file: &str, text: &str) -> (Vec<Movement>, Vec<Problem>) {
        let reading = read::movements(file, text);
        (reading.value, reading.problems)
    }

    /// The ladder of a file, if nothing in it is an error, and what is wrong in it. Its movements must be in this catalogue.
    pub fn read_ladder(&self, file: &str, text: &str) -> (Option<Ladder>, Vec<Problem>) {
        let reading = read::ladder(file, text, &self.movements);
        (reading.value, reading.problems)
    }

    /// A warning at the place where a ladder's file gives `field` of `rung`, or the rung's id where it is silent.
    pub fn warning_at(file: &OwnFile, rung: (&str, &'static str), what: String, mend: String) -> Problem {
        read::warning_at_rung(&file.path, &file.text, rung, what, mend)
    }

    /// Where each rung of a ladder's file stands; a file that can't be read at all gives none. Never fails, whatever the text.
    pub fn rung_lines(text: &str) -> Vec<RungLines> {
        read::rung_lines(text)
    }

    /// The files that the program brings along, as they were written: name and text, movements first, then ladders by id.
    pub fn shipped_files() -> impl Iterator<Item = (String, &'static str)> {
        let ladders = shipped::LADDERS.iter();
        std::iter::once(("movements.ron".to_owned(), shipped::MOVEMENTS))
            .chain(ladders.map(|ladder| (format!("{}.ron", ladder.id), ladder.text)))
    }

    /// The text of a ladder's file; reading it gives the same ladder.
    pub fn ladder_text(&self, ladder: &Ladder) -> String {
        read::ladder_text(ladder, &self.movements)
    }

    /// The text of a file of movements; reading it gives the same movements.
    pub fn movements_text(movements: &[Movement]) -> String {
        read::movements_text(movements)
    }

    fn put_movement(&mut self, movement: Movement) {
        Arc::make_mut(&mut self.movement_names).insert(fold(&movement.id), movement.id.clone());
        Arc::make_mut(&mut self.movements).insert(movement.id.clone(), movement);
    }

    fn put_ladder(&mut self, ladder: Ladder) {
        let id = ladder.id.clone();
        self.put(&id, Held::Own(Arc::new(ladder)));
    }

    fn put(&mut self, id: &str, ladder: Held) {
        self.ladder_names.insert(fold(id), id.to_owned());
        self.ladders.insert(id.to_owned(), ladder);
    }
}
