//! Texts that bolts, nuts and steels carry anyway.

use super::reads_as;

/// What a text that fasteners and steels carry says of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Marking {
    /// Property class of a steel bolt or nut: 8.8, 10.
    PropertyClass,
    /// Steel grade of stainless fasteners, with or without its class: A2, A4-80.
    StainlessGrade,
    /// A thread: M12, M36x2.
    Thread,
    /// Hardness or kind of structural bolts and washers: 200HV, HV.
    StructuralBolt,
    /// A grade of steel: S355, C45.
    Steel,
    /// A mark of conformity, or the start of a standard's number.
    Standard,
}

/// Property classes of bolts and screws (ISO 898-1) and of nuts (ISO 898-2), from memory.
const CLASSES: [&str; 17] = [
    "4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9", "04", "05", "5", "6", "8", "9", "10",
    "12",
];
/// Steel grades of ISO 3506-1, from memory.
const GRADES: [&str; 10] = ["A1", "A2", "A3", "A4", "A5", "C1", "C3", "C4", "F1", "D6"];
/// Kinds of structural bolts of EN 14399, from memory.
const STRUCTURAL: [&str; 4] = ["HV", "HR", "HRC", "HVP"];
/// Marks of conformity and of standards, common practice, no source.
const STANDARDS: [&str; 6] = ["CE", "EN", "DIN", "ISO", "UKCA", "TUV"];

/// What a text says where fasteners and steels carry it too; `None` where they don't.
///
/// ```
/// use fittingcards::colour::{Marking, common_marking};
/// assert_eq!(common_marking("A2"), Some(Marking::StainlessGrade));
/// assert_eq!(common_marking("a4-80"), Some(Marking::StainlessGrade));
/// assert_eq!(common_marking("8.8"), Some(Marking::PropertyClass));
/// assert_eq!(common_marking("M12"), Some(Marking::Thread));
/// assert_eq!(common_marking("KA"), None);
/// ```
#[must_use]
pub fn common_marking(text: &str) -> Option<Marking> {
    let text = reads_as(text);
    let known = |list: &[&str]| list.contains(&text.as_str());
    match text.as_str() {
        _ if known(&CLASSES) => Some(Marking::PropertyClass),
        _ if known(&STRUCTURAL) || numbered(&text, "", "HV") => Some(Marking::StructuralBolt),
        _ if known(&STANDARDS) => Some(Marking::Standard),
        _ if is_grade(&text) => Some(Marking::StainlessGrade),
        _ if is_thread(&text) => Some(Marking::Thread),
        // S235 and C45 have three and two figures; fewer are no steel.
        _ if text.len() == 4 && numbered(&text, "S", "") => Some(Marking::Steel),
        _ if text.len() == 3 && numbered(&text, "C", "") => Some(Marking::Steel),
        _ if numbered(&text, "ST", "") => Some(Marking::Steel),
        _ => None,
    }
}

impl Marking {
    /// In words: "a thread".
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::PropertyClass => "the property class of a bolt or nut",
            Self::StainlessGrade => "the steel grade of a stainless bolt",
            Self::Thread => "a thread",
            Self::StructuralBolt => "the marking of a structural bolt or washer",
            Self::Steel => "a grade of steel",
            Self::Standard => "a mark of conformity or the start of a standard's number",
        }
    }
}

fn is_grade(text: &str) -> bool {
    let (grade, class) = text.split_once('-').unwrap_or((text, "0"));
    GRADES.contains(&grade) && class.bytes().all(|byte| byte.is_ascii_digit())
}

fn is_thread(text: &str) -> bool {
    let (diameter, pitch) = text.split_once(['X', '×']).unwrap_or((text, "1"));
    numbered(diameter, "M", "") && pitch.parse::<f64>().is_ok()
}

/// Whether a text is a number between two words.
fn numbered(text: &str, before: &str, after: &str) -> bool {
    let number = text.strip_prefix(before).and_then(|rest| rest.strip_suffix(after)).unwrap_or_default();
    !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Common practice, no source: texts that marks may have.
    #[test]
    fn what_means_nothing_may_be_a_mark() {
        for text in ["V1", "KA", "TE", "66", "B14.0", "M", "S", "C", "A", "A12", "MX", "HVX", "", "-", "A-"] {
            assert_eq!(common_marking(text), None, "{text}");
        }
    }

    #[test]
    fn what_fasteners_carry_is_known() {
        for text in
            ["10.9", "M12", "M36x2", "m 8", "200 HV", "HV", "S355", "C45", "ST37", "A5", "A2-70", "CE"]
        {
            assert!(common_marking(text).is_some(), "{text}");
        }
    }
}
