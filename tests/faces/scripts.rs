//! Names in other scripts, with a font of a Debian package beside the built-in ones.

use super::{hold, loses_nothing, made, readable};
use fittingcards::cards::{Card, Face};
use fittingcards::source::{FilePath, MemoryWorld};
use usvg::{Group, Node, Text};

const FONT: &str = "/usr/share/fonts/truetype/lohit-devanagari/Lohit-Devanagari.ttf";

fn with_font(world: MemoryWorld) -> MemoryWorld {
    let bytes = std::fs::read(FONT)
        .unwrap_or_else(|_| panic!("{FONT} is not there: install the Debian package fonts-lohit-deva"));
    world.with(FilePath::catalogue("fonts/Lohit-Devanagari.ttf"), bytes)
}

#[test]
fn faces_are_what_they_were() {
    let case = made::folder("tests/cases/scripts");
    let cards = made::cards(&with_font(made::world(&case.join("in")))).0;
    hold([(case.join("out/faces.txt"), readable::cards(&cards))]);
}

#[test]
fn devanagari_and_arabic_print_in_every_size_and_lose_nothing() {
    for row in made::sizes() {
        let (cards, findings) = made::cards(&with_font(made::in_size("tests/cases/scripts/in", row)));
        assert_eq!(findings.sorted().iter().map(|error| &error.message).next(), None, "{row}");
        loses_nothing(&cards, row);
    }
}

/// A line as it lies: each chunk with where it begins.
fn chunks(face: &Face, holding: &str) -> Vec<(f32, String)> {
    let mut found = Vec::new();
    for layer in face.blocks.iter().flat_map(|block| &block.layers) {
        texts(layer.tree.root(), &mut |text: &Text| {
            let words: String = text.chunks().iter().map(usvg::TextChunk::text).collect();
            if words.contains(holding) {
                let place =
                    |chunk: &usvg::TextChunk| (chunk.x().unwrap_or_default(), chunk.text().to_owned());
                found = text.chunks().iter().map(place).collect();
            }
        });
    }
    found
}

/// Every text of a tree, in the order of drawing.
fn texts(group: &Group, found: &mut impl FnMut(&Text)) {
    for node in group.children() {
        match node {
            Node::Group(group) => texts(group, found),
            Node::Text(text) => found(text),
            Node::Path(_) | Node::Image(_) => {}
        }
    }
}

#[test]
fn an_arabic_title_begins_on_the_right() {
    let (cards, _) = made::cards(&with_font(made::in_size("tests/cases/scripts/in", "A7,portrait")));
    let card: &Card = cards.iter().find(|card| card.number == "F-2").unwrap();
    let title = chunks(&card.front, "نهاية");
    assert_eq!(title.iter().map(|(_, text)| text.trim()).collect::<Vec<_>>().len(), 3, "{title:?}");
    assert!(title.windows(2).all(|pair| pair[0].0 > pair[1].0), "{title:?}");
    assert!(title[0].1.contains("F-2") && title[2].1.contains("70"), "{title:?}");
}
