//! JSON Schemas of mappings.

use super::field::{LONGEST_LIST, Need};
use super::key_doc::KeyDoc;
use schemars::Schema;
use serde_json::{Map, Value, json};
use std::ops::RangeInclusive;

/// The schema of a mapping, key by key.
pub(super) struct Object {
    about: &'static str,
    properties: Map<String, Value>,
    required: Vec<&'static str>,
    /// Keys of which there is exactly one.
    either: Vec<&'static str>,
    /// The keys in the order of the declaration, which a JSON object does not keep.
    keys: Vec<&'static str>,
}

impl Object {
    pub(super) fn new(about: &'static str) -> Self {
        Self {
            about: about.trim(),
            properties: Map::new(),
            required: Vec::new(),
            either: Vec::new(),
            keys: Vec::new(),
        }
    }

    /// Adds a key with its doc comment.
    pub(super) fn property(&mut self, key: &'static str, doc: &str, schema: Schema, need: Need) -> &mut Self {
        let mut schema = schema.to_value();
        if let Some(object) = schema.as_object_mut() {
            KeyDoc::of(doc).describe(object);
            if object.get("type").is_some_and(|kind| kind == "array") {
                limit(object, &(0..=LONGEST_LIST));
            }
        }
        self.properties.insert(key.to_owned(), schema);
        self.keys.push(key);
        match need {
            Need::Required => self.required.push(key),
            Need::Either => self.either.push(key),
            Need::Optional => {}
        }
        self
    }

    /// Says how many entries the list of the key has that was added last.
    pub(super) fn entries(&mut self, entries: RangeInclusive<usize>) {
        let key = self.keys.last().copied().unwrap_or_default();
        if let Some(list) = self.properties.get_mut(key).and_then(Value::as_object_mut) {
            limit(list, &entries);
        }
    }

    pub(super) fn finish(self) -> Schema {
        let either = self.either.iter().map(|key| json!({ "required": [key] })).collect::<Vec<_>>();
        let mut object = json!({
            "type": "object",
            "description": self.about,
            "properties": self.properties,
            "required": self.required,
            "additionalProperties": false,
            "x-keys": self.keys,
        });
        if !either.is_empty() {
            object["oneOf"] = either.into();
        }
        schema(object)
    }

    pub(super) fn with_one_property(self) -> Schema {
        schema(json!({
            "type": "object",
            "description": self.about,
            "properties": self.properties,
            "minProperties": 1,
            "maxProperties": 1,
            "additionalProperties": false,
            "x-keys": self.keys,
        }))
    }
}

/// The schema of a list with so many entries.
pub(super) fn list(mut schema: Schema, entries: &RangeInclusive<usize>) -> Schema {
    limit(schema.ensure_object(), entries);
    schema
}

fn limit(list: &mut Map<String, Value>, entries: &RangeInclusive<usize>) {
    if *entries.start() > 0 {
        list.insert("minItems".into(), (*entries.start()).into());
    }
    list.insert("maxItems".into(), (*entries.end()).into());
}

/// A schema from its JSON.
pub(super) fn schema(value: Value) -> Schema {
    match value {
        Value::Object(object) => Schema::from(object),
        _ => Schema::default(),
    }
}

/// The same schema with what it takes, in the words of messages.
pub(super) fn taking(mut schema: Schema, words: impl Into<String>) -> Schema {
    schema.insert("x-value".into(), words.into().into());
    schema
}

/// Takes out what is for the program's own explanations.
pub(super) fn without_notes(value: &mut Value) {
    match value {
        Value::Object(object) => {
            object.retain(|key, _| !key.starts_with("x-"));
            object.values_mut().for_each(without_notes);
        }
        Value::Array(items) => items.iter_mut().for_each(without_notes),
        _ => {}
    }
}
