//! How long 50,000 cases take with their kits: eight bodies with 56 collets each, eight with 40 spreading cones and as
//! many sockets. Prints, and asserts nothing.

use fittingcards::catalogue::load;
use fittingcards::mixups::find;
use fittingcards::source::{FilePath, MemoryWorld};
use std::fmt::Write;
use std::time::Instant;

const BODIES: usize = 8;
const COLLETS: usize = 56;
const SOCKETS: usize = 40;

fn main() {
    let settings = "title: A\nowner: B\nedition: \"1\"\ndate: 2026-01-01\ncaution: C\n";
    let mut conductors = String::new();
    for nth in 0..COLLETS {
        let _ = write!(
            conductors,
            "---\nid: w-{nth}\nname: W\nduty: messenger\nmaterial: bronze-2\n\
             construction: {{ stranded: {{ wires: 19, wire_diameter_mm: {:.3} }} }}\n",
            wire(nth)
        );
    }
    let (mut parts, mut fittings) = (String::new(), String::new());
    for body in 0..BODIES {
        collets(body, &mut parts, &mut fittings);
        sockets(body, &mut parts, &mut fittings);
    }
    let world = MemoryWorld::new()
        .with(FilePath::catalogue("catalogue.yaml"), settings)
        .with(FilePath::catalogue("conductors/all.yaml"), &conductors)
        .with(FilePath::catalogue("parts/all.yaml"), &parts)
        .with(FilePath::catalogue("fittings/all.yaml"), &fittings);
    let loaded = load(&world).expect("a catalogue");
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings.sorted().first());
    let start = Instant::now();
    let mixups = find(&loaded.catalogue);
    let (cases, kits) = (mixups.cases().count(), mixups.kits().count());
    println!("{cases} cases and {kits} kits in {:.3} s", start.elapsed().as_secs_f64());
}

/// The wire diameter of a conductor, in millimetres.
fn wire(nth: usize) -> f64 {
    1.8 + 0.02 * f64::from(u32::try_from(nth).unwrap_or(u32::MAX))
}

fn collets(body: usize, parts: &mut String, fittings: &mut String) {
    let _ = write!(
        parts,
        "---\nnumber: B-{body}\nname: Body\nrole: body\nmaterial: aluminium-bronze\n\
         geometry: {{ body: {{ half_angle_deg: 5, length_mm: 70 }} }}\n"
    );
    for nth in 0..COLLETS {
        let bore = wire(nth) * 5.0 + 0.3;
        let _ = write!(
            parts,
            "---\nnumber: C-{body}-{nth}\nname: C\nrole: cone\nmaterial: bronze-soft\ninterface: seat-{body}\n\
             geometry: {{ collet: {{ bore_mm: {bore:.3}, bore_tolerance_mm: 0.05, slits: 3, slit_width_mm: 1.0, \
             half_angle_deg: 5, length_mm: 60, stand_out_at_bore_mm: 6.0 }} }}\n"
        );
        let _ = write!(
            fittings,
            "---\nnumber: F-{body}-{nth}\nname: F\nfamily: cone-dead-end\nconductor: w-{nth}\n\
             parts: [B-{body}, C-{body}-{nth}]\nstand_out: {{ seated_mm: {{ min: 3.0, max: 5.5 }} }}\n"
        );
    }
}

fn sockets(body: usize, parts: &mut String, fittings: &mut String) {
    let _ = write!(
        parts,
        "---\nnumber: D-{body}\nname: Body\nrole: body\nmaterial: aluminium-bronze\n\
         geometry: {{ body: {{ length_mm: 95 }} }}\n"
    );
    for nth in 0..SOCKETS {
        let wire = wire(nth);
        let (throat, socket, cone, hole) =
            (5.0 * wire + 0.5, 8.0 * wire + 3.1, 5.2 * wire + 3.4, 3.0 * wire + 0.2);
        let _ = write!(
            parts,
            "---\nnumber: S-{body}-{nth}\nname: S\nrole: socket\nmaterial: aluminium-bronze\ninterface: bore-{body}\n\
             geometry: {{ socket: {{ large_diameter_mm: {socket:.3}, half_angle_deg: 8, length_mm: 36, \
             throat_diameter_mm: {throat:.3}, travel_mm: 7 }} }}\n\
             ---\nnumber: E-{body}-{nth}\nname: E\nrole: cone\nmaterial: bronze-soft\ninterface: cone-{body}\n\
             geometry: {{ spreading_cone: {{ large_diameter_mm: {cone:.3}, half_angle_deg: 8, length_mm: 24, \
             hole_diameter_mm: {hole:.3}, wires_through_hole: 7, slits: 2, slit_width_mm: 1.0 }} }}\n"
        );
        let _ = write!(
            fittings,
            "---\nnumber: G-{body}-{nth}\nname: G\nfamily: cone-dead-end\nconductor: w-{nth}\n\
             parts: [D-{body}, S-{body}-{nth}, E-{body}-{nth}]\nstand_out: {{ from: none }}\n"
        );
    }
}
