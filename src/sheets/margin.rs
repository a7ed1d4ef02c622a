//! What stands on a sheet outside what is cut: crop marks, the 50 mm bar, sheet and edition.

use super::impose::{MARK_GAP, MARK_LENGTH, Rectangle, UNPRINTABLE};
use super::options::Options;
use super::points::{pt, rect};
use super::print_item::PrintKind;
use crate::catalogue::FlipEdge;
use crate::typeset::{FontStyle, Fonts, Run, Style};
use crate::units::Length;
use krilla::geom::{Path, PathBuilder, Size, Transform};
use krilla::paint::{Fill, Stroke};
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ArtifactType, ContentTag};
use krilla_svg::{SurfaceExt, SvgSettings};
use std::fmt::Write;

/// What the bar measures where the printer was told to print at 100 %.
const BAR: Length = Length::from_mm(50.0);
const BAR_HEIGHT: Length = Length::from_mm(2.0);
/// From the sheet's edge to the texts and the bar.
const INDENT: Length = Length::from_mm(6.0);
/// From the sheet's edge to the nearer side of the bar.
const BAR_LIFT: Length = Length::from_mm(5.0);
const TYPE_SIZE: Length = Length::from_pt(7.0);
const MARK_WIDTH: Length = Length::from_mm(0.1);

/// The margin of one side of a sheet.
#[derive(Debug, Clone)]
pub(super) struct Margin {
    /// Round all that is cut from this side.
    pub(super) trim_bounds: Option<Rectangle>,
    /// Where each card is cut.
    pub(super) trims: Vec<Rectangle>,
    /// What stands at the top left.
    pub(super) left: String,
    /// What stands at the top right.
    pub(super) right: String,
    /// What is cut from the sheet, which settles how it is printed.
    pub(super) kind: PrintKind,
}

/// Draws it; none of it is read out.
pub(super) fn draw(
    surface: &mut Surface<'_>,
    size: (Length, Length),
    margin: &Margin,
    options: &Options<'_>,
) {
    surface.start_tagged(ContentTag::Artifact(Artifact::with_kind(ArtifactType::Page)));
    if options.format.crop_marks {
        stroke(surface, crop_marks(margin, options.format.bleed), MARK_WIDTH);
    }
    bar(surface, size.1);
    texts(surface, size, margin, options);
    surface.end_tagged();
}

/// Strokes a path in black.
pub(super) fn stroke(surface: &mut Surface<'_>, path: Option<Path>, width: Length) {
    let Some(path) = path else { return };
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke { width: pt(width), ..Stroke::default() }));
    surface.draw_path(&path);
    surface.set_stroke(None);
}

/// Two marks at each end of every line that is cut, from edge to edge of the sheet.
fn crop_marks(margin: &Margin, bleed: Length) -> Option<Path> {
    let bounds = margin.trim_bounds?;
    let (near, far) = (bleed + MARK_GAP, bleed + MARK_GAP + MARK_LENGTH);
    let mut path = PathBuilder::new();
    for x in lines(margin, |trim| [trim.left, trim.right()]) {
        line(&mut path, (x, bounds.top - far), (x, bounds.top - near));
        line(&mut path, (x, bounds.bottom() + near), (x, bounds.bottom() + far));
    }
    for y in lines(margin, |trim| [trim.top, trim.bottom()]) {
        line(&mut path, (bounds.left - far, y), (bounds.left - near, y));
        line(&mut path, (bounds.right() + near, y), (bounds.right() + far, y));
    }
    path.finish()
}

fn lines(margin: &Margin, ends: impl Fn(Rectangle) -> [Length; 2]) -> Vec<Length> {
    let mut lines: Vec<Length> = margin.trims.iter().flat_map(|trim| ends(*trim)).collect();
    lines.sort_by(Length::total_cmp);
    lines.dedup_by(|a, b| (*a - *b).abs() < Length::from_mm(1e-6));
    lines
}

/// Adds a straight line.
pub(super) fn line(path: &mut PathBuilder, from: (Length, Length), to: (Length, Length)) {
    path.move_to(pt(from.0), pt(from.1));
    path.line_to(pt(to.0), pt(to.1));
}

/// A bar whose outside measures 50 mm.
fn bar(surface: &mut Surface<'_>, height: Length) {
    let bar = Rectangle { left: INDENT, top: height - BAR_LIFT - BAR_HEIGHT, width: BAR, height: BAR_HEIGHT };
    let Some(rectangle) = rect(bar) else { return };
    let mut path = PathBuilder::new();
    path.push_rect(rectangle);
    let Some(path) = path.finish() else { return };
    surface.set_stroke(None);
    surface.set_fill(Some(Fill::default()));
    surface.draw_path(&path);
}

fn texts(surface: &mut Surface<'_>, size: (Length, Length), margin: &Margin, options: &Options<'_>) {
    let top = UNPRINTABLE + Length::from_mm(3.5);
    let right = options.fonts.width(&margin.right, Style { font_style: FontStyle::Bold, size: TYPE_SIZE });
    let room = size.0 - INDENT * 3.0 - right;
    let beside_bar = INDENT * 2.0 + BAR - Length::from_mm(3.0);
    let note = format!("50\u{a0}mm. {}", how_to_print(margin.kind, options));
    let body = [
        text(options.fonts, &margin.left, FontStyle::Regular, (INDENT, top), room),
        text(options.fonts, &margin.right, FontStyle::Bold, (size.0 - INDENT - right, top), right),
        text(
            options.fonts,
            &note,
            FontStyle::Regular,
            (beside_bar, size.1 - BAR_LIFT - Length::from_mm(0.2)),
            size.0 - beside_bar - INDENT,
        ),
    ];
    svg(surface, size, &body.concat(), options.fonts);
}

fn how_to_print(kind: PrintKind, options: &Options<'_>) -> String {
    let sides = match (kind.sides(), options.format.flip) {
        ([_], _) => "one side",
        (_, FlipEdge::LongEdge) => "both sides, turned over the long edge",
        (_, FlipEdge::ShortEdge) => "both sides, turned over the short edge",
    };
    format!("Print at 100\u{a0}%, {sides}; measure this bar before cutting.")
}

/// One line as an SVG element, set smaller where it is longer than its room.
pub(super) fn text(
    fonts: &Fonts,
    text: &str,
    font_style: FontStyle,
    at: (Length, Length),
    room: Length,
) -> String {
    let width = fonts.width(text, Style { font_style, size: TYPE_SIZE });
    let size = if width > room { TYPE_SIZE * (room / width) } else { TYPE_SIZE };
    let mut element = format!(r#"<text font-size="{:.3}" xml:space="preserve">"#, size.mm());
    for run in fonts.line(text, Style { font_style, size }).runs {
        let _ = write!(
            element,
            r#"<tspan x="{:.3}" y="{:.3}"{} font-family="{}" font-weight="{}">{}</tspan>"#,
            (at.0 + run.left).mm(),
            at.1.mm(),
            shifted(&run),
            escaped(&run.family),
            run.weight,
            escaped(&run.text)
        );
    }
    element + "</text>"
}

fn shifted(run: &Run) -> String {
    let shifts: Vec<String> = run.shifts.iter().map(|shift| format!("{:.3}", shift.mm())).collect();
    if shifts.is_empty() { String::new() } else { format!(r#" dx="{}""#, shifts.join(" ")) }
}

/// Draws SVG elements whose unit is the millimetre over the whole sheet.
pub(super) fn svg(surface: &mut Surface<'_>, size: (Length, Length), body: &str, fonts: &Fonts) {
    let (width, height) = (size.0.mm(), size.1.mm());
    let source = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" width="{width:.3}" height="{height:.3}">{body}</svg>"#
    );
    let Ok(tree) = usvg::Tree::from_str(&source, &fonts.options()) else { return };
    let Some(extent) = Size::from_wh(tree.size().width(), tree.size().height()) else { return };
    let scale = pt(Length::from_mm(1.0));
    surface.push_transform(&Transform::from_scale(scale, scale));
    surface.draw_svg(&tree, extent, SvgSettings::default());
    surface.pop();
}

fn escaped(text: &str) -> String {
    let clean: String = text.chars().map(|letter| if letter.is_control() { ' ' } else { letter }).collect();
    clean.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
