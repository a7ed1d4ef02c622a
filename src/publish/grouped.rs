//! What is wrong with a layout is told once, with one card as the example, and not once more for every card.

use crate::diagnostics::{Finding, Findings, Place};
use crate::source::Folder;
use std::collections::{BTreeMap, BTreeSet};

/// What findings of a layout have in common, whichever card they were found on.
type LayoutFault = (Place, &'static str);

/// The findings, of which those about one place of a layout are left that are of the first card, and say how many other
/// cards have them.
pub(super) fn grouped(findings: Findings) -> Findings {
    let all: Vec<Finding> = findings.into_iter().collect();
    let mut cards: BTreeMap<LayoutFault, BTreeSet<String>> = BTreeMap::new();
    for finding in &all {
        if let Some((fault, card)) = of_layout(finding) {
            cards.entry(fault).or_default().insert(card.to_owned());
        }
    }
    let mut grouped = Findings::new();
    grouped.extend(all.into_iter().filter_map(|finding| example(finding, &cards)));
    grouped
}

/// The place and code of a finding about a layout, and the card that it was found on.
fn of_layout(finding: &Finding) -> Option<(LayoutFault, &str)> {
    let card = finding.record.as_deref()?;
    (finding.place.file.folder == Folder::Layouts).then(|| ((finding.place.clone(), finding.code), card))
}

/// The finding where it is that of the first card, with how many more there are.
fn example(mut finding: Finding, cards: &BTreeMap<LayoutFault, BTreeSet<String>>) -> Option<Finding> {
    let Some((fault, card)) = of_layout(&finding) else { return Some(finding) };
    let cards = &cards[&fault];
    if cards.first().is_some_and(|first| first != card) {
        return None;
    }
    match cards.len() - 1 {
        0 => {}
        1 => finding.message.push_str(" (and 1 more card)"),
        more => finding.message.push_str(&format!(" (and {more} more cards)")),
    }
    Some(finding)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::FilePath;

    fn at(line: u32, card: &str, said: &str) -> Finding {
        let place = Place::at(FilePath::layouts("cards/title.xml"), line, 1);
        Finding::error("text-overlap", place, said).record(card)
    }

    #[test]
    fn a_fault_of_a_layout_is_told_once_with_the_number_of_cards() {
        let mut findings = Findings::new();
        for card in ["F-2", "F-1", "F-3"] {
            findings.push(at(2, card, &format!("the front of {card}")));
        }
        findings.push(at(2, "F-1", "the back of F-1"));
        findings.push(at(5, "F-3", "another"));
        let record = Place::at(FilePath::catalogue("fittings/a.yaml"), 2, 1);
        findings.extend(
            ["F-1", "F-2"].map(|card| {
                Finding::error("card-too-full", record.clone(), format!("of {card}")).record(card)
            }),
        );
        let grouped = grouped(findings);
        let told: Vec<&str> = grouped.sorted().into_iter().map(|finding| &*finding.message).collect();
        assert_eq!(
            told,
            [
                "of F-1",
                "of F-2",
                "the back of F-1 (and 2 more cards)",
                "the front of F-1 (and 2 more cards)",
                "another"
            ]
        );
    }
}
