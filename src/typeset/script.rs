//! What scripts ask of those who draw them.

/// Whether a text has letters that join or stack, as those of Arabic and Devanagari do: spacing them out
/// tears words apart, and several glyphs may make one syllable.
///
/// ```
/// use fittingcards::typeset::is_joined;
/// assert!(is_joined("तार 95") && is_joined("سلك"));
/// assert!(!is_joined("Ω 95 mm²"));
/// ```
#[must_use]
pub fn is_joined(text: &str) -> bool {
    text.chars()
        .any(|c| matches!(c, '\u{590}'..='\u{1DFF}' | '\u{A800}'..='\u{ABFF}' | '\u{FB1D}'..='\u{FEFF}'))
}

/// A text without the marks that draw nothing and only say which way it runs.
#[must_use]
pub fn without_marks(text: &str) -> String {
    text.chars().filter(|&c| !directs(c)).collect()
}

/// Marks that draw nothing and only say which way a text runs.
pub(super) fn directs(c: char) -> bool {
    matches!(c, '\u{61C}' | '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}
