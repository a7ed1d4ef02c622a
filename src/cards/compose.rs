//! One face: its layout filled as loosely as it fits, its drawing given the room that is left over.

use super::drawings::Drawings;
use super::face::{Block, BlockKind, Face, Side};
use super::plan::{self, Placed, Plan};
use super::room::{Fitted, SLACK, Setting, fit};
use super::type_class::Fit;
use crate::catalogue::CardFormat;
use crate::diagnostics::{FilePath, Finding, Place};
use crate::layouts::{Layouts, Values};
use crate::sketch::{Drawing, number};
use crate::typeset::Fonts;
use crate::units::Length;
use serde_json::{Value, json};
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
    pub values: &'a Values,
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

impl From<Box<Finding>> for Trouble {
    fn from(finding: Box<Finding>) -> Self {
        Self::Layout(finding)
    }
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
    drawn(frame, sitting, &fitted)
}

/// Draws a face that has been fitted.
///
/// # Errors
/// Where the layout fails, or draws what can't be drawn.
pub(super) fn drawn(frame: Frame<'_>, sitting: Sitting<'_>, fitted: &Fitted) -> Result<Face, Trouble> {
    let Fitted { setting, plan, elastic } = fitted;
    let Some(roomy) = plan.elastic() else {
        let placed = aired(plan, setting.fit, 0.0);
        return draw(frame, sitting, plan, &placed);
    };
    let room = (Length::from_mm(roomy.width), Length::from_mm(*elastic));
    let drawing = sitting.drawings.draw(&roomy.drawing, room.0, room.1);
    let height = drawing.as_ref().map_or(0.0, |drawing| drawing.height.mm());
    let plan = fill(frame, sitting, *setting, drawing.as_ref())?;
    let placed = aired(&plan, setting.fit, height);
    draw(frame, sitting, &plan, &placed)
}

/// A layout filled and read.
pub(super) fn fill(
    frame: Frame<'_>,
    sitting: Sitting<'_>,
    setting: Setting,
    drawing: Option<&Drawing>,
) -> Result<Plan, Trouble> {
    let Setting { fit, form, share } = setting;
    let (width, height) = frame.format.cut();
    let tightness = json!({ "close": fit.close, "shrink": fit.shrink, "smallest_mm": fit.smallest.mm() });
    let values = sitting
        .values
        .clone()
        .with("fit", tightness)
        .with("cut", json!({ "width": width.mm(), "height": height.mm() }))
        .with("form", form.into())
        .with("share", share.into())
        .with("bleed", frame.bleed.mm().into())
        .with("roomy", drawing.map_or_else(no_drawing, drawing_values));
    Ok(plan::read(sitting.layout, &frame.layouts.fill_ready(sitting.layout, &values)?)?)
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
    let fits = |air: f64| plan.placed(fit, elastic, air).excess <= 0.0;
    let (mut air, mut step) = (0.0, MOST_AIR);
    while step > SLACK / 4.0 {
        if air + step <= MOST_AIR && fits(air + step) {
            air += step;
        }
        step /= 2.0;
    }
    plan.placed(fit, elastic, air)
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
        // Only the library that draws here needs its clusters shifted: see `typeset::Run::shifts`.
        let drawn = body.replace(" data-shifts=", " dx=");
        let source = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\">{drawn}</svg>"
        );
        let tree = usvg::Tree::from_str(&source, &options)
            .map_err(|error| unsound(sitting.layout, &block.name, &error))?;
        if block.kind == BlockKind::Drawing && empty(tree.root()) {
            continue;
        }
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

/// Whether a drawing shows nothing: its room was too small for it.
fn empty(group: &usvg::Group) -> bool {
    group.children().iter().all(|node| matches!(node, usvg::Node::Group(group) if empty(group)))
}

fn unsound(layout: &str, name: &str, error: &usvg::Error) -> Finding {
    let place = Place::whole(FilePath::layouts(layout));
    Finding::error("layout-drawing", place, format!("the block {name} can't be drawn: {error}"))
}
