//! Ids and numbers: each once over all kinds, whatever its case.

use super::record_kind::RecordKind;
use crate::diagnostics::{Finding, Findings};
use crate::records::{Document, EditionRecord, Records, Salvaged};
use crate::section::materials;
use crate::source::{FilePath, Place};
use std::collections::{BTreeMap, BTreeSet};

/// Every id of a catalogue with its kind, and those that records can't be had under.
pub(super) struct Names {
    kinds: BTreeMap<String, RecordKind>,
    salvaged: BTreeSet<String>,
    /// Those salvaged that no file has which decides what goes into what.
    aside: BTreeSet<String>,
    doubled: BTreeSet<String>,
}

struct Named<'r> {
    id: &'r str,
    kind: RecordKind,
    place: &'r Place,
}

impl Names {
    /// The ids of all records; those given twice become findings.
    pub(super) fn new(records: &Records, findings: &mut Findings) -> Self {
        let all = all(records);
        let salvaged = |decide: bool| {
            let of = move |salvaged: &&Salvaged| (file_decides(&salvaged.file) == Some(true)) == decide;
            let ids = records.lost.salvaged.iter().filter(of).map(|salvaged| salvaged.id.clone());
            ids.collect::<BTreeSet<String>>()
        };
        let (deciding, other) = (salvaged(true), salvaged(false));
        let mut names = Self {
            kinds: materials::built_in().keys().map(|id| (id.clone(), RecordKind::Material)).collect(),
            aside: other.difference(&deciding).cloned().collect(),
            salvaged: deciding.into_iter().chain(other).collect(),
            doubled: BTreeSet::new(),
        };
        let mut seen: BTreeMap<String, &Named<'_>> = BTreeMap::new();
        let issued: BTreeMap<String, &EditionRecord> =
            records.editions.iter().map(|edition| (edition.edition.to_lowercase(), edition)).collect();
        for named in &all {
            let key = named.id.to_lowercase();
            if let Some(fault) = built_in_taken(named) {
                findings.push(fault);
                names.doubled.insert(named.id.to_owned());
            } else if let Some(first) = seen.get(&key) {
                findings.push(doubled(named, first));
                names.doubled.extend([named.id, first.id].map(str::to_owned));
            } else if let Some(edition) = issued.get(&key).filter(|_| named.kind != RecordKind::Edition) {
                findings.push(issued_taken(named, edition));
                names.doubled.insert(named.id.to_owned());
            } else {
                seen.insert(key, named);
            }
            names.kinds.entry(named.id.to_owned()).or_insert(named.kind);
        }
        names
    }

    /// Ids whose records are left out whatever they say: given twice, or in a file that can't be read.
    pub(super) fn left_out(&self) -> BTreeSet<String> {
        self.salvaged.union(&self.doubled).cloned().collect()
    }

    /// The kind of the record with an id.
    pub(super) fn kind_of(&self, id: &str) -> Option<RecordKind> {
        self.kinds.get(id).copied()
    }

    /// Whether what is left out under an id decides what goes into what, as far as that can be known.
    pub(super) fn decides(&self, id: &str) -> bool {
        match self.kind_of(id) {
            Some(kind) => kind.decides() || self.doubled.contains(id),
            None => !self.aside.contains(id),
        }
    }

    /// Whether any record, sound or not, has this id.
    pub(super) fn has_record(&self, id: &str) -> bool {
        self.salvaged.contains(id) || self.kind_of(id).is_some_and(|kind| kind != RecordKind::Edition)
    }

    /// The id of every record that can be read.
    pub(super) fn records(&self) -> impl Iterator<Item = &str> {
        self.kinds.iter().filter(|(_, kind)| **kind != RecordKind::Edition).map(|(id, _)| id.as_str())
    }
}

/// Whether what a file holds decides what goes into what; none where it holds no records. One that lies in no folder
/// of records may have been meant for any.
pub(super) fn file_decides(file: &FilePath) -> Option<bool> {
    match file.path.split('/').next() {
        Some("notes" | "fonts" | "installed" | "schemas") => None,
        Some("procedures" | "notices" | "holders" | "register") => Some(false),
        _ => Some(true),
    }
}

fn all(records: &Records) -> Vec<Named<'_>> {
    let mut all = Vec::new();
    if let Some(document) = &records.settings {
        let edition = document.record.as_ref().and_then(|record| record.edition.as_ref());
        all.extend(edition.map(|edition| Named {
            id: &edition.value.0,
            kind: RecordKind::Edition,
            place: &edition.place,
        }));
    }
    add(&mut all, RecordKind::Material, &records.materials);
    add(&mut all, RecordKind::Conductor, &records.conductors);
    add(&mut all, RecordKind::Part, &records.parts);
    add(&mut all, RecordKind::Fitting, &records.fittings);
    add(&mut all, RecordKind::Notice, &records.notices);
    add(&mut all, RecordKind::Holder, &records.holders);
    add(&mut all, RecordKind::Procedure, &records.procedures);
    all.sort_by(|a, b| a.place.cmp(b.place));
    all
}

fn add<'r, T>(all: &mut Vec<Named<'r>>, kind: RecordKind, documents: &'r [Document<T>]) {
    for document in documents {
        let place = ["id", "number"].iter().find_map(|key| document.fields.get(*key));
        if let (Some(id), Some(place)) = (&document.id, place) {
            all.push(Named { id, kind, place });
        }
    }
}

/// A record may take the id of a built-in material only to state that material otherwise.
fn built_in_taken(named: &Named<'_>) -> Option<Finding> {
    let built_in = materials::built_in().keys().find(|id| id.eq_ignore_ascii_case(named.id))?;
    if named.kind == RecordKind::Material && *built_in == named.id {
        return None;
    }
    let message = format!("`{}` is the id of a built-in material", named.id);
    let help = match named.kind {
        RecordKind::Material => {
            format!("write `{built_in}` to replace that material, or use another id")
        }
        _ => "use another id".to_owned(),
    };
    Some(Finding::error("duplicate-id", named.place.clone(), message).record(named.id).help(help))
}

/// An edition keeps its name: cards and other editions say it.
fn issued_taken(named: &Named<'_>, edition: &EditionRecord) -> Finding {
    let message = format!("this {} has the id of an edition that is on the register", named.kind.word());
    Finding::error("duplicate-id", named.place.clone(), message)
        .record(named.id)
        .found(named.id)
        .help("an edition keeps its name: use another id")
        .related(
            Place::whole(edition.file.clone()),
            format!("edition {} of {}", edition.edition, edition.date),
        )
}

fn doubled(named: &Named<'_>, first: &Named<'_>) -> Finding {
    let other = match first.kind {
        kind if kind == named.kind => format!("another {}", kind.word()),
        kind => kind.with_article(),
    };
    let message = format!("this {} has the same id as {other}", named.kind.word());
    let help = if named.id == first.id {
        "each id or number may be used only once in the catalogue"
    } else {
        "each id or number may be used only once in the catalogue, and capital letters make no difference"
    };
    Finding::error("duplicate-id", named.place.clone(), message)
        .record(named.id)
        .found(named.id)
        .help(help)
        .related(first.place.clone(), format!("`{}` is already here", first.id))
}
