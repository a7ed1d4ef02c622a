//! Stamps, marks and other names that texts of a fitting may say, and those of wrong parts that they may not.

use super::Context;
use super::words_of_text::words;
use crate::catalogue::Fitting;
use crate::colour::Mark;
use crate::diagnostics::Place;
use std::collections::BTreeMap;

/// What texts of one fitting may say.
pub(super) struct Known {
    /// The stamps of its parts and its own.
    pub(super) stamps: Vec<String>,
    /// Its mark and those of its parts.
    pub(super) marks: Vec<String>,
    /// All names of its own, stamps and marks among them.
    pub(super) own: Vec<String>,
    /// Stamps and marks of other parts that go into its body, and drum tags of other conductors that do.
    pub(super) others: Vec<Other>,
    /// Where its gripping part's stamp stands, and what that is.
    pub(super) stamp_place: (Place, &'static str),
    /// Where its mark stands, and what that is.
    pub(super) mark_place: (Place, &'static str),
}

/// A stamp or mark of another part, or the drum tag of another conductor.
#[derive(Clone)]
pub(super) struct Other {
    /// The stamp, the text of the mark, or the tag.
    pub(super) name: String,
    /// "stamp", "mark" or "drum tag".
    pub(super) kind: &'static str,
    /// Where it stands.
    pub(super) place: Place,
}

impl Known {
    /// Whether a word is one of those of a name.
    pub(super) fn has_word(&self, word: &str) -> bool {
        let word = word.to_lowercase();
        let names = self.own.iter().chain(self.others.iter().map(|other| &other.name));
        names.flat_map(|name| words(name)).any(|own| own.text.to_lowercase() == word)
    }
}

/// `marks` are those of all parts, by [`crate::mixups::marks`].
pub(super) fn known(fitting: &Fitting, context: Context<'_>, marks: &BTreeMap<&str, &Mark>) -> Known {
    let own_parts = || fitting.items.iter().map(|item| &item.part);
    let stamps: Vec<String> = own_parts()
        .map(|part| spaced(&part.stamp))
        .chain([spaced(&fitting.stamp)])
        .filter(|stamp| !stamp.is_empty())
        .collect();
    let marked = own_parts().filter_map(|part| part.mark.as_ref()).chain(&fitting.mark);
    let own_marks: Vec<String> =
        marked.map(|mark| spaced(&mark.text)).filter(|text| !text.is_empty()).collect();
    let tags = fitting.conductors.iter().map(|held| spaced(&held.identity.drum_tag));
    let numbers = own_parts().map(|part| part.number.clone()).chain([fitting.number.clone()]);
    let drawings = own_parts().map(|part| spaced(&part.drawing));
    let own = stamps
        .iter()
        .chain(&own_marks)
        .cloned()
        .chain(tags)
        .chain(numbers)
        .chain(drawings)
        .filter(|name| !name.is_empty())
        .collect();
    let gripping = fitting.gripping().map(|item| &item.part).find(|part| !part.stamp.is_empty());
    let stamp_place = gripping.map(|part| (part.origin.of("stamp"), "the gripping part's stamp"));
    let of_part = fitting
        .gripping()
        .map(|item| &item.part)
        .find(|part| part.mark.is_some())
        .map(|part| part.origin.of("mark"));
    let mark_place = if fitting.origin.has("mark") {
        fitting.origin.of("mark")
    } else {
        of_part.unwrap_or_else(|| fitting.origin.of("parts"))
    };
    Known {
        stamps,
        marks: own_marks,
        own,
        others: [others(fitting, context, marks), other_tags(fitting, context)].concat(),
        stamp_place: stamp_place
            .unwrap_or_else(|| (fitting.origin.of("parts"), "none of its gripping parts has a stamp")),
        mark_place: (mark_place, if fitting.mark.is_some() { "its mark" } else { "it has no mark" }),
    }
}

/// A stamp of figures alone stands in any text as a size, and is none of these.
fn others(fitting: &Fitting, context: Context<'_>, marks: &BTreeMap<&str, &Mark>) -> Vec<Other> {
    let mut others = Vec::new();
    let bodies = fitting.bodies().filter_map(|item| context.mixups.body(&item.part.number));
    for part in bodies.flat_map(|body| &body.parts) {
        if fitting.items.iter().any(|item| item.part.number == part.number) {
            continue;
        }
        let mark = marks.get(part.number.as_str()).map(|mark| spaced(&mark.text)).unwrap_or_default();
        let named = [(spaced(&part.stamp), "stamp"), (mark, "mark")];
        let named = named.into_iter().filter(|(name, _)| name.chars().any(char::is_alphabetic));
        others.extend(named.map(|(name, kind)| Other { name, kind, place: part.origin.of(kind) }));
    }
    others
}

/// The drum tag is often all that tells two conductors apart.
fn other_tags(fitting: &Fitting, context: Context<'_>) -> Vec<Other> {
    let bodies = fitting.bodies().filter_map(|item| context.mixups.body(&item.part.number));
    let held = bodies.flat_map(|body| &body.fittings).flat_map(|other| &other.conductors);
    let own = |tag: &str| fitting.conductors.iter().any(|own| spaced(&own.identity.drum_tag) == tag);
    let tags = held.map(|conductor| (spaced(&conductor.identity.drum_tag), conductor));
    let tags = tags.filter(|(tag, _)| tag.chars().any(char::is_alphabetic) && !own(tag));
    tags.map(|(name, conductor)| Other {
        name,
        kind: "drum tag",
        place: conductor.origin.of("identity.drum_tag"),
    })
    .collect()
}

fn spaced(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
