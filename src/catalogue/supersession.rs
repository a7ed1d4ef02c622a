//! Supersession leads from fitting to fitting and ends at one that isn't superseded.

use super::model::Fitting;
use super::names::Names;
use super::record_kind::RecordKind;
use crate::diagnostics::{Finding, Findings, KnownNames};
use crate::records::{Document, Field, FittingRecord, Name};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

type Successors<'a> = BTreeMap<&'a str, &'a Field<Name>>;

/// Tells of successors that aren't there and of circles; answers the numbers of the fittings concerned.
pub(super) fn check(
    fittings: &[Document<FittingRecord>],
    names: &Names,
    findings: &mut Findings,
) -> BTreeSet<String> {
    let successors: Successors<'_> = fittings.iter().filter_map(successor).collect();
    let known = KnownNames::new(fittings.iter().filter_map(|document| document.id.as_deref()));
    let mut concerned = BTreeSet::new();
    for (number, next) in &successors {
        if names.kind_of(&next.value.0) != Some(RecordKind::Fitting) && !is_salvaged(&next.value.0, names) {
            findings.push(to_nothing(number, next, &known, names));
            concerned.insert((*number).to_owned());
        }
    }
    for circle in circles(&successors) {
        findings.push(in_circle(&circle, &successors));
        concerned.extend(circle.into_iter().map(ToOwned::to_owned));
    }
    concerned
}

/// Names with each fitting that is replaced what to use instead: the last of the line.
pub(super) fn resolve(fittings: &mut BTreeMap<String, Arc<Fitting>>) {
    let next: BTreeMap<String, String> = fittings
        .values()
        .filter_map(|fitting| Some((fitting.number.clone(), fitting.superseded_by.clone()?)))
        .collect();
    for fitting in fittings.values_mut().filter(|fitting| fitting.superseded_by.is_some()) {
        let mut last = fitting.superseded_by.clone();
        // No line is longer than all there are: circles are found before.
        for _ in 0..next.len() {
            let Some(further) = last.as_ref().and_then(|number| next.get(number)) else { break };
            last = Some(further.clone());
        }
        Arc::make_mut(fitting).use_instead = last;
    }
}

fn successor(document: &Document<FittingRecord>) -> Option<(&str, &Field<Name>)> {
    let record = document.record.as_ref()?;
    Some((document.id.as_deref()?, record.superseded_by.as_ref()?))
}

fn is_salvaged(number: &str, names: &Names) -> bool {
    names.kind_of(number).is_none() && names.has_record(number)
}

fn to_nothing(number: &str, next: &Field<Name>, known: &KnownNames, names: &Names) -> Finding {
    let wrong = &next.value.0;
    let near = known.nearest(wrong).filter(|near| *near != number);
    let help = match (names.kind_of(wrong), near) {
        (Some(kind), _) => format!("`{wrong}` is {}", kind.with_article()),
        (None, Some(near)) => format!("did you mean `{near}`?"),
        (None, None) => "add that fitting, or write `status: withdrawn` where nothing replaces it".to_owned(),
    };
    Finding::error("supersession-to-nothing", next.place.clone(), format!("there is no fitting `{wrong}`"))
        .record(number)
        .field(&next.path)
        .help(help)
}

/// Each circle once, from its smallest number on.
fn circles<'a>(successors: &Successors<'a>) -> Vec<Vec<&'a str>> {
    let mut done: BTreeSet<&str> = BTreeSet::new();
    let mut circles = Vec::new();
    for start in successors.keys() {
        let mut path: Vec<&'a str> = Vec::new();
        let mut on_path: BTreeSet<&str> = BTreeSet::new();
        let mut next = Some(*start);
        while let Some(number) = next.filter(|number| !done.contains(number)) {
            if !on_path.insert(number) {
                let from = path.iter().position(|other| *other == number).unwrap_or(0);
                circles.push(path[from..].to_vec());
                break;
            }
            path.push(number);
            next = successors
                .get(number)
                .and_then(|field| successors.get_key_value(field.value.0.as_str()))
                .map(|(key, _)| *key);
        }
        done.extend(path);
    }
    circles
}

fn in_circle(circle: &[&str], successors: &Successors<'_>) -> Finding {
    let first = successors[circle[0]];
    let round: Vec<&str> = circle.iter().chain(&circle[..1]).copied().collect();
    let finding = Finding::error(
        "supersession-circle",
        first.place.clone(),
        "these fittings supersede each other in a circle",
    )
    .record(circle[0])
    .field(&first.path)
    .found(round.join(" → "))
    .help("one of them must be in use: delete its `superseded_by`");
    circle[1..].iter().fold(finding, |finding, number| {
        let field = successors[number];
        finding.related(field.place.clone(), format!("{number} is superseded by {}", field.value.0))
    })
}
