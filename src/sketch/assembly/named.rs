//! What stands on the parts and is named in the drawing: the stamp's place, the slip mark.

use super::Figure;
use super::scaled_draft::ScaledDraft;
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
    if let Some(place) = stamp_place(setup).and_then(|place| figure.stamped(place)) {
        let target = scaled.place(place);
        point_at(&mut scaled.draft, target, "stamp");
    }
    if let Some(mark) = slip_mark(&scaled.draft) {
        let edge = at(mark.center().x, mark.y1);
        point_at(&mut scaled.draft, edge, "slip mark");
    }
}

/// Where the stamp of the gripping part stands.
fn stamp_place(setup: &Setup) -> Option<StampPlace> {
    let gripping = setup.parts.iter().find(|part| part.role.grips())?;
    gripping.stamp_on.filter(|_| !gripping.stamp.is_empty())
}

/// The paint on the conductor.
fn slip_mark(draft: &Draft) -> Option<Rect> {
    let painted = draft.scene.elements.iter().find(|element| element.appearance.fill == Some(Tone::Signal));
    painted.map(|element| element.primitive.bounds())
}

/// A word with an arrow to a place, where the nearest clear one is; none where the room has no such place.
fn point_at(draft: &mut Draft, target: Point, word: &str) {
    let mut places = places(draft, target, word);
    places.sort_by(|one, other| one.0.total_cmp(&other.0));
    let bounds = draft.bounds();
    let lines: Vec<Line> = draft.scene.dimension_lines().into_iter().chain(draft.scene.leaders()).collect();
    let free = places.into_iter().find(|(_, text, line)| {
        has_room(draft, bounds, text)
            && !lines.iter().any(|of| segments_meet(*line, *of))
            && is_free(draft, text, *line)
    });
    let Some((_, text, line)) = free else { return };
    draft.thin(Purpose::Dimension, &[line.p0, line.p1]);
    draft.arrowhead(line.p1, line.p0 - line.p1);
    draft.scene.text(text);
}

/// Places above and below the object, each with how long its arrow is.
fn places(draft: &Draft, target: Point, word: &str) -> Vec<(f64, Text, Line)> {
    let (object, size) = (draft.scene.object_bounds(), draft.size());
    let rows = [0.8, 2.0, 3.2, 4.4]
        .into_iter()
        .flat_map(|off| [(object.y0 - off * size, 0.8 * size), (object.y1 + off * size, -0.8 * size)]);
    let columns = (-6..=6).map(|step| target.x + f64::from(step) * 1.5 * size);
    let all = rows.flat_map(|row| columns.clone().map(move |x| (x, row)));
    let arrows = all.map(|(x, (y, foot))| {
        let text = draft.level(at(x, y), Anchor::Middle, word);
        let line = Line::new(at(x, y + foot), target);
        (line.p0.distance(line.p1), text, line)
    });
    // A shorter arrow would lie on its word.
    arrows.filter(|(length, ..)| *length >= 1.3 * size).collect()
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
