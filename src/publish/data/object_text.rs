//! A large JSON object as text: the entries of its lists are written side by side, and none is held as a tree for longer
//! than that takes. The text stays in the pieces in which it was written.

use super::object::Object;
use rayon::prelude::*;
use serde::Serialize;
use serde_json::Value;
use serde_json::ser::{Formatter, PrettyFormatter, Serializer};
use std::collections::BTreeMap;
use std::io;

/// How many entries are written into one piece.
const TOGETHER: usize = 50;

/// Text in pieces, one behind the other.
type Pieces = Vec<Vec<u8>>;

/// The values of an object as they are written in it, by their keys.
pub(super) struct ObjectText(BTreeMap<String, Pieces>);

impl ObjectText {
    /// What an object holds already.
    pub(super) fn of(object: Object) -> Self {
        let Value::Object(values) = Value::from(object) else { return Self(BTreeMap::new()) };
        let written = |value: Value| {
            let mut piece = Vec::new();
            write(&value, 1, &mut piece);
            vec![piece]
        };
        Self(values.into_iter().map(|(key, value)| (key, written(value))).collect())
    }

    /// Puts in what becomes of each of many records, in their order.
    pub(super) fn list<'a, T: Sync + 'a, S: Serialize>(
        &mut self,
        key: &str,
        records: impl IntoIterator<Item = &'a T>,
        object: impl Fn(&'a T) -> S + Sync + Send,
    ) {
        let records: Vec<&T> = records.into_iter().collect();
        let entries = |records: &[&'a T]| {
            let mut piece = Vec::new();
            for record in records {
                piece.extend_from_slice(if piece.is_empty() { b"    " } else { b",\n    " });
                write(&object(record), 2, &mut piece);
            }
            piece
        };
        let pieces: Pieces = records.par_chunks(TOGETHER).map(entries).collect();
        let list = match pieces.is_empty() {
            true => vec![b"[]".to_vec()],
            false => behind_each_other("[\n", pieces.into_iter().map(|piece| vec![piece]), "\n  ]"),
        };
        self.0.insert(key.to_owned(), list);
    }

    /// The text of the whole object, with its keys in order and a line's end behind it.
    pub(super) fn whole(self) -> Pieces {
        let pairs = self.0.into_iter().map(|(key, mut value)| {
            value.insert(0, format!("  {}: ", Value::from(key)).into_bytes());
            value
        });
        behind_each_other("{\n", pairs, "\n}\n")
    }
}

/// A value as it is written in the inner of so many lists and objects. What can't be written is left out: there is no
/// such thing among our own.
fn write(value: &impl Serialize, within: usize, piece: &mut Vec<u8>) {
    let mut formatter = PrettyFormatter::new();
    for _ in 0..within {
        let _ = formatter.begin_array(&mut io::sink());
    }
    let _ = value.serialize(&mut Serializer::with_formatter(piece, formatter));
}

/// Texts with commas between them, each on lines of its own.
fn behind_each_other(begin: &str, texts: impl Iterator<Item = Pieces>, end: &str) -> Pieces {
    let mut all = vec![begin.as_bytes().to_vec()];
    for (nth, text) in texts.enumerate() {
        if nth > 0 {
            all.push(b",\n".to_vec());
        }
        all.extend(text);
    }
    all.push(end.as_bytes().to_vec());
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    // The whole at once by serde_json.
    #[test]
    fn pieces_make_the_text_that_the_whole_makes() {
        let record = |nth: usize| match nth % 3 {
            0 => json!({ "z": nth, "a": [{ "b": [] }, "x"] }),
            1 => json!(null),
            _ => json!([[nth], {}]),
        };
        for count in [0, 1, TOGETHER, 2 * TOGETHER + 1] {
            let records: Vec<Value> = (0..count).map(record).collect();
            let mut object = Object::new();
            object.put("title", "line\nbreak \"quoted\"");
            object.put("limits", json!({ "a": [1, 2.5], "b": {} }));
            let mut text = ObjectText::of(object);
            text.list("records", &records, |record| record);
            let whole = json!({
                "title": "line\nbreak \"quoted\"",
                "limits": { "a": [1, 2.5], "b": {} },
                "records": records,
            });
            assert_eq!(
                String::from_utf8(text.whole().concat()).unwrap(),
                format!("{whole:#}\n"),
                "{count} records"
            );
        }
    }
}
