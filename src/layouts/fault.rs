//! What goes wrong in a layout, with its file and line.

use super::marks::is_marked;
use crate::diagnostics::Finding;
use crate::source::{FilePath, Place};
use tera::{Error, ErrorKind, ReportError};

const HELP: &str = "the values and functions that a layout may use are listed in DEVELOPERS.md";

/// The finding of a layout that does not compile.
pub(super) fn syntax(error: &Error) -> Option<Finding> {
    match error.kind() {
        ErrorKind::SyntaxError(report) => Some(found("layout-syntax", report)),
        _ => None,
    }
}

/// The findings of layouts that compile alone but not together: names of functions, filters,
/// components and files that are not there, circles.
pub(super) fn together(error: &Error, folder: &str) -> Vec<Finding> {
    let text = match error.kind() {
        ErrorKind::Msg(text) => text.clone(),
        ErrorKind::CircularInclude { tpl, .. } | ErrorKind::CircularExtend { tpl, .. } => {
            return vec![whole("layout-circle", tpl, format!("the layout {tpl} takes itself in"))];
        }
        ErrorKind::MissingParent { current, parent } => {
            return vec![whole("layout-name", current, format!("there is no layout {parent} to extend"))];
        }
        other => other.to_string(),
    };
    let mut findings: Vec<Finding> = text.split("\n\n").filter_map(reported).collect();
    if findings.is_empty() {
        findings.push(whole("layout-name", folder, text));
    }
    findings
}

/// The finding of a layout that can't be filled.
pub(super) fn filling(name: &str, error: &Error) -> Finding {
    match error.kind() {
        ErrorKind::RenderingError(report) => found("layout-value", report),
        ErrorKind::TemplateNotFound(missing) => {
            whole("layout-missing", missing, format!("there is no layout {missing}"))
        }
        other => whole("layout-value", name, other.to_string()),
    }
}

/// The finding of a layout file that is not text.
pub(super) fn not_text(file: &FilePath) -> Finding {
    Finding::error("layout-encoding", Place::whole(file.clone()), "this layout is not UTF-8 text")
        .help("save the file as UTF-8")
}

fn found(code: &'static str, report: &ReportError) -> Finding {
    let span = report.span();
    let (line, column) = (counted(span.start_line), counted(span.start_col + 1));
    // Files are looked at one by one before their elements are marked.
    let place = match code {
        "layout-syntax" => Place::at(FilePath::layouts(report.filename()), line, column),
        _ => in_filled(report.filename(), line, column),
    };
    Finding::error(code, place, sentence(report.message())).help(HELP)
}

/// Reads one report of several, as the library prints them: the message, and where it is.
fn reported(report: &str) -> Option<Finding> {
    let (message, rest) = report.strip_prefix("error: ")?.split_once('\n')?;
    let place = rest.trim_start().strip_prefix("--> ")?.lines().next()?;
    let mut parts = place.rsplitn(3, ':');
    let column = parts.next()?.parse().ok()?;
    let line = parts.next()?.parse().ok()?;
    let place = in_filled(parts.next()?, line, column);
    Some(Finding::error("layout-name", place, sentence(message)).help(HELP))
}

/// A place in a layout. Marks move what stands behind them in a line, so that of a marked file the line is told alone.
fn in_filled(name: &str, line: u32, column: u32) -> Place {
    let column = if is_marked(name) { 1 } else { column };
    Place::at(FilePath::layouts(name), line, column)
}

fn whole(code: &'static str, name: &str, message: String) -> Finding {
    Finding::error(code, Place::whole(FilePath::layouts(name)), message).help(HELP)
}

fn sentence(message: &str) -> String {
    let message = message.trim_end_matches('.');
    let mut letters = message.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

fn counted(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
