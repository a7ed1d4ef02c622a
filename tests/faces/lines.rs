//! What a face says, line by line: the one place that knows where a face keeps its texts.

use super::readable::texts;
use fittingcards::cards::Face;
use usvg::{Text, TextChunk};

/// Every line of a face, in the order of reading.
pub fn of(face: &Face) -> Vec<String> {
    let mut lines = Vec::new();
    for block in &face.blocks {
        texts(block.tree.root(), &mut |text: &Text| {
            lines.push(text.chunks().iter().map(TextChunk::text).collect());
        });
    }
    lines
}
