//! A year of a training cell: five notices, three editions, two holders, a lost copy, a withdrawal, a reissue. Each
//! question that ISO 9001:2015, 7.5.3, asks of documents (from memory of the clause: identification, review and
//! approval, the current version, distribution, recall, retention) is answered by a command or a page.

use super::{Desk, asked};
use fittingcards::register::{
    Reissue, Standing, compare, comparison_text, find_issued, issued_cards, still_out,
};
use std::collections::BTreeMap;

const COLLETS: &str = "fittings/collet-dead-ends.yaml";
const EYES: &str = "fittings/rope-eyes.yaml";

/// The demo with two holders and no copies out.
fn training_cell() -> Desk {
    let mut desk = Desk::demo();
    let holders =
        "id: depot\nname: Depot\ncopies: { \"*\": 3 }\n---\nid: gang\nname: Gang\ncopies: { \"*\": 2 }\n";
    desk.files.insert("holders/holders.yaml".to_owned(), holders.to_owned());
    desk
}

fn notice(desk: &mut Desk, number: &str, date: &str, title: &str) {
    let text = format!("number: {number}\ndate: {date}\ntitle: {title}\n");
    desk.files.insert(format!("notices/{number}.yaml"), text);
}

fn receipt(desk: &mut Desk, holder: &str, line: &str) {
    let start = format!("id: {holder}\n");
    let text = &desk.files["holders/holders.yaml"];
    let own = text.split("---\n").find(|record| record.starts_with(&start)).unwrap();
    let with = if own.contains("receipts:") {
        own.replace("receipts:\n", &format!("receipts:\n  - {line}\n"))
    } else {
        format!("{own}receipts:\n  - {line}\n")
    };
    let all = text.replace(own, &with);
    desk.files.insert("holders/holders.yaml".to_owned(), all);
}

/// What is still out, as `audit` and the call-in lists tell it.
fn out(desk: &Desk) -> Vec<(String, String, u32, u32)> {
    let read = desk.read();
    assert!(!read.findings.has_errors(), "{:?}", read.findings.sorted());
    let out = still_out(&read.register, &read.catalogue).into_iter();
    out.map(|out| (out.holder, out.copies.number, out.copies.issue, out.copies.copies)).collect()
}

/// What somebody with a printed card is told, who types its number and code.
fn told(desk: &Desk, number: &str, code: &str) -> String {
    let read = desk.read();
    let facts: BTreeMap<_, _> = read.facts.iter().map(|card| (card.number.clone(), card.clone())).collect();
    let cards = issued_cards(&read.register, &read.catalogue, &facts);
    find_issued(&cards, number, code).map_or("unknown".to_owned(), |card| card.words.clone())
}

fn code(desk: &Desk, number: &str) -> String {
    let read = desk.read();
    read.register.newest().unwrap().cards[number].check_code.clone()
}

/// A notice that holds only from a later day: until then nobody works by the new card, and nobody hands in the old one.
#[test]
fn a_card_is_good_only_from_the_day_of_its_notice() {
    let mut desk = training_cell();
    desk.issue("y1", "2027-03-01", "");
    let first = code(&desk, "ST-4100");
    let text = "number: N-9\ndate: 2027-04-01\neffective: 2027-09-01\ntitle: Lower torque\n";
    desk.files.insert("notices/N-9.yaml".to_owned(), text.to_owned());
    desk.edit_record(
        COLLETS,
        "ST-4100",
        "torque_Nm: { min: 80, max: 90 }",
        "torque_Nm: { min: 75, max: 85 }",
    );
    desk.edit_record(COLLETS, "ST-4100", "notices: [N-2026-04]", "notices: [N-2026-04, N-9]");
    desk.issue("y2", "2027-06-01", "");
    let now = code(&desk, "ST-4100");
    assert!(told(&desk, "ST-4100", &now).starts_with("good from 2027-09-01 on, not before, by edition y2"));
    let old = told(&desk, "ST-4100", &first);
    assert!(
        old.starts_with("superseded from 2027-09-01 on by issue 2 of edition y2: hand it in on that day"),
        "{old}"
    );
}

#[test]
fn a_year_of_a_training_cell() {
    let mut desk = training_cell();

    // Spring: the first edition. Identification: each card has number, issue, edition and check code.
    desk.issue("y1", "2027-03-01", "");
    let first = code(&desk, "ST-4100");
    assert_eq!(
        told(&desk, "ST-4100", &first),
        "good by edition y1 of 2027-03-01: a newer edition or a hold notice overrules this"
    );
    // Distribution: both holders get all, and nothing is called in.
    let comparison = {
        let mut before = training_cell();
        before.files.remove("register/y1.yaml");
        before.compare()
    };
    let copies: Vec<(&str, u32)> = comparison
        .holders
        .iter()
        .map(|holder| (holder.id.as_str(), holder.print.iter().map(|copies| copies.copies).sum()))
        .collect();
    // 21 cards, of which one is superseded and is not handed out: by the records of the demo.
    assert_eq!(copies, [("depot", 3 * 20), ("gang", 2 * 20)]);

    // Two notices change torques; a third is about nothing that cards print.
    notice(&mut desk, "N-1", "2027-04-01", "Lower torque on ST-4100");
    notice(&mut desk, "N-2", "2027-04-20", "Lower torque on ST-4110");
    notice(&mut desk, "N-3", "2027-05-02", "Store hours");
    for (number, notices) in [("ST-4100", "N-1"), ("ST-4110", "N-2")] {
        let torque = "torque_Nm: { min: 80, max: 90 }";
        desk.edit_record(COLLETS, number, torque, "torque_Nm: { min: 75, max: 85 }");
        if number == "ST-4100" {
            desk.edit_record(
                COLLETS,
                number,
                "notices: [N-2026-04]",
                &format!("notices: [N-2026-04, {notices}]"),
            );
        } else {
            desk.edit_record(COLLETS, number, "family:", &format!("notices: [{notices}]\nfamily:"));
        }
    }
    // What has changed, in words, by notice, before anybody approves it. A changed card is a draft until then.
    let read = desk.read();
    let words = comparison_text(&desk.compare(), &read.catalogue);
    for said in [
        "by N-1 Lower torque on ST-4100:",
        "80\u{a0}to\u{a0}90 → 75\u{a0}to\u{a0}85\u{a0}N·m",
        "3 × ST-4100 issue 1",
    ] {
        assert!(words.contains(said), "{said} in {words}");
    }
    let card = read.facts.iter().find(|card| card.number == "ST-4100").unwrap();
    assert_eq!(read.register.standing(card), Standing::Draft);

    // Review and approval: nobody approves what he checked; then it is on the register with both names.
    let mut alone = asked("y2", "2027-06-01", "");
    alone.approved_by = "A. Reed".to_owned();
    assert!(desk.issue_as(&alone).is_err());
    desk.issue("y2", "2027-06-01", "");
    let read = desk.read();
    let edition = read.register.newest().unwrap();
    assert_eq!((edition.checked_by.as_str(), edition.approved_by.as_str()), ("A. Reed", "B. Holm"));
    assert_eq!(edition.notices, ["N-1", "N-2"]);

    // Recall: what is out is told until it is accounted for; a lost copy is on record with day and name.
    assert!(told(&desk, "ST-4100", &first).starts_with("superseded by issue 2 of edition y2"));
    assert_eq!(out(&desk).len(), 4);
    for (holder, copies) in [("depot", 3), ("gang", 2)] {
        receipt(
            &mut desk,
            holder,
            &format!(
                "{{ card: ST-4100, issue: 1, copies: {copies}, what: returned, date: 2027-06-10, by: T. Lund }}"
            ),
        );
    }
    receipt(
        &mut desk,
        "depot",
        "{ card: ST-4110, issue: 1, copies: 3, what: destroyed, date: 2027-06-11, by: T. Lund }",
    );
    receipt(
        &mut desk,
        "gang",
        "{ card: ST-4110, issue: 1, copies: 1, what: returned, date: 2027-06-12, by: T. Lund }",
    );
    assert_eq!(out(&desk), [("gang".to_owned(), "ST-4110".to_owned(), 1, 1)]);
    receipt(
        &mut desk,
        "gang",
        "{ card: ST-4110, issue: 1, copies: 1, what: lost, date: 2027-07-01, by: T. Lund }",
    );
    assert_eq!(out(&desk), []);

    // Autumn: a withdrawal by a fourth notice, a hold by a fifth, and a card again whose drawing was wrong.
    notice(&mut desk, "N-4", "2027-09-01", "Pressed eye withdrawn");
    notice(&mut desk, "N-5", "2027-09-02", "Stay wedge on hold");
    let eye = code(&desk, "ST-4220");
    desk.edit_record(
        EYES,
        "ST-4220",
        "family:",
        "notices: [N-4]\nstatus: withdrawn\nin_service: may-stay\nfamily:",
    );
    desk.edit_record(
        "fittings/wedge-dead-ends.yaml",
        "ST-4230",
        "family:",
        "notices: [N-5]\nstatus: on-hold\nfamily:",
    );
    // A hold counts from the moment that the records say it, issued or not.
    let wedge = code(&desk, "ST-4230");
    assert_eq!(told(&desk, "ST-4230", &wedge), "on hold: stop until told");
    let mut autumn = asked("y3", "2027-10-01", "the drawing of ST-4120 showed two slits");
    autumn.reissue = vec!["ST-4120".to_owned()];
    desk.issue_as(&autumn).unwrap();
    assert!(told(&desk, "ST-4220", &eye).starts_with("withdrawn"));
    let called: Vec<_> = out(&desk).into_iter().map(|(_, number, ..)| number).collect();
    for number in ["ST-4120", "ST-4220", "ST-4230"] {
        assert!(called.contains(&number.to_owned()), "{called:?}");
    }
    assert_eq!(told(&desk, "ST-4100", "000000"), "unknown");

    // Retention: every edition is still there, whole, with all that its cards printed.
    let read = desk.read();
    assert_eq!(read.register.editions().len(), 3);
    let (edition, then) = read.register.issue("ST-4100", 1).unwrap();
    assert_eq!(edition.name, "y1");
    assert!(then.texts.iter().any(|text| text.text == "80\u{a0}to\u{a0}90\u{a0}N·m"), "{:?}", then.texts);
}

/// A record that is taken away takes its card out of use before the next edition says so, as the list of changes has it
/// under *withdraw*; one that can't be read does not: nobody knows what its card will print.
#[test]
fn a_card_is_withdrawn_as_soon_as_its_record_is_gone_and_not_while_it_cannot_be_read() {
    let eyes = "fittings/rope-eyes.yaml";
    let issued = Desk::issued();
    let (eye, other) = (code(&issued, "ST-4220"), code(&issued, "ST-4100"));
    let good = "good by edition 1 of 2026-11-25";
    assert!(told(&issued, "ST-4220", &eye).starts_with(good));

    let mut gone = issued.clone();
    let records: Vec<&str> = issued.files[eyes].split("\n---\n").collect();
    let kept: Vec<&str> =
        records.iter().copied().filter(|record| !record.contains("number: ST-4220\n")).collect();
    assert_eq!(kept.len() + 1, records.len());
    gone.files.insert(eyes.to_owned(), kept.join("\n---\n"));
    assert_eq!(told(&gone, "ST-4220", &eye), "withdrawn: no longer in the records. Hand it in");
    assert!(told(&gone, "ST-4100", &other).starts_with(good));
    // The list of changes is made from the editions and the present cards, another way.
    let read = gone.read();
    let present = read.register.next(&read.catalogue, &read.facts, "", Reissue::default());
    let withdrawn = compare(&read.register, &read.catalogue, (Some(0), None), (&present, "")).withdraw;
    assert!(withdrawn.iter().any(|card| card.number == "ST-4220"));

    let mut unread = issued.clone();
    unread.edit_record(eyes, "ST-4220", "family: rope-thimble", "family: no-such-family");
    assert!(unread.read().catalogue.left_out.contains("ST-4220"));
    assert!(told(&unread, "ST-4220", &eye).starts_with(good));
}
