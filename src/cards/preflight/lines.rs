//! `line-too-thin`: a line that a printer breaks up or leaves out.
//!
//! Why: below about 0.13 mm laser printers drop parts of a line, and its tone fades on a copy.
//!
//! To put it right: give it the width of the lines beside it; where the layout scales it, count the scale in.

use super::Sheet;
use super::ink::{Ink, Shape, scales};
use crate::diagnostics::Findings;
use usvg::roxmltree::{Document, Node};

/// The narrowest line of ISO 128-2 (from memory), which is also about what laser printers hold: three dots at
/// 600 dpi (common practice, no source).
const LEAST: f64 = 0.13;
/// A narrow fill this long is a line, not a dot.
const LINE: f64 = 1.0;
/// What rounding may take.
const SLACK: f64 = 0.002;

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let mut told: Vec<(&str, f64)> = Vec::new();
    let thin = ink.shapes.iter().filter_map(|shape| Some((shape.block, width(shape)?)));
    for (block, width) in thin.filter(|(_, width)| width + SLACK < LEAST) {
        if !told.contains(&(block, width)) {
            told.push((block, width));
            report(sheet, block, width, findings);
        }
    }
    for block in &sheet.face.blocks {
        if has_zero_width(&block.source) {
            report(sheet, &block.name, 0.0, findings);
        }
    }
}

fn report(sheet: Sheet<'_>, block: &str, width: f64, findings: &mut Findings) {
    let said = format!("a line of the block {block} is {width:.2} mm wide");
    findings.push(
        sheet
            .finding("line-too-thin", said)
            .field(block)
            .found(format!("{width:.2} mm"))
            .expected(format!("at least {LEAST} mm"))
            .help("make it wider in the layout; where the layout scales it, count the scale in"),
    );
}

/// Width of a shape's line, or of a fill that is drawn as a line, as it is printed.
fn width(shape: &Shape<'_>) -> Option<f64> {
    if let Some(stroke) = shape.path.stroke() {
        return Some(f64::from(stroke.width().get()) * scales(shape.path.abs_transform()).0);
    }
    let (width, height) = (shape.bounds.width(), shape.bounds.height());
    (width.max(height) >= LINE && shape.fill().is_some()).then_some(width.min(height))
}

/// A line of no width is left out of the drawing without a word, so only the source still has it.
fn has_zero_width(source: &str) -> bool {
    if !source.split("stroke-width").skip(1).any(|rest| is_zero(value(rest))) {
        return false;
    }
    let whole = format!("<svg xmlns=\"http://www.w3.org/2000/svg\">{source}</svg>");
    let Ok(document) = Document::parse(&whole) else { return false };
    document.descendants().any(|node| is_zero(said(node, "stroke-width")) && has_stroke(node))
}

/// The value behind the name of an attribute or of a style property.
fn value(rest: &str) -> &str {
    rest.trim_start_matches(['=', ':', '"', '\'', ' '])
        .split(['"', '\'', ';', ' ', '>'])
        .next()
        .unwrap_or_default()
}

fn is_zero(width: &str) -> bool {
    width.trim_end_matches(|letter: char| letter.is_ascii_alphabetic()).parse() == Ok(0.0)
}

/// What an element says of itself, as an attribute or in its style.
fn said<'a>(node: Node<'a, '_>, name: &str) -> &'a str {
    let style = node.attribute("style").and_then(|style| style.split(name).nth(1));
    style.map(value).or_else(|| node.attribute(name)).unwrap_or_default()
}

fn has_stroke(node: Node<'_, '_>) -> bool {
    let mut round = node.ancestors().map(|node| stroke(node)).filter(|stroke| !stroke.is_empty());
    round.next().is_some_and(|stroke| stroke != "none")
}

fn stroke<'a>(node: Node<'a, '_>) -> &'a str {
    let style = node.attribute("style").and_then(|style| style.split("stroke:").nth(1));
    style.map(value).or_else(|| node.attribute("stroke")).unwrap_or_default()
}
