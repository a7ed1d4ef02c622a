//! A filled layout read as blocks, and where each of them comes to lie.

use super::face::BlockKind;
use super::type_class::Fit;
use crate::diagnostics::{FilePath, Finding, Place};
use std::collections::BTreeMap;
use usvg::roxmltree::{Document, Node};

/// What a filled layout says about its face.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Plan {
    /// Elements that every block shares: styles and definitions.
    pub shared: String,
    /// The blocks, in reading order.
    pub blocks: Vec<Planned>,
    /// Texts that are longer than their room, with the excess in millimetres.
    pub too_long: Vec<(String, f64)>,
    /// Where blocks that flow begin, below the upper cut.
    pub top: f64,
    /// Where they must end.
    pub bottom: f64,
    /// How many forms the layout has: the first where there is room, the next where there isn't.
    pub forms: u32,
    /// The least and the largest part of the width that its first column can have.
    pub shares: Option<(f64, f64)>,
}

/// A block as the layout describes it. Lengths are millimetres.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Planned {
    pub name: String,
    pub kind: BlockKind,
    pub alternative: String,
    /// The record's field that makes it as large as it is.
    pub field: String,
    /// The elements in it.
    pub body: String,
    /// Attributes of its group that are handed on.
    pub looks: String,
    /// The column that it stands in; empty where it takes the whole width.
    pub column: String,
    pub place: Placing,
    pub height: f64,
    pub gap: f64,
    /// The drawing that takes the room that is left over.
    pub elastic: Option<Elastic>,
}

/// How a block finds its height on the face.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Placing {
    /// Its top stands at this height.
    At(f64),
    /// Below everything so far, or everything in its column.
    Below,
    /// Its top level with that of another block.
    Beside(String),
    /// On the lower edge of the safe area.
    Bottom,
}

/// A drawing that can be smaller or larger.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Elastic {
    pub drawing: String,
    pub width: f64,
    pub least: f64,
    pub wanted: f64,
    pub most: f64,
}

/// Reads a filled layout.
///
/// # Errors
/// Where it is not sound XML, or a block lacks what a block needs; with the layout's line.
pub(super) fn read(layout: &str, filled: &str) -> Result<Plan, Box<Finding>> {
    let document =
        Document::parse(filled).map_err(|error| unsound(layout, error.pos().row, &error.to_string()))?;
    let root = document.root_element();
    let groups = root.children().filter(|node| node.has_tag_name("g"));
    let shared = root.children().filter(|node| node.is_element() && !node.has_tag_name("g"));
    Ok(Plan {
        shared: shared.map(|node| &filled[node.range()]).collect(),
        blocks: groups.map(|group| block(layout, filled, group)).collect::<Result<_, _>>()?,
        too_long: too_long(root),
        top: number(root, "data-top").unwrap_or_default(),
        bottom: number(root, "data-bottom").unwrap_or_default(),
        forms: root.attribute("data-forms").and_then(|forms| forms.trim().parse().ok()).unwrap_or(1),
        shares: number(root, "data-least-share").zip(number(root, "data-most-share")),
    })
}

fn block(layout: &str, filled: &str, group: Node<'_, '_>) -> Result<Planned, Box<Finding>> {
    let line = group.document().text_pos_at(group.range().start).row;
    let name = group.attribute("id").ok_or_else(|| unsound(layout, line, "a block has no `id`"))?;
    let kind = group.attribute("data-kind").and_then(kind);
    let kind =
        kind.ok_or_else(|| unsound(layout, line, &format!("the block {name} has no sound `data-kind`")))?;
    let alternative = group.attribute("aria-label").unwrap_or_default();
    if kind == BlockKind::Drawing && alternative.is_empty() {
        return Err(unsound(
            layout,
            line,
            &format!("the drawing {name} has no `aria-label` that says what it shows"),
        ));
    }
    let first = group.first_child().map_or(group.range().end, |child| child.range().start);
    let last = group.last_child().map_or(first, |child| child.range().end);
    Ok(Planned {
        name: name.to_owned(),
        kind,
        alternative: alternative.to_owned(),
        field: group.attribute("data-field").unwrap_or(name).to_owned(),
        body: filled[first..last].to_owned(),
        looks: looks(group),
        column: group.attribute("data-column").unwrap_or_default().to_owned(),
        place: placing(group),
        height: number(group, "data-height").unwrap_or_default(),
        gap: number(group, "data-gap").unwrap_or_default(),
        elastic: elastic(group),
    })
}

fn kind(word: &str) -> Option<BlockKind> {
    match word {
        "heading" => Some(BlockKind::Heading),
        "text" => Some(BlockKind::Text),
        "drawing" => Some(BlockKind::Drawing),
        "ornament" => Some(BlockKind::Ornament),
        _ => None,
    }
}

fn placing(group: Node<'_, '_>) -> Placing {
    if let Some(y) = number(group, "data-y") {
        return Placing::At(y);
    }
    match (group.attribute("data-beside"), group.attribute("data-place")) {
        (Some(name), _) => Placing::Beside(name.to_owned()),
        (_, Some("bottom")) => Placing::Bottom,
        _ => Placing::Below,
    }
}

fn elastic(group: Node<'_, '_>) -> Option<Elastic> {
    let drawing = group.attribute("data-drawing")?.to_owned();
    let least = number(group, "data-least").unwrap_or_default();
    let wanted = number(group, "data-wanted").unwrap_or(least);
    let most = number(group, "data-most").unwrap_or(wanted);
    Some(Elastic { drawing, width: number(group, "data-width").unwrap_or_default(), least, wanted, most })
}

/// Presentation attributes of a block's group; what this program reads stays behind.
fn looks(group: Node<'_, '_>) -> String {
    let own = |name: &str| name.starts_with("data-") || name == "id" || name == "aria-label";
    let kept = group.attributes().filter(|attribute| !own(attribute.name()));
    kept.map(|attribute| format!(" {}=\"{}\"", attribute.name(), super::setting::escaped(attribute.value())))
        .collect()
}

fn too_long(root: Node<'_, '_>) -> Vec<(String, f64)> {
    let over = |node: Node<'_, '_>| {
        let texts = || node.descendants().filter(Node::is_text).filter_map(|text| text.text());
        number(node, "data-over").map(|over| (texts().collect(), over))
    };
    root.descendants().filter_map(over).collect()
}

fn number(node: Node<'_, '_>, name: &str) -> Option<f64> {
    node.attribute(name)?.trim().parse().ok()
}

fn unsound(layout: &str, line: u32, reason: &str) -> Box<Finding> {
    let place = Place::whole(FilePath::layouts(layout));
    Finding::error("layout-drawing", place, format!("the filled layout is not sound: {reason}"))
        .found(format!("at line {line} of the filled layout"))
        .help("a layout is an SVG whose top-level groups are blocks with `id` and `data-kind`")
        .into()
}

/// Where every block lies, and how much too long the face is.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Placed {
    /// The top of each block below the upper cut.
    pub tops: Vec<f64>,
    /// How far the blocks run past where they must end; negative where room is left over.
    pub excess: f64,
}

impl Plan {
    /// Places every block; `elastic` is the height of the drawing that takes the room left over, and
    /// `air` is added to every gap.
    pub fn placed(&self, fit: Fit, elastic: f64, air: f64) -> Placed {
        let mut tops: Vec<f64> = Vec::with_capacity(self.blocks.len());
        let (mut flow, mut limit) = (Flow::from(self.top), self.bottom);
        for (index, block) in self.blocks.iter().enumerate() {
            let height = block.height_with(elastic);
            let gap = fit.gap(block.gap) + if block.gap > 0.0 { air } else { 0.0 };
            let beside = |name: &str| {
                self.blocks[..index].iter().position(|earlier| earlier.name == name).map(|other| tops[other])
            };
            let top = match &block.place {
                Placing::At(y) => *y,
                Placing::Below => flow.below(&block.column) + gap,
                Placing::Beside(name) => beside(name).unwrap_or(flow.below(&block.column) + gap),
                Placing::Bottom => self.bottom - height,
            };
            tops.push(top);
            if block.place == Placing::Bottom {
                limit = limit.min(top - gap);
            } else if block.kind != BlockKind::Ornament || height > 0.0 {
                flow.take(&block.column, top + height);
            }
        }
        Placed { tops, excess: flow.lowest - limit }
    }

    /// The drawing that takes the room left over, where the face has one.
    pub fn elastic(&self) -> Option<&Elastic> {
        self.blocks.iter().find_map(|block| block.elastic.as_ref())
    }
}

/// How far down blocks have come: in all, and in each column since the last block over the whole width.
struct Flow<'a> {
    lowest: f64,
    start: f64,
    columns: BTreeMap<&'a str, f64>,
}

impl<'a> Flow<'a> {
    fn from(top: f64) -> Self {
        Self { lowest: top, start: top, columns: BTreeMap::new() }
    }

    /// Where the next block of this column can begin.
    fn below(&self, column: &str) -> f64 {
        if column.is_empty() { self.lowest } else { self.columns.get(column).copied().unwrap_or(self.start) }
    }

    fn take(&mut self, column: &'a str, bottom: f64) {
        self.lowest = self.lowest.max(bottom);
        if column.is_empty() {
            self.columns.clear();
            self.start = self.lowest;
        } else {
            let reached = self.below(column).max(bottom);
            self.columns.insert(column, reached);
        }
    }
}

impl Planned {
    fn height_with(&self, elastic: f64) -> f64 {
        if self.elastic.is_some() { elastic } else { self.height }
    }
}
