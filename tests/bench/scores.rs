//! Proper scores of beliefs against simulated truth.

/// Errors of point and band, in % of the truth.
#[derive(Debug, Clone, Default)]
pub struct Errors {
    percent: Vec<f64>,
    crps: Vec<f64>,
    width: Vec<f64>,
    inside: f64,
}

impl Errors {
    /// Adds a belief with 1RM `estimate` and log sd `sd`.
    pub fn add(&mut self, truth: f64, estimate: f64, sd: f64) {
        self.percent.push(100.0 * (estimate / truth - 1.0));
        let z = (truth.ln() - estimate.ln()) / sd;
        self.crps.push(100.0 * crps(z, sd));
        self.width
            .push(100.0 * ((1.28155 * sd).exp() - (-1.28155 * sd).exp()));
        self.inside += f64::from(u8::from(z.abs() <= 1.28155));
    }

    /// Median of the absolute error, %.
    pub fn median_abs(&self) -> f64 {
        median(self.percent.iter().map(|e| e.abs()).collect())
    }

    /// Mean error, %.
    pub fn bias(&self) -> f64 {
        mean(&self.percent)
    }

    /// Mean CRPS on the log scale × 100.
    pub fn crps(&self) -> f64 {
        mean(&self.crps)
    }

    /// Coverage of the 80 % band, %.
    pub fn covered(&self) -> f64 {
        100.0 * self.inside / (self.percent.len().max(1) as f64)
    }

    /// Median width of the 80 % band, %.
    pub fn width(&self) -> f64 {
        median(self.width.clone())
    }
}

/// Scores of stated chances.
#[derive(Debug, Clone, Default)]
pub struct Chances {
    brier: Vec<f64>,
    loss: Vec<f64>,
}

impl Chances {
    /// Adds a stated chance and what happened.
    pub fn add(&mut self, chance: f64, made: bool) {
        let p = chance.clamp(0.001, 0.999);
        let happened = f64::from(u8::from(made));
        self.brier.push((p - happened).powi(2));
        self.loss.push(-(if made { p } else { 1.0 - p }).ln());
    }

    /// Mean Brier score.
    pub fn brier(&self) -> f64 {
        mean(&self.brier)
    }

    /// Mean log loss.
    pub fn log_loss(&self) -> f64 {
        mean(&self.loss)
    }
}

/// CRPS of a normal with sd `sd` whose truth lies `z` sds away (Gneiting & Raftery 2007, eq. 21).
fn crps(z: f64, sd: f64) -> f64 {
    let density = (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt();
    sd * (z * libm::erf(z / 2f64.sqrt()) + 2.0 * density - 1.0 / std::f64::consts::PI.sqrt())
}

/// Mean; 0 of nothing.
pub fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / (values.len().max(1) as f64)
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    let n = values.len();
    if n == 0 {
        f64::NAN
    } else {
        0.5 * (values[(n - 1) / 2] + values[n / 2])
    }
}
