//! What the checks of a face look at, and what they hold it to.

use super::svg_ink::SvgInk;
use crate::cards::design::Design;
use crate::cards::face::Face;
use crate::diagnostics::{Finding, Place};
use crate::typeset::Fonts;
use crate::units::Length;

/// What a face is held to, beside what holds for all.
#[derive(Debug, Clone)]
pub(in crate::cards) struct Limits<'a> {
    /// What the face is called.
    pub called: &'a str,
    /// The number of the fitting or body.
    pub number: &'a str,
    /// The smallest type on it.
    pub smallest_type: Length,
    /// The stamps of the gripping parts that must stand on it; empty where one has none.
    pub stamps: &'a [String],
    /// The record that it is about.
    pub place: Place,
    /// The fonts that texts are set in.
    pub fonts: &'a Fonts,
    /// The layouts, of which some are the user's own.
    pub design: &'a Design,
}

/// What a check looks at.
#[derive(Clone, Copy)]
pub(super) struct Check<'a> {
    pub face: &'a Face,
    pub limits: &'a Limits<'a>,
    /// What SVG of the layout's own is drawn with.
    pub drawn: &'a [SvgInk<'a>],
}

impl Check<'_> {
    /// A finding about the layout.
    pub fn finding(self, code: &'static str, at: &Place, said: &str) -> Finding {
        Finding::error(code, at.clone(), format!("{}: {said}", self.limits.called)).record(self.limits.number)
    }

    /// Its trimmed size in millimetres.
    pub fn trim(self) -> (f64, f64) {
        (self.face.trim.0.mm(), self.face.trim.1.mm())
    }
}
