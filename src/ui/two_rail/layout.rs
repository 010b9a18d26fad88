//! Where everything of a ladder lies: pure geometry in points, from a view and an area. It paints nothing.

use egui::{Pos2, Rect, pos2, vec2};

use crate::ui::views::{LadderView, Spot};
use crate::units::Rail;

use super::heights::{Heights, ONE_LINE, TWO_LINES, narrow, spread, spread_high};

/// Width of a rail.
pub const RAIL: f32 = 12.0;
/// Height of a rung.
pub const RUNG: f32 = 13.0;
/// The first rung stands so far above the ground.
pub const FIRST_OVER_GROUND: f32 = 22.0;
/// Rails go on so far above the last rung.
pub const RAILS_OVER_LAST: f32 = 30.0;
/// A hand on the ground reaches so far below it.
const HAND_UNDER_GROUND: f32 = 16.0;
/// Labels of companions stand at least so far apart.
const COMPANIONS_APART: f32 = 40.0;
/// Names of companions and branches end so far left of the rail's middle.
const NAMES_OFF: f32 = 72.0;

/// Labels are so wide at most.
const LABELS: f32 = 760.0;

/// How much room a ladder has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Width {
    /// Rail centres 244 apart, companions at the left, labels at the right.
    Full,
    /// 148 apart, with labels.
    Narrow,
    /// 130 apart, labels at the right, of companions only their hooks.
    Workshop,
    /// 148 apart, no labels beside: names lie on the rungs.
    Strip,
}

impl Width {
    /// Distance of the rails' centres.
    pub fn between_rails(self) -> f32 {
        match self {
            Width::Full => 244.0,
            Width::Narrow | Width::Strip => 148.0,
            Width::Workshop => 130.0,
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
        // Elsewhere there is room below for a hand that stands on the ground.
        let on_ground = view.hands.iter().any(|hand| hand.at == Spot::Ground);
        let under_ground = if width == Width::Strip && on_ground {
            HAND_UNDER_GROUND
        } else {
            0.0
        };
        let space = area.height() - FIRST_OVER_GROUND - over_last - under_ground;
        let heights = Heights::of(&demands, space);
        let scroll_max = if heights.scrolls {
            (heights.total() - space).max(0.0)
        } else {
            0.0
        };
        let ground = area.bottom() - under_ground + scroll.clamp(0.0, scroll_max);
        let first = ground - FIRST_OVER_GROUND;
        // The other two have no room for it.
        let has_room = matches!(width, Width::Full | Width::Narrow);
        let overview = (heights.scrolls && has_room).then_some(());
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

    /// Where labels end: at the area's edge, on a very wide screen near enough for an eye to keep the line.
    pub fn right(&self) -> f32 {
        self.area.right().min(self.rails[1] + LABELS)
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
        let mut all = wanted.into_iter().map(|y| Beside { y, label_y: y });
        self.companions = all.by_ref().take(view.companions.len()).collect();
        self.branches = all.collect();
        self.part_names(&[]);
    }

    /// Parts the labels of companions and branches (in this order) by their heights; the usual one where none is given.
    pub fn part_names(&mut self, high: &[f32]) {
        let area = self.top.max(self.area.top()) + 18.0..=self.ground - 16.0;
        let all: Vec<&mut Beside> = self.companions.iter_mut().chain(&mut self.branches).collect();
        let wanted: Vec<f32> = all.iter().map(|beside| beside.y).collect();
        let high: Vec<f32> = (0..all.len())
            .map(|nth| high.get(nth).copied().unwrap_or(COMPANIONS_APART))
            .collect();
        for (beside, label_y) in all.into_iter().zip(spread_high(&wanted, &high, area)) {
            beside.label_y = label_y;
        }
    }

    /// Where names of companions and branches stand; none where they can't be read.
    pub fn names(&self) -> Option<std::ops::RangeInclusive<f32>> {
        let (left, right) = (self.area.left() + 2.0, self.rails[0] - NAMES_OFF);
        (right - left >= 60.0).then_some(left..=right)
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
    match width {
        Width::Strip => width.between_rails().min(area.width() - 56.0),
        Width::Workshop if area.width() < 380.0 => 100.0,
        _ => width.between_rails(),
    }
}

/// Middle of the left rail: room for companions where there are some.
fn left_rail(view: &LadderView, area: Rect, width: Width, overview: bool) -> f32 {
    let beside = !view.companions.is_empty() || !view.branches.is_empty();
    let room = match width {
        Width::Strip => return area.center().x - between(width, area) / 2.0,
        Width::Full if overview => 300.0,
        Width::Full if beside => 296.0,
        Width::Full => 110.0,
        Width::Narrow if overview => 150.0,
        Width::Narrow if beside && area.width() < 570.0 => 92.0,
        Width::Narrow if beside && area.width() > 680.0 => 232.0,
        Width::Narrow if beside => 192.0,

        Width::Workshop if beside => 62.0,
        Width::Workshop => 34.0,
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
mod tests;
