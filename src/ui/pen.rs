//! Sets type: runs of a face, a size and a colour, broken into lines, painted where they belong and named for a screen reader.
//!
//! A [`Pen`] writes a column from the top down. The same strokes can first be measured ([`Pen::measure`]), so that a card is as
//! high as its words, in the same frame.

use std::borrow::Cow;
use std::sync::Arc;

use egui::text::{LayoutJob, TextFormat, TextWrapping};
use egui::{
    Align, Align2, Color32, FontId, Galley, Painter, Pos2, Rect, Sense, Ui, Vec2, WidgetInfo, pos2, vec2,
};

use super::theme::{Face, FromRight, line_height, stretches};
use super::views::Phrase;

/// A face at a size in a colour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ink {
    /// The face.
    pub face: Face,
    /// Points.
    pub size: f32,
    /// The colour.
    pub colour: Color32,
}

impl Ink {
    /// `face` at `size` in `colour`.
    pub fn new(face: Face, size: f32, colour: impl Into<Color32>) -> Self {
        Self {
            face,
            size,
            colour: colour.into(),
        }
    }

    fn format(self, script: Option<FromRight>) -> TextFormat {
        let font = match script {
            None => self.face.at(self.size),
            Some(script) => FontId::new(self.size, script.family()),
        };
        TextFormat {
            line_height: Some(line_height(self.size)),
            valign: Align::BOTTOM,
            ..TextFormat::simple(font, self.colour)
        }
    }
}

/// The smallest type, points.
const LEAST: f32 = 12.0;

/// Text ready to be laid out.
#[derive(Debug, Clone, Default)]
pub struct Line {
    job: LayoutJob,
}

impl Line {
    /// `text` in `ink`.
    pub fn new(text: &str, ink: Ink) -> Self {
        Self::default().and(text, ink)
    }

    /// This, then `text` in `ink`.
    pub fn and(self, text: &str, ink: Ink) -> Self {
        self.gap(0.0, text, ink)
    }

    /// This, then a gap of `space` points, then `text` in `ink`.
    pub fn gap(mut self, space: f32, text: &str, ink: Ink) -> Self {
        let text = &*with_its_unit(text);
        if text.is_ascii() {
            self.job.append(text, space, ink.format(None));
            return self;
        }
        for (nth, (stretch, script)) in stretches(text).into_iter().enumerate() {
            let space = if nth == 0 { space } else { 0.0 };
            self.job.append(stretch, space, ink.format(script));
        }
        self
    }

    /// A phrase: plain words in `plain`, strong ones in `strong`.
    pub fn phrase(phrase: &Phrase, plain: Ink, strong: Ink) -> Self {
        phrase.runs().fold(Self::default(), |line, (is_strong, text)| {
            line.and(text, if is_strong { strong } else { plain })
        })
    }

    /// Types of different sizes stand on one base line; else the bottoms of their lines would meet. Plex reaches 1.025 of its
    /// size above the base line and 0.275 below it (its files' own tables), and a line's height leaves as much over as under.
    pub fn on_base(mut self) -> Self {
        let sizes = self
            .job
            .sections
            .iter()
            .map(|section| section.format.font_id.size);
        let biggest = sizes.fold(0.0, f32::max);
        for section in &mut self.job.sections {
            let smaller = biggest - section.format.font_id.size;
            section.format.line_height = Some(line_height(biggest) - (1.025 - 0.275) * smaller);
        }
        self
    }

    /// Laid out on one line; cut with an ellipsis where it is wider than `width`.
    pub fn on_one_line(mut self, painter: &Painter, width: f32) -> Arc<Galley> {
        self.job.wrap = TextWrapping {
            max_width: width.max(1.0),
            max_rows: 1,
            break_anywhere: true,
            ..TextWrapping::default()
        };
        painter.layout_job(self.job)
    }

    /// Laid out on one line, its type drawn smaller, down to [`LEAST`], before anything is cut.
    pub fn squeezed(self, painter: &Painter, width: f32) -> Arc<Galley> {
        let mut smaller = self;
        loop {
            let galley = smaller.clone().on_one_line(painter, width);
            let sections = &mut smaller.job.sections;
            if !galley.elided
                || sections
                    .iter()
                    .all(|section| section.format.font_id.size <= LEAST)
            {
                return galley;
            }
            for section in sections {
                let size = (section.format.font_id.size - 1.0).max(LEAST);
                section.format.font_id.size = size;
                section.format.line_height = Some(line_height(size));
            }
        }
    }

    /// Laid out whole where it can be: on one line, drawn smaller where that is enough, else on two, else on three of the
    /// smallest type. With `at` right or centre the galley's origin is at its right or in its middle.
    pub fn fitted(mut self, painter: &Painter, width: f32, at: Align) -> Arc<Galley> {
        self.job.halign = at;
        let one = self.clone().squeezed(painter, width);
        if !one.elided {
            return one;
        }
        let rows = |mut line: Self, rows: usize| {
            line.job.wrap = TextWrapping {
                max_width: width.max(1.0),
                max_rows: rows,
                ..TextWrapping::default()
            };
            painter.layout_job(line.job)
        };
        let two = rows(self.clone(), 2);
        if !two.elided {
            return two;
        }
        for section in &mut self.job.sections {
            section.format.font_id.size = LEAST;
            section.format.line_height = Some(line_height(LEAST));
        }
        rows(self, 3)
    }

    /// Laid out in as many lines of `width` as it needs.
    pub fn wrapped(mut self, painter: &Painter, width: f32) -> Arc<Galley> {
        self.job.wrap = TextWrapping::wrap_at_width(width.max(1.0));
        painter.layout_job(self.job)
    }
}

/// How wide `text` is on one line.
pub fn width_of(painter: &Painter, text: &str, ink: Ink) -> f32 {
    Line::new(text, ink).on_one_line(painter, f32::INFINITY).size().x
}

/// A space that no line is broken at.
const NO_BREAK: char = '\u{a0}';

/// A number and its unit stay on one line.
fn with_its_unit(text: &str) -> Cow<'_, str> {
    const UNITS: [&str; 3] = ["%", "kg", "lb"];
    let mut words = Cow::Borrowed(text);
    for (at, _) in text.match_indices(' ') {
        let (before, after) = (&text[..at], &text[at + 1..]);
        let is_number = before.ends_with(|last: char| last.is_ascii_digit());
        let is_unit = UNITS.iter().any(|unit| {
            let rest = after.strip_prefix(unit);
            rest.is_some_and(|rest| !rest.starts_with(char::is_alphabetic))
        });
        if is_number && is_unit {
            // A no-break space is a byte longer, so places are counted from the end.
            let whole = words.to_mut();
            let at = whole.len() - (text.len() - at);
            whole.replace_range(at..=at, NO_BREAK.encode_utf8(&mut [0; 2]));
        }
    }
    words
}

/// Paints `text` so that the point `anchor` of its box lies at `at`, on one line. For letters within a picture: the picture is
/// named as a whole, so this registers nothing.
pub fn letters(painter: &Painter, at: Pos2, anchor: Align2, text: &str, ink: Ink) -> Rect {
    let galley = Line::new(text, ink).on_one_line(painter, f32::INFINITY);
    let rect = anchor.anchor_size(at, galley.size());
    painter.galley(rect.min, galley, ink.colour);
    rect
}

/// Paints a galley at `at` and names it for screen readers.
pub fn named_galley(ui: &mut Ui, at: Pos2, galley: Arc<Galley>) -> Rect {
    let rect = Rect::from_min_size(at, galley.size());
    let id = ui.next_auto_id();
    ui.skip_ahead_auto_ids(1);
    let text = galley.text().replace(NO_BREAK, " ");
    ui.interact(rect, id, Sense::hover())
        .widget_info(|| WidgetInfo::labeled(egui::Role::Label, true, &text));
    ui.painter().galley(at, galley, Color32::PLACEHOLDER);
    rect
}

/// Writes a column of type from the top down.
pub struct Pen<'ui> {
    /// Where it writes.
    pub ui: &'ui mut Ui,
    /// Left edge.
    pub left: f32,
    /// Right edge.
    pub right: f32,
    /// Where the next line begins.
    pub y: f32,
    /// Nothing is painted while measuring.
    pub measuring: bool,
}

impl<'ui> Pen<'ui> {
    /// A pen at the top of `area`.
    pub fn new(ui: &'ui mut Ui, area: Rect) -> Self {
        Self {
            ui,
            left: area.left(),
            right: area.right(),
            y: area.top(),
            measuring: false,
        }
    }

    /// How high the strokes of `write` are in a column of `width`.
    pub fn measure(ui: &'ui mut Ui, width: f32, write: impl FnOnce(&mut Pen<'_>)) -> f32 {
        let mut pen = Pen {
            ui,
            left: 0.0,
            right: width,
            y: 0.0,
            measuring: true,
        };
        write(&mut pen);
        pen.y
    }

    /// Width of the column.
    pub fn width(&self) -> f32 {
        self.right - self.left
    }

    /// Leaves `space` points free.
    pub fn gap(&mut self, space: f32) {
        self.y += space;
    }

    /// Writes one paragraph.
    pub fn write(&mut self, line: Line) -> Rect {
        self.write_at(0.0, line)
    }

    /// Writes one paragraph, `indent` points in.
    pub fn write_at(&mut self, indent: f32, line: Line) -> Rect {
        let galley = line.wrapped(self.ui.painter(), self.width() - indent);
        let rect = Rect::from_min_size(pos2(self.left + indent, self.y), galley.size());
        if !self.measuring {
            named_galley(self.ui, rect.min, galley);
        }
        self.y = rect.bottom();
        rect
    }

    /// Writes `left` and, at the right edge of the same line, `right`; the right one keeps its place, the left one is drawn
    /// smaller.
    pub fn write_apart(&mut self, left: Line, right: Line) -> Rect {
        let right = right.on_one_line(self.ui.painter(), self.width() * 0.6);
        let left = left.squeezed(self.ui.painter(), self.width() - right.size().x - 8.0);
        let height = left.size().y.max(right.size().y);
        let rect = Rect::from_min_size(pos2(self.left, self.y), vec2(self.width(), height));
        if !self.measuring {
            let right_at = rect.right_bottom() - right.size();
            named_galley(self.ui, rect.left_bottom() - vec2(0.0, left.size().y), left);
            named_galley(self.ui, right_at, right);
        }
        self.y = rect.bottom();
        rect
    }

    /// A hair line across the column.
    pub fn rule(&mut self, colour: impl Into<Color32>) {
        if !self.measuring {
            let y = self.y.round() + 0.5;
            self.ui
                .painter()
                .hline(self.left..=self.right, y, egui::Stroke::new(1.0, colour.into()));
        }
        self.y += 1.0;
    }

    /// Takes `height` points of the column for a picture or a control; nothing while measuring.
    pub fn room(&mut self, height: f32) -> Option<Rect> {
        let rect = Rect::from_min_size(pos2(self.left, self.y), Vec2::new(self.width(), height));
        self.y += height;
        (!self.measuring).then_some(rect)
    }
}

#[cfg(test)]
mod tests {
    use egui::{Color32, Context, RawInput};

    use super::{Ink, Line, with_its_unit};
    use crate::ui::theme::{Face, set_type};

    #[test]
    fn a_number_is_not_parted_from_its_unit() {
        assert_eq!(
            with_its_unit("over 0.7 % a week at 70 kg"),
            "over 0.7\u{a0}% a week at 70\u{a0}kg"
        );
        assert_eq!(with_its_unit("−10 lb · 2 × 5"), "−10\u{a0}lb · 2 × 5");
    }

    #[test]
    fn words_that_only_begin_like_a_unit_are_left() {
        assert_eq!(with_its_unit("3 kgs, one kg"), "3 kgs, one kg");
    }

    #[test]
    fn small_words_stand_on_the_base_line_of_the_big_number_before_them() {
        let context = Context::default();
        set_type(&context);
        let ink = |face, size| Ink::new(face, size, Color32::BLACK);
        let mut bases = Vec::new();
        let mut output = context.run_ui(RawInput::default(), |ui| {
            let line = Line::new("4 × 6", ink(Face::Number, 46.0)).gap(10.0, "reps", ink(Face::Label, 16.0));
            let galley = line.on_base().on_one_line(ui.painter(), f32::INFINITY);
            bases = galley
                .rows
                .iter()
                .flat_map(|row| &row.glyphs)
                .map(|glyph| glyph.pos.y)
                .collect();
        });
        output.textures_delta.clear();
        let (lowest, highest) = bases
            .iter()
            .fold((f32::MAX, f32::MIN), |(low, high), y| (low.min(*y), high.max(*y)));
        assert!(bases.len() > 5 && highest - lowest < 1.0, "{bases:?}");
    }
}
