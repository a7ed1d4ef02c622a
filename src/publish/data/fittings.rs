//! Fittings, notices and holders as JSON.

use super::object::Object;
use super::parts::mark;
use crate::catalogue::{
    CompleteWithout, Fitting, Holder, IfWrong, InService, Item, Notice, Procedure, Receipt, StandOut,
    Tightening, Wording,
};
use crate::facts;
use crate::units::Numerals;
use serde_json::Value;

pub(super) fn object(fitting: &Fitting, numerals: Numerals) -> Value {
    let values = facts::values(fitting, numerals);
    let filled = |wording: &Wording| values.filled(&wording.text);
    let mut object = Object::new();
    object.put("number", fitting.number.as_str());
    object.put("name", fitting.name.as_str());
    object.put("family", fitting.family.word());
    object.list("conductors", fitting.conductors.iter().map(|conductor| conductor.id.as_str()));
    object.list("parts", fitting.items.iter().map(item));
    object.known("mark", fitting.mark.as_ref().map(mark));
    object.text("stamp", &fitting.stamp);
    object.known("stand_out", fitting.stand_out.as_ref().map(stand_out));
    object.mm("insertion_mm", fitting.insertion);
    object.mm("tail_mm", fitting.tail);
    object.kn("holding_load_kN", fitting.holding_load);
    object.kn("line_tension_max_kN", fitting.line_tension_max);
    object.known("procedure", fitting.procedure.as_ref().map(|procedure| procedure.id.as_str()));
    object.list("tightening", fitting.tightening.iter().map(tightening));
    object.known("witness", fitting.witness.as_ref().map(filled));
    object.list("steps", fitting.steps.iter().map(|step| filled(&step.wording)));
    object.known("slip_mark", fitting.slip_mark);
    object.list("reject_if", fitting.reject_if.iter().map(filled));
    object.part("if_wrong", if_wrong(&fitting.if_wrong, filled));
    object.part("complete_without", complete_without(&fitting.complete_without));
    object.list("notices", fitting.notices.iter().map(|notice| notice.number.as_str()));
    object.put("status", fitting.status.word());
    object.known("superseded_by", fitting.superseded_by.as_deref());
    if let Some(in_service) = fitting.in_service {
        in_line(&mut object, in_service);
    }
    object.into()
}

/// The texts of a procedure as they are written: each fitting that takes them puts in its own values.
pub(super) fn procedure(procedure: &Procedure) -> Value {
    let written = |wording: &Wording| wording.text.clone();
    let mut object = Object::new();
    object.put("id", procedure.id.as_str());
    object.put("name", procedure.name.as_str());
    object.list("tightening", procedure.tightening.iter().map(tightening));
    object.known("witness", procedure.witness.as_ref().map(written));
    object.list("steps", procedure.steps.iter().map(|step| written(&step.wording)));
    object.known("slip_mark", procedure.slip_mark);
    object.list("reject_if", procedure.reject_if.iter().map(written));
    object.part("if_wrong", if_wrong(&procedure.if_wrong, written));
    object.into()
}

fn if_wrong(stated: &IfWrong, text: impl Fn(&Wording) -> String) -> Object {
    let mut object = Object::new();
    object.known("before_load", stated.before_load.as_ref().map(&text));
    object.known("under_load", stated.under_load.as_ref().map(&text));
    object
}

fn complete_without(stated: &CompleteWithout) -> Object {
    let mut object = Object::new();
    if !stated.keys.is_empty() {
        object.list("keys", stated.keys.iter().map(|key| key.word()));
        object.text("because", &stated.because);
    }
    object
}

fn item(item: &Item) -> Value {
    let mut object = Object::new();
    object.put("part", item.part.number.as_str());
    object.put("quantity", item.quantity);
    object.into()
}

fn stand_out(stand_out: &StandOut) -> Value {
    let mut object = Object::new();
    object.put("from", stand_out.from.word());
    object.mm_window("seated_mm", stand_out.seated);
    object.mm_window("tensioned_mm", stand_out.tensioned);
    object.mm("draw_in_max_mm", stand_out.draw_in_max);
    object.into()
}

fn tightening(tightening: &Tightening) -> Value {
    let mut object = Object::new();
    object.put("item", tightening.item.as_str());
    object.text("thread", &tightening.thread);
    object.mm("spanner_mm", tightening.spanner);
    object.nm_window("torque_Nm", tightening.torque);
    object.kn("preload_kN", tightening.preload);
    object.list("grease", tightening.grease.iter().map(String::as_str));
    object.known("passes", tightening.passes);
    object.into()
}

fn in_line(object: &mut Object, in_service: InService) {
    let (word, date) = match in_service {
        InService::MayStay => ("may-stay", None),
        InService::Inspect => ("inspect", None),
        InService::ReplaceBy(date) => ("replace-by", Some(date)),
        InService::StopNow => ("stop-now", None),
    };
    object.put("in_service", word);
    object.date("in_service_date", date);
}

pub(super) fn notice(notice: &Notice) -> Value {
    let mut object = Object::new();
    object.put("number", notice.number.as_str());
    object.date("date", Some(notice.date));
    object.date("effective", notice.effective);
    object.date("action_by", notice.action_by);
    object.put("title", notice.title.as_str());
    object.text("reference", &notice.reference);
    object.text("summary", &notice.summary);
    object.into()
}

pub(super) fn holder(holder: &Holder) -> Value {
    let mut object = Object::new();
    object.put("id", holder.id.as_str());
    object.put("name", holder.name.as_str());
    let mut copies = Object::new();
    for (number, count) in &holder.copies {
        copies.put(number, *count);
    }
    object.part("copies", copies);
    object.list("receipts", holder.receipts.iter().map(receipt));
    object.into()
}

fn receipt(receipt: &Receipt) -> Value {
    let mut object = Object::new();
    object.put("card", receipt.card.as_str());
    object.put("issue", receipt.issue);
    object.put("copies", receipt.copies);
    object.put("what", receipt.what.word());
    object.put("date", receipt.date.to_string());
    object.put("by", receipt.by.as_str());
    object.into()
}
