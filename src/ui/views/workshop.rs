//! The Workshop: ladders as text, what is wrong in them, and the ladder that the text makes.

use super::LadderView;

/// The Workshop as it is shown.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WorkshopView {
    /// Every file, own ones first.
    pub files: Vec<FileLine>,
    /// The open one.
    pub open: Option<FileView>,
    /// Something was thrown away or deleted and can come back.
    pub can_take_back: bool,
    /// What has to be answered before anything else.
    pub asks: Option<Asks>,
}

/// A file in the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FileLine {
    /// Its key: `ladders/ring-dip.ron` for an own one, `shipped/front-lever.ron` for one that the program brings.
    pub file: String,
    /// The ladder's title, else the file's name.
    pub title: String,
    /// Whose it is.
    pub whose: Whose,
    /// Typed and not saved.
    pub unsaved: bool,
    /// What is wrong in it, on disk.
    pub broken: Option<String>,
}

/// Whose a file is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whose {
    /// The logbook's own.
    Own,
    /// The program's; it can be read and copied.
    Shipped,
}

/// The open file.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FileView {
    /// Its key.
    pub file: String,
    /// The text as typed last.
    pub text: String,
    /// Whether it can be typed into.
    pub writable: bool,
    /// Whether what is typed isn't saved.
    pub unsaved: bool,
    /// Whether it was never saved.
    pub is_new: bool,
    /// It can be copied to an own one of the same id.
    pub can_copy: bool,
    /// It can be deleted.
    pub can_delete: bool,
    /// Whether it is saved, in a few words.
    pub state: String,
    /// What is wrong in the text, in the order of its lines.
    pub mistakes: Vec<Mistake>,
    /// Where its rungs stand in the text.
    pub rungs: Vec<RungBlock>,
    /// The ladder of the last text that made one.
    pub ladder: Option<LadderView>,
    /// Whether the drawing is of an earlier text, because this one makes no ladder.
    pub drawn_before: bool,
    /// Whose body the demands are computed for.
    pub body: String,
    /// What is in use meanwhile.
    pub in_use: String,
}

/// Something wrong, at its place in the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mistake {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// How many characters are meant.
    pub width: usize,
    /// What is wrong.
    pub what: String,
    /// How to mend it.
    pub mend: String,
    /// Whether a key can mend it.
    pub by_key: bool,
    /// Whether the ladder can be used all the same.
    pub is_warning: bool,
}

/// A rung's lines in the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RungBlock {
    /// The rung's id; empty where the text gives none.
    pub id: String,
    /// Its first line, from 1.
    pub first: usize,
    /// Its last line.
    pub last: usize,
}

/// A question over the place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Asks {
    /// Really delete the open file? What becomes of whoever is on it.
    Delete(String),
    /// Somebody else changed the file on disk: whose holds?
    Settle(String),
}
