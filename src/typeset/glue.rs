//! Which words stay on one line: a number with its unit, a sign with its number, a code in one piece.

use textwrap::core::Word;

/// Units and their like that never stand at the start of a line without their number; those of Devanagari
/// and Arabic as they are written in Hindi and in Arabic (from memory).
const UNITS: &str = "mm mm² mm2 cm m km µm kN N N·m Nm kN/m N/mm² MPa kg g t kg/km kg/m Ω Ω/km mΩ V kV A kA Hz \
                     h min s pt % ‰ ° °C K K/W AF × \
                     मिमी मि.मी सेमी से.मी मी मीटर किमी किग्रा न्यूटन \
                     مم ملم سم م متر كم كغ كجم كن نيوتن";

/// Signs that stay with the number that follows them.
const SIGNS: &[&str] =
    &["×", "±", "≥", "≤", "<", ">", "=", "≈", "+", "−", "-", "–", "…", "No.", "no.", "M", "⌀", "Ø", "ø"];

/// Words joined where they must stay together, each with whether a space follows.
pub(super) fn glued<'a>(words: impl Iterator<Item = Word<'a>>) -> Vec<(String, bool)> {
    let words = words.map(|word| (word.word.to_owned(), !word.whitespace.is_empty()));
    joined(joined(words, false).into_iter(), true)
}

/// Joins neighbours with a space between them, or those without.
fn joined(words: impl Iterator<Item = (String, bool)>, spaced: bool) -> Vec<(String, bool)> {
    let mut joined: Vec<(String, bool)> = Vec::new();
    for (word, space_after) in words {
        let before = joined.last_mut().filter(|(_, space)| *space == spaced);
        match before.filter(|(before, _)| together(last_word(before), &word, spaced)) {
            Some((before, space)) => {
                if spaced {
                    before.push(' ');
                }
                before.push_str(&word);
                *space = space_after;
            }
            None => joined.push((word, space_after)),
        }
    }
    joined
}

fn last_word(text: &str) -> &str {
    text.rsplit(' ').next().unwrap_or(text)
}

/// Whether two neighbouring words must stay on one line. `spaced` says whether there is a space
/// between them.
fn together(before: &str, after: &str, spaced: bool) -> bool {
    if !spaced {
        return code(before) || code(after) || is_unit(bare(&format!("{before}{after}")));
    }
    let after = bare(after);
    let number_before = before.ends_with(|c: char| c.is_numeric());
    let number_after = after.starts_with(|c: char| c.is_numeric());
    (number_before && (is_unit(after) || SIGNS.contains(&after))) || (number_after && sign(before))
}

fn is_unit(word: &str) -> bool {
    UNITS.split(' ').any(|unit| unit == word)
}

/// Whether a word is a number, a size, a stamp or another code, which is never broken.
pub(super) fn code(word: &str) -> bool {
    word.contains(|c: char| c.is_numeric())
}

fn bare(word: &str) -> &str {
    word.trim_end_matches([',', '.', ';', ':', ')', '!', '?', '،', '؛', '؟', '।'])
}

fn sign(word: &str) -> bool {
    SIGNS.contains(&word.trim_start_matches('('))
}
