//! `compare` and `issue` as their users run them, on a small catalogue.

use super::Run;
use std::fs;

/// A catalogue of one fitting that is complete, and a holder with four copies.
fn desk() -> Run {
    let run = Run::new();
    let from = super::root().join("tests/findings/receipt-without-copies");
    for file in ["catalogue.yaml", "conductors/wire.yaml", "parts/parts.yaml", "fittings/end.yaml"] {
        let to = run.folder.path().join("content").join(file);
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::copy(from.join(file), to).unwrap();
    }
    run.write("holders/h.yaml", "id: depot\nname: Depot\ncopies: { \"*\": 4 }\n");
    run
}

impl Run {
    fn issue(&self, edition: &str, more: &[&str], code: i32) -> String {
        let mut arguments = vec!["issue", "--edition", edition, "--date", "2026-01-01"];
        arguments.extend(["--checked-by", "A. Reed", "--approved-by", "B. Holm"]);
        arguments.extend(more);
        self.stderr(&arguments, code)
    }

    fn editions(&self) -> Vec<String> {
        let register = self.folder.path().join("content/register");
        let Ok(files) = fs::read_dir(register) else { return Vec::new() };
        let mut names: Vec<String> =
            files.map(|file| file.unwrap().file_name().to_string_lossy().into_owned()).collect();
        names.sort();
        names
    }
}

#[test]
fn the_yearly_round() {
    let run = desk();
    let first = run.json(&["compare"]);
    assert_eq!(first["since"], serde_json::Value::Null);
    assert_eq!(first["new"][0]["number"], "F-1");
    run.issue("e1", &[], 0);
    assert_eq!(run.editions(), ["e1.yaml"]);
    run.edit("fittings/end.yaml", "name: Dead-end", "name: Plain dead-end");
    let comparison = run.json(&["compare"]);
    // The form is the design's; the values are those of the records above.
    assert_eq!(
        comparison,
        serde_json::json!({
            "since": "e1",
            "print_again": [{
                "number": "F-1", "title": "Plain dead-end", "issue": 1, "becomes": 2, "grade": "text",
                "changes": [{
                    "what": "name", "was": "Dead-end", "is": "Plain dead-end", "grade": "text", "notices": [],
                }],
                "notices": [], "explained": true,
            }],
            "new": [], "withdraw": [], "unchanged": [],
            "holders": [{
                "id": "depot", "name": "Depot", "print": [{ "number": "F-1", "copies": 4 }],
                "call_in": [{ "number": "F-1", "issue": 1, "copies": 4 }],
            }],
        })
    );
    run.issue("e2", &[], 0);
    let since = run.json(&["compare", "--since", "e1", "--with", "e2"]);
    assert_eq!((&since["with"], &since["print_again"][0]["becomes"]), (&"e2".into(), &2.into()));
    let now = run.json(&["compare"]);
    assert_eq!(now["unchanged"], serde_json::json!(["F-1"]));
}

#[test]
fn a_dry_run_writes_nothing() {
    let run = desk();
    run.issue("e1", &["--dry-run"], 0);
    assert!(!run.folder.path().join("content/register").exists());
}

/// What the command line has wrong ends with 2, what the catalogue has wrong with 1; all is told at once.
#[test]
fn refusals_leave_the_register_as_it_was() {
    let run = desk();
    run.issue("e1", &[], 0);
    let told = run.issue("e1", &["--approved-by", "A. Reed"], 2);
    assert!(told.contains("the argument '--approved-by"), "{told}");
    let told = run.issue("E1", &["--reissue", "F-2"], 2);
    for said in
        ["edition e1 has been on the register", "nothing says why", "no card F-2", "did you mean F-1?"]
    {
        assert!(told.contains(said), "{said} in {told}");
    }
    run.edit("parts/parts.yaml", "stamp: \"12.5\"", "stamp: \"12.7\"");
    let told = run.issue("e2", &[], 1);
    assert!(told.contains("safety-change-unexplained"), "{told}");
    run.edit("fittings/end.yaml", "stand_out", "stand_aut");
    let told = run.issue("e2", &[], 1);
    assert!(told.contains("stand_aut"), "{told}");
    assert_eq!(run.editions(), ["e1.yaml"]);
}

/// An incomplete card is no card to be issued.
#[test]
fn an_incomplete_card_is_not_issued() {
    let run = desk();
    run.edit("fittings/end.yaml", "complete_without", "# complete_without");
    let told = run.issue("e1", &[], 1);
    assert!(told.contains("error[incomplete]") && told.contains("not issued"), "{told}");
}

/// A file that does not belong to the register by its own line, and one that was changed.
#[test]
fn an_edited_edition_stops_everything_and_compare_answers_all_the_same() {
    let run = desk();
    run.issue("e1", &[], 0);
    run.edit("register/e1.yaml", "A. Reed", "A. Rood");
    let told = run.issue("e2", &[], 1);
    assert!(told.contains("content/register/e1.yaml: error[edition-edited]"), "{told}");
    let output = run.command(&["compare", "--format", "json"]).output().unwrap();
    assert_eq!(output.status.code(), Some(1));
    let answer: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(answer["since"], "e1");
}

#[test]
fn an_edition_that_is_not_there_is_the_callers_fault() {
    let run = desk();
    run.issue("2026-1", &[], 0);
    let told = run.stderr(&["compare", "--since", "2026-l"], 2);
    assert!(told.contains("there is no edition 2026-l") && told.contains("2026-1"), "{told}");
}

/// What the catalogue says otherwise than the options is a note.
#[test]
fn issue_goes_by_its_options() {
    let run = desk();
    let told = run.issue("e1", &[], 0);
    assert!(
        told.contains("note[issued-otherwise]: edition: the edition here is 1, and e1 is issued"),
        "{told}"
    );
}

#[test]
fn drafts_can_be_denied() {
    let run = desk();
    let told = run.stderr(&["render", "--deny-drafts"], 1);
    assert!(told.contains("error[card-not-issued]"), "{told}");
    assert!(!run.folder.path().join("output").exists());
    run.issue("e1", &[], 0);
    run.command(&["render", "--deny-drafts"]).assert().code(0);
}

#[test]
fn a_holder_gets_numbered_copies() {
    let run = desk();
    run.issue("e1", &[], 0);
    run.command(&["render"]).assert().code(0);
    let before = fs::read(run.folder.path().join("output/sheets/cards.pdf")).unwrap();
    let made = run.json(&["render", "--holder", "depot"]);
    assert_eq!(made["cards"], 4);
    assert!(run.folder.path().join("output/sheets/holder-depot.pdf").exists());
    assert_eq!(fs::read(run.folder.path().join("output/sheets/cards.pdf")).unwrap(), before);
    let told = run.stderr(&["render", "--holder", "depat"], 2);
    assert!(told.contains("did you mean depot?"), "{told}");
}

/// A day is written as in records: ISO 8601, the calendar date of ten characters, and no other form of that standard.
#[test]
fn a_date_is_taken_in_one_form_alone() {
    let run = desk();
    let people = ["--checked-by", "A. Reed", "--approved-by", "B. Holm"];
    for date in
        ["20261125", "2026-11-25 10:00", "2026-11-25T10:00Z", "2026-11-25[UTC]", "2026-W48-3", "2026-02-30"]
    {
        let arguments = [&["issue", "--edition", "e1", "--date", date][..], &people].concat();
        let told = run.stderr(&arguments, 2);
        assert!(told.contains("expected a day of the calendar as YYYY-MM-DD"), "{date}: {told}");
    }
    assert_eq!(run.editions(), Vec::<String>::new());
}
