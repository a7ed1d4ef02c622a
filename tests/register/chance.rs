//! Edits by chance: a card is listed if and only if its printed texts differ.

use super::{Desk, printed};
use crate::fixtures::random_cases;
use proptest::prelude::*;
use std::collections::BTreeSet;
use std::sync::LazyLock;

static ISSUED: LazyLock<Desk> = LazyLock::new(Desk::issued);

/// Files that edits go into.
const FILES: [&str; 6] = [
    "catalogue.yaml",
    "fittings/collet-dead-ends.yaml",
    "fittings/rope-eyes.yaml",
    "parts/collet-body.yaml",
    "procedures/dead-ends.yaml",
    "conductors/messengers.yaml",
];

/// A catalogue in which the figures and words at these places are others, as far as it can still be read.
fn edited(edits: &[(usize, usize, u8)]) -> Option<Desk> {
    let mut desk = ISSUED.clone();
    for (file, place, kind) in edits {
        let path = FILES[file % FILES.len()];
        let text = desk.files.get_mut(path)?;
        let digits: Vec<usize> = text
            .char_indices()
            .filter(|(_, letter)| letter.is_ascii_alphanumeric())
            .map(|(at, _)| at)
            .collect();
        let at = digits[place % digits.len()];
        let letter = text.as_bytes()[at];
        let other = match letter {
            b'0'..=b'9' => b'0' + (letter - b'0' + 1 + kind % 9) % 10,
            b'A'..=b'Z' => b'A' + (letter - b'A' + 1 + kind % 25) % 26,
            _ => b'a' + (letter - b'a' + 1 + kind % 25) % 26,
        };
        text.replace_range(at..=at, char::from(other).encode_utf8(&mut [0; 4]));
    }
    let read = desk.read();
    (!read.findings.has_errors()).then_some(desk)
}

proptest! {
    #![proptest_config(random_cases(96))]

    #[test]
    fn a_card_is_listed_if_and_only_if_its_printed_texts_differ(
        edits in proptest::collection::vec((0_usize..FILES.len(), any::<usize>(), any::<u8>()), 1..3)
    ) {
        let Some(desk) = edited(&edits) else { return Ok(()) };
        let (before, after) = (printed(&ISSUED), printed(&desk));
        let numbers: BTreeSet<&String> = before.keys().chain(after.keys()).collect();
        let differ: BTreeSet<String> = numbers
            .into_iter()
            .filter(|number| before.get(*number) != after.get(*number))
            .cloned()
            .collect();
        prop_assert_eq!(desk.listed(), differ);
    }
}
