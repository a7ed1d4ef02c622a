//! From a catalogue folder to the domain model.

use super::check::Check;
use super::conductors::conductor;
use super::crowding::{limit_fittings, limit_parts, too_many};
use super::date::date;
use super::editions::editions;
use super::fittings::{Indexes, fitting};
use super::gaps::{LeftOut, gaps};
use super::materials::material;
use super::model::Catalogue;
use super::names::Names;
use super::notes::{fonts, installed, notes};
use super::notices::{holder, notice};
use super::parts::part;
use super::procedures::procedure;
use super::record_index::RecordIndex;
use super::record_kind::RecordKind;
use super::settings::{check_before_work, check_fractions, check_groups, settings};
use super::supersession;
use crate::diagnostics::{Findings, Severity};
use crate::records::{self, Document, Records, Seen};
use crate::section::{Material, materials};
use crate::source::{World, WorldError};
use rayon::prelude::*;

/// A catalogue as far as it is sound, and everything that is wrong with the rest.
#[derive(Debug, Clone)]
pub struct Loaded {
    /// The sound records. A record with a fault is not in it, nor is what depends on it; where
    /// `catalogue.yaml` is missing or faulty, defaults stand in for what it does not settle.
    pub catalogue: Catalogue,
    /// What is wrong. While an error is among it, the catalogue is not whole.
    pub findings: Findings,
}

/// Reads, checks and links a catalogue.
///
/// # Errors
/// Where the machine can't read the folder or a file in it, or SOURCE_DATE_EPOCH is no number. What
/// is wrong in the records is in [`Loaded::findings`].
///
/// ```
/// use fittingcards::catalogue::load;
/// use fittingcards::source::{FilePath, MemoryWorld};
/// let settings = "title: Ends\nowner: Tarn Light Railway\nedition: \"1\"\ncaution: Demo.\n";
/// let wire = "id: wire-8\nname: Wire 8\nduty: stay\nmaterial: steel-st1a\n\
///             construction: { solid: { diameter_mm: 8 } }\n";
/// let world = MemoryWorld::new()
///     .with(FilePath::catalogue("catalogue.yaml"), settings)
///     .with(FilePath::catalogue("conductors/wire.yaml"), wire);
/// let loaded = load(&world)?;
/// assert!(!loaded.findings.has_errors());
/// let section = &loaded.catalogue.conductors["wire-8"].section;
/// assert_eq!(format!("{:.2}", section.metal.mm2()), "50.27");
/// # Ok::<(), fittingcards::source::WorldError>(())
/// ```
pub fn load(world: &dyn World) -> Result<Loaded, WorldError> {
    load_seen(world, &|_, _| {})
}

/// The same, where somebody looks at the values of each file of records as they are read.
///
/// # Errors
/// As [`load`].
pub fn load_seen(world: &dyn World, seen: &Seen<'_>) -> Result<Loaded, WorldError> {
    let mut records = records::read_seen(world, seen)?;
    let mut findings = std::mem::take(&mut records.findings);
    let names = Names::new(&records, &mut findings);
    let sound_so_far = findings.count(Severity::Error);
    let editions = editions(std::mem::take(&mut records.editions), &mut findings);
    let broken_editions = findings.count(Severity::Error) - sound_so_far;
    check_before_work(records.settings.as_ref(), &mut findings);
    check_groups(records.settings.as_ref(), &mut findings);
    check_fractions(records.settings.as_ref(), &mut findings);
    let mut catalogue = link(records, &names, &mut findings);
    catalogue.editions = editions;
    catalogue.gaps.other += broken_editions;
    let stated = catalogue.settings.date;
    let newest = catalogue.editions.iter().map(|edition| edition.date).max();
    catalogue.settings.date = date(world, stated, newest, catalogue.notices.values())?;
    Ok(Loaded { catalogue, findings })
}

fn link(records: Records, names: &Names, findings: &mut Findings) -> Catalogue {
    let superseded = supersession::check(&records.fittings, names, findings);
    let materials = all_materials(&records, names, findings);
    let conductors = index(RecordKind::Conductor, &records.conductors, names, findings, |document, check| {
        conductor(document, &materials, check)
    });
    let settings = settings(records.settings.as_ref());
    let mut parts = index(RecordKind::Part, &records.parts, names, findings, |document, check| {
        part(document, &materials, &conductors, settings.date, check)
    });
    limit_parts(&mut parts, findings);
    let notices = index(RecordKind::Notice, &records.notices, names, findings, |document, check| {
        notice(document, check)
    });
    let procedures = index(RecordKind::Procedure, &records.procedures, names, findings, |document, check| {
        procedure(document, check)
    });
    let indexes =
        Indexes { conductors: &conductors, parts: &parts, notices: &notices, procedures: &procedures };
    let mut fittings = index(RecordKind::Fitting, &records.fittings, names, findings, |document, check| {
        fitting(document, indexes, check).filter(|fitting| !superseded.contains(&fitting.number))
    });
    limit_fittings(&mut fittings, &parts, findings);
    supersession::resolve(&mut fittings.sound);
    let holders = index(RecordKind::Holder, &records.holders, names, findings, |document, check| {
        holder(document, &fittings, &parts, check)
    });
    let deciding = LeftOut::default()
        .with(materials.left_out())
        .with(conductors.left_out())
        .with(parts.left_out())
        .with(fittings.left_out());
    let other =
        LeftOut::default().with(notices.left_out()).with(procedures.left_out()).with(holders.left_out());
    let gaps = gaps(&records, names, &deciding, &other);
    let catalogue = Catalogue {
        settings,
        notes: notes(&records.notes, names, findings),
        fonts: fonts(records.fonts),
        installed: installed(records.installed),
        materials: materials.sound,
        conductors: conductors.sound,
        parts: parts.sound,
        fittings: fittings.sound,
        procedures: procedures.sound,
        notices: notices.sound,
        holders: holders.sound,
        editions: Vec::new(),
        gaps,
        left_out: deciding.ids.into_iter().chain(other.ids).collect(),
    };
    // Many records are taken out of memory beside what follows.
    rayon::spawn(move || drop((records.parts, records.fittings)));
    catalogue
}

fn all_materials(records: &Records, names: &Names, findings: &mut Findings) -> RecordIndex<Material> {
    let mut index = index(RecordKind::Material, &records.materials, names, findings, material);
    for (id, material) in materials::built_in() {
        if !index.knows(id) {
            index.sound.insert(id.clone(), material.clone());
        }
    }
    index
}

fn index<R: Sync, T: Send>(
    kind: RecordKind,
    documents: &[Document<R>],
    names: &Names,
    findings: &mut Findings,
    build: impl Fn(&Document<R>, &mut Check<'_>) -> Option<T> + Sync,
) -> RecordIndex<T> {
    let mut index = RecordIndex::new(kind, names.left_out());
    let within = &documents[..documents.len().min(kind.most())];
    findings.extend(too_many(kind, documents));
    for document in &documents[within.len()..] {
        index.put(document.id.as_deref(), None);
    }
    let built = within.par_iter().map(|document| {
        let mut found = Findings::new();
        let record = build(document, &mut Check::new(document, names, &mut found));
        (record, found)
    });
    for (document, (record, found)) in within.iter().zip(built.collect::<Vec<_>>()) {
        findings.extend(found);
        index.put(document.id.as_deref(), record);
    }
    index
}
