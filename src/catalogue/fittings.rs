//! Fittings: checked, and linked to their conductors, parts and notices.

use super::check::{Check, origin};
use super::model::{
    CompleteWithout, Conductor, Fitting, InService, Item, Notice, Part, Procedure, Role, StandOut,
    StandOutFrom, Status,
};
use super::procedures::{check_steps, if_wrong, steps, tightenings};
use super::quantities::{mark, quantity, range, text, word};
use super::record_index::RecordIndex;
use super::wordings::{wording, wordings};
use crate::records::{
    CompleteWithoutRecord, Document, Field, FittingRecord, InServiceWord, ItemRecord, Name, StandOutRecord,
};
use std::collections::BTreeMap;
use std::sync::Arc;

/// What fittings are made of and refer to.
#[derive(Clone, Copy)]
pub(super) struct Indexes<'a> {
    pub conductors: &'a RecordIndex<Conductor>,
    pub parts: &'a RecordIndex<Part>,
    pub notices: &'a RecordIndex<Notice>,
    pub procedures: &'a RecordIndex<Procedure>,
}

/// The fitting that a document states, where it and what it names are sound.
pub(super) fn fitting(
    document: &Document<FittingRecord>,
    indexes: Indexes<'_>,
    check: &mut Check<'_>,
) -> Option<Fitting> {
    let record = document.record.as_ref()?;
    let conductors = conductors(document, record, indexes.conductors, check);
    let items = items(record, indexes.parts, check);
    let notices = notices(record, indexes.notices, check);
    let procedure = record.procedure.as_ref().and_then(|name| indexes.procedures.find(name, check));
    let in_service = in_service(record, check);
    check_status(record, check);
    check_stopped(record, check);
    check_steps(record.steps.as_ref(), check);
    if !check.is_sound() {
        return None;
    }
    let (own, seen) = mark(record.mark.as_ref());
    let wedged =
        items.iter().find(|item| item.part.role.grips()).is_some_and(|item| item.part.role == Role::Wedge);
    let gripping = items.iter().map(|item| &item.part).find(|part| part.role.grips() && part.mark.is_some());
    let mut fitting = Fitting {
        number: record.number.as_ref()?.value.0.clone(),
        name: record.name.as_ref()?.value.0.clone(),
        family: record.family.as_ref()?.value,
        conductors,
        mark: own.or_else(|| gripping.and_then(|part| part.mark.clone())),
        mark_seen_after_assembly: seen.or_else(|| gripping.and_then(|part| part.mark_seen_after_assembly)),
        items,
        stamp: text(record.stamp.as_ref()),
        stand_out: record.stand_out.as_ref().map(|field| stand_out(&field.value, wedged)),
        insertion: quantity(record.insertion.as_ref()),
        tail: quantity(record.tail.as_ref()),
        holding_load: quantity(record.holding_load.as_ref()),
        line_tension_max: quantity(record.line_tension_max.as_ref()),
        procedure: procedure.clone(),
        tightening: tightenings(record.tightening.as_ref()),
        witness: wording(record.witness.as_ref()),
        steps: steps(record.steps.as_ref()),
        slip_mark: record.slip_mark.as_ref().map(|field| field.value.0),
        reject_if: wordings(record.reject_if.as_ref()),
        if_wrong: if_wrong(record.if_wrong.as_ref()),
        complete_without: record.complete_without.as_ref().map(complete_without).unwrap_or_default(),
        notices,
        status: word(record.status.as_ref()).unwrap_or(Status::Current),
        superseded_by: record.superseded_by.as_ref().map(|name| name.value.0.clone()),
        use_instead: None,
        in_service,
        origin: origin(document),
    };
    if let Some(procedure) = procedure {
        take(&mut fitting, &procedure);
    }
    Some(fitting)
}

/// Takes from a procedure what the record of a fitting does not state. What it states empty stays empty.
fn take(fitting: &mut Fitting, procedure: &Procedure) {
    let lacks = |field: &str| !fitting.origin.has(field);
    if lacks("tightening") {
        fitting.tightening.clone_from(&procedure.tightening);
    }
    if lacks("witness") {
        fitting.witness.clone_from(&procedure.witness);
    }
    if lacks("steps") {
        fitting.steps.clone_from(&procedure.steps);
    }
    if lacks("slip_mark") {
        fitting.slip_mark = procedure.slip_mark;
    }
    if lacks("reject_if") {
        fitting.reject_if.clone_from(&procedure.reject_if);
    }
    if lacks("if_wrong.before_load") {
        fitting.if_wrong.before_load.clone_from(&procedure.if_wrong.before_load);
    }
    if lacks("if_wrong.under_load") {
        fitting.if_wrong.under_load.clone_from(&procedure.if_wrong.under_load);
    }
}

fn conductors(
    document: &Document<FittingRecord>,
    record: &FittingRecord,
    index: &RecordIndex<Conductor>,
    check: &mut Check<'_>,
) -> Vec<Arc<Conductor>> {
    let one = record.conductor.iter();
    let names: Vec<&Field<Name>> =
        one.chain(record.conductors.iter().flat_map(|field| &field.value)).collect();
    match (check.has("conductor"), check.has("conductors")) {
        (false, false) => {
            let message = "a fitting must have the key `conductor`";
            check.fault_at("missing-key", "conductor", document.place.clone(), message, |finding| {
                finding.help("add `conductor: …`, or `conductors: [a, b]` for a joint")
            });
        }
        (true, true) => {
            let place = origin(document).of("conductors");
            let message = "a fitting has either `conductor` or `conductors`";
            check.fault_at("not-exactly-one", "conductors", place, message, |finding| {
                finding.help("keep only one of the two")
            });
        }
        _ => {}
    }
    if let Some(joint) = record.conductors.as_ref().filter(|joint| !(1..=2).contains(&joint.value.len())) {
        check.fault("wrong-number-of-conductors", joint, "a joint has two conductors", |finding| {
            finding.found(joint.value.len().to_string()).expected("2")
        });
    }
    names.into_iter().filter_map(|name| index.find(name, check)).collect()
}

fn items(record: &FittingRecord, index: &RecordIndex<Part>, check: &mut Check<'_>) -> Vec<Item> {
    let Some(list) = &record.parts else { return Vec::new() };
    if list.value.is_empty() && check.is_sound() {
        check.fault("empty-list", list, "a fitting has at least one part", |finding| {
            finding.help("list the numbers of its parts in item order")
        });
    }
    let numbers = list.value.iter().filter_map(|field| field.value.part.as_ref());
    check_twice(numbers, "parts", check, |number| {
        format!("where there are two of it, write `{{ part: {number}, quantity: 2 }}` once")
    });
    list.value.iter().filter_map(|field| item(&field.value, index, check)).collect()
}

fn item(record: &ItemRecord, index: &RecordIndex<Part>, check: &mut Check<'_>) -> Option<Item> {
    Some(Item {
        part: index.find(record.part.as_ref()?, check)?,
        quantity: record.quantity.as_ref().map_or(1, |quantity| quantity.value.bare()),
    })
}

fn notices(record: &FittingRecord, index: &RecordIndex<Notice>, check: &mut Check<'_>) -> Vec<Arc<Notice>> {
    let names = || record.notices.iter().flat_map(|field| &field.value);
    check_twice(names(), "notices", check, |_| "keep one of the two".to_owned());
    names().filter_map(|name| index.find(name, check)).collect()
}

/// Tells of names that a list has twice; `help` is what to do about one.
fn check_twice<'a>(
    names: impl Iterator<Item = &'a Field<Name>>,
    list: &str,
    check: &mut Check<'_>,
    help: impl Fn(&str) -> String,
) {
    let mut seen: BTreeMap<&str, &Field<Name>> = BTreeMap::new();
    for name in names {
        let number = name.value.0.as_str();
        let Some(first) = seen.get(number) else {
            seen.insert(number, name);
            continue;
        };
        check.fault(
            "part-listed-twice",
            name,
            format!("`{number}` is already among the {list}"),
            |finding| finding.help(help(number)).related(first.place.clone(), "it is already here"),
        );
    }
}

fn check_status(record: &FittingRecord, check: &mut Check<'_>) {
    let superseded = word(record.status.as_ref()) == Some(Status::Superseded);
    match (&record.status, &record.superseded_by) {
        (Some(status), None) if superseded && !check.has("superseded_by") => {
            check.fault("missing-key", status, "a superseded fitting says what replaces it", |finding| {
                finding.help("add `superseded_by: …`, or `status: withdrawn` where nothing replaces it")
            });
        }
        (status, Some(by)) if !superseded => {
            let found = status.as_ref().map_or("no status", |status| status.value.word());
            check.fault(
                "status-contradiction",
                by,
                "only a superseded fitting has `superseded_by`",
                |finding| finding.found(found).expected("`status: superseded`"),
            );
        }
        _ => {}
    }
}

/// What must stop in the line must not be built: the card would say both.
fn check_stopped(record: &FittingRecord, check: &mut Check<'_>) {
    let Some(what) = record.in_service.as_ref().filter(|what| what.value == InServiceWord::StopNow) else {
        return;
    };
    let current = match &record.status {
        Some(status) => status.value == Status::Current,
        None => !check.has("status"),
    };
    if current {
        check.fault(
            "status-contradiction",
            what,
            "those in the line must stop, and the fitting is current",
            |finding| {
                finding
                    .expected("`status: on-hold`, `withdrawn` or `superseded`")
                    .help("put it on hold, withdraw or supersede it, or correct `in_service`")
            },
        );
    }
}

fn in_service(record: &FittingRecord, check: &mut Check<'_>) -> Option<InService> {
    let (what, date) = (record.in_service.as_ref(), record.in_service_date.as_ref());
    match (what.map(|field| field.value), date) {
        (Some(InServiceWord::ReplaceBy), Some(date)) => return Some(InService::ReplaceBy(date.value.0)),
        (Some(InServiceWord::ReplaceBy), None) => {
            if let Some(what) = what.filter(|_| !check.has("in_service_date")) {
                check.fault("missing-key", what, "`replace-by` needs a date", |finding| {
                    finding.help("add `in_service_date: YYYY-MM-DD`")
                });
            }
        }
        (_, Some(date)) => {
            check.fault(
                "status-contradiction",
                date,
                "this date goes with `in_service: replace-by` only",
                |finding| finding.help("delete it, or write `in_service: replace-by`"),
            );
        }
        (Some(InServiceWord::MayStay), None) => return Some(InService::MayStay),
        (Some(InServiceWord::Inspect), None) => return Some(InService::Inspect),
        (Some(InServiceWord::StopNow), None) => return Some(InService::StopNow),
        (None, None) => {}
    }
    None
}

/// Where nothing is said, a wedge is measured at its end and every other gripping part at its face.
fn stand_out(record: &StandOutRecord, wedged: bool) -> StandOut {
    let usual = if wedged { StandOutFrom::WedgeEnd } else { StandOutFrom::ConeFace };
    StandOut {
        from: word(record.from.as_ref()).unwrap_or(usual),
        seated: range(record.seated.as_ref()),
        tensioned: range(record.tensioned.as_ref()),
        draw_in_max: quantity(record.draw_in_max.as_ref()),
    }
}

fn complete_without(field: &Field<CompleteWithoutRecord>) -> CompleteWithout {
    let record = &field.value;
    CompleteWithout {
        keys: record.keys.iter().flat_map(|keys| &keys.value).map(|key| key.value).collect(),
        because: record.because.as_ref().map(|because| because.value.0.clone()).unwrap_or_default(),
    }
}
