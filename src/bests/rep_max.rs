//! Published formulas for the one-rep max from a load and the repetitions that it allows, on system load.
//!
//! Johnson et al. 2009 define a pull-up's one-rep max by adding to or counterweighting the body: system load. A single is
//! returned as it is: it needs no estimate, and only two of the formulas return it by themselves.

use crate::logbook::Settings;
use crate::units::{Mass, SystemLoad, rep_max};

/// A published formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Formula {
    /// [`rep_max::epley`].
    #[default]
    Epley,
    /// [`rep_max::brzycki`].
    Brzycki,
    /// [`rep_max::lander`].
    Lander,
    /// [`rep_max::lombardi`].
    Lombardi,
    /// [`rep_max::mayhew`].
    Mayhew,
    /// [`rep_max::oconner`].
    OConner,
    /// [`rep_max::wathan`].
    Wathan,
}

impl Formula {
    /// Every formula.
    pub const ALL: [Formula; 7] = [
        Formula::Epley,
        Formula::Brzycki,
        Formula::Lander,
        Formula::Lombardi,
        Formula::Mayhew,
        Formula::OConner,
        Formula::Wathan,
    ];

    /// The name that options and settings use.
    pub fn id(self) -> &'static str {
        match self {
            Formula::Epley => "epley",
            Formula::Brzycki => "brzycki",
            Formula::Lander => "lander",
            Formula::Lombardi => "lombardi",
            Formula::Mayhew => "mayhew",
            Formula::OConner => "oconner",
            Formula::Wathan => "wathan",
        }
    }

    /// The formula that a logbook's settings choose.
    pub fn chosen(settings: &Settings) -> Formula {
        let id = settings.formula.as_deref();
        id.and_then(|id| id.parse().ok()).unwrap_or_default()
    }

    /// The one-rep max of a load that allows `reps` repetitions to failure, 1 to 12.
    pub fn one_rep_max(self, load: SystemLoad, reps: f64) -> SystemLoad {
        if reps <= 1.0 {
            return load;
        }
        let over_load = match self {
            Formula::Epley => rep_max::epley,
            Formula::Brzycki => rep_max::brzycki,
            Formula::Lander => rep_max::lander,
            Formula::Lombardi => rep_max::lombardi,
            Formula::Mayhew => rep_max::mayhew,
            Formula::OConner => rep_max::oconner,
            Formula::Wathan => rep_max::wathan,
        };
        load.times(over_load(reps))
    }
}

impl Formula {
    /// The load that this one-rep max allows for `reps` repetitions: the formula backwards.
    pub fn load_for(self, max: SystemLoad, reps: f64) -> SystemLoad {
        let one = SystemLoad::new(Mass::from_kg(1.0));
        max.times(1.0 / self.one_rep_max(one, reps).kg())
    }
}

impl std::str::FromStr for Formula {
    type Err = String;
    fn from_str(text: &str) -> Result<Self, String> {
        Formula::ALL
            .into_iter()
            .find(|formula| formula.id() == text)
            .ok_or_else(|| format!("choose one of {}", Formula::ALL.map(Formula::id).join(", ")))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::logbook::settings;
    use crate::units::{Added, Bodyweight, Share};

    fn max(formula: Formula, kg: f64, reps: f64) -> f64 {
        formula.one_rep_max(SystemLoad::new(Mass::from_kg(kg)), reps).kg()
    }

    #[test]
    fn each_formula_gives_its_published_value_for_a_hundred_kilos() {
        // Plain arithmetic from the published coefficients, four decimals, 100 kg to failure.
        let formulas = Formula::ALL;
        #[rustfmt::skip]
        let table = [
            (2.0, [106.6667, 102.8571, 104.2128, 107.1773, 111.4387, 105.0, 105.1457]),
            (3.0, [110.0000, 105.8824, 107.1969, 111.6123, 113.9903, 107.5, 108.9797]),
            (4.0, [113.3333, 109.0909, 110.3569, 114.8698, 116.5154, 110.0, 112.7955]),
            (5.0, [116.6667, 112.5000, 113.7089, 117.4619, 119.0107, 112.5, 116.5825]),
            (6.0, [120.0000, 116.1290, 117.2709, 119.6231, 121.4729, 115.0, 120.3306]),
            (7.0, [123.3333, 120.0000, 121.0633, 121.4814, 123.8990, 117.5, 124.0300]),
            (8.0, [126.6667, 124.1379, 125.1092, 123.1144, 126.2863, 120.0, 127.6714]),
            (9.0, [130.0000, 128.5714, 129.4349, 124.5731, 128.6322, 122.5, 131.2463]),
            (10.0, [133.3333, 133.3333, 134.0704, 125.8925, 130.9343, 125.0, 134.7467]),
            (12.0, [140.0000, 144.0000, 144.4143, 128.2089, 135.3985, 130.0, 141.4959]),
        ];
        for (reps, values) in table {
            for (formula, value) in formulas.into_iter().zip(values) {
                let found = max(formula, 100.0, reps);
                assert!((found - value).abs() < 5e-5, "{formula:?} at {reps}: {found}");
            }
        }
    }

    #[test]
    fn a_one_rep_max_is_of_the_system_load_and_the_belt_is_what_is_left_of_it() {
        // Johnson et al. 2009: the pull-up's one-rep max is found by adding to or counterweighting the body. Plain arithmetic;
        // body, belt, repetitions, then the belt at the maximum by Epley, Brzycki and Wathan.
        #[rustfmt::skip]
        let table = [
            (80.0, 20.0, 5.0, [36.6667, 32.5, 36.5825]),
            (75.0, 40.0, 3.0, [51.5, 46.7647, 50.3267]),
            (70.0, 0.0, 12.0, [28.0, 30.8, 29.0471]),
            (70.0, -15.0, 6.0, [-4.0, -6.1290, -3.8182]),
        ];
        for (body, belt, reps, values) in table {
            let body = Bodyweight::new(Mass::from_kg(body));
            let load = SystemLoad::of(Share::WHOLE, body, Added::new(Mass::from_kg(belt)));
            let formulas = [Formula::Epley, Formula::Brzycki, Formula::Wathan];
            for (formula, value) in formulas.into_iter().zip(values) {
                let found = formula
                    .one_rep_max(load, reps)
                    .added_from(Share::WHOLE, body)
                    .kg();
                assert!((found - value).abs() < 5e-5, "{formula:?} at {reps}: {found}");
            }
        }
    }

    #[test]
    fn a_formula_backwards_gives_the_load_again() {
        for formula in Formula::ALL {
            let max = formula.one_rep_max(SystemLoad::new(Mass::from_kg(90.0)), 7.0);
            assert!((formula.load_for(max, 7.0).kg() - 90.0).abs() < 1e-9);
            assert_eq!(formula.load_for(max, 1.0), max);
        }
    }

    #[test]
    fn the_belt_for_fewer_or_more_repetitions_follows_from_the_maximum() {
        // Plain arithmetic: 80 kg of body and a maximum of 116.6667 kg; the belt for 3 and for 8 by Epley and Brzycki.
        let (body, max) = (80.0, SystemLoad::new(Mass::from_kg(350.0 / 3.0)));
        for (reps, epley, brzycki) in [(3.0, 26.0606, 30.1852), (8.0, 12.1053, 13.9815)] {
            for (formula, belt) in [(Formula::Epley, epley), (Formula::Brzycki, brzycki)] {
                let found = formula.load_for(max, reps).kg() - body;
                assert!((found - belt).abs() < 5e-5, "{formula:?} at {reps}: {found}");
            }
        }
    }

    #[test]
    fn settings_may_choose_each_formula_and_no_other() {
        assert_eq!(Formula::ALL.map(Formula::id), settings::FORMULAS);
        let mut settings = Settings::fresh(crate::units::Unit::Kg);
        assert_eq!(Formula::chosen(&settings), Formula::Epley);
        settings.formula = Some("wathan".to_owned());
        assert_eq!(Formula::chosen(&settings), Formula::Wathan);
    }

    #[test]
    fn a_single_is_returned_as_it_is() {
        for formula in Formula::ALL {
            assert_eq!(max(formula, 100.0, 1.0), 100.0);
        }
    }

    #[test]
    fn epley_and_brzycki_meet_at_ten_repetitions() {
        // Both give 4/3 of the load there.
        assert!((max(Formula::Epley, 90.0, 10.0) - max(Formula::Brzycki, 90.0, 10.0)).abs() < 1e-9);
    }
}
