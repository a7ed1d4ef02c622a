//! Ropes against the factors of EN 12385-4.

use super::sections::group;
use super::table::{Row, Tally, rows};
use fittingcards::section::{Construction, Rope, RopeCore, Section, SectionError, compute, materials};
use fittingcards::units::{Length, Stress};

/// A rope of 10 mm, so that factors are easily read off it.
fn rope(class: &str, core: RopeCore) -> Result<Section, SectionError> {
    let diameter = Length::from_mm(10.0);
    let grade = Some(Stress::from_n_per_mm2(1770.0));
    compute(&Construction::Rope(Rope { class: class.into(), core, diameter, grade }), None)
}

fn core(row: &Row) -> RopeCore {
    match row.text("core") {
        core if core.starts_with("FC") => RopeCore::Fibre,
        "WSC" => RopeCore::Wsc,
        _ => RopeCore::Iwrc,
    }
}

/// EN 12385-4, read in two reprints that disagree on two masses.
#[test]
fn ropes_have_the_factors_of_en_12385_4() {
    let mut tally = Tally::default();
    for row in rows(include_str!("wire_rope_factors.csv")) {
        // The reprint writes the compound lay of EN 12385-2, N, as M.
        let class = if row.text("rope_class") == "6x35M" { "6x35N" } else { row.text("rope_class") };
        if row.text("core").starts_with("stainless") {
            continue; // the row has no figure
        }
        let section = rope(class, core(&row)).expect("a class of the standard");
        let name = format!("{class} {}", row.text("core"));
        let mut compare = |column, value| tally.compare(&row, &name, column, value, 0.0);
        compare("W_mass_factor_kg_per_100m_mm2", section.mass.map(|mass| mass.kg_per_100m() / 100.0));
        compare("C_area_factor", Some(section.metal.mm2() / 100.0));
        compare("fill_factor_f_4C_over_pi", Some(section.fill_ratio));
        compare("K_breaking_factor", section.breaking_load.map(|load| load.kn() * 1000.0 / 100.0 / 1770.0));
    }
    tally.close("wire_rope_factors.csv");
}

/// 7x7 is 6x7 and 7x19 is 6x19M, each with a strand core.
#[test]
fn seven_strands_are_six_round_one() {
    for (seven, six) in [("7x7", "6x7"), ("7x19", "6x19M")] {
        let (seven, six) = (rope(seven, RopeCore::Wsc).unwrap(), rope(six, RopeCore::Wsc).unwrap());
        assert_eq!((seven.metal, seven.breaking_load), (six.metal, six.breaking_load));
    }
}

/// First principles: a single strand of seven or nineteen equal wires in the circle on its diameter.
#[test]
fn single_strands_are_geometric() {
    for (class, ratio) in [("1x7", 7.0 / 9.0), ("1x19", 19.0 / 25.0), ("1x37", 37.0 / 49.0)] {
        let section = rope(class, RopeCore::Wsc).unwrap();
        assert!((section.fill_ratio - ratio).abs() < 1e-9);
        assert!(section.breaking_load.is_none());
    }
}

/// EN 12385-2 writes compacted strands with K; EN 12385-4 has no factors for them, so they are refused with the reason.
#[test]
fn compacted_ropes_are_refused() {
    for class in ["6xK36WS", "8xK26WS", "6x35M"] {
        assert!(rope(class, RopeCore::Iwrc).is_err(), "{class}");
    }
    assert!(rope("6xK36WS", RopeCore::Iwrc).unwrap_err().help.contains("compacted"));
}

/// EN 12385-10 from memory: spinning leaves at least 0.85 of the wires, whatever the number of layers.
#[test]
fn spiral_strands_have_a_load_as_stranded_conductors() {
    let strand = Construction::Stranded(group(19, Length::from_mm(2.0)));
    let load = compute(&strand, materials::find("steel-spiral-1570")).unwrap().breaking_load.expect("known");
    assert!((load.newtons() - 19.0 * std::f64::consts::PI * 1570.0 * 0.85).abs() < 1e-6);
}
