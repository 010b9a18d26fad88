//! The filter's own guard of the bodyweight: a weigh-in that cannot be must not move the strength.

/// The bodyweight trend as the filter follows it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Trend {
    /// The trend, kg.
    pub(super) kg: f64,
    /// Day number on which it moved last.
    moved: i64,
    /// Days in a row whose bodyweight was not believed.
    doubted: u8,
}

/// What a day's bodyweight means for the day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Weighed {
    /// Change of the log trend.
    pub(super) gained: f64,
    /// Variance of the log bodyweight beyond that of a weigh-in.
    pub(super) extra_var: f64,
    /// Whether the day's bodyweight was not believed, so that the trend stands for it.
    pub(super) doubted: bool,
}

impl Weighed {
    /// On the first day there is no trend to doubt it by.
    pub(super) const AT_FIRST: Weighed = Weighed {
        gained: 0.0,
        extra_var: 0.0,
        doubted: false,
    };
}

impl Trend {
    /// The trend after the first weigh-in.
    pub(super) fn start(kg: f64, day: i64) -> Self {
        Self {
            kg,
            moved: day,
            doubted: 0,
        }
    }

    fn age_days(&self, day: i64) -> f64 {
        #[allow(clippy::cast_precision_loss)] // days of a logbook are far below 2^52
        {
            (day - self.moved).max(0) as f64
        }
    }

    /// Takes the day's bodyweight, or none. All limits and rates are assumptions: 5 % at once and 1.2 % a week more are
    /// believed at the first sight, any change when it was seen four times in a row.
    pub(super) fn weigh(&mut self, kg: Option<f64>, day: i64) -> Weighed {
        let age = self.age_days(day);
        let Some(kg) = kg else {
            // Half of a fast cut, for each week that nobody weighed beyond two.
            let stale = 0.004 * (age - 14.0).max(0.0) / 7.0;
            return Weighed {
                gained: 0.0,
                extra_var: stale * stale,
                doubted: false,
            };
        };
        let change = libm::log(kg / self.kg);
        let beyond = change.abs() > (0.05 + 0.012 * age / 7.0).min(0.20);
        if beyond && self.doubted < 3 {
            self.doubted += 1;
            return Weighed {
                gained: 0.0,
                extra_var: 0.01 * 0.01,
                doubted: true,
            };
        }
        let gain = if beyond {
            1.0
        } else {
            1.0 - libm::exp(-age.max(1.0) / 12.0)
        };
        let gained = gain * change;
        self.kg *= libm::exp(gained);
        self.moved = day;
        self.doubted = 0;
        Weighed {
            gained,
            extra_var: 0.0,
            doubted: false,
        }
    }
}
