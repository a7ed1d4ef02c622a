//! From which day a card holds, where notices put it off: an old copy is good exactly as long as nothing that holds
//! already says otherwise. Days and words follow from the notices that each test writes.

use super::{Desk, asked};
use fittingcards::catalogue::Status;
use fittingcards::installed::{follow_up, follow_up_json, installed};
use fittingcards::mixups;
use fittingcards::register::{days_differ, find_issued, issued_cards, still_out};
use std::collections::BTreeMap;

const COLLETS: &str = "fittings/collet-dead-ends.yaml";
const PARTS: &str = "parts/collet-body.yaml";
const HOLDERS: &str = "holders/holders.yaml";

/// The demo with one holder of a card, issued once.
fn desk(copies: &str) -> Desk {
    let mut desk = Desk::demo();
    desk.files.insert(HOLDERS.to_owned(), format!("id: van\nname: Van\ncopies: {{ {copies} }}\n"));
    desk.issue("e1", "2027-01-01", "");
    desk
}

fn notice(desk: &mut Desk, number: &str, effective: &str) {
    let text = format!("number: {number}\ndate: 2027-01-02\n{effective}\ntitle: Notice {number}\n");
    desk.files.insert(format!("notices/{number}.yaml"), text);
}

/// Another value of ST-4100, by notices.
fn change(desk: &mut Desk, was: &str, is: &str, cites: &[&str]) {
    desk.edit_record(COLLETS, "ST-4100", was, is);
    for number in cites {
        desk.edit_record(COLLETS, "ST-4100", "notices: [", &format!("notices: [{number}, "));
    }
}

const TORQUE: [&str; 2] = ["torque_Nm: { min: 80, max: 90 }", "torque_Nm: { min: 75, max: 85 }"];
const TENSION: [&str; 2] = ["line_tension_max_kN: 18", "line_tension_max_kN: 15"];

/// Holds ST-4100 with edition e2, and lifts that with e3 from a day on.
fn hold_and_lift(desk: &mut Desk, from: &str) {
    notice(desk, "N-H", "effective: 2027-02-01");
    change(desk, "family: ", "status: on-hold\nfamily: ", &["N-H"]);
    desk.issue("e2", "2027-02-01", "");
    notice(desk, "N-L", &format!("effective: {from}"));
    change(desk, "status: on-hold\n", "", &["N-L"]);
    desk.edit_record(COLLETS, "ST-4100", "N-H, ", "");
    desk.issue("e3", "2027-03-01", "");
}

/// What is said of an issue of a card.
fn told(desk: &Desk, number: &str, issue: u32) -> String {
    let read = desk.read();
    assert!(!read.findings.has_errors(), "{:?}", read.findings.sorted());
    let facts: BTreeMap<_, _> = read.facts.iter().map(|card| (card.number.clone(), card.clone())).collect();
    let cards = issued_cards(&read.register, &read.catalogue, &facts);
    let (_, card) = read.register.issue(number, issue).unwrap();
    find_issued(&cards, number, &card.check_code).unwrap().words.clone()
}

/// Issue 1 was superseded at once by issue 2; that issue 3 waits for its day brings no life back to it.
#[test]
fn what_was_superseded_at_once_stays_so() {
    let mut desk = desk("ST-4100: 2");
    change(&mut desk, TORQUE[0], TORQUE[1], &[]);
    desk.issue("e2", "2027-02-01", "wrong torque");
    notice(&mut desk, "N-L", "effective: 2027-06-01");
    change(&mut desk, TENSION[0], TENSION[1], &["N-L"]);
    desk.issue("e3", "2027-03-01", "");
    assert!(told(&desk, "ST-4100", 1).starts_with("superseded by issue 2 of edition e2: hand it in, and"));
    assert!(told(&desk, "ST-4100", 2).starts_with("superseded from 2027-06-01 on by issue 3 of edition e3"));
    assert!(told(&desk, "ST-4100", 3).starts_with("good from 2027-06-01 on, not before,"));
    let read = desk.read();
    // Issue 1 counts as out; issue 2 does not, before its day.
    let out = |read: &super::Read| -> Vec<u32> {
        still_out(&read.register, &read.catalogue).iter().map(|out| out.copies.issue).collect()
    };
    assert_eq!(out(&read), [1]);
    desk.edit("catalogue.yaml", "date: ", "date: 2027-06-01 # ");
    assert_eq!(out(&desk.read()), [1, 2]);
    // Who built on a day worked by the issue of that day.
    for (day, issue) in [("2027-01-15", 1), ("2027-02-01", 2), ("2027-05-31", 2), ("2027-06-01", 3)] {
        assert_eq!(read.register.issue_on("ST-4100", day.parse().unwrap()).unwrap().issue, issue, "{day}");
    }
}

#[test]
fn a_hold_that_is_lifted_later_stands_until_then() {
    let mut desk = desk("ST-4100: 2");
    hold_and_lift(&mut desk, "2027-06-01");
    assert!(told(&desk, "ST-4100", 1).starts_with("superseded by issue 2 of edition e2"));
    let waiting = desk.read().register.waiting("ST-4100").unwrap();
    assert_eq!(waiting.until_then, Some((2, Status::OnHold)));
    assert_eq!(waiting.words(), "Holds from 2027-06-01 on; on hold until then");
}

#[test]
fn what_holds_already_does_not_wait_for_a_later_notice() {
    let mut desk = desk("ST-4100: 2");
    notice(&mut desk, "N-A", "effective: 2027-01-15");
    notice(&mut desk, "N-B", "effective: 2027-06-01");
    change(&mut desk, TORQUE[0], TORQUE[1], &["N-A", "N-B"]);
    change(&mut desk, TENSION[0], TENSION[1], &[]);
    let comparison = desk.compare();
    let read = desk.read();
    let found = days_differ(&comparison, &read.catalogue, "2027-02-01".parse().unwrap());
    let of_card =
        found.sorted().into_iter().find(|finding| finding.record.as_deref() == Some("ST-4100")).unwrap();
    assert_eq!(of_card.message, "its notice N-A holds already, and N-B only from 2027-06-01 on");
    desk.issue("e2", "2027-02-01", "");
    assert!(told(&desk, "ST-4100", 1).starts_with("superseded by issue 2 of edition e2: hand it in, and"));
    assert!(told(&desk, "ST-4100", 2).starts_with("good by edition e2"));
}

/// Two issues that wait: the second may hold before the first would have.
#[test]
fn an_issue_that_is_overtaken_never_held() {
    for (second, first_is) in [
        (
            "2027-04-01",
            "superseded before it held by issue 3 of edition e3: hand it in, and do not work by it",
        ),
        (
            "2027-09-01",
            "holds from 2027-06-01 on, not before; superseded from 2027-09-01 on by issue 3 of edition e3",
        ),
    ] {
        let mut desk = desk("ST-4100: 2");
        notice(&mut desk, "N-L", "effective: 2027-06-01");
        change(&mut desk, TORQUE[0], TORQUE[1], &["N-L"]);
        desk.issue("e2", "2027-02-01", "");
        notice(&mut desk, "N-M", &format!("effective: {second}"));
        change(&mut desk, TENSION[0], TENSION[1], &["N-M"]);
        desk.issue("e3", "2027-03-01", "");
        assert!(told(&desk, "ST-4100", 2).starts_with(first_is), "{}", told(&desk, "ST-4100", 2));
        let first = second.min("2027-06-01");
        let by = if second == first { 3 } else { 2 };
        let oldest = told(&desk, "ST-4100", 1);
        assert!(oldest.starts_with(&format!("superseded from {first} on by issue {by} ")), "{oldest}");
    }
}

/// A new wording does not make the figures hold that it stands beside.
#[test]
fn a_text_that_changes_meanwhile_waits_too() {
    let mut desk = desk("ST-4100: 2");
    notice(&mut desk, "N-L", "effective: 2027-06-01");
    change(&mut desk, TORQUE[0], TORQUE[1], &["N-L"]);
    desk.issue("e2", "2027-02-01", "");
    desk.edit_record(COLLETS, "ST-4100", "name: ", "name: New ");
    desk.issue("e3", "2027-03-01", "");
    assert!(told(&desk, "ST-4100", 1).starts_with("superseded from 2027-06-01 on by issue "));
    assert!(told(&desk, "ST-4100", 3).starts_with("good from 2027-06-01 on, not before,"));
    // What decides safety and rests on nothing that waits does.
    change(&mut desk, TENSION[0], TENSION[1], &[]);
    desk.issue("e4", "2027-04-01", "too high");
    assert!(told(&desk, "ST-4100", 1).starts_with("superseded by issue 4 of edition e4: hand it in, and"));
}

/// The stamp of ST-4130's cone stands on the cards of its look-alikes: all of them wait for the notice that ST-4130 cites.
#[test]
fn cards_that_name_a_part_wait_with_its_fitting() {
    let mut desk = desk("ST-4100: 2");
    notice(&mut desk, "N-L", "effective: 2027-06-01");
    desk.edit_record(PARTS, "ST-4131", "stamp: \"BZ2 15.8\"", "stamp: \"BZ2 15.9\"");
    desk.edit_record(COLLETS, "ST-4130", "family: ", "notices: [N-L]\nfamily: ");
    desk.issue("e2", "2027-02-01", "");
    for card in ["ST-4130", "ST-4100", "ST-4101"] {
        assert!(told(&desk, card, 1).starts_with("superseded from 2027-06-01 on by issue 2"), "{card}");
        assert!(told(&desk, card, 2).starts_with("good from 2027-06-01 on, not before,"), "{card}");
    }
}

/// A record that says withdrawn says so today, whatever the day of its notice.
#[test]
fn what_is_withdrawn_is_so_at_once() {
    let mut desk = desk("ST-4100: 2");
    notice(&mut desk, "N-L", "effective: 2027-06-01");
    change(&mut desk, "family: ", "status: withdrawn\nfamily: ", &["N-L"]);
    desk.issue("e2", "2027-02-01", "");
    assert_eq!(desk.read().register.holds_from("ST-4100", 2), None);
    assert!(told(&desk, "ST-4100", 1).starts_with("withdrawn: do not use"));
}

/// Two copies, none, two again: four were printed, and four are called in but for those that came back.
#[test]
fn copies_that_were_handed_out_twice_count_twice() {
    let mut desk = desk("ST-4100: 2");
    let returned = "receipts:\n  - { card: ST-4100, issue: 1, copies: 2, what: returned, date: 2027-02-02, by: A. Reed }\n";
    desk.edit(HOLDERS, "copies: { ST-4100: 2 }\n", &format!("copies: {{ ST-4100: 0 }}\n{returned}"));
    desk.issue("e2", "2027-02-01", "");
    desk.edit(HOLDERS, "ST-4100: 0", "ST-4100: 2");
    let print: Vec<u32> =
        desk.compare().holders.iter().flat_map(|holder| &holder.print).map(|line| line.copies).collect();
    assert_eq!(print, [2]);
    desk.issue("e3", "2027-03-01", "");
    change(&mut desk, TORQUE[0], TORQUE[1], &[]);
    desk.issue("e4", "2027-04-01", "wrong torque");
    let read = desk.read();
    let out: Vec<_> = still_out(&read.register, &read.catalogue)
        .into_iter()
        .map(|out| (out.copies.number, out.copies.issue, out.copies.copies))
        .collect();
    assert_eq!(out, [("ST-4100".to_owned(), 1, 2)]);
}

/// A fitting that is deleted and put back is held against the card that is out.
#[test]
fn a_card_that_comes_back_is_held_against_its_last_issue() {
    let mut desk = desk("ST-4130: 2");
    let whole = desk.files[COLLETS].clone();
    let without: Vec<&str> =
        whole.split("\n---\n").filter(|record| !record.contains("number: ST-4130")).collect();
    desk.files.insert(COLLETS.to_owned(), without.join("\n---\n"));
    desk.issue("e2", "2027-02-01", "no longer used");
    desk.files.insert(COLLETS.to_owned(), whole);
    desk.edit_record(COLLETS, "ST-4130", "line_tension_max_kN: ", "line_tension_max_kN: 1");
    let comparison = desk.compare();
    let back = comparison.new.iter().find(|card| card.number == "ST-4130").unwrap();
    assert_eq!((back.issue, back.becomes, back.explained), (Some(1), Some(2), false));
    assert!(back.changes.iter().any(|change| change.what == "line tension max"));
    assert!(desk.issue_as(&asked("e3", "2027-03-01", "")).is_err());
}

/// A new fitting cites what others cite long since: that explains no change of a part that it uses too.
#[test]
fn an_old_notice_of_a_new_fitting_explains_nothing() {
    let mut desk = desk("ST-4100: 2");
    let whole = desk.files[COLLETS].clone();
    let first = whole.split("\n---\n").find(|record| record.contains("number: ST-4100")).unwrap();
    let another = first.replace("number: ST-4100", "number: ST-4109").replace("name: ", "name: Other ");
    let another = another.lines().filter(|line| !line.starts_with("supersed")).collect::<Vec<_>>().join("\n");
    desk.files.insert("fittings/other.yaml".to_owned(), another + "\n");
    desk.edit_record(PARTS, "ST-4103", "stamp: \"BZ2 14.0\"", "stamp: \"BZ2 14.2\"");
    let comparison = desk.compare();
    assert!(comparison.new.iter().any(|card| card.number == "ST-4109"));
    let card = comparison.print_again.iter().find(|card| card.number == "ST-4100").unwrap();
    assert!(!card.explained, "{:?}", card.notices());
}

/// Built during a hold that is over: nothing of today's records says so, and the register does.
#[test]
fn a_fitting_that_was_built_during_a_hold_is_followed_up() {
    let mut desk = desk("ST-4100: 2");
    hold_and_lift(&mut desk, "2027-03-01");
    desk.files.retain(|path, _| !path.starts_with("installed/"));
    let list =
        "place,fitting,issue,built\na,ST-4100,1,2027-02-15\nb,ST-4100,,2027-02-15\nc,ST-4100,3,2027-03-02\n";
    desk.files.insert("installed/a.csv".to_owned(), list.to_owned());
    let catalogue = desk.read().catalogue;
    let mixups = mixups::find(&catalogue);
    let (line, _) = installed(&catalogue, &mixups);
    let found = follow_up_json(&follow_up(&catalogue, &mixups, &line, None));
    let places = found["follow_up"].as_array().unwrap();
    let told: Vec<&str> = places.iter().map(|place| place["place"].as_str().unwrap()).collect();
    assert_eq!(told, ["a", "b"], "{found}");
    for place in places {
        assert_eq!(place["reasons"][0]["kind"], "status");
        let words = place["reasons"][0]["words"].as_str().unwrap();
        assert!(words.starts_with("built when issue 2 of its card said: On hold"), "{words}");
        assert!(words.contains("N-H"), "{words}");
    }
}
