//! How much a catalogue and a body may hold: whatever is compared with each other stays within bounds.

use super::model::{Fitting, Part, Role};
use super::record_index::RecordIndex;
use super::record_kind::RecordKind;
use crate::diagnostics::{Finding, Findings};
use crate::records::Document;
use std::collections::{BTreeMap, BTreeSet};

/// How many gripping parts may go into one body. A crew that must tell more apart has lost already.
const MOST_GRIPPING: usize = 60;
/// How many fittings may share one body.
const MOST_FITTINGS: usize = 100;

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
    let mut places: BTreeMap<(Role, &str), usize> = BTreeMap::new();
    let mut surplus = Vec::new();
    for part in parts.sound.values().filter(|part| part.role.grips() && !part.interface.is_empty()) {
        let count = places.entry((part.role, part.interface.as_str())).or_default();
        *count += 1;
        if *count > MOST_GRIPPING {
            surplus.push((part.number.clone(), *count));
        }
        if *count == MOST_GRIPPING + 1 {
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
    for (number, _) in surplus {
        parts.leave_out(&number);
    }
}

/// What shares a body.
#[derive(Default)]
struct Shared {
    fittings: usize,
    gripping: BTreeSet<String>,
}

/// Leaves out fittings that are too many for their body, or bring too many gripping parts to it.
pub(super) fn limit_fittings(fittings: &mut RecordIndex<Fitting>, findings: &mut Findings) {
    let mut bodies: BTreeMap<String, Shared> = BTreeMap::new();
    let mut surplus = Vec::new();
    for fitting in fittings.sound.values() {
        for body in fitting.bodies() {
            let shared = bodies.entry(body.part.number.clone()).or_default();
            shared.fittings += 1;
            shared.gripping.extend(fitting.gripping().map(|item| item.part.number.clone()));
            if shared.fittings > MOST_FITTINGS || shared.gripping.len() > MOST_GRIPPING {
                findings.push(crowded(fitting, &body.part.number, shared));
                surplus.push(fitting.number.clone());
            }
        }
    }
    for number in surplus {
        fittings.leave_out(&number);
    }
}

fn crowded(fitting: &Fitting, body: &str, shared: &Shared) -> Finding {
    let found = format!("{} fittings, {} gripping parts", shared.fittings, shared.gripping.len());
    let expected = format!("at most {MOST_FITTINGS} fittings and {MOST_GRIPPING} gripping parts");
    Finding::error("too-many-alike", fitting.origin.of("parts"), format!("too much shares the body {body}"))
        .record(&fitting.number)
        .field("parts")
        .found(found)
        .expected(expected)
        .help("give bodies that are not the same part numbers of their own")
}
