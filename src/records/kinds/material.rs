//! A material as written.

use crate::records::field::{Read, Reader};
use crate::records::node::{Content, Node};
use crate::records::record::record;
use crate::records::{
    Field, Identifier, KgPerM3, MagneticWord, MaterialGroupWord, Mm, NPerMm2, Name, NohmM, PerKelvin, Plain,
    Prose, Size, Text,
};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use std::borrow::Cow;

record! {
    /// A material.
    MaterialRecord ("a material") {
        /// The id that records use.
        id: Identifier, Required;
        /// Its name in words.
        name: Name, Required;
        /// The family it belongs to: tone, hatch, galvanic pairs.
        group: MaterialGroupWord, Required;
        /// Mass per volume.
        density as "density_kg_per_m3": Size<KgPerM3, 25_000>, Optional;
        /// Resistivity at 20 °C.
        resistivity as "resistivity_20c_nohm_m": Size<NohmM, 100_000>, Optional;
        /// Temperature coefficient of resistance at 20 °C.
        temperature_coefficient as "temperature_coefficient_per_k": Size<PerKelvin, 1>, Optional;
        /// Tensile strength of the single wire: a number, or rows by wire diameter.
        strength as "strength_N_per_mm2": StrengthRecord, Optional;
        /// What stranding leaves of that strength, as a factor.
        strand_efficiency: Size<Plain, 1>, Optional;
        /// Stress at 1 % elongation, for the core of a composite: a number, or rows by wire diameter.
        strength_as_core as "strength_as_core_N_per_mm2": StrengthRecord, Optional;
        /// How a magnet takes to it.
        magnetic: MagneticWord, Optional;
        /// Brinell hardness.
        hardness_hb: Size<Plain, 1000>, Optional;
        /// What must be known before it is worked on.
        caution: Prose, Optional;
        /// Where the figures come from.
        source: SourceRecord, Optional;
    }
}

record! {
    /// Where figures come from.
    SourceRecord ("a source") {
        /// The standard or document.
        standard: Text, Optional;
        /// Its edition or year.
        edition: Text, Optional;
        /// The table or clause.
        table: Text, Optional;
        /// Anything else.
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
        /// The row holds up to and including this wire diameter; the last row may be open.
        up_to as "up_to_mm": Size<Mm, 20>, Optional;
        /// Strength of a wire in that range.
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
            generator.subschema_for::<Vec<StrengthStepRecord>>(),
        ] })
    }
}
