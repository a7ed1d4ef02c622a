//! Words that stand on cards for what records and the answer of `mixups` name by a key.

use super::records::text;
use serde_json::Value as Json;
use serde_yaml::Value;

/// Letters of IEC 60757.
pub fn colour(letters: &str) -> &'static str {
    match letters {
        "BK" => "black",
        "BN" => "brown",
        "RD" => "red",
        "OG" => "orange",
        "YE" => "yellow",
        "GN" => "green",
        "BU" => "blue",
        "VT" => "violet",
        "GY" => "grey",
        "WH" => "white",
        "PK" => "pink",
        "TQ" => "turquoise",
        other => panic!("no word for the colour {other}"),
    }
}

pub fn notches(count: u64) -> String {
    match count {
        0 => String::new(),
        1 => "1 notch".to_owned(),
        count => format!("{count} notches"),
    }
}

/// A parts list calls a part by its role.
pub fn role(part: &Value) -> String {
    let role = text(part, "role");
    if role == "other" { "part".to_owned() } else { role.replace('-', " ") }
}

pub fn status(record: &Value) -> String {
    match text(record, "status").as_str() {
        "on-hold" => "On hold: stop until told".to_owned(),
        "withdrawn" => "Withdrawn: do not use".to_owned(),
        "superseded" => format!("Superseded by {}: do not use", text(record, "superseded_by")),
        _ => String::new(),
    }
}

pub fn in_service(fitting: &Value) -> String {
    match text(fitting, "in_service").as_str() {
        "may-stay" => "those in the line may stay".to_owned(),
        "inspect" => "inspect those in the line".to_owned(),
        "replace-by" => format!("replace those in the line by {}", text(fitting, "in_service_date")),
        "stop-now" => "those in the line: stop now, report".to_owned(),
        _ => String::new(),
    }
}

/// Materials that no record states, by the names that the built-in list gives them.
pub fn built_in_material(id: &str) -> Option<&'static str> {
    match id {
        "bronze-1" => Some("Bronze I"),
        "bronze-2" => Some("Bronze II"),
        "copper-hard-drawn" => Some("Hard-drawn copper"),
        _ => None,
    }
}

/// What a part comes to in a fitting, in the words of a card.
pub fn summary(case: &Json) -> &str {
    case["summary"].as_str().unwrap()
}

/// The same where a table says it that a fitting is built by: what holds in a fitting that must not be built is no order to
/// build it.
pub fn to_build<'a>(case: &'a Json, fitting: &Value) -> &'a str {
    match summary(case) {
        "right part" | "proven here too" if !status(fitting).is_empty() => "do not use",
        summary => summary,
    }
}

/// The same as the meaning of a sign.
pub fn meaning(case: &Json, fitting: &Value) -> &'static str {
    match to_build(case, fitting) {
        "right part" => "right part",
        "will not go in" => "will not go in",
        "proven here too" => "proven here too",
        "withdrawn: do not use" | "do not use" => "do not use",
        _ if case["hidden"] == true && case["seen_by"] == "mark" => "seen by its mark only",
        _ if case["hidden"] == true => "not seen once closed",
        "not known: treat as wrong" => "not known: treat as wrong",
        _ => "wrong, it shows",
    }
}
