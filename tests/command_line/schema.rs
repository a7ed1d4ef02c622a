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

/// As the rules say it: `wrong-number-of-conductors`, `not-exactly-one`, `empty-list`, `too-many-steps`, `too-many-lines`,
/// `status-contradiction`. Whether records hold to them, another library tries (`tests/crosscheck/schemas.py`).
#[test]
fn schemas_say_how_many_there_may_be() {
    let output = Run::new().command(&["schema"]).output().unwrap();
    let all: Value = serde_json::from_slice(&output.stdout).unwrap();
    let either = serde_json::json!([{ "required": ["conductor"] }, { "required": ["conductors"] }]);
    assert_eq!(all["fittings"]["oneOf"], either);
    let of = |kind: &str, key: &str| {
        let list = &all[kind]["properties"][key];
        (list["minItems"].as_u64(), list["maxItems"].as_u64())
    };
    assert_eq!(of("fittings", "conductors"), (Some(1), Some(2)));
    assert_eq!(of("fittings", "parts"), (Some(1), Some(200)));
    assert_eq!((of("fittings", "steps"), of("procedures", "steps")), ((None, Some(7)), (None, Some(7))));
    assert_eq!(of("catalogue", "before_work"), (None, Some(3)));
    let status = serde_json::json!(["current", "on-hold", "withdrawn"]);
    assert_eq!(all["parts"]["properties"]["status"]["enum"], status);
    let strength = &all["materials"]["$defs"]["StrengthRecord"]["anyOf"];
    assert!(strength.as_array().unwrap().iter().any(|form| form["minItems"] == 1), "{strength}");
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

#[test]
fn records_and_layouts_get_no_schemas_but_the_folder_that_is_passed_over() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    std::fs::create_dir(run.folder.path().join("layouts")).unwrap();
    for place in ["content", "content/parts", "content/schemas/../parts", "layouts"] {
        let stderr = run.stderr(&["schema", "--output", place], 2);
        assert!(stderr.contains("lies in a folder that is read"), "{place}: {stderr}");
    }
    assert!(!run.folder.path().join("content/parts.json").exists());
    // `start` has written them there; of this release or an earlier one, they are written anew.
    run.command(&["schema", "--output", "content/schemas"]).assert().success();
    run.command(&["audit", "--deny-warnings"]).assert().success();
}

#[test]
fn a_file_of_others_is_not_replaced_and_nothing_is_written_beside_it() {
    let run = Run::new();
    let given = run.folder.path().join("given");
    std::fs::create_dir(&given).unwrap();
    for foreign in
        ["{}", "{\"title\": \"parts\"}", "parts of mine", "{\"$schema\": \"x\", \"title\": \"bolts\"}"]
    {
        std::fs::write(given.join("parts.json"), foreign).unwrap();
        for arguments in [&["schema", "--output", "given"][..], &["schema", "parts", "--output", "given"]] {
            let stderr = run.stderr(arguments, 2);
            assert!(stderr.contains("parts.json: this file is no schema of ours"), "{stderr}");
        }
        assert_eq!(std::fs::read_to_string(given.join("parts.json")).unwrap(), foreign);
        assert_eq!(std::fs::read_dir(&given).unwrap().count(), 1);
    }
    std::fs::remove_file(given.join("parts.json")).unwrap();
    for _ in 0..2 {
        run.command(&["schema", "--output", "given"]).assert().success();
    }
    assert_eq!(std::fs::read_dir(given).unwrap().count(), 9);
}
