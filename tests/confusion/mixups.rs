//! Which cases there are, and what is said of each.

use super::{BODY, catalogue, cone, demo, fitting, strand};
use fittingcards::catalogue::Catalogue;
use fittingcards::grip::Verdict;
use fittingcards::mixups::{Case, Mixups, SeenBy, Summary, find, look_alikes, to_json, words};
use fittingcards::units::Numerals;

fn shared(more: [&str; 2], ends: [&str; 2]) -> Catalogue {
    let parts = BODY.to_owned() + &cone("C-1", 14.3, more[0]) + &cone("C-2", 12.8, more[1]);
    let fittings = fitting("F-1", "w-140", "C-1", ends[0]) + &fitting("F-2", "w-125", "C-2", ends[1]);
    catalogue(&(strand("w-140", 2.8, "bronze-2") + &strand("w-125", 2.5, "bronze-1")), &parts, &fittings)
}

fn case<'a>(mixups: &'a Mixups, part: &str, fitting: &str) -> &'a Case {
    mixups.cases().find(|case| case.part.number == part && case.fitting.number == fitting).unwrap()
}

#[test]
fn a_thinner_conductor_lets_a_wider_cone_shut_and_sit_deeper() {
    let mixups = find(&shared(["", ""], ["", "stand_out: { seated_mm: { min: 3, max: 5 } }\n"]));
    let wrong = case(&mixups, "C-1", "F-2");
    assert_eq!(wrong.outcome.verdict, Verdict::ClosesWithoutGripping);
    assert!(wrong.danger && wrong.visible && !wrong.hidden && !wrong.right);
    assert_eq!(format!("{:.2}", wrong.stand_out_shift.unwrap().mm()), "-3.74");
    assert!(case(&mixups, "C-2", "F-1").outcome.verdict == Verdict::WillNotEnter);
    assert!(!case(&mixups, "C-2", "F-1").danger && case(&mixups, "C-2", "F-1").visible);
}

#[test]
fn nothing_is_visible_where_stand_out_cannot_be_seen() {
    let mixups = find(&shared(["", ""], ["", "stand_out: { from: none }\n"]));
    assert!(case(&mixups, "C-1", "F-2").hidden);
}

#[test]
fn without_a_window_nothing_is_visible() {
    let mixups = find(&shared(["", ""], ["", ""]));
    let wrong = case(&mixups, "C-1", "F-2");
    assert!(wrong.hidden && wrong.seen_by == SeenBy::Nothing);
    assert_eq!(case(&mixups, "C-2", "F-1").seen_by, SeenBy::Measurement, "it does not go in");
}

#[test]
fn a_gap_under_a_screw_is_not_what_is_computed() {
    let end = "stand_out: { from: screw-gap, seated_mm: { min: 20, max: 25 } }\n";
    assert!(case(&find(&shared(["", ""], ["", end])), "C-1", "F-2").hidden);
}

#[test]
fn a_mark_that_is_seen_afterwards_is_what_a_hidden_part_is_seen_by() {
    let mark = "mark: { colour: BU, text: KA, notches: 1, seen_after_assembly: true }\n";
    let mixups = find(&shared([mark, ""], ["", ""]));
    let wrong = case(&mixups, "C-1", "F-2");
    assert!(wrong.hidden && wrong.seen_by == SeenBy::Mark);
}

#[test]
fn the_stated_window_decides() {
    // The wrong cone stands out 0.54 mm: 2 mm off a window from 2.55, not off one from 2.5.
    for (least, visible) in [(2.5, false), (2.55, true)] {
        let end = format!("stand_out: {{ from: cone-face, seated_mm: {{ min: {least}, max: 6 }} }}\n");
        let mixups = find(&shared(["", ""], ["", &end]));
        assert_eq!(case(&mixups, "C-1", "F-2").visible, visible, "{least}");
    }
}

/// A cone that is 1.8 mm too wide shuts with nothing held, whatever a report says.
#[test]
fn what_holds_nothing_is_never_proven() {
    let proof = "proven_on: [{ conductor: w-125, holding_load_kN: 90, report: T-1, body: B-1 }]\n";
    let mixups = find(&shared([proof, ""], ["", ""]));
    let wrong = case(&mixups, "C-1", "F-2");
    assert!(!wrong.proven && wrong.danger);
    assert_eq!(wrong.summary, Summary::HoldsNothing);
}

/// By hand: 19 wires of 2.50 mm of bronze I break at about 46 kN, of which 95 % are 44 kN.
#[test]
fn only_a_proof_with_report_body_and_load_counts() {
    let proven = |proof: &str| {
        let proof = format!("proven_on: [{{ conductor: w-125, {proof} }}]\n");
        let parts = BODY.to_owned() + &cone("C-1", 12.7, &proof) + &cone("C-2", 12.8, "");
        let fittings = fitting("F-1", "w-124", "C-1", "") + &fitting("F-2", "w-125", "C-2", "");
        let wires = strand("w-124", 2.48, "bronze-2")
            + &strand("w-125", 2.5, "bronze-1").replace("duty", "stated: { breaking_load_kN: 46 }\nduty");
        let mixups = find(&catalogue(&wires, &parts, &fittings));
        let case = case(&mixups, "C-1", "F-2");
        assert_eq!(case.proven, !case.danger);
        assert_eq!(case.proven, case.summary == Summary::ProvenHereToo);
        case.proven
    };
    assert!(proven("holding_load_kN: 44, report: T-1, body: B-1"));
    assert!(!proven("holding_load_kN: 44, body: B-1"), "no report");
    assert!(!proven("holding_load_kN: 44, report: T-1"), "no body");
    assert!(!proven("report: T-1, body: B-1"), "no load");
    assert!(!proven("holding_load_kN: 43.6, report: T-1, body: B-1"), "under 95 %");
    assert!(!proven("holding_load_kN: 44, report: T-1, body: C-2"), "not that body");
}

/// The twelve summaries are these words and no others.
#[test]
fn a_summary_has_the_agreed_words() {
    let words = Summary::ALL.map(Summary::words);
    let agreed = [
        "right part",
        "proven here too",
        "withdrawn: do not use",
        "will not go in",
        "goes in by force, stands proud",
        "stands proud",
        "closes, holds nothing",
        "inner wires not held",
        "touches at one end only",
        "may or may not hold",
        "fits, looks right, not proven",
        "not known: treat as wrong",
    ];
    assert_eq!(words, agreed);
}

/// A socket decides as much as its cone does: the narrow one keeps the thick wire out.
#[test]
fn sockets_and_whole_kits_have_their_cases() {
    let socket = |number: &str, large: f64, throat: f64| {
        format!(
            "---\nnumber: {number}\nname: {number}\nrole: socket\nmaterial: aluminium-bronze\ninterface: bore\n\
             geometry: {{ socket: {{ large_diameter_mm: {large}, half_angle_deg: 8, length_mm: 36, \
             throat_diameter_mm: {throat}, travel_mm: 7 }} }}\n"
        )
    };
    let spreading = |number: &str, hole: f64| {
        format!(
            "---\nnumber: {number}\nname: {number}\nrole: cone\nmaterial: bronze-soft\ninterface: seat\n\
             geometry: {{ spreading_cone: {{ large_diameter_mm: 17.0, half_angle_deg: 8, length_mm: 24, \
             hole_diameter_mm: {hole} }} }}\n"
        )
    };
    let parts = BODY.to_owned()
        + &socket("S-1", 24.0, 14.5)
        + &socket("S-2", 22.6, 13.0)
        + &spreading("C-1", 8.6)
        + &spreading("C-2", 7.7);
    let ends = fitting("F-1", "w-140", "S-1, C-1", "") + &fitting("F-2", "w-125", "S-2, C-2", "");
    let wires = strand("w-140", 2.8, "bronze-2") + &strand("w-125", 2.5, "bronze-1");
    let mixups = find(&catalogue(&wires, &parts, &ends));
    let body = &mixups.bodies[0];
    let numbers: Vec<&str> = body.parts.iter().map(|part| part.number.as_str()).collect();
    assert_eq!(numbers, ["C-1", "C-2", "S-1", "S-2"]);
    assert_eq!(case(&mixups, "S-2", "F-1").summary, Summary::WillNotGoIn);
    let wide = case(&mixups, "S-1", "F-2");
    assert!(wide.danger && wide.hidden && !wide.right);
    assert!(case(&mixups, "S-1", "F-1").right);
    let kits: Vec<(&str, &str, &str, bool)> = body
        .kits
        .iter()
        .map(|kit| (&*kit.kit.number, &*kit.fitting.number, &*kit.conductor.id, kit.danger))
        .collect();
    assert_eq!(kits, [("F-1", "F-2", "w-125", true), ("F-2", "F-1", "w-140", false)]);
}

/// Sleeves need no body to be taken for each other.
#[test]
fn parts_of_one_interface_have_cases_without_a_body() {
    let sleeve = |number: &str, bore: f64| {
        format!(
            "---\nnumber: {number}\nname: {number}\nrole: sleeve\nmaterial: copper-annealed\ninterface: die-26\n\
             geometry: {{ sleeve: {{ bore_mm: {bore}, die: \"26\", pressed_mm: {{ min: 20, max: 21 }} }} }}\n"
        )
    };
    let parts = sleeve("S-1", 14.3) + &sleeve("S-2", 12.8);
    let joint = |number: &str, wire: &str, sleeve: &str| {
        format!(
            "---\nnumber: {number}\nname: {number}\nfamily: sleeve\nconductor: {wire}\nparts: [{sleeve}]\n"
        )
    };
    let joints = joint("J-1", "w-140", "S-1") + &joint("J-2", "w-125", "S-2");
    let wires = strand("w-140", 2.8, "bronze-2") + &strand("w-125", 2.5, "bronze-1");
    let mixups = find(&catalogue(&wires, &parts, &joints));
    assert!(mixups.bodies.is_empty());
    assert_eq!(case(&mixups, "S-1", "J-2").summary, Summary::HoldsNothing);
    assert_eq!(case(&mixups, "S-2", "J-1").summary, Summary::WillNotGoIn);
}

#[test]
fn parts_of_the_same_interface_go_in_though_no_fitting_of_the_body_has_them() {
    let seat = "interface: seat\n";
    let parts = BODY.to_owned()
        + &BODY.replace("B-1", "B-2").replacen("number", "---\nnumber", 1)
        + &cone("C-1", 14.3, seat)
        + &cone("C-2", 14.3, seat)
        + &cone("C-3", 14.3, "interface: other\n");
    let fittings =
        fitting("F-1", "w-140", "C-1", "") + &fitting("F-2", "w-140", "C-2", "").replace("B-1", "B-2");
    let mixups = find(&catalogue(&strand("w-140", 2.8, "bronze-2"), &parts, &fittings));
    let goes_in: Vec<Vec<&str>> = mixups
        .bodies
        .iter()
        .map(|body| body.parts.iter().map(|part| part.number.as_str()).collect())
        .collect();
    assert_eq!(goes_in, [["C-1", "C-2"], ["C-1", "C-2"]]);
}

#[test]
fn a_joint_has_a_cone_for_each_conductor_and_they_can_be_swapped() {
    let parts = BODY.to_owned() + &cone("C-1", 14.3, "") + &cone("C-2", 12.8, "");
    let joint =
        "number: J-1\nname: Joint\nfamily: other\nconductors: [w-140, w-125]\nparts: [B-1, C-1, C-2]\n";
    let wires = strand("w-140", 2.8, "bronze-2") + &strand("w-125", 2.5, "bronze-1");
    let mixups = find(&catalogue(&wires, &parts, joint));
    let told: Vec<(&str, &str, bool)> = mixups
        .cases()
        .map(|case| (case.part.number.as_str(), case.conductor.id.as_str(), case.right))
        .collect();
    let expected =
        [("C-1", "w-140", true), ("C-1", "w-125", false), ("C-2", "w-140", false), ("C-2", "w-125", true)];
    assert_eq!(told, expected);
    assert!(mixups.cases().any(|case| !case.right && case.danger));
}

#[test]
fn a_wrong_part_of_two_bodies_is_told_once_at_its_worst() {
    // In B-1 the wide cones shut with nothing held; in B-2 the tapers differ, which is less grave.
    let other = BODY.replace("B-1", "B-2").replace("half_angle_deg: 5", "half_angle_deg: 7");
    let cones =
        ["C-1", "C-2", "C-3"].map(|number| cone(number, if number == "C-1" { 12.8 } else { 14.3 }, ""));
    let parts = BODY.to_owned() + "---\n" + &other + &cones.concat();
    let end = "stand_out: { from: none }\n";
    let fittings = fitting("F-1", "w-125", "C-1", end).replace("[B-1,", "[B-1, B-2,")
        + &fitting("F-2", "w-140", "C-2", end).replace("[B-1,", "[B-1, B-2,")
        + &fitting("F-3", "w-140", "C-3", end).replace("[B-1,", "[B-1, B-2,");
    let wires = strand("w-140", 2.8, "bronze-2") + &strand("w-125", 2.5, "bronze-1");
    let catalogue = catalogue(&wires, &parts, &fittings);
    let mixups = find(&catalogue);
    let wrong: Vec<(&str, Verdict)> = mixups
        .wrong_parts(&catalogue.fittings["F-1"])
        .into_iter()
        .map(|case| (case.part.number.as_str(), case.outcome.verdict))
        .collect();
    assert_eq!(wrong, [("C-2", Verdict::ClosesWithoutGripping), ("C-3", Verdict::ClosesWithoutGripping)]);
}

#[test]
fn marks_are_distinct_only_by_colour_text_and_notches_together() {
    let mark = |colour: &str, text: &str, notches: u32| {
        format!("mark: {{ colour: {colour}, text: {text}, notches: {notches} }}\n")
    };
    let told = |other: String| {
        let mixups = find(&shared([&mark("BU", "KA", 1), &other], ["", ""]));
        case(&mixups, "C-1", "F-2").marks_distinct
    };
    assert!(told(mark("OG", "RY", 2)));
    assert!(!told(mark("BU", "RY", 2)), "colour");
    assert!(!told(mark("OG", "KA", 2)), "text");
    assert!(!told(mark("OG", "RY", 1)), "notches");
    assert!(!told(mark("VT", "RY", 2)), "blue and violet to a deutan eye");
    assert!(!told(String::new()), "no mark");
}

#[test]
fn json_leaves_out_what_does_not_apply() {
    let json = to_json(&find(&shared(["", ""], ["", ""])));
    let cases = json["bodies"][0]["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 4);
    let refuses = cases.iter().find(|case| case["verdict"] == "will-not-enter").unwrap();
    assert_eq!(refuses["clearance_mm"], -1.2);
    assert!(refuses.get("stand_out_mm").is_none() && refuses.get("stand_out_shift_mm").is_none());
    assert_eq!(refuses["missing"], serde_json::json!([]));
}

/// Cards never print "grips" of a wrong part.
#[test]
fn no_wrong_part_is_said_to_grip() {
    let mixups = find(demo());
    for case in mixups.cases().filter(|case| !case.right) {
        let said = [
            case.summary.words().to_owned(),
            words::happens(&case.comes, Numerals::default()),
            words::noticed(case, Numerals::default()),
        ]
        .join(" ");
        assert!(!said.contains("grip"), "{said}");
    }
}

#[test]
fn the_worst_wrong_part_comes_first() {
    let catalogue = demo();
    let mixups = find(catalogue);
    for fitting in catalogue.fittings.values() {
        let wrong = mixups.wrong_parts(fitting);
        assert!(wrong.iter().all(|case| !case.right));
        assert!(wrong.is_sorted_by_key(|case| (!case.hidden, !case.danger)));
    }
}

/// Both shared bodies of the demo: a hidden danger that marks cover, and one that stand-out reveals.
#[test]
fn the_demo_has_a_hidden_danger_and_one_that_shows() {
    let mixups = find(demo());
    let hidden = |body: &str| mixups.body(body).unwrap().cases.iter().filter(|case| case.hidden).count();
    assert!(hidden("ST-4101") > 0 && hidden("ST-4141") > 0);
    assert!(mixups.cases().filter(|case| case.hidden).all(|case| case.marks_distinct));
    assert!(mixups.cases().any(|case| case.danger && case.visible));
}

#[test]
fn copper_and_bronze_are_never_told_apart_by_hand() {
    let found = look_alikes(demo());
    let pair = found
        .iter()
        .find(|alike| (&*alike.one.id, &*alike.other.id) == ("messenger-120", "messenger-cu-120"));
    let words = pair.unwrap().words(Numerals::default());
    assert!(!pair.unwrap().settled_by_hand());
    assert!(words.contains("stop; read the line record or the drum tag"), "{words}");
}

/// Where the tags say the same, no card and no list may send anybody to read them; where they differ, cards do.
#[test]
fn a_drum_tag_that_both_have_settles_nothing() {
    let tagged = |id: &str, tag: &str, tracer: &str| {
        let identity = format!("identity: {{ drum_tag: \"{tag}\", tracer: \"{tracer}\" }}\n");
        strand(id, 2.5, "copper-hard-drawn") + &identity
    };
    let held = |other: &str| {
        let wires = tagged("held", "CU 95", "one thread") + other;
        let read = catalogue(
            &wires,
            &format!("{BODY}{}", cone("C-1", 12.8, "")),
            &fitting("F-1", "held", "C-1", ""),
        );
        let words = look_alikes(&read)[0].words(Numerals::default());
        let facts = fittingcards::facts::of_catalogue(&read, &find(&read));
        let card = facts.iter().find(|card| card.number == "F-1").unwrap();
        let fittingcards::facts::Content::Fitting(of_card) = &card.content else {
            panic!("a card of a fitting")
        };
        (words, of_card.conductors[0].alike.clone())
    };
    // 19 wires of 2.50 mm and 37 of 1.79 mm: 12.5 mm both; 12 in the outer layer, and 18.
    let (words, card) = held(
        "---\nid: other\nname: other\nduty: feeder\nmaterial: copper-hard-drawn\n\
         construction: { stranded: { wires: 37, wire_diameter_mm: 1.79 } }\n",
    );
    assert_eq!(card, "Looks like other. Tell it by the wires in the outer layer: 12, not 18.");
    assert!(words.starts_with("wires in the outer layer: 12, not 18"), "{words}");
    let (words, card) = held(&tagged("other", "CU 95", "one thread"));
    assert_eq!(card, "Looks like other: read the line record.");
    assert!(words.ends_with("stop; read the line record"), "{words}");
    // A tag that is worn or dirty tells less: S and 5 are one stroke apart.
    for (tag, tracer, read) in [
        ("CU 95 B", "one thread", "drum tag"),
        ("CU 95", "two threads", "line record"),
        ("CU 9S", "one thread", "line record"),
    ] {
        let (words, card) = held(&tagged("other", tag, tracer));
        assert_eq!(card, format!("Looks like other: read the {read}."), "{tag}");
        assert!(words.contains("the line record or the drum tag; "), "{words}");
    }
}
