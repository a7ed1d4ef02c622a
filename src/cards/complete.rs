//! `face-incomplete`: what a card or kit tag is of no use without, and what keeps it from doing harm.
//!
//! Why: a layout may leave out anything; a card without its number can't be called in, one without the gripping part's
//! stamp settles nothing, and one that doesn't say that it is a draft or withdrawn is obeyed. One without its torque, its
//! checks or the wrong parts is taken for good, since its check code is.
//!
//! To put it right: take in the blocks of the built-in layouts that show it, and read the names in their conditions letter by
//! letter: what stands behind a name that does not exist is left out.

use super::compose::Format;
use super::face::{Card, Side, Tag};
use super::input::Input;
use super::must_show;
use super::tags::TAG;
use crate::diagnostics::{FilePath, Finding, Findings, Place};
use crate::facts::{CardFacts, Content, TagFacts};
use crate::register::Standing;

/// What the faces of a card don't show and must.
#[must_use]
pub fn incomplete(input: Input<'_>, facts: &CardFacts, standing: &Standing, card: &Card) -> Findings {
    let format = Format::of(input, input.catalogue.settings.card, None);
    let kind = match facts.content {
        Content::Fitting(_) => "fitting",
        Content::Body(_) => "body",
    };
    let layout = |side: Side| format.layout(&format!("{kind}-{}", side.word()));
    let on_front = must_show::lacking(&[&card.front], &must_show::on_front(input, facts, standing));
    let on_back = must_show::lacking(&[&card.back], &must_show::on_back(facts));
    let mut either = must_show::lacking(&[&card.front, &card.back], &must_show::on_either(input, facts));
    if !must_show::is_struck_as_it_must(facts, card) {
        either.push("the lines over both faces of what must not be used");
    }
    let sides = [
        (format!("the front of card {}", facts.number), layout(Side::Front), on_front),
        (format!("the back of card {}", facts.number), layout(Side::Back), on_back),
        (format!("card {}", facts.number), layout(Side::Back), either),
    ];
    let found = |(called, layout, lacking): (String, String, Vec<&str>)| {
        finding(&lacking, &called, &layout, &facts.number)
    };
    let mut findings = Findings::new();
    sides.into_iter().filter_map(found).for_each(|finding| findings.push(finding));
    findings
}

/// What a kit tag doesn't show and must.
#[must_use]
pub fn incomplete_tag(input: Input<'_>, facts: &TagFacts, standing: &Standing, tag: &Tag) -> Findings {
    let layout = Format::of(input, TAG, None).layout("tag");
    let called = tag.turn.called(&facts.number);
    let lacking = must_show::lacking(&[&tag.face], &must_show::on_tag(input, facts, standing));
    finding(&lacking, &called, &layout, &facts.number).map_or_else(Findings::new, Findings::from)
}

/// What is said of what is lacking; none where nothing is.
pub(super) fn finding(lacking: &[&str], called: &str, layout: &str, number: &str) -> Option<Finding> {
    if lacking.is_empty() {
        return None;
    }
    let said = format!("{called} does not show {}", lacking.join(", "));
    Some(
        Finding::error("face-incomplete", Place::whole(FilePath::layouts(layout)), said)
            .record(number)
            .help(
                "take in the blocks that show it in the built-in layout, such as title, status, stamp, foot, and read the names \
                 in their `if` letter by letter",
            ),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cards::tests::{with_face, with_input, world};
    use crate::register::Issued;
    use crate::source::MemoryWorld;

    fn said(world: &MemoryWorld, standing: &Standing) -> Vec<(String, String)> {
        with_input(world, |input, facts| {
            let (card, _) = crate::cards::make(input, &facts[0]);
            let findings = incomplete(input, &facts[0], standing, &card.expect("a card"));
            let told = |finding: &Finding| (finding.place.file.path.to_string(), finding.message.clone());
            findings.sorted().into_iter().map(told).collect()
        })
    }

    #[test]
    fn an_empty_face_lacks_what_a_card_must_show() {
        assert_eq!(said(&world("Look."), &Standing::Draft), []);
        let told = said(&with_face(""), &Standing::Draft);
        let lacking = "the front of card F-1 does not show the number, the status, that it is a draft, the edition, the \
                       gripping part's stamp, the mark, the mark's colour in words, the conductor";
        assert_eq!(told, [("cards/fitting-front.xml".to_owned(), lacking.to_owned())]);
        let back = world("Look.").with(FilePath::layouts("cards/fitting-back.xml"), "<face/>");
        let lacking = [
            "card F-1 does not show what a failed check calls for, the steps",
            "the back of card F-1 does not show the number, the status, the caution",
        ];
        let lacking = lacking.map(|lacking| ("cards/fitting-back.xml".to_owned(), lacking.to_owned()));
        assert_eq!(said(&back, &Standing::Draft), lacking);
    }

    /// A text of an SVG counts where somebody can read it: not where it is hidden, or its letters are piled up.
    #[test]
    fn what_nobody_can_read_is_not_shown() {
        let lacks = |how: &str| {
            let svg = format!(
                "<svg id=\"a\" class=\"foot\" width=\"60\" height=\"20\"><text x=\"15\" y=\"15\" font-family=\"DejaVu Sans\" \
                 font-size=\"4\" {how}>{{{{ number }}}}</text></svg>"
            );
            said(&with_face(&svg), &Standing::Draft)[0].1.contains("the number")
        };
        assert!(!lacks(""), "it is shown");
        for how in ["visibility=\"hidden\"", "letter-spacing=\"-2.6\"", "textLength=\"1.5\""] {
            assert!(lacks(how), "{how}");
        }
    }

    /// A card that is filled as a draft does not show what an issued one must.
    #[test]
    fn an_issued_card_shows_issue_and_check_code() {
        let issued =
            Issued { issue: 2, edition: "1".into(), check_code: "7K3M9Q".into(), ..Issued::default() };
        let told = said(&world("Look."), &Standing::Issued(Box::new(issued)));
        assert_eq!(told[0].1, "the front of card F-1 does not show the issue, the check code");
    }
}
