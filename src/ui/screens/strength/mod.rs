//! Strength over time, over Ladders and Totals: the estimate in words, the plot, and what looks like a typo with the key that
//! mends it.

mod plot;

use egui::Ui;

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::screens::sheet::SheetFrame;
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{StrengthView, SuspectView};
use crate::ui::widgets::{Button, explained, keep_arrows};

/// Width of the sheet, points.
const WIDTH: f32 = 920.0;

/// What the sheet remembers between frames.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StrengthSheet {
    open: bool,
    /// Mend the first set that looks like a typo, in this frame.
    mend_first: bool,
    /// The plot whose sets the arrows walk: the one that last had the focus.
    plot: usize,
    /// The set that is walked to.
    walked: Option<usize>,
}

impl StrengthSheet {
    /// Whether it lies over its place.
    pub fn is_open(&self) -> bool {
        self.open
    }

    /// Opens it, nothing walked to.
    pub fn open(&mut self) {
        *self = Self {
            open: true,
            ..Self::default()
        };
    }

    /// Closes it.
    pub fn close(&mut self) {
        *self = Self::default();
    }

    /// Performs an action that holds while it is open.
    pub fn perform(&mut self, action: Action, views: &[StrengthView]) {
        match action {
            Action::MendSet => self.mend_first = true,
            Action::PointBack => self.walk(views, false),
            Action::PointOn => self.walk(views, true),
            Action::Back | Action::StrengthOverTime => self.close(),
            _ => {}
        }
    }

    fn walk(&mut self, views: &[StrengthView], on: bool) {
        let count = views.get(self.plot).map_or(0, |view| view.sets.len());
        let Some(last) = count.checked_sub(1) else { return };
        self.walked = Some(match (self.walked, on) {
            (None, _) => last,
            (Some(nth), true) => (nth + 1).min(last),
            (Some(nth), false) => nth.saturating_sub(1).min(last),
        });
    }

    /// Shows it while it is open.
    pub fn show(&mut self, ui: &Ui, views: &[StrengthView], actions: &mut Actions) {
        let mend = std::mem::take(&mut self.mend_first);
        if !self.open {
            return;
        }
        let mut suspects = views.iter().flat_map(|shown| &shown.suspects);
        let first = suspects.find(|suspect| suspect.mend.is_some());
        if let (true, Some(suspect)) = (mend, first) {
            actions.write(Deed::MendSet(suspect.id.clone()));
        }
        let key_of = first.map(|suspect| suspect.id.as_str());
        let closed = SheetFrame::new("Strength over time").width(WIDTH).show(ui, |ui| {
            if views.is_empty() {
                quiet(ui, "No estimate yet. It needs sets with a load, and a weigh-in, of an earlier day.");
            }
            for (nth, shown) in views.iter().enumerate() {
                Self::words_ui(ui, nth, shown);
                for suspect in &shown.suspects {
                    suspect_ui(ui, suspect, key_of == Some(suspect.id.as_str()), actions);
                }
                self.plots_ui(ui, nth, shown);
                ui.add_space(14.0);
            }
            quiet(
                ui,
                "Soft: what was believed that morning, 50, 80 and 95 in 100. Solid dots: singles; rings: from reps and the \
                 reserve as given; crosses: missed; diamonds: look like a typo. An estimate, not a promise.",
            );
            false
        });
        keep_arrows(ui);
        if closed {
            self.close();
        }
    }

    fn words_ui(ui: &mut Ui, nth: usize, view: &StrengthView) {
        let theme = Theme::of(ui);
        ui.label(
            egui::RichText::new(&view.title)
                .font(Face::LabelStrong.at(size::BODY))
                .color(theme.rail(view.rail)),
        );
        let words = ui.scope(|ui| view.words.iter().for_each(|words| quiet(ui, words)));
        let id = ui.scope_id().with(("how", nth));
        explained(
            ui,
            words.response.rect.expand2(egui::vec2(2.0, 0.0)),
            id,
            view.how.clone(),
        );
    }

    /// The plots, the set that is walked to in words above them, where a low window shows it too.
    fn plots_ui(&mut self, ui: &mut Ui, nth: usize, view: &StrengthView) {
        let walked = self.walked.filter(|_| self.plot == nth);
        let read = walked.and_then(|at| view.sets.get(at));
        quiet(
            ui,
            read.map_or("← and → read the sets one by one.", |dot| dot.words.as_str()),
        );
        let (focused, chosen) = plot::plots_ui(ui, nth, view, walked);
        if chosen.is_some() || (focused && self.plot != nth) {
            (self.plot, self.walked) = (nth, chosen);
        }
        for words in &view.spans {
            quiet(ui, words);
        }
    }
}

/// The title of the button that opens it: with how many sets look like typos.
pub(super) fn title(views: &[StrengthView]) -> String {
    match views.iter().map(|view| view.suspects.len()).sum() {
        0usize => "Strength".to_owned(),
        doubted => format!("Strength · {doubted} to check"),
    }
}

/// What looks like a typo, and the button that writes what would fit.
fn suspect_ui(ui: &mut Ui, suspect: &SuspectView, has_key: bool, actions: &mut Actions) {
    // Two slips may have the same words on their buttons.
    let row = egui::UiBuilder::new().id_salt(&suspect.id);
    ui.scope_builder(row, |ui| {
        ui.horizontal_wrapped(|ui| {
            quiet(ui, &suspect.words);
            let Some(mend) = &suspect.mend else { return };
            let key = if has_key {
                Action::MendSet.key()
            } else {
                String::new()
            };
            if Button::plain(mend).key(&key).flow(ui).clicked() {
                actions.write(Deed::MendSet(suspect.id.clone()));
            }
        });
    });
}

fn quiet(ui: &mut Ui, words: &str) {
    let theme = Theme::of(ui);
    let text = egui::RichText::new(words)
        .font(Face::Label.at(size::TABLE))
        .color(*theme.ink2);
    ui.label(text);
}
