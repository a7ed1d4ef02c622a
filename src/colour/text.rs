//! Texts that can be taken for another: by a stroke too many, or upside down.

use super::as_drawn;

/// How a text can be taken for another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Confusion {
    /// They differ in nothing but capitals, spaces and the script of letters that look the same.
    Same,
    /// One upside down reads as the other: 66 and 99.
    HalfTurn,
    /// A stroke more or less makes one the other: 1 and 7, 3 and 8.
    OneStroke,
}

impl Confusion {
    /// In words: "is the other text turned upside down".
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Same => "reads the same",
            Self::HalfTurn => "reads as the other when upside down",
            Self::OneStroke => "is one stroke from the other",
        }
    }
}

/// Characters that one stroke more or less, or a worn one, turns into each other. Common practice, no source.
const ONE_STROKE: [(char, &str); 26] = [
    ('0', "ODQ8C6"),
    ('1', "7ILT4"),
    ('2', "Z7"),
    ('3', "8B9"),
    ('5', "S6"),
    ('6', "8G"),
    ('8', "B9"),
    ('9', "4"),
    ('7', "T"),
    ('A', "H4"),
    ('B', "PRE"),
    ('C', "GO"),
    ('D', "OP"),
    ('E', "FL"),
    ('F', "P"),
    ('G', "OQ"),
    ('I', "TLJ"),
    ('K', "X"),
    ('M', "N"),
    ('N', "H"),
    ('O', "Q"),
    ('P', "R"),
    ('T', "J"),
    ('U', "VJO"),
    ('V', "WY"),
    ('X', "Y"),
];

/// Characters that a half-turn leaves or swaps.
const HALF_TURN: [(char, char); 12] = [
    ('0', '0'),
    ('1', '1'),
    ('6', '9'),
    ('8', '8'),
    ('H', 'H'),
    ('I', 'I'),
    ('M', 'W'),
    ('N', 'N'),
    ('O', 'O'),
    ('S', 'S'),
    ('X', 'X'),
    ('Z', 'Z'),
];

/// How one text can be taken for the other; `None` where they can't.
///
/// ```
/// use fittingcards::colour::{Confusion, confusion};
/// assert_eq!(confusion("66", "99"), Some(Confusion::HalfTurn));
/// assert_eq!(confusion("V1", "V7"), Some(Confusion::OneStroke));
/// assert_eq!(confusion("3", "8"), Some(Confusion::OneStroke));
/// assert_eq!(confusion("V1", "K2"), None);
/// ```
#[must_use]
pub fn confusion(one: &str, two: &str) -> Option<Confusion> {
    let (one, two) = (plain(one), plain(two));
    if one.len().abs_diff(two.len()) > 1 {
        None
    } else if one == two {
        Some(Confusion::Same)
    } else if upside_down(&one).is_some_and(|turned| turned == two) {
        Some(Confusion::HalfTurn)
    } else if one_stroke(&one, &two) {
        Some(Confusion::OneStroke)
    } else {
        None
    }
}

/// A text as hurried eyes read it: in capitals, without spaces, in the Latin letters that it looks to be in. Texts that
/// read the same are the same.
///
/// ```
/// use fittingcards::colour::reads_as;
/// assert_eq!(reads_as("v 1"), reads_as("V1"));
/// assert_eq!(reads_as("\u{39a}\u{391}"), reads_as("KA")); // Greek, Latin
/// ```
#[must_use]
pub fn reads_as(text: &str) -> String {
    // Small letters of another script have capitals that look like other Latin ones, or like these: so twice.
    let drawn = as_drawn(text);
    let capitals = drawn.chars().filter(|letter| !letter.is_whitespace()).flat_map(char::to_uppercase);
    as_drawn(&capitals.collect::<String>())
}

/// A text as it reads where it is worn, painted over or dirty: as [`reads_as`] has it, letters and figures alone, and of
/// those that are one stroke apart at most, the figure. Common practice, no source.
///
/// ```
/// use fittingcards::colour::reads_worn;
/// assert_eq!(reads_worn("Z10.5"), reads_worn("21O,5"));
/// assert_eq!(reads_worn("BZ2 70"), reads_worn("BZ2-7O"));
/// assert_ne!(reads_worn("BZ1 12.5"), reads_worn("BZ2 12.5"));
/// ```
#[must_use]
pub fn reads_worn(text: &str) -> String {
    let letters = reads_as(text);
    let worn = |letter: char| match letter {
        'O' | 'Q' => '0',
        'I' | 'L' => '1',
        'Z' => '2',
        'S' => '5',
        'G' => '6',
        'B' => '8',
        other => other,
    };
    letters.chars().filter(|letter| letter.is_alphanumeric()).map(worn).collect()
}

/// A name as hurried eyes read it: as [`reads_as`] has it, and without the hyphens that join its words. Between two
/// figures a hyphen or space stays, as a hyphen: 1-12 is not 11-2.
///
/// ```
/// use fittingcards::colour::reads_as_name;
/// assert_eq!(reads_as_name("Collet seat"), reads_as_name("collet-seat"));
/// assert_eq!(reads_as_name("taper 1_12"), reads_as_name("taper-1-12"));
/// assert_ne!(reads_as_name("taper-1-12"), reads_as_name("taper-11-2"));
/// ```
#[must_use]
pub fn reads_as_name(name: &str) -> String {
    let words = name.split(|letter: char| letter.is_whitespace() || JOINING.contains(&letter));
    let mut reads = String::new();
    for word in words.map(reads_as).filter(|word| !word.is_empty()) {
        let is_figure = |letter: char| letter.is_ascii_digit();
        if reads.ends_with(is_figure) && word.starts_with(is_figure) {
            reads.push('-');
        }
        reads.push_str(&word);
    }
    reads
}

/// What joins the words of a name, beside spaces: hyphens and dashes of the Unicode Standard, one that is seen at the
/// end of a line only, the minus, the underscore.
const JOINING: [char; 10] =
    ['-', '_', '\u{ad}', '\u{2010}', '\u{2011}', '\u{2012}', '\u{2013}', '\u{2014}', '\u{2015}', '\u{2212}'];

fn plain(text: &str) -> Vec<char> {
    reads_as(text).chars().collect()
}

fn upside_down(text: &[char]) -> Option<Vec<char>> {
    text.iter().rev().map(|letter| turned(*letter)).collect()
}

fn turned(letter: char) -> Option<char> {
    HALF_TURN.iter().find_map(|(one, two)| match letter {
        _ if letter == *one => Some(*two),
        _ if letter == *two => Some(*one),
        _ => None,
    })
}

fn one_stroke(one: &[char], two: &[char]) -> bool {
    if one.len() != two.len() {
        return one_bar_more(one, two) || one_bar_more(two, one);
    }
    let mut differing = one.iter().zip(two).filter(|(a, b)| a != b);
    let first = differing.next();
    first.is_some_and(|(a, b)| near(*a, *b) || near(*b, *a)) && differing.next().is_none()
}

fn near(one: char, two: char) -> bool {
    ONE_STROKE.iter().any(|(letter, others)| *letter == one && others.contains(two))
}

/// Whether `long` is `short` with one upright or dash put in somewhere.
fn one_bar_more(long: &[char], short: &[char]) -> bool {
    long.len() == short.len() + 1
        && (0..long.len()).any(|at| {
            matches!(long[at], '1' | 'I' | '-' | '.' | '/')
                && long[..at] == short[..at]
                && long[at + 1..] == short[at..]
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_takes_both_ways_round() {
        for (one, two) in [
            ("66", "99"),
            ("1", "7"),
            ("8", "3"),
            ("M2", "N2"),
            ("V", "VI"),
            ("16", "91"),
            ("v1", "V 1"),
            ("Ｖ1", "V7"),
        ] {
            assert!(confusion(one, two).is_some(), "{one} {two}");
            assert_eq!(confusion(one, two), confusion(two, one), "{one} {two}");
        }
    }

    /// The letters and hyphens by their numbers in the Unicode Standard: Cyrillic o, es and ie, hyphens, no-break space.
    #[test]
    fn a_name_reads_the_same_however_its_words_are_joined() {
        for name in [
            "Collet Seat",
            "COLLET_SEAT",
            "colletseat",
            "c\u{43e}llet-\u{455}eat",
            "coll\u{435}t\u{2011}seat",
            "collet\u{a0}seat",
        ] {
            assert_eq!(reads_as_name(name), reads_as_name("collet-seat"), "{name}");
        }
        for other in ["collet-seat-2", "collet-set", "socket-seat"] {
            assert_ne!(reads_as_name(other), reads_as_name("collet-seat"), "{other}");
        }
        assert_eq!(reads_as_name("seat 5 40"), reads_as_name("Seat-5-40"));
        assert_ne!(reads_as_name("seat-5-40"), reads_as_name("seat-54-0"));
    }

    /// The letters by their numbers in the Unicode Standard: Latin, Greek, Cyrillic, full width, and small ones.
    #[test]
    fn a_text_in_another_script_reads_the_same() {
        let all = [
            "KA",
            "\u{39a}\u{391}",
            "\u{41a}\u{410}",
            "\u{41a}A",
            "\u{ff2b}\u{ff21}",
            "\u{3ba}\u{3b1}",
            "\u{43a}\u{430}",
        ];
        for (one, two) in all.iter().flat_map(|one| all.iter().map(move |two| (one, two))) {
            assert_eq!(confusion(one, two), Some(Confusion::Same), "{one} {two}");
        }
        assert_eq!(confusion("KA", "\u{394}\u{3a9}"), None);
        // Small nu is drawn as v, and its capital as N.
        assert_eq!((reads_as("\u{3bd}"), reads_as("\u{39d}")), ("V".to_owned(), "N".to_owned()));
    }

    #[test]
    fn two_changed_characters_are_enough() {
        for (one, two) in [("A1", "C7"), ("T2", "H4"), ("V1", "V2"), ("A", "BC"), ("", "A2")] {
            assert_eq!(confusion(one, two), None, "{one} {two}");
        }
    }
}
