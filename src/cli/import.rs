//! `fittingcards import`: records from a spreadsheet.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report;
use crate::publish::{self, ImportInto, ImportReport};
use crate::source::World;
use crate::spreadsheet::{Named, RecordChange, SheetKind};
use clap::ValueEnum;
use serde_json::{Map, Value, json};
use std::fmt::Write;
use std::path::PathBuf;

/// Options of `import`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// A table as CSV, or an XLSX file with the sheets parts, conductors and fittings, as `render` writes them into data/
    file: PathBuf,
    /// The kind of record in a CSV file whose name does not say it
    #[arg(long, value_enum)]
    kind: Option<Kind>,
    /// Say what would change, and write nothing
    #[arg(long)]
    dry_run: bool,
}

/// The kinds of record that have a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Kind {
    /// Pieces of fittings
    Parts,
    /// What fittings hold
    Conductors,
    /// Assemblies
    Fittings,
}

impl From<Kind> for SheetKind {
    fn from(kind: Kind) -> Self {
        match kind {
            Kind::Parts => Self::Parts,
            Kind::Conductors => Self::Conductors,
            Kind::Fittings => Self::Fittings,
        }
    }
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world();
    let into = if options.dry_run { ImportInto::Nothing } else { ImportInto::Catalogue(&globals.catalogue) };
    let imported = publish::import(&world, &options.file, options.kind.map(Into::into), into)?;
    let named = Named { world: &world, table: options.file.display().to_string() };
    let is_refused = imported.import.findings.has_errors();
    report::findings(&imported.import.findings, &named, globals);
    let answer = match globals.format {
        Format::Json => as_json(&imported, options.dry_run).to_string(),
        Format::Text => as_text(&imported, options.dry_run, &world),
    };
    report::result(&answer, globals.format)?;
    Ok(Outcome::unless(is_refused))
}

fn as_text(imported: &ImportReport, is_dry: bool, world: &dyn World) -> String {
    let changes = &imported.import.changes;
    let mut text = format!("{}{}\n", finished(imported), head(imported, is_dry));
    text.push_str(&newer(&imported.import.newer));
    text.push_str(&without_row(&imported.import.without_row));
    for change in changes {
        let new = if change.is_new { ", new" } else { "" };
        let _ = writeln!(text, "\n{}{new}: {}", change.record, world.display(&change.file));
        for key in &change.keys {
            let _ = writeln!(text, "  {}", key.words());
        }
    }
    text
}

/// What was done before anything else; empty where nothing was.
fn finished(imported: &ImportReport) -> String {
    match imported.finished.len() {
        0 => String::new(),
        count => format!("an earlier import was cut off: its {count} files are all in place now\n"),
    }
}

/// How many records are named of those that stay as they are.
const MOST_NAMED: usize = 5;

/// What is not taken from a sheet, since the records are newer; empty where that is nothing.
fn newer(records: &[String]) -> String {
    match records.len() {
        0 => String::new(),
        1 => format!("{} was changed since this sheet was written: it stays as it is\n", records[0]),
        count => format!(
            "{count} records were changed since this sheet was written: they stay as they are ({})\n",
            first_of(records)
        ),
    }
}

/// What a table says nothing of: a row that is taken out takes no record out. Empty where every record has its row.
fn without_row(records: &[String]) -> String {
    match records.len() {
        0 => String::new(),
        1 => format!("{} has no row: it stays as it is\n", records[0]),
        count => format!("{count} records have no row: they stay as they are ({})\n", first_of(records)),
    }
}

fn first_of(records: &[String]) -> String {
    let more = if records.len() > MOST_NAMED { ", …" } else { "" };
    let first: Vec<&str> = records.iter().take(MOST_NAMED).map(String::as_str).collect();
    format!("{}{more}", first.join(", "))
}

fn head(imported: &ImportReport, is_dry: bool) -> String {
    let changes = &imported.import.changes;
    let records = match changes.len() {
        0 if imported.import.findings.has_errors() => return "nothing was written".to_owned(),
        0 if !(imported.import.newer.is_empty() && imported.import.findings.is_empty()) => {
            return "nothing changes".to_owned();
        }
        0 => return "every row says what its record says: nothing changes".to_owned(),
        1 => "1 record".to_owned(),
        count => format!("{count} records"),
    };
    let new = changes.iter().filter(|change| change.is_new).count();
    let new = if new > 0 { format!(", {new} of them new") } else { String::new() };
    match (imported.import.findings.has_errors(), is_dry) {
        (true, _) => format!("{records} would change{new}; nothing was written, since rows are wrong"),
        (false, true) => format!("{records} would change{new}; nothing was written"),
        (false, false) => format!("{records} changed{new}, in {} files", imported.written.len()),
    }
}

fn as_json(imported: &ImportReport, is_dry: bool) -> Value {
    let is_written = !is_dry && !imported.import.findings.has_errors();
    json!({
        "written": is_written,
        "finished": imported.finished.iter().map(|file| file.display().to_string()).collect::<Vec<_>>(),
        "newer": imported.import.newer,
        "without_row": imported.import.without_row,
        "changes": imported.import.changes.iter().map(change).collect::<Vec<_>>(),
    })
}

fn change(change: &RecordChange) -> Value {
    let keys = change.keys.iter().map(|key| {
        let mut object = Map::new();
        object.insert("key".into(), json!(key.column));
        object.extend(key.was.as_ref().map(|was| ("was".to_owned(), json!(was))));
        object.extend(key.is.as_ref().map(|is| ("is".to_owned(), json!(is))));
        Value::Object(object)
    });
    json!({
        "record": change.record, "file": change.file.path.as_ref(), "new": change.is_new,
        "keys": keys.collect::<Vec<_>>(),
    })
}
