//! How long `compare` and `issue` take where 40 editions of 5,000 cards are on the register: each edition has changed the
//! cards of ten bodies, and so has the present state. Prints, and asserts nothing.
//!
//! `cargo bench --bench register [-- BODIES EDITIONS]`. Each time is the least of three, with all cores.

#[path = "../size/catalogue.rs"]
mod catalogue;
#[path = "machine.rs"]
mod machine;

use fittingcards::publish::{IssueInto, issue};
use fittingcards::register::{Asked, Register, Reissue, compare, edition_text};
use fittingcards::source::DiskWorld;
use fittingcards::{catalogue as records, facts, mixups};
use machine::{cpu_seconds, most_memory};
use std::fs;
use std::path::Path;
use std::time::Instant;

/// Four fittings share a body and have a card each, as the body has.
const BODIES: usize = 1000;
const EDITIONS: usize = 40;
/// Bodies whose fittings an edition changes.
const CHANGED: usize = 10;

fn main() {
    let mut given = std::env::args().filter_map(|argument| argument.parse::<usize>().ok());
    let (bodies, editions) = (given.next().unwrap_or(BODIES), given.next().unwrap_or(EDITIONS));
    let folder = tempfile::tempdir().expect("a folder");
    let content = folder.path().join("content");
    catalogue::write_catalogue(&content, bodies * catalogue::FITTINGS_OF_A_BODY).expect("a catalogue");
    fs::create_dir_all(content.join("register")).expect("a register");
    let world = DiskWorld::new(&content, folder.path().join("layouts"));
    for nth in 0..editions {
        change(&content, nth, bodies);
        let asked = asked(nth);
        let text = next_edition(&world, &asked);
        fs::write(content.join(format!("register/{}.yaml", asked.edition)), text).expect("an edition");
    }
    change(&content, editions, bodies);
    let size: u64 = register_files(&content).map(|file| file.metadata().map_or(0, |file| file.len())).sum();
    println!("{}", machine::name());
    println!("{editions} editions, {:.1} MB in all", size as f64 / 1e6);
    told("compare", || compared(&world));
    told("issue, nothing written", || {
        let report = issue(&world, &asked(editions), IssueInto::Nothing, &|_| {}).expect("a run");
        assert!(!report.is_refused(), "{:?} {:?}", report.refusals, report.findings.sorted().first());
        (report.cards, report.comparison.changed().count())
    });
    if let Some(memory) = most_memory() {
        println!("{:<24} {memory:.0} MiB", "most memory");
    }
}

fn asked(nth: usize) -> Asked {
    Asked {
        edition: format!("e{nth:03}"),
        date: format!("{}-{:02}-01", 2026 + nth / 12, nth % 12 + 1).parse().expect("a date"),
        checked_by: "A. Reed".to_owned(),
        approved_by: "B. Holm".to_owned(),
        reissue: Vec::new(),
        because: "Words that were hard to read.".to_owned(),
    }
}

/// Changes a step of the fittings of some bodies.
fn change(content: &Path, nth: usize, bodies: usize) {
    for body in (0..CHANGED.min(bodies)).map(|body| (nth * CHANGED + body) % bodies) {
        let file = content.join(format!("fittings/body-{body:04}.yaml"));
        let text = fs::read_to_string(&file).expect("fittings");
        fs::write(file, text.replace("Cut square", &format!("Cut {nth} square"))).expect("a change");
    }
}

fn next_edition(world: &DiskWorld, asked: &Asked) -> String {
    let loaded = records::load(world).expect("a catalogue");
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings.sorted().first());
    let catalogue = &loaded.catalogue;
    let facts = facts::of_catalogue(catalogue, &mixups::find(catalogue));
    let register = Register::of(catalogue);
    let next = register.next(catalogue, &facts, &asked.edition, Reissue::default());
    edition_text(&register, catalogue, &next, asked).expect("an edition")
}

/// All that `compare` does but printing: how many cards there are, and how many have changed.
fn compared(world: &DiskWorld) -> (usize, usize) {
    let loaded = records::load(world).expect("a catalogue");
    let catalogue = &loaded.catalogue;
    let register = Register::of(catalogue);
    let facts = facts::of_catalogue(catalogue, &mixups::find(catalogue));
    let present = register.next(catalogue, &facts, "", Reissue::default());
    let last = register.editions().len().checked_sub(1);
    let comparison = compare(&register, catalogue, (last, None), (&present, ""));
    (present.len(), comparison.changed().count())
}

fn register_files(content: &Path) -> impl Iterator<Item = fs::DirEntry> {
    fs::read_dir(content.join("register")).expect("a register").map(|file| file.expect("an edition"))
}

fn told(what: &str, run: impl Fn() -> (usize, usize)) {
    let (mut wall, mut cpu, mut cards) = (f64::INFINITY, f64::INFINITY, (0, 0));
    for _ in 0..3 {
        let (start, before) = (Instant::now(), cpu_seconds());
        cards = run();
        wall = wall.min(start.elapsed().as_secs_f64());
        cpu = cpu.min(cpu_seconds() - before);
    }
    println!("{what:<24} {wall:.2} s, {cpu:.2} s of processor; {} cards, {} changed", cards.0, cards.1);
}
