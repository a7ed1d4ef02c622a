//! Dies that a text names and that press no part of its fitting. In German and Dutch "die" is no tool, so that only
//! catalogues in English are read.

use super::stretch_of_text::{Contradiction, Stretch};
use super::tools_of_text::{Tool, tools};
use super::words_of_text::spells_in_any_case;
use crate::catalogue::Part;
use crate::diagnostics::Severity;
use crate::grip::Geometry;

/// What a stretch says of dies otherwise than the parts.
pub(super) fn dies(stretch: &Stretch<'_>) -> Vec<Contradiction> {
    let parts = || stretch.fitting.items.iter().map(|item| &*item.part);
    let is_own = |index: usize| {
        let mut dies = parts().filter_map(die);
        dies.any(|(die, _)| spells_in_any_case(&stretch.words, index, die).is_some())
    };
    let pressed = parts().find_map(|part| Some(part.origin.of(die(part)?.1)));
    let (place, is) = match pressed {
        Some(place) => (place, "its die"),
        None => (stretch.fitting.origin.of("parts"), "none of its parts has a die"),
    };
    let named = tools(&stretch.words).into_iter().filter(|tool| tool.what == Tool::Die);
    let wrong = named.filter(|tool| !is_own(tool.index));
    wrong
        .map(|tool| Contradiction {
            severity: Severity::Error,
            at: stretch.words[tool.index].at,
            message: "the fitting has no such die".to_owned(),
            found: tool.written,
            place: place.clone(),
            is,
            is_of_wrong_part: false,
            value: "die",
        })
        .collect()
}

/// The die that presses a part, and its field.
fn die(part: &Part) -> Option<(&str, &'static str)> {
    let (tube, field) = match part.geometry.as_ref()? {
        Geometry::Sleeve(tube) => (tube, "geometry.sleeve.die"),
        Geometry::Ferrule(tube) => (tube, "geometry.ferrule.die"),
        _ => return None,
    };
    Some((tube.die.as_deref()?, field))
}
