//! Sections found a second way: as areas of polygons, cut and joined by a geometry library.

use crate::fixtures::random_cases;
use fittingcards::section::{Construction, Grooved, Group, Segment, Strands, compute, profile, wires, worn};
use fittingcards::units::{Angle, Length};
use geo::{Area, BooleanOps, Centroid, Coord, LineString, MultiPolygon, Polygon, coord, unary_union};
use proptest::prelude::*;
use std::f64::consts::{PI, TAU};

/// A circle as a polygon of equal area.
fn disc(centre: Coord<f64>, radius: f64, corners: u32) -> Polygon<f64> {
    let step = TAU / f64::from(corners);
    let radius = radius * (step / step.sin()).sqrt();
    let corner = |index: u32| {
        let (sin, cos) = (step * f64::from(index)).sin_cos();
        centre + coord! { x: radius * cos, y: radius * sin }
    };
    Polygon::new(LineString::new((0..corners).map(corner).collect()), Vec::new())
}

fn polygon(corners: Vec<Coord<f64>>) -> Polygon<f64> {
    Polygon::new(LineString::new(corners), Vec::new())
}

/// A half plane above a height, as far as the wire reaches.
fn above(level: f64) -> Polygon<f64> {
    let far = 100.0;
    polygon(vec![
        coord! { x: -far, y: level },
        coord! { x: far, y: level },
        coord! { x: far, y: far },
        coord! { x: -far, y: far },
    ])
}

/// The groove on one side: a wedge beyond the fillet's feet, joined with the fillet's disc.
fn groove(wire: &Grooved, side: f64) -> MultiPolygon<f64> {
    let apex = coord! { x: wire.apex_width.mm() / 2.0, y: wire.height.mm() / 2.0 - wire.apex_depth.mm() };
    let (lower, upper) = (wire.lower_flank.radians(), wire.upper_flank.radians());
    let along = |angle: f64, length: f64| coord! { x: apex.x + length * angle.cos(), y: apex.y + length * angle.sin() };
    let half = f64::midpoint(lower, upper);
    let foot = wire.fillet.mm() / half.tan();
    let centre = along((upper - lower) / 2.0, wire.fillet.mm() / half.sin());
    let mirrored = |corner: Coord<f64>| coord! { x: side * corner.x, y: corner.y };
    let far = 40.0;
    let wedge = [along(-lower, foot), along(-lower, far), along(upper, far), along(upper, foot)];
    let wedge = polygon(wedge.into_iter().map(mirrored).collect());
    wedge.union(&disc(mirrored(centre), wire.fillet.mm(), 500))
}

fn metal(wire: &Grooved) -> MultiPolygon<f64> {
    let circle = disc(coord! { x: 0.0, y: 0.0 }, wire.height.mm() / 2.0, 2000);
    circle.difference(&groove(wire, 1.0)).difference(&groove(wire, -1.0))
}

/// An outline of arcs and lines as a polygon.
fn outline(segments: &[Segment]) -> Polygon<f64> {
    let corners = segments.iter().flat_map(|segment| match *segment {
        Segment::Line { start, .. } => vec![coord! { x: start.x.mm(), y: start.y.mm() }],
        Segment::Arc { centre, radius, start, end, .. } => (0..1000)
            .map(|index| {
                let angle = start.radians() + (end - start).radians() * f64::from(index) / 1000.0;
                coord! { x: centre.x.mm() + radius.mm() * angle.cos(), y: centre.y.mm() + radius.mm() * angle.sin() }
            })
            .collect(),
    });
    polygon(corners.collect())
}

fn grooved() -> impl Strategy<Value = Grooved> {
    (9.0..16.0, 0.45..0.65, 0.30..0.45, 0.1..0.6, 20.0..40.0, 40.0..60.0).prop_map(
        |(height, width, depth, fillet, lower, upper): (f64, f64, f64, f64, f64, f64)| Grooved {
            height: Length::from_mm(height),
            width: Length::from_mm(height),
            apex_width: Length::from_mm(height * width),
            apex_depth: Length::from_mm(height * depth),
            fillet: Length::from_mm(fillet),
            lower_flank: Angle::from_degrees(lower),
            upper_flank: Angle::from_degrees(upper),
        },
    )
}

fn near(found: f64, expected: f64, part: f64) -> bool {
    (found - expected).abs() <= expected.abs() * part
}

proptest! {
    #![proptest_config(random_cases(200))]

    /// New and worn contact wires, above the lip as below it.
    #[test]
    fn contact_wires_have_the_area_of_their_polygon(wire in grooved(), part in 0.25..1.0_f64) {
        let Ok(profile) = profile(&wire) else { return Ok(()) };
        let new = metal(&wire);
        prop_assert!(near(profile.area.mm2(), new.unsigned_area(), 1e-5), "{wire:?}");
        prop_assert!(near(outline(&profile.segments).unsigned_area(), profile.area.mm2(), 1e-5));
        let centroid = new.centroid().unwrap();
        prop_assert!((profile.centroid.y.mm() - centroid.y()).abs() < 1e-4 && profile.centroid.x.mm().abs() < 1e-9);
        let height = wire.height * part;
        let left = worn(&profile, height).unwrap();
        let cut = new.intersection(&above(wire.height.mm() / 2.0 - height.mm()));
        prop_assert!(near(left.section.mm2(), cut.unsigned_area(), 1e-5), "{wire:?} {height:?}");
        prop_assert!(near(outline(&left.segments).unsigned_area(), left.section.mm2(), 1e-5));
    }

    /// Tubes and bars as a disc less a disc, and as a rectangle with discs in its corners.
    #[test]
    fn tubes_and_bars_have_the_area_of_their_polygon(d in 10.0..100.0_f64, part in 0.02..0.49_f64, corner in 0.1..4.0_f64) {
        let origin = coord! { x: 0.0, y: 0.0 };
        let tube = Construction::Tube { outside_diameter: Length::from_mm(d), wall: Length::from_mm(d * part) };
        let ring = disc(origin, d / 2.0, 1000).difference(&disc(origin, d / 2.0 - d * part, 1000));
        prop_assert!(near(compute(&tube, None).unwrap().metal.mm2(), ring.unsigned_area(), 1e-5));
        let bar = Construction::Bar {
            width: Length::from_mm(d),
            thickness: Length::from_mm(10.0),
            corner_radius: Length::from_mm(corner),
        };
        let (x, y) = (d / 2.0 - corner, 5.0 - corner);
        let block = |x: f64, y: f64| {
            polygon(vec![coord! { x: -x, y: -y }, coord! { x: x, y: -y }, coord! { x: x, y: y }, coord! { x: -x, y: y }])
        };
        let mut shapes = vec![block(x, 5.0), block(d / 2.0, y)];
        let corners = [(x, y), (-x, y), (x, -y), (-x, -y)];
        shapes.extend(corners.map(|(x, y)| disc(coord! { x: x, y: y }, corner, 500)));
        prop_assert!(near(compute(&bar, None).unwrap().metal.mm2(), unary_union(&shapes).unsigned_area(), 1e-5));
    }

    /// Strands as the union of their wires, so that an overlap would show.
    #[test]
    fn strands_have_the_area_of_the_union_of_their_wires(index in 0..7_usize, wire in 1.0..4.0_f64) {
        let counts = [1_u32, 2, 3, 4, 7, 12, 19];
        let strand = Construction::Stranded(Group {
            strands: Strands::Wires(counts[index]),
            wire_diameter: Length::from_mm(wire),
            lay_ratios: Vec::new(),
        });
        let layout = wires(&strand).unwrap();
        let discs: Vec<Polygon<f64>> = layout
            .wires
            .iter()
            .map(|wire| disc(coord! { x: wire.centre.x.mm(), y: wire.centre.y.mm() }, wire.diameter.mm() / 2.0, 720))
            .collect();
        prop_assert!(near(compute(&strand, None).unwrap().metal.mm2(), unary_union(&discs).unsigned_area(), 1e-4));
    }
}

/// The outline's arcs meet end to end and turn the way they say.
#[test]
fn an_outline_is_closed() {
    let wire = Grooved {
        height: Length::from_mm(12.34),
        width: Length::from_mm(12.34),
        apex_width: Length::from_mm(6.8),
        apex_depth: Length::from_mm(4.47),
        fillet: Length::from_mm(0.4),
        lower_flank: Angle::from_degrees(27.0),
        upper_flank: Angle::from_degrees(51.0),
    };
    let profile = profile(&wire).unwrap();
    for height in [12.34, 11.0, 8.0, 6.0, 5.5, 4.5, 3.0] {
        let segments = worn(&profile, Length::from_mm(height)).unwrap().segments;
        for (index, segment) in segments.iter().enumerate() {
            let (end, start) = (segment.end(), segments[(index + 1) % segments.len()].start());
            let gap = (end.x - start.x).mm().hypot((end.y - start.y).mm());
            assert!(gap < 1e-9, "{height}: {gap} after {segment:?}");
            if let Segment::Arc { start, end, .. } = segment {
                assert!((*end - *start).abs().radians() <= 2.0 * PI);
            }
        }
    }
}
