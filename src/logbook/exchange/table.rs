//! RFC 4180 from bytes to rows of cells, each with its place in the file.
//!
//! Written here rather than taken from the `csv` crate, which reads leniently: a quote that RFC 4180 section 2 forbids would
//! silently change a value, and a row after a blank line would be reported on the wrong line. What goes beyond the RFC: a
//! byte-order mark, LF and CR as line ends, any UTF-8 text, and another delimiter when asked for.

use std::borrow::Cow;

use super::flaw::{Flaw, LONGEST_CELL, MOST_COLUMNS};

/// One cell: its text without quotes, and where it begins.
#[derive(Debug, Clone)]
pub(super) struct Cell<'a> {
    /// The text, quotes taken off.
    pub text: Cow<'a, str>,
    /// The place of its first byte.
    pub spot: Spot,
}

/// A byte of the table and the physical line that it lies on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Spot {
    /// Offset from the table's first byte.
    pub byte: usize,
    /// Line, from 1.
    pub line: usize,
}

/// The bytes of a file, read row by row.
pub(super) struct Table<'a> {
    bytes: &'a [u8],
    delimiter: u8,
    at: Spot,
}

impl<'a> Table<'a> {
    /// The rows in `bytes`, whose first line has the number `line`; a byte-order mark at the start of line 1 is no text.
    pub fn new(bytes: &'a [u8], delimiter: u8, line: usize) -> Self {
        let bytes = match bytes.strip_prefix(b"\xef\xbb\xbf") {
            Some(rest) if line == 1 => rest,
            _ => bytes,
        };
        Self {
            bytes,
            delimiter,
            at: Spot { byte: 0, line },
        }
    }

    /// Where the next row begins.
    pub fn spot(&self) -> Spot {
        self.at
    }

    /// The bytes of the row between two spots, without its line end.
    pub fn between(&self, start: Spot, end: Spot) -> &'a [u8] {
        let row = self.bytes.get(start.byte..end.byte).unwrap_or_default();
        let row = row.strip_suffix(b"\n").unwrap_or(row);
        row.strip_suffix(b"\r").unwrap_or(row)
    }

    /// The column of `spot` in characters, from 1.
    pub fn column(&self, spot: Spot) -> usize {
        let before = self.bytes.get(..spot.byte).unwrap_or(self.bytes);
        let in_line = before
            .iter()
            .rev()
            .take_while(|byte| !matches!(byte, b'\n' | b'\r'));
        // Bytes 0b10xxxxxx continue a character.
        1 + in_line.filter(|byte| **byte & 0xc0 != 0x80).count()
    }

    /// The next row into `cells`; none at the end. After a flaw the reading goes on at the next line.
    pub fn next(&mut self, cells: &mut Vec<Cell<'a>>) -> Option<Result<(), (Flaw, Spot)>> {
        cells.clear();
        self.byte()?;
        let mut flaw = None;
        loop {
            if cells.len() == MOST_COLUMNS {
                let spot = self.at;
                self.skip_line();
                return Some(Err((Flaw::ManyColumns, spot)));
            }
            match self.cell() {
                Ok(cell) => cells.push(cell),
                // The row's end is still found, so nothing after it is misread.
                Err(found @ (Flaw::Nul | Flaw::NotUtf8, _)) => {
                    flaw = flaw.or(Some(found));
                }
                Err(found) => {
                    self.skip_line();
                    return Some(Err(flaw.unwrap_or(found)));
                }
            }
            if self.byte() != Some(self.delimiter) {
                self.end_line();
                return Some(flaw.map_or(Ok(()), Err));
            }
            self.at.byte += 1;
        }
    }

    fn byte(&self) -> Option<u8> {
        self.bytes.get(self.at.byte).copied()
    }

    /// Steps over one line end: CRLF, LF or CR.
    fn end_line(&mut self) {
        match self.byte() {
            Some(b'\r') if self.bytes.get(self.at.byte + 1) == Some(&b'\n') => self.at.byte += 2,
            Some(b'\r' | b'\n') => self.at.byte += 1,
            _ => return,
        }
        self.at.line += 1;
    }

    fn skip_line(&mut self) {
        while !matches!(self.byte(), None | Some(b'\r' | b'\n')) {
            self.at.byte += 1;
        }
        self.end_line();
    }

    fn cell(&mut self) -> Result<Cell<'a>, (Flaw, Spot)> {
        let spot = self.at;
        let (raw, doubled) = if self.byte() == Some(b'"') {
            self.quoted()?
        } else {
            (self.plain()?, false)
        };
        if raw.len() > LONGEST_CELL {
            return Err((Flaw::LongCell, spot));
        }
        if raw.contains(&0) {
            return Err((Flaw::Nul, spot));
        }
        let text = std::str::from_utf8(raw).map_err(|_| (Flaw::NotUtf8, spot))?;
        let text = if doubled {
            Cow::Owned(text.replace("\"\"", "\""))
        } else {
            Cow::Borrowed(text)
        };
        Ok(Cell { text, spot })
    }

    fn plain(&mut self) -> Result<&'a [u8], (Flaw, Spot)> {
        let start = self.at;
        let rest = self.bytes.get(start.byte..).unwrap_or_default();
        let end = |byte: &u8| *byte == self.delimiter || matches!(byte, b'"' | b'\r' | b'\n');
        let length = rest.iter().position(end).unwrap_or(rest.len());
        if rest.get(length) == Some(&b'"') {
            let byte = start.byte + length;
            return Err((Flaw::StrayQuote, Spot { byte, ..start }));
        }
        self.at.byte += length;
        Ok(rest.get(..length).unwrap_or_default())
    }

    /// A cell between quotes, and whether it holds doubled ones (RFC 4180 section 2, rules 5 to 7).
    fn quoted(&mut self) -> Result<(&'a [u8], bool), (Flaw, Spot)> {
        let open = self.at;
        self.at.byte += 1;
        let mut doubled = false;
        loop {
            match self.byte() {
                None => return Err((Flaw::OpenQuote, open)),
                Some(b'"') if self.bytes.get(self.at.byte + 1) == Some(&b'"') => {
                    doubled = true;
                    self.at.byte += 2;
                }
                Some(b'"') => break,
                Some(b'\r' | b'\n') => self.end_line(),
                Some(_) => self.at.byte += 1,
            }
        }
        let raw = self.bytes.get(open.byte + 1..self.at.byte).unwrap_or_default();
        self.at.byte += 1;
        match self.byte() {
            None | Some(b'\r' | b'\n') => Ok((raw, doubled)),
            Some(byte) if byte == self.delimiter => Ok((raw, doubled)),
            Some(_) => Err((Flaw::AfterQuote, self.at)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rows(text: &[u8]) -> Vec<Result<Vec<String>, (Flaw, usize)>> {
        let mut table = Table::new(text, b',', 1);
        let mut cells = Vec::new();
        std::iter::from_fn(|| {
            let read = table.next(&mut cells)?;
            Some(match read {
                Ok(()) => Ok(cells.iter().map(|cell| cell.text.to_string()).collect()),
                Err((flaw, spot)) => Err((flaw, spot.line)),
            })
        })
        .collect()
    }

    fn good(text: &str) -> Vec<Vec<String>> {
        rows(text.as_bytes()).into_iter().map(Result::unwrap).collect()
    }

    // RFC 4180, section 2: the rules by number, with the RFC's own examples.

    #[test]
    fn rule_1_each_record_ends_at_a_line_break() {
        assert_eq!(
            good("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
            [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]
        );
    }

    #[test]
    fn rule_2_the_last_line_break_may_be_missing() {
        assert_eq!(good("aaa,bbb\r\nzzz,yyy"), [["aaa", "bbb"], ["zzz", "yyy"]]);
    }

    #[test]
    fn rule_4_spaces_belong_to_the_cell_and_a_last_comma_opens_an_empty_one() {
        assert_eq!(good(" aaa , bbb\r\n"), [[" aaa ", " bbb"]]);
        assert_eq!(good("aaa,\r\n"), [["aaa", ""]]);
    }

    #[test]
    fn rule_5_cells_may_be_quoted_and_unquoted_ones_hold_no_quote() {
        assert_eq!(good("\"aaa\",\"bbb\",ccc\r\n"), [["aaa", "bbb", "ccc"]]);
        assert_eq!(
            rows(b"a\"b,c\r\nd,e\r\n"),
            [Err((Flaw::StrayQuote, 1)), Ok(vec!["d".into(), "e".into()])]
        );
        assert_eq!(rows(b"\"a\"b,c"), [Err((Flaw::AfterQuote, 1))]);
        assert_eq!(
            rows(b"x\n\"a,\nb"),
            [Ok(vec!["x".into()]), Err((Flaw::OpenQuote, 2))]
        );
    }

    #[test]
    fn rule_6_line_breaks_quotes_and_commas_stand_within_quotes() {
        assert_eq!(
            good("\"aaa\",\"b \r\nbb\",\"c,cc\"\r\nzzz,yyy,xxx"),
            [["aaa", "b \r\nbb", "c,cc"], ["zzz", "yyy", "xxx"]]
        );
    }

    #[test]
    fn rule_7_a_quote_within_quotes_is_doubled() {
        assert_eq!(good("\"aaa\",\"b\"\"bb\",\"ccc\""), [["aaa", "b\"bb", "ccc"]]);
        assert_eq!(good("\"\"\"\",\"\""), [["\"", ""]]);
    }

    #[test]
    fn beyond_the_rfc_a_mark_lone_line_ends_and_bad_bytes_cost_their_own_row_only() {
        assert_eq!(
            good("\u{feff}a,b\nc,d\re,f"),
            [["a", "b"], ["c", "d"], ["e", "f"]]
        );
        assert_eq!(
            rows(b"a\xff,\"x\ny\"\nb,\0\nc,d"),
            [
                Err((Flaw::NotUtf8, 1)),
                Err((Flaw::Nul, 3)),
                Ok(vec!["c".into(), "d".into()])
            ]
        );
        let long = "x".repeat(LONGEST_CELL);
        assert_eq!(good(&long), [[long.clone()]]);
        assert_eq!(rows(format!("{long}x").as_bytes()), [Err((Flaw::LongCell, 1))]);
        assert!(rows(&b","[..].repeat(MOST_COLUMNS - 1)).iter().all(Result::is_ok));
        assert_eq!(
            rows(&b","[..].repeat(MOST_COLUMNS)),
            [Err((Flaw::ManyColumns, 1))]
        );
    }

    #[test]
    fn columns_are_counted_in_characters_from_the_line_that_a_cell_begins_on() {
        let text = "é,\"x\nyé\",z";
        let mut table = Table::new(text.as_bytes(), b',', 1);
        let mut cells = Vec::new();
        table.next(&mut cells).unwrap().unwrap();
        let places: Vec<_> = cells
            .iter()
            .map(|cell| (cell.spot.line, table.column(cell.spot)))
            .collect();
        assert_eq!(places, [(1, 1), (1, 3), (2, 5)]);
    }
}
