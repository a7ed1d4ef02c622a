//! A conductor seen from the side: its outline, the lay of its wires, a break where it goes on.

use super::scaled_draft::{ScaledDraft, wire_tone};
use crate::catalogue::Conductor;
use crate::section::{Construction, Grooved, profile};
use crate::sketch::appearance::{Shade, Tone};
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Point, at};

/// The side of a conductor that is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Sides {
    Both,
    /// Both, a grooved wire lying on its side, so that its head is looked at.
    Turned,
    /// Above the axis, where the body is cut open.
    Upper,
}

/// The tone of a conductor seen from the side.
pub(crate) fn tone(conductor: &Conductor) -> Tone {
    wire_tone(conductor.material.group, Shade::Plain)
}

/// The conductor along the axis between two places.
pub(crate) fn along_axis(
    scaled: &mut ScaledDraft,
    conductor: &Conductor,
    radius: f64,
    ends: (f64, f64),
    sides: Sides,
) {
    along_axis_at(scaled, conductor, (radius, 0.0), ends, sides);
}

/// The conductor between two places, its middle at height `y`.
pub(crate) fn along_axis_at(
    scaled: &mut ScaledDraft,
    conductor: &Conductor,
    (radius, y): (f64, f64),
    (from, to): (f64, f64),
    sides: Sides,
) {
    let bottom = if sides == Sides::Upper { 0.0 } else { radius };
    let outline = Outline::of(&[(from, y - radius), (to, y - radius), (to, y + bottom), (from, y + bottom)]);
    match sides {
        Sides::Both | Sides::Turned => scaled.wire(&outline, tone(conductor)),
        Sides::Upper => {
            let corners = [(from, y), (from, y - radius), (to, y - radius), (to, y)];
            scaled.half_wire(&corners, tone(conductor));
        }
    }
    let lines = lay(scaled, conductor, radius, (from, to), sides);
    scaled.fine(raised(lines, y));
}

/// The conductor on the axis between where it is torn off and where it goes in.
pub(crate) fn stub(scaled: &mut ScaledDraft, conductor: &Conductor, radius: f64, ends: (f64, f64)) {
    stub_at(scaled, conductor, (radius, 0.0), ends, Sides::Both);
}

/// The conductor that goes on to the line: torn off at `far`, its middle at height `y`.
pub(crate) fn stub_at(
    scaled: &mut ScaledDraft,
    conductor: &Conductor,
    (radius, y): (f64, f64),
    (far, near): (f64, f64),
    sides: Sides,
) {
    let wave = 0.22 * radius * (near - far).signum();
    let torn = |share: f64| {
        let turn = (share - 0.5) * 2.0 * std::f64::consts::PI;
        at(far + wave * turn.sin(), y + radius - 2.0 * radius * share)
    };
    let mut points = vec![at(near, y - radius), at(near, y + radius)];
    points.extend((0..=12).map(|step| torn(f64::from(step) / 12.0)));
    scaled.wire(&Outline::new(points), tone(conductor));
    let lines = lay(scaled, conductor, radius, ((far + wave).min(near), (far + wave).max(near)), sides);
    scaled.fine(raised(lines, y));
}

fn raised(lines: Vec<Vec<Point>>, y: f64) -> Vec<Vec<Point>> {
    lines.into_iter().map(|line| line.into_iter().map(|point| at(point.x, point.y + y)).collect()).collect()
}

/// No drawing is so long that it has more lay lines.
pub(super) const MOST_LAY_LINES: f64 = 2_000.0;

/// Lay lines of round wires across the conductor; the groove's lips along a grooved wire. A length that is
/// not finite, or longer than any paper, has none.
fn lay(
    scaled: &ScaledDraft,
    conductor: &Conductor,
    radius: f64,
    (from, to): (f64, f64),
    sides: Sides,
) -> Vec<Vec<Point>> {
    let bottom = if sides == Sides::Upper { 0.0 } else { radius };
    if !(to - from).is_finite() {
        return Vec::new();
    }
    match &conductor.construction {
        Construction::Stranded(_) | Construction::Composite(_) | Construction::Rope(_) => {}
        Construction::Grooved(grooved) => {
            return lips(grooved, sides).into_iter().map(|y| vec![at(from, y), at(to, y)]).collect();
        }
        _ => return Vec::new(),
    }
    let wire = conductor.section.layers.last().map_or(radius / 3.0, |layer| layer.wire_diameter.mm());
    let pitch = (1.6 * wire).max(scaled.object(0.9));
    let slant = 1.1 * radius;
    let count = ((to - from + slant) / pitch).floor().max(0.0);
    if count > MOST_LAY_LINES {
        return Vec::new();
    }
    let count = count as usize;
    let lines = (0..=count).filter_map(|index| {
        let foot = from - slant + (index as f64 + 0.5) * pitch;
        clipped(at(foot, radius), at(foot + 2.0 * slant, -radius), (from, to), (-radius, bottom))
    });
    lines.collect()
}

/// Heights of the grooves' lips about the wire's middle: both of one side where the running face is below, one of each
/// side where the head is looked at.
fn lips(grooved: &Grooved, sides: Sides) -> Vec<f64> {
    let Some(groove) = profile(grooved).ok().and_then(|profile| profile.groove) else { return Vec::new() };
    match sides {
        Sides::Turned => vec![-groove.upper_lip.x.mm().abs(), groove.upper_lip.x.mm().abs()],
        Sides::Both | Sides::Upper => vec![-groove.upper_lip.y.mm(), -groove.lower_lip.y.mm()],
    }
}

/// The part of a slanted line within x and y limits.
fn clipped(
    start: Point,
    end: Point,
    (left, right): (f64, f64),
    (top, bottom): (f64, f64),
) -> Option<Vec<Point>> {
    let way = end - start;
    let share = |limit: f64, from: f64, step: f64| (limit - from) / step;
    let (x0, x1) = (share(left, start.x, way.x), share(right, start.x, way.x));
    let (y0, y1) = (share(bottom, start.y, way.y), share(top, start.y, way.y));
    let (from, to) = (x0.max(y0).max(0.0), x1.min(y1).min(1.0));
    (to - from > 0.02).then(|| vec![start.lerp(end, from), start.lerp(end, to)])
}
