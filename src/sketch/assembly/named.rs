//! What stands on the parts and is named in the drawing: the stamp's place, the slip mark.

use super::Figure;
use super::scaled_draft::ScaledDraft;
use super::seen::Seen;
use super::setup::Setup;
use crate::catalogue::StampPlace;
use crate::sketch::appearance::Tone;
use crate::sketch::draft::Draft;
use crate::sketch::letters::Anchor;
use crate::sketch::options::Detail;
use crate::sketch::plane::{Line, Point, Rect, at, enters, grown, segments_meet};
use crate::sketch::scene::{Primitive, Purpose};

/// Names the stamp's place and the slip mark where the records have them and a word finds a clear place.
pub(super) fn name(scaled: &mut ScaledDraft, setup: &Setup, figure: &dyn Figure) {
    // Of a drawing that is tried at a scale and does not do, nothing is looked for.
    let is_drawn = scaled.draft.complete && scaled.draft.fits();
    if scaled.draft.options.detail < Detail::Card || !is_drawn {
        return;
    }
    if let Some((part, place)) = stamp_place(setup) {
        let edges = figure.stamped(place);
        let targets = edges.iter().flat_map(|edge| ALONG.map(|part| edge.p0.lerp(edge.p1, part)));
        let targets: Vec<Point> = targets.map(|place| scaled.place(place)).collect();
        point_at(&mut scaled.draft, Named { word: "stamp", on: Some(part), targets });
    }
    if let Some(mark) = slip_mark(&scaled.draft) {
        let targets = [mark.y1, mark.y0].map(|y| at(mark.center().x, y)).to_vec();
        point_at(&mut scaled.draft, Named { word: "slip mark", on: None, targets });
    }
}

/// Where on an edge an arrow may end, as parts of its length.
const ALONG: [f64; 5] = [0.5, 0.25, 0.75, 0.85, 0.95];

/// The face of a cone's thick end, cut above the axis and seen below it: from its hole to its flank.
pub(super) fn thick_end(on: StampPlace, (x, radius): (f64, f64), hole: f64) -> Vec<Line> {
    let face = |side: f64| Line::new(at(x, side * hole), at(x, side * radius));
    if on == StampPlace::ThickEnd { vec![face(-1.0), face(1.0)] } else { Vec::new() }
}

/// What is named.
struct Named {
    word: &'static str,
    /// The part that it stands on; nothing where it is the conductor.
    on: Option<usize>,
    /// Where an arrow to it may end.
    targets: Vec<Point>,
}

/// The gripping part, and where its stamp stands.
fn stamp_place(setup: &Setup) -> Option<(usize, StampPlace)> {
    let (part, gripping) = setup.parts.iter().enumerate().find(|(_, part)| part.role.grips())?;
    Some((part, gripping.stamp_on.filter(|_| !gripping.stamp.is_empty())?))
}

/// The paint on the conductor.
fn slip_mark(draft: &Draft) -> Option<Rect> {
    let painted = draft.scene.elements.iter().find(|element| element.appearance.fill == Some(Tone::Signal));
    painted.map(|element| element.primitive.bounds())
}

/// A word with the shortest arrow to what it names that goes over no other part; none where no arrow does so, since one
/// across another part points at that part.
fn point_at(draft: &mut Draft, named: Named) {
    let Named { word, on, targets } = named;
    let seen = Seen::of(draft);
    let targets = targets.into_iter().filter(|target| seen.is_seen(on, *target));
    let mut places: Vec<_> = targets.flat_map(|target| places(draft, target, word)).collect();
    places.sort_by(|one, other| one.length.total_cmp(&other.length));
    let lines: Vec<Line> = draft.scene.dimension_lines().into_iter().chain(draft.scene.leaders()).collect();
    let free = places.into_iter().find(|arrow| {
        !lines.iter().any(|of| segments_meet(arrow.line, *of))
            && is_free(draft, arrow.line)
            && seen.is_open(on, arrow.line)
    });
    let Some(Arrow { word: (place, anchor), line, .. }) = free else { return };
    let text = draft.level(place, anchor, word);
    draft.thin(Purpose::Pointer, &[line.p0, line.p1]);
    draft.arrowhead(line.p1, line.p0 - line.p1);
    draft.scene.text(text);
}

/// A word with its arrow.
struct Arrow {
    length: f64,
    word: (Point, Anchor),
    line: Line,
}

/// Places above and below the object and on its right that have room for the word, each with how long its arrow is.
fn places(draft: &Draft, target: Point, word: &str) -> Vec<Arrow> {
    let (object, size) = (draft.scene.object_bounds(), draft.size());
    // Measured once: there are hundreds of places.
    let [middle, start] = [Anchor::Middle, Anchor::Start].map(|anchor| {
        let bounds = draft.level(Point::ORIGIN, anchor, word).bounds();
        move |place: Point| ((place, anchor), bounds + place.to_vec2())
    });
    let rows = ROWS.into_iter().flat_map(|off| [object.y0 - off * size, object.y1 + off * size]);
    let columns = (-12..=12).map(|step| target.x + f64::from(step) * 0.75 * size);
    let in_rows = rows.flat_map(|y| columns.clone().map(move |x| middle(at(x, y))));
    let beside = ROWS.into_iter().flat_map(|off| {
        let x = object.x1 + off * size;
        (-4..=4).map(move |step| start(at(x, target.y + f64::from(step) * size)))
    });
    let drawn = draft.bounds();
    let free = in_rows.chain(beside).filter(|(_, word)| has_room(draft, drawn, *word));
    let arrows = free.flat_map(|(word, bounds)| {
        let lines = starts(bounds, target, 0.3 * size).map(|start| Line::new(start, target));
        // A shorter arrow would lie on its word.
        let is_off =
            move |arrow: &Arrow| arrow.length >= 1.3 * size && !enters(arrow.line, grown(bounds, 0.1 * size));
        let arrows = lines.map(|line| Arrow { length: line.p0.distance(line.p1), word, line });
        arrows.into_iter().filter(is_off)
    });
    arrows.collect()
}

/// How far words stand off the object, in sizes of type.
const ROWS: [f64; 7] = [0.8, 1.4, 2.0, 2.6, 3.2, 3.8, 4.4];

/// Where an arrow to a place may begin round a word, so far off it: at its side or under it, towards the place.
fn starts(word: Rect, target: Point, off: f64) -> [Point; 4] {
    let middle = word.center();
    let y = if target.y > middle.y { word.y1 + off } else { word.y0 - off };
    let x = if target.x > middle.x { word.x1 + off } else { word.x0 - off };
    let aside = 0.35 * word.width();
    [at(middle.x, y), at(middle.x - aside, y), at(middle.x + aside, y), at(x, middle.y)]
}

/// Whether a word of this box lies on nothing, and a drawing of these bounds stays in its room with it.
fn has_room(draft: &Draft, drawn: Rect, word: Rect) -> bool {
    // With what keeps it from being read as one with another in its row.
    let apart = word.inflate(0.7 * draft.size(), 0.14 * draft.size());
    let whole = drawn.union(grown(apart, 0.1));
    whole.width() <= draft.options.width.mm()
        && whole.height() <= draft.options.height.mm()
        && draft.scene.is_clear(apart)
}

/// Whether an arrow lies on no word and no balloon.
fn is_free(draft: &Draft, line: Line) -> bool {
    draft.scene.elements.iter().all(|element| match (&element.primitive, element.purpose) {
        (Primitive::Text(other), _) => !enters(line, grown(other.bounds(), 0.2)),
        (primitive, Purpose::Leader(_) | Purpose::Balloon(_)) => {
            !enters(line, primitive.bounds()) || matches!(primitive, Primitive::Lines(_))
        }
        _ => true,
    })
}
