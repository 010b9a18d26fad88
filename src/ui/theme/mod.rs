//! The look: colours by meaning from `assets/theme-*.ron`, faces and sizes of type, spaces and strokes.
//!
//! Invariant: a colour is made here and nowhere else; `.clippy.toml` holds that. A screen asks [`Theme::of`].

mod colour;
mod metrics;
mod scripts;
mod style;
mod type_faces;

use std::sync::Arc;

use egui::Color32;
use serde::Deserialize;

use crate::units::Rail;

pub use colour::{Tint, fade, translucent};
pub use metrics::*;
pub use scripts::{FromRight, stretches};
pub use style::apply;
pub use type_faces::{Face, line_height, set_type};

/// Colours by meaning. One struct for both themes, so that neither can miss a token.
#[derive(Debug, Clone, PartialEq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
#[allow(missing_docs, reason = "a token is named by its meaning")]
pub struct Theme {
    pub dark: bool,
    pub bench: Tint,
    pub surface: Tint,
    pub raised: Tint,
    pub ink: Tint,
    pub ink2: Tint,
    pub ink3: Tint,
    pub edge: Tint,
    pub line: Tint,
    pub steel: Tint,
    pub steel_high: Tint,
    pub steel_low: Tint,
    pub on_steel: Tint,
    pub left: Tint,
    pub left_fill: Tint,
    pub left_wash: Tint,
    pub right: Tint,
    pub right_fill: Tint,
    pub right_wash: Tint,
    pub ember: Tint,
    pub ember_wash: Tint,
    pub on_ember: Tint,
    pub plum: Tint,
    pub plum_wash: Tint,
    pub disc_red: Tint,
    pub disc_blue: Tint,
    pub disc_yellow: Tint,
    pub disc_green: Tint,
    pub disc_white: Tint,
    pub disc_iron: Tint,
    pub sign_ground: Tint,
    pub sign_steel: Tint,
    pub sign_left: Tint,
    pub sign_right: Tint,
    pub on_disc: Tint,
    pub on_pale_disc: Tint,
}

/// The light theme's file, compiled in.
pub const LIGHT: &str = include_str!("../../../assets/theme-light.ron");
/// The dark theme's file, compiled in.
pub const DARK: &str = include_str!("../../../assets/theme-dark.ron");

impl Theme {
    /// A theme from the text of its file.
    ///
    /// # Errors
    /// RON's own, with line and column.
    pub fn read(text: &str) -> Result<Self, ron::error::SpannedError> {
        ron::from_str(text)
    }

    /// The theme in force on `ui`. Made by [`apply`]; read again from the compiled file where a context was never styled.
    pub fn of(ui: &egui::Ui) -> Arc<Theme> {
        Self::of_context(ui.ctx())
    }

    /// The theme in force in `ctx`.
    pub fn of_context(ctx: &egui::Context) -> Arc<Theme> {
        ctx.data(|data| data.get_temp::<Arc<Theme>>(style::slot()))
            .unwrap_or_else(|| apply(ctx, style::Choice::Light))
    }

    /// Text and outline of a rail: the side's colour, steel where both hands work as one.
    pub fn rail(&self, rail: Rail) -> Color32 {
        match rail {
            Rail::Both => *self.steel,
            Rail::Left => *self.left,
            Rail::Right => *self.right,
        }
    }

    /// Fill of a rail's belief band.
    pub fn rail_fill(&self, rail: Rail) -> Color32 {
        match rail {
            Rail::Both => *self.steel,
            Rail::Left => *self.left_fill,
            Rail::Right => *self.right_fill,
        }
    }

    /// Quiet background of a rail.
    pub fn rail_wash(&self, rail: Rail) -> Color32 {
        match rail {
            Rail::Both => *self.bench,
            Rail::Left => *self.left_wash,
            Rail::Right => *self.right_wash,
        }
    }
}

pub use style::Choice;
