//! The bore of a pressed tube: across, or the width and height of an oval.

use super::field::{Field, Key, Need, Read, Reader};
use super::node::{Content, Node};
use super::number::{Mm, Size};
use super::schema::{Object, taking};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::Value;
use std::borrow::Cow;

/// The bore of a pressed tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BoreRecord {
    /// Round: the diameter.
    Round(Size<Mm, 200>),
    /// Oval, for two legs of a rope.
    Oval {
        /// The lesser size.
        width: Size<Mm, 200>,
        /// The greater size.
        height: Size<Mm, 200>,
    },
}

const KEYS: &[Key] =
    &[Key { name: "width", need: Need::Required }, Key { name: "height", need: Need::Required }];

impl Read for BoreRecord {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        if !matches!(node.content, Content::Map(_)) {
            return Read::read(node, reader).map(Self::Round);
        }
        let entries = reader.mapping(node, "an oval bore", KEYS)?;
        let width: Option<Field<_>> = reader.field(entries, "width");
        let height: Option<Field<_>> = reader.field(entries, "height");
        Some(Self::Oval { width: width?.value, height: height?.value })
    }
}

impl JsonSchema for BoreRecord {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Bore".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let size = generator.subschema_for::<Size<Mm, 200>>();
        let across = size.get("x-value").and_then(Value::as_str).unwrap_or("a number").to_owned();
        let mut oval = Object::new("An oval, for two legs of a rope.");
        oval.property("width", "The lesser size.", size.clone(), Need::Required);
        oval.property("height", "The greater size.", size.clone(), Need::Required);
        let bore = json_schema!({ "anyOf": [size, oval.finish()] });
        taking(bore, format!("{across}, or `{{ width: …, height: … }}` of an oval"))
    }
}
