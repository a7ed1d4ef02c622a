//! How large the pages of a catalogue of any size are, and where they are for a browser to open. Prints, and asserts
//! nothing.
//!
//! `cargo bench --bench booklet -- 5000 FOLDER` writes all of the booklet but the pages of most records below FOLDER;
//! `node tests/bench/booklet.mjs FOLDER` then opens them in a browser, and says how long it takes to find something.

#[path = "../size/catalogue.rs"]
mod catalogue;
#[path = "machine.rs"]
mod machine;
#[path = "../size/made.rs"]
mod made;

use fittingcards::booklet::{Booklet, Page, Subject};
use fittingcards::source::{DiskWorld, World};
use made::with_booklet;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// Pages of records of one kind that are made, of thousands that are all alike.
const OF_A_KIND: usize = 3;

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|argument| argument != "--bench").collect();
    let fittings = arguments.iter().find_map(|argument| argument.parse().ok()).unwrap_or(5000);
    let folder = arguments.iter().find(|argument| argument.parse::<usize>().is_err());
    let kept = tempfile::tempdir().expect("a folder");
    let content = kept.path().join("content");
    catalogue::write_catalogue(&content, fittings).expect("a catalogue");
    let pages = made(&DiskWorld::new(&content, kept.path().join("layouts")));
    let memory = machine::most_memory().map_or_else(String::new, |memory| format!(", {memory:.0} MiB"));
    println!("{}; {fittings} fittings; {:.1} s{memory}", machine::name(), machine::cpu_seconds());
    if let Some(folder) = folder {
        let place = Path::new(folder).join("booklet");
        fs::create_dir_all(&place).expect("a folder");
        for page in &pages {
            fs::write(place.join(&page.path), &page.text).expect("a page");
        }
    }
    for page in pages {
        println!("{:>10} {}", page.text.len(), page.path);
    }
}

fn made(world: &dyn World) -> Vec<Page> {
    with_booklet(world, few_of_each)
}

fn few_of_each(booklet: &Booklet<'_>) -> Vec<Page> {
    let mut made: BTreeMap<String, usize> = BTreeMap::new();
    let few = booklet.subjects().into_iter().filter(|subject| {
        let kind = subject.path().split('-').next().unwrap_or_default().to_owned();
        let of_a_kind = made.entry(kind).or_default();
        *of_a_kind += 1;
        matches!(subject, Subject::File(_)) || *of_a_kind <= OF_A_KIND
    });
    few.map(|subject| booklet.page(&subject).expect("a page")).collect()
}
