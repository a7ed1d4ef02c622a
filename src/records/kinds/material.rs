//! A material as written.

use crate::records::field::{LONGEST_LIST, Read, Reader};
use crate::records::node::{Content, Node};
use crate::records::record::record;
use crate::records::schema::list;
use crate::records::{
    Field, Identifier, KgPerM3, MagneticWord, MaterialGroupWord, Mm, NPerMm2, Name, NohmM, PerKelvin, Plain,
    Prose, Size, Text,
};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use std::borrow::Cow;

record! {
    /// A material.
    MaterialRecord ("a material") {
        /// The id that records name the material by.
        /// Example: `bronze-x`
        id: Identifier, Required;
        /// Its name in words.
        /// Example: `Hard bronze`
        name: Name, Required;
        /// The family that it belongs to: it decides tone, hatch and which metals may touch.
        /// Example: `bronze`
        group: MaterialGroupWord, Required;
        /// Mass per volume.
        /// Example: `8900`
        density as "density_kg_per_m3": Size<KgPerM3, 25_000>, Optional;
        /// Resistivity at 20 °C.
        /// Example: `27.7`
        resistivity as "resistivity_20c_nohm_m": Size<NohmM, 100_000>, Optional;
        /// How much the resistance grows by with each kelvin over 20 °C, as a part of that at 20 °C.
        /// Example: `0.00393`
        temperature_coefficient as "temperature_coefficient_per_k": Size<PerKelvin, 1>, Optional;
        /// Tensile strength of the single wire: one number, or rows by wire diameter.
        /// Example: `[{ up_to_mm: 3.0, strength: 589 }, { strength: 569 }]`
        strength as "strength_N_per_mm2": StrengthRecord, Optional;
        /// What stranding leaves of that strength, as a factor.
        /// Default: `0.95`
        /// Example: `0.9`
        strand_efficiency: Size<Plain, 1>, Optional;
        /// Stress at 1 % elongation, where the material is the core of a composite: one number, or rows by wire
        /// diameter.
        /// Example: `1170`
        strength_as_core as "strength_as_core_N_per_mm2": StrengthRecord, Optional;
        /// Whether a magnet holds to it.
        /// Example: `slight`
        magnetic: MagneticWord, Optional;
        /// Brinell hardness.
        /// Example: `95`
        hardness_hb: Size<Plain, 1000>, Optional;
        /// What must be known before anybody works on it.
        /// Example: `No filing, grinding or heating.`
        caution: Prose, Optional;
        /// Where the figures come from.
        /// Example: `{ standard: DIN 48200-2, edition: "1981" }`
        source: SourceRecord, Optional;
    }
}

record! {
    /// Where figures come from.
    SourceRecord ("a source") {
        /// The standard or document.
        /// Example: `DIN 48201-2`
        standard: Text, Optional;
        /// Its edition or year.
        /// Example: `"1981"`
        edition: Text, Optional;
        /// The table or clause.
        /// Example: `Table 2`
        table: Text, Optional;
        /// Anything else that must be known about the source.
        /// Example: `from memory`
        note: Text, Optional;
    }
}

/// Strength of a wire, the same for all or by its diameter.
#[derive(Debug, Clone)]
pub enum StrengthRecord {
    /// One value whatever the diameter.
    Constant(Size<NPerMm2, 5000>),
    /// Rows by diameter.
    Rows(Vec<Field<StrengthStepRecord>>),
}

record! {
    /// One row of a strength table.
    StrengthStepRecord ("a row of strength") {
        /// The row holds for wires up to and including this diameter. Only the last row may leave it out.
        /// Default: any diameter
        /// Example: `2.25`
        up_to as "up_to_mm": Size<Mm, 20>, Optional;
        /// Strength of a wire of that diameter, in N/mm².
        /// Example: `422`
        strength: Size<NPerMm2, 5000>, Required;
    }
}

impl Read for StrengthRecord {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        match &node.content {
            Content::List(_) => Read::read(node, reader).map(Self::Rows),
            _ => Read::read(node, reader).map(Self::Constant),
        }
    }
}

impl JsonSchema for StrengthRecord {
    fn schema_name() -> Cow<'static, str> {
        "StrengthRecord".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "anyOf": [
            generator.subschema_for::<Size<NPerMm2, 5000>>(),
            list(generator.subschema_for::<Vec<StrengthStepRecord>>(), &(1..=LONGEST_LIST)),
        ] })
    }
}
