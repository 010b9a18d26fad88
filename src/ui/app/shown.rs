//! Views as they were last loaded, and the bars and the progress that stand over a place.

use egui::{Rect, Ui, pos2};

use crate::ui::book::Book;
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::screens::sheet::SheetFrame;
use crate::ui::theme::{Face, Theme};
use crate::ui::views::{Banner, FirstView, FrameView, ImportView, LaddersView, NextView, Place, RosterView};
use crate::ui::widgets::{Button, error_line};

/// Views in force. They are loaded again only when the book says that they would come out differently, or another place opens.
#[derive(Default)]
pub(super) struct Shown {
    of: Option<(u64, Place, bool)>,
    pub frame: FrameView,
    pub roster: RosterView,
    pub next: NextView,
    pub ladders: LaddersView,
    pub first: FirstView,
    pub import: Option<ImportView>,
}

impl Shown {
    pub fn load(&mut self, book: &impl Book, place: Place) {
        let now = Some((book.revision(), place, book.is_open()));
        if self.of == now {
            return;
        }
        self.of = now;
        if !book.is_open() {
            self.first = book.first();
            self.import = book.import();
            return;
        }
        self.frame = book.frame();
        match place {
            Place::Roster => self.roster = book.roster(),
            Place::Ladders => self.ladders = book.ladders(),
            _ => self.next = book.next(),
        }
    }

    /// Loads Next at once: the bar view and the dock need it right after a set.
    pub fn load_next(&mut self, book: &impl Book) {
        self.next = book.next();
        self.of = None;
    }
}

/// A bar over the place.
pub(super) struct Bar {
    what: String,
    place: String,
    mend: String,
    is_bad: bool,
}

/// Bars for a banner and a message.
pub(super) fn bars(banner: Option<&Banner>, message: Option<(&str, bool)>) -> Vec<Bar> {
    let banner = banner.map(|banner| match banner {
        Banner::ReadOnly(words) => Bar {
            what: words.clone(),
            place: String::new(),
            mend: String::new(),
            is_bad: false,
        },
        Banner::Broken { what, place, mend } => Bar {
            what: what.clone(),
            place: place.clone(),
            mend: mend.clone(),
            is_bad: true,
        },
    });
    let message = message.map(|(words, is_bad)| Bar {
        what: words.to_owned(),
        place: String::new(),
        mend: String::new(),
        is_bad,
    });
    banner.into_iter().chain(message).collect()
}

/// Draws a bar: plum for what is wrong, quiet else.
pub(super) fn bar_ui(ui: &mut Ui, rect: Rect, bar: &Bar) {
    let theme = Theme::of(ui);
    let (fill, edge) = if bar.is_bad {
        (*theme.plum_wash, *theme.plum)
    } else {
        (*theme.left_wash, *theme.steel)
    };
    ui.painter().rect_filled(rect, 0.0, fill);
    ui.painter()
        .rect_filled(rect.with_max_x(rect.left() + 5.0), 0.0, edge);
    let line = if bar.place.is_empty() {
        Line::new(&bar.what, Ink::new(Face::LabelStrong, 15.0, *theme.ink))
    } else {
        error_line(&bar.what, &bar.place, &bar.mend, &theme)
    };
    let galley = line.on_one_line(ui.painter(), rect.width() - 32.0);
    named_galley(
        ui,
        pos2(rect.left() + 18.0, rect.center().y - galley.size().y / 2.0),
        galley,
    );
}

/// Long work: what, how far, and a button that stops it. True when it was pressed.
pub(super) fn progress_ui(ui: &Ui, title: &str, done: u64, of: u64) -> bool {
    SheetFrame::new(title).width(360.0).show(ui, |ui| {
        #[allow(clippy::cast_precision_loss, reason = "a share for a bar")]
        let share = if of == 0 { 0.0 } else { done as f32 / of as f32 };
        let words = if of == 0 {
            format!("{done}")
        } else {
            format!("{done} of {of}")
        };
        ui.add(egui::ProgressBar::new(share).text(words));
        ui.add_space(8.0);
        Button::plain("Stop").flow(ui).clicked()
    })
}
