//! What a font is tried with: texts of every script that it has.

use super::coverage::Coverage;
use super::script::is_joined;

/// The most characters of one group of 256 that are tried; alphabets have fewer.
const MOST_OF_GROUP: usize = 128;
/// The most characters that are tried of a font with tens of thousands.
const MOST: usize = 8192;
/// Where the scripts of India begin, each in 128 characters that stand alike.
const INDIC: std::ops::Range<u32> = 0x0900..0x0D80;

/// A text of one script.
pub(super) type Sample = String;

/// Characters in their order, a text for every 256 of them, letters that join also in syllables.
pub(super) fn texts(coverage: &Coverage) -> Vec<Sample> {
    let mut texts = Vec::new();
    let mut count = 0;
    for group in 0..=u32::from(char::MAX) / 256 {
        let characters = (group * 256..(group + 1) * 256).filter_map(char::from_u32);
        let text: String =
            characters.filter(|&c| can_be_tried(c) && coverage.has(c)).take(MOST_OF_GROUP).collect();
        if text.is_empty() || count >= MOST {
            continue;
        }
        count += text.chars().count();
        if is_joined(&text) {
            texts.push(text.chars().rev().collect());
        }
        texts.push(text);
    }
    texts
        .extend(INDIC.step_by(128).map(|script| syllables(script, coverage)).filter(|text| !text.is_empty()));
    texts
}

/// Whether a character can stand in a drawing as it is.
fn can_be_tried(c: char) -> bool {
    !c.is_control() && !matches!(c, '<' | '>' | '&' | '\u{FFFE}' | '\u{FFFF}')
}

/// Consonants stacked on each other with the signs of vowels: letters, signs and virama stand at the same
/// places in each of these scripts (Unicode Standard, South and Central Asia).
fn syllables(script: u32, coverage: &Coverage) -> String {
    let at = |places: std::ops::Range<u32>| {
        let characters = places.filter_map(|place| char::from_u32(script + place));
        characters.filter(|&c| coverage.has(c)).collect::<Vec<char>>()
    };
    let (consonants, signs, virama) = (at(0x15..0x3A), at(0x3E..0x4D), at(0x4D..0x4E));
    let Some(virama) = virama.first() else { return String::new() };
    let mut text = String::new();
    for (index, first) in consonants.iter().enumerate() {
        for (step, second) in consonants.iter().enumerate().skip(index % 3).step_by(3) {
            text.extend([*first, *virama, *second]);
            text.extend(signs.get((index + step) % signs.len().max(1)));
        }
    }
    text
}
