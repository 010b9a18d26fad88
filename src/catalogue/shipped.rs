//! The movements and ladders that the program brings along, compiled in so that the binary runs alone.

/// The movements: file name and text.
pub(super) const MOVEMENTS: (&str, &str) =
    ("movements.ron", include_str!("../../progressions/movements.ron"));

macro_rules! ladders {
    ($($id:literal),* $(,)?) => {
        [$((concat!($id, ".ron"), include_str!(concat!("../../progressions/", $id, ".ron")))),*]
    };
}

/// The ladders: file name and text.
pub(super) const LADDERS: [(&str, &str); 19] = ladders![
    "back-lever",
    "first-dip",
    "first-pull-up",
    "front-lever",
    "handstand",
    "handstand-push-up",
    "l-sit",
    "muscle-up",
    "nordic-curl",
    "one-arm-chin-up",
    "one-arm-hang",
    "one-arm-pull-up",
    "one-arm-push-up",
    "one-arm-row",
    "pistol-squat",
    "planche",
    "toes-to-bar",
    "weighted-dip",
    "weighted-pull-up",
];
