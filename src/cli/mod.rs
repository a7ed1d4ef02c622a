//! The command line: one file a command; the only place that prints or exits.

mod audit;
mod compare;
mod explain;
mod file;
mod follow_up;
mod identify;
mod import;
mod interrupt;
mod issue;
mod mixups;
mod options;
mod outcome;
mod progress;
mod render;
mod report;
mod schema;
mod section;
mod start;
mod watch;

use crate::diagnostics::{is_hidden, visible_lines};
use clap::{Parser, Subcommand};
use options::Globals;
use std::process::ExitCode;

/// Illustrated fitting reference cards for overhead lines.
#[derive(Debug, Parser)]
#[command(name = "fittingcards", version, about, max_term_width = 100)]
struct CommandLine {
    #[command(flatten)]
    globals: Globals,
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Check, compute, draw and write everything under the output folder
    Render(render::Options),
    /// Check only; nothing is written
    Audit(audit::Options),
    /// Compute one conductor from the command line or from a record
    Section(Box<section::Options>),
    /// What a measured conductor can be, or what is inside a closed fitting
    Identify(identify::Options),
    /// Which wrong part goes into which body, and what then happens
    Mixups(mixups::Options),
    /// What has changed since an edition: print again, new, withdraw, and whose copies
    Compare(compare::Options),
    /// Which installed fittings a notice, a hold or their own readings call for
    FollowUp(follow_up::Options),
    /// Put the present state on the register as an edition
    Issue(issue::Options),
    /// Records from a spreadsheet: what its rows change is written into the files
    Import(import::Options),
    /// Write a small working catalogue into an empty folder
    Start(start::Options),
    /// What a key of the records or the code of a finding means
    Explain(explain::Options),
    /// JSON Schemas of the records, for editors
    Schema(schema::Options),
}

/// Runs the program on the process's arguments.
///
/// Exit codes: 0 done; 1 the catalogue has errors; 2 something is wrong with the command line or the machine.
#[must_use]
pub fn run() -> ExitCode {
    let CommandLine { globals, command } = match CommandLine::try_parse() {
        Ok(command_line) => command_line,
        Err(error) => return not_understood(&error),
    };
    let outcome = match command {
        Command::Render(options) => render::run(&globals, &options),
        Command::Audit(options) => audit::run(&globals, &options),
        Command::Section(options) => section::run(&globals, &options),
        Command::Identify(options) => identify::run(&globals, &options),
        Command::Mixups(options) => mixups::run(&globals, &options),
        Command::Compare(options) => compare::run(&globals, &options),
        Command::FollowUp(options) => follow_up::run(&globals, &options),
        Command::Issue(options) => issue::run(&globals, &options),
        Command::Import(options) => import::run(&globals, &options),
        Command::Start(options) => start::run(&globals, &options),
        Command::Explain(options) => explain::run(&globals, &options),
        Command::Schema(options) => schema::run(&globals, &options),
    };
    match outcome {
        Ok(outcome) => outcome.code(),
        Err(fault) => report::fault(&fault, &globals),
    }
}

/// What `section` answers to its arguments, and its sketch as SVG, with nothing printed or written: for programs that
/// try many.
///
/// # Errors
/// What is wrong with the arguments.
///
/// ```
/// let (answer, _) = fittingcards::cli::section(["--solid", "8", "--material", "steel-st1a"])?;
/// assert!(answer.contains("50.27 mm²"));
/// # Ok::<(), String>(())
/// ```
pub fn section<'a>(arguments: impl IntoIterator<Item = &'a str>) -> Result<(String, String), String> {
    let line = ["fittingcards", "section"].into_iter().chain(arguments);
    let CommandLine { globals, command } =
        CommandLine::try_parse_from(line).map_err(|error| error.to_string())?;
    match command {
        Command::Section(options) => section::answered(&globals, &options).map_err(|fault| fault.message),
        _ => Err("the command is section".to_owned()),
    }
}

/// Says what is wrong with the command line, or helps. What it repeats of the command line is shown in plain
/// letters where it could do something to a terminal.
fn not_understood(error: &clap::Error) -> ExitCode {
    let plain = error.render().to_string();
    if plain.chars().any(|letter| letter != '\n' && is_hidden(letter)) {
        eprint!("{}", visible_lines(&plain));
    } else {
        // Where nobody reads what is said, there is nothing to do about it.
        let _ = error.print();
    }
    ExitCode::from(u8::try_from(error.exit_code()).unwrap_or(2))
}
