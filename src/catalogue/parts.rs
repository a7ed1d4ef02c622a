//! Parts: checked, and linked to their materials and to the conductors they are proven on.

use super::check::{Check, origin};
use super::model::{Conductor, Part, Proof, Role, Status};
use super::quantities::{mark, quantity, text, word};
use super::record_index::RecordIndex;
use super::record_kind::RecordKind;
use crate::grip::{Geometry, Slits};
use crate::records::{Document, Field, GeometryRecord, PartRecord, PartStatus, ProofRecord};
use crate::section::Material;
use jiff::civil::Date;
use std::collections::BTreeMap;

/// The part that a document states, where it and what it names are sound; `today` is the date that catalogue.yaml states.
pub(super) fn part(
    document: &Document<PartRecord>,
    materials: &RecordIndex<Material>,
    conductors: &RecordIndex<Conductor>,
    today: Option<Date>,
    check: &mut Check<'_>,
) -> Option<Part> {
    let record = document.record.as_ref()?;
    check_proofs(record, check);
    let material = record.material.as_ref().and_then(|name| materials.find(name, check));
    let proven_on = record.proven_on.iter().flat_map(|field| &field.value);
    let proven_on = proven_on.filter_map(|field| proof(&field.value, conductors, today, check)).collect();
    check_role(record, check);
    check_slits(record, check);
    check_status(record, check);
    if !check.is_sound() {
        return None;
    }
    let (mark, mark_seen_after_assembly) = mark(record.mark.as_ref());
    Some(Part {
        number: record.number.as_ref()?.value.0.clone(),
        name: record.name.as_ref()?.value.0.clone(),
        role: record.role.as_ref()?.value,
        material: material?,
        drawing: text(record.drawing.as_ref()),
        stamp: text(record.stamp.as_ref()),
        stamp_on: word(record.stamp_on.as_ref()),
        mark,
        mark_seen_after_assembly,
        reuse: word(record.reuse.as_ref()),
        status: word(record.status.as_ref()).map_or(Status::Current, |PartStatus(status)| status),
        interface: text(record.interface.as_ref()),
        proven_on,
        geometry: record.geometry.as_ref().map(|field| (&field.value).into()),
        origin: origin(document),
    })
}

fn proof(
    record: &ProofRecord,
    conductors: &RecordIndex<Conductor>,
    today: Option<Date>,
    check: &mut Check<'_>,
) -> Option<Proof> {
    let date = record.date.as_ref().map(|date| date.value.0);
    Some(Proof {
        conductor: conductors.find(record.conductor.as_ref()?, check)?,
        body: proven_in(record, check),
        holding_load: quantity(record.holding_load.as_ref()),
        report: text(record.report.as_ref()),
        date,
        to_come: date.zip(today).is_some_and(|(date, today)| date > today),
    })
}

/// Two rows that say the same are one test, and count as one; a row that says anything else is another.
fn check_proofs(record: &PartRecord, check: &mut Check<'_>) {
    // What can't be read of two rows may be what tells them apart.
    if !check.is_sound() {
        return;
    }
    let mut seen: BTreeMap<String, &Field<ProofRecord>> = BTreeMap::new();
    for row in record.proven_on.iter().flat_map(|field| &field.value) {
        let Some(first) = seen.get(&said(&row.value)) else {
            seen.insert(said(&row.value), row);
            continue;
        };
        check.fault("part-listed-twice", row, "this row is already among the proofs", |finding| {
            finding
                .help("take it out, or correct what is of another test")
                .related(first.place.clone(), "it is already here")
        });
    }
}

/// All that a row of proof says, without where it stands.
fn said(record: &ProofRecord) -> String {
    let ProofRecord { conductor, body, holding_load, report, date } = record;
    let texts = (conductor.as_ref().map(|name| &name.value.0), body.as_ref().map(|name| &name.value.0));
    let load = holding_load.as_ref().map(|load| load.value.bare());
    format!("{texts:?} {load:?} {:?} {:?}", text(report.as_ref()), date.as_ref().map(|date| date.value.0))
}

/// The body of a proof; any part will do here, since a proof in a wrong body counts for nothing.
fn proven_in(record: &ProofRecord, check: &mut Check<'_>) -> String {
    let Some(body) = &record.body else { return String::new() };
    let number = body.value.0.as_str();
    if check.kind_of(number) != Some(RecordKind::Part) && !check.is_salvaged(number) {
        check.fault("unknown-part", body, format!("there is no part `{number}`"), |finding| {
            finding.help("name the body that it was tested in")
        });
    }
    number.to_owned()
}

/// Measurements that do not belong to the role would never be looked at.
fn check_role(record: &PartRecord, check: &mut Check<'_>) {
    let (Some(role), Some(geometry)) = (&record.role, &record.geometry) else { return };
    let allowed = geometries(role.value);
    let found = Geometry::from(&geometry.value).key();
    if role.value == Role::Other || allowed.contains(&found) {
        return;
    }
    let message = format!("a part of role {} has no measurements of this kind", role.value.word());
    let expected = match allowed {
        [] => "none".to_owned(),
        _ => allowed.iter().map(|key| format!("`{key}`")).collect::<Vec<_>>().join(" or "),
    };
    check.fault("geometry-of-another-role", geometry, message, |finding| {
        finding
            .found(format!("`{found}`"))
            .expected(expected)
            .help("correct the role or the measurements")
            .related(role.place.clone(), "its role")
    });
}

/// Slits close a bore by their widths together: where those come near its circumference, no metal is left that could
/// close, and every verdict on the part would be wrong.
fn check_slits(record: &PartRecord, check: &mut Check<'_>) {
    let Some(Field { value: geometry, .. }) = &record.geometry else { return };
    let (width, diameter, round) = match geometry {
        GeometryRecord::Collet(Field { value: cone, .. }) => (&cone.slit_width, &cone.bore, "bore"),
        GeometryRecord::SpreadingCone(Field { value: cone, .. }) => {
            (&cone.slit_width, &cone.hole_diameter, "hole")
        }
        _ => return,
    };
    let slits = Slits::of(&geometry.into()).filter(|slits| !slits.leave_metal());
    let (Some(slits), Some(width), Some(diameter)) = (slits, width, diameter) else { return };
    let together = slits.width.mm() * f64::from(slits.number);
    let message = format!("{} slits of this width take {together:.1} mm of the {round}", slits.number);
    let widest = (slits.widest().mm() * 100.0).floor() / 100.0;
    check.fault("absurd", width, message, |finding| {
        finding
            .found(width.value.bare().to_string())
            .expected(format!("at most {widest:.2} mm: half of the circumference is left then"))
            .help("check the decimal point and the number of slits")
            .related(diameter.place.clone(), format!("the {round}"))
    });
}

fn geometries(role: Role) -> &'static [&'static str] {
    match role {
        Role::Body => &["body", "socket", "wedge_body"],
        Role::Socket => &["socket", "body"],
        Role::Cone => &["collet", "spreading_cone"],
        Role::Wedge => &["wedge"],
        Role::Thimble => &["thimble"],
        Role::Sleeve | Role::Ferrule => &["sleeve", "ferrule"],
        Role::RopeGrip => &["rope_grip"],
        Role::Screw | Role::Nut | Role::Lock | Role::Pin | Role::Keeper | Role::Bolt | Role::Other => &[],
    }
}

/// Only fittings are superseded: a part is current, on hold or withdrawn.
fn check_status(record: &PartRecord, check: &mut Check<'_>) {
    let superseded = record.status.as_ref().filter(|status| status.value.0 == Status::Superseded);
    let Some(status) = superseded else { return };
    check.fault("status-contradiction", status, "a part can't be superseded", |finding| {
        finding
            .expected(format!(
                "one of {}",
                PartStatus::ALL.map(|status| format!("`{}`", status.word())).join(", ")
            ))
            .help("withdraw the part, and supersede the fittings that it is in")
    });
}
