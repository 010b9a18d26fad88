//! A picture of every part in every state.

use egui::{Rect, pos2, vec2};
use rungwright::ui::pen::{Ink, letters};
use rungwright::ui::theme::{Face, Theme};
use rungwright::ui::views::{BeltView, LyingView, Phrase, PlateView, Verdict};
use rungwright::ui::widgets::*;
use rungwright::units::Rail;

use crate::kit::in_both_themes;

fn plates(kgs: &[f64]) -> Vec<PlateView> {
    kgs.iter()
        .map(|kg| PlateView {
            number: kg.to_string(),
            kg: *kg,
            is_kg: true,
        })
        .collect()
}

#[test]
fn verdict_badges() {
    in_both_themes("part-badges", [620.0, 200.0], |ui| {
        let theme = Theme::of(ui);
        for (nth, verdict) in (0u8..).zip(Verdict::ALL) {
            let at = pos2(
                16.0 + f32::from(nth / 5) * 320.0,
                24.0 + f32::from(nth % 5) * 36.0,
            );
            badge_with_word(ui.painter(), at, verdict, 20.0, 17.0, *theme.raised, &theme);
            badge_with_word(
                ui.painter(),
                at + vec2(170.0, 0.0),
                verdict,
                15.0,
                14.0,
                *theme.raised,
                &theme,
            );
        }
    });
}

#[test]
fn buttons_in_every_state() {
    in_both_themes("part-buttons", [900.0, 220.0], |ui| {
        let theme = Theme::of(ui);
        for (column, state) in (0u8..).zip(State::MATRIX) {
            let x = 20.0 + f32::from(column) * 176.0;
            let at = |y: f32, w: f32, h: f32| Rect::from_min_size(pos2(x, y), vec2(w, h));
            let plain = Button::plain("Weigh in").key("K");
            paint_button(ui.painter(), at(14.0, 130.0, 36.0), &plain, state, &theme);
            paint_button(
                ui.painter(),
                at(64.0, 130.0, 36.0),
                &Button::main("Log left set 2"),
                state,
                &theme,
            );
            dock_key(ui.painter(), at(116.0, 54.0, 64.0), "2", false, state, &theme);
            dock_key(
                ui.painter(),
                at(116.0, 54.0, 64.0).translate(vec2(66.0, 0.0)),
                "3+",
                true,
                state,
                &theme,
            );
            tick_box(
                ui.painter(),
                at(192.0, 18.0, 18.0),
                column % 2 == 0,
                state,
                &theme,
            );
        }
    });
}

#[test]
fn chips_and_cards() {
    in_both_themes("part-chips", [560.0, 190.0], |ui| {
        let theme = Theme::of(ui);
        let all = [
            (SetChip::Done, "2 reps, RIR 1"),
            (SetChip::Next, "2 reps"),
            (SetChip::Later, "1–3 reps"),
        ];
        for (nth, (look, words)) in all.into_iter().enumerate() {
            let rect = Rect::from_min_size(pos2(16.0 + 120.0 * nth as f32, 16.0), vec2(110.0, 46.0));
            set_chip(ui.painter(), rect, nth + 1, look, words, &theme);
        }
        let words =
            Phrase::plain("Right elbow 1 of 10 today, 2 on Fri: 2 or less, go on. Stop on sharp pain.");
        let (height, paint) = caution_box(ui, &words, 340.0);
        paint(ui, Rect::from_min_size(pos2(16.0, 90.0), vec2(340.0, height)));
        for (nth, rail) in [Rail::Left, Rail::Right, Rail::Both].into_iter().enumerate() {
            hand_disc(
                ui.painter(),
                pos2(400.0 + 40.0 * nth as f32, 40.0),
                13.0,
                rail,
                &theme,
            );
        }
    });
}

#[test]
fn the_rest_clock_before_within_and_after_the_asked_range() {
    in_both_themes("part-rest", [240.0, 260.0], |ui| {
        let theme = Theme::of(ui);
        let passed = [None, Some(112.0), Some(200.0), Some(400.0)];
        for (nth, passed) in passed.into_iter().enumerate() {
            let rect = Rect::from_min_size(pos2(16.0, 20.0 + 60.0 * nth as f32), vec2(206.0, 8.0));
            rest_track(
                ui.painter(),
                rect,
                RestTrack {
                    passed,
                    asked: (180, 300),
                },
                &theme,
            );
        }
    });
}

#[test]
fn the_belt_carries_the_plates_that_hang_from_it() {
    in_both_themes("part-belt", [660.0, 200.0], |ui| {
        let theme = Theme::of(ui);
        let loads: [&[f64]; 3] = [
            &[20.0, 10.0, 2.5],
            &[1.25],
            &[25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 2.0],
        ];
        for (nth, load) in loads.into_iter().enumerate() {
            let rect = Rect::from_min_size(pos2(16.0 + 210.0 * nth as f32, 16.0), vec2(194.0, 170.0));
            let view = BeltView {
                plates: plates(load),
                words: Phrase::default(),
            };
            belt(ui.painter(), rect, &view, &theme);
        }
    });
}

#[test]
fn the_lying_ladder_and_key_caps() {
    in_both_themes("part-lying", [320.0, 130.0], |ui| {
        let theme = Theme::of(ui);
        let ticks = vec![0.1, 0.3, 0.44, 0.62, 0.7];
        let two = LyingView {
            hands: vec![(Rail::Left, 0.6), (Rail::Right, 0.67)],
            ticks: ticks.clone(),
            goal: 0.88,
        };
        let one = LyingView {
            hands: vec![(Rail::Both, 0.52)],
            ticks,
            goal: 0.88,
        };
        for (nth, view) in [two, one].iter().enumerate() {
            let rect = Rect::from_min_size(pos2(16.0, 16.0 + 30.0 * nth as f32), vec2(132.0, 16.0));
            lying(ui.painter(), rect, view, &theme);
        }
        let mut x = 16.0;
        for key in ["K", "Enter", "↑", "Shift", "F11"] {
            let cap = key_cap(
                ui.painter(),
                pos2(x, 100.0),
                egui::Align2::LEFT_CENTER,
                key,
                *theme.ink2,
                &theme,
            );
            x = cap.right() + 8.0;
        }
        let ink = Ink::new(Face::Label, 16.0, *theme.ink);
        letters(
            ui.painter(),
            pos2(180.0, 20.0),
            egui::Align2::LEFT_TOP,
            "−2.5 × 3–5 ± ½ → ≥",
            ink,
        );
        letters(
            ui.painter(),
            pos2(180.0, 50.0),
            egui::Align2::LEFT_TOP,
            "Bảo Trịnh Ελένη Юлия",
            ink,
        );
    });
}
