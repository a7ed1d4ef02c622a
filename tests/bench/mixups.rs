//! How long 50,000 cases of parts and as many of kits take: one body, 224 cones, 224 fittings.
//! Prints, and asserts nothing.

use fittingcards::catalogue::load;
use fittingcards::mixups::find;
use fittingcards::source::{FilePath, MemoryWorld};
use std::fmt::Write;
use std::time::Instant;

const PARTS: usize = 224;

fn main() {
    let settings = "title: A\nowner: B\nedition: \"1\"\ndate: 2026-01-01\ncaution: C\n";
    let mut conductors = String::new();
    let mut parts = "number: B-1\nname: Body\nrole: body\nmaterial: aluminium-bronze\n\
         geometry: { body: { half_angle_deg: 5, length_mm: 70 } }\n"
        .to_owned();
    let mut fittings = String::new();
    for nth in 0..PARTS {
        let wire = 1.8 + 0.005 * f64::from(u32::try_from(nth).expect("a small number"));
        let bore = wire * 5.0 + 0.3;
        let _ = write!(
            conductors,
            "---\nid: w-{nth}\nname: W\nduty: messenger\nmaterial: bronze-2\n\
             construction: {{ stranded: {{ wires: 19, wire_diameter_mm: {wire:.3} }} }}\n"
        );
        let _ = write!(
            parts,
            "---\nnumber: C-{nth}\nname: C\nrole: cone\nmaterial: bronze-soft\ninterface: seat\n\
             geometry: {{ collet: {{ bore_mm: {bore:.3}, bore_tolerance_mm: 0.05, slits: 3, slit_width_mm: 1.0, \
             half_angle_deg: 5, length_mm: 60, stand_out_at_bore_mm: 6.0 }} }}\n"
        );
        let _ = write!(
            fittings,
            "---\nnumber: F-{nth}\nname: F\nfamily: cone-dead-end\nconductor: w-{nth}\nparts: [B-1, C-{nth}]\n\
             stand_out: {{ seated_mm: {{ min: 3.0, max: 5.5 }} }}\n"
        );
    }
    let world = MemoryWorld::new()
        .with(FilePath::catalogue("catalogue.yaml"), settings)
        .with(FilePath::catalogue("conductors/all.yaml"), &conductors)
        .with(FilePath::catalogue("parts/all.yaml"), &parts)
        .with(FilePath::catalogue("fittings/all.yaml"), &fittings);
    let loaded = load(&world).expect("a catalogue");
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings);
    let start = Instant::now();
    let mixups = find(&loaded.catalogue);
    let (cases, kits) = (mixups.cases().count(), mixups.kits().count());
    println!("{cases} cases and {kits} kits in {:.3} s", start.elapsed().as_secs_f64());
}
