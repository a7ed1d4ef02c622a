//! One document of a YAML stream, read as a record.

use super::field::{Read, Reader};
use super::lost::Lost;
use super::node::{Node, Written, documents};
use crate::diagnostics::{Finding, Findings};
use crate::source::{FilePath, Place};
use std::collections::BTreeMap;

/// A record as written, with its places.
#[derive(Debug, Clone)]
pub struct Document<T> {
    /// The record; `None` where it is no mapping at all.
    pub record: Option<T>,
    /// Its id or number as written, right or wrong.
    pub id: Option<String>,
    /// Whether every field is as it should be.
    pub sound: bool,
    /// Where it starts.
    pub place: Place,
    /// Where each field's value stands, by dotted path.
    pub fields: BTreeMap<String, Place>,
    /// Every number as it is written, by dotted path.
    pub numbers: BTreeMap<String, Written>,
}

/// Whoever looks at the values of each file of records as they are read, that nobody has to read them again.
pub type Seen<'a> = dyn Fn(&FilePath, &[Node]) + Sync + 'a;

/// The records of a file; what can't be read becomes findings, and is lost.
pub(super) fn read_documents<T: Read>(
    file: &FilePath,
    text: &str,
    seen: &Seen<'_>,
    findings: &mut Findings,
    lost: &mut Lost,
) -> Vec<Document<T>> {
    let (nodes, trouble) = documents(text);
    seen(file, &nodes);
    let lines: Vec<&str> = text.lines().collect();
    if nodes.is_empty() && trouble.is_none() {
        findings.push(empty(Place::whole(file.clone()), "this file holds no record"));
    }
    let mut records = Vec::with_capacity(nodes.len());
    for node in nodes {
        if node.is_empty() {
            findings.push(empty(
                node.place(file),
                "there is nothing between this place and the next `---`, or the end of the file",
            ));
        } else {
            lost.put_unseparated(file, &node);
            records.push(read_one(file, &node, &lines, findings));
        }
    }
    if let Some(trouble) = trouble {
        findings.push(trouble.finding(file));
        lost.put_text(file, text);
    }
    records
}

fn read_one<T: Read>(file: &FilePath, node: &Node, lines: &[&str], findings: &mut Findings) -> Document<T> {
    let id = node.get("id").or_else(|| node.get("number")).and_then(Node::written).map(ToOwned::to_owned);
    let mut reader = Reader::new(file, id.clone(), findings).in_lines(lines);
    let record = T::read(node, &mut reader);
    let sound = reader.faults() == 0;
    Document {
        record,
        id,
        sound,
        place: node.place(file),
        fields: node.places(file),
        numbers: node.numbers(),
    }
}

fn empty(place: Place, message: &str) -> Finding {
    Finding::warning("empty-document", place, message).help("write a record there, or delete the empty part")
}
