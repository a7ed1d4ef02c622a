//! Texts and values as layouts get them.

use serde_json::{Map, Value};

/// Texts that are not empty, joined.
pub(super) fn joined(texts: impl Iterator<Item = String>, between: &str) -> String {
    texts.filter(|text| !text.is_empty()).collect::<Vec<_>>().join(between)
}

/// The fields of an object.
pub(super) fn object(values: Value) -> Map<String, Value> {
    match values {
        Value::Object(values) => values,
        _ => Map::new(),
    }
}
