//! What a run is asked to do, what it says meanwhile and what comes of it.

use super::put::PutInPlace;
use crate::diagnostics::{Findings, Severity};
use crate::source::WorldError;
use std::path::PathBuf;
use std::time::Duration;

/// What `render` is asked to do.
#[derive(Debug, Clone, PartialEq)]
pub struct RenderOptions {
    /// The output folder.
    pub output: PathBuf,
    /// Folders that are read: an output that holds one or lies in one is refused.
    pub read: Vec<PathBuf>,
    /// How many threads work; one a core where not said.
    pub jobs: Option<usize>,
    /// Resolution of the PNG of each face.
    pub preview_dpi: f64,
    /// The cards to print; empty for all. With numbers here, only these cards, their kit tags and sheets of
    /// them are made, and everything else in the output stays as it was, but for the sheets.
    pub only: Vec<String>,
    /// Whether the booklet is also made as one file, `booklet.html`.
    pub booklet: BookletForm,
    /// What stops the run.
    pub strictness: Strictness,
    /// What becomes of outputs of the last run that nothing has changed in.
    pub unchanged: Unchanged,
    /// The number of a card; the report says why it was made again.
    pub why: Option<String>,
    /// What becomes of cards that no edition holds.
    pub drafts: Drafts,
    /// Whether what the training cell uses is made too, also where the catalogue does not choose it.
    pub training: bool,
    /// The holder whose copies alone are made, in their quantities and with their numbers; all cards once where none
    /// is named. Everything else in the output stays as it was.
    pub holder: Option<String>,
}

impl RenderOptions {
    /// Everything into this folder: 150 dpi, all cores, all cards, errors alone stop.
    #[must_use]
    pub fn into_folder(output: impl Into<PathBuf>) -> Self {
        Self {
            output: output.into(),
            read: Vec::new(),
            jobs: None,
            preview_dpi: 150.0,
            only: Vec::new(),
            booklet: BookletForm::Pages,
            strictness: Strictness::Errors,
            unchanged: Unchanged::Kept,
            why: None,
            drafts: Drafts::Printed,
            training: false,
            holder: None,
        }
    }

    /// Whether every output is made, not those of some cards or of one holder.
    #[must_use]
    pub fn is_of_all(&self) -> bool {
        self.only.is_empty() && self.holder.is_none()
    }
}

/// What `check` is asked to do.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct AuditOptions {
    /// How many threads work; one a core where not said.
    pub jobs: Option<usize>,
    /// How far it goes.
    pub extent: Extent,
    /// The output of an earlier run: faces and pages that nothing was found in are not looked over again while nothing
    /// that they are made from has changed.
    pub output: Option<PathBuf>,
}

/// How far an audit goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Extent {
    /// The records, and every face and page made from them.
    #[default]
    Faces,
    /// The records alone.
    Records,
}

/// What becomes of outputs of the last run that nothing has changed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unchanged {
    /// They are kept.
    Kept,
    /// They are made again.
    MadeAgain,
}

/// What becomes of cards that no edition holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Drafts {
    /// They are printed, and say that they are drafts.
    Printed,
    /// They stop the run.
    Denied,
}

/// How the booklet is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BookletForm {
    /// A file a page.
    Pages,
    /// The pages, and one file with everything in it.
    PagesAndSingleFile,
}

/// What stops a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Strictness {
    /// Errors alone.
    Errors,
    /// Warnings too.
    Warnings,
}

impl Strictness {
    /// Whether these findings stop a run.
    #[must_use]
    pub fn refuses(self, findings: &Findings) -> bool {
        findings.has_errors() || self == Self::Warnings && findings.count(Severity::Warning) > 0
    }
}

/// How far a run has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// What is being done.
    pub stage: Stage,
    /// How much of it is done.
    pub done: usize,
    /// How much there is to do.
    pub of: usize,
}

/// What a run does, in its order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// Reading, checking, computing.
    Records,
    /// Cards as SVG and PNG, and the sheets of them.
    Cards,
    /// Kit tags, as sheets of them.
    Tags,
    /// Pages of the booklet.
    Booklet,
    /// What the training cell uses.
    Training,
    /// Putting files in place.
    Output,
}

/// Where the time went. Work on several threads is added up; only `whole` is what a clock shows.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Timings {
    /// Reading and checking records, and all that is computed of them.
    pub records: Duration,
    /// Drawing cards and tags, preflight included.
    pub drawing: Duration,
    /// Pictures of cards, SVG and PNG.
    pub pictures: Duration,
    /// Sheets.
    pub pdf: Duration,
    /// Pages of the booklet.
    pub booklet: Duration,
    /// Writing files and putting them in place.
    pub output: Duration,
    /// From start to end.
    pub whole: Duration,
}

/// What came of a run.
#[derive(Debug)]
pub struct Report {
    /// Everything that was found.
    pub findings: Findings,
    /// What was written; nothing where the findings refuse it.
    pub put: Option<PutInPlace>,
    /// How many cards were made.
    pub cards: usize,
    /// Why the card that was asked for was made again; empty where it was kept.
    pub why: Vec<Why>,
    /// Where the time went.
    pub timings: Timings,
}

/// Why an output was made again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Why {
    /// What the output is called, such as "card ST-4100".
    pub output: String,
    /// What is not as it was in the last run, by what it is called.
    pub changed: Vec<String>,
}

/// Why a run could not be carried out, whatever the catalogue says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum RenderError {
    /// The machine could not give or take what was asked of it.
    Machine(WorldError),
    /// There is no card of that number.
    UnknownCard {
        /// The number asked for.
        number: String,
        /// The nearest that there is.
        nearest: Option<String>,
    },
    /// There is no holder of that id.
    UnknownHolder {
        /// The id asked for.
        id: String,
        /// The nearest that there is.
        nearest: Option<String>,
    },
    /// The resolution is too small or too large for a picture.
    Resolution(String),
    /// So many threads can't be had.
    Jobs(String),
}

impl From<WorldError> for RenderError {
    fn from(error: WorldError) -> Self {
        Self::Machine(error)
    }
}

impl std::fmt::Display for RenderError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Machine(error) => error.fmt(out),
            Self::UnknownCard { number, nearest: Some(nearest) } => {
                write!(out, "there is no card {number}; did you mean {nearest}?")
            }
            Self::UnknownCard { number, nearest: None } => write!(out, "there is no card {number}"),
            Self::UnknownHolder { id, nearest: Some(nearest) } => {
                write!(out, "there is no holder {id}; did you mean {nearest}?")
            }
            Self::UnknownHolder { id, nearest: None } => write!(out, "there is no holder {id}"),
            Self::Resolution(reason) | Self::Jobs(reason) => out.write_str(reason),
        }
    }
}

impl std::error::Error for RenderError {}
