//! Least and most.

use super::field::{Field, Key, Need, Read, Reader};
use super::node::Node;
use super::schema::{Object, taking};
use crate::units::Range;
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde_json::Value;
use std::borrow::Cow;

impl<T: Read + Copy + PartialOrd> Read for Range<T> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        const KEYS: &[Key] =
            &[Key { name: "min", need: Need::Required }, Key { name: "max", need: Need::Required }];
        let entries = reader.mapping(node, "a window", KEYS)?;
        let min: Option<Field<T>> = reader.field(entries, "min");
        let max: Option<Field<T>> = reader.field(entries, "max");
        let (min, max) = (min?.value, max?.value);
        let range = Self::ordered(min, max);
        if range.is_some() {
            return range;
        }
        let written = |key| node.get(key).and_then(Node::written).unwrap_or_default().to_owned();
        let found = format!("min {}, max {}", written("min"), written("max"));
        reader.fault("window-upside-down", node, "`min` is larger than `max`", |finding| {
            finding
                .found(found)
                .expected("a `min` that is not larger than `max`")
                .help("compare both with the specification: they may be exchanged, or one of them mistyped")
        });
        None
    }
}

impl<T: JsonSchema> JsonSchema for Range<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Range".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let bound = generator.subschema_for::<T>();
        let each = bound.get("x-value").and_then(Value::as_str).unwrap_or("a number").to_owned();
        let mut object = Object::new("Least and most.");
        object.property("min", "Least.", bound.clone(), Need::Required);
        object.property("max", "Most.", bound, Need::Required);
        taking(object.finish(), format!("`{{ min: …, max: … }}`, each {each}"))
    }
}
