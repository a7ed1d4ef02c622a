//! The plan of all outputs, made side by side, put in place at once.

mod apart;
mod cache;
mod cards;
mod clock;
mod copies;
mod counted;
mod cut_off;
mod data;
mod disk;
mod grouped;
mod import;
mod in_order;
mod issue;
mod made;
mod made_from;
mod manifest;
mod on_sheets;
mod options;
mod plan;
mod prepared;
mod put;
mod records_folder;
mod refused;
mod register_folder;
mod register_pages;
mod render;
mod staging;
mod system;
mod tags;
mod training;
mod why;
mod workspace;

pub use apart::refuse_file_in;
pub use data::{card_list, catalogue_json};
pub use import::{ImportInto, ImportReport, import};
pub use issue::{IssueInto, IssueReport, issue};
pub use manifest::{Manifest, ManifestEntry};
pub use options::{
    AuditOptions, BookletForm, Drafts, Extent, Progress, RenderError, RenderOptions, Report, Stage,
    Strictness, Timings, Unchanged, Why,
};
pub use plan::Leftovers;
pub use put::PutInPlace;
pub use render::{check, render};
pub use staging::Staging;
pub use workspace::stop_writing;

#[cfg(test)]
mod tests;
