//! SVG of a layout's own: `type-too-small`, `type-below-class`, `font-missing`, `line-too-thin`, `picture-coarse`,
//! `picture-too-large`, `picture-lost`.
//!
//! Why: a font that is missing leaves its text out without a word; below about 0.13 mm laser printers drop parts of a
//! line; below 200 dots per inch edges show steps (common practice, no source); and what a layout names by a path is
//! not taken in, since nothing but the World may read files.
//!
//! To put it right: set texts with `<text>`, which chooses font and size; wider lines; a finer PNG or JPEG, written
//! into the layout as `data:`.

use super::check::Check;
use super::svg_ink::{InkedText, Shape, SvgInk, scales};
use super::{svg_edges, svg_texts};
use crate::cards::read::LEAST_LINE;
use crate::diagnostics::Findings;
use usvg::roxmltree::{Document, Node};

/// A narrow fill this long is a line, not a dot.
const LINE: f64 = 1.0;
/// What rounding may take, in millimetres and in points.
const SLACK: f64 = 0.002;
const POINTS: f64 = 0.01;
/// The most pixels of a picture: an A6 card at 1200 dots per inch has 35 million, and each takes four bytes.
const MOST_PIXELS: f64 = 40e6;
/// Least resolution at the printed size, in dots per inch.
const LEAST_DOTS: f64 = 200.0;

pub(super) fn check(check: Check<'_>, findings: &mut Findings) {
    for ink in check.drawn {
        for text in &ink.texts {
            sizes(check, ink, text, findings);
        }
        let whole = format!("<svg xmlns=\"http://www.w3.org/2000/svg\">{}</svg>", ink.source);
        if let Ok(written) = Document::parse(&whole) {
            lost(check, ink, &written, findings);
        }
        lines(check, ink, findings);
        pictures(check, ink, findings);
        svg_edges::check(check, ink, findings);
        svg_texts::check(check, ink, findings);
    }
}

fn sizes(check: Check<'_>, ink: &SvgInk<'_>, text: &InkedText<'_>, findings: &mut Findings) {
    let (size, smallest) = (text.size().pt(), check.limits.smallest_type.pt());
    let needed = ink.class.least_legible().max(smallest);
    let (code, least) = if size + POINTS < smallest {
        ("type-too-small", smallest)
    } else if size + POINTS < needed {
        ("type-below-class", needed)
    } else {
        return;
    };
    let said =
        format!("“{}” is set in {size:.1} pt, too small for the class {}", text.words(), ink.class.word());
    findings.push(
        check
            .finding(code, ink.at, &said)
            .field(ink.block)
            .found(format!("{size:.1} pt"))
            .expected(format!("at least {least:.1} pt"))
            .help("set it as <text> with its class; an <svg> says in `class` what its texts are for"),
    );
}

/// What is left out of the drawing without a word: texts whose font is not there, pictures that can't be read, lines
/// of no width.
fn lost(check: Check<'_>, ink: &SvgInk<'_>, written: &Document<'_>, findings: &mut Findings) {
    let named = |name: &'static str| written.descendants().filter(move |node| node.has_tag_name(name));
    let drawn: Vec<String> = ink.texts.iter().map(InkedText::words).collect();
    let texts: Vec<String> = named("text").map(words).filter(|words| !words.trim().is_empty()).collect();
    if texts.len() > drawn.len() {
        let lost = texts.into_iter().find(|words| !drawn.contains(words)).unwrap_or_default();
        let said = format!("“{lost}” asks for a font that is not there");
        let finding = check.finding("font-missing", ink.at, &said).field(ink.block);
        findings.push(
            finding
                .expected("a font of the program or of the catalogue")
                .help("use a built-in font, or one of the catalogue's fonts folder"),
        );
    }
    let pictures = named("image").count();
    if pictures > ink.pictures.len() {
        let said = format!("{} of its pictures can't be drawn", pictures - ink.pictures.len());
        let finding = check.finding("picture-lost", ink.at, &said).field(ink.block);
        findings.push(
            finding
                .expected("a PNG or JPEG written into the layout as `data:`")
                .help("layouts take no pictures from files or a network; write a drawing as SVG elements"),
        );
    }
    if written.descendants().any(|node| is_zero(said(node, "stroke-width")) && has_stroke(node)) {
        thin(check, ink, 0.0, findings);
    }
}

fn words(node: Node<'_, '_>) -> String {
    node.descendants().filter(Node::is_text).filter_map(|node| node.text()).collect()
}

fn lines(check: Check<'_>, ink: &SvgInk<'_>, findings: &mut Findings) {
    let mut widths: Vec<f64> =
        ink.shapes.iter().filter_map(width).filter(|width| width + SLACK < LEAST_LINE).collect();
    widths.sort_by(f64::total_cmp);
    widths.dedup();
    for width in widths {
        thin(check, ink, width, findings);
    }
}

fn thin(check: Check<'_>, ink: &SvgInk<'_>, width: f64, findings: &mut Findings) {
    findings.push(
        check
            .finding("line-too-thin", ink.at, &format!("a line is {width:.2} mm wide"))
            .field(ink.block)
            .found(format!("{width:.2} mm"))
            .expected(format!("at least {LEAST_LINE} mm"))
            .help("make it wider; a transform that makes the drawing smaller makes its lines thinner too"),
    );
}

/// Width of a shape's line, or of a fill that is drawn as a line, as it is printed.
fn width(shape: &Shape<'_>) -> Option<f64> {
    if let Some(stroke) = shape.path.stroke() {
        return Some(f64::from(stroke.width().get()) * scales(shape.path.abs_transform()).0);
    }
    let (width, height) = (shape.bounds.width(), shape.bounds.height());
    (width.max(height) >= LINE && shape.fill().is_some()).then_some(width.min(height))
}

/// What an element says of itself, as an attribute or in its style.
fn said<'a>(node: Node<'a, '_>, name: &str) -> &'a str {
    let style = node.attribute("style").unwrap_or_default();
    let declared =
        style.split(';').filter_map(|part| part.split_once(':')).find(|(key, _)| key.trim() == name);
    declared.map(|(_, value)| value.trim()).or_else(|| node.attribute(name)).unwrap_or_default()
}

fn is_zero(width: &str) -> bool {
    width.trim_end_matches(|letter: char| letter.is_ascii_alphabetic()).parse() == Ok(0.0)
}

fn has_stroke(node: Node<'_, '_>) -> bool {
    let mut round = node.ancestors().map(|node| said(node, "stroke")).filter(|stroke| !stroke.is_empty());
    round.next().is_some_and(|stroke| stroke != "none")
}

fn pictures(check: Check<'_>, ink: &SvgInk<'_>, findings: &mut Findings) {
    for (image, _) in &ink.pictures {
        let (width, height) = (image.size().width(), image.size().height());
        if f64::from(width) * f64::from(height) > MOST_PIXELS {
            let said = format!("a picture has {width:.0} × {height:.0} pixels");
            let finding = check.finding("picture-too-large", ink.at, &said).field(ink.block);
            findings.push(finding.expected("at most 40 million").help("300 dots per inch are enough"));
        }
        let dots = 25.4 / scales(image.abs_transform()).1;
        if dots + 0.5 < LEAST_DOTS {
            let said = format!("a picture has {dots:.0} dots per inch");
            let finding = check.finding("picture-coarse", ink.at, &said).field(ink.block);
            findings.push(
                finding
                    .found(format!("{dots:.0} dpi at its printed size"))
                    .expected(format!("at least {LEAST_DOTS} dpi"))
                    .help("take a finer picture, or print it smaller"),
            );
        }
    }
}
