//! The demo's records as they are written, read by a YAML library.

use serde_yaml::Value;
use std::collections::BTreeMap;

/// Records of a folder of the demo by their number or id.
pub fn records(folder: &str) -> BTreeMap<String, Value> {
    let folder = crate::fixtures::root().join("content").join(folder);
    let mut records = BTreeMap::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let text = std::fs::read_to_string(entry.unwrap().path()).unwrap();
        for document in serde_yaml::Deserializer::from_str(&text) {
            let value = <Value as serde::Deserialize>::deserialize(document).unwrap();
            let id = value["number"].as_str().or(value["id"].as_str()).unwrap().to_owned();
            records.insert(id, value);
        }
    }
    records
}

/// A fitting's value, else that of its procedure.
pub fn own_or_procedure(fitting: &Value, procedures: &BTreeMap<String, Value>, key: &str) -> Value {
    if !fitting[key].is_null() {
        return fitting[key].clone();
    }
    fitting["procedure"].as_str().map(|id| procedures[id][key].clone()).unwrap_or(Value::Null)
}

/// Whether a fitting may be built.
pub fn is_current(fitting: &Value) -> bool {
    fitting["status"].is_null() || fitting["status"] == "current"
}

/// The numbers of a fitting's parts, in item order.
pub fn parts(fitting: &Value) -> Vec<String> {
    let number = |part: &Value| part.as_str().or(part["part"].as_str()).unwrap().to_owned();
    fitting["parts"].as_sequence().unwrap().iter().map(number).collect()
}

/// The role of a gripping part (vocabulary of the trade: cone, wedge, sleeve, ferrule, rope grip).
pub fn grips(part: &Value) -> bool {
    matches!(part["role"].as_str(), Some("cone" | "wedge" | "sleeve" | "ferrule" | "rope-grip"))
}
