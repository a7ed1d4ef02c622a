//! What a text stands on: the colour of the paper with every fill that is drawn over it.

use super::ink::Shape;
use super::outline::{Piece, pieces};
use crate::colour::Srgb;
use usvg::tiny_skia_path::Point;
use usvg::{FillRule, Paint};

/// The colours that the paper has at a point of the face in turn, where fills are drawn over it: one, but
/// for gradients and patterns, of which each colour counts.
pub(super) fn colours<'a>(
    shapes: impl Iterator<Item = &'a Shape<'a>>,
    point: (f64, f64),
    bleed: f64,
) -> Vec<Srgb> {
    let mut grounds = vec![Srgb::WHITE];
    for shape in shapes.filter(|shape| covers(shape, point, bleed)) {
        let Some(fill) = shape.fill() else { continue };
        let opacity = fill.opacity().get() * shape.opacity;
        let paints = of_paint(fill.paint());
        let over =
            |ground: &Srgb| paints.iter().map(|paint| mixed(*paint, *ground, opacity)).collect::<Vec<_>>();
        grounds = grounds.iter().flat_map(over).collect();
        grounds.sort_unstable();
        grounds.dedup();
    }
    grounds
}

/// The colours of a paint; a pattern's paper is white.
pub(super) fn of_paint(paint: &Paint) -> Vec<Srgb> {
    let stops = |stops: &[usvg::Stop]| {
        stops.iter().map(|stop| mixed(srgb(stop.color()), Srgb::WHITE, stop.opacity().get())).collect()
    };
    match paint {
        Paint::Color(colour) => vec![srgb(*colour)],
        Paint::LinearGradient(gradient) => stops(gradient.stops()),
        Paint::RadialGradient(gradient) => stops(gradient.stops()),
        Paint::Pattern(pattern) => {
            let mut colours = vec![Srgb::WHITE];
            of_group(pattern.root(), &mut colours);
            colours
        }
    }
}

fn of_group(group: &usvg::Group, colours: &mut Vec<Srgb>) {
    for node in group.children() {
        match node {
            usvg::Node::Group(group) => of_group(group, colours),
            usvg::Node::Path(path) => {
                let fill = path.fill().map(usvg::Fill::paint);
                let stroke = path.stroke().map(usvg::Stroke::paint);
                let plain = fill.into_iter().chain(stroke).filter_map(|paint| match paint {
                    Paint::Color(colour) => Some(srgb(*colour)),
                    _ => None,
                });
                colours.extend(plain);
            }
            usvg::Node::Image(_) | usvg::Node::Text(_) => {}
        }
    }
}

fn srgb(colour: usvg::Color) -> Srgb {
    Srgb { red: colour.red, green: colour.green, blue: colour.blue }
}

/// A paint of some opacity over a ground.
pub(super) fn mixed(paint: Srgb, ground: Srgb, opacity: f32) -> Srgb {
    let mix = |paint: u8, ground: u8| {
        let channel = f32::from(paint) * opacity + f32::from(ground) * (1.0 - opacity);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between two channels")]
        let channel = channel.round() as u8;
        channel
    };
    Srgb {
        red: mix(paint.red, ground.red),
        green: mix(paint.green, ground.green),
        blue: mix(paint.blue, ground.blue),
    }
}

/// Whether a shape's fill covers a point of the face.
pub(super) fn covers(shape: &Shape<'_>, point: (f64, f64), bleed: f64) -> bool {
    let (Some(fill), Some(back)) = (shape.fill(), shape.path.abs_transform().invert()) else { return false };
    let seen = shape.bounds.holds(point) && shape.window.is_none_or(|window| window.holds(point));
    if !seen {
        return false;
    }
    #[allow(clippy::cast_possible_truncation, reason = "paths are kept in single precision")]
    let mut there = [Point::from_xy((point.0 + bleed) as f32, (point.1 + bleed) as f32)];
    back.map_points(&mut there);
    let mut turns = 0;
    pieces(shape.path.data(), &mut |piece| turns += turn(there[0], piece));
    match fill.rule() {
        FillRule::NonZero => turns != 0,
        FillRule::EvenOdd => turns % 2 != 0,
    }
}

/// Which way round a point a piece of an outline turns, where it crosses the ray that runs right from it.
fn turn(point: Point, Piece { from, to, .. }: Piece) -> i32 {
    if (from.y > point.y) == (to.y > point.y) {
        return 0;
    }
    let crossing = from.x + (point.y - from.y) / (to.y - from.y) * (to.x - from.x);
    match crossing > point.x {
        true if to.y > from.y => 1,
        true => -1,
        false => 0,
    }
}
