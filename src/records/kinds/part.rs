//! A part as written.

use crate::records::field::{Read, Reader, listed};
use crate::records::kinds::geometry::GeometryRecord;
use crate::records::node::Node;
use crate::records::record::record;
use crate::records::schema::taking;
use crate::records::{
    ColourWord, Count, Day, Field, Identifier, Kn, Name, Reuse, Role, Size, StampPlace, Status, Text, Truth,
};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use std::borrow::Cow;

record! {
    /// One piece of a fitting.
    PartRecord ("a part") {
        /// Its part number.
        /// Example: `ST-4103`
        number: Identifier, Required;
        /// Its name.
        /// Example: `Gripping cone, 14.0 bronze`
        name: Name, Required;
        /// What it does in its fitting.
        /// Example: `cone`
        role: Role, Required;
        /// Id of its material.
        /// Example: `bronze-soft`
        material: Name, Required;
        /// Drawing number with revision.
        /// Example: `ST-D-4103/B`
        drawing: Text, Optional;
        /// The characters in its metal.
        /// Example: `B14.0`
        stamp: Text, Optional;
        /// Where the stamp stands on a gripping part. Drawings show it; where nothing is stated, they do not.
        /// Example: `thick-end`
        stamp_on: StampPlace, Optional;
        /// The paint, text and notches on it.
        /// Example: `{ colour: VT, text: V1, notches: 1 }`
        mark: MarkRecord, Optional;
        /// Whether it may be used again.
        /// Example: `never`
        reuse: Reuse, Optional;
        /// Whether it may be used at all. A part can't be `superseded`: its fittings are.
        /// Default: `current`
        /// Example: `on-hold`
        status: PartStatus, Optional;
        /// Parts of the same role and the same interface go into the same place.
        /// Example: `taper-40`
        interface: Text, Optional;
        /// Conductors that it was tested on.
        /// Example: `[{ conductor: messenger-120, body: ST-4101, holding_load_kN: 64.5, report: T-311 }]`
        proven_on: Vec<Field<ProofRecord>>, Optional;
        /// Its measurements, by exactly one of its keys.
        /// Example: `{ thimble: { groove_mm: 9.0, inside_width_mm: 25 } }`
        geometry: GeometryRecord, Optional;
    }
}

record! {
    /// Paint, text and notches that tell look-alikes apart.
    MarkRecord ("a mark") {
        /// The paint, by its letter code of IEC 60757.
        /// Example: `VT`
        colour: ColourWord, Required;
        /// The text on it.
        /// Example: `V1`
        text: Text, Optional;
        /// Number of notches.
        /// Default: `0`
        /// Example: `1`
        notches: Count<0, 12>, Optional;
        /// Whether it can be seen on the assembled fitting.
        /// Default: it is taken as not seen
        /// Example: `true`
        seen_after_assembly: Truth, Optional;
    }
}

record! {
    /// A test of a part on a conductor.
    ProofRecord ("a proof") {
        /// Id of the conductor that it was tested on.
        /// Example: `messenger-120`
        conductor: Name, Required;
        /// Number of the body that it was tested in.
        /// Example: `ST-4101`
        body: Name, Optional;
        /// The load that it held.
        /// Example: `64.5`
        holding_load as "holding_load_kN": Size<Kn, 10_000>, Optional;
        /// The report of the test.
        /// Example: `T-311`
        report: Text, Optional;
        /// When it was tested.
        /// Example: `2026-05-02`
        date: Day, Optional;
    }
}

/// Whether a part may be used. `superseded` is read too, to be refused with what to do instead.
#[derive(Debug, Clone, Copy)]
pub struct PartStatus(pub Status);

impl PartStatus {
    /// What a part may be.
    pub const ALL: [Status; 3] = [Status::Current, Status::OnHold, Status::Withdrawn];
}

impl Read for PartStatus {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        Read::read(node, reader).map(Self)
    }
}

impl JsonSchema for PartStatus {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "PartStatus".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let words = Self::ALL.map(Status::word);
        taking(json_schema!({ "enum": words }), format!("one of {}", listed(&words)))
    }
}
