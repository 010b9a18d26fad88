//! A page as plain data: marks at places. Layouts push marks, the PDF draws them, tests read them.

use super::face::{Face, width};

/// A4 (ISO 216: 210 × 297 mm), points.
pub const WIDTH: f32 = 595.276;
/// A4, points.
pub const HEIGHT: f32 = 841.89;
/// Kept free at each edge, so that a clipboard's clip and a printer's own margin hide nothing.
pub const MARGIN: f32 = 36.0;

/// Grey from 0 (black) to 255 (white): a gym's printer knows no more, and nothing is said by colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Ink(pub u8);

impl Ink {
    /// Text and boxes.
    pub const BLACK: Ink = Ink(0x14);
    /// Second text.
    pub const QUIET: Ink = Ink(0x4a);
    /// Lines to write on, borders.
    pub const LINE: Ink = Ink(0x8c);
    /// Fill behind a head.
    pub const SHADE: Ink = Ink(0xec);
    /// Paper.
    pub const WHITE: Ink = Ink(0xff);
}

/// A rectangle: left, top, width, height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    /// Left edge.
    pub x: f32,
    /// Upper edge.
    pub y: f32,
    /// Width.
    pub w: f32,
    /// Height.
    pub h: f32,
}

impl Area {
    /// A rectangle.
    pub const fn new(x: f32, y: f32, w: f32, h: f32) -> Self {
        Self { x, y, w, h }
    }

    /// Right edge.
    pub fn right(self) -> f32 {
        self.x + self.w
    }

    /// Lower edge.
    pub fn bottom(self) -> f32 {
        self.y + self.h
    }
}

/// Something on a page.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    /// Words on one line; `x` and `y` are the left end of its baseline.
    Words {
        /// Left end.
        x: f32,
        /// Baseline.
        y: f32,
        /// Face.
        face: Face,
        /// Size.
        size: f32,
        /// Ink.
        ink: Ink,
        /// What.
        words: String,
    },
    /// A line through points.
    Line {
        /// Its points.
        points: Vec<(f32, f32)>,
        /// How thick.
        width: f32,
        /// Ink.
        ink: Ink,
        /// Dashed: not yet, or only believed.
        dashed: bool,
    },
    /// A rectangle, filled, outlined or both.
    Box {
        /// Where.
        area: Area,
        /// Filled with.
        fill: Option<Ink>,
        /// Outlined with.
        outline: Option<(f32, Ink)>,
    },
    /// A disc or ring.
    Disc {
        /// Middle.
        x: f32,
        /// Middle.
        y: f32,
        /// Radius.
        r: f32,
        /// Filled with; a ring otherwise.
        fill: Option<Ink>,
    },
    /// A filled shape.
    Shape {
        /// Its corners.
        points: Vec<(f32, f32)>,
        /// Ink.
        ink: Ink,
    },
}

/// One page.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Page {
    /// What is on it, from the ground up.
    pub marks: Vec<Mark>,
}

/// A document: its title and pages.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Document {
    /// The title that a viewer shows.
    pub title: String,
    /// The pages.
    pub pages: Vec<Page>,
}

impl Page {
    /// Words with their left end at `x`. Returns where they end.
    pub fn words(&mut self, x: f32, y: f32, style: (Face, f32, Ink), words: &str) -> f32 {
        let (face, size, ink) = style;
        if !words.is_empty() {
            self.marks.push(Mark::Words {
                x,
                y,
                face,
                size,
                ink,
                words: words.to_owned(),
            });
        }
        x + width(words, face, size)
    }

    /// Words with their right end at `x`. Returns where they begin.
    pub fn words_to(&mut self, x: f32, y: f32, style: (Face, f32, Ink), words: &str) -> f32 {
        let left = x - width(words, style.0, style.1);
        self.words(left, y, style, words);
        left
    }

    /// Words around `x`.
    pub fn words_around(&mut self, x: f32, y: f32, style: (Face, f32, Ink), words: &str) {
        self.words(x - width(words, style.0, style.1) / 2.0, y, style, words);
    }

    /// A level line.
    pub fn rule(&mut self, x: (f32, f32), y: f32, width: f32, ink: Ink) {
        self.line(vec![(x.0, y), (x.1, y)], width, ink, false);
    }

    /// A line through points.
    pub fn line(&mut self, points: Vec<(f32, f32)>, width: f32, ink: Ink, dashed: bool) {
        self.marks.push(Mark::Line {
            points,
            width,
            ink,
            dashed,
        });
    }

    /// A box.
    pub fn boxed(&mut self, area: Area, fill: Option<Ink>, outline: Option<(f32, Ink)>) {
        self.marks.push(Mark::Box { area, fill, outline });
    }

    /// A hand's letter: square for the left, round for the right, so that no colour is needed.
    pub fn hand(&mut self, x: f32, y: f32, r: f32, rail: crate::units::Rail) {
        use crate::units::Rail;
        match rail {
            Rail::Both => return,
            Rail::Left => self.boxed(Area::new(x - r, y - r, 2.0 * r, 2.0 * r), Some(Ink::BLACK), None),
            Rail::Right => self.marks.push(Mark::Disc {
                x,
                y,
                r,
                fill: Some(Ink::BLACK),
            }),
        }
        let style = (Face::Number, r * 1.5, Ink::WHITE);
        self.words_around(x, y + r * 0.52, style, rail.letter());
    }

    /// All words on the page, in the order they were set.
    pub fn text(&self) -> impl Iterator<Item = &str> {
        self.marks.iter().filter_map(|mark| match mark {
            Mark::Words { words, .. } => Some(words.as_str()),
            _ => None,
        })
    }
}

impl Document {
    /// Puts "1 of 3" and a line at the foot of every page.
    pub fn number(&mut self, line: &str) {
        let count = self.pages.len();
        for (nth, page) in self.pages.iter_mut().enumerate() {
            let style = (Face::Label, 9.0, Ink::QUIET);
            let y = HEIGHT - MARGIN + 12.0;
            page.words_to(WIDTH - MARGIN, y, style, &format!("page {} of {count}", nth + 1));
            page.words(MARGIN, y, style, line);
        }
    }

    /// Says at the foot of a page when letters on it are drawn as boxes.
    pub fn own_up(&mut self) {
        for page in &mut self.pages {
            let lacking: Vec<char> = page.text().flat_map(super::face::lacking).collect();
            let Some(first) = lacking.first() else { continue };
            let words = format!(
                "A box stands for a letter that this print has no shape for (such as U+{:04X}); searching and copying the page give it.",
                u32::from(*first)
            );
            let y = HEIGHT - MARGIN - 2.0;
            page.words(MARGIN, y, (Face::Label, 8.0, Ink::QUIET), &words);
        }
    }
}
