//! `fittingcards follow-up`.

use super::{Run, demo, root};
use std::fs;

/// The demo in a folder of its own, with this list.
fn with_list(list: &str) -> Run {
    let run = Run::with_demo();
    run.write("installed/selbrook-tarn.csv", list);
    run
}

#[test]
fn the_list_is_given_as_text_as_json_and_as_a_table() {
    let (run, catalogue) = (Run::new(), demo());
    let asked = ["follow-up", "--catalogue", &catalogue, "--csv", "given/list.csv"];
    let output = run.command(&asked).output().unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(
        text.starts_with("6 of 25 installed fittings to follow up; on 2026-11-25, 0 overdue\n"),
        "{text}"
    );
    assert!(text.contains("by 2027-01-31; working factor 4.1; built 2019-07-02 by R. Hale"), "{text}");
    let answer = run.json(&asked);
    let places = answer["follow_up"].as_array().unwrap();
    let mut table = csv::Reader::from_path(run.folder.path().join("given/list.csv")).unwrap();
    let rows: Vec<csv::StringRecord> = table.records().map(Result::unwrap).collect();
    assert_eq!(places.len(), rows.len());
    for (place, row) in places.iter().zip(&rows) {
        assert_eq!((place["place"].as_str(), place["line"].to_string().as_str()), (row.get(0), &row[17]));
    }
}

/// Whatever is wrong: rows, the record of a fitting that stands in the list, the list itself.
#[test]
fn no_list_is_given_while_errors_stand() {
    let list = fs::read_to_string(root().join("content/installed/selbrook-tarn.csv")).unwrap();
    let wrong = "place,fitting,seated_mm\nMast 1,ST-4110,0.6\nMast 2,ST-999,4.2\nMast 3,ST-4110\n";
    let (rows, record, unread) = (with_list(wrong), with_list(&list), with_list(""));
    record.edit("fittings/collet-dead-ends.yaml", "number: ST-4110\n", "number: ST-4110\nnonsense: 1\n");
    unread.write("installed/selbrook-tarn.csv", b"place,fitting,seated_mm\nMast \xe9,ST-4110,0.6\n");
    let file = "content/installed/selbrook-tarn.csv";
    for (run, told) in [
        (
            rows,
            vec![
                format!("{file}:3:8: error[unknown-fitting]: Mast 2 fitting"),
                format!("{file}:4:1: error[wrong-number-of-cells]"),
            ],
        ),
        (record, vec!["error[unknown-key]".to_owned()]),
        (unread, vec![format!("{file}:2:6: error[not-utf8]")]),
    ] {
        for more in [&["--csv", "list.csv"][..], &["--notice", "N-2026-07"], &["--format", "json"]] {
            let arguments = [&["follow-up"][..], more].concat();
            assert_eq!(run.despite_errors(&arguments), "", "{arguments:?}");
        }
        let found = run.stderr(&["follow-up"], 1);
        told.iter().for_each(|told| assert!(found.contains(told), "{told} in {found}"));
        assert!(!run.folder.path().join("list.csv").exists());
    }
}

#[test]
fn a_notice_that_is_not_there_gets_the_nearest_and_no_list_says_where_one_goes() {
    let (run, catalogue) = (Run::new(), demo());
    let stderr = run.stderr(&["follow-up", "--catalogue", &catalogue, "--notice", "N-2026-05"], 2);
    assert!(
        stderr.contains("there is no notice N-2026-05") && stderr.contains("did you mean N-2026-0"),
        "{stderr}"
    );
    let run = with_list("");
    fs::remove_dir_all(run.folder.path().join("content/installed")).unwrap();
    let output = run.command(&["follow-up"]).output().unwrap();
    let said = String::from_utf8(output.stdout).unwrap();
    assert!(said.contains("installed/NAME.csv") && output.status.success(), "{said}");
}

/// What `render` refuses for its output, too.
#[test]
fn a_table_does_not_take_the_place_of_what_is_read() {
    let list = "place,fitting,seated_mm\nMast 1,ST-4110,0.6\n";
    let run = with_list(list);
    let at = |path: &str| run.folder.path().join(path);
    fs::create_dir_all(at("layouts/cards")).unwrap();
    fs::create_dir_all(at("elsewhere")).unwrap();
    let own = "content/installed/selbrook-tarn.csv";
    let mut places =
        vec![own, "content/new.csv", "elsewhere/../content/new/new.csv", "layouts/cards/new.csv"];
    if cfg!(unix) {
        link(&at(own), &at("linked.csv"));
        link(&at("elsewhere/led.csv"), &at("content/led.csv"));
        places.extend(["linked.csv", "content/led.csv"]);
    }
    for place in places {
        let stderr = run.stderr(&["follow-up", "--csv", place], 2);
        assert!(stderr.contains("lies in a folder that is read") && stderr.contains(place), "{stderr}");
    }
    assert_eq!(fs::read_to_string(at(own)).unwrap(), list);
    assert!(
        !at("content/new").exists() && !at("content/new.csv").exists() && !at("elsewhere/led.csv").exists()
    );
}

#[cfg(unix)]
fn link(to: &std::path::Path, at: &std::path::Path) {
    std::os::unix::fs::symlink(to, at).unwrap();
}

#[cfg(not(unix))]
fn link(_: &std::path::Path, _: &std::path::Path) {}
