//! The shipped ladders hold the numbers of common practice (no source), typed here once more in another form, so that a
//! slip in either shows.

use rungwright::catalogue::{Amount, Catalogue, Caution, Class, Entry, Help, Range, Rung, Shape, Way};
use rungwright::units::Reserve;

/// Rungs in order: ladder, rung, movement, help, sets, range, reserve, standard, demand, cautions.
/// The standard is `sets of amount`, `@` a ratio of system load to bodyweight. A branch is `rung < from > to`.
const RUNGS: &str = "
first-pull-up    | hang              | dead-hang        | plain      | 3 of 15-30 s | -   | 3 of 30       | 0.2  |
first-pull-up    | row               | row              | plain      | 3 of 8-12    | 2   | 3 of 12       | 0.45 |
first-pull-up    | band              | pull-up          | band       | 3 of 5-8     | 2   | 3 of 8        | 0.75 | band
first-pull-up    | negative          | pull-up          | negative   | 3 of 3-5     | -   | 3 of 5        | 0.85 | eccentric
first-pull-up    | strict            | pull-up          | load       | 3 of 1-3     | 1   | 3 of 3 @ 1    | 1    |
first-dip        | support           | support          | plain      | 3 of 15-30 s | -   | 3 of 30       | 0.4  |
first-dip        | band              | dip              | band       | 3 of 5-8     | 2   | 3 of 8        | 0.7  | band
first-dip        | negative          | dip              | negative   | 3 of 3-5     | -   | 3 of 5        | 0.85 | shoulder
first-dip        | strict            | dip              | load       | 3 of 1-3     | 1   | 3 of 3 @ 1    | 1    | shoulder
one-arm-pull-up  | two-arm           | pull-up          | load       | 3 of 4-6     | 1   | 3 of 6 @ 1    | 0.64 |
one-arm-pull-up  | fingers-3         | one-arm-pull-up  | fingers 3  | 4 of 2-4     | 1   | 4 of 4        | 0.65 | grip
one-arm-pull-up  | fingers-2         | one-arm-pull-up  | fingers 2  | 4 of 2-4     | 1   | 4 of 4        | 0.73 | grip
one-arm-pull-up  | fingers-1         | one-arm-pull-up  | fingers 1  | 4 of 2-3     | 1   | 4 of 3        | 0.87 | elbow
one-arm-pull-up  | one-arm           | one-arm-pull-up  | load       | 3 of 1-2     | 0   | 3 of 1 @ 1    | 1    | elbow
one-arm-pull-up  | one-arm-plus      | one-arm-pull-up  | load       | 4 of 1-3     | 1   | 3 of 2 @ 1.1  | 1.17 | elbow belt
one-arm-pull-up  | pulley < two-arm > one-arm      | one-arm-pull-up  | load  | 4 of 3-5   | 1 | 3 of 3 @ 0.9 | 0.99 | elbow
one-arm-pull-up  | band < two-arm > fingers-1      | one-arm-pull-up  | band  | 4 of 3-5   | 1 | 4 of 5 | 0.75 | band
one-arm-pull-up  | archer < fingers-2 > one-arm    | archer-pull-up   | plain | 3 of 3-5   | 1 | 3 of 5 | 0.92 | elbow
one-arm-pull-up  | negatives < fingers-1 > one-arm | one-arm-negative | plain | 2 of 3-8 s | - | 2 of 8 | 0.91 | eccentric
one-arm-pull-up  | lock-offs < fingers-1 > one-arm | one-arm-lock-off | plain | 3 of 2-5 s | - | 3 of 5 | 0.92 | elbow
one-arm-chin-up  | two-arm           | chin-up          | load       | 3 of 4-6     | 1   | 3 of 6 @ 1    | 0.64 |
one-arm-chin-up  | fingers-3         | one-arm-chin-up  | fingers 3  | 4 of 2-4     | 1   | 4 of 4        | 0.65 | supinated
one-arm-chin-up  | fingers-2         | one-arm-chin-up  | fingers 2  | 4 of 2-4     | 1   | 4 of 4        | 0.73 | supinated
one-arm-chin-up  | fingers-1         | one-arm-chin-up  | fingers 1  | 4 of 2-3     | 1   | 4 of 3        | 0.87 | supinated
one-arm-chin-up  | one-arm           | one-arm-chin-up  | load       | 3 of 1-2     | 0   | 3 of 1 @ 1    | 1    | supinated
one-arm-chin-up  | pulley < two-arm > one-arm      | one-arm-chin-up  | load  | 4 of 3-5   | 1 | 3 of 3 @ 0.9 | 0.99 | supinated
weighted-pull-up | assisted          | pull-up          | load       | 3 of 5-8     | 2   | 3 of 5 @ 1    | -    |
weighted-pull-up | bodyweight        | pull-up          | load       | 3 of 5-8     | 2   | 3 of 8 @ 1    | -    |
weighted-pull-up | plus-25           | pull-up          | load       | 3 of 4-6     | 1   | 3 of 5 @ 1.25 | -    |
weighted-pull-up | plus-50           | pull-up          | load       | 4 of 3-5     | 1   | 3 of 4 @ 1.5  | -    | belt
weighted-pull-up | plus-75           | pull-up          | load       | 4 of 2-4     | 1   | 3 of 3 @ 1.75 | -    | belt
weighted-pull-up | plus-100          | pull-up          | load       | 4 of 1-3     | 1   | 3 of 1 @ 2    | -    | belt
weighted-dip     | assisted          | dip              | load       | 3 of 5-8     | 2   | 3 of 5 @ 1    | -    |
weighted-dip     | bodyweight        | dip              | load       | 3 of 6-10    | 2   | 3 of 10 @ 1   | -    |
weighted-dip     | plus-25           | dip              | load       | 3 of 5-8     | 1   | 3 of 6 @ 1.25 | -    | shoulder
weighted-dip     | plus-50           | dip              | load       | 4 of 4-6     | 1   | 3 of 5 @ 1.5  | -    | shoulder belt
weighted-dip     | plus-75           | dip              | load       | 4 of 3-5     | 1   | 3 of 4 @ 1.75 | -    | shoulder belt
weighted-dip     | plus-100          | dip              | load       | 4 of 2-4     | 1   | 3 of 3 @ 2    | -    | shoulder belt
weighted-dip     | plus-125          | dip              | load       | 4 of 1-3     | 1   | 3 of 2 @ 2.25 | -    | shoulder belt
one-arm-push-up  | incline           | push-up          | hands 60   | 3 of 8-15    | 2   | 3 of 15       | 0.32 |
one-arm-push-up  | two-arm           | push-up          | plain      | 3 of 8-15    | 2   | 3 of 15       | 0.5  |
one-arm-push-up  | hands-60          | one-arm-push-up  | hands 60   | 3 of 4-8     | 1   | 3 of 8        | 0.64 |
one-arm-push-up  | archer            | archer-push-up   | plain      | 3 of 4-8     | 1   | 3 of 8        | 0.75 |
one-arm-push-up  | hands-30          | one-arm-push-up  | hands 30   | 3 of 3-6     | 1   | 3 of 6        | 0.86 |
one-arm-push-up  | one-arm           | one-arm-push-up  | plain      | 3 of 1-5     | 1   | 3 of 3        | 1    | wrist
handstand        | wall              | wall-handstand   | plain      | 3 of 20-60 s | -   | 3 of 60       | 0.6  | wrist
handstand        | toe-pulls         | handstand        | wall       | 4 of 5-15 s  | -   | 4 of 15       | 0.8  | wrist
handstand        | free              | handstand        | plain      | 4 of 5-30 s  | -   | 3 of 20       | 1    | wrist
handstand-push-up | pike             | pike-push-up     | plain      | 3 of 5-8     | 2   | 3 of 8        | 0.5  |
handstand-push-up | pike-raised      | pike-push-up     | feet 60    | 3 of 5-8     | 1   | 3 of 8        | 0.65 |
handstand-push-up | negative         | handstand-push-up | negative  | 3 of 3-5     | -   | 3 of 5        | 0.8  | eccentric head
handstand-push-up | wall             | handstand-push-up | wall      | 3 of 3-6     | 1   | 3 of 6        | 0.9  | shoulder head wrist
handstand-push-up | free             | handstand-push-up | plain     | 3 of 1-4     | 1   | 3 of 2        | 1    | shoulder head wrist
front-lever      | tuck              | front-lever      | tuck       | 4 of 10-30 s | -   | 4 of 30       | -    | straight-arm
front-lever      | advanced-tuck     | front-lever      | advanced   | 4 of 5-15 s  | -   | 4 of 15       | -    | straight-arm
front-lever      | one-leg           | front-lever      | one leg    | 4 of 4-12 s  | -   | 4 of 12       | -    | straight-arm
front-lever      | straddle          | front-lever      | straddle   | 4 of 3-10 s  | -   | 4 of 10       | -    | straight-arm
front-lever      | full              | front-lever      | plain      | 4 of 2-8 s   | -   | 3 of 5        | -    | straight-arm elbow
back-lever       | tuck              | back-lever       | tuck       | 4 of 10-20 s | -   | 4 of 20       | -    | straight-arm shoulder
back-lever       | advanced-tuck     | back-lever       | advanced   | 4 of 6-15 s  | -   | 4 of 15       | -    | straight-arm shoulder
back-lever       | one-leg           | back-lever       | one leg    | 4 of 4-12 s  | -   | 4 of 12       | -    | straight-arm shoulder
back-lever       | straddle          | back-lever       | straddle   | 4 of 3-10 s  | -   | 4 of 10       | -    | straight-arm shoulder
back-lever       | full              | back-lever       | plain      | 4 of 2-8 s   | -   | 3 of 5        | -    | straight-arm shoulder
planche          | lean              | planche-lean     | plain      | 4 of 15-30 s | -   | 4 of 30       | 0.35 | wrist
planche          | tuck              | planche          | tuck       | 4 of 5-15 s  | -   | 4 of 15       | -    | straight-arm
planche          | advanced-tuck     | planche          | advanced   | 4 of 4-12 s  | -   | 4 of 12       | -    | straight-arm
planche          | one-leg           | planche          | one leg    | 4 of 3-10 s  | -   | 4 of 10       | -    | straight-arm
planche          | straddle          | planche          | straddle   | 4 of 2-8 s   | -   | 4 of 8        | -    | straight-arm
planche          | full              | planche          | plain      | 4 of 1-5 s   | -   | 3 of 3        | -    | straight-arm
muscle-up        | high-pull         | high-pull-up     | plain      | 4 of 3-5     | 1   | 4 of 5        | 0.75 |
muscle-up        | strict            | muscle-up        | load       | 4 of 1-3     | 1   | 3 of 3 @ 1    | 1    | shoulder wrist
muscle-up        | weighted          | muscle-up        | load       | 4 of 1-3     | 1   | 3 of 2 @ 1.1  | 1.07 | shoulder belt
muscle-up        | negative < high-pull > strict | muscle-up      | negative | 4 of 2-4 | - | 4 of 4 | 0.85 | eccentric
muscle-up        | rings < high-pull > strict    | ring-muscle-up | plain    | 4 of 1-3 | 1 | 4 of 3 | 0.95 | shoulder wrist
pistol-squat     | split             | split-squat      | plain      | 3 of 8-12    | 2   | 3 of 12       | 0.5  |
pistol-squat     | box-45            | pistol-squat     | box 45     | 3 of 5-8     | 2   | 3 of 8        | 0.7  | knee
pistol-squat     | box-30            | pistol-squat     | box 30     | 3 of 5-8     | 1   | 3 of 8        | 0.85 | knee
pistol-squat     | pistol            | pistol-squat     | load       | 3 of 3-6     | 1   | 3 of 5 @ 1    | 1    | knee
pistol-squat     | pistol-plus       | pistol-squat     | load       | 3 of 3-6     | 1   | 3 of 5 @ 1.25 | 1.25 | knee
nordic-curl      | half-range        | nordic-curl      | half       | 3 of 4-6     | 2   | 3 of 6        | 0.55 | eccentric
nordic-curl      | negative          | nordic-curl      | negative   | 3 of 3-6     | -   | 3 of 6        | 0.75 | eccentric
nordic-curl      | band              | nordic-curl      | band       | 3 of 3-6     | 1   | 3 of 6        | 0.85 | band
nordic-curl      | full              | nordic-curl      | plain      | 3 of 2-5     | 1   | 3 of 3        | 1    | eccentric
l-sit            | tuck              | l-sit            | tuck       | 4 of 10-20 s | -   | 4 of 20       | 0.45 |
l-sit            | one-leg           | l-sit            | one leg    | 4 of 10-20 s | -   | 4 of 20       | 0.7  |
l-sit            | l-sit             | l-sit            | plain      | 4 of 10-20 s | -   | 4 of 20       | 0.85 |
l-sit            | v-sit             | v-sit            | plain      | 4 of 3-8 s   | -   | 3 of 5        | 1    |
toes-to-bar      | knees             | leg-raise        | tuck       | 3 of 8-12    | 2   | 3 of 12       | 0.4  |
toes-to-bar      | level             | leg-raise        | level      | 3 of 6-10    | 1   | 3 of 10       | 0.7  |
toes-to-bar      | toes              | leg-raise        | plain      | 3 of 4-8     | 1   | 3 of 8        | 1    |
one-arm-hang     | two-arm           | dead-hang        | plain      | 3 of 30-60 s | -   | 3 of 60       | 0.5  |
one-arm-hang     | fingers-2         | one-arm-hang     | fingers 2  | 3 of 10-20 s | -   | 3 of 20       | 0.75 | grip
one-arm-hang     | one-arm           | one-arm-hang     | load       | 3 of 10-20 s | -   | 3 of 20 @ 1   | 0.9  | grip shoulder
one-arm-hang     | one-arm-plus      | one-arm-hang     | load       | 3 of 8-15 s  | -   | 3 of 10 @ 1.15 | 1   | grip shoulder
one-arm-row      | lean-45           | row              | lean 45    | 3 of 8-12    | 2   | 3 of 12       | 0.4  |
one-arm-row      | level             | row              | plain      | 3 of 8-12    | 1   | 3 of 12       | 0.55 |
one-arm-row      | archer            | archer-row       | plain      | 3 of 5-8     | 1   | 3 of 8        | 0.75 |
one-arm-row      | one-arm-45        | one-arm-row      | lean 45    | 3 of 4-8     | 1   | 3 of 8        | 0.8  |
one-arm-row      | one-arm           | one-arm-row      | plain      | 3 of 3-5     | 1   | 3 of 4        | 1    |
";

/// Entries beside the rung below: ladder, rung, movement, at least so much, ratio.
const ENTRIES: &str = "
one-arm-pull-up   | fingers-3 | one-arm-hang     | 10 s |
one-arm-pull-up   | fingers-1 | pull-up          | 5    | 1.25
one-arm-pull-up   | one-arm   | one-arm-negative | 5 s  |
one-arm-pull-up   | pulley    | one-arm-hang     | 10 s |
one-arm-chin-up   | fingers-3 | one-arm-hang     | 10 s |
one-arm-chin-up   | fingers-1 | chin-up          | 5    | 1.25
one-arm-chin-up   | one-arm   | one-arm-lock-off | 3 s  |
one-arm-chin-up   | pulley    | one-arm-hang     | 10 s |
handstand-push-up | negative  | wall-handstand   | 30 s |
handstand-push-up | free      | handstand        | 15 s |
front-lever       | tuck      | pull-up          | 5    |
back-lever        | tuck      | skin-the-cat     | 3    |
muscle-up         | strict    | straight-bar-dip | 5    |
muscle-up         | rings     | ring-dip         | 5    |
";

/// Ladders whose left and right climb apart.
const APART: [&str; 6] = [
    "one-arm-chin-up",
    "one-arm-hang",
    "one-arm-pull-up",
    "one-arm-push-up",
    "one-arm-row",
    "pistol-squat",
];

/// The cells of a table, a line each.
pub fn rows(table: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
    table
        .lines()
        .filter(|line| !line.is_empty())
        .map(|line| line.split('|').map(str::trim).collect())
}

fn help(help: &Help) -> String {
    match help {
        Help::Added => "load".into(),
        Help::Plain => "plain".into(),
        Help::FingerHelp(fingers) => format!("fingers {fingers}"),
        Help::Band => "band".into(),
        Help::Negative => "negative".into(),
        Help::Shape(Shape::Tuck) => "tuck".into(),
        Help::Shape(Shape::AdvancedTuck) => "advanced".into(),
        Help::Shape(Shape::OneLeg) => "one leg".into(),
        Help::Shape(Shape::Straddle) => "straddle".into(),
        Help::Shape(Shape::Level) => "level".into(),
        Help::HandsRaised(cm) => format!("hands {cm}"),
        Help::FeetRaised(cm) => format!("feet {cm}"),
        Help::Box(cm) => format!("box {cm}"),
        Help::Lean(degrees) => format!("lean {degrees}"),
        Help::Wall => "wall".into(),
        Help::HalfRange => "half".into(),
        Help::Variation(words) => words.clone(),
    }
}

/// A rung in the words of the table.
fn told(ladder: &str, rung: &Rung) -> Vec<String> {
    let way = match &rung.way {
        Way::Main => rung.id.clone(),
        Way::Branch { from, to } => format!("{} < {from} > {to}", rung.id),
    };
    let range = match rung.work.range {
        Range::Reps(lo, hi) => format!("{lo}-{hi}"),
        Range::Hold(lo, hi) => format!("{lo}-{hi} s"),
    };
    let ratio = rung
        .standard
        .ratio
        .map_or(String::new(), |ratio| format!(" @ {ratio}"));
    let cautions: Vec<&str> = rung.cautions.iter().copied().map(Caution::id).collect();
    vec![
        ladder.to_owned(),
        way,
        rung.movement.clone(),
        help(&rung.help),
        format!("{} of {range}", rung.work.sets),
        rung.work
            .reserve
            .map_or("-".into(), |reserve| reserve.reps().to_string()),
        format!("{} of {}{ratio}", rung.standard.sets, rung.standard.reach),
        rung.demand
            .as_ref()
            .map_or("-".into(), |given| given.demand.value().to_string()),
        cautions.join(" "),
    ]
}

#[test]
fn every_rung_asks_what_the_table_of_common_practice_says() {
    // Common practice, no source.
    let shipped = Catalogue::shipped();
    for ladder in shipped.ladders() {
        let expected: Vec<Vec<&str>> = rows(RUNGS).filter(|row| row[0] == ladder.id).collect();
        let found: Vec<Vec<String>> = ladder.rungs.iter().map(|rung| told(&ladder.id, rung)).collect();
        assert_eq!(found, expected, "{}", ladder.id);
    }
    let rungs: usize = shipped.ladders().map(|ladder| ladder.rungs.len()).sum();
    assert_eq!((shipped.ladders().count(), rungs), (19, rows(RUNGS).count()));
}

#[test]
fn a_rung_is_entered_by_the_movement_that_prepares_it() {
    // Common practice, no source.
    let entry = |entry: &Entry| {
        let amount = match entry.at_least {
            Amount::Reps(reps) => reps.count().to_string(),
            Amount::Seconds(seconds) => format!("{} s", seconds.value()),
        };
        let ratio = entry.ratio.map_or(String::new(), |ratio| ratio.to_string());
        (entry.movement.clone(), amount, ratio)
    };
    let mut found = Vec::new();
    for ladder in Catalogue::shipped().ladders() {
        for rung in &ladder.rungs {
            for asked in &rung.entry {
                let (movement, amount, ratio) = entry(asked);
                found.push(vec![ladder.id.clone(), rung.id.clone(), movement, amount, ratio]);
            }
        }
    }
    let mut expected: Vec<Vec<&str>> = rows(ENTRIES).collect();
    expected.sort();
    found.sort();
    assert_eq!(found, expected);
}

#[test]
fn what_a_ladder_leaves_unsaid_has_its_usual_value() {
    // Common practice, no source; rest over 2 min for strength: Grgic et al. 2018.
    for ladder in Catalogue::shipped().ladders() {
        for rung in &ladder.rungs {
            let standard = &rung.standard;
            assert_eq!(
                (standard.days, standard.days_apart),
                (2, 2),
                "{} {}",
                ladder.id,
                rung.id
            );
            let gap = if rung.work.range.is_hold() { 2.0 } else { 1.0 };
            assert_eq!(standard.side_gap, gap);
            let class = Catalogue::shipped()
                .movement(&rung.movement)
                .map(|movement| movement.class);
            let rest = match class {
                Some(Class::Compound) => (180, 300),
                Some(Class::Skill) => (120, 240),
                _ => (60, 120),
            };
            assert_eq!(rung.work.rest_secs, rest);
            assert_eq!(rung.work.exposures_a_week, 2);
            assert_eq!(rung.fall_back, None);
        }
    }
}

#[test]
fn left_and_right_climb_apart_where_one_side_works_alone() {
    // Common practice, no source.
    let apart: Vec<&str> = Catalogue::shipped()
        .ladders()
        .filter(|ladder| ladder.is_sided())
        .map(|ladder| ladder.id.as_str())
        .collect();
    assert_eq!(apart, APART);
}

#[test]
fn a_loaded_rung_s_demand_is_its_load_and_repetitions_over_the_goal_s() {
    // Demand = ratio × (30 + repetitions + reserve) over the same of the goal's standard;
    // Epley's factor of 30.
    let work = |rung: &Rung| {
        let reserve = rung.work.reserve.map_or(0.0, Reserve::reps);
        rung.standard.ratio.unwrap() * (30.0 + rung.standard.reach + reserve)
    };
    for (ladder, goal, loaded) in [
        ("one-arm-pull-up", "one-arm", "one-arm-plus"),
        ("one-arm-pull-up", "one-arm", "pulley"),
        ("one-arm-chin-up", "one-arm", "pulley"),
        ("muscle-up", "strict", "weighted"),
        ("pistol-squat", "pistol", "pistol-plus"),
    ] {
        let ladder = Catalogue::shipped().ladder(ladder).unwrap();
        let rung = ladder.rung(loaded).unwrap();
        let computed = work(rung) / work(ladder.rung(goal).unwrap());
        let given = rung.demand.as_ref().unwrap().demand.value();
        assert!((computed - given).abs() <= 0.005, "{}: {computed}", rung.id);
    }
}
