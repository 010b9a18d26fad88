//! What stands over and under the roster's lines: title, needs to pick, filter and sheet; the why of the chosen line.

use std::sync::Arc;

use egui::{Align2, Color32, Galley, Painter, Pos2, Rect, Stroke, StrokeKind, TextEdit, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, letters, named_galley, width_of};
use crate::ui::screens::heading;
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{Need, RosterLine, RosterView};
use crate::ui::widgets::{self, Button, badge, badge_colour, focus_ring, hand_disc, key_cap};

use super::RosterState;

/// Title, needs to pick, filter, the sheet.
pub(super) fn header_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &RosterView,
    state: &mut RosterState,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    let room = heading::bar(ui, rect, "Roster");
    let mut right = room.right();
    if !view.lines.is_empty() {
        let title = match state.marked.len() {
            0 => "Sheet for tonight".to_owned(),
            count => format!("Sheet, {count} marked"),
        };
        let title = if room.width() > WIDE {
            title.as_str()
        } else {
            "Sheet"
        };
        let button = Button::plain(title).key("S");
        let width = button.width(ui.painter(), &theme);
        let at = Rect::from_min_size(pos2(right - width, room.center().y - 17.0), vec2(width, 34.0));
        if button.show(ui, at).clicked() {
            actions.ask(Action::TonightsSheet);
        }
        right = at.left() - 8.0;
    }
    let (field_width, hint) = if room.width() > WIDE {
        (150.0, "name or ladder")
    } else {
        (110.0, "name")
    };
    let field = Rect::from_min_size(
        pos2(right - field_width, room.center().y - 17.0),
        vec2(field_width, 34.0),
    );
    let edit = TextEdit::singleline(&mut state.filter)
        .hint_text(hint)
        .align(egui::Align2::LEFT_CENTER);
    let response = ui
        .put(field, edit)
        .accessible_name("Filter by name, ladder or need");
    if std::mem::take(&mut state.focus_filter) {
        crate::ui::screens::sheet::focus_all(ui, &response, &state.filter);
    }
    if response.has_focus() && ui.input(|input| input.key_pressed(egui::Key::ArrowDown)) {
        response.surrender_focus();
    }
    if state.filter.is_empty() && !response.has_focus() {
        key_cap(
            ui.painter(),
            field.right_center() - vec2(8.0, 0.0),
            Align2::RIGHT_CENTER,
            "/",
            *theme.ink2,
            &theme,
        );
    }
    let limit = field.left() - 8.0;
    let chips: Vec<Chip> = std::iter::once(Chip {
        need: None,
        count: view.lines.len(),
        chosen: state.need.is_none(),
    })
    .chain(state.order.needs().map(|(need, count)| Chip {
        need: Some(need),
        count,
        chosen: state.need == Some(need),
    }))
    .collect();
    let mut x = room.left() - 4.0;
    let whole: f32 = chips.iter().map(|chip| chip.laid(ui, true).1 + GAP).sum();
    // Where seven words have no room, badge and count stay; the word is still read out and shown under the pointer.
    let with_words = x + whole - GAP <= limit;
    for chip in chips {
        let (galley, width) = chip.laid(ui, with_words);
        let rect = Rect::from_min_size(pos2(x, room.center().y - 17.0), vec2(width, 34.0));
        if rect.right() > limit {
            break;
        }
        x = rect.right() + GAP;
        if chip.show(ui, rect, galley) {
            state.need = chip.need.filter(|_| !chip.chosen);
        }
    }
}

/// A bar so wide has room for long words.
const WIDE: f32 = 900.0;
/// Between two chips.
const GAP: f32 = 7.0;

/// A need with its count, to pick; without a need everyone.
struct Chip {
    need: Option<Need>,
    count: usize,
    chosen: bool,
}

impl Chip {
    fn title(&self) -> &'static str {
        self.need.map_or("All", Need::title)
    }

    fn colour(&self, theme: &Theme) -> Color32 {
        if self.chosen { *theme.raised } else { *theme.ink }
    }

    /// Room for the badge left of the words.
    fn icon(&self) -> f32 {
        if self.need.is_some() { 22.0 } else { 0.0 }
    }

    /// Its words, and how wide it is with them.
    fn laid(&self, ui: &Ui, with_words: bool) -> (Arc<Galley>, f32) {
        let colour = self.colour(&Theme::of(ui));
        let strong = Ink::new(Face::LabelStrong, 15.0, colour);
        let count = self.count.to_string();
        let words = if self.need.is_some() && !with_words {
            Line::new(&count, strong)
        } else {
            Line::new(self.title(), Ink::new(Face::Label, 15.0, colour)).gap(6.0, &count, strong)
        };
        let galley = words.on_one_line(ui.painter(), 200.0);
        let width = galley.size().x + self.icon() + 20.0;
        (galley, width)
    }

    /// True once it was pressed.
    fn show(&self, ui: &mut Ui, rect: Rect, galley: Arc<Galley>) -> bool {
        let theme = Theme::of(ui);
        let response = widgets::press_chosen(
            ui,
            rect,
            &format!("{}, {}", self.title(), self.count),
            self.chosen,
        );
        let fill = if self.chosen { *theme.ink } else { *theme.raised };
        let edge = Stroke::new(1.0, *theme.edge);
        ui.painter().rect(rect, 5.0, fill, edge, StrokeKind::Inside);
        let y = rect.center().y;
        if let Some(need) = self.need {
            let square = Rect::from_center_size(pos2(rect.left() + 17.0, y), vec2(15.0, 15.0));
            let colour = if self.chosen {
                *theme.raised
            } else {
                badge_colour(need.stands_for(), &theme)
            };
            badge(ui.painter(), square, need.stands_for(), colour, fill);
        }
        let at = pos2(rect.left() + 10.0 + self.icon(), y - galley.size().y / 2.0);
        ui.painter().galley(at, galley, self.colour(&theme));
        if response.has_focus() {
            focus_ring(ui.painter(), rect, 5.0, &theme);
        }
        let pressed = response.clicked();
        crate::ui::widgets::hinted(response, self.title());
        pressed
    }
}

/// Why the chosen athlete is where they are.
pub(super) fn foot_ui(ui: &mut Ui, rect: Rect, line: Option<&RosterLine>) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let Some(line) = line else { return };
    let y = rect.center().y;
    let name = Line::new(&line.name, Ink::new(Face::LabelStrong, size::BODY, *theme.ink))
        .on_one_line(ui.painter(), 220.0);
    let mut x = named_galley(ui, pos2(rect.left() + 20.0, y - name.size().y / 2.0), name).right() + 16.0;
    let mut right = rect.right() - 16.0;
    let ink = Ink::new(Face::Label, 15.0, *theme.ink);
    let whole: f32 = line
        .why
        .iter()
        .map(|(_, why)| BESIDE_WHY + width_of(ui.painter(), why, ink))
        .sum();
    // The why comes first: the keys are on F1 too.
    let keys = [(0..6, ALL_KEYS), (2..4, FEW_KEYS)];
    if let Some((shown, _)) = keys.into_iter().find(|(_, width)| x + whole <= right - width) {
        right = keys_ui(
            ui.painter(),
            pos2(right, y),
            KEYS.get(shown).unwrap_or_default(),
            &theme,
        );
    }
    for (nth, (rail, why)) in line.why.iter().enumerate() {
        // Each side gets its part of what is left, so that a long sentence never takes the other's.
        let part = (right - x) / crate::ui::screens::ladders::many(line.why.len() - nth);
        if part < 87.0 {
            break;
        }
        hand_disc(ui.painter(), pos2(x + 10.0, y), 10.0, *rail, &theme);
        x += 27.0;
        let room = part - BESIDE_WHY;
        let mut galley = Line::new(why, ink).on_one_line(ui.painter(), room);
        if galley.elided {
            // Two smaller lines, where they hold what one doesn't.
            let small = Ink {
                size: size::TABLE,
                ..ink
            };
            let wrapped = Line::new(why, small).wrapped(ui.painter(), room);
            galley = if wrapped.rows.len() <= 2 { wrapped } else { galley };
        }
        x = named_galley(ui, pos2(x, y - galley.size().y / 2.0), galley).right() + 14.0;
    }
}

/// A hand's letter and the gaps around a sentence.
const BESIDE_WHY: f32 = 41.0;
/// How wide all keys are, and the two that are pressed most.
const ALL_KEYS: f32 = 430.0;
const FEW_KEYS: f32 = 190.0;
const KEYS: [(&str, &str); 6] = [
    ("↑↓", "line"),
    ("Enter", "open"),
    ("X", "mark"),
    ("T", "type results"),
    ("N", "note"),
    ("E", "edit"),
];

/// Keys with what they do, their right end at `at`. Returns where they begin.
fn keys_ui(painter: &Painter, at: Pos2, keys: &[(&str, &str)], theme: &Theme) -> f32 {
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    keys.iter().rev().fold(at.x, |right, (key, words)| {
        let words = letters(painter, pos2(right, at.y), Align2::RIGHT_CENTER, words, quiet);
        let at = pos2(words.left() - 4.0, at.y);
        key_cap(painter, at, Align2::RIGHT_CENTER, key, *theme.ink2, theme).left() - 10.0
    })
}
