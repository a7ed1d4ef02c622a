//! What the rules on fittings, parts and marks share.

use super::Context;
use crate::catalogue::{Family, Fitting, Part, Role, Wording};
use crate::colour::Mark;
use crate::diagnostics::{Finding, Place, Severity};
use crate::grip::Geometry;
use crate::mixups::{alike_in_place, marks};
use crate::register::HolderCopies;
use crate::units::{Length, Numerals};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The fittings that are built today: those withdrawn or superseded are only met in the line.
pub(super) fn built<'a>(context: Context<'a>) -> impl Iterator<Item = &'a Arc<Fitting>> {
    context.catalogue.fittings.values().filter(|fitting| is_built(fitting))
}

/// Whether a fitting is built today.
pub(super) fn is_built(fitting: &Fitting) -> bool {
    !fitting.status.is_out_of_use()
}

/// A finding on a field of a fitting.
pub(super) fn on_fitting(
    severity: Severity,
    code: &'static str,
    fitting: &Fitting,
    field: &str,
    message: String,
) -> Finding {
    finding(severity, code, fitting.place_of(field), message).field(field).record(&fitting.number)
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
    let place = wording.place(letter);
    match fitting.procedure_of(wording) {
        Some(procedure) => {
            let message = format!("{message} (in {})", fitting.number);
            finding(severity, code, place, message)
                .record(&procedure.id)
                .field(&wording.field)
                .related(fitting.origin.of("procedure"), "the fitting that takes this procedure")
        }
        None => finding(severity, code, place, message).record(&fitting.number).field(&wording.field),
    }
}

/// A finding on a field of a part.
pub(super) fn on_part(
    severity: Severity,
    code: &'static str,
    part: &Part,
    field: &str,
    message: String,
) -> Finding {
    finding(severity, code, part.origin.of(field), message).field(field).record(&part.number)
}

fn finding(severity: Severity, code: &'static str, place: Place, message: String) -> Finding {
    match severity {
        Severity::Error => Finding::error(code, place, message),
        Severity::Warning => Finding::warning(code, place, message),
        Severity::Note => Finding::note(code, place, message),
    }
}

/// Two parts that go into one place of a body, with their marks.
#[derive(Debug, Clone, Copy)]
pub(super) struct MarkPair<'a> {
    pub(super) one: (&'a Part, &'a Mark),
    pub(super) two: (&'a Part, &'a Mark),
}

/// Every two marked parts that go into one place of a body, each pair once, in the order of their numbers.
pub(super) fn mark_pairs(context: Context<'_>) -> Vec<MarkPair<'_>> {
    let marks = marks(context.catalogue);
    let mut pairs: BTreeMap<(&str, &str), MarkPair<'_>> = BTreeMap::new();
    for body in &context.mixups.bodies {
        let marked = |part: &'_ Arc<Part>| marks.get(part.number.as_str()).copied();
        for (nth, one) in body.parts.iter().enumerate() {
            let Some(mark) = marked(one) else { continue };
            for two in body.parts[nth + 1..].iter().filter(|two| alike_in_place(one, two)) {
                let Some(other) = marked(two) else { continue };
                pairs
                    .entry((&one.number, &two.number))
                    .or_insert(MarkPair { one: (one, mark), two: (two, other) });
            }
        }
    }
    pairs.into_values().collect()
}

/// The sleeve of a joint, with half its length: the room of each conductor. `None` where it has several.
pub(super) fn half_sleeve(fitting: &Fitting) -> Option<(&Part, Length)> {
    let sleeves = fitting.gripping().map(|item| item.part.as_ref()).filter(|part| part.role == Role::Sleeve);
    let sleeves: Vec<&Part> = sleeves.collect();
    let ([only], Family::Sleeve) = (&sleeves[..], fitting.family) else { return None };
    let Some(Geometry::Sleeve(sleeve)) = &only.geometry else { return None };
    Some((only, sleeve.length? / 2.0))
}

/// How long a cone or wedge grips.
pub(super) fn grip_length(part: &Part) -> Option<Length> {
    match part.geometry.as_ref()? {
        Geometry::Collet(cone) => cone.length,
        Geometry::SpreadingCone(cone) => cone.length,
        Geometry::Wedge(wedge) => wedge.length,
        _ => None,
    }
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

/// Copies of a holder's cards; of many, the first ones.
pub(super) fn copies_in_words(copies: &[HolderCopies]) -> String {
    const SHOWN: usize = 5;
    let shown = copies.iter().take(SHOWN).map(|HolderCopies { copies, .. }| {
        format!("{} × {} issue {}", copies.copies, copies.number, copies.issue)
    });
    let more = (copies.len() > SHOWN).then(|| format!("and {} more", copies.len() - SHOWN));
    shown.chain(more).collect::<Vec<_>>().join(", ")
}
