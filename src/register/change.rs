//! What has changed on a card, text by text.

use crate::catalogue::Grade;

/// A printed text that is new, gone, or another.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// The text's name, such as "tightening torque, screw".
    pub what: String,
    /// What was printed; empty where nothing was.
    pub was: String,
    /// What is printed; empty where nothing is.
    pub is: String,
    /// How much it weighs.
    pub grade: Grade,
    /// Notices that explain it.
    pub notices: Vec<String>,
    /// Parts and fittings that it speaks of.
    pub about: Vec<String>,
}

impl Change {
    /// Where it stands among the changes of its card, the weightiest first: what is set, read and measured; what says the
    /// same of an item or a drawing; wrong parts; steps, which stand on the card; last what is text alone.
    #[must_use]
    pub fn rank(&self) -> u8 {
        let starts = |heads: &[&str]| heads.iter().any(|head| self.what.starts_with(head));
        match self.grade {
            Grade::Text => 4,
            Grade::Safety if starts(&["step ", "reject if "]) => 3,
            Grade::Safety if starts(&["not ", "more wrong "]) => 2,
            Grade::Safety if starts(&["item ", "drawing: "]) => 1,
            Grade::Safety => 0,
        }
    }

    /// The change in words, such as "tightening torque 90 → 80 N·m": a unit that both have is said once.
    #[must_use]
    pub fn words(&self) -> String {
        let Self { what, was, is, .. } = self;
        match (was.is_empty(), is.is_empty()) {
            (true, true) => what.clone(),
            (true, false) => format!("{what}, new: {is}"),
            (false, true) => format!("{what}, gone: {was}"),
            (false, false) => format!("{what} {} → {is}", without_shared_unit(was, is)),
        }
    }
}

/// The first of two texts, without the unit where both are a figure of the same one.
fn without_shared_unit<'a>(was: &'a str, is: &str) -> &'a str {
    let parts = |text: &'a str| text.rsplit_once(['\u{a0}', ' ']);
    let is_unit = |unit: &str| !unit.chars().any(|letter| letter.is_ascii_digit());
    match (parts(was), is.rsplit_once(['\u{a0}', ' '])) {
        (Some((figure, unit)), Some((other, same)))
            if unit == same && is_unit(unit) && is_figure(figure) && is_figure(other) =>
        {
            figure
        }
        _ => was,
    }
}

fn is_figure(text: &str) -> bool {
    text.starts_with(|first: char| first.is_ascii_digit() || "−⌀±-".contains(first)) && !text.contains(';')
}

/// A card of which something has changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardChange {
    /// Its number.
    pub number: String,
    /// Its name.
    pub title: String,
    /// The issue that it had; none of a new card.
    pub issue: Option<u32>,
    /// The issue that it has or will have; none of a card that is no longer there.
    pub becomes: Option<u32>,
    /// The changes, those of grade safety first, in the order of the card.
    pub changes: Vec<Change>,
    /// Whether a notice, or a reason that was given, explains each change of grade safety.
    pub explained: bool,
    /// What the status says where it must not be used any more; empty for a card that is printed again.
    pub status_words: String,
}

impl CardChange {
    /// The grade of the weightiest change; safety for a card that is new or gone.
    #[must_use]
    pub fn grade(&self) -> Grade {
        let safety = self.changes.iter().any(|change| change.grade == Grade::Safety);
        if safety || self.changes.is_empty() { Grade::Safety } else { Grade::Text }
    }

    /// Where it stands among cards that have changed: by its weightiest change, and a new one last.
    #[must_use]
    pub fn rank(&self) -> u8 {
        self.changes.iter().map(Change::rank).min().unwrap_or(u8::MAX)
    }

    /// The notices that explain its changes, in order.
    #[must_use]
    pub fn notices(&self) -> Vec<String> {
        let mut notices: Vec<String> =
            self.changes.iter().flat_map(|change| change.notices.iter().cloned()).collect();
        notices.sort();
        notices.dedup();
        notices
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(was: &str, is: &str) -> String {
        let (was, is) = (was.to_owned(), is.to_owned());
        let what = "tightening torque".to_owned();
        Change { what, was, is, grade: Grade::Safety, notices: Vec::new(), about: Vec::new() }.words()
    }

    #[test]
    fn a_unit_of_both_is_said_once() {
        assert_eq!(words("90\u{a0}N·m", "80\u{a0}N·m"), "tightening torque 90 → 80\u{a0}N·m");
        assert_eq!(words("90 kN", "80 N·m"), "tightening torque 90 kN → 80 N·m");
        assert_eq!(words("Push wire in", "Pull wire in"), "tightening torque Push wire in → Pull wire in");
        assert_eq!(words("", "80 N·m"), "tightening torque, new: 80 N·m");
        assert_eq!(words("80 N·m", ""), "tightening torque, gone: 80 N·m");
    }
}
