//! A mark as pages draw it: its paint with notches in its lower edge, its text, and both in words.

use super::joined;
use crate::colour::{ColourCode, Srgb};
use crate::facts::MarkFacts;
use serde_json::{Value, json};
use std::fmt::Write;

/// Width and height of the paint; half the width of a notch, its depth, and from one to the next.
const SIZE: (u32, u32) = (48, 26);
const NOTCH: (u32, u32, u32) = (2, 6, 6);

/// A mark as layouts of pages get it.
pub(super) fn mark(mark: &MarkFacts) -> Value {
    let paint = ColourCode::from_letters(&mark.code).map_or(Srgb::WHITE, ColourCode::printed);
    let words = [mark.text.as_str(), &mark.colour, &mark.notches_words];
    json!({
        "text": mark.text, "outline": outline(mark.notches), "fill": paint.hex(), "ink": paint.text_on_it().hex(),
        "words": joined(words.into_iter().map(str::to_owned), ", "),
    })
}

/// The paint's outline, with as many notches from the right end of its lower edge as there is room for.
fn outline(notches: u32) -> String {
    let ((width, height), (half, deep, apart)) = (SIZE, NOTCH);
    let mut path = format!("M0 0H{width}V{height}");
    for notch in 0..notches.min((width - apart) / apart) {
        let x = width - apart / 2 - notch * apart - half;
        let _ = write!(path, "H{}L{} {}L{} {height}", x + half, x, height - deep, x - half);
    }
    path.push_str("H0Z");
    path
}
