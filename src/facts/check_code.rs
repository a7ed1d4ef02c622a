//! Six characters that stand for what a card prints.

use super::{CardFacts, PrintedText};
use std::borrow::Cow;
use unicode_normalization::{IsNormalized, UnicodeNormalization, is_nfc_quick};

/// Crockford's base 32: no I, L, O or U, so that nothing read aloud is taken for a digit.
const ALPHABET: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";

const AFTER_NAME: char = '\u{1f}';
const AFTER_TEXT: char = '\u{1e}';

/// The check code of a card: the first 30 bits of the BLAKE3 hash of what it prints.
///
/// ```
/// use fittingcards::facts::{CheckCode, PrintedText};
/// let before = CheckCode::of(&[PrintedText::new("number", "ST-4100"), PrintedText::new("torque", "80 N·m")]);
/// let after = CheckCode::of(&[PrintedText::new("number", "ST-4100"), PrintedText::new("torque", "90 N·m")]);
/// assert_eq!(before.as_str().len(), 6);
/// assert_ne!(before, after);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CheckCode(String);

impl CheckCode {
    /// The code of these texts, in this order.
    #[must_use]
    pub fn of(texts: &[PrintedText]) -> Self {
        let mut hasher = blake3::Hasher::new();
        for text in texts {
            let printed = format!("{}{AFTER_NAME}{}{AFTER_TEXT}", text.name, text.text);
            hasher.update(canonical(&printed).as_bytes());
        }
        Self(characters(hasher.finalize().as_bytes()))
    }

    /// The six characters.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl CardFacts {
    /// The check code of what the card prints.
    #[must_use]
    pub fn check_code(&self) -> CheckCode {
        CheckCode::of(&self.printed())
    }
}

/// A text in form NFC. Most texts are in it, which is soon seen.
fn canonical(text: &str) -> Cow<'_, str> {
    match is_nfc_quick(text.chars()) {
        IsNormalized::Yes => Cow::Borrowed(text),
        IsNormalized::No | IsNormalized::Maybe => Cow::Owned(text.nfc().collect()),
    }
}

impl std::fmt::Display for CheckCode {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(&self.0)
    }
}

/// 30 bits, high bit first, five a character.
fn characters(hash: &[u8; 32]) -> String {
    let bits = u32::from_be_bytes([hash[0], hash[1], hash[2], hash[3]]) >> 2;
    (0..6).rev().map(|place| char::from(ALPHABET[(bits >> (5 * place) & 31) as usize])).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn first_thirty_bits_high_bit_first() {
        let mut hash = [0_u8; 32];
        hash[..4].copy_from_slice(&[0b0000_1000, 0b1000_0110, 0b0100_0010, 0b1001_1011]);
        // 00001 00010 00011 00100 00101 00110 | 11
        assert_eq!(characters(&hash), "123456");
    }

    /// BLAKE3 of the empty input begins af1349b9 (published test vector of the hash).
    #[test]
    fn nothing_printed_is_the_hash_of_nothing() {
        let bits = 0xaf13_49b9_u32 >> 2;
        let expected: String =
            (0..6).rev().map(|place| char::from(ALPHABET[(bits >> (5 * place) & 31) as usize])).collect();
        assert_eq!(CheckCode::of(&[]).as_str(), expected);
    }

    #[test]
    fn composed_and_decomposed_texts_are_one() {
        assert_eq!(
            CheckCode::of(&[PrintedText::new("name", "Se\u{301}lbrook")]),
            CheckCode::of(&[PrintedText::new("name", "S\u{e9}lbrook")])
        );
    }
}
