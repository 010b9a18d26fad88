//! Names in scripts that Plex lacks: the faces that paper uses too, each loaded when a letter first needs it, so that they cost
//! nobody else a start.

use egui::epaint::text::{FallbackRequest, FontInsert, FontPriority, FontProvider, InsertFontFamily};
use egui::{FontData, FontFamily};

use crate::paper::face::Face as PaperFace;

/// A script that runs from the right to the left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FromRight {
    /// Arabic, with Persian and Urdu.
    Arabic,
    /// Hebrew.
    Hebrew,
}

impl FromRight {
    /// The script of `letter`, if it is one of these (blocks of the Unicode Standard).
    fn of(letter: char) -> Option<Self> {
        match letter {
            '\u{0590}'..='\u{05FF}' | '\u{FB1D}'..='\u{FB4F}' => Some(Self::Hebrew),
            '\u{0600}'..='\u{06FF}'
            | '\u{0750}'..='\u{077F}'
            | '\u{08A0}'..='\u{08FF}'
            | '\u{FB50}'..='\u{FDFF}'
            | '\u{FE70}'..='\u{FEFF}' => Some(Self::Arabic),
            _ => None,
        }
    }

    fn face(self) -> PaperFace {
        match self {
            Self::Arabic => PaperFace::Arabic,
            Self::Hebrew => PaperFace::Hebrew,
        }
    }

    /// The family in which a stretch of this script is set. Its spaces come from the same face, so that the stretch is shaped as
    /// one and its words stand in their order.
    pub fn family(self) -> FontFamily {
        FontFamily::Name(name(self.face()).into())
    }
}

/// `text` in stretches, each with the script from the right that it is written in, if any. Spaces between words of one such
/// script belong to it.
pub fn stretches(text: &str) -> Vec<(&str, Option<FromRight>)> {
    let mut found = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let script = FromRight::of(first);
        let of_it = |letter: &char| FromRight::of(*letter) == script;
        let end = match script {
            None => rest.find(|letter| FromRight::of(letter).is_some()),
            Some(_) => {
                let joined = rest
                    .char_indices()
                    .take_while(|(_, letter)| *letter == ' ' || of_it(letter));
                let last = joined.filter(|(_, letter)| of_it(letter)).last();
                last.map(|(at, letter)| at + letter.len_utf8())
            }
        };
        let (stretch, after) = rest.split_at(end.unwrap_or(rest.len()));
        found.push((stretch, script));
        rest = after;
    }
    found
}

/// Finds a face for letters that the families' own faces lack.
pub(super) struct Scripts;

impl FontProvider for Scripts {
    fn fonts_for_family(&self, family: &FontFamily) -> Vec<FontInsert> {
        let scripts = [FromRight::Arabic, FromRight::Hebrew];
        let asked = scripts.into_iter().find(|script| script.family() == *family);
        asked
            .into_iter()
            .map(|script| insert(script.face(), family))
            .collect()
    }

    fn font_for(&self, asked: &FallbackRequest<'_>) -> Option<FontInsert> {
        let letter = asked.cluster.chars().next()?;
        Some(insert(PaperFace::Text.drawing(letter)?, asked.family))
    }
}

fn insert(face: PaperFace, family: &FontFamily) -> FontInsert {
    let families = vec![InsertFontFamily {
        family: family.clone(),
        priority: FontPriority::Lowest,
    }];
    FontInsert::new(name(face), FontData::from_static(face.file()), families)
}

fn name(face: PaperFace) -> &'static str {
    match face {
        PaperFace::Han => "han",
        PaperFace::Hangul => "hangul",
        PaperFace::Arabic => "arabic",
        PaperFace::Hebrew => "hebrew",
        PaperFace::Devanagari => "devanagari",
        PaperFace::Thai => "thai",
        PaperFace::Text | PaperFace::Strong | PaperFace::Label | PaperFace::Number => "sans",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_from_the_right_stay_together_and_others_apart() {
        use FromRight::{Arabic, Hebrew};
        assert_eq!(stretches("Ana"), [("Ana", None)]);
        assert_eq!(stretches("ليلى حداد"), [("ليلى حداد", Some(Arabic))]);
        assert_eq!(
            stretches("נועה לוי, 3 of 12"),
            [("נועה לוי", Some(Hebrew)), (", 3 of 12", None)]
        );
        assert_eq!(
            stretches("Coach ليلى (נועה)"),
            [
                ("Coach ", None),
                ("ليلى", Some(Arabic)),
                (" (", None),
                ("נועה", Some(Hebrew)),
                (")", None)
            ]
        );
        assert_eq!(stretches(""), []);
    }
}
