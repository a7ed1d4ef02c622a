//! A filled layout read to a description.

use super::description::{
    BlockHead, Content, DrawingRoom, Heights, Level, Node, Sizing, Swatch, Text, Track,
};
use super::elements::Reading;
use super::style::CardStyle;
use super::svg_source;
use crate::colour::Srgb;
use crate::diagnostics::{FilePath, Finding, Findings, Place, nearest};
use crate::layouts::{place_before, unmarked};
use std::collections::BTreeSet;
use std::sync::OnceLock;
use usvg::roxmltree::{Document, Node as Element, ParsingOptions};

/// The elements of a layout.
const ELEMENTS: [&str; 17] = [
    "block", "columns", "drawing", "face", "form", "forms", "row", "rule", "sign", "space", "stack",
    "strike", "svg", "swatch", "table", "text", "tr",
];

/// Reads a filled layout; `height` is that of the face, of which percentages of drawings are.
///
/// # Errors
/// Everything that is not sound in it, at its place in the layout.
pub(super) fn read(layout: &str, filled: &str, style: &CardStyle, height: f64) -> Result<Node, Findings> {
    let mut findings = Findings::new();
    let whole = Place::whole(FilePath::layouts(layout));
    let document = match Document::parse_with_options(filled, bounded()) {
        Ok(document) => document,
        Err(error) => {
            findings.push(unsound(filled, &error, whole));
            return Err(findings);
        }
    };
    let mut reader = Reader { filled, style, height, findings, names: BTreeSet::new(), in_block: false };
    let face = reader.node(document.root_element(), &whole);
    match face {
        Some(face) if !reader.findings.has_errors() => Ok(face),
        _ => Err(reader.findings),
    }
}

/// No face has room for so many elements and texts.
const MOST_NODES: u32 = 60_000;
/// How deep elements may stand in each other.
const DEEPEST: usize = 32;

fn bounded<'a>() -> ParsingOptions<'a> {
    ParsingOptions { nodes_limit: MOST_NODES, ..ParsingOptions::default() }
}

fn unsound(filled: &str, error: &usvg::roxmltree::Error, whole: Place) -> Finding {
    let at = error.pos();
    let lines = filled.split_inclusive('\n');
    let before: usize = lines.take((at.row as usize).saturating_sub(1)).map(str::len).sum();
    let line = &filled[before..];
    let column = (at.col as usize).saturating_sub(1);
    let offset = before + line.char_indices().nth(column).map_or(line.len(), |(offset, _)| offset);
    let place = place_before(filled, offset).unwrap_or(whole);
    // Where it stands in the filled text is of no use to who wrote the layout.
    let said = error.to_string();
    let said = said.strip_suffix(&format!(" at {at}")).unwrap_or(&said);
    Finding::error("layout-unsound", place, format!("the filled layout is not sound XML: {said}")).help(
        "look at the element at this line and those after it: each must be closed, and its attributes quoted",
    )
}

struct Reader<'a> {
    filled: &'a str,
    style: &'a CardStyle,
    height: f64,
    findings: Findings,
    /// Names of blocks so far.
    names: BTreeSet<String>,
    /// Whether what is read stands in a block.
    in_block: bool,
}

impl<'a> Reader<'a> {
    fn node(&mut self, element: Element<'a, 'a>, parent: &Place) -> Option<Node> {
        let in_block = self.in_block;
        let node = self.in_or_outside(element, parent);
        self.in_block = in_block;
        node
    }

    fn in_or_outside(&mut self, element: Element<'a, 'a>, parent: &Place) -> Option<Node> {
        let mut reading = Reading::of(element, parent, &mut self.findings);
        let name = reading.name();
        if element.ancestors().skip(1).count() > DEEPEST {
            reading.find(format!("a <{name}> stands too deep in others"), |finding| {
                finding.expected(format!("at most {DEEPEST} elements round it"))
            });
            return None;
        }
        if !ELEMENTS.contains(&name) {
            let help =
                nearest(name, ELEMENTS).map_or_else(String::new, |word| format!("did you mean <{word}>?"));
            let said = format!("there is no element <{name}>");
            reading.find(said, |finding| finding.found(name).expected(ELEMENTS.join(", ")).help(help));
            return None;
        }
        let at = reading.at.clone();
        let block = block(&mut reading, &mut self.names);
        let room = room(&mut reading);
        let default = if block.is_some() { Level::Middle } else { Level::Base };
        let level = match reading.text("level") {
            "" => default,
            _ => reading.word("level"),
        };
        let frame = frame(&mut reading, self.style);
        let content = content(&mut reading, self.style, self.height, self.filled);
        self.in_block |= block.is_some();
        let drawn = !frame.is_empty() || is_drawn(&content);
        if drawn && !self.in_block {
            reading.find(format!("a <{name}> stands in no block"), |finding| {
                finding.help("put it into a <block>, or give it an `id`: what is in no block is not drawn")
            });
        }
        reading.finish();
        let children = match content {
            Content::Forms => self.forms(element, &at),
            _ if is_leaf(&content) => Vec::new(),
            _ => self.children(element, &at),
        };
        Some(Node { at, block, room, level, frame, content, children })
    }

    /// Forms stand for each other, so that they may hold blocks of the same name.
    fn forms(&mut self, element: Element<'a, 'a>, at: &Place) -> Vec<Node> {
        let before = self.names.clone();
        let mut all = before.clone();
        let forms = element.children().filter(Element::is_element).filter_map(|form| {
            self.names.clone_from(&before);
            let node = self.node(form, at);
            all.extend(std::mem::take(&mut self.names));
            node
        });
        let forms = forms.collect();
        self.names = all;
        forms
    }

    fn children(&mut self, element: Element<'a, 'a>, at: &Place) -> Vec<Node> {
        let lost = element
            .children()
            .find(|child| child.is_text() && !child.text().unwrap_or_default().trim().is_empty());
        if let Some(lost) = lost {
            let text = lost.text().unwrap_or_default().trim();
            let said = format!("“{text}” stands outside a <text>");
            self.findings
                .push(Finding::error("layout-element", at.clone(), said).help("put it into a <text>"));
        }
        element.children().filter(Element::is_element).filter_map(|child| self.node(child, at)).collect()
    }
}

fn is_leaf(content: &Content) -> bool {
    matches!(
        content,
        Content::Text(_)
            | Content::Sign(_)
            | Content::Rule { .. }
            | Content::Drawing(_)
            | Content::Svg { .. }
            | Content::Space
            | Content::Strike
    )
}

fn is_drawn(content: &Content) -> bool {
    matches!(content, Content::Swatch(_)) || is_leaf(content) && *content != Content::Space
}

/// An element that names itself is a block; so is every <block>.
fn block(reading: &mut Reading<'_, '_>, names: &mut BTreeSet<String>) -> Option<BlockHead> {
    let name = reading.text("id");
    let is_block = reading.name() == "block";
    if name.is_empty() && !is_block {
        return None;
    }
    if name.is_empty() {
        reading.find("a <block> has no `id`", |finding| {
            finding.help("give it a name that no other block of the face has")
        });
    } else if !names.insert(name.to_owned()) {
        let said = format!("two blocks of the face are called “{name}”");
        reading.find(said, |finding| finding.found(name).help("give one of them another `id`"));
    }
    let kind = reading.word("kind");
    let field = reading.text("field");
    let field = if field.is_empty() { name } else { field };
    let says = reading.text("says").split(';').map(str::trim).filter(|start| !start.is_empty());
    let says = says.map(str::to_owned).collect();
    Some(BlockHead { name: name.to_owned(), kind, field: field.to_owned(), says })
}

fn room(reading: &mut Reading<'_, '_>) -> Sizing {
    Sizing {
        width: reading.measure("width"),
        least_width: reading.measure("least-width"),
        height: reading.measure("height"),
        grows: reading.yes("grow"),
        above: reading.number("above").unwrap_or_default(),
        gap: reading.number("gap").unwrap_or_default(),
        between: reading.number("between").unwrap_or_default(),
        span: reading.count("span").and_then(|span| u16::try_from(span).ok()).unwrap_or(1),
        at_foot: reading.yes("foot"),
        edges: reading.edges("edges"),
    }
}

fn frame(reading: &mut Reading<'_, '_>, style: &CardStyle) -> String {
    let name = reading.text("frame");
    if !name.is_empty() && style.frame(name).is_none() {
        let known: Vec<&str> = style.names().0.collect();
        reading.unknown("frame", name, &known);
    }
    name.to_owned()
}

fn content(reading: &mut Reading<'_, '_>, style: &CardStyle, height: f64, filled: &str) -> Content {
    match reading.name() {
        "row" => Content::Row { wraps: reading.yes("wrap"), divided: reading.yes("divided") },
        "columns" => Content::Columns { share: reading.pair("share").unwrap_or((0.5, 0.5)) },
        "table" => Content::Table { columns: columns(reading) },
        "tr" => Content::TableRow { divided: reading.yes("divided") },
        "forms" => Content::Forms,
        "swatch" => Content::Swatch(swatch(reading, style)),
        "text" => Content::Text(text(reading)),
        "sign" => Content::Sign(reading.word("is")),
        "rule" => rule(reading),
        "drawing" => Content::Drawing(drawing(reading, height)),
        "svg" => svg(reading, filled),
        "space" => Content::Space,
        "strike" => Content::Strike,
        _ => Content::Stack,
    }
}

fn columns(reading: &mut Reading<'_, '_>) -> Vec<Track> {
    let columns = reading.tracks("columns");
    if columns.is_empty() && reading.text("columns").is_empty() {
        reading.find("a <table> has no `columns`", |finding| finding.expected("widths such as “4 auto 1fr”"));
    }
    columns
}

fn swatch(reading: &mut Reading<'_, '_>, style: &CardStyle) -> Swatch {
    let notch = reading.text("notch");
    if style.notch(notch).is_none() {
        let known: Vec<&str> = style.names().1.collect();
        reading.unknown("notch", notch, &known);
    }
    Swatch {
        fill: reading.colour("fill").unwrap_or(Srgb::WHITE),
        ink: reading.colour("ink").unwrap_or(Srgb::BLACK),
        notches: reading.count("notches").unwrap_or_default(),
        notch: notch.to_owned(),
    }
}

/// The most bytes of a text.
const LONGEST: usize = 20_000;

fn text(reading: &mut Reading<'_, '_>) -> Text {
    let inside = reading.element.descendants().find(|node| node.is_element() && *node != reading.element);
    if let Some(inside) = inside {
        let said = format!("<{}> stands in a <text>", inside.tag_name().name());
        reading.find(said, |finding| {
            finding.help("a <text> may hold words only; close it before the next element")
        });
    }
    let words: String =
        reading.element.descendants().filter_map(|node| node.is_text().then(|| node.text())?).collect();
    if words.len() > LONGEST {
        reading.find(format!("a <text> holds {} bytes", words.len()), |finding| {
            finding.expected(format!("at most {LONGEST}: no card has room for more"))
        });
    }
    Text {
        words,
        class: reading.word("class"),
        font_style: reading.word("style"),
        ink: reading.colour("ink"),
        align: reading.word("align"),
        upward: reading.yes("upward"),
        shrinks: reading.yes("shrink"),
        extents: OnceLock::new(),
    }
}

/// The narrowest line of ISO 128-2 (from memory), which is also about what laser printers hold: three dots at
/// 600 dpi (common practice, no source).
pub(super) const LEAST_LINE: f64 = 0.13;

fn rule(reading: &mut Reading<'_, '_>) -> Content {
    let line = reading.number("line").unwrap_or(0.2);
    if line < LEAST_LINE {
        let said = format!("a <rule> is {line} mm wide: printers break it up or leave it out");
        reading.find(said, |finding| {
            finding.found(format!("{line} mm")).expected(format!("at least {LEAST_LINE} mm"))
        });
    }
    Content::Rule { line, colour: reading.colour("colour").unwrap_or(Srgb::BLACK) }
}

/// How the names of drawings begin that are as large as they come.
const NATURAL: [&str; 5] = ["true-size-", "end-", "wrong-", "worn-", "own-"];

fn drawing(reading: &mut Reading<'_, '_>, height: f64) -> DrawingRoom {
    let of = reading.text("of");
    let known = ["assembly", "section", "line-up"];
    if !known.contains(&of) && !NATURAL.iter().any(|name| of.starts_with(name)) {
        reading.unknown("of", of, &["assembly", "section", "line-up", "true-size-1", "end-1", "wrong-1"]);
    }
    let mut length = |name| {
        reading.measure(name).map(|measure| match measure {
            super::description::Measure::Mm(mm) => mm,
            super::description::Measure::Percent(percent) => height * percent / 100.0,
        })
    };
    let (least, wanted, most) = (length("least"), length("wanted"), length("most"));
    let heights = least.map(|least| {
        let wanted = wanted.unwrap_or(least).max(least);
        Heights { least, wanted, most: most.unwrap_or(wanted).max(wanted) }
    });
    if heights.is_none() && known.contains(&of) {
        reading.find(format!("the drawing “{of}” has no `least` height"), |finding| {
            finding.help("say how high it is from `least` through `wanted` to `most`, in millimetres")
        });
    }
    DrawingRoom { of: of.to_owned(), heights }
}

fn svg(reading: &mut Reading<'_, '_>, filled: &str) -> Content {
    let element = reading.element;
    if element.attribute("width").is_none() || element.attribute("height").is_none() {
        reading.find("an <svg> has no `width` and `height`", |finding| finding.expected("millimetres"));
    }
    svg_source::check(element, &reading.at.clone(), reading.findings());
    let first = element.first_child().map_or(element.range().end, |child| child.range().start);
    let last = element.last_child().map_or(first, |child| child.range().end);
    Content::Svg { source: unmarked(&filled[first..last]).into(), class: reading.word("class") }
}
