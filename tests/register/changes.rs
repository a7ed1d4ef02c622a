//! What a change of the records changes on cards, and what it does not.

use super::{Desk, Read, asked, printed};
use fittingcards::catalogue::Grade;
use fittingcards::register::{Reissue, compare};
use std::collections::BTreeSet;

const COLLETS: &str = "fittings/collet-dead-ends.yaml";
const CONES: &str = "parts/collet-body.yaml";

fn set(numbers: &[&str]) -> BTreeSet<String> {
    numbers.iter().map(|number| (*number).to_owned()).collect()
}

#[test]
fn nothing_changed_lists_nothing() {
    assert_eq!(Desk::issued().listed(), set(&[]));
}

/// The torque of a fitting's own record stands on that fitting's card alone: no other record takes it from there.
#[test]
fn a_torque_changes_the_cards_that_print_it() {
    let mut desk = Desk::issued();
    desk.edit_record(
        COLLETS,
        "ST-4100",
        "torque_Nm: { min: 80, max: 90 }",
        "torque_Nm: { min: 80, max: 85 }",
    );
    assert_eq!(desk.listed(), set(&["ST-4100"]));
    let comparison = desk.compare();
    let card = &comparison.print_again[0];
    assert_eq!((card.issue, card.becomes, card.grade()), (Some(1), Some(2), Grade::Safety));
    let words: Vec<String> = card.changes.iter().map(fittingcards::register::Change::words).collect();
    assert!(
        words.contains(
            &"tightening torque, closing screw M48x2 80\u{a0}to\u{a0}90 → 80\u{a0}to\u{a0}85\u{a0}N·m"
                .to_owned()
        ),
        "{words:?}"
    );
}

/// A torque that stands in a procedure is on the card of each fitting that takes it from there.
#[test]
fn a_torque_of_a_procedure_changes_the_cards_of_its_fittings() {
    let mut desk = Desk::issued();
    desk.edit_record(
        "procedures/dead-ends.yaml",
        "wedge-50",
        "torque_Nm: { min: 30, max: 35 }",
        "torque_Nm: { min: 30, max: 34 }",
    );
    assert_eq!(desk.listed(), set(&["ST-4200", "ST-4210"]));
}

/// A cone's stamp stands on the cards of its fittings, on the body's card, and on each card that names it under *not
/// these*. Which those are is read from the cards as they are printed, not from the register.
#[test]
fn a_cones_stamp_changes_every_card_that_names_the_cone() {
    let before = Desk::issued();
    let names = |texts: &Vec<(String, String)>| {
        texts.iter().any(|(name, text)| name.contains("ST-4103") || text.contains("ST-4103"))
    };
    let naming: BTreeSet<String> =
        printed(&before).into_iter().filter(|(_, texts)| names(texts)).map(|(number, _)| number).collect();
    for number in ["ST-4100", "ST-4101", "ST-4120"] {
        assert!(naming.contains(number), "{naming:?}");
    }
    let mut desk = before;
    desk.edit_record(CONES, "ST-4103", "stamp: \"BZ2 14.0\"", "stamp: \"BZ2 14.7\"");
    assert_eq!(desk.listed(), naming);
}

#[test]
fn comments_key_order_yaml_style_stages_and_file_names_change_nothing() {
    let mut desk = Desk::issued();
    desk.edit(COLLETS, "number: ST-4100\nname:", "# a comment\nnumber: \"ST-4100\"   # quoted\nname:");
    desk.edit_record(COLLETS, "ST-4110", "insertion_mm: 85\ntail_mm: 15", "tail_mm: 15\ninsertion_mm: 85");
    desk.edit_record(COLLETS, "ST-4110", "stamp: \"ST 41\"", "stamp: 'ST 41'");
    desk.edit_record("procedures/dead-ends.yaml", "collet-41", "stage: entered", "stage: seated");
    let moved = desk.files.remove("parts/wedges.yaml").unwrap();
    desk.files.insert("parts/other.yaml".to_owned(), moved);
    assert_eq!(desk.listed(), set(&[]));
}

/// A colour of a drawing, type sizes and the order of blocks lie in layouts: no record, no printed text.
#[test]
fn layouts_and_card_size_change_nothing() {
    let mut desk = Desk::issued();
    desk.edit("catalogue.yaml", "size: A7, orientation: portrait", "size: A6, orientation: landscape");
    desk.edit("catalogue.yaml", "date: 2026-11-25", "date: 2027-02-01");
    desk.edit("catalogue.yaml", "edition: \"2026-2\"", "edition: \"2027-1\"");
    assert_eq!(desk.listed(), set(&[]));
}

/// A notice that the changed fitting cites since the edition explains its change; the cone's change on other cards
/// is explained by the fitting that uses the cone.
#[test]
fn a_newly_cited_notice_explains_the_change_wherever_it_shows() {
    let mut desk = Desk::issued();
    desk.edit_record(CONES, "ST-4103", "stamp: \"BZ2 14.0\"", "stamp: \"BZ2 14.7\"");
    let comparison = desk.compare();
    assert!(comparison.print_again.iter().all(|card| !card.explained), "{comparison:#?}");
    let (refused, findings) = desk.issue_as(&asked("2", "2026-12-01", "")).unwrap_err();
    assert!(refused.is_empty());
    assert_eq!(findings.sorted()[0].code, "safety-change-unexplained");
    assert_eq!(findings.sorted().len(), comparison.print_again.len());

    let notice = "number: N-2026-12\ndate: 2026-11-26\ntitle: New stamp on cone ST-4103\n";
    desk.files.insert("notices/new.yaml".to_owned(), notice.to_owned());
    desk.edit_record(COLLETS, "ST-4100", "notices: [N-2026-04]", "notices: [N-2026-04, N-2026-12]");
    let comparison = desk.compare();
    for card in &comparison.print_again {
        assert!(card.explained, "{card:#?}");
        assert_eq!(card.notices(), ["N-2026-12"], "{}", card.number);
    }
    desk.issue("2", "2026-12-01", "");
    assert_eq!(desk.listed(), set(&[]));
}

/// A notice that the fitting cited before explains nothing that changes after.
#[test]
fn an_old_notice_explains_nothing_and_a_reason_explains_all() {
    let mut desk = Desk::issued();
    desk.edit_record(
        COLLETS,
        "ST-4100",
        "torque_Nm: { min: 80, max: 90 }",
        "torque_Nm: { min: 80, max: 85 }",
    );
    assert!(desk.issue_as(&asked("2", "2026-12-01", "")).is_err());
    desk.issue("2", "2026-12-01", "typing mistake in the record");
    let read = desk.read();
    assert_eq!(read.register.editions()[1].because, "typing mistake in the record");
    // It was a reason for the cards of that edition, and is none for what changes after.
    desk.edit_record(
        COLLETS,
        "ST-4110",
        "torque_Nm: { min: 80, max: 90 }",
        "torque_Nm: { min: 80, max: 84 }",
    );
    let Read { catalogue, facts, register, .. } = desk.read();
    let present = register.next(&catalogue, &facts, "", Reissue::default());
    let since_first = compare(&register, &catalogue, (Some(0), None), (&present, ""));
    let explained: Vec<(&str, bool)> =
        since_first.print_again.iter().map(|card| (card.number.as_str(), card.explained)).collect();
    assert_eq!(explained, [("ST-4100", true), ("ST-4110", false)]);
}

/// An edition that was edited is missing from what is compared, and with it copies and issues: the answer says so first.
#[test]
fn an_answer_from_a_broken_register_begins_with_stop() {
    let mut desk = Desk::issued();
    desk.issue("2", "2026-12-01", "");
    let first = desk.files["register/1.yaml"].replace("A. Reed", "A. Read");
    desk.files.insert("register/1.yaml".to_owned(), first);
    let Read { catalogue, facts, register, .. } = desk.read();
    let present = register.next(&catalogue, &facts, "", Reissue::default());
    let found = compare(&register, &catalogue, (None, None), (&present, ""));
    assert!(found.incomplete.is_some_and(|stop| stop.starts_with("stop: ")));
}

/// What is of grade text needs no notice.
#[test]
fn a_name_needs_no_notice() {
    let mut desk = Desk::issued();
    desk.edit_record(
        COLLETS,
        "ST-4100",
        "name: Collet dead-end, messenger 120",
        "name: Collet dead-end for messenger 120",
    );
    let comparison = desk.compare();
    assert_eq!(comparison.print_again[0].grade(), Grade::Text);
    desk.issue("2", "2026-12-01", "");
}

#[test]
fn withdrawn_and_deleted_fittings_are_to_be_withdrawn_and_their_copies_called_in() {
    let mut desk = Desk::issued();
    desk.edit_record(
        "fittings/rope-eyes.yaml",
        "ST-4220",
        "family:",
        "status: withdrawn\nin_service: may-stay\nfamily:",
    );
    let comparison = desk.compare();
    let withdrawn: Vec<&str> = comparison.withdraw.iter().map(|card| card.number.as_str()).collect();
    assert_eq!(withdrawn, ["ST-4220"]);
    // The demo's holders: 1 in the store, 6 with the gang, 4 in the depot.
    let called: Vec<(String, u32)> = comparison
        .holders
        .iter()
        .map(|holder| (holder.id.clone(), holder.call_in.iter().map(|copies| copies.copies).sum()))
        .collect();
    let expected = [("central-store", 1), ("selbrook-gang", 6), ("tarn-depot", 4)];
    assert_eq!(called, expected.map(|(id, copies)| (id.to_owned(), copies)));
    assert!(comparison.holders.iter().all(|holder| holder.print.is_empty()), "{:?}", comparison.holders);
}

/// What has been returned is no longer asked for; what has not is told again by every edition.
#[test]
fn copies_are_asked_for_until_they_are_accounted_for() {
    let mut desk = Desk::issued();
    desk.edit_record(
        COLLETS,
        "ST-4100",
        "torque_Nm: { min: 80, max: 90 }",
        "torque_Nm: { min: 80, max: 85 }",
    );
    desk.issue("2", "2026-12-01", "test");
    desk.issue("3", "2026-12-02", "");
    let call_in = |desk: &Desk| {
        let depot = desk.compare().holders.into_iter().find(|holder| holder.id == "tarn-depot");
        depot.map(|depot| {
            depot.call_in.iter().map(|out| (out.number.clone(), out.issue, out.copies)).collect::<Vec<_>>()
        })
    };
    assert_eq!(call_in(&desk), Some(vec![("ST-4100".to_owned(), 1, 12)]));
    let receipts = "id: tarn-depot\nreceipts:\n  - { card: ST-4100, issue: 1, copies: 10, what: returned, date: 2026-12-03, by: J. Marsh }\n";
    desk.edit("holders/holders.yaml", "id: tarn-depot\n", receipts);
    assert_eq!(call_in(&desk), Some(vec![("ST-4100".to_owned(), 1, 2)]));
    desk.edit("holders/holders.yaml", "by: J. Marsh }\n", "by: J. Marsh }\n  - { card: ST-4100, issue: 1, copies: 2, what: lost, date: 2026-12-03, by: J. Marsh }\n");
    assert_eq!(call_in(&desk), None);
}
