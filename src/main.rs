//! The program: hands the arguments to the command line.

use std::process::ExitCode;

fn main() -> ExitCode {
    rungwright::cli::run()
}
