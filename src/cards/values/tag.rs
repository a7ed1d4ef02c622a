//! What the layout of kit tags is filled with.

use super::texts::{foot, joined, mark, object, whole};
use crate::catalogue::Settings;
use crate::facts::{TagFacts, TagPart};
use crate::register::Standing;
use serde_json::{Map, Value, json};

/// What every tag of a fitting carries.
pub(in crate::cards) fn of_tag(
    facts: &TagFacts,
    standing: &Standing,
    settings: &Settings,
) -> Map<String, Value> {
    let stamps = facts.gripping_stamps.iter().map(|stamp| whole(stamp)).collect::<Vec<_>>();
    object(json!({
        "number": facts.number, "title": facts.name, "status": facts.status_words, "barred": true,
        "conductors": facts.conductors.join(" and "), "mark": facts.mark.as_ref().map(mark),
        "stamps": stamps, "pieces": pieces(&facts.parts), "caution": facts.caution, "owner": settings.owner,
        "foot": foot(standing, "", settings),
    }))
}

/// How many pieces a whole kit has, so that it can be counted.
fn pieces(parts: &[TagPart]) -> String {
    match parts.iter().map(|part| u64::from(part.quantity)).sum() {
        1 => "1\u{a0}piece in all".to_owned(),
        count => format!("{count}\u{a0}pieces in all"),
    }
}

/// A part on a tag.
pub(in crate::cards) fn tag_part(facts: &TagPart) -> Value {
    json!({
        "item": format!("item {}", facts.item), "field": format!("parts.{}", facts.item - 1),
        "id": facts.number, "quantity": format!("{}\u{a0}×", facts.quantity), "number": whole(&facts.number), "name": facts.name,
        "role": facts.role, "made": joined(&[&whole(&facts.drawing), &facts.material], " · "),
        "stamp": whole(&facts.stamp), "gripping": facts.gripping, "status": facts.status_words,
    })
}
