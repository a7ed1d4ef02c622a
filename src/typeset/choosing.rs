//! Which font sets which characters.

use super::FontStyle;
use super::fonts::{FontFace, Fonts};
use super::script::{directs, is_joined};
use unicode_normalization::char::is_combining_mark;

impl Fonts {
    /// The characters that no font has, each once, in the order in which the text has them.
    #[must_use]
    pub fn missing(&self, text: &str) -> Vec<char> {
        let mut missing = Vec::new();
        for c in text.chars().filter(|&c| !ignorable(c)) {
            if !missing.contains(&c) && !self.faces.iter().any(|face| face.coverage.has(c)) {
                missing.push(c);
            }
        }
        missing
    }

    /// The text cut where its font changes, in reading order, each piece with its font's index.
    ///
    /// A letter with its marks goes into the font style’s own font if that has them, else into the first font
    /// that has them; letters that join or stack go into the catalogue's fonts first, which are there for
    /// them. Spaces and punctuation stay with what they follow.
    pub(super) fn by_font(&self, text: &str, font_style: FontStyle) -> Vec<(usize, String)> {
        let Some(first) = (0..self.faces.len()).min_by_key(|&index| self.rank(font_style, index)) else {
            return Vec::new();
        };
        let joined = is_joined(text);
        if !joined && has_all(&self.faces[first], text.chars()) {
            return vec![(first, text.to_owned())];
        }
        let ranked = self.ranked(font_style, |_| false);
        let ranked_if_joined =
            if joined { self.ranked(font_style, |face| !face.built_in) } else { Vec::new() };
        let mut pieces: Vec<(usize, String)> = Vec::new();
        for cluster in clusters(text) {
            let current = pieces.last().map(|(face, _)| *face);
            let ranked = if is_joined(cluster) { &ranked_if_joined } else { &ranked };
            let face = self.face_of(cluster, current, ranked).unwrap_or(first);
            match pieces.last_mut().filter(|(last, _)| *last == face) {
                Some((_, last)) => last.push_str(cluster),
                None => pieces.push((face, cluster.to_owned())),
            }
        }
        pieces
    }

    fn face_of(&self, cluster: &str, current: Option<usize>, ranked: &[usize]) -> Option<usize> {
        let all = |&face: &usize| has_all(&self.faces[face], cluster.chars());
        let base = |&face: &usize| has_all(&self.faces[face], cluster.chars().take(1));
        let kept = current.filter(|_| cluster.starts_with(clings));
        kept.filter(all)
            .or_else(|| ranked.iter().copied().find(all))
            .or_else(|| ranked.iter().copied().find(base))
            .or(current)
    }

    /// The fonts in the order in which they are tried: those to be preferred, the font style’s own, those of its
    /// weight, the rest.
    fn ranked(&self, font_style: FontStyle, preferred: impl Fn(&FontFace) -> bool) -> Vec<usize> {
        let mut ranked: Vec<usize> = (0..self.faces.len()).collect();
        ranked.sort_by_key(|&index| (!preferred(&self.faces[index]), self.rank(font_style, index)));
        ranked
    }

    fn rank(&self, font_style: FontStyle, index: usize) -> (bool, bool) {
        let face = &self.faces[index];
        let own = &*face.family == font_style.family() && face.weight == font_style.weight();
        (!own, face.weight != font_style.weight())
    }
}

fn has_all(face: &FontFace, mut characters: impl Iterator<Item = char>) -> bool {
    characters.all(|c| ignorable(c) || face.coverage.has(c))
}

/// Each character with the marks and joiners that follow it.
fn clusters(text: &str) -> impl Iterator<Item = &str> {
    let mut rest = text;
    std::iter::from_fn(move || {
        let mut later = rest.char_indices().skip(1);
        let end = later.find(|&(_, c)| !is_combining_mark(c) && !joins(c)).map_or(rest.len(), |(at, _)| at);
        let (cluster, after) = rest.split_at(end);
        rest = after;
        (!cluster.is_empty()).then_some(cluster)
    })
}

fn joins(c: char) -> bool {
    matches!(c, '\u{200C}' | '\u{200D}' | '\u{FE00}'..='\u{FE0F}')
}

/// Characters that draw nothing and that fonts needn't have: joiners, direction marks, soft hyphens.
fn ignorable(c: char) -> bool {
    directs(c) || joins(c) || matches!(c, '\u{00AD}' | '\u{200B}' | '\u{2060}'..='\u{2064}')
}

/// Characters that belong to whatever script they stand in. Figures don't: they look the same everywhere.
fn clings(c: char) -> bool {
    !c.is_alphabetic() && !c.is_numeric()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_stay_with_their_letter() {
        assert_eq!(clusters("कि\u{301}a é").collect::<Vec<_>>(), ["कि\u{301}", "a", " ", "é"]);
        assert_eq!(clusters("").count(), 0);
    }
}
