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
        let procedures: Kind = kind("procedures");
        let mut fittings: Kind = kind("fittings");
        fittings.values_mut().for_each(|fitting| take(fitting, &procedures));
        let found = mixups::find(&catalogue::load(world).unwrap().catalogue);
        Self {
            settings: stream(&files(world, "catalogue.yaml")[0]).remove(0),
            materials: kind("materials"),
            conductors: kind("conductors"),
            parts: kind("parts"),
            fittings,
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

    /// A fitting's texts with its values put in for the names in braces; `{{` is a brace.
    pub fn said(&self, fitting: &Value, key: &str) -> Vec<String> {
        let lines = list(fitting, key).filter_map(Value::as_str).chain(fitting[key].as_str());
        lines.map(|line| self.filled(fitting, line.trim())).collect()
    }

    fn filled(&self, fitting: &Value, text: &str) -> String {
        let mut pieces =
            text.replace("{{", "\u{1}").split('{').map(str::to_owned).collect::<Vec<_>>().into_iter();
        let first = pieces.next().unwrap_or_default();
        let rest = pieces.map(|piece| match piece.split_once('}') {
            Some((name, rest)) => self.value(fitting, name) + rest,
            None => panic!("nothing closes a brace of {text}"),
        });
        [first].into_iter().chain(rest).collect::<String>().replace('\u{1}', "{")
    }

    /// What a name in braces stands for.
    fn value(&self, fitting: &Value, name: &str) -> String {
        let (name, nth) =
            name.split_once('.').map_or((name, 0), |(name, nth)| (name, nth.parse::<usize>().unwrap() - 1));
        let conductors = self.conductors(fitting);
        let conductor = conductors[nth.min(conductors.len() - 1)];
        let gripping = super::fittings::gripping(self, fitting);
        let window = |window: &Value, unit: &str| {
            let (min, max) = (&window["min"], &window["max"]);
            let (min, max) = (min.as_f64().unwrap(), max.as_f64().unwrap());
            let places = usize::from(unit == "mm");
            let [min, max] = [min, max].map(|end| self.number(end, places));
            if min == max { format!("{min} {unit}") } else { format!("{min} to {max} {unit}") }
        };
        match name {
            "torque" => window(&fitting["tightening"][nth]["torque_Nm"], "N·m"),
            "stamp" => text(gripping[0], "stamp"),
            "mark" => super::fittings::mark_of(self, fitting).map(|mark| text(mark, "text")).unwrap(),
            "drum_tag" | "tracer" | "grooves" => text(&conductor["identity"], name),
            "insertion" | "tail" => {
                format!("{} mm", self.bare(fitting[format!("{name}_mm")].as_f64().unwrap(), 1))
            }
            "seated" | "tensioned" => {
                let stated = &fitting["stand_out"][format!("{name}_mm")];
                format!("{} mm", super::fittings::window(self, stated, 1).unwrap())
            }
            "diameter" => format!(
                "⌀ {} mm",
                self.number(conductor["stated"]["overall_diameter_mm"].as_f64().unwrap(), 1)
            ),
            "replace_height" => {
                let wear = &conductor["construction"]["grooved"]["wear"];
                format!("{} mm", self.number(wear["replace_height_mm"].as_f64().unwrap(), 1))
            }
            other => panic!("no value for {other}"),
        }
    }

    /// Numbers as the catalogue writes them.
    pub fn number(&self, value: f64, places: usize) -> String {
        let mark = self.settings["decimal_mark"].as_str().unwrap_or(".");
        format!("{value:.places$}").replace('.', mark)
    }

    /// A number as its record writes it, but for zeros at its end, which a YAML value does not keep.
    pub fn written(&self, value: &Value) -> Option<String> {
        let mark = self.settings["decimal_mark"].as_str().unwrap_or(".");
        matches!(value, Value::Number(_))
            .then(|| serde_yaml::to_string(value).unwrap_or_default().trim().replace('.', mark))
    }

    /// A number without zeros at its end.
    pub fn bare(&self, value: f64, places: usize) -> String {
        let text = format!("{value:.places$}");
        let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
        text.replace('.', self.settings["decimal_mark"].as_str().unwrap_or("."))
    }
}

/// A fitting takes from its procedure what its own record does not state.
fn take(fitting: &mut Value, procedures: &Kind) {
    let Some(procedure) = procedures.get(&text(fitting, "procedure")) else { return };
    for key in ["tightening", "witness", "steps", "reject_if", "if_wrong"] {
        if fitting[key].is_null() && !procedure[key].is_null() {
            fitting[key] = procedure[key].clone();
        }
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
