//! Why a conductor can't be computed.

use crate::units::Length;
use std::fmt;

/// What is wrong with a construction: data for a finding, not yet words on a screen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SectionError {
    /// The dotted key concerned, as in a conductor's record: `construction.stranded.wires`.
    pub field: String,
    /// What is the matter, in one sentence without a full stop.
    pub message: String,
    /// What was found; empty where the message says it all.
    pub found: String,
    /// What was expected; empty where the message says it all.
    pub expected: String,
    /// How to put it right; empty where the message says it all.
    pub help: String,
}

impl SectionError {
    pub(super) fn new(field: impl Into<String>, message: impl Into<String>) -> Self {
        Self {
            field: field.into(),
            message: message.into(),
            found: String::new(),
            expected: String::new(),
            help: String::new(),
        }
    }

    pub(super) fn found(mut self, found: impl Into<String>) -> Self {
        self.found = found.into();
        self
    }

    pub(super) fn expected(mut self, expected: impl Into<String>) -> Self {
        self.expected = expected.into();
        self
    }

    pub(super) fn help(mut self, help: impl Into<String>) -> Self {
        self.help = help.into();
        self
    }
}

impl fmt::Display for SectionError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}: {}", self.field, self.message)?;
        if !self.help.is_empty() {
            write!(formatter, " ({})", self.help)?;
        }
        Ok(())
    }
}

impl std::error::Error for SectionError {}

/// The smallest size that anything on a conductor has.
const SMALLEST: Length = Length::from_mm(0.01);
/// The largest size that anything on a conductor has.
const LARGEST: Length = Length::from_mm(1000.0);

/// Refuses what is no size of a conductor: NaN, infinite, zero, negative, or absurd.
pub(super) fn check_size(key: &str, name: &str, size: Length) -> Result<(), SectionError> {
    if size >= SMALLEST && size <= LARGEST {
        return Ok(());
    }
    Err(SectionError::new(format!("{key}.{name}"), "this can't be a size of a conductor")
        .found(format!("{} mm", size.mm()))
        .expected(format!("{} to {} mm", SMALLEST.mm(), LARGEST.mm())))
}
