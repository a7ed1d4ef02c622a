//! What is said to hold where a key is left out does hold: a catalogue that leaves keys out, and one that states
//! their defaults, come to the same.

use super::keys::value_by_default;
use super::written::{KEYS, world_of};
use fittingcards::catalogue::{Catalogue, Training, load};
use fittingcards::mixups;
use fittingcards::source::{FilePath, MemoryWorld};

const SETTINGS: &str =
    "title: Example\nowner: Example railway\nedition: \"1\"\ncaution: Example, not for use.\n";

fn loaded(world: &MemoryWorld) -> Catalogue {
    let loaded = load(world).unwrap();
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings.sorted());
    loaded.catalogue
}

/// The lines `key: default` right below a path, for all keys there that have a value for a default.
fn defaults_below(path: &str, joint: &str) -> String {
    let lines: Vec<String> = KEYS
        .iter()
        .filter(|key| key.path.rsplit_once('.').is_some_and(|(parent, _)| parent == path))
        .filter_map(|key| Some(format!("{}: {}", key.name(), value_by_default(key)?)))
        .collect();
    assert!(!lines.is_empty(), "no key below {path} has a default");
    lines.join(joint)
}

#[test]
fn settings_that_are_left_out_are_those_that_are_said() {
    let silent = loaded(&world_of("catalogue", SETTINGS)).settings;
    let first = format!("{SETTINGS}{}\n", defaults_below("catalogue", "\n"));
    let deep = format!(
        "{SETTINGS}card:\n  {}\nsheet:\n  {}\nlimits:\n  {}\n",
        defaults_below("catalogue.card", "\n  "),
        defaults_below("catalogue.sheet", "\n  "),
        defaults_below("catalogue.limits", "\n  ")
    );
    assert_eq!(deep.lines().count(), SETTINGS.lines().count() + 3 + 2 + 4 + 11);
    let training = format!("{SETTINGS}training:\n  {}\n", defaults_below("catalogue.training", "\n  "));
    assert_eq!(loaded(&world_of("catalogue", &training)).settings.training, Some(Training::default()));
    assert_eq!(silent.training, None);
    for stated in [first, deep] {
        let stated = loaded(&world_of("catalogue", &stated)).settings;
        assert_eq!((&stated.language, stated.decimal_mark), (&silent.language, silent.decimal_mark));
        assert_eq!((stated.card, stated.sheet), (silent.card, silent.sheet));
        assert_eq!(stated.limits, silent.limits);
    }
}

/// A fitting of the collet kind with a second cone; each piece in braces may be given more keys.
fn collets(more: &dyn Fn(&str) -> String) -> MemoryWorld {
    let wire = format!(
        "id: w\nname: Wire\nduty: messenger\nmaterial: bronze-2\n\
         construction: {{ stranded: {{ wires: 19, wire_diameter_mm: 2.8 }} }}\ntolerance: {{ {} }}\n",
        more("conductors.tolerance")
    );
    let mut parts = format!(
        "number: B\nname: Body\nrole: body\nmaterial: brass\n\
         geometry: {{ body: {{ half_angle_deg: 5, large_diameter_mm: 40, length_mm: 70, {} }} }}\n",
        more("parts.geometry.body")
    );
    for (number, bore) in [("C-1", 14.3), ("C-2", 15.8)] {
        parts += &format!(
            "---\nnumber: {number}\nname: Cone\nrole: cone\nmaterial: brass\ninterface: i\n\
             mark: {{ colour: VT, text: {number}, {} }}\ngeometry: {{ collet: {{ bore_mm: {bore}, slits: 3, \
             slit_width_mm: 1.0, half_angle_deg: 5, length_mm: 60, stand_out_at_bore_mm: 6, {} }} }}\n{}\n",
            more("parts.mark"),
            more("parts.geometry.collet"),
            more("parts").replace(", ", "\n")
        );
    }
    let fitting = format!(
        "number: F\nname: End\nfamily: cone-dead-end\nconductor: w\nparts: [{{ part: B, {} }}, C-1]\n{}\n",
        more("fittings.parts"),
        more("fittings").replace(", ", "\n")
    );
    MemoryWorld::new()
        .with(FilePath::catalogue("catalogue.yaml"), SETTINGS)
        .with(FilePath::catalogue("conductors/w.yaml"), wire)
        .with(FilePath::catalogue("parts/p.yaml"), parts)
        .with(FilePath::catalogue("fittings/f.yaml"), fitting)
}

#[test]
fn what_parts_and_fittings_leave_out_is_what_is_said() {
    let silent = loaded(&collets(&|_| String::new()));
    let stated = loaded(&collets(&|path| defaults_below(path, ", ")));
    let found = |catalogue: &Catalogue| mixups::to_json(&mixups::find(catalogue)).to_string();
    assert!(found(&silent).contains("closes-without-gripping"), "{}", found(&silent));
    assert_eq!(found(&stated), found(&silent));
    assert_eq!(stated.parts["C-1"].mark, silent.parts["C-1"].mark);
    assert_eq!(stated.parts["C-1"].status, silent.parts["C-1"].status);
    assert_eq!(stated.fittings["F"].status, silent.fittings["F"].status);
    assert_eq!(stated.fittings["F"].items[0].quantity, silent.fittings["F"].items[0].quantity);
}

#[test]
fn a_sharp_bar_and_what_stranding_leaves_are_what_is_said() {
    let bar = |more: &str| {
        let text = format!(
            "id: b\nname: Bar\nduty: feeder\nmaterial: copper-hard-drawn\n\
             construction: {{ bar: {{ width_mm: 40, thickness_mm: 10, {more} }} }}\n"
        );
        loaded(&world_of("conductors", &text)).conductors["b"].section.metal
    };
    assert_eq!(bar(&defaults_below("conductors.construction.bar", ", ")), bar(""));
    let material = |more: &str| {
        let text = format!("id: m\nname: M\ngroup: copper\nstrength_N_per_mm2: 400\n{more}\n");
        loaded(&world_of("materials", &text)).materials["m"].strand_efficiency
    };
    assert_eq!(material(&defaults_below("materials", "\n")).to_bits(), material("").to_bits());
    // 0.95 for copper, back-calculated from DIN 48201-1.
    assert_eq!(material("").to_bits(), 0.95_f64.to_bits());
}
