//! Cards and kit tags as text: card by card, face by face, block by block, with places and sizes as they are printed.

use fittingcards::cards::{Block, BlockKind, Card, Face, Tag};
use std::fmt::Write;
use usvg::{Group, Node, Rect, Text};

const HEAD: &str = "# Millimetres from the corner of the cut: a block's left, top, width and height, with its bleed. \
                    Type in points.\n";

pub fn cards(cards: &[Card]) -> String {
    let mut out = HEAD.to_owned();
    for card in cards {
        for face in [&card.front, &card.back] {
            of_face(&format!("{} {}, {}", card.number, card.title, face.side.word()), face, &mut out);
        }
    }
    out
}

pub fn tags(tags: &[Tag]) -> String {
    let mut out = HEAD.to_owned();
    for tag in tags {
        let turn = tag.turn.words().replace('\u{a0}', " ");
        of_face(&format!("{} {}, tag {turn}", tag.number, tag.title), &tag.face, &mut out);
    }
    out
}

fn of_face(name: &str, face: &Face, out: &mut String) {
    let (width, height) = (face.cut.0.mm(), face.cut.1.mm());
    let _ = writeln!(out, "\n{}, {width} × {height}", name.trim_end());
    face.blocks.iter().for_each(|block| of_block(face, block, out));
}

fn of_block(face: &Face, block: &Block, out: &mut String) {
    let kind = match block.kind {
        BlockKind::Heading => "heading",
        BlockKind::Text => "text",
        BlockKind::Drawing => "drawing",
        BlockKind::Ornament => "ornament",
    };
    let root = block.tree.root();
    let place =
        if root.has_children() { placed(root.abs_stroke_bounding_box(), face) } else { "empty".into() };
    let _ = writeln!(out, "  {} ({kind}) {place}", block.name);
    if !block.alternative.is_empty() {
        let _ = writeln!(out, "    shows: {}", block.alternative);
    }
    texts(root, &mut |text| {
        let _ = writeln!(out, "    {}", of_text(text));
    });
}

fn placed(bounds: Rect, face: &Face) -> String {
    let bleed = face.bleed.mm();
    let (left, top) = (f64::from(bounds.left()) - bleed, f64::from(bounds.top()) - bleed);
    // A zero has no sign, whichever side rounding comes from.
    let [left, top] = [left, top].map(|side| (side * 10.0).round() / 10.0 + 0.0);
    format!("at {left:.1} {top:.1}, {:.1} × {:.1}", bounds.width(), bounds.height())
}

fn of_text(text: &Text) -> String {
    let spans = || text.chunks().iter().flat_map(|chunk| chunk.spans());
    let scale = f64::from(text.abs_transform().get_scale().1);
    let largest = spans().map(|span| f64::from(span.font_size().get())).fold(0.0, f64::max);
    let bold = if spans().any(|span| span.font().weight() >= 700) { " bold" } else { "" };
    let words: String = text.chunks().iter().map(usvg::TextChunk::text).collect();
    format!("{:.1}{bold}: {}", largest * scale * 72.0 / 25.4, words.replace('\u{a0}', "\u{2423}"))
}

/// Every text of a tree, in the order of drawing.
pub fn texts(group: &Group, found: &mut impl FnMut(&Text)) {
    for node in group.children() {
        match node {
            Node::Group(group) => texts(group, found),
            Node::Text(text) => found(text),
            Node::Path(_) | Node::Image(_) => {}
        }
    }
}
