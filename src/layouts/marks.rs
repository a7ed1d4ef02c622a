//! Where in a layout an element of its filled text comes from: each start tag carries its file and line.

use super::counted;
use crate::source::{FilePath, Place};
use std::iter::Peekable;
use std::str::CharIndices;

/// The attribute that holds an element's place, such as `cards/mark.xml:12`.
pub const MARK: &str = "at";

/// Whether the elements of this file carry their places.
pub(super) fn is_marked(path: &str) -> bool {
    path.ends_with(".xml")
}

/// A layout whose elements say where they stand. Lines stay the lines that they were.
pub(super) fn marked(path: &str, text: &str) -> String {
    let (mut out, mut line, mut written) = (String::with_capacity(text.len() * 2), 1, 0);
    let mut letters = text.char_indices().peekable();
    while let Some((at, letter)) = letters.next() {
        line += u32::from(letter == '\n');
        let next = letters.peek().map(|(_, next)| *next);
        match (letter, next) {
            ('{', Some(kind @ ('{' | '%' | '#'))) => line += skipped(&mut letters, closing(kind)),
            ('<', Some(next)) if next.is_ascii_alphabetic() => {
                let name = text[at + 1..].find(|c: char| !is_of_name(c)).unwrap_or(text.len() - at - 1);
                let end = at + 1 + name;
                out.push_str(&text[written..end]);
                out.push_str(&format!(" {MARK}=\"{path}:{line}\""));
                written = end;
            }
            _ => {}
        }
    }
    out.push_str(&text[written..]);
    out
}

fn closing(kind: char) -> char {
    if kind == '{' { '}' } else { kind }
}

/// Skips what the template library reads itself; answers with how many lines that were.
fn skipped(letters: &mut Peekable<CharIndices<'_>>, kind: char) -> u32 {
    let (mut lines, mut before) = (0, ' ');
    letters.next();
    for (_, letter) in letters.by_ref() {
        lines += u32::from(letter == '\n');
        if before == kind && letter == '}' {
            break;
        }
        before = letter;
    }
    lines
}

fn is_of_name(letter: char) -> bool {
    letter.is_ascii_alphanumeric() || letter == '-'
}

/// The place that a mark names.
///
/// ```
/// use fittingcards::layouts::marked_place;
/// let place = marked_place("cards/mark.xml:12").expect("a mark");
/// assert_eq!((&*place.file.path, place.line), ("cards/mark.xml", 12));
/// ```
#[must_use]
pub fn marked_place(mark: &str) -> Option<Place> {
    let (path, line) = mark.rsplit_once(':')?;
    Some(Place::at(FilePath::layouts(path), line.parse().ok()?, 1))
}

/// The place of the last element that begins before an offset of a filled layout.
#[must_use]
pub fn place_before(filled: &str, offset: usize) -> Option<Place> {
    let opening = format!(" {MARK}=\"");
    let before = filled.get(..offset)?;
    marked_place(before[before.rfind(&opening)? + opening.len()..].split('"').next()?)
}

/// Column of the layout as it was written, from the line of it with marks and counts and a column there, both counted
/// from 1.
pub(super) fn written_column(line: &str, column: u32) -> u32 {
    let (mut rest, mut passed, mut written) = (line, 1, 1);
    while let Some(letter) = rest.chars().next() {
        let skipped = mark_before(rest).or_else(|| counted::put_in_before(rest));
        let bytes = skipped.unwrap_or(letter.len_utf8());
        passed += u32::try_from(rest[..bytes].chars().count()).unwrap_or(u32::MAX);
        if passed > column {
            break;
        }
        written += u32::from(skipped.is_none());
        rest = &rest[bytes..];
    }
    written
}

/// Where the mark at the beginning of this text ends; none where it begins with none.
fn mark_before(text: &str) -> Option<usize> {
    let opening = format!(" {MARK}=\"");
    let mark = text.strip_prefix(&opening)?;
    Some(opening.len() + mark.find('"')? + 1)
}

/// A piece of a filled layout without the marks of its elements.
///
/// ```
/// use fittingcards::layouts::unmarked;
/// assert_eq!(unmarked("<g at=\"cards/a.xml:3\" id=\"x\"/>"), "<g id=\"x\"/>");
/// ```
#[must_use]
pub fn unmarked(filled: &str) -> String {
    let opening = format!(" {MARK}=\"");
    let mut pieces = filled.split(opening.as_str());
    let first = pieces.next().unwrap_or_default().to_owned();
    pieces.fold(first, |out, piece| out + piece.split_once('"').map_or("", |(_, rest)| rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn elements_are_marked_and_what_the_library_reads_is_not() {
        let layout = "<face>\n{# <b> #}{% if a < b and c <d %}\n<text x=\"{{ <wide w={2}/> }}\">1 < 2</text>{% endif %}\n</face>";
        let expected = "<face at=\"f:1\">\n{# <b> #}{% if a < b and c <d %}\n<text at=\"f:3\" x=\"{{ <wide w={2}/> }}\">1 < 2</text>{% endif %}\n</face>";
        assert_eq!(marked("f", layout), expected);
    }

    #[test]
    fn columns_are_those_of_the_layout_as_it_was_written() {
        let layout = "<face>{% for a in b %}<text>ö{{ c }}</text>{% endfor %}</face>";
        let placed = marked("f.xml", &counted::counted(layout));
        let at = |text: &str| placed[..placed.find(text).expect("there")].chars().count() as u32 + 1;
        assert_eq!(written_column(&placed, at("<face")), 1);
        assert_eq!(written_column(&placed, at("{{ layout")), 30);
        assert_eq!(written_column(&placed, at("layout_step(cost=") + 3), 23);
    }

    #[test]
    fn a_place_in_the_filled_text_is_that_of_the_element_before_it() {
        let filled = "<face at=\"a.xml:1\"><text at=\"b.xml:7\">x</txt></face>";
        let place = place_before(filled, filled.find("</txt").expect("the fault")).expect("a place");
        assert_eq!((&*place.file.path, place.line), ("b.xml", 7));
    }
}
