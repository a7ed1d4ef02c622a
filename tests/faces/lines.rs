//! What a face says, line by line: the one place that knows where a face keeps its texts.

use fittingcards::cards::{Block, Face, ItemMark};

/// Every line of a face, in the order of reading; a sign counts by its meaning.
pub fn of(face: &Face) -> Vec<String> {
    face.lines().map(str::to_owned).collect()
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
