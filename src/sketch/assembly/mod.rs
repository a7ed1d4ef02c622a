//! Sections of assembled fittings: above the axis cut open, below it seen from outside.

mod axial;
mod band;
mod clamp;
pub(crate) mod collet;
pub(crate) mod contact;
mod dead_end;
mod driven_in;
mod end_views;
mod figure;
mod line_up;
mod moves;
mod named;
mod plain;
mod scaled_draft;
mod seen;
pub(crate) mod setup;
mod side_by_side;
mod sleeve;
pub(crate) mod spreading;
mod stages;
mod strand;
mod surfaces;
pub(crate) mod thimble;
pub(crate) mod wedge;

pub use end_views::{end_view, end_views};
pub use line_up::line_up;
pub use side_by_side::{WrongPart, side_by_side};
pub use stages::stages;

use super::balloon::Balloon;
use super::draft::{Caption, Draft, fit_down_to};
use super::drawing::Drawing;
use super::options::{Detail, Options};
use super::outline::Outline;
use super::plane::Rect;
use super::scale::Scale;
use crate::catalogue::{Family, Fitting, Limits, Role};
use clamp::Clamp;
use collet::ColletSeat;
pub(crate) use figure::{Figure, Pose};
use plain::Plain;
use scaled_draft::{Look, ScaledDraft};
use setup::Setup;
use sleeve::Sleeve;
use spreading::SpreadingSeat;
use thimble::RopeEye;
use wedge::WedgeSeat;

/// The figure of a fitting: by its family, as far as its parts allow. One whose sizes are not all finite can't be
/// worked with: a plain one, unsound as it is, takes its place.
pub(crate) fn figure(setup: &Setup, pose: Pose) -> Box<dyn Figure> {
    let family = setup.fitting.family;
    let found: Option<Box<dyn Figure>> = match family {
        Family::ConeDeadEnd => {
            boxed(ColletSeat::of(setup, pose)).or_else(|| boxed(SpreadingSeat::of(setup, pose)))
        }
        Family::WedgeDeadEnd => boxed(WedgeSeat::of(setup, pose)),
        Family::RopeThimble => boxed(RopeEye::of(setup)),
        Family::Sleeve => boxed(Sleeve::of(setup)),
        Family::ParallelGroove => boxed(Clamp::of(setup)),
        Family::Other
            if setup.first(&[Role::Keeper]).is_some()
                && setup.first(&[Role::Bolt, Role::Screw]).is_some() =>
        {
            boxed(Clamp::of(setup))
        }
        Family::Other => None,
    };
    let unsound = found.as_ref().is_some_and(|figure| figure.proportions().unsound);
    found.filter(|_| !unsound).unwrap_or_else(|| Box::new(Plain::of(setup, unsound)))
}

fn boxed(figure: Option<impl Figure + 'static>) -> Option<Box<dyn Figure>> {
    figure.map(|figure| Box::new(figure) as Box<dyn Figure>)
}

/// The section of an assembled fitting, seated, with balloons in item order and the lengths that are
/// measured on it.
///
/// Sizes come from the parts' geometry and the computed seat. A size that the records lack is drawn
/// from the family's proportions; where that concerns the seat, the drawing says "not to scale". `limits` are
/// those of the catalogue that the fitting is from.
#[must_use]
pub fn assembly(fitting: &Fitting, limits: &Limits, options: &Options) -> Drawing {
    let setup = Setup::of(fitting, limits);
    finished(&setup, Pose::default(), options)
}

/// How much is said, in the order that it is tried, and the share of the largest scale that its lettering must leave:
/// what can't be made out is not worth its dimensions, but a numbered list has its balloons in a small drawing, too.
pub(crate) const TRIED: [(Detail, f64); 4] =
    [(Detail::Full, 0.5), (Detail::Card, 0.5), (Detail::Items, 0.2), (Detail::Bare, 0.0)];

fn finished(setup: &Setup, pose: Pose, options: &Options) -> Drawing {
    let figure = figure(setup, pose);
    for (detail, share) in TRIED.into_iter().filter(|(detail, _)| *detail <= options.detail) {
        let options = Options { detail, ..*options };
        if let Some((scale, draft)) = drafted(setup, &*figure, pose, &options, share) {
            return draft.finish(caption(setup, &*figure, scale, &options));
        }
    }
    let options = Options { detail: Detail::Bare, ..*options };
    let scale = Scale(scales(setup, &*figure, pose, &options).first().map_or(0.1, |scale| scale.0) * 0.5);
    compose(setup, &*figure, pose, &options, scale).draft.finish(caption(setup, &*figure, scale, &options))
}

/// The drawing at the largest scale at which all that is to be said has its place, where that is no smaller than this
/// share of the largest that the bare drawing fits at.
pub(crate) fn drafted<'a>(
    setup: &Setup,
    figure: &dyn Figure,
    pose: Pose,
    options: &'a Options<'a>,
    share: f64,
) -> Option<(Scale, Draft<'a>)> {
    let scales = scales(setup, figure, pose, options);
    let largest = scales.first().map_or(0.0, |scale| scale.0);
    let (scale, draft) =
        fit_down_to(&scales, share.min(0.5), |scale| compose(setup, figure, pose, options, scale).draft)?;
    let whole = draft.complete && scale.0 >= share * largest;
    (draft.fits() && (options.detail == Detail::Bare || whole)).then_some((scale, draft))
}

/// Round scales at which the bare drawing has a chance to fit.
pub(crate) fn scales(setup: &Setup, figure: &dyn Figure, pose: Pose, options: &Options) -> Vec<Scale> {
    let silent = Options { detail: Detail::Bare, ..*options };
    let bounds = compose(setup, figure, pose, &silent, Scale(1.0)).draft.bounds();
    let most = (options.width.mm() / bounds.width()).min(options.height.mm() / bounds.height());
    Scale::below(most * 1.15)
}

/// The drawing at a scale, with its balloons.
pub(crate) fn compose<'a>(
    setup: &Setup,
    figure: &dyn Figure,
    pose: Pose,
    options: &'a Options<'a>,
    scale: Scale,
) -> ScaledDraft<'a> {
    let mut scaled = without_balloons(setup, figure, pose, options, scale);
    if options.speaks() {
        scaled.draft.balloons(&items(setup));
        if pose == Pose::default() {
            named::name(&mut scaled, setup, figure);
        }
    }
    scaled
}

/// A balloon for every item.
fn items(setup: &Setup) -> Vec<Balloon> {
    let parts = setup.parts.iter().enumerate();
    parts.map(|(part, of)| Balloon { part, label: (part + 1).to_string(), grips: of.role.grips() }).collect()
}

/// The object with the lengths that are measured on it.
fn without_balloons<'a>(
    setup: &Setup,
    figure: &dyn Figure,
    pose: Pose,
    options: &'a Options<'a>,
    scale: Scale,
) -> ScaledDraft<'a> {
    let mut scaled = ScaledDraft::new(options, scale);
    scaled.draft.scene.unsound = figure.proportions().unsound;
    figure.draw(&mut scaled, setup, pose);
    if options.speaks() {
        draw_loose(&mut scaled, setup);
        if pose == Pose::default()
            && let Some(measures) = figure.measures(setup)
        {
            dead_end::dimension(&mut scaled, setup, &measures);
        }
    }
    scaled
}

/// Parts that the figure has no place for: small blocks beside it, so that every balloon has a target.
/// Their size is that of the lettering: a bare drawing, which may be as small as need be, goes without.
fn draw_loose(scaled: &mut ScaledDraft, setup: &Setup) {
    let missing: Vec<usize> =
        (0..setup.parts.len()).filter(|&part| scaled.draft.scene.areas_of(part).next().is_none()).collect();
    let bounds = scaled.draft.scene.object_bounds();
    let block = 2.2 * scaled.draft.size();
    for (row, &part) in missing.iter().enumerate() {
        let left = scaled.object(bounds.x1 + 0.8 * block);
        let top = scaled.object(bounds.y0 + 1.3 * block * row as f64);
        let size = scaled.object(block);
        let outline = Outline::rectangle(Rect::new(left, top, left + size, top + size));
        scaled.view(Look::of(part, setup.parts[part]), &outline);
    }
}

fn caption(setup: &Setup, figure: &dyn Figure, scale: Scale, options: &Options) -> Caption {
    let scale =
        if figure.proportions().assumed { "not to scale".to_owned() } else { scale.words(options.numerals) };
    let items: Vec<String> =
        setup.parts.iter().enumerate().map(|(index, part)| format!("{} {}", index + 1, part.name)).collect();
    let (fitting, conductor) = (&setup.fitting.name, &setup.conductor.name);
    let description =
        format!("{fitting} on {conductor}, cut open above the axis. Items: {}.", items.join(", "));
    Caption { scale, title: fitting.clone(), description }
}
