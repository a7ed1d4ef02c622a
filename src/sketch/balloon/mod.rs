//! Balloons in a row or column, with leaders that end in a dot inside their part (ISO 6433).

mod band;
mod placement;
mod targets;

use super::appearance::{Appearance, Pen, Tone};
use super::draft::Draft;
use super::letters::Anchor;
use super::options::Detail;
use super::plane::{Point, Rect, around, grown, unit};
use super::scene::{Primitive, Purpose};
use band::{Band, Frame};
use placement::Placement;
use targets::{Seen, Target};

/// A balloon to be placed: the part that it points at, and the letters in it.
#[derive(Debug, Clone)]
pub(crate) struct Balloon {
    pub part: usize,
    pub label: String,
    /// Whether it points at a gripping part: then it is black.
    pub grips: bool,
}

impl Draft<'_> {
    /// Radius of a balloon: two figures fit in it.
    pub fn balloon_radius(&self) -> f64 {
        0.86 * self.size()
    }

    /// Places balloons in the order of their numbers: in that order along the band wherever
    /// leaders then stay clear of each other. Where no band takes them all, the drawing isn't complete.
    pub fn balloons(&mut self, balloons: &[Balloon]) {
        let dot = 0.17 * self.size();
        let mut known: Option<(Band, Vec<Vec<Target>>)> = None;
        for (band, base) in self.bands() {
            let off = 0.55 * self.size() + self.balloon_radius();
            let level = if band == Band::Above { base.y0 - off } else { base.x1 + off };
            if !self.has_room(band, level) {
                continue;
            }
            if known.as_ref().is_none_or(|(of, _)| *of != band) {
                known = Some((band, self.targets(balloons, band, dot)));
            }
            let Some((_, targets)) = &known else { continue };
            let frame = Frame { band, level };
            if let Some(placed) = self.placed(targets, frame, base) {
                for (balloon, (place, target)) in balloons.iter().zip(placed) {
                    self.balloon(balloon, place, target, dot);
                }
                return;
            }
        }
        self.complete = false;
    }

    /// Where the leader of each balloon may end, for a band on that side.
    fn targets(&self, balloons: &[Balloon], band: Band, dot: f64) -> Vec<Vec<Target>> {
        let seen = Seen::of(&self.scene);
        balloons.iter().map(|balloon| seen.places(balloon.part, 2.2 * dot, band)).collect()
    }

    /// Places and targets of all balloons along a band, where none is in another's way.
    fn placed(&self, targets: &[Vec<Target>], frame: Frame, base: Rect) -> Option<Vec<(Point, Point)>> {
        if targets.iter().any(Vec::is_empty) {
            return None;
        }
        let slots = self.slots(frame, base, targets.len());
        let texts = self.scene.texts().map(|text| grown(text.bounds(), 0.2)).collect();
        let dimensions = self.scene.dimension_lines();
        Placement { targets, slots: &slots, frame, radius: self.balloon_radius(), texts, dimensions }.solve()
    }

    /// Bands in order of preference, with what they stand off from: the object, in full drawings its
    /// dimensions, too.
    fn bands(&self) -> Vec<(Band, Rect)> {
        let (object, all) = (self.scene.object_bounds(), self.scene.bounds());
        let beyond = Rect { y0: all.y0, x1: all.x1, ..object };
        // A column stands to the right of everything, so it may reach down beside the dimensions.
        let beside = Rect { y1: all.y1, ..beyond };
        let mut bands = vec![(Band::Above, beyond), (Band::Right, beside)];
        if self.options.detail != Detail::Full {
            bands.insert(0, (Band::Above, object));
        }
        bands
    }

    /// Whether the drawing still fits its room with balloons along a band.
    fn has_room(&self, band: Band, level: f64) -> bool {
        let (all, reach) = (self.bounds(), self.balloon_radius() + self.options.thick() / 2.0 + 0.1);
        let with = match band {
            Band::Above => Rect { y0: all.y0.min(level - reach), ..all },
            Band::Right => Rect { x1: all.x1.max(level + reach), ..all },
        };
        with.width() <= self.options.width.mm() && with.height() <= self.options.height.mm()
    }

    /// Positions along the band where a balloon would lie clear, in rising order.
    fn slots(&self, frame: Frame, object: Rect, count: usize) -> Vec<f64> {
        let radius = self.balloon_radius();
        let need = count as f64 * self.balloon_pitch();
        let (from, to) = match frame.band {
            Band::Above => (object.x0, object.x1),
            Band::Right => (object.y0, object.y1),
        };
        let spare = ((need - (to - from)) / 2.0).max(0.0);
        let room = match frame.band {
            Band::Above => self.options.width.mm() - self.bounds().width(),
            Band::Right => self.options.height.mm() - self.bounds().height(),
        };
        let (from, to) = (from - spare + radius, to + spare.max(room) - radius);
        let step = radius / 1.6;
        let steps = ((to - from) / step).floor().max(0.0) as usize;
        let all = (0..=steps).map(|index| from + index as f64 * step);
        all.filter(|&along| {
            let reach = grown(around([frame.place(along)]), radius + 0.3);
            self.scene.elements.iter().all(|element| match &element.primitive {
                Primitive::Text(text) => !text.bounds().overlaps(reach),
                primitive => element.purpose != Purpose::Dimension || !primitive.strokes_meet(reach),
            })
        })
        .collect()
    }

    /// Distance between centres of neighbouring balloons.
    pub fn balloon_pitch(&self) -> f64 {
        2.0 * self.balloon_radius() + 0.2 * self.size()
    }

    fn balloon(&mut self, balloon: &Balloon, place: Point, target: Point, dot: f64) {
        let radius = self.balloon_radius();
        let from = place + unit(target - place) * radius;
        self.thin(Purpose::Leader(balloon.part), &[from, target]);
        self.scene.circle(Purpose::Leader(balloon.part), target, dot, Appearance::solid(Tone::Ink));
        self.scene.circle(
            Purpose::Balloon(balloon.part),
            place,
            radius,
            Appearance::area(if balloon.grips { Tone::Ink } else { Tone::Paper }, Pen::Thin),
        );
        let number = self.level(place, Anchor::Middle, &balloon.label);
        if balloon.grips { self.scene.toned_text(number, Tone::Paper) } else { self.scene.text(number) }
    }
}
