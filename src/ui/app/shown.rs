//! Views as they were last loaded, and the bars and the progress that stand over a place.

use egui::{Rect, Ui, pos2, vec2};

use crate::ui::book::Book;
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::screens::sheet::SheetFrame;
use crate::ui::screens::{Screen, Screens};
use crate::ui::theme::{Face, Theme};
use crate::ui::two_rail::{rails_between, rung_open, rung_passed};
use crate::ui::views::{Banner, FirstView, FrameView, ImportView, Place};
use crate::ui::widgets::{Button, error_line};

/// Views in force. They are loaded again only when the book says that they would come out differently, or another place opens.
#[derive(Default)]
pub(super) struct Shown {
    of: Option<(u64, Place, bool)>,
    pub frame: FrameView,
    pub first: FirstView,
    pub import: Option<ImportView>,
}

impl Shown {
    pub fn load(&mut self, book: &impl Book, place: Place, screens: &mut Screens) {
        let now = Some((book.revision(), place, book.is_open()));
        if self.of == now {
            return;
        }
        self.of = now;
        self.import = book.import();
        if !book.is_open() {
            self.first = book.first();
            return;
        }
        self.frame = book.frame();
        screens.of(place).load(book);
    }

    /// Loads Next at once: the bar view and the dock need it right after a set.
    pub fn load_next(&mut self, book: &impl Book, screens: &mut Screens) {
        screens.next.load(book);
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
        Banner::ReadOnly(words) | Banner::Unsaved(words) => Bar {
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

/// While the first logbook is opened there is nothing to show yet.
pub(super) fn opening_ui(ui: &Ui, whole: Rect) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
}

/// Long work: what, how far, as rungs that fill from the ground, and a button that stops it. True when it was pressed.
pub(super) fn progress_ui(ui: &Ui, title: &str, done: u64, of: u64) -> bool {
    SheetFrame::new(title).width(320.0).own_close().show(ui, |ui| {
        let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 150.0), egui::Sense::hover());
        filling(ui, rect, done, of);
        let theme = Theme::of(ui);
        let words = match (done, of) {
            (_, 0) => "A moment…".to_owned(),
            (done, of) => format!("{done} of {of}"),
        };
        ui.vertical_centered(|ui| ui.colored_label(*theme.ink2, words));
        ui.add_space(8.0);
        Button::plain("Stop").key("Esc").flow(ui).clicked()
    })
}

/// Rungs that fill from the ground.
fn filling(ui: &Ui, rect: Rect, done: u64, of: u64) {
    const RUNGS: u64 = 6;
    let theme = Theme::of(ui);
    let middle = rect.center().x;
    rails_between(
        ui.painter(),
        &[middle - 60.0, middle + 60.0],
        10.0,
        rect.top()..=rect.bottom(),
        &theme,
    );
    let solid = (done * RUNGS).checked_div(of).unwrap_or(0);
    let mut y = rect.bottom() - 14.0;
    for nth in 0..RUNGS {
        let rung = Rect::from_center_size(pos2(middle, y), vec2(110.0, 11.0));
        if nth < solid {
            rung_passed(ui.painter(), rung, &theme);
        } else {
            rung_open(ui.painter(), rung, &theme);
        }
        y -= 24.0;
    }
}
