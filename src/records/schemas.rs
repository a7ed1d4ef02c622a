//! JSON Schemas of all kinds of record, for editors.

use super::kinds::{
    CatalogueRecord, ConductorRecord, FittingRecord, HolderRecord, InstalledRecord, MaterialRecord,
    NoticeRecord, PartRecord, ProcedureRecord,
};
use super::schema::without_notes;
use schemars::{Schema, schema_for};
use serde_json::Value;
use std::collections::BTreeMap;

/// The JSON Schema of each kind of record, by the folder it lies in; `catalogue` is that of
/// `catalogue.yaml`, `installed` that of a row of a list, column by column.
///
/// ```
/// let schemas = fittingcards::records::schemas();
/// let part = schemas["parts"].as_value();
/// assert_eq!(part["required"], serde_json::json!(["number", "name", "role", "material"]));
/// assert_eq!(part["additionalProperties"], false);
/// ```
#[must_use]
pub fn schemas() -> BTreeMap<&'static str, Schema> {
    explained_schemas().into_iter().map(|(kind, schema)| (kind, plain(kind, schema))).collect()
}

fn plain(kind: &str, schema: Schema) -> Schema {
    let mut value: Value = schema.into();
    without_notes(&mut value);
    value["title"] = kind.into();
    super::schema::schema(value)
}

/// The same with what `fittingcards explain` says beyond a JSON Schema: `x-keys`, the keys of a mapping in their
/// order; `x-value`, what a value may be, in words; `x-meaning`, `x-example` and `x-default`, as the doc comment
/// of a key has them.
#[must_use]
pub fn explained_schemas() -> BTreeMap<&'static str, Schema> {
    BTreeMap::from([
        ("catalogue", schema_for!(CatalogueRecord)),
        ("materials", schema_for!(MaterialRecord)),
        ("conductors", schema_for!(ConductorRecord)),
        ("parts", schema_for!(PartRecord)),
        ("fittings", schema_for!(FittingRecord)),
        ("notices", schema_for!(NoticeRecord)),
        ("holders", schema_for!(HolderRecord)),
        ("installed", schema_for!(InstalledRecord)),
        ("procedures", schema_for!(ProcedureRecord)),
    ])
}
