//! What faces say, to be searched and struck out text by text.

use super::lines;
use fittingcards::cards::Face;

/// The most letters between two texts that are read together: as long as a colour's name with its signs, or as what
/// is measured.
const CLOSE: usize = 20;

/// The texts of faces as one row of letters, without spaces: a text may be broken over lines anywhere.
pub struct Said {
    letters: Vec<char>,
    /// The element that each letter stands in.
    element: Vec<usize>,
    /// Whether a word may begin at this letter; one more than there are letters.
    begins: Vec<bool>,
    struck: Vec<bool>,
}

impl Said {
    pub fn on(faces: &[&Face]) -> Self {
        Self::by(faces.iter().flat_map(|face| lines::of(face)))
    }

    /// The texts in the drawings of a face.
    pub fn in_drawings_of(face: &Face) -> Self {
        Self::by(lines::drawn(face))
    }

    fn by(lines: impl IntoIterator<Item = String>) -> Self {
        let mut said =
            Self { letters: Vec::new(), element: Vec::new(), begins: Vec::new(), struck: Vec::new() };
        for (element, line) in lines.into_iter().enumerate() {
            said.add(&line, element);
        }
        said.begins.push(true);
        said.struck.resize(said.letters.len(), false);
        said
    }

    fn add(&mut self, words: &str, element: usize) {
        for word in words.split_whitespace() {
            let mut before = ' ';
            for letter in letters(word) {
                self.begins.push(!before.is_alphanumeric() || !letter.is_alphanumeric());
                self.letters.push(letter);
                self.element.push(element);
                before = letter;
            }
        }
    }

    pub fn has(&self, text: &str) -> bool {
        self.places(text).next().is_some()
    }

    /// Where a text stands; a short one only as words of its own.
    fn places(&self, text: &str) -> impl Iterator<Item = usize> {
        let wanted = plain(text);
        let length = wanted.len();
        let ends = (self.letters.len() + 1).saturating_sub(length.max(1));
        (0..ends).filter(move |start| {
            let end = start + length;
            length > 0
                && self.letters[*start..end] == wanted[..]
                && (length > 6 || self.begins[*start] && self.begins[end])
        })
    }

    /// Whether a text stands close behind another, so that they are read together.
    pub fn has_behind(&self, head: &str, text: &str) -> bool {
        let ends: Vec<usize> = self.places(head).map(|start| start + plain(head).len()).collect();
        self.places(text).any(|start| ends.iter().any(|end| (*end..=end + CLOSE).contains(&start)))
    }

    pub fn strike(&mut self, text: &str) {
        let length = plain(text).len();
        for start in self.places(text).collect::<Vec<_>>() {
            self.struck[start..start + length].fill(true);
        }
    }

    /// Scales of drawings, such as "2.5:1".
    pub fn strike_scales(&mut self) {
        let elements = self.element.chunk_by(|a, b| a == b);
        let lengths: Vec<usize> = elements.map(<[usize]>::len).collect();
        let mut start = 0;
        for length in lengths {
            let text: String = self.letters[start..start + length].iter().collect();
            self.struck[start..start + length].fill(is_scale(&text));
            start += length;
        }
    }

    /// What has not been struck, element by element.
    pub fn left(&self) -> Vec<String> {
        let mut left: Vec<String> = Vec::new();
        let mut last = usize::MAX;
        for index in (0..self.letters.len()).filter(|index| !self.struck[*index]) {
            if self.element[index] != last {
                left.push(String::new());
                last = self.element[index];
            }
            left.last_mut().unwrap().push(self.letters[index]);
        }
        left.retain(|text| text.chars().any(char::is_alphanumeric));
        left
    }
}

/// A text as it is searched for.
pub fn squeezed(text: &str) -> String {
    letters(text).into_iter().collect()
}

/// Letters of a text that is looked for: as a sentence of its own or within one.
fn plain(text: &str) -> Vec<char> {
    letters(text.trim().trim_end_matches('.'))
}

fn is_scale(text: &str) -> bool {
    let (one, other) = text.split_once(':').unwrap_or_default();
    [one, other].iter().all(|side| side.replace(',', ".").parse::<f64>().is_ok())
}

/// Letters without spaces, hyphens that only break words, diameter signs and case.
fn letters(text: &str) -> Vec<char> {
    let kept = text.to_lowercase().replace('×', "x");
    kept.chars().filter(|c| !c.is_whitespace() && !['\u{ad}', '⌀'].contains(c)).collect()
}
