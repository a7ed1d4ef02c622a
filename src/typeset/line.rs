//! A line that is ready to be drawn: its runs where they lie, its length, the room that its ink takes.

use super::breaking::Broken;
use super::direction::{Stretch, directed, is_right};
use super::fonts::Fonts;
use super::shaping::Extent;
use super::values::{parts, unvalued};
use super::{FontStyle, Style};
use crate::units::Length;
use std::sync::{Arc, PoisonError};
use unicode_normalization::char::is_combining_mark;

/// A line of text.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What it says, in the order in which it is read.
    pub text: String,
    /// Whether its paragraph runs from right to left.
    pub right_to_left: bool,
    /// Its stretches in the order in which they are read, which is not always that in which they lie.
    pub runs: Vec<Run>,
    /// How far the pen comes from the line's left end.
    pub width: Length,
    /// The room that its ink takes.
    pub ink: Ink,
}

/// A stretch of a line in one font and one direction: one text chunk of a drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The font's family.
    pub family: Arc<str>,
    /// The weight as CSS counts it.
    pub weight: u16,
    /// The text. Punctuation at an end of a run from right to left has a mark beside it (U+200F) that
    /// keeps it there; the mark draws nothing.
    pub text: String,
    /// From the line's left end to its own.
    pub left: Length,
    /// How long it is.
    pub width: Length,
    /// How much further right than usvg would put them its characters are to be drawn (attribute `dx`),
    /// up to the last that is; mostly empty.
    pub shifts: Vec<Length>,
}

/// The room that ink takes round the pen's way from the line's left end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ink {
    /// How far it sticks out on the left.
    pub before: Length,
    /// How far it sticks out on the right.
    pub after: Length,
    /// How high it rises above the base line; negative where it stays below.
    pub above: Length,
    /// How deep it falls below the base line; negative where it stays above.
    pub below: Length,
}

/// Keeps what stands at an end of a run from right to left on that side.
const RIGHT_MARK: char = '\u{200F}';

impl Fonts {
    /// A text as one line.
    ///
    /// ```
    /// use fittingcards::source::{MemoryWorld, World};
    /// use fittingcards::typeset::{FontStyle, Fonts, Style};
    /// let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
    /// let line = fonts.line("سلك 19 × 2.80 mm", Style::points(FontStyle::Regular, 10.0));
    /// assert!(line.right_to_left);
    /// assert_eq!(line.runs[1].text, "19 × 2.80 mm");
    /// assert!(line.runs[1].left < line.runs[0].left);
    /// ```
    #[must_use]
    pub fn line(&self, text: &str, style: Style) -> Line {
        let broken = Broken { text: text.to_owned(), spaced: false, pieces: 1 };
        self.paragraph(vec![broken], style).remove(0)
    }

    /// The length of a text on one line. A character that no font has counts as its font's empty box.
    #[must_use]
    pub fn width(&self, text: &str, style: Style) -> Length {
        style.size * self.ems(text, style.font_style)
    }

    /// The lines of a paragraph, which run as it runs.
    pub(super) fn paragraph(&self, lines: Vec<Broken>, style: Style) -> Vec<Line> {
        let directed = directed(&lines);
        let set = |(line, stretches): (Broken, Vec<Stretch>)| {
            self.set(line.text, directed.right_to_left, &stretches, style)
        };
        lines.into_iter().zip(directed.lines).map(set).collect()
    }

    fn set(&self, text: String, right_to_left: bool, stretches: &[Stretch], style: Style) -> Line {
        let mut pieces = self.pieces_of(stretches, style.font_style);
        pieces.sort_by_key(|piece| piece.place);
        let text = unvalued(text);
        let (mut left, mut ink) = (0.0, None::<Extent>);
        for piece in &mut pieces {
            let shaped = self.shape(piece.face, piece.right_to_left, &piece.text);
            piece.left = left;
            if let Some(own) = shaped.ink.map(|own| own.moved(left)) {
                ink = Some(ink.map_or(own, |ink| ink.with(own)));
            }
            left += shaped.advance;
        }
        pieces.sort_by_key(|piece| piece.read);
        let runs = pieces.into_iter().map(|piece| self.run(piece, style.size)).collect();
        Line { text, right_to_left, runs, width: style.size * left, ink: Ink::of(ink, left, style.size) }
    }

    /// The stretches of a line cut where values begin and end, and where the font changes.
    fn pieces_of(&self, stretches: &[Stretch], font_style: FontStyle) -> Vec<Piece> {
        let mut pieces = Vec::with_capacity(stretches.len());
        let mut in_value = false;
        for stretch in stretches {
            let right_to_left = stretch.right_to_left;
            let parts = parts(&stretch.text, &mut in_value).into_iter().flat_map(|(is_value, text)| {
                self.by_font(&text, if is_value { font_style.of_values() } else { font_style })
            });
            for (index, (face, text)) in parts.enumerate() {
                let text = if right_to_left { marked(text) } else { text };
                let within = if right_to_left { usize::MAX - index } else { index };
                let (place, read) = ((stretch.place, within), pieces.len());
                pieces.push(Piece { face, text, right_to_left, place, read, left: 0.0 });
            }
        }
        pieces
    }

    fn run(&self, piece: Piece, size: Length) -> Run {
        let shaped = self.shape(piece.face, piece.right_to_left, &piece.text);
        let face = &self.faces[piece.face];
        Run {
            family: face.family.clone(),
            weight: face.weight,
            text: piece.text,
            left: size * piece.left,
            width: size * shaped.advance,
            shifts: shaped.shifts.iter().map(|&shift| size * shift).collect(),
        }
    }

    fn ems(&self, text: &str, font_style: FontStyle) -> f64 {
        let known = self.widths.read().unwrap_or_else(PoisonError::into_inner);
        if let Some(ems) = known.get(&font_style).and_then(|widths| widths.get(text)) {
            return *ems;
        }
        drop(known);
        let em = Style { font_style, size: Length::from_mm(1.0) };
        let ems = self.line(text, em).width.mm();
        let mut known = self.widths.write().unwrap_or_else(PoisonError::into_inner);
        known.entry(font_style).or_default().insert(text.into(), ems);
        ems
    }
}

/// A run that is being placed.
struct Piece {
    face: usize,
    text: String,
    right_to_left: bool,
    /// Its order from the left.
    place: (usize, usize),
    /// Its order as it is read.
    read: usize,
    left: f64,
}

fn marked(text: String) -> String {
    let bare = |c: Option<char>| c.is_some_and(|c| !is_right(c));
    let before = bare(text.chars().next());
    let after = bare(text.chars().rfind(|&c| !is_combining_mark(c)));
    match (before, after) {
        (false, false) => text,
        (true, false) => format!("{RIGHT_MARK}{text}"),
        (false, true) => format!("{text}{RIGHT_MARK}"),
        (true, true) => format!("{RIGHT_MARK}{text}{RIGHT_MARK}"),
    }
}

impl Line {
    /// From the leftmost to the rightmost of pen and ink.
    #[must_use]
    pub fn extent(&self) -> Length {
        self.ink.before + self.width + self.ink.after
    }
}

/// Ink that sticks out less than this is not made room for.
const HAIR: Length = Length::from_mm(0.02);

impl Ink {
    fn of(ink: Option<Extent>, advance: f64, size: Length) -> Self {
        let none = Extent { left: 0.0, right: advance, above: 0.0, below: 0.0 };
        let ink = ink.unwrap_or(none);
        let out = |ems: f64| if size * ems > HAIR { size * ems } else { Length::ZERO };
        Self {
            before: out(-ink.left),
            after: out(ink.right - advance),
            above: size * ink.above,
            below: size * ink.below,
        }
    }
}
