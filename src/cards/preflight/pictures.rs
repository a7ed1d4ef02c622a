//! `picture-coarse`, `picture-lost`: raster images that print as squares, or not at all.
//!
//! Why: below 200 dots per inch edges show steps (common practice, no source); and what a layout names by a
//! path is not taken in, since nothing but the World may read files.
//!
//! To put it right: a finer PNG or JPEG, written into the layout as `data:`; drawings as SVG elements.

use super::Sheet;
use super::ink::{Ink, scales};
use crate::diagnostics::Findings;

/// Least resolution at the printed size, in dots per inch.
const LEAST: f64 = 200.0;

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    for picture in &ink.pictures {
        let dots = 25.4 / scales(picture.image.abs_transform()).1;
        if dots + 0.5 < LEAST {
            let said = format!("a picture in the block {} has {dots:.0} dots per inch", picture.block);
            findings.push(
                sheet
                    .finding("picture-coarse", said)
                    .field(picture.block)
                    .found(format!("{dots:.0} dpi at its printed size"))
                    .expected(format!("at least {LEAST} dpi"))
                    .help("take a finer picture, or print it smaller"),
            );
        }
    }
    for block in &sheet.face.blocks {
        let drawn = ink.pictures.iter().filter(|picture| picture.block == block.name).count();
        let named = block.source.matches("<image").count();
        if named > drawn {
            let said =
                format!("{} of the pictures of the block {} can't be drawn", named - drawn, block.name);
            findings.push(
                sheet
                    .finding("picture-lost", said)
                    .field(&block.name)
                    .expected("a PNG or JPEG written into the layout as `data:`")
                    .help(
                        "layouts take no pictures from files or a network; write a drawing as SVG elements",
                    ),
            );
        }
    }
}
