//! Outputs that are put in place at once, stay whole when a run dies, and leave others' files alone.

use super::{Leftovers, Staging};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

type Tree = BTreeMap<String, String>;

fn publish(output: &Path, files: &[(&str, &str)]) -> Vec<String> {
    let staging = Staging::open(output).unwrap();
    for (path, text) in files {
        staging.write(path, text.as_bytes()).unwrap();
    }
    staging.put_in_place(Leftovers::Removed).unwrap().left_alone
}

/// Every file below a folder, the manifest excepted.
fn tree(folder: &Path) -> Tree {
    walkdir::WalkDir::new(folder)
        .into_iter()
        .filter_map(Result::ok)
        .filter(|entry| !entry.file_type().is_dir() && entry.file_name() != "manifest.json")
        .map(|entry| {
            let below = entry.path().strip_prefix(folder).unwrap().to_str().unwrap().replace('\\', "/");
            (below, fs::read_to_string(entry.path()).unwrap())
        })
        .collect()
}

fn expected(files: &[(&str, &str)]) -> Tree {
    files.iter().map(|(path, text)| ((*path).to_owned(), (*text).to_owned())).collect()
}

#[test]
fn files_that_no_longer_belong_are_removed_and_others_stay() {
    let folder = tempfile::tempdir().unwrap();
    let output = folder.path().join("output");
    fs::create_dir_all(output.join("notes/empty")).unwrap();
    fs::write(output.join(".gitignore"), "*").unwrap();
    fs::write(output.join("notes/mine.txt"), "mine").unwrap();
    publish(&output, &[("cards/a.svg", "a"), ("cards/old/b.svg", "b"), ("index.html", "1")]);
    publish(&output, &[("cards/a.svg", "a"), ("index.html", "2")]);
    let left = [(".gitignore", "*"), ("notes/mine.txt", "mine"), ("cards/a.svg", "a"), ("index.html", "2")];
    assert_eq!(tree(&output), expected(&left));
    assert!(!output.join("cards/old").exists());
    assert!(output.join("notes/empty").is_dir());
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1, "nothing is left beside the output");
}

#[test]
fn a_file_of_ours_that_somebody_changed_is_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    publish(folder.path(), &[("a.txt", "a"), ("b.txt", "b")]);
    fs::write(folder.path().join("a.txt"), "changed").unwrap();
    let left_alone = publish(folder.path(), &[("b.txt", "b")]);
    assert_eq!(left_alone, ["a.txt"]);
    assert_eq!(tree(folder.path()), expected(&[("a.txt", "changed"), ("b.txt", "b")]));
}

#[test]
fn a_file_that_is_not_ours_is_never_overwritten() {
    for foreign in ["index.html", "manifest.json", "cards", "cards/a.svg/x"] {
        let folder = tempfile::tempdir().unwrap();
        let output = folder.path().join("output");
        let path = output.join(foreign);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(&path, "theirs").unwrap();
        let staging = Staging::open(&output).unwrap();
        staging.write("index.html", b"ours").unwrap();
        staging.write("cards/a.svg", b"ours").unwrap();
        let error = staging.put_in_place(Leftovers::Removed).unwrap_err();
        assert!(error.reason.contains("not written by this program"), "{foreign}: {error}");
        assert_eq!(fs::read_to_string(&path).unwrap(), "theirs");
        assert!(foreign == "index.html" || !output.join("index.html").exists());
    }
}

#[test]
fn a_run_that_is_not_finished_changes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let output = folder.path().join("output");
    let staging = Staging::open(&output).unwrap();
    staging.write("a.txt", b"a").unwrap();
    drop(staging);
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn one_path_is_written_once() {
    let folder = tempfile::tempdir().unwrap();
    let staging = Staging::open(folder.path()).unwrap();
    staging.write("a.txt", b"a").unwrap();
    assert!(staging.write("a.txt", b"b").unwrap_err().reason.contains("two outputs"));
}

#[test]
fn a_second_run_is_kept_out() {
    let folder = tempfile::tempdir().unwrap();
    let first = Staging::open(folder.path()).unwrap();
    let error = Staging::open(folder.path()).unwrap_err();
    assert!(error.reason.contains("another run"), "{error}");
    drop(first);
    assert!(Staging::open(folder.path()).is_ok());
}

#[test]
fn an_output_that_is_a_file_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let output = folder.path().join("output");
    fs::write(&output, "a file").unwrap();
    assert!(Staging::open(&output).unwrap_err().reason.contains("not a folder"));
    assert!(Staging::open(&output.join("below")).is_err());
    assert_eq!(fs::read_to_string(&output).unwrap(), "a file");
}

#[test]
fn leftovers_can_be_kept() {
    let folder = tempfile::tempdir().unwrap();
    let before =
        [("cards/a.svg", "a"), ("sheets/cards-001.pdf", "p"), ("sheets/tags.pdf", "t"), ("sheets.txt", "s")];
    publish(folder.path(), &before);
    let staging = Staging::open(folder.path()).unwrap();
    staging.write("sheets/cards.pdf", b"q").unwrap();
    staging.put_in_place(Leftovers::KeptExceptIn("sheets/cards")).unwrap();
    assert_eq!(
        tree(folder.path()),
        expected(&[
            ("cards/a.svg", "a"),
            ("sheets/cards.pdf", "q"),
            ("sheets/tags.pdf", "t"),
            ("sheets.txt", "s")
        ])
    );
    publish(folder.path(), &[]);
    assert_eq!(tree(folder.path()), Tree::new(), "the manifest knew what was kept");
}

/// The state that a run leaves which is killed after so many files were replaced one by one.
fn killed_after(replaced: usize, output: &Path) {
    let entry = |path: &str, text: &str| {
        let hash = blake3::hash(text.as_bytes()).to_hex();
        format!(r#"{{"path":"{path}","size":{},"blake3":"{hash}"}}"#, text.len())
    };
    let all = [("a.txt", "a"), ("a.txt", "new a"), ("b.txt", "b"), ("c/d.txt", "new d")];
    let entries = all.map(|(path, text)| entry(path, text)).join(",");
    fs::write(output.join("manifest.being-replaced.json"), format!(r#"{{"files":[{entries}]}}"#)).unwrap();
    fs::remove_file(output.join("manifest.json")).unwrap();
    fs::create_dir_all(output.join("c")).unwrap();
    for (path, text) in [("a.txt", "new a"), ("c/d.txt", "new d")].into_iter().take(replaced) {
        fs::write(output.join(path), text).unwrap();
    }
    if replaced == 3 {
        fs::remove_file(output.join("b.txt")).unwrap();
    }
}

#[test]
fn a_run_that_was_killed_while_replacing_is_made_good_by_the_next() {
    for replaced in 0..=3 {
        for theirs in ["mine/m.txt", ".gitignore"] {
            let folder = tempfile::tempdir().unwrap();
            let output = folder.path().join("output");
            publish(&output, &[("a.txt", "a"), ("b.txt", "b")]);
            fs::create_dir_all(output.join(theirs).parent().unwrap()).unwrap();
            fs::write(output.join(theirs), "mine").unwrap();
            killed_after(replaced, &output);
            publish(&output, &[("a.txt", "newest a"), ("e.txt", "e")]);
            let left = [("a.txt", "newest a"), ("e.txt", "e"), (theirs, "mine")];
            assert_eq!(tree(&output), expected(&left), "{replaced} replaced");
            assert!(!output.join("c").exists());
            assert!(output.join("manifest.json").exists());
            assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
        }
    }
}

#[test]
fn what_is_half_replaced_is_not_made_whole_by_a_part() {
    let folder = tempfile::tempdir().unwrap();
    let output = folder.path().join("output");
    publish(&output, &[("a.txt", "a"), ("b.txt", "b")]);
    killed_after(1, &output);
    let staging = Staging::open(&output).unwrap();
    staging.write("b.txt", b"newest b").unwrap();
    let error = staging.put_in_place(Leftovers::KeptExceptIn("sheets")).unwrap_err();
    assert!(error.reason.contains("half replaced"), "{error}");
    assert!(!output.join("manifest.json").exists());
}

#[cfg(unix)]
#[test]
fn an_output_behind_a_link_is_written_where_the_link_leads() {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join("real")).unwrap();
    std::os::unix::fs::symlink("real", folder.path().join("output")).unwrap();
    publish(&folder.path().join("output"), &[("a.txt", "a")]);
    assert!(fs::symlink_metadata(folder.path().join("output")).unwrap().is_symlink());
    assert_eq!(tree(&folder.path().join("real")), expected(&[("a.txt", "a")]));
}
