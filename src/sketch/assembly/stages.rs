//! A fitting in three stages: apart, entered, seated, on one frame at one scale.

use super::moves::{self, Moved};
use super::setup::Setup;
use super::{Figure, Pose, caption, figure, items, scales, without_balloons};
use crate::catalogue::{Family, Fitting, Limits};
use crate::sketch::balloon::balloons_alike;
use crate::sketch::draft::{Caption, Draft};
use crate::sketch::drawing::Drawing;
use crate::sketch::options::{Detail, Options};
use crate::sketch::plane::{EMPTY, Rect};
use crate::sketch::scale::Scale;

/// The three stages of putting a fitting together: apart, entered, seated.
///
/// All are drawn at one scale in one frame, with what does not move and every balloon at the same place, so that one can
/// take the other's place on a page. What moves into its place has an arrow. The seated one has the lengths that are
/// measured on it. `limits` are those of the catalogue that the fitting is from.
#[must_use]
pub fn stages(fitting: &Fitting, limits: &Limits, options: &Options) -> [Drawing; 3] {
    let setup = Setup::of(fitting, limits);
    let poses = poses(&setup, &*figure(&setup, Pose::default()));
    let figures = poses.map(|pose| figure(&setup, pose));
    let widest = scales(&setup, &*figures[0], poses[0], options);
    let staged = Staged { setup, poses, figures };
    let less = [Detail::Full, Detail::Card, Detail::Items, Detail::Bare];
    let less = less.into_iter().filter(|detail| *detail <= options.detail);
    for (detail, alike) in less.flat_map(|detail| [(detail, true), (detail, false)]) {
        let options = Options { detail, ..*options };
        let least = LEAST_SHARE * widest.first().map_or(0.0, |scale| scale.0);
        for &scale in widest.iter().filter(|scale| detail == Detail::Bare || scale.0 >= least) {
            let (drafts, moved) = staged.drafts(&options, scale, alike);
            let frame = frame(&drafts);
            if fits(frame, &options) && drafts.iter().all(|draft| draft.complete || detail == Detail::Bare) {
                return staged.written(drafts, &moved, scale, &options);
            }
        }
    }
    let options = Options { detail: Detail::Bare, ..*options };
    let scale = Scale(widest.last().map_or(0.01, |scale| scale.0));
    let (drafts, moved) = staged.drafts(&options, scale, false);
    staged.written(drafts, &moved, scale, &options)
}

/// The share of the largest scale that balloons and dimensions must leave: what can't be made out is not worth them.
const LEAST_SHARE: f64 = 0.4;

/// A fitting in its three poses.
struct Staged<'s> {
    setup: Setup<'s>,
    poses: [Pose; 3],
    figures: [Box<dyn Figure>; 3],
}

impl Staged<'_> {
    /// The stages at a scale, with what has moved since the one before: `alike` with balloons at the same places.
    fn drafts<'a>(
        &self,
        options: &'a Options<'a>,
        scale: Scale,
        alike: bool,
    ) -> ([Draft<'a>; 3], [Vec<Moved>; 3]) {
        let draw = |stage: usize| {
            without_balloons(&self.setup, &*self.figures[stage], self.poses[stage], options, scale).draft
        };
        let mut drafts = [0, 1, 2].map(draw);
        if !options.speaks() {
            return (drafts, [Vec::new(), Vec::new(), Vec::new()]);
        }
        let moved = [
            Vec::new(),
            moves::between(&self.setup, [&drafts[0], &drafts[1]], [self.poses[0], self.poses[1]]),
            moves::between(&self.setup, [&drafts[1], &drafts[2]], [self.poses[1], self.poses[2]]),
        ];
        for (draft, moved) in drafts.iter_mut().zip(&moved) {
            moves::draw(draft, moved);
        }
        let items = items(&self.setup);
        if alike {
            balloons_alike(&mut drafts, &items);
        } else {
            drafts.iter_mut().for_each(|draft| draft.balloons(&items));
        }
        (drafts, moved)
    }

    fn written(
        &self,
        drafts: [Draft; 3],
        moved: &[Vec<Moved>; 3],
        scale: Scale,
        options: &Options,
    ) -> [Drawing; 3] {
        let frame = frame(&drafts);
        let mut said = ["apart", "entered", "seated"].into_iter().zip(moved.iter());
        drafts.map(|draft| {
            let whole = caption(&self.setup, &*self.figures[2], scale, options);
            let (name, moved) =
                said.next().map_or(("", [].as_slice()), |(name, moved)| (name, moved.as_slice()));
            let title = format!("{}: {name}", whole.title);
            let description = format!("{}{}", whole.description, moves::words(moved));
            draft.finish_within(frame, Caption { title, description, ..whole })
        })
    }
}

/// How far parts are drawn away in each stage.
fn poses(setup: &Setup, seated: &dyn Figure) -> [Pose; 3] {
    let (rear, grip) = (seated.rear(setup), seated.gripping_length());
    let gap = 0.12 * grip;
    let inserted = setup.fitting.insertion.map_or(grip, |insertion| insertion.mm());
    let nothing = Pose::default();
    match setup.fitting.family {
        Family::ConeDeadEnd | Family::WedgeDeadEnd => {
            let away = rear + gap + 1.1 * grip;
            [
                Pose { cone: away, closing: away + 0.7 * grip, conductor: inserted + 5.0 },
                Pose { cone: (0.2 * grip).min(12.0), closing: rear + 0.7 * grip, conductor: 0.0 },
                nothing,
            ]
        }
        Family::Sleeve => [
            Pose { conductor: inserted + 6.0, ..nothing },
            Pose { conductor: 0.5 * inserted, ..nothing },
            nothing,
        ],
        Family::RopeThimble => {
            let away = 2.4 * setup.diameter() + grip;
            [
                Pose { cone: away, closing: 4.0 * setup.diameter(), conductor: 0.0 },
                Pose { cone: 0.0, closing: 4.0 * setup.diameter(), conductor: 0.0 },
                nothing,
            ]
        }
        Family::ParallelGroove | Family::Other => {
            let away = 1.2 * setup.diameter();
            [
                Pose { cone: away, closing: away, conductor: away },
                Pose { cone: 0.5 * away, closing: 0.0, conductor: 0.0 },
                nothing,
            ]
        }
    }
}

fn frame(drafts: &[Draft; 3]) -> Rect {
    drafts.iter().fold(EMPTY, |sum, draft| sum.union(draft.bounds()))
}

fn fits(frame: Rect, options: &Options) -> bool {
    frame.width() <= options.width.mm() && frame.height() <= options.height.mm()
}
