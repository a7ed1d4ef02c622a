//! Texts of scripts whose syllables are several glyphs, drawn so that they can be read out of the PDF.
//!
//! The library that draws a block draws glyph by glyph: all the text of a syllable then hangs on one of its
//! glyphs, and who searches the PDF finds words torn apart. Here a syllable is drawn as one.

use crate::typeset::Fonts;
use krilla::color::rgb;
use krilla::geom::{Point, Transform};
use krilla::num::NormalizedF32;
use krilla::paint::{Fill, FillRule};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use std::collections::HashMap;
use std::ops::Range;
use unicode_bidi::{BidiClass, bidi_class};
use usvg::fontdb::ID;
use usvg::layout::{PositionedGlyph, Span};

/// The fonts that such texts were drawn in so far.
pub(super) type Known = HashMap<ID, Option<Font>>;

/// Draws the texts of a tree that holds nothing else. None, and nothing drawn, where they are painted, cut off or set in
/// ways that need the library.
pub(super) fn draw(
    surface: &mut Surface<'_>,
    tree: &usvg::Tree,
    fonts: &Fonts,
    known: &mut Known,
) -> Option<()> {
    let mut texts = Vec::new();
    gather(tree.root(), &mut texts)?;
    let spans = || texts.iter().flat_map(|text| text.layouted());
    for glyph in spans().flat_map(|span| &span.positioned_glyphs) {
        known.entry(glyph.font).or_insert_with(|| font(fonts, glyph.font)).as_ref()?;
    }
    for text in texts {
        surface.push_transform(&moved(text.abs_transform()));
        for span in text.layouted().iter().filter(|span| span.visible) {
            spanned(surface, span, known);
        }
        surface.pop();
    }
    Some(())
}

/// The texts, where all are painted in plain colours and nothing is laid over them.
fn gather<'a>(group: &'a usvg::Group, texts: &mut Vec<&'a usvg::Text>) -> Option<()> {
    let plain = group.clip_path().is_none() && group.mask().is_none() && group.filters().is_empty();
    if !plain || group.opacity().get() < 1.0 {
        return None;
    }
    for node in group.children() {
        match node {
            usvg::Node::Group(group) => gather(group, texts)?,
            usvg::Node::Text(text) if text.layouted().iter().all(is_plain) => texts.push(text),
            usvg::Node::Text(_) | usvg::Node::Path(_) | usvg::Node::Image(_) => return None,
        }
    }
    Some(())
}

fn is_plain(span: &Span) -> bool {
    let lines = [&span.underline, &span.overline, &span.line_through];
    span.stroke.is_none() && colour(span).is_some() && lines.iter().all(|line| line.is_none())
}

fn colour(span: &Span) -> Option<Fill> {
    let fill = span.fill.as_ref()?;
    let usvg::Paint::Color(colour) = fill.paint() else { return None };
    Some(Fill {
        paint: rgb::Color::new(colour.red, colour.green, colour.blue).into(),
        opacity: NormalizedF32::new(fill.opacity().get())?,
        rule: FillRule::NonZero,
    })
}

/// Draws a span font by font and line by line, in fonts that are known to be sound.
fn spanned(surface: &mut Surface<'_>, span: &Span, known: &Known) {
    surface.set_stroke(None);
    surface.set_fill(colour(span));
    let size = span.font_size.get();
    let level = |one: &PositionedGlyph, two: &PositionedGlyph| one.font == two.font;
    for run in span.positioned_glyphs.chunk_by(level) {
        let Some(font) = known.get(&run[0].font).and_then(Option::as_ref) else { continue };
        let (glyphs, text) = glyphs(run, size);
        let at = run[0].transform();
        surface.draw_glyphs(Point::from_xy(at.tx, at.ty), &glyphs, font.clone(), &text, size, false);
    }
    surface.set_fill(None);
}

fn font(fonts: &Fonts, id: ID) -> Option<Font> {
    let font = |data: &[u8], index| Font::new(data.to_vec().into(), index);
    fonts.database().with_face_data(id, font).flatten()
}

/// The glyphs in the order in which they lie, each with the part of the text that its syllable is. Glyphs
/// are placed by how far the next one stands from them.
fn glyphs(run: &[PositionedGlyph], size: f32) -> (Vec<KrillaGlyph>, String) {
    let (ranges, text) = syllables(run);
    let start = run[0].transform();
    let place = |index: usize| run.get(index).map(|glyph| glyph.transform());
    let glyph = |(index, range): (usize, Range<usize>)| {
        let at = place(index).unwrap_or(start);
        let next = place(index + 1).unwrap_or(at);
        let (advance, rise) = ((next.tx - at.tx) / size, (start.ty - at.ty) / size);
        let id = GlyphId::new(u32::from(run[index].id.0));
        KrillaGlyph::new(id, advance, 0.0, rise, 0.0, range, None)
    };
    (ranges.into_iter().enumerate().map(glyph).collect(), text)
}

/// Which part of the text each glyph belongs to. The library hangs a syllable's text on its last glyph, and
/// on its first where the text runs from right to left.
fn syllables(run: &[PositionedGlyph]) -> (Vec<Range<usize>>, String) {
    let right = |c: char| matches!(bidi_class(c), BidiClass::R | BidiClass::AL);
    let first_carries = run.iter().any(|glyph| glyph.text.chars().any(right));
    let (mut ranges, mut text) = (Vec::with_capacity(run.len()), String::new());
    let mut start = 0;
    for (index, glyph) in run.iter().enumerate() {
        text.push_str(&glyph.text);
        let opens = |index: usize| run.get(index).is_none_or(|glyph| !glyph.text.is_empty());
        let ends = if first_carries { opens(index + 1) } else { !glyph.text.is_empty() };
        if ends {
            ranges.resize(index + 1, start..text.len());
            start = text.len();
        }
    }
    ranges.resize(run.len(), start..text.len());
    (ranges, text)
}

fn moved(by: usvg::Transform) -> Transform {
    Transform::from_row(by.sx, by.ky, by.kx, by.sy, by.tx, by.ty)
}

#[cfg(test)]
mod tests;
