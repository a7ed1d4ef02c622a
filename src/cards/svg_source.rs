//! SVG of a layout's own as it is written: `svg-not-plain`.
//!
//! Why: the SVG of a card is given out and opened in browsers, where scripts run and addresses are followed; and a
//! drawing that draws itself again and again never ends.
//!
//! To put it right: plain shapes, texts, gradients, clips and masks, and pictures written into it as `data:`.

use crate::diagnostics::{Finding, Findings, Place};
use crate::layouts::{MARK, marked_place};
use usvg::roxmltree::Node;

/// The elements that SVG of a layout may have.
const ELEMENTS: [&str; 20] = [
    "circle",
    "clipPath",
    "defs",
    "desc",
    "ellipse",
    "g",
    "image",
    "line",
    "linearGradient",
    "mask",
    "path",
    "polygon",
    "polyline",
    "radialGradient",
    "rect",
    "stop",
    "text",
    "title",
    "tspan",
    "svg",
];
/// The most elements of one drawing.
const MOST_ELEMENTS: usize = 5_000;
/// How deep its elements may stand in each other.
const DEEPEST: usize = 32;

/// Finds everything that is not plain in an `<svg>` of a layout, which stands at `at`.
pub(super) fn check(svg: Node<'_, '_>, at: &Place, findings: &mut Findings) {
    let mut find = |node: Node<'_, '_>, said: String, help: &str| {
        let at = node.attribute(MARK).and_then(marked_place).unwrap_or_else(|| at.clone());
        findings.push(Finding::error("svg-not-plain", at, said).help(help));
    };
    let count = svg.descendants().filter(Node::is_element).count();
    if count > MOST_ELEMENTS {
        find(svg, format!("an <svg> has {count} elements"), "draw it with at most 5000");
        return;
    }
    for node in svg.descendants().filter(|node| node.is_element() && *node != svg) {
        if let Some((said, help)) = fault(node, svg) {
            find(node, said, help);
        }
    }
}

fn fault(node: Node<'_, '_>, svg: Node<'_, '_>) -> Option<(String, &'static str)> {
    let name = node.tag_name().name();
    if !ELEMENTS.contains(&name) || name == "svg" {
        return Some((format!("an <svg> of a layout may not have <{name}>"), PLAIN));
    }
    let round = || node.ancestors().skip(1).take_while(|round| *round != svg);
    if round().count() >= DEEPEST {
        return Some((format!("a <{name}> stands too deep in others"), "take groups away that do nothing"));
    }
    let is_within = round().any(|round| matches!(round.tag_name().name(), "clipPath" | "mask"));
    node.attributes()
        .find_map(|attribute| attribute_fault(name, attribute.name(), attribute.value(), is_within))
}

const PLAIN: &str = "draw with shapes, texts, gradients, clips and masks; pictures are PNG or JPEG, written into it as `data:`";

fn attribute_fault(
    element: &str,
    name: &str,
    value: &str,
    is_within: bool,
) -> Option<(String, &'static str)> {
    let said = || format!("`{name}` of <{element}> is “{}”", value.chars().take(40).collect::<String>());
    let lower = value.to_ascii_lowercase();
    if name.to_ascii_lowercase().starts_with("on") || name == "base" {
        return Some((said(), "leave it out: a card has no scripts and follows no addresses"));
    }
    if name == "href" {
        // A picture that is not written into it is left out of the drawing, which a finding of its own tells.
        return (element != "image" && !value.starts_with('#')).then(|| (said(), PLAIN));
    }
    let mut named = lower.match_indices("url(").map(|(at, _)| lower[at + 4..].trim_start_matches(SIGNS));
    let is_drawn_with = lower.contains("url(");
    if lower.contains('\\') || lower.contains("image-set") || named.any(|named| !named.starts_with('#')) {
        return Some((said(), "use only names of the same <svg>, as `url(#name)`"));
    }
    let takes_others = matches!(name, "clip-path" | "mask" | "style");
    (is_within && is_drawn_with && takes_others)
        .then(|| (said(), "let clips and masks hold nothing that is clipped or masked itself"))
}

/// What may stand between `url(` and its address.
const SIGNS: [char; 4] = [' ', '"', '\'', '\n'];
