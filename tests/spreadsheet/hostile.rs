//! Files that are damaged, or made to do harm.

use super::{FITTINGS, errors, exported, imported, small};
use fittingcards::diagnostics::Findings;
use fittingcards::source::FilePath;
use fittingcards::spreadsheet::{read_tables, sheets, workbook};
use jiff::civil::date;
use std::io::Write;

#[test]
fn the_same_records_give_the_same_workbook_with_the_catalogues_date() {
    let sheets = sheets(&small()).unwrap();
    let day = Some(date(2026, 1, 1));
    let (one, two) = (workbook(&sheets, day).unwrap(), workbook(&sheets, day).unwrap());
    assert_eq!(one, two);
    assert_ne!(one, workbook(&sheets, Some(date(2026, 1, 2))).unwrap());
}

#[test]
fn damaged_files_are_told_and_break_nothing() {
    let (csv, xlsx) = exported(&small());
    let mut random = fastrand::Rng::with_seed(3);
    for _ in 0..300 {
        for (name, bytes) in [("records.xlsx", &xlsx), ("parts.csv", &csv[0].1)] {
            let mut bytes = bytes.clone();
            for _ in 0..random.usize(1..8) {
                let at = random.usize(..bytes.len());
                bytes[at] = random.u8(..);
            }
            bytes.truncate(random.usize(1..=bytes.len()));
            let mut findings = Findings::new();
            let tables = read_tables(name, &bytes, None, &mut findings);
            assert!(!tables.is_empty() || findings.has_errors());
        }
    }
    for (name, bytes) in [
        ("a.xlsx", b"PK".as_slice()),
        ("a.ods", b"PK"),
        ("list.csv", b"number\n"),
        ("parts.csv", b"\xff\xfe"),
    ] {
        let mut findings = Findings::new();
        assert!(read_tables(name, bytes, None, &mut findings).is_empty());
        let found = findings.sorted();
        assert!(
            ["not-a-spreadsheet", "not-utf8"].contains(&found[0].code) && !found[0].help.is_empty(),
            "{name}"
        );
    }
}

/// A file of a few kilobytes that holds far more than memory should be given for, be it one packed file or many, and
/// whatever it states of their sizes.
#[test]
fn a_file_that_unpacks_to_too_much_is_refused_before_it_is_read() {
    let stored = bomb(&[140]);
    let honest = bomb(&[50, 50, 50]);
    for (bytes, is_lying) in [(&stored, false), (&honest, false), (&stored, true)] {
        let mut bytes = bytes.clone();
        if is_lying {
            state_small_sizes(&mut bytes);
        }
        assert!(bytes.len() < 1024 * 1024, "{} bytes", bytes.len());
        let mut findings = Findings::new();
        assert!(read_tables("records.xlsx", &bytes, None, &mut findings).is_empty());
        let found = findings.sorted();
        let codes: Vec<&str> = found.iter().map(|finding| finding.code).collect();
        if is_lying {
            // Nothing is unpacked beyond what it states, or all of it is counted.
            assert!(codes == ["too-large"] || codes == ["not-a-spreadsheet"], "{codes:?}");
        } else {
            assert_eq!(codes, ["too-large"]);
            assert!(found[0].expected.as_deref().is_some_and(|said| said.contains("128 MiB")), "{found:?}");
        }
    }
}

/// A packed file with so many MiB of spaces in each of its files.
fn bomb(sizes: &[usize]) -> Vec<u8> {
    let mut packed = zip::ZipWriter::new(std::io::Cursor::new(Vec::new()));
    let spaces = vec![b' '; 1024 * 1024];
    for (nth, mebibytes) in sizes.iter().enumerate() {
        let deflated =
            zip::write::SimpleFileOptions::default().compression_method(zip::CompressionMethod::Deflated);
        packed.start_file(format!("xl/worksheets/sheet{nth}.xml"), deflated).unwrap();
        for _ in 0..*mebibytes {
            packed.write_all(&spaces).unwrap();
        }
    }
    packed.finish().unwrap().into_inner()
}

/// Has each entry of the list at the end say that it unpacks to 100 bytes (APPNOTE 6.3.10, 4.3.12: signature, and four
/// bytes of size at 24).
fn state_small_sizes(bytes: &mut [u8]) {
    let entries: Vec<usize> =
        bytes.windows(4).enumerate().filter(|(_, four)| four == b"PK\x01\x02").map(|(at, _)| at).collect();
    assert!(!entries.is_empty());
    for at in entries {
        bytes[at + 24..at + 28].copy_from_slice(&100_u32.to_le_bytes());
    }
}

/// A cell in the last corner of a sheet asks for no memory of all the cells before it.
#[test]
fn a_cell_far_away_is_told_and_not_waited_for() {
    let mut book = rust_xlsxwriter::Workbook::new();
    let page = book.add_worksheet();
    page.set_name("parts").unwrap();
    page.write_string(0, 0, "number").unwrap();
    page.write_string(1, 0, "C-1").unwrap();
    page.write_string(1_048_575, 16_383, "far").unwrap();
    let bytes = book.save_to_buffer().unwrap();
    let import = imported(&small(), &[("records.xlsx", &bytes)]);
    let found: Vec<_> =
        errors(&import).into_iter().map(|(code, _, line, column)| (code, line, column)).collect();
    assert_eq!(found, [("missing-key", 1_048_576, 1), ("unknown-key", 1_048_576, 16_384)]);
}

/// Texts of a sheet are meant as they are written; its numbers, days and truths by their values; its faults are told.
#[test]
fn cells_of_a_workbook_come_in_as_what_they_are() {
    let mut book = rust_xlsxwriter::Workbook::new();
    let page = book.add_worksheet();
    page.set_name("Parts").unwrap();
    for (column, head) in (0..).zip([
        "number",
        "stamp",
        "geometry.collet.bore_mm",
        "proven_on.1.date",
        "mark.seen_after_assembly",
        "name",
    ]) {
        page.write_string(2, column, head).unwrap();
    }
    let day = rust_xlsxwriter::ExcelDateTime::from_ymd(2026, 2, 11).unwrap();
    let format = rust_xlsxwriter::Format::new().set_num_format("dd.mm.yyyy");
    page.write_string(3, 0, "C-1").unwrap();
    page.write_string(3, 1, "14").unwrap();
    page.write_number(3, 2, 14.3).unwrap();
    page.write_datetime_with_format(3, 3, &day, &format).unwrap();
    page.write_boolean(3, 4, true).unwrap();
    page.write_string(3, 5, "=HYPERLINK(\"x\")").unwrap();
    let bytes = book.save_to_buffer().unwrap();
    let import = imported(&small(), &[("records.xlsx", &bytes)]);
    let words: Vec<String> = import.changes[0].keys.iter().map(|key| key.words()).collect();
    let expected = [
        "stamp: 14.0 becomes 14",
        "proven_on.1.date: 2026-02-10 becomes 2026-02-11",
        "mark.seen_after_assembly: true is added",
        "name: Cone 14.0 becomes =HYPERLINK(\"x\")",
    ];
    assert_eq!(words, expected);
    assert_eq!(import.changes[0].keys[0].cell.line, 4);
    assert!(import.changes[0].keys[0].cell.file == FilePath::catalogue("records.xlsx, sheet parts"));
}

/// A spreadsheet makes 14 of a stamp 14.0, and a day of 3-4: neither may become the stamp. A number where a number belongs
/// is sound, and so is a stamp that is held for a text.
#[test]
fn a_stamp_that_is_a_number_or_a_day_is_refused() {
    let mut book = rust_xlsxwriter::Workbook::new();
    let page = book.add_worksheet();
    page.set_name("parts").unwrap();
    for (column, head) in (0..).zip(["number", "stamp", "drawing", "geometry.collet.bore_mm", "mark.text"]) {
        page.write_string(0, column, head).unwrap();
    }
    let day = rust_xlsxwriter::ExcelDateTime::from_ymd(2026, 4, 3).unwrap();
    let format = rust_xlsxwriter::Format::new().set_num_format("d-m");
    page.write_string(1, 0, "C-1").unwrap();
    page.write_number(1, 1, 15.0).unwrap();
    page.write_datetime_with_format(1, 2, &day, &format).unwrap();
    page.write_number(1, 3, 14.4).unwrap();
    page.write_string(1, 4, "15").unwrap();
    let bytes = book.save_to_buffer().unwrap();
    let import = imported(&small(), &[("records.xlsx", &bytes)]);
    let found: Vec<_> = errors(&import)
        .into_iter()
        .filter(|(code, ..)| *code == "wrong-type")
        .map(|(_, _, line, column)| (line, column))
        .collect();
    assert_eq!(found, [(2, 2), (2, 3)]);
}

/// A formula leaves a remainder that nobody sees. Were it taken as it is held, the record would state 17 digits, and cards
/// print them.
#[test]
fn a_number_has_the_digits_that_a_spreadsheet_shows() {
    let bytes = book(&["number", "geometry.collet.bore_mm", "geometry.collet.length_mm"], |page| {
        page.write_string(1, 0, "C-1").unwrap();
        page.write_number(1, 1, 5.399_999_999_999_999_5).unwrap();
        page.write_formula(1, 2, rust_xlsxwriter::Formula::new("=0.1+0.2").set_result("0.30000000000000004"))
            .unwrap();
    });
    let import = imported(&small(), &[("records.xlsx", &bytes)]);
    let words: Vec<String> = import.changes[0].keys.iter().map(|key| key.words()).collect();
    assert_eq!(
        words,
        ["geometry.collet.bore_mm: 14.30 becomes 5.4", "geometry.collet.length_mm: 0.3 is added"]
    );
}

/// A workbook with a sheet of parts: these columns, and what is written below them.
fn book(head: &[&str], fill: impl Fn(&mut rust_xlsxwriter::Worksheet)) -> Vec<u8> {
    let mut book = rust_xlsxwriter::Workbook::new();
    let page = book.add_worksheet();
    page.set_name("parts").unwrap();
    page.write_row(0, 0, head.iter().copied()).unwrap();
    fill(page);
    book.save_to_buffer().unwrap()
}

/// Programs that write formulas without working them out leave cells that show nothing: they take no value out.
#[test]
fn a_formula_that_shows_nothing_takes_nothing_out() {
    let mut book = rust_xlsxwriter::Workbook::new();
    let page = book.add_worksheet();
    page.set_name("parts").unwrap();
    page.write_row(0, 0, ["number", "stamp", "geometry.collet.bore_mm"]).unwrap();
    page.write_row(1, 0, ["C-1", "14.0"]).unwrap();
    page.write_formula(1, 2, rust_xlsxwriter::Formula::new("=14+0.3").set_result(" ")).unwrap();
    let bytes = book.save_to_buffer().unwrap();
    let import = imported(&small(), &[("records.xlsx", &bytes)]);
    let found: Vec<_> =
        errors(&import).into_iter().map(|(code, _, line, column)| (code, line, column)).collect();
    assert_eq!(found, [("not-a-spreadsheet", 2, 3)]);
}

/// Only a kind of which the catalogue has no record has an empty sheet.
#[test]
fn an_empty_sheet_beside_others_is_told() {
    let mut book = rust_xlsxwriter::Workbook::new();
    let page = book.add_worksheet();
    page.set_name("parts").unwrap();
    page.write_row(0, 0, ["number", "name"]).unwrap();
    page.write_row(1, 0, ["N-1", "Nut"]).unwrap();
    book.add_worksheet().set_name("fittings").unwrap();
    let bytes = book.save_to_buffer().unwrap();
    let told: Vec<_> = errors(&imported(&small(), &[("records.xlsx", &bytes)]));
    assert_eq!(told.iter().map(|(code, ..)| *code).collect::<Vec<_>>(), ["empty-document"], "{told:?}");
}

/// A day that a spreadsheet has made of a thread 3/4, a name or a number 2-1 is a text in no column. Were only stamps
/// refused, the record would state the thread 2026-03-04.
#[test]
fn a_day_is_refused_wherever_no_day_belongs() {
    let day = rust_xlsxwriter::ExcelDateTime::from_ymd(2026, 3, 4).unwrap();
    let format = rust_xlsxwriter::Format::new().set_num_format("d-mmm");
    let columns =
        ["number", "name", "interface", "geometry.collet.bore_mm", "mark.colour", "proven_on.1.date"];
    let bytes = book(&columns, |page| {
        page.write_string(1, 0, "C-1").unwrap();
        for column in 1..6 {
            page.write_datetime_with_format(1, column, &day, &format).unwrap();
        }
        page.write_datetime_with_format(2, 0, &day, &format).unwrap();
        page.write_string(2, 1, "New").unwrap();
    });
    let found: Vec<_> = errors(&imported(&small(), &[("records.xlsx", &bytes)]))
        .into_iter()
        .filter(|(code, ..)| ["wrong-type", "unknown-word"].contains(code))
        .map(|(_, _, line, column)| (line, column))
        .collect();
    assert_eq!(found, [(2, 2), (2, 3), (2, 4), (2, 5), (3, 1)]);
    let mut book = rust_xlsxwriter::Workbook::new();
    let page = book.add_worksheet();
    page.set_name("fittings").unwrap();
    page.write_row(0, 0, ["number", "tightening.1.thread", "tightening.1.grease"]).unwrap();
    page.write_string(1, 0, "F-1").unwrap();
    page.write_datetime_with_format(1, 1, &day, &format).unwrap();
    page.write_datetime_with_format(1, 2, &day, &format).unwrap();
    let bytes = book.save_to_buffer().unwrap();
    let found = errors(&imported(&small(), &[("records.xlsx", &bytes)]));
    let sheet = || "records.xlsx, sheet fittings".to_owned();
    assert_eq!(found, [("wrong-type", sheet(), 2, 2), ("wrong-type", sheet(), 2, 3)]);
}

/// What a program that opens a CSV file makes of letters that look like days and numbers. Were texts taken as they come,
/// the first would be written with no word, and the last dropped with none.
#[test]
fn letters_that_a_spreadsheet_may_have_changed_are_told() {
    let part = |number: &str, stamp: &str| {
        format!("number: {number}\nname: Cone\nrole: cone\nmaterial: brass\nstamp: \"{stamp}\"\n")
    };
    let records =
        [("41E1", "1-2"), ("S-2", "B14.0"), ("S-3", "12345678901234567890"), ("S-4", "1E3"), ("S-5", "14.0")];
    let records = records.map(|(number, stamp)| part(number, stamp)).join("---\n");
    let world = small().with(FilePath::catalogue("parts/odd.yaml"), records);
    let told = |table: &str| {
        let import = imported(&world, &[("parts.csv", table.as_bytes())]);
        let found = import.findings.sorted();
        let told: Vec<_> = found
            .iter()
            .filter(|found| found.code == "letters-changed")
            .map(|found| (found.severity.word(), found.place.line))
            .collect();
        assert!(found.iter().all(|found| found.code != "letters-changed" || !found.help.is_empty()));
        (told, import.changes.len())
    };
    let (error, warning) = ("error", "warning");
    // The record could have been taken for a day or a long number.
    assert_eq!(told("number,stamp\n41E1,02-Jan\n"), (vec![(error, 2)], 1));
    assert_eq!(told("number,stamp\nS-3,1.23457E+19\n"), (vec![(error, 2)], 1));
    assert_eq!(told("number,stamp\nS-3,12345678901234600000\n"), (vec![(error, 2)], 1));
    // It could not, and the cell looks like it all the same.
    assert_eq!(told("number,stamp\nS-2,02-Jan\n"), (vec![(warning, 2)], 1));
    // The same number in other letters: the record stays, and somebody is told.
    assert_eq!(told("number,stamp\nS-4,1000\nS-5,14\n"), (vec![(warning, 2), (warning, 3)], 0));
    assert_eq!(told("number,stamp\nS-5,14.0\nS-2,B14.1\n"), (vec![], 1));
    // A number that becomes another is no new record.
    assert_eq!(told("number,stamp\n410,X\n02-Jan,X\n").0, [(error, 2), (error, 3)]);
}

/// A cell that shows 25 % holds 0.25: a wear limit of a quarter of a percent would be written.
#[test]
fn a_cell_that_shows_a_percentage_is_refused() {
    for (format, is_refused) in [("0%", true), ("0.00\" \"%", true), ("0.00", false), ("0\" %\"", false)] {
        let mut book = rust_xlsxwriter::Workbook::new();
        let page = book.add_worksheet();
        page.set_name("conductors").unwrap();
        page.write_row(0, 0, ["id", "name", "stated.breaking_load_kN"]).unwrap();
        page.write_string(1, 0, "wire").unwrap();
        let format = rust_xlsxwriter::Format::new().set_num_format(format);
        page.write_number_with_format(1, 2, 0.25, &format).unwrap();
        page.write_string(1, 1, "Wire").unwrap();
        let bytes = book.save_to_buffer().unwrap();
        let import = imported(&small(), &[("records.xlsx", &bytes)]);
        let found: Vec<_> =
            errors(&import).into_iter().map(|(code, _, line, column)| (code, line, column)).collect();
        assert_eq!(found.contains(&("fraction-for-percent", 2, 3)), is_refused, "{found:?}");
    }
    // Without a format it is told by the key.
    for (limit, is_refused) in [("0.25", true), ("25", false)] {
        let table = format!("id,construction.grooved.wear.limit_percent\nwire,{limit}\n");
        let found = errors(&imported(&small(), &[("conductors.csv", table.as_bytes())]));
        let is_told = found.iter().any(|(code, ..)| *code == "fraction-for-percent");
        assert_eq!(is_told, is_refused, "{found:?}");
    }
}

/// Of merged cells only the first holds a value: the others would take theirs out of their records, with no word.
#[test]
fn merged_cells_take_nothing_out() {
    let format = rust_xlsxwriter::Format::new();
    let fill = |page: &mut rust_xlsxwriter::Worksheet| {
        for (line, number) in (1..).zip(["B-1", "C-1", "N-1"]) {
            page.write_string(line, 0, number).unwrap();
        }
    };
    let below = book(&["number", "name", "material"], |page| {
        fill(page);
        page.merge_range(2, 2, 3, 2, "brass", &format).unwrap();
        page.merge_range(1, 1, 3, 1, "Nut", &format).unwrap();
    });
    let import = imported(&small(), &[("records.xlsx", &below)]);
    let told = errors(&import);
    assert!(told.contains(&("not-a-spreadsheet", "records.xlsx, sheet parts".to_owned(), 2, 2)), "{told:?}");
    let found = import.findings.sorted().iter().find_map(|finding| finding.found.clone());
    assert_eq!(found.as_deref(), Some("rows 2 to 4, columns 2 to 2"));
    // In the head they hide no value.
    let above = book(&["number", "interface"], |page| {
        fill(page);
        page.merge_range(0, 1, 0, 2, "interface", &format).unwrap();
    });
    assert_eq!(errors(&imported(&small(), &[("records.xlsx", &above)])), []);
}

/// A CSV file says nothing of its code: programs take it for Windows-1252, and save what they see. The records would be
/// given `fÃ¼r`, and cards would print it.
#[test]
fn letters_that_were_read_in_another_code_are_refused() {
    let named = FITTINGS.replace("name: Dead-end", "name: Dead-end für Ø 14");
    let world = small().with(FilePath::catalogue("fittings/ends.yaml"), named);
    for (name, is_refused) in
        [("Dead-end fÃ¼r Ã˜ 14", true), ("Dead-end f?r ? 14", true), ("Dead-end für Ø 15", false)]
    {
        let table =
            format!("number,name,steps\nF-1,{name},\"Push in, all the way.\nScrew down at 20 °C.\"\n");
        let found = errors(&imported(&world, &[("fittings.csv", table.as_bytes())]));
        let expected = if is_refused { vec![("not-utf8", "fittings.csv".to_owned(), 2, 5)] } else { vec![] };
        assert_eq!(found, expected, "{name}");
    }
}
