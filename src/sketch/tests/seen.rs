//! What is seen where in a scene, and how a leader could go: a second way beside that of the search for places.

use crate::sketch::appearance::Tone;
use crate::sketch::plane::{Line, Point, Rect, Vec2, around, at, enters, grown, segments_meet};
use crate::sketch::scene::{Primitive, Purpose, Scene};
use kurbo::ParamCurveNearest as _;
use std::f64::consts::FRAC_PI_4;

const STEP: f64 = 0.4;
/// Half the width of a gap in which nobody tells a leader from the edges, in millimetres (own rule).
const HALF_A_GAP: f64 = 0.4;
/// What stays free round a balloon, in millimetres (own rule).
const FREE: f64 = 0.5;

/// A leader with its balloon.
pub struct Leader {
    pub part: usize,
    line: Line,
    /// Radii of its dot and of its balloon, and the middle of that.
    dot: f64,
    balloon: f64,
    stands: Point,
}

pub fn leaders(scene: &Scene) -> Vec<Leader> {
    let found = scene.elements.windows(3).filter_map(|of| {
        match (of[0].purpose, &of[0].primitive, &of[1].primitive, &of[2].primitive) {
            (
                Purpose::Leader(part),
                Primitive::Lines(line),
                Primitive::Circle(_, dot),
                Primitive::Circle(stands, balloon),
            ) => {
                let line = Line::new(line[0][0], line[0][1]);
                Some(Leader { part, line, dot: *dot, balloon: *balloon, stands: *stands })
            }
            _ => None,
        }
    });
    found.collect()
}

/// Areas back to front with their boxes and what is seen of them: a part, or the conductor; nothing where it is empty.
pub struct Seen<'s> {
    areas: Vec<(Rect, &'s Primitive, Option<Option<usize>>)>,
    /// What is painted on parts: no dot may lie there.
    marks: Vec<&'s Primitive>,
}

impl<'s> Seen<'s> {
    pub fn of(scene: &'s Scene) -> Self {
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

    /// A part, or the conductor.
    pub fn at(&self, point: Point) -> Option<Option<usize>> {
        let mut there = self.areas.iter().rev().filter(|(bounds, ..)| bounds.contains(point));
        there.find(|(_, area, _)| area.contains(point)).and_then(|(.., seen)| *seen)
    }

    /// Whether a dot lies on a mark with more than its edge.
    pub fn hides_a_mark(&self, dot: Point, radius: f64) -> bool {
        round(dot, radius / 2.0).any(|point| self.is_marked(point))
    }

    fn is_marked(&self, point: Point) -> bool {
        self.marks.iter().any(|mark| mark.contains(point))
    }

    /// How far a leader goes over other parts and the conductor, in millimetres.
    pub fn over_others(&self, leader: &Leader) -> f64 {
        self.foreign(leader.part, leader.line)
    }

    /// Whether a balloon covers nothing of the object and is not shut in by it, as in the opening of an eye.
    pub fn leaves_all_seen(&self, scene: &Scene, leader: &Leader) -> bool {
        self.is_free(leader.stands, leader.balloon) && self.is_open(leader.stands, scene.bounds())
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

    /// Places of a part that hold a dot, off its mark.
    pub fn places(&self, scene: &Scene, part: usize, dot: f64) -> impl Iterator<Item = Point> {
        let places = scene.areas_of(part).flat_map(|area| {
            let bounds = area.bounds();
            (1..12).flat_map(move |column| (1..8).map(move |row| (column, row))).map(move |(column, row)| {
                let (x, y) = (f64::from(column) / 12.0, f64::from(row) / 8.0);
                at(bounds.x0 + x * bounds.width(), bounds.y0 + y * bounds.height())
            })
        });
        let own = move |point: Point| self.at(point) == Some(Some(part)) && !self.is_marked(point);
        places.filter(move |place| round(*place, dot).all(own))
    }

    /// The least that a straight way goes over others, up, down or to a side, to a balloon in a drawing that still has room:
    /// past all dimensions, texts, other leaders and their balloons. Endless where there is no such way.
    pub fn least_over_others(&self, scene: &Scene, leader: &Leader, room: (f64, f64)) -> f64 {
        let rest = Rest::of(scene, leader, room);
        let mut least = f64::INFINITY;
        for place in self.places(scene, leader.part, leader.dot) {
            for way in WAYS {
                let ends = (1..).map(|step| Line::new(place, place + way * STEP * f64::from(step)));
                let ends = ends.take_while(|way| rest.has_room(way.p1) && !rest.meets(*way));
                let stands = |way: &Line| {
                    rest.has_balloon(way.p1)
                        && self.is_free(way.p1, rest.radius)
                        && self.is_open(way.p1, rest.bounds)
                };
                if let Some(way) = ends.into_iter().find(stands) {
                    least = least.min(self.foreign(leader.part, way));
                }
            }
        }
        least
    }

    /// Whether one of the four ways leads from a place out of the drawing past all parts.
    fn is_open(&self, place: Point, bounds: Rect) -> bool {
        WAYS.into_iter().any(|way| {
            let mut ahead = (1..).map(|step| place + way * STEP * f64::from(step));
            ahead
                .find(|point| self.at(*point).is_some() || !bounds.contains(*point))
                .is_some_and(|end| !bounds.contains(end))
        })
    }

    fn is_free(&self, place: Point, radius: f64) -> bool {
        round(place, radius).chain(round(place, radius / 2.0)).all(|point| self.at(point).is_none())
    }
}

/// The four ways that are looked at.
const WAYS: [Vec2; 4] =
    [Vec2::new(0.0, -1.0), Vec2::new(0.0, 1.0), Vec2::new(-1.0, 0.0), Vec2::new(1.0, 0.0)];

/// A place, and eight round it.
fn round(place: Point, radius: f64) -> impl Iterator<Item = Point> {
    let round = (0..8).map(move |eighth| place + Vec2::from_angle(f64::from(eighth) * FRAC_PI_4) * radius);
    round.chain([place])
}

/// A drawing without one of its leaders: what that leader and its balloon keep clear of.
struct Rest {
    /// Radius of the balloon with what stays free round it.
    radius: f64,
    bounds: Rect,
    room: (f64, f64),
    /// Dimensions and leaders.
    lines: Vec<Line>,
    /// Texts, dots and balloons.
    boxes: Vec<Rect>,
}

impl Rest {
    fn of(scene: &Scene, leader: &Leader, room: (f64, f64)) -> Self {
        let part = leader.part;
        let own = scene.elements.iter().find(|element| element.purpose == Purpose::Balloon(part));
        let own = own.map_or(Rect::ZERO, |balloon| balloon.primitive.bounds());
        let mut rest = Self {
            radius: leader.balloon + FREE,
            bounds: around([]),
            room,
            lines: scene.dimension_lines(),
            boxes: Vec::new(),
        };
        for element in &scene.elements {
            let bounds = element.primitive.bounds();
            match (element.purpose, &element.primitive) {
                (Purpose::Leader(of) | Purpose::Balloon(of), _) if of == part => continue,
                (_, Primitive::Text(_)) if own.contains(bounds.center()) => continue,
                (Purpose::Leader(_), Primitive::Lines(line)) => {
                    rest.lines.push(Line::new(line[0][0], line[0][1]));
                }
                (Purpose::Leader(_) | Purpose::Balloon(_), _) | (_, Primitive::Text(_)) => {
                    rest.boxes.push(bounds);
                }
                _ => {}
            }
            rest.bounds = rest.bounds.union(bounds);
        }
        rest
    }

    /// Whether the drawing has room with a balloon there.
    fn has_room(&self, place: Point) -> bool {
        let with = self.bounds.union(grown(around([place]), self.radius));
        with.width() <= self.room.0 && with.height() <= self.room.1
    }

    fn meets(&self, way: Line) -> bool {
        self.lines.iter().any(|line| segments_meet(way, *line))
            || self.boxes.iter().any(|kept| enters(way, *kept))
    }

    fn has_balloon(&self, place: Point) -> bool {
        let reach = grown(around([place]), self.radius);
        self.lines.iter().all(|line| line.nearest(place, 0.0).distance_sq.sqrt() > self.radius)
            && self.boxes.iter().all(|kept| !kept.overlaps(reach))
    }
}
