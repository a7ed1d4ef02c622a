//! The gripping parts of a body side by side at one scale.

use super::scaled_draft::{Look, ScaledDraft, upper};
use super::setup::Proportions;
use crate::catalogue::Part;
use crate::grip::{Collet, Geometry, Socket, SpreadingCone, Wedge};
use crate::sketch::draft::{Caption, fit};
use crate::sketch::drawing::Drawing;
use crate::sketch::letters::Anchor;
use crate::sketch::options::{Detail, Options};
use crate::sketch::outline::Outline;
use crate::sketch::plane::at;
use crate::sketch::scale::Scale;
use std::sync::Arc;

/// The gripping parts that go into one body, side by side at one scale: above the axis cut open, below
/// it seen from outside, each with its number.
///
/// Sizes come from the parts' geometry; of collets, the large end is that of the body's seat.
#[must_use]
pub fn line_up(body: &Part, parts: &[Arc<Part>], options: &Options) -> Drawing {
    let profiles: Vec<PartProfile> =
        parts.iter().enumerate().map(|(index, part)| PartProfile::of(index, part, body)).collect();
    let height = profiles.iter().map(|profile| 2.0 * profile.reach).fold(1.0, f64::max);
    let length: f64 = profiles.iter().map(|profile| profile.length).sum::<f64>().max(1.0);
    let scales = Scale::below((options.width.mm() / length).min(options.height.mm() / height));
    let less =
        [Detail::Full, Detail::Card, Detail::Bare].into_iter().filter(|detail| *detail <= options.detail);
    for detail in less {
        let options = Options { detail, ..*options };
        let found = fit(&scales, |scale| compose(&profiles, parts, &options, scale).draft);
        if let Some((scale, draft)) = found
            && draft.fits()
        {
            return draft.finish(caption(&profiles, parts, body, scale, &options));
        }
    }
    let options = Options { detail: Detail::Bare, ..*options };
    let scale = Scale(scales.last().map_or(0.01, |scale| scale.0));
    compose(&profiles, parts, &options, scale).draft.finish(caption(&profiles, parts, body, scale, &options))
}

/// A gripping part lying along the axis, its small end at x = 0.
struct PartProfile {
    look: Look,
    length: f64,
    reach: f64,
    /// Radii at the small and the large end, of the hole; a wedge has thicknesses and no hole.
    small: f64,
    large: f64,
    hole: Option<f64>,
    /// Radius of the hole at the large end, where it is not that at the small end.
    wide_hole: Option<f64>,
    slit: Option<f64>,
    known: Proportions,
}

impl PartProfile {
    fn of(index: usize, part: &Part, body: &Part) -> Self {
        let look = Look::of(index, part);
        match &part.geometry {
            Some(Geometry::Collet(collet)) => Self::collet(look, collet, body),
            Some(Geometry::SpreadingCone(cone)) => Self::spreading(look, cone),
            Some(Geometry::Wedge(wedge)) => Self::wedge(look, wedge),
            Some(Geometry::Socket(socket)) => Self::socket(look, socket),
            _ => Self {
                look,
                length: 30.0,
                reach: 10.0,
                small: 10.0,
                large: 10.0,
                hole: Some(5.0),
                wide_hole: None,
                slit: None,
                known: Proportions { assumed: true, unsound: false },
            },
        }
    }

    fn collet(look: Look, collet: &Collet, body: &Part) -> Self {
        let seat = if let Some(Geometry::Body(seat)) = &body.geometry { Some(seat) } else { None };
        let mut known = Proportions::default();
        let hole = known.length(collet.bore, 14.0) / 2.0;
        let length = known.length(collet.length, 8.0 * hole);
        let slope = known.slope(collet.half_angle.or(seat.and_then(|seat| seat.half_angle)), 0.1);
        let mouth =
            known.length(seat.and_then(|seat| seat.large_diameter), 4.0 * hole + 2.0 * length * slope) / 2.0;
        let out = known.recorded(collet.stand_out_at_bore).unwrap_or(0.0);
        let large = (mouth + out * slope).max(hole * 1.3 + length * slope);
        let slit = collet.slits.zip(collet.slit_width).map(|(_, width)| width.mm());
        Self {
            look,
            length,
            reach: large,
            small: large - length * slope,
            large,
            hole: Some(hole),
            wide_hole: None,
            slit,
            known,
        }
    }

    fn spreading(look: Look, cone: &SpreadingCone) -> Self {
        let mut known = Proportions::default();
        let hole = known.length(cone.hole_diameter, 8.0) / 2.0;
        let length = known.length(cone.length, 24.0);
        let slope = known.slope(cone.half_angle, 0.1);
        let large = known.length(cone.large_diameter, 2.0 * (hole + 1.0 + length * slope)) / 2.0;
        let small = (large - length * slope).max(hole + 0.1);
        let slit = cone.slits.zip(cone.slit_width).map(|(_, width)| width.mm());
        Self { look, length, reach: large, small, large, hole: Some(hole), wide_hole: None, slit, known }
    }

    fn wedge(look: Look, wedge: &Wedge) -> Self {
        let mut known = Proportions::default();
        let length = known.length(wedge.length, 80.0);
        let slope = known.slope(wedge.taper, 0.1);
        let large = known.length(wedge.thickness, 1.2 * length * slope).max(length * slope + 0.5);
        Self {
            look,
            length,
            reach: large / 2.0,
            small: large - length * slope,
            large,
            hole: None,
            wide_hole: None,
            slit: None,
            known,
        }
    }

    /// A seat is the other way round: its taper is the hole.
    fn socket(look: Look, socket: &Socket) -> Self {
        let mut known = Proportions::default();
        let length = known.length(socket.length, 36.0);
        let slope = known.slope(socket.half_angle, 0.1);
        let large = known.length(socket.large_diameter, 14.0 + 2.0 * length * slope) / 2.0;
        let throat = known.length(socket.throat_diameter, 2.0 * (large - length * slope).max(2.0)) / 2.0;
        let reach = large * 1.15;
        Self {
            look,
            length,
            reach,
            small: reach,
            large: reach,
            hole: Some(throat),
            wide_hole: Some(large),
            slit: None,
            known,
        }
    }

    fn draw(&self, scaled: &mut ScaledDraft, x: f64) {
        let end = x + self.length;
        let Some(hole) = self.hole else {
            let foot = self.large / 2.0;
            let corners = [(x, foot), (x, foot - self.small), (end, foot - self.large), (end, foot)];
            scaled.cut(self.look, &Outline::of(&corners));
            let near = end - scaled.paint_width();
            let top = foot - self.large + (end - near) * (self.large - self.small) / self.length;
            scaled.paint(self.look, &Outline::of(&[(near, foot), (near, top), corners[2], corners[3]]));
            return;
        };
        let wide = self.wide_hole.unwrap_or(hole);
        scaled.empty(&upper(&[(x, 0.0), (x, hole), (end, wide), (end, 0.0)]));
        scaled.cut(self.look, &upper(&[(x, hole), (x, self.small), (end, self.large), (end, wide)]));
        scaled.outside(self.look, &[(x, 0.0), (x, self.small), (end, self.large), (end, 0.0)]);
        let near = end - scaled.paint_width();
        let side = self.large - (end - near) * (self.large - self.small) / self.length;
        let bore = wide - (end - near) * (wide - hole) / self.length;
        scaled.paint(self.look, &upper(&[(near, bore), (near, side), (end, self.large), (end, wide)]));
        scaled.paint(self.look, &Outline::of(&[(near, 0.0), (near, side), (end, self.large), (end, 0.0)]));
        if let Some(slit) = self.slit {
            let (y, half) = (0.5 * self.small, slit.max(scaled.object(0.3)) / 2.0);
            scaled.fine(vec![
                vec![at(x, y - half), at(end, y - half)],
                vec![at(x, y + half), at(end, y + half)],
            ]);
        }
        scaled.edge(&[at(x, -hole), at(x, 0.0)]);
        scaled.edge(&[at(end, -wide), at(end, 0.0)]);
        scaled.axis(at(x, 0.0), at(end, 0.0));
    }
}

fn compose<'a>(
    profiles: &[PartProfile],
    parts: &[Arc<Part>],
    options: &'a Options<'a>,
    scale: Scale,
) -> ScaledDraft<'a> {
    let mut scaled = ScaledDraft::new(options, scale);
    scaled.draft.scene.unsound = profiles.iter().any(|profile| profile.known.unsound);
    let size = scaled.draft.size();
    let reach = profiles.iter().map(|profile| profile.reach).fold(0.0, f64::max);
    let foot = scaled.place(at(0.0, reach)).y + size;
    let mut x = 0.0;
    for (profile, part) in profiles.iter().zip(parts) {
        let wide =
            if options.speaks() { scaled.object(scaled.draft.lettering().width(&part.number)) } else { 0.0 };
        let room = profile.length.max(wide);
        profile.draw(&mut scaled, x + (room - profile.length) / 2.0);
        if options.speaks() {
            let middle = scaled.place(at(x + room / 2.0, 0.0)).x;
            scaled.draft.text_at_first_clear(&[(at(middle, foot), Anchor::Middle)], &part.number);
        }
        x += room + scaled.object(2.0 * size);
    }
    scaled
}

fn caption(
    profiles: &[PartProfile],
    parts: &[Arc<Part>],
    body: &Part,
    scale: Scale,
    options: &Options,
) -> Caption {
    let assumed = profiles.iter().any(|profile| profile.known.assumed);
    let scale = if assumed { "not to scale".to_owned() } else { scale.words(options.numerals) };
    let names: Vec<String> = parts.iter().map(|part| format!("{} {}", part.number, part.name)).collect();
    let title = format!("Parts that go into {}", body.name);
    let description = format!("Side by side at one scale: {}.", names.join("; "));
    Caption { scale, title, description }
}
