//! What the doc comment of a key says: its meaning, its default, an example.

use serde_json::{Map, Value};

/// A doc comment taken apart. Lines that begin with `Default:` and `Example:` stand for themselves; the
/// others are the meaning.
///
/// A default or an example in backquotes is a value as records write it; a default without them says in
/// words what holds.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct KeyDoc {
    meaning: String,
    default: Option<String>,
    example: Option<String>,
}

impl KeyDoc {
    /// Takes apart the lines of a doc comment.
    pub(super) fn of(doc: &str) -> Self {
        let mut taken = Self { meaning: String::new(), default: None, example: None };
        for line in doc.lines().map(str::trim).filter(|line| !line.is_empty()) {
            if let Some(default) = line.strip_prefix("Default: ") {
                taken.default = Some(default.to_owned());
            } else if let Some(example) = line.strip_prefix("Example: ") {
                taken.example = Some(example.to_owned());
            } else {
                let space = if taken.meaning.is_empty() { "" } else { " " };
                taken.meaning = format!("{}{space}{line}", taken.meaning);
            }
        }
        taken
    }

    /// Adds what it says to the schema of a key. What starts with `x-` is for the program's own explanations,
    /// and is no part of the schemas that are given out.
    pub(super) fn describe(&self, schema: &mut Map<String, Value>) {
        let mut description = self.meaning.clone();
        if let Some(default) = &self.default {
            match written(default) {
                Some(value) => drop(schema.insert("default".into(), yaml(value))),
                None => description = format!("{description} Where it is left out: {default}."),
            }
            schema.insert("x-default".into(), written(default).unwrap_or(default).into());
        }
        if let Some(example) = &self.example {
            let example = written(example).unwrap_or(example);
            schema.insert("examples".into(), Value::Array(vec![yaml(example)]));
            schema.insert("x-example".into(), example.into());
        }
        schema.insert("x-meaning".into(), self.meaning.as_str().into());
        schema.insert("description".into(), description.into());
    }
}

/// What stands between backquotes, where the whole text does.
fn written(text: &str) -> Option<&str> {
    text.strip_prefix('`')?.strip_suffix('`').filter(|text| !text.contains('`'))
}

/// The value that a YAML text stands for; the text itself where it is none.
fn yaml(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap_or_else(|_| text.into())
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_doc_comment_is_taken_apart_into_meaning_default_and_example() {
        let doc = KeyDoc::of(" Number of\n notches.\n Default: `0`\n Example: `1`\n");
        let mut schema = Map::new();
        doc.describe(&mut schema);
        let expected = json!({ "description": "Number of notches.", "default": 0, "examples": [1],
            "x-default": "0", "x-example": "1", "x-meaning": "Number of notches." });
        assert_eq!(Value::Object(schema), expected);
    }

    #[test]
    fn a_default_in_words_is_told_in_the_description() {
        for words in ["that of its gripping part", "`wedge-end` on a wedge, else `cone-face`"] {
            let mut schema = Map::new();
            KeyDoc::of(&format!(" Its mark.\n Default: {words}\n")).describe(&mut schema);
            assert_eq!(schema["description"], format!("Its mark. Where it is left out: {words}."));
            assert!(!schema.contains_key("default"));
        }
    }
}
