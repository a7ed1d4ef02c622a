//! Values that a note names in braces: put in where the note is about a fitting.

use super::positions::Positions;
use crate::catalogue::{Catalogue, Note, NoteAbout, PieceKind, pieces};
use crate::diagnostics::{Finding, nearest};
use crate::facts::{self, Unnamed, VALUE_NAMES, Values};
use crate::source::Place;
use crate::units::Numerals;
use pulldown_cmark::{Event, Tag, TagEnd};
use std::ops::Range;

/// What the parser reads, with where it reads it.
pub(super) type Events<'a> = Vec<(Event<'a>, Range<usize>)>;

/// A value that can't be put in, and where its brace stands.
pub(super) struct ValueFault {
    offset: usize,
    what: What,
}

enum What {
    Unclosed,
    Unnamed { name: String, why: Unnamed },
}

/// The values of the fitting that a note is about; `None` where it is about something else.
pub(super) fn of_note(note: &Note, catalogue: &Catalogue) -> Option<Values> {
    let NoteAbout::Record(number) = &note.about else { return None };
    let numerals = Numerals::new(catalogue.settings.decimal_mark);
    catalogue.fittings.get(number).map(|fitting| facts::values(fitting, numerals))
}

/// Whether a note is about a record that is left out: what is wrong with that is told elsewhere.
pub(super) fn is_moot(note: &Note, catalogue: &Catalogue) -> bool {
    matches!(&note.about, NoteAbout::Record(number) if catalogue.left_out.contains(number))
}

/// Puts the values into what the parser reads. Code stays as it is written. Nothing is put into notes that are about no
/// fitting: a name in braces is a fault there, any other brace is a sign like others, and `{{` is one brace.
pub(super) fn put_in(events: &mut Events<'_>, markdown: &str, values: Option<&Values>) -> Vec<ValueFault> {
    join_broken(events);
    let mut faults = Vec::new();
    let mut in_code = false;
    for (event, range) in events {
        match event {
            Event::Start(Tag::CodeBlock(_)) => in_code = true,
            Event::End(TagEnd::CodeBlock) => in_code = false,
            Event::Text(text) if !in_code && text.contains('{') => {
                faults.extend(in_text(text, range, markdown, values));
                *text = match values {
                    Some(values) => values.filled(text).into(),
                    None => text.replace("{{", "{").into(),
                };
            }
            _ => {}
        }
    }
    faults
}

/// The parser breaks texts at signs that could have been markup, such as the `_` of a name: these are joined again.
fn join_broken(events: &mut Events<'_>) {
    let mut joined: Events<'_> = Vec::with_capacity(events.len());
    for (event, range) in events.drain(..) {
        if let (Some((Event::Text(before), whole)), Event::Text(more)) = (joined.last_mut(), &event)
            && matches!(pieces(before).last().map(|piece| piece.kind), Some(PieceKind::Unclosed(_)))
        {
            *before = format!("{before}{more}").into();
            whole.end = range.end;
            continue;
        }
        joined.push((event, range));
    }
    *events = joined;
}

fn in_text(text: &str, range: &Range<usize>, markdown: &str, values: Option<&Values>) -> Vec<ValueFault> {
    let (none, mut faults, mut from) = (Values::default(), Vec::new(), range.start);
    for piece in pieces(text) {
        let rest = &markdown[from..range.end];
        let name = match piece.kind {
            // Of two braces, the only words with one in them.
            PieceKind::Words("{") => {
                from += rest.find("{{").map_or(0, |at| at + 2);
                continue;
            }
            PieceKind::Words(_) => continue,
            PieceKind::Unclosed(_) => "",
            PieceKind::Value(name) => name,
        };
        // An escape before it moves what stands behind: the name is looked for from the last brace on.
        let mut braces = rest.match_indices('{').map(|(at, _)| at);
        let found = braces.find(|at| rest[at + 1..].trim_start().starts_with(name));
        let is_close = found
            .and_then(|at| rest[at + 1..].strip_prefix(name))
            .is_some_and(|behind| behind.starts_with('}'));
        let offset = from + found.unwrap_or(0);
        from += found.map_or(0, |at| at + 1);
        let what = match (piece.kind, values.unwrap_or(&none).get(name)) {
            (PieceKind::Unclosed(_), _) => values.is_some().then_some(What::Unclosed),
            (_, Err(why)) => {
                let is_meant = values.is_some() || why == Unnamed::Absent || is_close && is_name(name);
                is_meant.then(|| What::Unnamed { name: name.to_owned(), why })
            }
            _ => None,
        };
        faults.extend(what.map(|what| ValueFault { offset, what }));
    }
    faults
}

/// Whether what stands in braces looks like the name of a value.
fn is_name(text: &str) -> bool {
    !text.is_empty() && text.chars().all(|letter| letter.is_alphanumeric() || matches!(letter, '_' | '.'))
}

impl ValueFault {
    pub(super) fn finding(&self, note: &Note, values: Option<&Values>) -> Finding {
        let (line, column) = Positions::of(&note.markdown).at(self.offset);
        let place = Place::at(note.place.file.clone(), line, column);
        match &self.what {
            What::Unclosed => Finding::error("unknown-value", place, "nothing closes this brace")
                .help("write `}` behind the name of the value, or `{{` for a brace"),
            What::Unnamed { name, why: Unnamed::Unknown } => unknown(name, place, values.is_some()),
            What::Unnamed { name, .. } if values.is_none() => {
                let message = format!("this note is about no fitting, so `{name}` has no value in it");
                Finding::error("value-absent", place, message)
                    .help("write the value, or put the text into the note of the fitting")
            }
            What::Unnamed { name, .. } => {
                let message = format!("the fitting has no value for `{name}`");
                Finding::error("value-absent", place, message)
                    .help("state it in the record of the fitting, or take the name away")
            }
        }
    }
}

fn unknown(name: &str, place: Place, is_of_fitting: bool) -> Finding {
    let finding = Finding::error("unknown-value", place, format!("there is no value called `{name}`"));
    if !is_of_fitting {
        return finding.help("this note is about no fitting: write the value; `{{` is a brace");
    }
    match nearest(name, VALUE_NAMES.iter().copied()) {
        Some(near) => finding.help(format!("did you mean `{near}`?")),
        None => finding.help(format!("the values are {}; `{{{{` is a brace", VALUE_NAMES.join(", "))),
    }
}
