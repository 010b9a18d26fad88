//! IBM Plex, embedded whole (OFL 1.1, licence beside the files). Each face is an egui family of its own, because egui sets
//! no OpenType features and no weights. The condensed faces lack Greek and Cyrillic; the upright ones stand in there.

use std::sync::Arc;

use egui::{Context, FontData, FontDefinitions, FontFamily, FontId};

use super::scripts::Scripts;

/// A face of type.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Face {
    /// Sans, regular: notes.
    Text,
    /// Sans, semi-bold.
    TextStrong,
    /// Condensed, regular: labels and tables.
    Label,
    /// Condensed, semi-bold.
    LabelStrong,
    /// Condensed, bold: numbers that are read from afar.
    Number,
    /// Mono: files.
    Code,
}

impl Face {
    /// Every face.
    pub const ALL: [Face; 6] = [
        Face::Text,
        Face::TextStrong,
        Face::Label,
        Face::LabelStrong,
        Face::Number,
        Face::Code,
    ];

    const fn name(self) -> &'static str {
        match self {
            Face::Text => "sans-400",
            Face::TextStrong => "sans-600",
            Face::Label => "condensed-400",
            Face::LabelStrong => "condensed-600",
            Face::Number => "condensed-700",
            Face::Code => "mono-400",
        }
    }

    const fn file(self) -> &'static [u8] {
        match self {
            Face::Text => include_bytes!("../../../assets/fonts/IBMPlexSans-Regular.ttf"),
            Face::TextStrong => include_bytes!("../../../assets/fonts/IBMPlexSans-SemiBold.ttf"),
            Face::Label => include_bytes!("../../../assets/fonts/IBMPlexSansCondensed-Regular.ttf"),
            Face::LabelStrong => include_bytes!("../../../assets/fonts/IBMPlexSansCondensed-SemiBold.ttf"),
            Face::Number => include_bytes!("../../../assets/fonts/IBMPlexSansCondensed-Bold.ttf"),
            Face::Code => include_bytes!("../../../assets/fonts/IBMPlexMono-Regular.ttf"),
        }
    }

    /// The face that draws what this one has no glyph for.
    const fn stand_in(self) -> Face {
        match self {
            Face::LabelStrong | Face::Number | Face::TextStrong => Face::TextStrong,
            Face::Text | Face::Label | Face::Code => Face::Text,
        }
    }

    /// The family name that egui knows it by.
    pub fn family(self) -> FontFamily {
        FontFamily::Name(self.name().into())
    }

    /// This face at `size` points.
    pub fn at(self, size: f32) -> FontId {
        FontId::new(size, self.family())
    }
}

/// Gives `ctx` every face; those of other scripts come when a letter needs them.
pub fn set_type(ctx: &Context) {
    ctx.set_fonts(fonts());
    ctx.set_font_providers(vec![Arc::new(Scripts)]);
}

/// All faces as egui wants them; its own two families show the same type.
fn fonts() -> FontDefinitions {
    let mut fonts = FontDefinitions::empty();
    for face in Face::ALL {
        fonts.font_data.insert(
            face.name().to_owned(),
            Arc::new(FontData::from_static(face.file())),
        );
        let chain = [face, face.stand_in(), Face::Text].map(|face| face.name().to_owned());
        fonts.families.insert(face.family(), chain.to_vec());
    }
    let chain = |face: Face| vec![face.name().to_owned(), Face::Text.name().to_owned()];
    fonts
        .families
        .insert(FontFamily::Proportional, chain(Face::Label));
    fonts.families.insert(FontFamily::Monospace, chain(Face::Code));
    fonts
}

/// Height of a line of type of `size` points: 12/16 13/18 14/20 16/22 24/28 46/50 54/56, in between by a share.
pub fn line_height(size: f32) -> f32 {
    const STEPS: [(f32, f32); 7] = [
        (12.0, 16.0),
        (13.0, 18.0),
        (14.0, 20.0),
        (16.0, 22.0),
        (24.0, 28.0),
        (46.0, 50.0),
        (54.0, 56.0),
    ];
    let ratio = STEPS
        .iter()
        .find(|(at, _)| size <= *at)
        .map_or(1.04, |(at, line)| line / at);
    (size * ratio).round()
}
