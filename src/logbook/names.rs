//! Athletes' names, and the folders that they lead to: the same on every machine, valid on every system.

use unicode_general_category::{GeneralCategory, get_general_category};
use unicode_normalization::UnicodeNormalization;

use crate::problem::quoted;

use super::Written;
use super::record::{Fact, Id, Record};

/// Longest name, bytes in UTF-8 after normalisation.
const LONGEST: usize = 200;

/// Longest readable part of a folder that carries a hash too.
const LONGEST_SLUG: usize = 24;

/// An athlete's name: trimmed, in Unicode's composed form (NFC), 1 to 200 bytes of visible text.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Name(String);

/// Why a text is no name.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BadName {
    /// Nothing is left after trimming.
    #[error("a name needs at least one character")]
    Empty,
    /// Too long.
    #[error("{0} is longer than 200 bytes")]
    TooLong(String),
    /// A character that can't be seen, or has no agreed meaning.
    #[error("{0} has a character that cannot be shown (U+{1:04X}); leave it out")]
    Unshowable(String, u32),
}

impl Name {
    /// The name that `text` gives.
    ///
    /// # Errors
    /// When it is empty, too long, or has control, format, surrogate, private-use, unassigned or line-breaking characters.
    pub fn parse(text: &str) -> Result<Self, BadName> {
        let name: String = text.trim().nfc().collect();
        let name = name.trim();
        if name.is_empty() {
            return Err(BadName::Empty);
        }
        if name.len() > LONGEST {
            return Err(BadName::TooLong(quoted(name)));
        }
        match name.chars().find(|c| !is_showable(*c)) {
            Some(c) => Err(BadName::Unshowable(quoted(name), u32::from(c))),
            None => Ok(Self(name.to_owned())),
        }
    }

    /// The name as shown.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The folder that an athlete of this name gets, if it is free: the name itself where every system takes it as it is,
    /// else a readable part and eight letters of the name's hash.
    pub fn folder(&self) -> String {
        if is_plain_folder(&self.0) {
            return self.0.clone();
        }
        format!("{}-{}", slug(&self.0), self.hash_letters())
    }

    /// The folder for this name if another athlete has [`Name::folder`].
    pub fn other_folder(&self) -> String {
        format!("{}-{}", self.folder(), self.hash_letters())
    }

    fn hash_letters(&self) -> String {
        base32_letters(xxhash_rust::xxh3::xxh3_64(self.0.as_bytes()))
    }

    /// The record that gives an athlete only this name. It has the same bytes on every machine that writes it with the
    /// same device, and everywhere the same id: made from date and name.
    pub fn record(&self, at: &Written, nth: u32, device: &str) -> Record {
        let date = Written::day(at.date());
        let text = format!("name\n{date}\n{}", self.0);
        let hash = xxhash_rust::xxh3::xxh3_128(text.as_bytes());
        let midnight = at.date().and_time(chrono::NaiveTime::MIN).and_utc();
        let ms = u64::try_from(midnight.timestamp_millis()).unwrap_or(0);
        Record {
            id: Id::from_parts(ms, hash),
            rev: 0,
            dev: device.to_owned(),
            at: date,
            nth,
            what: Fact::Profile {
                name: Some(self.0.clone()),
                born: None,
                sex: None,
                height_cm: None,
            },
        }
    }
}

impl std::fmt::Display for Name {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

fn is_showable(c: char) -> bool {
    use GeneralCategory as G;
    !matches!(
        get_general_category(c),
        G::Control
            | G::Format
            | G::Surrogate
            | G::PrivateUse
            | G::Unassigned
            | G::LineSeparator
            | G::ParagraphSeparator
    )
}

/// Lower-case ASCII letters and digits; every other run is one `-`; edges trimmed.
fn slug(name: &str) -> String {
    let mut slug = String::new();
    for c in name.chars().flat_map(char::to_lowercase) {
        if c.is_ascii_lowercase() || c.is_ascii_digit() {
            slug.push(c);
        } else if !slug.ends_with('-') {
            slug.push('-');
        }
    }
    let slug: String = slug.trim_matches('-').chars().take(LONGEST_SLUG).collect();
    match slug.trim_end_matches('-') {
        "" => "athlete".to_owned(),
        slug => slug.to_owned(),
    }
}

/// `[a-z0-9-]{1,32}`, not edged by `-`, no device name of Windows (Microsoft, "Naming Files, Paths, and Namespaces").
pub(crate) fn is_plain_folder(name: &str) -> bool {
    let is_device = matches!(name, "con" | "prn" | "aux" | "nul")
        || ["com", "lpt"].iter().any(|port| {
            name.strip_prefix(port)
                .is_some_and(|rest| matches!(rest.as_bytes(), [b'0'..=b'9']))
        });
    (1..=32).contains(&name.len())
        && name
            .bytes()
            .all(|byte| matches!(byte, b'a'..=b'z' | b'0'..=b'9' | b'-'))
        && !name.starts_with('-')
        && !name.ends_with('-')
        && !is_device
}

/// Whether `folder` is one plain component that stays inside `athletes/`.
pub fn is_safe_folder(folder: &str) -> bool {
    !folder.is_empty()
        && folder.len() <= 255
        && !folder.starts_with(['.', '~'])
        && !folder.ends_with('~')
        && !folder
            .chars()
            .any(|c| matches!(c, '/' | '\\' | ':' | '"') || c.is_control())
}

/// Forty bits of a hash as eight letters of Crockford's base 32, in lower case.
pub(crate) fn base32_letters(hash: u64) -> String {
    const LETTERS: &[u8; 32] = b"0123456789abcdefghjkmnpqrstvwxyz";
    (0..8u32)
        .rev()
        .map(|place| {
            let five = usize::try_from((hash >> (24 + 5 * place)) & 31).unwrap_or(0);
            LETTERS.get(five).copied().map_or('0', char::from)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder(name: &str) -> String {
        Name::parse(name).unwrap().folder()
    }

    #[test]
    fn a_plain_name_is_its_own_folder() {
        assert_eq!(folder("ana"), "ana");
        assert_eq!(folder("team-2"), "team-2");
    }

    #[test]
    fn names_that_some_system_would_fold_or_refuse_carry_a_hash() {
        for (name, readable) in [
            ("Ana", "ana-"),
            ("con", "con-"),
            ("lpt9", "lpt9-"),
            ("Zoë Müller", "zo-m-ller-"),
            ("../../etc", "etc-"),
            ("安娜", "athlete-"),
            ("-edge-", "edge-"),
        ] {
            let folder = folder(name);
            assert!(folder.starts_with(readable), "{name}: {folder}");
            assert_eq!(folder.len(), readable.len() + 8, "{name}: {folder}");
            assert!(is_plain_folder(&folder), "{folder}");
        }
        assert_ne!(folder("Ana"), folder("ANA"));
    }

    #[test]
    fn composed_and_decomposed_letters_are_one_name() {
        // Unicode Standard Annex 15: U+00EB is e + U+0308 in NFC.
        assert_eq!(
            Name::parse("Zoe\u{308}").unwrap(),
            Name::parse(" Zo\u{eb} ").unwrap()
        );
    }

    #[test]
    fn characters_that_cannot_be_seen_make_no_name() {
        for text in [
            "",
            "  ",
            "a\u{202e}b",
            "a\u{0}b",
            "a\u{200d}b",
            "a\u{2028}b",
            "\u{e000}",
        ] {
            assert!(Name::parse(text).is_err(), "{text:?}");
        }
        assert!(Name::parse(&"é".repeat(101)).is_err());
        assert!(Name::parse(&"é".repeat(100)).is_ok());
    }

    #[test]
    fn no_folder_leads_out_of_the_logbook() {
        for folder in ["..", ".", "a/b", "a\\b", "c:", ".hidden", "~x", "x~", "", "a\nb"] {
            assert!(!is_safe_folder(folder), "{folder:?}");
        }
        assert!(is_safe_folder("ana-7k2m9x4q"));
    }
}
