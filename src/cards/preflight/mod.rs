//! What a printer would send back: texts outside the safe area, over each other, too small, too pale, lost. What the
//! program lays out is judged by its values; SVG of a layout's own is looked at as it is drawn.

mod check;
mod letters;
mod room;
mod svg;
mod svg_edges;
mod svg_ground;
mod svg_ink;
mod svg_texts;

use super::face::Face;
use crate::diagnostics::Findings;
use check::Check;
use svg_ink::{InkedText, SvgInk};

pub(in crate::cards) use check::Limits;

/// Everything that would print wrong on a face.
pub(super) fn face(face: &Face, limits: Limits<'_>) -> Findings {
    let drawn = SvgInk::all(face);
    let check = Check { face, limits: &limits, drawn: &drawn };
    let mut findings = Findings::new();
    room::check(check, &mut findings);
    letters::check(check, &mut findings);
    svg::check(check, &mut findings);
    findings
}

/// What the texts of a face say that stand in SVG of a layout's own, but for those that nobody could read: hidden ones, and
/// letters that are piled up.
pub(super) fn texts_of_svg(face: &Face) -> Vec<String> {
    let all = SvgInk::all(face);
    let texts = all.iter().flat_map(|ink| &ink.texts).filter(|text| text.is_spread_out());
    texts.map(InkedText::words).collect()
}

#[cfg(test)]
mod tests;
