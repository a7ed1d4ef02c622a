//! Balloons in a row or column, with leaders that end in a dot inside their part (ISO 6433).

mod band;
mod placement;
mod targets;

use super::appearance::{Appearance, Pen, Tone};
use super::draft::Draft;
use super::letters::Anchor;
use super::options::Detail;
use super::plane::{EMPTY, Point, Rect, around, grown, unit};
use super::scene::{Element, Primitive, Purpose};
use band::{Band, Frame};
use placement::{Placement, View};
use targets::Seen;

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
    /// leaders then stay clear of each other. Where neither a row nor a column takes them all, one of them stands
    /// beside the drawing and the others above it; where that does not do either, the drawing isn't complete.
    pub fn balloons(&mut self, balloons: &[Balloon]) {
        let bands = bands(std::slice::from_ref(self));
        let alone = std::slice::from_mut(self);
        let placed = along_a_band(alone, balloons, bands)
            || (0..balloons.len()).any(|aside| round_the_corner(alone, balloons, aside));
        self.complete &= placed;
    }

    /// What leaders may end at, so many places of each item at most, and keep clear of, for a band on that side.
    fn view(&self, balloons: &[Balloon], (band, dot): (Band, f64), most: usize) -> View {
        let seen = Seen::of(&self.scene);
        View {
            targets: balloons
                .iter()
                .map(|balloon| seen.places(balloon.part, 2.2 * dot, band, most))
                .collect(),
            kept_out: self.scene.texts().map(|text| grown(text.bounds(), 0.2)).chain(self.placed()).collect(),
            lines: self.scene.dimension_lines().into_iter().chain(self.scene.leaders()).collect(),
        }
    }

    /// Boxes round the dots and balloons that have their place.
    fn placed(&self) -> impl Iterator<Item = Rect> {
        let of_balloons =
            |element: &&Element| matches!(element.purpose, Purpose::Leader(_) | Purpose::Balloon(_));
        self.scene.elements.iter().filter(of_balloons).filter_map(|element| match element.primitive {
            Primitive::Circle(..) => Some(grown(element.primitive.bounds(), 0.3)),
            _ => None,
        })
    }

    /// Whether a balloon would lie on no text and no dimension.
    fn leaves_free(&self, reach: Rect) -> bool {
        self.scene.elements.iter().all(|element| match &element.primitive {
            Primitive::Text(text) => !text.bounds().overlaps(reach),
            primitive => {
                !matches!(element.purpose, Purpose::Dimension | Purpose::Leader(_) | Purpose::Balloon(_))
                    || !primitive.strokes_meet(reach)
            }
        })
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

/// Places balloons as [`Draft::balloons`] does, at the same places in each of several drawings of one object.
pub(crate) fn balloons_alike(drafts: &mut [Draft], balloons: &[Balloon]) {
    let bands = bands(drafts);
    if !along_a_band(drafts, balloons, bands) {
        drafts.iter_mut().for_each(|draft| draft.complete = false);
    }
}

/// Places balloons along the first of some bands that takes them all.
fn along_a_band(drafts: &mut [Draft], balloons: &[Balloon], bands: Vec<(Band, Rect)>) -> bool {
    let Some(first) = drafts.first() else { return true };
    let (size, radius, dot) = (first.size(), first.balloon_radius(), 0.17 * first.size());
    // Each place of each drawing is tried with all others.
    let most = if drafts.len() > 1 { 9 } else { 18 };
    let mut known: Option<(Band, Vec<View>)> = None;
    for (band, base) in bands {
        let off = 0.55 * size + radius;
        let level = if band == Band::Above { base.y0 - off } else { base.x1 + off };
        if !has_room(drafts, band, level) {
            continue;
        }
        if known.as_ref().is_none_or(|(of, _)| *of != band) {
            known =
                Some((band, drafts.iter().map(|draft| draft.view(balloons, (band, dot), most)).collect()));
        }
        let Some((_, views)) = &known else { continue };
        if views.iter().flat_map(|view| &view.targets).any(Vec::is_empty) {
            continue;
        }
        let frame = Frame { band, level };
        let slots = slots(drafts, frame, base, balloons.len());
        if let Some(placed) = (Placement { views, slots: &slots, frame, radius }).solve() {
            for (draft, placed) in drafts.iter_mut().zip(placed) {
                for (balloon, (place, target)) in balloons.iter().zip(placed) {
                    draft.balloon(balloon, place, target, dot);
                }
            }
            return true;
        }
    }
    false
}

/// Places one balloon beside the drawings and all others above them, where that keeps them clear of each other.
fn round_the_corner(drafts: &mut [Draft], balloons: &[Balloon], aside: usize) -> bool {
    let mut above = balloons.to_vec();
    let beside = [above.remove(aside)];
    let mut tried = drafts.to_vec();
    let of =
        |drafts: &[Draft], wanted| bands(drafts).into_iter().filter(|(band, _)| *band == wanted).collect();
    let row = of(&tried, Band::Above);
    if !along_a_band(&mut tried, &above, row) {
        return false;
    }
    let column = of(&tried, Band::Right);
    let placed = along_a_band(&mut tried, &beside, column);
    if placed {
        drafts.clone_from_slice(&tried);
    }
    placed
}

/// The box round all that is drawn, by a measure of each drawing.
fn boxed<'a>(drafts: &[Draft<'a>], of: impl Fn(&Draft<'a>) -> Rect) -> Rect {
    drafts.iter().fold(EMPTY, |sum, draft| sum.union(of(draft)))
}

/// Bands in order of preference, with what they stand off from: the object, in full drawings its
/// dimensions, too.
fn bands(drafts: &[Draft]) -> Vec<(Band, Rect)> {
    let object = boxed(drafts, |draft| draft.scene.object_bounds());
    let all = boxed(drafts, |draft| draft.scene.bounds());
    let beyond = Rect { y0: all.y0, x1: all.x1, ..object };
    // A column stands to the right of everything, so it may reach down beside the dimensions.
    let beside = Rect { y1: all.y1, ..beyond };
    let mut bands = vec![(Band::Above, beyond), (Band::Right, beside)];
    if drafts.iter().any(|draft| draft.options.detail != Detail::Full) {
        bands.insert(0, (Band::Above, object));
    }
    bands
}

/// Whether the drawings still fit their room with balloons along a band.
fn has_room(drafts: &[Draft], band: Band, level: f64) -> bool {
    let all = boxed(drafts, Draft::bounds);
    drafts.iter().all(|draft| {
        let reach = draft.balloon_radius() + draft.options.thick() / 2.0 + 0.1;
        let with = match band {
            Band::Above => Rect { y0: all.y0.min(level - reach), ..all },
            Band::Right => Rect { x1: all.x1.max(level + reach), ..all },
        };
        with.width() <= draft.options.width.mm() && with.height() <= draft.options.height.mm()
    })
}

/// Positions along the band where a balloon would lie clear in all drawings, in rising order.
fn slots(drafts: &[Draft], frame: Frame, object: Rect, count: usize) -> Vec<f64> {
    let Some(first) = drafts.first() else { return Vec::new() };
    let (radius, bounds) = (first.balloon_radius(), boxed(drafts, Draft::bounds));
    let need = count as f64 * first.balloon_pitch();
    let (from, to) = match frame.band {
        Band::Above => (object.x0, object.x1),
        Band::Right => (object.y0, object.y1),
    };
    let spare = ((need - (to - from)) / 2.0).max(0.0);
    let room = match frame.band {
        Band::Above => first.options.width.mm() - bounds.width(),
        Band::Right => first.options.height.mm() - bounds.height(),
    };
    let (from, to) = (from - spare + radius, to + spare.max(room) - radius);
    let step = radius / 1.6;
    let steps = ((to - from) / step).floor().max(0.0) as usize;
    let all = (0..=steps).map(|index| from + index as f64 * step);
    all.filter(|&along| {
        let reach = grown(around([frame.place(along)]), radius + 0.3);
        drafts.iter().all(|draft| draft.leaves_free(reach))
    })
    .collect()
}
