//! An import that is cut off: all files new or all old, or every command says so until the next import has finished it.

use super::SETTINGS;
use assert_cmd::Command;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Stdio;
use std::thread;
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// How often `import` is killed; KILLS in the environment says otherwise.
const KILLS: u32 = 40;
/// Parts, a file each: enough that placing them takes a while.
const PARTS: usize = 40;

fn text(number: usize, name: &str) -> String {
    format!("number: P-{number:02}\nname: {name}\nrole: nut\nmaterial: brass\n")
}

/// A catalogue of parts in a file each, and a table that names all of them anew and adds one.
fn catalogue() -> TempDir {
    let folder = TempDir::new().unwrap();
    let parts = folder.path().join("content/parts");
    fs::create_dir_all(&parts).unwrap();
    fs::write(folder.path().join("content/catalogue.yaml"), SETTINGS).unwrap();
    reset(folder.path());
    let rows: String = (0..=PARTS).map(|number| format!("P-{number:02},New,nut,brass\n")).collect();
    fs::write(folder.path().join("parts.csv"), format!("number,name,role,material\n{rows}")).unwrap();
    folder
}

fn reset(folder: &Path) {
    let content = folder.join("content");
    fs::remove_dir_all(content.join(".importing")).ok();
    fs::remove_file(content.join(format!("parts/P-{PARTS:02}.yaml"))).ok();
    for number in 0..PARTS {
        fs::write(content.join(format!("parts/{number:02}.yaml")), text(number, "Old")).unwrap();
    }
}

/// The names of all parts as their files say them, with how many files have each.
fn names(folder: &Path) -> BTreeMap<String, usize> {
    let mut names = BTreeMap::new();
    for file in fs::read_dir(folder.join("content/parts")).unwrap() {
        let text = fs::read_to_string(file.unwrap().path()).unwrap();
        let name = text.lines().find_map(|line| line.strip_prefix("name: ")).unwrap();
        assert_eq!(text.lines().count(), 4, "a file is whole: {text}");
        *names.entry(name.to_owned()).or_default() += 1;
    }
    names
}

/// What a command says, and whether all was well.
fn run(folder: &Path, arguments: &[&str]) -> (bool, String) {
    let mut command = Command::cargo_bin("fittingcards").unwrap();
    let output = command.current_dir(folder).args(arguments).output().unwrap();
    let said = String::from_utf8([output.stdout, output.stderr].concat()).unwrap();
    (output.status.success(), said)
}

fn all_new() -> BTreeMap<String, usize> {
    BTreeMap::from([("New".to_owned(), PARTS + 1)])
}

#[test]
fn a_killed_import_leaves_all_old_or_all_new_or_is_told_and_finished() {
    let folder = catalogue();
    let begin = || {
        let mut command = std::process::Command::new(assert_cmd::cargo::cargo_bin("fittingcards"));
        command.args(["import", "parts.csv", "--quiet"]).current_dir(folder.path());
        command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap()
    };
    let start = Instant::now();
    assert!(begin().wait().unwrap().success());
    let takes = start.elapsed();
    assert_eq!(names(folder.path()), all_new());
    let kills = std::env::var("KILLS").ok().and_then(|kills| kills.parse().ok()).unwrap_or(KILLS);
    for kill in 0..kills {
        reset(folder.path());
        let mut import = begin();
        // Most of the kills fall into the last part of the run, where files are written and placed.
        let share = 0.4 + 0.8 * f64::from(kill) / f64::from(kills);
        thread::sleep(takes.mul_f64(share) + Duration::from_micros(u64::from(kill % 7) * 130));
        import.kill().unwrap();
        import.wait().unwrap();
        let names = names(folder.path());
        let (_, said) = run(folder.path(), &["audit", "--records"]);
        let is_told = said.contains("content/.importing/placing: error[import-cut-off]");
        assert!(is_told || names.len() == 1, "a mixture that nobody tells of: {names:?}: {said}");
        let (is_well, said) = run(folder.path(), &["import", "parts.csv"]);
        assert!(is_well && said.contains("an earlier import was cut off") == is_told, "{said}");
        assert_eq!(self::names(folder.path()), all_new());
        assert!(!folder.path().join("content/.importing").exists(), "nothing is left");
    }
}

/// What a killed import leaves, laid out by hand: the first file in its place, the second not yet.
fn half_done(folder: &Path) {
    let work = folder.join("content/.importing");
    fs::create_dir_all(&work).unwrap();
    fs::write(folder.join("content/parts/00.yaml"), text(0, "New")).unwrap();
    for (name, text) in [
        ("0.old", text(0, "Old")),
        ("1.new", text(1, "New")),
        ("1.old", text(1, "Old")),
        ("2.new", text(PARTS, "New")),
        ("placing", format!("[\"parts/00.yaml\",\"parts/01.yaml\",\"parts/P-{PARTS:02}.yaml\"]")),
    ] {
        fs::write(work.join(name), text).unwrap();
    }
}

#[test]
fn what_is_half_done_stops_whatever_reads_the_records() {
    let folder = catalogue();
    half_done(folder.path());
    let issue = [
        "issue",
        "--edition",
        "e1",
        "--date",
        "2026-01-01",
        "--checked-by",
        "A. Reed",
        "--approved-by",
        "B. Holm",
    ];
    let commands: [&[&str]; 5] =
        [&["render"], &["audit"], &["compare"], &issue, &["import", "parts.csv", "--dry-run"]];
    for command in commands {
        let (is_well, said) = run(folder.path(), command);
        assert!(!is_well && said.contains("error[import-cut-off]"), "{command:?}: {said}");
    }
    assert!(!folder.path().join("output").exists());
    assert_eq!(names(folder.path()).len(), 2, "a dry run puts nothing in place");
    let (is_well, said) = run(folder.path(), &["import", "parts.csv"]);
    assert!(
        is_well && said.contains("an earlier import was cut off: its 3 files are all in place now"),
        "{said}"
    );
    assert_eq!(names(folder.path()), all_new());
}

#[test]
fn a_file_that_was_changed_since_is_left_to_people() {
    let folder = catalogue();
    half_done(folder.path());
    fs::write(folder.path().join("content/parts/01.yaml"), text(1, "By hand")).unwrap();
    let before = names(folder.path());
    for _ in 0..2 {
        let (is_well, said) = run(folder.path(), &["import", "parts.csv"]);
        assert!(
            !is_well && said.contains("parts/01.yaml") && said.contains("was changed since then"),
            "{said}"
        );
        assert_eq!(names(folder.path()), before);
    }
}

/// The list lies where anybody may have written it: it leads nowhere but to records of the catalogue.
#[test]
fn a_list_that_leads_elsewhere_is_refused() {
    for path in [
        "../outside.yaml",
        "/tmp/outside.yaml",
        "parts/../../outside.yaml",
        "parts/.x/a.yaml",
        "parts/a.txt",
        "",
    ] {
        let folder = catalogue();
        let work = folder.path().join("content/.importing");
        fs::create_dir_all(&work).unwrap();
        fs::write(work.join("0.new"), text(0, "New")).unwrap();
        fs::write(work.join("placing"), serde_json::json!([path]).to_string()).unwrap();
        let (is_well, said) = run(folder.path(), &["import", "parts.csv"]);
        assert!(!is_well && said.contains("its list of files can't be read"), "{path}: {said}");
        assert!(work.join("0.new").exists() && !folder.path().join("outside.yaml").exists());
    }
}
