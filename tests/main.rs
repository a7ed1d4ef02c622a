//! All integration tests in one program: `cargo test findings::` runs those of one folder.

mod booklet;
mod command_line;
mod confusion;
mod contact_sheet;
mod demo;
mod explain;
mod faces;
mod findings;
mod fixtures;
mod installed;
mod placing;
mod properties;
mod published;
mod register;
mod render;
mod size;
mod spreadsheet;
mod supply;
mod tidy;
mod training;
