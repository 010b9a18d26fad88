//! Type for paper: IBM Plex as on screen, and five families for names in scripts that it lacks. All are embedded, so that a
//! page is the same on every machine.

use std::sync::OnceLock;

use ttf_parser::GlyphId;

/// A face of type.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Face {
    /// Sans, regular: sentences.
    Text,
    /// Sans, semi-bold: names and titles.
    Strong,
    /// Condensed, regular: labels and tables.
    Label,
    /// Condensed, bold: numbers that are read from afar.
    Number,
    /// Chinese and Japanese letters (Droid Sans Fallback).
    Han,
    /// Korean letters (NanumSquare).
    Hangul,
    /// Arabic letters (Noto Sans).
    Arabic,
    /// Hebrew letters (Noto Sans).
    Hebrew,
    /// Devanagari letters (Noto Sans).
    Devanagari,
    /// Thai letters (Noto Sans).
    Thai,
}

/// Faces that stand in for a letter that none of Plex has, in the order in which they are asked.
const STAND_INS: [Face; 7] = [
    Face::Text,
    Face::Arabic,
    Face::Hebrew,
    Face::Devanagari,
    Face::Thai,
    Face::Han,
    Face::Hangul,
];

const COUNT: usize = 10;

impl Face {
    /// The file, whole as its licence asks.
    pub fn file(self) -> &'static [u8] {
        match self {
            Face::Text => include_bytes!("../../assets/fonts/IBMPlexSans-Regular.ttf"),
            Face::Strong => include_bytes!("../../assets/fonts/IBMPlexSans-SemiBold.ttf"),
            Face::Label => include_bytes!("../../assets/fonts/IBMPlexSansCondensed-Regular.ttf"),
            Face::Number => include_bytes!("../../assets/fonts/IBMPlexSansCondensed-Bold.ttf"),
            Face::Han => include_bytes!("../../assets/fonts/fallback/DroidSansFallbackFull.ttf"),
            Face::Hangul => include_bytes!("../../assets/fonts/fallback/NanumSquareR.ttf"),
            Face::Arabic => include_bytes!("../../assets/fonts/fallback/NotoSansArabic-Regular.ttf"),
            Face::Hebrew => include_bytes!("../../assets/fonts/fallback/NotoSansHebrew-Regular.ttf"),
            Face::Devanagari => include_bytes!("../../assets/fonts/fallback/NotoSansDevanagari-Regular.ttf"),
            Face::Thai => include_bytes!("../../assets/fonts/fallback/NotoSansThai-Regular.ttf"),
        }
    }

    /// Its place in a table of faces.
    pub fn index(self) -> usize {
        self as usize
    }

    fn parsed(self) -> Option<&'static ttf_parser::Face<'static>> {
        static FACES: [OnceLock<Option<ttf_parser::Face<'static>>>; COUNT] =
            [const { OnceLock::new() }; COUNT];
        FACES
            .get(self.index())?
            .get_or_init(|| ttf_parser::Face::parse(self.file(), 0).ok())
            .as_ref()
    }

    fn glyph(self, letter: char) -> Option<GlyphId> {
        self.parsed()?.glyph_index(letter)
    }

    /// Whether it has a glyph for `letter`.
    pub fn has(self, letter: char) -> bool {
        self.glyph(letter).is_some()
    }

    /// The face that draws `letter` where this one is asked for; none where no embedded face has it.
    pub fn drawing(self, letter: char) -> Option<Face> {
        std::iter::once(self)
            .chain(STAND_INS)
            .find(|face| face.has(letter))
    }

    fn advance(self, letter: char, size: f32) -> f32 {
        let drawn = self.drawing(letter).unwrap_or(self);
        let face = drawn.parsed();
        let glyph = face
            .and_then(|face| face.glyph_index(letter))
            .unwrap_or(GlyphId(0));
        let (units, advance) = face.map_or((1000, 500), |face| {
            (face.units_per_em(), face.glyph_hor_advance(glyph).unwrap_or(500))
        });
        f32::from(advance) * size / f32::from(units.max(1))
    }
}

/// How wide `words` are at `size`. Kerning can make them a little narrower, never wider by more than a hair.
pub fn width(words: &str, face: Face, size: f32) -> f32 {
    words.chars().map(|letter| face.advance(letter, size)).sum()
}

/// A stretch of letters that one face draws.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// The face.
    pub face: Face,
    /// The letters.
    pub letters: String,
    /// Whether they are drawn as boxes, because no face has them.
    pub lacking: bool,
}

/// `words` in stretches, each drawn by one face. A mark that joins the letter before it (an accent, a joiner) stays with it.
pub fn runs(words: &str, face: Face) -> Vec<Run> {
    let mut runs: Vec<Run> = Vec::new();
    for letter in words.chars() {
        let drawing = face.drawing(letter);
        let (drawn_by, lacking) = (drawing.unwrap_or(face), drawing.is_none());
        match runs.last_mut() {
            Some(run) if run.face == drawn_by && run.lacking == lacking => run.letters.push(letter),
            // A space between two words of one script belongs to them.
            Some(run) if letter == ' ' && !run.lacking && run.face.has(' ') => run.letters.push(letter),
            _ => runs.push(Run {
                face: drawn_by,
                letters: letter.to_string(),
                lacking,
            }),
        }
    }
    runs
}

/// The letters of `words` that no embedded face has.
pub fn lacking(words: &str) -> Vec<char> {
    words
        .chars()
        .filter(|letter| Face::Text.drawing(*letter).is_none())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_of_many_scripts_find_a_face() {
        for name in [
            "Dvořák",
            "Bảo Trịnh",
            "Ольга",
            "Ελένη",
            "王佳慧",
            "田辺ゆうき",
            "김지우",
            "ليلى",
            "נועה",
            "अर्जुन",
            "สมชาย",
        ] {
            assert_eq!(lacking(name), Vec::<char>::new(), "{name}");
        }
        assert_eq!(lacking("Ana 𐌰"), vec!['𐌰'], "Gothic is in no face here");
    }

    #[test]
    fn digits_are_all_one_width() {
        // IBM Plex has tabular figures by default, so that columns of numbers stand in line.
        for face in [Face::Text, Face::Number] {
            let widths: Vec<f32> = ('0'..='9').map(|digit| face.advance(digit, 10.0)).collect();
            assert!(widths.windows(2).all(|pair| pair[0] == pair[1]), "{widths:?}");
        }
    }

    #[test]
    fn a_run_ends_where_the_face_ends() {
        let letters: Vec<String> = runs("Mei 王 (gym)", Face::Strong)
            .into_iter()
            .map(|run| run.letters)
            .collect();
        assert_eq!(letters.concat(), "Mei 王 (gym)");
        assert!(letters.contains(&"Mei ".to_owned()), "{letters:?}");
    }
}
