//! What was found in the remembered run, to be said again where nothing has changed.

use crate::diagnostics::{Finding, Findings, Related, Severity};
use crate::source::{FilePath, Folder, Place};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use std::sync::{Mutex, PoisonError};

/// A finding as it is remembered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Remembered {
    code: String,
    severity: u8,
    at: At,
    record: Option<String>,
    field: Option<String>,
    message: String,
    found: Option<String>,
    expected: Option<String>,
    help: String,
    related: Vec<(At, String)>,
}

/// Whether the file is one of the layouts, its path, line and column.
type At = (bool, String, u32, u32);

/// All of them in order.
pub(super) fn remembered(findings: &Findings) -> Vec<Remembered> {
    findings.sorted().into_iter().map(of).collect()
}

fn of(finding: &Finding) -> Remembered {
    Remembered {
        code: finding.code.to_owned(),
        severity: SEVERITIES.iter().position(|severity| *severity == finding.severity).unwrap_or_default()
            as u8,
        at: at(&finding.place),
        record: finding.record.clone(),
        field: finding.field.clone(),
        message: finding.message.clone(),
        found: finding.found.clone(),
        expected: finding.expected.clone(),
        help: finding.help.clone(),
        related: finding.related.iter().map(|other| (at(&other.place), other.message.clone())).collect(),
    }
}

const SEVERITIES: [Severity; 3] = [Severity::Error, Severity::Warning, Severity::Note];

fn at(place: &Place) -> At {
    (place.file.folder == Folder::Layouts, place.file.path.to_string(), place.line, place.column)
}

/// The findings again.
pub(super) fn again(remembered: Vec<Remembered>) -> Findings {
    let mut findings = Findings::new();
    findings.extend(remembered.into_iter().map(finding));
    findings
}

fn finding(remembered: Remembered) -> Finding {
    let Remembered { code, severity, at, record, field, message, found, expected, help, related } =
        remembered;
    let related = related.into_iter().map(|(at, message)| Related { place: place(at), message }).collect();
    let severity = SEVERITIES.get(usize::from(severity)).copied().unwrap_or(Severity::Error);
    let (code, place) = (known(code), place(at));
    Finding { code, severity, place, record, field, message, found, expected, help, related }
}

fn place((of_layouts, path, line, column): At) -> Place {
    let file = if of_layouts { FilePath::layouts(&path) } else { FilePath::catalogue(&path) };
    Place { file, line, column }
}

/// The code for as long as the program runs. There are no more of them than rules.
fn known(code: String) -> &'static str {
    static KNOWN: Mutex<BTreeSet<&'static str>> = Mutex::new(BTreeSet::new());
    let mut known = KNOWN.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(code) = known.get(&*code) {
        return code;
    }
    let code: &'static str = code.leak();
    known.insert(code);
    code
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_finding_is_the_same_again() {
        let place = Place::at(FilePath::layouts("cards/title.xml"), 4, 9);
        let finding = Finding::warning("unknown-key", place, "there is no key `nam`")
            .record("ST-4103")
            .field("nam")
            .found("nam")
            .expected("name")
            .help("did you mean `name`?")
            .related(Place::whole(FilePath::catalogue("catalogue.yaml")), "here");
        let findings = Findings::from(finding);
        let text = serde_json::to_string(&remembered(&findings)).unwrap();
        let again = again(serde_json::from_str(&text).unwrap());
        assert_eq!(again.sorted(), findings.sorted());
    }
}
