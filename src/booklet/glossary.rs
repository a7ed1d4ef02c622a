//! The trade's words, one for one thing.

use super::figures;
use super::frame::Draft;
use super::input::Booklet;
use crate::notes::address::slug;
use serde_json::{Value, json};

/// Each word with its meaning, in the order of the alphabet.
pub(super) const WORDS: &[(&str, &str)] = &[
    (
        "body",
        "The part that takes the gripping part in and carries the load on. One body can serve several conductors.",
    ),
    ("breaking load", "The conductor's rated tensile strength."),
    (
        "card",
        "One printed two-sided reference card, for a fitting or for a body that several fittings share.",
    ),
    (
        "check code",
        "Six characters that stand for what a card prints. A change in the print changes the code.",
    ),
    ("circle area", "The area of the circle on the overall diameter. It is never called section."),
    ("closure", "How far a collet's bore can still close before its slits shut."),
    ("collet", "A gripping cone split lengthwise, which closes round the conductor."),
    ("conductor", "The wire, strand or rope that a fitting holds."),
    ("construction", "How a conductor is built: solid, stranded, composite, rope, grooved, tube or bar."),
    ("danger", "A mix-up that can be assembled. It is hidden where nobody would see it afterwards."),
    ("edition", "A named state of the whole catalogue."),
    ("fill ratio", "Metal section divided by circle area."),
    ("fitting", "An assembly of parts that ends, anchors or joins a conductor."),
    (
        "gripping part",
        "The part that holds the conductor: cone, wedge, sleeve, ferrule or rope grip. A thimble only guides.",
    ),
    ("half-angle", "The angle between the axis and one flank of a round taper."),
    (
        "holding load",
        "The tension that a fitting is proven to hold without slip. It is not what it may be used at.",
    ),
    (
        "identification grooves",
        "Small grooves in the head of a contact wire, whose number tells its metal. Feel for them: they stay when the wire \
         is worn.",
    ),
    ("issue", "The number of a card. It goes up only when something that the card prints has changed."),
    ("lay ratio", "Lay length divided by the outside diameter of the layer."),
    ("layer", "A ring of wires round those inside it."),
    ("line tension max", "What a fitting may be used at."),
    ("look-alike", "A conductor, part or mark that can be taken for another."),
    ("mark", "Paint, text and notches on a gripping part and on its fitting that tell look-alikes apart."),
    ("metal section", "The area of metal, in mm². The only thing that may be called section."),
    ("mix-up", "A fitting built with a gripping part that is not its own."),
    ("nominal size", "The name of a conductor, such as 95. It is not a measurement."),
    ("notice", "The circular, change note or specification that causes a change."),
    ("overall diameter", "The diameter of the circle round the conductor."),
    ("part", "One piece of a fitting, with its own part number."),
    ("proven", "Tested on that conductor in that body, with a report."),
    ("register", "The record of every edition: which card had which issue and which check code."),
    ("seated", "After tightening, before line tension."),
    ("spreading cone", "A gripping cone driven between the wires, which presses them outward on a socket."),
    ("stamp", "Characters in the metal."),
    ("stand-out", "How far the gripping part stands proud of the body's face after seating."),
    ("stated", "Printed by the specification."),
    ("tensioned", "After line tension has drawn the gripping part in."),
    ("travel", "How far a closing part can push the gripping part in."),
    (
        "wedge",
        "A gripping part with one tapered side. Drawn into its body, it presses the conductor against the straight wall.",
    ),
    ("wire", "One drawn wire of a stranded conductor."),
    (
        "withdrawn",
        "Must not be used, and nothing replaces it. Superseded: replaced by another. On hold: stop until told.",
    ),
    ("witness", "What a second person checks before a fitting is closed."),
];

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let words: Vec<Value> = WORDS
        .iter()
        .map(|(word, meaning)| {
            let figures = figures::of_word(booklet, word);
            json!({ "id": slug(word), "word": word, "meaning": meaning, "figures": figures })
        })
        .collect();
    Draft {
        layout: "glossary",
        title: "Glossary".to_owned(),
        kind: "Booklet",
        values: json!({ "words": words }),
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn words_are_in_order_and_once() {
        assert!(super::WORDS.windows(2).all(|pair| pair[0].0 < pair[1].0));
    }
}
