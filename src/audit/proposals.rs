//! Free marks that findings propose: for each part one that is distinct in every body it goes into.

use super::Context;
use crate::colour::{Mark, propose_mark};
use crate::mixups::{alike_in_place, mark_limits, marks};
use std::collections::{BTreeMap, BTreeSet};

/// What is free for each part that decides.
pub(super) struct Proposals<'a> {
    context: Context<'a>,
    /// The other parts that go into its place in a body.
    beside: BTreeMap<&'a str, BTreeSet<&'a str>>,
    marks: BTreeMap<&'a str, Mark>,
    stamps: Vec<&'a str>,
    unmarked: BTreeSet<&'a str>,
}

impl<'a> Proposals<'a> {
    /// Parts without a mark are given one in the order of their numbers, each distinct from those before.
    pub(super) fn of(context: Context<'a>) -> Self {
        let stamps = context.catalogue.parts.values().map(|part| part.stamp.as_str());
        let stated = marks(context.catalogue).into_iter().map(|(part, mark)| (part, mark.clone()));
        let mut proposals = Self {
            context,
            beside: beside(context),
            marks: stated.collect(),
            stamps: stamps.filter(|stamp| !stamp.is_empty()).collect(),
            unmarked: BTreeSet::new(),
        };
        let all: Vec<&str> = proposals.beside.keys().copied().collect();
        for part in all {
            if !proposals.marks.contains_key(part) {
                proposals.unmarked.insert(part);
                if let Some(mark) = proposals.free(part) {
                    proposals.marks.insert(part, mark);
                }
            }
        }
        proposals
    }

    /// What to do about a part's mark, as a record has it.
    pub(super) fn help(&self, part: &str) -> String {
        let free = if self.unmarked.contains(part) { self.marks.get(part).cloned() } else { self.free(part) };
        match free {
            Some(free) => format!(
                "free in its bodies: `mark: {{ colour: {}, text: \"{}\", notches: {} }}` ({})",
                free.colour.letters(),
                free.text,
                free.notches,
                free.colour.word()
            ),
            None => "no colour is free in its bodies: give a part another interface".into(),
        }
    }

    fn free(&self, part: &str) -> Option<Mark> {
        let others = self.beside.get(part).into_iter().flatten();
        let taken: Vec<Mark> = others.filter_map(|other| self.marks.get(other).cloned()).collect();
        propose_mark(&taken, &self.stamps, mark_limits(&self.context.catalogue.settings.limits))
    }
}

fn beside(context: Context<'_>) -> BTreeMap<&str, BTreeSet<&str>> {
    let mut beside: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    for body in &context.mixups.bodies {
        for part in &body.parts {
            let others = body.parts.iter().filter(|other| other.number != part.number);
            let alike = others.filter(|other| alike_in_place(other, part)).map(|other| other.number.as_str());
            beside.entry(part.number.as_str()).or_default().extend(alike);
        }
    }
    beside
}
