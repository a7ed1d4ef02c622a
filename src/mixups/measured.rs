//! What a conductor takes of what is measured and seen on it, and what no reading can be.

use super::acceptance::{Acceptance, At, Need, Reading, Test, Way, fine};
use super::features::{Shape, magnetic, outer_wires, scratch, shape, wire_diameter, wires};
use crate::catalogue::{Catalogue, Conductor};
use crate::section::{Construction, Grooved, Magnetic};
use crate::units::{Length, Numerals};

const WORN: &str = "as a worn wire: look up its wear by the height that is left";
const PAST_STOP: &str = "it would be worn past its stop height: stop, and tell whoever runs the line";
const ACROSS: &str = "if that is its width: measure its height too";
const WIDE: &str = "if that is its width: measure its thickness too";
const THICK: &str = "if that is its thickness: measure its width too";

/// All that a conductor takes; what its record does not say rules nothing out.
///
/// The mean of the diameters may be off by the tolerance of the reading and that of the record together.
pub(super) fn acceptance(wire: &Conductor, numerals: Numerals) -> Acceptance {
    let number = |length: Length| numerals.shortest(length.mm(), 2);
    let mm = |length: Length| format!("{}\u{a0}mm", number(length));
    let diameter = match wire.construction {
        Construction::Bar { width, thickness, .. } => format!("{} × {}", number(width), mm(thickness)),
        _ => mm(wire.section.overall_diameter),
    };
    let near = wire.wire_diameter_tolerance.unwrap_or(Length::ZERO);
    let tests = [
        Some(size(wire, &diameter)),
        count(Reading::Wires, wires(wire), |wires| format!("it has {wires} wires in all")),
        count(Reading::Outer, outer_wires(wire), |wires| format!("its outer layer has {wires} wires")),
        whole_profile(wire, Reading::Wires),
        whole_profile(wire, Reading::Outer),
        wire_diameter(wire).map(|one| {
            let need = Need::about(Reading::Wire, one - near, one + near);
            Test::one(Reading::Wire, need, format!("one wire of it measures {}", mm(one)))
        }),
        Some(word(Reading::Shape, looks_like(shape(wire)), looks(shape(wire)))),
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

/// What readings give to think about beside the conductors that agree.
pub(super) fn remarks(catalogue: &Catalogue) -> Vec<Test> {
    let apart = Need::Between { of: Reading::Apart, least: None, most: Some(0.0), widened: 2.0 };
    let words = "the readings differ by {}\u{a0}mm: worn, crushed or not round; measure again elsewhere";
    let worn = catalogue.conductors.values().filter_map(|wire| maybe_worn(wire));
    [Test::one(Reading::Apart, apart, words)].into_iter().chain(worn).collect()
}

/// One reading between new and as worn as may be, and nobody said what it looks like: it can be this contact wire.
fn maybe_worn(wire: &Conductor) -> Option<Test> {
    let Construction::Grooved(grooved) = &wire.construction else { return None };
    let off = wire.diameter_tolerance.unwrap_or(Length::ZERO);
    let stop = wire.wear.as_ref().and_then(|wear| wear.stop_height);
    let lowest = stop.map_or(grooved.height / 2.0, |stop| stop.min(grooved.height / 2.0));
    let looked =
        [Shape::Round, Shape::Grooved, Shape::Rope, Shape::Tube, Shape::Bar].map(shape_word).to_vec();
    let outside = |least: Option<Length>, most: Option<Length>, widened| Need::Between {
        of: Reading::Mean,
        least: least.map(fine),
        most: most.map(fine),
        widened,
    };
    let passes = [
        Need::exactly(Reading::Count, 2),
        Need::Among { of: Reading::Shape, words: looked },
        outside(Some(grooved.height - off), None, 1.0),
        outside(None, Some(lowest - off), -1.0),
    ];
    let ways = passes.into_iter().map(|need| Way::new(vec![need])).collect();
    let otherwise = format!("if it is grooved, it can be {} worn: say what it looks like", wire.name);
    Some(Test { of: Reading::Mean, ways, otherwise })
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

fn size(wire: &Conductor, measures: &str) -> Test {
    let off = wire.diameter_tolerance.unwrap_or(Length::ZERO);
    let ways = match &wire.construction {
        Construction::Grooved(grooved) => {
            [round(wire, off)].into_iter().chain(worn(wire, grooved, off)).collect()
        }
        Construction::Bar { width, thickness, .. } => flat(*width, *thickness, off).into(),
        _ => vec![round(wire, off)],
    };
    Test { of: Reading::Mean, ways, otherwise: format!("it measures {measures}") }
}

/// One diameter, however it is measured.
fn round(wire: &Conductor, off: Length) -> Way {
    let size = wire.section.overall_diameter;
    let round =
        Need::Between { of: Reading::Apart, least: None, most: Some(fine(size * OVAL)), widened: 2.0 };
    Way::new(vec![Need::about(Reading::Mean, size - off, size + off), round])
}

/// A bar, measured over its sides: nobody reads the circle round it.
fn flat(width: Length, thickness: Length, off: Length) -> [Way; 3] {
    let side = |of, side: Length| Need::about(of, side - off, side + off);
    let one = |length, remark| {
        let needs = vec![Need::exactly(Reading::Count, 1), side(Reading::Mean, length)];
        Way { needs, at: Some(At::length(Reading::Mean, length)), remark: Some(remark) }
    };
    let (wide, thick) = (side(Reading::High, width), side(Reading::Low, thickness));
    let both = Way {
        needs: vec![Need::exactly(Reading::Count, 2), wide, thick],
        at: Some(At::length(Reading::High, width)),
        remark: None,
    };
    [both, one(width, WIDE), one(thickness, THICK)]
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

/// What somebody may call a shape: a tube is round too, where its end is not seen.
fn looks_like(shape: Shape) -> Vec<&'static str> {
    match shape {
        Shape::Tube => vec![shape_word(shape), shape_word(Shape::Round)],
        _ => vec![shape_word(shape)],
    }
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
