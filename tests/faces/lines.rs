//! What a face says, line by line: the one place that knows where a face keeps its texts.

use fittingcards::cards::{Block, Face, ItemMark};
use usvg::roxmltree::{Document, Node};

/// Every line of a face, in the order of reading; a sign counts by its meaning.
pub fn of(face: &Face) -> Vec<String> {
    face.lines().map(str::to_owned).collect()
}

/// Every text in the drawings of a face.
pub fn drawn(face: &Face) -> Vec<String> {
    let layers = face.blocks.iter().flat_map(|block| &block.layers);
    layers.flat_map(|layer| texts_of_drawings(&layer.source)).collect()
}

fn texts_of_drawings(elements: &str) -> Vec<String> {
    let whole = format!("<svg>{elements}</svg>");
    let document = Document::parse(&whole).unwrap();
    let is_text = |node: &Node| node.has_tag_name("text");
    let in_drawing = |node: &Node| {
        node.ancestors().any(|around| around.attribute("class").is_some_and(|class| class.contains("sk-")))
    };
    let texts = document.descendants().filter(|node| is_text(node) && in_drawing(node));
    texts
        .map(|text| {
            text.descendants().filter_map(|part| part.is_text().then(|| part.text()).flatten()).collect()
        })
        .collect()
}

/// The meanings of the signs in a block.
pub fn signs(block: &Block) -> Vec<&'static str> {
    let items = block.items.iter();
    items
        .filter_map(|item| match item.mark {
            ItemMark::Sign(sign) => Some(sign.meaning()),
            _ => None,
        })
        .collect()
}

/// The lines of text in a block, without its signs.
pub fn texts(block: &Block) -> Vec<&str> {
    let items = block.items.iter();
    items
        .filter_map(|item| match &item.mark {
            ItemMark::Line { words, .. } => Some(words.as_str()),
            _ => None,
        })
        .collect()
}
