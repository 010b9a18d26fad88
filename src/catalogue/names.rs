//! Names as people write them: case, spaces, hyphens and underscores make no difference.

use unicode_normalization::UnicodeNormalization;

/// A name without what makes no difference, for comparing: `Pull Up`, `pull_up` and `pull-up` are one.
pub fn fold(name: &str) -> String {
    name.nfc()
        .filter(|c| !c.is_whitespace() && !is_joint(*c))
        .flat_map(char::to_lowercase)
        .nfc()
        .collect()
}

/// Hyphen, underscore and the dashes that a word processor makes of a hyphen.
fn is_joint(c: char) -> bool {
    matches!(c, '-' | '_' | '\u{2010}'..='\u{2015}' | '\u{2212}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_the_same_in_every_hand() {
        for written in ["pull-up", "Pull Up", "PULL_UP", " pullup\u{a0}", "pull\u{2010}up"] {
            assert_eq!(fold(written), "pullup", "{written:?}");
        }
    }

    #[test]
    fn letters_beyond_ascii_fold_by_unicode() {
        // Unicode Standard, section 3.13 (lower case) and Annex 15 (composed form).
        assert_eq!(fold("KLIMMZU\u{308}GE"), fold("klimmz\u{fc}ge"));
        assert_eq!(fold("ПОДТЯГИВАНИЕ"), fold("подтягивание"));
    }
}
