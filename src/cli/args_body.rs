//! Arguments of the commands about bodies: what a rung asks of one, and strength at another bodyweight. The doc comments are what
//! `--help` prints.

use clap::Args;

use crate::logbook::record::Sex;

use super::args::{Where, number};

/// Arguments of `demand`.
#[derive(Debug, Args)]
pub struct DemandArgs {
    /// The ladder
    #[arg(long, value_name = "LADDER")]
    pub ladder: String,
    /// Whose body; needs a logbook
    #[arg(long, value_name = "NAME")]
    pub athlete: Option<String>,
    /// Standing height, cm; instead of the athlete's
    #[arg(long, value_name = "CM", value_parser = number, allow_negative_numbers = true)]
    pub height_cm: Option<f64>,
    /// Bodyweight, kg; instead of the athlete's
    #[arg(long, value_name = "KG", value_parser = number, allow_negative_numbers = true)]
    pub mass_kg: Option<f64>,
    /// For the tables of body segments: female or male
    #[arg(long, value_name = "SEX", value_parser = sex)]
    pub sex: Option<Sex>,
    /// Where and when.
    #[command(flatten)]
    pub place: Where,
}

/// Arguments of `what-if`.
#[derive(Debug, Args)]
pub struct WhatIfArgs {
    /// Whose strength
    #[arg(long, value_name = "NAME")]
    pub athlete: String,
    /// The movement
    #[arg(long, value_name = "MOVEMENT")]
    pub movement: String,
    /// The bodyweight to look at, like 74kg or 163lb
    #[arg(long, value_name = "MASS", allow_hyphen_values = true)]
    pub bodyweight: String,
    /// Where and when.
    #[command(flatten)]
    pub place: Where,
}

fn sex(text: &str) -> Result<Sex, String> {
    match text {
        "female" => Ok(Sex::Female),
        "male" => Ok(Sex::Male),
        _ => Err("write female or male".to_owned()),
    }
}
