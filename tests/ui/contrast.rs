//! Contrast of the two theme files. Formula: WCAG 2.2, "contrast ratio" and "relative luminance"; text asks 4.5 (1.4.3), shapes
//! that carry meaning 3.0 (1.4.11). Colour blindness is simulated with the matrices of Machado, Oliveira and Fernandes, IEEE
//! TVCG 15(6), 2009, severity 1.0, and measured as ΔE*ab 1976 (CIE 15).

use egui::Color32;
use rungwright::ui::theme::{DARK, LIGHT, Theme};

fn themes() -> [Theme; 2] {
    [LIGHT, DARK].map(|text| Theme::read(text).unwrap())
}

fn linear(colour: Color32) -> [f64; 3] {
    [colour.r(), colour.g(), colour.b()].map(|channel| {
        let share = f64::from(channel) / 255.0;
        if share <= 0.04045 {
            share / 12.92
        } else {
            ((share + 0.055) / 1.055).powf(2.4)
        }
    })
}

fn luminance(colour: Color32) -> f64 {
    let [r, g, b] = linear(colour);
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

fn contrast(a: Color32, b: Color32) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

fn at_least(least: f64, what: &str, a: Color32, b: Color32) {
    let ratio = contrast(a, b);
    assert!(ratio >= least, "{what}: {ratio:.2} is under {least}");
}

#[test]
fn the_formula_gives_21_for_black_on_white() {
    // WCAG 2.2: the ratio of black on white is 21:1; #767676 on white is the lightest grey with 4.5.
    assert!((contrast(Color32::BLACK, Color32::WHITE) - 21.0).abs() < 1e-9);
    assert!(contrast(Color32::from_rgb(0x76, 0x76, 0x76), Color32::WHITE) >= 4.5);
    assert!(contrast(Color32::from_rgb(0x77, 0x77, 0x77), Color32::WHITE) < 4.5);
}

#[test]
fn every_text_colour_is_readable_on_every_ground() {
    for t in themes() {
        for (ground, name) in [(t.bench, "bench"), (t.surface, "surface"), (t.raised, "raised")] {
            let texts = [t.ink, t.ink2, t.ink3, t.steel, t.left, t.right, t.ember, t.plum];
            for (nth, text) in texts.into_iter().enumerate() {
                at_least(
                    4.5,
                    &format!("text {nth} on {name}, dark {}", t.dark),
                    *text,
                    *ground,
                );
            }
            at_least(3.0, &format!("edge on {name}"), *t.edge, *ground);
            for fill in [t.left_fill, t.right_fill] {
                at_least(3.0, &format!("belief on {name}"), *fill, *ground);
            }
        }
    }
}

#[test]
fn text_on_coloured_grounds_is_readable() {
    for t in themes() {
        at_least(4.5, "on ember", *t.on_ember, *t.ember);
        at_least(4.5, "on steel", *t.on_steel, *t.steel);
        at_least(4.5, "chosen", *t.raised, *t.ink);
        for (text, wash) in [
            (t.ember, t.ember_wash),
            (t.plum, t.plum_wash),
            (t.left, t.left_wash),
            (t.right, t.right_wash),
        ] {
            at_least(4.5, "a colour on its wash", *text, *wash);
            at_least(4.5, "ink on a wash", *t.ink, *wash);
        }
        for disc in [t.disc_red, t.disc_blue, t.disc_green, t.disc_iron] {
            at_least(4.5, "number on a disc", *t.on_disc, *disc);
        }
        for disc in [t.disc_yellow, t.disc_white] {
            at_least(4.5, "number on a pale disc", *t.on_pale_disc, *disc);
        }
    }
}

#[test]
fn at_the_bar_everything_stands_out_sevenfold() {
    for t in themes() {
        at_least(7.0, "ink on bench", *t.ink, *t.bench);
        at_least(7.0, "ink2 on bench", *t.ink2, *t.bench);
    }
}

/// Machado 2009, severity 1.0: protanomaly, deuteranomaly, tritanomaly.
const BLINDNESS: [[[f64; 3]; 3]; 3] = [
    [
        [0.152286, 1.052583, -0.204868],
        [0.114503, 0.786281, 0.099216],
        [-0.003882, -0.048116, 1.051998],
    ],
    [
        [0.367322, 0.860646, -0.227968],
        [0.280085, 0.672501, 0.047413],
        [-0.011820, 0.042940, 0.968881],
    ],
    [
        [1.255528, -0.076749, -0.178779],
        [-0.078411, 0.930809, 0.147602],
        [0.004733, 0.691367, 0.303900],
    ],
];

fn lab(rgb: [f64; 3]) -> [f64; 3] {
    // sRGB to XYZ (IEC 61966-2-1), white point D65.
    let m = [
        [0.4124, 0.3576, 0.1805],
        [0.2126, 0.7152, 0.0722],
        [0.0193, 0.1192, 0.9505],
    ];
    let white = [0.9505, 1.0, 1.089];
    let f = |row: usize| {
        let t: f64 = (0..3).map(|column| m[row][column] * rgb[column]).sum::<f64>() / white[row];
        if t > 216.0 / 24389.0 {
            t.cbrt()
        } else {
            (24389.0 / 27.0 * t + 16.0) / 116.0
        }
    };
    let (x, y, z) = (f(0), f(1), f(2));
    [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)]
}

fn seen_by(matrix: &[[f64; 3]; 3], colour: Color32) -> [f64; 3] {
    let rgb = linear(colour);
    lab(std::array::from_fn(|row| {
        (0..3)
            .map(|column| matrix[row][column] * rgb[column])
            .sum::<f64>()
            .clamp(0.0, 1.0)
    }))
}

#[test]
fn left_and_right_stay_apart_for_every_kind_of_colour_blindness() {
    for t in themes() {
        for matrix in &BLINDNESS {
            let (left, right) = (seen_by(matrix, *t.left), seen_by(matrix, *t.right));
            let apart = (0..3).map(|n| (left[n] - right[n]).powi(2)).sum::<f64>().sqrt();
            assert!(
                apart >= 50.0,
                "left and right only {apart:.0} apart, dark {}",
                t.dark
            );
        }
    }
}
