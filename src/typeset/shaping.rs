//! A text shaped in one font and one direction: its length, and the room that its ink takes.

use super::fonts::Fonts;
use rustybuzz::ttf_parser::GlyphId;
use std::sync::{Arc, PoisonError};

/// What a shaped text takes, in sizes of type, from where it begins on the base line.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Shaped {
    pub advance: f64,
    /// None where there is nothing to be seen.
    pub ink: Option<Extent>,
    /// How far each character's cluster stands right of where usvg puts it, up to the last that does.
    ///
    /// usvg counts a cluster as long as its longest glyph, so that what follows a syllable of several
    /// glyphs, as Devanagari has them, would lie over it.
    pub shifts: Vec<f64>,
}

/// A box round ink, up and down from the base line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Extent {
    pub left: f64,
    pub right: f64,
    pub above: f64,
    pub below: f64,
}

impl Extent {
    pub fn moved(self, right: f64) -> Self {
        Self { left: self.left + right, right: self.right + right, ..self }
    }

    pub fn with(self, other: Self) -> Self {
        Self {
            left: self.left.min(other.left),
            right: self.right.max(other.right),
            above: self.above.max(other.above),
            below: self.below.max(other.below),
        }
    }
}

impl Fonts {
    /// Shapes a text as drawings do; what has been shaped once is kept.
    pub(super) fn shape(&self, face: usize, right_to_left: bool, text: &str) -> Arc<Shaped> {
        let known = self.shaped.read().unwrap_or_else(PoisonError::into_inner);
        if let Some(shaped) = known.get(&(face, right_to_left)).and_then(|texts| texts.get(text)) {
            return shaped.clone();
        }
        drop(known);
        let direction = match right_to_left {
            true => rustybuzz::Direction::RightToLeft,
            false => rustybuzz::Direction::LeftToRight,
        };
        let shape = |data: &[u8], index| shaped(data, index, direction, text);
        let id = self.faces[face].id;
        let shaped = Arc::new(self.database.with_face_data(id, shape).flatten().unwrap_or_default());
        let mut known = self.shaped.write().unwrap_or_else(PoisonError::into_inner);
        known.entry((face, right_to_left)).or_default().insert(text.into(), shaped.clone());
        shaped
    }
}

fn shaped(data: &[u8], index: u32, direction: rustybuzz::Direction, text: &str) -> Option<Shaped> {
    let face = rustybuzz::Face::from_slice(data, index)?;
    let mut buffer = rustybuzz::UnicodeBuffer::new();
    buffer.push_str(text);
    buffer.set_direction(direction);
    let glyphs = rustybuzz::shape(&face, &[], buffer);
    let glyphs: Vec<Glyph> = glyphs.glyph_infos().iter().zip(glyphs.glyph_positions()).collect();
    let em = f64::from(face.units_per_em());
    let mut shaped = Shaped::default();
    let mut drawn = 0.0;
    for cluster in glyphs.chunk_by(|(one, _), (two, _)| one.cluster == two.cluster) {
        let shift = shaped.advance - drawn;
        if shift > 1e-9 {
            shaped.shift(text[..cluster[0].0.cluster as usize].chars().count(), shift);
            drawn = shaped.advance;
        }
        for (info, position) in cluster {
            if let Some(ink) = ink(&face, info.glyph_id) {
                shaped.add(ink, f64::from(position.x_offset) / em, f64::from(position.y_offset) / em);
            }
            shaped.advance += f64::from(position.x_advance) / em;
        }
        let longest = cluster.iter().map(|(_, position)| position.x_advance).max().unwrap_or_default();
        drawn += f64::from(longest.max(0)) / em;
    }
    Some(shaped)
}

type Glyph<'a> = (&'a rustybuzz::GlyphInfo, &'a rustybuzz::GlyphPosition);

impl Shaped {
    fn shift(&mut self, character: usize, by: f64) {
        self.shifts.resize(self.shifts.len().max(character + 1), 0.0);
        self.shifts[character] = by;
    }

    fn add(&mut self, glyph: Extent, right: f64, up: f64) {
        let placed = glyph.moved(self.advance + right);
        let placed = Extent { above: placed.above + up, below: placed.below - up, ..placed };
        self.ink = Some(self.ink.map_or(placed, |ink| ink.with(placed)));
    }
}

fn ink(face: &rustybuzz::Face<'_>, glyph: u32) -> Option<Extent> {
    let bounds = face.glyph_bounding_box(GlyphId(u16::try_from(glyph).ok()?))?;
    let em = f64::from(face.units_per_em());
    Some(Extent {
        left: f64::from(bounds.x_min) / em,
        right: f64::from(bounds.x_max) / em,
        above: f64::from(bounds.y_max) / em,
        below: -f64::from(bounds.y_min) / em,
    })
}
