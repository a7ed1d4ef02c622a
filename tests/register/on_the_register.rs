//! What an edition's file holds, read by a YAML library, and held against the cards and against its own definition.

use super::{Desk, asked, printed};
use fittingcards::register::Standing;
use serde_yaml::Value;
use std::collections::BTreeMap;

fn file(desk: &Desk, edition: &str) -> Value {
    serde_yaml::from_str(&desk.files[&format!("register/{edition}.yaml")]).unwrap()
}

fn text(value: &Value) -> String {
    value.as_str().unwrap().to_owned()
}

/// The check code as the definition has it: BLAKE3 over `name U+001F text U+001E`, the first 30 bits, high bit first,
/// as six digits of Crockford's base 32 (its alphabet from the publication of that encoding).
fn check_code(texts: &[(String, String)]) -> String {
    let joined: String = texts.iter().map(|(name, text)| format!("{name}\u{1f}{text}\u{1e}")).collect();
    let hash = blake3::hash(joined.as_bytes());
    let bits: String = hash.as_bytes()[..4].iter().map(|byte| format!("{byte:08b}")).collect();
    let digit = |nth: usize| usize::from_str_radix(&bits[5 * nth..5 * nth + 5], 2).unwrap();
    (0..6).map(|nth| char::from(b"0123456789ABCDEFGHJKMNPQRSTVWXYZ"[digit(nth)])).collect()
}

#[test]
fn an_edition_is_yaml_that_holds_every_card_and_all_that_it_prints() {
    let desk = Desk::issued();
    let edition = file(&desk, "1");
    for (key, expected) in
        [("edition", "1"), ("date", "2026-11-25"), ("checked_by", "A. Reed"), ("approved_by", "B. Holm")]
    {
        assert_eq!(text(&edition[key]), expected);
    }
    let cards = edition["cards"].as_sequence().unwrap();
    let on_cards = printed(&desk);
    let numbers: Vec<String> = cards.iter().map(|card| text(&card["number"])).collect();
    assert_eq!(numbers, on_cards.keys().cloned().collect::<Vec<_>>());
    for card in cards {
        let number = text(&card["number"]);
        let prints = edition["prints"][number.as_str()].as_sequence().unwrap();
        let prints: Vec<(String, String)> =
            prints.iter().map(|print| (text(&print[1]), text(&print[2]))).collect();
        assert_eq!(prints, on_cards[&number], "{number}");
        assert_eq!(text(&card["check_code"]), check_code(&prints), "{number}");
        assert_eq!(card["issue"].as_u64(), Some(1));
    }
}

#[test]
fn a_later_edition_holds_the_texts_of_new_issues_and_the_hash_of_the_one_before() {
    let mut desk = Desk::issued();
    desk.edit("catalogue.yaml", "  - Load on puller\n", "  - Load on puller, tested\n");
    desk.edit_record(
        "fittings/rope-eyes.yaml",
        "ST-4220",
        "family:",
        "status: withdrawn\nin_service: may-stay\nfamily:",
    );
    desk.issue("2", "2026-12-01", "test").issue("3", "2026-12-01", "");
    let [first, second, third] = ["1", "2", "3"].map(|edition| file(&desk, edition));
    assert_eq!(first.get("after"), None);
    for (edition, before) in [(&second, "1"), (&third, "2")] {
        let bytes = desk.files[&format!("register/{before}.yaml")].as_bytes();
        assert_eq!(text(&edition["after"]["edition"]), before);
        assert_eq!(text(&edition["after"]["blake3"]), blake3::hash(bytes).to_hex().to_string());
    }
    assert!(third["prints"].is_null() || third["prints"].as_mapping().unwrap().is_empty());
    let statuses: BTreeMap<String, String> = third["cards"]
        .as_sequence()
        .unwrap()
        .iter()
        .map(|card| (text(&card["number"]), text(&card["status"])))
        .collect();
    assert_eq!(statuses["ST-4220"], "withdrawn");
    let read = desk.read();
    assert!(!read.findings.has_errors(), "{:?}", read.findings.sorted());
}

/// Issues go up by one where the card changed, and only there.
#[test]
fn only_changed_cards_go_up_by_one_issue() {
    let mut desk = Desk::issued();
    desk.edit_record(
        "fittings/collet-dead-ends.yaml",
        "ST-4100",
        "torque_Nm: { min: 80, max: 90 }",
        "torque_Nm: { min: 80, max: 85 }",
    );
    desk.issue("2", "2026-12-01", "test");
    for card in file(&desk, "2")["cards"].as_sequence().unwrap() {
        let expected = if text(&card["number"]) == "ST-4100" { (2, "2") } else { (1, "1") };
        assert_eq!((card["issue"].as_u64().unwrap(), text(&card["since"]).as_str()), expected);
    }
}

/// A card that is issued again for a drawing that was wrong gets another code, and prints the reason until it changes
/// otherwise.
#[test]
fn a_reissue_prints_its_reason() {
    let mut desk = Desk::issued();
    let mut again = asked("2", "2026-12-01", "the drawing showed the cone turned round");
    again.reissue = vec!["ST-4100".to_owned()];
    desk.issue_as(&again).unwrap();
    let read = desk.read();
    let card = read.facts.iter().find(|card| card.number == "ST-4100").unwrap();
    let Standing::Issued(issued) = read.register.standing(card) else { panic!("a draft") };
    assert_eq!((issued.issue, issued.because.as_str()), (2, "the drawing showed the cone turned round"));
    assert_eq!(issued.supersedes, Some((1, "1".to_owned())));
    let mut texts: Vec<(String, String)> = printed(&desk)["ST-4100"].clone();
    assert_ne!(issued.check_code, check_code(&texts));
    texts.push(("reissued because".to_owned(), issued.because.clone()));
    assert_eq!(issued.check_code, check_code(&texts));
    assert!(desk.listed().is_empty());

    // For the same reason a second time it would have the code of the card that was wrong.
    let mut same = asked("3", "2026-12-02", "the drawing showed the cone turned round");
    same.reissue = vec!["ST-4100".to_owned()];
    let (refused, _) = desk.issue_as(&same).unwrap_err();
    assert!(refused[0].message.contains("for this very reason"), "{refused:?}");

    desk.edit_record("fittings/collet-dead-ends.yaml", "ST-4100", "tail_mm: 15", "tail_mm: 16");
    desk.issue("3", "2026-12-02", "test");
    let read = desk.read();
    let card = read.facts.iter().find(|card| card.number == "ST-4100").unwrap();
    let Standing::Issued(issued) = read.register.standing(card) else { panic!("a draft") };
    assert_eq!((issued.issue, issued.because.as_str()), (3, ""));
}

/// A card that comes back after its record was gone does not get a number that another print has.
#[test]
fn a_card_that_comes_back_goes_on_counting() {
    let mut desk = Desk::issued();
    let path = "fittings/rope-eyes.yaml";
    let whole = desk.files[path].clone();
    let without: Vec<&str> =
        whole.split("\n---\n").filter(|record| !record.contains("number: ST-4220")).collect();
    desk.files.insert(path.to_owned(), without.join("\n---\n"));
    desk.issue("2", "2026-12-01", "test");
    assert!(!desk.read().register.editions()[1].cards.contains_key("ST-4220"));
    desk.files.insert(path.to_owned(), whole);
    desk.issue("3", "2026-12-01", "test");
    assert_eq!(desk.read().register.editions()[2].cards["ST-4220"].issue, 2);
}

/// Every way in which one character of an edition can be another is found out: by the edition's own seal, by the next
/// one's hash, or because the line is none that `issue` writes.
#[test]
fn an_edit_of_an_edition_is_found_out_at_its_file() {
    let mut desk = Desk::issued();
    desk.issue("2", "2026-12-01", "");
    let path = "register/1.yaml";
    let whole = desk.files[path].clone();
    let places: Vec<usize> = whole.char_indices().map(|(place, _)| place).step_by(whole.len() / 60).collect();
    for place in places {
        let (before, rest) = whole.split_at(place);
        let letter = rest.chars().next().unwrap();
        let other = if letter == '4' { '5' } else { '4' };
        let edited = format!("{before}{other}{}", &rest[letter.len_utf8()..]);
        desk.files.insert(path.to_owned(), edited);
        let findings = desk.read().findings;
        let told: Vec<(&str, String)> = findings
            .sorted()
            .iter()
            .map(|finding| (finding.code, finding.place.file.path.to_string()))
            .collect();
        let is_told = |code: &str| told.iter().any(|(told, file)| *told == code && file == path);
        assert!(is_told("edition-edited") || is_told("edition-unreadable"), "at {place}: {told:?}");
    }
    // What stands below the seal is sealed by nothing, in the newest edition too.
    desk.files.insert(path.to_owned(), whole.clone());
    let newest = desk.files["register/2.yaml"].clone();
    for below in ["cards:\n", "# a word\n", "because: \"so\"\n", "holders:\n"] {
        desk.files.insert("register/2.yaml".to_owned(), format!("{newest}{below}"));
        let findings = desk.read().findings;
        let codes: Vec<&str> = findings.sorted().iter().map(|finding| finding.code).collect();
        assert!(
            codes.contains(&"edition-edited") || codes.contains(&"edition-unreadable"),
            "{below}: {codes:?}"
        );
    }
    desk.files.insert("register/2.yaml".to_owned(), newest);
    // Line ends as another system writes them are no edit.
    desk.files.insert(path.to_owned(), whole.replace('\n', "\r\n"));
    assert!(!desk.read().findings.has_errors(), "{:?}", desk.read().findings.sorted());
}
