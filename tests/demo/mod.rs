//! The demo catalogue, and the one that a new user starts from, are sound and show what they are for.

mod edited;
mod edits;
mod one_place;

use crate::fixtures::{Checked, DEMO, checked, disk};
use fittingcards::catalogue::{Family, NoteAbout};
use fittingcards::diagnostics::Severity;
use fittingcards::facts::{self, Content};
use fittingcards::grip::Verdict;
use fittingcards::mixups::{self, BodyMixups};
use fittingcards::publish::{self, AuditOptions};
use std::collections::BTreeSet;

fn errors(checked: &Checked) -> Vec<&str> {
    let findings = checked.findings.sorted().into_iter();
    let errors = findings.filter(|finding| finding.severity == Severity::Error);
    errors.map(|finding| finding.message.as_str()).collect()
}

/// Whether some mix-up of the body has the verdict, and is hidden or not.
fn shows(body: &BodyMixups, verdict: Verdict, hidden: bool) -> bool {
    body.cases.iter().any(|case| !case.right && case.outcome.verdict == verdict && case.hidden == hidden)
}

#[test]
fn every_catalogue_that_ships_is_sound() {
    let none: [&str; 0] = [];
    let cases = ["constructions", "long-names", "plain", "scripts", "shared-clamp", "statuses"];
    let cases = cases.map(|case| format!("tests/cases/{case}/in"));
    for folder in ["content", "src/cli/starter"].into_iter().chain(cases.iter().map(String::as_str)) {
        assert_eq!(errors(&checked(folder)), none, "{folder}");
    }
}

#[test]
fn every_card_and_page_of_the_demo_and_the_starting_catalogue_can_be_printed() {
    for folder in ["content", "src/cli/starter"] {
        let findings =
            publish::check(&disk(folder), &AuditOptions::default(), &|_| {}).expect("nothing is in the way");
        let errors = findings.sorted().into_iter().filter(|finding| finding.severity == Severity::Error);
        assert_eq!(errors.map(|finding| &finding.message).next(), None, "{folder}");
    }
}

#[test]
fn the_demo_has_every_family_and_enough_of_everything() {
    let demo = &DEMO.catalogue;
    let families: BTreeSet<Family> = demo.fittings.values().map(|fitting| fitting.family).collect();
    let (records, chapters): (Vec<_>, Vec<_>) =
        demo.notes.iter().partition(|note| matches!(note.about, NoteAbout::Record(_)));

    assert_eq!(families.len(), 6);
    assert!(demo.conductors.len() >= 8 && demo.fittings.len() >= 12);
    assert!(demo.notices.len() >= 2 && demo.holders.len() >= 3);
    assert!(records.len() >= 6 && chapters.len() >= 4);
}

#[test]
fn every_gripping_part_of_the_demo_grips_its_own_conductor() {
    let demo = &*DEMO;
    for fitting in demo.catalogue.fittings.values() {
        for own in mixups::own(fitting, &demo.catalogue.settings.limits) {
            assert_eq!(own.outcome.verdict, Verdict::Grips, "{} {}", fitting.number, own.part.number);
        }
    }
}

#[test]
fn the_collet_body_shows_dangers_that_stand_out_reveals_and_dangers_that_it_hides() {
    let demo = &*DEMO;
    let body = demo.mixups.body("ST-4101").expect("the collet body");
    assert!(shows(body, Verdict::ClosesWithoutGripping, false), "revealed by stand-out");
    assert!(shows(body, Verdict::ClosesWithoutGripping, true), "the long cone, hidden");
    assert!(shows(body, Verdict::Grips, true), "fits, looks right, not proven");
    assert!(shows(body, Verdict::WillNotEnter, false));
}

#[test]
fn the_socket_body_hides_every_danger() {
    let demo = &*DEMO;
    let body = demo.mixups.body("ST-4141").expect("the socket body");
    for verdict in
        [Verdict::CoreNotHeld, Verdict::ClosesWithoutGripping, Verdict::StandsProud, Verdict::Grips]
    {
        assert!(shows(body, verdict, true), "{}", verdict.word());
    }
    assert!(body.cases.iter().all(|case| case.hidden == case.danger));
}

#[test]
fn every_hidden_danger_of_the_demo_is_covered_by_marks_and_a_witness() {
    let demo = &*DEMO;
    for case in demo.mixups.cases().filter(|case| case.hidden) {
        assert!(case.marks_distinct, "{} in {}", case.part.number, case.fitting.number);
        assert!(case.fitting.witness.is_some(), "{}", case.fitting.number);
    }
}

#[test]
fn cards_of_the_demo_do_not_warn_of_a_part_that_is_proven_and_in_use() {
    let demo = &*DEMO;
    let cards = facts::of_catalogue(&demo.catalogue, &demo.mixups);
    let not_these = |number: &str| {
        let card = cards.iter().find(|card| card.number == number).expect("a card");
        let Content::Fitting(fitting) = &card.content else { panic!("a fitting's card") };
        fitting.not_these.clone()
    };

    assert!(not_these("ST-4080").iter().all(|wrong| wrong.number != "ST-4103"));
    let withdrawn = not_these("ST-4100").into_iter().find(|wrong| wrong.number == "ST-4081");
    assert_eq!(withdrawn.expect("the old cone").happens, "withdrawn: do not use");
}

#[test]
fn texts_of_the_demo_are_short_enough_for_a_pocket_card() {
    let length = |text: &str| text.chars().count();
    for Checked { catalogue, mixups, .. } in [&*DEMO, &checked("src/cli/starter")] {
        assert!(catalogue.parts.values().all(|part| length(&part.name) <= 30));
        for card in facts::of_catalogue(catalogue, mixups) {
            let Content::Fitting(fitting) = &card.content else { continue };
            assert!(fitting.steps.len() <= 7, "{}", card.number);
            assert!(fitting.steps.iter().all(|step| length(step) <= 60), "{}", card.number);
            assert!(fitting.reject_if.iter().all(|reason| length(reason) <= 45), "{}", card.number);
        }
    }
}

/// Three lines have room: a kit and its own gripping part are one to somebody who goes by the stamp.
#[test]
fn no_card_names_the_same_stamp_twice_in_the_same_words() {
    let mut named = 0;
    for card in facts::of_catalogue(&DEMO.catalogue, &mixups::find(&DEMO.catalogue)) {
        let Content::Fitting(fitting) = &card.content else { continue };
        let lines: Vec<_> = fitting.not_these.iter().map(|wrong| (&wrong.stamp, &wrong.happens)).collect();
        named += lines.len();
        assert_eq!(lines.iter().collect::<BTreeSet<_>>().len(), lines.len(), "{}: {lines:?}", card.number);
    }
    assert!(named > 20, "{named}");
}
