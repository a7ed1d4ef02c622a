//! From the rows of lists to fittings in the line: every name resolved, every place once.

use super::Installed;
use super::known::Known;
use crate::catalogue::{Catalogue, Fitting, Part};
use crate::diagnostics::{Finding, Findings, KnownNames, shortened};
use crate::mixups::Mixups;
use crate::records::{Field, InstalledRow, MOST_ROWS, Name, Prose, Text, read_installed};
use crate::register::Register;
use crate::source::Place;
use crate::units::Length;
use rayon::prelude::*;
use std::collections::HashMap;
use std::sync::Arc;

/// The fittings of all lists in the order of file and line, as far as their rows are sound, and what is wrong with
/// the others. A row of a fitting whose own record is faulty is left out, and not told again.
#[must_use]
pub fn installed(catalogue: &Catalogue, mixups: &Mixups) -> (Vec<Installed>, Findings) {
    let read = |file: &crate::catalogue::InstalledFile| {
        let mut findings = Findings::new();
        let rows = read_installed(&file.file, &file.bytes, &mut findings);
        (rows, findings)
    };
    let read: Vec<_> = catalogue.installed.par_iter().map(read).collect();
    let mut linking = Linking::of(catalogue, mixups);
    let mut installed = Vec::new();
    for (rows, found) in read {
        linking.findings.extend(found);
        installed.extend(rows.iter().filter_map(|row| linking.row(row)));
    }
    (installed, linking.findings)
}

struct Linking<'a> {
    catalogue: &'a Catalogue,
    register: Register,
    known: Known<'a>,
    /// Where place, fitting and slip stand first.
    seen: HashMap<(String, String, String), Place>,
    rows: usize,
    fittings: Option<KnownNames>,
    findings: Findings,
}

impl<'a> Linking<'a> {
    fn of(catalogue: &'a Catalogue, mixups: &'a Mixups) -> Self {
        Self {
            catalogue,
            register: Register::of(catalogue),
            known: Known::of(mixups),
            seen: HashMap::new(),
            rows: 0,
            fittings: None,
            findings: Findings::new(),
        }
    }

    fn row(&mut self, row: &InstalledRow) -> Option<Installed> {
        self.rows += 1;
        if self.rows > MOST_ROWS {
            let message = "there are too many installed fittings, from here on they are not read";
            let finding = Finding::error("too-many-records", row.place.clone(), message);
            self.findings.extend((self.rows == MOST_ROWS + 1).then(|| {
                finding.expected(format!("at most {MOST_ROWS} rows in all lists")).help("split the catalogue")
            }));
            return None;
        }
        let record = &row.record;
        let fitting = record.fitting.as_ref().and_then(|name| self.fitting(name, row));
        let part = match (&fitting, &record.gripping_part) {
            (Some(fitting), Some(name)) => self.part(fitting, name, row).map(Some),
            _ => Some(None),
        };
        let is_known = fitting.as_ref().is_none_or(|fitting| self.issue_is_known(fitting, row));
        let is_single = self.is_single(row);
        self.day_to_come(row);
        let is_sound = row.sound && is_known && is_single;
        let (fitting, gripping_part) = (fitting?, part?);
        is_sound.then(|| Installed {
            place: record.place.as_ref().map(|place| place.value.0.clone()).unwrap_or_default(),
            fitting: Arc::clone(fitting),
            gripping_part,
            seated: record.seated_mm.as_ref().map(|read| Length::from_mm(read.value.bare())),
            tensioned: record.tensioned_mm.as_ref().map(|read| Length::from_mm(read.value.bare())),
            built: record.built.as_ref().map(|day| day.value.0),
            by: text(record.by.as_ref()),
            witness: text(record.witness.as_ref()),
            slip: text(record.slip.as_ref()),
            issue: record.issue.as_ref().map(|issue| issue.value.bare()),
            remark: record
                .remark
                .as_ref()
                .map(|Field { value: Prose(text), .. }| text.clone())
                .unwrap_or_default(),
            at: row.place.clone(),
        })
    }

    fn fitting(&mut self, name: &Field<Name>, row: &InstalledRow) -> Option<&'a Arc<Fitting>> {
        let catalogue = self.catalogue;
        let number = name.value.0.as_str();
        let found = catalogue.fittings.get(number);
        if found.is_none() && !catalogue.left_out.contains(number) {
            let known = self
                .fittings
                .get_or_insert_with(|| KnownNames::new(catalogue.fittings.keys().map(String::as_str)));
            let help = match (known.nearest(number), catalogue.parts.contains_key(number)) {
                (_, true) => format!("`{number}` is a part: write the number of the fitting that it is in"),
                (Some(near), false) => format!("did you mean `{near}`?"),
                (None, false) => "correct the number, or add a record of this fitting".to_owned(),
            };
            let message = format!("there is no fitting `{}`", shortened(number));
            self.tell("unknown-fitting", name, row, message, |finding| finding.help(help));
        }
        found
    }

    /// The part that was written down; `None` where it is none that grips in that fitting.
    fn part(
        &mut self,
        fitting: &'a Arc<Fitting>,
        name: &Field<Name>,
        row: &InstalledRow,
    ) -> Option<Arc<Part>> {
        let number = name.value.0.as_str();
        if let Some((part, _)) = self.known.part(fitting, number) {
            return Some(part);
        }
        if self.catalogue.left_out.contains(number) {
            return None;
        }
        let listed = self.known.numbers(fitting);
        let help = match listed.as_slice() {
            [] => format!("nothing grips in {} by its record: leave the cell empty", fitting.number),
            numbers => format!("{} goes into {}", either(numbers), fitting.number),
        };
        let known = self.catalogue.parts.get(number);
        let (code, message) = match known {
            Some(part) if part.role.grips() => {
                ("not-a-gripping-part", format!("{} does not go into {}", part.number, fitting.number))
            }
            Some(part) => (
                "not-a-gripping-part",
                format!("{} holds no conductor: it is a {}", part.number, part.role.word()),
            ),
            None => ("unknown-part", format!("there is no part `{}`", shortened(number))),
        };
        self.tell(code, name, row, message, |finding| finding.help(help));
        None
    }

    /// Whether the card of a fitting had the issue that is stated, on the day on which it was built.
    fn issue_is_known(&mut self, fitting: &Fitting, row: &InstalledRow) -> bool {
        let Some(issue) = &row.record.issue else { return true };
        let stated = issue.value.bare();
        let number = fitting.number.as_str();
        let built = row.record.built.as_ref().map(|day| day.value.0);
        let issues = self.register.issues(number);
        let by_then: Vec<u32> = issues
            .filter(|(edition, _)| built.is_none_or(|built| edition.date <= built))
            .map(|(_, card)| card.issue)
            .collect();
        if by_then.contains(&stated) {
            return true;
        }
        let when = built.map(|day| format!(" on {day}")).unwrap_or_default();
        let message = format!("the card of {number} had no issue {stated}{when}");
        let expected = match by_then.as_slice() {
            [] => "no issue: the register holds none by then".to_owned(),
            issues => format!("issue {}", either(&issues.iter().map(u32::to_string).collect::<Vec<_>>())),
        };
        let issue = issue.clone();
        self.tell("unknown-issue", &issue, row, message, |finding| {
            finding
                .found(stated.to_string())
                .expected(expected)
                .help("read the issue on the card again, and the day")
        });
        false
    }

    /// Whether no row before has the same place, fitting and slip.
    fn is_single(&mut self, row: &InstalledRow) -> bool {
        let record = &row.record;
        let (Some(place), Some(fitting)) = (&record.place, &record.fitting) else { return true };
        let key = (place.value.0.clone(), fitting.value.0.clone(), text(record.slip.as_ref()));
        let first = self.seen.entry(key).or_insert_with(|| place.place.clone());
        if *first == place.place {
            return true;
        }
        let first = first.clone();
        let message = "place, fitting and slip are those of another row";
        self.tell("installed-twice", place, row, message.to_owned(), |finding| {
            finding
                .help("take one of the two out; two fittings at one mast differ in their place or their slip")
                .related(first, "it is already here")
        });
        false
    }

    /// Of a fitting that was built in the future nobody would be told what has changed until then.
    fn day_to_come(&mut self, row: &InstalledRow) {
        let (Some(day), Some(today)) = (&row.record.built, self.catalogue.settings.stated_date()) else {
            return;
        };
        let built = day.value.0;
        if built > today {
            let message = format!("it was built on {built}, and the catalogue is of {today}");
            let finding = Finding::warning("date-to-come", day.place.clone(), message)
                .help("read the day on the slip again, or bring `date` in catalogue.yaml up to date");
            self.push(finding.field(day.path.as_str()), row);
        }
    }

    fn tell<T>(
        &mut self,
        code: &'static str,
        field: &Field<T>,
        row: &InstalledRow,
        message: String,
        more: impl FnOnce(Finding) -> Finding,
    ) {
        let finding = Finding::error(code, field.place.clone(), message).field(field.path.as_str());
        self.push(more(finding), row);
    }

    fn push(&mut self, mut finding: Finding, row: &InstalledRow) {
        finding.record = row.record.place.as_ref().map(|place| shortened(&place.value.0));
        self.findings.push(finding);
    }
}

fn text(field: Option<&Field<Text>>) -> String {
    field.map(|field| field.value.0.clone()).unwrap_or_default()
}

/// Words with commas, and "or" before the last.
fn either(words: &[String]) -> String {
    match words.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, before)) => format!("{} or {last}", before.join(", ")),
    }
}
