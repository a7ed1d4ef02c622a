//! Texts in drawings, and the room that they take.

use super::plane::{Point, Rect, at};
use crate::typeset::{FontStyle, Fonts, Style};
use crate::units::Length;

/// The style of type that drawings are lettered in.
const FONT_STYLE: FontStyle = FontStyle::Condensed;

/// The family that drawings are lettered in.
pub(crate) fn family() -> &'static str {
    FONT_STYLE.family()
}

/// Where a text hangs on its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

/// A line of text that has been measured.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Text {
    /// On the base line, at the anchor.
    pub place: Point,
    pub anchor: Anchor,
    pub size: f64,
    pub text: String,
    width: f64,
}

impl Text {
    /// A text whose figures are centred on the height of `place`.
    pub fn level(lettering: Lettering, place: Point, anchor: Anchor, text: impl Into<String>) -> Self {
        let (text, size) = (text.into(), lettering.size);
        let width = lettering.width(&text);
        Self { place: at(place.x, place.y + CAPITAL / 2.0 * size), anchor, size, text, width }
    }

    /// The box round its letters, descenders included where it has any.
    pub fn bounds(&self) -> Rect {
        let left = match self.anchor {
            Anchor::Start => self.place.x,
            Anchor::Middle => self.place.x - self.width / 2.0,
            Anchor::End => self.place.x - self.width,
        };
        let descends = self.text.contains(['g', 'j', 'p', 'q', 'y', ',', '(', ')', ';']);
        let below = if descends { DESCENT } else { 0.02 };
        let (top, bottom) = (self.place.y - ASCENT * self.size, self.place.y + below * self.size);
        Rect::new(left, top, left + self.width, bottom)
    }
}

/// Heights as shares of the type size: figures and capitals, ascenders, descenders.
const CAPITAL: f64 = 0.73;
const ASCENT: f64 = 0.77;
const DESCENT: f64 = 0.22;

/// The fonts, and the size that a drawing letters in.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lettering<'a> {
    pub fonts: &'a Fonts,
    pub size: f64,
}

impl Lettering<'_> {
    /// Length of a text on one line.
    pub fn width(self, text: &str) -> f64 {
        self.fonts.width(text, Style { font_style: FONT_STYLE, size: Length::from_mm(self.size) }).mm()
    }
}
