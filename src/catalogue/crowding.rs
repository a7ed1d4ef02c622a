//! How much a catalogue and a body may hold: whatever is compared with each other stays within bounds.

use super::model::{Fitting, Part, Role};
use super::record_index::RecordIndex;
use super::record_kind::RecordKind;
use crate::diagnostics::{Finding, Findings};
use crate::records::Document;
use std::collections::{BTreeMap, BTreeSet};

/// How many gripping parts may go into one body. A crew that must tell more apart has lost already.
const MOST_GRIPPING: usize = 60;
/// How many pairs of a fitting and a gripping part a body may have; each is judged.
const MOST_CASES: usize = 6_000;

/// The finding of a kind with more records than a catalogue may have, at the first that is too many.
pub(super) fn too_many<R>(kind: RecordKind, documents: &[Document<R>]) -> Option<Finding> {
    let first = documents.get(kind.most())?;
    let (most, word) = (kind.most(), kind.word());
    let finding = Finding::error("too-many-records", first.place.clone(), format!("too many {word}s"))
        .found(format!("{} {word}s", documents.len()))
        .expected(format!("at most {most} {word}s in one catalogue"))
        .help("make several catalogues, such as one for each line");
    Some(match &first.id {
        Some(id) => finding.record(id),
        None => finding,
    })
}

/// Leaves out gripping parts that are too many for the place that they go into.
pub(super) fn limit_parts(parts: &mut RecordIndex<Part>, findings: &mut Findings) {
    let mut surplus: Vec<String> = Vec::new();
    for alike in places(parts).into_values() {
        let beyond = alike.iter().skip(MOST_GRIPPING);
        surplus.extend(beyond.map(|number| (*number).to_owned()));
        if let Some(part) = alike.get(MOST_GRIPPING).and_then(|number| parts.sound.get(*number)) {
            let message = format!("more than {MOST_GRIPPING} gripping parts go into the same place");
            findings.push(
                Finding::error("too-many-alike", part.origin.of("interface"), message)
                    .record(&part.number)
                    .field("interface")
                    .found(format!("interface \"{}\"", part.interface))
                    .help("give parts that do not go into each other's place interfaces of their own"),
            );
        }
    }
    for number in surplus {
        parts.leave_out(&number);
    }
}

/// What shares a body.
#[derive(Default)]
struct Shared {
    fittings: usize,
    gripping: BTreeSet<String>,
}

impl Shared {
    /// Whether each of its fittings can be built with each of its gripping parts in good time.
    fn is_within_bounds(&self) -> bool {
        self.gripping.len() <= MOST_GRIPPING && self.fittings * self.gripping.len().max(1) <= MOST_CASES
    }
}

/// Leaves out fittings that are too many for their body, or bring too many gripping parts to it.
pub(super) fn limit_fittings(
    fittings: &mut RecordIndex<Fitting>,
    parts: &RecordIndex<Part>,
    findings: &mut Findings,
) {
    let places = places(parts);
    let mut bodies: BTreeMap<String, Shared> = BTreeMap::new();
    let mut surplus = Vec::new();
    for fitting in fittings.sound.values() {
        for body in fitting.bodies() {
            let number = &body.part.number;
            let shared = bodies.get(number);
            let (count, others) =
                shared.map_or((0, BTreeSet::new()), |one| (one.fittings, one.gripping.clone()));
            let gripping = others.into_iter().chain(gripping(fitting, &places)).collect();
            let with_it = Shared { fittings: count + 1, gripping };
            if with_it.is_within_bounds() {
                bodies.insert(number.clone(), with_it);
            } else {
                findings.push(crowded(fitting, number, &with_it));
                surplus.push(fitting.number.clone());
            }
        }
    }
    for number in surplus {
        fittings.leave_out(&number);
    }
}

/// Gripping parts by the place that they go into.
type Places<'a> = BTreeMap<(Role, &'a str), Vec<&'a str>>;

fn places(parts: &RecordIndex<Part>) -> Places<'_> {
    let mut places = Places::new();
    for part in parts.sound.values().filter(|part| part.role.grips() && !part.interface.is_empty()) {
        places.entry((part.role, part.interface.as_str())).or_default().push(&part.number);
    }
    places
}

/// The gripping parts of a fitting, and all that go into the same places.
fn gripping<'a>(fitting: &'a Fitting, places: &'a Places<'_>) -> impl Iterator<Item = String> + 'a {
    fitting.gripping().flat_map(|item| {
        let alike = places.get(&(item.part.role, item.part.interface.as_str())).into_iter().flatten();
        std::iter::once(item.part.number.as_str()).chain(alike.copied()).map(str::to_owned)
    })
}

fn crowded(fitting: &Fitting, body: &str, shared: &Shared) -> Finding {
    let found = format!("{} fittings, {} gripping parts", shared.fittings, shared.gripping.len());
    let expected = format!(
        "at most {MOST_GRIPPING} gripping parts, and {MOST_CASES} pairs of a fitting and such a part"
    );
    Finding::error("too-many-alike", fitting.origin.of("parts"), format!("too much shares the body {body}"))
        .record(&fitting.number)
        .field("parts")
        .found(found)
        .expected(expected)
        .help("give bodies that are not the same part numbers of their own")
}
