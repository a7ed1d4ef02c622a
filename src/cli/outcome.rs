//! How a command ends.

use crate::source::WorldError;
use std::process::ExitCode;

/// A command that ran to its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Outcome {
    /// Done.
    Done,
    /// The catalogue has errors, or warnings that were not to be.
    Refused,
}

impl Outcome {
    /// Refused where the findings refuse, else done.
    pub(super) fn unless(refused: bool) -> Self {
        if refused { Self::Refused } else { Self::Done }
    }

    pub(super) fn code(self) -> ExitCode {
        match self {
            Self::Done => ExitCode::SUCCESS,
            Self::Refused => ExitCode::from(1),
        }
    }
}

/// A command that has no answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Fault {
    /// What is wrong.
    pub of: FaultOf,
    /// What is the matter, with what was found and what would do.
    pub message: String,
    /// More about it, each in a line of its own: its name and its text.
    pub details: Vec<(&'static str, String)>,
}

/// What is wrong where a command has no answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum FaultOf {
    /// The command line or the machine; exit code 2.
    Call,
    /// Records that were left out, because they are wrong; exit code 1.
    Records,
}

impl Fault {
    pub(super) fn new(message: impl Into<String>) -> Self {
        Self { of: FaultOf::Call, message: message.into(), details: Vec::new() }
    }

    /// The same fault where records are left out: what was asked for may stand in one of them. `stop` says how many; the
    /// fault is the call's where it says nothing.
    pub(super) fn or_of_records(mut self, stop: Option<String>) -> Self {
        if stop.is_some() {
            self.of = FaultOf::Records;
        }
        self.with("but", stop.unwrap_or_default())
    }

    pub(super) fn code(&self) -> ExitCode {
        match self.of {
            FaultOf::Call => ExitCode::from(2),
            FaultOf::Records => ExitCode::from(1),
        }
    }

    /// The same fault with one thing more about it; nothing where the text is empty.
    pub(super) fn with(mut self, name: &'static str, text: impl Into<String>) -> Self {
        self.details.extend(Some((name, text.into())).filter(|(_, text)| !text.is_empty()));
        self
    }
}

impl From<WorldError> for Fault {
    fn from(error: WorldError) -> Self {
        Self::new(error.to_string())
    }
}

impl From<crate::publish::RenderError> for Fault {
    fn from(fault: crate::publish::RenderError) -> Self {
        Self::new(fault.to_string())
    }
}

impl From<std::io::Error> for Fault {
    fn from(error: std::io::Error) -> Self {
        Self::new(error.to_string())
    }
}
