//! Why fittings in the line are followed up, and which come first.

use super::{Line, kinds};
use crate::fixtures::DEMO;
use fittingcards::installed::{follow_up, follow_up_json, installed};

fn only(place: &str, reasons: &[&str]) -> (String, Vec<String>) {
    (place.to_owned(), reasons.iter().map(|reason| (*reason).to_owned()).collect())
}

/// The demo's list was written so: two readings of another part, two old cones to be replaced, one eye on hold, one
/// card that was superseded when it was used.
#[test]
fn the_demo_follows_up_what_was_put_into_it() {
    let (line, findings) = installed(&DEMO.catalogue, &DEMO.mixups);
    assert!(findings.is_empty(), "{:?}", findings.sorted());
    let found = follow_up_json(&follow_up(&DEMO.catalogue, &DEMO.mixups, &line, None));
    let expected = [
        only("Mast 5/31, track 2", &["reading", "check", "check"]),
        only("Mast 11/09, track 2", &["reading", "check"]),
        only("Mast 3/12, track 1", &["status", "notice"]),
        only("Mast 3/12, track 2", &["status", "notice"]),
        only("Tensioner 3, track 2", &["status", "notice"]),
        only("Mast 5/31, track 1", &["card"]),
    ];
    assert_eq!(kinds(&found), expected);
    let places = found["follow_up"].as_array().unwrap();
    // By hand, of the records: a bore of 14.3 mm on 12.5 mm of wire shuts its slits, 6.0 - 5.46 mm; a wedge for the
    // wider wire runs to the end of its travel, 12 mm.
    assert_eq!(places[0]["reasons"][0]["inside"], serde_json::json!(["ST-4103", "ST-4121"]));
    assert_eq!(places[1]["reasons"][0]["inside"], serde_json::json!(["ST-4203"]));
    // What may be a wrong part holds nobody knows how much.
    assert!(places[..2].iter().all(|place| place.get("working_factor").is_none()), "{places:?}");
    // By hand: 66 kN over 16 kN.
    assert_eq!(places[2]["working_factor"], 4.125);
    assert_eq!((&places[2]["due"], &places[2]["overdue"]), (&"2027-01-31".into(), &false.into()));
}

/// By the demo's records: at its stop height contact wire 120 has lost a quarter of 41.9 kN, and 12 kN pull; by the holding
/// load alone it would be 3.5.
#[test]
fn the_factor_of_a_contact_wire_is_that_of_the_wire_at_its_stop_height() {
    let (line, _) = installed(&DEMO.catalogue, &DEMO.mixups);
    let wedge = line.iter().find(|one| one.fitting.number == "ST-4200").unwrap();
    let factor = wedge.working_factor().unwrap();
    assert!((factor - 41.9 * 0.75 / 12.0).abs() < 0.1, "{factor}");
}

#[test]
fn what_is_overdue_by_the_catalogues_date_comes_first_and_the_least_factor_before_others() {
    let settings = std::fs::read_to_string(crate::fixtures::root().join("content/catalogue.yaml")).unwrap();
    let later = settings.replace("date: 2026-11-25", "date: 2027-02-01");
    let list = "place,fitting,gripping_part,seated_mm,built\n\
                a,ST-4110,,0.6,2026-09-01\n\
                b,ST-4130,ST-4121,,2026-09-01\n\
                c,ST-4240,,,2026-09-01\n\
                d,ST-4080,,,2026-09-01\n\
                e,ST-4080,,,2019-01-01\n";
    let line = Line::of(&[("installed/a.csv", list.as_bytes())]);
    let order =
        |line: &Line| kinds(&line.follow_up(None)).into_iter().map(|(place, _)| place).collect::<String>();
    // Of a and b no factor is known: they come as they are listed.
    assert_eq!(order(&line), "abdec");
    let line = Line::of(&[("installed/a.csv", list.as_bytes()), ("catalogue.yaml", later.as_bytes())]);
    assert_eq!(order(&line), "deabc");
    assert_eq!(line.follow_up(None)["follow_up"][0]["overdue"], true);
}

#[test]
fn what_is_to_stop_at_once_is_overdue_and_what_may_stay_comes_last() {
    let fittings =
        std::fs::read_to_string(crate::fixtures::root().join("content/fittings/rope-eyes.yaml")).unwrap();
    for (word, expected) in [("stop-now", "stop-now"), ("inspect", "status")] {
        let told = fittings.replace("status: on-hold", &format!("status: on-hold\nin_service: {word}"));
        let list = "place,fitting\na,ST-4240\n";
        let line =
            Line::of(&[("installed/a.csv", list.as_bytes()), ("fittings/rope-eyes.yaml", told.as_bytes())]);
        let found = line.follow_up(None);
        assert_eq!(kinds(&found), [only("a", &[expected, "notice"])]);
        assert_eq!(found["follow_up"][0]["overdue"], word == "stop-now");
    }
    let stays = fittings.replace("status: on-hold", "status: withdrawn\nin_service: may-stay");
    let list = "place,fitting,seated_mm\na,ST-4240,\nb,ST-4110,0.6\n";
    let line =
        Line::of(&[("installed/a.csv", list.as_bytes()), ("fittings/rope-eyes.yaml", stays.as_bytes())]);
    assert_eq!(kinds(&line.follow_up(None))[1], only("a", &["may-stay"]));
}

#[test]
fn a_notice_asked_for_lists_every_fitting_that_cites_it() {
    let list = "place,fitting,built\na,ST-4100,2026-09-01\nb,ST-4100,2026-03-31\nc,ST-4100,2026-04-01\nd,ST-4110,\ne,ST-4140,2026-09-01\n";
    let line = Line::with_list(list);
    let found = kinds(&line.follow_up(Some("N-2026-04")));
    let places: String = found.iter().map(|(place, _)| place.as_str()).collect();
    assert_eq!(places.chars().collect::<std::collections::BTreeSet<_>>(), ['a', 'b', 'c'].into());
    // In force from 2026-04-01: what was built before is told unasked, with the card that has changed since.
    let unasked = kinds(&line.follow_up(None));
    assert_eq!(unasked, [only("b", &["notice", "card"]), only("c", &["card"])]);
}

/// Editions of the demo's register: 2025-2 of 2025-11-24, 2026-1 of 2026-08-03, which gave ST-4100 and ST-4140 issue 2;
/// of ST-4140 only notices changed.
#[test]
fn a_card_is_old_by_its_issue_and_by_the_day() {
    let list = "place,fitting,built,issue\n\
                a,ST-4100,2026-08-02,\n\
                b,ST-4100,2026-08-03,\n\
                c,ST-4100,2026-08-03,1\n\
                d,ST-4140,2026-08-02,\n\
                e,ST-4140,2026-08-03,1\n\
                f,ST-4100,2020-01-01,\n\
                g,ST-4100,,1\n\
                h,ST-4100,,\n";
    let line = Line::with_list(list);
    assert_eq!(line.found(), []);
    let found = line.follow_up(None);
    let cards: Vec<(String, String)> = found["follow_up"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|place| {
            let reasons =
                place["reasons"].as_array().unwrap().iter().filter(|reason| reason["kind"] == "card");
            reasons.map(|reason| {
                (place["place"].as_str().unwrap().to_owned(), reason["words"].as_str().unwrap().to_owned())
            })
        })
        .collect();
    let mut places: Vec<&str> = cards.iter().map(|(place, _)| place.as_str()).collect();
    places.sort_unstable();
    assert_eq!(places, ["a", "c", "e", "g"]);
    let words = |place: &str| &cards.iter().find(|(at, _)| at == place).unwrap().1;
    assert!(
        words("a").starts_with("built when issue 1 of its card was in force; issue 2 says: "),
        "{}",
        words("a")
    );
    assert!(words("a").contains("tightening torque"), "{}", words("a"));
    assert!(
        words("c").starts_with("built with issue 1 of its card when issue 2 was in force; issue 2 says: ")
    );
    assert!(words("e").ends_with("nothing that decides safety has changed since"), "{}", words("e"));
}

#[test]
fn a_wrong_part_is_told_in_the_words_of_the_mix_ups() {
    let list = "place,fitting,gripping_part\na,ST-4110,ST-4103\nb,ST-4100,ST-4081\nc,ST-4100,ST-4121\nd,ST-4140,ST-4143\n";
    let line = Line::with_list(list);
    let found = line.follow_up(None);
    let words = |place: &str| {
        let places = found["follow_up"].as_array().unwrap();
        let reasons =
            places.iter().find(|found| found["place"] == place).map(|found| &found["reasons"][0]["words"]);
        reasons.and_then(|words| words.as_str()).unwrap_or_default().to_owned()
    };
    assert_eq!(words("a"), "ST-4103 was written down: closes, holds nothing");
    assert_eq!(words("b"), "ST-4081 was written down: withdrawn: do not use");
    assert_eq!(words("c"), "ST-4121 was written down: fits, looks right, not proven");
}
