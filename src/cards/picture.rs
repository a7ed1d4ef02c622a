//! A face as a picture to look at: SVG, and pixels.

use super::face::{BlockKind, Face};
use super::paint::escaped;
use super::png_file::encoded;
use crate::sketch::number;
use resvg::tiny_skia::{Pixmap, PremultipliedColorU8, Transform};
use std::cell::RefCell;
use std::fmt::Write;

/// A picture could not be made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PictureError(String);

impl std::fmt::Display for PictureError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(out, "the picture could not be made: {}", self.0)
    }
}

impl std::error::Error for PictureError {}

impl Face {
    /// The face as SVG, trimmed, at its true size. Texts are texts, each with the length that
    /// it was measured at, so that another font can't make them run over.
    #[must_use]
    pub fn svg(&self) -> String {
        let (width, height, bleed) =
            (number(self.trim.0.mm()), number(self.trim.1.mm()), number(self.bleed.mm()));
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
             viewBox=\"{bleed} {bleed} {width} {height}\">\n<rect x=\"{bleed}\" y=\"{bleed}\" width=\"{width}\" height=\"{height}\" fill=\"#ffffff\"/>\n"
        );
        for block in &self.blocks {
            let role = match block.kind {
                BlockKind::Drawing => format!(" role=\"img\" aria-label=\"{}\"", escaped(&block.alternative)),
                BlockKind::Ornament => " aria-hidden=\"true\"".to_owned(),
                BlockKind::Heading | BlockKind::Text => String::new(),
            };
            let _ = write!(svg, "<g id=\"{}\"{role}>", escaped(&block.name));
            for layer in &block.layers {
                svg.push_str(&layer.source.replace(" data-length=", " textLength="));
            }
            svg.push_str("</g>\n");
        }
        svg.push_str("</svg>\n");
        svg
    }

    /// The face as PNG, trimmed, on white.
    ///
    /// # Errors
    /// Where the resolution is too small or too large for a picture.
    pub fn png(&self, dpi: f64) -> Result<Vec<u8>, PictureError> {
        let scale = dpi / 25.4;
        let bleed = self.bleed.mm() * scale;
        let size = (self.trim.0.mm(), self.trim.1.mm());
        let file = self.pixels(size, scale, bleed, |pixmap| encoded(pixmap, dpi))?;
        file.map_err(|error| PictureError(error.to_string()))
    }

    /// How many pixels of ink a sheet's clip takes away from the face: those outside the bleed, up to 20 mm
    /// from it, of the face drawn without a clip. 0 for a face that is whole. Below 200 dpi thin lines are
    /// drawn wider than they are, and count.
    ///
    /// # Errors
    /// Where the resolution is too small or too large for a picture.
    pub fn lost_to_clip(&self, dpi: f64) -> Result<usize, PictureError> {
        let scale = dpi / 25.4;
        let field = (self.trim.0 + self.bleed * 2.0, self.trim.1 + self.bleed * 2.0);
        let wide = (field.0.mm() + 2.0 * AROUND, field.1.mm() + 2.0 * AROUND);
        let around = pixels(AROUND * scale)?;
        let inside = (pixels(field.0.mm() * scale)?, pixels(field.1.mm() * scale)?);
        let inside = (inside.0 as usize, inside.1 as usize);
        self.pixels(wide, scale, -f64::from(around), |unclipped| {
            inked_outside(unclipped, around as usize, inside)
        })
    }

    /// Draws the blocks on a white field of this size in millimetres; the corner of the bleed lies `shift` pixels
    /// outside it. What was drawn is handed to `look`, since a thread draws all its pictures in the same memory.
    fn pixels<T>(
        &self,
        field: (f64, f64),
        scale: f64,
        shift: f64,
        look: impl FnOnce(&Pixmap) -> T,
    ) -> Result<T, PictureError> {
        let size = (pixels(field.0 * scale)?, pixels(field.1 * scale)?);
        let transform =
            Transform::from_row(single(scale), 0.0, 0.0, single(scale), single(-shift), single(-shift));
        PIXELS.with_borrow_mut(|kept| {
            let fits = |pixmap: &Pixmap| (pixmap.width(), pixmap.height()) == size;
            let pixmap = kept.take().filter(fits).or_else(|| Pixmap::new(size.0, size.1));
            let mut pixmap = pixmap.ok_or_else(|| PictureError("no pixels".to_owned()))?;
            pixmap.data_mut().fill(u8::MAX);
            for layer in self.blocks.iter().flat_map(|block| &block.layers) {
                resvg::render(&layer.tree, transform, &mut pixmap.as_mut());
            }
            let looked = look(&pixmap);
            *kept = Some(pixmap);
            Ok(looked)
        })
    }
}

thread_local! {
    /// The memory of the last picture: to ask for new memory for each costs more than to paint it white.
    static PIXELS: RefCell<Option<Pixmap>> = const { RefCell::new(None) };
}

/// How far outside the bleed lost ink is looked for, in millimetres.
const AROUND: f64 = 20.0;

/// How many pixels are not white outside a field of this size that lies `around` pixels from the upper left.
fn inked_outside(pixmap: &Pixmap, around: usize, (across, down): (usize, usize)) -> usize {
    let dark = |pixel: &PremultipliedColorU8| pixel.red().min(pixel.green()).min(pixel.blue()) < 250;
    let inked = |pixels: &[PremultipliedColorU8]| pixels.iter().filter(|pixel| dark(pixel)).count();
    let rows = pixmap.pixels().chunks(pixmap.width() as usize).enumerate();
    let outside = rows.map(|(y, row)| {
        if (around..around + down).contains(&y) {
            inked(&row[..around]) + inked(&row[(around + across).min(row.len())..])
        } else {
            inked(row)
        }
    });
    outside.sum()
}

/// Largest side of a picture, in pixels.
const MOST_PIXELS: f64 = 20_000.0;

/// Whole pixels: up, but a side that is a whole number but for rounding keeps it.
fn pixels(side: f64) -> Result<u32, PictureError> {
    let whole = (side - 1e-3).ceil();
    if !(1.0..=MOST_PIXELS).contains(&whole) {
        return Err(PictureError(format!("{side:.0} pixels on a side")));
    }
    Ok(whole as u32)
}

fn single(number: f64) -> f32 {
    number as f32
}
