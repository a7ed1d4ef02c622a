//! Tables from the files that a spreadsheet saves.

use super::kind::SheetKind;
use super::read_workbook::of_workbook;
use super::tables::{Held, ReadCell, ReadTable};
use crate::diagnostics::{Finding, Findings};
use crate::records::{Table, table, utf8};
use crate::source::{FilePath, Place};
use std::path::Path;

/// How large a file may be.
const LARGEST: usize = 16 * 1024 * 1024;

/// The tables in a file: CSV, a kind by the file's name unless it is given, or XLSX, a kind a sheet by the sheets' names.
/// What is wrong goes to the findings.
#[must_use]
pub fn read_tables(
    name: &str,
    bytes: &[u8],
    kind: Option<SheetKind>,
    findings: &mut Findings,
) -> Vec<ReadTable> {
    let file = FilePath::catalogue(name);
    let ending = Path::new(name).extension().and_then(|ending| ending.to_str()).unwrap_or_default();
    if bytes.len() > LARGEST {
        let expected = format!("at most {LARGEST} bytes (16 MiB)");
        let finding =
            Finding::error("too-large", Place::whole(file), "this file is too large").expected(expected);
        findings.push(finding.help("take out what does not change: only rows that are there are looked at"));
        return Vec::new();
    }
    match ending.to_ascii_lowercase().as_str() {
        "csv" | "tsv" | "txt" => of_text(file, bytes, kind, findings).into_iter().collect(),
        "xlsx" => of_workbook(name, bytes, findings),
        _ => {
            let message = "this is no table that can be read";
            let finding = Finding::error("not-a-spreadsheet", Place::whole(file), message);
            findings.push(
                finding.expected("a file that ends in .csv or .xlsx").help("save it as one of the two"),
            );
            Vec::new()
        }
    }
}

fn of_text(
    file: FilePath,
    bytes: &[u8],
    kind: Option<SheetKind>,
    findings: &mut Findings,
) -> Option<ReadTable> {
    let stem = Path::new(file.path.as_ref()).file_stem().and_then(|stem| stem.to_str());
    let Some(kind) = kind.or_else(|| SheetKind::named(stem.unwrap_or_default())) else {
        let message = "the name of this file does not say which kind of record is in it";
        let help = "call it parts.csv, conductors.csv or fittings.csv, or say `--kind parts`";
        findings.push(Finding::error("not-a-spreadsheet", Place::whole(file), message).help(help));
        return None;
    };
    let text = utf8(&file, bytes).map_err(|finding| findings.push(*finding)).ok()?;
    let Table { head, rows, decimal_commas } = table(&file, text, findings);
    let read = |cell| ReadCell { cell, held: Held::Letters };
    let rows = rows.into_iter().map(|row| row.into_iter().map(read).collect()).collect();
    Some(ReadTable { kind, file, head, rows, decimal_commas, exported: None })
}
