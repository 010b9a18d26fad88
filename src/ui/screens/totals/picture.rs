//! The plot as a picture file: the window's own pixels, cut to the card, as PNG (ISO/IEC 15948).

use egui::{ColorImage, Context, Rect};

use crate::ui::screens::printing::{Printing, What};
use crate::ui::views::TotalsView;

use super::state::{Export, TotalsState};

/// The part `area` (in points, `scale` pixels each) of a screen as PNG.
///
/// # Errors
/// When nothing of the area lies on the screen, or the encoder refuses.
pub fn png_of(screen: &ColorImage, area: Rect, scale: f32) -> Result<Vec<u8>, String> {
    let [width, height] = screen.size;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "pixels of a screen; below 0 becomes 0"
    )]
    let pixel = |at: f32, most: usize| ((at * scale).round().max(0.0) as usize).min(most);
    let (left, right) = (pixel(area.left(), width), pixel(area.right(), width));
    let (top, bottom) = (pixel(area.top(), height), pixel(area.bottom(), height));
    if right <= left || bottom <= top {
        return Err("the plot is not on the screen".to_owned());
    }
    let rows = screen.pixels.chunks_exact(width.max(1)).take(bottom).skip(top);
    let bytes: Vec<u8> = rows
        .flat_map(|row| row.get(left..right).unwrap_or_default())
        .flat_map(|pixel| pixel.to_array())
        .collect();
    encode(&bytes, right - left, bottom - top).map_err(|error| error.to_string())
}

fn encode(bytes: &[u8], width: usize, height: usize) -> Result<Vec<u8>, png::EncodingError> {
    let side = |pixels: usize| u32::try_from(pixels).unwrap_or(u32::MAX);
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, side(width), side(height));
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header()?;
    writer.write_image_data(bytes)?;
    writer.finish()?;
    Ok(file)
}

impl TotalsState {
    /// Copies the points, or takes a picture of the plot's card and asks where to put it, if that was asked for.
    pub(super) fn leave_program(&mut self, ctx: &Context, view: &TotalsView) {
        match self.export.take() {
            Some(Export::Csv) => {
                if let (Some(lift), Some(csv)) = (&view.open, view.csv()) {
                    ctx.copy_text(csv);
                    self.said = Some(format!("Copied {} sets as CSV.", lift.points.len()));
                }
            }
            Some(Export::Picture) => {
                let (shot, wake) = (self.shot.clone(), ctx.clone());
                ctx.request_screenshot(move |screen| {
                    if let Ok(mut shot) = shot.lock() {
                        *shot = Some(screen);
                    }
                    wake.request_repaint();
                });
            }
            None => {}
        }
        let taken = self.shot.lock().ok().and_then(|mut shot| shot.take());
        let Some(screen) = taken else { return };
        let Some(card) = self.card else { return };
        match png_of(&screen, card, ctx.pixels_per_point()) {
            Ok(bytes) => self.printing = Some(Printing::new(What::Picture(bytes), &view.picture)),
            Err(why) => self.said = Some(format!("No picture: {why}.")),
        }
    }
}
