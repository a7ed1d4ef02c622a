//! Explanations as JSON.

use super::answer::Answer;
use super::code::Code;
use super::key::{Key, KeyDefault};
use serde_json::{Map, Value, json};

/// An answer as one object; what a key does not have is absent.
#[must_use]
pub fn to_json(answer: &Answer) -> Value {
    let kinds = answer.kinds.iter().map(|kind| json!({ "kind": kind.kind, "meaning": kind.meaning }));
    json!({
        "kinds": kinds.collect::<Vec<_>>(),
        "keys": answer.keys.iter().map(key).collect::<Vec<_>>(),
        "codes": answer.codes.iter().map(code).collect::<Vec<_>>(),
    })
}

fn key(key: &Key) -> Value {
    let mut object = Map::new();
    let mut put = |name: &str, value: Value| {
        if !value.is_null() {
            object.insert(name.to_owned(), value);
        }
    };
    put("path", json!(key.path));
    put("kind", json!(key.kind()));
    put("key", json!(key.name()));
    put("meaning", json!(key.meaning));
    put("takes", json!(key.takes));
    put("unit", json!(key.unit));
    put("needed", json!(key.needed));
    match &key.default {
        Some(KeyDefault::Value(value)) => put("default", json!(value)),
        Some(KeyDefault::Words(words)) => put("left_out", json!(words)),
        None => {}
    }
    put("example", json!(key.example));
    put("least", json!(key.least));
    put("most", json!(key.most));
    put("words", if key.words.is_empty() { Value::Null } else { json!(key.words) });
    Value::Object(object)
}

fn code(code: &Code) -> Value {
    json!({ "code": code.code, "finds": code.finds, "why": code.why, "help": code.help })
}
