//! Torques and loads in units that no record states them in: people write them all the same, and a crew acts on them.

use super::units_of_text::{Spelled, Unit, ends, gap};

/// Newtons of one kilogram-force: standard gravity of ISO 80000-3, exact.
const GRAVITY: f64 = 9.806_65;
/// Newtons of one pound-force, NIST SP 811, Appendix B.8.
const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// Newton metres of one pound-force foot, NIST SP 811, Appendix B.8.
const POUND_FOOT: f64 = 1.355_817_948_331_400_4;

/// Spelled units, longer ones first; a blank stands for whatever may stand between newton and metre, or nothing.
const SPELLED: [(&str, Unit, f64); 55] = [
    ("kilonewton metres", Unit::Torque, 1000.0),
    ("kilonewton metre", Unit::Torque, 1000.0),
    ("newton metres", Unit::Torque, 1.0),
    ("newton metre", Unit::Torque, 1.0),
    ("newton meters", Unit::Torque, 1.0),
    ("newton meter", Unit::Torque, 1.0),
    ("n x m", Unit::Torque, 1.0),
    ("nm", Unit::Torque, 1.0),
    ("kn m", Unit::Torque, 1000.0),
    ("dan m", Unit::Torque, 10.0),
    ("n cm", Unit::Torque, 0.01),
    ("cn m", Unit::Torque, 0.01),
    ("n mm", Unit::Torque, 0.001),
    ("kgf m", Unit::Torque, GRAVITY),
    ("kg m", Unit::Torque, GRAVITY),
    ("kp m", Unit::Torque, GRAVITY),
    ("m kg", Unit::Torque, GRAVITY),
    ("foot pounds", Unit::Torque, POUND_FOOT),
    ("foot pound", Unit::Torque, POUND_FOOT),
    ("pound feet", Unit::Torque, POUND_FOOT),
    ("pound foot", Unit::Torque, POUND_FOOT),
    ("ft lbs", Unit::Torque, POUND_FOOT),
    ("ft lbf", Unit::Torque, POUND_FOOT),
    ("ft lb", Unit::Torque, POUND_FOOT),
    ("lbf ft", Unit::Torque, POUND_FOOT),
    ("lbs ft", Unit::Torque, POUND_FOOT),
    ("lb ft", Unit::Torque, POUND_FOOT),
    ("inch pounds", Unit::Torque, POUND_FOOT / 12.0),
    ("in lbs", Unit::Torque, POUND_FOOT / 12.0),
    ("in lbf", Unit::Torque, POUND_FOOT / 12.0),
    ("in lb", Unit::Torque, POUND_FOOT / 12.0),
    ("lbf in", Unit::Torque, POUND_FOOT / 12.0),
    ("kilonewtons", Unit::Load, 1.0),
    ("kilonewton", Unit::Load, 1.0),
    ("newtons", Unit::Load, 0.001),
    ("newton", Unit::Load, 0.001),
    ("kn", Unit::Load, 1.0),
    ("dan", Unit::Load, 0.01),
    ("kgf", Unit::Load, GRAVITY / 1000.0),
    ("kp", Unit::Load, GRAVITY / 1000.0),
    ("lbf", Unit::Load, POUND_FORCE / 1000.0),
    ("kilogrammes", Unit::Mass, GRAVITY / 1000.0),
    ("kilograms", Unit::Mass, GRAVITY / 1000.0),
    ("kilogram", Unit::Mass, GRAVITY / 1000.0),
    ("kilos", Unit::Mass, GRAVITY / 1000.0),
    ("kilo", Unit::Mass, GRAVITY / 1000.0),
    ("kg", Unit::Mass, GRAVITY / 1000.0),
    ("tonnes", Unit::Mass, GRAVITY),
    ("tonne", Unit::Mass, GRAVITY),
    ("tons", Unit::Mass, GRAVITY),
    ("ton", Unit::Mass, GRAVITY),
    ("pounds", Unit::Mass, POUND_FORCE / 1000.0),
    ("pound", Unit::Mass, POUND_FORCE / 1000.0),
    ("lbs", Unit::Mass, POUND_FORCE / 1000.0),
    ("lb", Unit::Mass, POUND_FORCE / 1000.0),
];
/// Units of one letter, in the case that they have.
const LETTERS: [(char, Unit, f64); 2] = [('N', Unit::Load, 0.001), ('t', Unit::Mass, GRAVITY)];
/// How many letters may stand between two words of a unit.
const GAP: usize = 3;

/// The unit that begins at a letter; `None` where a word goes on there, or on behind it.
pub(super) fn other_unit_at(letters: &[char], at: usize) -> Option<Spelled> {
    if letters[..at].last().is_some_and(|before| before.is_alphabetic()) {
        return None;
    }
    let rest = &letters[at..];
    let spelled = SPELLED.iter().filter_map(|(spelling, unit, factor)| {
        Some(Spelled { unit: *unit, factor: *factor, length: length(rest, spelling)? })
    });
    let one = LETTERS.iter().filter(|(letter, ..)| rest.first() == Some(letter));
    let one = one.map(|(_, unit, factor)| Spelled { unit: *unit, factor: *factor, length: 1 });
    spelled.chain(one).find(|unit| ends(&rest[unit.length..]))
}

/// How many letters of a text a spelling takes up that it begins with.
fn length(rest: &[char], spelling: &str) -> Option<usize> {
    let mut at = 0;
    for letter in spelling.chars() {
        if letter == ' ' {
            let (length, steps) = gap(&rest[at..])?;
            if steps > GAP {
                return None;
            }
            at += length;
        } else if rest.get(at)?.eq_ignore_ascii_case(&letter) {
            at += 1;
        } else {
            return None;
        }
    }
    Some(at)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unit(text: &str) -> Option<(Unit, f64)> {
        let letters: Vec<char> = text.chars().collect();
        other_unit_at(&letters, 0).map(|found| (found.unit, found.factor))
    }

    #[test]
    fn units_are_known_however_they_are_spelled() {
        for text in ["newton metres", "Newton-meter.", "nm", "NM, then", "N x m"] {
            assert_eq!(unit(text), Some((Unit::Torque, 1.0)), "{text}");
        }
        assert_eq!(unit("daN·m"), Some((Unit::Torque, 10.0)));
        assert_eq!(unit("kgm"), Some((Unit::Torque, 9.80665)));
        assert_eq!(unit("kgf·m"), Some((Unit::Torque, 9.80665)));
        assert_eq!(unit("kn"), Some((Unit::Load, 1.0)));
        assert_eq!(unit("N"), Some((Unit::Load, 0.001)));
        assert_eq!(unit("kilonewtons"), Some((Unit::Load, 1.0)));
        assert_eq!(unit("t on it"), Some((Unit::Mass, 9.80665)));
        assert_eq!(unit("kg"), Some((Unit::Mass, 0.009_806_65)));
    }

    /// 90 lbf·ft are 122.024 N·m: by hand, from 4.4482216 N and 0.3048 m.
    #[test]
    fn a_pound_foot_is_as_large_as_by_hand() {
        let (what, factor) = unit("ft-lb").unwrap();
        assert_eq!(what, Unit::Torque);
        assert!((90.0 * factor - 122.024).abs() < 0.001);
    }

    #[test]
    fn a_part_of_a_word_is_no_unit() {
        for text in ["kg/m", "N/mm²", "not", "n", "T", "knot", "tonic", "t1", "N6", "in line"] {
            assert_eq!(unit(text), None, "{text}");
        }
    }
}
