//! What every scene must keep, whatever it shows.

use super::sample::limits;
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

/// Of each leader: how many millimetres it goes further over other parts than the shortest straight way that any place of
/// its part has to the edge of the object, upward or to the right.
pub fn over_others(scene: &Scene) -> Vec<f64> {
    let ways = scene.elements.iter().filter_map(|element| match (element.purpose, &element.primitive) {
        (Purpose::Leader(part), Primitive::Lines(line)) => Some((part, Line::new(line[0][0], line[0][1]))),
        _ => None,
    });
    ways.map(|(part, line)| (foreign(scene, part, line) - least_foreign(scene, part)).max(0.0)).collect()
}

const STEP: f64 = 0.8;

/// How much of a line lies over other parts and the conductor.
fn foreign(scene: &Scene, part: usize, line: Line) -> f64 {
    let count = (line.p0.distance(line.p1) / STEP).ceil().max(1.0);
    let points = (0..count as usize).map(|index| line.p0.lerp(line.p1, index as f64 / count));
    points.filter(|point| seen_at(scene, *point).is_some_and(|seen| seen != Some(part))).count() as f64 * STEP
}

/// The least that a straight way out of a part goes over others.
fn least_foreign(scene: &Scene, part: usize) -> f64 {
    let object = scene.object_bounds();
    let places = scene.areas_of(part).flat_map(|area| {
        let bounds = area.bounds();
        (1..8).flat_map(move |column| (1..6).map(move |row| (column, row))).map(move |(column, row)| {
            let (x, y) = (f64::from(column) / 8.0, f64::from(row) / 6.0);
            crate::sketch::plane::at(bounds.x0 + x * bounds.width(), bounds.y0 + y * bounds.height())
        })
    });
    let own = places.filter(|place| seen_at(scene, *place) == Some(Some(part)));
    let ways = own.flat_map(|place| {
        let (above, beside) =
            (crate::sketch::plane::at(place.x, object.y0), crate::sketch::plane::at(object.x1, place.y));
        [Line::new(place, above), Line::new(place, beside)]
    });
    ways.map(|way| foreign(scene, part, way)).fold(f64::INFINITY, f64::min)
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
    seen_at(scene, point).flatten()
}

/// What is seen at a point: a part, or the conductor and what is empty; nothing beside the object.
fn seen_at(scene: &Scene, point: Point) -> Option<Option<usize>> {
    let seen = scene.elements.iter().rev().find(|element| {
        matches!(element.purpose, Purpose::Cut(_) | Purpose::View(_) | Purpose::Wire)
            && element.primitive.contains(point)
    })?;
    Some(match seen.purpose {
        Purpose::Cut(part) | Purpose::View(part) => Some(part),
        _ => None,
    })
}

/// Distance of a point from the nearest side of an outline.
pub fn distance(outline: &Outline, point: Point) -> f64 {
    outline.sides().map(|side| side.nearest(point, 0.0).distance_sq.sqrt()).fold(f64::INFINITY, f64::min)
}
