//! Hidden dangers as findings tell of them: parts and whole kits that go into a fitting unseen.

use super::Context;
use super::inspected::is_built;
use crate::catalogue::{Fitting, Origin, Part};
use crate::mixups::Consequence;
use crate::units::Numerals;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A part, or another fitting's whole kit, that goes in unseen.
#[derive(Clone, Copy)]
pub(super) struct Unseen<'a> {
    /// The part, or the part of the kit that grips.
    pub(super) part: &'a Part,
    /// The kit's fitting; `None` for a single part.
    kit: Option<&'a Fitting>,
    /// What comes of it.
    pub(super) comes: &'a Consequence,
}

impl<'a> Unseen<'a> {
    /// Its number, or whose kit it is, and the height of the wire where it goes in unseen only on worn wire.
    pub(super) fn name(self, numerals: Numerals) -> String {
        let name =
            self.kit.map_or_else(|| self.part.number.clone(), |kit| format!("the kit of {}", kit.number));
        match self.comes.worn {
            Some(worn) => format!("{name} (on wire worn to {})", numerals.length(worn.height, 1)),
            None => name,
        }
    }

    /// Where it is recorded.
    pub(super) fn origin(self) -> &'a Origin {
        self.kit.map_or(&self.part.origin, |kit| &kit.origin)
    }
}

/// The hidden dangers of each fitting that is built: parts, then kits of several parts.
pub(super) fn hidden(context: Context<'_>) -> Vec<(&Arc<Fitting>, Vec<Unseen<'_>>)> {
    let parts = context
        .mixups
        .cases()
        .map(|case| (&case.fitting, Unseen { part: &case.part, kit: None, comes: &case.comes }));
    let kits = context.mixups.kits().filter(|kit| kit.parts.len() > 1).filter_map(|kit| {
        let part = kit.parts.iter().find(|part| part.role.grips()).or_else(|| kit.parts.first())?;
        Some((&kit.fitting, Unseen { part, kit: Some(&kit.kit), comes: &kit.comes }))
    });
    let mut hidden: BTreeMap<&str, (&Arc<Fitting>, Vec<Unseen<'_>>)> = BTreeMap::new();
    for (fitting, unseen) in parts.chain(kits) {
        if unseen.comes.hidden && is_built(fitting) {
            hidden.entry(&fitting.number).or_insert_with(|| (fitting, Vec::new())).1.push(unseen);
        }
    }
    hidden.into_values().collect()
}

/// What findings call them, each once.
pub(super) fn names<'a>(unseen: impl Iterator<Item = &'a Unseen<'a>>, numerals: Numerals) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for name in unseen.map(|unseen| unseen.name(numerals)) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names
}
