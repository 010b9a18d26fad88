//! A colour token: `"#RRGGBB"` in the file, a [`Color32`] on screen.
#![allow(
    clippy::disallowed_methods,
    reason = "the one place where colours are made from numbers"
)]

use std::ops::Deref;

use egui::Color32;
use serde::{Deserialize, Deserializer, de::Error};

/// One opaque colour of a theme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tint(Color32);

impl Tint {
    /// The colour that `#RRGGBB` names.
    pub fn parse(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#').filter(|digits| digits.len() == 6)?;
        let channel = |from: usize| u8::from_str_radix(digits.get(from..from + 2)?, 16).ok();
        Some(Self(Color32::from_rgb(channel(0)?, channel(2)?, channel(4)?)))
    }
}

impl Deref for Tint {
    type Target = Color32;
    fn deref(&self) -> &Color32 {
        &self.0
    }
}

impl From<Tint> for Color32 {
    fn from(tint: Tint) -> Color32 {
        tint.0
    }
}

impl<'de> Deserialize<'de> for Tint {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Tint::parse(&text)
            .ok_or_else(|| D::Error::custom(format!("{text:?} is no colour; write it as \"#1D5C9C\"")))
    }
}

/// `colour` at an opacity of 0 to 1.
pub fn translucent(colour: Color32, opacity: f32) -> Color32 {
    colour.gamma_multiply(opacity)
}

/// The colour a share `t` (0 to 1) of the way from `from` to `to`.
pub fn fade(from: Color32, to: Color32, t: f32) -> Color32 {
    from.lerp_to_gamma(to, t.clamp(0.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_colour_is_six_hex_digits_or_refused() {
        assert_eq!(
            Tint::parse("#1D5C9C").map(|tint| tint.to_array()),
            Some([0x1d, 0x5c, 0x9c, 255])
        );
        for wrong in ["1D5C9C", "#1D5C9", "#1D5C9CFF", "#GGGGGG", "#é00é"] {
            assert_eq!(Tint::parse(wrong), None, "{wrong}");
        }
    }
}
