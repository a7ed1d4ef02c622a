//! The answer for people: aligned, with units, which number is which, and the sources under it.

use super::answer::{Answer, WornAnswer};
use super::question::Question;
use crate::section::{Construction, Layer, LayerRole, Section};
use crate::units::{Force, LinearResistance, Numerals};
use std::fmt::Write;

/// A row: what, number, unit, remark.
type Row = (String, String, &'static str, String);

pub(super) fn lines(question: &Question, answer: &Answer) -> String {
    let mut text = format!("{}\n\n", heading(question));
    table(&mut text, &rows(question, answer));
    let layers = &answer.section.layers;
    if layers.len() > 1 {
        text.push_str("\nlayers from the centre out\n");
        table(&mut text, &layers.iter().map(layer).collect::<Vec<_>>());
    }
    text.push_str("\nsources\n");
    for source in &answer.section.sources {
        let _ = writeln!(text, "  {source}");
    }
    text
}

fn heading(question: &Question) -> String {
    let material = question.material().map_or("no material given", |material| &material.name);
    match question {
        Question::Recorded(conductor) => format!("{} ({}), {material}", conductor.name, conductor.id),
        Question::Built { .. } => material.to_owned(),
    }
}

fn rows(question: &Question, answer: &Answer) -> Vec<Row> {
    let mut rows = sizes(question, &answer.section);
    rows.extend(properties(answer));
    rows.extend(answer.worn.iter().flat_map(|worn| worn_rows(answer, worn)));
    rows
}

fn sizes(question: &Question, section: &Section) -> Vec<Row> {
    let mut rows = vec![row("metal section", section.metal.mm2(), 2, "mm²", "the one to be called section")];
    if let Some(band) = section.band {
        rows.push(row("  least", band.least().mm2(), 2, "mm²", "wires at the thin end of their tolerance"));
        rows.push(row("  most", band.most().mm2(), 2, "mm²", "wires at the thick end"));
    }
    rows.extend(section.outer.map(|area| row("  outer group", area.mm2(), 2, "mm²", "")));
    rows.extend(section.core.map(|area| row("  core", area.mm2(), 2, "mm²", "")));
    let read = match question.construction() {
        Construction::Bar { .. } => "over the corners; a caliper reads the sides",
        _ => "what a caliper reads",
    };
    rows.push(row("overall diameter", section.overall_diameter.mm(), 2, "mm", read));
    let circle = "of the overall diameter; never the section";
    rows.push(row("circle area", section.circle.mm2(), 2, "mm²", circle));
    rows.push(row("fill ratio", section.fill_ratio, 4, "", "metal section / circle area"));
    rows.extend(section.neck.map(|neck| row("neck", neck.mm(), 3, "mm", "between the rounded roots")));
    rows
}

fn properties(answer: &Answer) -> Vec<Row> {
    let section = &answer.section;
    let at_20 = |ohm| resistance(answer, "resistance at 20 °C", ohm);
    let hot = answer.temperature.map(|(temperature, ohm)| {
        resistance(answer, &format!("resistance at {} °C", temperature.celsius()), ohm)
    });
    let rows = [
        section.mass.map(|mass| row("mass", mass.kg_per_km(), 1, "kg/km", "")),
        section.resistance_20c.map(at_20),
        hot,
        section.breaking_load.map(|load| breaking_load(answer, "breaking load", load)),
    ];
    rows.into_iter().flatten().collect()
}

/// What is worn is never said to be more, or less worn, than it is.
fn worn_rows(answer: &Answer, worn: &WornAnswer) -> Vec<Row> {
    let left = &worn.metal;
    let at_20 = |ohm| resistance(answer, "  resistance at 20 °C", ohm);
    let hot = answer.temperature.zip(worn.at_temperature).map(|((temperature, _), ohm)| {
        resistance(answer, &format!("  resistance at {} °C", temperature.celsius()), ohm)
    });
    let (section, percent) =
        (NUMERALS.at_most(worn.worn.section.mm2(), 2), NUMERALS.at_least(worn.percent, 1));
    let rows = [
        Some(row("remaining height", worn.worn.height.mm(), 2, "mm", "")),
        Some(("  section left".to_owned(), section, "mm²", String::new())),
        Some(("  worn".to_owned(), percent, "%", format!("of the {}", worn.basis))),
        Some(row("  flat width", worn.worn.flat_width.mm(), 2, "mm", "")),
        left.resistance_20c.map(at_20),
        hot,
        left.breaking_load.map(|load| breaking_load(answer, "  breaking load", load)),
    ];
    rows.into_iter().flatten().collect()
}

/// How numbers are written here.
const NUMERALS: Numerals = Numerals::new('.');

/// By a standard's formula the most that it may be: rounded up.
fn resistance(answer: &Answer, what: &str, ohm: LinearResistance) -> Row {
    match answer.by_standard {
        true => {
            let text = NUMERALS.at_least(ohm.ohm_per_km(), 4);
            (what.to_owned(), text, "Ω/km", "at most".to_owned())
        }
        false => row(what, ohm.ohm_per_km(), 4, "Ω/km", ""),
    }
}

/// By a standard's formula the least that it must be: rounded down.
fn breaking_load(answer: &Answer, what: &str, load: Force) -> Row {
    match answer.by_standard {
        true => {
            let text = NUMERALS.at_most(load.kn(), 2);
            (what.to_owned(), text, "kN", "at least; not what it may be used at".to_owned())
        }
        false => row(what, load.kn(), 2, "kN", "rated; not what it may be used at"),
    }
}

fn row(what: &str, value: f64, places: usize, unit: &'static str, remark: &str) -> Row {
    (what.to_owned(), format!("{value:.places$}"), unit, remark.to_owned())
}

fn layer(layer: &Layer) -> Row {
    let role = if layer.role == LayerRole::Core { "core" } else { "" };
    let pitch = format!("on radius {:.2} mm", layer.pitch_radius.mm());
    let remark = [role, &pitch].into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(", ");
    let wires = if layer.wires == 1 { "wire" } else { "wires" };
    (format!("  {} {wires}", layer.wires), format!("{:.2}", layer.wire_diameter.mm()), "mm", remark)
}

/// Numbers end at one column whatever their decimals, so that units and remarks line up.
fn table(text: &mut String, rows: &[Row]) {
    let widest = |of: fn(&Row) -> usize| rows.iter().map(of).max().unwrap_or_default();
    let (what, value) = (widest(|row| row.0.chars().count()), widest(|row| row.1.len()));
    let unit = widest(|row| row.2.chars().count());
    for row in rows {
        let line = format!("{:<what$}  {:>value$} {:<unit$}  {}", row.0, row.1, row.2, row.3);
        let _ = writeln!(text, "{}", line.trim_end());
    }
}
