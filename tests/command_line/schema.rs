//! `fittingcards schema`.

use super::Run;
use serde_json::Value;

#[test]
fn a_kind_has_its_schema_on_standard_output() {
    let run = Run::new();
    let output = run.command(&["schema", "parts"]).output().unwrap();
    let schema: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(schema["required"], serde_json::json!(["number", "name", "role", "material"]));
    assert_eq!(schema["title"], "parts");
    assert!(std::fs::read_dir(run.folder.path()).unwrap().next().is_none(), "something was written");
}

#[test]
fn all_kinds_are_one_object_or_a_file_each() {
    let run = Run::new();
    let output = run.command(&["schema"]).output().unwrap();
    let all: Value = serde_json::from_slice(&output.stdout).unwrap();
    run.command(&["schema", "--output", "given"]).assert().success();
    let given = run.folder.path().join("given");
    for (kind, schema) in all.as_object().unwrap() {
        let file = std::fs::read_to_string(given.join(format!("{kind}.json"))).unwrap();
        assert_eq!(&serde_json::from_str::<Value>(&file).unwrap(), schema);
    }
    assert_eq!(std::fs::read_dir(given).unwrap().count(), 9);
}

/// What begins with `x-` is for the program's own explanations; editors would not know it.
#[test]
fn schemas_hold_only_keywords_of_the_standard() {
    let output = Run::new().command(&["schema"]).output().unwrap();
    assert!(!String::from_utf8(output.stdout).unwrap().contains("\"x-"));
}

#[test]
fn an_unknown_kind_gets_the_nearest_and_exit_code_2() {
    let stderr = Run::new().stderr(&["schema", "part"], 2);
    assert!(stderr.contains("did you mean parts?"), "{stderr}");
}

#[test]
fn a_folder_that_cannot_be_written_is_named() {
    let run = Run::new();
    std::fs::write(run.folder.path().join("taken"), "a file").unwrap();
    assert!(run.stderr(&["schema", "--output", "taken"], 2).contains("taken"));
}
