//! Tables as spreadsheets save them: lists of installed fittings, and rows that change records of the demo.

use super::demo::{DEMO, world};
use super::{file, findings};
use fittingcards::catalogue::{Catalogue, InstalledFile};
use fittingcards::diagnostics::Findings;
use fittingcards::installed::{follow_up, follow_up_json, follow_up_rows, installed};
use fittingcards::records::written_table;
use fittingcards::source::{FilePath, MemoryWorld};
use fittingcards::spreadsheet::{import, read_tables, sheets};
use std::sync::LazyLock;

const PATHS: [&str; 4] = ["installed/x.csv", "parts.csv", "conductors.csv", "fittings.csv"];

static RECORDS: LazyLock<MemoryWorld> = LazyLock::new(|| world("content"));

pub fn run(input: &[u8]) {
    let (path, table) = file::taken(input, &PATHS);
    if path == PATHS[0] { list(path, table) } else { rows(path, table) }
}

/// Every place is in the text, and whatever rows are sound are looked at.
fn list(path: &str, table: &[u8]) {
    let of = InstalledFile { file: FilePath::catalogue(path), bytes: table.into() };
    let catalogue = Catalogue { installed: vec![of], ..DEMO.catalogue.clone() };
    let (line, found) = installed(&catalogue, &DEMO.mixups);
    findings::sound(&found, &MemoryWorld::new().with(FilePath::catalogue(path), table));
    let found = follow_up(&catalogue, &DEMO.mixups, &line, None);
    assert!(found.places.len() <= line.len());
    assert_eq!(follow_up_rows(&found).len(), found.places.len());
    assert_eq!(follow_up_json(&found)["installed"], line.len());
}

/// What rows change is changed once: the same rows change nothing more.
fn rows(path: &str, table: &[u8]) {
    let mut found = Findings::new();
    let tables = read_tables(path, table, None, &mut found);
    let imported = import(&*RECORDS, &tables).expect("what lies in memory is read");
    let with_table = RECORDS.clone().with(FilePath::catalogue(path), table);
    findings::sound(&found, &with_table);
    if found.has_errors() || imported.findings.has_errors() {
        return;
    }
    let files = imported.files.iter();
    let after = files.fold(RECORDS.clone(), |world, (file, _, text)| world.with(file.clone(), text));
    let again = import(&after, &tables).expect("what lies in memory is read");
    assert_eq!((again.changes, again.files), (vec![], vec![]));
}

/// The demo's list and its tables, and single rows of them.
pub fn seeds() -> Vec<Vec<u8>> {
    let lists = file::below("content/installed").into_iter().map(|(_, bytes)| file::given(PATHS[0], &bytes));
    let tables = sheets(&*RECORDS).expect("what lies in memory is read").into_iter().flat_map(|sheet| {
        let head: Vec<&str> = sheet.head.iter().map(String::as_str).collect();
        let name = format!("{}.csv", sheet.kind.folder());
        let texts = sheet.texts();
        let rows: Vec<&[Vec<String>]> = texts.chunks(1).chain([texts.as_slice()]).collect();
        let given =
            |rows: &&[Vec<String>]| file::given(&name, &written_table(&head, rows).unwrap_or_default());
        rows.iter().map(given).collect::<Vec<_>>()
    });
    lists.chain(tables).collect()
}
