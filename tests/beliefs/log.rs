//! What of a log the filter reads.

use rungwright::strength::{
    Attempt, Believed, Filter, Kept, Point, Prior, TrainingDay, Tuning, beliefs, beliefs_at, course,
};
use rungwright::units::{Added, Bodyweight, Effort, Given, Mass, Outcome, Reps, Share, Side};

use crate::support::{Ago, Athlete, Day, Phrase, TODAY, athlete, one_set};

/// Three pull-up sessions a week for eight weeks, +20 kg for five with two in reserve, weighed each time at 80 kg.
fn steady() -> Athlete {
    let days = (1..=24).map(|nth| (2 * nth + 1).days_ago());
    athlete().did_each(
        days,
        3.sets_of(5)
            .with(20.0)
            .leaving(2.0)
            .at_bodyweight(80.0)
            .of("pull-up"),
    )
}

fn on(athlete: &Athlete, day: Day) -> Vec<Believed> {
    athlete.timeline_on(day, beliefs)
}

fn kg(believed: &Believed) -> f64 {
    believed.belief.one_rep_max().kg()
}

#[test]
fn the_log_gives_the_belief_that_its_training_days_give() {
    let athlete = athlete()
        .did(
            9.days_ago(),
            2.sets_of(5).with(25.0).leaving(2.0).at_bodyweight(80.0).of("dip"),
        )
        .did(
            5.days_ago(),
            one_set(0).with(70.0).failed().at_bodyweight(81.0).of("dip"),
        );
    let attempt = |body: f64, added: f64, count: u16, left: Option<f64>, outcome| Attempt {
        side: None,
        bodyweight: Some(Bodyweight::new(Mass::from_kg(body))),
        share: Share::WHOLE,
        added: Added::new(Mass::from_kg(added)),
        effort: Effort::Reps(Reps::try_from(count).unwrap()),
        left: left.map(|left| Given::rir(left).unwrap()),
        outcome,
    };
    let mut filter = Filter::new(Prior::of("dip", Share::WHOLE), Tuning::default());
    filter.learn(&TrainingDay {
        date: 9.days_ago().date(),
        attempts: vec![attempt(80.0, 25.0, 5, Some(2.0), Outcome::Done); 2],
    });
    filter.learn(&TrainingDay {
        date: 5.days_ago().date(),
        attempts: vec![attempt(81.0, 70.0, 0, None, Outcome::Missed)],
    });
    let believed = on(&athlete, TODAY);
    assert_eq!(believed.len(), 1);
    assert_eq!(
        Some(&believed[0].belief),
        filter.belief(None, TODAY.date()).as_ref()
    );
}

#[test]
fn what_hangs_for_the_one_rep_max_is_the_load_in_all_less_the_body() {
    let believed = &on(&steady(), TODAY)[0];
    assert_eq!(believed.movement, "pull-up");
    assert!((believed.added_one_rep_max().unwrap().kg() - (kg(believed) - 80.0)).abs() < 1e-9);
    assert_eq!(believed.belief.sessions(), 24);
    assert!(!believed.is_thin());
}

#[test]
fn todays_sets_count_from_tomorrow() {
    let before = steady();
    let after = before.clone().did(
        TODAY,
        3.sets_of(5)
            .with(40.0)
            .leaving(2.0)
            .at_bodyweight(80.0)
            .of("pull-up"),
    );
    assert_eq!(on(&before, TODAY)[0].belief, on(&after, TODAY)[0].belief);
    let first_day = athlete().did(TODAY, 3.sets_of(5).at_bodyweight(80.0).of("pull-up"));
    assert!(on(&first_day, TODAY).is_empty());
}

#[test]
fn help_that_nobody_measured_and_broken_form_say_nothing_of_a_load() {
    let before = steady();
    let after = before
        .clone()
        .did(
            2.days_ago(),
            3.sets_of(8)
                .at_bodyweight(80.0)
                .on_ladder("first-pull-up", "band"),
        )
        .did(
            2.days_ago(),
            3.sets_of(12)
                .with(20.0)
                .out_of_form()
                .at_bodyweight(80.0)
                .of("pull-up"),
        );
    assert_eq!(on(&before, TODAY)[0].belief, on(&after, TODAY)[0].belief);
}

#[test]
fn measured_help_counts_as_a_lighter_load() {
    let helped = athlete().did(
        3.days_ago(),
        3.sets_of(5)
            .with(-20.0)
            .leaving(1.0)
            .at_bodyweight(80.0)
            .of("pull-up"),
    );
    let bare = athlete().did(
        3.days_ago(),
        3.sets_of(5).leaving(1.0).at_bodyweight(80.0).of("pull-up"),
    );
    assert!(kg(&on(&helped, TODAY)[0]) < kg(&on(&bare, TODAY)[0]) - 5.0);
}

#[test]
fn a_weigh_in_of_the_morning_or_since_the_last_session_stands_for_sets_without_one() {
    let with_sets = athlete().did_each(
        [12.days_ago(), 5.days_ago()],
        3.sets_of(5).leaving(1.0).at_bodyweight(80.0).of("pull-up"),
    );
    let apart = athlete()
        .weighed(14.days_ago(), 80.0)
        .weighed(5.days_ago(), 80.0)
        .did_each(
            [12.days_ago(), 5.days_ago()],
            3.sets_of(5).leaving(1.0).of("pull-up"),
        );
    assert_eq!(on(&with_sets, TODAY)[0].belief, on(&apart, TODAY)[0].belief);
}

#[test]
fn a_weigh_in_typed_in_pounds_lends_its_weight_to_no_set_over_time() {
    // 80 kg is 176.37 lb by the international pound of 1959.
    let slipped = steady()
        .weighed(2.days_ago(), 176.37)
        .did(1.days_ago(), 3.sets_of(5).with(20.0).leaving(2.0).of("pull-up"));
    let shown = slipped.timeline_on(TODAY, |timeline| {
        let all = course(timeline, "pull-up", None, 60.days_ago().date(), &Kept::default());
        all.unwrap().sets
    });
    let (last, before) = (shown.last().unwrap(), shown.first().unwrap());
    assert!(
        (last.shows.kg() / before.shows.kg() - 1.0).abs() < 0.02,
        "{last:?} {before:?}"
    );
}

#[test]
fn sets_before_the_first_weigh_in_count_from_the_day_after_it() {
    let late = athlete()
        .did(20.days_ago(), 3.sets_of(5).leaving(1.0).of("pull-up"))
        .weighed(10.days_ago(), 80.0);
    assert!(on(&late, 10.days_ago()).is_empty());
    assert_eq!(on(&late, 9.days_ago()).len(), 1);
    let never = athlete().did(20.days_ago(), 3.sets_of(5).leaving(1.0).of("pull-up"));
    assert!(on(&never, TODAY).is_empty());
}

#[test]
fn a_barbell_needs_no_weigh_in() {
    let squats = athlete().did(
        4.days_ago(),
        3.sets_of(5).with(100.0).leaving(2.0).of("back-squat"),
    );
    let believed = on(&squats, TODAY);
    assert_eq!(believed.len(), 1);
    // Five with two left is about a seven-rep max: most published tables give 1RM ÷ load of 1.2 there (Brzycki 1993: 1.20).
    assert!((108.0..132.0).contains(&kg(&believed[0])), "{}", kg(&believed[0]));
}

#[test]
fn each_side_has_its_own_number_and_no_side_is_invented() {
    let lunges = athlete()
        .weighing(80.0)
        .weighed(10.days_ago(), 80.0)
        .did(
            8.days_ago(),
            3.sets_of(8).with(10.0).leaving(1.0).left().of("pistol-squat"),
        )
        .did(
            8.days_ago(),
            3.sets_of(5).with(10.0).leaving(1.0).right().of("pistol-squat"),
        );
    let believed = on(&lunges, TODAY);
    let sides: Vec<_> = believed.iter().map(|b| b.side).collect();
    assert_eq!(sides, [Some(Side::Left), Some(Side::Right)]);
    assert!(kg(&believed[0]) > kg(&believed[1]));
}

#[test]
fn a_slip_of_the_finger_is_named_by_its_record_and_moves_little() {
    let slip = steady().did(
        2.days_ago(),
        one_set(55)
            .with(20.0)
            .leaving(2.0)
            .at_bodyweight(80.0)
            .of("pull-up"),
    );
    let (clean, slipped) = (on(&steady(), TODAY), on(&slip, TODAY));
    assert!(clean[0].suspects.is_empty());
    let suspects = &slipped[0].suspects;
    assert_eq!(suspects.len(), 1);
    assert_eq!(suspects[0].date, 2.days_ago().date());
    assert!(suspects[0].probability > 0.9);
    let id = slip.log().records.last().unwrap().id;
    assert_eq!(suspects[0].id, id);
    assert!((kg(&slipped[0]) / kg(&clean[0]) - 1.0).abs() < 0.02);
}

#[test]
fn a_nought_too_many_is_explained_by_the_load_without_it() {
    let athlete = steady().did(
        1.days_ago(),
        one_set(5)
            .with(200.0)
            .leaving(2.0)
            .at_bodyweight(80.0)
            .of("pull-up"),
    );
    let suspects = on(&athlete, TODAY).remove(0).suspects;
    let likely = suspects[0].likely.unwrap();
    assert_eq!(likely.added.kg(), 20.0);
}

#[test]
fn todays_slip_is_named_today() {
    let slip = steady().did(
        TODAY,
        one_set(55)
            .with(20.0)
            .leaving(2.0)
            .at_bodyweight(80.0)
            .of("pull-up"),
    );
    assert_eq!(on(&slip, TODAY)[0].suspects.len(), 1);
}

#[test]
fn a_past_belief_is_what_was_said_on_that_day() {
    let athlete = steady();
    let asked = [20.days_ago(), 40.days_ago(), 9.days_ago()];
    let points: Vec<Point> = asked
        .iter()
        .map(|day| Point {
            movement: "pull-up".to_owned(),
            side: None,
            as_of: day.date(),
            on: day.date(),
        })
        .collect();
    let mut past = vec![None; points.len()];
    athlete.timeline_on(TODAY, |timeline| {
        beliefs_at(timeline, &points, |nth, belief| past[nth] = belief);
    });
    for (day, past) in asked.into_iter().zip(past) {
        assert_eq!(past.as_ref(), Some(&on(&athlete, day)[0].belief));
    }
}
