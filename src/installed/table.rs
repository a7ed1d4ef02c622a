//! A follow-up as a table.

use super::{Affected, FollowUp};

/// The columns of the table.
pub const FOLLOW_UP_HEAD: [&str; 18] = [
    "place",
    "fitting",
    "name",
    "overdue",
    "due",
    "working_factor",
    "kinds",
    "reasons",
    "gripping_part",
    "seated_mm",
    "tensioned_mm",
    "built",
    "by",
    "witness",
    "slip",
    "remark",
    "file",
    "line",
];

/// The rows of the table, cell by cell as [`FOLLOW_UP_HEAD`] names them; nothing in them is made harmless yet.
#[must_use]
pub fn follow_up_rows(found: &FollowUp<'_>) -> Vec<Vec<String>> {
    found.places.iter().map(row).collect()
}

fn row(place: &Affected<'_>) -> Vec<String> {
    let installed = place.installed;
    let day = |day: Option<jiff::civil::Date>| day.map(|day| day.to_string()).unwrap_or_default();
    let length = |length: Option<crate::units::Length>| {
        length.map(|length| length.mm().to_string()).unwrap_or_default()
    };
    let joined = |texts: Vec<&str>| texts.join("; ");
    let mut kinds: Vec<&str> = place.reasons.iter().map(|reason| reason.kind.word()).collect();
    kinds.dedup();
    vec![
        installed.place.clone(),
        installed.fitting.number.clone(),
        installed.fitting.name.clone(),
        if place.is_overdue { "yes" } else { "no" }.to_owned(),
        day(place.due),
        place.working_factor.map(|factor| format!("{factor:.2}")).unwrap_or_default(),
        joined(kinds),
        joined(place.reasons.iter().map(|reason| reason.words.as_str()).collect()),
        installed.gripping_part.as_ref().map(|part| part.number.clone()).unwrap_or_default(),
        length(installed.seated),
        length(installed.tensioned),
        day(installed.built),
        installed.by.clone(),
        installed.witness.clone(),
        installed.slip.clone(),
        installed.remark.clone(),
        installed.at.file.path.to_string(),
        installed.at.line.to_string(),
    ]
}
