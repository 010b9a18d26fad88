//! Spaces, sizes and strokes, in points at 100 % text zoom. The design's own choice unless a source is named.

/// Radius of boxes.
pub const RADIUS_BOX: f32 = 3.0;
/// Radius of chips and buttons.
pub const RADIUS_CHIP: f32 = 5.0;
/// Radius of cards.
pub const RADIUS_CARD: f32 = 6.0;
/// A separating line.
pub const STROKE_LINE: f32 = 1.0;
/// The outline of a control or an open rung.
pub const STROKE_OUTLINE: f32 = 1.5;
/// The focus ring, and what is "now".
pub const STROKE_NOW: f32 = 2.0;
/// The selected rung.
pub const STROKE_SELECTED: f32 = 2.5;
/// Gap between a control and its focus ring.
pub const FOCUS_GAP: f32 = 2.0;
/// Smallest side of anything that can be clicked (WCAG 2.2, success criterion 2.5.8).
pub const TARGET: f32 = 24.0;
/// Below this width of the window the narrow layout holds.
pub const NARROW: f32 = 1100.0;
/// From this width of its own on, Next shows the column beside the cards and the large dock.
pub const NEXT_WIDE: f32 = 1200.0;
/// Below this width of the main area one column is left.
pub const COMPACT: f32 = 760.0;
/// A hand moving to a new rung, seconds.
pub const MOVE_SECS: f32 = 0.22;

/// Sizes of type.
pub mod size {
    /// The smallest text.
    pub const NOTE: f32 = 12.0;
    /// Second lines.
    pub const SMALL: f32 = 13.0;
    /// Tables.
    pub const TABLE: f32 = 14.0;
    /// Running text and labels.
    pub const BODY: f32 = 16.0;
    /// The place's title.
    pub const TITLE: f32 = 24.0;
    /// The prescription.
    pub const PRESCRIPTION: f32 = 46.0;
    /// The rest clock.
    pub const CLOCK: f32 = 54.0;
}
