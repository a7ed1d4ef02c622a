//! SVG of what stands on a face: letters, boxes, paint, signs, lines.

use super::description::{Align, Edges};
use super::margins::SAFE;
use super::measure::SetText;
use super::sign::Sign;
use super::style::{Frame, Notch};
use crate::colour::Srgb;
use crate::sketch::number;
use crate::typeset::{Line, Run, is_joined};
use kurbo::Rect;
use std::fmt::Write;

/// A text as XML carries it.
pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// A box, painted and outlined.
pub(super) fn frame(frame: &Frame, rect: Rect) -> String {
    let mut looks = format!(" fill=\"{}\"", frame.ground().map_or_else(|| "none".to_owned(), Srgb::hex));
    if let Some(stroke) = frame.outline() {
        let _ = write!(looks, " stroke=\"{}\" stroke-width=\"{}\"", stroke.hex(), number(frame.line));
    }
    if frame.radius > 0.0 {
        let _ = write!(looks, " rx=\"{}\"", number(frame.radius));
    }
    let (x, y, width, height) =
        (number(rect.x0), number(rect.y0), number(rect.width()), number(rect.height()));
    format!("<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\"{looks}/>")
}

/// A fine line from one point to another.
pub(super) fn line(from: (f64, f64), to: (f64, f64), width: f64, colour: Srgb) -> String {
    let (x, y, to_x, to_y) = (number(from.0), number(from.1), number(to.0), number(to.1));
    let (width, colour) = (number(width), colour.hex());
    format!("<path d=\"M{x} {y}L{to_x} {to_y}\" stroke=\"{colour}\" stroke-width=\"{width}\"/>")
}

/// Two broad lines from corner to corner, clear of the trim and of the corner that is punched, which is the upper right
/// one of a front and the upper left one of a back; what they cross shows through.
pub(super) fn strike(falls: bool, width: f64, height: f64) -> String {
    let (left, right) = if falls { (SAFE, height - SAFE) } else { (height - SAFE, SAFE) };
    let long = width.hypot(height);
    let turn = (right - left).signum();
    let off = (-turn * height / long * STRIKE_APART / 2.0, width / long * STRIKE_APART / 2.0);
    let lines = [-1.0, 1.0].map(|line| {
        let (x, y) = (line * off.0, line * off.1);
        let [from_x, to_x, from_y, to_y] = [SAFE + x, width - SAFE + x, left + y, right + y].map(number);
        format!("M{from_x} {from_y}L{to_x} {to_y}")
    });
    format!(
        "<path d=\"{}\" fill=\"none\" stroke=\"#111111\" stroke-opacity=\"0.42\" stroke-width=\"{}\"/>",
        lines.concat(),
        number(STRIKE_LINE)
    )
}

/// Width of a line of the strike, and how far the middles of the two are apart.
const STRIKE_LINE: f64 = 1.7;
const STRIKE_APART: f64 = 3.6;

/// Width of the outline of a mark's paint.
const OUTLINE: f64 = 0.2;

/// A mark's paint, its notches cut into its lower edge, or into its upper one where the lower is the card's; they
/// are narrower where they are many. At the card's edges it runs on over the bleed, which its outline ends at.
pub(super) fn swatch(fill: Srgb, notches: u32, notch: Notch, rect: Rect, edges: Edges, bleed: f64) -> String {
    let over = |edge: bool| if edge { bleed - OUTLINE / 2.0 } else { 0.0 };
    let (x0, x1) = (rect.x0 - over(edges.left), rect.x1 + over(edges.right));
    let (y0, y1) = (rect.y0 - over(edges.top), rect.y1 + over(edges.bottom));
    let (start, end, back, down) = if edges.bottom { (x0, x1, y1, y0) } else { (x1, x0, y0, y1) };
    let depth = if edges.bottom { notch.depth } else { -notch.depth };
    let forward = (end - start).signum();
    let many = f64::from(notches) * (2.0 * notch.half + notch.apart) + notch.apart;
    let narrow = (rect.width() / many).min(1.0) * forward;
    // The last millimetres before the trimmed edge are the safe area's: notches begin at the free end.
    let begin = if edges.bottom && edges.right { rect.x1 - SAFE - many } else { start };
    let mut path = format!("M{} {}H{}V{}", number(end), number(back), number(start), number(down));
    if edges.bottom {
        let _ = write!(path, "H{}", number(begin.max(start)));
    }
    for _ in 0..notches {
        let (apart, half) = (number(notch.apart * narrow), number(notch.half * narrow));
        let (into, out) = (number(depth), number(-depth));
        let _ = write!(path, "h{apart}l{half} {into}l{half} {out}");
    }
    let _ = write!(path, "H{}Z", number(end));
    let outline = number(OUTLINE);
    format!("<path d=\"{path}\" fill=\"{}\" stroke=\"#222222\" stroke-width=\"{outline}\"/>", fill.hex())
}

/// A sign in its box: told apart by its shape, never by a colour.
pub(super) fn sign(sign: Sign, rect: Rect) -> String {
    let side = rect.width().min(rect.height());
    let (x, y) = (rect.x0 + (rect.width() - side) / 2.0, rect.y0 + (rect.height() - side) / 2.0);
    let shapes = match sign {
        Sign::Right => {
            "<rect x=\"1\" y=\"1\" width=\"14\" height=\"14\" rx=\"1.5\"/><path d=\"M4 8.5L7 12L12.5 4\"/>"
        }
        Sign::Proven => {
            "<rect x=\"1\" y=\"1\" width=\"14\" height=\"14\" rx=\"1.5\"/><path d=\"M8 4V12M4 8H12\"/>"
        }
        Sign::Hidden => {
            "<path d=\"M0.8 8Q8 0.5 15.2 8Q8 15.5 0.8 8Z\"/><circle cx=\"8\" cy=\"8\" r=\"2.2\" fill=\"#111111\"/><path d=\"M2.5 14.5L13.5 1.5\"/>"
        }
        Sign::Marked => "<path d=\"M1.5 3H14.5V13H12.9L11.2 10.2L9.5 13H1.5Z\"/><path d=\"M4 7.2H9.5\"/>",
        Sign::Wrong => "<circle cx=\"8\" cy=\"8\" r=\"7\"/><path d=\"M3 13L13 3\"/>",
        Sign::Barred => "<path d=\"M2 2L14 14M14 2L2 14\"/>",
        Sign::Apart => "<path d=\"M1.5 8H5.5M10.5 8H14.5M6.8 4V12M9.2 4V12\"/>",
        Sign::Unknown => {
            "<path d=\"M4.5 5Q4.5 1.5 8 1.5Q11.5 1.5 11.5 5Q11.5 7 9.5 8Q8 8.8 8 10.5\"/><circle cx=\"8\" cy=\"14\" r=\"0.7\" fill=\"#111111\"/>"
        }
    };
    let (x, y, scale) = (number(x), number(y), side / 16.0);
    format!(
        "<g transform=\"translate({x} {y}) scale({scale:.4})\" fill=\"none\" stroke=\"#111111\" stroke-width=\"{:.3}\" stroke-linecap=\"round\" stroke-linejoin=\"round\">{shapes}</g>",
        SIGN_LINE / scale
    )
}

/// Width of the lines of a sign.
const SIGN_LINE: f64 = 0.32;

/// How a text is drawn.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lettering {
    pub ink: Srgb,
    pub upward: bool,
}

/// Where each line of a text begins, and its base line.
pub(super) fn starts(set: &SetText, rect: Rect, align: Align) -> Vec<(f64, f64)> {
    let lines = set.lines.iter().zip(set.bases());
    lines.map(|(line, base)| (start(line, rect, align), rect.y0 + base)).collect()
}

/// Where a line begins on the left. Its ink stays in its room on the right; on the left, where few letters stick
/// out, it may hang out of its room but not of the safe area.
fn start(line: &Line, rect: Rect, align: Align) -> f64 {
    let width = line.width.mm();
    let left = rect.x0.max(rect.x0.min(SAFE) + line.ink.before.mm());
    let right = rect.x1 - line.ink.after.mm() - width;
    match align {
        Align::End => right,
        Align::Middle => rect.x0 + (rect.width() - width) / 2.0,
        Align::Start if line.right_to_left => right,
        Align::Start => left,
    }
}

/// One line: one element, and where fonts or directions meet in it, one chunk for each at its measured place, so
/// that no font shapes another's characters and nothing is put in order twice.
pub(super) fn text_line(line: &Line, size: f64, (x, y): (f64, f64), lettering: Lettering) -> String {
    let place = |run: &Run| format!(" x=\"{}\" y=\"{}\"", number(x + run.left.mm()), number(y));
    let looks = looks(line, size, (x, y), lettering);
    match line.runs.as_slice() {
        [run] => {
            let (font, length, text) = (font(run), length(run), escaped(&run.text));
            format!("<text{}{font}{looks}{length}>{text}</text>", place(run))
        }
        runs => {
            let spans = runs.iter().map(|run| {
                let (font, length, text) = (font(run), length(run), escaped(&run.text));
                format!("<tspan{}{font}{length}>{text}</tspan>", place(run))
            });
            format!("<text{looks}>{}</text>", spans.collect::<String>())
        }
    }
}

fn looks(line: &Line, size: f64, (x, y): (f64, f64), lettering: Lettering) -> String {
    let mut looks = format!(" font-size=\"{}\" fill=\"{}\"", number(size), lettering.ink.hex());
    if lettering.upward {
        let _ = write!(looks, " transform=\"rotate(-90 {} {})\"", number(x), number(y));
    }
    if line.runs.iter().any(|run| run.text.starts_with(' ') || run.text.ends_with(' ')) {
        looks.push_str(" xml:space=\"preserve\"");
    }
    looks
}

fn font(run: &Run) -> String {
    format!(" font-family=\"{}, sans-serif\" font-weight=\"{}\"", escaped(&run.family), run.weight)
}

/// The measured length; in scripts whose letters touch it may be kept only by stretching the letters.
fn length(run: &Run) -> String {
    let mut length = format!(" data-length=\"{}\"", number(run.width.mm()));
    if is_joined(&run.text) {
        length.push_str(" lengthAdjust=\"spacingAndGlyphs\"");
    }
    if !run.shifts.is_empty() {
        let shifts: Vec<String> = run.shifts.iter().map(|shift| number(shift.mm())).collect();
        let _ = write!(length, " data-shifts=\"{}\"", shifts.join(" "));
    }
    length
}
