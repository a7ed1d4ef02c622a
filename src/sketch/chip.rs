//! A mark in small, in the shape that cards give it: its paint, its text, its notches in the lower edge.

use super::appearance::{Appearance, Pen, Tone};
use super::draft::Draft;
use super::letters::Anchor;
use super::outline::Outline;
use super::plane::{Point, Rect, at};
use super::scene::Purpose;
use crate::colour::Mark;

/// Half the width of a notch, its depth and the paint between two, in type sizes.
const NOTCH: (f64, f64, f64) = (0.2, 0.4, 0.15);

impl Draft<'_> {
    /// How large a mark is drawn: letters and notches side by side.
    pub fn chip_size(&self, mark: &Mark) -> (f64, f64) {
        let size = self.size();
        let notches = f64::from(mark.notches.min(12)) * (2.0 * NOTCH.0 + NOTCH.2) * size;
        (self.lettering().width(&mark.text) + notches + 0.9 * size, 1.5 * size)
    }

    /// Draws a mark with its upper left corner at a point.
    pub fn chip(&mut self, mark: &Mark, corner: Point) -> Rect {
        let ((wide, high), size) = (self.chip_size(mark), self.size());
        let (right, foot) = (corner.x + wide, corner.y + high);
        let mut points = vec![corner, at(right, corner.y), at(right, foot)];
        let mut x = right - 0.2 * size;
        for _ in 0..mark.notches.min(12) {
            let half = NOTCH.0 * size;
            points.extend([at(x, foot), at(x - half, foot - NOTCH.1 * size), at(x - 2.0 * half, foot)]);
            x -= 2.0 * half + NOTCH.2 * size;
        }
        points.push(at(corner.x, foot));
        let paint = Appearance::area(Tone::Paint(mark.colour), Pen::Thin);
        self.area(Purpose::Edge, Outline::new(points), paint);
        let text = self.level(at(corner.x + 0.35 * size, corner.y + high / 2.0), Anchor::Start, &mark.text);
        self.scene.toned_text(text, Tone::OnPaint(mark.colour));
        Rect::new(corner.x, corner.y, right, foot)
    }
}
