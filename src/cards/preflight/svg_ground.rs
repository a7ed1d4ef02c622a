//! What a text in SVG of a layout's own stands on: its ground with every fill that is drawn over it.

use super::svg_ink::Shape;
use crate::colour::Srgb;
use kurbo::{BezPath, Point, Shape as _};
use usvg::tiny_skia_path::PathSegment;
use usvg::{FillRule, Paint};

/// The colours that a ground has at a point in turn, where fills are drawn over it: one, but for gradients and
/// patterns, of which each colour counts.
pub(super) fn colours<'a>(
    shapes: impl Iterator<Item = &'a Shape<'a>>,
    point: Point,
    ground: Srgb,
) -> Vec<Srgb> {
    let mut grounds = vec![ground];
    for shape in shapes.filter(|shape| covers(shape, point)) {
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
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between two channels")]
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
pub(super) fn covers(shape: &Shape<'_>, point: Point) -> bool {
    let Some(fill) = shape.fill() else { return false };
    let seen = shape.bounds.contains(point) && shape.window.is_none_or(|window| window.contains(point));
    if !seen {
        return false;
    }
    let turns = outline(shape).winding(point);
    match fill.rule() {
        FillRule::NonZero => turns != 0,
        FillRule::EvenOdd => turns % 2 != 0,
    }
}

/// A shape's path on the face.
pub(super) fn outline(shape: &Shape<'_>) -> BezPath {
    let at = |point: usvg::tiny_skia_path::Point| Point::new(f64::from(point.x), f64::from(point.y));
    let mut path = BezPath::new();
    for segment in shape.path.data().segments() {
        match segment {
            PathSegment::MoveTo(to) => path.move_to(at(to)),
            PathSegment::LineTo(to) => path.line_to(at(to)),
            PathSegment::QuadTo(bend, to) => path.quad_to(at(bend), at(to)),
            PathSegment::CubicTo(one, two, to) => path.curve_to(at(one), at(two), at(to)),
            PathSegment::Close => path.close_path(),
        }
    }
    path.apply_affine(shape.transform);
    path
}
