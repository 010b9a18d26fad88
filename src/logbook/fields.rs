//! The fields of a RON struct with the text of each value, so that one mistake costs one field and unknown ones are kept.

use crate::problem::Place;

use super::line::ron_text::{options, too_deep, words};

/// A field as it stands in the file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Field<'a> {
    /// Its name.
    pub name: &'a str,
    /// Where the name stands, bytes.
    pub name_at: usize,
    /// Its value's text.
    pub value: &'a str,
    /// Where the value stands, bytes.
    pub value_at: usize,
}

/// The place of byte `at` in `text`.
pub(crate) fn place(file: &str, text: &str, at: usize) -> Place {
    let before = text.get(..at).unwrap_or(text);
    let line = before.matches('\n').count() + 1;
    let start = before.rfind('\n').map_or(0, |end| end + 1);
    let column = before.get(start..).map_or(0, |part| part.chars().count()) + 1;
    Place::new(file, line, column)
}

/// The value of a field.
///
/// # Errors
/// Why it can't be read, in words.
pub(crate) fn value<T: serde::de::DeserializeOwned>(field: &Field<'_>) -> Result<T, String> {
    options()
        .from_str(field.value)
        .map_err(|error| words(&error.code))
}

/// The fields of the struct that `text` holds.
///
/// # Errors
/// The byte where something else stands, and what was expected.
pub(crate) fn split(text: &str) -> Result<Vec<Field<'_>>, (usize, String)> {
    if too_deep(text).is_some() {
        return Err((0, "brackets nest too deep".to_owned()));
    }
    let start = if text.starts_with('\u{feff}') {
        '\u{feff}'.len_utf8()
    } else {
        0
    };
    let mut scan = Scan { text, at: start };
    let mut fields = Vec::new();
    scan.expect('(')?;
    loop {
        scan.skip_space();
        if scan.next_is(')') {
            break;
        }
        let name_at = scan.at;
        let name = scan.word();
        if name.is_empty() {
            return Err((scan.at, "expected a field's name or `)`".to_owned()));
        }
        scan.expect(':')?;
        scan.skip_space();
        let value_at = scan.at;
        let value_end = scan.skip_value();
        let value = text.get(value_at..value_end).unwrap_or_default();
        fields.push(Field {
            name,
            name_at,
            value,
            value_at,
        });
        if !scan.next_is(',') {
            scan.expect(')')?;
            break;
        }
    }
    scan.skip_space();
    if scan.rest().is_empty() {
        Ok(fields)
    } else {
        Err((scan.at, "something stands after the last `)`".to_owned()))
    }
}

struct Scan<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Scan<'a> {
    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn next_is(&mut self, c: char) -> bool {
        let is = self.rest().starts_with(c);
        if is {
            self.at += c.len_utf8();
        }
        is
    }

    fn expect(&mut self, c: char) -> Result<(), (usize, String)> {
        self.skip_space();
        if self.next_is(c) {
            Ok(())
        } else {
            Err((self.at, format!("expected `{c}`")))
        }
    }

    fn word(&mut self) -> &'a str {
        let rest = self.rest();
        let end = rest
            .find(|c: char| !c.is_alphanumeric() && c != '_')
            .unwrap_or(rest.len());
        self.at += end;
        rest.get(..end).unwrap_or_default()
    }

    /// Skips white space and comments.
    fn skip_space(&mut self) {
        loop {
            let rest = self.rest();
            let text = rest.trim_start();
            self.at += rest.len() - text.len();
            if text.starts_with("//") {
                self.at += text.find('\n').unwrap_or(text.len());
            } else if text.starts_with("/*") {
                self.at += block_comment(text);
            } else {
                return;
            }
        }
    }

    /// Skips a value, up to the comma or bracket that ends it, and says where its last character ended.
    fn skip_value(&mut self) -> usize {
        let mut depth = 0usize;
        let mut end = self.at;
        loop {
            // Comments after a value belong to no field; those inside it stay.
            self.skip_space();
            let Some(c) = self.rest().chars().next() else {
                return end;
            };
            match c {
                ',' | ')' if depth == 0 => return end,
                '(' | '[' | '{' => depth += 1,
                ')' | ']' | '}' => depth = depth.saturating_sub(1),
                _ => {}
            }
            self.at += if c == '"' {
                string(self.rest())
            } else {
                c.len_utf8()
            };
            end = self.at;
        }
    }
}

/// The length of the string that `text` begins with, quotes included.
fn string(text: &str) -> usize {
    let mut is_escaped = false;
    for (at, byte) in text.bytes().enumerate().skip(1) {
        match byte {
            _ if is_escaped => is_escaped = false,
            b'\\' => is_escaped = true,
            b'"' => return at + 1,
            _ => {}
        }
    }
    text.len()
}

/// The length of the comment that `text` begins with; such comments nest.
fn block_comment(text: &str) -> usize {
    let mut depth = 0usize;
    let mut at = 0;
    while let Some(rest) = text.get(at..) {
        if rest.is_empty() {
            break;
        }
        let step = if rest.starts_with("/*") {
            depth += 1;
            2
        } else if rest.starts_with("*/") {
            depth = depth.saturating_sub(1);
            2
        } else {
            rest.chars().next().map_or(1, char::len_utf8)
        };
        at += step;
        if depth == 0 {
            break;
        }
    }
    at.min(text.len())
}
