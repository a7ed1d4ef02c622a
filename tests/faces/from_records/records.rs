//! Records as they are written, and the answer of `mixups`, without anything that the program makes of them.

use fittingcards::source::{Folder, World};
use fittingcards::{catalogue, mixups};
use serde::Deserialize;
use serde_json::Value as Json;
use serde_yaml::Value;
use std::collections::BTreeMap;

/// The records of one kind by their number or id.
pub type Kind = BTreeMap<String, Value>;

pub struct Records {
    pub settings: Value,
    pub materials: Kind,
    pub conductors: Kind,
    pub parts: Kind,
    pub fittings: Kind,
    /// What `mixups --format json` answers.
    pub mixups: Json,
}

impl Records {
    pub fn of(world: &dyn World) -> Self {
        let kind = |folder: &str| {
            let texts = files(world, &format!("{folder}/"));
            texts.iter().flat_map(|text| stream(text)).map(|record| (name(&record), record)).collect()
        };
        let found = mixups::find(&catalogue::load(world).unwrap().catalogue);
        Self {
            settings: stream(&files(world, "catalogue.yaml")[0]).remove(0),
            materials: kind("materials"),
            conductors: kind("conductors"),
            parts: kind("parts"),
            fittings: kind("fittings"),
            mixups: mixups::to_json(&found),
        }
    }

    pub fn part(&self, number: &str) -> &Value {
        &self.parts[number]
    }

    /// The parts of a fitting in item order, with how many of each.
    pub fn items(&self, fitting: &Value) -> Vec<(&Value, u64)> {
        let item = |item: &Value| match item.as_str() {
            Some(number) => (number.to_owned(), 1),
            None => (text(item, "part"), item["quantity"].as_u64().unwrap_or(1)),
        };
        list(fitting, "parts").map(item).map(|(number, quantity)| (self.part(&number), quantity)).collect()
    }

    /// The conductors that a fitting is for.
    pub fn conductors(&self, fitting: &Value) -> Vec<&Value> {
        let one = fitting["conductor"].as_str();
        let several = list(fitting, "conductors").filter_map(Value::as_str);
        one.into_iter().chain(several).map(|id| &self.conductors[id]).collect()
    }

    /// Numbers as the catalogue writes them.
    pub fn number(&self, value: f64, places: usize) -> String {
        let mark = self.settings["decimal_mark"].as_str().unwrap_or(".");
        format!("{value:.places$}").replace('.', mark)
    }

    /// A number without zeros at its end.
    pub fn bare(&self, value: f64, places: usize) -> String {
        let text = format!("{value:.places$}");
        let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
        text.replace('.', self.settings["decimal_mark"].as_str().unwrap_or("."))
    }
}

/// A key's text; empty where it is absent.
pub fn text(record: &Value, key: &str) -> String {
    record[key].as_str().unwrap_or_default().trim().to_owned()
}

/// A key's items; none where it is absent.
pub fn list<'a>(record: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> {
    record[key].as_sequence().into_iter().flatten()
}

/// A key's texts; none where it is absent.
pub fn texts(record: &Value, key: &str) -> Vec<String> {
    list(record, key).filter_map(Value::as_str).map(str::to_owned).collect()
}

/// Three digits, which is as much as half a percent supports.
pub fn places(value: f64) -> usize {
    match value {
        value if value >= 99.95 => 0,
        value if value >= 9.995 => 1,
        _ => 2,
    }
}

fn files(world: &dyn World, start: &str) -> Vec<String> {
    let files = world.files(Folder::Catalogue).unwrap().into_iter();
    let wanted = files.filter(|file| file.path.starts_with(start) && file.path.ends_with(".yaml"));
    wanted.map(|file| String::from_utf8(world.read(&file).unwrap().to_vec()).unwrap()).collect()
}

fn stream(text: &str) -> Vec<Value> {
    let documents = serde_yaml::Deserializer::from_str(text);
    documents.map(|document| Value::deserialize(document).unwrap()).filter(Value::is_mapping).collect()
}

fn name(record: &Value) -> String {
    [text(record, "number"), text(record, "id")].concat()
}
