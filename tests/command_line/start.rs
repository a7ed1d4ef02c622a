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
    let schemas = fittingcards::records::schemas();
    assert_eq!(files(written), files(kept) + schemas.len());
    run.command(&["audit"]).assert().success();
}

#[test]
fn what_was_written_is_told_as_json() {
    let run = Run::new();
    let answer = run.json(&["start", "mine"]);
    let walk = walkdir::WalkDir::new(run.folder.path().join("mine")).into_iter().map(Result::unwrap);
    let files = walk.filter(|entry| entry.file_type().is_file()).count();
    assert_eq!(answer, serde_json::json!({ "folder": "mine", "files": files }));
}

/// The first line of each file of records names the schema of its kind, which lies there.
#[test]
fn files_of_records_name_their_schema() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let content = run.folder.path().join("content");
    let mut named = 0;
    for entry in walkdir::WalkDir::new(&content).into_iter().map(Result::unwrap) {
        if entry.path().extension().is_some_and(|end| end == "yaml") {
            named += 1;
            let text = std::fs::read_to_string(entry.path()).unwrap();
            let schema = text.lines().next().unwrap().strip_prefix("# schema: ").unwrap();
            let below = entry.path().strip_prefix(&content).unwrap().with_extension("");
            let kind = below.iter().next().unwrap().to_string_lossy().into_owned();
            assert!(schema.ends_with(&format!("schemas/{kind}.json")), "{schema}");
            assert!(entry.path().parent().unwrap().join(schema).is_file(), "{schema}");
        }
    }
    assert_eq!(named, 7);
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
