//! A plate as DXF for a machine that cuts: the outline, what is engraved, and a bar to check the scale, in millimetres.
//!
//! The form is that of release 12 (AC1009), which is all that straight outlines need and what every machine reads: pairs
//! of lines, a group code and its value.

use super::outline::{Plate, Point};
use std::fmt::Write;

/// What is cut, what is engraved, and what is neither but shows the scale.
const CUT: &str = "CUT";
const ENGRAVE: &str = "ENGRAVE";
const SCALE: &str = "SCALE";
/// Colours of the layers, by their numbers in the format: white or black, red, blue.
const LAYERS: [(&str, u8); 3] = [(CUT, 7), (ENGRAVE, 1), (SCALE, 5)];
/// Height of capitals.
const CAPITALS: f64 = 1.8;
/// The bar's length, and how far it lies below the plate.
pub(super) const BAR: f64 = 50.0;
const BELOW: f64 = 6.0;

/// From the bar to the first line of what is noted below it, and from line to line.
const LINE: f64 = 3.2;

/// The text of a DXF file, with what is to be noted below the bar.
pub(super) fn dxf(plate: &Plate, notes: &[String]) -> String {
    let mut out = Pairs::default();
    header(&mut out, plate);
    layers(&mut out);
    out.section("ENTITIES");
    outline(&mut out, &plate.corners);
    for engraved in &plate.texts {
        text(&mut out, &engraved.text, engraved.at, ENGRAVE);
    }
    let (left, low, ..) = plate.ends();
    line(&mut out, (left, low - BELOW), (left + BAR, low - BELOW));
    let (middle, bar) = (left + BAR / 2.0, low - BELOW);
    text(&mut out, "50 mm", (middle, bar - LINE), SCALE);
    for (nth, note) in (2..).zip(notes) {
        text(&mut out, note, (middle, bar - LINE * f64::from(nth)), SCALE);
    }
    out.end();
    out.add(0, "EOF");
    out.0
}

fn header(out: &mut Pairs, plate: &Plate) {
    let (left, low, right, high) = plate.ends();
    out.section("HEADER");
    out.add(9, "$ACADVER");
    out.add(1, "AC1009");
    for (name, at) in [("$EXTMIN", (left, low - BELOW)), ("$EXTMAX", (right.max(left + BAR), high))] {
        out.add(9, name);
        out.point(at);
    }
    out.end();
}

fn layers(out: &mut Pairs) {
    out.section("TABLES");
    out.add(0, "TABLE");
    out.add(2, "LAYER");
    out.add(70, LAYERS.len());
    for (name, colour) in LAYERS {
        out.add(0, "LAYER");
        out.add(2, name);
        out.add(70, 0);
        out.add(62, colour);
        out.add(6, "CONTINUOUS");
    }
    out.add(0, "ENDTAB");
    out.end();
}

fn outline(out: &mut Pairs, corners: &[Point]) {
    out.entity("POLYLINE", CUT);
    out.add(66, 1);
    out.point((0.0, 0.0));
    out.add(70, 1);
    for corner in corners {
        out.entity("VERTEX", CUT);
        out.point(*corner);
    }
    out.entity("SEQEND", CUT);
}

fn line(out: &mut Pairs, from: Point, to: Point) {
    out.entity("LINE", SCALE);
    out.point(from);
    out.add(11, millimetres(to.0));
    out.add(21, millimetres(to.1));
    out.add(31, millimetres(0.0));
}

/// A text whose middle stands at x.
fn text(out: &mut Pairs, text: &str, at: Point, layer: &str) {
    out.entity("TEXT", layer);
    out.point(at);
    out.add(40, millimetres(CAPITALS));
    out.add(1, plain(text));
    out.add(72, 1);
    out.add(11, millimetres(at.0));
    out.add(21, millimetres(at.1));
    out.add(31, millimetres(0.0));
}

/// Characters beyond ASCII by their numbers, as the format has them; what would begin a code of the format stands apart.
fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '\u{a0}' => plain.push(' '),
            '\u{2060}' => {}
            '%' if plain.ends_with('%') => plain.push_str(" %"),
            ' '..='~' => plain.push(letter),
            _ => {
                let mut units = [0; 2];
                for unit in letter.encode_utf16(&mut units) {
                    // A text takes whatever is written to it.
                    let _ = write!(plain, "\\U+{unit:04X}");
                }
            }
        }
    }
    plain
}

fn millimetres(length: f64) -> String {
    format!("{length:.4}")
}

/// Pairs of a group code and its value.
#[derive(Default)]
struct Pairs(String);

impl Pairs {
    fn add(&mut self, code: u16, value: impl std::fmt::Display) {
        // A text takes whatever is written to it.
        let _ = writeln!(self.0, "{code:>3}\n{value}");
    }

    fn section(&mut self, name: &str) {
        self.add(0, "SECTION");
        self.add(2, name);
    }

    fn end(&mut self) {
        self.add(0, "ENDSEC");
    }

    fn entity(&mut self, kind: &str, layer: &str) {
        self.add(0, kind);
        self.add(8, layer);
    }

    fn point(&mut self, (x, y): Point) {
        self.add(10, millimetres(x));
        self.add(20, millimetres(y));
        self.add(30, millimetres(0.0));
    }
}

#[cfg(test)]
mod tests {
    use super::plain;

    #[test]
    fn texts_are_ascii_and_hold_no_code_of_the_format() {
        assert_eq!(plain("ST\u{a0}41 · ⌀"), "ST 41 \\U+00B7 \\U+2300");
        assert_eq!(plain("50 %%d"), "50 % %d");
    }
}
