//! The register as the disk holds it: an edition whole or not at all, whatever happens to `issue`.

use std::fs;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// How often `issue` is killed.
const KILLS: u32 = 100;

/// A small catalogue with edition e1 on its register, in `content`.
fn desk() -> TempDir {
    let folder = TempDir::new().unwrap();
    let from = crate::fixtures::root().join("tests/findings/copies-still-out");
    for file in [
        "catalogue.yaml",
        "conductors/wire.yaml",
        "parts/parts.yaml",
        "fittings/end.yaml",
        "register/e1.yaml",
    ] {
        let to = folder.path().join("content").join(file);
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::copy(from.join(file), to).unwrap();
    }
    folder
}

fn issue(folder: &Path, edition: &str) -> Child {
    Command::new(assert_cmd::cargo::cargo_bin("fittingcards"))
        .args(["issue", "--quiet", "--edition", edition, "--date", "2026-02-02"])
        .args(["--checked-by", "A. Reed", "--approved-by", "B. Holm"])
        .current_dir(folder)
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

/// Names of the editions that can be read by name, hidden ones left out.
fn editions(folder: &Path) -> Vec<String> {
    let files = fs::read_dir(folder.join("content/register")).unwrap();
    let names = files.map(|file| file.unwrap().file_name().to_string_lossy().into_owned());
    let mut names: Vec<String> = names.filter(|name| !name.starts_with('.')).collect();
    names.sort();
    names
}

/// Whether the program finds the register whole: it tells of no error.
fn is_whole(folder: &Path) -> bool {
    let compare = Command::new(assert_cmd::cargo::cargo_bin("fittingcards"))
        .args(["compare", "--quiet"])
        .current_dir(folder)
        .output()
        .unwrap();
    compare.status.success()
}

#[test]
fn a_killed_issue_leaves_the_old_register_or_the_new_one_whole() {
    let folder = desk();
    let start = Instant::now();
    assert!(issue(folder.path(), "e2").wait().unwrap().success());
    let takes = start.elapsed();
    assert_eq!(editions(folder.path()), ["e1.yaml", "e2.yaml"]);
    let whole = fs::read(folder.path().join("content/register/e2.yaml")).unwrap();
    for kill in 0..KILLS {
        fs::remove_file(folder.path().join("content/register/e2.yaml")).ok();
        let mut run = issue(folder.path(), "e2");
        // Later and later, up to somewhat longer than it took.
        thread::sleep(takes.mul_f64(1.3) * kill / KILLS + Duration::from_micros(u64::from(kill % 7) * 130));
        run.kill().unwrap();
        run.wait().unwrap();
        match editions(folder.path()).as_slice() {
            [_] => {}
            [_, second] => {
                assert_eq!(fs::read(folder.path().join("content/register").join(second)).unwrap(), whole);
            }
            other => panic!("{other:?}"),
        }
    }
    assert!(is_whole(folder.path()));
    fs::remove_file(folder.path().join("content/register/e2.yaml")).ok();
    assert!(issue(folder.path(), "e2").wait().unwrap().success());
    let left: Vec<_> = fs::read_dir(folder.path().join("content/register")).unwrap().collect();
    assert_eq!(left.len(), 2, "nothing else is left: {left:?}");
}

/// Of two that are begun at once, one wins; the other is told that it came too late, or issues after the first.
#[test]
fn of_two_at_once_one_wins_and_the_other_is_told() {
    let folder = desk();
    let runs = ["e2", "e2"].map(|edition| issue(folder.path(), edition));
    let ends = runs.map(|run| run.wait_with_output().unwrap());
    let won = ends.iter().filter(|end| end.status.success()).count();
    assert_eq!(won, 1);
    let told = ends.iter().find(|end| !end.status.success()).unwrap();
    let told = String::from_utf8_lossy(&told.stderr).into_owned();
    assert!(told.contains("another `issue` is at work") || told.contains("is on the register"), "{told}");
    assert!(is_whole(folder.path()));

    let runs = ["e3", "e4"].map(|edition| issue(folder.path(), edition));
    for end in runs.map(|run| run.wait_with_output().unwrap()) {
        assert!(end.status.success() || String::from_utf8_lossy(&end.stderr).contains("another `issue`"));
    }
    assert!(is_whole(folder.path()));
}
