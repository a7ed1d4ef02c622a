//! Drawings on pages: inline, so that the page's own colours and the reader's dark mode reach them.

use super::Booklet;
use crate::catalogue::{Conductor, Fitting, WearLimits};
use crate::sketch::{Drawing, Options, assembly, conductor_section, conductor_true_size, worn_section};
use crate::units::Length;
use serde_json::{Value, json};

/// Pixels a millimetre of drawing: its 7 pt type comes to the size of the page's small type.
const PIXELS_PER_MM: f64 = 5.2;
/// Drawings wider than this scroll on a narrow screen, since their type would shrink to nothing.
const NARROW_PIXELS: f64 = 420.0;
/// The most room for an assembled fitting.
const ASSEMBLY_ROOM: (f64, f64) = (136.0, 90.0);
/// The most room for a conductor beside its fitting.
const BESIDE_ROOM: (f64, f64) = (60.0, 60.0);
/// The most room for the section of a conductor.
const SECTION_ROOM: (f64, f64) = (74.0, 74.0);

/// The fitting assembled, and its conductors.
pub(super) fn of_fitting(booklet: &Booklet<'_>, fitting: &Fitting) -> Vec<Value> {
    let mut figures = vec![figure("assembly", &assembly(fitting, &room(booklet, ASSEMBLY_ROOM)))];
    figures.extend(fitting.conductors.iter().map(|conductor| {
        let section = conductor_section(conductor, &room(booklet, BESIDE_ROOM));
        figure(&format!("section-{}", conductor.id), &section)
    }));
    figures
}

/// The section enlarged with its dimensions, and at 1:1.
pub(super) fn of_conductor(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    let enlarged = conductor_section(conductor, &room(booklet, SECTION_ROOM));
    let true_size = conductor_true_size(conductor, &room(booklet, SECTION_ROOM));
    vec![figure("section", &enlarged), at_true_size("true-size", &true_size)]
}

/// A contact wire worn to its stop height, with what is gone.
pub(super) fn worn(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    let stop = |limits: &WearLimits| limits.stop_height.or(limits.replace_height).or(limits.plan_height);
    let height = conductor.wear.as_ref().and_then(stop);
    let drawing = height.map(|height| worn_section(conductor, height, &room(booklet, SECTION_ROOM)));
    drawing.iter().map(|drawing| figure(&format!("worn-{}", conductor.id), drawing)).collect()
}

fn room<'a>(booklet: &Booklet<'a>, (width, height): (f64, f64)) -> Options<'a> {
    Options {
        width: Length::from_mm(width),
        height: Length::from_mm(height),
        numerals: booklet.numerals,
        ..booklet.input.drawing
    }
}

/// A drawing as layouts place it, under an id that is the page's only one of that name.
pub(super) fn figure(id: &str, drawing: &Drawing) -> Value {
    let pixels = |length: Length| length.mm() * PIXELS_PER_MM;
    let wide = pixels(drawing.width) > NARROW_PIXELS;
    sized(id, drawing, [pixels(drawing.width), pixels(drawing.height)].map(|size| format!("{size:.0}")), wide)
}

/// A drawing whose millimetres are millimetres, as far as a screen knows them and where it is printed.
fn at_true_size(id: &str, drawing: &Drawing) -> Value {
    sized(id, drawing, [drawing.width, drawing.height].map(|length| format!("{:.2}mm", length.mm())), false)
}

fn sized(id: &str, drawing: &Drawing, [width, height]: [String; 2], wide: bool) -> Value {
    json!({
        "id": format!("figure-{id}"),
        "title": drawing.title,
        "description": drawing.description,
        "scale": drawing.scale,
        "body": drawing.body,
        "width": crate::sketch::number(drawing.width.mm()),
        "height": crate::sketch::number(drawing.height.mm()),
        "shown_width": width,
        "shown_height": height,
        "wide": wide,
    })
}
