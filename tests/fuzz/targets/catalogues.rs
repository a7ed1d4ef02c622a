//! The demo with lines changed here and there: read, audited, its mix-ups found, and some of its output made.

use super::demo::Made;
use super::{file, findings};
use arbitrary::{Result, Unstructured};
use fittingcards::audit::{self, Context};
use fittingcards::booklet::Booklet;
use fittingcards::cards::{self, Design, plan_tags};
use fittingcards::catalogue::load;
use fittingcards::layouts::Layouts;
use fittingcards::register::Standing;
use fittingcards::source::{FilePath, MemoryWorld};
use fittingcards::{notes, publish};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// Values that stand for others: of numbers, words, lists and texts.
const VALUES: [&str; 18] = [
    "0",
    "0.001",
    "1",
    "3",
    "12.5",
    "199",
    "999",
    "unknown",
    "copper-hard-drawn",
    "current",
    "withdrawn",
    "socket",
    "cone",
    "wedge",
    "[]",
    "\"\"",
    "A very long text that goes on and on, word by word, until no card can hold it any more",
    "2026-02-28",
];

type Files = Vec<(String, Vec<String>)>;

static FILES: LazyLock<Files> = LazyLock::new(|| {
    let files = file::below("content").into_iter();
    let lines = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap().lines().map(str::to_owned).collect();
    files.map(|(path, bytes)| (path, lines(bytes))).collect()
});
static DESIGN: LazyLock<Design> = LazyLock::new(|| Design::load(&MemoryWorld::new(), &[]).unwrap().0);
static LAYOUTS: LazyLock<Layouts> =
    LazyLock::new(|| Layouts::load(&MemoryWorld::new(), "booklet", &[]).unwrap().0);

pub fn run(input: &[u8]) {
    let mut bytes = Unstructured::new(input);
    let Ok((choice, files)) = edited(&mut bytes) else { return };
    let world = files.iter().fold(MemoryWorld::new(), |world, (path, lines)| {
        world.with(FilePath::catalogue(path), lines.join("\n"))
    });
    let loaded = load(&world).expect("what lies in memory is read");
    let made = Made::with(loaded.catalogue, &world);
    let mut found = loaded.findings;
    found.extend(audit::check(Context { catalogue: &made.catalogue, mixups: &made.mixups }));
    found.extend(notes::check(&made.catalogue));
    findings::sound(&found, &world);
    let json = publish::catalogue_json(&made.catalogue, &made.mixups, &made.facts, &made.register);
    let read = serde_json::from_slice::<serde_json::Value>(&json.concat());
    assert!(read.is_ok_and(|value| value.is_object()));
    outputs(&made, usize::from(choice), &world);
}

/// One card, one kit's tags and one page.
fn outputs(made: &Made, choice: usize, world: &MemoryWorld) {
    let input = made.cards(&DESIGN);
    if let Some(facts) = nth(&made.facts, choice) {
        let (card, found) = cards::make(input, facts);
        findings::sound(&found, world);
        card.into_iter().for_each(|card| made.printed(card));
    }
    if let Some(tag) = nth(&made.tags, choice) {
        match plan_tags(input, tag, &Standing::Draft) {
            Ok(plans) => plans.iter().for_each(|plan| findings::sound(&plan.draw(input).1, world)),
            Err(found) => findings::sound(&found, world),
        }
    }
    let booklet = Booklet::new(made.booklet(&LAYOUTS));
    if let Some(subject) = nth(&booklet.subjects(), choice) {
        booklet.page(subject).unwrap_or_else(|finding| panic!("{finding:?}"));
    }
}

fn nth<T>(list: &[T], choice: usize) -> Option<&T> {
    list.get(choice.checked_rem(list.len())?)
}

/// The demo's files after a few edits, and a number to choose outputs by.
fn edited(bytes: &mut Unstructured<'_>) -> Result<(u8, Files)> {
    let choice = bytes.arbitrary()?;
    let mut files = FILES.clone();
    for _ in 0..bytes.int_in_range(1..=12)? {
        edit(&mut files, bytes)?;
    }
    Ok((choice, files))
}

fn edit(files: &mut Files, bytes: &mut Unstructured<'_>) -> Result<()> {
    let values = by_key(files);
    let file = bytes.choose_index(files.len())?;
    let lines = &mut files[file].1;
    if lines.is_empty() {
        return Ok(());
    }
    let (at, other) = (bytes.choose_index(lines.len())?, bytes.choose_index(lines.len())?);
    let Some((key, _)) = lines[at].split_once(": ").map(|(key, value)| (key.to_owned(), value.to_owned()))
    else {
        drop(lines.remove(at));
        return Ok(());
    };
    match bytes.int_in_range(0..=9)? {
        0 => drop(lines.remove(at)),
        1 => lines.insert(at, lines[other].clone()),
        2 => lines.swap(at, other),
        3 => lines[at] = format!("{key}: {}", bytes.choose(&VALUES)?),
        4 => lines[at] = digits(&lines[at], bytes)?,
        _ => {
            let name = key.trim_start_matches([' ', '-']);
            let known = values.get(name).map(Vec::as_slice).unwrap_or_default();
            if !known.is_empty() {
                lines[at] = format!("{key}: {}", bytes.choose(known)?);
            }
        }
    }
    Ok(())
}

/// A line with one of its digits changed.
fn digits(line: &str, bytes: &mut Unstructured<'_>) -> Result<String> {
    let places: Vec<usize> =
        line.match_indices(|letter: char| letter.is_ascii_digit()).map(|(at, _)| at).collect();
    if places.is_empty() {
        return Ok(line.to_owned());
    }
    let at = *bytes.choose(&places)?;
    let digit = bytes.int_in_range(0..=9_u8)?;
    Ok(format!("{}{digit}{}", &line[..at], &line[at + 1..]))
}

/// What each key is given anywhere in the catalogue.
fn by_key(files: &Files) -> BTreeMap<String, Vec<String>> {
    let mut found: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for line in files.iter().flat_map(|(_, lines)| lines) {
        if let Some((key, value)) = line.split_once(": ") {
            found.entry(key.trim_start_matches([' ', '-']).to_owned()).or_default().push(value.to_owned());
        }
    }
    found
}

pub fn seeds() -> Vec<Vec<u8>> {
    let stretch =
        |kind: u8| (0..120_u32).map(move |at| (at * 61 + u32::from(kind) * 89).to_le_bytes()[0]).collect();
    (0..24).map(stretch).collect()
}
