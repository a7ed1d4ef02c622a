//! The large ends of a body's gripping parts, looked at along the axis: paint, notches, bore, slits.

use super::scaled_draft::{Look, ScaledDraft};
use super::setup::Proportions;
use crate::catalogue::Part;
use crate::grip::{Collet, Geometry, SpreadingCone, Wedge};
use crate::sketch::draft::Caption;
use crate::sketch::drawing::Drawing;
use crate::sketch::letters::Anchor;
use crate::sketch::options::Options;
use crate::sketch::outline::{Outline, arc, circle, clipped};
use crate::sketch::plane::{Point, Vec2, at};
use crate::sketch::scale::Scale;
use std::f64::consts::{FRAC_PI_2, TAU};
use std::sync::Arc;

/// The large end of each gripping part, at true size where the room holds it, else at the largest round scale: the
/// paint of its mark with the notches in its rim, its bore, its slits, below it its stamp.
///
/// Nothing where a part has no round end, or the records lack its sizes.
#[must_use]
pub fn end_views(body: &Part, parts: &[Arc<Part>], options: &Options) -> Option<Drawing> {
    let ends: Vec<End> =
        parts.iter().enumerate().map(|(index, part)| End::of(index, part, body)).collect::<Option<_>>()?;
    for scale in Scale::below(1.0).into_iter().filter(|scale| scale.0 >= LEAST) {
        for columns in (1..=ends.len()).rev() {
            let draft = compose(&ends, columns, options, scale).draft;
            if draft.fits() && draft.complete {
                return Some(draft.finish(caption(body, parts, scale, options)));
            }
        }
    }
    None
}

/// The large end of one gripping part at true size: whole, or its lower half where the room is not high enough for the
/// whole; of a wedge, its thick end from the side. Nothing where the records lack its sizes or the room is too small.
#[must_use]
pub fn end_view(body: &Part, part: &Arc<Part>, options: &Options) -> Option<Drawing> {
    let mut scaled = ScaledDraft::new(options, Scale(1.0));
    match (&part.geometry, End::of(0, part, body)) {
        (Some(Geometry::Wedge(wedge)), _) => draw_thick_end(&mut scaled, Look::of(0, part), wedge)?,
        (_, Some(end)) => {
            let half = 2.0 * end.outer + 1.0 > options.height.mm();
            scaled.draft.scene.unsound = end.unsound;
            end.draw(&mut scaled, at(0.0, 0.0), half);
        }
        _ => return None,
    }
    let fits = scaled.draft.fits();
    let title = format!("{} {} at true size", part.number, part.name);
    let seen =
        if matches!(part.geometry, Some(Geometry::Wedge(_))) { "from the side" } else { "along the axis" };
    let mark = part.mark.as_ref().map_or_else(String::new, |mark| format!(", {}", mark.words()));
    let description = format!("Thick end of {} {}, seen {seen}{mark}.", part.number, part.name);
    let bounds = scaled.draft.bounds();
    fits.then(|| scaled.draft.finish_within(bounds, Caption { scale: "1:1".into(), title, description }))
}

/// So much of a wedge is drawn, in millimetres.
const THICK_END: f64 = 20.0;

fn draw_thick_end(scaled: &mut ScaledDraft, look: Look, wedge: &Wedge) -> Option<()> {
    let mut known = Proportions::default();
    let thick = known.recorded(wedge.thickness)?;
    let long = known.recorded(wedge.length)?.min(THICK_END);
    let slope = known.slope(wedge.taper, 0.1);
    scaled.draft.scene.unsound = known.unsound;
    let top = |x: f64| -(thick - (long - x) * slope);
    scaled.view(look, &Outline::of(&[(0.0, 0.0), (0.0, top(0.0)), (long, top(long)), (long, 0.0)]));
    let near = long - 3.0 * scaled.paint_width();
    scaled.paint(look, &Outline::of(&[(near, 0.0), (near, top(near)), (long, top(long)), (long, 0.0)]));
    Some(())
}

/// Smaller than this, notches can't be counted.
const LEAST: f64 = 0.3;

/// Half the width of a notch and its depth, in millimetres of the part.
const NOTCH: (f64, f64) = (0.9, 1.8);
/// The same on paper at least, so that it can be counted.
const NOTCH_ON_PAPER: (f64, f64) = (0.45, 0.9);

/// The large end of a part.
struct End {
    look: Look,
    stamp: String,
    notches: u32,
    /// Its radius, and that of its bore.
    outer: f64,
    bore: f64,
    /// How many slits, and how wide.
    slits: Option<(u32, f64)>,
    unsound: bool,
}

impl End {
    fn of(index: usize, part: &Part, body: &Part) -> Option<Self> {
        let mut known = Proportions::default();
        let (outer, bore, slits) = match part.geometry.as_ref()? {
            Geometry::Collet(collet) => collet_end(&mut known, collet, body)?,
            Geometry::SpreadingCone(cone) => cone_end(&mut known, cone)?,
            Geometry::Socket(socket) => {
                let bore = known.recorded(socket.large_diameter)? / 2.0;
                (bore + (0.14 * bore).max(2.2), bore, None)
            }
            _ => return None,
        };
        let stamp = if part.stamp.is_empty() { &part.number } else { &part.stamp };
        let notches = part.mark.as_ref().map_or(0, |mark| mark.notches);
        // No wall is left: a finding on the part says so, and there is nothing to draw.
        if outer <= bore {
            return None;
        }
        Some(Self {
            look: Look::of(index, part),
            stamp: stamp.clone(),
            notches,
            outer,
            bore,
            slits,
            unsound: known.unsound,
        })
    }

    /// The whole end, or what of it lies below its middle, where its notches are.
    fn draw(&self, scaled: &mut ScaledDraft, middle: Point, half: bool) {
        let seen = |ring: Vec<Point>| if half { clipped(&ring, |point| point.y - middle.y) } else { ring };
        let rim = seen(self.rim(scaled, middle));
        let face = Outline::new(rim).with_hole(seen(circle(middle, self.bore, super::axial::SAG)));
        scaled.view(self.look, &face);
        scaled.paint(self.look, &face);
        self.draw_slits(scaled, middle, half);
        scaled.outline(self.look, &face);
        if !half {
            scaled.axis(at(middle.x - self.outer, middle.y), at(middle.x + self.outer, middle.y));
        }
    }

    fn draw_slits(&self, scaled: &mut ScaledDraft, middle: Point, half: bool) {
        let (slits, width) = self.slits.unwrap_or((0, 0.0));
        let side = width.max(scaled.object(0.3)) / 2.0;
        for slit in 0..slits.min(12) {
            let way = Vec2::from_angle(FRAC_PI_2 + TAU * f64::from(slit) / f64::from(slits));
            if half && way.y < -0.01 {
                continue;
            }
            let (from, to, off) = (way * self.bore, way * self.outer, way.turn_90() * side);
            let corners = [from + off, to + off, to - off, from - off].map(|corner| middle + corner);
            scaled.empty(&Outline::new(corners.to_vec()));
            scaled.fine(vec![vec![corners[0], corners[1]], vec![corners[2], corners[3]]]);
        }
    }

    /// The rim, its notches side by side at the foot, right of the middle as on a mark's swatch.
    fn rim(&self, scaled: &ScaledDraft, middle: Point) -> Vec<Point> {
        let half = NOTCH.0.max(scaled.object(NOTCH_ON_PAPER.0)) / self.outer;
        let depth = NOTCH.1.max(scaled.object(NOTCH_ON_PAPER.1)).min(0.6 * (self.outer - self.bore));
        let mut points = Vec::new();
        let first = FRAC_PI_2 - 0.2;
        let mut angle = first;
        for _ in 0..self.notches.min(12) {
            let way = |by: f64| Vec2::from_angle(angle - by);
            points.push(middle + way(0.0) * self.outer);
            points.push(middle + way(half) * (self.outer - depth));
            points.push(middle + way(2.0 * half) * self.outer);
            angle -= 2.6 * half;
        }
        points.extend(arc(middle, self.outer, angle, first - TAU, super::axial::SAG));
        points
    }
}

type Ring = (f64, f64, Option<(u32, f64)>);

/// The large end of a collet is as wide as its seat in the body where it stands out as at its bore.
fn collet_end(known: &mut Proportions, collet: &Collet, body: &Part) -> Option<Ring> {
    let Some(Geometry::Body(seat)) = &body.geometry else { return None };
    let bore = known.recorded(collet.bore)? / 2.0;
    let slope = known.slope(collet.half_angle.or(seat.half_angle), 0.1);
    let out = known.recorded(collet.stand_out_at_bore).unwrap_or(0.0);
    let outer = known.recorded(seat.large_diameter)? / 2.0 + out * slope;
    Some((outer, bore, collet.slits.zip(collet.slit_width).map(|(slits, width)| (slits, width.mm()))))
}

fn cone_end(known: &mut Proportions, cone: &SpreadingCone) -> Option<Ring> {
    let (outer, hole) =
        (known.recorded(cone.large_diameter)? / 2.0, known.recorded(cone.hole_diameter)? / 2.0);
    Some((outer, hole, cone.slits.zip(cone.slit_width).map(|(slits, width)| (slits, width.mm()))))
}

/// The ends row by row, so many side by side, each above its stamp.
fn compose<'a>(ends: &[End], columns: usize, options: &'a Options<'a>, scale: Scale) -> ScaledDraft<'a> {
    let mut scaled = ScaledDraft::new(options, scale);
    scaled.draft.scene.unsound = ends.iter().any(|end| end.unsound);
    let size = scaled.draft.size();
    let gap = scaled.object(0.9 * size);
    let mut top = 0.0;
    for row in ends.chunks(columns) {
        let reach = row.iter().map(|end| end.outer).fold(0.0, f64::max);
        let mut left = 0.0;
        for end in row {
            let half = scaled.object(scaled.draft.lettering().width(&end.stamp) / 2.0).max(end.outer);
            let middle = at(left + half, top + reach);
            end.draw(&mut scaled, middle, false);
            let foot = scaled.place(at(middle.x, top + 2.0 * reach)) + Vec2::new(0.0, 0.95 * size);
            scaled.draft.text_at_first_clear(&[(foot, Anchor::Middle)], &end.stamp);
            left += 2.0 * half + gap;
        }
        top += 2.0 * reach + scaled.object(2.2 * size);
    }
    scaled
}

fn caption(body: &Part, parts: &[Arc<Part>], scale: Scale, options: &Options) -> Caption {
    let marked = |part: &Arc<Part>| {
        let mark = part.mark.as_ref().map_or_else(String::new, |mark| format!(", {}", mark.words()));
        format!("{} {}{mark}", part.number, part.name)
    };
    Caption {
        scale: scale.words(options.numerals),
        title: format!("Large ends of the parts that go into {}", body.name),
        description: format!(
            "Seen along the axis: {}.",
            parts.iter().map(marked).collect::<Vec<_>>().join("; ")
        ),
    }
}
