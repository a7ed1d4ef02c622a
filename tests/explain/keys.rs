//! Every key has its text, and its text is true.

use super::written::{KEYS, record_with, world_of};
use fittingcards::diagnostics::Findings;
use fittingcards::explain::{Key, KeyDefault};
use fittingcards::records;
use serde_json::Value;
use std::collections::BTreeSet;

/// Least and most of a window, and the sides of an oval: parts of a value that the key above explains.
const PARTS_OF_VALUES: [&str; 4] = ["min", "max", "width", "height"];

#[test]
fn every_key_of_every_schema_has_a_meaning_and_an_example() {
    let explained: BTreeSet<&str> = KEYS.iter().map(Key::name).collect();
    let mut wrong = Vec::new();
    for (kind, schema) in records::schemas() {
        for (name, property) in properties(&Value::from(schema)) {
            if PARTS_OF_VALUES.contains(&name.as_str()) && property["examples"].is_null() {
                continue;
            }
            let description = property["description"].as_str().unwrap_or_default();
            let example = property["examples"].as_array().is_some_and(|examples| !examples[0].is_null());
            if !description.ends_with('.') || !example || !explained.contains(name.as_str()) {
                wrong.push(format!("{kind}: {name}: \"{description}\", example {example}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Every property of every object in a schema.
fn properties(schema: &Value) -> Vec<(String, &Value)> {
    match schema {
        Value::Object(object) => {
            let own = object.get("properties").and_then(Value::as_object).into_iter().flatten();
            let own = own.map(|(name, property)| (name.clone(), property));
            own.chain(object.values().flat_map(properties)).collect()
        }
        Value::Array(items) => items.iter().flat_map(properties).collect(),
        _ => Vec::new(),
    }
}

#[test]
fn there_are_as_many_keys_as_the_records_have() {
    let of = |kind: &str| KEYS.iter().filter(|key| key.kind() == kind).count();
    // Counted in the design of the records, keys of the first level.
    let first = |kind: &str| KEYS.iter().filter(|key| key.kind() == kind && key.depth() == 0).count();
    assert_eq!((first("notices"), first("holders"), first("materials")), (7, 4, 13));
    assert!(of("parts") > 80 && of("conductors") > 60, "{} {}", of("parts"), of("conductors"));
    let paths: BTreeSet<&str> = KEYS.iter().map(|key| key.path.as_str()).collect();
    assert_eq!(paths.len(), KEYS.len());
}

#[test]
fn every_example_is_read_without_a_finding() {
    let wrong: Vec<String> = KEYS.iter().filter_map(|key| refused(key, &key.example)).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_default_that_is_a_value_is_read_without_a_finding() {
    let mut values = 0;
    for (key, value) in KEYS.iter().filter_map(|key| Some((key, value_by_default(key)?))) {
        values += 1;
        assert_eq!(refused(key, value), None);
    }
    assert!(values > 30, "{values} defaults are values");
}

/// The value that holds where a key is left out, if it is one.
pub fn value_by_default(key: &Key) -> Option<&str> {
    match key.default.as_ref()? {
        KeyDefault::Value(value) => Some(value),
        KeyDefault::Words(_) => None,
    }
}

#[test]
fn only_keys_that_may_be_left_out_have_a_default() {
    let wrong: Vec<&str> =
        KEYS.iter().filter(|key| key.needed && key.default.is_some()).map(|key| key.path.as_str()).collect();
    assert!(wrong.is_empty(), "{wrong:?}");
}

/// What the reader says of a record with a value for the key.
fn refused(key: &Key, value: &str) -> Option<String> {
    let record = record_with(key, value);
    let findings = findings(key, &record);
    let messages: Vec<String> = findings.sorted().iter().map(|finding| finding.message.clone()).collect();
    (!messages.is_empty()).then(|| format!("{}: {messages:?}\n{record}", key.path))
}

fn findings(key: &Key, record: &str) -> Findings {
    let mut read = records::read(&world_of(key.kind(), record)).unwrap();
    for (file, bytes) in std::mem::take(&mut read.installed) {
        let rows = records::read_installed(&file, &bytes, &mut read.findings);
        assert_eq!(rows.len(), 1, "{record}");
    }
    read.findings
}

/// The unit by the ending of the key, against the one in the message of the reader.
#[test]
fn the_unit_of_a_key_is_the_one_that_its_reader_expects() {
    for key in KEYS.iter().filter(|key| key.takes.contains("a number from ")) {
        let findings = findings(key, &record_with(key, "much"));
        let expected = findings.sorted().iter().find_map(|finding| finding.expected.clone());
        let number = expected.filter(|words| words.starts_with("a number from"));
        let Some(number) = number else { continue };
        let unit = number.split(" to ").last().and_then(|most| most.split_once(' ')).map(|(_, unit)| unit);
        // The rows of a strength have the unit in the key above them.
        if key.name() != "strength" {
            assert_eq!(key.unit, unit, "{}: {number}", key.path);
        }
    }
}

#[test]
fn numbers_outside_what_is_said_are_refused() {
    let mut tried = 0;
    for key in KEYS.iter() {
        let outside = [key.least.map(|least| least - 1.0), key.most.map(|most| most + 1.0)];
        for value in outside.into_iter().flatten() {
            tried += 1;
            assert!(refused(key, &value.to_string()).is_some(), "{}: {value} is read", key.path);
        }
    }
    assert!(tried > 200, "{tried} numbers were tried");
}

#[test]
fn the_words_that_are_said_are_read_and_others_refused() {
    for key in KEYS.iter().filter(|key| !key.words.is_empty()) {
        for word in &key.words {
            assert_eq!(refused(key, &format!("\"{word}\"")), None);
        }
        assert!(refused(key, "never-heard").is_some(), "{}", key.path);
    }
}
