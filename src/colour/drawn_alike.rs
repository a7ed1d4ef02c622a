//! Letters of other scripts that are drawn as Latin ones are: on metal and paper nobody tells them apart.

use unicode_normalization::UnicodeNormalization;

/// Greek and Cyrillic letters, each with the Latin one that it looks like. Unicode Technical Standard #39, data file
/// confusables.txt: Greek capitals compared with a table made from it, the others from memory. That file counts capital
/// iota and Ukrainian I with small l, as it does Latin I.
const DRAWN_AS: [(&str, char); 40] = [
    ("ΑА", 'A'),
    ("ΒВ", 'B'),
    ("ϹС", 'C'),
    ("ΕЕ", 'E'),
    ("Ϝ", 'F'),
    ("Ԍ", 'G'),
    ("ΗН", 'H'),
    ("ΙІӀ", 'I'),
    ("ͿЈ", 'J'),
    ("ΚК", 'K'),
    ("ΜϺМ", 'M'),
    ("Ν", 'N'),
    ("ΟО", 'O'),
    ("ΡР", 'P'),
    ("Ԛ", 'Q'),
    ("Ѕ", 'S'),
    ("ΤТ", 'T'),
    ("Ѵ", 'V'),
    ("Ԝ", 'W'),
    ("ΧХ", 'X'),
    ("ΥҮ", 'Y'),
    ("Ζ", 'Z'),
    ("αа", 'a'),
    ("ϲс", 'c'),
    ("ԁ", 'd'),
    ("е", 'e'),
    ("һ", 'h'),
    ("ιі", 'i'),
    ("ϳј", 'j'),
    ("κк", 'k'),
    ("οσо", 'o'),
    ("ρр", 'p'),
    ("ԛ", 'q'),
    ("ѕ", 's'),
    ("υ", 'u'),
    ("νѵ", 'v'),
    ("ԝ", 'w'),
    ("χх", 'x'),
    ("γуү", 'y'),
    ("З", '3'),
];

/// A text in the Latin letters that its letters look like, and with letters of full width and the like as plain ones
/// (Unicode Standard Annex #15, form KC).
///
/// ```
/// use fittingcards::colour::as_drawn;
/// assert_eq!(as_drawn("\u{39a}\u{391}"), "KA"); // Greek
/// assert_eq!(as_drawn("\u{41a}\u{410}"), "KA"); // Cyrillic
/// assert_eq!(as_drawn("\u{ff2b}\u{ff21}"), "KA"); // full width
/// assert_eq!(as_drawn("ΩЖ"), "ΩЖ");
/// ```
#[must_use]
pub fn as_drawn(text: &str) -> String {
    if text.is_ascii() {
        return text.to_owned();
    }
    // Form KC turns some of them into letters that look otherwise: a sigma like a C into a common one.
    text.chars().map(latin).nfkc().map(latin).collect()
}

/// The Latin letter that a letter looks like, or that letter.
fn latin(letter: char) -> char {
    if letter.is_ascii() {
        return letter;
    }
    DRAWN_AS.iter().find_map(|(alike, latin)| alike.contains(letter).then_some(*latin)).unwrap_or(letter)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// Each letter is of its script by its code point (Unicode blocks Greek 0370 to 03FF and Cyrillic 0400 to 052F), so
    /// that no Latin one has slipped in, and stands in the table once.
    #[test]
    fn the_table_holds_greek_and_cyrillic_letters_once_each() {
        let letters: Vec<char> = DRAWN_AS.iter().flat_map(|(alike, _)| alike.chars()).collect();
        for letter in &letters {
            assert!(('\u{370}'..='\u{52f}').contains(letter), "{letter:?}");
        }
        assert_eq!(letters.iter().collect::<BTreeSet<_>>().len(), letters.len());
        let latin: BTreeSet<char> = DRAWN_AS.iter().map(|(_, latin)| *latin).collect();
        assert_eq!(latin.len(), DRAWN_AS.len());
    }

    /// By the names of the letters in the Unicode Standard.
    #[test]
    fn letters_go_to_those_that_they_look_like() {
        let alpha_kappa_rho_eta = "\u{391}\u{39a}\u{3a1}\u{397}";
        let a_ve_ie_en_er_es = "\u{410}\u{412}\u{415}\u{41d}\u{420}\u{421}";
        assert_eq!(as_drawn(alpha_kappa_rho_eta), "AKPH");
        assert_eq!(as_drawn(a_ve_ie_en_er_es), "ABEHPC");
        assert_eq!(as_drawn("F\u{435}ll"), "Fell");
        let kept = "\u{394}\u{3a9}\u{416}\u{42f} \u{915} 12.5";
        assert_eq!(as_drawn(kept), kept);
    }
}
