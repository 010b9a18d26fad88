//! The ladder's geometry in numbers.

use super::*;
use crate::ui::views::{BranchView, CompanionView, RungState, RungView, SheetView};

fn rung(demand: Option<f64>) -> RungView {
    RungView {
        id: String::new(),
        title: String::new(),
        standard: String::new(),
        demand,
        is_goal: false,
        state: [RungState::Open; 2],
        status: None,
        status_is_now: false,
        sheet: SheetView::default(),
    }
}

fn ladder(demands: &[f64]) -> LadderView {
    LadderView {
        sided: true,
        rungs: demands.iter().map(|at| rung(Some(*at))).collect(),
        ..LadderView::default()
    }
}

fn area(height: f32) -> Rect {
    Rect::from_min_size(pos2(168.0, 64.0), vec2(900.0, height))
}

#[test]
fn rails_stand_244_apart_and_the_first_rung_22_over_the_ground() {
    let layout = Layout::of(&ladder(&[0.5, 0.7, 1.0]), area(700.0), Width::Full, 0.0);
    assert_eq!(layout.rails[1] - layout.rails[0], 244.0);
    assert_eq!(layout.ground - layout.rungs[0].y, 22.0);
    assert_eq!(layout.ground, 764.0);
    let narrow = Layout::of(&ladder(&[0.5, 1.0]), area(700.0), Width::Narrow, 0.0);
    assert_eq!(narrow.rails[1] - narrow.rails[0], 148.0);
}

#[test]
fn left_and_right_halves_meet_in_the_middle_but_do_not_touch() {
    let layout = Layout::of(&ladder(&[0.5, 1.0]), area(700.0), Width::Full, 0.0);
    let [left, right] = layout.rungs[0].halves;
    assert_eq!(right.left() - left.right(), 4.0);
    assert_eq!(left.left(), layout.rails[0] + 6.0);
    let both = LadderView {
        sided: false,
        ..ladder(&[0.5, 1.0])
    };
    let layout = Layout::of(&both, area(700.0), Width::Full, 0.0);
    assert_eq!(layout.rungs[0].halves[0], layout.rungs[0].rect);
}

#[test]
fn everything_within_the_area_when_it_need_not_scroll() {
    for count in 2..=16u8 {
        let demands: Vec<f64> = (0..count).map(|nth| 0.5 + 0.04 * f64::from(nth)).collect();
        let layout = Layout::of(&ladder(&demands), area(700.0), Width::Full, 0.0);
        assert!(layout.overview.is_none(), "{count}");
        assert!(
            layout
                .rungs
                .iter()
                .all(|rung| layout.area.y_range().contains(rung.y)),
            "{count}"
        );
        assert!(layout.top >= layout.area.top() - 0.6, "{count}: {}", layout.top);
    }
}

#[test]
fn forty_rungs_scroll_with_an_overview_that_frames_what_is_seen() {
    let demands: Vec<f64> = (0..40u8).map(|nth| 0.4 + 0.017 * f64::from(nth)).collect();
    let layout = Layout::of(&ladder(&demands), area(700.0), Width::Full, 0.0);
    let overview = layout.overview.clone().unwrap();
    assert_eq!(overview.rungs.len(), 40);
    assert!(overview.frame.height() < overview.rect.height());
    let top = Layout::of(&ladder(&demands), area(700.0), Width::Full, layout.scroll_max);
    assert!(
        (top.top - top.area.top()).abs() < 1.0,
        "scrolled to its end, the rails' end is at the top"
    );
    let middle = layout.scroll_to([Spot::Rung(20)].into_iter());
    let seen = Layout::of(&ladder(&demands), area(700.0), Width::Full, middle);
    assert!((seen.rungs[20].y - seen.area.center().y).abs() < 2.0);
}

#[test]
fn companions_and_branches_part_by_40_and_keep_their_own_height() {
    let mut view = ladder(&[0.5, 0.7, 1.0]);
    let companion = |demand| CompanionView {
        title: String::new(),
        line: String::new(),
        beside: 1,
        demand,
        met: false,
    };
    view.companions = vec![companion(Some(0.7)), companion(Some(0.71)), companion(None)];
    view.branches = vec![BranchView {
        id: String::new(),
        title: String::new(),
        line: String::new(),
        from: 1,
        to: 2,
        demand: Some(0.85),
        passed: false,
        sheet: SheetView::default(),
    }];
    let layout = Layout::of(&view, area(700.0), Width::Full, 0.0);
    let mut labels: Vec<f32> = layout
        .companions
        .iter()
        .chain(&layout.branches)
        .map(|beside| beside.label_y)
        .collect();
    labels.sort_by(f32::total_cmp);
    assert!(
        labels.windows(2).all(|pair| pair[1] - pair[0] >= 39.0),
        "{labels:?}"
    );
    assert_eq!(
        layout.companions[2].y, layout.rungs[1].y,
        "without a demand it stands at its rung"
    );
    assert!(layout.branches[0].y < layout.rungs[1].y && layout.branches[0].y > layout.rungs[2].y);
}

#[test]
fn a_belief_fades_to_nothing_at_2_6_deviations() {
    let rows: Vec<(f64, f32)> = belief_rows().collect();
    assert_eq!(rows.len(), 17);
    assert!(rows[0].1.abs() < 1e-6 && rows[16].1.abs() < 1e-6);
    // The bell's height at its middle, less its end value: 0.44 − 0.44·exp(−3.38).
    assert!((f64::from(rows[8].1) - (0.44 - 0.44 * (-3.38f64).exp())).abs() < 1e-6);
}

#[test]
fn a_hand_on_the_ground_of_a_strip_is_seen_whole() {
    let view = LadderView {
        hands: vec![crate::ui::views::HandView {
            rail: Rail::Left,
            at: Spot::Ground,
            steps_up: false,
        }],
        ..ladder(&[0.5, 0.7, 1.0])
    };
    let area = area(500.0);
    let layout = Layout::of(&view, area, Width::Strip, 0.0);
    // The disc has a radius of 14.
    assert!(layout.hand(Rail::Left, Spot::Ground).y + 14.0 <= area.bottom());
    assert!(layout.rungs.iter().all(|rung| area.contains_rect(rung.rect)));
}
