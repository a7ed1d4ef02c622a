//! A fitting's page: which, with what parts, not with which, how, and is it right.

use super::frame::Draft;
use super::input::Booklet;
use super::view::{
    body_link, capital, card, conductor_link, fact, facts, fitting_link, fitting_links, note, notice_link,
    optional_mark, part_link, standing, waiting,
};
use super::{conductors, figures};
use crate::catalogue::{Conductor, Fitting, Item, Status, Tightening};
use crate::facts::{Content, FittingFacts, PartLine, TighteningFacts, words};
use crate::mixups::words::{happens, noticed, seen};
use crate::mixups::{Case, Kit};
use crate::notes::address;
use crate::units::Force;
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>, fitting: &Fitting) -> Draft {
    let lacking = FittingFacts::default();
    let printed = match booklet.input.facts.get(&fitting.number).map(|facts| &facts.content) {
        Some(Content::Fitting(facts)) => facts,
        _ => &lacking,
    };
    let catalogue = booklet.input.catalogue;
    let replaced_by = fitting.use_instead.as_ref().and_then(|number| catalogue.fittings.get(number));
    let mut values = json!({
        "number": fitting.number,
        "name": fitting.name,
        "status": booklet.input.facts.get(&fitting.number).map_or("", |card| card.status_words.as_str()),
        "standing": how_it_stands(booklet, fitting),
        "waiting": waiting(booklet, &fitting.number, fitting.status),
        "in_service": fitting.in_service.map_or_else(String::new, words::in_service),
        "replaced_by": fitting_links(booklet, replaced_by.map(|other| vec![other.clone()]).as_ref()),
        "replaces": fitting_links(booklet, booklet.uses.replaced.get(&fitting.number)),
        "mark": optional_mark(fitting.mark.as_ref()),
        "stamp": fitting.stamp,
        "gripping": gripping(booklet, fitting),
        "conductors": conductor_blocks(booklet, fitting, printed),
        "before_work": before_work(booklet, fitting),
        "parts": parts(booklet, fitting, printed),
        "loads": loads(booklet, fitting, printed),
        "notices": fitting.notices.iter().map(|notice| notice_link(booklet, notice)).collect::<Vec<_>>(),
        "note": note(booklet, &fitting.number),
        "card": card(booklet, &fitting.number),
        "figures": figures::of_fitting(booklet, fitting),
        "stages": figures::stages(booklet, fitting, &printed.steps),
        "staged": !printed.steps.is_empty() && fitting.steps.iter().any(|step| step.stage.is_some()),
    });
    how(&mut values, fitting, printed);
    wrong(&mut values, booklet, fitting);
    Draft {
        layout: "fitting",
        title: format!("{} {}", fitting.number, fitting.name),
        kind: words::family(fitting.family),
        values,
    }
}

/// The form of its status: of one that may be built, whether its record is complete.
fn how_it_stands(booklet: &Booklet<'_>, fitting: &Fitting) -> &'static str {
    let lacks = booklet.input.facts.get(&fitting.number).is_some_and(|card| !card.status_words.is_empty());
    match standing(fitting.status) {
        "" if lacks => "incomplete",
        standing => standing,
    }
}

/// What comes before work on what may be built.
fn before_work<'b>(booklet: &Booklet<'b>, fitting: &Fitting) -> &'b [String] {
    if fitting.status == Status::Current { &booklet.input.catalogue.settings.before_work } else { &[] }
}

fn gripping(booklet: &Booklet<'_>, fitting: &Fitting) -> Value {
    let Some(Item { part, .. }) = fitting.gripping().next() else { return Value::Null };
    json!({
        "name": words::role(part.role).to_lowercase(),
        "number": part.number,
        "stamp": part.stamp,
        "href": booklet.link(&address::part(&part.number)),
    })
}

fn conductor_blocks(booklet: &Booklet<'_>, fitting: &Fitting, printed: &FittingFacts) -> Vec<Value> {
    let alike =
        |name: &str| printed.conductors.iter().find(|facts| facts.name == name).map(|facts| &facts.alike);
    let blocks = fitting.conductors.iter().map(|conductor| {
        let mut block = conductor_link(booklet, conductor);
        block["facts"] = conductors::to_know_it(booklet, conductor).into();
        block["build"] = conductors::build(booklet, conductor).into();
        block["caution"] = conductor.caution.as_str().into();
        block["alike"] = json!(alike(&conductor.name));
        block
    });
    blocks.collect()
}

fn parts(booklet: &Booklet<'_>, fitting: &Fitting, printed: &FittingFacts) -> Vec<Value> {
    fitting
        .items
        .iter()
        .zip(1..)
        .map(|(item, number)| part(booklet, item, number, printed.parts.get(number - 1)))
        .collect()
}

fn part(
    booklet: &Booklet<'_>,
    Item { part, quantity }: &Item,
    number: usize,
    printed: Option<&PartLine>,
) -> Value {
    json!({
        "item": number,
        "link": part_link(booklet, part),
        "role": words::role(part.role),
        "gripping": printed.map_or(part.role.grips(), |line| line.gripping),
        "stamp": part.stamp,
        "quantity": quantity,
        "material": part.material.name,
        "drawing": part.drawing,
        "reuse": part.reuse.map_or("", words::reuse),
    })
}

fn loads(booklet: &Booklet<'_>, fitting: &Fitting, printed: &FittingFacts) -> Vec<Value> {
    let numerals = booklet.numerals;
    let force = |field: &str, force: Option<Force>| {
        crate::facts::load(fitting, field, force, numerals).unwrap_or_default()
    };
    let mut loads = facts([
        fact("Line tension max", force("line_tension_max_kN", fitting.line_tension_max)),
        fact("Holding load, proven without slip", force("holding_load_kN", fitting.holding_load)),
    ]);
    loads.extend(printed.dimensions.iter().filter_map(|(name, text)| fact(&capital(name), text.as_str())));
    loads
}

fn how(values: &mut Value, fitting: &Fitting, printed: &FittingFacts) {
    let tightening =
        fitting.tightening.iter().zip(&printed.tightening).map(|(line, printed)| tightening(line, printed));
    let checks = printed
        .checks
        .iter()
        .map(|check| json!({ "when": check.when, "what": check.what, "go": check.go, "no_go": check.no_go }));
    values["steps"] = json!(printed.steps);
    values["tightening"] = tightening.collect();
    values["checks"] = checks.collect();
    values["if_wrong"] =
        json!({ "before_load": printed.if_wrong.before_load, "under_load": printed.if_wrong.under_load });
    values["witness"] = json!(printed.witness);
    values["reject_if"] = json!(printed.reject_if);
}

fn tightening(line: &Tightening, printed: &TighteningFacts) -> Value {
    json!({
        "item": format!("{} {}", line.item, line.thread).trim(),
        "torque": printed.torque,
        "spanner": printed.spanner.trim_start_matches("spanner "),
        "grease": line.grease.join(", "),
        "passes": line.passes.map_or_else(String::new, |passes| passes.to_string()),
    })
}

fn wrong(values: &mut Value, booklet: &Booklet<'_>, fitting: &Fitting) {
    let shared = fitting.bodies().filter_map(|item| booklet.shared_body(&item.part.number));
    let body =
        shared.filter(|body| booklet.has_card(body)).min_by(|one, other| one.number.cmp(&other.number));
    values["body"] = body.map_or(Value::Null, |body| body_link(booklet, body));
    let wrong = booklet.input.mixups.wrong_parts(fitting);
    let kits = booklet.input.mixups.wrong_kits(fitting);
    let mut lines: Vec<_> = wrong.iter().map(|case| (case.weight(), not_this(booklet, case))).collect();
    lines.extend(kits.iter().map(|kit| (kit.weight(), not_this_kit(booklet, kit))));
    lines.sort_by_key(|(weight, _)| *weight);
    values["not_these"] = lines.into_iter().map(|(_, line)| line).collect();
}

fn not_this(booklet: &Booklet<'_>, case: &Case) -> Value {
    json!({
        "link": part_link(booklet, &case.part),
        "stamp": case.part.stamp,
        "mark": optional_mark(booklet.mark_of(&case.part)),
        "happens": on(&case.conductor, &case.fitting, happens(&case.comes, booklet.numerals)),
        "noticed": noticed(case, booklet.numerals),
        "hidden": case.hidden,
        "unmeasured": capital(words::unmeasured(&case.comes).unwrap_or_default()),
    })
}

fn not_this_kit(booklet: &Booklet<'_>, kit: &Kit) -> Value {
    let gripping = kit.parts.iter().find(|part| part.role.grips());
    let stamp = gripping.map_or("", |part| part.stamp.as_str());
    let mut link = fitting_link(booklet, &kit.kit);
    link["name"] = format!("{}: all its parts", kit.kit.name).into();
    let stamps = kit.parts.iter().map(|part| part.stamp.as_str()).filter(|stamp| !stamp.is_empty());
    json!({
        "link": link,
        "stamp": stamps.collect::<Vec<_>>().join(", "),
        "mark": optional_mark(kit.mark.as_ref()),
        "happens": on(&kit.conductor, &kit.fitting, happens(&kit.comes, booklet.numerals)),
        "noticed": seen(&kit.comes, &kit.fitting, stamp, booklet.numerals),
        "hidden": kit.hidden,
        "unmeasured": capital(words::unmeasured(&kit.comes).unwrap_or_default()),
    })
}

/// A sentence about one of a fitting's conductors: named where it holds several.
fn on(conductor: &Conductor, fitting: &Fitting, sentence: String) -> String {
    if fitting.conductors.len() > 1 { format!("On {}: {sentence}", conductor.name) } else { sentence }
}
