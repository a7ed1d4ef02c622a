//! The dimensions of a conductor section.

use super::grooved_outline::grooved_outline;
use super::subject::Subject;
use crate::section::{Construction, Grooved, profile};
use crate::sketch::dimension::{Lettered, Prefer, Span, Way};
use crate::sketch::draft::Draft;
use crate::sketch::options::Detail;
use crate::sketch::plane::{Point, Vec2, at};
use crate::sketch::scale::Scale;
use crate::units::Length;

/// Adds what a construction is measured by.
pub(super) fn add(draft: &mut Draft, subject: &Subject, scale: Scale) {
    match subject.construction {
        Construction::Grooved(grooved) => add_grooved(draft, subject, grooved, scale),
        Construction::Bar { width, thickness, .. } => {
            let half = Vec2::new(width.mm(), thickness.mm()) / 2.0 * scale.0;
            below(draft, "width", &plain(draft, *width, 1), half.x, half.y);
            left(draft, "thickness", &plain(draft, *thickness, 1), (-half.y, half.y), -half.x);
        }
        Construction::Solid { diameter } => {
            if let Some(height) = subject.worn_to {
                add_worn(draft, *diameter, height, scale, worn_half(*diameter, height));
            } else {
                overall(draft, subject, scale);
            }
        }
        _ => overall(draft, subject, scale),
    }
}

fn overall(draft: &mut Draft, subject: &Subject, scale: Scale) {
    let diameter = subject.section.overall_diameter;
    let decimals =
        if matches!(subject.construction, Construction::Solid { .. }) { places(diameter) } else { 1 };
    let text = with_tolerance(draft, diameter, decimals, subject.diameter_tolerance);
    let radius = diameter.mm() / 2.0 * scale.0;
    below(draft, "overall diameter", &format!("⌀\u{a0}{text}"), radius, 0.0);
}

/// One decimal, or two where the second says something.
fn places(length: Length) -> usize {
    let tenths = length.mm() * 10.0;
    if (tenths - tenths.round()).abs() < 0.05 { 1 } else { 2 }
}

fn plain(draft: &Draft, length: Length, places: usize) -> String {
    draft.options.numerals.length(length, places)
}

/// A length with its tolerance, where it has one, such as "14.0 ±0.1 mm".
pub(super) fn with_tolerance(
    draft: &Draft,
    length: Length,
    decimals: usize,
    tolerance: Option<Length>,
) -> String {
    let numerals = draft.options.numerals;
    match tolerance {
        Some(tolerance) if tolerance.is_positive() && draft.options.detail == Detail::Full => {
            let number = numerals.fixed(length.mm(), decimals);
            let off = numerals.with_unit(tolerance.mm(), decimals.max(places(tolerance)), "mm");
            format!("{number}\u{a0}±{off}")
        }
        _ => numerals.length(length, decimals),
    }
}

/// A level dimension below, symmetric about the axis.
fn below(draft: &mut Draft, name: &str, text: &str, half: f64, edge: f64) {
    let size = draft.size();
    let bottom = draft.scene.object_bounds().y1;
    let line = bottom + 1.9 * size;
    let ends = (at(-half, edge), at(half, edge));
    draft.dimension(&Span {
        name,
        text: text.to_owned(),
        lettering: Lettered::Measure,
        ends,
        line,
        way: Way::Level,
        prefer: Prefer::Middle,
    });
}

/// An upright dimension to the left.
fn left(draft: &mut Draft, name: &str, text: &str, (top, bottom): (f64, f64), edge: f64) {
    let size = draft.size();
    let line = edge - 1.2 * size;
    let ends = (at(edge, top), at(edge, bottom));
    draft.dimension(&Span {
        name,
        text: text.to_owned(),
        lettering: Lettered::Measure,
        ends,
        line,
        way: Way::Upright,
        prefer: Prefer::Middle,
    });
}

fn add_grooved(draft: &mut Draft, subject: &Subject, grooved: &Grooved, scale: Scale) {
    let radius = grooved.height.mm() / 2.0 * scale.0;
    if let Ok(profile) = profile(grooved)
        && let Some(groove) = profile.groove
    {
        let half = groove.neck.mm() / 2.0 * scale.0;
        let root = -groove.root_centre.y.mm() * scale.0;
        let text = plain(draft, groove.neck, 2);
        let line = -radius - 1.0 * draft.size();
        let ends = (at(-half, root), at(half, root));
        draft.dimension(&Span {
            name: "neck",
            text,
            lettering: Lettered::Measure,
            ends,
            line,
            way: Way::Level,
            prefer: Prefer::Middle,
        });
    }
    match subject.worn_to {
        Some(height) => {
            let half = flat_half(&grooved_outline(grooved), height.mm() - grooved.height.mm() / 2.0);
            add_worn(draft, grooved.height, height, scale, half);
        }
        None => {
            let height = with_tolerance(draft, grooved.height, 2, subject.diameter_tolerance);
            left(draft, "height", &height, (-radius, radius), -radius);
            let width = plain(draft, grooved.width, 2);
            below(draft, "width", &width, grooved.width.mm() / 2.0 * scale.0, 0.0);
        }
    }
}

fn add_worn(draft: &mut Draft, height: Length, remaining: Length, scale: Scale, half: f64) {
    let radius = height.mm() / 2.0 * scale.0;
    let flat = remaining.mm() * scale.0 - radius;
    left(draft, "remaining height", &plain(draft, remaining, 2), (-radius, flat), -radius);
    if half > 0.0 {
        let width = plain(draft, Length::from_mm(2.0 * half), 2);
        below(draft, "flat width", &width, half * scale.0, flat);
    }
}

/// Half the flat of a round wire worn to a remaining height.
fn worn_half(diameter: Length, remaining: Length) -> f64 {
    let (radius, off) = (diameter.mm() / 2.0, remaining.mm() - diameter.mm() / 2.0);
    (radius * radius - off * off).max(0.0).sqrt()
}

/// Half the width of a ring at the height of the flat.
fn flat_half(ring: &[Point], y: f64) -> f64 {
    let sides = ring.iter().zip(ring.iter().cycle().skip(1));
    sides
        .filter(|(from, to)| (from.y - y) * (to.y - y) <= 0.0 && from.y != to.y)
        .map(|(from, to)| from.lerp(*to, (y - from.y) / (to.y - from.y)).x)
        .fold(0.0, f64::max)
}
