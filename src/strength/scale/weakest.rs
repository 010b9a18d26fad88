//! What holds a rail back: the link that lies clearly below the others.

use crate::strength::Coverage;

use super::reach::together;
use super::{Link, LinkKind, Reach};

/// The link that lies clearly below the others: the upper end of its 80 % band under the lower end of theirs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weakest {
    /// Which.
    pub kind: LinkKind,
    /// What it says.
    pub own: Reach,
    /// What the others say together.
    pub others: Reach,
}

impl LinkKind {
    /// The id of the movement that trains it beside the main line; none for those that the main line itself trains.
    pub fn companion(self) -> Option<&'static str> {
        match self {
            LinkKind::Hang => Some("one-arm-hang"),
            LinkKind::LockOff => Some("one-arm-lock-off"),
            // Strong on both arms and weak on one: what is missing is the one-arm pull through its whole way.
            LinkKind::Negative | LinkKind::OneArm | LinkKind::Fingers | LinkKind::Band => {
                Some("one-arm-negative")
            }
            LinkKind::TwoArms | LinkKind::Movement | LinkKind::Shapes => None,
        }
    }
}

pub(super) fn weakest(links: &[Link]) -> Option<Weakest> {
    links
        .iter()
        .filter(|link| !link.at_least && link.kind.companion().is_some())
        .filter_map(|link| {
            let rest = links.iter().filter(|other| other.kind != link.kind);
            let others = together(rest)?;
            let (_, high) = link.reach.band(Coverage::Eighty);
            let (low, _) = others.band(Coverage::Eighty);
            (high < low).then_some(Weakest {
                kind: link.kind,
                own: link.reach,
                others,
            })
        })
        .min_by(|a, b| gap(a).total_cmp(&gap(b)))
}

/// The middle of the link over that of the others.
fn gap(weakest: &Weakest) -> f64 {
    weakest.own.centre() / weakest.others.centre()
}
