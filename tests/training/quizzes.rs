//! A thousand quizzes against the JSON of `mixups` and the records as they are written: one right answer each, and none
//! that the records don't settle.

use super::made::DEMO;
use super::records::{is_current, own_or_procedure, records};
use fittingcards::mixups::{self, SeenBy};
use fittingcards::source::FilePath;
use fittingcards::training::{self, Answer, Asked, Beside, Kind, Pool};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

static POOL: LazyLock<Pool> = LazyLock::new(|| Pool::of(DEMO.input()));

/// Cases of `mixups` by part, fitting and conductor.
static CASES: LazyLock<BTreeMap<(String, String, String), Value>> = LazyLock::new(|| {
    let answer = mixups::to_json(&DEMO.mixups);
    let bodies = answer["bodies"].as_array().unwrap().iter();
    let cases = bodies.flat_map(|body| body["cases"].as_array().unwrap().clone());
    let key =
        |case: &Value| ["part", "fitting", "conductor"].map(|key| case[key].as_str().unwrap().to_owned());
    cases
        .map(|case| {
            let [part, fitting, conductor] = key(&case);
            ((part, fitting, conductor), case)
        })
        .collect()
});

/// The demo's records.
struct Records {
    fittings: BTreeMap<String, serde_yaml::Value>,
    conductors: BTreeMap<String, serde_yaml::Value>,
    procedures: BTreeMap<String, serde_yaml::Value>,
}

static RECORDS: LazyLock<Records> = LazyLock::new(|| Records {
    fittings: records("fittings"),
    conductors: records("conductors"),
    procedures: records("procedures"),
});

fn case<'a>(asked: &Asked, part: &str) -> &'a Value {
    let about = &asked.question.about;
    &CASES[&(part.to_owned(), about.fitting.clone(), about.conductor.clone())]
}

/// Whether an answer is right by what the records and `mixups` say; a fault where they don't settle it.
fn is_right(asked: &Asked, answer: &Answer) -> Result<bool, String> {
    match asked.question.kind {
        Kind::Which => {
            let case = case(asked, &answer.value);
            if case["verdict"] == "unknown" {
                return Err(format!("{}: its verdict is not known", answer.value));
            }
            Ok(case["right"] == true || case["approved"] == true)
        }
        Kind::Comes => {
            let case = case(asked, &asked.question.about.other);
            match case["summary"].as_str().unwrap() {
                summary @ ("may or may not hold" | "not known: treat as wrong") => {
                    Err(format!("{summary} settles nothing"))
                }
                // What holds nothing is not proven either: both would be right.
                "closes, holds nothing" | "inner wires not held" | "touches at one end only"
                    if answer.value == "fits, looks right, not proven" =>
                {
                    Ok(true)
                }
                // What is forced in stands proud.
                "goes in by force, stands proud" if answer.value == "stands proud" => Ok(true),
                "stands proud" | "goes in by force, stands proud"
                    if answer.value == "closes, holds nothing" =>
                {
                    Err("over another set of wires it may close".to_owned())
                }
                summary => Ok(summary == answer.value),
            }
        }
        Kind::Seen => {
            let case = case(asked, &asked.question.about.other);
            if case["danger"] != true {
                return Err("no danger, nothing to be found".to_owned());
            }
            let stated = &RECORDS.fittings[&asked.question.about.fitting]["stand_out"];
            let end = |end: &str| stated["seated_mm"][end].as_f64();
            if let (Some(level), Some(least), Some(most)) =
                (case["stand_out_mm"].as_f64(), end("min"), end("max"))
                && case["seen_by"] != SeenBy::Measurement.word()
                && !(least + 0.29..=most - 0.29).contains(&level)
            {
                return Err(format!("{level} may be read outside {least} to {most}"));
            }
            Ok(case["seen_by"] == answer.value.as_str())
        }
        Kind::Reading => reading(asked, answer),
        Kind::Torque => {
            Ok(torques(&asked.question.about.fitting).contains(&answer.value.replace('\u{a0}', " ")))
        }
        Kind::Alike => {
            Ok(tells_apart(&asked.question.about.conductor, &asked.question.about.other, &answer.value))
        }
    }
}

/// By the fitting's windows: in all of them and not drawn in too far, go on; else what its state calls for.
fn reading(asked: &Asked, answer: &Answer) -> Result<bool, String> {
    let about = &asked.question.about;
    let stated = &RECORDS.fittings[&about.fitting]["stand_out"];
    let end = |state: &str, end: &str| stated[format!("{state}_mm")][end].as_f64();
    let is_in = |(state, level): &(&str, f64)| {
        let (least, most) = (end(state, "min").unwrap(), end(state, "max").unwrap());
        // A rule reads a tenth at best: a level that near to an end is for nobody to judge, but for the ends themselves.
        let near =
            [least, most].into_iter().find(|end| (level - end).abs() > 1e-9 && (level - end).abs() < 0.29);
        near.map_or(Ok(*level >= least && *level <= most), |end| Err(format!("{level} is too near to {end}")))
    };
    let all_in = about.readings.iter().map(is_in).collect::<Result<Vec<_>, _>>()?.iter().all(|is_in| *is_in);
    let level = |state: &str| about.readings.iter().find(|(of, _)| *of == state).map(|(_, level)| *level);
    let drawn = level("seated").zip(level("tensioned")).map(|(before, after)| before - after);
    let too_far = drawn.zip(stated["draw_in_max_mm"].as_f64()).is_some_and(|(drawn, most)| drawn > most);
    let right = match (all_in && !too_far, level("tensioned")) {
        (true, _) => "go-on",
        (false, Some(_)) => "under-load",
        (false, None) => "before-load",
    };
    Ok(answer.value == right)
}

/// The torques of a fitting's record, as it states them.
fn torques(fitting: &str) -> Vec<String> {
    let lines = own_or_procedure(&RECORDS.fittings[fitting], &RECORDS.procedures, "tightening");
    let lines = lines.as_sequence().cloned().unwrap_or_default();
    let end = |line: &serde_yaml::Value, end: &str| line["torque_Nm"][end].as_f64().unwrap();
    lines
        .iter()
        .map(|line| match (end(line, "min"), end(line, "max")) {
            (least, most) if least == most => format!("{least} N·m"),
            (least, most) => format!("{least} to {most} N·m"),
        })
        .collect()
}

/// Whether something tells two stranded conductors apart, by the number and size of their wires and the kind of their
/// metal: copper and bronze have one colour under a scratch, and no magnet sticks to either (common knowledge).
fn tells_apart(one: &str, other: &str, what: &str) -> bool {
    let [one, other] = [one, other].map(|id| &RECORDS.conductors[id]);
    let construction = |wire: &serde_yaml::Value| wire["construction"].as_mapping().unwrap().clone();
    let kind =
        |wire: &serde_yaml::Value| construction(wire).keys().next().unwrap().as_str().unwrap().to_owned();
    let shape = |wire: &serde_yaml::Value| match kind(wire).as_str() {
        "solid" | "stranded" | "composite" => "round".to_owned(),
        other => other.to_owned(),
    };
    // 1 + 6 + 12 + 18: the outermost layer of so many wires.
    let outer = |wire: &serde_yaml::Value| match wire["construction"]["stranded"]["wires"].as_u64() {
        Some(7) => Some(6),
        Some(19) => Some(12),
        Some(37) => Some(18),
        _ => None,
    };
    let wire = |wire: &serde_yaml::Value| wire["construction"]["stranded"]["wire_diameter_mm"].as_f64();
    let is_red = |wire: &serde_yaml::Value| {
        let material = wire["material"].as_str().unwrap();
        material.contains("copper") || material.contains("bronze")
    };
    let is_steel = |wire: &serde_yaml::Value| wire["material"].as_str().unwrap().contains("steel");
    let by = |what: &str| match what {
        "shape" => shape(one) != shape(other),
        "wires in the outer layer" => outer(one).zip(outer(other)).is_some_and(|(one, other)| one != other),
        "wire diameter" => wire(one).zip(wire(other)).is_some_and(|(one, other)| (one - other).abs() >= 0.1),
        "fresh scratch" => is_red(one) != is_red(other),
        "magnet" => is_steel(one) != is_steel(other),
        _ => false,
    };
    let hands = ["shape", "wires in the outer layer", "wire diameter", "fresh scratch", "magnet"];
    if what == "stop" { !hands.iter().any(|hand| by(hand)) } else { by(what) }
}

#[test]
fn a_thousand_quizzes_have_one_right_answer_each_and_it_is_the_one_of_the_key() {
    let mut kinds: BTreeMap<Kind, usize> = BTreeMap::new();
    let mut wrong = BTreeSet::new();
    for seed in 0..1000 {
        for asked in POOL.quiz("2026-2", &format!("group {seed}"), 12) {
            *kinds.entry(asked.question.kind).or_default() += 1;
            let judged: Result<Vec<bool>, String> =
                asked.options.iter().map(|option| is_right(&asked, option)).collect();
            match judged {
                Err(fault) => drop(wrong.insert(format!("{}: {fault}", asked.question.asks))),
                Ok(judged) => {
                    let right: Vec<usize> = (0..judged.len()).filter(|nth| judged[*nth]).collect();
                    if right != [asked.right] {
                        let options: Vec<&str> = asked.options.iter().map(|option| &*option.value).collect();
                        wrong.insert(format!(
                            "{} {options:?}: {right:?}, key {}",
                            asked.question.asks, asked.right
                        ));
                    }
                }
            }
            let texts: BTreeSet<&str> = asked.options.iter().map(|option| &*option.text).collect();
            if texts.len() != asked.options.len() || texts.len() < 3 {
                wrong.insert(format!("{}: {texts:?}", asked.question.asks));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert_eq!(kinds.len(), Kind::ALL.len(), "every kind is asked: {kinds:?}");
}

/// The key says of each answer why it is right or wrong; what is said to be right there is what `mixups` has as right.
#[test]
fn each_answer_has_its_reason() {
    let mut owns = 0;
    for question in POOL.questions() {
        for answer in [&question.right].into_iter().chain(&question.wrong) {
            assert!(answer.why.ends_with('.'), "{}: {}: {:?}", question.asks, answer.text, answer.why);
        }
        let others: BTreeSet<&str> = question.wrong.iter().map(|answer| &*answer.why).collect();
        assert!(
            question.kind != Kind::Seen || others.len() == question.wrong.len(),
            "{}: one reason for all",
            question.asks
        );
        let said = question.wrong.iter().find(|answer| {
            question.kind == Kind::Comes
                && answer.value == "right part"
                && answer.why.starts_with("Right there is ")
        });
        if let Some(answer) = said {
            let own = answer.why.trim_start_matches("Right there is ");
            let own = own.split([':', '.']).next().unwrap().to_owned();
            let about = &question.about;
            let case = &CASES[&(own, about.fitting.clone(), about.conductor.clone())];
            assert_eq!(case["right"], true, "{}: {}", question.asks, answer.why);
            owns += 1;
        }
    }
    assert!(owns > 20, "{owns} right parts are named");
}

/// The demo with one text of a record changed.
fn demo_with(file: &str, from: &str, to: &str) -> super::made::Made {
    let folder = crate::faces::made::folder("content");
    let text = crate::faces::made::read(&folder.join(file));
    assert_eq!(text.matches(from).count(), 1, "{from} in {file}");
    let world = crate::faces::made::world(&folder).with(FilePath::catalogue(file), text.replace(from, to));
    super::made::Made::of(&world)
}

/// Bolts that are tightened twice, each time to another torque: either answer would be right.
#[test]
fn no_torque_is_asked_of_what_is_tightened_to_several() {
    let bolts = "  - { item: bolts, thread: M10, spanner_mm: 16, torque_Nm: { min: 28, max: 32 }, grease: [thread], passes: 2 }\n";
    let first = bolts.replace("min: 28, max: 32", "min: 14, max: 16");
    let made = demo_with("fittings/joints-and-clamps.yaml", bolts, &format!("{first}{bolts}"));
    let asked = |pool: &Pool| {
        let questions = pool.questions().iter().filter(|question| question.kind == Kind::Torque);
        questions.map(|question| question.about.fitting.clone()).collect::<Vec<_>>()
    };
    let (before, after) = (asked(&POOL), asked(&Pool::of(made.input())));
    assert!(before.contains(&"ST-4270".to_owned()) && !after.contains(&"ST-4270".to_owned()), "{after:?}");
    assert_eq!(after.len() + 1, before.len());
}

/// Within an edition a record changes what is asked. Quiz and key have one code then, and each state another.
#[test]
fn quiz_and_key_have_a_code_in_common_and_with_no_other_state() {
    let changed = demo_with(
        "fittings/wedge-dead-ends.yaml",
        "tensioned_mm: { min: -10.5, max: -5.5 } }",
        "tensioned_mm: { min: -10.5, max: -5.5 }, draw_in_max_mm: 2.0 }",
    );
    let codes = |input: training::Input<'_>| {
        let (pages, _) = training::pages(input, &Beside::default());
        let code = |name: &str| {
            let page = pages.iter().find(|page| page.name == format!("{name}-tarn-spring.html")).unwrap();
            let text = DEMO.design.layouts.fill(page.layout, &page.values).unwrap();
            let code = text.split("<strong class=\"code\">").nth(1).unwrap().split('<').next().unwrap();
            assert_eq!(code.len(), 6, "{code}");
            code.to_owned()
        };
        assert_eq!(code("quiz"), code("key"));
        code("quiz")
    };
    assert_ne!(codes(DEMO.input()), codes(changed.input()));
}

#[test]
fn nothing_is_asked_of_what_may_not_be_built() {
    for question in POOL.questions().iter().filter(|question| !question.about.fitting.is_empty()) {
        assert!(is_current(&RECORDS.fittings[&question.about.fitting]), "{}", question.asks);
    }
}

/// Two questions about what lies in one body answer each other.
#[test]
fn no_question_of_a_quiz_answers_another() {
    for seed in 0..200 {
        let inside = |asked: &&Asked| matches!(asked.question.kind, Kind::Which | Kind::Comes | Kind::Seen);
        let quiz = POOL.quiz("2026-2", &seed.to_string(), 40);
        let fittings: Vec<&str> =
            quiz.iter().filter(inside).map(|asked| &*asked.question.about.fitting).collect();
        let once: BTreeSet<&str> = fittings.iter().copied().collect();
        assert_eq!(fittings.len(), once.len(), "{fittings:?}");
    }
}

#[test]
fn groups_and_editions_get_other_quizzes_and_the_same_group_the_same() {
    let quiz = |edition: &str, group: &str| {
        let asked = POOL.quiz(edition, group, 12);
        let line = |asked: &Asked| (asked.question.asks.clone(), asked.options.clone());
        asked.iter().map(line).collect::<Vec<_>>()
    };
    assert_eq!(quiz("2026-2", "spring"), quiz("2026-2", "spring"));
    assert_ne!(quiz("2026-2", "spring"), quiz("2026-2", "autumn"));
    assert_ne!(quiz("2026-2", "spring"), quiz("2027-1", "spring"));
    assert_eq!(quiz("2026-2", "spring").len(), 12);
}

/// Pupils' pages say nothing that tells which answer is right: not in any attribute, text or order.
#[test]
fn the_pupils_page_holds_no_key() {
    let (pages, findings) = training::pages(DEMO.input(), &Beside::default());
    assert!(findings.is_empty(), "{:?}", findings.sorted());
    let quizzes: Vec<_> = pages.iter().filter(|page| page.name.starts_with("quiz-")).collect();
    assert_eq!(quizzes.len(), 2, "the demo has two groups");
    for page in quizzes {
        let text = DEMO.design.layouts.fill(page.layout, &page.values).unwrap();
        let group = page.name.trim_start_matches("quiz-").trim_end_matches(".html");
        assert!(!text.contains("key-") && !text.contains("<script"), "{}", page.name);
        for asked in POOL.quiz("2026-2", group, 12) {
            for why in asked.options.iter().map(|option| &option.why) {
                assert!(!why.is_empty() && !text.contains(why.as_str()), "{why:?} on {}", page.name);
            }
        }
    }
}
