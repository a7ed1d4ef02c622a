//! The notes of a conductor section: wires and their diameters, construction of a rope, wall of a tube.

use super::cut_surfaces::CutSurface;
use super::dimensions::with_tolerance;
use super::subject::{Subject, core_words};
use crate::section::{Construction, LayerRole};
use crate::sketch::appearance::{Appearance, Pen, word};
use crate::sketch::draft::Draft;
use crate::sketch::letters::Anchor;
use crate::sketch::plane::{Affine, Point, at, unit};
use crate::sketch::scale::Scale;
use crate::sketch::scene::{Primitive, Purpose};

/// Where notes stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Arrangement {
    /// To the right, with leaders.
    Beside,
    /// Below, each with a sample of its tone.
    Below,
}

struct Note {
    name: &'static str,
    text: String,
    role: LayerRole,
}

/// Adds the notes of a construction.
pub(super) fn add(
    draft: &mut Draft,
    subject: &Subject,
    surfaces: &[CutSurface],
    scale: Scale,
    arrangement: Arrangement,
) {
    let notes = notes(draft, subject);
    if notes.is_empty() {
        return;
    }
    match arrangement {
        Arrangement::Beside => beside(draft, &notes, surfaces, scale),
        Arrangement::Below => below(draft, &notes, surfaces),
    }
}

fn notes(draft: &Draft, subject: &Subject) -> Vec<Note> {
    let numerals = draft.options.numerals;
    let note = |name, text, role| Note { name, text, role };
    match subject.construction {
        Construction::Stranded(_) => {
            wires(draft, subject, LayerRole::Outer).map(|text| note("wire diameter", text, LayerRole::Outer))
        }
        .into_iter()
        .collect(),
        Construction::Composite(_) => {
            let named =
                |role, group| wires(draft, subject, role).map(|text| format!("{text} {}", word(group)));
            let outer = named(LayerRole::Outer, subject.group());
            let core = named(LayerRole::Core, subject.core_group());
            let outer = outer.map(|text| note("wire diameter", text, LayerRole::Outer));
            let core = core.map(|text| note("core wire diameter", text, LayerRole::Core));
            outer.into_iter().chain(core).collect()
        }
        Construction::Rope(rope) => {
            let class = rope.class.replace('x', "\u{a0}×\u{a0}");
            let mut notes = vec![note("construction", class, LayerRole::Outer)];
            if !rope.class.starts_with("1x") {
                notes.push(note("core", core_words(rope.core).to_owned(), LayerRole::Core));
            }
            notes
        }
        Construction::Tube { wall, .. } => {
            vec![note(
                "wall",
                format!("wall\u{a0}{}\u{a0}mm", numerals.shortest(wall.mm(), 3)),
                LayerRole::Outer,
            )]
        }
        _ => Vec::new(),
    }
}

/// Such as "19 × ⌀ 2.80 mm".
fn wires(draft: &Draft, subject: &Subject, role: LayerRole) -> Option<String> {
    let (number, diameter) = subject.wires(role)?;
    let tolerance = subject.wire_diameter_tolerance.filter(|_| role == LayerRole::Outer);
    Some(format!("{number}\u{a0}×\u{a0}⌀\u{a0}{}", with_tolerance(draft, diameter, 2, tolerance)))
}

fn beside(draft: &mut Draft, notes: &[Note], surfaces: &[CutSurface], scale: Scale) {
    let bounds = draft.scene.object_bounds();
    let size = draft.size();
    let step = (1.9 * size).max(bounds.height() * 0.3);
    let top = if notes.len() == 1 { -0.28 * bounds.height() } else { -0.25 * bounds.height() };
    for (index, note) in notes.iter().enumerate() {
        let elbow = at(bounds.x1 + 0.9 * size, top + step * index as f64);
        let Some(tip) = tip(surfaces, note.role, elbow, scale) else { continue };
        draft.pointed_note(note.name, &note.text, tip, elbow, Anchor::Start);
    }
}

/// The point of the group's nearest surface that faces the elbow.
fn tip(surfaces: &[CutSurface], role: LayerRole, elbow: Point, scale: Scale) -> Option<Point> {
    let place = Affine::scale(scale.0);
    let candidates = surfaces.iter().filter(|surface| surface.role == role).filter_map(|surface| {
        match &surface.primitive {
            Primitive::Circle(centre, radius) => {
                let centre = place * *centre;
                Some(centre + unit(elbow - centre) * (radius * scale.0))
            }
            Primitive::Area(outline) => {
                let points = outline.sides().map(|side| place * side.p0);
                points.min_by(|a, b| a.distance(elbow).total_cmp(&b.distance(elbow)))
            }
            _ => None,
        }
    });
    candidates.min_by(|a, b| a.distance(elbow).total_cmp(&b.distance(elbow)))
}

fn below(draft: &mut Draft, notes: &[Note], surfaces: &[CutSurface]) {
    let size = draft.size();
    let mut base = draft.scene.bounds().y1 + 1.1 * size;
    let sample = 0.42 * size;
    let widest = notes.iter().map(|note| draft.lettering().width(&note.text)).fold(0.0, f64::max);
    let left = -(widest + 3.0 * sample) / 2.0;
    for note in notes {
        if let Some(surface) = surfaces.iter().rev().find(|surface| surface.role == note.role) {
            let appearance = Appearance::area(surface.tone, Pen::Thin);
            draft.scene.circle(Purpose::Edge, at(left + sample, base), sample, appearance);
        }
        let place = at(left + 3.0 * sample, base);
        if draft.text_at_first_clear(&[(place, Anchor::Start)], &note.text).is_some() {
            draft.printed(note.name, &note.text);
        }
        base += 1.45 * size;
    }
}
