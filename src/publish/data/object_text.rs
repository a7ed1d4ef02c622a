//! A large JSON object as text: the entries of its lists are written side by side, and none is held as a tree for longer
//! than that takes.

use super::object::Object;
use rayon::prelude::*;
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeMap;

/// The values of an object as they are written in it, by their keys.
pub(super) struct ObjectText(BTreeMap<String, String>);

/// How far an object's keys are indented, and the entries of its lists.
const KEY: &str = "  ";
const ENTRY: &str = "    ";

impl ObjectText {
    /// What an object holds already.
    pub(super) fn of(object: Object) -> Self {
        let Value::Object(values) = Value::from(object) else { return Self(BTreeMap::new()) };
        Self(values.into_iter().map(|(key, value)| (key, indented(&value, KEY))).collect())
    }

    /// Puts in what becomes of each of many records, in their order.
    pub(super) fn list<'a, T: Sync + 'a, S: Serialize>(
        &mut self,
        key: &str,
        records: impl IntoIterator<Item = &'a T>,
        object: impl Fn(&'a T) -> S + Sync + Send,
    ) {
        let records: Vec<&T> = records.into_iter().collect();
        let entries: Vec<String> = records
            .into_par_iter()
            .map(|record| ENTRY.to_owned() + &indented(&object(record), ENTRY))
            .collect();
        let text = match entries.as_slice() {
            [] => "[]".to_owned(),
            entries => format!("[\n{}\n{KEY}]", entries.join(",\n")),
        };
        self.0.insert(key.to_owned(), text);
    }

    /// The text of the whole object, with its keys in order and a line's end behind it.
    pub(super) fn whole(self) -> String {
        let pair = |(key, text): (String, String)| format!("{KEY}{}: {text}", Value::from(key));
        let pairs: Vec<String> = self.0.into_iter().map(pair).collect();
        format!("{{\n{}\n}}\n", pairs.join(",\n"))
    }
}

/// A value as it is written so far indented. No text in JSON holds a line break of its own.
fn indented(value: &impl Serialize, by: &str) -> String {
    serde_json::to_string_pretty(value).unwrap_or_default().replace('\n', &format!("\n{by}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    // The whole at once by serde_json.
    #[test]
    fn pieces_make_the_text_that_the_whole_makes() {
        let mut settings = Object::new();
        settings.put("title", "line\nbreak \"quoted\"");
        settings.put("limits", json!({ "a": [1, 2.5], "b": {} }));
        let records = [json!({ "z": 1, "a": [{ "b": [] }, "x"] }), json!(null), json!([[1], {}])];
        let mut text = ObjectText::of(settings);
        text.list("records", &records, |record| record);
        text.list("none", &[] as &[Value], |record| record);
        let whole = json!({
            "title": "line\nbreak \"quoted\"",
            "limits": { "a": [1, 2.5], "b": {} },
            "records": records,
            "none": [],
        });
        assert_eq!(text.whole(), format!("{whole:#}\n"));
    }
}
