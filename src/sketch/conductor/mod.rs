//! Sections of conductors: every wire where it lies, dimensioned, at a round scale or at true size.

mod cut_surfaces;
mod dimensions;
mod grooved_outline;
mod notes;
mod on_card;
mod outer_edge;
mod subject;
mod wearing;

pub use on_card::{conductor_to_lay_on, worn_profiles};
pub use subject::Subject;
pub use wearing::{Wearing, wearing};

pub(crate) use cut_surfaces::{CutSurface, cut_surfaces};

use super::appearance::{Appearance, Pen};
use super::draft::{Caption, Draft, fit};
use super::drawing::Drawing;
use super::options::{Detail, Options};
use super::plane::{Affine, Point, Vec2, at};
use super::scale::Scale;
use super::scene::{Primitive, Purpose};
use crate::catalogue::Conductor;
use crate::units::Length;
use notes::Arrangement;

/// The section of a conductor with its dimensions, at the largest round scale that fits the room.
///
/// Layers are told apart by depth of tone, a core by its material's tone. Dimensions come from the
/// computed section; tolerances are printed where the record has them. A catalogue conductor has a
/// section that has been computed, so nothing can fail.
#[must_use]
pub fn conductor_section(conductor: &Conductor, options: &Options) -> Drawing {
    section_of(&Subject::of(conductor), options)
}

/// A grooved or solid wire worn down to a remaining height: the metal left, the part that is gone in
/// dashes, with remaining height and width of the flat.
///
/// ```
/// use fittingcards::section::{Construction, compute};
/// use fittingcards::sketch::{Options, Subject, section_of};
/// use fittingcards::source::{MemoryWorld, World};
/// use fittingcards::typeset::Fonts;
/// use fittingcards::units::Length;
///
/// let construction = Construction::Solid { diameter: Length::from_mm(8.0) };
/// let section = compute(&construction, None)?;
/// let subject = Subject { worn_to: Some(Length::from_mm(6.0)), ..Subject::new("Wire", &construction, &section) };
/// let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
/// let drawing = section_of(&subject, &Options::new(&fonts, Length::from_mm(60.0), Length::from_mm(60.0)));
/// assert!(drawing.dimensions.iter().any(|dimension| dimension.name == "remaining height"));
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
#[must_use]
pub fn worn_section(conductor: &Conductor, remaining: Length, options: &Options) -> Drawing {
    section_of(&Subject { worn_to: Some(remaining), ..Subject::of(conductor) }, options)
}

/// The section of anything that has a construction and what was computed of it.
#[must_use]
pub fn section_of(subject: &Subject, options: &Options) -> Drawing {
    let extent = 2.0 * half_extent(subject);
    let most = (options.width.mm() / extent).min(options.height.mm() / extent);
    let less =
        [Detail::Full, Detail::Card, Detail::Bare].into_iter().filter(|detail| *detail <= options.detail);
    for detail in less {
        let options = Options { detail, ..*options };
        if let Some((scale, arrangement)) = best(subject, &options, most) {
            return draw(subject, &options, scale, arrangement).finish(caption(
                subject,
                Some(scale),
                &options,
            ));
        }
    }
    let options = Options { detail: Detail::Bare, ..*options };
    draw(subject, &options, Scale(most * 0.95), Arrangement::Beside).finish(caption(subject, None, &options))
}

/// The largest scale with its arrangement; none where the section would be smaller than its letters.
fn best(subject: &Subject, options: &Options, most: f64) -> Option<(Scale, Arrangement)> {
    let scales = Scale::below(most);
    let tried = [Arrangement::Below, Arrangement::Beside].into_iter().filter_map(|arrangement| {
        let (scale, draft) = fit(&scales, |scale| draw(subject, options, scale, arrangement))?;
        (draft.fits() && draft.complete).then_some((scale, arrangement))
    });
    let (scale, arrangement) = tried.max_by(|a, b| a.0.0.total_cmp(&b.0.0))?;
    let readable = 2.0 * half_extent(subject) * scale.0 >= 3.0 * options.type_size.mm();
    (readable || !options.speaks()).then_some((scale, arrangement))
}

fn draw<'a>(
    subject: &Subject,
    options: &'a Options<'a>,
    scale: Scale,
    arrangement: Arrangement,
) -> Draft<'a> {
    let mut draft = Draft::new(options);
    let surfaces = cut_surfaces(subject);
    add_cut_surfaces(&mut draft, &surfaces, Affine::scale(scale.0), scale.0);
    if options.speaks() {
        centre_lines(&mut draft, half_extents(subject) * scale.0);
        dimensions::add(&mut draft, subject, scale);
        notes::add(&mut draft, subject, &surfaces, scale, arrangement);
    }
    draft
}

/// Adds the surfaces of a section, put through `place` and enlarged by `scale`.
pub(crate) fn add_cut_surfaces(draft: &mut Draft, surfaces: &[CutSurface], place: Affine, scale: f64) {
    let finest = surfaces.iter().filter_map(|surface| match surface.primitive {
        Primitive::Circle(_, radius) => Some(radius * scale),
        _ => None,
    });
    let pen = match finest.fold(f64::INFINITY, f64::min) {
        // Outlines of the finest wires would run together: their tones must do.
        radius if radius < 0.35 => None,
        radius if radius < 1.2 => Some(Pen::Thin),
        _ => Some(Pen::Thick),
    };
    for surface in surfaces {
        let solid = Appearance { fill: Some(surface.tone), pen };
        let appearance = if surface.gone { Appearance::line(Pen::Gone) } else { solid };
        match &surface.primitive {
            Primitive::Circle(centre, radius) => {
                draft.scene.circle(Purpose::Wire, place * *centre, radius * scale, appearance);
            }
            Primitive::Area(outline) => draft.scene.area(Purpose::Wire, outline.mapped(place), appearance),
            Primitive::Lines(_) | Primitive::Text(_) => {}
        }
    }
    if pen.is_none() {
        // Pale wires are lost to a grey copy, and with them the edge that a wire is laid on.
        let on_paper = |piece: Vec<Point>| piece.into_iter().map(|point| place * point).collect();
        let edge = outer_edge::outer_edge(surfaces).into_iter().map(on_paper);
        draft.scene.lines(Purpose::Edge, edge.collect(), Appearance::line(Pen::Thin));
    }
}

fn centre_lines(draft: &mut Draft, half: Vec2) {
    let past = 0.5 * draft.size();
    let (x, y) = (half.x + past, half.y + past);
    draft.centre_line(at(-x, 0.0), at(x, 0.0));
    draft.centre_line(at(0.0, -y), at(0.0, y));
}

/// Half the larger side of the box round it.
fn half_extent(subject: &Subject) -> f64 {
    let half = half_extents(subject);
    half.x.max(half.y)
}

/// Half the sides of the box round it.
fn half_extents(subject: &Subject) -> Vec2 {
    use crate::section::Construction;
    match subject.construction {
        Construction::Bar { width, thickness, .. } => Vec2::new(width.mm(), thickness.mm()) / 2.0,
        _ => Vec2::new(1.0, 1.0) * (subject.section.overall_diameter.mm() / 2.0),
    }
}

fn caption(subject: &Subject, scale: Option<Scale>, options: &Options) -> Caption {
    Caption {
        scale: scale.map_or_else(|| "not to scale".to_owned(), |scale| scale.words(options.numerals)),
        title: format!("Section of {}", subject.name),
        description: subject.words(options.numerals),
    }
}
