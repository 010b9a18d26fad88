//! Wrong use, in one line that quotes at most 40 characters of what was typed.

use std::process::ExitCode;

use clap::error::ErrorKind;

use crate::problem::visible;

use super::output::{say, tell};

/// Longest quotation of what was typed, characters.
const QUOTED: usize = 40;

/// Prints help or version as asked, or says in one line what is wrong.
pub fn explain(error: &clap::Error) -> ExitCode {
    match error.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => match say(&error.to_string()) {
            Ok(()) => ExitCode::SUCCESS,
            Err(_) => ExitCode::from(1),
        },
        ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
            tell("rungwright: say what to do; 'rungwright --help' lists the commands");
            ExitCode::from(2)
        }
        _ => {
            tell(&format!("rungwright: {}", one_line(&error.to_string())));
            ExitCode::from(2)
        }
    }
}

/// The first paragraph of a message on one line, long quotations shortened.
fn one_line(message: &str) -> String {
    let told = message
        .lines()
        .map(str::trim)
        .take_while(|line| !line.starts_with("Usage:") && !line.starts_with("For more information"))
        .filter(|line| !line.is_empty());
    let mut joined = String::new();
    for line in told {
        joined.push_str(match joined.chars().last() {
            None => "",
            Some(':') => " ",
            Some(_) => "; ",
        });
        joined.push_str(line);
    }
    let joined = joined.replacen("error: ", "", 1);
    let mut line = String::new();
    for (at, part) in joined.split('\'').enumerate() {
        if at > 0 {
            line.push('\'');
        }
        if at % 2 == 1 && part.chars().count() > QUOTED {
            line.extend(part.chars().take(QUOTED));
            line.push('…');
        } else {
            line.push_str(part);
        }
    }
    visible(&line)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_slip_is_quoted_by_its_first_forty_characters() {
        let message = format!(
            "error: unexpected argument '--{}' found\n\nUsage: rungwright\n",
            "x".repeat(100)
        );
        let line = one_line(&message);
        assert!(
            line.starts_with("unexpected argument '--xxx") && line.ends_with("…' found"),
            "{line}"
        );
        assert!(line.chars().count() < 80);
    }

    #[test]
    fn what_is_missing_follows_its_colon() {
        let message = "error: not provided:\n  --athlete <NAME>\n  --output <FILE>\n\nUsage: rungwright\n";
        assert_eq!(
            one_line(message),
            "not provided: --athlete <NAME>; --output <FILE>"
        );
    }
}
