//! The ladder under the pointer and the keyboard.

use egui::{EventFilter, Painter, Rect, Role, Sense, Ui, WidgetInfo, pos2, vec2};

use crate::ui::theme::{MOVE_SECS, Theme};
use crate::ui::views::{HandView, LadderView, Spot};
use crate::units::Rail;

use super::layout::{Layout, Width};
use super::{belief, beside, grip, overview, paint, spoken};

/// What a person did to the ladder.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct LadderTouch {
    /// A rung or branch was pressed or got the focus.
    pub chosen: Option<Spot>,
    /// The strip's frame was dragged, or the wheel turned: scroll by so many points.
    pub scrolled: f32,
}

/// Parts the names beside the ladder, so that each is read whole.
pub fn part_names(ui: &Ui, view: &LadderView, layout: &mut Layout) {
    let high = beside::name_heights(ui.painter(), view, layout, &Theme::of(ui));
    layout.part_names(&high);
}

/// Draws `view` into `area`, labels up to `right`, and says what was done to it.
pub fn ladder_ui(
    ui: &mut Ui,
    view: &LadderView,
    layout: &Layout,
    width: Width,
    chosen: Option<Spot>,
    still: bool,
) -> LadderTouch {
    let theme = Theme::of(ui);
    // A ladder that scrolls ends where its area ends; one that fits may reach a little over it.
    let over = if layout.scroll_max > 0.0 { 0.0 } else { 14.0 };
    let clip = layout.area.expand2(vec2(20.0, over));
    let painter = ui.painter_at(clip);
    paint::body(&painter, view, layout, width, &theme);
    if width == Width::Strip {
        beside::names_on_rungs(&painter, view, layout, &theme);
    } else {
        beside::companions(&painter, view, layout, chosen, &theme);
        beside::labels(&painter, view, layout, chosen, layout.right(), &theme);
        beside::demand_band(&painter, view, layout, chosen, &theme);
    }
    let mut touch = LadderTouch::default();
    for (nth, rung) in view.rungs.iter().enumerate() {
        let place = &layout.rungs[nth];
        let spot = Spot::Rung(nth);
        let reach = match width {
            Width::Strip => place.rect.expand2(vec2(12.0, 7.0)),
            _ => Rect::from_x_y_ranges(
                layout.rails[0] - 12.0..=layout.right(),
                place.rect.expand(7.0).y_range(),
            ),
        };
        if chosen == Some(spot) {
            paint::selection(&painter, place.rect, &theme);
        }
        if clip.intersects(reach) {
            let words = spoken::rung_words(view, nth, rung);
            press_spot(ui, &painter, spot, reach, &words, chosen, &mut touch);
        }
    }
    if width != Width::Strip {
        beside_ui(ui, &painter, clip, view, layout, chosen, &mut touch);
    }
    for hand in &view.hands {
        hand_ui(ui, &painter, view, layout, hand, still, &theme);
    }
    if let Some(strip) = &layout.overview {
        overview::overview(&painter, view, strip, &theme);
        touch.scrolled += drag_frame(ui, layout, strip);
    }
    if layout.scroll_max > 0.0 && ui.rect_contains_pointer(layout.area) {
        touch.scrolled += ui.input(|input| input.smooth_scroll_delta().y);
    }
    touch
}

/// What stands beside the rungs: branches to press, companions and beliefs to read.
fn beside_ui(
    ui: &mut Ui,
    painter: &Painter,
    clip: Rect,
    view: &LadderView,
    layout: &Layout,
    chosen: Option<Spot>,
    touch: &mut LadderTouch,
) {
    let names = |label_y: f32, before_rail: f32| {
        let right = layout.rails[0] - before_rail;
        Rect::from_x_y_ranges(layout.area.left()..=right, label_y - 17.0..=label_y + 17.0)
    };
    for (nth, branch) in view.branches.iter().enumerate() {
        let names = names(layout.branches[nth].label_y, 14.0);
        let words = spoken::branch_words(view, branch);
        press_spot(ui, painter, Spot::Branch(nth), names, &words, chosen, touch);
    }
    for (nth, companion) in view.companions.iter().enumerate() {
        let names = names(layout.companions[nth].label_y, 60.0);
        let met = if companion.met { "met" } else { "not yet" };
        let words = format!("Companion {}, {}, {met}", companion.title, companion.line);
        say(ui, ("companion", nth), names, &words);
    }
    let tags = belief::tags(painter, view, layout, &Theme::of(ui));
    for (rail, tag) in tags.into_iter().filter(|(_, tag)| clip.contains_rect(*tag)) {
        if let Some(outlook) = view.outlook.iter().find(|outlook| outlook.rail == rail) {
            let id = ui.scope_id().with(("belief", rail));
            crate::ui::widgets::explained(ui, tag, id, outlook.how.clone());
        }
    }
}

fn press_spot(
    ui: &mut Ui,
    painter: &Painter,
    spot: Spot,
    reach: Rect,
    words: &str,
    chosen: Option<Spot>,
    touch: &mut LadderTouch,
) {
    let id = ui.scope_id().with(("spot", spot));
    let response = ui.interact(reach, id, Sense::click());
    let is_chosen = chosen == Some(spot);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, is_chosen, words));
    if response.has_focus() {
        // ↑ and ↓ walk the rungs; they must not walk the focus away.
        let filter = EventFilter {
            vertical_arrows: true,
            horizontal_arrows: true,
            ..EventFilter::default()
        };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
        crate::ui::widgets::focus_ring(painter, reach.shrink2(vec2(2.0, 3.0)), 5.0, &Theme::of(ui));
    }
    if response.clicked() || response.gained_focus() {
        touch.chosen = Some(spot);
    }
}

fn say(ui: &mut Ui, salt: impl std::hash::Hash + std::fmt::Debug, rect: Rect, words: &str) {
    let response = ui.interact(rect, ui.scope_id().with(salt), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, words));
    crate::ui::widgets::hinted(response, words);
}

/// A hand; it moves to a new rung in 220 ms, unless less motion is wanted.
fn hand_ui(
    ui: &mut Ui,
    painter: &Painter,
    view: &LadderView,
    layout: &Layout,
    hand: &HandView,
    still: bool,
    theme: &Theme,
) {
    let target = layout.hand(hand.rail, hand.at);
    let over = layout.ground - target.y;
    let id = ui.scope_id().with(("hand", hand.rail));
    let over = ui
        .ctx()
        .animate_value_with_time(id, over, if still { 0.0 } else { MOVE_SECS });
    let disc = pos2(target.x, layout.ground - over);
    let rails: &[Rail] = if hand.rail == Rail::Both {
        &[Rail::Left, Rail::Right]
    } else {
        &[hand.rail]
    };
    for rail in rails {
        let x = if *rail == Rail::Right {
            layout.rails[1]
        } else {
            target.x
        };
        let scale = grip::scale_between(layout.rails[1] - layout.rails[0]);
        grip_of(
            painter,
            pos2(x, disc.y),
            *rail,
            scale,
            hand.rail == Rail::Both,
            theme,
        );
        if hand.steps_up {
            let way = if *rail == Rail::Right { -1.0 } else { 1.0 };
            grip::chevrons(painter, pos2(x + way * 36.0, disc.y - 26.0), 3, theme);
        }
    }
    let words = spoken::hand_words(view, hand);
    let reach = Rect::from_center_size(disc, vec2(30.0, 30.0));
    let response = ui.interact(reach, id, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &words));
    crate::ui::widgets::hinted(response, words);
}

/// Both hands as one are drawn in steel, each with its own letter.
fn grip_of(painter: &Painter, disc: egui::Pos2, rail: Rail, scale: f32, both: bool, theme: &Theme) {
    if both {
        let mut steel = theme.clone();
        (steel.left, steel.right) = (theme.steel, theme.steel);
        grip::grip(painter, disc, rail, scale, &steel);
    } else {
        grip::grip(painter, disc, rail, scale, theme);
    }
}

/// Dragging the frame scrolls the ladder; one point of the strip is many of the ladder.
fn drag_frame(ui: &mut Ui, layout: &Layout, strip: &super::layout::Overview) -> f32 {
    let response = ui.interact(strip.frame, ui.scope_id().with("overview"), Sense::drag());
    response.widget_info(|| WidgetInfo::labeled(Role::ScrollBar, true, "Part of the ladder that is shown"));
    let small = strip
        .rungs
        .first()
        .zip(strip.rungs.last())
        .map_or(1.0, |(first, last)| first - last);
    let large = layout
        .rungs
        .first()
        .zip(layout.rungs.last())
        .map_or(1.0, |(first, last)| first.y - last.y);
    -response.drag_delta().y * large / small.max(1.0)
}
