//! Where a gripping part meets conductor and seat: surfaces to be looked at closely, and the gap between them.

use super::collet::collet;
use super::scaled_draft::wire_tone;
use super::setup::Setup;
use super::spreading::SpreadingSeat;
use super::wedge::WedgeSeat;
use super::{Figure as _, Pose};
use crate::grip::{Outcome, Verdict, collet_closure};
use crate::sketch::appearance::{Shade, Tone};
use crate::sketch::conductor::{Subject, cut_surfaces};
use crate::sketch::outline::circle;
use crate::sketch::plane::{Affine, Point, at};
use crate::sketch::scene::Primitive;
use crate::units::Length;

/// What is seen close up, in millimetres of the object, back to front.
pub(crate) struct Contact {
    pub surfaces: Vec<Surface>,
    /// What is in the middle of the view.
    pub focus: Point,
    /// How much height is worth seeing.
    pub reach: f64,
    /// Heights of the edges of the gap, and what is said of it; nothing where the surfaces touch.
    pub gap: Option<(f64, f64, &'static str)>,
    /// Edges that the right part has there.
    pub edge: Vec<Point>,
    pub unsound: bool,
}

/// A surface with its tone; gripping parts have the heaviest outline.
pub(crate) struct Surface {
    pub ring: Vec<Point>,
    pub tone: Tone,
    pub grips: bool,
    /// How it is hatched where it is cut.
    pub hatch: Option<usize>,
}

/// Smaller gaps than this are none.
const LEAST_GAP: f64 = 0.05;

fn surface(ring: Vec<Point>, tone: Tone) -> Surface {
    Surface { ring, tone, grips: false, hatch: None }
}

/// A cut surface of the gripping part.
fn gripping(ring: Vec<Point>, tone: Tone) -> Surface {
    Surface { ring, tone, grips: true, hatch: Some(1) }
}

/// A cut surface of what it sits in.
fn seat(ring: Vec<Point>) -> Surface {
    Surface { ring, tone: Tone::Paper, grips: false, hatch: Some(0) }
}

/// An edge of the gripping part round what is open.
fn opening(ring: Vec<Point>, tone: Tone) -> Surface {
    Surface { ring, tone, grips: true, hatch: None }
}

impl Contact {
    /// The middle of the view: that of the gap where there is one.
    pub fn middle(&self) -> Point {
        self.gap.map_or(self.focus, |(top, foot, _)| at(self.focus.x, f64::midpoint(top, foot)))
    }

    /// The contacts of a right part and a wrong one, both looked at where they differ.
    pub fn pair(right: &Setup, wrong: &Setup) -> Option<(Self, Self)> {
        let (own, other) =
            (SpreadingSeat::of(right, Pose::default()), SpreadingSeat::of(wrong, Pose::default()));
        if let Some((own, other)) = own.zip(other).filter(|(_, other)| is_loose_inside(wrong, other)) {
            // The right cone closes on the wires in its hole.
            let mut closed = own;
            closed.hole = closed.inner;
            return Self::in_the_hole(right, &closed).zip(Self::in_the_hole(wrong, &other));
        }
        Self::of(right).zip(Self::of(wrong))
    }

    /// The contact of a fitting's gripping part, where its family has one that can be drawn truly.
    pub fn of(setup: &Setup) -> Option<Self> {
        let outcome = setup.outcome.as_ref()?;
        Self::across(setup, outcome).or_else(|| Self::spread(setup)).or_else(|| Self::wedged(setup))
    }

    /// A collet cut across: conductor, bore, one slit. The conductor lies in the bottom of the bore, so that the whole
    /// gap is above it.
    fn across(setup: &Setup, outcome: &Outcome) -> Option<Self> {
        let (look, collet) = collet(setup)?;
        let radius = setup.diameter() / 2.0;
        let clearance = outcome.clearance?.mm();
        let can_close = collet_closure(collet).map(Length::mm)?;
        let closed = clearance.clamp(0.0, can_close);
        let gap = if outcome.verdict == Verdict::ClosesWithoutGripping {
            clearance - closed
        } else {
            clearance.min(0.0)
        };
        let bore = radius + gap / 2.0;
        let middle = at(0.0, -gap / 2.0);
        let (slits, width) = (f64::from(collet.slits?), collet.slit_width?.mm());
        let open = (width - std::f64::consts::PI * closed / slits.max(1.0)).max(0.0);
        let reach = 2.0 * radius;
        let mut surfaces = vec![gripping(circle(at(0.0, 0.0), reach, SAG), look.tone)];
        let bare = if gap > LEAST_GAP { Tone::Ink } else { Tone::Paper };
        surfaces.push(opening(circle(middle, bore, SAG), bare));
        let (left, half) = (-0.32 * radius, (open / 2.0).max(0.0));
        let foot = middle.y - (bore * bore - left * left).max(0.0).sqrt();
        let slit =
            [at(left - half, -reach), at(left + half, -reach), at(left + half, foot), at(left - half, foot)];
        surfaces.push(opening(slit.to_vec(), Tone::Paper));
        for cut in cut_surfaces(&Subject::of(setup.conductor)) {
            let ring = match cut.primitive {
                Primitive::Circle(centre, radius) => circle(centre, radius, SAG),
                Primitive::Area(outline) => outline.rings().next().unwrap_or_default(),
                Primitive::Lines(_) | Primitive::Text(_) => continue,
            };
            surfaces.push(surface(ring, cut.tone));
        }
        let said = if gap > 0.0 { "gap" } else { "too tight" };
        Some(Self {
            surfaces,
            focus: at(0.0, -radius),
            reach: 3.0,
            gap: (gap.abs() > LEAST_GAP).then_some((-radius - gap, -radius, said)),
            edge: circle(at(0.0, 0.0), bore, SAG),
            unsound: !(radius.is_finite() && gap.is_finite()),
        })
    }

    /// A spreading cone cut lengthwise: its flank, the wires on it, the socket's wall.
    fn spread(setup: &Setup) -> Option<Self> {
        let seat = SpreadingSeat::of(setup, Pose::default())?;
        let ([small, large], (mouth, slope)) = (seat.flank, seat.taper);
        let tone = super::spreading::spreading_cone(setup)?.0.tone;
        let wall = |x: f64| at(x, -(mouth + x * slope));
        let (left, right) = (small.0 - 4.0, large.0.max(0.0) + 4.0);
        let group = setup.conductor.material.group;
        let open = large.0.min(0.0);
        let mut surfaces =
            vec![self::seat(vec![wall(left), wall(0.0), at(0.0, -2.0 * mouth), at(left, -2.0 * mouth)])];
        let along = (0.8 * (large.0 - small.0)).min(12.0);
        let from = large.0 - along;
        let layers: f64 = seat.spread.iter().map(|layer| layer.1).sum::<f64>() / slope.atan().cos();
        let flank = |x: f64| large.1 - (large.0 - x) * slope;
        let top = |x: f64| -(flank(x) + layers);
        let gap = -wall(open).y + top(open);
        let loose = gap > LEAST_GAP;
        if loose {
            let ring = vec![wall(from), wall(open), at(open, top(open)), at(from, top(from))];
            surfaces.push(surface(ring, Tone::Ink));
        }
        for (index, band) in seat.bands().iter().enumerate() {
            let shade = [Shade::Plain, Shade::Pale, Shade::Deep][index % 3];
            let ring = band.mapped(Affine::FLIP_Y).rings().next().unwrap_or_default();
            surfaces.push(surface(ring, wire_tone(group, shade)));
        }
        let cone = vec![at(small.0, -small.1), at(large.0, -large.1), at(large.0, 0.0), at(small.0, 0.0)];
        surfaces.push(gripping(cone.clone(), tone));
        let at_gap = large.0 - 0.35 * along;
        Some(Self {
            surfaces,
            focus: at(at_gap, top(at_gap)),
            reach: 2.0 * layers + 2.0 * gap.max(0.0),
            gap: loose.then_some((wall(at_gap).y, top(at_gap), "gap")),
            edge: cone,
            unsound: seat.proportions.unsound || !(right.is_finite() && left.is_finite()),
        })
    }

    /// The hole of a spreading cone cut lengthwise, and the wires that go through it without being held.
    fn in_the_hole(setup: &Setup, seat: &SpreadingSeat) -> Option<Self> {
        let tone = super::spreading::spreading_cone(setup)?.0.tone;
        let ([small, large], hole, inner) = (seat.flank, seat.hole, seat.inner);
        let box_of = |top: f64, foot: f64, from: f64, to: f64| {
            vec![at(from, -top), at(to, -top), at(to, -foot), at(from, -foot)]
        };
        let cone = vec![at(small.0, -small.1), at(large.0, -large.1), at(large.0, -hole), at(small.0, -hole)];
        let wires = box_of(inner, 0.0, small.0 - 8.0, large.0 + 8.0);
        let gap = hole - inner;
        let mut surfaces = vec![gripping(cone.clone(), tone)];
        if gap > LEAST_GAP {
            surfaces.push(surface(box_of(hole, inner, small.0, large.0), Tone::Ink));
        }
        surfaces.push(surface(wires, wire_tone(setup.conductor.material.group, Shade::Plain)));
        let middle = f64::midpoint(small.0, large.0);
        Some(Self {
            surfaces,
            focus: at(middle, -inner),
            reach: 3.0 + 2.0 * gap.max(0.0),
            gap: (gap > LEAST_GAP).then_some((-hole, -inner, "gap")),
            edge: cone,
            unsound: seat.proportions.unsound || !gap.is_finite(),
        })
    }

    /// A wedge cut lengthwise: wire, wedge, sloping wall.
    fn wedged(setup: &Setup) -> Option<Self> {
        let seat = WedgeSeat::of(setup, Pose::default())?;
        let tone = super::wedge::wedge(setup)?.0.tone;
        let (small, large) = (seat.small, seat.large);
        let wall = |x: f64| at(x, -seat.wall_at(x));
        let (left, end) = (small.0, large.0.min(0.0));
        let roof = -2.0 * seat.mouth;
        let mut surfaces = vec![self::seat(vec![wall(left), wall(0.0), at(0.0, roof), at(left, roof)])];
        let top = |x: f64| -(seat.wire + large.1 - (large.0 - x) * seat.slope);
        let gap = top(end) - wall(end).y;
        let loose = gap > LEAST_GAP;
        if loose {
            let ring = vec![wall(left), wall(end), at(end, top(end)), at(left, top(left))];
            surfaces.push(surface(ring, Tone::Ink));
        }
        let wire = Tone::Metal(setup.conductor.material.group, Shade::Plain);
        surfaces.push(surface(
            vec![
                at(left, -seat.wire),
                at(large.0 + 40.0, -seat.wire),
                at(large.0 + 40.0, 0.0),
                at(left, 0.0),
            ],
            wire,
        ));
        let wedge = vec![
            at(small.0, -seat.wire),
            at(small.0, -seat.wire - small.1),
            at(large.0, -seat.wire - large.1),
            at(large.0, -seat.wire),
        ];
        surfaces.push(gripping(wedge.clone(), tone));
        let at_gap = end - 3.0;
        Some(Self {
            surfaces,
            focus: at(at_gap, top(at_gap)),
            reach: 3.0,
            gap: loose.then_some((wall(at_gap).y, top(at_gap), "gap")),
            edge: wedge,
            unsound: seat.proportions().unsound,
        })
    }
}

/// Whether a spreading cone leaves the wires in its hole loose: where it does not hold them, or all go through.
fn is_loose_inside(setup: &Setup, seat: &SpreadingSeat) -> bool {
    let core = setup.outcome.as_ref().is_some_and(|outcome| outcome.verdict == Verdict::CoreNotHeld);
    core || seat.spread.is_empty()
}

/// How far a chord may lie off its arc, in millimetres of the object.
const SAG: f64 = 0.004;
