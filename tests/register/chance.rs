//! Edits by chance: a card is listed if and only if its printed texts differ; a file that is only written otherwise
//! lists nothing.

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

/// Another way to write the same records. Numbers stay as they are written: `2.50` is printed so.
#[derive(Debug, Clone, Copy)]
enum Written {
    /// Comments above each key and behind the last.
    Commented,
    /// Keys of a record in the opposite order.
    Reversed,
    /// Keys in quotes, with more space behind them.
    Quoted,
    /// Under another name in the same folder.
    Elsewhere,
}

const WAYS: [Written; 4] = [Written::Commented, Written::Reversed, Written::Quoted, Written::Elsewhere];

/// Writes a file of the catalogue otherwise; what it says stays.
fn written(desk: &mut Desk, path: &str, how: Written) {
    let text = desk.files[path].clone();
    let each = |write: fn(Vec<String>) -> Vec<String>| {
        let records = text.split("\n---\n").map(|record| write(entries(record)).concat());
        records.collect::<Vec<_>>().join("---\n")
    };
    let (path, text) = match how {
        Written::Commented => {
            (path, each(|all| all.iter().map(|entry| format!("# 12.5 kN\n{entry}")).collect()))
        }
        Written::Reversed => (path, each(|all| all.into_iter().rev().collect())),
        Written::Quoted => (path, each(|all| all.iter().map(|entry| quoted(entry)).collect())),
        // The settings have but one name.
        Written::Elsewhere if path == FILES[0] => return,
        Written::Elsewhere => {
            desk.files.remove(path);
            desk.files.insert(path.replacen('/', "/0-moved-", 1), text);
            return;
        }
    };
    desk.files.insert(path.to_owned(), text);
}

/// The keys of a record with all that stands under each; what stands above the first belongs to it.
fn entries(record: &str) -> Vec<String> {
    let mut entries: Vec<String> = Vec::new();
    let mut above = String::new();
    for line in record.lines() {
        let line = format!("{line}\n");
        if line.starts_with(|first: char| first.is_ascii_lowercase()) {
            entries.push(format!("{above}{line}"));
            above.clear();
        } else if let Some(entry) = entries.last_mut() {
            entry.push_str(&line);
        } else {
            above.push_str(&line);
        }
    }
    entries
}

fn quoted(entry: &str) -> String {
    let line = entry.lines().find(|line| line.starts_with(|first: char| first.is_ascii_lowercase())).unwrap();
    let (key, rest) = line.split_once(':').unwrap();
    entry.replacen(line, &format!("\"{key}\":  {rest}"), 1)
}

/// Numbers of the cards whose printed texts are others than when they were issued.
fn differing(desk: &Desk) -> BTreeSet<String> {
    let (before, after) = (printed(&ISSUED), printed(desk));
    let numbers: BTreeSet<&String> = before.keys().chain(after.keys()).collect();
    numbers.into_iter().filter(|number| before.get(*number) != after.get(*number)).cloned().collect()
}

/// The edits below can change cards and can leave them: neither list is always empty.
#[test]
fn some_edits_change_cards_and_some_do_not() {
    let desks = (0..48_usize).filter_map(|nth| edited(&[(nth, nth * 97 + 13, 0)]));
    let listed: Vec<BTreeSet<String>> = desks.map(|desk| desk.listed()).collect();
    let changed = listed.iter().filter(|cards| !cards.is_empty()).count();
    assert!(changed > 2 && changed < listed.len() - 2, "{changed} of {}", listed.len());
}

proptest! {
    #![proptest_config(random_cases(48))]

    #[test]
    fn a_card_is_listed_if_and_only_if_its_printed_texts_differ(
        edits in proptest::collection::vec((0_usize..FILES.len(), any::<usize>(), any::<u8>()), 1..3)
    ) {
        let Some(desk) = edited(&edits) else { return Ok(()) };
        prop_assert_eq!(desk.listed(), differing(&desk));
    }
}

proptest! {
    #![proptest_config(random_cases(16))]

    /// Comments, the order of keys, YAML's style and names of files are no printed texts. Beside another edit, they
    /// change nothing of what it lists.
    #[test]
    fn what_is_only_written_otherwise_lists_nothing(
        ways in proptest::collection::btree_map(0_usize..FILES.len(), 0_usize..WAYS.len(), 1..4),
        edit in proptest::option::of((0_usize..FILES.len(), any::<usize>(), any::<u8>()))
    ) {
        let Some(plain) = edited(&Vec::from_iter(edit)) else { return Ok(()) };
        let mut otherwise = plain.clone();
        for (file, way) in ways {
            written(&mut otherwise, FILES[file], WAYS[way]);
        }
        prop_assert_eq!(otherwise.listed(), differing(&plain));
    }
}
