//! `fittingcards schema`: JSON Schemas of the records, for editors.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::{file, report};
use crate::diagnostics::{nearest, visible};
use crate::publish::refuse_file_in;
use crate::records::schemas;
use serde_json::{Map, Value};
use std::path::Path;

/// The folder of a catalogue that schemas lie in: the catalogue is read without it.
const PASSED_OVER: &str = "schemas";

/// Options of `schema`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// A kind of record, such as parts; all kinds where not given
    kind: Option<String>,
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let asked = asked(options.kind.as_deref())?;
    match (&globals.output, &options.kind) {
        (Some(folder), _) => written(globals, folder, &asked)?,
        (None, Some(_)) => report::result(&asked.values().map(text).collect::<String>(), Format::Json)?,
        (None, None) => report::result(&text(&Value::Object(asked)), Format::Json)?,
    }
    Ok(Outcome::Done)
}

/// The files of all schemas below a folder of them: path and text.
pub(super) fn files() -> Vec<(String, String)> {
    all().iter().map(|(kind, schema)| (format!("{kind}.json"), text(schema))).collect()
}

fn written(globals: &Globals, folder: &Path, asked: &Map<String, Value>) -> Result<(), Fault> {
    let place = |kind: &str| folder.join(format!("{kind}.json"));
    asked.keys().try_for_each(|kind| check_place(globals, &place(kind), kind))?;
    for (kind, schema) in asked {
        file::write(&place(kind), text(schema))?;
    }
    let (count, folder) = (asked.len(), folder.display().to_string());
    let files = if count == 1 { "file" } else { "files" };
    report::result(&format!("{count} {files} in {}", visible(&folder)), Format::Text)
}

/// Refuses the place of a schema where records or layouts are read from, or where a file of others lies.
fn check_place(globals: &Globals, path: &Path, kind: &str) -> Result<(), Fault> {
    refuse_file_in(&globals.catalogue, Some(PASSED_OVER), path)?;
    refuse_file_in(&globals.layouts_folder(), None, path)?;
    if path.is_file() && !is_ours(path, kind) {
        let message = format!("{}: this file is no schema of ours; nothing was written", path.display());
        return Err(Fault::new(message).with("help", "move it away, or name another folder"));
    }
    Ok(())
}

/// Whether a file is a JSON Schema of this kind of record, of this release or another.
#[expect(clippy::disallowed_methods, reason = "a schema of an earlier run is told from files of others")]
fn is_ours(path: &Path, kind: &str) -> bool {
    let found = std::fs::read(path).ok().and_then(|bytes| serde_json::from_slice::<Value>(&bytes).ok());
    found.is_some_and(|found| found["$schema"].is_string() && found["title"] == kind)
}

/// The schemas that are asked for, by their kinds.
fn asked(kind: Option<&str>) -> Result<Map<String, Value>, Fault> {
    let mut all = all();
    let Some(kind) = kind else { return Ok(all) };
    match all.remove(kind) {
        Some(schema) => Ok(Map::from_iter([(kind.to_owned(), schema)])),
        None => Err(unknown(kind, &all)),
    }
}

fn unknown(kind: &str, all: &Map<String, Value>) -> Fault {
    let known: Vec<&str> = all.keys().map(String::as_str).collect();
    let help = nearest(kind, known.iter().copied()).map(|near| format!("did you mean {near}?"));
    Fault::new(format!("there is no kind of record called {kind}"))
        .with("expected", format!("one of {}", known.join(", ")))
        .with("help", help.unwrap_or_default())
}

fn all() -> Map<String, Value> {
    schemas().into_iter().map(|(kind, schema)| (kind.to_owned(), schema.into())).collect()
}

fn text(schema: &Value) -> String {
    format!("{schema:#}\n")
}
