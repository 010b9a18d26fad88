//! RON as a row of tokens with their places: enough to know depth and outline, not enough to know meaning.
//!
//! Strings, raw strings, character literals and (nested) comments are seen as what they are, so a bracket in them counts for
//! nothing. Any bytes give tokens; nothing is an error here.

use std::ops::Range;

/// What a token is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// `(`, `[` or `{`.
    Open(u8),
    /// `)`, `]` or `}`.
    Close(u8),
    /// `,`
    Comma,
    /// `:`
    Colon,
    /// A name, a number, or anything else between the others.
    Word,
    /// A string or character literal, with its quotes.
    Text,
}

/// One token and its byte range.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Token {
    pub kind: Kind,
    pub span: Range<usize>,
}

/// The tokens of a text, comments and white space left out.
pub(super) struct Tokens<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl<'a> Tokens<'a> {
    pub fn of(text: &'a str) -> Self {
        Self {
            bytes: text.as_bytes(),
            at: 0,
        }
    }

    fn peek(&self, ahead: usize) -> Option<u8> {
        self.bytes.get(self.at + ahead).copied()
    }

    fn skip_blank(&mut self) {
        loop {
            match (self.peek(0), self.peek(1)) {
                (Some(byte), _) if byte.is_ascii_whitespace() => self.at += 1,
                (Some(b'/'), Some(b'/')) => self.at = self.next_of(b"\n", self.at),
                (Some(b'/'), Some(b'*')) => self.skip_block_comment(),
                _ => return,
            }
        }
    }

    fn skip_block_comment(&mut self) {
        let mut depth = 0usize;
        while self.at < self.bytes.len() {
            match (self.peek(0), self.peek(1)) {
                (Some(b'/'), Some(b'*')) => {
                    depth += 1;
                    self.at += 2;
                }
                (Some(b'*'), Some(b'/')) => {
                    depth -= 1;
                    self.at += 2;
                    if depth == 0 {
                        return;
                    }
                }
                _ => self.at += 1,
            }
        }
    }

    /// Where `what` next begins at or after `from`; the end of the text where it does not.
    fn next_of(&self, what: &[u8], from: usize) -> usize {
        self.bytes
            .get(from..)
            .and_then(|rest| rest.windows(what.len()).position(|window| window == what))
            .map_or(self.bytes.len(), |found| from + found)
    }

    /// One past the end of a string whose opening quote is at `quote`.
    fn string_end(&self, quote: usize) -> usize {
        let mut at = quote + 1;
        while let Some(byte) = self.bytes.get(at) {
            match byte {
                b'\\' => at += 2,
                b'"' => return at + 1,
                _ => at += 1,
            }
        }
        self.bytes.len()
    }

    /// One past the end of a raw string that begins at the current place, if one does: `r"…"`, `r#"…"#`, `br"…"`.
    fn raw_string_end(&self) -> Option<usize> {
        let prefix = match (self.peek(0), self.peek(1)) {
            (Some(b'r'), _) => 1,
            (Some(b'b'), Some(b'r')) => 2,
            _ => return None,
        };
        let hashes = (prefix..)
            .take_while(|ahead| self.peek(*ahead) == Some(b'#'))
            .count();
        if self.peek(prefix + hashes) != Some(b'"') {
            return None;
        }
        let close: Vec<u8> = std::iter::once(b'"')
            .chain(std::iter::repeat_n(b'#', hashes))
            .collect();
        let found = self.next_of(&close, self.at + prefix + hashes + 1);
        Some((found + close.len()).min(self.bytes.len()))
    }

    /// One past the end of a character literal at the current place; a lone quote is a token of its own.
    fn character_end(&self) -> usize {
        // The longest escape is '\u{10ffff}'; a plain character takes one to four bytes.
        let closes = match self.peek(1) {
            Some(b'\\') => 3..=11,
            Some(0xf0..) => 5..=5,
            Some(0xe0..) => 4..=4,
            Some(0xc0..) => 3..=3,
            _ => 2..=2,
        };
        closes
            .into_iter()
            .find(|ahead| self.peek(*ahead) == Some(b'\''))
            .map_or(self.at + 1, |ahead| self.at + ahead + 1)
    }

    fn word_end(&self) -> usize {
        let is_word = |byte: &u8| !byte.is_ascii_whitespace() && !b"()[]{},:\"'/".contains(byte);
        let length = self
            .bytes
            .get(self.at..)
            .map_or(0, |rest| rest.iter().take_while(|byte| is_word(byte)).count());
        self.at + length.max(1)
    }
}

impl Iterator for Tokens<'_> {
    type Item = Token;

    fn next(&mut self) -> Option<Token> {
        self.skip_blank();
        let first = self.peek(0)?;
        let start = self.at;
        let (kind, end) = match first {
            b'(' | b'[' | b'{' => (Kind::Open(first), start + 1),
            b')' | b']' | b'}' => (Kind::Close(first), start + 1),
            b',' => (Kind::Comma, start + 1),
            b':' => (Kind::Colon, start + 1),
            b'"' => (Kind::Text, self.string_end(start)),
            b'b' if self.peek(1) == Some(b'"') => (Kind::Text, self.string_end(start + 1)),
            b'\'' => (Kind::Text, self.character_end()),
            _ => match self.raw_string_end() {
                Some(end) => (Kind::Text, end),
                None => (Kind::Word, self.word_end()),
            },
        };
        self.at = end.min(self.bytes.len());
        Some(Token {
            kind,
            span: start..self.at,
        })
    }
}

/// Where brackets nest deeper than `limit`: the byte of the first bracket too many.
pub(super) fn too_deep(text: &str, limit: usize) -> Option<usize> {
    let mut depth = 0usize;
    for token in Tokens::of(text) {
        match token.kind {
            Kind::Open(_) => depth += 1,
            Kind::Close(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
        if depth > limit {
            return Some(token.span.start);
        }
    }
    None
}

/// The first extension of RON that the text asks for at its start, `#![enable(…)]`, other than `allowed`. Items are read one by
/// one, where such a line would not hold.
pub(super) fn extension(text: &str, allowed: &str) -> Option<Range<usize>> {
    let word = |token: &Token| text.get(token.span.clone()).unwrap_or_default();
    let mut tokens = Tokens::of(text);
    tokens.next().filter(|first| word(first).starts_with('#'))?;
    tokens
        .take_while(|token| token.kind != Kind::Close(b']'))
        .find(|token| token.kind == Kind::Word && !["enable", allowed].contains(&word(token)))
        .map(|token| token.span)
}

/// A bracket without its partner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unbalanced {
    /// Opened here and never closed.
    Open(usize),
    /// Closed here, though another kind, opened there, is still open.
    Crossed { close: usize, open: usize },
}

/// The first bracket without its partner. A closing one too many is left to the reader, which says it better.
pub(super) fn unbalanced(text: &str) -> Option<Unbalanced> {
    let mut open: Vec<(u8, usize)> = Vec::new();
    for token in Tokens::of(text) {
        match token.kind {
            Kind::Open(bracket) => open.push((bracket, token.span.start)),
            Kind::Close(bracket) => {
                let (opened, at) = open.pop()?;
                if (opened, bracket) != (b'(', b')') && opened.checked_add(2) != Some(bracket) {
                    return Some(Unbalanced::Crossed {
                        close: token.span.start,
                        open: at,
                    });
                }
            }
            _ => {}
        }
    }
    open.first().map(|(_, at)| Unbalanced::Open(*at))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> Vec<&str> {
        Tokens::of(text).map(|token| &text[token.span]).collect()
    }

    #[test]
    fn brackets_in_strings_characters_and_comments_are_no_brackets() {
        assert_eq!(
            words(r##"( a: "(\"(", b: r#"(")"#, /* ( /* ( */ */ c: '(', d: '\'', // ("##),
            [
                "(",
                "a",
                ":",
                "\"(\\\"(\"",
                ",",
                "b",
                ":",
                "r#\"(\")\"#",
                ",",
                "c",
                ":",
                "'('",
                ",",
                "d",
                ":",
                "'\\''",
                ","
            ]
        );
    }

    #[test]
    fn depth_is_counted_only_where_brackets_are_open() {
        assert_eq!(too_deep("[[]][[]]", 2), None);
        assert_eq!(too_deep("[[[]]]", 2), Some(2));
    }

    #[test]
    fn a_bracket_without_partner_is_found_where_it_stands() {
        assert_eq!(unbalanced("([)"), Some(Unbalanced::Crossed { close: 2, open: 1 }));
        assert_eq!(unbalanced("([{}]"), Some(Unbalanced::Open(0)));
        assert_eq!(unbalanced("([{}])"), None);
    }
}
