//! `ink-clipped`, `bleed-missing`: SVG of a layout's own that leaves its room, is cut away, or ends at the trim.
//!
//! Why: what leaves its room lies over its neighbours; what runs past the bleed is cut away on every sheet; paint that
//! ends at the trim shows a white edge where the blade is a hair off.
//!
//! To put it right: a larger `width` and `height`, or `edges` for what runs over the card's edge.

use super::check::Check;
use super::room::past;
use super::svg_ink::SvgInk;
use crate::diagnostics::Findings;
use kurbo::Rect;

/// What rounding may take.
const SLACK: f64 = 0.02;
/// Paint this near to the trim is meant to reach it, and paint this short of the bleed's edge does not.
const NEAR: f64 = 0.5;
const SHORT: f64 = 0.15;

pub(super) fn check(check: Check<'_>, ink: &SvgInk<'_>, findings: &mut Findings) {
    let (width, height, bleed) = (check.trim().0, check.trim().1, check.face.bleed.mm());
    let trim = Rect::new(0.0, 0.0, width, height);
    outside(check, ink, trim, bleed, findings);
    if bleed > NEAR {
        short(check, ink, trim, bleed, findings);
    }
    for text in &ink.texts {
        let lost =
            text.window.map_or(0.0, |window| past(text.bounds, window).into_iter().fold(0.0, f64::max));
        if lost > SLACK {
            let said = format!("{lost:.1} mm of “{}” are clipped or masked away", text.words());
            findings.push(
                check
                    .finding("ink-clipped", ink.at, &said)
                    .field(ink.block)
                    .found(format!("{lost:.1} mm outside its clip or mask"))
                    .expected("the whole text inside it")
                    .help("leave the clip or mask out of the layout, or make it larger"),
            );
        }
    }
}

/// Its ink stays in its room, which reaches into the bleed where it lies at the card's edge.
fn outside(check: Check<'_>, ink: &SvgInk<'_>, trim: Rect, bleed: f64, findings: &mut Findings) {
    let at = |near: bool| if near { bleed } else { 0.0 };
    let room = Rect::new(
        ink.room.x0 - at(ink.room.x0 < trim.x0 + NEAR),
        ink.room.y0 - at(ink.room.y0 < trim.y0 + NEAR),
        ink.room.x1 + at(ink.room.x1 > trim.x1 - NEAR),
        ink.room.y1 + at(ink.room.y1 > trim.y1 - NEAR),
    );
    let lost = ink.inked().flat_map(|bounds| past(bounds, room)).fold(0.0, f64::max);
    if lost > SLACK {
        let said = format!("{lost:.1} mm of an <svg> lie outside the room that it is given");
        findings.push(
            check
                .finding("ink-clipped", ink.at, &said)
                .field(ink.block)
                .found(format!("{lost:.1} mm outside"))
                .expected("everything inside its width and height, or in the bleed where it has `edges`")
                .help("draw it from (0, 0), and give the <svg> the `width` and `height` that it needs"),
        );
    }
}

/// Paint, be it a fill or a line, that crosses the trim or ends at it and does not reach the bleed's edge.
fn short(check: Check<'_>, ink: &SvgInk<'_>, trim: Rect, bleed: f64, findings: &mut Findings) {
    for shape in &ink.shapes {
        let sides = past(shape.inked, trim).into_iter().zip(["left", "upper", "right", "lower"]);
        for (over, side) in sides.filter(|(over, _)| *over > -NEAR && *over < bleed - SHORT) {
            let said = format!("paint ends at the {side} edge of the card");
            findings.push(
                check
                    .finding("bleed-missing", ink.at, &said)
                    .field(ink.block)
                    .found(format!("{over:.1} mm past the trim"))
                    .expected(format!("{bleed:.1} mm past the trim, or {NEAR} mm inside it"))
                    .help("let it run on over the bleed, whose width is `sheet.bleed_mm` of the catalogue"),
            );
        }
    }
}
