//! What goes out and comes in unchanged changes nothing, and a cell that is changed changes its own line alone.

use super::{exported, files_of, imported, small};
use crate::fixtures::disk;
use fittingcards::records::nodes;
use fittingcards::source::{FilePath, MemoryWorld, World};
use fittingcards::spreadsheet::{import, read_tables, sheets};
use std::collections::BTreeSet;

const CATALOGUES: [&str; 8] = [
    "content",
    "tests/cases/constructions/in",
    "tests/cases/gaps/in",
    "tests/cases/long-names/in",
    "tests/cases/plain/in",
    "tests/cases/scripts/in",
    "tests/cases/statuses/in",
    "tests/cases/ten-parts/in",
];

fn changes_nothing(world: &dyn World, name: &str) {
    let (csv, xlsx) = exported(world);
    let csv: Vec<(&str, &[u8])> = csv.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
    for tables in [csv.as_slice(), &[("records.xlsx", xlsx.as_slice())]] {
        let import = imported(world, tables);
        assert_eq!((&import.changes, &import.files), (&vec![], &vec![]), "{name}");
        let told: Vec<_> = import.findings.sorted().into_iter().cloned().collect();
        assert_eq!(told, [], "{name}");
    }
}

#[test]
fn a_table_that_nobody_changes_changes_no_record() {
    for catalogue in CATALOGUES {
        changes_nothing(&disk(catalogue), catalogue);
    }
    changes_nothing(&small(), "small");
}

/// A spreadsheet drops the zeros at the end of figures and writes truths in capitals.
#[test]
fn what_a_spreadsheet_does_to_figures_changes_no_record() {
    let world = disk("content");
    let (csv, _) = exported(&world);
    for (name, bytes) in &csv {
        let mut reader = csv::Reader::from_reader(bytes.as_slice());
        let mut writer = csv::WriterBuilder::new().delimiter(b';').from_writer(Vec::new());
        writer.write_record(reader.headers().unwrap()).unwrap();
        for row in reader.records() {
            let row = row.unwrap();
            let cells = row.iter().map(|cell| match cell.parse::<f64>() {
                // Where semicolons part cells, commas stand before decimals.
                Ok(number) => number.to_string().replace('.', ","),
                Err(_) if cell == "true" => "TRUE".to_owned(),
                Err(_) => cell.to_owned(),
            });
            writer.write_record(cells.collect::<Vec<_>>()).unwrap();
        }
        let turned = writer.into_inner().unwrap();
        assert_ne!(&turned, bytes);
        let import = imported(&world, &[(name, &turned)]);
        assert_eq!(import.changes, [], "{name}");
    }
}

/// Every cell of the demo is changed once, a seventh of them at a time, and some of each case: no more lines differ than
/// cells were changed, and what the records then say is what the cells say.
#[test]
fn a_changed_cell_changes_its_own_line_alone() {
    (0..7).for_each(|seventh| changes_its_line("content", seventh));
    CATALOGUES[1..].iter().zip(0..).for_each(|(catalogue, nth)| changes_its_line(catalogue, nth));
}

fn changes_its_line(catalogue: &str, seventh: usize) {
    let demo = disk(catalogue);
    let sheets = sheets(&demo).unwrap();
    let (mut changed, mut tables) = (0, Vec::new());
    for sheet in &sheets {
        let mut rows = sheet.texts();
        for (row, cells) in rows.iter_mut().enumerate() {
            for (column, cell) in cells.iter_mut().enumerate() {
                let is_id = sheet.head[column] == sheet.kind.id();
                if !is_id && !cell.is_empty() && (row + column) % 7 == seventh {
                    *cell = other(cell);
                    changed += 1;
                }
            }
        }
        let head: Vec<&str> = sheet.head.iter().map(String::as_str).collect();
        let name = format!("{}.csv", sheet.kind.folder());
        tables.push((name, fittingcards::records::written_table(&head, &rows).unwrap(), rows));
    }
    let mut findings = fittingcards::diagnostics::Findings::new();
    let read: Vec<_> =
        tables.iter().flat_map(|(name, bytes, _)| read_tables(name, bytes, None, &mut findings)).collect();
    let import = import(&demo, &read).unwrap();
    let refused: Vec<_> =
        import.findings.sorted().into_iter().filter(|found| found.code == "record-not-editable").collect();
    assert!(refused.is_empty(), "{refused:#?}");
    let keys: usize = import.changes.iter().map(|change| change.keys.len()).sum();
    assert_eq!(keys, changed);
    let mut after = files_of(&demo);
    let mut lines = 0;
    for (file, was, is) in &import.files {
        lines += differing(was.as_deref().unwrap(), is);
        after.insert(file.path.to_string(), is.clone());
    }
    // Several cells can stand in one line, and a paragraph has several lines.
    assert!(lines <= changed, "{lines} lines differ by {changed} cells");
    let after = after
        .iter()
        .fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::catalogue(path), text.as_str()));
    for (sheet, (name, _, rows)) in fittingcards::spreadsheet::sheets(&after).unwrap().iter().zip(&tables) {
        assert_eq!(&sheet.texts(), rows, "{catalogue}, {name}");
    }
}

/// Another value of the same sort.
fn other(cell: &str) -> String {
    match cell.parse::<f64>() {
        Ok(number) => format!("{}", number + 1.0),
        Err(_) => format!("{cell} y"),
    }
}

/// How many lines differ between texts of as many lines.
fn differing(was: &str, is: &str) -> usize {
    assert_eq!(was.lines().count(), is.lines().count(), "{is}");
    was.lines().zip(is.lines()).filter(|(was, is)| was != is).count()
}

/// Texts that a spreadsheet would run, or take for something else.
#[test]
fn odd_texts_come_out_harmless_and_come_in_as_they_were() {
    let texts = [
        "=1+1", "+1 a", "-x", "@a", "'=1", "''", "'90", "007", "1e5", "TRUE", "14.0", "a, b", "it's", "x x4",
    ];
    let record = |(nth, text): (usize, &str)| {
        format!("number: X-{nth}\nname: \"{text}\"\nrole: nut\nmaterial: brass\nstamp: \"{text}\"\n")
    };
    let records: Vec<String> = texts.into_iter().enumerate().map(record).collect();
    let world = small().with(FilePath::catalogue("parts/odd.yaml"), records.join("---\n"));
    changes_nothing(&world, "odd");
    let (csv, _) = exported(&world);
    let text = String::from_utf8(csv[0].1.clone()).unwrap();
    for cell in [",'=1+1,", ",'+1 a,", ",'-x,", ",'@a,", ",''=1,"] {
        assert!(text.contains(cell), "{cell}: {text}");
    }
}

/// Ids, stamps and references that YAML and spreadsheets take for numbers. Were they numbers in the workbook, 41E1 would
/// come back as the new record 410, and no row would be left of 41E1.
#[test]
fn numbers_that_are_names_come_back_letter_by_letter() {
    let numbers = ["41E1", "1234567890123456789", "007", "4100", "1.50", "0x1F", "5.3999999999999995"];
    let part = |number: &str| {
        format!(
            "number: {number}\nname: {number}\nrole: cone\nmaterial: brass\nstamp: {number}\ndrawing: {number}\n\
             interface: {number}\ngeometry: {{ collet: {{ bore_mm: 5.3999999999999995, length_mm: 1e1 }} }}\n"
        )
    };
    let fitting = |number: &str| {
        format!(
            "number: F{number}\nname: End\nfamily: cone-dead-end\nconductor: wire\nparts: [B-1, {number}]\n\
             tightening: [{{ item: {number}, thread: {number}, torque_Nm: {{ min: 5.40, max: 6 }} }}]\n"
        )
    };
    let all = |record: &dyn Fn(&str) -> String| numbers.map(record).join("---\n");
    let world = small()
        .with(FilePath::catalogue("parts/odd.yaml"), all(&part))
        .with(FilePath::catalogue("fittings/odd.yaml"), all(&fitting));
    changes_nothing(&world, "numbers that are names");
}

/// The columns against the keys of the records, read by another library.
#[test]
fn every_single_value_of_every_record_has_its_column() {
    fn leaves(value: &serde_yaml::Value) -> usize {
        match value {
            serde_yaml::Value::Mapping(map) => map.values().map(leaves).sum(),
            serde_yaml::Value::Sequence(items) if items.iter().any(is_mapping) => {
                items.iter().map(leaves).sum()
            }
            serde_yaml::Value::Null => 0,
            _ => 1,
        }
    }
    fn is_mapping(item: &serde_yaml::Value) -> bool {
        let one_cell = |map: &serde_yaml::Mapping| map.contains_key("quantity") || map.contains_key("stage");
        item.as_mapping().is_some_and(|map| !one_cell(map))
    }
    let demo = disk("content");
    for sheet in sheets(&demo).unwrap() {
        let mut expected = Vec::new();
        for (path, text) in files_of(&demo) {
            if path.starts_with(&format!("{}/", sheet.kind.folder())) {
                assert!(!nodes(&text).is_empty());
                for document in serde_yaml::Deserializer::from_str(&text) {
                    let value: serde_yaml::Value = serde::Deserialize::deserialize(document).unwrap();
                    expected.push(leaves(&value));
                }
            }
        }
        let found: Vec<usize> = sheet.rows.iter().map(|row| row.iter().flatten().count()).collect();
        assert_eq!(found, expected, "{:?}", sheet.kind);
        let columns: BTreeSet<&String> = sheet.head.iter().collect();
        assert_eq!(columns.len(), sheet.head.len());
    }
}

/// What the catalogue passes over has no rows: a change would go where nobody reads it.
#[test]
fn files_that_are_no_records_have_no_rows() {
    let record = "number: R-1\nname: Words\nrole: nut\nmaterial: brass\n";
    let rows_beside = |path: &str| {
        let world = small().with(FilePath::catalogue(path), record);
        let rows =
            |world: &dyn World| sheets(world).unwrap().iter().map(|sheet| sheet.rows.len()).sum::<usize>();
        rows(&world) - rows(&small())
    };
    for passed_over in ["parts/README.yaml", "parts/.old.yaml", "parts/.trash/r-1.yaml", "README/parts.yaml"]
    {
        assert_eq!(rows_beside(passed_over), 0, "{passed_over}");
    }
    assert_eq!(rows_beside("parts/r-1.yaml"), 1);
}
