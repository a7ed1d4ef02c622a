//! Breaking a text into lines at measured widths.

use super::glue::{code, glued};
use super::values::{is_marked, unvalued, valued};
use super::{FontStyle, Fonts, Line, Style};
use crate::units::Length;
use std::sync::{Arc, PoisonError};
use textwrap::WordSeparator;
use textwrap::core::Fragment;
use textwrap::wrap_algorithms::wrap_first_fit;

/// Soft hyphen: where its writer lets a long word break.
const SOFT_HYPHEN: char = '\u{00AD}';

/// Word joiner: no line breaks beside it, and it is never drawn.
const JOINER: char = '\u{2060}';

/// Spaces that no line breaks at; once the lines are broken they are spaces like others.
const UNBROKEN_SPACES: [char; 2] = ['\u{A0}', '\u{202F}'];

/// A text cut into pieces that stay on one line. Widths are sizes of type.
#[derive(Debug)]
pub(super) struct Breakable {
    pieces: Vec<Piece>,
    /// The room of the longest piece.
    narrowest: f64,
    /// The room of all of them on one line.
    widest: f64,
}

/// A piece of text that stays on one line, with the space that may follow it.
#[derive(Debug)]
struct Piece {
    text: String,
    space: bool,
    /// Whether a hyphen is added where its line ends.
    hyphen: bool,
    /// Whether its word goes on after a hyphen of its own.
    goes_on: bool,
    width: f64,
    space_width: f64,
    hyphen_width: f64,
}

/// Pieces that part only where no line has room for all of them.
#[derive(Debug)]
struct Kept<'p>(&'p [Piece]);

impl Fragment for Kept<'_> {
    fn width(&self) -> f64 {
        self.0.iter().map(|piece| piece.width).sum()
    }

    fn whitespace_width(&self) -> f64 {
        self.0.last().map_or(0.0, |piece| piece.space_width)
    }

    fn penalty_width(&self) -> f64 {
        self.0.last().map_or(0.0, |piece| piece.hyphen_width)
    }
}

/// Pieces in lines of this room: what is parted by its own hyphens alone, such as "stand-out", is kept whole where it fits on
/// a line.
fn kept(pieces: &[Piece], room: f64) -> Vec<Kept<'_>> {
    let words = pieces.chunk_by(|piece, _| piece.goes_on).map(Kept);
    let fitting = words.flat_map(|word| {
        let parts = if word.width() > room { 1 } else { word.0.len() };
        word.0.chunks(parts).map(Kept)
    });
    fitting.collect()
}

impl Fonts {
    /// The lines of a text that may be as long as `width`. Lines break where Unicode Standard Annex 14
    /// allows it, and so that no ink leaves the width, but never between a number and its unit nor inside a number, a stamp or another
    /// code; a word breaks only at a soft hyphen, or after its own hyphen where it does not fit on a line as a whole. In the lines, spaces that hold
    /// words together are plain ones. A piece that is longer than
    /// `width` stands on a line of its own, for the caller to find.
    ///
    /// ```
    /// use fittingcards::source::{MemoryWorld, World};
    /// use fittingcards::typeset::{FontStyle, Fonts, Style};
    /// use fittingcards::units::Length;
    /// let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
    /// let lines = fonts.lines("Stranded bronze, 95 mm²", Style::points(FontStyle::Regular, 10.0), Length::from_mm(36.0));
    /// assert_eq!(lines.iter().map(|line| line.text.as_str()).collect::<Vec<_>>(), ["Stranded bronze,", "95 mm²"]);
    /// ```
    #[must_use]
    pub fn lines(&self, text: &str, style: Style, width: Length) -> Vec<Line> {
        let breakable = self.breakable(text, style.font_style);
        let mut room = width;
        let mut lines = self.broken_at(&breakable.pieces, room, style);
        for _ in 0..MOST_TRIES {
            let Some(spare) = spare(&lines, width, room) else { break };
            room = width - spare;
            lines = self.broken_at(&breakable.pieces, room, style);
        }
        lines.into_iter().map(|(line, _)| line).collect()
    }

    /// How narrow a text can be broken, and in what width it stands on one line.
    ///
    /// ```
    /// use fittingcards::source::{MemoryWorld, World};
    /// use fittingcards::typeset::{FontStyle, Fonts, Style};
    /// let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
    /// let style = Style::points(FontStyle::Regular, 10.0);
    /// let (narrowest, widest) = fonts.extents("Stranded bronze, 95 mm²", style);
    /// assert_eq!(narrowest, fonts.line("Stranded", style).extent().max(fonts.line("bronze,", style).extent()));
    /// assert!((widest.mm() - fonts.line("Stranded bronze, 95 mm²", style).extent().mm()).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn extents(&self, text: &str, style: Style) -> (Length, Length) {
        let breakable = self.breakable(text, style.font_style);
        (style.size * breakable.narrowest, style.size * breakable.widest)
    }

    /// A text cut into its pieces, which are the same in every size and width; what has been cut once is kept.
    fn breakable(&self, text: &str, font_style: FontStyle) -> Arc<Breakable> {
        let known = self.breakable.read().unwrap_or_else(PoisonError::into_inner);
        if let Some(breakable) = known.get(&font_style).and_then(|texts| texts.get(text)) {
            return breakable.clone();
        }
        drop(known);
        let em = Style { font_style, size: Length::from_mm(1.0) };
        let spaced = text.split_ascii_whitespace().collect::<Vec<_>>().join(" ");
        let pieces = self.pieces(&spaced, em);
        let extent = |piece: &Piece| self.line(&joined(std::slice::from_ref(piece)).text, em).extent().mm();
        let narrowest = pieces.iter().map(extent).fold(0.0, f64::max);
        // Where fonts meet, the pieces may be longer one by one than together.
        let in_a_row = pieces.iter().rev().skip(1).map(|piece| piece.width + piece.space_width).sum::<f64>();
        let in_a_row = in_a_row + pieces.last().map_or(0.0, |piece| piece.width);
        let widest = self.line(&joined(&pieces).text, em).extent().mm().max(in_a_row);
        let breakable = Arc::new(Breakable { pieces, narrowest, widest });
        let mut known = self.breakable.write().unwrap_or_else(PoisonError::into_inner);
        known.entry(font_style).or_default().insert(text.into(), breakable.clone());
        breakable
    }

    /// The lines with the number of pieces in each.
    fn broken_at(&self, pieces: &[Piece], room: Length, style: Style) -> Vec<(Line, usize)> {
        let room = (room.mm() + 1e-6) / style.size.mm();
        let words = kept(pieces, room);
        let mut rest = pieces;
        let broken = wrap_first_fit(&words, &[room]).into_iter().map(|line| {
            let (line, after) = rest.split_at(line.iter().map(|word| word.0.len()).sum());
            rest = after;
            joined(line)
        });
        let broken: Vec<Broken> = broken.filter(|line| !line.text.is_empty()).collect();
        let counts: Vec<usize> = broken.iter().map(|line| line.pieces).collect();
        self.paragraph(broken, style).into_iter().zip(counts).collect()
    }

    fn pieces(&self, text: &str, style: Style) -> Vec<Piece> {
        let words = glued(WordSeparator::UnicodeBreakProperties.find_words(text));
        words.iter().flat_map(|(word, space)| self.parts(word, *space, style)).collect()
    }

    fn parts(&self, word: &str, space: bool, style: Style) -> Vec<Piece> {
        let parts = if code(word) { vec![(word.to_owned(), false)] } else { hyphen_parts(word) };
        let last = parts.len() - 1;
        let piece = |(index, (text, soft)): (usize, (String, bool))| {
            let mut text = text.replace([SOFT_HYPHEN, JOINER], "");
            let has_values = style.font_style.of_values() != style.font_style;
            if !has_values {
                text = unvalued(text);
            } else if code(&text) && !is_marked(&text) {
                text = valued(&text);
            }
            let space = space && index == last;
            let measure = |shown: bool, text: &str| if shown { self.width(text, style).mm() } else { 0.0 };
            Piece {
                width: self.width(&text, style).mm(),
                space_width: measure(space, " "),
                hyphen_width: measure(soft, "-"),
                text,
                space,
                hyphen: soft,
                goes_on: index != last && !soft,
            }
        };
        parts.into_iter().enumerate().map(piece).collect()
    }
}

/// A word cut after its hyphens and at its soft hyphens; the flag says that a hyphen must be added
/// where the line ends.
fn hyphen_parts(word: &str) -> Vec<(String, bool)> {
    let mut parts = vec![(String::new(), false)];
    let mut letters_before = false;
    let mut characters = word.chars().peekable();
    while let Some(c) = characters.next() {
        let letter_after = characters.peek().is_some_and(|next| next.is_alphabetic());
        let last = parts.len() - 1;
        parts[last].0.push(c);
        let breaks = c == SOFT_HYPHEN || (c == '-' && letters_before);
        if breaks && letter_after {
            parts[last].1 = c == SOFT_HYPHEN;
            parts.push((String::new(), false));
        }
        letters_before = c.is_alphabetic();
    }
    parts
}

/// A line of pieces as it is read.
#[derive(Debug)]
pub(super) struct Broken {
    pub text: String,
    /// Whether a space parts it from the next line.
    pub spaced: bool,
    pub pieces: usize,
}

fn joined(pieces: &[Piece]) -> Broken {
    let mut line = Broken { text: String::new(), spaced: false, pieces: pieces.len() };
    for (index, piece) in pieces.iter().enumerate() {
        let last = index + 1 == pieces.len();
        line.text.push_str(&piece.text.replace(UNBROKEN_SPACES, " "));
        if piece.space && !last {
            line.text.push(' ');
        }
        if piece.hyphen && last {
            line.text.push('-');
        }
        line.spaced = piece.space;
    }
    line
}

/// How often lines are broken again because their ink sticks out, or because fonts meet in them.
const MOST_TRIES: usize = 4;

/// How much shorter than `width` lines must be broken so that the ink of all stays in it; none where it
/// does, but for lines that can't be broken.
fn spare(lines: &[(Line, usize)], width: Length, room: Length) -> Option<Length> {
    let breakable = lines.iter().filter(|(_, pieces)| *pieces > 1).map(|(line, _)| line);
    let long = breakable.filter(|line| line.extent() > width + ROUNDING);
    let spare = long.map(|line| line.extent() - if line.width < room { line.width } else { room });
    spare.max_by(Length::total_cmp)
}

/// What kerning from piece to piece may add.
const ROUNDING: Length = Length::from_mm(0.005);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{MemoryWorld, World};
    use crate::typeset::FontStyle;

    fn lines(text: &str, mm: f64) -> Vec<String> {
        let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
        let lines = fonts.lines(text, Style::points(FontStyle::Condensed, 8.5), Length::from_mm(mm));
        lines.into_iter().map(|line| line.text).collect()
    }

    #[test]
    fn a_number_keeps_its_unit_at_every_width() {
        let text = "Tighten M36x2 to 80…90 N·m, then 19 × 2.80 mm at ± 0.5 mm and 95 mm², 5 % of 67.6 kN, 1.06 kg/km and 0.155 Ω/km";
        for tenths in 10..600 {
            let all = lines(text, f64::from(tenths) / 10.0);
            for whole in [
                "M36x2",
                "80…90 N·m,",
                "19 × 2.80 mm",
                "± 0.5 mm",
                "95 mm²,",
                "5 %",
                "67.6 kN,",
                "1.06 kg/km",
                "0.155 Ω/km",
            ] {
                assert!(all.iter().any(|line| line.contains(whole)), "{whole} at {tenths}: {all:?}");
            }
        }
    }

    #[test]
    fn figures_of_other_scripts_keep_their_units_too() {
        let texts = [
            (
                "पेंच को ८०…९० N·m तक कसें, तार १९ × २.८० मिमी का है, ९५ mm²।",
                ["८०…९० N·m", "१९ × २.८० मिमी", "९५ mm²।"],
            ),
            (
                "شد البرغي حتى ٨٠…٩٠ N·m ثم قس ١٩ × ٢٫٨٠ مم، المقطع ٩٥ mm².",
                ["٨٠…٩٠ N·m", "١٩ × ٢٫٨٠ مم،", "٩٥ mm²."],
            ),
        ];
        for (text, wholes) in texts {
            for tenths in 10..600 {
                let all = lines(text, f64::from(tenths) / 10.0);
                for whole in wholes {
                    assert!(all.iter().any(|line| line.contains(whole)), "{whole} at {tenths}: {all:?}");
                }
            }
        }
    }

    #[test]
    fn devanagari_breaks_at_spaces_only() {
        let text = "दूसरा व्यक्ति निशान पढ़े।";
        assert_eq!(lines(text, 1.0), text.split(' ').collect::<Vec<_>>());
    }

    #[test]
    fn stamps_and_codes_stay_in_one_piece() {
        for whole in ["B14.0", "ST-4103", "N-2026-04", "ST-D-4103/B"] {
            assert_eq!(lines(&format!("cone {whole} here"), 1.0), ["cone", whole, "here"]);
        }
    }

    /// UAX 14 lets lines break after a solidus (class SY) and after a hyphen (class HY), and never beside a word joiner
    /// (class WJ).
    #[test]
    fn no_line_breaks_beside_a_word_joiner() {
        assert_eq!(lines("at LEFT/RIGHT-HAND end", 1.0), ["at", "LEFT/", "RIGHT-", "HAND", "end"]);
        assert_eq!(
            lines("at LEFT\u{2060}/\u{2060}RIGHT\u{2060}-\u{2060}HAND end", 1.0),
            ["at", "LEFT/RIGHT-HAND", "end"]
        );
    }

    #[test]
    fn words_break_after_a_hyphen_and_at_soft_hyphens_only() {
        assert_eq!(lines("stand-out", 1.0), ["stand-", "out"]);
        assert_eq!(lines("Fahr\u{AD}draht\u{AD}klemme", 18.0), ["Fahrdraht-", "klemme"]);
        assert_eq!(lines("Fahr\u{AD}draht", 100.0), ["Fahrdraht"]);
        assert_eq!(lines("Fahrdrahtklemme", 1.0), ["Fahrdrahtklemme"]);
    }

    /// In 8.5 pt "stand-out" is about 14 mm long and "seated stand-" about 19 mm (both measured here, too).
    #[test]
    fn a_word_with_a_hyphen_is_kept_whole_where_a_line_has_room_for_it() {
        let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
        let style = Style::points(FontStyle::Condensed, 8.5);
        let extent = |text: &str| fonts.line(text, style).extent().mm();
        let (whole, first) = (extent("stand-out"), extent("seated stand-"));
        assert!(whole + 1.0 < first, "{whole} {first}");
        assert_eq!(lines("seated stand-out", first + 0.1), ["seated", "stand-out"]);
        assert_eq!(lines("seated stand-out", whole + 0.1), ["seated", "stand-out"]);
        assert_eq!(lines("seated stand-out", whole - 1.0), ["seated", "stand-", "out"]);
        assert_eq!(lines("seated stand-out", extent("seated stand-out") + 0.1), ["seated stand-out"]);
    }

    #[test]
    fn no_line_is_longer_than_asked_and_no_word_is_lost() {
        let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
        let style = Style::points(FontStyle::Regular, 8.5);
        let text = "A second person reads the cone's stamp before the body is closed.";
        for mm in 20..70 {
            let lines = fonts.lines(text, style, Length::from_mm(f64::from(mm)));
            let texts: Vec<&str> = lines.iter().map(|line| line.text.as_str()).collect();
            assert_eq!(texts.join(" "), text);
            assert!(lines.iter().all(|line| line.extent().mm() <= f64::from(mm) + 0.006), "{lines:?}");
        }
    }
}
