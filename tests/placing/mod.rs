//! The output as it is put in place: whole, whatever happens to the run, and with what others keep in it.
//!
//! What a whole output is comes from README: `manifest.json` lists every file with its size and hash. What no
//! manifest means comes from DEVELOPERS.md: the output is being replaced. The hash is taken by the library that
//! publishes BLAKE3.

mod ends;
mod kills;
mod planted;
mod shared;
mod together;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};
use tempfile::TempDir;

/// A folder with the starting catalogue in `content`.
struct Site {
    folder: TempDir,
}

/// What an output folder shows.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Shown {
    /// There is none.
    Nothing,
    /// Every file that the manifest lists, as it lists it; the manifest's own text.
    Whole(String),
    /// No manifest: being replaced.
    BeingReplaced,
    /// A manifest that is not kept; the first file that is not as listed.
    Broken(String),
}

impl Site {
    fn new() -> Self {
        let site = Self { folder: TempDir::new().unwrap() };
        assert!(site.command(&["start"]).output().unwrap().status.success());
        site
    }

    /// The same with an output in it.
    fn rendered() -> Self {
        let site = Self::new();
        site.render();
        site
    }

    fn path(&self, below: &str) -> PathBuf {
        self.folder.path().join(below)
    }

    fn output(&self) -> PathBuf {
        self.path("output")
    }

    fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(assert_cmd::cargo::cargo_bin("fittingcards"));
        command.current_dir(self.folder.path()).env_remove("SOURCE_DATE_EPOCH").args(arguments);
        command
    }

    /// Pictures are coarse, so that runs are short.
    fn rendering(&self) -> Command {
        self.command(&["render", "--preview-dpi", "30"])
    }

    fn render(&self) {
        let output = self.rendering().output().unwrap();
        assert!(output.status.success(), "{}", said(&output));
    }

    /// A render under way that says nothing.
    fn begin(&self) -> Child {
        self.rendering().stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap()
    }

    /// A render that is refused; gives what it said.
    fn refused(&self, arguments: &[&str], code: i32) -> String {
        let output = self.rendering().args(arguments).output().unwrap();
        assert_eq!(output.status.code(), Some(code), "{}", said(&output));
        String::from_utf8(output.stderr).unwrap()
    }

    /// Another owner is another text on every card.
    fn change_hands(&self, owner: usize) {
        let settings = self.path("content/catalogue.yaml");
        let text = fs::read_to_string(&settings).unwrap();
        let line = text.lines().find(|line| line.starts_with("owner:")).unwrap().to_owned();
        fs::write(settings, text.replace(&line, &format!("owner: Works {owner}"))).unwrap();
    }

    fn write(&self, below: &str, text: &str) {
        fs::create_dir_all(self.path(below).parent().unwrap()).unwrap();
        fs::write(self.path(below), text).unwrap();
    }

    fn read(&self, below: &str) -> String {
        fs::read_to_string(self.path(below)).unwrap()
    }

    fn shown(&self) -> Shown {
        shown(&self.output())
    }

    /// Nothing but these names stands beside the catalogue.
    fn assert_holds(&self, names: &[&str]) {
        let mut expected: Vec<&str> = names.iter().copied().chain(["content"]).collect();
        expected.sort_unstable();
        assert_eq!(listed(self.folder.path()), expected);
    }
}

fn said(output: &Output) -> String {
    format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr))
}

fn listed(folder: &Path) -> Vec<String> {
    let names = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name());
    let mut names: Vec<String> = names.map(|name| name.into_string().unwrap()).collect();
    names.sort_unstable();
    names
}

fn shown(output: &Path) -> Shown {
    if !output.exists() {
        return Shown::Nothing;
    }
    let Ok(text) = fs::read_to_string(output.join("manifest.json")) else { return Shown::BeingReplaced };
    let manifest: serde_json::Value = serde_json::from_str(&text).unwrap();
    for file in manifest["files"].as_array().unwrap() {
        let path = file["path"].as_str().unwrap();
        let bytes = fs::read(output.join(path)).unwrap_or_default();
        let same = file["size"] == bytes.len() && file["blake3"] == blake3::hash(&bytes).to_hex().as_str();
        if !same {
            return Shown::Broken(path.to_owned());
        }
    }
    Shown::Whole(text)
}

/// Every file below a folder with its text.
fn tree(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let files = walkdir::WalkDir::new(folder).into_iter().map(Result::unwrap);
    let files = files.filter(|entry| entry.file_type().is_file());
    files.map(|entry| (entry.path().to_path_buf(), fs::read(entry.path()).unwrap())).collect()
}

/// Numbers by chance, the same in every run.
struct Chance(u64);

impl Chance {
    /// A number from 0 to 1.
    fn next(&mut self) -> f64 {
        // Knuth's multiplier and increment for 64 bits.
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(self.0 >> 32).unwrap()) / f64::from(u32::MAX)
    }
}
