//! Texts that may name values of their fitting: the text, and where each of its letters stands.

use super::field::{Read, Reader};
use super::node::Node;
use crate::source::{FilePath, Place};
use schemars::{JsonSchema, Schema, SchemaGenerator};
use std::borrow::Cow;
use std::fmt;

/// A text with the places of its letters.
#[derive(Debug, Clone)]
pub struct Worded<T> {
    /// The text.
    pub text: T,
    /// Where its letters stand.
    pub letters: Letters,
}

/// Where the letters of a text stand: a text may be quoted, folded, or broken over several lines.
#[derive(Clone, PartialEq, Eq)]
pub struct Letters {
    file: FilePath,
    /// The first letter of each stretch that stands unbroken in one line.
    stretches: Vec<Stretch>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Stretch {
    /// Letters of the text before it.
    from: u32,
    line: u32,
    column: u32,
}

impl fmt::Debug for Letters {
    /// Places are left out where [`Place`] leaves them out.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        if out.sign_minus() {
            return out.write_str("Letters");
        }
        out.debug_struct("Letters").field("file", &self.file).field("stretches", &self.stretches).finish()
    }
}

impl Letters {
    /// The place of the letter that so many stand before.
    #[must_use]
    pub fn at(&self, letter: usize) -> Place {
        let letter = u32::try_from(letter).unwrap_or(u32::MAX);
        let after = self.stretches.partition_point(|stretch| stretch.from <= letter);
        match self.stretches.get(after.saturating_sub(1)) {
            Some(stretch) => {
                Place::at(self.file.clone(), stretch.line, stretch.column + (letter - stretch.from))
            }
            None => Place::whole(self.file.clone()),
        }
    }

    /// Follows a text through the lines of its file, from where its node starts. Where they part, as in an
    /// alias, all that is left has the place that was reached.
    fn follow(text: &str, node: &Node, lines: &[&str], file: &FilePath) -> Self {
        let mut at = Position::before_text(node, lines);
        let mut stretches: Vec<Stretch> = Vec::new();
        let mut expected = None;
        for (from, letter) in (0_u32..).zip(text.chars()) {
            let Some(next) = at.reach(letter, lines) else { break };
            if expected != Some((at.line, at.column)) {
                stretches.push(Stretch { from, line: count(at.line + 1), column: count(at.column + 1) });
            }
            expected = Some((at.line, at.column + 1));
            at.column = next;
        }
        if stretches.is_empty() {
            stretches.push(Stretch { from: 0, line: node.line, column: node.column });
        }
        Self { file: file.clone(), stretches }
    }
}

/// A line and column of a file, both counted from 0.
#[derive(Clone, Copy)]
struct Position {
    line: usize,
    column: usize,
    quote: Option<char>,
}

impl Position {
    /// Behind the quote or the sign of a block that a text starts with.
    fn before_text(node: &Node, lines: &[&str]) -> Self {
        let line = (node.line as usize).saturating_sub(1);
        let column = (node.column as usize).saturating_sub(1);
        match letter(lines, line, column) {
            Some(quote @ ('"' | '\'')) => Self { line, column: column + 1, quote: Some(quote) },
            Some('|' | '>') => Self { line: line + 1, column: 0, quote: None },
            _ => Self { line, column, quote: None },
        }
    }

    /// Whether a backslash joins the next line on.
    fn goes_on(&self, lines: &[&str]) -> bool {
        self.quote == Some('"')
            && letter(lines, self.line, self.column) == Some('\\')
            && letter(lines, self.line, self.column + 1).is_none()
    }

    /// Goes on to a letter, over spaces and line ends; the column behind it.
    fn reach(&mut self, wanted: char, lines: &[&str]) -> Option<usize> {
        if wanted.is_whitespace() && letter(lines, self.line, self.column).is_none_or(char::is_whitespace) {
            return Some(self.column + 1);
        }
        while letter(lines, self.line, self.column).is_none_or(char::is_whitespace) || self.goes_on(lines) {
            if self.column < length(lines, self.line)? {
                self.column += 1;
            } else {
                (self.line, self.column) = (self.line + 1, 0);
            }
        }
        match (letter(lines, self.line, self.column)?, self.quote) {
            ('\\', Some('"')) => Some(self.column + escaped(lines, self.line, self.column)),
            ('\'', Some('\'')) => (wanted == '\'').then_some(self.column + 2),
            (found, _) => (found == wanted).then_some(self.column + 1),
        }
    }
}

/// How many characters an escape takes, its backslash among them.
fn escaped(lines: &[&str], line: usize, column: usize) -> usize {
    match letter(lines, line, column + 1) {
        Some('x') => 4,
        Some('u') => 6,
        Some('U') => 10,
        _ => 2,
    }
}

fn letter(lines: &[&str], line: usize, column: usize) -> Option<char> {
    lines.get(line)?.chars().nth(column)
}

fn length(lines: &[&str], line: usize) -> Option<usize> {
    lines.get(line).map(|line| line.chars().count())
}

fn count(value: usize) -> u32 {
    u32::try_from(value).unwrap_or(u32::MAX)
}

impl<T: Read + AsRef<str>> Read for Worded<T> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let text = T::read(node, reader)?;
        let letters = Letters::follow(text.as_ref(), node, reader.lines(), reader.file());
        Some(Self { text, letters })
    }
}

impl<T: JsonSchema> JsonSchema for Worded<T> {
    fn inline_schema() -> bool {
        T::inline_schema()
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        T::json_schema(generator)
    }
}
