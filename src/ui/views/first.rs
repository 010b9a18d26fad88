//! First start: the four ways in, and what an import would write.

/// What first start offers to choose from.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FirstView {
    /// How many invented athletes the demo has, and how long they have trained, in words.
    pub demo_words: String,
    /// Goal ladders, in the order they are offered.
    pub ladders: Vec<LadderChoice>,
    /// Where a new logbook would lie.
    pub new_folder: String,
    /// What went wrong with the last attempt.
    pub problem: Option<String>,
}

/// A goal ladder to begin with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LadderChoice {
    /// The ladder's id.
    pub id: String,
    /// Name on screen.
    pub title: String,
    /// The goal in a few words.
    pub goal: String,
    /// Whether left and right climb apart.
    pub sided: bool,
    /// Its rungs' titles, from the ground up.
    pub rungs: Vec<String>,
    /// What to ask about today: movements of its lower rungs, with whether they are held.
    pub questions: Vec<(String, bool)>,
}

/// What an import found.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ImportView {
    /// How each column of the file was understood: theirs, ours; none is left out.
    pub columns: Vec<(String, Option<String>)>,
    /// Names that a column can be matched to.
    pub known_columns: Vec<&'static str>,
    /// The first rows, and after them those with a problem.
    pub rows: Vec<ImportRow>,
    /// How many rows are sound.
    pub good: usize,
    /// How many are not.
    pub bad: usize,
    /// What is wrong with the file as a whole.
    pub problem: Option<String>,
    /// No column says whose rows these are: the person has to.
    pub asks_athlete: bool,
    /// Where the rows would be written, in words.
    pub into: String,
}

/// A row of the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ImportRow {
    /// Line in the file.
    pub line: usize,
    /// The line as it is.
    pub text: String,
    /// What is wrong with it.
    pub problem: Option<String>,
}
