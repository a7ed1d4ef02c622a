//! A part's page: what it is, where it is used, what it goes into, what it is proven on.

use super::addresses;
use super::figures;
use super::frame::Draft;
use super::input::Booklet;
use super::view::{
    body_link, conductor_link, fact, facts, fitting_links, note, optional_mark, part_link, standing, status,
};
use crate::catalogue::{Part, Proof};
use crate::facts::words;
use crate::grip::Geometry;
use crate::mixups::proof_counts;
use crate::notes::address;
use crate::units::Force;
use serde_json::{Value, json};
use std::sync::Arc;

pub(super) fn page(booklet: &Booklet<'_>, part: &Arc<Part>) -> Draft {
    let shared = booklet.shared_body(&part.number);
    let bodies = booklet.uses.bodies.get(&part.number).map_or(&[][..], Vec::as_slice);
    let values = json!({
        "number": part.number,
        "name": part.name,
        "status": status(part.status),
        "standing": standing(part.status),
        "stamp": part.stamp,
        "mark": optional_mark(booklet.mark_of(part)),
        "facts": about(part),
        "material": { "href": booklet.link(&address::material(&part.material.id)), "text": part.material.name },
        "how": how_it_grips(booklet, part),
        "fittings": fitting_links(booklet, booklet.uses.by_part.get(&part.number)),
        "body": shared.map_or(Value::Null, |body| body_link(booklet, body)),
        "is_mixed_up": shared.is_some_and(|body| booklet.has_card(body)),
        "goes_into": bodies.iter().map(|body| goes_into(booklet, body)).collect::<Vec<_>>(),
        "proofs": part.proven_on.iter().enumerate().map(|nth| proof_line(booklet, part, nth)).collect::<Vec<_>>(),
        "figures": bodies.first().map_or_else(Vec::new, |body| figures::of_part(booklet, body, part)),
        "measures": super::measures::of(part, booklet.numerals),
        "note": note(booklet, &part.number),
    });
    Draft {
        layout: "part",
        title: format!("{} {}", part.number, part.name),
        kind: words::role(part.role),
        values,
    }
}

/// A body on its page of mix-ups, where it has one.
fn goes_into(booklet: &Booklet<'_>, body: &Part) -> Value {
    match booklet.shared_body(&body.number) {
        Some(_) => body_link(booklet, body),
        None => part_link(booklet, body),
    }
}

/// Where a picture says how such a part grips.
fn how_it_grips(booklet: &Booklet<'_>, part: &Part) -> Value {
    let word = match part.geometry.as_ref().map(Geometry::key) {
        Some("collet") => "collet",
        Some("spreading_cone") => "spreading cone",
        Some("wedge") => "wedge",
        _ => return Value::Null,
    };
    json!({ "href": booklet.link(&addresses::glossary().at(format!("word-{}", address::slug(word)))), "text": word })
}

fn about(part: &Part) -> Vec<Value> {
    let seen = part.mark_seen_after_assembly.map_or("", |seen| if seen { "yes" } else { "no" });
    facts([
        fact("Role", words::role(part.role)),
        fact("Holds the conductor", if part.role.grips() { "yes" } else { "no" }),
        fact("Drawing", part.drawing.as_str()),
        fact("Used again", part.reuse.map_or("", words::reuse)),
        fact("Mark seen on the assembled fitting", seen),
        fact("Goes where others go of interface", part.interface.as_str()),
    ])
}

fn proof_line(booklet: &Booklet<'_>, part: &Part, (nth, proof): (usize, &Proof)) -> Value {
    let load = |load: Force| {
        let field = format!("proven_on.{nth}.holding_load_kN");
        part.origin.with_unit(&field, load.kn(), "kN", booklet.numerals)
    };
    let link = conductor_link(booklet, &proof.conductor);
    let catalogue = booklet.input.catalogue;
    let body = catalogue.parts.get(&proof.body).map(AsRef::as_ref);
    let lacks_body = proof.body.is_empty() && booklet.uses.bodies.contains_key(&part.number);
    let counts = !lacks_body && proof_counts(proof, part, body, &catalogue.settings.limits).is_ok();
    json!({
        "href": link["href"],
        "conductor": link["name"],
        "body": super::view::or_else(&proof.body, "none named"),
        "counts": if counts { "yes" } else { "no: not proven by it" },
        "load": proof.holding_load.map_or("not stated".to_owned(), load),
        "report": super::view::or_else(&proof.report, "not stated"),
        "date": proof.date.map_or("not stated".to_owned(), |date| date.to_string()),
    })
}
