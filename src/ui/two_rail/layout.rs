//! Where everything of a ladder lies: pure geometry in points, from a view and an area. It paints nothing.

use egui::{Pos2, Rect, pos2, vec2};

use crate::ui::views::{LadderView, Spot};
use crate::units::Rail;

use super::heights::{Heights, ONE_LINE, TWO_LINES, narrow, spread};

/// Width of a rail.
pub const RAIL: f32 = 12.0;
/// Height of a rung.
pub const RUNG: f32 = 13.0;
/// The first rung stands so far above the ground.
pub const FIRST_OVER_GROUND: f32 = 22.0;
/// Rails go on so far above the last rung.
pub const RAILS_OVER_LAST: f32 = 30.0;
/// Labels of companions stand at least so far apart.
const COMPANIONS_APART: f32 = 40.0;

/// How much room a ladder has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Width {
    /// Rail centres 244 apart, companions at the left, labels at the right.
    Full,
    /// 148 apart, with labels.
    Narrow,
    /// 148 apart, no labels beside: names lie on the rungs.
    Strip,
}

impl Width {
    /// Distance of the rails' centres.
    pub fn between_rails(self) -> f32 {
        match self {
            Width::Full => 244.0,
            Width::Narrow | Width::Strip => 148.0,
        }
    }
}

/// Where a rung lies.
#[derive(Debug, Clone, PartialEq)]
pub struct RungPlace {
    /// Its middle.
    pub y: f32,
    /// From rail to rail.
    pub rect: Rect,
    /// Left and right half; twice the whole where both hands work as one.
    pub halves: [Rect; 2],
    /// Where its label's middle stands.
    pub label_y: f32,
    /// Whether the gap above is drawn wider than its demand.
    pub stretched_above: bool,
}

/// Where something beside the line lies: a companion or a branch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Beside {
    /// Its own height.
    pub y: f32,
    /// Where its label's middle stands.
    pub label_y: f32,
}

/// The whole ladder, small, with a frame around what is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Overview {
    /// Where it lies.
    pub rect: Rect,
    /// The height of each rung in it.
    pub rungs: Vec<f32>,
    /// What is shown.
    pub frame: Rect,
}

/// Where everything lies.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// What is seen of it.
    pub area: Rect,
    /// Middle of the left and of the right rail.
    pub rails: [f32; 2],
    /// The ground's height.
    pub ground: f32,
    /// Where the rails end.
    pub top: f32,
    /// Rungs of the main line, from the ground up.
    pub rungs: Vec<RungPlace>,
    /// Companions, in the view's order.
    pub companions: Vec<Beside>,
    /// Branches, in the view's order.
    pub branches: Vec<Beside>,
    /// Labels have one line.
    pub one_line: bool,
    /// Present where the ladder scrolls.
    pub overview: Option<Overview>,
    /// The farthest it can be scrolled up from the ground.
    pub scroll_max: f32,
    heights: Heights,
    demands: Vec<Option<f64>>,
    first: f32,
}

impl Layout {
    /// Lays `view` out in `area`, scrolled up from the ground by `scroll` points.
    pub fn of(view: &LadderView, area: Rect, width: Width, scroll: f32) -> Self {
        let demands: Vec<Option<f64>> = view.rungs.iter().map(|rung| rung.demand).collect();
        let over_last = if width == Width::Strip {
            RAILS_OVER_LAST + 16.0
        } else {
            RAILS_OVER_LAST
        };
        let space = area.height() - FIRST_OVER_GROUND - over_last;
        let heights = Heights::of(&demands, space);
        let scroll_max = if heights.scrolls {
            (heights.total() - space).max(0.0)
        } else {
            0.0
        };
        let ground = area.bottom() + scroll.clamp(0.0, scroll_max);
        let first = ground - FIRST_OVER_GROUND;
        let overview = (heights.scrolls && width != Width::Strip).then_some(());
        let left = left_rail(view, area, width, overview.is_some());
        let rails = [left, left + between(width, area)];
        let rungs = places(view, &heights, rails, first);
        let mut layout = Self {
            area,
            rails,
            ground,
            top: first - heights.total() - over_last,
            rungs,
            companions: Vec::new(),
            branches: Vec::new(),
            one_line: heights.one_line,
            overview: None,
            scroll_max,
            heights,
            demands,
            first,
        };
        layout.place_labels();
        layout.place_beside(view);
        layout.overview = overview.map(|()| layout.small(area));
        layout
    }

    /// Height of something with `demand`; none where demand isn't known.
    pub fn y_of(&self, demand: f64) -> Option<f32> {
        self.heights
            .of_demand(&self.demands, demand)
            .map(|over| self.first - over)
    }

    /// Points for a unit of demand.
    pub fn scale(&self) -> Option<f64> {
        self.heights.scale
    }

    /// The line that parts left from right.
    pub fn middle(&self) -> f32 {
        (self.rails[0] + self.rails[1]) / 2.0
    }

    /// The space between the rails that belongs to `rail`.
    pub fn half(&self, rail: Rail) -> std::ops::RangeInclusive<f32> {
        let (left, right) = (self.rails[0] + RAIL / 2.0, self.rails[1] - RAIL / 2.0);
        match rail {
            Rail::Both => left..=right,
            Rail::Left => left..=self.middle() - 1.0,
            Rail::Right => self.middle() + 1.0..=right,
        }
    }

    /// Where the disc of a hand sits that is on `spot`.
    pub fn hand(&self, rail: Rail, spot: Spot) -> Pos2 {
        let y = match spot {
            Spot::Ground => self.ground - 2.0,
            Spot::Rung(nth) => self.rungs.get(nth).map_or(self.ground, |rung| rung.y),
            Spot::Branch(nth) => self.branches.get(nth).map_or(self.ground, |branch| branch.y),
        };
        let x = match (rail, spot) {
            (_, Spot::Branch(_)) => self.rails[0] - 48.0,
            (Rail::Right, _) => self.rails[1],
            (Rail::Left | Rail::Both, _) => self.rails[0],
        };
        pos2(x, y)
    }

    /// The scroll that brings the heights of these spots to the middle.
    pub fn scroll_to(&self, spots: impl Iterator<Item = Spot>) -> f32 {
        let over: Vec<f32> = spots
            .map(|spot| self.first - self.hand(Rail::Left, spot).y)
            .collect();
        let (low, high) = over.iter().fold((f32::MAX, f32::MIN), |(low, high), at| {
            (low.min(*at), high.max(*at))
        });
        if over.is_empty() {
            return 0.0;
        }
        ((low + high) / 2.0 + FIRST_OVER_GROUND - self.area.height() / 2.0).clamp(0.0, self.scroll_max)
    }

    fn place_labels(&mut self) {
        let least = if self.one_line { ONE_LINE } else { TWO_LINES };
        let wanted: Vec<f32> = self.rungs.iter().map(|rung| rung.y).collect();
        let area = (self.top + 4.0).min(self.area.top() + 12.0)..=self.ground;
        for (rung, label_y) in self.rungs.iter_mut().zip(spread(&wanted, least, area)) {
            rung.label_y = label_y;
        }
    }

    fn place_beside(&mut self, view: &LadderView) {
        let rung_y = |nth: usize| self.rungs.get(nth).map_or(self.first, |rung| rung.y);
        let own = |demand: Option<f64>| demand.and_then(|demand| self.y_of(demand));
        let mut wanted: Vec<f32> = view
            .companions
            .iter()
            .map(|beside| own(beside.demand).unwrap_or_else(|| rung_y(beside.beside)))
            .collect();
        wanted.extend(view.branches.iter().map(|branch| {
            let (low, high) = (rung_y(branch.to), rung_y(branch.from));
            own(branch.demand)
                .unwrap_or((low + high) / 2.0)
                .clamp(low.min(high), high.max(low))
        }));
        let area = self.top.max(self.area.top()) + 18.0..=self.ground - 16.0;
        let labels = spread(&wanted, COMPANIONS_APART, area);
        let mut all = wanted
            .into_iter()
            .zip(labels)
            .map(|(y, label_y)| Beside { y, label_y });
        self.companions = all.by_ref().take(view.companions.len()).collect();
        self.branches = all.collect();
    }

    fn small(&self, area: Rect) -> Overview {
        let rect = Rect::from_min_size(
            area.left_top() + vec2(46.0, 34.0),
            vec2(56.0, area.height() - 60.0),
        );
        let total = self.heights.total().max(1.0);
        let small = |over: f32| rect.bottom() - 12.0 - (rect.height() - 24.0) * (over / total);
        let rungs = self.heights.over_first.iter().map(|over| small(*over)).collect();
        let shown = |y: f32| small((self.first - y).clamp(-FIRST_OVER_GROUND, total + FIRST_OVER_GROUND));
        let frame = Rect::from_min_max(
            pos2(rect.left() - 12.0, shown(area.top())),
            pos2(rect.right() + 12.0, shown(area.bottom())),
        );
        Overview { rect, rungs, frame }
    }
}

/// Distance of the rails' centres in this area: a strip in a narrow window draws them closer.
fn between(width: Width, area: Rect) -> f32 {
    if width == Width::Strip {
        width.between_rails().min(area.width() - 56.0)
    } else {
        width.between_rails()
    }
}

/// Middle of the left rail: room for companions where there are some.
fn left_rail(view: &LadderView, area: Rect, width: Width, overview: bool) -> f32 {
    let beside = !view.companions.is_empty() || !view.branches.is_empty();
    let room = match width {
        Width::Strip => return area.center().x - between(width, area) / 2.0,
        Width::Full if overview => 300.0,
        Width::Full if beside => 276.0,
        Width::Full => 110.0,
        Width::Narrow if overview => 150.0,
        Width::Narrow if beside && area.width() < 570.0 => 92.0,
        Width::Narrow if beside && area.width() > 680.0 => 232.0,
        Width::Narrow if beside => 192.0,
        Width::Narrow => 50.0,
    };
    area.left() + room
}

fn places(view: &LadderView, heights: &Heights, rails: [f32; 2], first: f32) -> Vec<RungPlace> {
    let (left, right) = (rails[0] + RAIL / 2.0, rails[1] - RAIL / 2.0);
    let middle = (rails[0] + rails[1]) / 2.0;
    let place = |(nth, rung): (usize, &crate::ui::views::RungView)| {
        let y = (first - heights.over_first[nth]).round();
        let half_height = (if rung.is_goal { RUNG + 4.0 } else { RUNG }) / 2.0;
        let span = |from: f32, to: f32| Rect::from_x_y_ranges(from..=to, y - half_height..=y + half_height);
        let rect = span(left, right);
        let halves = if view.sided {
            [span(left, middle - 2.0), span(middle + 2.0, right)]
        } else {
            [rect, rect]
        };
        let stretched_above = heights.stretched.get(nth).copied().unwrap_or(false);
        RungPlace {
            y,
            rect,
            halves,
            label_y: y,
            stretched_above,
        }
    };
    view.rungs.iter().enumerate().map(place).collect()
}

/// Alpha of the belief's mesh: 17 rows from −2.6 to 2.6 standard deviations, with the end value taken off so that it fades to
/// nothing. Returns how many deviations from the middle, and the alpha there.
pub fn belief_rows() -> impl Iterator<Item = (f64, f32)> {
    const REACH: f64 = 2.6;
    let bell = |z: f64| 0.44 * (-z * z / 2.0).exp();
    (0..17u8).map(move |row| {
        let z = -REACH + 2.0 * REACH * f64::from(row) / 16.0;
        (z, narrow(bell(z) - bell(REACH)))
    })
}

#[cfg(test)]
mod tests {
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
}
