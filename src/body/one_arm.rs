//! The one-arm scale E: the one-arm one-rep max, as a part of bodyweight, that a rung asks or shows. 1.00 is one strict one-arm
//! pull-up.

use super::band::Band;
use super::hold::Endurance;
use super::quantity::Angle;
use super::segments::Segments;

/// What one arm gains over half of two: 1 ÷ (1 − 0.0644), from the bilateral index of elbow flexion −6.44 ± 5.58 %,
/// Pelayo-Tejo 2024, Appl Sci 14:7808 (20 men; few women anywhere).
const ONE_ARM_GAIN: Band = Band::new(1.069, 1.000, 1.136);
/// From elbow flexion to a pull-up: an assumption without source.
const TRANSFER: Band = Band::new(1.00, 0.92, 1.08);
/// What one hand can hold, of bodyweight, in a short hang: an assumption without source.
const HANG: Band = Band::new(1.10, 1.00, 1.30);
/// How much of that the fingers give while the other arm pulls: an assumption without source.
const USE: Band = Band::new(0.60, 0.45, 0.80);
/// Fingers never take more than half: then both hands would do the same.
const MOST_HELP: f64 = 0.5;
/// Part of a counterweight that arrives over a pulley: 5 % lost, 0 to 10; an assumption without source.
const PULLEY: Band = Band::new(0.95, 0.90, 1.00);
/// How well a band's pull at the sticking point is known, each side: 25 %. Makers' tables run high; an assumption in size.
const BAND_ERROR: f64 = 0.25;
/// Strength on the way down over the way up at 3 s: +32 % lat pull-down, Hollander 2007, JSCR 21:34 (n = 10); up to +46 % (2004,
/// n = 9); not under the isometric ratio.
const DOWN_OVER_UP: Band = Band::new(1.32, 1.15, 1.46);
/// More of it per degree a second: +0.20 %, Nuzzo 2023, Sports Med 53:1125.
const PER_SPEED: f64 = 0.002;
/// Elbow range of a negative, degrees: full bend to straight; an assumption without source.
const RANGE: f64 = 120.0;
/// Speed that [`DOWN_OVER_UP`] belongs to, degrees a second: the range in 3 s.
const ITS_SPEED: f64 = 40.0;
/// Strength held over strength moved up: from memory, 1.00–1.30.
const HELD_OVER_UP: Band = Band::new(1.15, 1.00, 1.30);
/// How well the endurance curves fit a pull with both joints: an assumption without source, read back from printed bands.
const ENDURANCE_FIT: Band = Band::new(1.0, 0.93, 1.07);
/// Angle at which the straight arm of an archer rises from the bar: an assumption; 10° to 30° changes its share by 0.01.
const ARCHER_RISE: Angle = Angle::from_degrees(20.0);
/// Shoulder beside the working hand at the top of an archer, or so far inside, fraction of height: an assumption without source.
const ARCHER_DRIFT: f64 = 0.086;

/// One arm over half of two, with the transfer to pull-ups: 1.069 (0.961–1.179).
pub fn gain() -> Band {
    Band::product(&[ONE_ARM_GAIN, TRANSFER])
}

/// Both hands with `ratio` = system load ÷ bodyweight, one repetition.
pub fn two_hands(ratio: f64) -> Band {
    gain().times(ratio / 2.0)
}

/// Part of the grip that so many fingers carry when the others are left out; 3 are index to ring. MacDermid 2004, J Hand Ther
/// 17:364: 25, 35, 25, 14 % of the squeeze; leaving fingers out costs more than their share, so the centres lie between.
fn grip_of(fingers: u8) -> Option<Band> {
    match fingers {
        1 => Some(Band::new(0.32, 0.20, 0.45)),
        2 => Some(Band::new(0.53, 0.46, 0.61)),
        3 => Some(Band::new(0.76, 0.67, 0.86)),
        _ => None,
    }
}

/// The factors of [`finger_help`] for the sentence that explains it: use, grip, hang.
pub fn finger_factors(fingers: u8) -> Option<[f64; 3]> {
    Some([USE.centre(), grip_of(fingers)?.centre(), HANG.centre()])
}

/// Part of bodyweight that 1 to 3 fingers of the other hand can take, at most half. Only one finger is a limit; with more the
/// athlete chooses.
pub fn finger_help(fingers: u8) -> Option<Band> {
    Some(Band::product(&[USE, grip_of(fingers)?, HANG]).capped(MOST_HELP))
}

/// With 1 to 3 fingers helping.
pub fn with_fingers(fingers: u8) -> Option<Band> {
    finger_help(fingers).map(Band::rest_of_one)
}

/// Part of a counterweight that reaches the athlete.
pub fn pulley_efficiency() -> f64 {
    PULLEY.centre()
}

/// With a counterweight of `part` of bodyweight over a pulley.
pub fn with_pulley(part: f64) -> Band {
    PULLEY.times(part).rest_of_one()
}

/// With a band that takes `part` of bodyweight at the sticking point, as measured; it is slack at the top.
pub fn with_band(part: f64) -> Band {
    Band::new(part, part * (1.0 - BAND_ERROR), part * (1.0 + BAND_ERROR)).rest_of_one()
}

/// Strength on the way down over the way up for a negative of so many seconds.
pub fn down_over_up(seconds: f64) -> f64 {
    DOWN_OVER_UP.centre() * (PER_SPEED * (RANGE / seconds - ITS_SPEED)).exp()
}

/// Part of one's strength that can be kept up for so many seconds, shoulder and elbow together.
pub fn kept_up(seconds: f64) -> f64 {
    (Endurance::SHOULDER.intensity(seconds) * Endurance::ELBOW.intensity(seconds)).sqrt()
}

/// An even one-arm negative of so many seconds.
pub fn negative(seconds: f64) -> Band {
    let at_its_speed = Band::product(&[DOWN_OVER_UP, ENDURANCE_FIT]);
    at_its_speed
        .times(down_over_up(seconds) / DOWN_OVER_UP.centre() * kept_up(seconds))
        .inverse()
}

/// A one-arm lock-off of so many seconds, chin over the bar.
pub fn lock_off(seconds: f64) -> Band {
    Band::product(&[HELD_OVER_UP, ENDURANCE_FIT])
        .times(kept_up(seconds))
        .inverse()
}

/// Strength held over strength moved up.
pub fn held_over_up() -> f64 {
    HELD_OVER_UP.centre()
}

/// Part of the weight that the straight arm of an archer carries: exact statics of two level hands. `drift`: the working
/// shoulder so far inside its hand, fraction of height; `rise`: the straight arm's angle over the level.
fn archer_share(segments: &Segments, drift: f64, rise: Angle) -> f64 {
    let width = segments.shoulder_width;
    let arms = segments.arms_mass();
    let centre = segments.arms_centre(segments.arm_to_grip());
    let reach = segments.arm_to_grip() * rise.cos();
    let between_hands = drift + width + reach;
    let from_working_hand = (1.0 - arms) * (drift + width / 2.0)
        + arms / 2.0 * drift * (1.0 - centre)
        + arms / 2.0 * (drift + width + centre * reach);
    from_working_hand / between_hands
}

/// The working arm's pull, of bodyweight, when the straight arm is a passive strap that carries `share`.
fn strap_pull(share: f64, rise: Angle) -> f64 {
    let sideways = share * rise.cos() / rise.sin();
    (1.0 - share).hypot(sideways)
}

/// An archer pull-up: the working arm's part at the top; up to what a passive strap would make it pull.
pub fn archer(segments: &Segments) -> Band {
    let share = archer_share(segments, 0.0, ARCHER_RISE);
    Band::new(
        1.0 - share,
        1.0 - archer_share(segments, ARCHER_DRIFT, ARCHER_RISE),
        strap_pull(share, ARCHER_RISE),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn is(band: Band, centre: f64, low: f64, high: f64) {
        assert!(
            (band.centre() - centre).abs() <= 0.00051,
            "{band:?} is not {centre}"
        );
        assert!(
            (band.low() - low).abs() <= 0.0051,
            "{band:?} does not begin at {low}"
        );
        assert!(
            (band.high() - high).abs() <= 0.0051,
            "{band:?} does not end at {high}"
        );
    }

    // All values below: an independent computation from the same sources.

    #[test]
    fn weighted_pull_ups_stand_on_the_one_arm_scale() {
        is(two_hands(1.00), 0.534, 0.48, 0.59);
        is(two_hands(1.25), 0.668, 0.60, 0.74);
        is(two_hands(1.50), 0.802, 0.72, 0.88);
        is(two_hands(1.75), 0.935, 0.84, 1.03);
        is(two_hands(2.00), 1.069, 0.96, 1.18);
        is(gain(), 1.069, 0.961, 1.179);
    }

    #[test]
    fn fingers_pulley_and_band_leave_what_the_table_says() {
        is(with_fingers(3).unwrap(), 0.500, 0.50, 0.64);
        is(with_fingers(2).unwrap(), 0.650, 0.50, 0.75);
        is(with_fingers(1).unwrap(), 0.789, 0.66, 0.88);
        assert_eq!(with_fingers(4), None);
        is(with_pulley(0.30), 0.715, 0.70, 0.73);
        is(with_pulley(0.20), 0.810, 0.80, 0.82);
        is(with_pulley(0.10), 0.905, 0.90, 0.91);
        is(with_band(0.20), 0.800, 0.75, 0.85);
    }

    #[test]
    fn slow_negatives_and_lock_offs_ask_more() {
        is(negative(3.0), 0.758, 0.67, 0.89);
        is(negative(5.0), 0.829, 0.73, 0.97);
        is(negative(10.0), 0.959, 0.85, 1.12);
        is(negative(15.0), 1.066, 0.94, 1.25);
        is(lock_off(3.0), 0.870, 0.76, 1.02);
        is(lock_off(5.0), 0.922, 0.80, 1.08);
        is(lock_off(10.0), 1.041, 0.90, 1.22);
        assert!((negative(20.0).centre() - 1.16).abs() < 0.005);
    }

    #[test]
    fn an_archer_carries_most_on_the_working_arm() {
        let archer = archer(&Segments::MALE);
        assert!((archer.centre() - 0.787).abs() < 0.0006);
        // Two independent computations print .69–.98 and .68–.97 for the same thing: the ends are rounded from different reaches.
        assert!((archer.low() - 0.685).abs() < 0.006 && (archer.high() - 0.98).abs() < 0.006);
        for (rise, pull) in [(20.0, 0.98), (10.0, 1.42)] {
            let rise = Angle::from_degrees(rise);
            let share = archer_share(&Segments::MALE, 0.0, rise);
            assert!((0.205..0.215).contains(&share), "{share} is not .21");
            assert!((strap_pull(share, rise) - pull).abs() < 0.006);
        }
    }

    #[test]
    fn a_symmetric_archer_shares_by_half() {
        for segments in [Segments::MALE, Segments::FEMALE, Segments::WINTER] {
            let drift = segments.arm_to_grip() * ARCHER_RISE.cos();
            assert!((archer_share(&segments, drift, ARCHER_RISE) - 0.5).abs() < 1e-12);
        }
    }
}
