//! What a new ladder begins with: a whole ladder, sound by itself, that explains its form as it goes.

use crate::catalogue::hyphened;

/// The most letters of an id, for it names the file too.
const LONGEST: usize = 32;

/// The id that a title comes to: lower case, digits and single hyphens; none where the title has no such letter.
pub(super) fn id_of(title: &str) -> Option<String> {
    let joined = hyphened(title);
    let cut: String = joined.chars().take(LONGEST).collect();
    Some(cut.trim_matches('-').to_owned()).filter(|id| !id.is_empty())
}

/// The first of `id`, `id-2`, `id-3` … that isn't taken.
pub(super) fn free_id(id: &str, is_taken: impl Fn(&str) -> bool) -> String {
    let numbered = |nth: u32| {
        let ending = format!("-{nth}");
        let head: String = id.chars().take(LONGEST - ending.len()).collect();
        format!("{}{ending}", head.trim_end_matches('-'))
    };
    std::iter::once(id.to_owned())
        .chain((2..).map(numbered))
        .find(|id| !is_taken(id))
        .unwrap_or_default()
}

/// The text of a new ladder.
pub(super) fn ladder(id: &str, title: &str) -> String {
    let title = ron::to_string(title).unwrap_or_else(|_| format!("\"{id}\""));
    // Written with a field a line, as a person will go on.
    format!(
        r#"// A new ladder: three rungs to change, copy and add to. Mistakes show as you type.
// The head of the shipped "First pull-up" explains every field.
(
    id: "{id}",
    title: {title},
    goal: "Three sets of five pull-ups with a tenth of you on the belt.",
    sides: Together,
    sources: ["common practice, no source"],
    cautions: ["Stop on sharp pain; tendons adapt more slowly than muscle."],
    rungs: [
        (
            id: "row",
            title: "Row under the straps",
            movement: "row",
            work: (sets: 3, range: Reps(8, 12), reserve: 2),
            demand: (0.5, "common practice, no source"),
        ),
        (
            id: "strict",
            title: "Strict pull-up",
            movement: "pull-up",
            help: Added,
            work: (sets: 3, range: Reps(3, 5), reserve: 1),
            standard: (sets: 3, reach: 5, ratio: 1.0),
        ),
        (
            id: "plus-tenth",
            title: "Pull-up, a tenth of you added",
            movement: "pull-up",
            help: Added,
            work: (sets: 3, range: Reps(3, 5), reserve: 1),
            standard: (sets: 3, reach: 5, ratio: 1.1),
            demand: (1.0, "the goal itself"),
            cautions: [Belt],
        ),
    ],
)
"#
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::body::demand;
    use crate::catalogue::{Catalogue, OwnFile};

    #[test]
    fn a_new_ladder_has_nothing_wrong() {
        for title in ["Ring dip", "Tower \"of\" 7 \\ steps", "Привет"] {
            let id = id_of(title).unwrap_or("own-ladder".into());
            let file = OwnFile::new(format!("ladders/{id}.ron"), ladder(&id, title));
            let (catalogue, problems) = Catalogue::shipped().with_own(std::slice::from_ref(&file));
            assert_eq!(problems, [], "{title}");
            assert_eq!(demand::warnings(&catalogue, &file), [], "{title}");
            assert_eq!(
                catalogue.ladder(&id).map(|ladder| ladder.title.as_str()),
                Some(title)
            );
        }
    }

    #[test]
    fn an_id_comes_from_the_title_and_is_never_taken_twice() {
        assert_eq!(id_of("Ring dip, slow!").as_deref(), Some("ring-dip-slow"));
        assert_eq!(id_of("懸垂"), None);
        let taken = ["dip", "dip-2"];
        assert_eq!(free_id("dip", |id| taken.contains(&id)), "dip-3");
        let long = "a".repeat(32);
        assert_eq!(free_id(&long, |id| id == long).len(), 32);
    }
}
