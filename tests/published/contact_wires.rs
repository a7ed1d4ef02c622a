//! Contact wires against the standards that describe them.

use super::table::{Row, Tally, rows};
use fittingcards::section::stated::contact_wire_rule;
use fittingcards::section::{
    Construction, Grooved, Material, compute, compute_for_size, contact_wire_strength, height_at_flat_width,
    height_at_loss, materials, profile, round_profile, worn, worn_metal,
};
use fittingcards::units::{Angle, Area, Density, Length, Stress, Temperature};

fn length(row: &Row, column: &str) -> Length {
    Length::from_mm(row.number(column).unwrap_or_else(|| panic!("no {column}")))
}

fn angle(row: &Row, column: &str) -> Angle {
    Angle::from_degrees(row.number(column).unwrap_or_else(|| panic!("no {column}")))
}

/// TB/T 2810, read in a reprint; the meaning of the letters was found by fitting.
#[test]
fn grooved_profiles_have_the_published_section_and_neck() {
    for row in rows(include_str!("contact_wire_profiles.csv")) {
        let profile = profile(&Grooved {
            height: length(&row, "A_height_mm"),
            width: length(&row, "B_width_mm"),
            apex_width: length(&row, "E_neck_width_apex_mm"),
            apex_depth: length(&row, "K_apex_depth_from_top_mm"),
            fillet: length(&row, "R_fillet_mm"),
            lower_flank: angle(&row, "G_lower_flank_deg"),
            upper_flank: angle(&row, "H_upper_flank_deg"),
        })
        .expect("a sound profile");
        let section = row.number("calc_mm2_published").expect("printed");
        let neck = length(&row, "D_neck_width_rounded_mm");
        let groove = profile.groove.expect("grooved");
        println!(
            "{}: {:.2} mm², neck {:.3} mm",
            row.text("designation"),
            profile.area.mm2(),
            groove.neck.mm()
        );
        assert!(
            (profile.area.mm2() - section).abs() <= 0.5,
            "{}: {:?}",
            row.text("designation"),
            profile.area
        );
        assert!(
            (groove.neck - neck).abs() <= Length::from_mm(0.02),
            "{}: {groove:?}",
            row.text("designation")
        );
    }
}

/// Plain circles, exact; the program's inverses lead back.
#[test]
fn worn_round_wires() {
    let mut tally = Tally::default();
    for row in rows(include_str!("worn_wire.csv")) {
        let profile = round_profile(length(&row, "diameter_mm")).expect("a size");
        let height = length(&row, "remaining_height_mm");
        let left = worn(&profile, height).expect("a height of this wire");
        let name = format!("{} at {}", row.text("designation"), height.mm());
        let mut compare = |column, value| tally.compare(&row, &name, column, Some(value), 1e-9);
        compare("area_left_analytic_mm2", left.section.mm2());
        compare("area_worn_away_mm2", left.removed.mm2());
        compare("loss_pct", left.percent_of(profile.area));
        compare("flat_width_mm", left.flat_width.mm());
        let by_loss = height_at_loss(&profile, left.removed).expect("a loss of this wire");
        let by_flat = height_at_flat_width(&profile, left.flat_width).expect("a flat of this wire");
        assert!((by_loss - height).abs() < Length::from_mm(1e-6), "{name}: {by_loss:?}");
        assert!((by_flat - height).abs() < Length::from_mm(1e-6), "{name}: {by_flat:?}");
    }
    tally.close("worn_wire.csv");
}

/// Built-in material of a row, where its figures are the row's own.
fn built_in(row: &Row) -> Option<&'static Material> {
    match row.text("material") {
        "Cu normal strength" => materials::find("copper-hard-drawn"),
        "Cu and CuAg high strength" => materials::find("copper-silver-0.1"),
        "CuMg0.2" => materials::find("copper-magnesium-0.2"),
        "CuMg0.5" => materials::find("copper-magnesium-0.5"),
        "CuCd0.7" => materials::find("copper-cadmium-0.7"),
        "CuCd1.0" => materials::find("copper-cadmium-1.0"),
        _ => None,
    }
}

/// A grooved wire with about so much metal: what the standard rates goes by the nominal section, not by this one.
fn wire(nominal: f64) -> Construction {
    let height = Length::from_mm((nominal * 1.33).sqrt());
    Construction::Grooved(Grooved {
        height,
        width: height,
        apex_width: Length::from_mm(5.6),
        apex_depth: Length::from_mm(4.0),
        fillet: Length::from_mm(0.4),
        lower_flank: Angle::from_degrees(27.0),
        upper_flank: Angle::from_degrees(51.0),
    })
}

/// Mass of so much metal of a density that the row's note names.
fn mass(row: &Row, nominal: f64) -> Option<f64> {
    let density = match row.text("standard") {
        "DIN 43140/43141" => 8900.0,
        "TB/T 2810 (China)" => 8940.0,
        _ => return None,
    };
    let copper = materials::find("copper-hard-drawn")?;
    let material = Material { density: Some(Density::from_kg_per_m3(density)), ..copper.clone() };
    let diameter = Area::from_mm2(nominal).circle_diameter();
    let section = compute(&Construction::Solid { diameter }, Some(&material)).ok()?;
    section.mass.map(|mass| mass.kg_per_km())
}

/// EN 50149:2012, DIN 43140, TB/T 2810, read in reprints.
#[test]
fn contact_wires_keep_to_the_rules_of_their_standards() {
    let mut tally = Tally::default();
    for row in rows(include_str!("contact_wire_properties.csv")) {
        let nominal = row.number("nominal_mm2").expect("a size");
        let strength = row.number("tensile_min_N_per_mm2").map(Stress::from_n_per_mm2);
        let material = built_in(&row);
        let resistivity = material.and_then(|material| material.resistivity_20c);
        let rule = contact_wire_rule(Area::from_mm2(nominal), strength, resistivity);
        let name = format!("{} {} {}", row.text("standard"), row.text("material"), nominal);
        let mut compare = |column, value, part| tally.compare(&row, &name, column, value, part);
        let section = material
            .map(|material| compute_for_size(&wire(nominal), Some(material), Some(Area::from_mm2(nominal))));
        let section = section.transpose().expect("a sound profile");
        if row.text("standard").starts_with("EN 50149") {
            // What the program says of a conductor, beside the rule that its audit holds stated values against.
            let load = section.as_ref().and_then(|section| section.breaking_load);
            assert_eq!(load, rule.breaking_load_min, "{name}");
            let resistance = section.as_ref().and_then(|section| section.resistance_20c);
            assert_eq!(resistance, rule.resistance_max, "{name}");
            compare("breaking_load_min_kN", rule.breaking_load_min.map(|load| load.kn()), 0.002);
            compare("r20_max_ohm_per_km", rule.resistance_max.map(|one| one.ohm_per_km()), 0.0015);
            compare("mass_min_kg_per_km", Some(rule.mass_min.kg_per_km()), 0.0015);
            compare("mass_max_kg_per_km", Some(rule.mass_max.kg_per_km()), 0.0015);
        }
        compare("mass_nominal_kg_per_km", mass(&row, nominal), 0.0015);
        if let Some(material) = material {
            let strength = contact_wire_strength(material, Length::from_mm(12.0), Area::from_mm2(nominal));
            compare("tensile_min_N_per_mm2", strength.map(|strength| strength.n_per_mm2()), 0.0);
        }
    }
    tally.close("contact_wire_properties.csv");
}

/// The wire of the demo by EN 50149:2012, copper-silver 120 mm²: at least 41.9 kN, at most 0.153 Ω/km; with its computed
/// section beside it. Worn, it goes by what is left, here a plain circle cut by first principles.
#[test]
fn a_contact_wire_is_rated_by_its_nominal_section_and_worn_by_what_is_left() {
    let wire = Construction::Grooved(Grooved {
        height: Length::from_mm(12.85),
        width: Length::from_mm(12.85),
        apex_width: Length::from_mm(6.80),
        apex_depth: Length::from_mm(4.35),
        fillet: Length::from_mm(0.40),
        lower_flank: Angle::from_degrees(27.0),
        upper_flank: Angle::from_degrees(51.0),
    });
    let (material, nominal) = (materials::find("copper-silver-0.1"), Some(Area::from_mm2(120.0)));
    let new = compute_for_size(&wire, material, nominal).expect("sound");
    assert!((new.breaking_load.expect("known").kn() - 41.9).abs() < 0.05);
    assert!((new.resistance_20c.expect("known").ohm_per_km() - 0.153).abs() < 0.0005);

    let (radius, worn_off) = (12.85_f64 / 2.0, 12.85 - 10.3);
    let segment = radius * radius * ((radius - worn_off) / radius).acos()
        - (radius - worn_off) * (2.0 * radius * worn_off - worn_off * worn_off).sqrt();
    let left = new.metal.mm2() - segment;
    let worn = worn_metal(&wire, material, nominal, Length::from_mm(10.3)).expect("a height of this wire");
    assert!((worn.section.mm2() - left).abs() < 1e-6 * left);
    assert!((worn.breaking_load.expect("known").newtons() - 0.97 * left * 360.0).abs() < 0.1);
    let hot = worn.resistance_at(Temperature::from_celsius(80.0)).expect("known").ohm_per_km();
    let cold = 17.77 / (0.97 * left);
    assert!((hot / (cold * (1.0 + 0.00381 * 60.0)) - 1.0).abs() < 1e-6);
}
