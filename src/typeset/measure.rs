//! How long a text is: shaped font by font, the way drawings shape it.

use super::fonts::{FontFace, Fonts};
use super::{Cut, Style};
use crate::diagnostics::Finding;
use crate::source::Place;
use crate::units::Length;
use std::sync::{Arc, PoisonError};

/// A stretch of text in one font: one `tspan` of a drawing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// The font's family.
    pub family: Arc<str>,
    /// The weight as CSS counts it.
    pub weight: u16,
    /// The text.
    pub text: String,
}

/// Heights of the built-in letters above and below the baseline, in ems: DejaVu Sans 2.37, table hhea and OS/2.
const ASCENT: f64 = 1901.0 / 2048.0;
const DESCENT: f64 = 483.0 / 2048.0;
const CAP_HEIGHT: f64 = 1493.0 / 2048.0;

impl Fonts {
    /// The length of a text on one line. A character that no font has counts as its font's empty box.
    #[must_use]
    pub fn width(&self, text: &str, style: Style) -> Length {
        style.size * self.ems(text, style.cut)
    }

    /// The text cut where its font changes, in reading order.
    ///
    /// Each character goes into the cut's own font if that has it, else into the first font that has
    /// it; spaces and marks stay with what they follow. A text that runs from right to left stays in
    /// one font where one has all of it, since runs are set side by side from the left.
    #[must_use]
    pub fn runs(&self, text: &str, cut: Cut) -> Vec<Run> {
        let ranked = self.ranked(cut);
        if let Some(face) = ranked.first().filter(|face| self.has_all(face, text)) {
            return vec![run(face, text)];
        }
        if text.chars().any(right_to_left)
            && let Some(face) = ranked.iter().find(|face| self.has_all(face, text))
        {
            return vec![run(face, text)];
        }
        self.cut_by_font(text, &ranked)
    }

    /// The first character that no font has.
    #[must_use]
    pub fn missing(&self, text: &str) -> Option<char> {
        text.chars().find(|&c| !ignorable(c) && !self.faces.iter().any(|face| self.has(face, c)))
    }

    /// The finding about a character that no font has, where the text has one.
    #[must_use]
    pub fn missing_glyph(&self, text: &str, place: &Place) -> Option<Finding> {
        let missing = self.missing(text)?;
        let message =
            format!("no font has the character “{missing}” (U+{:04X}) of “{text}”", u32::from(missing));
        Some(
            Finding::error("glyph-missing", place.clone(), message).help(
                "put a font that has it into the catalogue's fonts folder, or write the text without it",
            ),
        )
    }

    /// From the baseline up to the top of the tallest letters.
    #[must_use]
    pub fn ascent(&self, style: Style) -> Length {
        style.size * ASCENT
    }

    /// From the baseline down to the foot of the deepest letters.
    #[must_use]
    pub fn descent(&self, style: Style) -> Length {
        style.size * DESCENT
    }

    /// The height of a capital letter or a figure.
    #[must_use]
    pub fn cap_height(&self, style: Style) -> Length {
        style.size * CAP_HEIGHT
    }

    fn ems(&self, text: &str, cut: Cut) -> f64 {
        let known = self.widths.read().unwrap_or_else(PoisonError::into_inner);
        if let Some(ems) = known.get(&cut).and_then(|widths| widths.get(text)) {
            return *ems;
        }
        drop(known);
        let ems = self.runs(text, cut).iter().map(|run| self.shape(run)).sum();
        let mut known = self.widths.write().unwrap_or_else(PoisonError::into_inner);
        known.entry(cut).or_default().insert(text.into(), ems);
        ems
    }

    fn shape(&self, run: &Run) -> f64 {
        let face = self.faces.iter().find(|face| face.family == run.family && face.weight == run.weight);
        face.and_then(|face| {
            self.database.with_face_data(face.id, |data, index| shaped(data, index, &run.text))
        })
        .unwrap_or_default()
    }

    /// The fonts in the order in which they are tried: the cut's own, those of its weight, the rest.
    fn ranked(&self, cut: Cut) -> Vec<&FontFace> {
        let mut ranked: Vec<&FontFace> = self.faces.iter().collect();
        ranked.sort_by_key(|face| {
            (&*face.family != cut.family() || face.weight != cut.weight(), face.weight != cut.weight())
        });
        ranked
    }

    fn has(&self, face: &FontFace, c: char) -> bool {
        let has = |data: &[u8], index| {
            ttf_parser::Face::parse(data, index).is_ok_and(|face| face.glyph_index(c).is_some())
        };
        self.database.with_face_data(face.id, has).unwrap_or_default()
    }

    fn has_all(&self, face: &FontFace, text: &str) -> bool {
        let has = |data: &[u8], index| {
            ttf_parser::Face::parse(data, index)
                .is_ok_and(|face| text.chars().all(|c| ignorable(c) || face.glyph_index(c).is_some()))
        };
        self.database.with_face_data(face.id, has).unwrap_or_default()
    }

    fn cut_by_font(&self, text: &str, ranked: &[&FontFace]) -> Vec<Run> {
        let mut runs: Vec<Run> = Vec::new();
        let mut current: Option<&FontFace> = None;
        for c in text.chars() {
            let face = current
                .filter(|face| clings(c) && (ignorable(c) || self.has(face, c)))
                .or_else(|| ranked.iter().copied().find(|face| self.has(face, c)))
                .or(current)
                .or_else(|| ranked.first().copied());
            let Some(face) = face else { continue };
            match runs.last_mut().filter(|_| current.is_some_and(|current| current.id == face.id)) {
                Some(last) => last.text.push(c),
                None => runs.push(run(face, &c.to_string())),
            }
            current = Some(face);
        }
        runs
    }
}

fn run(face: &FontFace, text: &str) -> Run {
    Run { family: face.family.clone(), weight: face.weight, text: text.to_owned() }
}

/// The advance of a text in ems, in visual order within the one direction that its script has.
fn shaped(data: &[u8], index: u32, text: &str) -> f64 {
    let Some(face) = rustybuzz::Face::from_slice(data, index) else { return 0.0 };
    let mut buffer = rustybuzz::UnicodeBuffer::new();
    buffer.push_str(text);
    buffer.guess_segment_properties();
    let glyphs = rustybuzz::shape(&face, &[], buffer);
    let advance: i64 = glyphs.glyph_positions().iter().map(|glyph| i64::from(glyph.x_advance)).sum();
    #[allow(clippy::cast_precision_loss, reason = "an advance is far below 2^52 font units")]
    let advance = advance as f64;
    advance / f64::from(face.units_per_em())
}

/// Characters that draw nothing and that fonts needn't have: joiners, direction marks, soft hyphens.
fn ignorable(c: char) -> bool {
    matches!(c, '\u{00AD}' | '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{2064}' | '\u{FE00}'..='\u{FE0F}')
}

/// Characters that belong to whatever script they stand in: spaces, figures, marks, joiners.
fn clings(c: char) -> bool {
    !c.is_alphabetic() || matches!(c, '\u{0300}'..='\u{036F}')
}

/// Letters of scripts that run from right to left: Hebrew, Arabic, Syriac, Thaana, N’Ko and their forms.
fn right_to_left(c: char) -> bool {
    matches!(c, '\u{0590}'..='\u{08FF}' | '\u{FB1D}'..='\u{FDFF}' | '\u{FE70}'..='\u{FEFF}')
}
