//! One conductor with one stated value at a time, and the findings that it must get.

use super::{Context, check};
use crate::catalogue::{
    CardFormat, CardSize, Catalogue, Conductor, Duty, FlipEdge, Gaps, Identity, Limits, Orientation, Origin,
    Settings, SheetFormat, SheetSize, Stated,
};
use crate::diagnostics::Severity;
use crate::mixups::Mixups;
use crate::section::{
    Citation, Composite, Construction, Grooved, Group, Rope, RopeCore, Strands, compute_for_size, materials,
};
use crate::source::{FilePath, Place};
use crate::units::{Angle, Area, Force, Length, LinearMass, LinearResistance};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

fn group(wires: u32, diameter: f64) -> Group {
    Group { strands: Strands::Wires(wires), wire_diameter: Length::from_mm(diameter), lay_ratios: Vec::new() }
}

fn strand(wires: u32, diameter: f64) -> Construction {
    Construction::Stranded(group(wires, diameter))
}

fn contact_wire(width: f64) -> Construction {
    Construction::Grooved(Grooved {
        height: Length::from_mm(12.34),
        width: Length::from_mm(width),
        apex_width: Length::from_mm(6.80),
        apex_depth: Length::from_mm(4.47),
        fillet: Length::from_mm(0.40),
        lower_flank: Angle::from_degrees(27.0),
        upper_flank: Angle::from_degrees(51.0),
    })
}

fn conductor(construction: Construction, material: &str, nominal: f64, stated: Stated) -> Conductor {
    let material = Arc::clone(&materials::built_in()[material]);
    let duty = if matches!(construction, Construction::Grooved(_)) { Duty::Contact } else { Duty::Messenger };
    Conductor {
        id: "wire".into(),
        name: "Wire".into(),
        duty,
        section: compute_for_size(&construction, Some(&material), Some(Area::from_mm2(nominal))).unwrap(),
        material,
        nominal_size: Some(Area::from_mm2(nominal)),
        construction,
        wear: None,
        diameter_tolerance: None,
        wire_diameter_tolerance: None,
        stated,
        identity: Identity::default(),
        source: Citation::default(),
        caution: String::new(),
        origin: origin(),
    }
}

fn origin() -> Origin {
    Origin {
        place: Place::at(FilePath::catalogue("conductors/wire.yaml"), 1, 1),
        fields: BTreeMap::new(),
        numbers: BTreeMap::new(),
    }
}

fn catalogue(conductor: Conductor) -> Catalogue {
    let settings = Settings {
        title: "Fittings".into(),
        owner: "Railway".into(),
        edition: "1".into(),
        date: None,
        language: "en".into(),
        decimal_mark: '.',
        card: CardFormat { size: CardSize::A7, orientation: Orientation::Portrait },
        sheet: SheetFormat {
            size: SheetSize::A4,
            flip: FlipEdge::LongEdge,
            crop_marks: true,
            bleed: Length::from_mm(2.0),
        },
        limits: Limits::default(),
        before_work: Vec::new(),
        caution: String::new(),
        training: None,
        origin: origin(),
    };
    Catalogue {
        procedures: BTreeMap::new(),
        settings,
        materials: materials::built_in().clone(),
        conductors: BTreeMap::from([(conductor.id.clone(), Arc::new(conductor))]),
        parts: BTreeMap::new(),
        fittings: BTreeMap::new(),
        notices: BTreeMap::new(),
        holders: BTreeMap::new(),
        editions: Vec::new(),
        notes: Vec::new(),
        fonts: Vec::new(),
        installed: Vec::new(),
        left_out: BTreeSet::new(),
        gaps: Gaps::default(),
    }
}

/// Codes and severities of what is said of a conductor.
fn said(conductor: Conductor) -> Vec<(&'static str, Severity)> {
    let catalogue = catalogue(conductor);
    let mixups = Mixups::default();
    let findings = check(Context { catalogue: &catalogue, mixups: &mixups });
    findings.sorted().into_iter().map(|finding| (finding.code, finding.severity)).collect()
}

fn said_of(
    construction: Construction,
    material: &str,
    nominal: f64,
    stated: Stated,
) -> Vec<(&'static str, Severity)> {
    said(conductor(construction, material, nominal, stated))
}

fn section(mm2: f64) -> Stated {
    Stated { section: Some(Area::from_mm2(mm2)), ..Stated::default() }
}

fn diameter(mm: f64) -> Stated {
    Stated { overall_diameter: Some(Length::from_mm(mm)), ..Stated::default() }
}

fn load(kn: f64) -> Stated {
    Stated { breaking_load: Some(Force::from_kn(kn)), ..Stated::default() }
}

fn mass(kg_per_km: f64) -> Stated {
    Stated { mass: Some(LinearMass::from_kg_per_km(kg_per_km)), ..Stated::default() }
}

#[test]
fn each_confusion_of_a_strand_gets_its_own_finding() {
    use Severity::{Error, Warning};
    let cases = [
        (section(153.94), "stated-section-is-circle-area", Error),
        (section(154.0), "stated-section-is-circle-area", Error),
        (section(120.0), "stated-section-is-nominal-size", Error),
        (section(110.0), "stated-section-differs", Error),
        (diameter(12.2), "stated-diameter-from-section", Error),
        (diameter(0.551), "stated-diameter-in-inches", Error),
        (diameter(14.5), "stated-diameter-differs", Error),
        (load(4.78), "stated-load-in-tonnes", Error),
        (load(4.782), "stated-load-in-kilograms-force", Error),
        (load(4782.0), "stated-load-in-kilograms-force", Error),
        (load(68.9), "breaking-load-outside-material", Error),
        (load(52.0), "breaking-load-outside-material", Warning),
        (load(40.0), "breaking-load-outside-material", Warning),
        (mass(711.0), "stated-mass-in-pounds", Error),
        (mass(106.0), "stated-mass-per-hundred-metres", Error),
        (mass(1120.0), "stated-mass-differs", Warning),
    ];
    for (stated, code, severity) in cases {
        let said = said_of(strand(19, 2.8), "copper-hard-drawn", 120.0, stated.clone());
        assert_eq!(said, [(code, severity)], "{stated:?}");
    }
}

#[test]
fn what_standards_print_of_a_strand_passes() {
    // DIN 48201-1, 120 mm² (19 × 2.80).
    let stated = Stated {
        section: Some(Area::from_mm2(116.99)),
        overall_diameter: Some(Length::from_mm(14.0)),
        mass: Some(LinearMass::from_kg_per_km(1060.0)),
        breaking_load: Some(Force::from_kn(46.9)),
        resistance_20c: Some(LinearResistance::from_ohm_per_km(0.1544)),
    };
    assert_eq!(said_of(strand(19, 2.8), "copper-hard-drawn", 120.0, stated), []);
    assert_eq!(said_of(strand(19, 2.8), "copper-hard-drawn", 120.0, section(117.0)), []);
}

#[test]
fn a_section_printed_without_decimals_is_still_told_from_a_nominal_size() {
    use Severity::Error;
    let nominal = [("stated-section-is-nominal-size", Error)];
    assert_eq!(said_of(strand(7, 2.5), "copper-hard-drawn", 35.0, section(35.0)), nominal);
    assert_eq!(said_of(strand(7, 3.0), "copper-hard-drawn", 50.0, section(50.0)), nominal);
    assert_eq!(said_of(strand(7, 2.5), "copper-hard-drawn", 35.0, section(34.0)), []);
}

#[test]
fn a_composite_may_be_named_by_its_outer_group_but_not_measured_by_it() {
    let composite = || {
        Construction::Composite(Composite {
            core: group(7, 2.68),
            core_material: None,
            outer: group(26, 3.45),
        })
    };
    let said = said_of(composite(), "aluminium-al1", 240.0, section(243.05));
    assert_eq!(said, [("stated-section-is-outer-group", Severity::Error)]);
    assert_eq!(said_of(composite(), "aluminium-al1", 240.0, section(282.5)), []);
}

#[test]
fn a_rope_may_depart_from_the_factor_of_its_class() {
    let rope = || {
        Construction::Rope(Rope {
            class: "7x19".into(),
            core: RopeCore::Wsc,
            diameter: Length::from_mm(9.0),
            grade: None,
        })
    };
    let said = |mm2| said_of(rope(), "stainless-1.4401", 34.0, section(mm2));
    assert_eq!(said(32.3), [("stated-section-differs", Severity::Warning)]);
    assert_eq!(said(25.0), [("stated-section-differs", Severity::Error)]);
    assert_eq!(said(63.62), [("stated-section-is-circle-area", Severity::Error)]);
}

#[test]
fn other_departures_are_warned_of() {
    let resistance =
        Stated { resistance_20c: Some(LinearResistance::from_ohm_per_km(0.17)), ..Stated::default() };
    let said = said_of(strand(19, 2.8), "copper-hard-drawn", 120.0, resistance);
    assert_eq!(said, [("stated-resistance-differs", Severity::Warning)]);
    let said = said_of(strand(19, 2.8), "copper-hard-drawn", 150.0, Stated::default());
    assert_eq!(said, [("nominal-size-differs", Severity::Warning)]);
}

/// EN 50149:2012, copper-silver 120 mm²: 41.9 kN, 0.153 Ω/km, 1035 to 1099 kg/km. The profile is invented.
#[test]
fn what_en_50149_prints_of_a_contact_wire_passes() {
    let Construction::Grooved(wire) = contact_wire(12.85) else { panic!("grooved") };
    let (height, apex_depth) = (Length::from_mm(12.85), Length::from_mm(4.35));
    let construction = || Construction::Grooved(Grooved { height, apex_depth, ..wire.clone() });
    for mass in [1035.0, 1067.0, 1099.0] {
        let stated = Stated {
            section: Some(Area::from_mm2(120.0)),
            mass: Some(LinearMass::from_kg_per_km(mass)),
            breaking_load: Some(Force::from_kn(41.9)),
            resistance_20c: Some(LinearResistance::from_ohm_per_km(0.153)),
            ..Stated::default()
        };
        assert_eq!(said_of(construction(), "copper-silver-0.1", 120.0, stated), []);
    }
    // DIN 43140 rates cadmium copper otherwise: what EN 50149 asks is not held against it.
    let cadmium = Stated { resistance_20c: Some(LinearResistance::from_ohm_per_km(0.1794)), ..load(44.0) };
    assert_eq!(said_of(contact_wire(12.34), "copper-cadmium-0.7", 110.0, cadmium), []);
}

#[test]
fn a_contact_wire_is_held_against_its_standard() {
    let standard = [("contact-wire-outside-standard", Severity::Warning)];
    assert_eq!(said_of(contact_wire(12.34), "copper-silver-0.1", 110.0, load(38.4)), []);
    assert_eq!(said_of(contact_wire(12.34), "copper-silver-0.1", 110.0, load(37.0)), standard);
    assert_eq!(said_of(contact_wire(12.34), "copper-silver-0.1", 115.0, Stated::default()), standard);
    let note = [("contact-wire-width-differs", Severity::Note)];
    assert_eq!(said_of(contact_wire(12.1), "copper-silver-0.1", 110.0, Stated::default()), note);
}
