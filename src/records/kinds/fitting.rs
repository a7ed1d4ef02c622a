//! A fitting as written.

use crate::records::field::{Read, Reader};
use crate::records::kinds::part::MarkRecord;
use crate::records::node::{Content, Node};
use crate::records::record::record;
use crate::records::{
    CardKey, Count, Day, Family, Field, Identifier, InServiceWord, Kn, Mm, Name, Nm, Position, Prose, Size,
    SizeOrZero, StandOutFrom, Status, Text, Worded,
};
use crate::units::Range;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use std::borrow::Cow;

record! {
    /// An assembly of parts that ends, anchors or joins a conductor.
    FittingRecord ("a fitting") {
        /// Its number.
        number: Identifier, Required;
        /// Its name.
        name: Name, Required;
        /// How it works.
        family: Family, Required;
        /// The conductor.
        conductor: Name, Optional;
        /// The two conductors of a joint.
        conductors: Vec<Field<Name>>, Optional;
        /// Parts in item order.
        parts: Vec<Field<ItemRecord>>, Required;
        /// Its mark; its gripping part's where absent.
        mark: MarkRecord, Optional;
        /// What must be readable on the assembled fitting.
        stamp: Text, Optional;
        /// Stand-out to be measured.
        stand_out: StandOutRecord, Optional;
        /// How far the conductor goes in.
        insertion as "insertion_mm": Size<Mm, 2000>, Optional;
        /// How much of it sticks out behind.
        tail as "tail_mm": Size<Mm, 2000>, Optional;
        /// Proven without slip.
        holding_load as "holding_load_kN": Size<Kn, 10_000>, Optional;
        /// What it may be used at.
        line_tension_max as "line_tension_max_kN": Size<Kn, 10_000>, Optional;
        /// What is tightened and how.
        tightening: Vec<Field<TighteningRecord>>, Optional;
        /// The procedure that it takes what it does not state from.
        procedure: Name, Optional;
        /// What a second person checks before it is closed.
        witness: Worded<Prose>, Optional;
        /// Assembly steps, at most seven.
        steps: Vec<Field<Worded<Name>>>, Optional;
        /// What makes it unfit.
        reject_if: Vec<Field<Worded<Name>>>, Optional;
        /// What a check that fails calls for; the family's words where absent.
        if_wrong: IfWrongRecord, Optional;
        /// What its card has no need of, and why.
        complete_without: CompleteWithoutRecord, Optional;
        /// Notices that concern it.
        notices: Vec<Field<Name>>, Optional;
        /// Whether it may be used.
        status: Status, Optional;
        /// What replaces it.
        superseded_by: Name, Optional;
        /// What becomes of fittings already in the line.
        in_service: InServiceWord, Optional;
        /// By when they are replaced.
        in_service_date: Day, Optional;
    }
}

record! {
    /// The stand-out that is measured on a fitting; negative below the face.
    StandOutRecord ("a stand-out") {
        /// Between what it is measured; the gripping part's own face or end where absent.
        from: StandOutFrom, Optional;
        /// Window after tightening.
        seated as "seated_mm": Range<Position<Mm, 500>>, Optional;
        /// Window after line tension has drawn the gripping part in.
        tensioned as "tensioned_mm": Range<Position<Mm, 500>>, Optional;
        /// The most that line tension may draw the gripping part in.
        draw_in_max as "draw_in_max_mm": SizeOrZero<Mm, 500>, Optional;
    }
}

record! {
    /// What a card has no need of.
    CompleteWithoutRecord ("what a card has no need of") {
        /// The record keys that are left out on purpose.
        keys: Vec<Field<CardKey>>, Required;
        /// Why.
        because: Name, Required;
    }
}

record! {
    /// What a check that fails calls for.
    IfWrongRecord ("what a failed check calls for") {
        /// Before the line is tensioned.
        before_load: Worded<Prose>, Optional;
        /// Under line tension.
        under_load: Worded<Prose>, Optional;
    }
}

record! {
    /// One tightening.
    TighteningRecord ("a tightening") {
        /// What is tightened.
        item: Name, Required;
        /// Its thread, such as M36x2.
        thread: Text, Optional;
        /// Spanner size.
        spanner as "spanner_mm": Size<Mm, 300>, Optional;
        /// Torque.
        torque as "torque_Nm": Range<Size<Nm, 10_000>>, Optional;
        /// Preload that the torque is meant to give.
        preload as "preload_kN": Size<Kn, 10_000>, Optional;
        /// What is greased, in words.
        grease: Vec<Field<Name>>, Optional;
        /// How many times round.
        passes: Count<1, 20>, Optional;
    }
}

/// A part in a fitting: its number alone, or with how many of it.
#[derive(Debug, Clone)]
pub struct ItemRecord {
    /// The part's number.
    pub part: Option<Field<Name>>,
    /// How many of it; one where absent.
    pub quantity: Option<Field<Count<1, 100>>>,
}

record! {
    /// A part with how many of it.
    CountedPart ("a part of a fitting") {
        /// The part's number.
        part: Name, Required;
        /// How many of it.
        quantity: Count<1, 100>, Optional;
    }
}

impl Read for ItemRecord {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        if matches!(node.content, Content::Map(_)) {
            let CountedPart { part, quantity } = Read::read(node, reader)?;
            return Some(Self { part, quantity });
        }
        Some(Self { part: Some(reader.here(node)?), quantity: None })
    }
}

impl JsonSchema for ItemRecord {
    fn schema_name() -> Cow<'static, str> {
        "ItemRecord".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "anyOf": [
            generator.subschema_for::<Name>(),
            generator.subschema_for::<CountedPart>(),
        ] })
    }
}
