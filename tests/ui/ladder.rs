//! The two-rail ladder by itself: what it looks like, and what a screen reader reads.

use egui::{Rect, vec2};
use egui_kittest::SnapshotResults;
use egui_kittest::kittest::Queryable;
use rungwright::ui::theme::{Choice, Theme};
use rungwright::ui::two_rail::layout::{Layout, Width};
use rungwright::ui::two_rail::{ladder_ui, part_names};
use rungwright::ui::views::{LadderView, Spot};

use crate::kit::open;
use crate::sample_ladders as sample;

fn draw(ui: &mut egui::Ui, view: &LadderView, width: Width) -> Option<Spot> {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(ui.max_rect(), 0.0, *theme.bench);
    let screen = ui.max_rect();
    let area = Rect::from_min_max(screen.min + vec2(16.0, 30.0), screen.max - vec2(20.0, 30.0));
    let scroll = Layout::of(view, area, width, 0.0).scroll_to(view.hands.iter().map(|hand| hand.at));
    let mut layout = Layout::of(view, area, width, scroll);
    part_names(ui, view, &mut layout);
    ladder_ui(ui, view, &layout, width, Some(Spot::Rung(3)), true).chosen
}

fn picture(
    shots: &mut SnapshotResults,
    name: &str,
    size: [f32; 2],
    choice: Choice,
    view: LadderView,
    width: Width,
) {
    let mut harness = open(size, choice, view, move |ui, view| {
        draw(ui, view, width);
    });
    harness.run();
    harness.snapshot(name);
    shots.extend_harness(&mut harness);
}

#[test]
fn a_ladder_is_drawn_as_a_ladder() {
    let mut shots = SnapshotResults::new();
    picture(
        &mut shots,
        "ladder-light",
        [900.0, 760.0],
        Choice::Light,
        sample::one_arm(),
        Width::Full,
    );
    picture(
        &mut shots,
        "ladder-dark",
        [900.0, 760.0],
        Choice::Dark,
        sample::one_arm(),
        Width::Full,
    );
}

#[test]
fn both_hands_as_one_climb_in_steel() {
    let mut shots = SnapshotResults::new();
    picture(
        &mut shots,
        "ladder-both-light",
        [900.0, 700.0],
        Choice::Light,
        sample::weighted_pull_up(),
        Width::Full,
    );
}

#[test]
fn where_no_demand_is_known_rungs_stand_evenly_without_a_band() {
    let mut shots = SnapshotResults::new();
    picture(
        &mut shots,
        "ladder-even-light",
        [900.0, 700.0],
        Choice::Light,
        sample::without_demand(),
        Width::Full,
    );
}

#[test]
fn forty_rungs_scroll_beside_an_overview() {
    let mut shots = SnapshotResults::new();
    picture(
        &mut shots,
        "ladder-40-light",
        [1000.0, 820.0],
        Choice::Light,
        sample::long(40),
        Width::Full,
    );
    picture(
        &mut shots,
        "ladder-40-dark",
        [700.0, 620.0],
        Choice::Dark,
        sample::long(40),
        Width::Narrow,
    );
}

#[test]
fn two_rungs_and_a_narrow_strip_are_ladders_too() {
    let mut shots = SnapshotResults::new();
    picture(
        &mut shots,
        "ladder-2-light",
        [700.0, 420.0],
        Choice::Light,
        sample::long(2),
        Width::Narrow,
    );
    picture(
        &mut shots,
        "ladder-strip-light",
        [240.0, 460.0],
        Choice::Light,
        sample::one_arm(),
        Width::Strip,
    );
}

#[test]
fn every_rung_and_hand_is_named_and_a_click_chooses() {
    let state = (sample::one_arm(), None);
    let mut harness = open([900.0, 760.0], Choice::Light, state, |ui, (view, chosen)| {
        if let Some(spot) = draw(ui, view, Width::Full) {
            *chosen = Some(spot);
        }
    });
    harness.run();
    harness.get_by_label("Left hand on rung 3, Two fingers help; next rung today");
    harness.get_by_label("Right hand on rung 4, One finger helps");
    harness.get_by_label_contains("Rung 1, Pull-up, own weight, demand 0.64, left passed, right passed");
    harness.get_by_label_contains("Branch Band helps, from Pull-up, own weight to One finger helps");
    harness.get_by_label_contains("Companion One-arm hang, 10 s · grip, met");
    harness
        .get_by_label_contains("Rung 5, One-arm pull-up, demand 1.00, the goal")
        .click();
    harness.run();
    assert_eq!(harness.state().1, Some(Spot::Rung(4)));
}
