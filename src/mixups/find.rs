//! Every combination of a catalogue's fittings with the parts and kits that go in.

use super::deciding::{decides, deciding};
use super::judging::{Judging, Opening, openings};
use super::{BodyMixups, InterfaceMixups, Kit, Mixups};
use crate::catalogue::{Catalogue, Fitting, Part, Role};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Works out every mix-up of a catalogue.
///
/// For each part of role body: every part that decides whether its fittings hold and goes in (same role
/// and interface as one of its own, or used in the same body) with every fitting of that body and each
/// of its conductors, built with everything of its own except that part; then each fitting's whole set
/// of such parts on every other conductor. Gripping parts of one interface of fittings without a body
/// have their cases too. The work grows with the number of cases; nothing is judged twice.
#[must_use]
pub fn find(catalogue: &Catalogue) -> Mixups {
    let places = by_place(catalogue);
    let bodies: Vec<_> = by_body(catalogue).into_values().collect();
    // What was judged is of one body: each thread remembers its own.
    let together = bodies.len().div_ceil(rayon::current_num_threads()).max(1);
    let bodies =
        bodies.par_chunks(together).flat_map_iter(|some| of_bodies(catalogue, some, &places)).collect();
    let mut judging = Judging::of(catalogue);
    let without_body = by_interface(catalogue)
        .into_iter()
        .map(|((role, interface), fittings)| InterfaceMixups {
            role,
            interface: interface.to_owned(),
            cases: cases(&mut judging, &openings(None, &fittings), &places[&(role, interface)]),
        })
        .collect();
    Mixups { bodies, without_body, gaps: catalogue.gaps }
}

type Places<'a> = BTreeMap<(Role, &'a str), Vec<&'a Arc<Part>>>;

/// Parts that decide, by the place that they go into.
fn by_place(catalogue: &Catalogue) -> Places<'_> {
    let mut places = Places::new();
    for part in catalogue.parts.values().filter(|part| decides(part) && !part.interface.is_empty()) {
        places.entry((part.role, part.interface.as_str())).or_default().push(part);
    }
    places
}

/// A body with its fittings.
type Body<'a> = (&'a Arc<Part>, Vec<&'a Arc<Fitting>>);
type Bodies<'a> = BTreeMap<&'a str, Body<'a>>;

/// Bodies with their fittings, in the order of their numbers.
fn by_body(catalogue: &Catalogue) -> Bodies<'_> {
    let mut bodies = Bodies::new();
    for fitting in catalogue.fittings.values() {
        for item in fitting.bodies() {
            let (_, fittings) = bodies.entry(&item.part.number).or_insert((&item.part, Vec::new()));
            if fittings.last().is_none_or(|last| last.number != fitting.number) {
                fittings.push(fitting);
            }
        }
    }
    bodies
}

type Interfaces<'a> = BTreeMap<(Role, &'a str), Vec<&'a Arc<Fitting>>>;

/// Fittings without a body, by the places of their gripping parts.
fn by_interface(catalogue: &Catalogue) -> Interfaces<'_> {
    let mut interfaces = Interfaces::new();
    for fitting in catalogue.fittings.values().filter(|fitting| fitting.bodies().next().is_none()) {
        for item in fitting.gripping().filter(|item| !item.part.interface.is_empty()) {
            let fittings = interfaces.entry((item.part.role, item.part.interface.as_str())).or_default();
            if fittings.last().is_none_or(|last| last.number != fitting.number) {
                fittings.push(fitting);
            }
        }
    }
    interfaces
}

/// The mix-ups of those of these bodies that anything goes into.
fn of_bodies<'a>(catalogue: &'a Catalogue, bodies: &[Body<'a>], places: &Places<'a>) -> Vec<BodyMixups> {
    let mut judging = Judging::of(catalogue);
    let found = bodies.iter().map(|(body, fittings)| body_mixups(&mut judging, body, fittings, places));
    found.filter(|body| !body.parts.is_empty()).collect()
}

fn body_mixups<'a>(
    judging: &mut Judging<'a>,
    body: &'a Arc<Part>,
    fittings: &[&'a Arc<Fitting>],
    places: &Places<'a>,
) -> BodyMixups {
    let openings = openings(Some(body), fittings);
    let parts = going_in(fittings, places);
    BodyMixups {
        body: Arc::clone(body),
        fittings: fittings.iter().map(|fitting| Arc::clone(fitting)).collect(),
        cases: cases(judging, &openings, &parts),
        kits: kits(judging, body, &openings, fittings),
        parts: parts.into_iter().cloned().collect(),
    }
}

/// The parts that decide and go into a body, in the order of their numbers.
fn going_in<'a>(fittings: &[&'a Arc<Fitting>], places: &Places<'a>) -> Vec<&'a Arc<Part>> {
    let mut parts: BTreeMap<&str, &Arc<Part>> = BTreeMap::new();
    for part in fittings.iter().flat_map(|fitting| deciding(fitting)) {
        parts.insert(&part.number, part);
        if let Some(alike) = places.get(&(part.role, part.interface.as_str())) {
            parts.extend(alike.iter().map(|part| (part.number.as_str(), *part)));
        }
    }
    parts.into_values().collect()
}

fn cases<'a>(
    judging: &mut Judging<'a>,
    openings: &[Opening<'a>],
    parts: &[&'a Arc<Part>],
) -> Vec<super::Case> {
    let mut cases = Vec::with_capacity(parts.len() * openings.len());
    for part in parts {
        cases.extend(openings.iter().map(|opening| judging.case(part, opening)));
    }
    cases
}

/// Each fitting's parts that decide, on the conductors of the others that are not its own.
fn kits<'a>(
    judging: &mut Judging<'a>,
    body: &'a Arc<Part>,
    openings: &[Opening<'a>],
    fittings: &[&'a Arc<Fitting>],
) -> Vec<Kit> {
    let mut kits = Vec::new();
    for kit in fittings {
        let parts: Vec<&Arc<Part>> = deciding(kit).collect();
        let other = |opening: &&Opening<'a>| {
            let seat = &opening.seat;
            seat.fitting.number != kit.number && !kit.conductors.iter().any(|own| own.id == seat.conductor.id)
        };
        if !parts.is_empty() {
            kits.extend(openings.iter().filter(other).map(|opening| judging.kit(kit, &parts, body, opening)));
        }
    }
    kits
}
