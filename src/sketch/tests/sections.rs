//! Sections of every construction: nothing overlaps, nothing leaves the room, every wire is there.

use super::sample::{conductor, conductors, contact_wire, fonts, mm};
use crate::catalogue::{Conductor, Identity, WearBasis, WearLimits};
use crate::section::Construction;
use crate::sketch::conductor::{add_cut_surfaces, cut_surfaces};
use crate::sketch::draft::Draft;
use crate::sketch::plane::{Affine, Vec2, around, at, grown};
use crate::sketch::scene::Scene;
use crate::sketch::{
    Options, Subject, conductor_section, conductor_to_lay_on, wearing, worn_profiles, worn_section,
};

#[test]
fn sections_fit_every_room() {
    let fonts = fonts();
    for conductor in conductors() {
        for (width, height) in [(10.0, 10.0), (25.0, 30.0), (40.0, 25.0), (120.0, 80.0), (250.0, 160.0)] {
            let drawing = conductor_section(&conductor, &Options::new(&fonts, mm(width), mm(height)));
            assert!(drawing.width.mm() <= width && drawing.height.mm() <= height, "{}", conductor.name);
            assert!(drawing.to_svg().len() < 60_000, "{}", conductor.name);
        }
    }
}

#[test]
fn large_sections_print_their_dimensions() {
    let fonts = fonts();
    for conductor in conductors() {
        let drawing = conductor_section(&conductor, &Options::new(&fonts, mm(120.0), mm(80.0)));
        assert!(!drawing.dimensions.is_empty(), "{}", conductor.name);
        assert!(drawing.scale.contains(':'), "{}", drawing.scale);
    }
}

#[test]
fn true_size_is_true() {
    let fonts = fonts();
    for conductor in conductors() {
        let drawing = conductor_to_lay_on(&conductor, &Options::new(&fonts, mm(1.0), mm(1.0)));
        let diameter = conductor.section.overall_diameter.mm();
        // A bar lies on its flat side; a contact wire stands on a line half a millimetre below it.
        let (high, below) = match conductor.construction {
            Construction::Bar { thickness, .. } => (thickness.mm(), 0.0),
            Construction::Grooved(_) => (diameter, 0.5),
            _ => (diameter, 0.0),
        };
        // Left of it the scale: 0.9 mm off, its longest lines 2 mm.
        let (wide, tall) = (drawing.width.mm() - 2.9, drawing.height.mm() - below);
        assert_eq!(drawing.scale, "1:1");
        for (drawn, least, most) in [(wide, diameter * 0.9, diameter + 1.0), (tall, high * 0.9, high + 1.0)] {
            assert!(drawn >= least && drawn <= most, "{}: {drawn} mm for {high}", conductor.name);
        }
    }
}

/// A contact wire whose record says so of its identification grooves.
fn identified_by(grooves: &str) -> Conductor {
    let wire = (*conductor("Contact wire 120", "copper-silver-0.1", contact_wire())).clone();
    let wear = WearLimits {
        limit_percent: None,
        basis: WearBasis::Nominal,
        plan_height: Some(mm(10.0)),
        replace_height: Some(mm(9.5)),
        stop_height: Some(mm(9.0)),
    };
    Conductor {
        identity: Identity { grooves: grooves.to_owned(), ..Identity::default() },
        wear: Some(wear),
        ..wire
    }
}

/// Gaps in the metal on the way over the head, just under its surface, half a radian to either side of the top.
fn gaps_in_the_head(subject: &Subject, height: f64) -> usize {
    let surfaces = cut_surfaces(subject);
    let metal = |turn: f64| {
        let place =
            at(0.0, 0.0) + Vec2::from_angle(turn - std::f64::consts::FRAC_PI_2) * (height / 2.0 - 0.15);
        surfaces.iter().any(|surface| !surface.gone && surface.primitive.contains(place))
    };
    let turns: Vec<bool> = (-100..=100).map(|step| metal(f64::from(step) * 0.005)).collect();
    assert!(turns[0] && turns[turns.len() - 1], "the head ends in metal on both sides");
    turns.windows(2).filter(|pair| pair[0] && !pair[1]).count()
}

#[test]
fn a_contact_wire_has_as_many_grooves_in_its_head_as_its_record_says_at_every_height() {
    for (said, count) in [("", 0), ("no groove", 0), ("one groove", 1), ("two grooves", 2), ("3", 3)] {
        let wire = identified_by(said);
        for worn_to in [None, Some(mm(11.0)), Some(mm(9.0)), Some(mm(5.0))] {
            let subject = Subject { worn_to, ..Subject::of(&wire) };
            assert_eq!(gaps_in_the_head(&subject, 12.34), count, "{said:?} at {worn_to:?}");
        }
    }
}

#[test]
fn every_picture_of_a_contact_wire_has_its_grooves() {
    let fonts = fonts();
    let options = Options::new(&fonts, mm(60.0), mm(60.0));
    let pictures = |grooves: &str| {
        let wire = identified_by(grooves);
        let wearing = wearing(&wire, &options);
        let worn = worn_profiles(&wire, &options).expect("heights are stated");
        let sections = [conductor_section(&wire, &options), worn_section(&wire, mm(9.5), &options)];
        let drawings = [conductor_to_lay_on(&wire, &options), worn, wearing.left, wearing.gone];
        sections.into_iter().chain(drawings).map(|drawing| drawing.body).collect::<Vec<_>>()
    };
    let (without, one, two) = (pictures(""), pictures("one groove"), pictures("two grooves"));
    for picture in 0..without.len() {
        assert_ne!(without[picture], one[picture], "picture {picture} of a wire with one groove");
        assert_ne!(one[picture], two[picture], "picture {picture} of a wire with two grooves");
    }
}

/// In how many of 360 directions the outermost edge of what is filled has a line on it.
fn outlined_directions(scene: &Scene, reach: f64) -> usize {
    let filled =
        |place| scene.elements.iter().any(|of| of.appearance.fill.is_some() && of.primitive.contains(place));
    let is_outlined = |degree: &u32| {
        let way = Vec2::from_angle(f64::from(*degree).to_radians());
        let mut inward = (0..).map(|step| (way * (reach - 0.02 * f64::from(step))).to_point());
        let edge = inward.find(|place| filled(*place)).expect("metal in the middle");
        let near = grown(around([edge]), 0.06);
        scene.elements.iter().any(|of| of.appearance.pen.is_some() && of.primitive.strokes_meet(near))
    };
    (0..360).filter(is_outlined).count()
}

/// Pale wires are lost to a grey copy. Some directions lead into a gap between wires.
#[test]
fn every_section_at_true_size_has_a_line_on_its_edge() {
    let fonts = fonts();
    for conductor in conductors() {
        let options = Options::new(&fonts, mm(200.0), mm(200.0));
        let mut draft = Draft::new(&options);
        add_cut_surfaces(&mut draft, &cut_surfaces(&Subject::of(&conductor)), Affine::IDENTITY, 1.0);
        let reach = conductor.section.overall_diameter.mm() / 2.0 + 0.1;
        let outlined = outlined_directions(&draft.scene, reach);
        assert!(outlined >= 300, "{}: a line in {outlined} of 360 directions", conductor.name);
    }
}

/// A bar of 40 × 10 mm. Its centre lines run past its sides, not through the lettering beside them.
#[test]
fn a_bar_is_drawn_in_a_box_of_its_shape_and_measured_by_its_sides() {
    let fonts = fonts();
    let conductors = conductors();
    let bar =
        conductors.iter().find(|of| matches!(of.construction, Construction::Bar { .. })).expect("a bar");
    let drawing = conductor_section(bar, &Options::new(&fonts, mm(120.0), mm(80.0)));
    let said: Vec<(&str, &str)> =
        drawing.dimensions.iter().map(|of| (of.name.as_str(), of.text.as_str())).collect();
    assert_eq!(said, [("width", "40.0\u{a0}mm"), ("thickness", "10.0\u{a0}mm")]);
    assert!(drawing.height < drawing.width / 2.0, "{:?} high, {:?} wide", drawing.height, drawing.width);
}
