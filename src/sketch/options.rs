//! What a caller settles about a drawing: its room, its lettering, how much it says.

use super::letters::Lettering;
use crate::typeset::Fonts;
use crate::units::{Length, Numerals};

/// The room and the lettering of a drawing.
///
/// The finished drawing is never larger than the room, and may be smaller. Where the room is too small
/// for its lettering, dimensions and balloons are left out before the drawing itself shrinks.
#[derive(Debug, Clone, Copy)]
pub struct Options<'a> {
    /// The fonts that texts are measured with.
    pub fonts: &'a Fonts,
    /// The most width.
    pub width: Length,
    /// The most height.
    pub height: Length,
    /// Size of the type. Line widths follow it: the wide line is a seventh (ISO 128-2, ISO 3098-1).
    pub type_size: Length,
    /// How numbers are written.
    pub numerals: Numerals,
    /// How much is said.
    pub detail: Detail,
}

/// How much a drawing says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Detail {
    /// The object alone, without letters.
    Bare,
    /// Balloons, and the stand-out that is checked: what a drawing beside a numbered list never lacks.
    Items,
    /// Dimensions and balloons that a card has room for.
    Card,
    /// Everything.
    Full,
}

impl<'a> Options<'a> {
    /// A room of `width` × `height` with 7 pt type, full detail and decimal points.
    #[must_use]
    pub fn new(fonts: &'a Fonts, width: Length, height: Length) -> Self {
        Self {
            fonts,
            width,
            height,
            type_size: Length::from_pt(7.0),
            numerals: Numerals::default(),
            detail: Detail::Full,
        }
    }

    pub(crate) fn lettering(&self) -> Lettering<'a> {
        Lettering { fonts: self.fonts, size: self.type_size.mm() }
    }

    /// Width of the wide line in millimetres.
    pub(crate) fn thick(&self) -> f64 {
        (self.type_size.mm() / 7.0).clamp(0.25, 0.7)
    }

    pub(crate) fn speaks(&self) -> bool {
        self.detail != Detail::Bare
    }
}
