//! Conductors: checked, linked to their materials, and computed.

use super::check::{Check, origin};
use super::model::{Conductor, Identity, Stated, WearBasis, WearLimits};
use super::quantities::{citation, prose, quantity, text, word};
use super::record_index::RecordIndex;
use crate::records::{
    CompositeRecord, ConductorRecord, ConstructionRecord, Count, Document, Field, GroovedRecord, GroupRecord,
    IdentityRecord, Mm, Plain, Size, StatedRecord, WearRecord,
};
use crate::section::{
    Composite, Construction, Grooved, Group, Material, Rope, Section, SectionError, Strands,
    compute_for_size, with_wire_tolerance,
};
use crate::units::Length;
use std::sync::Arc;

/// The conductor that a document states, where it and its materials are sound.
pub(super) fn conductor(
    document: &Document<ConductorRecord>,
    materials: &RecordIndex<Material>,
    check: &mut Check<'_>,
) -> Option<Conductor> {
    let record = document.record.as_ref()?;
    let material = record.material.as_ref().and_then(|name| materials.find(name, check));
    let construction =
        record.construction.as_ref().and_then(|field| construction(&field.value, materials, check));
    let tolerance = record.tolerance.as_ref().map(|field| &field.value);
    let wire_tolerance = tolerance.and_then(|tolerance| quantity(tolerance.wire_diameter.as_ref()));
    let section = construction
        .as_ref()
        .and_then(|construction| section(document, construction, material.as_deref(), wire_tolerance, check));
    if let Some(ConstructionRecord::Grooved(field)) = record.construction.as_ref().map(|field| &field.value) {
        check_wear(&field.value, check);
        check_basis(&field.value, check);
    }
    if !check.is_sound() {
        return None;
    }
    Some(Conductor {
        id: record.id.as_ref()?.value.0.clone(),
        name: record.name.as_ref()?.value.0.clone(),
        duty: record.duty.as_ref()?.value,
        material: material?,
        nominal_size: quantity(record.nominal_size.as_ref()),
        construction: construction?,
        wear: record
            .construction
            .as_ref()
            .and_then(|field| wear(&field.value, record.nominal_size.is_some())),
        diameter_tolerance: tolerance.and_then(|tolerance| quantity(tolerance.overall_diameter.as_ref())),
        wire_diameter_tolerance: wire_tolerance,
        stated: record.stated.as_ref().map(|field| stated(&field.value)).unwrap_or_default(),
        identity: record.identity.as_ref().map(|field| identity(&field.value)).unwrap_or_default(),
        source: citation(record.source.as_ref()),
        caution: prose(record.caution.as_ref()),
        section: section?,
        origin: origin(document),
    })
}

fn section(
    document: &Document<ConductorRecord>,
    construction: &Construction,
    material: Option<&Material>,
    wire_tolerance: Option<Length>,
    check: &mut Check<'_>,
) -> Option<Section> {
    let nominal = document.record.as_ref().and_then(|record| quantity(record.nominal_size.as_ref()));
    let computed = match (construction, wire_tolerance) {
        (Construction::Grooved(_), _) | (_, None) => compute_for_size(construction, material, nominal),
        (_, Some(tolerance)) => with_wire_tolerance(construction, material, tolerance),
    };
    computed.map_err(|error| tell(&error, document, check)).ok()
}

fn tell(error: &SectionError, document: &Document<ConductorRecord>, check: &mut Check<'_>) {
    let wires = error.field.contains(".wires") || error.field.contains(".layers");
    let code = if wires { "wires-do-not-fit" } else { "impossible-construction" };
    let place = origin(document).of(&error.field);
    check.fault_at(code, &error.field, place, error.message.as_str(), |mut finding| {
        finding.found = Some(error.found.clone()).filter(|text| !text.is_empty());
        finding.expected = Some(error.expected.clone()).filter(|text| !text.is_empty());
        finding.help(error.help.as_str())
    });
}

fn construction(
    record: &ConstructionRecord,
    materials: &RecordIndex<Material>,
    check: &mut Check<'_>,
) -> Option<Construction> {
    Some(match record {
        ConstructionRecord::Solid(Field { value, .. }) => {
            Construction::Solid { diameter: value.diameter.as_ref()?.value.into() }
        }
        ConstructionRecord::Stranded(field) => Construction::Stranded(group(field, check)?),
        ConstructionRecord::Composite(field) => {
            Construction::Composite(composite(&field.value, materials, check)?)
        }
        ConstructionRecord::Rope(Field { value, .. }) => Construction::Rope(Rope {
            class: value.construction.as_ref()?.value.0.clone(),
            core: value.core.as_ref()?.value.into(),
            diameter: value.diameter.as_ref()?.value.into(),
            grade: quantity(value.grade.as_ref()),
        }),
        ConstructionRecord::Grooved(field) => Construction::Grooved(grooved(&field.value)?),
        ConstructionRecord::Tube(Field { value, .. }) => Construction::Tube {
            outside_diameter: value.outside_diameter.as_ref()?.value.into(),
            wall: value.wall.as_ref()?.value.into(),
        },
        ConstructionRecord::Bar(Field { value, .. }) => Construction::Bar {
            width: value.width.as_ref()?.value.into(),
            thickness: value.thickness.as_ref()?.value.into(),
            corner_radius: quantity(value.corner_radius.as_ref()).unwrap_or_default(),
        },
    })
}

fn composite(
    record: &CompositeRecord,
    materials: &RecordIndex<Material>,
    check: &mut Check<'_>,
) -> Option<Composite> {
    let core = record.core.as_ref().and_then(|Field { value, path, place }| {
        let wires = GroupRecord {
            wires: value.wires.clone(),
            layers: value.layers.clone(),
            wire_diameter: value.wire_diameter.clone(),
            lay_ratios: value.lay_ratios.clone(),
        };
        group(&Field { value: wires, path: path.clone(), place: place.clone() }, check)
    });
    let outer = record.outer.as_ref().and_then(|field| group(field, check));
    let core_material = record.core.as_ref().and_then(|core| core.value.material.as_ref());
    let core_material: Option<Option<Arc<Material>>> = core_material.map(|name| materials.find(name, check));
    Some(Composite { core: core?, core_material: core_material.flatten(), outer: outer? })
}

fn group(field: &Field<GroupRecord>, check: &mut Check<'_>) -> Option<Group> {
    let record = &field.value;
    let strands = strands(field, check);
    let lay_ratios: Vec<f64> = record.lay_ratios.as_ref().map(|field| bare(&field.value)).unwrap_or_default();
    let wire_diameter: &Field<Size<Mm, 20>> = record.wire_diameter.as_ref()?;
    Some(Group { strands: strands?, wire_diameter: wire_diameter.value.into(), lay_ratios })
}

fn bare(ratios: &[Field<Size<Plain, 200>>]) -> Vec<f64> {
    ratios.iter().map(|ratio| ratio.value.bare()).collect()
}

fn strands(field: &Field<GroupRecord>, check: &mut Check<'_>) -> Option<Strands> {
    match (&field.value.wires, &field.value.layers) {
        (Some(wires), None) => Some(Strands::Wires(wires.value.bare())),
        (None, Some(layers)) => {
            let count = |layer: &Field<Count<1, 200>>| layer.value.bare();
            Some(Strands::Layers(layers.value.iter().map(count).collect()))
        }
        _ => {
            let has = |key: &str| check.has(&format!("{}.{key}", field.path));
            let found = match (has("wires"), has("layers")) {
                (true, true) => "both",
                (false, false) => "neither",
                _ => return None,
            };
            check.fault("not-exactly-one", field, "give the wires either by number or by layer", |finding| {
                finding.found(found).expected("either `wires` or `layers`")
            });
            None
        }
    }
}

fn grooved(record: &GroovedRecord) -> Option<Grooved> {
    Some(Grooved {
        height: record.height.as_ref()?.value.into(),
        width: record.width.as_ref()?.value.into(),
        apex_width: record.apex_width.as_ref()?.value.into(),
        apex_depth: record.apex_depth.as_ref()?.value.into(),
        fillet: record.fillet.as_ref()?.value.into(),
        lower_flank: record.lower_flank.as_ref()?.value.into(),
        upper_flank: record.upper_flank.as_ref()?.value.into(),
    })
}

/// Heights fall from the new wire to the stop; a wear table could not be made otherwise.
fn check_wear(record: &GroovedRecord, check: &mut Check<'_>) {
    let Some(wear) = record.wear.as_ref().map(|field| &field.value) else { return };
    let heights = [&record.height, &wear.plan_height, &wear.replace_height, &wear.stop_height];
    let heights: Vec<&Field<Size<Mm, 50>>> = heights.into_iter().flatten().collect();
    for pair in heights.windows(2) {
        if pair[1].value > pair[0].value {
            let message = format!("a worn wire can't be higher than {} mm", pair[0].value.bare());
            check.fault("heights-not-falling", pair[1], message, |finding| {
                finding
                    .found(format!("{} mm", pair[1].value.bare()))
                    .expected("heights that get smaller: new, plan, replace, stop")
                    .related(pair[0].place.clone(), "the height before it")
            });
        }
    }
}

/// Wear in percent of a nominal size has one to be of.
fn check_basis(record: &GroovedRecord, check: &mut Check<'_>) {
    let wear = record.wear.as_ref().map(|field| &field.value);
    let Some(basis) = wear.and_then(|wear| wear.basis.as_ref()) else { return };
    if basis.value != WearBasis::Nominal || check.has("nominal_size_mm2") {
        return;
    }
    check.fault("missing-key", basis, "wear of the nominal size needs `nominal_size_mm2`", |finding| {
        finding.help("add `nominal_size_mm2: …` to the conductor, or write `basis: computed`")
    });
}

fn wear(record: &ConstructionRecord, has_nominal_size: bool) -> Option<WearLimits> {
    let ConstructionRecord::Grooved(grooved) = record else { return None };
    let wear: &WearRecord = &grooved.value.wear.as_ref()?.value;
    Some(WearLimits {
        limit_percent: word(wear.limit.as_ref()).map(|number| number.bare()),
        basis: word(wear.basis.as_ref()).unwrap_or(match has_nominal_size {
            true => WearBasis::Nominal,
            false => WearBasis::Computed,
        }),
        plan_height: quantity(wear.plan_height.as_ref()),
        replace_height: quantity(wear.replace_height.as_ref()),
        stop_height: quantity(wear.stop_height.as_ref()),
    })
}

fn stated(record: &StatedRecord) -> Stated {
    Stated {
        section: quantity(record.section.as_ref()),
        overall_diameter: quantity(record.overall_diameter.as_ref()),
        mass: quantity(record.mass.as_ref()),
        breaking_load: quantity(record.breaking_load.as_ref()),
        resistance_20c: quantity(record.resistance.as_ref()),
    }
}

fn identity(record: &IdentityRecord) -> Identity {
    Identity {
        drum_tag: text(record.drum_tag.as_ref()),
        tracer: text(record.tracer.as_ref()),
        grooves: text(record.grooves.as_ref()),
    }
}
