//! What is tried: each target takes any bytes, and panics where something that must hold does not.

mod catalogues;
mod demo;
pub mod file;
mod findings;
mod fonts;
mod grip;
mod layouts;
mod notes;
mod records;
mod section;
mod tables;

/// Something to be tried with any bytes.
pub struct Target {
    /// What it is called.
    pub name: &'static str,
    /// Takes an input.
    pub run: fn(&[u8]),
    /// Inputs to begin with.
    pub seeds: fn() -> Vec<Vec<u8>>,
    /// How often it is tried in a short run.
    pub short: u32,
}

/// Every target.
pub const TARGETS: [Target; 9] = [
    Target { name: "records", run: records::run, seeds: records::seeds, short: 300 },
    Target { name: "tables", run: tables::run, seeds: tables::seeds, short: 150 },
    Target { name: "notes", run: notes::run, seeds: notes::seeds, short: 1500 },
    Target { name: "section", run: section::run, seeds: section::seeds, short: 300 },
    Target { name: "faces", run: layouts::faces, seeds: layouts::seeds_of_faces, short: 40 },
    Target { name: "pages", run: layouts::pages, seeds: layouts::seeds_of_pages, short: 40 },
    Target { name: "fonts", run: fonts::run, seeds: fonts::seeds, short: 100 },
    Target { name: "grip", run: grip::run, seeds: grip::seeds, short: 100_000 },
    Target { name: "catalogues", run: catalogues::run, seeds: catalogues::seeds, short: 6 },
];

/// The target of a name.
pub fn named(name: &str) -> Option<&'static Target> {
    static ALL: [Target; TARGETS.len()] = TARGETS;
    ALL.iter().find(|target| target.name == name)
}
