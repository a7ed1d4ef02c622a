//! A holder of copies as written.

use crate::records::field::{Field, Read, Reader};
use crate::records::node::{Content, Node};
use crate::records::record::record;
use crate::records::schema::taking;
use crate::records::{Count, Day, Identifier, Name, ReceiptWord};
use schemars::{JsonSchema, Schema, SchemaGenerator};
use std::borrow::Cow;
use std::collections::BTreeMap;

record! {
    /// A depot, gang or store that holds numbered copies.
    HolderRecord ("a holder") {
        /// The id of the holder.
        /// Example: `tarn-depot`
        id: Identifier, Required;
        /// Its name.
        /// Example: `Tarn depot`
        name: Name, Required;
        /// How many copies it holds, by the number of a fitting or body. `*` is every other card.
        /// Example: `{ ST-4100: 12, "*": 4 }`
        copies: Copies, Optional;
        /// What became of copies that are no longer good.
        /// Example: `[{ card: ST-4100, issue: 2, copies: 3, what: returned, date: 2026-12-04, by: M. Orrin }]`
        receipts: Vec<Field<ReceiptRecord>>, Optional;
    }
}
record! {
    /// What became of copies of an issue.
    ReceiptRecord ("a receipt") {
        /// The card's number.
        /// Example: `ST-4100`
        card: Identifier, Required;
        /// The issue that the card says.
        /// Example: `2`
        issue: Count<1, 100_000>, Required;
        /// How many copies.
        /// Example: `3`
        copies: Count<1, 10_000>, Required;
        /// What became of them.
        /// Example: `returned`
        what: ReceiptWord, Required;
        /// The day.
        /// Example: `2026-12-04`
        date: Day, Required;
        /// Who says so.
        /// Example: `M. Orrin`
        by: Name, Required;
    }
}

/// Numbers of copies by the number of the card.
#[derive(Debug, Clone)]
pub struct Copies(pub BTreeMap<String, Field<Count<0, 10_000>>>);

impl Read for Copies {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let Content::Map(entries) = &node.content else {
            reader.fault("wrong-type", node, "card numbers with their copies are expected here", |finding| {
                finding.found(node.described()).expected("a mapping such as `{ A-1: 12, \"*\": 4 }`")
            });
            return None;
        };
        reader.doubled_keys(entries);
        let mut copies = BTreeMap::new();
        for entry in entries {
            if let Some(field) = reader.value(entry) {
                copies.entry(entry.key.clone()).or_insert(field);
            }
        }
        Some(Self(copies))
    }
}

impl JsonSchema for Copies {
    fn schema_name() -> Cow<'static, str> {
        "Copies".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let copies = BTreeMap::<String, Count<0, 10_000>>::json_schema(generator);
        taking(copies, "numbers of cards, each with a whole number from 0 to 10000")
    }
}
