//! JSON Schemas of all kinds of record, for editors.

use super::kinds::{
    CatalogueRecord, ConductorRecord, FittingRecord, HolderRecord, MaterialRecord, NoticeRecord, PartRecord,
    ProcedureRecord,
};
use schemars::{Schema, schema_for};
use std::collections::BTreeMap;

/// The JSON Schema of each kind of record, by the folder it lies in; `catalogue` is that of
/// `catalogue.yaml`.
///
/// ```
/// let schemas = fittingcards::records::schemas();
/// let part = schemas["parts"].as_value();
/// assert_eq!(part["required"], serde_json::json!(["number", "name", "role", "material"]));
/// assert_eq!(part["additionalProperties"], false);
/// ```
#[must_use]
pub fn schemas() -> BTreeMap<&'static str, Schema> {
    BTreeMap::from([
        ("catalogue", schema_for!(CatalogueRecord)),
        ("materials", schema_for!(MaterialRecord)),
        ("conductors", schema_for!(ConductorRecord)),
        ("parts", schema_for!(PartRecord)),
        ("fittings", schema_for!(FittingRecord)),
        ("notices", schema_for!(NoticeRecord)),
        ("holders", schema_for!(HolderRecord)),
        ("procedures", schema_for!(ProcedureRecord)),
    ])
}
