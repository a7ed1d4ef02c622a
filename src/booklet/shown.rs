//! What the page of a record must show of the values that its layout is filled with: what decides which part is right, how
//! it is closed, and whether it is right.

use serde_json::Value;
use std::collections::BTreeSet;

/// A place among the values, where `*` stands for each of a list, and what stands there.
type Decisive = (&'static str, &'static str);

const FITTING: [Decisive; 18] = [
    ("waiting", "from when it holds"),
    ("in_service", "what becomes of fittings in the line"),
    ("mark.words", "the mark"),
    ("conductors.*.name", "the conductor"),
    ("conductors.*.alike", "what looks like the conductor"),
    ("conductors.*.caution", "the conductor's caution"),
    ("not_these.*.link.number", "the wrong parts that go in"),
    ("not_these.*.happens", "what wrong parts do"),
    ("before_work.*", "what comes before work"),
    ("steps.*", "the steps"),
    ("tightening.*.torque", "the torque"),
    ("tightening.*.grease", "what is greased"),
    ("checks.*.go", "what is checked"),
    ("checks.*.no_go", "when a check fails"),
    ("witness", "the witness"),
    ("if_wrong.before_load", "what a failed check calls for"),
    ("if_wrong.under_load", "what a failed check calls for"),
    ("reject_if.*", "what is rejected"),
];
const BODY: [Decisive; 5] = [
    ("waiting", "from when it holds"),
    ("table.rows.*.part.number", "the parts that go in"),
    ("table.rows.*.stamp", "the stamps of the parts"),
    ("table.rows.*.cells.*.heading", "what each part does"),
    ("fittings.*.number", "its fittings"),
];
const TEACHING: [Decisive; 4] = [
    ("wrong.*.link.number", "the wrong parts that go in"),
    ("wrong.*.stamp", "the stamps of the parts"),
    ("wrong.*.cell.heading", "what wrong parts do"),
    ("wrong.*.others.*.comes", "what wrong parts do in other fittings"),
];
const PART: [Decisive; 2] = [("mark.words", "the mark"), ("proofs.*.counts", "whether its proofs count")];
const CONDUCTOR: [Decisive; 3] = [
    ("caution", "its caution"),
    ("look_alikes.*.name", "what looks like it"),
    ("look_alikes.*.apart", "what tells look-alikes apart"),
];
const LOOK_ALIKES: [Decisive; 1] = [("pairs.*.apart", "what tells look-alikes apart")];
const NOTICE: [Decisive; 3] =
    [("summary", "what it says"), ("fittings.*.number", "its fittings"), ("changes.*.is", "what it changed")];
const MATERIALS: [Decisive; 1] = [("materials.*.caution", "the cautions of materials")];
const WEAR: [Decisive; 2] =
    [("wires.*.rows.*.action", "what worn wire calls for"), ("wires.*.facts.*.text", "the limits of wear")];

/// The texts among a page's values that it must show, each with what it is called, each once.
pub(super) fn decisive(layout: &str, values: &Value) -> Vec<(&'static str, String)> {
    let decisive: &[Decisive] = match layout {
        "fitting" => &FITTING,
        "body" => &BODY,
        "teaching" => &TEACHING,
        "part" => &PART,
        "conductor" => &CONDUCTOR,
        "look-alikes" => &LOOK_ALIKES,
        "notice" => &NOTICE,
        "key" => &MATERIALS,
        "wear" => &WEAR,
        _ => &[],
    };
    let (mut texts, mut seen) = (Vec::new(), BTreeSet::new());
    for (place, what) in decisive {
        for text in at(values, place) {
            if seen.insert((what, text)) {
                texts.push((*what, text.to_owned()));
            }
        }
    }
    texts
}

/// The texts at a place, without those that say nothing.
fn at<'v>(values: &'v Value, place: &str) -> Vec<&'v str> {
    let found = place.split('.').fold(vec![values], |found, name| {
        let below = |value: &'v Value| match (name, value) {
            ("*", Value::Array(values)) => values.iter().collect(),
            _ => value.get(name).into_iter().collect::<Vec<_>>(),
        };
        found.into_iter().flat_map(below).collect()
    });
    found.into_iter().filter_map(Value::as_str).filter(|text| !text.is_empty()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn each_text_at_a_place_is_asked_for_once() {
        let values = json!({
            "witness": "",
            "steps": ["Seat the cone.", "Close it.", "Close it."],
            "not_these": [{ "link": { "number": "P-1" }, "happens": "It slips." }, { "happens": "It slips." }],
        });
        let asked = decisive("fitting", &values);
        let asked: Vec<(&str, &str)> = asked.iter().map(|(what, text)| (*what, text.as_str())).collect();
        let expected = [
            ("the wrong parts that go in", "P-1"),
            ("what wrong parts do", "It slips."),
            ("the steps", "Seat the cone."),
            ("the steps", "Close it."),
        ];
        assert_eq!(asked, expected);
    }
}
