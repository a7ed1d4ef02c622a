//! A path as straight lines.

use usvg::tiny_skia_path::{Path, PathSegment, Point};

/// A straight piece of a path, in the path's own units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Piece {
    pub from: Point,
    pub to: Point,
    /// Whether a line is drawn along it; a fill also closes what the path leaves open.
    pub drawn: bool,
}

/// Lines that a curve becomes: on a card the error is below a thousandth of its size.
const PIECES: u8 = 16;

/// Hands over every piece of a path in turn.
pub(super) fn pieces(path: &Path, found: &mut impl FnMut(Piece)) {
    let (mut start, mut last) = (Point::zero(), Point::zero());
    for segment in path.segments() {
        match segment {
            PathSegment::MoveTo(to) => {
                found(Piece { from: last, to: start, drawn: false });
                (start, last) = (to, to);
            }
            PathSegment::LineTo(to) => {
                found(Piece { from: std::mem::replace(&mut last, to), to, drawn: true });
            }
            PathSegment::QuadTo(bend, to) => {
                let from = std::mem::replace(&mut last, to);
                curve(from, |t| along(along(from, bend, t), along(bend, to, t), t), found);
            }
            PathSegment::CubicTo(one, two, to) => {
                let from = std::mem::replace(&mut last, to);
                let at = |t| {
                    let (a, b, c) = (along(from, one, t), along(one, two, t), along(two, to, t));
                    along(along(a, b, t), along(b, c, t), t)
                };
                curve(from, at, found);
            }
            PathSegment::Close => {
                found(Piece { from: std::mem::replace(&mut last, start), to: start, drawn: true });
            }
        }
    }
    found(Piece { from: last, to: start, drawn: false });
}

fn curve(from: Point, at: impl Fn(f32) -> Point, found: &mut impl FnMut(Piece)) {
    let mut last = from;
    for piece in 1..=PIECES {
        let to = at(f32::from(piece) / f32::from(PIECES));
        found(Piece { from: std::mem::replace(&mut last, to), to, drawn: true });
    }
}

fn along(from: Point, to: Point, t: f32) -> Point {
    Point::from_xy(from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t)
}
