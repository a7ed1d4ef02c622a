//! YAML documents as trees of places, made from parser events.

use super::text::Trouble;
use saphyr_parser::{Event, Parser, ScalarStyle, Span};
use std::collections::HashMap;

/// How deep values may nest; records need six.
const DEEPEST: usize = 32;
/// How much aliases may add to a file: values and the bytes of their text, together.
const MOST_FROM_ALIASES: usize = 1_000_000;

/// A value's place and shape.
#[derive(Debug, Clone)]
pub(super) struct Spot {
    pub line: u32,
    pub column: u32,
    pub shape: Shape,
}

/// What stands at a place.
#[derive(Debug, Clone)]
pub(super) enum Shape {
    /// A single value, as written but for quotes and folds.
    Scalar {
        written: String,
        quoted: bool,
    },
    List(Vec<Spot>),
    Map(Vec<(Spot, Spot)>),
}

/// The documents of a text up to the first trouble, and that trouble.
pub(super) fn trees(text: &str) -> (Vec<Spot>, Option<Trouble>) {
    let mut builder = Builder::default();
    for event in Parser::new_from_str(text) {
        let result = match event {
            Ok((event, span)) => builder.take(event, span),
            Err(error) => {
                let (line, column) = start(Span::empty(*error.marker()));
                Err(Trouble::syntax(line, column, error.info(), text))
            }
        };
        if let Err(trouble) = result {
            return (builder.documents, Some(trouble));
        }
    }
    (builder.documents, None)
}

#[derive(Default)]
struct Builder {
    documents: Vec<Spot>,
    open: Vec<Open>,
    anchored: HashMap<usize, (Spot, usize)>,
    from_aliases: usize,
}

/// A list or mapping whose end has not come yet.
struct Open {
    spot: Spot,
    key: Option<Spot>,
    anchor: usize,
}

impl Builder {
    fn take(&mut self, event: Event<'_>, span: Span) -> Result<(), Trouble> {
        let (line, column) = start(span);
        match event {
            Event::Scalar(text, style, anchor, tag) => {
                refuse_tag(tag.is_some(), line, column)?;
                let quoted = style != ScalarStyle::Plain;
                let shape = Shape::Scalar { written: text.into_owned(), quoted };
                self.finish(Spot { line, column, shape }, anchor);
            }
            Event::SequenceStart(anchor, tag) => {
                refuse_tag(tag.is_some(), line, column)?;
                self.enter(Spot { line, column, shape: Shape::List(Vec::new()) }, anchor)?;
            }
            Event::MappingStart(anchor, tag) => {
                refuse_tag(tag.is_some(), line, column)?;
                self.enter(Spot { line, column, shape: Shape::Map(Vec::new()) }, anchor)?;
            }
            Event::SequenceEnd | Event::MappingEnd => {
                if let Some(open) = self.open.pop() {
                    self.finish(open.spot, open.anchor);
                }
            }
            Event::Alias(anchor) => self.alias(anchor, line, column)?,
            Event::Nothing
            | Event::StreamStart
            | Event::StreamEnd
            | Event::DocumentStart(_)
            | Event::DocumentEnd => {}
        }
        Ok(())
    }

    fn enter(&mut self, spot: Spot, anchor: usize) -> Result<(), Trouble> {
        if self.open.len() >= DEEPEST {
            let message = format!("values are nested more than {DEEPEST} deep");
            let help = "records need at most six levels; there may be a bracket too many";
            return Err(Trouble::new("too-deep", spot.line, spot.column, message).help(help));
        }
        self.open.push(Open { spot, key: None, anchor });
        Ok(())
    }

    fn finish(&mut self, spot: Spot, anchor: usize) {
        if anchor > 0 {
            let size = size(&spot);
            self.anchored.insert(anchor, (spot.clone(), size));
        }
        let Some(open) = self.open.last_mut() else {
            self.documents.push(spot);
            return;
        };
        match &mut open.spot.shape {
            Shape::List(items) => items.push(spot),
            Shape::Map(entries) => match open.key.take() {
                None => open.key = Some(spot),
                Some(key) => entries.push(beside(key, spot)),
            },
            Shape::Scalar { .. } => {}
        }
    }

    fn alias(&mut self, anchor: usize, line: u32, column: u32) -> Result<(), Trouble> {
        let Some((spot, size)) = self.anchored.get(&anchor) else {
            let message = "this alias is inside the value that it repeats";
            return Err(Trouble::new("alias-bomb", line, column, message).help("write the value out in full"));
        };
        self.from_aliases += size;
        if self.from_aliases > MOST_FROM_ALIASES {
            let message =
                format!("aliases repeat too much: more than {MOST_FROM_ALIASES} bytes in this file");
            let help = "write the values out in full";
            return Err(Trouble::new("alias-bomb", line, column, message).help(help));
        }
        let spot = Spot { line, column, shape: spot.shape.clone() };
        self.finish(spot, 0);
        Ok(())
    }
}

fn refuse_tag(tagged: bool, line: u32, column: u32) -> Result<(), Trouble> {
    if !tagged {
        return Ok(());
    }
    let message = "this value has a YAML tag, and records do not use tags";
    Err(Trouble::new("yaml-tag", line, column, message).help("leave out the word that starts with `!`"))
}

/// An empty value has no place of its own: its key's stands in.
fn beside(key: Spot, mut value: Spot) -> (Spot, Spot) {
    if matches!(&value.shape, Shape::Scalar { written, quoted: false } if written.is_empty()) {
        (value.line, value.column) = (key.line, key.column);
    }
    (key, value)
}

fn size(spot: &Spot) -> usize {
    match &spot.shape {
        Shape::Scalar { written, .. } => 1 + written.len(),
        Shape::List(items) => 1 + items.iter().map(size).sum::<usize>(),
        Shape::Map(entries) => 1 + entries.iter().map(|(key, value)| size(key) + size(value)).sum::<usize>(),
    }
}

fn start(span: Span) -> (u32, u32) {
    let count = |value: usize| u32::try_from(value).unwrap_or(u32::MAX);
    (count(span.start.line()), count(span.start.col() + 1))
}
