//! Laws that hold for every body and shape, and bodies that cannot be.
use proptest::prelude::*;
use rungwright::body::{Body, Extra, Facts, Length, Lever, Posture, Segments, shape_number};
use rungwright::logbook::record::Sex;
use rungwright::units::{Bodyweight, Height, Mass};

fn lever(segments: &Segments, posture: Posture, metres: f64, kg: f64) -> Lever<'_> {
    Lever::new(segments, posture, Length::from_metres(metres), Mass::from_kg(kg))
}

const POSTURES: [Posture; 8] = [
    Posture::TUCK,
    Posture::FLAT_TUCK,
    Posture::ADVANCED_TUCK,
    Posture::ONE_LEG,
    Posture::ONE_LEG_SQUARE,
    Posture::STRADDLE,
    Posture::HALF_LAY,
    Posture::FULL,
];

fn tables() -> impl Strategy<Value = Segments> {
    prop_oneof![
        Just(Segments::MALE),
        Just(Segments::FEMALE),
        Just(Segments::MIDWAY),
        Just(Segments::WINTER)
    ]
}

fn postures() -> impl Strategy<Value = Posture> {
    prop::sample::select(&POSTURES[..])
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_moment_grows_in_step_with_mass_and_with_height(
        segments in tables(), posture in postures(), metres in 1.2..2.1f64, kg in 35.0..160.0f64, more in 1.01..1.5f64,
    ) {
        let moment = |metres, kg| lever(&segments, posture, metres, kg).shoulder_moment().newton_metres();
        let here = moment(metres, kg);
        prop_assert!((moment(metres, kg * more) / here - more).abs() < 1e-9);
        prop_assert!((moment(metres * more, kg) / here - more).abs() < 1e-9);
    }

    #[test]
    fn the_moment_knows_nothing_of_the_arms_length(
        segments in tables(), posture in postures(), factor in 0.8..1.3f64,
    ) {
        let mut other = segments;
        other.upper_arm.length *= factor;
        other.forearm.length *= factor;
        other.wrist_to_grip *= factor;
        let held = |segments| lever(segments, posture, 1.75, 75.0);
        prop_assert_eq!(held(&segments).shoulder_moment(), held(&other).shoulder_moment());
        if (factor - 1.0).abs() > 0.01 {
            prop_assert_ne!(held(&segments).lean(), held(&other).lean());
        }
    }

    #[test]
    fn the_arms_side_and_the_bodys_side_give_one_moment(
        segments in tables(), posture in postures(), metres in 1.2..2.1f64, kg in 35.0..160.0f64, ankles in 0.0..8.0f64, waist in -20.0..20.0f64,
    ) {
        let extra = Extra { ankles: Mass::from_kg(ankles), waist: Mass::from_kg(waist) };
        let held = lever(&segments, posture, metres, kg).with(extra);
        // The arms' side computed anew: weight over the hands less the arms' own weight at their centre.
        let hands = held.hands().metres();
        let g = 9.80665;
        let arms = segments.arms_mass() * kg * g;
        let anew = (kg + ankles + waist) * g * hands - segments.arms_centre(segments.arm_to_grip()) * hands * arms;
        prop_assert!((held.shoulder_moment().newton_metres() - anew).abs() < 1e-6);
    }

    #[test]
    fn one_leg_out_is_halfway_between_the_flat_tuck_and_full(segments in tables()) {
        let moment = |posture| shape_number(&segments, &posture);
        let halfway = f64::midpoint(moment(Posture::FLAT_TUCK), moment(Posture::FULL));
        prop_assert!((moment(Posture::ONE_LEG) - halfway).abs() < 1e-12);
    }

    #[test]
    fn no_body_is_built_from_what_cannot_be(kg in prop_oneof![Just(0.0), Just(-70.0), Just(f64::NAN), Just(f64::INFINITY), 401.0..1e6f64]) {
        let facts = Facts { mass: Some(Bodyweight::new(Mass::from_kg(kg))), ..Facts::default() };
        prop_assert!(Body::new(facts).is_err());
    }
}

#[test]
fn a_body_of_three_metres_or_of_no_number_cannot_be_built() {
    assert!(Height::from_cm(300.0).is_err());
    assert!(Height::from_cm(f64::NAN).is_err());
    let impossible = Facts {
        height: Height::from_cm(60.0).ok(),
        mass: Some(Bodyweight::new(Mass::from_kg(400.0))),
        ..Facts::default()
    };
    let refused = Body::new(impossible).unwrap_err();
    assert_eq!(refused.to_string(), "body mass index 1111 is outside 6 to 210");
}

#[test]
fn bodies_unlike_the_measured_ones_get_a_caution() {
    let body = |cm, kg, years| {
        let facts = Facts {
            height: Height::from_cm(cm).ok(),
            mass: Some(Bodyweight::new(Mass::from_kg(kg))),
            sex: Some(Sex::Female),
            years,
        };
        Body::new(facts).unwrap().cautions()
    };
    assert!(body(165.0, 60.0, Some(25)).is_empty());
    assert_eq!(
        body(125.0, 26.0, Some(8)).len(),
        3,
        "a child: young, short, light for an adult"
    );
    let heavy = body(170.0, 144.5, None);
    assert_eq!(heavy.len(), 1);
    assert!(
        heavy[0].to_string().contains("body mass index of 50"),
        "{}",
        heavy[0]
    );
}
