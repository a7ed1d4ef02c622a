//! What readings something takes: data that the command and the pages' script both go by.
//!
//! No rule of a look-up stands anywhere else. Who evaluates this knows ranges and lists, and nothing of conductors
//! or fittings.

use crate::units::{Length, Numerals};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// A nanometre, in millimetres: a reading at the limit counts, whatever the last binary digits.
pub(super) const NEAR: f64 = 1e-6;

/// Something that is measured, counted or seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Reading {
    /// How many diameters were measured.
    Count,
    /// Their mean.
    Mean,
    /// The smaller.
    Low,
    /// The larger.
    High,
    /// What they differ by.
    Apart,
    /// How far a reading may be off.
    Tolerance,
    /// Wires altogether.
    Wires,
    /// Wires seen from outside.
    Outer,
    /// Diameter of one wire.
    Wire,
    /// What it looks like.
    Shape,
    /// What a magnet does.
    Magnet,
    /// Colour under a fresh scratch.
    Scratch,
    /// How far a gripping part stands out.
    StandOut,
    /// Whether line tension has been on.
    State,
}

impl Reading {
    fn word(self) -> &'static str {
        match self {
            Self::Count => "count",
            Self::Mean => "mean",
            Self::Low => "low",
            Self::High => "high",
            Self::Apart => "apart",
            Self::Tolerance => "tolerance",
            Self::Wires => "wires",
            Self::Outer => "outer",
            Self::Wire => "wire",
            Self::Shape => "shape",
            Self::Magnet => "magnet",
            Self::Scratch => "scratch",
            Self::StandOut => "stand_out",
            Self::State => "state",
        }
    }

    /// What was read, with its unit: "200.15 mm", "7".
    pub(super) fn say(self, value: f64, numerals: Numerals) -> String {
        let unit = if matches!(self, Self::Count | Self::Wires | Self::Outer) { "" } else { "\u{a0}mm" };
        format!("{}{unit}", numerals.shortest(value, 3))
    }
}

/// What was read. Lengths are in millimetres.
#[derive(Debug, Clone, Default)]
pub(super) struct Read {
    pub(super) numbers: BTreeMap<Reading, f64>,
    pub(super) words: BTreeMap<Reading, &'static str>,
}

impl Read {
    fn has(&self, of: Reading) -> bool {
        self.numbers.contains_key(&of) || self.words.contains_key(&of)
    }

    fn tolerance(&self) -> f64 {
        self.numbers.get(&Reading::Tolerance).copied().unwrap_or(0.0)
    }
}

/// What one reading has to be. One that was not taken meets nothing.
#[derive(Debug, Clone)]
pub(super) enum Need {
    /// A number from least to most, wider at both ends by so many times the tolerance of the reading.
    Between { of: Reading, least: Option<f64>, most: Option<f64>, widened: f64 },
    /// One of these words.
    Among { of: Reading, words: Vec<&'static str> },
}

impl Need {
    /// A length that a reading may miss by its tolerance.
    pub(super) fn about(of: Reading, least: Length, most: Length) -> Self {
        Self::Between { of, least: Some(fine(least)), most: Some(fine(most)), widened: 1.0 }
    }

    /// A count.
    pub(super) fn exactly(of: Reading, count: u32) -> Self {
        Self::within(of, f64::from(count), f64::from(count))
    }

    /// A number from least to most, whatever the tolerance.
    pub(super) fn within(of: Reading, least: f64, most: f64) -> Self {
        Self::Between { of, least: Some(least), most: Some(most), widened: 0.0 }
    }

    fn met(&self, read: &Read) -> bool {
        match self {
            Self::Between { of, least, most, widened } => read.numbers.get(of).is_some_and(|seen| {
                let off = widened * read.tolerance() + NEAR;
                least.is_none_or(|least| *seen >= least - off) && most.is_none_or(|most| *seen <= most + off)
            }),
            Self::Among { of, words } => read.words.get(of).is_some_and(|seen| words.contains(seen)),
        }
    }

    fn to_json(&self) -> Value {
        match self {
            Self::Between { of, least, most, widened } => {
                json!({ "of": of.word(), "least": least, "most": most, "widened": widened })
            }
            Self::Among { of, words } => json!({ "of": of.word(), "among": words }),
        }
    }
}

/// Where something would be read, for what lies nearest.
#[derive(Debug, Clone, Copy)]
pub(super) struct At {
    pub(super) of: Reading,
    pub(super) mm: f64,
}

impl At {
    pub(super) fn length(of: Reading, length: Length) -> Self {
        Self { of, mm: fine(length) }
    }

    fn to_json(self) -> Value {
        json!({ "of": self.of.word(), "mm": self.mm })
    }
}

/// One of several ways to agree: all that it needs.
#[derive(Debug, Clone)]
pub(super) struct Way {
    pub(super) needs: Vec<Need>,
    /// Where it would be read if it agrees in this way; as the whole where there is none.
    pub(super) at: Option<At>,
    /// What is to be thought of where it agrees in this way alone.
    pub(super) remark: Option<&'static str>,
}

impl Way {
    pub(super) fn new(needs: Vec<Need>) -> Self {
        Self { needs, at: None, remark: None }
    }
}

/// A test of a reading. It is passed where that reading was not taken, or agrees in one of the ways.
#[derive(Debug, Clone)]
pub(super) struct Test {
    pub(super) of: Reading,
    pub(super) ways: Vec<Way>,
    /// What is said where none does; `{}` stands for the reading.
    pub(super) otherwise: String,
}

impl Test {
    /// A test that takes one need.
    pub(super) fn one(of: Reading, need: Need, otherwise: impl Into<String>) -> Self {
        Self { of, ways: vec![Way::new(vec![need])], otherwise: otherwise.into() }
    }

    fn way(&self, read: &Read) -> Option<&Way> {
        self.ways.iter().find(|way| way.needs.iter().all(|need| need.met(read)))
    }

    /// What is said where a reading does not pass.
    pub(super) fn against(&self, read: &Read, numerals: Numerals) -> Option<String> {
        let fails = read.has(self.of) && self.way(read).is_none();
        let seen = read.numbers.get(&self.of).copied().unwrap_or_default();
        fails.then(|| self.otherwise.replace("{}", &numerals.fixed(seen + NEAR, 2)))
    }

    pub(super) fn to_json(&self) -> Value {
        let way = |way: &Way| {
            json!({
                "needs": way.needs.iter().map(Need::to_json).collect::<Vec<_>>(),
                "at": way.at.map(At::to_json),
                "remark": way.remark,
            })
        };
        json!({
            "of": self.of.word(),
            "ways": self.ways.iter().map(way).collect::<Vec<_>>(),
            "otherwise": self.otherwise,
        })
    }
}

/// All that something takes.
#[derive(Debug, Clone)]
pub(super) struct Acceptance {
    pub(super) tests: Vec<Test>,
    pub(super) at: Option<At>,
}

impl Acceptance {
    pub(super) fn agrees(&self, read: &Read) -> bool {
        self.tests.iter().all(|test| !read.has(test.of) || test.way(read).is_some())
    }

    /// How far from the readings it is, in millimetres; infinite where that is not known.
    pub(super) fn distance(&self, read: &Read) -> f64 {
        let own = self.tests.iter().find_map(|test| test.way(read)?.at);
        let seen = |at: At| read.numbers.get(&at.of).map(|seen| (seen - at.mm).abs());
        own.or(self.at).and_then(seen).unwrap_or(f64::INFINITY)
    }

    /// What the ways in which it agrees give to think about.
    pub(super) fn remarks(&self, read: &Read) -> Vec<&'static str> {
        self.tests.iter().filter_map(|test| test.way(read)?.remark).collect()
    }

    pub(super) fn to_json(&self) -> Value {
        json!({
            "tests": self.tests.iter().map(Test::to_json).collect::<Vec<_>>(),
            "at": self.at.map(At::to_json),
        })
    }
}

/// Millimetres to the nanometre, so that no file differs by a last bit.
pub(super) fn fine(length: Length) -> f64 {
    let rounded: f64 = format!("{:.6}", length.mm()).parse().unwrap_or_default();
    // Never -0.
    rounded + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn test() -> Test {
        let (least, most) = (Length::from_mm(13.9), Length::from_mm(14.1));
        Test::one(Reading::Mean, Need::about(Reading::Mean, least, most), "found {} mm")
    }

    fn read(mean: f64, tolerance: f64) -> Read {
        let numbers = BTreeMap::from([(Reading::Mean, mean), (Reading::Tolerance, tolerance)]);
        Read { numbers, words: BTreeMap::new() }
    }

    #[test]
    fn a_range_is_wider_by_the_tolerance_of_the_reading_and_takes_its_limits() {
        let says = |mean, tolerance| test().against(&read(mean, tolerance), Numerals::default());
        assert_eq!(says(14.1, 0.0), None);
        assert_eq!(says(14.3, 0.2), None);
        assert_eq!(says(13.7, 0.2), None);
        assert_eq!(says(14.31, 0.2).as_deref(), Some("found 14.31 mm"));
        assert_eq!(says(f64::NAN, 0.2).as_deref(), Some("found NaN mm"));
    }

    #[test]
    fn what_was_not_read_passes_a_test_and_meets_no_need() {
        assert_eq!(test().against(&Read::default(), Numerals::default()), None);
        assert!(test().way(&Read::default()).is_none());
    }

    #[test]
    fn lengths_are_written_with_six_decimals_at_most() {
        assert_eq!(fine(Length::from_mm(12.839_999_999_999_9)), 12.84);
        assert_eq!(fine(Length::from_mm(-0.000_000_1)).to_string(), "0");
    }
}
