//! Kit tags: one-sided, on as many tags as the parts of a fitting need.

use super::compose::{self, Sitting, Trouble};
use super::drawings::Drawings;
use super::face::{Side, Tag, Turn};
use super::make::{self, About, Input};
use super::preflight::{self, Held};
use super::room::{self, Fitted};
use super::values;
use crate::catalogue::{CardFormat, CardSize, Orientation};
use crate::diagnostics::{Finding, Findings};
use crate::facts::{TagFacts, TagPart};
use crate::layouts::Values;
use crate::register::Standing;
use serde_json::{Value, json};

/// Size of a kit tag: A7 (ISO 216), lying, so that a part's texts stand side by side.
pub const TAG: CardFormat = CardFormat { size: CardSize::A7, orientation: Orientation::Landscape };

/// The layout of every tag.
const LAYOUT: &str = "cards/tag.svg";

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
    values: Values,
    fitted: Fitted,
}

/// The tags that the parts of a fitting need: one where all fit at the smallest type of their classes, else
/// as few as hold an equal number of parts each.
///
/// # Errors
/// Where the layout fails, or one part alone does not fit beside the head that each tag carries.
#[allow(clippy::result_large_err, reason = "a finding is what stops the run")]
pub fn plan_tags(input: Input<'_>, facts: &TagFacts, standing: &Standing) -> Result<Vec<TagPlan>, Finding> {
    let kit = Kit { input, facts, values: head(input, facts, standing) };
    let parts = facts.parts.len();
    let mut in_each = parts.max(1);
    loop {
        match kit.spread(in_each) {
            Ok(plans) => return Ok(plans),
            Err(Spread { trouble: Trouble::TooFull { .. }, .. }) if in_each > 1 => {
                let tags = parts.div_ceil(in_each - 1);
                in_each = parts.div_ceil(tags);
            }
            Err(Spread { turn, trouble }) => {
                return Err(found(input, &facts.number, turn, trouble));
            }
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
        let mut findings = Findings::new();
        let drawings = Drawings::of(input, &self.number);
        let sitting = sitting(&self.values, &drawings);
        let face = match compose::drawn(make::frame(input, TAG), sitting, &self.fitted) {
            Ok(face) => face,
            Err(trouble) => {
                findings.push(found(input, &self.number, self.turn, trouble));
                return (None, findings);
            }
        };
        let tag = Tag { number: self.number.clone(), title: self.title.clone(), turn: self.turn, face };
        let held = Held {
            smallest_type: input.catalogue.settings.limits.smallest_type,
            stamps: &self.stamps,
            place: &make::place(input, &self.number, ""),
            fonts: input.fonts,
        };
        findings.extend(preflight::tag(&tag, held));
        (Some(tag), findings)
    }
}

/// What the tags of a fitting are made from.
struct Kit<'a> {
    input: Input<'a>,
    facts: &'a TagFacts,
    /// What every tag of it is filled with.
    values: Values,
}

/// Why parts can't be spread over tags in this way.
struct Spread {
    turn: Turn,
    trouble: Trouble,
}

impl Kit<'_> {
    /// Tags with so many parts on each.
    fn spread(&self, in_each: usize) -> Result<Vec<TagPlan>, Spread> {
        let of = self.facts.parts.len().div_ceil(in_each);
        let tags = self.facts.parts.chunks(in_each).zip(1..);
        tags.map(|(parts, number)| {
            let turn = Turn { number, of };
            self.plan(parts, turn).map_err(|trouble| Spread { turn, trouble })
        })
        .collect()
    }

    fn plan(&self, parts: &[TagPart], turn: Turn) -> Result<TagPlan, Trouble> {
        let listed: Vec<Value> = parts.iter().map(part).collect();
        let values = self
            .values
            .clone()
            .with("parts", listed.into())
            .with("turn", values::prefixed("tag ", &turn.words()).into());
        let drawings = Drawings::of(self.input, &self.facts.number);
        let fitted = room::fit(make::frame(self.input, TAG), sitting(&values, &drawings))?;
        let (number, title) = (self.facts.number.clone(), self.facts.name.clone());
        let stamps = self.facts.gripping_stamps.clone();
        Ok(TagPlan { number, title, turn, stamps, values, fitted })
    }
}

fn sitting<'a>(values: &'a Values, drawings: &'a Drawings<'a>) -> Sitting<'a> {
    Sitting { side: Side::Front, layout: LAYOUT, values, drawings }
}

fn found(input: Input<'_>, number: &str, turn: Turn, trouble: Trouble) -> Finding {
    let about = About { input, number, called: &turn.called(number) };
    make::found("tag-too-full", SHORTEN, about, trouble)
}

/// What every tag of a fitting carries.
fn head(input: Input<'_>, facts: &TagFacts, standing: &Standing) -> Values {
    let settings = &input.catalogue.settings;
    let values = json!({
        "number": facts.number, "title": facts.name, "status": facts.status_words,
        "conductors": facts.conductors.join(" and "), "mark": facts.mark.as_ref().map(values::mark),
        "stamps": facts.gripping_stamps.iter().map(|stamp| json!({ "t": values::whole(stamp) })).collect::<Vec<_>>(),
        "pieces": pieces(&facts.parts), "caution": facts.caution, "owner": settings.owner,
        "foot": values::foot(standing, settings),
    });
    values::object(values).into()
}

/// How many pieces a whole kit has, so that it can be counted.
fn pieces(parts: &[TagPart]) -> String {
    match parts.iter().map(|part| u64::from(part.quantity)).sum() {
        1 => "1\u{a0}piece in all".to_owned(),
        count => format!("{count}\u{a0}pieces in all"),
    }
}

fn part(facts: &TagPart) -> Value {
    json!({
        "item": format!("item {}", facts.item), "field": format!("parts.{}", facts.item - 1),
        "quantity": format!("{}\u{a0}×", facts.quantity), "number": facts.number, "name": facts.name,
        "role": facts.role, "made": values::joined(&[&facts.drawing, &facts.material], " · "),
        "stamp": values::whole(&facts.stamp), "gripping": facts.gripping, "status": facts.status_words,
    })
}
