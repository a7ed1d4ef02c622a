//! What every scene must keep, whatever it shows.

use super::sample::limits;
use super::seen::Seen;
use crate::sketch::appearance::Tone;
use crate::sketch::assembly::setup::Setup;
use crate::sketch::assembly::{Pose, compose, figure, scales};
use crate::sketch::draft::fit;
use crate::sketch::options::{Detail, Options};
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Line, Point, segments_meet};
use crate::sketch::scene::{Primitive, Purpose, Scene};
use kurbo::ParamCurveNearest as _;

/// The scene of a seated fitting at the scale that its drawing gets, and whether it says everything.
pub fn scene_of(fitting: &crate::catalogue::Fitting, options: &Options) -> (Scene, bool) {
    let setup = Setup::of(fitting, &limits());
    let figure = figure(&setup, Pose::default());
    let scales = scales(&setup, &*figure, Pose::default(), options);
    let (_, draft) = fit(&scales, |scale| compose(&setup, &*figure, Pose::default(), options, scale).draft)
        .expect("a scale");
    let whole = draft.complete && draft.fits();
    (draft.scene, whole)
}

/// Everything that is wrong with a scene.
pub fn faults(scene: &Scene) -> Vec<String> {
    let mut faults = texts_overlap(scene);
    faults.extend(texts_on_lines(scene));
    faults.extend(hatches_outside(scene));
    faults.extend(leaders_astray(scene));
    faults.extend(arrows_astray(scene));
    faults
}

/// Arrows from words that go over another part than theirs: the stamp is on the part of the black balloon, a slip mark on the
/// conductor.
fn arrows_astray(scene: &Scene) -> Vec<String> {
    let (seen, mut faults) = (Seen::of(scene), Vec::new());
    let gripping = scene.elements.iter().find_map(|element| match element.purpose {
        Purpose::Balloon(part) if element.appearance.fill == Some(Tone::Ink) => Some(part),
        _ => None,
    });
    for of in scene.elements.windows(3) {
        let (Purpose::Pointer, Primitive::Lines(lines), Primitive::Text(word)) =
            (of[0].purpose, &of[0].primitive, &of[2].primitive)
        else {
            continue;
        };
        let own = gripping.filter(|_| word.text == "stamp");
        let (from, tip) = (lines[0][0], lines[0][1]);
        let length = from.distance(tip);
        let way = (1..).map(|step| 0.2 + 0.1 * f64::from(step)).take_while(|off| *off < length);
        let over = way.filter_map(|off| seen.at(tip.lerp(from, off / length))).find(|met| *met != own);
        faults.extend(over.map(|met| format!("the arrow from “{}” goes over {met:?}", word.text)));
    }
    faults
}

fn texts_overlap(scene: &Scene) -> Vec<String> {
    let texts: Vec<_> = scene.texts().collect();
    let pairs = texts
        .iter()
        .enumerate()
        .flat_map(|(index, one)| texts[..index].iter().map(move |other| (one, other)));
    pairs
        .filter(|(one, other)| one.bounds().overlaps(other.bounds()))
        .map(|(one, other)| format!("“{}” overlaps “{}”", one.text, other.text))
        .collect()
}

fn texts_on_lines(scene: &Scene) -> Vec<String> {
    let mut faults = Vec::new();
    for text in scene.texts() {
        for element in &scene.elements {
            let drawn = element.appearance.pen.is_some() || element.purpose == Purpose::Dimension;
            if drawn && element.primitive.strokes_meet(text.bounds()) {
                faults.push(format!("“{}” lies on a line of {:?}", text.text, element.purpose));
            }
        }
    }
    faults
}

fn hatches_outside(scene: &Scene) -> Vec<String> {
    let mut faults = Vec::new();
    for element in &scene.elements {
        let (Purpose::Hatch(part), Primitive::Lines(lines)) = (element.purpose, &element.primitive) else {
            continue;
        };
        for line in lines {
            let middle = line[0].lerp(line[1], 0.5);
            for point in [line[0], middle, line[1]] {
                if !lies_in(scene, part, point) {
                    faults.push(format!("hatching of item {} outside it", part + 1));
                }
            }
        }
    }
    faults
}

fn lies_in(scene: &Scene, part: usize, point: Point) -> bool {
    scene.areas_of(part).any(|primitive| match primitive {
        Primitive::Area(outline) => outline.contains(point) || distance(outline, point) < 0.01,
        _ => false,
    })
}

fn leaders_astray(scene: &Scene) -> Vec<String> {
    let mut faults = Vec::new();
    let mut lines: Vec<(usize, Point, Point)> = Vec::new();
    for element in &scene.elements {
        match (element.purpose, &element.primitive) {
            (Purpose::Leader(part), Primitive::Circle(dot, _)) if part_at(scene, *dot) != Some(part) => {
                faults.push(format!("leader of item {} ends outside it", part + 1));
            }
            (Purpose::Leader(part), Primitive::Circle(dot, radius))
                if Seen::of(scene).hides_a_mark(*dot, *radius)
                    && Seen::of(scene).places(scene, part, *radius).next().is_some() =>
            {
                faults.push(format!("dot of item {} on a mark", part + 1));
            }
            (Purpose::Leader(part), Primitive::Lines(line)) => lines.push((part, line[0][0], line[0][1])),
            _ => {}
        }
    }
    for (item, from, to) in &lines {
        if scene.dimension_lines().iter().any(|of| segments_meet(Line::new(*from, *to), *of)) {
            faults.push(format!("leader of item {} crosses a dimension", item + 1));
        }
    }
    for (index, one) in lines.iter().enumerate() {
        for other in &lines[..index] {
            if segments_meet(Line::new(one.1, one.2), Line::new(other.1, other.2)) {
                faults.push(format!("leaders of items {} and {} cross", one.0 + 1, other.0 + 1));
            }
        }
    }
    faults
}

/// Full detail in a room as on a page of the booklet.
pub fn page(fonts: &crate::typeset::Fonts) -> Options<'_> {
    Options::new(fonts, super::sample::mm(170.0), super::sample::mm(90.0))
}

/// A card's room.
pub fn card(fonts: &crate::typeset::Fonts) -> Options<'_> {
    Options { detail: Detail::Card, ..Options::new(fonts, super::sample::mm(66.0), super::sample::mm(28.0)) }
}

/// The part that is seen at a point: that of the last area drawn there.
pub fn part_at(scene: &Scene, point: Point) -> Option<usize> {
    Seen::of(scene).at(point).flatten()
}

/// Distance of a point from the nearest side of an outline.
pub fn distance(outline: &Outline, point: Point) -> f64 {
    outline.sides().map(|side| side.nearest(point, 0.0).distance_sq.sqrt()).fold(f64::INFINITY, f64::min)
}
