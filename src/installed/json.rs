//! A follow-up for other programs.

use super::{Affected, FollowUp, Reason};
use serde_json::{Map, Value, json};

/// The follow-up as one object; what is not known is absent, numbers are not rounded.
#[must_use]
pub fn follow_up_json(found: &FollowUp<'_>) -> Value {
    let mut object = Map::new();
    object.extend(found.date.map(|date| ("date".to_owned(), json!(date.to_string()))));
    object.extend(found.notice.as_ref().map(|notice| ("notice".to_owned(), json!(notice))));
    object.insert("installed".into(), json!(found.installed));
    object.insert("follow_up".into(), found.places.iter().map(place).collect());
    Value::Object(object)
}

fn place(place: &Affected<'_>) -> Value {
    let installed = place.installed;
    let mut object = Map::new();
    object.insert("place".into(), json!(installed.place));
    object.insert("fitting".into(), json!(installed.fitting.number));
    let part = installed.gripping_part.as_ref().map(|part| json!(part.number));
    let texts = [
        ("by", &installed.by),
        ("witness", &installed.witness),
        ("slip", &installed.slip),
        ("remark", &installed.remark),
    ];
    object.extend(part.map(|part| ("gripping_part".to_owned(), part)));
    for (key, length) in [("seated_mm", installed.seated), ("tensioned_mm", installed.tensioned)] {
        object.extend(length.map(|length| (key.to_owned(), json!(length.mm()))));
    }
    object.extend(installed.built.map(|day| ("built".to_owned(), json!(day.to_string()))));
    for (key, text) in texts.into_iter().filter(|(_, text)| !text.is_empty()) {
        object.insert(key.into(), json!(text));
    }
    object.extend(installed.issue.map(|issue| ("issue".to_owned(), json!(issue))));
    object.insert("overdue".into(), json!(place.is_overdue));
    object.extend(place.due.map(|day| ("due".to_owned(), json!(day.to_string()))));
    object.extend(place.working_factor.map(|factor| ("working_factor".to_owned(), json!(factor))));
    object.insert("reasons".into(), place.reasons.iter().map(reason).collect());
    object.insert("file".into(), json!(installed.at.file.path.as_ref()));
    object.insert("line".into(), json!(installed.at.line));
    Value::Object(object)
}

fn reason(reason: &Reason) -> Value {
    let mut object = Map::new();
    object.insert("kind".into(), json!(reason.kind.word()));
    object.insert("words".into(), json!(reason.words));
    object.extend(reason.due.map(|day| ("due".to_owned(), json!(day.to_string()))));
    if !reason.inside.is_empty() {
        object.insert("inside".into(), json!(reason.inside));
    }
    Value::Object(object)
}
