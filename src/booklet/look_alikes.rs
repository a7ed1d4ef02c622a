//! What can be taken for something else.

use super::frame::Draft;
use super::input::Booklet;
use super::long::MOST_LINES;
use super::view::{body_link, conductor_link, optional_mark, part_link};
use crate::catalogue::Conductor;
use crate::facts;
use crate::mixups::told_apart;
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let shared = || booklet.shared_bodies().filter(|body| booklet.has_card(body));
    let bodies = shared().map(|body| {
        let found = booklet.input.mixups.body(&body.number);
        let parts = found.into_iter().flat_map(|found| &found.parts).map(|part| {
            json!({
                "mark": optional_mark(booklet.mark_of(part)),
                "stamp": part.stamp,
                "link": part_link(booklet, part),
            })
        });
        json!({ "link": body_link(booklet, body), "parts": parts.collect::<Vec<_>>() })
    });
    let pairs = booklet.look_alikes.iter().map(|pair| {
        json!({
            "one": measured(booklet, &pair.one),
            "other": measured(booklet, &pair.other),
            "apart": pair.words(booklet.numerals),
        })
    });
    let parts = booklet.input.mixups.bodies.iter().map(|body| body.parts.len()).sum::<usize>();
    let (bodies, links) = if parts > MOST_LINES {
        (Vec::new(), shared().map(|body| body_link(booklet, body)).collect())
    } else {
        (bodies.collect::<Vec<_>>(), Vec::new())
    };
    let values = json!({ "pairs": pairs.collect::<Vec<_>>(), "bodies": bodies, "links": links });
    Draft { layout: "look-alikes", title: "Look-alikes".to_owned(), kind: "Look-up", values }
}

/// What a conductor can be taken for, and what tells it from each.
pub(super) fn of(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    let found = booklet.look_alikes.iter().filter_map(|pair| {
        let other = match conductor.id {
            ref id if *id == pair.one.id => &pair.other,
            ref id if *id == pair.other.id => &pair.one,
            _ => return None,
        };
        let mut line = measured(booklet, other);
        line["apart"] = told_apart(conductor, other, booklet.numerals).into();
        Some(line)
    });
    found.collect()
}

fn measured(booklet: &Booklet<'_>, conductor: &Conductor) -> Value {
    let mut line = conductor_link(booklet, conductor);
    line["diameter"] = facts::conductor(conductor, booklet.numerals).diameter.into();
    line
}
