//! What the rules on fittings, parts and marks share.

use super::Context;
use crate::catalogue::{Conductor, Fitting, Origin, Part, Status, Wording};
use crate::colour::Mark;
use crate::diagnostics::{Finding, Severity};
use crate::mixups::marks;
use crate::units::{Force, Numerals};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The fittings that are built today: those withdrawn or superseded are only met in the line.
pub(super) fn built<'a>(context: Context<'a>) -> impl Iterator<Item = &'a Arc<Fitting>> {
    context.catalogue.fittings.values().filter(|fitting| is_built(fitting))
}

/// Whether a fitting is built today.
pub(super) fn is_built(fitting: &Fitting) -> bool {
    matches!(fitting.status, Status::Current | Status::OnHold)
}

/// A finding on a field of a fitting.
pub(super) fn on_fitting(
    severity: Severity,
    code: &'static str,
    fitting: &Fitting,
    field: &str,
    message: String,
) -> Finding {
    on_field(severity, code, &fitting.origin, field, message).record(&fitting.number)
}

/// A finding at a letter of a text that a fitting's card prints.
pub(super) fn on_wording(
    severity: Severity,
    code: &'static str,
    fitting: &Fitting,
    wording: &Wording,
    letter: usize,
    message: String,
) -> Finding {
    let finding = on_fitting(severity, code, fitting, &wording.field, message);
    Finding { place: wording.place(letter), ..finding }
}

/// A finding on a field of a part.
pub(super) fn on_part(
    severity: Severity,
    code: &'static str,
    part: &Part,
    field: &str,
    message: String,
) -> Finding {
    on_field(severity, code, &part.origin, field, message).record(&part.number)
}

fn on_field(
    severity: Severity,
    code: &'static str,
    origin: &Origin,
    field: &str,
    message: String,
) -> Finding {
    let place = origin.of(field);
    let finding = match severity {
        Severity::Error => Finding::error(code, place, message),
        Severity::Warning => Finding::warning(code, place, message),
        Severity::Note => Finding::note(code, place, message),
    };
    finding.field(field)
}

/// Two gripping parts of one body with their marks.
#[derive(Debug, Clone, Copy)]
pub(super) struct MarkPair<'a> {
    pub(super) one: (&'a Part, &'a Mark),
    pub(super) two: (&'a Part, &'a Mark),
}

/// Every two marked gripping parts that go into one body, each pair once, in the order of their numbers.
pub(super) fn mark_pairs(context: Context<'_>) -> Vec<MarkPair<'_>> {
    let marks = marks(context.catalogue);
    let mut pairs: BTreeMap<(&str, &str), MarkPair<'_>> = BTreeMap::new();
    for body in &context.mixups.bodies {
        let marked = |part: &'_ Arc<Part>| marks.get(part.number.as_str()).copied();
        for (nth, one) in body.gripping_parts.iter().enumerate() {
            let Some(mark) = marked(one) else { continue };
            for two in &body.gripping_parts[nth + 1..] {
                let Some(other) = marked(two) else { continue };
                pairs
                    .entry((&one.number, &two.number))
                    .or_insert(MarkPair { one: (one, mark), two: (two, other) });
            }
        }
    }
    pairs.into_values().collect()
}

/// A conductor's breaking load: stated, else computed.
pub(super) fn breaking_load(conductor: &Conductor) -> Option<Force> {
    conductor.stated.breaking_load.or(conductor.section.breaking_load)
}

/// How the catalogue writes numbers.
pub(super) fn numerals(context: Context<'_>) -> Numerals {
    Numerals::new(context.catalogue.settings.decimal_mark)
}

/// "a", "a and b", "a, b and c".
pub(super) fn list<T: AsRef<str>>(words: &[T]) -> String {
    match words {
        [] => String::new(),
        [only] => only.as_ref().to_owned(),
        [first @ .., last] => {
            let first: Vec<&str> = first.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", first.join(", "), last.as_ref())
        }
    }
}
