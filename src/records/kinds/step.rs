//! A step as written: a text alone, or a text with the picture that belongs to it.

use crate::records::field::{Read, Reader};
use crate::records::node::{Content, Node};
use crate::records::record::record;
use crate::records::{AssemblyStage, Field, Name, Worded};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use std::borrow::Cow;

/// How many steps a card can carry.
pub const MOST_STEPS: usize = 7;

/// A step: its text alone, or with the stage that it belongs to.
#[derive(Debug, Clone)]
pub struct StepRecord {
    /// What to do.
    pub text: Option<Field<Worded<Name>>>,
    /// How far the fitting is together then.
    pub stage: Option<Field<AssemblyStage>>,
}

record! {
    /// A step with its stage.
    StagedStep ("a step") {
        /// What to do, in one short line.
        /// Example: `"Seat cone {mark}."`
        text: Worded<Name>, Required;
        /// How far the fitting is together when the step is done: the booklet shows the step with the picture of this
        /// stage. No card prints it.
        /// Default: the stage of the step before; of the first step, `apart`
        /// Example: `entered`
        stage: AssemblyStage, Optional;
    }
}

impl Read for StepRecord {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        if matches!(node.content, Content::Map(_)) {
            let StagedStep { text, stage } = Read::read(node, reader)?;
            return Some(Self { text, stage });
        }
        Some(Self { text: Some(reader.here(node)?), stage: None })
    }
}

impl JsonSchema for StepRecord {
    fn schema_name() -> Cow<'static, str> {
        "StepRecord".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "anyOf": [
            generator.subschema_for::<Worded<Name>>(),
            generator.subschema_for::<StagedStep>(),
        ] })
    }
}
