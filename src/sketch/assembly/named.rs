//! What stands on the parts and is named in the drawing: the stamp's place, the slip mark.

use super::Figure;
use super::scaled_draft::ScaledDraft;
use super::seen::Seen;
use super::setup::Setup;

use crate::catalogue::StampPlace;
use crate::sketch::appearance::Tone;
use crate::sketch::draft::Draft;
use crate::sketch::letters::{Anchor, Text};
use crate::sketch::options::Detail;
use crate::sketch::plane::{Line, Point, Rect, at, enters, grown, segments_meet};
use crate::sketch::scene::{Primitive, Purpose};

/// Names the stamp's place and the slip mark where the records have them and a word finds a clear place.
pub(super) fn name(scaled: &mut ScaledDraft, setup: &Setup, figure: &dyn Figure) {
    if scaled.draft.options.detail < Detail::Card {
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
    places.sort_by(|one, other| one.0.total_cmp(&other.0));
    let bounds = draft.bounds();
    let lines: Vec<Line> = draft.scene.dimension_lines().into_iter().chain(draft.scene.leaders()).collect();
    let free = places.into_iter().find(|(_, text, line)| {
        has_room(draft, bounds, text)
            && !lines.iter().any(|of| segments_meet(*line, *of))
            && seen.is_open(on, *line)
            && is_free(draft, text, *line)
    });
    let Some((_, text, line)) = free else { return };
    draft.thin(Purpose::Pointer, &[line.p0, line.p1]);
    draft.arrowhead(line.p1, line.p0 - line.p1);
    draft.scene.text(text);
}

/// Places above and below the object and on its right, each with how long its arrow is.
fn places(draft: &Draft, target: Point, word: &str) -> Vec<(f64, Text, Line)> {
    let (object, size) = (draft.scene.object_bounds(), draft.size());
    let rows = ROWS.into_iter().flat_map(|off| [object.y0 - off * size, object.y1 + off * size]);
    let columns = (-12..=12).map(|step| target.x + f64::from(step) * 0.75 * size);
    let in_rows =
        rows.flat_map(|y| columns.clone().map(move |x| draft.level(at(x, y), Anchor::Middle, word)));
    let beside = ROWS.into_iter().flat_map(|off| {
        let x = object.x1 + off * size;
        (-4..=4).map(move |step| draft.level(at(x, target.y + f64::from(step) * size), Anchor::Start, word))
    });
    let arrows = in_rows.chain(beside).flat_map(|text| {
        let starts = starts(text.bounds(), target, 0.3 * size);
        starts.map(|start| (start.distance(target), text.clone(), Line::new(start, target)))
    });
    // A shorter arrow would lie on its word.
    let is_off = |text: &Text, line| !enters(line, grown(text.bounds(), 0.1 * size));
    arrows.filter(|(length, text, line)| *length >= 1.3 * size && is_off(text, *line)).collect()
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

/// Whether a drawing of these bounds stays in its room with a word.
fn has_room(draft: &Draft, bounds: Rect, text: &Text) -> bool {
    let whole = bounds.union(grown(apart(draft, text), 0.1));
    whole.width() <= draft.options.width.mm() && whole.height() <= draft.options.height.mm()
}

/// The box of a word with what keeps it from being read as one with another in its row.
fn apart(draft: &Draft, text: &Text) -> Rect {
    text.bounds().inflate(0.7 * draft.size(), 0.14 * draft.size())
}

/// Whether a word lies on nothing, and its arrow on no word and no balloon.
fn is_free(draft: &Draft, text: &Text, line: Line) -> bool {
    draft.scene.is_clear(apart(draft, text))
        && draft.scene.elements.iter().all(|element| match (&element.primitive, element.purpose) {
            (Primitive::Text(other), _) => !enters(line, grown(other.bounds(), 0.2)),
            (primitive, Purpose::Leader(_) | Purpose::Balloon(_)) => {
                !enters(line, primitive.bounds()) || matches!(primitive, Primitive::Lines(_))
            }
            _ => true,
        })
}
