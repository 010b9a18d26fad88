//! Where things lie on the plot: axes with round ticks, lines of the same added load, callouts that don't cover each other.

use egui::{Pos2, Rect, Vec2, pos2, vec2};

use crate::units::{Mass, Unit};

/// Bodyweight across, load upward, kg, on a frame of the screen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Axes {
    /// Where the plot lies.
    pub frame: Rect,
    /// Bodyweight at the left and at the right edge, kg.
    pub across: [f64; 2],
    /// Load at the bottom and at the top, kg.
    pub upward: [f64; 2],
    /// The unit of the ticks.
    pub unit: Unit,
}

/// A line on which the added load is the same.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SameAdded {
    /// The added load, kg.
    pub added_kg: f64,
    /// From the left or the bottom …
    pub from: Pos2,
    /// … to the right or the top.
    pub to: Pos2,
    /// Whether it leaves the frame at the right.
    pub at_right: bool,
}

impl Axes {
    /// Axes that hold all of `points` (bodyweight, load; kg) with some room around.
    pub fn around(points: impl Iterator<Item = (f64, f64)>, frame: Rect, unit: Unit) -> Option<Self> {
        let (mut across, mut upward) = (EMPTY, EMPTY);
        for (x, y) in points {
            grow(&mut across, x);
            grow(&mut upward, y);
        }
        (across[0] <= across[1]).then(|| Self {
            frame,
            across: roomy(across, 4.0),
            upward: roomy(upward, 10.0),
            unit,
        })
    }

    /// The place of a bodyweight and a load, kg.
    pub fn at(&self, bodyweight_kg: f64, load_kg: f64) -> Pos2 {
        pos2(self.x(bodyweight_kg), self.y(load_kg))
    }

    /// The place of a bodyweight, across.
    pub fn x(&self, kg: f64) -> f32 {
        self.frame.left() + self.frame.width() * part(kg, self.across)
    }

    /// The place of a load, upward.
    pub fn y(&self, kg: f64) -> f32 {
        self.frame.bottom() - self.frame.height() * part(kg, self.upward)
    }

    /// The same, wide enough to hold one more bodyweight and loads; what it holds already moves nothing.
    pub fn reaching(mut self, bodyweight_kg: f64, loads_kg: [f64; 2]) -> Self {
        grow(&mut self.across, bodyweight_kg);
        loads_kg.into_iter().for_each(|load| grow(&mut self.upward, load));
        self
    }

    /// Round bodyweights for ticks: in kg, and as the unit says it.
    pub fn ticks_across(&self) -> Vec<(f64, f64)> {
        ticks(self.across, self.unit, self.frame.width() / 60.0)
    }

    /// Round loads for ticks.
    pub fn ticks_upward(&self) -> Vec<(f64, f64)> {
        ticks(self.upward, self.unit, self.frame.height() / 70.0)
    }

    /// Lines of the same added load, `share` of bodyweight being lifted: at most nine, in round steps.
    pub fn same_added(&self, share: f64) -> Vec<SameAdded> {
        let lowest = self.upward[0] - share * self.across[1];
        let highest = self.upward[1] - share * self.across[0];
        ticks([lowest, highest], self.unit, 8.0)
            .into_iter()
            .filter_map(|(added_kg, _)| self.line(added_kg, share))
            .collect()
    }

    fn line(&self, added_kg: f64, share: f64) -> Option<SameAdded> {
        let load = |bodyweight: f64| added_kg + share * bodyweight;
        // Where the line enters and leaves, first by bodyweight, then cut at the bottom and the top.
        let bodyweight = |load_kg: f64| (load_kg - added_kg) / share;
        let (mut from, mut to) = (self.across[0], self.across[1]);
        if share > 0.0 {
            from = from.max(bodyweight(self.upward[0]));
            to = to.min(bodyweight(self.upward[1]));
        } else if !(self.upward[0]..=self.upward[1]).contains(&added_kg) {
            return None;
        }
        let (start, end) = (self.at(from, load(from)), self.at(to, load(to)));
        (to > from && start.distance(end) > 12.0).then_some(SameAdded {
            added_kg,
            from: start,
            to: end,
            at_right: to >= self.across[1],
        })
    }
}

const EMPTY: [f64; 2] = [f64::INFINITY, f64::NEG_INFINITY];

fn grow(ends: &mut [f64; 2], value: f64) {
    if value.is_finite() {
        *ends = [ends[0].min(value), ends[1].max(value)];
    }
}

/// At least so wide in all, and a tenth of room on both sides.
fn roomy([low, high]: [f64; 2], least: f64) -> [f64; 2] {
    let lack = (least - (high - low)).max(0.0) / 2.0;
    let room = 0.1 * (high - low + 2.0 * lack);
    [low - lack - room, high + lack + room]
}

#[allow(clippy::cast_possible_truncation, reason = "a place on the screen")]
fn part(kg: f64, [low, high]: [f64; 2]) -> f32 {
    ((kg - low) / (high - low)) as f32
}

/// Multiples of 1, 2 or 5 times a power of ten within `ends`, about `count` of them: in kg, and in `unit`.
fn ticks(ends: [f64; 2], unit: Unit, count: f32) -> Vec<(f64, f64)> {
    let of = |kg: f64| Mass::from_kg(kg).in_unit(unit);
    let kg_of_one = 1.0 / of(1.0);
    let (low, high) = (of(ends[0]), of(ends[1]));
    let step = round_step((high - low) / f64::from(count.max(2.0)));
    let mut found = Vec::new();
    let mut tick = (low / step).ceil() * step;
    while tick <= high + step * 1e-9 && found.len() < 100 {
        found.push((tick * kg_of_one, tick));
        tick += step;
    }
    found
}

/// The next of 1, 2, 5, 10, 20, 50 … at or above `least`.
fn round_step(least: f64) -> f64 {
    let power = 10f64.powf(least.max(1e-6).log10().floor());
    let steps = [1.0, 2.0, 5.0, 10.0];
    steps
        .into_iter()
        .map(|step| step * power)
        .find(|step| *step >= least * (1.0 - 1e-9))
        .unwrap_or(power * 10.0)
}

/// Boxes of these sizes beside their points, within `area`, covering neither each other nor a box of `taken` nor a point of
/// `keep_free`, as far as there is room.
pub fn callouts(wanted: &[(Pos2, Vec2)], taken: &[Rect], keep_free: &[Pos2], area: Rect) -> Vec<Rect> {
    let mut placed: Vec<Rect> = Vec::new();
    for (point, size) in wanted {
        let cost = |rect: &Rect| -> f32 {
            let others = placed.iter().chain(taken);
            let covered: f32 = others.map(|other| overlap(*rect, *other)).sum();
            let hidden = keep_free
                .iter()
                .filter(|free| rect.expand(9.0).contains(**free))
                .count();
            let outside = rect.width() * rect.height() - overlap(*rect, area);
            covered * 20.0
                + outside * 20.0
                + 400.0 * crate::ui::two_rail::heights::many(hidden)
                + rect.center().distance(*point)
        };
        let best = candidates(*point, *size, area).min_by(|a, b| cost(a).total_cmp(&cost(b)));
        placed.push(best.unwrap_or(Rect::from_center_size(*point, *size)));
    }
    placed
}

/// Places around a point: above first, nearer before farther, pushed into the area.
fn candidates(point: Pos2, size: Vec2, area: Rect) -> impl Iterator<Item = Rect> {
    let ways = [
        (-0.75, -1.0),
        (0.0, -1.0),
        (0.75, -1.0),
        (-1.0, 0.0),
        (1.0, 0.0),
        (-0.75, 1.0),
        (0.75, 1.0),
        (0.0, 1.0),
    ];
    let far = [26.0, 48.0, 76.0, 110.0, 150.0, 200.0];
    far.into_iter().flat_map(move |far| {
        ways.into_iter().map(move |(x, y)| {
            let centre = point + vec2(x * (size.x / 2.0 + far), y * (size.y / 2.0 + far));
            let rect = Rect::from_center_size(centre, size);
            rect.translate(vec2(
                (area.left() - rect.left()).max(0.0) + (area.right() - rect.right()).min(0.0),
                (area.top() - rect.top()).max(0.0) + (area.bottom() - rect.bottom()).min(0.0),
            ))
        })
    })
}

fn overlap(one: Rect, other: Rect) -> f32 {
    let both = one.intersect(other);
    both.width().max(0.0) * both.height().max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn axes(unit: Unit) -> Axes {
        Axes {
            frame: Rect::from_min_max(pos2(0.0, 0.0), pos2(600.0, 500.0)),
            across: [66.0, 86.0],
            upward: [132.0, 182.0],
            unit,
        }
    }

    #[test]
    fn ticks_are_round_in_the_readers_unit() {
        let kg: Vec<f64> = axes(Unit::Kg).ticks_across().iter().map(|tick| tick.1).collect();
        assert_eq!(
            kg,
            [66.0, 68.0, 70.0, 72.0, 74.0, 76.0, 78.0, 80.0, 82.0, 84.0, 86.0]
        );
        let lb: Vec<f64> = axes(Unit::Lb).ticks_upward().iter().map(|tick| tick.1).collect();
        assert_eq!(lb, [300.0, 320.0, 340.0, 360.0, 380.0, 400.0]);
    }

    #[test]
    fn the_same_added_load_climbs_with_bodyweight() {
        let axes = axes(Unit::Kg);
        let lines = axes.same_added(1.0);
        let ninety = lines.iter().find(|line| line.added_kg == 90.0).unwrap();
        // 90 kg on the belt at 66 kg are 156 kg in all, at 86 kg 176.
        assert!(ninety.from.distance(axes.at(66.0, 156.0)) < 0.01);
        assert!(ninety.to.distance(axes.at(86.0, 176.0)) < 0.01 && ninety.at_right);
        // 110 kg leaves at the top: 182 kg in all at 72 kg.
        let heavy = lines.iter().find(|line| line.added_kg == 110.0).unwrap();
        assert!(heavy.to.distance(axes.at(72.0, 182.0)) < 0.01 && !heavy.at_right);
        // A squat's bar is the same at every bodyweight.
        assert!(axes.same_added(0.0).iter().all(|line| line.from.y == line.to.y));
    }

    #[test]
    fn one_point_has_axes_around_it_and_none_has_none() {
        let frame = Rect::from_min_max(pos2(0.0, 0.0), pos2(100.0, 100.0));
        let one = Axes::around([(80.0, 120.0)].into_iter(), frame, Unit::Kg).unwrap();
        assert!(one.at(80.0, 120.0).distance(frame.center()) < 0.01);
        let wider = one.reaching(90.0, [100.0, 130.0]);
        assert!((wider.x(90.0) - 100.0).abs() < 0.01 && wider.y(100.0) <= 100.01);
        assert_eq!(
            wider.reaching(88.0, [110.0, 120.0]),
            wider,
            "nothing moves within"
        );
        assert_eq!(Axes::around(std::iter::empty(), frame, Unit::Kg), None);
    }

    #[test]
    fn callouts_cover_neither_each_other_nor_the_bests() {
        let area = Rect::from_min_max(pos2(0.0, 0.0), pos2(700.0, 500.0));
        let points = [
            pos2(300.0, 200.0),
            pos2(310.0, 205.0),
            pos2(690.0, 10.0),
            pos2(305.0, 190.0),
        ];
        let wanted: Vec<(Pos2, Vec2)> = points.iter().map(|point| (*point, vec2(130.0, 40.0))).collect();
        let placed = callouts(&wanted, &[], &points, area);
        for (nth, one) in placed.iter().enumerate() {
            assert!(area.contains_rect(*one), "{one:?}");
            assert!(points.iter().all(|point| !one.contains(*point)), "{one:?}");
            assert!(
                placed.iter().skip(nth + 1).all(|other| !one.intersects(*other)),
                "{one:?}"
            );
        }
        // One more box, read for a point among them, covers none of those that stand.
        let read = callouts(
            &[(pos2(305.0, 200.0), vec2(300.0, 40.0))],
            &placed,
            &[pos2(305.0, 200.0)],
            area,
        );
        assert!(placed.iter().all(|other| !read[0].intersects(*other)), "{read:?}");
    }
}
