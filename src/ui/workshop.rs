//! What the Workshop asks for.

/// Something that is done to the text of a ladder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WorkshopDeed {
    /// Open the file with this key.
    Open(String),
    /// Open the file of the ladder with this id.
    OpenLadder(String),
    /// The file's text is this now. Nothing is saved.
    Type {
        /// Its key.
        file: String,
        /// All of it.
        text: String,
    },
    /// Save the open file.
    Save,
    /// Mend the open file's mistake of this number, where a key can.
    Mend(usize),
    /// Show demands for the next body.
    TurnBody,
    /// Begin a ladder of this title from the template.
    New(String),
    /// Begin an own ladder from the open shipped one, of the same id.
    Copy,
    /// Ask whether to delete the open file.
    AskDelete,
    /// Delete it.
    Delete,
    /// Go back to the saved text.
    ThrowAway,
    /// Bring back what was deleted or thrown away last.
    TakeBack,
    /// Somebody else changed the file: what was typed here holds.
    KeepMine,
    /// Somebody else changed the file: theirs holds.
    TakeTheirs,
    /// Answer no question.
    LeaveIt,
}
