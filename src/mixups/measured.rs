//! What a conductor takes of what is measured and seen on it, and what no reading can be.

use super::acceptance::{Acceptance, At, Need, Reading, Test, Way, fine};
use super::features::{Shape, magnetic, outer_wires, scratch, shape, wire_diameter, wires};
use crate::catalogue::Conductor;
use crate::section::{Construction, Grooved, Magnetic};
use crate::units::{Length, Numerals};

const WORN: &str = "as a worn wire: look up its wear by the height that is left";
const PAST_STOP: &str = "it would be worn past its stop height: stop, and tell whoever runs the line";
const ACROSS: &str = "if that is its width: measure its height too";

/// All that a conductor takes; what its record does not say rules nothing out.
///
/// The mean of the diameters may be off by the tolerance of the reading and that of the record together.
pub(super) fn acceptance(wire: &Conductor, numerals: Numerals) -> Acceptance {
    let mm = |length: Length| format!("{}\u{a0}mm", numerals.shortest(length.mm(), 2));
    let near = wire.wire_diameter_tolerance.unwrap_or(Length::ZERO);
    let tests = [
        Some(size(wire, mm(wire.section.overall_diameter))),
        count(Reading::Wires, wires(wire), |wires| format!("it has {wires} wires in all")),
        count(Reading::Outer, outer_wires(wire), |wires| format!("its outer layer has {wires} wires")),
        whole_profile(wire, Reading::Wires),
        whole_profile(wire, Reading::Outer),
        wire_diameter(wire).map(|one| {
            let need = Need::about(Reading::Wire, one - near, one + near);
            Test::one(Reading::Wire, need, format!("one wire of it measures {}", mm(one)))
        }),
        Some(word(Reading::Shape, vec![shape_word(shape(wire))], looks(shape(wire)))),
        magnetic(wire).map(|known| word(Reading::Magnet, pulls_like(known), pulls(known))),
        scratch(wire).map(|known| {
            let otherwise = format!("a fresh scratch is {}", known.words());
            word(Reading::Scratch, vec![known.word()], &otherwise)
        }),
    ];
    let at = At::length(Reading::Mean, wire.section.overall_diameter);
    Acceptance { tests: tests.into_iter().flatten().collect(), at: Some(at) }
}

/// What no reading on a conductor can be: thinner than a hair, or thicker than an arm.
pub(super) fn limits() -> Vec<Test> {
    let diameter = |of| Test::one(of, Need::within(of, 0.1, 200.0), "a diameter is from 0.1 to 200 mm");
    let wires = |of| Test::one(of, Need::within(of, 1.0, 2000.0), "a conductor has 1 to 2000 wires");
    let tolerance = Need::within(Reading::Tolerance, 0.0, 10.0);
    vec![
        diameter(Reading::Mean),
        diameter(Reading::Low),
        diameter(Reading::High),
        diameter(Reading::Wire),
        Test::one(Reading::Tolerance, tolerance, "a tolerance is from 0 to 10 mm"),
        wires(Reading::Wires),
        wires(Reading::Outer),
    ]
}

/// What readings give to think about, whatever the conductor.
pub(super) fn remarks() -> Vec<Test> {
    let apart = Need::Between { of: Reading::Apart, least: None, most: Some(0.0), widened: 2.0 };
    let words = "the readings differ by {}\u{a0}mm: worn, crushed or not round; measure again elsewhere";
    vec![Test::one(Reading::Apart, apart, words)]
}

/// The word for a shape in what is looked up.
pub(super) fn shape_word(shape: Shape) -> &'static str {
    match shape {
        Shape::Round => "round",
        Shape::Grooved => "grooved",
        Shape::Rope => "rope",
        Shape::Tube => "tube",
        Shape::Bar => "bar",
    }
}

/// The word for what a magnet does in what is looked up.
pub(super) fn magnet_word(magnetic: Magnetic) -> &'static str {
    match magnetic {
        Magnetic::No => "no",
        Magnetic::Slight => "slight",
        Magnetic::Yes => "yes",
    }
}

/// The share of its diameter by which a conductor may be out of round, before two readings are no longer of one: common
/// practice, no source. By their mean alone, 9 and 16 mm would be a conductor of 12.5 mm.
const OVAL: f64 = 0.1;

/// A contact wire, a tube and a bar are one piece: no wires are counted on them.
fn whole_profile(wire: &Conductor, of: Reading) -> Option<Test> {
    let is_whole = matches!(
        wire.construction,
        Construction::Grooved(_) | Construction::Tube { .. } | Construction::Bar { .. }
    );
    is_whole.then(|| Test::one(of, Need::within(of, 0.0, 1.0), "it is one piece, without wires"))
}

fn size(wire: &Conductor, diameter: String) -> Test {
    let (size, off) = (wire.section.overall_diameter, wire.diameter_tolerance.unwrap_or(Length::ZERO));
    let round =
        Need::Between { of: Reading::Apart, least: None, most: Some(fine(size * OVAL)), widened: 2.0 };
    let mut ways = vec![Way::new(vec![Need::about(Reading::Mean, size - off, size + off), round])];
    if let Construction::Grooved(grooved) = &wire.construction {
        ways.extend(worn(wire, grooved, off));
    }
    Test { of: Reading::Mean, ways, otherwise: format!("it measures {diameter}") }
}

/// A worn grooved wire: its width stays, its height lies between new and its stop height, or below that down to half of
/// what it was. With one reading, its height counts only where it was seen to be grooved.
fn worn(wire: &Conductor, grooved: &Grooved, off: Length) -> [Way; 5] {
    let stop = wire.wear.as_ref().and_then(|wear| wear.stop_height);
    let half = grooved.height / 2.0;
    let lowest = stop.unwrap_or(half);
    let count = |count| Need::exactly(Reading::Count, count);
    let width = |of| Need::about(of, grooved.width - off, grooved.width + off);
    let height = |of| Need::about(of, lowest - off, grooved.height + off);
    let past = |of| Need::about(of, half.min(lowest) - off, lowest - off);
    let seen = Need::Among { of: Reading::Shape, words: vec![shape_word(Shape::Grooved)] };
    let way =
        |needs, of, length, remark| Way { needs, at: Some(At::length(of, length)), remark: Some(remark) };
    [
        way(vec![count(2), width(Reading::High), height(Reading::Low)], Reading::High, grooved.width, WORN),
        way(vec![count(1), width(Reading::Mean)], Reading::Mean, grooved.width, ACROSS),
        way(vec![count(1), height(Reading::Mean), seen.clone()], Reading::Mean, grooved.height, WORN),
        way(
            vec![count(2), width(Reading::High), past(Reading::Low)],
            Reading::High,
            grooved.width,
            PAST_STOP,
        ),
        way(vec![count(1), past(Reading::Mean), seen], Reading::Mean, lowest, PAST_STOP),
    ]
}

fn count(of: Reading, known: Option<u32>, otherwise: impl Fn(u32) -> String) -> Option<Test> {
    known.map(|known| Test::one(of, Need::exactly(of, known), otherwise(known)))
}

fn word(of: Reading, words: Vec<&'static str>, otherwise: &str) -> Test {
    Test::one(of, Need::Among { of, words }, otherwise)
}

fn looks(shape: Shape) -> &'static str {
    match shape {
        Shape::Round => "it is round",
        Shape::Grooved => "it is grooved",
        Shape::Rope => "it is a rope of strands",
        Shape::Tube => "it is a tube",
        Shape::Bar => "it is a bar",
    }
}

/// A slight pull on a hand magnet is told from none and from a strong one only with luck.
fn pulls_like(known: Magnetic) -> Vec<&'static str> {
    match known {
        Magnetic::No => vec!["no"],
        Magnetic::Slight => vec!["no", "slight", "yes"],
        Magnetic::Yes => vec!["slight", "yes"],
    }
}

fn pulls(known: Magnetic) -> &'static str {
    match known {
        Magnetic::No => "a magnet does not pull it",
        Magnetic::Slight => "a magnet pulls it a little",
        Magnetic::Yes => "a magnet holds it",
    }
}
