//! Which row or column of balloons a drawing has room for, and where in it.

use super::band::{Band, Frame};
use crate::sketch::draft::Draft;
use crate::sketch::options::Detail;
use crate::sketch::plane::{EMPTY, Point, Rect, around, grown};

/// A band that balloons may stand in, with what it stands off from.
#[derive(Clone, Copy)]
pub(super) struct Room {
    pub frame: Frame,
    base: Rect,
    /// The box round the drawings with their lines.
    all: Rect,
}

impl Room {
    /// Those that the drawings have room for, in order of preference. Rows stand off from the object, in full drawings from
    /// its dimensions, too; columns from everything.
    pub fn all(drafts: &[Draft]) -> Vec<Self> {
        let object = boxed(drafts, |draft| draft.scene.object_bounds());
        let all = boxed(drafts, |draft| draft.scene.bounds());
        let with_lines = boxed(drafts, Draft::bounds);
        // A column stands beside everything, so it may reach down beside the dimensions.
        let beyond = |band: Band| match band {
            Band::Above => Rect { y0: all.y0, ..object },
            Band::Below => Rect { y1: all.y1, ..object },
            Band::Right | Band::Left => {
                Rect { x0: all.x0, x1: all.x1, y0: all.y0.min(object.y0), y1: all.y1 }
            }
        };
        let mut rooms: Vec<(Band, Rect)> = Band::ALL.into_iter().map(|band| (band, beyond(band))).collect();
        if drafts.iter().any(|draft| draft.options.detail != Detail::Full) {
            rooms.insert(0, (Band::Above, object));
        }
        let rooms = rooms.into_iter().filter_map(|(band, base)| Self::of(drafts, band, base, with_lines));
        rooms.collect()
    }

    /// The band, where the drawings still fit their room with it.
    fn of(drafts: &[Draft], band: Band, base: Rect, all: Rect) -> Option<Self> {
        let first = drafts.first()?;
        let radius = first.balloon_radius();
        let level = band.level(base, 0.55 * first.size() + radius);
        let fits = |draft: &Draft| {
            let reach = reach(draft);
            let with = match band {
                Band::Above => Rect { y0: all.y0.min(level - reach), ..all },
                Band::Right => Rect { x1: all.x1.max(level + reach), ..all },
                Band::Below => Rect { y1: all.y1.max(level + reach), ..all },
                Band::Left => Rect { x0: all.x0.min(level - reach), ..all },
            };
            with.width() <= draft.options.width.mm() && with.height() <= draft.options.height.mm()
        };
        drafts.iter().all(fits).then_some(Self { frame: Frame { band, level }, base, all })
    }

    /// Whether the drawings still fit their room with balloons at these places.
    pub fn holds(self, drafts: &[Draft], places: impl IntoIterator<Item = Point>) -> bool {
        let Some(first) = drafts.first() else { return true };
        let all = self.all.union(grown(around(places), reach(first)));
        all.width() <= first.options.width.mm() && all.height() <= first.options.height.mm()
    }

    /// Where one balloon may stand so that the drawings still fit their room, no further beyond them than `most`.
    pub fn left(drafts: &[Draft], most: f64) -> Rect {
        let all = boxed(drafts, Draft::bounds);
        let Some(first) = drafts.first() else { return all };
        let beyond = |room: f64, taken: f64| (room - taken - reach(first)).min(most);
        all.inflate(
            beyond(first.options.width.mm(), all.width()),
            beyond(first.options.height.mm(), all.height()),
        )
    }

    /// Positions along the band where a balloon would lie clear in all drawings, in rising order.
    pub fn slots(self, drafts: &[Draft], count: usize) -> Vec<f64> {
        let Some(first) = drafts.first() else { return Vec::new() };
        let (radius, bounds) = (first.balloon_radius(), self.all);
        let need = count as f64 * first.balloon_pitch();
        let (from, to) = self.frame.band.extent(self.base);
        let spare = ((need - (to - from)) / 2.0).max(0.0);
        let room = if self.frame.band.is_level() {
            first.options.width.mm() - bounds.width()
        } else {
            first.options.height.mm() - bounds.height()
        };
        let (from, to) = (from - spare + radius, to + spare.max(room) - radius);
        let step = radius / 1.6;
        let steps = ((to - from) / step).floor().max(0.0) as usize;
        let all = (0..=steps).map(|index| from + index as f64 * step);
        all.filter(|&along| {
            let reach = grown(around([self.frame.place(along)]), radius + 0.3);
            drafts.iter().all(|draft| draft.leaves_free(reach))
        })
        .collect()
    }
}

/// How far a balloon with its line reaches from its middle.
fn reach(draft: &Draft) -> f64 {
    draft.balloon_radius() + draft.options.thick() / 2.0 + 0.1
}

/// The box round all that is drawn, by a measure of each drawing.
fn boxed<'a>(drafts: &[Draft<'a>], of: impl Fn(&Draft<'a>) -> Rect) -> Rect {
    drafts.iter().fold(EMPTY, |sum, draft| sum.union(of(draft)))
}
