//! What physics finds odd in a ladder's file: a demand that falls on the way up, a stated number outside the computed band.

use super::super::Body;
use super::{RungDemand, demands, falls};
use crate::catalogue::{Catalogue, Help, OwnFile, Rung};
use crate::problem::{Problem, quoted};

/// Warnings about the demands of a ladder's file, for a body of which nothing is known: the widest bands there are. A file that
/// holds no sound ladder gives none; its own mistakes are the catalogue's to tell.
pub fn warnings(catalogue: &Catalogue, file: &OwnFile) -> Vec<Problem> {
    let (Some(ladder), _) = catalogue.read_ladder(&file.path, &file.text) else {
        return Vec::new();
    };
    let demands = demands(&ladder, catalogue, &Body::unknown_body());
    let falling = falls(&ladder, &demands).into_iter().filter_map(|fall| {
        let (below, above) = (ladder.rung(&fall.below)?, ladder.rung(&fall.rung)?);
        if is_told_by_the_file(below, above) {
            return None;
        }
        let what = format!(
            "the demand falls from {:.2} at {} to {:.2} at {}",
            fall.demands[0],
            quoted(&fall.below),
            fall.demands[1],
            quoted(&fall.rung)
        );
        let mend = "put the easier rung first, or state both demands".to_owned();
        Some(Catalogue::warning_at(file, (&fall.rung, "demand"), what, mend))
    });
    let outside = demands.iter().filter(|asked| asked.needs_a_reason());
    let outside = outside.filter_map(|asked| disagreement(file, asked));
    let mut found: Vec<Problem> = falling.chain(outside).collect();
    found.sort();
    found
}

/// Whether the file alone shows a fall between these two: both stated, or both loaded repetitions of one movement.
fn is_told_by_the_file(below: &Rung, above: &Rung) -> bool {
    let loaded = |rung: &Rung| rung.help == Help::Added && !rung.work.range.is_hold();
    match (&below.demand, &above.demand) {
        (Some(_), Some(_)) => true,
        (None, None) => below.movement == above.movement && loaded(below) && loaded(above),
        _ => false,
    }
}

fn disagreement(file: &OwnFile, asked: &RungDemand) -> Option<Problem> {
    let (stated, computed) = (asked.stated.as_ref()?, asked.computed?);
    let what = format!(
        "{} states a demand of {}, outside the computed {:.2} to {:.2}",
        quoted(&asked.rung),
        stated.demand.value(),
        computed.demand.low(),
        computed.demand.high()
    );
    let mend = "mend the number, or say in its source which holds and why (… holds: …)".to_owned();
    Some(Catalogue::warning_at(file, (&asked.rung, "demand"), what, mend))
}

/// As [`warnings`], for every ladder of a list of files.
pub fn warnings_of(catalogue: &Catalogue, files: &[OwnFile]) -> Vec<Problem> {
    let ladders = files.iter().filter(|file| !file.is_movements());
    ladders.flat_map(|file| warnings(catalogue, file)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::Ladder;

    fn file(ladder: &Ladder) -> OwnFile {
        OwnFile::new("ladders/own.ron", Catalogue::shipped().ladder_text(ladder))
    }

    #[test]
    fn shipped_ladders_give_no_warning() {
        for ladder in Catalogue::shipped().ladders() {
            assert_eq!(
                warnings(Catalogue::shipped(), &file(ladder)),
                vec![],
                "{}",
                ladder.id
            );
        }
    }
}
