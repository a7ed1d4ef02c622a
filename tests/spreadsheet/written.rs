//! Files on the disk: all changed or none, and the program as its users run it.

use super::{CONDUCTOR, FITTINGS, PARTS, SETTINGS};
use assert_cmd::Command;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

fn catalogue() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let nut = "number: N-1\nname: Nut\nrole: nut\nmaterial: brass\n";
    for (path, text) in [
        ("catalogue.yaml", SETTINGS),
        ("parts/cones.yaml", PARTS),
        ("parts/nuts.yaml", nut),
        ("fittings/ends.yaml", FITTINGS),
        ("conductors/wire.yaml", CONDUCTOR),
    ] {
        let path = folder.path().join("content").join(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
    folder
}

fn tree(folder: &Path) -> BTreeMap<String, String> {
    let entries = walkdir::WalkDir::new(folder.join("content")).into_iter().map(Result::unwrap);
    let name = |path: &Path| path.strip_prefix(folder).unwrap().display().to_string();
    let text = |entry: walkdir::DirEntry| {
        let text = if entry.file_type().is_file() {
            fs::read_to_string(entry.path()).unwrap()
        } else {
            String::new()
        };
        (name(entry.path()), text)
    };
    entries.map(text).collect()
}

/// Runs `import` on a table; gives its exit code and what it said, results before findings.
fn run(folder: &Path, name: &str, table: &str, more: &[&str]) -> (Option<i32>, String) {
    fs::write(folder.join(name), table).unwrap();
    let mut command = Command::cargo_bin("fittingcards").unwrap();
    let output = command.current_dir(folder).args(["import", name]).args(more).output().unwrap();
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    (output.status.code(), text(&output.stdout) + &text(&output.stderr))
}

const TABLE: &str = "number,name\nC-1,Cone\nB-1,Collet body\nC-2,New\n";

#[test]
fn a_dry_run_says_what_would_change_and_writes_nothing() {
    let folder = catalogue();
    let before = tree(folder.path());
    let table = "number,name,stamp,role,material\nC-1,Cone,X,,\nC-2,New,,cone,brass\n";
    let table = table.replace("C-1,Cone,X,,", "C-1,Cone,X,cone,bronze-soft");
    let (code, said) = run(folder.path(), "parts.csv", &table, &["--dry-run"]);
    for words in [
        "2 records would change, 1 of them new; nothing was written",
        "name: Cone 14.0 becomes Cone",
        "C-2, new: content/parts/C-2.yaml",
        "name: New is added",
    ] {
        assert!(said.contains(words), "{words}: {said}");
    }
    assert_eq!((code, tree(folder.path())), (Some(0), before));
}

#[test]
fn nothing_is_written_while_a_row_is_wrong() {
    let folder = catalogue();
    let before = tree(folder.path());
    let (code, said) = run(folder.path(), "parts.csv", TABLE, &[]);
    assert!(said.contains("parts.csv:4:1: error[missing-key]: C-2"), "{said}");
    assert_eq!((code, tree(folder.path())), (Some(1), before));
}

#[test]
fn what_is_right_is_written_and_nothing_else_is_left() {
    let folder = catalogue();
    let before = tree(folder.path());
    let right = TABLE.replace("C-2,New\n", "");
    let (code, said) = run(folder.path(), "table.csv", &right, &["--kind", "parts"]);
    assert_eq!(code, Some(0), "{said}");
    let after = tree(folder.path());
    assert_eq!(before.keys().collect::<Vec<_>>(), after.keys().collect::<Vec<_>>());
    let expected = PARTS.replace("name: Cone 14.0", "name: Cone").replace("name: Body", "name: Collet body");
    assert!(said.contains("N-1 has no row: it stays as it is"), "{said}");
    assert_eq!(after["content/parts/cones.yaml"], expected);
    let (code, said) = run(folder.path(), "table.csv", &right, &["--kind", "parts"]);
    assert!(code == Some(0) && said.contains("nothing changes"), "{said}");
}

/// A file stands in the way of a new folder, and is met after another file has its new text.
#[test]
fn where_one_file_cannot_be_written_none_is_changed() {
    use fittingcards::publish::{ImportInto, import};
    use fittingcards::source::DiskWorld;
    let folder = catalogue();
    let content = folder.path().join("content");
    fs::remove_dir_all(content.join("fittings")).unwrap();
    fs::write(content.join("fittings"), "in the way").unwrap();
    let before = tree(folder.path());
    let mut book = rust_xlsxwriter::Workbook::new();
    for (sheet, rows) in [
        ("parts", [&["number", "name"][..], &["B-1", "Other"]]),
        (
            "fittings",
            [
                &["number", "name", "family", "conductor", "parts"],
                &["F-9", "End", "cone-dead-end", "wire", "B-1, C-1"],
            ],
        ),
    ] {
        let page = book.add_worksheet();
        page.set_name(sheet).unwrap();
        for (row, cells) in (0..).zip(rows) {
            page.write_row(row, 0, cells.iter().copied()).unwrap();
        }
    }
    let table = folder.path().join("records.xlsx");
    book.save(&table).unwrap();
    let world = DiskWorld::new(&content, folder.path().join("layouts"));
    let dry = import(&world, &table, None, ImportInto::Nothing).unwrap();
    assert_eq!((dry.import.files.len(), dry.import.findings.has_errors()), (2, false));
    import(&world, &table, None, ImportInto::Catalogue(&content)).unwrap_err();
    assert_eq!(tree(folder.path()), before);
}

#[test]
fn a_table_that_is_not_there_is_a_fault_and_leaves_nothing() {
    let folder = catalogue();
    let mut command = Command::cargo_bin("fittingcards").unwrap();
    command.current_dir(folder.path()).args(["import", "nowhere.csv"]).assert().code(2);
    let work = folder.path().join("content/.importing");
    assert!(!work.exists());
}

/// An export that failed must not look like a comparison that went well.
#[test]
fn a_table_with_nothing_in_it_is_an_error() {
    let folder = catalogue();
    let before = tree(folder.path());
    for nothing in ["", "\n\n", "\u{feff}", ",,\n , \n"] {
        for more in [&[][..], &["--dry-run"]] {
            let (code, said) = run(folder.path(), "parts.csv", nothing, more);
            let told = "parts.csv: error[empty-document]: this table is empty, but the catalogue has 3 parts";
            assert!(said.contains(told) && !said.contains("nothing changes"), "{nothing:?}: {said}");
            assert_eq!((code, tree(folder.path())), (Some(1), before.clone()), "{nothing:?}");
        }
    }
}

/// A stamp 14 for 14.0 may be somebody's correction: nobody must read that every row says what its record says.
#[test]
fn a_correction_that_is_not_taken_is_told() {
    let folder = catalogue();
    let before = tree(folder.path());
    let (code, said) = run(folder.path(), "parts.csv", "number,stamp\nC-1,14\n", &[]);
    assert!(said.starts_with("nothing changes\n"), "{said}");
    assert!(said.contains("parts.csv:2:5: warning[letters-changed]: C-1"), "{said}");
    assert_eq!((code, tree(folder.path())), (Some(0), before));
}
