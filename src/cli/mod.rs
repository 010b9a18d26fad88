//! The command line: what may be asked, asking the core, printing, the exit code.
//!
//! Exit 0 done, 1 found problems, 2 wrong use. Answers go to stdout, errors to stderr.

mod amend;
mod args;
mod args_body;
mod args_paper;
mod args_record;
mod backtest;
mod check;
mod demand;
mod demo;
mod export;
mod forecast;
mod import;
mod load;
mod log;
mod log_rows;
mod mend;
mod next;
pub mod output;
mod reading;
mod record_row;
mod report;
mod restore;
mod retract;
mod roster;
mod sheet;
pub mod start;
mod strength;
mod totals;
mod usage;
mod week;
mod what_if;

use std::process::ExitCode;

use args::{Cli, Command};
use clap::Parser;
use output::tell;

/// Why a command could not do what it was asked.
#[derive(Debug)]
pub enum Failed {
    /// Something is wrong with the data, the disk or the answer: exit 1.
    Problem(String),
    /// The command was used wrongly: exit 2.
    Usage(String),
}

impl From<crate::logbook::Trouble> for Failed {
    fn from(trouble: crate::logbook::Trouble) -> Self {
        match trouble {
            crate::logbook::Trouble::BadDevice(_) => Failed::Usage(trouble.to_string()),
            _ => Failed::Problem(trouble.to_string()),
        }
    }
}

/// What a command came to: its answer, and whether part of the logbook could not be read.
#[derive(Debug, Default)]
pub struct Answer {
    /// What goes to stdout.
    pub text: String,
    /// Whether something was wrong that the exit code must tell.
    pub with_problems: bool,
}

impl Answer {
    /// An answer without problems.
    pub fn plain(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            with_problems: false,
        }
    }
}

/// Runs the program for the process's arguments; without a command it opens the `window`.
pub fn run(window: Option<start::OpenWindow>) -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => return usage::explain(&error),
    };
    let result = match cli.command {
        Some(Command::Next(args)) => next::run(&args),
        Some(Command::Load(args)) => load::run(&args),
        Some(Command::Demand(args)) => demand::run(&args),
        Some(Command::Roster(args)) => roster::run(&args),
        Some(Command::Log(args)) => log::run(&args),
        Some(Command::Amend(args)) => amend::run(&args),
        Some(Command::Retract(args)) => retract::run(&args),
        Some(Command::Restore(args)) => restore::run(&args),
        Some(Command::Export(args)) => export::run(&args),
        Some(Command::Import(args)) => import::run(&args),
        Some(Command::Totals(args)) => totals::run(&args),
        Some(Command::Sheet(args)) => sheet::run(&args),
        Some(Command::Report(args)) => report::run(&args),
        Some(Command::WhatIf(args)) => what_if::run(&args),
        Some(Command::Strength(args)) => strength::run(&args),
        Some(Command::Forecast(args)) => forecast::run(&args),
        Some(Command::Backtest(args)) => backtest::run(&args),
        Some(Command::Week(args)) => week::run(&args),
        Some(Command::Check(args)) => check::run(&args),
        Some(Command::Demo(args)) => demo::run(&args),
        None => start::run(&cli.start, window),
    };
    finish(result)
}

fn finish(result: Result<Answer, Failed>) -> ExitCode {
    match result {
        Ok(answer) => match output::say(&answer.text) {
            Ok(()) if answer.with_problems => ExitCode::from(1),
            Ok(()) => ExitCode::SUCCESS,
            Err(error) => {
                tell(&format!("rungwright: the answer could not be written: {error}"));
                ExitCode::from(1)
            }
        },
        Err(Failed::Problem(line)) => {
            tell(&format!("rungwright: {line}"));
            ExitCode::from(1)
        }
        Err(Failed::Usage(line)) => {
            tell(&format!("rungwright: {line}"));
            ExitCode::from(2)
        }
    }
}
