//! Fittings in the line: lists as spreadsheets save them, what is wrong with rows, and what a follow-up finds.

mod hostile;
mod lists;
mod planted;
mod reasons;

use crate::fixtures::disk;
use fittingcards::catalogue::{Catalogue, load};
use fittingcards::diagnostics::{Finding, Findings};
use fittingcards::installed::{Installed, follow_up, follow_up_json, installed};
use fittingcards::mixups::{self, Mixups};
use fittingcards::source::{FilePath, Folder, MemoryWorld, World};
use serde_json::Value;

/// The demo, with lists of its own.
pub struct Line {
    pub catalogue: Catalogue,
    pub mixups: Mixups,
    pub installed: Vec<Installed>,
    pub findings: Findings,
}

impl Line {
    /// The demo with these lists by their file names; texts of other files replace the demo's.
    pub fn of(files: &[(&str, &[u8])]) -> Self {
        let demo = disk("content");
        let mut world = MemoryWorld::new();
        for file in demo.files(Folder::Catalogue).unwrap() {
            if !file.path.starts_with("installed/") {
                world = world.with(file.clone(), demo.read(&file).unwrap());
            }
        }
        for (path, bytes) in files {
            world = world.with(FilePath::catalogue(path), bytes);
        }
        let loaded = load(&world).unwrap();
        let mixups = mixups::find(&loaded.catalogue);
        let (installed, mut findings) = installed(&loaded.catalogue, &mixups);
        findings.extend(loaded.findings);
        Self { catalogue: loaded.catalogue, mixups, installed, findings }
    }

    pub fn with_list(list: &str) -> Self {
        Self::of(&[("installed/line.csv", list.as_bytes())])
    }

    pub fn follow_up(&self, notice: Option<&str>) -> Value {
        follow_up_json(&follow_up(&self.catalogue, &self.mixups, &self.installed, notice))
    }

    /// Code, line and column of each finding.
    pub fn found(&self) -> Vec<(&'static str, u32, u32)> {
        let place = |found: &&Finding| (found.code, found.place.line, found.place.column);
        self.findings.sorted().iter().map(place).collect()
    }
}

/// Place and kinds of reasons of each fitting that calls for something, in order.
pub fn kinds(follow_up: &Value) -> Vec<(String, Vec<String>)> {
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let place = |place: &Value| {
        let reasons = place["reasons"].as_array().unwrap();
        (text(&place["place"]), reasons.iter().map(|reason| text(&reason["kind"])).collect())
    };
    follow_up["follow_up"].as_array().unwrap().iter().map(place).collect()
}
