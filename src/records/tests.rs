//! Values and places: what records make of the odd things that people write.

use super::node::{Content, Node, ScalarKind, documents};
use super::{Count, Day, Deg, Identifier, Mm, Prose, Read, Reader, Size, SizeOrZero, Truth, Worded};
use crate::diagnostics::{Findings, Severity};
use crate::source::{FilePath, MemoryWorld};
use proptest::prelude::*;
use serde_yaml::Value;

/// The value that `written` is read as, or the codes of what is wrong with it.
fn read<T: Read>(written: &str) -> Result<T, Vec<&'static str>> {
    let (nodes, trouble) = documents(&format!("value: {written}\n"));
    assert!(trouble.is_none(), "{written}: {trouble:?}");
    let mut findings = Findings::new();
    let file = FilePath::catalogue("parts/p.yaml");
    let value = T::read(nodes[0].get("value").unwrap(), &mut Reader::new(&file, None, &mut findings));
    value.ok_or_else(|| findings.sorted().iter().map(|finding| finding.code).collect())
}

#[test]
fn numbers_are_what_yaml_calls_numbers_within_bounds() {
    let size = |written| read::<Size<Mm, 20>>(written).map(Size::bare);
    for (written, value) in [("2.5", 2.5), ("2", 2.0), ("1e1", 10.0), ("+3", 3.0), (".5", 0.5), ("20", 20.0)]
    {
        assert_eq!(size(written), Ok(value), "{written}");
    }
    let faults = [
        ("0", "zero"),
        ("-0.0", "zero"),
        ("-1", "negative"),
        ("20.001", "absurd"),
        ("1e-9", "absurd"),
        ("99999999999999999999999999999999999999999", "absurd"),
        ("1e999", "absurd"),
        (".nan", "nan"),
        ("NaN", "nan"),
        (".INF", "infinite"),
        ("-.inf", "infinite"),
        ("\"2.5\"", "wrong-type"),
        ("2,5", "wrong-type"),
        ("1_0", "wrong-type"),
        ("007", "wrong-type"),
        ("2.5mm", "wrong-type"),
        ("true", "wrong-type"),
        ("[2.5]", "wrong-type"),
        ("\u{662}", "wrong-type"),
    ];
    for (written, code) in faults {
        assert_eq!(size(written), Err(vec![code]), "{written}");
    }
    assert_eq!(read::<SizeOrZero<Mm, 20>>("0").map(SizeOrZero::bare), Ok(0.0));
}

#[test]
fn counts_are_whole() {
    let count = |written| read::<Count<1, 91>>(written).map(Count::bare);
    assert_eq!([count("19"), count("19.0")], [Ok(19), Ok(19)]);
    let faults = [
        ("0", "zero"),
        ("-1", "negative"),
        ("1.5", "not-whole"),
        ("92", "absurd"),
        (".nan", "nan"),
        ("0x13", "wrong-type"),
        ("0o17", "wrong-type"),
        ("0b11", "wrong-type"),
    ];
    for (written, code) in faults {
        assert_eq!(count(written), Err(vec![code]), "{written}");
    }
}

/// What a person is told who wrote something else than YAML's number: the figure that was meant, and never a
/// part of it.
#[test]
fn what_was_meant_is_told() {
    let told = |written: &str| {
        let (nodes, _) = documents(&format!("value: {written}\n"));
        let mut findings = Findings::new();
        let file = FilePath::catalogue("parts/p.yaml");
        let value = nodes[0].get("value").unwrap();
        assert!(
            Size::<Mm, 2000>::read(value, &mut Reader::new(&file, None, &mut findings)).is_none(),
            "{written}"
        );
        findings.sorted()[0].help.clone()
    };
    let point = "a point before the decimals, nothing between thousands";
    for (written, figure) in [
        ("14,3", "14.3"),
        ("2·8", "2.8"),
        ("2٫8", "2.8"),
        ("1_000", "1000"),
        ("1 000", "1000"),
        ("1'000,5", "1000.5"),
        ("1\u{202f}000", "1000"),
    ] {
        assert_eq!(told(written), format!("write it as {figure}: {point}"), "{written}");
    }
    assert_eq!(told("2.80 mm"), "write 2.80 alone, without \"mm\": the key names the unit");
    assert_eq!(told("2,80 mm"), "write 2.80 alone: a point before the decimals, and the key names the unit");
    for (written, unit) in
        [("44 ft·lb", "ft·lb"), ("1.5 cm", "cm"), ("0.425 in", "in"), ("8000 N", "N"), ("2,6 t", "t")]
    {
        let convert = format!("the key takes mm: convert what is in \"{unit}\", and write the figures alone");
        assert_eq!(told(written), convert, "{written}");
    }
    for written in ["6O", "1O5", "2.l", "-l.5"] {
        let figures = "a letter stands among the figures: write it in the figures 0 to 9";
        assert_eq!(told(written), figures, "{written}");
    }
    assert_eq!(told("0x10"), "write it in the figures 0 to 9: 16");
    assert_eq!(told("007"), "write it as 7");
    for infinite in ["inf", "-.inf", "Infinity", "∞", "\"inf\""] {
        assert_eq!(told(infinite), "write the number, or leave the key out", "{infinite}");
    }
    for nobody_can_tell in ["1.2.3", "about 5", "1-2", "~8"] {
        assert!(!told(nobody_can_tell).contains("write"), "{nobody_can_tell}: {}", told(nobody_can_tell));
    }
}

/// Bounds of a size: what the schema says is what the reader holds.
#[test]
fn a_size_has_a_least_and_a_most_in_message_and_schema() {
    let file = FilePath::catalogue("parts/p.yaml");
    let mut findings = Findings::new();
    let (nodes, _) = documents("value: 0.0000001\n");
    let value = nodes[0].get("value").unwrap();
    assert!(Size::<Deg, 60>::read(value, &mut Reader::new(&file, None, &mut findings)).is_none());
    let finding = findings.sorted()[0];
    assert_eq!((finding.code, finding.expected.as_deref()), ("absurd", Some("a number from 0.5 to 60 °")));
    let schema = schemars::schema_for!(Size<Deg, 60>).to_value();
    assert_eq!((schema["minimum"].as_f64(), schema["maximum"].as_f64()), (Some(0.5), Some(60.0)));
    assert_eq!(read::<Size<Deg, 60>>("0.5").map(Size::bare), Ok(0.5));
}

#[test]
fn a_decimal_comma_within_braces_is_told() {
    let world = MemoryWorld::new().with(
        FilePath::catalogue("conductors/c.yaml"),
        "id: c\nname: C\nduty: stay\nmaterial: brass\nconstruction: { stranded: { wires: 19, wire_diameter_mm: 2,80 } }\n",
    );
    let findings = crate::records::read(&world).unwrap().findings;
    let told = findings.sorted().into_iter().find(|finding| finding.code == "unknown-key").unwrap();
    assert_eq!((told.place.line, told.place.column), (5, 60));
    assert_eq!(told.help, "a comma ends a value inside braces: write 2.80 with a decimal point");
}

#[test]
fn a_character_that_yaml_forbids_is_told_at_its_own_line() {
    let text = "number: P-1\nname: Body\nrole: body # \u{1b}[31m\nmaterial: br\0ass\n";
    let world = MemoryWorld::new().with(FilePath::catalogue("parts/p.yaml"), text);
    let findings = crate::records::read(&world).unwrap().findings;
    let told: Vec<_> = findings
        .sorted()
        .into_iter()
        .filter(|finding| finding.code == "bad-text")
        .map(|finding| (finding.place.line, finding.place.column, finding.found.clone().unwrap()))
        .collect();
    assert_eq!(told, [(3, 14, "U+001B".to_owned()), (4, 13, "U+0000".to_owned())]);
}

#[test]
fn ids_can_be_file_names_everywhere() {
    for good in ["ST-4100", "a", "2026-2", "4100", "007", "1.10", "com10", "console", "A_b.c-d"] {
        assert_eq!(read::<Identifier>(good).unwrap().0, good);
    }
    for bad in
        ["-a", ".a", "_a", "a b", "a/b", "ä", "con", "NUL.x", "lpt1", "\"\"", "\"a\\nb\"", &"a".repeat(41)]
    {
        assert!(read::<Identifier>(bad).is_err(), "{bad}");
    }
}

#[test]
fn days_are_in_the_calendar() {
    assert_eq!(read::<Day>("2028-02-29").unwrap().0, jiff::civil::date(2028, 2, 29));
    for bad in
        ["2026-02-29", "2026-13-01", "26-01-01", "2026-1-1", "20260101", "0001-01-01", "2026-01-01T10:00"]
    {
        assert_eq!(read::<Day>(bad), Err(vec!["not-a-date"]), "{bad}");
    }
}

#[test]
fn yes_and_no_are_truth_values() {
    for (written, truth) in [("true", true), ("yes", true), ("False", false), ("no", false)] {
        assert_eq!(read::<Truth>(written), Ok(Truth(truth)), "{written}");
    }
    assert_eq!(read::<Truth>("1"), Err(vec!["wrong-type"]));
}

#[test]
fn what_two_parsers_read_differently_is_refused() {
    let faults = [
        // A line break to one of them, a letter to the other.
        ("name: \"Cone\u{85}12.5\"\n", "differently"),
        ("name: Cone\u{2028} 12.5\n", "differently"),
        ("? \"bore\u{85}mm\"\n: 12.5\n", "differently"),
        // A key to one of them, nothing to the other.
        ("rope_mm: { :min: 7.5, max: 8.5 }\n", "not YAML"),
        ("tightening: [{ item: nut, passes:? 2 }]\n", "not YAML"),
    ];
    for (written, words) in faults {
        let (nodes, trouble) = documents(written);
        let finding = trouble.expect(written).finding(&FilePath::catalogue("parts/p.yaml"));
        assert!(nodes.is_empty() && finding.code == "not-yaml", "{written}");
        assert!(finding.message.contains(words), "{written}: {}", finding.message);
    }
}

#[test]
fn an_empty_value_stands_where_its_key_stands() {
    let (nodes, _) = documents("name:\n\n\nrole: # later\nlist: [a,\n  b]\n");
    let at = |key: &str| nodes[0].get(key).map(|node| (node.line, node.column)).unwrap();
    assert_eq!([at("name"), at("role"), at("list")], [(1, 1), (4, 1), (5, 7)]);
    let places = nodes[0].places(&FilePath::catalogue("x.yaml"));
    assert_eq!((places["list.1"].line, places["list.1"].column), (6, 3));
}

/// Values as records have them: texts, numbers, lists and mappings.
fn value() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        "[a-zé0-9 :#'\"\\-]{0,12}".prop_map(Value::from),
        any::<bool>().prop_map(Value::from),
        (-1000.0..1000.0_f64).prop_map(Value::from),
        Just(Value::Null),
    ];
    leaf.prop_recursive(4, 24, 5, |inner| {
        prop_oneof![
            proptest::collection::vec(inner.clone(), 0..5).prop_map(Value::from),
            proptest::collection::btree_map("[a-z_]{1,8}", inner, 0..5).prop_map(|map| {
                Value::Mapping(map.into_iter().map(|(key, value)| (Value::from(key), value)).collect())
            }),
        ]
    })
}

/// Whether a node is the value, and stands where its text stands.
fn agrees(node: &Node, value: &Value, lines: &[&str]) -> bool {
    match (&node.content, value) {
        (Content::List(nodes), Value::Sequence(values)) => {
            nodes.len() == values.len()
                && nodes.iter().zip(values).all(|(node, value)| agrees(node, value, lines))
        }
        (Content::Map(entries), Value::Mapping(map)) => {
            entries.len() == map.len()
                && entries.iter().all(|entry| {
                    let at = rest(lines, entry.line, entry.column);
                    at.trim_start_matches('\'').starts_with(&entry.key)
                        && agrees(&entry.value, &map[&entry.key], lines)
                })
        }
        (Content::Scalar(scalar), value) => {
            let same = match scalar.kind {
                ScalarKind::Empty => value.is_null(),
                ScalarKind::Truth(truth) => value.as_bool() == Some(truth),
                ScalarKind::Number(number) => value.as_f64() == Some(number),
                ScalarKind::Text => value.as_str() == Some(&scalar.written),
            };
            let at = rest(lines, node.line, node.column);
            same && (scalar.quoted && at.starts_with(['\'', '"']) || at.starts_with(&scalar.written))
        }
        _ => false,
    }
}

fn rest(lines: &[&str], line: u32, column: u32) -> String {
    lines[line as usize - 1].chars().skip(column as usize - 1).collect()
}

proptest! {
    #[test]
    fn whatever_is_written_is_read_back_with_its_place(values in proptest::collection::vec(value(), 1..4)) {
        let documents_text: Vec<String> =
            values.iter().map(|value| serde_yaml::to_string(value).unwrap()).collect();
        let text = format!("---\n{}", documents_text.join("---\n"));
        let (nodes, trouble) = documents(&text);
        prop_assert!(trouble.is_none(), "{text}\n{trouble:?}");
        prop_assert_eq!(nodes.len(), values.len());
        let lines: Vec<&str> = text.lines().collect();
        for (node, value) in nodes.iter().zip(&values) {
            prop_assert!(agrees(node, value, &lines), "{text}\n{node:?}\n{value:?}");
        }
    }
}

#[test]
fn numbers_keep_the_decimals_that_they_are_written_with() {
    let decimals = |written: &str| {
        let (nodes, _) = documents(&format!("value: {written}\n"));
        nodes[0].numbers().get("value").map(|number| (number.value, number.decimals))
    };
    for (written, value, places) in [
        ("21.06", 21.06, 2),
        ("2.80", 2.8, 2),
        ("80", 80.0, 0),
        ("-.5", -0.5, 1),
        ("2.345e1", 23.45, 2),
        ("5e-2", 0.05, 2),
        ("\"26\"", 26.0, 0),
    ] {
        assert_eq!(decimals(written), Some((value, places)), "{written}");
    }
    for written in ["M36", "2.5 mm", "\"\"", "e1", "1.2.3", "2026-01-02"] {
        assert_eq!(decimals(written), None, "{written}");
    }
}

/// The line and column of each brace of a text as its reader finds them, and as they stand in the file.
fn braces(written: &str) -> [Vec<(u32, u32)>; 2] {
    let text = format!("value: {written}\n");
    let (nodes, trouble) = documents(&text);
    assert!(trouble.is_none(), "{written}: {trouble:?}");
    let lines: Vec<&str> = text.lines().collect();
    let (file, mut findings) = (FilePath::catalogue("fittings/f.yaml"), Findings::new());
    let mut reader = Reader::new(&file, None, &mut findings).in_lines(&lines);
    let read = Worded::<Prose>::read(nodes[0].get("value").unwrap(), &mut reader).unwrap();
    let places = (0..).zip(read.text.as_ref().chars()).filter(|(_, letter)| *letter == '{');
    let found = places.map(|(at, _)| read.letters.at(at)).map(|place| (place.line, place.column)).collect();
    let standing = (1..).zip(&lines).flat_map(|(line, text)| {
        let braces = (1..).zip(text.chars()).filter(|(_, letter)| *letter == '{');
        braces.map(|(column, _)| (line, column)).collect::<Vec<_>>()
    });
    [found, standing.collect()]
}

#[test]
fn letters_of_a_text_are_found_however_it_is_written() {
    for written in [
        "é to {torque}, {tail}",
        "\"é \\\"to\\\" \\u00e9 {torque}, \\x41 {tail}\"",
        "'it''s {torque}, ''{tail}'''",
        ">-\n  to {torque},\n    then {tail}\n\n  or {spanner}",
        "|\n  to {torque},\n  then {tail}",
        "to {torque},\n  then   {tail}",
        "\"to {torque},\n  then \\\n  {tail}\"",
    ] {
        let [found, standing] = braces(written);
        assert!(found.len() > 1);
        assert_eq!(found, standing, "{written}");
    }
}

/// Without its title, owner, edition and caution no card may be printed: a file of comments is as good as none.
#[test]
fn settings_of_comments_alone_are_missing() {
    for text in ["# nothing yet\n", "", "---\n"] {
        let world = MemoryWorld::new().with(FilePath::catalogue("catalogue.yaml"), text);
        let records = super::read(&world).unwrap();
        let errors = records.findings.sorted();
        let errors = errors.iter().filter(|finding| finding.severity == Severity::Error);
        assert_eq!(errors.map(|finding| finding.code).collect::<Vec<_>>(), ["missing-file"], "{text:?}");
    }
}
