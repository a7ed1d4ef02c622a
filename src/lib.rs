//! Illustrated fitting reference cards for overhead lines: records in; cards, sheets and booklet out.
//!
//! Data flows one way; each module sees only the modules that DEVELOPERS.md lists for it.
#![cfg_attr(not(test), deny(clippy::disallowed_methods, clippy::unwrap_used))]

pub mod audit;
pub mod booklet;
pub mod cards;
pub mod catalogue;
pub mod cli;
pub mod colour;
pub mod diagnostics;
pub mod explain;
pub mod facts;
pub mod grip;
pub mod installed;
pub mod layouts;
mod measurements;
pub mod mixups;
pub mod notes;
pub mod publish;
pub mod records;
pub mod register;
pub mod section;
pub mod sheets;
pub mod sketch;
pub mod source;
pub mod spreadsheet;
pub mod training;
pub mod typeset;
pub mod units;

/// Trees of drawings are many small things: they are parsed in a fifth less time than with the system's memory.
#[global_allocator]
static MEMORY: mimalloc::MiMalloc = mimalloc::MiMalloc;
