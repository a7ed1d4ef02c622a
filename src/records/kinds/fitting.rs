//! A fitting as written.

use crate::records::field::{LONGEST_LIST, Read, Reader};
use crate::records::kinds::part::MarkRecord;
use crate::records::kinds::step::MOST_STEPS;
use crate::records::node::{Content, Node};
use crate::records::record::record;
use crate::records::{
    CardKey, Count, Day, Family, Field, Identifier, InServiceWord, Kn, Mm, Name, Nm, Position, Prose, Size,
    SizeOrZero, StandOutFrom, Status, StepRecord, Text, Truth, Worded,
};
use crate::units::Range;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use std::borrow::Cow;

record! {
    /// An assembly of parts that ends, anchors or joins a conductor.
    FittingRecord ("a fitting") {
        /// Its number.
        /// Example: `ST-4100`
        number: Identifier, Required;
        /// Its name.
        /// Example: `Cone dead-end, messenger 120`
        name: Name, Required;
        /// How it works.
        /// Example: `cone-dead-end`
        family: Family, Required;
        /// Id of the conductor that it holds. A fitting has either this key or `conductors`.
        /// Example: `messenger-120`
        conductor: Name, Either;
        /// Ids of the two conductors of a joint; one id is as `conductor`. A fitting has either this key or `conductor`.
        /// Example: `[feeder-95, feeder-120]`
        conductors: Vec<Field<Name>>, Either, 1..=2;
        /// Its parts in item order: part numbers, or how many of which part.
        /// Example: `[ST-4101, { part: ST-4190, quantity: 4 }]`
        parts: Vec<Field<ItemRecord>>, Required, 1..=LONGEST_LIST;
        /// The mark of the fitting.
        /// Default: that of its gripping part
        /// Example: `{ colour: VT, text: V1, notches: 1 }`
        mark: MarkRecord, Optional;
        /// What must be readable on the assembled fitting.
        /// Example: `ST 41`
        stamp: Text, Optional;
        /// The stand-out that is measured on the closed fitting.
        /// Example: `{ seated_mm: { min: 3.0, max: 6.0 }, draw_in_max_mm: 2.0 }`
        stand_out: StandOutRecord, Optional;
        /// How far the conductor goes in.
        /// Example: `85`
        insertion as "insertion_mm": Size<Mm, 2000>, Optional;
        /// How much of the conductor sticks out behind.
        /// Example: `15`
        tail as "tail_mm": Size<Mm, 2000>, Optional;
        /// The load that it is proven to hold without slip. It is not what it may be used at.
        /// Example: `64.5`
        holding_load as "holding_load_kN": Size<Kn, 10_000>, Optional;
        /// The line tension that it may be used at.
        /// Example: `21`
        line_tension_max as "line_tension_max_kN": Size<Kn, 10_000>, Optional;
        /// What is tightened, and how.
        /// Default: that of its procedure
        /// Example: `[{ item: closing screw, torque_Nm: { min: 80, max: 90 } }]`
        tightening: Vec<Field<TighteningRecord>>, Optional;
        /// Id of the procedure that it takes from what its own record does not state.
        /// Example: `collet-41`
        procedure: Name, Optional;
        /// What a second person checks before it is closed.
        /// Default: that of its procedure
        /// Example: `A second person reads stamp {stamp}.`
        witness: Worded<Prose>, Optional;
        /// Assembly steps, at most seven short lines: texts, or texts with the stage that they belong to.
        /// Default: those of its procedure
        /// Example: `["Push the wire in: {insertion} inside, tail {tail}."]`
        steps: Vec<Field<StepRecord>>, Optional, 0..=MOST_STEPS;
        /// Whether a slip mark is painted on the conductor, where it goes in, once the fitting is closed.
        /// Default: that of its procedure, else as no: drawings show none
        /// Example: `true`
        slip_mark: Truth, Optional;
        /// What makes a fitting unfit for use.
        /// Default: that of its procedure
        /// Example: `[Stand-out outside its window]`
        reject_if: Vec<Field<Worded<Name>>>, Optional;
        /// What to do where a check fails.
        /// Default: that of its procedure, else the words of its family
        /// Example: `{ before_load: Open it and begin again. }`
        if_wrong: IfWrongRecord, Optional;
        /// Which keys its card has no need of, and why.
        /// Example: `{ keys: [tightening], because: pressed }`
        complete_without: CompleteWithoutRecord, Optional;
        /// Numbers of the notices that concern it.
        /// Example: `[N-2026-04]`
        notices: Vec<Field<Name>>, Optional;
        /// Whether it may be used.
        /// Default: `current`
        /// Example: `on-hold`
        status: Status, Optional;
        /// Number of the fitting that replaces it, with `status: superseded`.
        /// Example: `ST-4200`
        superseded_by: Name, Optional;
        /// What becomes of fittings that are already in the line.
        /// Example: `may-stay`
        in_service: InServiceWord, Optional;
        /// The day by which they are replaced, with `in_service: replace-by`.
        /// Example: `2027-01-31`
        in_service_date: Day, Optional;
    }
}

record! {
    /// The stand-out that is measured on a fitting; negative below the face.
    StandOutRecord ("a stand-out") {
        /// Where it is measured.
        /// Default: `wedge-end` where a wedge grips, else `cone-face`
        /// Example: `cone-face`
        from: StandOutFrom, Optional;
        /// Least and most after tightening. Negative is below the face.
        /// Example: `{ min: 3.0, max: 6.0 }`
        seated as "seated_mm": Range<Position<Mm, 500>>, Optional;
        /// Least and most after line tension has drawn the gripping part in.
        /// Example: `{ min: 1.5, max: 4.5 }`
        tensioned as "tensioned_mm": Range<Position<Mm, 500>>, Optional;
        /// The most that line tension may draw the gripping part in.
        /// Example: `2.0`
        draw_in_max as "draw_in_max_mm": SizeOrZero<Mm, 500>, Optional;
    }
}

record! {
    /// What a card has no need of.
    CompleteWithoutRecord ("what a card has no need of") {
        /// The keys that are left out on purpose.
        /// Example: `[tightening]`
        keys: Vec<Field<CardKey>>, Required;
        /// Why they are left out.
        /// Example: `pressed`
        because: Name, Required;
    }
}

record! {
    /// What a check that fails calls for.
    IfWrongRecord ("what a failed check calls for") {
        /// What to do before the line is tensioned.
        /// Default: that of its procedure, else the words of its family
        /// Example: `Open it and begin again.`
        before_load: Worded<Prose>, Optional;
        /// What to do under line tension.
        /// Default: that of its procedure, else the words of its family
        /// Example: `Keep clear. Take the tension off first.`
        under_load: Worded<Prose>, Optional;
    }
}

record! {
    /// One tightening.
    TighteningRecord ("a tightening") {
        /// What is tightened.
        /// Example: `closing screw`
        item: Name, Required;
        /// Its thread.
        /// Example: `M36x2`
        thread: Text, Optional;
        /// Size of the spanner.
        /// Example: `55`
        spanner as "spanner_mm": Size<Mm, 300>, Optional;
        /// Least and most torque.
        /// Example: `{ min: 80, max: 90 }`
        torque as "torque_Nm": Range<Size<Nm, 10_000>>, Optional;
        /// The force in the bolt that the torque is meant to give.
        /// Example: `28`
        preload as "preload_kN": Size<Kn, 10_000>, Optional;
        /// What is greased, in words.
        /// Example: `[thread, outside taper]`
        grease: Vec<Field<Name>>, Optional;
        /// How many times all bolts are tightened in turn.
        /// Example: `2`
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
        /// Example: `ST-4190`
        part: Name, Required;
        /// How many of it.
        /// Default: `1`
        /// Example: `4`
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
