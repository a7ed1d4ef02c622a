//! `fittingcards start`.

use super::{Run, root};

#[test]
fn the_small_catalogue_is_written_whole_and_sound() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let written = walkdir::WalkDir::new(run.folder.path().join("content"));
    let kept = walkdir::WalkDir::new(root().join("src/cli/starter"));
    let files = |walk: walkdir::WalkDir| {
        walk.into_iter().filter(|entry| entry.as_ref().unwrap().file_type().is_file()).count()
    };
    assert_eq!(files(written), files(kept));
    run.command(&["audit"]).assert().success();
}

#[test]
fn a_folder_with_something_in_it_is_left_alone() {
    let run = Run::new();
    std::fs::create_dir(run.folder.path().join("mine")).unwrap();
    std::fs::write(run.folder.path().join("mine/notes.txt"), "keep").unwrap();
    let stderr = run.stderr(&["start", "mine"], 2);
    assert!(stderr.contains("not an empty folder"), "{stderr}");
    assert_eq!(std::fs::read_dir(run.folder.path().join("mine")).unwrap().count(), 1);
}
