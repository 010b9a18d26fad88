//! Movements: ids, shares that a body can have, words and sources.

use super::{Findings, Spot};
use crate::catalogue::{BodyShare, Movement};

/// Highest box that hands or feet are put on, cm. Common practice, no source.
pub(super) const HIGHEST_BOX_CM: u16 = 200;

/// The mistakes of a file of movements; those that could not be read are `None`.
pub(in crate::catalogue) fn movements(all: &[Option<Movement>]) -> Findings {
    let mut found = Findings::default();
    let root = Spot::root();
    let read = || {
        all.iter()
            .enumerate()
            .filter_map(|(at, one)| Some((at, one.as_ref()?)))
    };
    for (at, movement) in read() {
        one(&mut found, &root.item(at), movement);
    }
    found.unless_distinct(
        read().map(|(at, movement)| (root.item(at).field("id"), movement.id.as_str())),
        "movement",
    );
    found
}

fn one(found: &mut Findings, spot: &Spot, movement: &Movement) {
    found.unless_kebab(spot.field("id"), &movement.id, "movement");
    found.unless_written(spot.field("title"), &movement.title, "title");
    found.unless_written(spot.field("standard"), &movement.standard, "standard");
    found.unless_sourced(spot.field("sources"), &movement.sources, "movement");
    share(found, spot.field("share"), movement.share);
    if movement.joints.is_empty() {
        found.warning(
            spot.field("joints"),
            "the movement loads no joint, so no pain will ever hold it back",
            "list the joints that it loads, for example joints: [Elbow, Shoulder]",
        );
    }
    if movement.direct.is_empty() && movement.indirect.is_empty() {
        found.warning(
            spot.field("direct"),
            "the movement trains no muscle group, so its sets count for no week",
            "list what it trains, for example direct: [Lats]",
        );
    }
    if let Some(both) = movement
        .direct
        .iter()
        .find(|muscle| movement.indirect.contains(muscle))
    {
        found.warning(
            spot.field("indirect"),
            format!("{both:?} is trained directly and indirectly"),
            format!("take {both:?} out of one of the two lists"),
        );
    }
}

fn share(found: &mut Findings, spot: Spot, share: BodyShare) {
    match share {
        BodyShare::Fraction(part) if !(part > 0.0 && part <= 1.0) => {
            let write = (part > 1.0 && part <= 100.0).then(|| format!("Fraction({})", part / 100.0));
            let mend = match &write {
                Some(right) => format!("write the fraction, not per cent: {right}"),
                None => "give a fraction over 0 and at most 1; Outside where nothing of the body is moved"
                    .to_owned(),
            };
            let what = format!("a share of {part} of the body is impossible");
            found.slip(spot, what, mend, write);
        }
        BodyShare::PushUp {
            hands_cm, feet_cm, ..
        } => {
            let highest = f64::from(HIGHEST_BOX_CM);
            if let Some(height) = [hands_cm, feet_cm]
                .into_iter()
                .find(|height| !(0.0..=highest).contains(height))
            {
                found.error(
                    spot,
                    format!("hands or feet can't be {height} cm over the ground"),
                    format!("give centimetres from 0 to {HIGHEST_BOX_CM}"),
                );
            }
        }
        _ => {}
    }
}
