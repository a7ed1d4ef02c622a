//! Cards and kit tags as text: card by card, face by face, block by block, what stands there and in which order and
//! class. Places, sizes and breaks of lines are left out, so that a change of spacing changes nothing here.

use fittingcards::cards::{Block, BlockKind, Card, Face, Item, ItemMark, Tag};
use std::fmt::Write;

pub fn cards(cards: &[Card]) -> String {
    let mut out = String::new();
    for card in cards {
        for face in [&card.front, &card.back] {
            of_face(&format!("{} {}, {}", card.number, card.title, face.side.word()), face, &mut out);
        }
    }
    out
}

pub fn tags(tags: &[Tag]) -> String {
    let mut out = String::new();
    for tag in tags {
        let turn = tag.turn.words().replace('\u{a0}', " ");
        of_face(&format!("{} {}, tag {turn}", tag.number, tag.title), &tag.face, &mut out);
    }
    out
}

fn of_face(name: &str, face: &Face, out: &mut String) {
    let (width, height) = (face.trim.0.mm(), face.trim.1.mm());
    let before = if out.is_empty() { "" } else { "\n" };
    let _ = writeln!(out, "{before}{}, {width} × {height}", name.trim_end());
    face.blocks.iter().for_each(|block| of_block(block, out));
}

fn of_block(block: &Block, out: &mut String) {
    let kind = match block.kind {
        BlockKind::Heading => "heading",
        BlockKind::Text => "text",
        BlockKind::Drawing => "drawing",
        BlockKind::Ornament => "ornament",
    };
    let _ = writeln!(out, "  {} ({kind})", block.name);
    if !block.alternative.is_empty() {
        let _ = writeln!(out, "    shows: {}", block.alternative);
    }
    for run in block.items.chunk_by(goes_on) {
        let _ = writeln!(out, "    {}", of_run(run));
    }
}

/// Whether an item is the next line of the text that the one before it is a line of.
fn goes_on(one: &Item, next: &Item) -> bool {
    let (ItemMark::Line { class, bold, .. }, ItemMark::Line { class: other, bold: other_bold, .. }) =
        (&one.mark, &next.mark)
    else {
        return false;
    };
    let below =
        next.bounds.y0 > one.bounds.y0 && next.bounds.x0 < one.bounds.x1 && one.bounds.x0 < next.bounds.x1;
    (class, bold, &one.at) == (other, other_bold, &next.at) && below
}

/// An item, or all lines of a text.
fn of_run(run: &[Item]) -> String {
    match &run[0].mark {
        ItemMark::Line { class, bold, .. } => {
            let bold = if *bold { " bold" } else { "" };
            let lines: Vec<&str> = run.iter().map(words).collect();
            format!("{}{bold}: {}", class.word(), lines.join(" ").replace('\u{a0}', "\u{2423}"))
        }
        ItemMark::Frame(name) => format!("frame {name}"),
        ItemMark::Swatch { fill, notches } => format!("swatch {}, notches: {notches}", fill.hex()),
        ItemMark::Sign(sign) => format!("sign: {}", sign.meaning()),
        ItemMark::Rule => "rule".to_owned(),
        ItemMark::Strike => "strike over the face".to_owned(),
        ItemMark::ChangeBar => "change bar".to_owned(),
        ItemMark::Drawing(name, scale) if scale.is_empty() => format!("drawing {name}"),
        ItemMark::Drawing(name, scale) => format!("drawing {name}, {scale}"),
        ItemMark::Svg(svg) => format!("svg {}", svg.class.word()),
    }
}

fn words(item: &Item) -> &str {
    match &item.mark {
        ItemMark::Line { words, .. } => words,
        _ => "",
    }
}
