//! The catalogue's own settings as JSON.

use super::object::Object;
use crate::catalogue::{CardFormat, Limits, Settings, SheetFormat, TaughtGroup, Training};
use serde_json::json;

pub(super) fn object(settings: &Settings) -> Object {
    let mut object = Object::new();
    object.put("title", settings.title.as_str());
    object.put("owner", settings.owner.as_str());
    object.put("edition", settings.edition.as_str());
    object.date("date", settings.date);
    object.put("language", settings.language.as_str());
    object.put("decimal_mark", settings.decimal_mark.to_string());
    object.list("before_work", settings.before_work.iter().map(String::as_str));
    object.put("caution", settings.caution.as_str());
    object.part("card", card(settings.card));
    object.part("sheet", sheet(settings.sheet));
    object.part("limits", limits(&settings.limits));
    if let Some(chosen) = &settings.training {
        object.part("training", training(chosen));
    }
    object
}

fn card(card: CardFormat) -> Object {
    let mut object = Object::new();
    object.put("size", card.size.word());
    object.put("orientation", card.orientation.word());
    let (width, height) = card.trim();
    object.mm("width_mm", width);
    object.mm("height_mm", height);
    object
}

fn sheet(sheet: SheetFormat) -> Object {
    let mut object = Object::new();
    object.put("size", sheet.size.word());
    object.put("flip", sheet.flip.word());
    object.put("crop_marks", sheet.crop_marks);
    object.mm("bleed_mm", sheet.bleed);
    object
}

fn limits(limits: &Limits) -> Object {
    let mut object = Object::new();
    object.number("section_tolerance_percent", limits.section_tolerance_percent);
    object.mm("diameter_tolerance_mm", limits.diameter_tolerance);
    object.number("nominal_tolerance_percent", limits.nominal_tolerance_percent);
    object.number("holding_percent_of_breaking_load", limits.holding_percent_of_breaking_load);
    object.number("tension_percent_of_breaking_load", limits.tension_percent_of_breaking_load);
    object.number("wire_friction", limits.wire_friction);
    object.number("seat_friction", limits.seat_friction);
    object.mm("closure_reserve_mm", limits.closure_reserve);
    object.mm("visible_stand_out_mm", limits.visible_stand_out);
    object.number("smallest_type_pt", limits.smallest_type.pt());
    object.number("mark_difference", limits.mark_difference);
    object.number("tension_percent_of_breaking_load", limits.tension_percent_of_breaking_load);
    object.number("wire_friction", limits.wire_friction);
    object.number("seat_friction", limits.seat_friction);
    object
}

fn training(training: &Training) -> Object {
    let mut object = Object::new();
    let group = |group: &TaughtGroup| json!({ "id": group.id, "name": group.name });
    object.list("groups", training.groups.iter().map(group));
    object.put("questions", training.questions);
    object.number("pass_percent", training.pass_percent);
    object.put("valid_months", training.valid_months);
    object
}
