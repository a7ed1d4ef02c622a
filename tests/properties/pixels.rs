//! Sections found a third way: by counting the metal in the pixels of the drawing, 40 to a millimetre.

use fittingcards::section::{
    Composite, Construction, Grooved, Group, Rope, RopeCore, Section, Strands, compute, profile, worn,
};
use fittingcards::sketch::{Detail, Drawing, Options, Subject, section_of};
use fittingcards::source::{MemoryWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::units::{Angle, Length};

const PIXELS_PER_MM: f64 = 40.0;

fn mm(value: f64) -> Length {
    Length::from_mm(value)
}

fn group(wires: u32, diameter: f64) -> Group {
    Group { strands: Strands::Wires(wires), wire_diameter: mm(diameter), lay_ratios: Vec::new() }
}

fn contact_wire(height: f64, depth: f64) -> Grooved {
    Grooved {
        height: mm(height),
        width: mm(height),
        apex_width: mm(6.80),
        apex_depth: mm(depth),
        fillet: mm(0.40),
        lower_flank: Angle::from_degrees(27.0),
        upper_flank: Angle::from_degrees(51.0),
    }
}

fn rope(class: &str, core: RopeCore) -> Construction {
    Construction::Rope(Rope { class: class.into(), core, diameter: mm(24.0), grade: None })
}

/// A bare drawing, large enough that its rounded coordinates do not count.
fn drawing(subject: &Subject) -> Drawing {
    let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
    let options = Options { detail: Detail::Bare, ..Options::new(&fonts, mm(400.0), mm(400.0)) };
    section_of(subject, &options)
}

/// The scale that a drawing states, such as 20 for "20:1".
fn scale(drawing: &Drawing) -> f64 {
    let (on_paper, of_metal) = drawing.scale.split_once(':').expect("a round scale");
    on_paper.parse::<f64>().expect("a number") / of_metal.parse::<f64>().expect("a number")
}

/// Area of what is filled in a drawing, in square millimetres of the conductor.
fn filled(drawing: &Drawing) -> f64 {
    // The outline is drawn half outside the metal: only what is filled is measured.
    let svg = drawing.to_svg().replace("stroke=\"", "stroke=\"none\" data-stroke=\"");
    let tree = usvg::Tree::from_str(&svg, &usvg::Options::default()).expect("a sound drawing");
    let zoom = PIXELS_PER_MM / scale(drawing) * drawing.width.mm() / f64::from(tree.size().width());
    let size = |side: f32| (f64::from(side) * zoom).ceil() as u32 + 1;
    let mut pixels =
        resvg::tiny_skia::Pixmap::new(size(tree.size().width()), size(tree.size().height())).expect("a size");
    let zoomed = resvg::tiny_skia::Transform::from_scale(zoom as f32, zoom as f32);
    resvg::render(&tree, zoomed, &mut pixels.as_mut());
    let covered: f64 = pixels.pixels().iter().map(|pixel| f64::from(pixel.alpha()) / 255.0).sum();
    covered / (PIXELS_PER_MM * PIXELS_PER_MM)
}

fn check(construction: &Construction) {
    let section: Section = compute(construction, None).expect("a sound construction");
    let found = filled(&drawing(&Subject::new("Conductor", construction, &section)));
    let departs = found / section.metal.mm2() - 1.0;
    assert!(
        departs.abs() <= 0.003,
        "{construction:?}: {found:.2} mm² drawn, {:.2} computed",
        section.metal.mm2()
    );
}

#[test]
fn the_metal_drawn_is_the_section() {
    for (wires, diameter) in [(1, 5.0), (3, 3.0), (7, 2.5), (12, 2.2), (19, 2.8), (37, 2.25), (61, 2.5)] {
        check(&Construction::Stranded(group(wires, diameter)));
    }
    let composite = Composite { core: group(7, 2.68), core_material: None, outer: group(26, 3.45) };
    check(&Construction::Composite(composite));
    check(&Construction::Solid { diameter: mm(8.0) });
    check(&Construction::Tube { outside_diameter: mm(20.0), wall: mm(3.0) });
    check(&Construction::Bar { width: mm(20.0), thickness: mm(6.0), corner_radius: mm(1.0) });
    check(&Construction::Grooved(contact_wire(12.34, 4.47)));
    check(&Construction::Grooved(contact_wire(14.4, 4.0)));
}

#[test]
fn the_metal_drawn_of_a_rope_is_the_section_of_its_standard() {
    for (class, core) in [("7x7", RopeCore::Wsc), ("7x19", RopeCore::Wsc), ("1x19", RopeCore::Wsc)] {
        check(&rope(class, core));
    }
}

#[test]
fn the_metal_drawn_of_a_worn_wire_is_what_is_left() {
    let wire = contact_wire(12.34, 4.47);
    let construction = Construction::Grooved(wire.clone());
    let section = compute(&construction, None).expect("a sound construction");
    for height in [11.5, 9.3, 7.0, 5.6, 5.0] {
        let worn_to = Some(mm(height));
        let subject = Subject { worn_to, ..Subject::new("Conductor", &construction, &section) };
        let found = filled(&drawing(&subject));
        let left =
            worn(&profile(&wire).expect("a sound profile"), mm(height)).expect("a height of this wire");
        let left = left.section.mm2();
        assert!((found / left - 1.0).abs() <= 0.003, "{height}: {found:.2} mm² drawn, {left:.2} computed");
    }
}
