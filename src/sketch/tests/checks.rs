//! What every scene must keep, whatever it shows.

use super::sample::limits;
use crate::sketch::appearance::Tone;
use crate::sketch::assembly::setup::Setup;
use crate::sketch::assembly::{Pose, compose, figure, scales};
use crate::sketch::draft::fit;
use crate::sketch::options::{Detail, Options};
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Line, Point, Rect, Vec2, at, segments_meet};
use crate::sketch::scene::{Primitive, Purpose, Scene};
use kurbo::ParamCurveNearest as _;
use std::f64::consts::FRAC_PI_4;

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
            (Purpose::Leader(part), Primitive::Circle(dot, radius))
                if Seen::of(scene).hides_a_mark(*dot, *radius)
                    && Seen::of(scene).least_foreign(scene, part, *radius).is_finite() =>
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

/// How far a leader goes over other parts and the conductor.
pub struct Over {
    pub part: usize,
    /// Millimetres of it.
    pub far: f64,
    /// The least that a straight way goes over them, up, down or to a side, past all dimensions, from any place of its part
    /// that holds the dot; endless where there is no such way.
    pub least: f64,
}

pub fn over_others(scene: &Scene) -> Vec<Over> {
    let seen = Seen::of(scene);
    let ways = scene.elements.windows(2).filter_map(|pair| {
        match (pair[0].purpose, &pair[0].primitive, &pair[1].primitive) {
            (Purpose::Leader(part), Primitive::Lines(line), Primitive::Circle(_, dot)) => {
                Some((part, Line::new(line[0][0], line[0][1]), *dot))
            }
            _ => None,
        }
    });
    ways.map(|(part, line, dot)| Over {
        part,
        far: seen.foreign(part, line),
        least: seen.least_foreign(scene, part, dot),
    })
    .collect()
}

const STEP: f64 = 0.4;
/// How far beyond the object a way must be clear of dimensions, in millimetres (own rule).
const BEYOND: f64 = 6.0;
/// Half the width of a gap in which nobody tells a leader from the edges, in millimetres (own rule).
const HALF_A_GAP: f64 = 0.4;

/// Areas back to front with their boxes and what is seen of them: a part, or the conductor; nothing where it is empty.
struct Seen<'s> {
    areas: Vec<(Rect, &'s Primitive, Option<Option<usize>>)>,
    /// What is painted on parts: no dot may lie there.
    marks: Vec<&'s Primitive>,
}

impl<'s> Seen<'s> {
    fn of(scene: &'s Scene) -> Self {
        let areas = scene.elements.iter().filter_map(|element| {
            let seen = match element.purpose {
                Purpose::Cut(part) | Purpose::View(part) => Some(Some(part)),
                Purpose::Wire => Some(None),
                Purpose::Empty => None,
                _ => return None,
            };
            Some((element.primitive.bounds(), &element.primitive, seen))
        });
        let painted = scene.elements.iter().filter(|of| matches!(of.appearance.fill, Some(Tone::Paint(_))));
        Self { areas: areas.collect(), marks: painted.map(|of| &of.primitive).collect() }
    }

    fn at(&self, point: Point) -> Option<Option<usize>> {
        let mut there = self.areas.iter().rev().filter(|(bounds, ..)| bounds.contains(point));
        there.find(|(_, area, _)| area.contains(point)).and_then(|(.., seen)| *seen)
    }

    /// Whether a dot lies on a mark with more than its edge.
    fn hides_a_mark(&self, dot: Point, radius: f64) -> bool {
        let round =
            (0..8).map(|eighth| dot + Vec2::from_angle(f64::from(eighth) * FRAC_PI_4) * (radius / 2.0));
        round.chain([dot]).any(|point| self.is_marked(point))
    }

    fn is_marked(&self, point: Point) -> bool {
        self.marks.iter().any(|mark| mark.contains(point))
    }

    fn foreign(&self, part: usize, line: Line) -> f64 {
        let length = line.p0.distance(line.p1);
        let count = (length / STEP).ceil().max(1.0);
        let points = (0..count as usize).map(|index| line.p0.lerp(line.p1, (index as f64 + 0.5) / count));
        let across = (line.p1 - line.p0).normalize().turn_90() * HALF_A_GAP;
        // In a narrow gap a leader is taken for an edge.
        let between = |point: Point| [across, -across].into_iter().all(|by| self.at(point + by).is_some());
        let others = points.filter(|point| match self.at(*point) {
            Some(seen) => seen != Some(part),
            None => between(*point),
        });
        others.count() as f64 * length / count
    }

    fn least_foreign(&self, scene: &Scene, part: usize, dot: f64) -> f64 {
        let object = scene.object_bounds();
        let places = scene.areas_of(part).flat_map(|area| {
            let bounds = area.bounds();
            (1..12).flat_map(move |column| (1..8).map(move |row| (column, row))).map(move |(column, row)| {
                let (x, y) = (f64::from(column) / 12.0, f64::from(row) / 8.0);
                at(bounds.x0 + x * bounds.width(), bounds.y0 + y * bounds.height())
            })
        });
        let own = |place: &Point| {
            let round = (0..8).map(|eighth| *place + Vec2::from_angle(f64::from(eighth) * FRAC_PI_4) * dot);
            let holds = |point: Point| self.at(point) == Some(Some(part)) && !self.is_marked(point);
            [*place].into_iter().chain(round).all(holds)
        };
        // Beyond the edge of the object stand its dimensions.
        let out = object.inflate(BEYOND, BEYOND);
        let dimensions = scene.dimension_lines();
        let ways = places.filter(own).flat_map(|place| {
            let (left, right) = (at(out.x0, place.y), at(out.x1, place.y));
            [at(place.x, out.y0), at(place.x, out.y1), left, right].map(|end| Line::new(place, end))
        });
        let ways = ways.filter(|way| !dimensions.iter().any(|of| segments_meet(*way, *of)));
        ways.map(|way| self.foreign(part, way)).fold(f64::INFINITY, f64::min)
    }
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
