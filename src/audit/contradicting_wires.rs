//! Counts of wires that a text names otherwise than the spreading cone of its fitting parts them. The words are English.

use super::stretch_of_text::{Contradiction, Stretch};
use super::words_of_text::Word;
use crate::catalogue::Part;
use crate::diagnostics::Severity;
use crate::grip::Geometry;

/// How a conductor's wires lie in a spreading cone.
struct Parted<'a> {
    cone: &'a Part,
    through: u32,
    round: u32,
    layers: Vec<u32>,
}

/// Which of the wires a text speaks of.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Which {
    Through,
    Round,
    Any,
}

const INNER: [&str; 2] = ["inner", "through"];
const OUTER: [&str; 6] = ["outer", "round", "around", "lay", "bend", "spread"];

/// What a stretch says of the number of wires otherwise than the records.
pub(super) fn wires(stretch: &Stretch<'_>) -> Vec<Contradiction> {
    let Some(parted) = parted(stretch) else { return Vec::new() };
    let words = &stretch.words;
    let counts = words.iter().enumerate().filter_map(|(index, word)| {
        let count: u32 = word.text.parse().ok()?;
        let which = which(words, index)?;
        let has = |count| parted.has(which, count);
        (!has(count) && !joined(words, index).is_some_and(|more| has(count + more)))
            .then(|| contradiction(&parted, word, which))
    });
    counts.collect()
}

fn parted<'a>(stretch: &Stretch<'a>) -> Option<Parted<'a>> {
    let of = |part: &'a Part| match &part.geometry {
        Some(Geometry::SpreadingCone(cone)) => Some((part, cone.wires_through_hole?)),
        _ => None,
    };
    let (cone, through) = stretch.fitting.gripping().find_map(|item| of(&item.part))?;
    let [conductor] = stretch.fitting.conductors.as_slice() else { return None };
    let layers: Vec<u32> = conductor.section.layers.iter().map(|layer| layer.wires).collect();
    let round = layers.iter().sum::<u32>().checked_sub(through)?;
    Some(Parted { cone, through, round, layers })
}

impl Parted<'_> {
    fn has(&self, which: Which, count: u32) -> bool {
        match which {
            Which::Through => count == self.through,
            Which::Round => count == self.round,
            Which::Any => {
                let sums = [self.through, self.round, self.through + self.round];
                sums.contains(&count) || self.layers.contains(&count)
            }
        }
    }
}

/// Which wires the number at an index counts; `None` where it counts no wires.
fn which(words: &[Word<'_>], index: usize) -> Option<Which> {
    let is = |word: &Word<'_>, listed: &[&str]| listed.iter().any(|one| word.text.eq_ignore_ascii_case(one));
    let clause = clause(words, index);
    let (before, behind) = clause.split_at(index - words_before(words, clause));
    let behind = behind.get(1..).unwrap_or_default();
    let counts = before.last().is_some_and(|word| is(word, &["inner", "outer"]))
        || behind.first().is_some_and(|word| is(word, &["inner", "outer", "wires", "wire"]));
    if !counts {
        return None;
    }
    let near = before.last().into_iter().chain(behind.first());
    let all = near.chain(behind).chain(before);
    let told = all.filter_map(|word| {
        let through = is(word, &INNER).then_some(Which::Through);
        through.or_else(|| is(word, &OUTER).then_some(Which::Round))
    });
    Some(told.into_iter().next().unwrap_or(Which::Any))
}

/// The number that is joined to the one at an index, as in "outer 18 and 12".
fn joined(words: &[Word<'_>], index: usize) -> Option<u32> {
    let number = |index: Option<usize>| words.get(index?)?.text.parse::<u32>().ok();
    let is_and = |index: Option<usize>| {
        index.and_then(|index| words.get(index)).is_some_and(|word| word.text == "and")
    };
    let behind = is_and(index.checked_add(1)).then(|| number(index.checked_add(2))).flatten();
    behind.or_else(|| is_and(index.checked_sub(1)).then(|| number(index.checked_sub(2))).flatten())
}

/// The words round an index that no punctuation parts from it.
fn clause<'w, 'a>(words: &'w [Word<'a>], index: usize) -> &'w [Word<'a>] {
    let start = words[..index].iter().rposition(|word| word.ends).map_or(0, |ends| ends + 1);
    let end = words[index..].iter().position(|word| word.ends).map_or(words.len(), |ends| index + ends + 1);
    &words[start..end]
}

fn words_before(words: &[Word<'_>], clause: &[Word<'_>]) -> usize {
    clause.first().and_then(|first| words.iter().position(|word| word.at == first.at)).unwrap_or(0)
}

fn contradiction(parted: &Parted<'_>, word: &Word<'_>, which: Which) -> Contradiction {
    let Parted { cone, through, round, .. } = parted;
    let message = match which {
        Which::Through => format!("{through} wires go through the cone"),
        Which::Round => format!("{round} wires lie round the cone"),
        Which::Any => format!("{through} wires go through the cone, {round} lie round it"),
    };
    Contradiction {
        severity: Severity::Error,
        at: word.at,
        message,
        found: word.text.to_owned(),
        place: cone.origin.of("geometry.spreading_cone.wires_through_hole"),
        is: "the wires that go through its hole",
        is_of_wrong_part: false,
        value: "",
    }
}
