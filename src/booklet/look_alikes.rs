//! What can be taken for something else.

use super::Booklet;
use super::frame::Draft;
use super::view::{body_link, optional_mark, part_link};
use serde_json::json;

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let bodies = booklet.shared_bodies().map(|body| {
        let found = booklet.input.mixups.bodies.iter().find(|found| found.body.number == body.number);
        let parts = found.into_iter().flat_map(|found| &found.gripping_parts).map(|part| {
            json!({
                "mark": optional_mark(booklet.mark_of(part)),
                "stamp": part.stamp,
                "link": part_link(part),
            })
        });
        json!({ "link": body_link(body), "parts": parts.collect::<Vec<_>>() })
    });
    let values = json!({ "pairs": [], "bodies": bodies.collect::<Vec<_>>() });
    Draft { layout: "look-alikes", title: "Look-alikes".to_owned(), kind: "Look-up", values }
}
