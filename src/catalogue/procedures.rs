//! Procedures, and what fittings state alike: steps, tightening, what a failed check calls for.

use super::check::{Check, origin};
use super::model::{IfWrong, Procedure, Step, Tightening};
use super::quantities::{quantity, range, text, word};
use super::wordings::{wording, wordings};
use crate::records::{
    Document, Field, IfWrongRecord, MOST_STEPS, ProcedureRecord, StepRecord, TighteningRecord,
};

/// The procedure that a document states, where it is sound.
pub(super) fn procedure(document: &Document<ProcedureRecord>, check: &mut Check<'_>) -> Option<Procedure> {
    let record = document.record.as_ref()?;
    check_steps(record.steps.as_ref(), check);
    if !check.is_sound() {
        return None;
    }
    Some(Procedure {
        id: record.id.as_ref()?.value.0.clone(),
        name: record.name.as_ref()?.value.0.clone(),
        tightening: tightenings(record.tightening.as_ref()),
        witness: wording(record.witness.as_ref()),
        steps: steps(record.steps.as_ref()),
        slip_mark: record.slip_mark.as_ref().map(|field| field.value.0),
        reject_if: wordings(record.reject_if.as_ref()),
        if_wrong: if_wrong(record.if_wrong.as_ref()),
        origin: origin(document),
    })
}

/// A card has room for so many steps and no more.
pub(super) fn check_steps(steps: Option<&Field<Vec<Field<StepRecord>>>>, check: &mut Check<'_>) {
    let Some(steps) = steps else { return };
    let Some(first_too_many) = steps.value.get(MOST_STEPS) else { return };
    check.fault("too-many-steps", first_too_many, "a card has room for seven steps", |finding| {
        finding
            .found(format!("{} steps", steps.value.len()))
            .expected(format!("at most {MOST_STEPS}"))
            .help("join short steps, or put the longer text into the fitting's note")
    });
}

/// The steps of a record, in order.
pub(super) fn steps(field: Option<&Field<Vec<Field<StepRecord>>>>) -> Vec<Step> {
    let step = |record: &StepRecord| {
        Some(Step { wording: wording(record.text.as_ref())?, stage: word(record.stage.as_ref()) })
    };
    field.iter().flat_map(|field| &field.value).filter_map(|field| step(&field.value)).collect()
}

/// What a check that fails calls for, as far as it is stated.
pub(super) fn if_wrong(field: Option<&Field<IfWrongRecord>>) -> IfWrong {
    let record = field.map(|field| &field.value);
    IfWrong {
        before_load: wording(record.and_then(|record| record.before_load.as_ref())),
        under_load: wording(record.and_then(|record| record.under_load.as_ref())),
    }
}

/// What is tightened, in the order of the record.
pub(super) fn tightenings(field: Option<&Field<Vec<Field<TighteningRecord>>>>) -> Vec<Tightening> {
    field.iter().flat_map(|field| &field.value).filter_map(tightening).collect()
}

fn tightening(field: &Field<TighteningRecord>) -> Option<Tightening> {
    let record = &field.value;
    Some(Tightening {
        item: record.item.as_ref()?.value.0.clone(),
        thread: text(record.thread.as_ref()),
        spanner: quantity(record.spanner.as_ref()),
        torque: range(record.torque.as_ref()),
        preload: quantity(record.preload.as_ref()),
        grease: record
            .grease
            .iter()
            .flat_map(|field| &field.value)
            .map(|line| line.value.0.clone())
            .collect(),
        passes: word(record.passes.as_ref()).map(|passes| passes.bare()),
    })
}
