//! Findings for other programs.

use super::{Finding, Findings, Severity};
use crate::source::Place;
use serde_json::{Map, Value, json};

/// Findings as one JSON object: `findings` in order, and how many there are of each severity.
///
/// Files are named below their folder, so that the text is the same wherever the catalogue lies.
#[must_use]
pub fn to_json(findings: &Findings) -> Value {
    json!({
        "errors": findings.count(Severity::Error),
        "warnings": findings.count(Severity::Warning),
        "notes": findings.count(Severity::Note),
        "findings": findings.sorted().into_iter().map(object).collect::<Vec<_>>(),
    })
}

fn object(finding: &Finding) -> Value {
    let mut object = place(&finding.place);
    object.insert("code".into(), finding.code.into());
    object.insert("severity".into(), finding.severity.word().into());
    object.insert("message".into(), finding.message.as_str().into());
    let optional = [
        ("record", &finding.record),
        ("field", &finding.field),
        ("found", &finding.found),
        ("expected", &finding.expected),
    ];
    for (name, text) in optional {
        if let Some(text) = text {
            object.insert(name.into(), text.as_str().into());
        }
    }
    if !finding.help.is_empty() {
        object.insert("help".into(), finding.help.as_str().into());
    }
    if !finding.related.is_empty() {
        let related = finding.related.iter().map(|related| {
            let mut object = place(&related.place);
            object.insert("message".into(), related.message.as_str().into());
            Value::Object(object)
        });
        object.insert("related".into(), related.collect());
    }
    Value::Object(object)
}

fn place(place: &Place) -> Map<String, Value> {
    let mut object = Map::new();
    object.insert("file".into(), place.file.path.as_ref().into());
    if place.line > 0 {
        object.insert("line".into(), place.line.into());
        object.insert("column".into(), place.column.into());
    }
    object
}
