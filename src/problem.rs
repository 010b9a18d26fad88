//! What is wrong in a file: where, what, and how to mend it. One form for `check`, journals, import and the window.

use std::fmt;

/// How much a problem matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Everything was read; something looks unintended.
    Warning,
    /// Everything usable was read, but bytes or fields were not understood; `check` counts it, other commands only say it.
    Damage,
    /// Something was not read.
    Error,
}

/// A place in a file, 1-based, columns in characters; 1:1 stands for the file as a whole.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// The file, as a path relative to what was asked for where that is possible.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
}

impl Place {
    /// A place at `line` and `column` of `file`.
    pub fn new(file: impl Into<String>, line: usize, column: usize) -> Self {
        Self {
            file: file.into(),
            line,
            column,
        }
    }

    /// The file as a whole.
    pub fn whole(file: impl Into<String>) -> Self {
        Self::new(file, 1, 1)
    }
}

/// One thing that is wrong, with its place and its mend.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Problem {
    /// Where.
    pub place: Place,
    /// How much it matters.
    pub severity: Severity,
    /// What is wrong, one line, without a full stop.
    pub what: String,
    /// How to mend it, one line, without a full stop.
    pub mend: String,
    /// The source line with a marked range of characters, where an excerpt helps.
    pub excerpt: Option<Excerpt>,
    /// What a program can write by itself to mend it; none where a person must decide.
    pub edit: Option<Edit>,
}

/// A mend that is nothing but other letters in one place.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Edit {
    /// First byte that goes, from 0 after a byte order mark.
    pub from: usize,
    /// One past the last byte that goes; the same as `from` where nothing goes.
    pub to: usize,
    /// What stands there then.
    pub with: String,
}

impl Edit {
    /// The text with this edit made; none where the text is not the one that it was made for.
    pub fn made_in(&self, text: &str) -> Option<String> {
        let mark = text.len() - text.strip_prefix('\u{feff}').unwrap_or(text).len();
        let (before, after) = (text.get(..mark + self.from)?, text.get(mark + self.to..)?);
        Some(format!("{before}{}{after}", self.with))
    }
}

/// The faulty line and the characters in it that are meant.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Excerpt {
    /// The line's text, control characters escaped, at most [`LONGEST_EXCERPT`] characters.
    pub line: String,
    /// First marked character, from 0.
    pub from: usize,
    /// One past the last marked character.
    pub to: usize,
}

/// Longest excerpt shown, in characters; a terminal's width and a little more. Common practice, no source.
pub const LONGEST_EXCERPT: usize = 160;

impl Problem {
    /// An error at `place`.
    pub fn error(place: Place, what: impl Into<String>, mend: impl Into<String>) -> Self {
        Self {
            place,
            severity: Severity::Error,
            what: what.into(),
            mend: mend.into(),
            excerpt: None,
            edit: None,
        }
    }

    /// A warning at `place`.
    pub fn warning(place: Place, what: impl Into<String>, mend: impl Into<String>) -> Self {
        Self {
            severity: Severity::Warning,
            ..Self::error(place, what, mend)
        }
    }

    /// Damage at `place`: kept, reported, nothing else lost.
    pub fn damage(place: Place, what: impl Into<String>, mend: impl Into<String>) -> Self {
        Self {
            severity: Severity::Damage,
            ..Self::error(place, what, mend)
        }
    }

    /// The same problem with the faulty line shown and `from..to` (characters) marked.
    pub fn with_excerpt(mut self, line: &str, from: usize, to: usize) -> Self {
        let line: String = visible(line).chars().take(LONGEST_EXCERPT).collect();
        let length = line.chars().count();
        let from = from.min(length);
        self.excerpt = Some(Excerpt {
            line,
            from,
            to: to.clamp(from, length),
        });
        self
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Place { file, line, column } = &self.place;
        let kind = if self.severity == Severity::Warning {
            "warning: "
        } else {
            ""
        };
        write!(
            f,
            "{}:{line}:{column}: {kind}{}",
            visible(file),
            visible(&self.what)
        )?;
        if let Some(Excerpt { line: text, from, to }) = &self.excerpt {
            let number = line.to_string();
            let gap = " ".repeat(number.len());
            let marks = "^".repeat((to - from).max(1));
            write!(f, "\n  {number} | {text}\n  {gap} | {}{marks}", " ".repeat(*from))?;
        }
        if !self.mend.is_empty() {
            write!(f, "\n  mend: {}", visible(&self.mend))?;
        }
        Ok(())
    }
}

/// Text from data made safe for a terminal, a log or a title: no control and no direction characters, escaped instead.
pub fn visible(text: &str) -> String {
    text.chars()
        .fold(String::with_capacity(text.len()), |mut safe, c| {
            if is_unsafe_to_show(c) {
                safe.extend(c.escape_unicode())
            } else {
                safe.push(c)
            }
            safe
        })
}

/// At most 40 characters of `text`, escaped, for quoting a person's value in a message.
pub fn quoted(text: &str) -> String {
    let mut short: String = text.chars().take(40).collect();
    if text.chars().nth(40).is_some() {
        short.push('…');
    }
    format!("\"{}\"", visible(&short))
}

/// Control characters and those that turn the direction of text (CVE-2021-42574).
fn is_unsafe_to_show(c: char) -> bool {
    c.is_control()
        || matches!(
            c,
            '\u{200e}' | '\u{200f}' | '\u{061c}' | '\u{2028}' | '\u{2029}' | '\u{feff}'
        )
        || ('\u{202a}'..='\u{202e}').contains(&c)
        || ('\u{2066}'..='\u{2069}').contains(&c)
}

/// The candidate that a mistyped `word` most likely meant: nearest by edits, if near enough to be a slip. Case and what
/// stands between words are no edits.
pub fn did_you_mean<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let bare = |text: &str| -> String {
        let letters = text.chars().filter(|c| c.is_alphanumeric());
        letters.flat_map(char::to_lowercase).collect()
    };
    let word = bare(word);
    let allowed = (word.chars().count() / 3).max(1);
    candidates
        .into_iter()
        .map(|candidate| (strsim::osa_distance(&word, &bare(candidate)), candidate))
        .filter(|(edits, _)| *edits <= allowed)
        .min()
        .map(|(_, candidate)| candidate)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_a_letter_or_a_dash_finds_what_was_meant_and_another_word_nothing() {
        let known = ["pull-up", "chin-up", "dip"];
        for typed in ["pulup", "Pul up", "pull_upp", "PULLUP"] {
            assert_eq!(did_you_mean(typed, known), Some("pull-up"), "{typed}");
        }
        assert_eq!(did_you_mean("dipp", known), Some("dip"));
        assert_eq!(did_you_mean("squat", known), None);
        assert_eq!(did_you_mean("", known), None);
    }

    #[test]
    fn a_problem_shows_place_line_and_mend() {
        let problem = Problem::error(
            Place::new("ladders/dip.ron", 3, 5),
            "reserve 12 is more than a set can hold",
            "give 0 to 10",
        )
        .with_excerpt("    reserve: 12,", 4, 15);
        assert_eq!(
            problem.to_string(),
            "ladders/dip.ron:3:5: reserve 12 is more than a set can hold\n  3 |     reserve: 12,\n    |     ^^^^^^^^^^^\n  mend: give 0 to 10"
        );
    }

    #[test]
    fn nothing_from_a_file_reaches_the_terminal_raw() {
        assert_eq!(visible("a\u{1b}[31m\u{202e}b"), "a\\u{1b}[31m\\u{202e}b");
    }

    #[test]
    fn a_slip_of_the_finger_finds_the_movement_that_was_meant() {
        let known = ["pull-up", "chin-up", "dip"];
        assert_eq!(did_you_mean("pul-up", known), Some("pull-up"));
        assert_eq!(did_you_mean("squat", known), None);
    }
}
