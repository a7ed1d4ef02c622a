//! Where a gripping part meets conductor and seat: surfaces to be looked at closely, and the gap between them.

use super::collet::collet;
use super::driven_in;
use super::setup::Setup;
pub(crate) use super::surfaces::Contact;
use super::surfaces::{LEAST_GAP, Surface};
use super::wedge::WedgeSeat;
use super::{Figure as _, Pose};
use crate::grip::{Outcome, Verdict, collet_closure};
use crate::sketch::appearance::{Shade, Tone};
use crate::sketch::conductor::{Subject, cut_surfaces};
use crate::sketch::outline::circle;
use crate::sketch::plane::at;
use crate::sketch::scene::Primitive;
use crate::units::Length;

impl Contact {
    /// The contacts of a right part and a wrong one, both looked at where they differ.
    pub fn pair(right: &Setup, wrong: &Setup) -> Option<(Self, Self)> {
        let inside = driven_in::loose_inside(right, wrong);
        inside.or_else(|| Self::of(right).zip(Self::of(wrong)))
    }

    /// The contact of a fitting's gripping part, where its family has one that can be drawn truly.
    pub fn of(setup: &Setup) -> Option<Self> {
        let outcome = setup.outcome.as_ref()?;
        Self::across(setup, outcome)
            .or_else(|| driven_in::on_the_flank(setup))
            .or_else(|| Self::wedged(setup))
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
        let mut surfaces = vec![Surface::gripping(circle(at(0.0, 0.0), reach, SAG), look.tone)];
        let bare = if gap > LEAST_GAP { Tone::Ink } else { Tone::Paper };
        surfaces.push(Surface::opening(circle(middle, bore, SAG), bare));
        let (left, half) = (-0.32 * radius, (open / 2.0).max(0.0));
        let foot = middle.y - (bore * bore - left * left).max(0.0).sqrt();
        let slit =
            [at(left - half, -reach), at(left + half, -reach), at(left + half, foot), at(left - half, foot)];
        surfaces.push(Surface::opening(slit.to_vec(), Tone::Paper));
        for cut in cut_surfaces(&Subject::of(setup.conductor)) {
            let ring = match cut.primitive {
                Primitive::Circle(centre, radius) => circle(centre, radius, SAG),
                Primitive::Area(outline) => outline.rings().next().unwrap_or_default(),
                Primitive::Lines(_) | Primitive::Text(_) => continue,
            };
            surfaces.push(Surface::plain(ring, cut.tone));
        }
        let (said, seen) = (if gap > 0.0 { "gap" } else { "too tight" }, gap.abs() > LEAST_GAP);
        Some(Self {
            surfaces,
            focus: at(0.0, -radius - if seen { gap / 2.0 } else { 0.0 }),
            reach: 3.0,
            gap: seen.then_some((-radius - gap, -radius, said)),
            edge: circle(at(0.0, 0.0), bore, SAG),
            unsound: !(radius.is_finite() && gap.is_finite()),
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
        let mut surfaces = vec![Surface::seat(vec![wall(left), wall(0.0), at(0.0, roof), at(left, roof)])];
        let top = |x: f64| -(seat.wire + large.1 - (large.0 - x) * seat.slope);
        let gap = top(end) - wall(end).y;
        let loose = gap > LEAST_GAP;
        if loose {
            let ring = vec![wall(left), wall(end), at(end, top(end)), at(left, top(left))];
            surfaces.push(Surface::plain(ring, Tone::Ink));
        }
        let wire = Tone::Metal(setup.conductor.material.group, Shade::Plain);
        surfaces.push(Surface::plain(
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
        surfaces.push(Surface::gripping(wedge.clone(), tone));
        let at_gap = end - 3.0;
        Some(Self {
            surfaces,
            focus: at(at_gap, if loose { f64::midpoint(wall(at_gap).y, top(at_gap)) } else { top(at_gap) }),
            reach: 3.0,
            gap: loose.then_some((wall(at_gap).y, top(at_gap), "gap")),
            edge: wedge,
            unsound: seat.proportions().unsound,
        })
    }
}

/// How far a chord may lie off its arc, in millimetres of the object.
const SAG: f64 = 0.004;
