//! Texts from outside, so that a terminal shows them and does nothing else with them.

use std::borrow::Cow;
use std::fmt::Write as _;

/// A text with all that can't be seen written out: what moves the cursor or changes colours, breaks lines, or
/// turns the direction of what is read.
///
/// ```
/// use fittingcards::diagnostics::visible;
/// assert_eq!(visible("two\nlines, \u{1b}[31mred"), "two\\nlines, \\u{1b}[31mred");
/// assert_eq!(visible("पकड़ 95 mm²"), "पकड़ 95 mm²");
/// ```
#[must_use]
pub fn visible(text: &str) -> Cow<'_, str> {
    if !text.chars().any(is_hidden) {
        return Cow::Borrowed(text);
    }
    let mut shown = String::with_capacity(text.len() + 8);
    for letter in text.chars() {
        match letter {
            '\n' | '\r' | '\t' => shown.extend(letter.escape_default()),
            hidden if is_hidden(hidden) => shown.extend(hidden.escape_unicode()),
            seen => shown.push(seen),
        }
    }
    Cow::Owned(shown)
}

/// The same of several lines, whose breaks stay.
#[must_use]
pub fn visible_lines(text: &str) -> String {
    text.split('\n').map(visible).collect::<Vec<_>>().join("\n")
}

/// JSON with all that can't be seen in its escapes, which mean the same.
///
/// ```
/// use fittingcards::diagnostics::visible_json;
/// assert_eq!(visible_json("{\"a\":\"\u{9b}31m\u{202e}\"}"), r#"{"a":"\u009b31m\u202e"}"#);
/// ```
#[must_use]
pub fn visible_json(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for letter in text.chars() {
        if letter == '\n' || !is_hidden(letter) {
            shown.push(letter);
            continue;
        }
        for unit in letter.encode_utf16(&mut [0; 2]) {
            // Writing to a string does not fail.
            let _ = write!(shown, "\\u{unit:04x}");
        }
    }
    shown
}

/// Whether a character can't be seen: controls, marks that turn the direction of text, spaces without width,
/// breaks of lines, tags. Joiners, without which some scripts can't be written, and soft hyphens are none.
#[must_use]
pub fn is_hidden(letter: char) -> bool {
    letter.is_control()
        || matches!(letter,
            '\u{61c}' | '\u{180e}' | '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

/// A text short enough for a message.
#[must_use]
pub fn shortened(text: &str) -> String {
    const MOST: usize = 60;
    match text.char_indices().nth(MOST) {
        None => text.to_owned(),
        Some(_) => text.chars().take(MOST - 1).chain(['…']).collect(),
    }
}
