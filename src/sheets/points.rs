//! From lengths to the points that a PDF counts in.

use super::impose::Rectangle;
use crate::units::Length;
use krilla::geom::Rect;

/// A length in the points that a PDF counts in.
pub(super) fn pt(length: Length) -> f32 {
    length.pt() as f32
}

/// A rectangle in points.
pub(super) fn rect(rectangle: Rectangle) -> Option<Rect> {
    Rect::from_xywh(pt(rectangle.left), pt(rectangle.top), pt(rectangle.width), pt(rectangle.height))
}
