//! Catalogues in memory: what is kept, what is left out, and what stands in.

use super::{AssemblyStage, InService, Loaded, Status, WearBasis, load};
use crate::colour::ColourCode;
use crate::section::{Construction, Magnetic, Strands, Strength};
use crate::source::{FilePath, MemoryWorld};
use jiff::civil::date;

const SETTINGS: &str =
    "title: Ends\nowner: Example railway\nedition: \"1\"\ncaution: >\n  Example,\n  not for use.\n";
const WIRE: &str = "id: w-95\nname: Wire 95\nduty: messenger\nmaterial: copper-hard-drawn\n\
                    construction: { stranded: { wires: 19, wire_diameter_mm: 2.50 } }\n";
const PARTS: &str = "number: P-1\nname: Body\nrole: body\nmaterial: brass\n---\n\
                     number: P-2\nname: Cone\nrole: cone\nmaterial: bronze-soft\n\
                     mark: { colour: VT, text: V1, seen_after_assembly: true }\n";
const FITTING: &str = "number: F-1\nname: End\nfamily: cone-dead-end\nconductor: w-95\nparts: [P-1, P-2]\n";

fn world(files: &[(&str, &str)]) -> MemoryWorld {
    files.iter().fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::catalogue(path), text))
}

fn sound() -> MemoryWorld {
    world(&[
        ("catalogue.yaml", SETTINGS),
        ("conductors/w.yaml", WIRE),
        ("parts/p.yaml", PARTS),
        ("fittings/f.yaml", FITTING),
    ])
}

/// The codes of the findings, in order.
fn codes(loaded: &Loaded) -> Vec<&'static str> {
    loaded.findings.sorted().iter().map(|finding| finding.code).collect()
}

fn with(path: &str, text: &str) -> Loaded {
    load(&sound().with(FilePath::catalogue(path), text)).unwrap()
}

#[test]
fn a_sound_catalogue_is_linked_and_computed() {
    let Loaded { catalogue, findings } = load(&sound()).unwrap();
    assert!(findings.sorted().is_empty());
    let fitting = &catalogue.fittings["F-1"];
    assert_eq!(fitting.conductor().id, "w-95");
    assert_eq!(
        fitting.items.iter().map(|item| item.part.number.as_str()).collect::<Vec<_>>(),
        ["P-1", "P-2"]
    );
    assert_eq!(fitting.status, Status::Current);
    // DIN 48201-1, 95 mm²: 19 wires of 2.50 mm, 93.27 mm², 12.5 mm.
    let section = &catalogue.conductors["w-95"].section;
    assert!((section.metal.mm2() - 93.27).abs() < 0.01);
    assert!((section.overall_diameter.mm() - 12.5).abs() < 1e-9);
}

#[test]
fn a_fitting_without_a_mark_has_that_of_its_gripping_part() {
    let catalogue = load(&sound()).unwrap().catalogue;
    let mark = catalogue.fittings["F-1"].mark.clone().unwrap();
    assert_eq!((mark.colour, mark.text.as_str(), mark.notches), (ColourCode::VT, "V1", 0));
    assert_eq!(catalogue.fittings["F-1"].mark_seen_after_assembly, Some(true));
    let own = format!("{FITTING}mark: {{ colour: BU, notches: 2 }}\n");
    let mark = with("fittings/f.yaml", &own).catalogue.fittings["F-1"].mark.clone().unwrap();
    assert_eq!((mark.colour, mark.text.as_str(), mark.notches), (ColourCode::BU, "", 2));
}

#[test]
fn every_value_has_its_place() {
    let catalogue = load(&sound()).unwrap().catalogue;
    let at = |field: &str| {
        let place = catalogue.fittings["F-1"].origin.of(field);
        (place.line, place.column)
    };
    assert_eq!(
        [at("number"), at("parts"), at("parts.1"), at("parts.1.quantity"), at("mark")],
        [(1, 9), (5, 8), (5, 14), (5, 14), (1, 1)]
    );
}

#[test]
fn a_faulty_record_takes_down_what_depends_on_it_and_nothing_else() {
    let other =
        "id: w-8\nname: W\nduty: stay\nmaterial: steel-st1a\nconstruction: { solid: { diameter_mm: 8 } }\n";
    let faulty = format!("{}---\n{other}", WIRE.replace("2.50", "-2.50"));
    let loaded = with("conductors/w.yaml", &faulty);
    assert_eq!(codes(&loaded), ["negative"]);
    assert!(loaded.catalogue.conductors.contains_key("w-8"));
    assert!(loaded.catalogue.fittings.is_empty());
    assert_eq!(loaded.catalogue.parts.len(), 2);
    assert_eq!(loaded.catalogue.left_out.iter().collect::<Vec<_>>(), ["F-1", "w-95"]);
}

#[test]
fn what_depends_on_a_file_that_cannot_be_read_is_left_out_without_a_word() {
    assert_eq!(codes(&with("parts/p.yaml", &format!("{PARTS}stamp: [\n"))), ["not-yaml"]);
    assert_eq!(codes(&with("conductors/w.yaml", &format!("{WIRE}caution: \"\n"))), ["not-yaml"]);
    let latin: Vec<u8> = [PARTS.as_bytes(), b"stamp: \xfc\n"].concat();
    let loaded = load(&sound().with(FilePath::catalogue("parts/p.yaml"), latin)).unwrap();
    assert_eq!(codes(&loaded), ["not-utf8"]);
}

#[test]
fn all_faults_of_a_record_are_told_at_once() {
    let faulty =
        FITTING.replace("w-95", "w-59").replace("End", "") + "status: superseded\ntail_mm: 0\nsteps: x\n";
    let loaded = with("fittings/f.yaml", &faulty);
    assert_eq!(codes(&loaded), ["missing-key", "unknown-conductor", "missing-key", "zero", "wrong-type"]);
}

#[test]
fn without_settings_everything_else_is_still_read() {
    let loaded = load(&world(&[("conductors/w.yaml", WIRE), ("parts/p.yaml", PARTS)])).unwrap();
    assert_eq!(codes(&loaded), ["missing-file"]);
    assert_eq!(loaded.catalogue.conductors.len(), 1);
    assert!((loaded.catalogue.settings.limits.mark_difference - 12.0).abs() < f64::EPSILON);
    let loaded =
        with("catalogue.yaml", "title: Ends\nlimits: { closure_reserve_mm: 0.5, mark_difference: -1 }\n");
    assert_eq!(codes(&loaded), ["missing-key", "missing-key", "missing-key", "negative"]);
    assert!((loaded.catalogue.settings.limits.closure_reserve.mm() - 0.5).abs() < 1e-12);
    assert_eq!(loaded.catalogue.fittings.len(), 1);
}

#[test]
fn the_date_is_stated_else_the_environments_else_the_newest() {
    let notice = "number: N-1\ndate: 2026-03-04\ntitle: A notice\n";
    let register = crate::records::sealed(
        "edition: \"0\"\ndate: \"2026-05-06\"\nchecked_by: \"A\"\napproved_by: \"B\"\nnotices: []\n",
    );
    let dated = format!("{SETTINGS}date: 2026-07-08\n");
    let date_of = |world: &MemoryWorld| load(world).unwrap().catalogue.settings.date;
    let mut world = sound();
    assert_eq!(date_of(&world), None);
    world = world.with(FilePath::catalogue("notices/n.yaml"), notice);
    assert_eq!(date_of(&world), Some(date(2026, 3, 4)));
    world = world.with(FilePath::catalogue("register/0.yaml"), register);
    assert_eq!(date_of(&world), Some(date(2026, 5, 6)));
    world = world.with_source_date_epoch("");
    assert_eq!(date_of(&world), Some(date(2026, 5, 6)), "an empty variable is as none");
    world = world.with_source_date_epoch("86400");
    assert_eq!(date_of(&world), Some(date(1970, 1, 2)));
    assert!(load(&world.clone().with_source_date_epoch("yesterday")).is_err());
    world = world.with(FilePath::catalogue("catalogue.yaml"), dated);
    assert_eq!(date_of(&world), Some(date(2026, 7, 8)));
}

/// Ids, numbers and editions are unique over all kinds: those of earlier editions too, which cards still say.
#[test]
fn a_record_may_not_have_the_id_of_an_edition_on_the_register() {
    let register = crate::records::sealed(
        "edition: \"e-1\"\ndate: \"2026-05-06\"\nchecked_by: \"A\"\napproved_by: \"B\"\nnotices: []\n",
    );
    let issued = sound().with(FilePath::catalogue("register/e-1.yaml"), register);
    assert_eq!(codes(&load(&issued).unwrap()), Vec::<&str>::new());
    let current = issued
        .clone()
        .with(FilePath::catalogue("catalogue.yaml"), SETTINGS.replace("edition: \"1\"", "edition: \"e-1\""));
    assert_eq!(
        codes(&load(&current).unwrap()),
        Vec::<&str>::new(),
        "the settings name an edition that is issued"
    );
    let holder = "id: E-1\nname: Depot\n";
    let loaded = load(&issued.with(FilePath::catalogue("holders/h.yaml"), holder)).unwrap();
    assert_eq!(codes(&loaded), ["duplicate-id"]);
    let finding = &loaded.findings.sorted()[0];
    assert_eq!((finding.place.line, finding.place.column), (1, 5));
    assert_eq!(finding.place.file.path.as_ref(), "holders/h.yaml");
}

#[test]
fn a_material_with_a_built_in_id_takes_its_place() {
    let own = "id: brass\nname: Our brass\ngroup: copper\nmagnetic: no\n\
               strength_N_per_mm2: [{ up_to_mm: 2, strength: 400 }, { strength: 380 }]\n";
    let loaded = with("materials/brass.yaml", own);
    assert!(loaded.findings.sorted().is_empty());
    let brass = &loaded.catalogue.parts["P-1"].material;
    assert_eq!((brass.name.as_str(), brass.magnetic), ("Our brass", Some(Magnetic::No)));
    assert!(matches!(&brass.strength, Some(Strength::ByDiameter(steps)) if steps.len() == 2));
    let faulty = with("materials/brass.yaml", &own.replace("group: copper", "group: gold"));
    assert_eq!(codes(&faulty), ["unknown-word"]);
    assert!(
        !faulty.catalogue.parts.contains_key("P-1"),
        "the built-in brass must not stand in for a faulty one"
    );
}

#[test]
fn text_is_kept_as_written_whatever_yaml_makes_of_it() {
    let written =
        FITTING.replace("F-1", "0420") + "stamp: 1.10\nsteps: [no, 0x10, 12:30:00, 2026-01-01]\nwitness: ~\n";
    let loaded = with("fittings/f.yaml", &written);
    assert!(loaded.findings.sorted().is_empty(), "{:?}", codes(&loaded));
    let fitting = &loaded.catalogue.fittings["0420"];
    assert_eq!(fitting.stamp, "1.10");
    let steps: Vec<&str> = fitting.steps.iter().map(|step| step.wording.text.as_str()).collect();
    assert_eq!(steps, ["no", "0x10", "12:30:00", "2026-01-01"]);
    assert_eq!(fitting.witness, None);
    assert_eq!(loaded.catalogue.settings.caution, "Example, not for use.");
}

#[test]
fn a_step_is_a_text_alone_or_with_its_stage() {
    let written =
        format!("{FITTING}steps: [one, {{ text: \"two {{torq}}\", stage: entered }}, {{ text: three }}]\n");
    let loaded = with("fittings/f.yaml", &written);
    assert!(loaded.findings.sorted().is_empty(), "{:?}", codes(&loaded));
    let steps = &loaded.catalogue.fittings["F-1"].steps;
    let said: Vec<_> = steps.iter().map(|step| (step.wording.text.as_str(), step.stage)).collect();
    assert_eq!(said, [("one", None), ("two {torq}", Some(AssemblyStage::Entered)), ("three", None)]);
    let brace = steps[1].wording.place(4);
    let column = written.lines().last().unwrap().find("{torq").unwrap() + 1;
    assert_eq!((brace.line, brace.column), (written.lines().count() as u32, column as u32));
}

#[test]
fn a_joint_has_two_conductors_and_a_composite_two_materials() {
    let feeder = "id: feeder-1\nname: Feeder\nduty: feeder\nmaterial: aluminium-al1\nconstruction:\n  composite:\n\
                  \x20   core: { wires: 7, wire_diameter_mm: 2.68, material: steel-st1a }\n\
                  \x20   outer: { layers: [10, 16], wire_diameter_mm: 3.45 }\n";
    let loaded = with("conductors/f.yaml", feeder);
    assert!(loaded.findings.sorted().is_empty(), "{:?}", codes(&loaded));
    let Construction::Composite(composite) = &loaded.catalogue.conductors["feeder-1"].construction else {
        panic!("not a composite")
    };
    assert_eq!(composite.core_material.as_ref().unwrap().id, "steel-st1a");
    assert_eq!(composite.outer.strands, Strands::Layers(vec![10, 16]));
    let joint = FITTING.replace("conductor: w-95", "conductors: [w-95, feeder-1]")
        + "status: withdrawn\nin_service: replace-by\nin_service_date: 2027-01-31\n";
    let world = sound()
        .with(FilePath::catalogue("conductors/f.yaml"), feeder)
        .with(FilePath::catalogue("fittings/f.yaml"), joint);
    let catalogue = load(&world).unwrap().catalogue;
    assert_eq!(catalogue.fittings["F-1"].conductors.len(), 2);
    assert_eq!(catalogue.fittings["F-1"].in_service, Some(InService::ReplaceBy(date(2027, 1, 31))));
}

#[test]
fn the_order_of_files_makes_no_difference() {
    let one = load(&sound()).unwrap().catalogue;
    let other = load(&world(&[
        ("catalogue.yaml", SETTINGS),
        ("conductors/z/deep/w.yaml", WIRE),
        ("parts/a.yaml", PARTS.split("---\n").nth(1).unwrap()),
        ("parts/z.yaml", PARTS.split("---\n").next().unwrap()),
        ("fittings/0.yaml", FITTING),
    ]))
    .unwrap()
    .catalogue;
    assert_eq!(one.parts.keys().collect::<Vec<_>>(), other.parts.keys().collect::<Vec<_>>());
    assert_eq!(one.fittings["F-1"].mark, other.fittings["F-1"].mark);
}

/// Wear is in percent of the nominal size, where there is one; a record that says so without one is refused.
#[test]
fn wear_is_of_a_section_that_the_conductor_has() {
    let wire = |size: &str, basis: &str| {
        let text = format!(
            "id: c-120\nname: Contact wire\nduty: contact\nmaterial: copper-silver-0.1\n{size}construction:\n  \
             grooved: {{ height_mm: 13.2, width_mm: 13.2, apex_width_mm: 7.27, apex_depth_mm: 4.7, fillet_mm: 0.4, \
             lower_flank_deg: 27, upper_flank_deg: 51, wear: {{ limit_percent: 20{basis} }} }}\n"
        );
        with("conductors/c.yaml", &text)
    };
    let basis = |loaded: &Loaded| loaded.catalogue.conductors["c-120"].wear.as_ref().unwrap().basis;
    let size = "nominal_size_mm2: 120\n";
    assert_eq!(basis(&wire(size, "")), WearBasis::Nominal);
    assert_eq!(basis(&wire(size, ", basis: nominal")), WearBasis::Nominal);
    assert_eq!(basis(&wire("", "")), WearBasis::Computed);
    assert_eq!(basis(&wire("", ", basis: computed")), WearBasis::Computed);
    let refused = wire("", ", basis: nominal");
    assert_eq!(codes(&refused), ["missing-key"]);
    assert!(!refused.catalogue.conductors.contains_key("c-120"));
    // A size that is there, but wrong, is told once.
    assert_eq!(codes(&wire("nominal_size_mm2: -120\n", ", basis: nominal")), ["negative"]);
}
