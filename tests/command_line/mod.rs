//! The program as its users run it: results, findings, exit codes.

mod audit;
mod explain;
mod follow_up;
mod hostile;
mod identify;
mod left_out;
mod mixups;
mod register;
mod render;
mod schema;
mod section;
mod start;
mod unheard;

use assert_cmd::Command;
use std::fs;
use std::path::PathBuf;
use tempfile::TempDir;

/// The program, run from an empty folder of its own.
struct Run {
    folder: TempDir,
}

impl Run {
    fn new() -> Self {
        Self { folder: TempDir::new().unwrap() }
    }

    /// With a copy of the demo as its catalogue.
    fn with_demo() -> Self {
        let (run, content) = (Self::new(), root().join("content"));
        let entries = walkdir::WalkDir::new(&content).into_iter().map(Result::unwrap);
        for from in entries.filter(|entry| entry.file_type().is_file()) {
            let to = run.content(from.path().strip_prefix(&content).unwrap().to_str().unwrap());
            fs::create_dir_all(to.parent().unwrap()).unwrap();
            fs::copy(from.path(), to).unwrap();
        }
        run
    }

    /// With the small catalogue of `start`.
    fn started() -> Self {
        let run = Self::new();
        run.command(&["start"]).assert().success();
        run
    }

    /// The place of a file in its catalogue.
    fn content(&self, path: &str) -> PathBuf {
        self.folder.path().join("content").join(path)
    }

    fn write(&self, path: &str, text: impl AsRef<[u8]>) {
        let path = self.content(path);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }

    fn edit(&self, path: &str, was: &str, is: &str) {
        let text = fs::read_to_string(self.content(path)).unwrap();
        assert!(text.contains(was), "{text}");
        self.write(path, text.replace(was, is));
    }

    fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::cargo_bin("fittingcards").unwrap();
        command.current_dir(self.folder.path()).env_remove("SOURCE_DATE_EPOCH").args(arguments);
        command
    }

    fn json(&self, arguments: &[&str]) -> serde_json::Value {
        let output = self.command(arguments).args(["--format", "json"]).output().unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        serde_json::from_slice(&output.stdout).unwrap()
    }

    /// What is said on standard output while errors stand.
    fn despite_errors(&self, arguments: &[&str]) -> String {
        let output = self.command(arguments).output().unwrap();
        assert_eq!(output.status.code(), Some(1), "{}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    }

    fn stderr(&self, arguments: &[&str], code: i32) -> String {
        let output = self.command(arguments).output().unwrap();
        let stderr = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(code), "{stderr}");
        stderr
    }
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// The demo catalogue.
fn demo() -> String {
    root().join("content").display().to_string()
}

#[test]
fn an_unknown_option_or_command_is_the_callers_fault() {
    let run = Run::new();
    run.command(&["audit", "--colur", "never"]).assert().code(2);
    run.command(&["rendre"]).assert().code(2);
    run.command(&[]).assert().code(2);
}

#[test]
fn help_and_version_are_no_fault() {
    let run = Run::new();
    for arguments in [&["--help"][..], &["--version"], &["section", "--help"], &["audit", "--help"]] {
        run.command(arguments).assert().code(0);
    }
}

#[test]
fn a_catalogue_that_is_not_there_is_a_fault_that_names_it() {
    let stderr = Run::new().stderr(&["audit", "--catalogue", "nowhere"], 2);
    assert!(stderr.contains("nowhere"), "{stderr}");
}
