//! A fitting with a wrong part in it, in place as it is computed.

use super::dead_end::level;
use super::scaled_draft::ScaledDraft;
use super::setup::Setup;
use super::{Figure, Pose, caption, figure, scales};
use crate::catalogue::{Family, Fitting, Part};
use crate::grip::{Outcome, Verdict};
use crate::sketch::balloon::Balloon;
use crate::sketch::dimension::Prefer;
use crate::sketch::draft::{Caption, fit};
use crate::sketch::drawing::Drawing;
use crate::sketch::letters::Anchor;
use crate::sketch::options::{Detail, Options};
use crate::sketch::plane::at;
use crate::sketch::scale::Scale;
use crate::units::Length;

/// A fitting with another part in place of its own, as the outcome says: proud of the face,
/// deeper than it should be with the gap that is left, beside the conductor where it won't go on.
///
/// The length that tells it apart is dimensioned where it is known; what it comes to is lettered below.
#[must_use]
pub fn wrong_part(
    fitting: &Fitting,
    part: &Part,
    outcome: &Outcome,
    summary: &str,
    options: &Options,
) -> Drawing {
    let setup = Setup::with(fitting, part, outcome);
    let lettered = |options: &Options| words(&setup, summary, options);
    let pose = pose(&setup, outcome);
    let figure = figure(&setup, pose);
    let scales = scales(&setup, &*figure, pose, options);
    let less =
        [Detail::Full, Detail::Card, Detail::Bare].into_iter().filter(|detail| *detail <= options.detail);
    for detail in less {
        let options = Options { detail, ..*options };
        let found = fit(&scales, |scale| {
            compose(&setup, &*figure, pose, &lettered(&options), part, &options, scale).draft
        });
        if let Some((scale, draft)) = found
            && draft.fits()
            && (draft.complete || detail == Detail::Bare)
        {
            return draft.finish(titled(&setup, &*figure, part, &lettered(&options), scale, &options));
        }
    }
    let options = Options { detail: Detail::Bare, ..*options };
    let scale = Scale(scales.last().map_or(0.01, |scale| scale.0));
    let draft = compose(&setup, &*figure, pose, &lettered(&options), part, &options, scale).draft;
    draft.finish(titled(&setup, &*figure, part, &lettered(&options), scale, &options))
}

/// A part that can't be put on is drawn behind the fitting.
fn pose(setup: &Setup, outcome: &Outcome) -> Pose {
    let dead_end = matches!(setup.fitting.family, Family::ConeDeadEnd | Family::WedgeDeadEnd);
    if outcome.verdict != Verdict::WillNotEnter || !dead_end {
        return Pose::default();
    }
    let seated = figure(setup, Pose::default());
    let away = seated.rear(setup) + 1.2 * seated.gripping_length();
    Pose { cone: away, closing: away + 0.7 * seated.gripping_length(), conductor: 0.0 }
}

fn compose<'a>(
    setup: &Setup,
    figure: &dyn Figure,
    pose: Pose,
    words: &str,
    wrong: &Part,
    options: &'a Options<'a>,
    scale: Scale,
) -> ScaledDraft<'a> {
    let mut scaled = ScaledDraft::new(options, scale);
    scaled.draft.scene.unsound = figure.proportions().unsound;
    figure.draw(&mut scaled, setup, pose);
    if !options.speaks() {
        return scaled;
    }
    if pose == Pose::default() {
        dimension(&mut scaled, setup, figure);
    }
    let foot = scaled.draft.scene.bounds().y1 + 0.9 * scaled.draft.size();
    let left = scaled.draft.scene.object_bounds().x0;
    scaled.draft.text_at_first_clear(&[(at(left, foot), Anchor::Start)], words);
    let wrong = setup.parts.iter().position(|part| part.number == wrong.number);
    let items: Vec<Balloon> =
        wrong.map(|part| Balloon { part, label: "×".to_owned(), grips: true }).into_iter().collect();
    scaled.draft.balloons(&items);
    scaled
}

/// Proud or sunk: from the body's face to the gripping part's.
fn dimension(scaled: &mut ScaledDraft, setup: &Setup, figure: &dyn Figure) {
    let Some(ends) =
        figure.measures(setup).and_then(|measures| measures.faces.map(|faces| (measures.edges, faces)))
    else {
        return;
    };
    let (edges, faces) = ends;
    let by = faces.1.x - faces.0.x;
    if by.abs() < 0.05
        || setup.outcome.as_ref().is_none_or(|outcome| outcome.stand_out.or(outcome.depth).is_none())
    {
        return;
    }
    let line = scaled.place(at(0.0, edges.0)).y - 0.9 * scaled.draft.size();
    let verdict = setup.outcome.as_ref().map(|outcome| outcome.verdict);
    let name = match (by > 0.0, verdict) {
        (true, Some(Verdict::StandsProud)) => "proud by",
        (true, _) => "stand-out",
        (false, _) => "below the face by",
    };
    let text = scaled.draft.options.numerals.length(Length::from_mm(by.abs()), 1);
    level(scaled, name, text, faces, line, Prefer::Before);
}

/// What it comes to, with the gap that a shut cone leaves.
fn words(setup: &Setup, summary: &str, options: &Options) -> String {
    let gap = setup.outcome.as_ref().and_then(gap);
    match gap {
        Some(gap) => format!("{summary}: loose by {}", options.numerals.length(gap, 1)),
        None => summary.to_owned(),
    }
}

/// Diameter that the conductor lacks to be held.
fn gap(outcome: &Outcome) -> Option<Length> {
    if outcome.verdict != Verdict::ClosesWithoutGripping {
        return None;
    }
    let gap = outcome.clearance? - outcome.closure?;
    (gap.mm() >= 0.05).then_some(gap)
}

fn titled(
    setup: &Setup,
    figure: &dyn Figure,
    part: &Part,
    words: &str,
    scale: Scale,
    options: &Options,
) -> Caption {
    let whole = caption(setup, figure, scale, options);
    let title = format!("{} with the wrong part, {}", setup.fitting.name, part.number);
    let description = format!("{title}: {words}. {}", whole.description);
    Caption { title, description, ..whole }
}
