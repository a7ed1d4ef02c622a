//! A wrong part on a contact wire, from new to as worn as it may be: what stands proud on new wire can go in on worn wire.

use super::visibility::{visible, worst};
use super::{contradicted, held};
use crate::catalogue::{Conductor, StandOut};
use crate::grip::{HeldConductor, HeldConstruction, Outcome, Verdict};
use crate::units::{Length, Range};

/// What comes of something built in, over all the wear of its conductor.
#[derive(Debug, Clone)]
pub(super) struct OverWear {
    /// The worst of it.
    pub(super) outcome: Outcome,
    /// The remaining height at which that is, and what comes of it on new wire; `None` where new wire is the worst, which
    /// every other conductor is.
    pub(super) worn: Option<(Length, Outcome)>,
    /// Where it can stand out, over wear and tolerances; `None` where that is not known.
    pub(super) stand_outs: Option<Range<Length>>,
}

impl OverWear {
    /// Of a conductor that does not wear, or as if it did not.
    pub(super) fn when_new(outcome: Outcome) -> Self {
        Self { stand_outs: outcome.stand_out_interval, outcome, worn: None }
    }

    /// The remaining height at which it comes to that; `None` on new wire.
    pub(super) fn height(&self) -> Option<Length> {
        self.worn.as_ref().map(|(height, _)| *height)
    }
}

/// By what something wrong is judged: where its fitting's own part stands out, from how much on nobody overlooks it, and
/// whether it is proven.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sight<'a> {
    pub(super) stated: Option<&'a StandOut>,
    pub(super) least: Length,
    pub(super) proven: bool,
}

/// The worst that comes of something over the wear of a conductor, from what comes of it on new wire and `at` each height.
///
/// Of what is proven first where geometry contradicts that; then hidden before visible, visible before what won't go in;
/// among equals new wire. A wedge sinks with the height of the wire: where it stands out on new wire and lies deep at the lowest
/// height, it stands like the right one somewhere between.
pub(super) fn over_wear(
    conductor: &Conductor,
    new: Outcome,
    sight: Sight<'_>,
    at: impl Fn(&HeldConductor) -> Vec<Outcome>,
) -> OverWear {
    let Some(lowest) = conductor.lowest_height() else {
        return OverWear::when_new(new);
    };
    let wire = held(conductor);
    let at = |height: Length| {
        let outcomes = at(&wire.worn_to(height)?);
        worst(&outcomes, sight.stated, sight.least).cloned()
    };
    let Some(last) = at(lowest) else { return OverWear::when_new(new) };
    let stand_outs = reach(&new).zip(reach(&last)).map(|(new, last)| hull(new, last));
    let unseen = height_in_window(&wire, lowest, [&new, &last], sight.stated, &at);
    let between = unseen.and_then(|height| Some((Some(height), at(height)?)));
    let all = [Some((None, new.clone())), between, Some((Some(lowest), last))];
    let weight = |outcome: &Outcome| {
        let refuted = sight.proven && contradicted(outcome);
        let shows = visible(outcome, sight.stated, sight.least);
        (outcome.verdict == Verdict::WillNotEnter, !refuted, shows)
    };
    let worst = all.into_iter().flatten().min_by_key(|(_, outcome)| weight(outcome));
    let (worn_to, outcome) = worst.unwrap_or_else(|| (None, Outcome::of(Verdict::Unknown)));
    OverWear { outcome, worn: worn_to.map(|height| (height, new)), stand_outs }
}

/// Where something can stand out; what does not go in is taken to stand out as far as it would be too thick.
fn reach(outcome: &Outcome) -> Option<Range<Length>> {
    let refused = outcome.depth.filter(|_| outcome.verdict == Verdict::WillNotEnter);
    outcome.stand_out_interval.or_else(|| refused.map(|depth| Range::at(-depth)))
}

fn hull(one: Range<Length>, other: Range<Length>) -> Range<Length> {
    Range::between(one.least().min(other.least()), one.most().max(other.most()))
}

/// The height at which a wedge stands in the middle of its fitting's window, where it passes that between new and lowest.
fn height_in_window(
    wire: &HeldConductor,
    lowest: Length,
    [new, last]: [&Outcome; 2],
    stated: Option<&StandOut>,
    at: &impl Fn(Length) -> Option<Outcome>,
) -> Option<Length> {
    let HeldConstruction::Grooved { height, .. } = wire.construction else { return None };
    let window = stated?.seated?;
    let wanted = (window.least() + window.most()) * -0.5;
    if new.depth? >= wanted || last.depth? <= wanted {
        return None;
    }
    let (mut above, mut below) = (height, lowest);
    for _ in 0..HALVINGS {
        let middle = (above + below) * 0.5;
        if at(middle)?.depth? < wanted { above = middle } else { below = middle }
    }
    Some(below)
}

/// Halves some millimetres to less than any digit that is kept.
const HALVINGS: usize = 44;
