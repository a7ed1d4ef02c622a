//! Catalogues on disk taken into memory, and the cards and kit tags of them.

use fittingcards::cards::{self, Card, Design, Input, Tag, plan_tags};
use fittingcards::catalogue::{self, Settings};
use fittingcards::diagnostics::Findings;
use fittingcards::facts::CardFacts;
use fittingcards::register::{Register, Standing};
use fittingcards::source::{FilePath, MemoryWorld, World};
use fittingcards::typeset::{FontSource, Fonts};
use fittingcards::{facts, mixups};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, OnceLock};

/// Sizes that cards print in: rows "A7,portrait". `tests/print` measures the same.
pub fn sizes() -> impl Iterator<Item = &'static str> {
    include_str!("../print/sizes.csv").lines().skip(1)
}

/// A folder below the package's root.
pub fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

/// Every file of a catalogue.
pub fn world(folder: &Path) -> MemoryWorld {
    let files = walkdir::WalkDir::new(folder).into_iter().map(Result::unwrap);
    files.filter(|entry| entry.file_type().is_file()).fold(MemoryWorld::new(), |world, entry| {
        let path = entry.path().strip_prefix(folder).unwrap().to_str().unwrap().replace('\\', "/");
        world.with(FilePath::catalogue(&path), std::fs::read(entry.path()).unwrap())
    })
}

/// A catalogue below the package's root, with its cards in another size: a row of `tests/print/sizes.csv`.
pub fn in_size(folder: &str, row: &str) -> MemoryWorld {
    let (size, orientation) = row.split_once(',').unwrap();
    let content = self::folder(folder);
    let settings = read(&content.join("catalogue.yaml"));
    let others = settings.lines().filter(|line| !line.starts_with("card:"));
    let settings: String = others.map(|line| format!("{line}\n")).collect();
    let settings = format!("{settings}card: {{ size: {size}, orientation: {orientation} }}\n");
    world(&content).with(FilePath::catalogue("catalogue.yaml"), settings)
}

/// Its cards, and what is found as they are made.
pub fn cards(world: &MemoryWorld) -> (Vec<Card>, Findings) {
    with_input(world, |input| cards::make_all(input, &facts::of_catalogue(input.catalogue, input.mixups)))
}

/// A catalogue's settings, the facts of its cards, those cards that can be made, and what is found as they are made.
pub struct Made {
    pub settings: Settings,
    pub facts: Vec<CardFacts>,
    pub cards: Vec<Card>,
    pub findings: Findings,
}

impl Made {
    /// What the check code of a card covers.
    pub fn facts_of(&self, card: &Card) -> &CardFacts {
        self.facts.iter().find(|facts| facts.number == card.number).unwrap()
    }
}

type Places = BTreeMap<(&'static str, &'static str), &'static OnceLock<Made>>;

/// The cards of a catalogue in a size, made by the first test that asks and kept for the others. Not to be asked from
/// within rayon: a thread that waits there may be handed the very work that it waits for.
pub fn once(catalogue: &'static str, size: &'static str) -> &'static Made {
    static PLACES: Mutex<Places> = Mutex::new(BTreeMap::new());
    let place = *PLACES
        .lock()
        .unwrap()
        .entry((catalogue, size))
        .or_insert_with(|| Box::leak(Box::new(OnceLock::new())));
    place.get_or_init(|| facts_and_cards(&in_size(catalogue, size)))
}

pub fn facts_and_cards(world: &MemoryWorld) -> Made {
    with_input(world, |input| {
        let facts = facts::of_catalogue(input.catalogue, input.mixups);
        let (cards, findings) = cards::make_all(input, &facts);
        Made { settings: input.catalogue.settings.clone(), facts, cards, findings }
    })
}

/// What the faces of its cards lack of what they must show.
pub fn lacking(world: &MemoryWorld) -> Vec<String> {
    with_input(world, |input| {
        let facts = facts::of_catalogue(input.catalogue, input.mixups);
        let (cards, _) = cards::make_all(input, &facts);
        let found = cards.iter().flat_map(|card| {
            let facts = facts.iter().find(|facts| facts.number == card.number).unwrap();
            let found = cards::incomplete(input, facts, &Standing::Draft, card);
            found.sorted().into_iter().map(|finding| finding.message.clone()).collect::<Vec<_>>()
        });
        found.collect()
    })
}

/// The tags of its kits; what is found on the way may stand.
pub fn tags(world: &MemoryWorld) -> Vec<Tag> {
    with_input(world, |input| {
        let kits = facts::tags(input.catalogue);
        let plans = kits.iter().filter_map(|kit| plan_tags(input, kit, &Standing::Draft).ok());
        plans.flatten().filter_map(|plan| plan.draw(input).0).collect()
    })
}

fn with_input<T>(world: &MemoryWorld, work: impl FnOnce(Input<'_>) -> T) -> T {
    let catalogue = catalogue::load(world).unwrap().catalogue;
    let own = catalogue.fonts.iter();
    let own: Vec<FontSource> =
        own.map(|file| FontSource { bytes: file.bytes.clone(), place: file.place.clone() }).collect();
    let fonts = Fonts::new(&world.fonts(), &own).0;
    let (design, faults) = Design::load(world, &[]).unwrap();
    assert!(!faults.has_errors(), "{:#?}", faults.sorted());
    let mixups = mixups::find(&catalogue);
    let register = Register::default();
    work(Input {
        catalogue: &catalogue,
        mixups: &mixups,
        register: &register,
        design: &design,
        fonts: &fonts,
    })
}

pub fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_default()
}

pub fn environment(name: &str) -> Option<String> {
    std::env::var(name).ok()
}
