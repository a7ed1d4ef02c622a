//! Records as tables for a spreadsheet, and from there back into their files. Texts go in and come out; nothing is
//! written here.
//!
//! A row is a record; a column is a key, with dots where it stands below another: `geometry.collet.bore_mm`. A list of
//! mappings has a column for each key of each entry, counted from 1: `tightening.1.torque_Nm.min`. Any other list is one
//! cell: words with commas between, `ST-4101, ST-4190 x4` where a part is there more than once, and sentences line by
//! line, a step with its stage as `Screw down. [seated]`.
//!
//! | code | why |
//! | --- | --- |
//! | `unknown-key`, `missing-key`, `duplicate-key` | columns, and rows without their number or id |
//! | `duplicate-id` | two rows of one record |
//! | `not-a-spreadsheet` | a file that can't be read as a table |
//! | `record-not-editable` | a record whose file can't be changed cell by cell |
//! | `letters-changed` | a text that a spreadsheet may have made of another |
//! | `comment-left` | a comment that may have been about a value that goes |
//! | `not-utf8` | a text that some program has read in another code, and saved |
//! | `changed-since-export` | a row that was changed, whose record was changed since the sheet was written |
//!
//! All else is found by reading the records as the rows would have them, and told at the cell.

mod as_exported;
mod cells;
mod change;
mod columns;
mod edit;
mod export;
mod figures;
mod import;
mod insert;
mod kind;
mod letters;
mod lines;
mod looks;
mod misread;
mod plain;
mod read;
mod read_workbook;
mod row;
mod standing;
mod tables;
mod take_out;
mod told;
mod unpacked;
mod value;
mod workbook;

pub use cells::CellValue;
pub use change::{KeyChange, RecordChange};
pub use export::{Gathered, Sheet, sheets};
pub use import::{Import, import};
pub use kind::SheetKind;
pub use read::read_tables;
pub use tables::{Held, ReadCell, ReadTable};
pub use told::Named;
pub use workbook::workbook;
