//! The demo with everything that its cards and pages are made from, made once.

use super::file;
use fittingcards::cards::{self, Design};
use fittingcards::catalogue::{Catalogue, load};
use fittingcards::facts::{self, CardFacts, TagFacts};
use fittingcards::layouts::Layouts;
use fittingcards::mixups::{self, Mixups};
use fittingcards::register::{Comparison, Register, Reissue, history};
use fittingcards::source::{FilePath, MemoryWorld, World};
use fittingcards::typeset::{FontSource, Fonts};
use fittingcards::units::{Length, Numerals};
use fittingcards::{booklet, sheets, sketch};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// The demo.
pub static DEMO: LazyLock<Made> = LazyLock::new(|| Made::of(&world("content")));

/// The files of a catalogue of the project.
pub fn world(folder: &str) -> MemoryWorld {
    let files = file::below(folder).into_iter();
    files.fold(MemoryWorld::new(), |world, (path, bytes)| world.with(FilePath::catalogue(&path), bytes))
}

/// A catalogue, and what its cards and pages are made from.
pub struct Made {
    pub catalogue: Catalogue,
    pub mixups: Mixups,
    pub facts: Vec<CardFacts>,
    pub tags: Vec<TagFacts>,
    pub by_number: BTreeMap<String, CardFacts>,
    pub register: Register,
    pub fonts: Fonts,
    history: Vec<Comparison>,
    issues: BTreeMap<String, String>,
    sheet_of: BTreeMap<String, String>,
}

impl Made {
    pub fn of(world: &dyn World) -> Self {
        Self::with(load(world).expect("what lies in memory is read").catalogue, world)
    }

    pub fn with(catalogue: Catalogue, world: &dyn World) -> Self {
        let own = catalogue.fonts.iter();
        let own: Vec<FontSource> =
            own.map(|font| FontSource { bytes: font.bytes.clone(), place: font.place.clone() }).collect();
        let mixups = mixups::find(&catalogue);
        let facts = facts::of_catalogue(&catalogue, &mixups);
        let register = Register::of(&catalogue);
        Self {
            history: history(&register, &register.next(&catalogue, &facts, "", Reissue::default())),
            tags: facts::tags(&catalogue),
            by_number: facts.iter().map(|card| (card.number.clone(), card.clone())).collect(),
            register,
            fonts: Fonts::new(&world.fonts(), &own).0,
            issues: BTreeMap::new(),
            sheet_of: BTreeMap::new(),
            catalogue,
            mixups,
            facts,
        }
    }

    pub fn cards<'a>(&'a self, design: &'a Design) -> cards::Input<'a> {
        let Self { catalogue, mixups, register, fonts, .. } = self;
        cards::Input { catalogue, mixups, register, design, fonts }
    }

    pub fn booklet<'a>(&'a self, layouts: &'a Layouts) -> booklet::Input<'a> {
        let room = Length::from_mm(200.0);
        let numerals = Numerals::new(self.catalogue.settings.decimal_mark);
        booklet::Input {
            catalogue: &self.catalogue,
            mixups: &self.mixups,
            facts: &self.by_number,
            register: &self.register,
            history: &self.history,
            layouts,
            state: "Draft, not issued",
            issues: &self.issues,
            drawing: sketch::Options { numerals, ..sketch::Options::new(&self.fonts, room, room) },
            sheets: &[],
            sheet_of: &self.sheet_of,
            tag_sheets: &[],
        }
    }

    /// A card as a picture and on a sheet.
    pub fn printed(&self, card: cards::Card) {
        for face in [&card.front, &card.back] {
            face.png(30.0).expect("what was drawn is a picture");
        }
        let settings = &self.catalogue.settings;
        let options = sheets::Options {
            title: &settings.title,
            edition: &settings.edition,
            date: settings.date,
            language: &settings.language,
            format: settings.sheet,
            trim: settings.card.trim(),
            fonts: &self.fonts,
        };
        let file = sheets::files(sheets::PrintKind::Cards, 1).remove(0);
        // A fault is an answer: not every font may be put into a file.
        let _ = sheets::pdf(&file, 1, [card], &options);
    }
}
