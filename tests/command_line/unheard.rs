//! Where nobody listens: what was done is done, and the program neither panics nor changes its mind.
#![cfg(target_os = "linux")]

use super::Run;
use std::fs;
use std::process::{Command, Output, Stdio};

const COMMANDS: [&[&str]; 9] = [
    &["audit"],
    &["audit", "--format", "json"],
    &["mixups"],
    &["mixups", "--format", "json"],
    &["identify", "--diameter", "14.0"],
    &["section", "--stranded", "19/2.80"],
    &["render", "--preview-dpi", "30"],
    &["start", "begun"],
    &["--help"],
];

fn full() -> Stdio {
    fs::OpenOptions::new().write(true).open("/dev/full").unwrap().into()
}

fn closed() -> Stdio {
    let (reader, writer) = std::io::pipe().unwrap();
    drop(reader);
    writer.into()
}

fn catalogue() -> Run {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    run
}

fn ended(run: &Run, arguments: &[&str], out: Stdio, err: Stdio) -> Output {
    let mut command = Command::new(assert_cmd::cargo::cargo_bin("fittingcards"));
    command.current_dir(run.folder.path()).args(arguments).stdout(out).stderr(err).output().unwrap()
}

fn said(output: &Output) -> String {
    format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr))
}

/// Runs a command with these ends; gives its exit code and what the other end heard.
fn code(run: &Run, arguments: &[&str], out: Stdio, err: Stdio) -> (Option<i32>, String) {
    fs::remove_dir_all(run.folder.path().join("begun")).unwrap_or_default();
    let output = ended(run, arguments, out, err);
    assert!(!said(&output).contains("panicked"), "{arguments:?}: {}", said(&output));
    (output.status.code(), said(&output))
}

#[test]
fn a_pipe_that_is_closed_ends_every_command_as_if_it_had_been_read() {
    let run = catalogue();
    for arguments in COMMANDS {
        let heard = code(&run, arguments, Stdio::piped(), Stdio::piped()).0;
        assert_eq!(code(&run, arguments, closed(), Stdio::piped()).0, heard, "{arguments:?}");
        assert_eq!(code(&run, arguments, Stdio::piped(), closed()).0, heard, "{arguments:?}");
        assert_eq!(code(&run, arguments, closed(), closed()).0, heard, "{arguments:?}");
    }
}

#[test]
fn a_disk_that_is_full_loses_remarks_but_no_result_unsaid() {
    let run = catalogue();
    for arguments in COMMANDS {
        let heard = code(&run, arguments, Stdio::piped(), Stdio::piped()).0;
        assert_eq!(code(&run, arguments, Stdio::piped(), full()).0, heard, "{arguments:?}");
        let (ended, stderr) = code(&run, arguments, full(), Stdio::piped());
        let silent = arguments == ["audit"] || arguments == ["--help"];
        assert_eq!(ended, if silent { heard } else { Some(2) }, "{arguments:?}: {stderr}");
    }
}

#[test]
fn errors_that_nobody_hears_are_errors_all_the_same() {
    let run = catalogue();
    fs::write(run.folder.path().join("content/fittings/broken.yaml"), "number: F-999\n").unwrap();
    for arguments in [&["audit"][..], &["render"], &["mixups"]] {
        for (out, err) in [(Stdio::null(), closed()), (Stdio::null(), full()), (closed(), closed())] {
            assert_eq!(code(&run, arguments, out, err).0, Some(1), "{arguments:?}");
        }
    }
    assert_eq!(code(&run, &["render", "--output", "content"], Stdio::null(), closed()).0, Some(2));
}
