//! Sections of every construction: nothing overlaps, nothing leaves the room, every wire is there.

use super::sample::{conductors, fonts, mm};
use crate::section::Construction;
use crate::sketch::{Options, conductor_section, conductor_to_lay_on};

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
