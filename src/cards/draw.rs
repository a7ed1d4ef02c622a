//! An arrangement drawn: its items at their places, each block written to SVG once and parsed once.

use super::arrange::Arrangement;
use super::description::{Align, Content, DrawingRoom, Text};
use super::face::{Block, BlockKind, Face, Item, ItemMark, Layer, Side, SvgItem};
use super::flow::Slot;
use super::measure::Measurer;
use super::paint::{self, Lettering};
use super::too_full::FaceError;
use crate::colour::Srgb;
use crate::diagnostics::{Finding, Findings, Place};
use crate::sketch::{Drawing, number};
use crate::typeset::is_joined;
use crate::units::Length;
use kurbo::Rect;
use std::collections::BTreeSet;
use std::sync::Arc;

/// What a face is drawn on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Card {
    pub side: Side,
    pub trim: (Length, Length),
    pub bleed: Length,
}

/// Draws a face; `flexible` is the drawing whose height was settled, `changed` the names of printed texts beside which
/// a bar stands.
///
/// # Errors
/// Where SVG of the layout's own can't be drawn.
pub(super) fn draw(
    arrangement: &Arrangement<'_>,
    measurer: &Measurer<'_>,
    card: Card,
    flexible: Option<&Drawing>,
    changed: &BTreeSet<String>,
) -> Result<Face, FaceError> {
    let options = measurer.fonts.options();
    let mut painter = Painter { arrangement, measurer, card, flexible, changed, options };
    let mut blocks = Vec::new();
    // What is struck out is so over everything else.
    let struck = |slot: &Slot<'_>| slot.node.children.iter().any(|child| child.content == Content::Strike);
    for over in [false, true] {
        for (index, slot) in arrangement.slots.iter().enumerate() {
            if slot.node.block.is_some() && struck(slot) == over {
                blocks.extend(painter.block(index, slot)?);
            }
        }
    }
    Ok(Face { side: card.side, trim: card.trim, bleed: card.bleed, blocks })
}

struct Painter<'a, 'm> {
    arrangement: &'a Arrangement<'a>,
    measurer: &'a Measurer<'m>,
    card: Card,
    flexible: Option<&'a Drawing>,
    changed: &'a BTreeSet<String>,
    options: usvg::Options<'static>,
}

/// A block that is being written.
#[derive(Default)]
struct Written {
    items: Vec<Item>,
    alternative: String,
    /// What each layer is drawn with, and whether that is one line that is drawn by syllables.
    layers: Vec<(String, bool)>,
}

impl Written {
    /// Writes elements to the layer on top.
    fn write(&mut self, svg: &str) {
        match self.layers.last_mut() {
            Some((source, false)) => source.push_str(svg),
            _ => self.layers.push((svg.to_owned(), false)),
        }
    }

    /// Writes a line of text; one of a script whose syllables are several glyphs gets a layer of its own.
    fn write_line(&mut self, svg: String, words: &str) {
        if is_joined(words) {
            self.layers.push((svg, true));
        } else {
            self.write(&svg);
        }
    }
}

impl<'a> Painter<'a, '_> {
    fn block(&mut self, index: usize, slot: &Slot<'a>) -> Result<Option<Block>, FaceError> {
        let Some(head) = &slot.node.block else { return Ok(None) };
        let mut written = Written::default();
        self.write(index, &mut written);
        if written.items.is_empty() {
            return Ok(None);
        }
        if self.changed.iter().any(|name| head.says(name)) {
            change_bar(slot, &mut written);
        }
        let layers = written
            .layers
            .into_iter()
            .map(|(source, by_syllables)| self.layer(&source, by_syllables, &slot.node.at));
        let layers = layers.collect::<Result<Vec<Layer>, Findings>>().map_err(FaceError::Layout)?;
        Ok(Some(Block {
            name: head.name.clone(),
            kind: head.kind,
            alternative: if head.kind == BlockKind::Drawing { written.alternative } else { String::new() },
            at: slot.node.at.clone(),
            items: written.items,
            layers,
        }))
    }

    /// Parses elements, which are counted from the trimmed corner, on the whole face with its bleed.
    fn layer(&self, elements: &str, by_syllables: bool, at: &Place) -> Result<Layer, Findings> {
        let bleed = number(self.card.bleed.mm());
        let source = format!("<g transform=\"translate({bleed} {bleed})\">{elements}</g>");
        let whole = |side: Length| number((side + self.card.bleed * 2.0).mm());
        let (width, height) = (whole(self.card.trim.0), whole(self.card.trim.1));
        // Only the library that draws here needs its clusters shifted: see `typeset::Run::shifts`.
        let drawn = source.replace(" data-shifts=", " dx=");
        let svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\">{drawn}</svg>"
        );
        match usvg::Tree::from_str(&svg, &self.options) {
            Ok(tree) => Ok(Layer { source: source.into(), tree: Arc::new(tree), by_syllables }),
            Err(error) => {
                let said = format!("this block can't be drawn: {error}");
                let finding = Finding::error("layout-unsound", at.clone(), said)
                    .help("look at the <svg> in it: it must hold sound SVG elements");
                Err(finding.into())
            }
        }
    }

    /// Writes an element and what stands in it, but for blocks of their own.
    fn write(&self, index: usize, written: &mut Written) {
        let slot = &self.arrangement.slots[index];
        self.ground(slot, written);
        match &slot.node.content {
            Content::Text(text) => self.text(index, text, written),
            Content::Sign(sign) => {
                written.write(&paint::sign(*sign, slot.rect));
                written.items.push(item(slot, slot.rect, ItemMark::Sign(*sign)));
            }
            Content::Rule { line, colour } => {
                let y = slot.rect.center().y;
                written.write(&paint::line((slot.rect.x0, y), (slot.rect.x1, y), *line, *colour));
                written.items.push(item(slot, slot.rect, ItemMark::Rule));
            }
            Content::Strike => {
                let (width, height) = (self.card.trim.0.mm(), self.card.trim.1.mm());
                written.write(&paint::strike(self.card.side == Side::Front, width, height));
                written.items.push(item(slot, Rect::new(0.0, 0.0, width, height), ItemMark::Strike));
            }
            Content::Drawing(room) => self.drawing(slot, room, written),
            Content::Svg { source, class } => {
                let id = format!("svg-{index}");
                let (x, y) = (number(slot.rect.x0), number(slot.rect.y0));
                written.write(&format!("<g id=\"{id}\" transform=\"translate({x} {y})\">{source}</g>"));
                let (layer, ground) = (written.layers.len() - 1, self.colours(index).1);
                let svg = SvgItem { layer, id, class: *class, ground, source: source.clone() };
                written.items.push(item(slot, slot.rect, ItemMark::Svg(svg)));
            }
            _ => {}
        }
        let children = (index + 1..self.arrangement.slots.len())
            .take_while(|later| self.stands_in(*later, index))
            .filter(|later| self.arrangement.slots[*later].parent == Some(index));
        let children: Vec<usize> = children.collect();
        self.dividers(slot, &children, written);
        for child in children {
            if self.arrangement.slots[child].node.block.is_none() {
                self.write(child, written);
            }
        }
    }

    fn stands_in(&self, mut index: usize, outer: usize) -> bool {
        while let Some(parent) = self.arrangement.slots[index].parent {
            if parent == outer {
                return true;
            }
            index = parent;
        }
        false
    }

    /// The paint that an element stands on.
    fn ground(&self, slot: &Slot<'_>, written: &mut Written) {
        if let Content::Swatch(swatch) = &slot.node.content
            && let Some(notch) = self.measurer.style.notch(&swatch.notch)
        {
            let bleed = self.card.bleed.mm();
            written.write(&paint::swatch(swatch.fill, swatch.notches, notch, slot.rect, slot.edges, bleed));
            let mark = ItemMark::Swatch { fill: swatch.fill, notches: swatch.notches };
            written.items.push(item(slot, slot.rect, mark));
        }
        let frame = self.measurer.style.frame(&slot.node.frame);
        if let Some(frame) = frame.filter(|frame| frame.ground().is_some() || frame.outline().is_some()) {
            written.write(&paint::frame(frame, slot.rect));
            written.items.push(item(slot, slot.rect, ItemMark::Frame(slot.node.frame.clone())));
        }
    }

    /// Fine lines between children: upright between those side by side, level between rows.
    fn dividers(&self, slot: &Slot<'_>, children: &[usize], written: &mut Written) {
        let rect = |index: usize| self.arrangement.slots[index].rect;
        if let Content::TableRow { divided: true } = slot.node.content {
            let y = slot.rect.y0 - DIVIDER_ABOVE;
            written.write(&paint::line((slot.rect.x0, y), (slot.rect.x1, y), DIVIDER, DIVIDER_COLOUR));
        }
        if !matches!(slot.node.content, Content::Row { divided: true, .. }) {
            return;
        }
        for pair in children.windows(2) {
            let (one, two) = (rect(pair[0]), rect(pair[1]));
            if two.x0 >= one.x1 {
                let x = f64::midpoint(one.x1, two.x0);
                let (top, bottom) = (one.y0.min(two.y0) + 0.3, one.y1.max(two.y1) - 0.3);
                written.write(&paint::line((x, top), (x, bottom), DIVIDER, DIVIDER_COLOUR));
            }
        }
    }

    fn text(&self, index: usize, text: &Text, written: &mut Written) {
        let slot = &self.arrangement.slots[index];
        let (ink, ground) = self.colours(index);
        let lettering = Lettering { ink: text.ink.unwrap_or(ink), upward: text.upward };
        let width = if text.upward { f64::MAX } else { slot.rect.width() };
        let set = self.measurer.set(text, self.arrangement.setting.tightness, width);
        let size = set.size.mm();
        let starts = if text.upward {
            let spare = slot.rect.width() - set.height();
            let left = slot.rect.x0 + if text.align == Align::Middle { spare / 2.0 } else { 0.0 };
            vec![(left + set.bases().next().unwrap_or_default(), slot.rect.y1)]
        } else {
            paint::starts(&set, slot.rect, text.align)
        };
        for (line, at) in set.lines.iter().zip(starts) {
            written.write_line(paint::text_line(line, size, at, lettering), &line.text);
            let mark = ItemMark::Line {
                words: line.text.clone(),
                class: text.class,
                size: set.size,
                bold: line.runs.iter().all(|run| run.weight >= BOLD),
                colours: (lettering.ink, ground),
            };
            written.items.push(item(slot, inked(line, at, text.upward), mark));
        }
    }

    /// The colour of texts in an element, and of what they stand on.
    fn colours(&self, mut index: usize) -> (Srgb, Srgb) {
        loop {
            let slot = &self.arrangement.slots[index];
            if let Content::Swatch(swatch) = &slot.node.content {
                return (swatch.ink, swatch.fill);
            }
            let frame = self.measurer.style.frame(&slot.node.frame);
            if let Some((frame, ground)) = frame.and_then(|frame| Some((frame, frame.ground()?))) {
                return (frame.ink().unwrap_or(Srgb::BLACK), ground);
            }
            let Some(parent) = slot.parent else { return (Srgb::BLACK, Srgb::WHITE) };
            index = parent;
        }
    }

    /// A drawing in the middle of its room.
    fn drawing(&self, slot: &Slot<'_>, room: &DrawingRoom, written: &mut Written) {
        let drawing = if room.heights.is_some() { self.flexible } else { self.measurer.drawn.get(&room.of) };
        let Some(drawing) = drawing.filter(|drawing| !drawing.body.is_empty()) else { return };
        let (width, height) = (drawing.width.mm(), drawing.height.mm());
        let x = slot.rect.x0 + (slot.rect.width() - width) / 2.0;
        let y = slot.rect.y0 + (slot.rect.height() - height) / 2.0;
        written.write(&format!(
            "<g transform=\"translate({} {})\">{}</g>",
            number(x),
            number(y),
            drawing.body
        ));
        written.alternative.clone_from(&drawing.description);
        let mark = ItemMark::Drawing(room.of.clone(), drawing.scale.clone());
        written.items.push(item(slot, Rect::new(x, y, x + width, y + height), mark));
    }
}

/// What a weight must be to count as bold (CSS Fonts 4).
const BOLD: u16 = 700;

/// The fine line between what stands side by side or row by row.
const DIVIDER: f64 = 0.18;
const DIVIDER_ABOVE: f64 = 0.1;
const DIVIDER_COLOUR: Srgb = Srgb { red: 0x99, green: 0x99, blue: 0x99 };

/// The bar beside what has changed: how far left of it, how wide.
const BAR_BESIDE: f64 = 1.0;
const BAR: f64 = 0.6;

/// A bar in the margin, as high as the block.
fn change_bar(slot: &Slot<'_>, written: &mut Written) {
    let x = slot.rect.x0.max(BAR_LEFT_MOST + BAR_BESIDE) - BAR_BESIDE;
    written.write(&paint::line((x, slot.rect.y0), (x, slot.rect.y1), BAR, Srgb::BLACK));
    let bounds = Rect::new(x - BAR / 2.0, slot.rect.y0, x + BAR / 2.0, slot.rect.y1);
    written.items.push(item(slot, bounds, ItemMark::ChangeBar));
}

/// No bar comes nearer to the cut: blocks that run over the edge have theirs within it.
const BAR_LEFT_MOST: f64 = 2.0;

fn item(slot: &Slot<'_>, bounds: Rect, mark: ItemMark) -> Item {
    Item { bounds, at: slot.node.at.clone(), mark }
}

/// The room that a line's ink takes.
fn inked(line: &crate::typeset::Line, (x, y): (f64, f64), upward: bool) -> Rect {
    let (left, right) = (-line.ink.before.mm(), line.width.mm() + line.ink.after.mm());
    let (above, below) = (line.ink.above.mm(), line.ink.below.mm());
    if upward {
        Rect::new(x - above, y - right, x + below, y - left)
    } else {
        Rect::new(x + left, y - above, x + right, y + below)
    }
}
