//! Torque at which a bolt yields.

use crate::units::{Length, Torque};
use std::f64::consts::PI;

/// Nut factor of a lightly greased thread. Common practice, no source.
const USUAL_NUT_FACTOR: f64 = 0.20;
/// Yield of class 12.9 in N/mm², the highest class of ISO 898-1.
const STRONGEST_YIELD: f64 = 1100.0;

/// A metric thread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thread {
    /// Its nominal diameter.
    pub diameter: Length,
    /// From turn to turn.
    pub pitch: Length,
}

/// Coarse pitches of ISO 261 in mm, by nominal diameter. From memory.
const COARSE: [(f64, f64); 21] = [
    (3.0, 0.5),
    (4.0, 0.7),
    (5.0, 0.8),
    (6.0, 1.0),
    (8.0, 1.25),
    (10.0, 1.5),
    (12.0, 1.75),
    (14.0, 2.0),
    (16.0, 2.0),
    (18.0, 2.5),
    (20.0, 2.5),
    (22.0, 2.5),
    (24.0, 3.0),
    (27.0, 3.0),
    (30.0, 3.5),
    (33.0, 3.5),
    (36.0, 4.0),
    (39.0, 4.0),
    (42.0, 4.5),
    (48.0, 5.0),
    (56.0, 5.5),
];

/// Signs that are read as M: Latin, Greek and Cyrillic ones by their numbers in the Unicode Standard, and micro.
const LETTER_M: [char; 7] = ['M', 'm', '\u{39c}', '\u{3bc}', '\u{b5}', '\u{41c}', '\u{43c}'];
/// Signs between diameter and pitch: the last two are Cyrillic.
const TIMES: [char; 6] = ['x', 'X', '×', '*', '\u{445}', '\u{425}'];
/// What may stand between the sizes and what else is said of the thread.
const APART: [char; 6] = ['-', '\u{2013}', '/', '(', ',', ';'];
/// The strength classes of bolts in ISO 898-1. From memory.
const CLASSES: [&str; 9] = ["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"];
/// No pitch of ISO 261 is a larger part of its diameter (M1 has 0.25 mm): a larger number is a length. From memory.
const STEEPEST: f64 = 0.25;

impl Thread {
    /// The thread of a designation such as "M12", "M36x2", "M12 left" or "M10x45-8.8", which says a bolt's
    /// length and class; `None` where it is none, or a diameter without a pitch that is not of the coarse series.
    ///
    /// ```
    /// use fittingcards::grip::Thread;
    /// assert_eq!(Thread::of("M36x2").unwrap().pitch.mm(), 2.0);
    /// assert_eq!(Thread::of("M12").unwrap().pitch.mm(), 1.75);
    /// assert_eq!(Thread::of("m12 left"), Thread::of("M12"));
    /// assert_eq!(Thread::of("G 1/2"), None);
    /// ```
    #[must_use]
    pub fn of(designation: &str) -> Option<Self> {
        let (diameter, rest) = number(designation.trim().strip_prefix(LETTER_M)?)?;
        let (second, rest) = times(rest)?;
        let (_, rest) = times(rest)?;
        if !is_another_matter(rest) {
            return None;
        }
        let pitch = second.filter(|second| *second <= STEEPEST * diameter).or_else(|| coarse(diameter))?;
        Some(Self { diameter: Length::from_mm(diameter), pitch: Length::from_mm(pitch) })
    }

    /// The torque at which a bolt of class 12.9 yields, with a nut factor of 0.20: K·d·A_s·R_p, the
    /// stress area A_s = π/4·(d − 0.9382·P)² to three digits, as ISO 898-1 tables it. With a lightly
    /// greased thread no bolt takes more; a dry one needs up to half as much again.
    ///
    /// ```
    /// use fittingcards::grip::Thread;
    /// assert_eq!(format!("{:.0}", Thread::of("M12").unwrap().yields_at().nm()), "223");
    /// ```
    #[must_use]
    pub fn yields_at(self) -> Torque {
        let core = self.diameter.mm() - 0.9382 * self.pitch.mm();
        let stress_area = three_digits(PI / 4.0 * core * core);
        Torque::from_nm(USUAL_NUT_FACTOR * self.diameter.mm() / 1000.0 * stress_area * STRONGEST_YIELD)
    }
}

/// The number that a text starts with, and what follows.
fn number(text: &str) -> Option<(f64, &str)> {
    let text = text.trim_start();
    let end = text.find(|sign: char| !(sign.is_ascii_digit() || ".,".contains(sign))).unwrap_or(text.len());
    let size = text[..end].replace(',', ".").parse().ok().filter(|size: &f64| *size > 0.0)?;
    Some((size, &text[end..]))
}

/// The number after a sign that multiplies, and what follows; no number without that sign, and `None` where a
/// sign has no number.
fn times(text: &str) -> Option<(Option<f64>, &str)> {
    match text.trim_start().strip_prefix(TIMES) {
        Some(after) => number(after).map(|(size, rest)| (Some(size), rest)),
        None => Some((None, text)),
    }
}

/// Whether what follows the sizes says something else: a hand, a class, a tolerance. A number may be a pitch.
fn is_another_matter(rest: &str) -> bool {
    let word = rest.trim_start_matches(|sign: char| sign.is_whitespace() || APART.contains(&sign));
    let word = match word.len() == rest.len() {
        true if !rest.is_empty() => return false,
        _ => word.split(|sign: char| sign.is_whitespace() || ",;)".contains(sign)).next().unwrap_or_default(),
    };
    let size = word.strip_prefix(['P', 'p']).unwrap_or(word);
    size.parse::<f64>().is_err() || CLASSES.contains(&word)
}

fn coarse(diameter: f64) -> Option<f64> {
    COARSE.iter().find(|(coarse, _)| (coarse - diameter).abs() < 1e-9).map(|(_, pitch)| *pitch)
}

fn three_digits(area: f64) -> f64 {
    let unit = 10.0_f64.powf(area.log10().floor() - 2.0);
    (area / unit).round() * unit
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Diameter and pitch in mm: ISO 261, from memory.
    #[test]
    fn a_thread_is_read_however_it_is_written() {
        let m4 = [
            "M4", "M 4", "m4", "M4x0.7", "M4×0.7", "M4 x 0,7", "M4 left", "M4 LH", "M4-LH", "M4-8.8",
            "M4 10.9",
        ];
        let m4_too = [
            "\u{39c}4",
            "\u{43c}4",
            "M4x0.7 left",
            "M4-6g",
            "M4 (two)",
            "M4, left",
            "M4x16",
            "M4x0.7x16-A2-70",
        ];
        for text in m4.iter().chain(&m4_too) {
            let thread = Thread::of(text).unwrap_or_else(|| panic!("{text}"));
            assert!((thread.diameter.mm() - 4.0).abs() < 1e-9, "{text}: {thread:?}");
            assert!((thread.pitch.mm() - 0.7).abs() < 1e-9, "{text}: {thread:?}");
        }
    }

    #[test]
    fn what_may_have_another_pitch_is_not_guessed() {
        for text in [
            "",
            "M",
            "4",
            "M4left",
            "M36 2",
            "M36-2",
            "M36 P2",
            "M36x",
            "M16xPh3P1.5",
            "M5.5",
            "Tr 20x4",
            "G 1/2",
            "N4",
        ] {
            assert_eq!(Thread::of(text), None, "{text}");
        }
    }
}
