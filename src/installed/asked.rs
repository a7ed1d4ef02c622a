//! What a follow-up comes to.

use super::Installed;
use jiff::civil::Date;

/// Which fittings in the line call for something.
#[derive(Debug, Clone)]
pub struct FollowUp<'a> {
    /// The date of the catalogue, which decides what is overdue; without one nothing is.
    pub date: Option<Date>,
    /// The notice that was asked for, where one was.
    pub notice: Option<String>,
    /// How many fittings were looked at.
    pub installed: usize,
    /// Those that call for something: what is overdue first; then wrong parts and readings that contradict; then
    /// holds, withdrawals, supersession and notices, by the day that they are due; then old cards; last what may stay.
    /// Among equals the least working factor comes first.
    pub places: Vec<Affected<'a>>,
}

/// A fitting in the line that calls for something.
#[derive(Debug, Clone)]
pub struct Affected<'a> {
    /// The fitting.
    pub installed: &'a Installed,
    /// Why, the weightiest first.
    pub reasons: Vec<Reason>,
    /// The first day by which something is due, where one is stated.
    pub due: Option<Date>,
    /// Whether that day lies before the date of the catalogue, or it was to be stopped at once.
    pub is_overdue: bool,
    /// How many times its line tension it holds; `None` where that is not known, as of one that may hold a wrong part.
    pub working_factor: Option<f64>,
}

/// Why a fitting in the line calls for something.
#[derive(Debug, Clone, PartialEq)]
pub struct Reason {
    /// What sort of reason it is.
    pub kind: ReasonKind,
    /// What is the matter, in words.
    pub words: String,
    /// The day by which something is due, where one is stated.
    pub due: Option<Date>,
    /// What could be inside by the readings, where they contradict: numbers of parts, and of fittings whose kit it is.
    pub inside: Vec<String>,
}

impl Reason {
    pub(super) fn new(kind: ReasonKind, words: impl Into<String>) -> Self {
        Self { kind, words: words.into(), due: None, inside: Vec::new() }
    }

    pub(super) fn due(self, due: Option<Date>) -> Self {
        Self { due, ..self }
    }
}

/// Sorts of reasons, the weightiest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ReasonKind {
    /// Fittings of this kind are to be stopped at once.
    StopNow,
    /// A part was written down that is not the fitting's own.
    WrongPart,
    /// The part that was written down can't stand out as was read.
    Reading,
    /// What was read is no go.
    Check,
    /// Held, withdrawn or superseded.
    Status,
    /// A notice that came into force after it was built, or was asked for.
    Notice,
    /// Built by a card that is superseded.
    Card,
    /// Of a kind that is no longer built, and may stay.
    MayStay,
}

impl ReasonKind {
    /// The word that JSON and tables carry.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::StopNow => "stop-now",
            Self::WrongPart => "wrong-part",
            Self::Reading => "reading",
            Self::Check => "check",
            Self::Status => "status",
            Self::Notice => "notice",
            Self::Card => "card",
            Self::MayStay => "may-stay",
        }
    }

    /// Whether it is not known what the fitting holds: by what was read or written down, a part may be wrong.
    #[must_use]
    pub fn is_doubt(self) -> bool {
        matches!(self, Self::WrongPart | Self::Reading | Self::Check)
    }

    /// The place of a fitting with this as its weightiest reason, behind what is overdue.
    pub(super) fn rank(self) -> u8 {
        match self {
            Self::StopNow => 0,
            Self::WrongPart | Self::Reading | Self::Check => 1,
            Self::Status | Self::Notice => 2,
            Self::Card => 3,
            Self::MayStay => 4,
        }
    }
}
