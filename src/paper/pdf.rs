//! Marks to bytes. Nothing but the marks goes in: no time, no chance, no name of the machine.

use krilla::Document as Krilla;
use krilla::color::luma;
use krilla::geom::{Path, PathBuilder, Point, Rect};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, TextDirection};

use super::face::{Face, runs, width};
use super::page::{Area, Document, HEIGHT, Ink, Mark, WIDTH};

/// Why no PDF could be made. None is the fault of what was to be printed.
#[derive(Debug, thiserror::Error)]
pub enum PaperError {
    /// An embedded face can't be read.
    #[error("the built-in type can't be read; the program is damaged, install it again")]
    Face,
    /// The page could not be made.
    #[error("the PDF could not be made: {0}")]
    Pdf(String),
}

/// The document as a PDF file.
///
/// # Errors
/// When the built-in type is damaged, or the PDF library refuses a mark.
pub fn pdf(document: &Document) -> Result<Vec<u8>, PaperError> {
    let mut fonts = Fonts::default();
    let mut file = Krilla::new();
    file.set_metadata(
        Metadata::new()
            .title(document.title.clone())
            .language("en".to_owned()),
    );
    for page in &document.pages {
        let size = PageSettings::from_wh(WIDTH, HEIGHT).ok_or(PaperError::Face)?;
        let mut sheet = file.start_page_with(size);
        let mut surface = sheet.surface();
        for mark in &page.marks {
            draw(&mut surface, mark, &mut fonts)?;
        }
        surface.finish();
        sheet.finish();
    }
    file.finish()
        .map_err(|error| PaperError::Pdf(format!("{error:?}")))
}

/// Faces as the PDF library wants them, each read once.
#[derive(Default)]
struct Fonts {
    known: Vec<(Face, Font)>,
}

impl Fonts {
    fn of(&mut self, face: Face) -> Result<Font, PaperError> {
        if let Some((_, font)) = self.known.iter().find(|(known, _)| *known == face) {
            return Ok(font.clone());
        }
        let font = Font::new(face.file().into(), 0).ok_or(PaperError::Face)?;
        self.known.push((face, font.clone()));
        Ok(font)
    }
}

fn draw(surface: &mut Surface<'_>, mark: &Mark, fonts: &mut Fonts) -> Result<(), PaperError> {
    match mark {
        Mark::Words {
            x,
            y,
            face,
            size,
            ink,
            words,
        } => {
            surface.set_fill(Some(fill(*ink)));
            surface.set_stroke(None);
            let mut x = *x;
            for run in runs(words, *face) {
                let start = Point::from_xy(x, *y);
                let font = fonts.of(run.face)?;
                surface.draw_text(start, font, *size, &run.letters, false, TextDirection::Auto);
                x += width(&run.letters, run.face, *size);
            }
        }
        Mark::Line {
            points,
            width,
            ink,
            dashed,
        } => {
            let dash = dashed.then(|| StrokeDash {
                array: vec![3.0, 2.5],
                offset: 0.0,
            });
            outline(surface, path(points, false), *width, *ink, dash);
        }
        Mark::Box {
            area,
            fill: inner,
            outline: edge,
        } => {
            if let Some(ink) = inner {
                fill_path(surface, rect(*area), *ink);
            }
            if let Some((width, ink)) = edge {
                outline(surface, rect(*area), *width, *ink, None);
            }
        }
        Mark::Disc { x, y, r, fill: inner } => match inner {
            Some(ink) => fill_path(surface, disc(*x, *y, *r), *ink),
            None => outline(surface, disc(*x, *y, *r), 1.0, Ink::BLACK, None),
        },
        Mark::Shape { points, ink } => fill_path(surface, path(points, true), *ink),
    }
    Ok(())
}

fn fill(ink: Ink) -> Fill {
    Fill {
        paint: luma::Color::new(ink.0).into(),
        opacity: NormalizedF32::ONE,
        rule: FillRule::NonZero,
    }
}

fn fill_path(surface: &mut Surface<'_>, path: Option<Path>, ink: Ink) {
    let Some(path) = path else { return };
    surface.set_stroke(None);
    surface.set_fill(Some(fill(ink)));
    surface.draw_path(&path);
}

fn outline(surface: &mut Surface<'_>, path: Option<Path>, width: f32, ink: Ink, dash: Option<StrokeDash>) {
    let Some(path) = path else { return };
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke {
        paint: luma::Color::new(ink.0).into(),
        width,
        dash,
        ..Stroke::default()
    }));
    surface.draw_path(&path);
}

fn path(points: &[(f32, f32)], closed: bool) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for (nth, (x, y)) in points.iter().enumerate() {
        if nth == 0 {
            builder.move_to(*x, *y);
        } else {
            builder.line_to(*x, *y);
        }
    }
    if closed {
        builder.close();
    }
    builder.finish()
}

fn rect(area: Area) -> Option<Path> {
    let mut builder = PathBuilder::new();
    builder.push_rect(Rect::from_xywh(area.x, area.y, area.w, area.h)?);
    builder.finish()
}

/// A circle of four arcs; 0.5523 of the radius is where a cubic's handles stand for the least error.
fn disc(x: f32, y: f32, r: f32) -> Option<Path> {
    let k = r * 0.5523;
    let mut builder = PathBuilder::new();
    builder.move_to(x + r, y);
    builder.cubic_to(x + r, y + k, x + k, y + r, x, y + r);
    builder.cubic_to(x - k, y + r, x - r, y + k, x - r, y);
    builder.cubic_to(x - r, y - k, x - k, y - r, x, y - r);
    builder.cubic_to(x + k, y - r, x + r, y - k, x + r, y);
    builder.close();
    builder.finish()
}
