//! Writes a sound catalogue of any size: bodies that four fittings share, each with a cone of its own.

use std::path::Path;
use std::{fs, io};

/// Fittings that share one body.
pub const FITTINGS_OF_A_BODY: usize = 4;

/// Colours that no two cones of a body share; none that earthing uses.
const COLOURS: [&str; FITTINGS_OF_A_BODY] = ["WH", "BU", "OG", "BK"];

/// Texts that differ from each other in both letters.
const TEXTS: [&str; FITTINGS_OF_A_BODY] = ["KA", "TE", "RY", "JO"];

/// Wires of the conductors, with the wires that lie across one, and what those are for.
const STRANDS: [(u32, u32, &str); 3] = [(7, 3, "earth"), (19, 5, "messenger"), (37, 7, "feeder")];

/// Wire diameters of the conductors, in hundredths of a millimetre.
const WIRE_DIAMETERS: std::ops::RangeInclusive<u32> = 180..=320;

/// Strength of a stranded hard-drawn copper conductor, N/mm²: 401 (DIN 48201-1, back-calculated).
const COPPER_N_PER_MM2: f64 = 401.0;

/// A conductor of hard-drawn copper.
struct Wire {
    id: String,
    duty: &'static str,
    wires: u32,
    wire_diameter_mm: f64,
    overall_diameter_mm: f64,
}

impl Wire {
    fn section_mm2(&self) -> f64 {
        f64::from(self.wires) * std::f64::consts::PI * self.wire_diameter_mm.powi(2) / 4.0
    }

    fn breaking_load_kn(&self) -> f64 {
        self.section_mm2() * COPPER_N_PER_MM2 / 1000.0
    }
}

/// Writes a catalogue with `fittings` fittings below `folder`, which is made where it isn't there.
///
/// # Errors
/// Where the folder can't be written.
pub fn write_catalogue(folder: &Path, fittings: usize) -> io::Result<()> {
    let wires = wires();
    write(folder, "catalogue.yaml", SETTINGS)?;
    write(folder, "conductors/copper.yaml", &stream(wires.iter().map(conductor)))?;
    write(folder, "notices/circulars.yaml", &stream((1..=10).map(notice)))?;
    write(folder, "holders/depots.yaml", &stream((1..=20).map(holder)))?;
    for body in 0..fittings.div_ceil(FITTINGS_OF_A_BODY) {
        let members = 0..FITTINGS_OF_A_BODY.min(fittings - body * FITTINGS_OF_A_BODY);
        let wire = |member: usize| &wires[(body * 7 + member * 13) % wires.len()];
        let cones = members.clone().map(|member| cone(body, member, wire(member)));
        let parts = stream([body_part(body), screw(body)].into_iter().chain(cones));
        write(folder, &format!("parts/body-{body:04}.yaml"), &parts)?;
        let fittings = stream(members.map(|member| fitting(body, member, wire(member))));
        write(folder, &format!("fittings/body-{body:04}.yaml"), &fittings)?;
        write(folder, &format!("notes/B-{body:04}.md"), &note(body))?;
    }
    Ok(())
}

const SETTINGS: &str = "\
title: Every fitting of a large network
owner: Example railway
edition: \"1\"
date: 2026-01-01
limits: { mark_difference: 1 }
caution: Example, not for use. Cards never authorise work.
";

fn write(folder: &Path, file: &str, text: &str) -> io::Result<()> {
    let path = folder.join(file);
    path.parent().map_or(Ok(()), fs::create_dir_all)?;
    fs::write(path, text)
}

fn stream(records: impl Iterator<Item = String>) -> String {
    records.collect::<Vec<_>>().join("---\n")
}

/// Conductors whose diameters step from 5.4 mm to 22.4 mm.
fn wires() -> Vec<Wire> {
    let sizes = STRANDS.into_iter().flat_map(|strand| WIRE_DIAMETERS.step_by(5).map(move |d| (strand, d)));
    sizes
        .map(|((wires, across, duty), hundredths)| {
            let wire_diameter_mm = f64::from(hundredths) / 100.0;
            Wire {
                id: format!("copper-{wires}x{hundredths}"),
                duty,
                wires,
                wire_diameter_mm,
                overall_diameter_mm: f64::from(across) * wire_diameter_mm,
            }
        })
        .collect()
}

fn conductor(wire: &Wire) -> String {
    let Wire { id, duty, wires, wire_diameter_mm, overall_diameter_mm } = wire;
    format!(
        "\
id: {id}
name: Copper {wires} × {wire_diameter_mm:.2}
duty: {duty}
material: copper-hard-drawn
construction: {{ stranded: {{ wires: {wires}, wire_diameter_mm: {wire_diameter_mm:.2} }} }}
tolerance: {{ overall_diameter_mm: 0.1 }}
stated: {{ section_mm2: {:.2}, overall_diameter_mm: {overall_diameter_mm:.2} }}
identity: {{ drum_tag: \"CU {wires}x{wire_diameter_mm:.2}\" }}
source: {{ note: invented }}
",
        wire.section_mm2()
    )
}

fn body_part(body: usize) -> String {
    format!(
        "\
number: B-{body:04}
name: Collet body {body}
role: body
material: aluminium-bronze
drawing: D-{body:04}/A
stamp: \"B{body:04}\"
reuse: if-undamaged
geometry:
  body: {{ half_angle_deg: 5, large_diameter_mm: 44, length_mm: 80, eye: clevis }}
"
    )
}

fn screw(body: usize) -> String {
    format!(
        "\
number: S-{body:04}
name: Closing screw
role: screw
material: aluminium-bronze
reuse: if-undamaged
"
    )
}

fn cone(body: usize, member: usize, wire: &Wire) -> String {
    let bore_mm = wire.overall_diameter_mm + 0.3;
    let proven_kn = wire.breaking_load_kn() * 0.98;
    format!(
        "\
number: {cone}
name: Gripping cone, {diameter:.1} copper
role: cone
material: bronze-soft
stamp: \"{stamp}\"
mark: {{ colour: {colour}, text: \"{text}\", notches: {notches}, seen_after_assembly: true }}
reuse: never
proven_on:
  - {{ conductor: {conductor}, body: B-{body:04}, holding_load_kN: {proven_kn:.2}, report: R-1 }}
interface: seat-{body:04}
geometry:
  collet: {{ bore_mm: {bore_mm:.2}, bore_tolerance_mm: 0.05, slits: 3, slit_width_mm: 1.0, half_angle_deg: 5, length_mm: 65, stand_out_at_bore_mm: 6.0 }}
",
        cone = cone_number(body, member),
        conductor = wire.id,
        diameter = wire.overall_diameter_mm,
        stamp = cone_stamp(body, member),
        colour = COLOURS[member],
        text = TEXTS[member],
        notches = member + 1,
    )
}

fn fitting(body: usize, member: usize, wire: &Wire) -> String {
    let load_kn = wire.breaking_load_kn();
    format!(
        "\
number: F-{body:04}-{member}
name: Collet dead-end, copper {wires} × {wire_diameter:.2}
family: cone-dead-end
conductor: {conductor}
parts: [B-{body:04}, S-{body:04}, {cone}]
stamp: \"B{body:04}\"
stand_out: {{ from: cone-face, seated_mm: {{ min: 3.0, max: 5.5 }}, tensioned_mm: {{ min: 2.0, max: 5.0 }} }}
insertion_mm: 95
tail_mm: 15
holding_load_kN: {holding:.2}
line_tension_max_kN: {tension:.2}
tightening:
  - {{ item: closing screw, thread: M36x2, spanner_mm: 55, torque_Nm: {{ min: 80, max: 90 }}, grease: [thread], passes: 1 }}
witness: A second person reads mark {mark} and stamp {stamp}.
steps:
  - \"Read the drum tag.\"
  - \"Cut square, deburr, wipe dry.\"
  - \"Push the wire in by 95 mm, 15 mm tail.\"
  - \"Seat the cone {mark}. Screw 80–90 N·m.\"
  - \"Measure stand-out: 3.0–5.5 mm.\"
reject_if:
  - Stand-out outside its window
  - Mark, stamp or card disagree
notices: [N-{notice}]
",
        conductor = wire.id,
        wires = wire.wires,
        wire_diameter = wire.wire_diameter_mm,
        cone = cone_number(body, member),
        holding = load_kn * 0.97,
        tension = load_kn * 0.3,
        mark = TEXTS[member],
        stamp = cone_stamp(body, member),
        notice = body % 10 + 1,
    )
}

fn cone_number(body: usize, member: usize) -> String {
    format!("C-{body:04}-{member}")
}

fn cone_stamp(body: usize, member: usize) -> String {
    format!("C{body:04}/{member}")
}

fn notice(number: u32) -> String {
    format!("number: N-{number}\ndate: 2025-{number:02}-01\ntitle: Circular {number}\n")
}

fn holder(number: u32) -> String {
    format!("id: depot-{number}\nname: Depot {number}\ncopies: {{ \"*\": {number} }}\n")
}

fn note(body: usize) -> String {
    format!("Body {body} takes the cones that its card names, and looks the same with any of them.\n")
}
