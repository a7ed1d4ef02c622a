//! Catalogues on disk taken into memory, and the cards of them.

use fittingcards::cards::{self, Card, Input};
use fittingcards::catalogue;
use fittingcards::diagnostics::Findings;
use fittingcards::layouts::Layouts;
use fittingcards::register::Register;
use fittingcards::source::{FilePath, MemoryWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::{facts, mixups};
use std::path::Path;
use std::sync::Arc;

/// Every file of a catalogue.
pub fn world(folder: &Path) -> MemoryWorld {
    let files = walkdir::WalkDir::new(folder).into_iter().map(Result::unwrap);
    files.filter(|entry| entry.file_type().is_file()).fold(MemoryWorld::new(), |world, entry| {
        let path = entry.path().strip_prefix(folder).unwrap().to_str().unwrap().replace('\\', "/");
        world.with(FilePath::catalogue(&path), std::fs::read(entry.path()).unwrap())
    })
}

/// Its cards, and what is found as they are made.
pub fn cards(world: &MemoryWorld) -> (Vec<Card>, Findings) {
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let fonts = Arc::new(fonts);
    let catalogue = catalogue::load(world).unwrap().catalogue;
    let (layouts, _) = Layouts::load(world, "cards", &cards::helpers(&fonts)).unwrap();
    let mixups = mixups::find(&catalogue);
    let facts = facts::of_catalogue(&catalogue, &mixups);
    let register = Register::default();
    let input = Input {
        catalogue: &catalogue,
        mixups: &mixups,
        register: &register,
        layouts: &layouts,
        fonts: &fonts,
    };
    cards::make_all(input, &facts)
}

pub fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_default()
}

pub fn environment(name: &str) -> Option<String> {
    std::env::var(name).ok()
}
