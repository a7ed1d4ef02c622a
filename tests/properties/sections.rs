//! What holds for every conductor: scaling, wear, wires side by side, and no harm from hostile numbers.

use crate::fixtures::random_cases;
use fittingcards::section::{
    Composite, Construction, Grooved, Group, Layout, Profile, Rope, RopeCore, Section, Strands, WearHeights,
    compute, height_at_flat_width, height_at_loss, profile, round_profile, wear_table, wires,
    with_wire_tolerance, worn,
};
use fittingcards::units::{Angle, Length, Stress};
use proptest::prelude::*;

fn group(strands: Strands, wire: f64) -> Group {
    Group { strands, wire_diameter: Length::from_mm(wire), lay_ratios: Vec::new() }
}

fn usual() -> impl Strategy<Value = Strands> {
    prop::sample::select(vec![1_u32, 2, 3, 4, 7, 12, 19, 37, 61, 91]).prop_map(Strands::Wires)
}

/// A centre and layers that leave room: each has at most six wires more than the one inside it.
fn layers() -> impl Strategy<Value = Vec<u32>> {
    (1_u32..=5, prop::collection::vec(0_u32..=6, 0..5)).prop_map(|(centre, more)| {
        let mut counts = vec![centre];
        for more in more {
            let fits = if counts.len() == 1 && centre == 1 { 6 } else { counts[counts.len() - 1] + more };
            counts.push(fits);
        }
        counts
    })
}

fn rope() -> impl Strategy<Value = (String, RopeCore)> {
    use RopeCore::{Fibre, Iwrc, Wsc};
    let ropes = [
        ("1x7", Wsc),
        ("1x19", Wsc),
        ("6x7", Fibre),
        ("7x7", Wsc),
        ("7x19", Wsc),
        ("6x19M", Fibre),
        ("6x19", Iwrc),
        ("6x36WS", Iwrc),
        ("18x7", Wsc),
    ];
    prop::sample::select(ropes.map(|(class, core)| (class.to_owned(), core)).to_vec())
}

fn grooved(scale: f64) -> impl Strategy<Value = Grooved> {
    (10.0..16.0, 0.45..0.65, 0.30..0.45, 0.0..0.6, 20.0..40.0, 40.0..60.0).prop_map(
        move |(height, apex_width, apex_depth, fillet, lower, upper): (f64, f64, f64, f64, f64, f64)| {
            Grooved {
                height: Length::from_mm(height * scale),
                width: Length::from_mm(height * scale),
                apex_width: Length::from_mm(height * apex_width * scale),
                apex_depth: Length::from_mm(height * apex_depth * scale),
                fillet: Length::from_mm(fillet.max(0.05) * scale),
                lower_flank: Angle::from_degrees(lower),
                upper_flank: Angle::from_degrees(upper),
            }
        },
    )
}

/// A sound construction, every length of it multiplied by a scale.
fn construction(scale: f64) -> impl Strategy<Value = Construction> {
    let mm = move |value: f64| Length::from_mm(value * scale);
    let solid = (1.0..20.0).prop_map(move |d| Construction::Solid { diameter: mm(d) });
    let tube = (10.0..100.0, 0.02..0.5)
        .prop_map(move |(d, part)| Construction::Tube { outside_diameter: mm(d), wall: mm(d * part) });
    let bar = (5.0..80.0, 5.0..80.0, 0.0..2.5).prop_map(move |(width, thickness, corner)| {
        Construction::Bar { width: mm(width), thickness: mm(thickness), corner_radius: mm(corner) }
    });
    let usual =
        (usual(), 1.0..5.0).prop_map(move |(strands, d)| Construction::Stranded(group(strands, d * scale)));
    let layers = (layers(), 1.0..5.0)
        .prop_map(move |(counts, d)| Construction::Stranded(group(Strands::Layers(counts), d * scale)));
    let composite = (prop::sample::select(vec![(6, 1), (12, 7), (18, 1), (30, 7), (54, 7)]), 1.5..4.0)
        .prop_map(move |((outer, core), d)| {
            let wires = |count| group(Strands::Wires(count), d * scale);
            Construction::Composite(Composite { core: wires(core), core_material: None, outer: wires(outer) })
        });
    let rope = (rope(), 2.0..40.0).prop_map(move |((class, core), d)| {
        Construction::Rope(Rope { class, core, diameter: mm(d), grade: Some(Stress::from_n_per_mm2(1570.0)) })
    });
    prop_oneof![
        solid,
        tube,
        bar,
        usual,
        layers,
        composite,
        rope,
        grooved(scale).prop_map(Construction::Grooved)
    ]
}

fn scaled(construction: &Construction, factor: f64) -> Construction {
    let group = |group: &Group| Group { wire_diameter: group.wire_diameter * factor, ..group.clone() };
    match construction {
        Construction::Solid { diameter } => Construction::Solid { diameter: *diameter * factor },
        Construction::Stranded(wires) => Construction::Stranded(group(wires)),
        Construction::Composite(composite) => Construction::Composite(Composite {
            core: group(&composite.core),
            core_material: None,
            outer: group(&composite.outer),
        }),
        Construction::Rope(rope) => {
            Construction::Rope(Rope { diameter: rope.diameter * factor, ..rope.clone() })
        }
        Construction::Grooved(wire) => Construction::Grooved(Grooved {
            height: wire.height * factor,
            width: wire.width * factor,
            apex_width: wire.apex_width * factor,
            apex_depth: wire.apex_depth * factor,
            fillet: wire.fillet * factor,
            ..wire.clone()
        }),
        Construction::Tube { outside_diameter, wall } => {
            Construction::Tube { outside_diameter: *outside_diameter * factor, wall: *wall * factor }
        }
        Construction::Bar { width, thickness, corner_radius } => Construction::Bar {
            width: *width * factor,
            thickness: *thickness * factor,
            corner_radius: *corner_radius * factor,
        },
    }
}

/// Wires and regions as circles: x, y, radius.
fn circles(layout: &Layout) -> Vec<(f64, f64, f64)> {
    let wires = layout.wires.iter().map(|wire| (wire.centre, wire.diameter));
    let regions = layout.regions.iter().map(|region| (region.centre, region.diameter));
    wires.chain(regions).map(|(at, across)| (at.x.mm(), at.y.mm(), across.mm() / 2.0)).collect()
}

fn is_sound(section: &Section) -> bool {
    section.metal.is_positive()
        && section.overall_diameter.is_positive()
        && section.metal.mm2() <= section.circle.mm2() * (1.0 + 1e-9)
        && section.breaking_load.is_none_or(|load| load.is_positive())
        && section.mass.is_none_or(|mass| mass.is_positive())
        && section.layers.iter().all(|layer| layer.pitch_radius.is_finite() && layer.wires > 0)
}

/// Numbers that nobody means, and some that somebody may.
fn hostile() -> impl Strategy<Value = f64> {
    prop_oneof![
        prop::sample::select(vec![
            f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
            0.0,
            -0.0,
            -1.0,
            f64::MIN_POSITIVE,
            1e-300,
            1e-3,
            1e300,
            f64::MAX,
        ]),
        any::<f64>(),
        0.01..100.0,
    ]
}

fn hostile_construction() -> impl Strategy<Value = Construction> {
    let mm = |value: f64| Length::from_mm(value);
    let numbers = prop::collection::vec(hostile(), 7);
    let counts = prop::collection::vec(prop_oneof![0_u32..100, any::<u32>()], 0..6);
    let class = prop_oneof!["[0-9]{0,9}x[0-9]{0,9}[A-Z]{0,2}", "\\PC{0,12}"];
    (0..9_u8, numbers, counts, class).prop_map(move |(kind, n, counts, class)| {
        let group = |index: usize| Group {
            strands: if kind % 2 == 0 {
                Strands::Layers(counts.clone())
            } else {
                Strands::Wires(counts.first().copied().unwrap_or(0))
            },
            wire_diameter: mm(n[index]),
            lay_ratios: if kind > 5 { vec![n[5], n[6]] } else { Vec::new() },
        };
        match kind {
            0 => Construction::Solid { diameter: mm(n[0]) },
            1 => Construction::Tube { outside_diameter: mm(n[0]), wall: mm(n[1]) },
            2 => Construction::Bar { width: mm(n[0]), thickness: mm(n[1]), corner_radius: mm(n[2]) },
            3 | 6 => Construction::Stranded(group(0)),
            4 | 7 => {
                Construction::Composite(Composite { core: group(0), core_material: None, outer: group(1) })
            }
            5 => Construction::Rope(Rope {
                class,
                core: RopeCore::Wsc,
                diameter: mm(n[0]),
                grade: Some(Stress::from_n_per_mm2(n[1])),
            }),
            _ => Construction::Grooved(Grooved {
                height: mm(n[0]),
                width: mm(n[1]),
                apex_width: mm(n[2]),
                apex_depth: mm(n[3]),
                fillet: mm(n[4]),
                lower_flank: Angle::from_degrees(n[5]),
                upper_flank: Angle::from_degrees(n[6]),
            }),
        }
    })
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs())
}

/// A wear height between two parts of a profile's own.
fn cut(profile: &Profile, part: f64) -> Length {
    profile.height * part
}

proptest! {
    #![proptest_config(random_cases(256))]

    /// Lengths grow with the scale, sections with its square.
    #[test]
    fn scaling_by_k_scales_lengths_by_k_and_sections_by_its_square(one in construction(1.0), factor in 0.2..5.0_f64) {
        let (small, large) = (compute(&one, None).unwrap(), compute(&scaled(&one, factor), None).unwrap());
        prop_assert!(near(large.metal.mm2(), small.metal.mm2() * factor * factor), "{small:?} {large:?}");
        prop_assert!(near(large.overall_diameter.mm(), small.overall_diameter.mm() * factor));
        prop_assert!(near(large.fill_ratio, small.fill_ratio));
        prop_assert_eq!(small.neck.is_some(), large.neck.is_some());
        if let Some((small, large)) = small.neck.zip(large.neck) {
            prop_assert!(near(large.mm(), small.mm() * factor));
        }
    }

    /// What is computed of a sound construction is sound, and its metal is inside its circle.
    #[test]
    fn metal_is_inside_the_circle(one in construction(1.0)) {
        prop_assert!(is_sound(&compute(&one, None).unwrap()));
    }

    /// Wires lie side by side, all within the circle on the overall diameter.
    #[test]
    fn wires_never_overlap_and_all_lie_in_the_overall_circle(one in construction(1.0)) {
        let section = compute(&one, None).unwrap();
        let circles = circles(&wires(&one).unwrap());
        for (index, a) in circles.iter().enumerate() {
            prop_assert!(a.0.hypot(a.1) + a.2 <= section.overall_diameter.mm() / 2.0 + 1e-6, "{one:?}");
            for b in &circles[..index] {
                prop_assert!((a.0 - b.0).hypot(a.1 - b.1) >= a.2 + b.2 - 1e-6, "{one:?}: {a:?} {b:?}");
            }
        }
    }

    /// A strand's wires are those of its layers, and one layer more adds its own and nothing else.
    #[test]
    fn adding_a_layer_adds_its_wires(counts in layers(), wire in 1.0..5.0_f64) {
        let strand = |counts: &[u32]| Construction::Stranded(group(Strands::Layers(counts.to_vec()), wire));
        let all = compute(&strand(&counts), None).unwrap();
        prop_assert_eq!(all.layers.iter().map(|layer| layer.wires).collect::<Vec<_>>(), counts.clone());
        prop_assert_eq!(wires(&strand(&counts)).unwrap().wires.len(), counts.iter().sum::<u32>() as usize);
        if counts.len() > 1 {
            let (last, inner) = counts.split_last().unwrap();
            let inner = compute(&strand(inner), None).unwrap();
            let added = Length::from_mm(wire).circle_area() * f64::from(*last);
            prop_assert!(near(all.metal.mm2(), (inner.metal + added).mm2()));
            prop_assert!(all.overall_diameter > inner.overall_diameter);
        }
    }

    /// The lower the wire, the less is left; heights found from losses and flats are the heights they came from.
    #[test]
    fn wear_is_monotonic_and_its_inverses_invert(wire in grooved(1.0), a in 0.05..1.0_f64, b in 0.05..1.0_f64) {
        let Ok(profile) = profile(&wire) else { return Ok(()) };
        let (low, high) = (cut(&profile, a.min(b)), cut(&profile, a.max(b)));
        let (less, more) = (worn(&profile, low).unwrap(), worn(&profile, high).unwrap());
        prop_assert!(less.section <= more.section && less.removed >= more.removed);
        prop_assert!(near((less.section + less.removed).mm2(), profile.area.mm2()));
        let again = height_at_loss(&profile, more.removed).unwrap();
        prop_assert!((again - high).abs() < Length::from_mm(1e-5), "{again:?} {high:?}");
        let lip = profile.groove.unwrap().lower_lip_height;
        if high > (profile.height / 2.0).max(lip) {
            let again = height_at_flat_width(&profile, more.flat_width).unwrap();
            prop_assert!((again - high).abs() < Length::from_mm(1e-6), "{again:?} {high:?}");
        }
    }

    /// Below the lip a grooved wire wears like the round one on its height.
    #[test]
    fn below_the_lip_wear_is_a_segment_of_the_circle(wire in grooved(1.0), part in 0.0..1.0_f64) {
        let Ok(grooved) = profile(&wire) else { return Ok(()) };
        let round = round_profile(wire.height).unwrap();
        let lip = grooved.groove.unwrap().lower_lip_height;
        let height = lip + (wire.height - lip) * part;
        let (a, b) = (worn(&grooved, height).unwrap(), worn(&round, height).unwrap());
        prop_assert!((a.removed - b.removed).abs().mm2() < 1e-9 * round.area.mm2());
        prop_assert!((a.flat_width - b.flat_width).abs() < Length::from_mm(1e-9));
    }

    /// A wear table runs from the new wire downward, and carries a row for the stop height.
    #[test]
    fn wear_tables_run_downward(diameter in 6.0..16.0_f64, stop in 0.3..0.98_f64, rows in 1..30_usize) {
        let profile = round_profile(Length::from_mm(diameter)).unwrap();
        let stop = cut(&profile, stop);
        let marks = WearHeights {
            basis: profile.area, plan: None, replace: None, stop: Some(stop), limit_percent: None, most_rows: rows,
        };
        let table = wear_table(&profile, &marks).unwrap();
        prop_assert!(table.rows.windows(2).all(|pair| pair[0].height > pair[1].height));
        prop_assert!(table.rows.windows(2).all(|pair| pair[0].percent <= pair[1].percent));
        let past = table.rows.iter().filter(|row| row.height < stop - Length::from_mm(1e-6)).count();
        prop_assert_eq!(past, 2);
    }

    /// NaN, negative, huge and tiny numbers are refused, or what comes of them is sound; nothing panics.
    #[test]
    fn hostile_numbers_give_errors_never_a_wrong_number(one in hostile_construction(), height in hostile()) {
        let section = compute(&one, None);
        if let Ok(section) = &section {
            prop_assert!(is_sound(section), "{one:?}: {section:?}");
        }
        if let Err(error) = &section {
            prop_assert!(error.field.starts_with("construction."), "{error:?}");
            prop_assert!(!error.message.is_empty());
        }
        if let Ok(layout) = wires(&one) {
            prop_assert!(circles(&layout).iter().all(|(x, y, r)| x.is_finite() && y.is_finite() && *r > 0.0));
        }
        let height = Length::from_mm(height);
        let _ = with_wire_tolerance(&one, None, height);
        if let Construction::Grooved(wire) = &one
            && let Ok(profile) = profile(wire)
            && let Ok(worn) = worn(&profile, height)
        {
            prop_assert!(worn.section.is_finite() && worn.section <= profile.area);
        }
    }
}
