//! The slider under the ladder: what another bodyweight would mean.

use egui::{Rect, Stroke, Ui, pos2, vec2};

use crate::report::numbers::tenths;
use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::theme::{Face, Theme};
use crate::ui::views::LadderWhatIf;
use crate::ui::widgets::Slider;
use crate::units::{KG_PER_LB, Unit};

/// Height of the bar.
pub(super) const HEIGHT: f32 = 76.0;

/// Shows the bar in `rect`.
pub(super) fn what_if_ui(ui: &mut Ui, rect: Rect, view: &LadderWhatIf, actions: &mut Actions) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let wide = rect.width() > 640.0;
    let words_width = if wide {
        (rect.width() * 0.38).min(330.0)
    } else {
        0.0
    };
    let track = Rect::from_min_max(
        rect.min + vec2(24.0, 8.0),
        pos2(rect.right() - 24.0 - words_width, rect.top() + 38.0),
    );
    let kg = view.asked_kg.unwrap_or(view.today_kg);
    let value = tenths(kg, view.unit);
    let today = format!("today {}", tenths(view.today_kg, view.unit));
    let [low, high] = view.ends_kg;
    let slider = Slider {
        title: "What if I weigh",
        ends: [low.min(kg), high.max(kg)],
        value: kg,
        words: &value,
        today: view.asked_kg.map(|_| (view.today_kg, today.as_str())),
        from: view.from_kg,
        how: if wide { "" } else { &view.words },
    };
    if let Some(kg) = slider.show(ui, track) {
        ask(view, kg, actions);
    }
    if wide {
        let ink = Ink::new(Face::Label, 14.0, *theme.ink2);
        let words = Line::new(&view.words, ink).wrapped(ui.painter(), words_width - 24.0);
        let at = pos2(rect.right() - words_width, rect.center().y - words.size().y / 2.0);
        named_galley(ui, at, words);
    }
}

/// The keys of the slider: 0.1 or 1 of the reader's unit.
pub(super) fn perform(action: Action, view: &LadderWhatIf, actions: &mut Actions) {
    let tenths = match action {
        Action::LessBodyweight => -1.0,
        Action::MoreBodyweight => 1.0,
        Action::MuchLessBodyweight => -10.0,
        Action::MuchMoreBodyweight => 10.0,
        _ => return,
    };
    let tenth = tenth(view.unit);
    ask(
        view,
        view.asked_kg.unwrap_or(view.today_kg) + tenths * tenth,
        actions,
    );
}

fn tenth(unit: Unit) -> f64 {
    match unit {
        Unit::Kg => 0.1,
        Unit::Lb => KG_PER_LB / 10.0,
    }
}

/// Asks about a bodyweight on whole tenths; today's is no question.
fn ask(view: &LadderWhatIf, kg: f64, actions: &mut Actions) {
    let tenth = tenth(view.unit);
    let kg = ((kg / tenth).round() * tenth).max(view.from_kg.unwrap_or(20.0));
    let is_today = (kg - view.today_kg).abs() < tenth / 2.0;
    actions.write(Deed::LookAt((!is_today).then_some(kg)));
}
