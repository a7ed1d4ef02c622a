//! A fitting in three stages: apart, entered, seated, on one frame at one scale.

use super::setup::Setup;
use super::{Figure, Pose, caption, compose, figure, scales};
use crate::catalogue::{Family, Fitting, Limits};
use crate::sketch::draft::{Caption, Draft};
use crate::sketch::drawing::Drawing;
use crate::sketch::options::{Detail, Options};
use crate::sketch::plane::{EMPTY, Rect};
use crate::sketch::scale::Scale;

/// The three stages of putting a fitting together: apart, entered, seated.
///
/// All are drawn at one scale in one frame, so that one can take the other's place on a page. The
/// seated one has the lengths that are measured on it. `limits` are those of the catalogue that the fitting
/// is from.
#[must_use]
pub fn stages(fitting: &Fitting, limits: &Limits, options: &Options) -> [Drawing; 3] {
    let setup = Setup::of(fitting, limits);
    let poses = poses(&setup, &*figure(&setup, Pose::default()));
    let figures = poses.map(|pose| figure(&setup, pose));
    let widest = &scales(&setup, &*figures[0], poses[0], options);
    let less =
        [Detail::Full, Detail::Card, Detail::Bare].into_iter().filter(|detail| *detail <= options.detail);
    for detail in less {
        let options = Options { detail, ..*options };
        for &scale in widest {
            let drafts =
                [0, 1, 2].map(|stage| compose(&setup, &*figures[stage], poses[stage], &options, scale).draft);
            let frame = frame(&drafts);
            if fits(frame, &options) && drafts.iter().all(|draft| draft.complete || detail == Detail::Bare) {
                return written(drafts, frame, &setup, &*figures[2], scale, &options);
            }
        }
    }
    let options = Options { detail: Detail::Bare, ..*options };
    let scale = Scale(widest.last().map_or(0.01, |scale| scale.0));
    let drafts =
        [0, 1, 2].map(|stage| compose(&setup, &*figures[stage], poses[stage], &options, scale).draft);
    let frame = frame(&drafts);
    written(drafts, frame, &setup, &*figures[2], scale, &options)
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

fn written(
    drafts: [Draft; 3],
    frame: Rect,
    setup: &Setup,
    seated: &dyn Figure,
    scale: Scale,
    options: &Options,
) -> [Drawing; 3] {
    let mut names = ["apart", "entered", "seated"].into_iter();
    drafts.map(|draft| {
        let whole = caption(setup, seated, scale, options);
        let title = format!("{}: {}", whole.title, names.next().unwrap_or_default());
        draft.finish_within(frame, Caption { title, ..whole })
    })
}
