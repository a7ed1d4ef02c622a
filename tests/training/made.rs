//! Everything that training outputs of a catalogue are made from, and the demo's, made once.

use fittingcards::cards::{self, Design, Face};
use fittingcards::catalogue::{Catalogue, Training};
use fittingcards::facts::CardFacts;
use fittingcards::mixups::Mixups;
use fittingcards::register::Register;
use fittingcards::source::World;
use fittingcards::training::Input;
use fittingcards::typeset::Fonts;
use fittingcards::{catalogue, facts, mixups};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// A catalogue with all that is made of it.
pub struct Made {
    pub catalogue: Catalogue,
    pub mixups: Mixups,
    pub register: Register,
    pub design: Design,
    pub fonts: Fonts,
    pub facts: BTreeMap<String, CardFacts>,
    pub training: Training,
}

/// The demo.
pub static DEMO: LazyLock<Made> = LazyLock::new(|| Made::of(&crate::fixtures::disk("content")));

impl Made {
    pub fn of(world: &dyn World) -> Self {
        let catalogue = catalogue::load(world).unwrap().catalogue;
        let mixups = mixups::find(&catalogue);
        let facts = facts::of_catalogue(&catalogue, &mixups);
        Self {
            register: Register::of(&catalogue),
            design: Design::load(world, &[]).unwrap().0,
            fonts: Fonts::new(&world.fonts(), &[]).0,
            facts: facts.into_iter().map(|card| (card.number.clone(), card)).collect(),
            training: catalogue.settings.training.clone().unwrap_or_default(),
            mixups,
            catalogue,
        }
    }

    pub fn cards(&self) -> cards::Input<'_> {
        cards::Input {
            catalogue: &self.catalogue,
            mixups: &self.mixups,
            register: &self.register,
            design: &self.design,
            fonts: &self.fonts,
        }
    }

    pub fn input(&self) -> Input<'_> {
        Input { cards: self.cards(), facts: &self.facts, training: &self.training }
    }
}

/// What a face says, in one, with plain spaces.
pub fn said(face: &Face) -> String {
    let said = face.lines().collect::<Vec<_>>().join(" ");
    said.replace('\u{a0}', " ").replace(['\u{2060}', '\u{ad}'], "")
}
