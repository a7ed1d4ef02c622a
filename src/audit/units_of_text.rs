//! Units as texts write them: with any sign or blank between newton and metre, since a reader takes them all for one.

/// What figures are of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    /// N·m.
    Torque,
    /// kN.
    Load,
    /// Any other, as written.
    Other(&'static str),
}

/// A unit that stands in a text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spelled {
    /// What it is.
    pub(super) unit: Unit,
    /// How many of N·m, where it is a torque.
    pub(super) factor: f64,
    /// How many letters it has.
    pub(super) length: usize,
}

/// Units besides those of torques and loads, longer ones first.
const OTHERS: [&str; 7] = ["wires", "wire", "mm²", "mm", "cm", "m", "°"];
/// What a unit is divided by where a stroke stands behind it: "kN/m" is no load.
const DIVISORS: [&str; 7] = ["m", "mm", "cm", "km", "s", "min", "h"];
/// How many letters may stand between newton and metre.
const GAP: usize = 3;

/// The unit that begins at a letter; `None` where a word goes on there, or on behind it.
pub(super) fn unit_at(letters: &[char], at: usize) -> Option<Spelled> {
    if letters[..at].last().is_some_and(|before| before.is_alphabetic()) {
        return None;
    }
    let rest = &letters[at..];
    [torque(rest), load(rest)]
        .into_iter()
        .flatten()
        .chain(others(rest))
        .find(|unit| ends(&rest[unit.length..]))
}

fn torque(rest: &[char]) -> Option<Spelled> {
    let kilo = usize::from(matches!(rest.first(), Some('k' | 'K')));
    let behind = rest.get(kilo..)?.strip_prefix(&['N'])?;
    let gap = behind.iter().take_while(|letter| letter.is_whitespace() || joins(**letter)).count();
    let signs = behind[..gap].iter().filter(|letter| joins(**letter)).count();
    let metre = match behind.get(gap)? {
        'm' => gap <= GAP && signs <= 1,
        'M' => gap == 0,
        _ => false,
    };
    let factor = if kilo == 1 { 1000.0 } else { 1.0 };
    metre.then_some(Spelled { unit: Unit::Torque, factor, length: kilo + 1 + gap + 1 })
}

/// Whether a sign may stand between newton and metre: every dot, star and dash, but none that ends or divides.
fn joins(letter: char) -> bool {
    !letter.is_alphanumeric() && !letter.is_whitespace() && !",;:()[]{}/|\"".contains(letter)
}

fn load(rest: &[char]) -> Option<Spelled> {
    let is_load = matches!(rest, ['k' | 'K', 'N', ..]);
    is_load.then_some(Spelled { unit: Unit::Load, factor: 1.0, length: 2 })
}

fn others(rest: &[char]) -> impl Iterator<Item = Spelled> {
    let stands = |unit: &str| unit.chars().enumerate().all(|(nth, letter)| rest.get(nth) == Some(&letter));
    OTHERS.into_iter().filter(move |unit| stands(unit)).map(|unit| Spelled {
        unit: Unit::Other(unit),
        factor: 1.0,
        length: unit.chars().count(),
    })
}

fn ends(behind: &[char]) -> bool {
    match behind {
        ['/', divisor @ ..] => {
            let word: String = divisor.iter().take_while(|letter| letter.is_alphabetic()).collect();
            !DIVISORS.contains(&word.as_str())
        }
        ['·' | '⋅', next, ..] => !next.is_alphabetic(),
        [next, ..] => !next.is_alphanumeric(),
        [] => true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unit(text: &str) -> Option<(Unit, f64)> {
        let letters: Vec<char> = text.chars().collect();
        unit_at(&letters, 0).map(|found| (found.unit, found.factor))
    }

    /// The unit is the newton metre of ISO 80000-4; how it is mistyped: common practice, no source.
    #[test]
    fn whatever_stands_between_newton_and_metre_it_is_a_torque() {
        for text in ["N·m", "N⋅m", "N•m", "N∙m", "N‧m", "N・m", "N.m", "N*m", "N-m", "Nm", "NM"] {
            assert_eq!(unit(text), Some((Unit::Torque, 1.0)), "{text}");
        }
        for text in ["N m.", "N\u{a0}m", "N\u{202f}m", "N\u{2009}m", "N · m", "Nm, then"] {
            assert_eq!(unit(text), Some((Unit::Torque, 1.0)), "{text}");
        }
        assert_eq!(unit("kN·m"), Some((Unit::Torque, 1000.0)));
    }

    #[test]
    fn a_unit_is_a_word_of_its_own() {
        assert_eq!(unit("kN/22 kN"), Some((Unit::Load, 1.0)));
        assert_eq!(unit("mm²"), Some((Unit::Other("mm²"), 1.0)));
        assert_eq!(unit("mm hex"), Some((Unit::Other("mm"), 1.0)));
        assert_eq!(unit("° to"), Some((Unit::Other("°"), 1.0)));
        for text in ["kN/m", "N/mm²", "N", "N min", "N m6", "°C", "m²", "metal", "wired", "knot", "N, m"] {
            assert_eq!(unit(text), None, "{text}");
        }
    }
}
