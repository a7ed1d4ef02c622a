//! What is answered where records can't be read or are wrong: never as if all had been looked at.

use super::Run;
use serde_json::Value;
use std::fs;

/// The file can't be read, and nothing is known of its records.
const UNREADABLE: &[u8] = b"\xff\xfe\x00";

/// Whatever says that nothing else can be wrong, or that there is nothing.
const ALL_CLEAR: [&str; 6] = [
    "no part can be confused",
    "no hidden danger",
    "only the right part stands out like this",
    "no conductor of the catalogue",
    "nothing that a card prints has changed",
    "; no fitting\n",
];

fn is_stop(remark: &Value) -> bool {
    let remark = remark.as_str().unwrap_or_default();
    remark.starts_with("stop: ") && remark.contains("This answer is not complete")
}

/// Asks as text and as JSON while errors stand; both must say first that the answer is not complete.
fn stops(run: &Run, asked: &[&str]) -> (String, Value) {
    let text = run.despite_errors(asked);
    assert!(is_stop(&text.as_str().into()), "{asked:?}: {text}");
    ALL_CLEAR.iter().for_each(|said| assert!(!text.contains(said), "{said} in {text}"));
    let json = run.despite_errors(&[asked, &["--format", "json"]].concat());
    let answer: Value = serde_json::from_str(&json).unwrap();
    assert!(is_stop(&answer["remarks"][0]), "{asked:?}: {answer}");
    ALL_CLEAR.iter().for_each(|said| assert!(!json.contains(said), "{said} in {json}"));
    (text, answer)
}

fn numbers(list: &Value, key: &str) -> Vec<String> {
    list.as_array().unwrap().iter().map(|entry| entry[key].as_str().unwrap().to_owned()).collect()
}

/// A way to spoil a file.
type Spoil = fn(&Run, &str);

fn link(run: &Run, path: &str) {
    #[cfg(unix)]
    {
        let (place, elsewhere) = (run.content(path), run.folder.path().join("elsewhere"));
        fs::rename(&place, &elsewhere).unwrap();
        std::os::unix::fs::symlink(&elsewhere, &place).unwrap();
    }
    #[cfg(not(unix))]
    fs::rename(run.content(path), run.content(&format!("{path}.yml"))).unwrap();
}

#[test]
fn mixups_without_parts_are_no_all_clear() {
    let spoilt: [(&str, Spoil); 5] = [
        ("parts", link),
        ("parts/collet-body.yaml", link),
        ("parts/collet-body.yaml", |run, path| run.write(path, UNREADABLE)),
        ("parts/collet-body.yaml", |run, path| run.edit(path, "\nrole: ", "\nrule: ")),
        ("parts/collet-body.yaml", |run, path| run.edit(path, "number: ", "nummer: ")),
    ];
    for (path, spoil) in spoilt {
        let run = Run::started();
        for more in [&[][..], &["--ways-out"]] {
            assert!(!run.json(&[&["mixups"][..], more].concat()).to_string().contains("stop: "));
        }
        spoil(&run, path);
        for more in [&[][..], &["--ways-out"]] {
            stops(&run, &[&["mixups"][..], more].concat());
        }
    }
}

/// What a wrong holder may change are lists of copies.
#[test]
fn a_wrong_holder_takes_nothing_from_mixups() {
    let run = Run::started();
    let sound = run.json(&["mixups"]);
    run.write("holders/wrong.yaml", "id: wrong\nnonsense: 1\n");
    let answer = run.despite_errors(&["mixups", "--format", "json"]);
    assert_eq!(serde_json::from_str::<Value>(&answer).unwrap(), sound);
    stops(&run, &["compare"]);
}

/// The record of messenger-150 says 37 × 2.25 mm, so 15.8 mm over all; what looks like it stands in the same file.
#[test]
fn identify_says_that_a_conductor_may_be_missing() {
    let asked = ["identify", "--diameter", "15.8"];
    let run = Run::with_demo();
    let whole = numbers(&run.json(&asked)["candidates"], "conductor");
    assert!(whole.iter().any(|id| id == "messenger-150"), "{whole:?}");
    run.write("conductors/messengers.yaml", UNREADABLE);
    let (_, answer) = stops(&run, &asked);
    let left = numbers(&answer["candidates"], "conductor");
    assert!(!left.contains(&"messenger-150".to_owned()) && left.len() < whole.len(), "{left:?}");
    for file in ["feeders", "contact-wires", "stays-and-ropes"] {
        run.write(&format!("conductors/{file}.yaml"), UNREADABLE);
    }
    let (text, answer) = stops(&run, &asked);
    assert!(text.contains("no conductor that could be read fits these readings: stop and ask"), "{text}");
    assert_eq!(answer["candidates"], serde_json::json!([]));
}

#[test]
fn identify_says_that_a_fitting_may_be_missing() {
    let run = Run::with_demo();
    run.write("fittings/collet-dead-ends.yaml", UNREADABLE);
    let (text, answer) = stops(&run, &["identify", "--diameter", "15.8", "--scratch", "copper"]);
    assert!(text.contains("; no fitting that could be read\n"), "{text}");
    let of_150 = |found: &&Value| found["conductor"] == "messenger-150";
    let found = answer["candidates"].as_array().unwrap().iter().find(of_150).unwrap();
    assert_eq!(found["fittings"], serde_json::json!([]));
}

/// ST-4121 and ST-4081 go into the body ST-4101 beside the right cone, ST-4103.
#[test]
fn the_right_part_does_not_stand_alone_where_others_are_left_out() {
    let closed = ["identify", "--body", "ST-4101", "--conductor", "messenger-120"];
    let asked = [&closed[..], &["--stand-out", "5", "--state", "seated"]].concat();
    let run = Run::with_demo();
    assert!(!run.json(&asked).to_string().contains("stop: "));
    for number in ["ST-4121", "ST-4081"] {
        run.edit(
            "parts/collet-body.yaml",
            &format!("number: {number}\n"),
            &format!("number: {number}\nnonsense: 1\n"),
        );
    }
    let (text, answer) = stops(&run, &asked);
    let could_be: Vec<&str> = text.lines().filter(|line| line.contains("could be inside")).collect();
    assert!(matches!(could_be[..], [line] if line.contains("ST-4103")), "{text}");
    let treat = "treat it as wrong: keep clear; take the load on a puller first, then ask. Do not open it";
    assert!(text.contains(treat) && answer["remarks"][1].as_str().unwrap().contains(treat), "{text}");
    // What is refused may be refused for what is missing.
    let other = ["identify", "--body", "ST-4101", "--conductor", "messenger-cu-120", "--stand-out", "5"];
    let stderr = run.stderr(&other, 1);
    assert!(stderr.contains("\n    but       stop: "), "{stderr}");
}

/// Nothing changes in the records: whatever a file that can't be read takes away, no card is printed again, withdrawn or
/// called in for it.
#[test]
fn no_card_is_withdrawn_because_its_records_can_t_be_read() {
    let run = Run::with_demo();
    let whole = run.json(&["compare"]);
    let call_ins = |answer: &Value| -> Vec<String> {
        let holders = answer["holders"].as_array().unwrap().iter();
        holders.flat_map(|holder| holder["call_in"].as_array().unwrap()).map(Value::to_string).collect()
    };
    for (file, card) in [
        ("parts/wedges.yaml", "ST-4201"),
        ("fittings/wedge-dead-ends.yaml", "ST-4201"),
        ("parts/collet-body.yaml", "ST-4101"),
        ("fittings/collet-dead-ends.yaml", "ST-4101"),
        ("conductors/messengers.yaml", "ST-4101"),
        ("conductors/feeders.yaml", "ST-4270"),
    ] {
        let sound = fs::read(run.content(file)).unwrap();
        run.write(file, UNREADABLE);
        let (text, answer) = stops(&run, &["compare"]);
        let open: Vec<&str> =
            answer["not_compared"].as_array().unwrap().iter().filter_map(Value::as_str).collect();
        assert!(open.contains(&card), "{file}: {answer}");
        assert!(text.contains(&format!("not known: {}\n", open.join(", "))), "{text}");
        for list in ["print_again", "new", "withdraw", "unchanged"] {
            let of = |answer: &Value| match list {
                "unchanged" => answer[list].as_array().unwrap().iter().map(Value::to_string).collect(),
                _ => numbers(&answer[list], "number"),
            };
            let (found, before) = (of(&answer), of(&whole));
            assert!(found.iter().all(|number| before.contains(number)), "{file}, {list}: {found:?}");
            assert!(
                !found.iter().any(|number| open.contains(&number.trim_matches('"'))),
                "{file}: {found:?}"
            );
        }
        let before = call_ins(&whole);
        assert!(call_ins(&answer).iter().all(|copies| before.contains(copies)), "{file}: {answer}");
        run.write(file, sound);
    }
    assert_eq!(run.json(&["compare"]), whole);
}

/// The machine's fault, not the catalogue's.
#[cfg(unix)]
#[test]
fn a_folder_that_can_t_be_read_is_a_fault_that_names_it() {
    use std::os::unix::fs::PermissionsExt as _;
    use std::os::unix::process::CommandExt as _;
    let run = Run::started();
    let parts = run.content("parts");
    let rights =
        |path: &std::path::Path, mode| fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
    rights(run.folder.path(), 0o755);
    rights(&parts, 0o000);
    // Nothing is shut to the superuser, who asks as somebody else, with a program that anybody may run.
    let superuser = fs::read_dir(&parts).is_ok();
    let program = run.folder.path().join("program");
    // Copied by another process: while this one has it open for writing, a program that another test starts inherits
    // that, and what is open for writing can't be run.
    let mut copied = std::process::Command::new("cp");
    assert!(
        copied.arg(assert_cmd::cargo::cargo_bin("fittingcards")).arg(&program).status().unwrap().success()
    );
    for asked in ["mixups", "compare", "audit", "follow-up"] {
        let mut command = std::process::Command::new(&program);
        command.current_dir(run.folder.path()).arg(asked);
        if superuser {
            command.uid(65_534).gid(65_534);
        }
        let output = command.output().unwrap();
        let stderr = String::from_utf8(output.stderr).unwrap();
        assert_eq!((output.status.code(), output.stdout), (Some(2), Vec::new()), "{asked}: {stderr}");
        assert!(stderr.starts_with("error: content/parts: "), "{asked}: {stderr}");
    }
    rights(&parts, 0o755);
}

/// A conductor whose own record is wrong: the catalogue has errors, and the question was a right one.
#[test]
fn a_record_that_is_left_out_is_not_the_callers_mistake() {
    let run = Run::started();
    let section = ["section", "--conductor", "messenger-95"];
    run.command(&section).assert().success();
    run.edit("conductors/messengers.yaml", "id: messenger-95\n", "id: messenger-95\nduti: stay\n");
    let closed = ["identify", "--body", "P-101", "--conductor", "messenger-95", "--stand-out", "3"];
    for asked in [&section[..], &closed] {
        let said = run.stderr(asked, 1);
        assert!(said.contains("stop: ") && said.contains("messenger-95"), "{said}");
    }
    // Without errors elsewhere, what is not there is the caller's mistake.
    let sound = Run::started();
    sound.stderr(&["section", "--conductor", "messenger-96"], 2);
}
