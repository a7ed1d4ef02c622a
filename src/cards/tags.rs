//! Kit tags: one-sided, on as many tags as the parts of a fitting need.

use super::compose::{FaceJob, FittedFace, Format};
use super::drawings::Drawings;
use super::face::{Side, Tag, Turn};
use super::input::Input;
use super::make::{self, About};
use super::preflight;
use super::too_full::FaceError;
use super::values;
use crate::catalogue::{CardFormat, CardSize, Orientation};
use crate::diagnostics::Findings;
use crate::facts::{TagFacts, TagPart};
use crate::register::Standing;
use serde_json::{Map, Value};
use std::sync::Arc;

/// Size of a kit tag: A7 (ISO 216), lying, so that a part's texts stand side by side.
pub const TAG: CardFormat = CardFormat { size: CardSize::A7, orientation: Orientation::Landscape };

/// What the style and the layout of every tag are called.
const NAME: &str = "tag";

/// What can be done about a tag that is too full.
const SHORTEN: &str = "shorten names of the fitting, its conductors or this part, or the catalogue's caution";

/// A tag that is known to fit, and not drawn yet.
#[derive(Debug, Clone)]
pub struct TagPlan {
    number: String,
    title: String,
    turn: Turn,
    /// Stamps of the gripping parts.
    stamps: Vec<String>,
    fitted: FittedFace,
}

/// The tags that the parts of a fitting need: one where all fit at the least type of their classes, else as few as
/// hold an equal number of parts each.
///
/// # Errors
/// Where the layout fails, or one part alone does not fit beside the head that each tag carries.
pub fn plan_tags(input: Input<'_>, facts: &TagFacts, standing: &Standing) -> Result<Vec<TagPlan>, Findings> {
    let format = Format::of(input, TAG, Some(NAME));
    let mut head = values::of_tag(facts, standing, &input.catalogue.settings);
    head.extend(format.values());
    let kit = Kit { input, facts, format, head };
    let parts = facts.parts.len();
    let mut in_each = parts.max(1);
    loop {
        match kit.spread(in_each) {
            Ok(plans) => return Ok(plans),
            Err((_, FaceError::TooFull(_))) if in_each > 1 => {
                let tags = parts.div_ceil(in_each - 1);
                in_each = parts.div_ceil(tags);
            }
            Err((turn, error)) => return Err(found(input, &facts.number, turn, error)),
        }
    }
}

impl TagPlan {
    /// Which of the fitting's tags it is.
    #[must_use]
    pub fn turn(&self) -> Turn {
        self.turn
    }

    /// The tag, with what its preflight finds; none where it can't be drawn.
    #[must_use]
    pub fn draw(&self, input: Input<'_>) -> (Option<Tag>, Findings) {
        let format = Format::of(input, TAG, Some(NAME));
        let face = match job(input, &self.number, &format, Value::Null).draw(&self.fitted) {
            Ok(face) => face,
            Err(error) => return (None, found(input, &self.number, self.turn, error)),
        };
        let called = self.turn.called(&self.number);
        let about = About { input, number: &self.number, called: &called };
        let findings = preflight::face(&face, make::limits(input, about, Side::Front, &self.stamps));
        let tag = Tag { number: self.number.clone(), title: self.title.clone(), turn: self.turn, face };
        (Some(tag), findings)
    }
}

/// What the tags of a fitting are made from.
struct Kit<'a> {
    input: Input<'a>,
    facts: &'a TagFacts,
    format: Format<'a>,
    /// What every tag of it is filled with.
    head: Map<String, Value>,
}

impl Kit<'_> {
    /// Tags with so many parts on each; else which of them can't be made, and why.
    fn spread(&self, in_each: usize) -> Result<Vec<TagPlan>, (Turn, FaceError)> {
        let of = self.facts.parts.len().div_ceil(in_each);
        let tags = self.facts.parts.chunks(in_each).zip(1..);
        tags.map(|(parts, number)| {
            let turn = Turn { number, of };
            self.plan(parts, turn).map_err(|error| (turn, error))
        })
        .collect()
    }

    fn plan(&self, parts: &[TagPart], turn: Turn) -> Result<TagPlan, FaceError> {
        let mut values = self.head.clone();
        values.insert("parts".into(), parts.iter().map(values::tag_part).collect::<Vec<_>>().into());
        values.insert("turn".into(), values::prefixed("tag ", &turn.words()).into());
        let job = job(self.input, &self.facts.number, &self.format, Value::Object(values));
        let fitted = job.fit(&job.fill()?)?;
        let (number, title) = (self.facts.number.clone(), self.facts.name.clone());
        let stamps = self.facts.gripping_stamps.clone();
        Ok(TagPlan { number, title, turn, stamps, fitted })
    }
}

fn job<'a>(input: Input<'a>, number: &str, format: &Format<'a>, values: Value) -> FaceJob<'a> {
    FaceJob {
        format: format.clone(),
        side: Side::Front,
        layout: format.layout(NAME),
        values: Arc::new(values),
        drawings: Drawings::of(input, number),
        changed: Arc::default(),
    }
}

fn found(input: Input<'_>, number: &str, turn: Turn, error: FaceError) -> Findings {
    let about = About { input, number, called: &turn.called(number) };
    make::found("tag-too-full", SHORTEN, about, error)
}
