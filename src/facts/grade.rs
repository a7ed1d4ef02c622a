//! How much a change of a printed text weighs, by the text's name.

use super::PrintedText;
use crate::catalogue::Grade;

/// Names of texts whose change makes no copy dangerous. Whatever is not among them is of grade safety: a name that
/// nobody has thought of is then looked at once too often, not too seldom.
const TEXT: [&str; 8] = [
    "name",
    "body card",
    "more wrong parts",
    "notice",
    "in force from",
    "supersedes",
    "caution",
    "order of texts",
];

impl PrintedText {
    /// Safety where it says which part, whether it holds, how it is closed and checked; else text.
    #[must_use]
    pub fn grade(&self) -> Grade {
        let name = self.name.split_once(": ").map_or(self.name.as_str(), |(_, name)| name);
        if TEXT.contains(&name) { Grade::Text } else { Grade::Safety }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What the grades are is stated here once more, from the definition: which part, whether it holds, how it is
    /// closed and checked.
    #[test]
    fn what_decides_how_a_fitting_is_built_is_of_grade_safety() {
        let grade = |name: &str| PrintedText::new(name, "x").grade();
        for name in [
            "gripping part's stamp",
            "item 3",
            "not ST-4103",
            "not ST-4103: mark",
            "ST-4103 in ST-4100, Messenger",
            "ST-4103: stamp",
            "step 1",
            "tightening torque, screw",
            "check Seated; stand-out: go",
            "line tension max",
            "status",
            "witness",
            "reject if 1",
            "drawing: insertion",
            "a name that is new",
        ] {
            assert_eq!(grade(name), Grade::Safety, "{name}");
        }
        for name in ["name", "ST-4103: name", "notice", "caution", "in force from"] {
            assert_eq!(grade(name), Grade::Text, "{name}");
        }
    }
}
