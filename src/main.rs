//! The `fittingcards` program.
#![cfg_attr(not(test), deny(clippy::disallowed_methods, clippy::unwrap_used))]

use std::process::ExitCode;

fn main() -> ExitCode {
    fittingcards::cli::run()
}
