//! Where each value of a YAML text begins and ends, so that one can be changed while all else stays as it is.

use saphyr_parser::{Event, Parser, ScalarStyle, Span};

/// A value and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Laid {
    /// Its first byte; of a list that is written line by line, that of its first entry or its dash.
    pub start: usize,
    /// The byte behind its last one that is no space.
    pub end: usize,
    /// What it is.
    pub shape: LaidShape,
}

/// What stands at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LaidShape {
    /// A single value: what it says, and how it is written.
    Scalar(String, Quoting),
    /// A list, in brackets or line by line.
    List(Vec<Laid>),
    /// Keys with their values, in braces or line by line.
    Map(Vec<(Laid, Laid)>),
    /// What stands elsewhere, by its name.
    Repeated,
}

/// How a single value is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quoting {
    /// As it is.
    Plain,
    /// In single quotes.
    Single,
    /// In double quotes.
    Double,
    /// Over several lines, below a `>` or `|`.
    Block,
}

impl Laid {
    /// The value of a key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<&Laid> {
        self.entries().iter().find(|(name, _)| name.is(key)).map(|(_, value)| value)
    }

    /// Keys with their values; none where it is no mapping.
    #[must_use]
    pub fn entries(&self) -> &[(Laid, Laid)] {
        match &self.shape {
            LaidShape::Map(entries) => entries,
            _ => &[],
        }
    }

    /// Whether it is a list or mapping in brackets or braces.
    #[must_use]
    pub fn is_in_brackets(&self, text: &str) -> bool {
        match self.shape {
            LaidShape::List(_) => text[self.start..].starts_with('['),
            LaidShape::Map(_) => text[self.start..].starts_with('{'),
            LaidShape::Scalar(..) | LaidShape::Repeated => false,
        }
    }

    /// Whether it is this single value.
    #[must_use]
    pub fn is(&self, text: &str) -> bool {
        matches!(&self.shape, LaidShape::Scalar(own, _) if own == text)
    }
}

/// The documents of a text; `None` where it is no YAML.
///
/// ```
/// use fittingcards::records::laid;
/// let text = "bore: 14.3 # new\n";
/// let bore = laid(text).and_then(|documents| documents[0].get("bore").cloned()).expect("a bore");
/// assert_eq!(&text[bore.start..bore.end], "14.3");
/// ```
#[must_use]
pub fn laid(text: &str) -> Option<Vec<Laid>> {
    let mut builder = Builder::of(text);
    for event in Parser::new_from_str(text) {
        let (event, span) = event.ok()?;
        builder.take(event, span)?;
    }
    Some(builder.documents)
}

struct Builder<'t> {
    text: &'t str,
    /// The byte of each character, and the end.
    bytes: Vec<usize>,
    documents: Vec<Laid>,
    open: Vec<Open>,
}

/// A list or mapping whose end has not come yet.
struct Open {
    start: usize,
    is_map: bool,
    values: Vec<Laid>,
}

impl<'t> Builder<'t> {
    fn of(text: &'t str) -> Self {
        let bytes = text.char_indices().map(|(at, _)| at).chain([text.len()]).collect();
        Self { text, bytes, documents: Vec::new(), open: Vec::new() }
    }

    fn take(&mut self, event: Event<'_>, span: Span) -> Option<()> {
        let (start, end) = (*self.bytes.get(span.start.index())?, *self.bytes.get(span.end.index())?);
        match event {
            Event::Scalar(text, style, ..) => {
                let quoting = match style {
                    ScalarStyle::Plain => Quoting::Plain,
                    ScalarStyle::SingleQuoted => Quoting::Single,
                    ScalarStyle::DoubleQuoted => Quoting::Double,
                    _ => Quoting::Block,
                };
                let start = if quoting == Quoting::Block { self.block_start(start) } else { start };
                self.finish(start, end, LaidShape::Scalar(text.into_owned(), quoting))
            }
            Event::SequenceStart(..) => self.open.push(Open { start, is_map: false, values: Vec::new() }),
            Event::MappingStart(..) => self.open.push(Open { start, is_map: true, values: Vec::new() }),
            Event::SequenceEnd | Event::MappingEnd => {
                let open = self.open.pop()?;
                // Line by line the end is that of the last value; the parser's is where the next thing begins.
                let bracket = if open.is_map { '{' } else { '[' };
                let is_flow = self.text[open.start..].starts_with(bracket);
                let last = open.values.last().map_or(open.start, |value| value.end);
                let shape = match open.is_map {
                    true => LaidShape::Map(pairs(open.values)),
                    false => LaidShape::List(open.values),
                };
                // A comment behind the bracket is no part of it.
                let bracket = if self.text[start..].starts_with([']', '}']) { start + 1 } else { end };
                self.finish(open.start, if is_flow { bracket } else { last }, shape);
            }
            Event::Alias(_) => self.finish(start, end, LaidShape::Repeated),
            _ => {}
        }
        Some(())
    }

    /// Where the `>` or `|` above a text stands, whose own place is that of its first letter.
    fn block_start(&self, start: usize) -> usize {
        let above = self.text[..start].trim_end();
        let line = above.rfind('\n').map_or(0, |end| end + 1);
        let is_head = |at: usize| {
            let rest = above[at + 1..].split('#').next().unwrap_or_default().trim();
            rest.chars().all(|letter| letter.is_ascii_digit() || "+-".contains(letter))
        };
        let marks = above[line..].match_indices(['>', '|']).map(|(at, _)| line + at);
        let head = marks.into_iter().find(|at| is_head(*at));
        if self.text[start..].starts_with(['>', '|']) { start } else { head.unwrap_or(start) }
    }

    fn finish(&mut self, start: usize, end: usize, shape: LaidShape) {
        let end = start + self.text[start..end.max(start)].trim_end().len();
        let value = Laid { start, end, shape };
        match self.open.last_mut() {
            Some(open) => open.values.push(value),
            None => self.documents.push(value),
        }
    }
}

fn pairs(values: Vec<Laid>) -> Vec<(Laid, Laid)> {
    let mut values = values.into_iter();
    let mut pairs = Vec::new();
    while let (Some(key), Some(value)) = (values.next(), values.next()) {
        pairs.push((key, value));
    }
    pairs
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every single value with the text that stands at its place.
    fn scalars(text: &str) -> Vec<(String, String)> {
        fn gather(value: &Laid, text: &str, found: &mut Vec<(String, String)>) {
            match &value.shape {
                LaidShape::Scalar(own, _) => {
                    found.push((own.clone(), text[value.start..value.end].to_owned()))
                }
                LaidShape::List(items) => items.iter().for_each(|item| gather(item, text, found)),
                LaidShape::Map(entries) => entries.iter().for_each(|(_, value)| gather(value, text, found)),
                LaidShape::Repeated => found.push(("*".to_owned(), text[value.start..value.end].to_owned())),
            }
        }
        let mut found = Vec::new();
        laid(text).unwrap().iter().for_each(|document| gather(document, text, &mut found));
        found
    }

    // What stands at each place is read off the text by eye.
    #[test]
    fn values_are_found_as_they_are_written() {
        let text = "a: 14.0   # bore\nö: \"x \\\" y\"\nc: 'it''s'\nd: [1.50, two words , { e: 3 }]\nf:\n  - one\n  - >-\n    a\n    b\n\ng: h\n---\ni: |\n  k\n";
        let expected = [
            ("14.0", "14.0"),
            ("x \" y", "\"x \\\" y\""),
            ("it's", "'it''s'"),
            ("1.50", "1.50"),
            ("two words", "two words"),
            ("3", "3"),
            ("one", "one"),
            ("a b", ">-\n    a\n    b"),
            ("h", "h"),
            ("k\n", "|\n  k"),
        ];
        let expected: Vec<_> = expected.map(|(own, at)| (own.to_owned(), at.to_owned())).into();
        assert_eq!(scalars(text), expected);
    }

    #[test]
    fn lists_and_mappings_reach_from_their_first_to_their_last_letter() {
        let text = "a: { b: [1, 2] } # c\nd:\n  e: 1\n  f:\n  - 2\n  - 3 # g\n# h\ni: 4\n";
        let document = &laid(text).unwrap()[0];
        let at = |value: &Laid| text[value.start..value.end].to_owned();
        assert_eq!(at(document.get("a").unwrap()), "{ b: [1, 2] }");
        assert_eq!(at(document.get("a").unwrap().get("b").unwrap()), "[1, 2]");
        assert_eq!(at(document.get("d").unwrap()), "e: 1\n  f:\n  - 2\n  - 3");
        let list = document.get("d").unwrap().get("f").unwrap();
        assert!(at(list).ends_with("2\n  - 3") && !list.is_in_brackets(text));
    }
}
