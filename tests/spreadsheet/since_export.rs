//! Sheets that are older than the records: what somebody has changed in the sheet counts, what was changed in the records
//! since is never undone.

use super::{PARTS, errors, exported, files_of, imported, small, text};
use crate::fixtures::disk;
use calamine::{Data, Reader, Xlsx};
use fittingcards::source::{FilePath, MemoryWorld, World};
use rust_xlsxwriter::{Format, Workbook};
use std::io::Cursor;

type Rows = Vec<Vec<Data>>;

/// A workbook as an office program saves it again: the same cells, read and written by other libraries, after somebody
/// has changed the rows of its sheets.
fn saved_again(xlsx: &[u8], change: impl Fn(&str, &mut Rows)) -> Vec<u8> {
    let mut was = Xlsx::new(Cursor::new(xlsx)).unwrap();
    let mut book = Workbook::new();
    let day = Format::new().set_num_format("dd.mm.yyyy");
    for (name, range) in was.worksheets() {
        let mut rows: Rows = range.rows().map(<[Data]>::to_vec).collect();
        change(&name, &mut rows);
        let page = book.add_worksheet();
        page.set_name(&name).unwrap().set_hidden(name == "as exported");
        for (line, row) in (0..).zip(&rows) {
            for (column, cell) in (0..).zip(row) {
                let written = match cell {
                    Data::Empty => continue,
                    Data::String(text) => page.write_string(line, column, text),
                    Data::Float(number) => page.write_number(line, column, *number),
                    Data::Bool(truth) => page.write_boolean(line, column, *truth),
                    Data::DateTime(at) => page.write_number_with_format(line, column, at.as_f64(), &day),
                    other => panic!("{other:?}"),
                };
                written.unwrap();
            }
        }
    }
    book.save_to_buffer().unwrap()
}

fn column(rows: &Rows, name: &str) -> usize {
    let is_head = |cell: &Data| *cell == Data::String(name.to_owned());
    rows[0].iter().position(is_head).unwrap_or_else(|| panic!("no column {name}"))
}

/// Puts a text into the row of a record.
fn set(rows: &mut Rows, record: &str, name: &str, is: &str) {
    let (id, column) = (column(rows, "number"), column(rows, name));
    let is_own = |row: &&mut Vec<Data>| row[id] == Data::String(record.to_owned());
    rows.iter_mut().find(is_own).unwrap()[column] = Data::String(is.to_owned());
}

/// The same with its rows the other way round, and its columns too.
fn turned(rows: &mut Rows) {
    rows[1..].reverse();
    rows.iter_mut().for_each(|row| row.reverse());
}

/// The small catalogue after somebody has made a bore smaller by hand.
fn newer() -> MemoryWorld {
    let parts = PARTS.replace("14.30", "14.10").replace("holding_load_kN: 44.0", "holding_load_kN: 40");
    small().with(FilePath::catalogue("parts/cones.yaml"), parts)
}

/// The row holds the bore that was taken back: were only cells and record compared, a new name would bring it back.
#[test]
fn a_changed_row_does_not_undo_what_was_changed_since() {
    let (_, xlsx) = exported(&small());
    let renamed = |sheet: &str, rows: &mut Rows| {
        if sheet == "parts" {
            set(rows, "C-1", "name", "Cone 14");
        }
    };
    let import = imported(&newer(), &[("records.xlsx", &saved_again(&xlsx, renamed))]);
    let row = ("changed-since-export", "records.xlsx, sheet parts".to_owned(), 2, 1);
    assert_eq!((errors(&import), import.files.len()), (vec![row], 0));
    let found = import.findings.sorted()[0].found.clone().unwrap();
    assert!(found.contains("name") && found.contains("geometry.collet.bore_mm"), "{found}");
    // The same sheet against the records that it was written from.
    let import = imported(&small(), &[("records.xlsx", &saved_again(&xlsx, renamed))]);
    let expected = PARTS.replace("name: Cone 14.0 ", "name: Cone 14 ");
    assert_eq!((errors(&import), text(&import, "parts/cones.yaml")), (vec![], expected.as_str()));
}

/// Rows are known by their numbers and cells by their columns, wherever somebody has moved them.
#[test]
fn a_row_that_nobody_has_changed_leaves_a_newer_record_alone() {
    let (_, xlsx) = exported(&small());
    let sheet = saved_again(&xlsx, |sheet, rows| {
        if sheet == "parts" {
            set(rows, "N-1", "name", "Nut 2");
        }
        if sheet != "as exported" {
            turned(rows);
        }
    });
    let import = imported(&newer(), &[("records.xlsx", &sheet)]);
    assert_eq!((errors(&import), import.newer.as_slice()), (vec![], ["C-1".to_owned()].as_slice()));
    let changed: Vec<&str> = import.files.iter().map(|(file, ..)| file.path.as_ref()).collect();
    assert_eq!(changed, ["parts/nuts.yaml"]);
}

/// All sorts of cells come back with the hash that they were written with: else every row would count as changed.
#[test]
fn every_row_of_every_catalogue_is_known_again() {
    for catalogue in
        ["content", "tests/cases/constructions/in", "tests/cases/scripts/in", "tests/cases/gaps/in"]
    {
        let world = disk(catalogue);
        let (csv, xlsx) = exported(&world);
        let rows: usize =
            csv.iter().map(|(_, bytes)| csv::Reader::from_reader(&bytes[..]).records().count()).sum();
        let kinds = ["parts/", "fittings/", "conductors/"];
        let renamed = files_of(&world).into_iter().fold(MemoryWorld::new(), |newer, (path, text)| {
            let is_of_a_kind = kinds.iter().any(|kind| path.starts_with(kind));
            let text = if is_of_a_kind { text.replace("name: ", "name: X") } else { text };
            newer.with(FilePath::catalogue(&path), text)
        });
        let import = imported(&renamed, &[("records.xlsx", &saved_again(&xlsx, |_, _| {}))]);
        assert_eq!((import.changes.len(), import.newer.len()), (0, rows), "{catalogue}");
    }
}

/// A row of a record that somebody has taken out since is no new record, and a new one does not go over another's.
#[test]
fn records_that_went_or_came_since_are_not_made_again() {
    let (_, xlsx) = exported(&small());
    let without = PARTS.split("---\n").next().unwrap();
    let without = small().with(FilePath::catalogue("parts/cones.yaml"), without);
    let import = imported(&without, &[("records.xlsx", &xlsx)]);
    assert_eq!((&import.changes, import.newer.as_slice()), (&vec![], ["B-1".to_owned()].as_slice()));
    let changed = saved_again(&xlsx, |sheet, rows| {
        if sheet == "parts" {
            set(rows, "B-1", "name", "Body 2");
        }
    });
    let codes = |world: &dyn World, bytes: &[u8]| {
        errors(&imported(world, &[("records.xlsx", bytes)]))
            .iter()
            .map(|(code, ..)| *code)
            .collect::<Vec<_>>()
    };
    assert!(codes(&without, &changed).contains(&"changed-since-export"));
    let added = saved_again(&xlsx, |sheet, rows| {
        if sheet == "parts" {
            let row = rows[0].iter().map(|head| match head.to_string().as_str() {
                "number" => Data::String("N-2".to_owned()),
                "name" => Data::String("Nut".to_owned()),
                "role" => Data::String("nut".to_owned()),
                "material" => Data::String("brass".to_owned()),
                _ => Data::Empty,
            });
            let row = row.collect();
            rows.push(row);
        }
    });
    let nut = "number: N-2\nname: Lock nut\nrole: nut\nmaterial: brass\n";
    let with_nut = small().with(FilePath::catalogue("parts/lock.yaml"), nut);
    assert_eq!(codes(&with_nut, &added), ["changed-since-export"]);
    let import = imported(&small(), &[("records.xlsx", &added)]);
    assert!(errors(&import).is_empty() && import.changes[0].is_new, "{:?}", import.findings);
}

/// What was taken from a sheet once is not told as a contradiction when the sheet comes again.
#[test]
fn the_same_sheet_twice_changes_nothing_more() {
    let (_, xlsx) = exported(&small());
    let sheet = saved_again(&xlsx, |sheet, rows| {
        if sheet == "parts" {
            set(rows, "C-1", "name", "Cone 14");
        }
    });
    let first = imported(&small(), &[("records.xlsx", &sheet)]);
    let after = small().with(FilePath::catalogue("parts/cones.yaml"), text(&first, "parts/cones.yaml"));
    let again = imported(&after, &[("records.xlsx", &sheet)]);
    assert_eq!((errors(&again), again.changes.len(), again.newer.len()), (vec![], 0, 0));
}

/// Without the hidden sheet, a workbook is as good as one that somebody made by hand.
#[test]
fn a_workbook_that_does_not_say_what_it_was_written_from_is_read_as_it_is() {
    let (_, xlsx) = exported(&small());
    let mut book = Workbook::new();
    let page = book.add_worksheet();
    page.set_name("parts").unwrap();
    page.write_row(0, 0, ["number", "name"]).unwrap();
    page.write_row(1, 0, ["C-1", "Cone 14"]).unwrap();
    let bytes = book.save_to_buffer().unwrap();
    let import = imported(&newer(), &[("records.xlsx", &bytes)]);
    assert_eq!((errors(&import), import.changes.len()), (vec![], 1));
    // The one that is written has it, where nobody sees it.
    let names = |xlsx: &[u8]| {
        let book = Xlsx::new(Cursor::new(xlsx)).unwrap();
        let hidden = |sheet: &&calamine::Sheet| sheet.visible != calamine::SheetVisible::Visible;
        book.sheets_metadata().iter().filter(hidden).map(|sheet| sheet.name.clone()).collect::<Vec<_>>()
    };
    assert_eq!(names(&xlsx), ["as exported"]);
}
