//! How long catalogues of several sizes take: made anew, with nothing changed, and with one record changed; stage by
//! stage, beside the bare calls of the drawing libraries on the same faces. Prints, and asserts nothing.
//!
//! `cargo bench --bench render -- 100 1000 10000`; each size is a process of its own, so that its memory is known.
//! Seconds of the processor are told, since other work on the machine changes them little.

#[path = "bare.rs"]
mod bare;
#[path = "../size/catalogue.rs"]
mod catalogue;
#[path = "machine.rs"]
mod machine;

use fittingcards::publish::{RenderOptions, Report, render};
use fittingcards::source::DiskWorld;
use machine::{cpu_seconds, most_memory};
use std::fs;
use std::path::Path;
use std::process::Command;

const SIZES: [usize; 2] = [100, 1000];
const ONE: &str = "--one";

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|argument| argument != "--bench").collect();
    if let Some(at) = arguments.iter().position(|argument| argument == ONE) {
        return one_size(arguments[at + 1].parse().expect("a number of fittings"));
    }
    let given: Vec<usize> = arguments.iter().filter_map(|argument| argument.parse().ok()).collect();
    let sizes = if given.is_empty() { SIZES.to_vec() } else { given };
    println!("{}", machine::name());
    for size in sizes {
        let program = std::env::current_exe().expect("this program");
        Command::new(program).args([ONE, &size.to_string()]).status().expect("a run");
    }
}

fn one_size(fittings: usize) {
    let folder = tempfile::tempdir().expect("a folder");
    let (content, output) = (folder.path().join("content"), folder.path().join("output"));
    catalogue::write_catalogue(&content, fittings).expect("a catalogue");
    let world = DiskWorld::new(&content, folder.path().join("layouts"));
    let run = |jobs| {
        let before = cpu_seconds();
        let options = RenderOptions { jobs, ..RenderOptions::into_folder(&output) };
        let report = render(&world, &options, &|_| {}).expect("a run");
        (cpu_seconds() - before, report)
    };
    let (clean, report) = run(None);
    assert!(report.put.is_some(), "refused: {:#?}", report.findings.sorted().first());
    let put = report.put.clone().unwrap_or_default();
    let cards = report.cards as f64;
    println!(
        "\n{fittings} fittings, {} cards, {} files, {:.0} MB",
        report.cards,
        put.written,
        put.bytes as f64 / 1e6
    );
    told("made anew", clean, clean, cards);
    stages(&report, cards);
    if let Some(memory) = most_memory() {
        println!("{:<26} {memory:>9.0} MiB", "most memory");
    }
    told("nothing changed", run(None).0, clean, cards);
    change_one_record(&content);
    let (time, report) = run(None);
    told("one record changed", time, clean, cards);
    stages(&report, cards);
    let bare = bare::seconds_a_card(&world);
    println!(
        "{:<26} {:>9.2} ms a card; made anew is {:.2} times as much",
        "bare library calls",
        bare * 1e3,
        clean / cards / bare
    );
}

fn told(what: &str, seconds: f64, clean: f64, cards: f64) {
    let (each, share) = (seconds / cards * 1e3, seconds / clean * 100.0);
    println!("{what:<26} {seconds:>9.2} s of processor, {each:.2} ms a card, {share:.1} %");
}

fn stages(report: &Report, cards: f64) {
    let time = report.timings;
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
        let seconds = time.as_secs_f64();
        println!("  {stage:<24} {seconds:>9.2} s, {:.2} ms a card", seconds / cards * 1e3);
    }
}

/// Changes a word of a step of one fitting.
fn change_one_record(content: &Path) {
    let file = content.join("fittings/body-0007.yaml");
    let text = fs::read_to_string(&file).expect("fittings");
    fs::write(file, text.replacen("wipe dry", "wipe it dry", 1)).expect("a change");
}
