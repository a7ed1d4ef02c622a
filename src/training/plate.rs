//! A plate of a gauge drawn at true size, and the bar that shows the scale.

use super::dxf::BAR;
use super::outline::{Engraved, Plate};
use crate::sketch::{Drawing, number};
use crate::typeset::{FontStyle, Fonts, Style};
use crate::units::Length;
use std::fmt::Write;

/// Width of the line along the outline, whose middle is the edge.
const LINE: f64 = 0.2;
const TYPE_SIZE: Length = Length::from_pt(7.5);

/// A plate at true size.
pub(super) fn drawing(fonts: &Fonts, title: &str, plate: &Plate) -> Drawing {
    let (left, low, right, high) = plate.ends();
    let (x, y) = (|x: f64| x - left + LINE / 2.0, |y: f64| high - y + LINE / 2.0);
    let mut body = String::from("<path fill=\"#ffffff\" stroke=\"#111111\"");
    let _ = write!(body, " stroke-width=\"{LINE}\" d=\"");
    for (nth, corner) in plate.corners.iter().enumerate() {
        let letter = if nth == 0 { 'M' } else { 'L' };
        let _ = write!(body, "{letter}{} {}", number(x(corner.0)), number(y(corner.1)));
    }
    body.push_str("Z\"/>");
    let mut words = Vec::new();
    for Engraved { text, at, bold } in &plate.texts {
        let font_style = if *bold { FontStyle::CondensedBold } else { FontStyle::Condensed };
        body.push_str(&lettered(fonts, text, font_style, (x(at.0), y(at.1))));
        words.push(text.as_str());
    }
    Drawing {
        width: Length::from_mm(right - left + LINE),
        height: Length::from_mm(high - low + LINE),
        scale: "1:1".to_owned(),
        title: title.to_owned(),
        description: format!("Outline of a gauge at true size: {}.", words.join(", ")),
        body,
        dimensions: Vec::new(),
    }
}

/// A bar of 50 mm.
pub(super) fn bar(fonts: &Fonts) -> Drawing {
    let mut body = format!("<path fill=\"#111111\" d=\"M0 0L{BAR} 0L{BAR} 2L0 2Z\"/>");
    body.push_str(&lettered(fonts, "50 mm: measure before cutting", FontStyle::Condensed, (BAR / 2.0, 5.2)));
    Drawing {
        width: Length::from_mm(BAR),
        height: Length::from_mm(6.0),
        scale: "1:1".to_owned(),
        title: "Bar of 50 mm".to_owned(),
        description: "A bar of 50 mm, to check the scale of the print.".to_owned(),
        body,
        dimensions: Vec::new(),
    }
}

/// A line of text whose middle stands at x.
fn lettered(fonts: &Fonts, text: &str, font_style: FontStyle, (x, y): (f64, f64)) -> String {
    let line = fonts.line(text, Style { font_style, size: TYPE_SIZE });
    let left = x - line.width.mm() / 2.0;
    let mut svg = String::new();
    for run in &line.runs {
        let _ = write!(
            svg,
            "<text x=\"{}\" y=\"{}\" font-family=\"{}\" font-weight=\"{}\" font-size=\"{}\" fill=\"#111111\">{}</text>",
            number(left + run.left.mm()),
            number(y),
            escaped(&run.family),
            run.weight,
            number(TYPE_SIZE.mm()),
            escaped(&run.text)
        );
    }
    svg
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
