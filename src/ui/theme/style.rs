//! Dresses egui's own widgets (text fields, scroll bars, tooltips) in the theme.

use std::sync::Arc;

use egui::style::{ScrollStyle, WidgetVisuals};
use egui::{Context, CornerRadius, FontFamily, FontId, Id, Margin, Shadow, Stroke, TextStyle, Vec2};
use serde::{Deserialize, Serialize};

use super::{DARK, Face, LIGHT, RADIUS_CHIP, STROKE_NOW, STROKE_OUTLINE, Theme, size};

/// Which theme a person wants.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Choice {
    /// As the system says.
    #[default]
    System,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

impl Choice {
    /// The file of this choice, when the system asks for dark or not.
    fn file(self, system_is_dark: bool) -> &'static str {
        match self {
            Choice::Light => LIGHT,
            Choice::Dark => DARK,
            Choice::System if system_is_dark => DARK,
            Choice::System => LIGHT,
        }
    }
}

pub(super) fn slot() -> Id {
    Id::unique("rungwright-theme")
}

/// Puts the theme that `choice` names in force in `ctx`; every widget drawn afterwards uses it.
pub fn apply(ctx: &Context, choice: Choice) -> Arc<Theme> {
    let system_is_dark = ctx.system_theme() == Some(egui::Theme::Dark);
    // Both files are compiled in and read by a test, so the default never shows.
    let theme = Arc::new(Theme::read(choice.file(system_is_dark)).unwrap_or_default());
    ctx.data_mut(|data| data.insert_temp(slot(), theme.clone()));
    ctx.set_theme(if theme.dark {
        egui::Theme::Dark
    } else {
        egui::Theme::Light
    });
    ctx.all_styles_mut(|style| dress(style, &theme));
    theme
}

fn dress(style: &mut egui::Style, theme: &Theme) {
    style.text_styles = [
        (TextStyle::Small, Face::Text.at(size::NOTE)),
        (TextStyle::Body, Face::Label.at(size::BODY)),
        (TextStyle::Button, Face::LabelStrong.at(size::BODY)),
        (TextStyle::Heading, Face::LabelStrong.at(size::TITLE)),
        (
            TextStyle::Monospace,
            FontId::new(size::TABLE, FontFamily::Monospace),
        ),
    ]
    .into();
    let visuals = &mut style.visuals;
    visuals.dark_mode = theme.dark;
    visuals.override_text_color = None;
    visuals.panel_fill = *theme.bench;
    visuals.window_fill = *theme.raised;
    visuals.window_stroke = Stroke::new(1.0, *theme.edge);
    visuals.window_shadow = Shadow::NONE;
    visuals.popup_shadow = Shadow::NONE;
    visuals.window_corner_radius = CornerRadius::same(6);
    visuals.menu_corner_radius = CornerRadius::same(6);
    visuals.extreme_bg_color = *theme.raised;
    visuals.text_edit_bg_color = Some(*theme.raised);
    visuals.faint_bg_color = *theme.surface;
    visuals.code_bg_color = *theme.surface;
    visuals.hyperlink_color = *theme.ember;
    visuals.error_fg_color = *theme.plum;
    visuals.warn_fg_color = *theme.plum;
    visuals.selection.bg_fill = *theme.ember_wash;
    visuals.selection.stroke = Stroke::new(STROKE_NOW, *theme.ink);
    visuals.disabled_alpha = 0.5;
    let look = |fill: egui::Color32, outline: egui::Color32, width: f32| WidgetVisuals {
        bg_fill: fill,
        weak_bg_fill: fill,
        bg_stroke: Stroke::new(width, outline),
        corner_radius: CornerRadius::from(RADIUS_CHIP),
        fg_stroke: Stroke::new(1.0, *theme.ink),
        expansion: 0.0,
    };
    visuals.widgets.noninteractive = look(*theme.surface, *theme.line, 1.0);
    visuals.widgets.inactive = look(*theme.raised, *theme.edge, 1.0);
    // Rails of sliders and boxes use this fill; on a raised sheet they must show.
    visuals.widgets.inactive.bg_fill = *theme.line;
    visuals.widgets.hovered = look(*theme.raised, *theme.ink2, STROKE_OUTLINE);
    visuals.widgets.active = look(*theme.raised, *theme.ink, STROKE_NOW);
    visuals.widgets.open = look(*theme.raised, *theme.ink2, STROKE_OUTLINE);
    style.spacing.item_spacing = Vec2::new(8.0, 4.0);
    style.spacing.button_padding = Vec2::new(10.0, 5.0);
    style.spacing.interact_size.y = super::TARGET;
    style.spacing.window_margin = Margin::same(16);
    style.spacing.scroll = ScrollStyle {
        bar_width: 8.0,
        ..ScrollStyle::thin()
    };
    style.animation_time = 0.0;
}
