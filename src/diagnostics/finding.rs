//! One finding, and a list of them in order.

use crate::source::Place;

/// How much a finding weighs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Nothing is written while it stands.
    Error,
    /// Somebody must look at it.
    Warning,
    /// Worth knowing.
    Note,
}

impl Severity {
    /// The word that messages and JSON carry.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Warning => "warning",
            Self::Note => "note",
        }
    }
}

/// Something that must be said about a place in a file.
///
/// ```
/// use fittingcards::diagnostics::Finding;
/// use fittingcards::source::{FilePath, Place};
/// let place = Place::at(FilePath::catalogue("parts/cones.yaml"), 4, 9);
/// let finding = Finding::error("unknown-key", place, "there is no key `nam`")
///     .record("ST-4103")
///     .field("nam")
///     .help("did you mean `name`?");
/// assert_eq!(finding.code, "unknown-key");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// The rule's documented code, in words joined by hyphens.
    pub code: &'static str,
    /// How much it weighs.
    pub severity: Severity,
    /// Where it is.
    pub place: Place,
    /// The id or number of the record it is about.
    pub record: Option<String>,
    /// The dotted path of the field it is about.
    pub field: Option<String>,
    /// What is the matter, in one sentence without a full stop.
    pub message: String,
    /// What was found.
    pub found: Option<String>,
    /// What was expected.
    pub expected: Option<String>,
    /// How to put it right; empty where the message says it all.
    pub help: String,
    /// Other places that matter.
    pub related: Vec<Related>,
}

/// Another place that a finding points at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Related {
    /// The place.
    pub place: Place,
    /// What is there.
    pub message: String,
}

impl Finding {
    /// A finding that stops the run.
    #[must_use]
    pub fn error(code: &'static str, place: Place, message: impl Into<String>) -> Self {
        Self::new(code, Severity::Error, place, message)
    }

    /// A finding that somebody must look at.
    #[must_use]
    pub fn warning(code: &'static str, place: Place, message: impl Into<String>) -> Self {
        Self::new(code, Severity::Warning, place, message)
    }

    /// A finding worth knowing.
    #[must_use]
    pub fn note(code: &'static str, place: Place, message: impl Into<String>) -> Self {
        Self::new(code, Severity::Note, place, message)
    }

    fn new(code: &'static str, severity: Severity, place: Place, message: impl Into<String>) -> Self {
        Self {
            code,
            severity,
            place,
            record: None,
            field: None,
            message: message.into(),
            found: None,
            expected: None,
            help: String::new(),
            related: Vec::new(),
        }
    }

    /// The same finding with the record it is about.
    #[must_use]
    pub fn record(mut self, record: impl Into<String>) -> Self {
        self.record = Some(record.into());
        self
    }

    /// The same finding with the field it is about.
    #[must_use]
    pub fn field(mut self, field: impl Into<String>) -> Self {
        self.field = Some(field.into());
        self
    }

    /// The same finding with what was found.
    #[must_use]
    pub fn found(mut self, found: impl Into<String>) -> Self {
        self.found = Some(found.into());
        self
    }

    /// The same finding with what was expected.
    #[must_use]
    pub fn expected(mut self, expected: impl Into<String>) -> Self {
        self.expected = Some(expected.into());
        self
    }

    /// The same finding with how to put it right.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = help.into();
        self
    }

    /// The same finding with one more place.
    #[must_use]
    pub fn related(mut self, place: Place, message: impl Into<String>) -> Self {
        self.related.push(Related { place, message: message.into() });
        self
    }
}

/// Findings, gathered in any order and read in the order of file and line.
#[derive(Debug, Clone, Default)]
pub struct Findings {
    list: Vec<Finding>,
}

impl Findings {
    /// No findings yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds one.
    pub fn push(&mut self, finding: Finding) {
        self.list.push(finding);
    }

    /// Adds many.
    pub fn extend(&mut self, findings: impl IntoIterator<Item = Finding>) {
        self.list.extend(findings);
    }

    /// How many different ones there are of a severity.
    #[must_use]
    pub fn count(&self, severity: Severity) -> usize {
        self.sorted().iter().filter(|finding| finding.severity == severity).count()
    }

    /// Those that are not among others.
    #[must_use]
    pub fn without(&self, others: &Self) -> Self {
        let others = others.sorted();
        let other =
            |finding: &&Finding| others.binary_search_by(|known| key(known).cmp(&key(finding))).is_err();
        Self { list: self.list.iter().filter(other).cloned().collect() }
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.list.is_empty()
    }

    /// Whether any of them stops the run.
    #[must_use]
    pub fn has_errors(&self) -> bool {
        self.list.iter().any(|finding| finding.severity == Severity::Error)
    }

    /// All of them, each once, in the order of file, line, column, severity and code.
    #[must_use]
    pub fn sorted(&self) -> Vec<&Finding> {
        let mut sorted: Vec<&Finding> = self.list.iter().collect();
        sorted.sort_by(|a, b| key(a).cmp(&key(b)));
        sorted.dedup();
        sorted
    }
}

impl From<Finding> for Findings {
    fn from(finding: Finding) -> Self {
        Self { list: vec![finding] }
    }
}

impl IntoIterator for Findings {
    type Item = Finding;
    type IntoIter = std::vec::IntoIter<Finding>;

    fn into_iter(self) -> Self::IntoIter {
        self.list.into_iter()
    }
}

fn key(finding: &Finding) -> (&Place, Severity, &'static str, &str) {
    (&finding.place, finding.severity, finding.code, &finding.message)
}
