//! A contact wire whose flat moves: drawn whole and as its outline alone, for a page to cut at any height.

use super::subject::Subject;
use super::{add_cut_surfaces, caption, cut_surfaces, half_extent};
use crate::catalogue::Conductor;
use crate::sketch::draft::Draft;
use crate::sketch::drawing::Drawing;
use crate::sketch::options::{Detail, Options};
use crate::sketch::plane::Affine;
use crate::sketch::scale::Scale;

/// Two drawings of one section that lie on each other.
#[derive(Debug, Clone)]
pub struct Wearing {
    /// The new section, filled: what lies above the flat is left of it.
    pub left: Drawing,
    /// The same in dashes: what lies below is gone.
    pub gone: Drawing,
    /// Millimetres of the drawing a millimetre of the wire.
    pub scale: f64,
    /// Where the top of the wire is, in millimetres below the drawing's upper edge.
    pub top: f64,
}

/// The section of a wire to be cut at any remaining height, without letters, at the largest round scale that fits.
///
/// A flat at a remaining height of `h` lies `top + h · scale` below the upper edge, about the middle.
#[must_use]
pub fn wearing(conductor: &Conductor, options: &Options) -> Wearing {
    let options = Options { detail: Detail::Bare, ..*options };
    let subject = Subject::of(conductor);
    let air = options.thick() / 2.0 + 0.1;
    let most = (options.width.min(options.height).mm() / 2.0 - air) / half_extent(&subject);
    let scale = Scale::below(most).first().copied().unwrap_or(Scale(most));
    let drawn = |gone: bool| {
        let mut surfaces = cut_surfaces(&subject);
        surfaces.iter_mut().for_each(|surface| surface.gone = gone);
        let mut draft = Draft::new(&options);
        add_cut_surfaces(&mut draft, &surfaces, Affine::scale(scale.0), scale.0);
        draft.finish(caption(&subject, Some(scale), &options))
    };
    Wearing { left: drawn(false), gone: drawn(true), scale: scale.0, top: air }
}
