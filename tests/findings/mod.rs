//! Wrecked catalogues: a folder for each, named after the finding it gets, with what is printed.
//!
//! A folder `tests/findings/<code>/` holds a catalogue and `expected.txt`. Adding a folder adds a test.
//! With UPDATE=1 in the environment the expected texts are written anew, and the run fails.

use fittingcards::diagnostics::{Colour, Findings, print};
use fittingcards::publish::{self, AuditOptions};
use fittingcards::source::{DiskWorld, FilePath, Folder, World, WorldError};
use rayon::prelude::*;
use std::path::{Path, PathBuf};
use std::sync::Arc;

mod bounds;
pub mod codes;
mod generated;

#[test]
fn every_folder_gets_what_it_expects() {
    let update = option_env_now("UPDATE").is_some();
    let wrong: Vec<String> = folders().par_iter().filter_map(|folder| fault(folder, update)).collect();
    assert!(!update, "the expected texts were written anew: read them, and run without UPDATE");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What is wrong with what a folder gets.
fn fault(folder: &Path, update: bool) -> Option<String> {
    let code = folder.file_name().unwrap().to_string_lossy();
    let printed = printed(&InFolder(DiskWorld::new(folder, folder.join("layouts"))));
    let expected = folder.join("expected.txt");
    if update {
        write(&expected, &printed);
    }
    if !printed.contains(&format!("[{code}]")) {
        return Some(format!("{code}: no finding has this code\n{printed}"));
    }
    let expected = read(&expected);
    (expected != printed).then(|| format!("{code}: expected\n{expected}\nprinted\n{printed}"))
}

/// What is printed of what `audit` finds: records, rules, notes, layouts, cards, sheets, pages.
fn printed(world: &dyn World) -> String {
    print_findings(&publish::check(world, &AuditOptions::default(), &|_| {}).unwrap(), world)
}

fn print_findings(findings: &Findings, world: &dyn World) -> String {
    let mut out = Vec::new();
    print(findings, world, Colour::Without, &mut out).unwrap();
    String::from_utf8(out).unwrap()
}

/// A folder on disk without the expected text, whose files are shown by their path in it.
struct InFolder(DiskWorld);

impl World for InFolder {
    fn files(&self, folder: Folder) -> Result<Vec<FilePath>, WorldError> {
        let mut files = self.0.files(folder)?;
        files.retain(|file| !(file.path.as_ref() == "expected.txt" || file.path.starts_with("layouts/")));
        Ok(files)
    }

    fn read(&self, file: &FilePath) -> Result<Arc<[u8]>, WorldError> {
        self.0.read(file)
    }

    fn source_date_epoch(&self) -> Option<&str> {
        None
    }

    fn display(&self, file: &FilePath) -> String {
        file.path.to_string()
    }
}

fn folders() -> Vec<PathBuf> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/findings");
    let entries = std::fs::read_dir(root).unwrap();
    let mut folders: Vec<PathBuf> =
        entries.map(|entry| entry.unwrap().path()).filter(|path| path.is_dir()).collect();
    folders.sort();
    assert!(folders.len() >= 25, "there are {} folders", folders.len());
    folders
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_default()
}

fn write(path: &Path, text: &str) {
    std::fs::write(path, text).unwrap();
}

fn option_env_now(name: &str) -> Option<String> {
    std::env::var(name).ok()
}
