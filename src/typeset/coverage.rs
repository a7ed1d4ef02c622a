//! Which characters a font has.

/// The characters of a font, a bit each.
#[derive(Debug, Clone)]
pub(super) struct Coverage(Box<[u64]>);

impl Coverage {
    /// Reads a font's table of characters; none where it is no font.
    pub fn of(data: &[u8], index: u32) -> Option<Self> {
        let face = ttf_parser::Face::parse(data, index).ok()?;
        let mut bits = Vec::new();
        for table in face.tables().cmap.iter().flat_map(|cmap| cmap.subtables) {
            if table.is_unicode() {
                table.codepoints(|code| {
                    if table.glyph_index(code).is_some_and(|glyph| glyph.0 != 0) {
                        set(&mut bits, code);
                    }
                });
            }
        }
        Some(Self(bits.into()))
    }

    pub fn has(&self, c: char) -> bool {
        let (word, bit) = at(u32::from(c));
        self.0.get(word).is_some_and(|bits| bits & bit != 0)
    }
}

fn set(bits: &mut Vec<u64>, code: u32) {
    let (word, bit) = at(code);
    if word <= at(u32::from(char::MAX)).0 {
        bits.resize(bits.len().max(word + 1), 0);
        bits[word] |= bit;
    }
}

fn at(code: u32) -> (usize, u64) {
    ((code / 64) as usize, 1 << (code % 64))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{MemoryWorld, World};

    /// By the font library's own look-up, over every character there is.
    #[test]
    fn coverage_is_what_the_font_answers() {
        for data in MemoryWorld::new().fonts() {
            let (coverage, face) = (Coverage::of(data, 0).expect("a font"), ttf_parser::Face::parse(data, 0));
            let face = face.expect("a font");
            for c in '\0'..=char::MAX {
                assert_eq!(coverage.has(c), face.glyph_index(c).is_some_and(|glyph| glyph.0 != 0), "{c}");
            }
        }
    }
}
