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

/// What a gripping part does in a fitting, in the words of a card.
pub fn verdict(case: &Json, part: &Value) -> &'static str {
    let (right, approved) = (case["right"] == true, case["approved"] == true);
    match case["verdict"].as_str().unwrap() {
        "grips" if right => "grips",
        "marginal" if right => "marginal",
        "grips" | "marginal" if approved => match text(part, "status").as_str() {
            "" | "current" => "proven here too",
            "on-hold" => "on hold: do not use",
            _ => "withdrawn: do not use",
        },
        "grips" => "fits, looks right, not proven",
        "marginal" => "may close on it, not proven",
        "stands-proud" => "stands proud",
        "will-not-enter" => "will not go together",
        "closes-without-gripping" => "closes, holds nothing",
        "core-not-held" => "inner wires not held",
        "tip-contact" => "touches at one end only",
        "unknown" => "not known",
        other => panic!("no words for {other}"),
    }
}

/// The same as the meaning of a sign.
pub fn meaning(case: &Json, part: &Value) -> &'static str {
    let (approved, hidden) = (case["approved"] == true, case["hidden"] == true);
    let in_use = matches!(text(part, "status").as_str(), "" | "current");
    match case["verdict"].as_str().unwrap() {
        _ if case["right"] == true => "right part",
        "will-not-enter" => "cannot be built",
        "grips" | "marginal" if approved && in_use => "proven too",
        "grips" | "marginal" if approved => "do not use",
        _ if hidden => "wrong, not seen",
        "unknown" => "not known",
        _ => "wrong, it shows",
    }
}
