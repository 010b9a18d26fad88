//! First start: the ways in are the lowest rungs of a ladder, and both hands hold the chosen one.

mod open;
mod start;
mod typed;

pub use typed::StartState;

use egui::{Align, Align2, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line, letters, named_galley};
use crate::ui::theme::{Face, STROKE_OUTLINE, Theme, size};
use crate::ui::two_rail::{grip, rails_fading};
use crate::ui::views::FirstView;
use crate::ui::widgets::{focus_ring, key_cap};
use crate::units::Rail;

use super::ladders::many;

/// What first start remembers between frames.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FirstState {
    /// The choice that the hands hold, from the ground up.
    pub choice: usize,
    /// Which step is open.
    pub step: Step,
    /// A logbook being made.
    pub start: StartState,
    /// The path of a logbook to open.
    pub path: String,
}

/// A step of first start.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Step {
    /// The four ways in.
    #[default]
    Ways,
    /// A logbook is being made.
    Start,
    /// A logbook is being opened.
    Open,
}

/// The ways in, from the ground up: action, title, what is beside it.
const WAYS: [(Action, &str, &str, &str); 4] = [
    (
        Action::OpenDemo,
        "Open the demo gym",
        "Look around first",
        "A throw-away copy. Delete it any time.",
    ),
    (
        Action::StartLogbook,
        "Start a logbook",
        "Under a minute",
        "Plain text in a folder. It stays here: no network.",
    ),
    (
        Action::OpenLogbook,
        "Open a logbook you have",
        "From another machine",
        "Any file-sync tool may carry it.",
    ),
    (
        Action::ImportSheet,
        "Bring a spreadsheet",
        "Paste it, or pick a CSV file",
        "Rows are shown before anything is written.",
    ),
];

impl FirstState {
    /// Performs an action of first start.
    pub fn perform(&mut self, action: Action, actions: &mut Actions) {
        match action {
            Action::ChoiceUp if self.step == Step::Ways => {
                self.choice = (self.choice + 1).min(WAYS.len() - 1)
            }
            Action::ChoiceDown if self.step == Step::Ways => self.choice = self.choice.saturating_sub(1),
            Action::TakeChoice if self.step == Step::Ways => {
                if let Some((action, ..)) = WAYS.get(self.choice) {
                    self.perform(*action, actions);
                }
            }
            Action::OpenDemo if self.step == Step::Ways => actions.write(Deed::OpenDemo),
            Action::StartLogbook if self.step == Step::Ways => self.step = Step::Start,
            Action::ImportSheet if self.step == Step::Ways => actions.ask(Action::BringSheet),
            Action::OpenLogbook if self.step == Step::Ways => self.step = Step::Open,
            Action::MakeLogbook if self.step == Step::Start => self.start.make = true,
            Action::Back => self.step = Step::Ways,
            _ => {}
        }
    }
}

/// Shows first start in the whole of `ui`.
pub fn first_ui(ui: &mut Ui, view: &FirstView, state: &mut FirstState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(ui.max_rect(), 0.0, *theme.bench);
    match state.step {
        Step::Ways => ways_ui(ui, view, state, actions),
        Step::Start => {
            if start::start_ui(ui, view, &mut state.start, actions) {
                state.step = Step::Ways;
            }
        }
        Step::Open => {
            if open::open_ui(ui, view, &mut state.path, actions) {
                state.step = Step::Ways;
            }
        }
    }
}

/// Sizes by how much room there is.
struct Room {
    rails: [f32; 2],
    rail: f32,
    rung: f32,
    apart: f32,
    ground: f32,
    notes: bool,
    name_beside: bool,
}

impl Room {
    fn of(whole: Rect) -> Self {
        let foot = if whole.height() > 560.0 { 88.0 } else { 58.0 };
        let ground = whole.bottom() - foot;
        let apart = ((ground - whole.top() - 40.0) / 4.6).clamp(62.0, 136.0);
        let rung = (apart * 0.66).min(90.0);
        let share = if whole.width() > 760.0 { 0.56 } else { 0.7 };
        let between = if whole.width() > 1100.0 {
            570.0
        } else {
            (whole.width() * share).clamp(340.0, 570.0)
        };
        let beside = whole.width() > 1000.0;
        let left = if beside {
            (whole.left() + whole.width() * 0.305).min(whole.center().x - between / 2.0 + 20.0)
        } else if whole.width() > 760.0 {
            whole.right() - between - 60.0
        } else {
            whole.center().x - between / 2.0
        };
        Self {
            rails: [left, left + between],
            rail: 26.0,
            rung,
            apart,
            ground,
            notes: whole.right() - left - between > 300.0,
            name_beside: left - whole.left() > 250.0,
        }
    }

    fn rung_rect(&self, nth: usize) -> Rect {
        let y = self.ground - 28.0 - self.rung / 2.0 - self.apart * many(nth) - 20.0;
        Rect::from_x_y_ranges(
            self.rails[0] + self.rail / 2.0..=self.rails[1] - self.rail / 2.0,
            y - self.rung / 2.0..=y + self.rung / 2.0,
        )
    }
}

fn ways_ui(ui: &mut Ui, view: &FirstView, state: &mut FirstState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    let room = Room::of(whole);
    rails_fading(
        ui.painter(),
        &room.rails,
        room.rail,
        whole.top(),
        room.ground,
        120.0,
        &theme,
    );
    ui.painter()
        .hline(whole.x_range(), room.ground, Stroke::new(2.0, *theme.steel_low));
    let mut left = whole.left() + (whole.width() * 0.06).min(90.0);
    if room.name_beside {
        left = (whole.left() + (room.rails[0] - whole.left()) * 0.22).round();
        name_ui(ui, pos2(left, whole.center().y - 170.0), room.rails[0]);
    }
    for (nth, (action, title, head, note)) in WAYS.into_iter().enumerate() {
        let rect = room.rung_rect(nth);
        let words = match nth {
            0 => view.demo_words.as_str(),
            1 => "Name, kg or lb, your plates, first weigh-in.",
            2 => "Pick its folder. Nothing in it is changed.",
            _ => "Sets kept elsewhere, matched by column.",
        };
        if way_ui(ui, &room, nth, title, words, &action.key(), state) {
            actions.ask(action);
        }
        if room.notes {
            let x = room.rails[1] + 38.0;
            ui.painter()
                .hline(x..=x + 28.0, rect.center().y, Stroke::new(1.5, *theme.edge));
            let width = whole.right() - x - 60.0;
            let head = Line::new(head, Ink::new(Face::LabelStrong, size::BODY, *theme.ink))
                .wrapped(ui.painter(), width);
            let note =
                Line::new(note, Ink::new(Face::Label, size::BODY, *theme.ink2)).wrapped(ui.painter(), width);
            let top = rect.center().y - head.size().y / 2.0;
            let below = top + head.size().y;
            named_galley(ui, pos2(x + 44.0, top), head);
            named_galley(ui, pos2(x + 44.0, below), note);
        }
    }
    foot_ui(
        ui,
        Rect::from_min_max(pos2(whole.left(), room.ground + 1.0), whole.max),
        left,
        view,
    );
}

/// One way in; the hands are on it when it is chosen.
fn way_ui(
    ui: &mut Ui,
    room: &Room,
    nth: usize,
    title: &str,
    words: &str,
    key: &str,
    state: &mut FirstState,
) -> bool {
    let theme = Theme::of(ui);
    let rect = room.rung_rect(nth);
    let response = ui.interact(rect, ui.scope_id().with(("way", nth)), Sense::click());
    let chosen = state.choice == nth;
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, chosen, title));
    if response.gained_focus() || (response.hovered() && ui.input(|input| input.pointer.is_moving())) {
        state.choice = nth;
    }
    let painter = ui.painter();
    let (fill, text, second) = if chosen {
        (*theme.ember, *theme.on_ember, *theme.on_ember)
    } else {
        (*theme.raised, *theme.ink, *theme.ink2)
    };
    painter.rect_filled(rect, 0.0, fill);
    if !chosen {
        painter.rect_stroke(
            rect,
            0.0,
            Stroke::new(STROKE_OUTLINE, *theme.edge),
            StrokeKind::Inside,
        );
    }
    let reach = room.rung / 90.0;
    let inset = 94.0 * reach;
    let cap_room = 52.0;
    let width = rect.width() - 2.0 * inset - cap_room;
    let head = Line::new(
        title,
        Ink::new(
            Face::LabelStrong,
            if room.rung > 70.0 { 24.0 } else { 19.0 },
            text,
        ),
    )
    .on_one_line(painter, width);
    let line =
        Line::new(words, Ink::new(Face::Label, size::BODY, second)).fitted(painter, width, Align::LEFT);
    let top = rect.center().y - (head.size().y + line.size().y) / 2.0;
    let below = top + head.size().y;
    painter.galley(pos2(rect.left() + inset, top), head, text);
    painter.galley(pos2(rect.left() + inset, below), line, second);
    let key = if chosen { "Enter" } else { key };
    let cap = if chosen { *theme.on_ember } else { *theme.ink2 };
    key_cap(
        painter,
        pos2(rect.right() - inset, rect.center().y),
        Align2::RIGHT_CENTER,
        key,
        cap,
        &theme,
    );
    if response.has_focus() {
        focus_ring(painter, rect.shrink(6.0), 2.0, &theme);
    }
    for x in room.rails {
        if !chosen {
            painter.circle(
                pos2(x, rect.center().y),
                5.0,
                *theme.steel,
                Stroke::new(1.6, *theme.raised),
            );
        }
    }
    if chosen {
        let scale = 1.5 * reach;
        grip(
            painter,
            pos2(room.rails[0], rect.center().y),
            Rail::Left,
            scale,
            &theme,
        );
        grip(
            painter,
            pos2(room.rails[1], rect.center().y),
            Rail::Right,
            scale,
            &theme,
        );
    }
    response.clicked()
}

/// The program's sign and name, clear of the rail at `until`.
fn name_ui(ui: &mut Ui, at: egui::Pos2, until: f32) {
    let theme = Theme::of(ui);
    crate::ui::frame::sign(ui.painter(), Rect::from_min_size(at, vec2(84.0, 84.0)), &theme);
    let name = Line::new("Rungwright", Ink::new(Face::Number, 44.0, *theme.ink))
        .squeezed(ui.painter(), (until - at.x - 20.0).min(300.0));
    let rect = named_galley(ui, at + vec2(0.0, 100.0), name);
    let ink = Ink::new(Face::Label, 20.0, *theme.ink2);
    let words = Line::new("Which rung, which hand,\nwhat today, and why.", ink).wrapped(ui.painter(), 260.0);
    named_galley(ui, rect.left_bottom() + vec2(2.0, 6.0), words);
}

/// Care, and the keys, from `left` on.
fn foot_ui(ui: &mut Ui, rect: Rect, left: f32, view: &FirstView) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    let words = view.problem.as_deref().unwrap_or(
        "Stop on sharp pain. Check bar, belt and chain. Loads and dates are estimates, not medical advice; with illness, injury or pregnancy, or for a minor, ask a professional first.",
    );
    let colour = if view.problem.is_some() {
        *theme.plum
    } else {
        *theme.ink
    };
    let galley = Line::new(words, Ink::new(Face::Label, 15.0, colour))
        .wrapped(ui.painter(), rect.right() - left - 20.0);
    let bottom = named_galley(ui, pos2(left, rect.top() + 10.0), galley).bottom();
    if bottom + 24.0 < rect.bottom() {
        let ink = Ink::new(Face::Label, size::TABLE, *theme.ink2);
        letters(
            ui.painter(),
            pos2(left, bottom + 8.0),
            Align2::LEFT_TOP,
            "↑ ↓ choose  ·  Enter open  ·  Ctrl+T light or dark  ·  F1 all keys",
            ink,
        );
    }
}
