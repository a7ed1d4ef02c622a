//! What goes wrong in a layout, with its file and line.

use super::marks::written_column;
use super::tags::{Tag, tags};
use crate::diagnostics::Finding;
use crate::source::{FilePath, Place};
use std::collections::BTreeMap;
use tera::{Error, ErrorKind, ReportError};

const HELP: &str = "DEVELOPERS.md lists the values and functions that a layout may use";

/// The texts of layouts as the library gets them, with marks and counts put in.
pub(super) type Placed = BTreeMap<String, String>;

/// The finding of a layout that does not compile; it is looked at before its elements are marked.
pub(super) fn syntax(error: &Error) -> Option<Finding> {
    match error.kind() {
        ErrorKind::SyntaxError(report) => Some(found("layout-syntax", report, &Placed::new())),
        _ => None,
    }
}

/// The finding of a layout that makes a list within an expression.
pub(super) fn list(name: &str, text: &str, tag: &Tag<'_>) -> Finding {
    Finding::error(
        "layout-endless",
        place_in(name, text, tag.start),
        "a list is made inside an expression, where its length can't be checked",
    )
    .help("go through it with {% for %} instead")
}

/// The findings of layouts that compile alone but not together: names of functions, filters,
/// components and files that are not there, circles.
pub(super) fn together(error: &Error, folder: &str, placed: &Placed) -> Vec<Finding> {
    let text = match error.kind() {
        ErrorKind::Msg(text) => text.clone(),
        ErrorKind::CircularInclude { tpl, include_chain: chain }
        | ErrorKind::CircularExtend { tpl, inheritance_chain: chain } => {
            let next = chain.iter().find(|next| *next != tpl).unwrap_or(tpl);
            let said = format!("the layout {tpl} includes itself");
            return vec![Finding::error("layout-circle", naming(tpl, next, placed), said).help(HELP)];
        }
        ErrorKind::MissingParent { current, parent } => {
            let said = format!("there is no layout {parent} to extend");
            return vec![Finding::error("layout-name", naming(current, parent, placed), said).help(HELP)];
        }
        other => other.to_string(),
    };
    let mut findings: Vec<Finding> =
        text.split("\n\n").filter_map(|report| reported(report, placed)).collect();
    if findings.is_empty() {
        findings.push(whole("layout-name", folder, text));
    }
    findings
}

/// The finding of a layout that can't be filled.
pub(super) fn filling(name: &str, error: &Error, placed: &Placed) -> Finding {
    match error.kind() {
        ErrorKind::RenderingError(report) => {
            let taken_in = taken_in(&error.to_string(), placed);
            taken_in.into_iter().fold(found("layout-value", report, placed), |finding, place| {
                finding.related(place, "which is taken in here")
            })
        }
        ErrorKind::TemplateNotFound(missing) => {
            whole("layout-missing", missing, format!("there is no layout {missing}"))
        }
        other => whole("layout-value", name, other.to_string()),
    }
}

/// The finding of a layout that goes further than it may, at the line where it was stopped, if one is known.
pub(super) fn endless(name: &str, error: Option<&Error>, placed: &Placed) -> Finding {
    let place = match error.map(Error::kind) {
        Some(ErrorKind::RenderingError(report)) => found("layout-endless", report, placed).place,
        _ => Place::whole(FilePath::layouts(name)),
    };
    Finding::error("layout-endless", place, "the layout does not come to an end: it is stopped here")
        .expected("what a face or a page can hold")
        .help("look for loops in loops, files that are included again and again, and texts that grow")
}

/// The finding of a layout file that is not text.
pub(super) fn not_text(file: &FilePath) -> Finding {
    Finding::error("layout-encoding", Place::whole(file.clone()), "this layout is not UTF-8 text")
        .help("save the file as UTF-8")
}

/// The finding of a layout file that is too large.
pub(super) fn too_large(file: &FilePath, bytes: usize, most: usize) -> Finding {
    Finding::error("too-large", Place::whole(file.clone()), "this layout is too large")
        .found(format!("{bytes} bytes"))
        .expected(format!("at most {most} bytes"))
        .help("write pictures into it at the size that they are printed in, 300 dots per inch")
}

fn found(code: &'static str, report: &ReportError, placed: &Placed) -> Finding {
    let span = report.span();
    let (line, column) = (counted(span.start_line), counted(span.start_col + 1));
    let place = as_written(report.filename(), line, column, placed);
    Finding::error(code, place, sentence(report.message())).help(HELP)
}

/// Reads one report of several, as the library prints them: the message, and where it is.
fn reported(report: &str, placed: &Placed) -> Option<Finding> {
    let (message, rest) = report.strip_prefix("error: ")?.split_once('\n')?;
    let place = rest.trim_start().strip_prefix("--> ")?.lines().next()?;
    Some(Finding::error("layout-name", read_place(place, placed)?, sentence(message)).help(HELP))
}

/// Where the file with the fault is taken in, from the innermost outward, as the library prints it.
fn taken_in(report: &str, placed: &Placed) -> Vec<Place> {
    let notes = report.lines().filter_map(|line| line.strip_prefix("note: called from "));
    notes.filter_map(|place| read_place(place, placed)).collect()
}

fn read_place(place: &str, placed: &Placed) -> Option<Place> {
    let mut parts = place.rsplitn(3, ':');
    let column = parts.next()?.parse().ok()?;
    let line = parts.next()?.parse().ok()?;
    Some(as_written(parts.next()?, line, column, placed))
}

/// Where a layout names another that it takes in or extends.
fn naming(name: &str, other: &str, placed: &Placed) -> Place {
    let whole = || Place::whole(FilePath::layouts(name));
    let Some(text) = placed.get(name) else { return whole() };
    let names = |tag: &Tag<'_>| matches!(tag.word(), "include" | "extends") && tag.inside.contains(other);
    let tag = tags(text).into_iter().find(names);
    tag.map_or_else(whole, |tag| {
        let place = place_in(name, text, tag.start);
        as_written(name, place.line, place.column, placed)
    })
}

/// The place in the layouts' file of this path where so many bytes of its text have gone by.
#[must_use]
pub fn place_in(name: &str, text: &str, at: usize) -> Place {
    let before = &text[..at];
    let column = before.chars().rev().take_while(|letter| *letter != '\n').count() + 1;
    Place::at(FilePath::layouts(name), counted(before.matches('\n').count() + 1), counted(column))
}

/// A place in a layout as it was written: marks and counts move what stands behind them in a line.
fn as_written(name: &str, line: u32, column: u32, placed: &Placed) -> Place {
    let text = placed.get(name).and_then(|text| text.lines().nth((line as usize).checked_sub(1)?));
    let column = text.map_or(column, |text| written_column(text, column));
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
