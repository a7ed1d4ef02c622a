//! One face: its layout filled as loosely as it fits, its drawing given the room that is left over.

use super::drawings::Drawings;
use super::face::{Block, Face, Side};
use super::plan::{self, Placed, Plan};
use super::type_class::Fit;
use crate::catalogue::CardFormat;
use crate::diagnostics::{FilePath, Finding, Place};
use crate::layouts::Layouts;
use crate::sketch::{Drawing, number};
use crate::typeset::Fonts;
use crate::units::Length;
use serde_json::{Map, Value, json};
use std::sync::Arc;

/// What every face of a run has in common.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame<'a> {
    pub layouts: &'a Layouts,
    pub fonts: &'a Fonts,
    pub format: CardFormat,
    pub bleed: Length,
    pub smallest: Length,
}

/// What one face is made from.
#[derive(Clone, Copy)]
pub(super) struct Sitting<'a> {
    pub side: Side,
    /// The layout's path.
    pub layout: &'a str,
    /// What the layout is filled with, beside the fit and the drawing in the room left over.
    pub values: &'a Map<String, Value>,
    pub drawings: &'a Drawings<'a>,
}

/// Why a face can't be made.
#[derive(Debug)]
pub(super) enum Trouble {
    /// The layout fails.
    Layout(Box<Finding>),
    /// Not everything fits at the smallest type of its class.
    TooFull { field: String, excess: String, said: String },
}

impl From<Finding> for Trouble {
    fn from(finding: Finding) -> Self {
        Self::Layout(Box::new(finding))
    }
}

/// Makes a face.
///
/// # Errors
/// Where the layout fails, or where the texts don't fit at the smallest type of their classes.
pub(super) fn face(frame: Frame<'_>, sitting: Sitting<'_>) -> Result<Face, Trouble> {
    let fitted = fit(frame, sitting)?;
    let Some(elastic) = fitted.plan.elastic().cloned() else {
        let placed = aired(&fitted.plan, fitted.fit, 0.0);
        return draw(frame, sitting, &fitted.plan, &placed);
    };
    let room = (Length::from_mm(elastic.width), Length::from_mm(fitted.elastic));
    let drawing = sitting.drawings.draw(&elastic.drawing, room.0, room.1);
    let height = drawing.as_ref().map_or(0.0, |drawing| drawing.height.mm());
    let plan = fill(frame, sitting, fitted.fit, drawing.as_ref())?;
    let placed = aired(&plan, fitted.fit, height);
    draw(frame, sitting, &plan, &placed)
}

/// A fit that holds everything.
struct Fitted {
    fit: Fit,
    plan: Plan,
    elastic: f64,
}

/// How much of the way from the least to the wanted height a drawing is given, in the order tried.
const SHARES: [f64; 5] = [1.0, 0.75, 0.5, 0.25, 0.0];

/// The loosest fit that has room for the drawing as large as wanted; where none has, texts close up and
/// shrink before the drawing does.
fn fit(frame: Frame<'_>, sitting: Sitting<'_>) -> Result<Fitted, Trouble> {
    let mut plans = Vec::new();
    for fit in Fit::all(frame.smallest) {
        let plan = fill(frame, sitting, fit, None)?;
        if let Some(elastic) = room(&plan, fit, SHARES[0]) {
            return Ok(Fitted { fit, plan, elastic });
        }
        plans.push((fit, plan));
    }
    let loosest = |share| plans.iter().find_map(|(fit, plan)| Some((*fit, plan, room(plan, *fit, share)?)));
    match (SHARES.into_iter().find_map(loosest), plans.last()) {
        (Some((fit, plan, elastic)), _) => Ok(Fitted { fit, plan: plan.clone(), elastic }),
        (None, tightest) => Err(tightest.map_or_else(nothing_tried, |(fit, plan)| too_full(*fit, plan))),
    }
}

/// The height of the elastic drawing where everything fits.
fn room(plan: &Plan, fit: Fit, share: f64) -> Option<f64> {
    if !plan.too_long.is_empty() {
        return None;
    }
    let Some(elastic) = plan.elastic() else {
        return (plan.placed(fit, 0.0, 0.0).excess <= SLACK).then_some(0.0);
    };
    let least = elastic.least + share * (elastic.wanted - elastic.least);
    if plan.placed(fit, least, 0.0).excess > SLACK {
        return None;
    }
    let over = plan.placed(fit, elastic.most, 0.0).excess.max(0.0);
    let largest = (elastic.most - over).max(least);
    Some(largest)
}

/// Lengths are rounded to a thousandth; sums of them may be off by a few.
const SLACK: f64 = 0.01;

fn too_full(fit: Fit, plan: &Plan) -> Trouble {
    if let Some((text, over)) = plan.too_long.first() {
        let block = plan.blocks.iter().find(|block| block.body.contains("data-over"));
        let field = block.map_or_else(String::new, |block| block.field.clone());
        let excess = tenths(*over);
        let said = format!("“{text}” is {excess} mm too long for its line");
        return Trouble::TooFull { field, excess, said };
    }
    let least = plan.elastic().map_or(0.0, |elastic| elastic.least);
    let excess = tenths(plan.placed(fit, least, 0.0).excess);
    let flowing = plan.blocks.iter().filter(|block| block.elastic.is_none());
    let longest = flowing.max_by(|a, b| a.height.total_cmp(&b.height));
    let (field, height) = longest.map_or((String::new(), 0.0), |block| (block.field.clone(), block.height));
    let said = format!(
        "its texts are {excess} mm too long together; the longest, {field}, takes {} mm",
        tenths(height)
    );
    Trouble::TooFull { field, excess, said }
}

fn nothing_tried() -> Trouble {
    Trouble::TooFull { field: String::new(), excess: "0".to_owned(), said: "no fit was tried".to_owned() }
}

/// Rounded up, so that nothing is said to be less than it is.
fn tenths(mm: f64) -> String {
    format!("{:.1}", (mm * 10.0).ceil() / 10.0)
}

fn fill(
    frame: Frame<'_>,
    sitting: Sitting<'_>,
    fit: Fit,
    drawing: Option<&Drawing>,
) -> Result<Plan, Trouble> {
    let mut values = sitting.values.clone();
    let (width, height) = frame.format.cut();
    values.insert(
        "fit".into(),
        json!({ "close": fit.close, "shrink": fit.shrink, "smallest_mm": fit.smallest.mm() }),
    );
    values.insert("cut".into(), json!({ "width": width.mm(), "height": height.mm() }));
    values.insert("bleed".into(), frame.bleed.mm().into());
    values.insert("roomy".into(), drawing.map_or_else(no_drawing, drawing_values));
    Ok(plan::read(sitting.layout, &frame.layouts.fill(sitting.layout, &Value::Object(values))?)?)
}

/// A drawing as layouts see it.
pub(super) fn drawing_values(drawing: &Drawing) -> Value {
    json!({
        "svg": drawing.body, "width": drawing.width.mm(), "height": drawing.height.mm(),
        "scale": drawing.scale, "title": drawing.title, "description": drawing.description,
    })
}

fn no_drawing() -> Value {
    json!({ "svg": "", "width": 0, "height": 0, "scale": "", "title": "drawing", "description": "drawing" })
}

/// Most that a gap widens where there is room to spare.
const MOST_AIR: f64 = 3.0;

/// Spreads what is left over between the blocks, so that a face with little on it is calm.
fn aired(plan: &Plan, fit: Fit, elastic: f64) -> Placed {
    let tight = plan.placed(fit, elastic, 0.0);
    let gaps = u32::try_from(plan.gaps()).unwrap_or(u32::MAX);
    if gaps == 0 || tight.excess >= 0.0 {
        return tight;
    }
    let air = (-tight.excess / f64::from(gaps)).min(MOST_AIR);
    let aired = plan.placed(fit, elastic, air);
    if aired.excess <= SLACK { aired } else { tight }
}

fn draw(frame: Frame<'_>, sitting: Sitting<'_>, plan: &Plan, placed: &Placed) -> Result<Face, Trouble> {
    let (width, height) = frame.format.cut();
    let whole = (width + frame.bleed * 2.0, height + frame.bleed * 2.0);
    let options = frame.fonts.options();
    let mut blocks = Vec::with_capacity(plan.blocks.len());
    for (block, top) in plan.blocks.iter().zip(&placed.tops) {
        let shift = format!("translate({} {})", number(frame.bleed.mm()), number(frame.bleed.mm() + top));
        let body = format!("{}<g transform=\"{shift}\"{}>{}</g>", plan.shared, block.looks, block.body);
        let (width, height) = (number(whole.0.mm()), number(whole.1.mm()));
        let source = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\">{body}</svg>"
        );
        let tree = usvg::Tree::from_str(&source, &options)
            .map_err(|error| unsound(sitting.layout, &block.name, &error))?;
        blocks.push(Block {
            name: block.name.clone(),
            kind: block.kind,
            alternative: block.alternative.clone(),
            source: body.into(),
            tree: Arc::new(tree),
        });
    }
    Ok(Face { side: sitting.side, cut: (width, height), bleed: frame.bleed, blocks })
}

fn unsound(layout: &str, name: &str, error: &usvg::Error) -> Finding {
    let place = Place::whole(FilePath::layouts(layout));
    Finding::error("layout-drawing", place, format!("the block {name} can't be drawn: {error}"))
}
