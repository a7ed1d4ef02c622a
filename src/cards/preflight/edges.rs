//! `ink-clipped`, `bleed-missing`: ink that is cut away, and paint that ends where the card is cut.
//!
//! Why: a face is printed with its bleed and no further, and a cut is never quite where it should be: paint
//! that ends at the cut leaves a white sliver.
//!
//! To put it right: keep everything inside the bleed; let paint that reaches the cut run to the bleed's edge.

use super::Sheet;
use super::bounds::Bounds;
use super::ink::Ink;
use crate::diagnostics::Findings;

/// What rounding may take.
const SLACK: f64 = 0.02;
/// Paint that ends this near to the cut is meant to end at the cut.
const NEAR: f64 = 0.3;
/// Paint may end this far inside the edge of the bleed, so that its outline is whole.
const SHORT: f64 = 0.25;

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let (width, height, bleed) = (sheet.face.cut.0.mm(), sheet.face.cut.1.mm(), sheet.face.bleed.mm());
    let cut = Bounds { left: 0.0, top: 0.0, right: width, bottom: height };
    clipped(sheet, ink, cut.grown(bleed), findings);
    if bleed > NEAR {
        short(sheet, ink, cut, bleed, findings);
    }
    for text in &ink.texts {
        let lost = text.window.map_or(f64::NEG_INFINITY, |window| text.bounds.outside(window));
        if lost > SLACK {
            let said = format!("{lost:.1} mm of “{}” are clipped or masked away", text.words());
            findings.push(
                sheet
                    .finding("ink-clipped", said)
                    .field(text.block)
                    .found(format!("{lost:.1} mm outside its clip or mask"))
                    .expected("the whole text inside it")
                    .help("leave the clip or mask out of the layout, or make it larger"),
            );
        }
    }
}

/// The most that each block runs past the bleed, where every sheet clips it.
fn clipped(sheet: Sheet<'_>, ink: &Ink<'_>, field: Bounds, findings: &mut Findings) {
    for block in &sheet.face.blocks {
        let shapes = ink.shapes.iter().map(|shape| (shape.block, shape.inked));
        let texts = ink.texts.iter().map(|text| (text.block, text.bounds));
        let pictures = ink.pictures.iter().map(|picture| (picture.block, picture.inked));
        let all = shapes.chain(texts).chain(pictures).filter(|(name, _)| *name == block.name);
        let boxes: Vec<Bounds> = all.map(|(_, bounds)| bounds).collect();
        let lost = boxes.iter().map(|bounds| bounds.outside(field)).fold(f64::NEG_INFINITY, f64::max);
        if lost > SLACK {
            let wholly = boxes.iter().all(|bounds| bounds.overlap(field) <= 0.0);
            let how = if wholly { "lies outside the face" } else { "runs past the bleed" };
            let said = format!("the block {} {how}: {lost:.1} mm of it are cut away", block.name);
            findings.push(
                sheet
                    .finding("ink-clipped", said)
                    .field(&block.name)
                    .found(format!("{lost:.1} mm past the bleed"))
                    .expected("everything inside the bleed")
                    .help("mend the layout"),
            );
        }
    }
}

/// Paint, be it a fill or a line, that crosses the cut or ends at it and does not reach the bleed's edge.
fn short(sheet: Sheet<'_>, ink: &Ink<'_>, cut: Bounds, bleed: f64, findings: &mut Findings) {
    for shape in &ink.shapes {
        let sides = shape.inked.over(cut).into_iter().zip(["left", "upper", "right", "lower"]);
        for (past, side) in sides.filter(|(past, _)| *past > -NEAR && *past < bleed - SHORT) {
            let said = format!("paint of the block {} ends at the {side} cut", shape.block);
            findings.push(
                sheet
                    .finding("bleed-missing", said)
                    .field(shape.block)
                    .found(format!("{past:.1} mm past the cut"))
                    .expected(format!("{bleed:.1} mm past the cut, or {NEAR} mm inside it"))
                    .help("let it run to the edge of the bleed: `bleed` is a value of the layout"),
            );
        }
    }
}
