//! How long a catalogue of 1,000 fittings takes to render, stage by stage, and the most memory it needs.
//! Prints, and asserts nothing.

#[path = "../size/catalogue.rs"]
mod catalogue;

use fittingcards::publish::{RenderOptions, render};
use fittingcards::source::DiskWorld;

const FITTINGS: usize = 1000;

fn main() {
    let folder = tempfile::tempdir().expect("a folder");
    let (content, output) = (folder.path().join("content"), folder.path().join("output"));
    catalogue::write_catalogue(&content, FITTINGS).expect("a catalogue");
    let world = DiskWorld::new(&content, folder.path().join("layouts"));
    let report = render(&world, &RenderOptions::into_folder(&output), &|_| {}).expect("a run");
    let time = report.timings;
    println!("{FITTINGS} fittings, {} cards", report.cards);
    let stages = [
        ("records", time.records),
        ("drawing", time.drawing),
        ("pictures", time.pictures),
        ("sheets", time.pdf),
        ("booklet", time.booklet),
        ("writing", time.output),
        ("from start to end", time.whole),
    ];
    for (stage, time) in stages {
        println!("{stage:<18} {:>8.2} s", time.as_secs_f64());
    }
    match most_memory() {
        Some(mebibytes) => println!("{:<18} {mebibytes:>8.0} MiB", "most memory"),
        None => println!("most memory is not known on this machine"),
    }
}

/// The most memory that this process had at once, where the machine tells (Linux).
fn most_memory() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    let kibibytes: f64 = line.split_whitespace().nth(1)?.parse().ok()?;
    Some(kibibytes / 1024.0)
}
