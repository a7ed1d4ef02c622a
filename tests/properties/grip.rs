//! Where gripping parts come to rest, found a second way: by intersecting the lines of the drawing.

use crate::fixtures::random_cases;
use fittingcards::grip::{
    Collet, GripLimits, HeldConductor, HeldConstruction, Outcome, Socket, SpreadingCone, Verdict, Wedge,
    WedgeBody, collet, spreading_cone, wedge,
};
use fittingcards::section::{Layer, LayerRole};
use fittingcards::units::{Angle, Length};
use geo::line_intersection::{LineIntersection, line_intersection};
use geo::{Coord, Intersects, Line, Polygon, coord, polygon};
use proptest::prelude::*;

const FAR: f64 = 1e4;

fn mm(value: f64) -> Option<Length> {
    Some(Length::from_mm(value))
}

fn degrees(value: f64) -> Option<Angle> {
    Some(Angle::from_degrees(value))
}

/// A wall that falls toward the axis: x is depth below the face, y is distance from the axis.
fn wall(at_face: f64, angle: f64) -> Line<f64> {
    let (sin, cos) = angle.to_radians().sin_cos();
    Line::new(
        coord! { x: -FAR * cos, y: at_face + FAR * sin },
        coord! { x: FAR * cos, y: at_face - FAR * sin },
    )
}

/// The same line, moved toward the axis at right angles to itself.
fn inset(line: Line<f64>, by: f64) -> Line<f64> {
    let along = line.delta();
    let length = along.x.hypot(along.y);
    let normal = coord! { x: along.y / length * by, y: -along.x / length * by };
    Line::new(line.start + normal, line.end + normal)
}

/// Depth at which a corner at that distance from the axis meets a line.
fn meets(line: Line<f64>, height: f64) -> f64 {
    let level = Line::new(coord! { x: -FAR, y: height }, coord! { x: FAR, y: height });
    match line_intersection(line, level) {
        Some(LineIntersection::SinglePoint { intersection: Coord { x, .. }, .. }) => x,
        other => panic!("{other:?}"),
    }
}

fn near(found: Option<Length>, expected: f64) -> bool {
    found.is_some_and(|found| (found.mm() - expected).abs() < 1e-6)
}

/// 1 + 6 + 12 + … wires of one diameter.
fn strand(layers: usize, wire: f64) -> (HeldConductor, Vec<Layer>) {
    let layers: Vec<Layer> = (0..layers)
        .map(|nth| Layer {
            wires: if nth == 0 { 1 } else { 6 * u32::try_from(nth).unwrap() },
            pitch_radius: Length::from_mm(wire * f64::from(u32::try_from(nth).unwrap())),
            wire_diameter: Length::from_mm(wire),
            role: LayerRole::Outer,
        })
        .collect();
    let across = wire * (2.0 * f64::from(u32::try_from(layers.len()).unwrap()) - 1.0);
    (
        HeldConductor {
            construction: HeldConstruction::Layers(layers.clone()),
            ..HeldConductor::solid(Length::from_mm(across))
        },
        layers,
    )
}

/// Wires of whole inner layers whose every wire lies within the hole, counted wire by wire.
fn wires_within(layers: &[Layer], hole: f64) -> u32 {
    let mut through = 0;
    for layer in layers {
        let fits = (0..layer.wires).all(|nth| {
            let angle = std::f64::consts::TAU * f64::from(nth) / f64::from(layer.wires);
            let centre =
                coord! { x: layer.pitch_radius.mm() * angle.cos(), y: layer.pitch_radius.mm() * angle.sin() };
            centre.x.hypot(centre.y) + layer.wire_diameter.mm() / 2.0 <= hole / 2.0 + 1e-9
        });
        if !fits {
            break;
        }
        through += layer.wires;
    }
    through
}

fn wedge_at(depth: f64, below: f64, thickness: f64, taper: f64, length: f64) -> Polygon<f64> {
    let thin = thickness - length * taper.to_radians().tan();
    polygon![
        (x: depth, y: below),
        (x: depth, y: below + thickness),
        (x: depth + length, y: below + thin),
        (x: depth + length, y: below),
    ]
}

fn metal_above(line: Line<f64>) -> Polygon<f64> {
    let top = line.start.y.max(line.end.y) + FAR;
    polygon![line.start, line.end, coord! { x: line.end.x, y: top }, coord! { x: line.start.x, y: top }]
}

proptest! {
    #![proptest_config(random_cases(300))]

    /// The corner of the cone's large face moves inward by half of what the bore closes, and rests
    /// where that height meets the seat.
    #[test]
    fn collet_rests_where_its_corner_meets_the_seat(
        bore in 6.0..30.0_f64,
        thinner in 0.0..2.0_f64,
        slits in 2_u32..6,
        width in 0.5..1.6_f64,
        angle in 3.0..12.0_f64,
        at_bore in -2.0..12.0_f64,
        seat_radius in 15.0..40.0_f64,
    ) {
        let part = Collet {
            bore: mm(bore),
            slits: Some(slits),
            slit_width: mm(width),
            half_angle: degrees(angle),
            stand_out_at_bore: mm(at_bore),
            ..Collet::default()
        };
        let outcome = collet(&part, None, &HeldConductor::solid(Length::from_mm(bore - thinner)), GripLimits::default());
        let seat = wall(seat_radius, angle);
        let corner = seat_radius + at_bore * angle.to_radians().tan();
        prop_assert!((meets(seat, corner) + at_bore).abs() < 1e-6);
        // The slits shut when the bore's circumference has lost their widths.
        let shut = (std::f64::consts::PI * bore - f64::from(slits) * width) / std::f64::consts::PI;
        let closed = thinner.min(bore - shut);
        prop_assert!(near(outcome.stand_out, -meets(seat, corner - closed / 2.0)), "{outcome:?}");
        prop_assert_eq!(outcome.verdict == Verdict::ClosesWithoutGripping, bore - thinner < shut);
    }

    /// The wires left outside lie on the socket's flank; the cone's corner rests on their inner side.
    #[test]
    fn spreading_cone_rests_on_the_wires(
        layers in 2_usize..5,
        wire in 1.5..4.0_f64,
        hole_in_wires in 0.5..8.0_f64,
        angle in 5.0..14.0_f64,
        cone_radius in 4.0..14.0_f64,
        gap in 0.5..10.0_f64,
        travel in 2.0..14.0_f64,
    ) {
        let (held, layers) = strand(layers, wire);
        let socket_radius = cone_radius + gap;
        let hole = hole_in_wires * wire;
        let part = SpreadingCone {
            large_diameter: mm(cone_radius * 2.0),
            half_angle: degrees(angle),
            hole_diameter: mm(hole),
            ..SpreadingCone::default()
        };
        let socket = Socket {
            large_diameter: mm(socket_radius * 2.0),
            half_angle: degrees(angle),
            throat_diameter: Some(held.overall_diameter + Length::from_mm(0.5)),
            travel: mm(travel),
            ..Socket::default()
        };
        let outcome = spreading_cone(&part, Some(&socket), &held).swap_remove(0);
        let through = wires_within(&layers, hole);
        prop_assert_eq!(outcome.wires_through_hole, Some(through));
        if through == 0 {
            prop_assert_eq!(outcome.verdict, Verdict::WillNotEnter);
            return Ok(());
        }
        let outside = layers.iter().scan(0, |count, layer| { *count += layer.wires; Some(*count) })
            .filter(|count| *count > through).count();
        let inner_side = inset(wall(socket_radius, angle), wire * f64::from(u32::try_from(outside).unwrap()));
        let depth = meets(inner_side, cone_radius);
        prop_assert!(near(outcome.depth, depth), "{outcome:?} {depth}");
        prop_assert!(near(outcome.stand_out, -depth.min(travel)));
        prop_assert_eq!(outcome.verdict, seated(outside > 0, depth, travel));
    }

    /// The wedge lies on the wire and slides until its corner meets the sloping wall; any deeper and
    /// the two bodies would overlap.
    #[test]
    fn wedge_slides_until_it_meets_the_wall(
        thickness in 8.0..20.0_f64,
        taper in 3.0..12.0_f64,
        across in 6.0..18.0_f64,
        gap in -3.0..3.0_f64,
        travel in 2.0..20.0_f64,
    ) {
        let length = 80.0;
        prop_assume!(thickness > length * taper.to_radians().tan());
        let mouth = thickness + across + gap;
        let part = Wedge { thickness: mm(thickness), taper: degrees(taper), length: mm(length), ..Wedge::default() };
        let body = WedgeBody { mouth: mm(mouth), taper: degrees(taper), travel: mm(travel), ..WedgeBody::default() };
        let outcome = wedge(&part, Some(&body), &HeldConductor::solid(Length::from_mm(across)));
        let slope = wall(mouth, taper);
        let depth = meets(slope, across + thickness);
        prop_assert!(near(outcome.depth, depth), "{outcome:?} {depth}");
        let metal = metal_above(slope);
        prop_assert!(metal.intersects(&wedge_at(depth + 0.01, across, thickness, taper, length)));
        prop_assert!(!metal.intersects(&wedge_at(depth - 0.01, across, thickness, taper, length)));
        let expected = if -depth > length { Verdict::WillNotEnter } else { seated(true, depth, travel) };
        prop_assert_eq!(outcome.verdict, expected);
    }

    /// What holds within wider tolerances holds within narrower ones: widening them makes nothing grip.
    #[test]
    fn wider_tolerances_make_nothing_grip(
        bore in 13.0..16.0_f64,
        large in 15.0..24.0_f64,
        hole in 2.0..14.0_f64,
        thickness in 11.0..15.0_f64,
        narrow in proptest::array::uniform4(0.0..0.2_f64),
        wider in proptest::array::uniform4(0.0..0.3_f64),
    ) {
        let (held, _) = strand(3, 2.8);
        let judged = |by: [f64; 4]| -> [Vec<Outcome>; 3] {
            let held = held.clone().with_tolerances(
                Some(Length::from_mm(by[0])),
                Some(Length::from_mm(by[1])),
            );
            let cone = Collet {
                bore: mm(bore),
                bore_tolerance: mm(by[2]),
                slits: Some(3),
                slit_width: mm(1.0),
                slit_width_tolerance: mm(by[3]),
                half_angle: degrees(5.0),
                ..Collet::default()
            };
            let spreading = SpreadingCone {
                large_diameter: mm(large),
                large_diameter_tolerance: mm(by[2]),
                half_angle: degrees(8.0),
                hole_diameter: mm(hole),
                hole_diameter_tolerance: mm(by[3]),
                slits: Some(2),
                slit_width: mm(1.0),
                ..SpreadingCone::default()
            };
            let socket = Socket {
                large_diameter: mm(24.6),
                half_angle: degrees(8.0),
                throat_diameter: mm(14.5),
                travel: mm(8.0),
                travel_tolerance: mm(by[3]),
                ..Socket::default()
            };
            let flat = Wedge {
                thickness: mm(thickness),
                thickness_tolerance: mm(by[2]),
                taper: degrees(6.0),
                length: mm(80.0),
                ..Wedge::default()
            };
            let body = WedgeBody {
                mouth: mm(27.0),
                mouth_tolerance: mm(by[3]),
                taper: degrees(6.0),
                travel: mm(12.0),
                ..WedgeBody::default()
            };
            [
                vec![collet(&cone, None, &held, GripLimits::default())],
                spreading_cone(&spreading, Some(&socket), &held),
                vec![wedge(&flat, Some(&body), &held)],
            ]
        };
        let before = judged(narrow);
        let after = judged([0, 1, 2, 3].map(|nth| narrow[nth] + wider[nth]));
        for (before, after) in before.iter().zip(&after) {
            let gripped = |one: &Outcome| before.iter().any(|other| {
                other.wires_through_hole == one.wires_through_hole && other.verdict == Verdict::Grips
            });
            for one in after.iter().filter(|one| one.verdict == Verdict::Grips) {
                prop_assert!(gripped(one), "{before:?} {after:?}");
            }
        }
    }

    /// A thinner conductor never makes a collet or a wedge stand out further.
    #[test]
    fn thinner_conductors_let_parts_go_deeper(one in 8.0..16.0_f64, two in 8.0..16.0_f64) {
        let (thin, thick) = (one.min(two), one.max(two));
        let part = Collet {
            bore: mm(14.3),
            pieces: Some(3),
            slits: Some(3),
            slit_width: mm(1.0),
            half_angle: degrees(5.0),
            stand_out_at_bore: mm(6.0),
            ..Collet::default()
        };
        let stands = |across: f64| -> Outcome {
            collet(&part, None, &HeldConductor::solid(Length::from_mm(across)), GripLimits::default())
        };
        prop_assert!(stands(thin).stand_out <= stands(thick).stand_out);
    }
}

fn seated(wires_outside: bool, depth: f64, travel: f64) -> Verdict {
    if !wires_outside || depth > travel {
        Verdict::ClosesWithoutGripping
    } else if depth < 0.0 {
        Verdict::StandsProud
    } else {
        Verdict::Grips
    }
}
