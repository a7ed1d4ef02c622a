//! The keys of the records, taken from the schemas of their declarations.

use super::unit::unit_of;
use crate::records::explained_schemas;
use serde_json::Value;

/// A key of the records, where it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Key {
    /// The kind of record and the keys down to it, such as `parts.geometry.collet.bore_mm`.
    pub path: String,
    /// What it means.
    pub meaning: String,
    /// What may be written there, in words.
    pub takes: String,
    /// The unit that its name carries.
    pub unit: Option<&'static str>,
    /// Whether it must be there.
    pub needed: bool,
    /// What holds where it is left out; `None` where nothing does, and nothing is taken for it.
    pub default: Option<KeyDefault>,
    /// A value as records write it.
    pub example: String,
    /// The least number that it takes.
    pub least: Option<f64>,
    /// The largest number that it takes.
    pub most: Option<f64>,
    /// The words that it takes, where it takes only these.
    pub words: Vec<String>,
    /// The keys of its value, where that is a mapping of its own: `min` and `max` of a window.
    pub ends: Vec<String>,
}

/// What holds where a key is left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum KeyDefault {
    /// A value as records write it.
    Value(String),
    /// Whatever these words say.
    Words(String),
}

impl KeyDefault {
    /// The value or the words.
    #[must_use]
    pub fn text(&self) -> &str {
        match self {
            Self::Value(text) | Self::Words(text) => text,
        }
    }
}

impl Key {
    /// The key itself, the last of its path.
    #[must_use]
    pub fn name(&self) -> &str {
        self.path.rsplit('.').next().unwrap_or(&self.path)
    }

    /// The kind of record, the first of its path.
    #[must_use]
    pub fn kind(&self) -> &str {
        self.path.split('.').next().unwrap_or(&self.path)
    }

    /// How many keys stand above it in its record.
    #[must_use]
    pub fn depth(&self) -> usize {
        self.path.matches('.').count().saturating_sub(1)
    }
}

/// Every key of every kind of record: kinds by their names, keys in the order of their declarations, and those
/// below a key right after it.
///
/// ```
/// let keys = fittingcards::explain::keys();
/// let bore = keys.iter().find(|key| key.path == "parts.geometry.collet.bore_mm").expect("a key");
/// assert_eq!((bore.unit, bore.needed), (Some("mm"), false));
/// assert_eq!(bore.takes, "a number from 0.01 to 200 mm");
/// ```
#[must_use]
pub fn keys() -> Vec<Key> {
    let mut keys = Vec::new();
    for (kind, schema) in explained_schemas() {
        let schema = Value::from(schema);
        below(kind, &schema, &schema, &mut keys);
    }
    keys
}

/// Adds the keys below a path: those of a mapping, or of the entries of a list.
fn below(path: &str, node: &Value, whole: &Value, keys: &mut Vec<Key>) {
    if is_value(node) {
        return;
    }
    if let Some(meant) = meant(node, whole) {
        return below(path, meant, whole, keys);
    }
    for part in node["anyOf"].as_array().into_iter().flatten().chain(node.get("items")) {
        below(path, part, whole, keys);
    }
    let needed: Vec<&str> = texts(&node["required"]).collect();
    for name in texts(&node["x-keys"]) {
        let path = format!("{path}.{name}");
        let value = &node["properties"][name];
        keys.push(key(&path, value, needed.contains(&name), whole));
        below(&path, value, whole, keys);
    }
}

fn key(path: &str, value: &Value, needed: bool, whole: &Value) -> Key {
    let text = |name: &str| value[name].as_str().map(str::to_owned);
    Key {
        path: path.to_owned(),
        meaning: text("x-meaning").unwrap_or_default(),
        takes: takes(value, whole),
        unit: unit_of(path),
        needed,
        default: text("x-default").map(|default| match value.get("default") {
            Some(_) => KeyDefault::Value(default),
            None => KeyDefault::Words(default),
        }),
        example: text("x-example").unwrap_or_default(),
        least: value["minimum"].as_f64(),
        most: value["maximum"].as_f64(),
        words: texts(&value["enum"]).map(str::to_owned).collect(),
        ends: ends(value, whole),
    }
}

/// The keys of the mappings that a value may be, where they are a part of the value.
fn ends(node: &Value, whole: &Value) -> Vec<String> {
    if let Some(meant) = meant(node, whole) {
        return ends(meant, whole);
    }
    let forms = || node["anyOf"].as_array().into_iter().flatten();
    if is_value(node) {
        let mappings = std::iter::once(node).chain(forms());
        return mappings.flat_map(|mapping| texts(&mapping["x-keys"])).map(str::to_owned).collect();
    }
    forms().flat_map(|form| ends(form, whole)).collect()
}

/// What a value may be, in words.
fn takes(node: &Value, whole: &Value) -> String {
    if let Some(words) = node["x-value"].as_str() {
        return words.to_owned();
    }
    if let Some(meant) = meant(node, whole) {
        return takes(meant, whole);
    }
    if let Some(forms) = node["anyOf"].as_array() {
        return forms.iter().map(|form| takes(form, whole)).collect::<Vec<_>>().join(", or ");
    }
    if let Some(entry) = node.get("items") {
        return format!("a list, each entry {}", takes(entry, whole));
    }
    let names = texts(&node["x-keys"]).map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ");
    let which =
        if node["maxProperties"] == 1 { "exactly one of the keys" } else { "a mapping with the keys" };
    format!("{which} {names}")
}

/// Whether a node has words of its own: what is below it is a part of the value.
fn is_value(node: &Value) -> bool {
    node["x-value"].is_string()
}

/// The definition that a node refers to.
fn meant<'s>(node: &Value, whole: &'s Value) -> Option<&'s Value> {
    let name = node["$ref"].as_str()?.strip_prefix("#/$defs/")?;
    whole["$defs"].get(name)
}

fn texts(list: &Value) -> impl Iterator<Item = &str> {
    list.as_array().into_iter().flatten().filter_map(Value::as_str)
}
