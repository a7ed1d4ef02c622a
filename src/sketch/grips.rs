//! Pictures for words: how cones and a wedge turn pull into pressure, and where stand-out is measured. No part's sizes,
//! and to no scale.

use super::appearance::{Appearance, Pen, Shade, Tone};
use super::dimension::{Lettered, Prefer, Span, Way};
use super::draft::{Caption, Draft};
use super::drawing::Drawing;
use super::hatch::Hatch;
use super::letters::Anchor;
use super::options::Options;
use super::outline::Outline;
use super::plane::{Point, Rect, at};
use super::scene::Purpose;
use crate::section::MaterialGroup;

/// Where the body begins and ends along the conductor, in millimetres.
const BODY: (f64, f64) = (10.0, 52.0);
/// Where the gripping part begins and ends: it stands out before the body's face.
const GRIP: (f64, f64) = (4.0, 44.0);
/// How far the taper is from the axis at the body's face, and how much it falls a millimetre.
const TAPER: (f64, f64) = (13.5, 0.11);
/// Half of the conductor.
const HALF: f64 = 5.0;

/// A collet in its body: line tension draws it in, and the taper presses it on the conductor all round.
#[must_use]
pub fn how_a_cone_grips(options: &Options) -> Drawing {
    let mut draft = Draft::new(options);
    cone(&mut draft);
    pulled(&mut draft);
    for x in [18.0, 36.0] {
        arrow(&mut draft, at(x, -10.5), at(x, -HALF - 0.3));
        arrow(&mut draft, at(x, 10.5), at(x, HALF + 0.3));
    }
    finished(
        draft,
        "How a cone grips",
        "Cut lengthwise: line tension draws the cone into the taper of its body, and the taper presses the cone on the \
         conductor from all sides. A cone whose slits are shut before it touches presses on nothing.",
    )
}

/// A spreading cone between the wires: the outer layer lies between it and the socket, the core goes through its hole.
#[must_use]
pub fn how_a_spreading_cone_grips(options: &Options) -> Drawing {
    let mut draft = Draft::new(options);
    for side in [-1.0, 1.0] {
        let laid = |points: &[(f64, f64)]| {
            Outline::of(&points.iter().map(|(x, y)| (*x, side * y)).collect::<Vec<_>>())
        };
        body(&mut draft, laid(&SOCKET));
        wire(&mut draft, laid(&SPREAD_WIRE));
    }
    wire(&mut draft, Outline::rectangle(Rect::new(6.0, -CORE, 62.0, CORE)));
    for side in [-1.0, 1.0] {
        let laid: Vec<_> = SPREADING_CONE.iter().map(|(x, y)| (*x, side * y)).collect();
        grip(&mut draft, Outline::of(&laid));
        for (x, from, to) in [(20.0, 4.6, 9.2), (32.0, 3.4, 6.8)] {
            arrow(&mut draft, at(x, side * from), at(x, side * to));
        }
    }
    draft.centre_line(at(2.0, 0.0), at(64.0, 0.0));
    pulled(&mut draft);
    finished(
        draft,
        "How a spreading cone grips",
        "Cut lengthwise: the cone is driven between the wires and presses the outer ones on the taper of the socket. The wires \
         of the core go through its hole: one that is too wide does not hold them.",
    )
}

/// A wedge in its body: drawn in beside the wire, it presses it against the straight wall.
#[must_use]
pub fn how_a_wedge_grips(options: &Options) -> Drawing {
    let mut draft = Draft::new(options);
    let wall = Rect::new(BODY.0, HALF, BODY.1, HALF + 5.0);
    body(&mut draft, Outline::rectangle(wall));
    body(&mut draft, upper_body());
    conductor(&mut draft);
    grip(&mut draft, upper_grip());
    pulled(&mut draft);
    for x in [18.0, 36.0] {
        arrow(&mut draft, at(x, -10.5), at(x, -HALF - 0.3));
    }
    finished(
        draft,
        "How a wedge grips",
        "Cut lengthwise: line tension draws the wedge into the body, and its tapered side presses the wire against the \
         straight wall. A wedge that is too thin reaches the end of the body first, and presses on nothing.",
    )
}

/// Where the stand-out of a gripping part is measured: from the body's face to the part's end.
#[must_use]
pub fn where_stand_out_is_measured(options: &Options) -> Drawing {
    let mut draft = Draft::new(options);
    cone(&mut draft);
    let ends = (at(GRIP.0, -taper(GRIP.0)), at(BODY.0, -17.0));
    draft.dimension(&Span {
        name: "stand-out",
        text: "stand-out".to_owned(),
        lettering: Lettered::Measure,
        ends,
        line: -21.0,
        way: Way::Level,
        prefer: Prefer::After,
    });
    finished(
        draft,
        "Where stand-out is measured",
        "From the face of the body to the end of the gripping part that stands out of it. Where the end lies below the face, \
         it is sunk by that much.",
    )
}

fn cone(draft: &mut Draft) {
    body(draft, upper_body());
    body(draft, mirrored(&UPPER_BODY));
    conductor(draft);
    grip(draft, upper_grip());
    grip(draft, mirrored(&upper_grip_points()));
    draft.centre_line(at(-8.0, 0.0), at(64.0, 0.0));
}

/// How far the taper is from the axis at a place along it.
fn taper(x: f64) -> f64 {
    TAPER.0 - (x - BODY.0) * TAPER.1
}

/// Half of the wires that go through a spreading cone.
const CORE: f64 = 2.8;
/// A socket, the outer wires in it and the cone between them, on one side of the axis.
const SOCKET: [(f64, f64); 4] = [(BODY.0, 17.0), (BODY.1, 17.0), (BODY.1, HALF), (BODY.0, HALF + 8.4)];
const SPREAD_WIRE: [(f64, f64); 6] =
    [(62.0, HALF), (BODY.1, HALF), (BODY.0, HALF + 8.4), (BODY.0, CORE + 8.4), (BODY.1, CORE), (62.0, CORE)];
const SPREADING_CONE: [(f64, f64); 4] = [(14.0, CORE + 7.6), (46.0, CORE + 1.2), (46.0, CORE), (14.0, CORE)];

const UPPER_BODY: [(f64, f64); 4] = [
    (BODY.0, -17.0),
    (BODY.1, -17.0),
    (BODY.1, -(TAPER.0 - (BODY.1 - BODY.0) * TAPER.1)),
    (BODY.0, -TAPER.0),
];

fn upper_body() -> Outline {
    Outline::of(&UPPER_BODY)
}

fn upper_grip_points() -> [(f64, f64); 4] {
    [(GRIP.0, -taper(GRIP.0)), (GRIP.1, -taper(GRIP.1)), (GRIP.1, -HALF), (GRIP.0, -HALF)]
}

fn upper_grip() -> Outline {
    Outline::of(&upper_grip_points())
}

fn mirrored(points: &[(f64, f64)]) -> Outline {
    Outline::of(&points.iter().map(|(x, y)| (*x, -y)).collect::<Vec<_>>())
}

fn body(draft: &mut Draft, outline: Outline) {
    let lines = Hatch::of(0, 0.7 * draft.size()).lines(&outline);
    let lines = lines.into_iter().map(|line| vec![line.p0, line.p1]).collect();
    draft.area(Purpose::View(0), outline, Appearance::area(Tone::Paper, Pen::Thick));
    draft.scene.lines(Purpose::Hatch(0), lines, Appearance::line(Pen::Thin));
}

fn conductor(draft: &mut Draft) {
    wire(draft, Outline::rectangle(Rect::new(-6.0, -HALF, 62.0, HALF)));
}

fn wire(draft: &mut Draft, outline: Outline) {
    let copper = Appearance::area(Tone::Metal(MaterialGroup::Copper, Shade::Plain), Pen::Thin);
    draft.area(Purpose::Wire, outline, copper);
}

fn grip(draft: &mut Draft, outline: Outline) {
    draft.area(
        Purpose::View(1),
        outline,
        Appearance::area(Tone::Metal(MaterialGroup::Bronze, Shade::Pale), Pen::Heavy),
    );
}

/// Line tension, on the conductor's end.
fn pulled(draft: &mut Draft) {
    arrow(draft, at(62.0, 0.0), at(71.0, 0.0));
    let text = draft.level(at(62.5, -1.1 * draft.size()), Anchor::Start, "pull");
    draft.scene.text(text);
}

fn arrow(draft: &mut Draft, from: Point, tip: Point) {
    draft.scene.line(Purpose::Dimension, &[from, tip], Appearance::line(Pen::Thick));
    draft.arrowhead(tip, from - tip);
}

fn finished(draft: Draft, title: &str, description: &str) -> Drawing {
    draft.finish(Caption {
        scale: "not to scale".to_owned(),
        title: title.to_owned(),
        description: description.to_owned(),
    })
}
