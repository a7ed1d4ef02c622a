//! Units as texts write them: with any sign or blank between newton and metre, since a reader takes them all for one.

/// What figures are of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    /// N·m.
    Torque,
    /// kN.
    Load,
    /// A mass, in kN: people say how hard they pull in kilograms too.
    Mass,
    /// Any other, as written.
    Other(&'static str),
}

/// A unit that stands in a text.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spelled {
    /// What it is.
    pub(super) unit: Unit,
    /// How many of N·m or kN, where it is a torque, load or mass.
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
    let (gap, steps) = gap(behind)?;
    let metre = match behind.get(gap)? {
        'm' => steps <= GAP,
        'M' => gap == 0,
        _ => false,
    };
    let factor = if kilo == 1 { 1000.0 } else { 1.0 };
    metre.then_some(Spelled { unit: Unit::Torque, factor, length: kilo + 1 + gap + 1 })
}

/// How many letters stand between newton and metre, and how many a reader sees of them; `None` where more than one of
/// these is a sign.
pub(super) fn gap(behind: &[char]) -> Option<(usize, usize)> {
    let (mut length, mut steps, mut signs) = (0, 0, 0);
    loop {
        let rest = &behind[length..];
        let (taken, is_sign) = match (entity(rest), rest.first()) {
            (Some(name), _) => (name.chars().count(), !BLANKS.contains(&name.as_str())),
            (None, Some(letter)) if letter.is_whitespace() || joins(*letter) => (1, joins(*letter)),
            _ => break,
        };
        (length, steps, signs) = (length + taken, steps + 1, signs + usize::from(is_sign));
    }
    (signs <= 1).then_some((length, steps))
}

/// Blanks by the names that Markdown reads.
const BLANKS: [&str; 6] = ["&nbsp;", "&thinsp;", "&ensp;", "&emsp;", "&#160;", "&#8239;"];
/// How many letters such a name has at most.
pub(super) const LONGEST_NAME: usize = 9;

/// The name of a letter, such as "&middot;", that a text begins with.
pub(super) fn entity(rest: &[char]) -> Option<String> {
    let inside = rest.strip_prefix(&['&'])?;
    let end = inside.iter().take(LONGEST_NAME).position(|letter| *letter == ';').filter(|end| *end > 1)?;
    let is_name = inside[..end].iter().all(|letter| letter.is_ascii_alphanumeric() || *letter == '#');
    is_name.then(|| rest[..end + 2].iter().collect())
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

pub(super) fn ends(behind: &[char]) -> bool {
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
        for text in ["N&middot;m", "N&sdot;m", "N&nbsp;m", "N&#183;m"] {
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
