//! The palette: every action that holds here, found by its name. And the sheet of keys.

use egui::{Align2, Key, Rect, Role, Sense, TextEdit, Ui, WidgetInfo, pos2, vec2};

use super::action::{Action, ActionWords, Actions, Context};
use super::keys::{Chord, is_in_a_place};
use super::pen::{Ink, Line};
use super::screens::sheet::SheetFrame;
use super::theme::{Face, Theme, size};
use super::views::Place;
use super::widgets::{focus_ring, key_cap};

/// What is typed into the palette.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Palette {
    typed: String,
}

/// Actions that hold in `context` and whose title contains every typed word; those of the place first.
pub fn found(context: Context, places: &[Place], typed: &str) -> Vec<&'static ActionWords> {
    let wanted: Vec<String> = typed
        .to_lowercase()
        .split_whitespace()
        .map(str::to_owned)
        .collect();
    let mut found: Vec<&ActionWords> = Action::all()
        .iter()
        .filter(|words| !matches!(words.action, Action::Go(place) if !places.contains(&place)))
        .filter(|words| !matches!(words.action, Action::Amount(_) | Action::Reserve(_)))
        .filter(|words| {
            let title = words.title.to_lowercase();
            (words.context == context || (words.context == Context::Everywhere && is_in_a_place(context)))
                && wanted.iter().all(|word| title.contains(word))
        })
        .collect();
    found.sort_by_key(|words| words.context == Context::Everywhere);
    found
}

/// Shows the palette; true once it should close.
pub fn palette_ui(
    ui: &Ui,
    palette: &mut Palette,
    context: Context,
    places: &[Place],
    actions: &mut Actions,
) -> bool {
    SheetFrame::new("All actions").show(ui, |ui| {
        let field = ui.add(
            TextEdit::singleline(&mut palette.typed)
                .hint_text("type a word")
                .desired_width(f32::INFINITY),
        );
        let field = field.accessible_name("Find an action");
        let entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if !entered && ui.memory(|memory| memory.focused().is_none()) {
            field.request_focus();
        }
        let found = found(context, places, &palette.typed);
        let mut taken = found.first().map(|words| words.action).filter(|_| entered);
        for words in &found {
            if line_ui(ui, words).clicked() {
                taken = Some(words.action);
            }
        }
        if let Some(action) = taken {
            actions.ask(action);
        }
        taken.is_some()
    })
}

/// Shows every key that holds in `context`; true once it should close.
pub fn keys_ui(ui: &Ui, context: Context, places: &[Place]) -> bool {
    SheetFrame::new("Keys").width(560.0).show(ui, |ui| {
        let theme = Theme::of(ui);
        if context == Context::Next {
            ui.colored_label(
                *theme.ink2,
                "0–9 sets the reps, Shift and a digit the reserve. Digits within a second join.",
            );
        }
        for words in found(context, places, "") {
            if !words.keys.is_empty() {
                line_ui(ui, words);
            }
        }
        false
    })
}

/// An action with its key; what it does in its tooltip.
fn line_ui(ui: &mut Ui, words: &ActionWords) -> egui::Response {
    let theme = Theme::of(ui);
    let (id, rect) = ui.allocate_space(vec2(ui.available_width(), 28.0));
    let response = ui.interact(rect, id, Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &words.title));
    let painter = ui.painter();
    if response.hovered() {
        painter.rect_filled(rect, 4.0, *theme.bench);
    }
    let title = Line::new(&words.title, Ink::new(Face::LabelStrong, 15.0, *theme.ink))
        .on_one_line(painter, rect.width() * 0.55);
    let right = rect.left() + 8.0 + title.size().x + 12.0;
    painter.galley(
        pos2(rect.left() + 8.0, rect.center().y - title.size().y / 2.0),
        title,
        *theme.ink,
    );
    let key = words.keys.first().map(Chord::words).unwrap_or_default();
    let mut cap_left = rect.right() - 6.0;
    if !key.is_empty() {
        cap_left = key_cap(
            painter,
            pos2(cap_left, rect.center().y),
            Align2::RIGHT_CENTER,
            &key,
            *theme.ink2,
            &theme,
        )
        .left();
    }
    let quiet = Ink::new(Face::Label, size::SMALL, *theme.ink2);
    let tooltip = Line::new(words.tooltip, quiet).on_one_line(painter, (cap_left - right - 10.0).max(1.0));
    if cap_left - right > 60.0 {
        painter.galley(
            pos2(right, rect.center().y - tooltip.size().y / 2.0 + 1.0),
            tooltip,
            *theme.ink2,
        );
    }
    if response.has_focus() {
        focus_ring(
            painter,
            Rect::from_min_max(rect.min, rect.max).shrink(3.0),
            4.0,
            &theme,
        );
    }
    response
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_action_is_found_by_any_words_of_its_title() {
        let actions = |context, typed| -> Vec<Action> {
            let found = found(context, &[], typed);
            found.into_iter().map(|words| words.action).collect()
        };
        assert_eq!(actions(Context::Next, "clock rest"), [Action::RestClock]);
        assert!(
            actions(Context::Ladders, "rest clock").is_empty(),
            "it holds on Next only"
        );
        assert!(actions(Context::Roster, "").contains(&Action::TurnTheme));
    }
}
