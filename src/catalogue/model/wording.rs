//! Texts of records that may name values of their fitting in braces, such as `{torque}`.

use crate::records::Letters;
use crate::source::Place;

/// A text as its record states it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wording {
    /// The text, with the names of values in braces.
    pub text: String,
    /// The dotted path of its field.
    pub field: String,
    /// Where its letters stand.
    pub letters: Letters,
}

/// A piece of a text that may name values.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Piece<'a> {
    /// What it is.
    pub kind: PieceKind<'a>,
    /// Letters of the text before it.
    pub at: usize,
}

/// What a piece of a text is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PieceKind<'a> {
    /// Words as they are printed.
    Words(&'a str),
    /// The name of a value.
    Value(&'a str),
    /// A brace that nothing closes, with what stands behind it.
    Unclosed(&'a str),
}

impl Wording {
    /// The pieces of the text, in order.
    #[must_use]
    pub fn pieces(&self) -> Vec<Piece<'_>> {
        pieces(&self.text)
    }

    /// The place of the letter that so many stand before.
    #[must_use]
    pub fn place(&self, letter: usize) -> Place {
        self.letters.at(letter)
    }
}

/// The pieces of a text that may name values; `{{` is a brace.
///
/// ```
/// use fittingcards::catalogue::{PieceKind, pieces};
/// let found: Vec<PieceKind> = pieces("Screw to {torque}, {{ not").into_iter().map(|piece| piece.kind).collect();
/// let expected = [PieceKind::Words("Screw to "), PieceKind::Value("torque"), PieceKind::Words(", "),
///                 PieceKind::Words("{"), PieceKind::Words(" not")];
/// assert_eq!(found, expected);
/// ```
#[must_use]
pub fn pieces(text: &str) -> Vec<Piece<'_>> {
    let mut pieces = Vec::new();
    let (mut rest, mut at) = (text, 0);
    while !rest.is_empty() {
        let (kind, length) = first(rest);
        let (taken, left) = rest.split_at(length);
        pieces.push(Piece { kind, at });
        at += taken.chars().count();
        rest = left;
    }
    pieces
}

/// The piece that a text starts with, and how many bytes it takes.
fn first(text: &str) -> (PieceKind<'_>, usize) {
    if text.starts_with("{{") {
        return (PieceKind::Words("{"), 2);
    }
    let Some(inside) = text.strip_prefix('{') else {
        let end = text.find('{').unwrap_or(text.len());
        return (PieceKind::Words(&text[..end]), end);
    };
    match inside.find(['{', '}']).filter(|end| inside[*end..].starts_with('}')) {
        Some(end) => (PieceKind::Value(inside[..end].trim()), end + 2),
        None => {
            let end = inside.find('{').map_or(text.len(), |end| end + 1);
            (PieceKind::Unclosed(&text[..end]), end)
        }
    }
}
