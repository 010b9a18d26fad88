//! Why: the first reasons of a card, each with its rule on hover and focus.

use egui::{Align2, Rect, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, Pen};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::Reason;
use crate::ui::widgets::{self, key_cap};

use super::{Look, plain, strong};

/// The first reasons, with bullets; chances beneath.
pub(super) fn reasons(pen: &mut Pen<'_>, look: &Look<'_>, actions: &mut Actions) {
    let theme = Theme::of(pen.ui);
    // Across the whole width, or in a narrow window, the key stands beside the first reason to save a line.
    let spread = pen.width() > 520.0 || !look.wide;
    pen.gap(if spread { 7.0 } else { 10.0 });
    if !spread {
        pen.rule(*theme.line);
        pen.gap(6.0);
    }
    let top = pen.y;
    why_line(pen, look, spread, actions);
    if spread {
        pen.y = top;
    }
    let right = pen.right;
    let shown = shown_reasons(look);
    let estimates = look.card.reasons.iter().enumerate().skip(shown);
    // What an estimate adds comes last; where room is short the first such reason still shows.
    let estimated = estimates.filter(|(_, reason)| !reason.from.is_empty()).take(1);
    for (nth, reason) in look.card.reasons.iter().enumerate().take(shown).chain(estimated) {
        let bullet = pos2(pen.left + 3.0, pen.y + 10.0);
        pen.right = if spread && nth == 0 { right - 30.0 } else { right };
        let rect = pen.write_at(14.0, Line::phrase(&reason.words, plain(&theme), strong(&theme)));
        pen.right = right;
        if !pen.measuring {
            pen.ui
                .painter()
                .rect_filled(Rect::from_center_size(bullet, vec2(5.5, 5.5)), 0.0, *theme.steel);
            explain(pen.ui, rect, reason, (look.nth, "reason", nth));
        }
        pen.gap(4.0);
    }
    if !look.card.chances.is_empty() {
        pen.gap(4.0);
        let line = look.card.chances.iter().fold(
            Line::new("Chance today", plain(&theme)),
            |line, (what, chance)| {
                line.gap(10.0, what, plain(&theme))
                    .gap(4.0, chance, strong(&theme))
            },
        );
        let rect = pen.write(line);
        if !pen.measuring {
            let id = pen.ui.scope_id().with(("chances", look.nth));
            widgets::explained(pen.ui, rect, id, look.card.chances_how.clone());
        }
    }
}

/// How many reasons a card shows; the rest is in the sheet that "why" opens.
fn shown_reasons(look: &Look<'_>) -> usize {
    match (look.wide, look.card.cautions.is_empty()) {
        (true, _) => 3,
        (false, true) => 2,
        (false, false) => 1,
    }
}

/// "Why" with its key; opens every reason in full.
fn why_line(pen: &mut Pen<'_>, look: &Look<'_>, bare: bool, actions: &mut Actions) {
    let theme = Theme::of(pen.ui);
    let Some(rect) = pen.room(24.0) else { return };
    let key = ["W", "V", "X"].get(look.nth).copied();
    let title = format!("Why, {}", look.card.heading);
    let target = Rect::from_min_max(pos2(rect.right() - 44.0, rect.top()), rect.max);
    if !bare {
        let ink = Ink::new(Face::LabelStrong, size::TABLE, *theme.ink2);
        crate::ui::pen::letters(
            pen.ui.painter(),
            rect.left_center(),
            Align2::LEFT_CENTER,
            "Why",
            ink,
        );
    }
    let response = widgets::press(pen.ui, target, &title);
    let cap = key.unwrap_or("…");
    key_cap(
        pen.ui.painter(),
        rect.right_center(),
        Align2::RIGHT_CENTER,
        cap,
        *theme.ink2,
        &theme,
    );
    if response.clicked() {
        actions.ask(
            [Action::Why, Action::WhyOther, Action::WhyNext]
                .get(look.nth)
                .copied()
                .unwrap_or(Action::Why),
        );
    }
}

/// A sentence's rule, in its own words, on hover and focus.
/// `place` tells the sentences of all cards apart: two of a card may come from one rule.
pub(super) fn explain(ui: &mut Ui, rect: Rect, reason: &Reason, place: (usize, &str, usize)) {
    let id = ui.scope_id().with(place);
    let words = [reason.doc.as_str(), &reason.from].join(" ");
    widgets::explained(ui, rect, id, format!("{} · {}", reason.rule, words.trim_end()));
}
