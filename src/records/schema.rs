//! JSON Schemas of mappings.

use super::field::{LONGEST_LIST, Need};
use schemars::Schema;
use serde_json::{Map, Value, json};

/// The schema of a mapping, key by key.
pub(super) struct Object {
    about: &'static str,
    properties: Map<String, Value>,
    required: Vec<&'static str>,
}

impl Object {
    pub(super) fn new(about: &'static str) -> Self {
        Self { about: about.trim(), properties: Map::new(), required: Vec::new() }
    }

    pub(super) fn property(&mut self, key: &'static str, about: &'static str, schema: Schema, need: Need) {
        let mut schema = schema.to_value();
        if let Some(object) = schema.as_object_mut() {
            object.insert("description".into(), about.trim().into());
            if object.get("type").is_some_and(|kind| kind == "array") {
                object.insert("maxItems".into(), LONGEST_LIST.into());
            }
        }
        self.properties.insert(key.to_owned(), schema);
        if need == Need::Required {
            self.required.push(key);
        }
    }

    pub(super) fn finish(self) -> Schema {
        schema(json!({
            "type": "object",
            "description": self.about,
            "properties": self.properties,
            "required": self.required,
            "additionalProperties": false,
        }))
    }

    pub(super) fn with_one_property(self) -> Schema {
        schema(json!({
            "type": "object",
            "description": self.about,
            "properties": self.properties,
            "minProperties": 1,
            "maxProperties": 1,
            "additionalProperties": false,
        }))
    }
}

/// A schema from its JSON.
pub(super) fn schema(value: Value) -> Schema {
    match value {
        Value::Object(object) => Schema::from(object),
        _ => Schema::default(),
    }
}
