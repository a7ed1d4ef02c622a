//! What an element asks of the layout library: sizes, gaps, padding and margins as its styles have them.

use super::description::{Align, Content, Edges, Level, Measure, Node, Sizing, Track};
use super::margins::{PUNCH, SAFE};
use super::setting::Clear;
use super::style::CardStyle;
use super::tightness::Tightness;
use taffy::prelude::{FromFr, FromLength, FromPercent, TaffyAuto, auto, fr, length, line, percent, span};
use taffy::{
    AlignItems, Display, FlexDirection, FlexWrap, GridPlacement, JustifyContent, LengthPercentage,
    LengthPercentageAuto, Line, Rect, Size, Style,
};

/// What the one that an element stands in settles for it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Placing {
    /// The edges of the card that its paint runs over.
    pub edges: Edges,
    /// How it keeps out of the punched corner, and whether that is on the left.
    pub clear: Clear,
    pub corner_left: bool,
    /// The part of the width that it has, as one of two columns.
    pub share: Option<f64>,
    /// Whether it stands beside others, and may be narrowed for them.
    pub beside: bool,
    /// Its row, as a cell of a table.
    pub cell: Option<Cell>,
}

/// Where a cell of a table stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cell {
    pub row: usize,
    /// Space above its row, and what the row's frame keeps from it: top, right, bottom, left.
    pub above: f64,
    pub pad: [f64; 4],
    pub level: Level,
}

impl Default for Placing {
    fn default() -> Self {
        let (edges, clear) = (Edges::default(), Clear::Already);
        Self { edges, clear, corner_left: false, share: None, beside: false, cell: None }
    }
}

/// The style of an element that stands so.
pub(super) fn style(node: &Node, placing: Placing, card: &CardStyle, tightness: Tightness) -> Style {
    let room = &node.room;
    let mut style = Style {
        size: Size { width: room.width.map_or(auto(), measured), height: auto() },
        min_size: Size {
            width: room.least_width.map_or(auto(), measured),
            height: room.height.map_or(auto(), measured),
        },
        gap: Size { width: mm(room.between), height: mm(tightness.gap(room.gap)) },
        flex_shrink: if placing.beside { 1.0 } else { 0.0 },
        padding: padding(node, placing.edges, card),
        margin: margin(room, placing),
        ..Style::default()
    };
    if room.grows {
        (style.flex_grow, style.flex_shrink) = (1.0, 1.0);
        style.flex_basis = room.least_width.map_or(length(0.0), measured);
    }
    if let Some(share) = placing.share {
        (style.flex_grow, style.flex_basis, style.min_size.width) = (share as f32, length(0.0), length(0.0));
    }
    arranged(node, &mut style);
    if placing.beside && matches!(&node.content, Content::Text(text) if text.align == Align::End) {
        style.margin.left = auto();
    }
    if let Some(cell) = placing.cell {
        style.grid_row = line(i16::try_from(cell.row + 1).unwrap_or(i16::MAX));
        style.grid_column = Line { start: GridPlacement::Auto, end: span(room.span.max(1)) };
        style.align_self = Some(aligned(cell.level));
    }
    style
}

/// Space between what it stands between: closes up, and widens where there is room to spare.
pub(super) fn spacer(above: f64, card: &CardStyle, tightness: Tightness) -> Style {
    let gap = tightness.gap(above);
    Style {
        flex_basis: length(gap as f32),
        flex_grow: 1.0,
        flex_shrink: 0.0,
        max_size: Size { width: auto(), height: length((gap + card.air) as f32) },
        ..Style::default()
    }
}

/// How children stand in an element.
fn arranged(node: &Node, style: &mut Style) {
    style.align_items = aligned(node.level);
    match &node.content {
        Content::Row { wraps, .. } => {
            style.flex_wrap = if *wraps { FlexWrap::Wrap } else { FlexWrap::NoWrap };
        }
        Content::Columns { .. } => style.align_items = AlignItems::STRETCH,
        Content::Table { columns } => {
            style.display = Display::Grid;
            style.grid_template_columns = columns.iter().map(|track| self::track(*track)).collect();
            style.align_items = aligned(Level::Base);
        }
        Content::Swatch(_) => {
            style.flex_direction = FlexDirection::Column;
            style.align_items = AlignItems::STRETCH;
            style.justify_content = JustifyContent::CENTER;
        }
        _ => {
            style.flex_direction = FlexDirection::Column;
            style.align_items = AlignItems::STRETCH;
            style.justify_content =
                if node.level == Level::Middle { JustifyContent::CENTER } else { JustifyContent::START };
        }
    }
}

/// What the frame keeps free inside, notches in the free edge of a swatch, and the safe area at the card's edges.
fn padding(node: &Node, edges: Edges, card: &CardStyle) -> Rect<LengthPercentage> {
    let mut pad = card.frame(&node.frame).map_or([0.0; 4], |frame| frame.pad);
    if let Content::Swatch(swatch) = &node.content {
        let depth = card.notch(&swatch.notch).filter(|_| swatch.notches > 0).map_or(0.0, |notch| notch.depth);
        pad[if edges.bottom { 0 } else { 2 }] += depth;
    }
    let inside = |pad: f64, edge: bool| mm(pad + if edge { SAFE } else { 0.0 });
    Rect {
        top: inside(pad[0], edges.top),
        right: inside(pad[1], edges.right),
        bottom: inside(pad[2], edges.bottom),
        left: inside(pad[3], edges.left),
    }
}

/// How far from the trimmed corner what stands beside the punched hole begins.
const BESIDE_PUNCH: f64 = PUNCH + 0.5 - SAFE;

fn margin(room: &Sizing, placing: Placing) -> Rect<LengthPercentageAuto> {
    let over = |edge: bool| if edge { -SAFE } else { 0.0 };
    let edges = placing.edges;
    let (mut top, mut right, mut bottom, mut left) =
        (over(edges.top), over(edges.right), over(edges.bottom), over(edges.left));
    match placing.clear {
        Clear::Already => {}
        Clear::Beside if placing.corner_left => left = BESIDE_PUNCH,
        Clear::Beside => right = BESIDE_PUNCH,
        Clear::Below(lower) => top += lower,
    }
    if let Some(Cell { above, pad, .. }) = placing.cell {
        (top, right, bottom, left) = (top + above + pad[0], right + pad[1], bottom + pad[2], left + pad[3]);
    }
    let mm = |side: f64| length(side as f32);
    let top = if room.at_foot { auto() } else { mm(top) };
    Rect { top, right: mm(right), bottom: mm(bottom), left: mm(left) }
}

fn mm(length: f64) -> LengthPercentage {
    taffy::prelude::length(length as f32)
}

fn measured<T: FromLength + FromPercent>(measure: Measure) -> T {
    match measure {
        Measure::Mm(mm) => length(mm as f32),
        Measure::Percent(part) => percent((part / 100.0) as f32),
    }
}

fn track<T: FromLength + FromFr + TaffyAuto>(track: Track) -> T {
    match track {
        Track::Mm(mm) => length(mm as f32),
        Track::Auto => auto(),
        Track::Part(part) => fr(part as f32),
    }
}

fn aligned(level: Level) -> AlignItems {
    match level {
        Level::Top => AlignItems::START,
        Level::Middle => AlignItems::CENTER,
        Level::Base => AlignItems::BASELINE,
    }
}
