//! What is seen where, in small cells: of each leader thousands of ways are looked at.

use super::band::Band;
use crate::sketch::appearance::Tone;
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Line, Point, Vec2, at};
use crate::sketch::scene::{Primitive, Purpose, Scene};

/// The side of a cell in millimetres, where the drawing is no larger than a card's.
const FINE: f64 = 0.25;
/// The most cells of a drawing: those of a larger one are larger.
const MOST: f64 = 9_000.0;
const NOTHING: u16 = 0;
const CONDUCTOR: u16 = 1;
const FIRST_PART: u16 = 3;
/// A gap that a leader would not be told apart in from the gap's own edges.
const NARROW: u16 = 2;
/// Half the width of such a gap, in millimetres (own rule).
const HALF_A_GAP: f64 = 0.45;
/// What is seen beyond the object's own box, when neighbours are compared.
const OUTSIDE: u16 = PAINTED;
/// From corner to corner of a cell, in sides of it, about.
const DIAGONAL: f64 = 1.4;
/// On top of the part's: its mark, which no dot may hide.
const PAINTED: u16 = 1 << 15;

/// A cell that shows a part, met on a straight way from a side of the object.
pub(super) struct Met {
    pub part: usize,
    /// The line of cells along which it lies.
    pub line: usize,
    pub cell: usize,
    pub place: Point,
    /// How far the way lies over others, in millimetres.
    pub over: f64,
}

/// The object of a drawing, cell by cell.
pub(super) struct Cells {
    corner: Point,
    /// Of a cell, in millimetres.
    pub side: f64,
    columns: usize,
    rows: usize,
    seen: Vec<u16>,
    /// Of each cell: how far the nearest place is where something else is seen, in millimetres.
    pub clearance: Vec<f64>,
}

impl Cells {
    pub fn of(scene: &Scene) -> Self {
        let bounds = scene.object_bounds();
        let side = (bounds.area() / MOST).sqrt().max(FINE);
        let count = |length: f64| ((length / side).ceil().max(1.0) as usize).min(MOST as usize);
        let (columns, rows) = (count(bounds.width()), count(bounds.height()));
        let seen = vec![NOTHING; columns * rows];
        let mut cells = Self { corner: bounds.origin(), side, columns, rows, seen, clearance: Vec::new() };
        for element in &scene.elements {
            let painted = matches!(element.appearance.fill, Some(Tone::Paint(_)));
            let seen = match element.purpose {
                Purpose::Cut(part) | Purpose::View(part) => code(part) | if painted { PAINTED } else { 0 },
                Purpose::Wire => CONDUCTOR,
                Purpose::Empty => NOTHING,
                _ => continue,
            };
            match &element.primitive {
                Primitive::Area(outline) => cells.fill(outline, seen),
                Primitive::Circle(centre, radius) => cells.fill_circle(*centre, *radius, seen),
                Primitive::Lines(_) | Primitive::Text(_) => {}
            }
        }
        cells.clearance = cells.measured();
        for (seen, clear) in cells.seen.iter_mut().zip(&cells.clearance) {
            if *seen == NOTHING && *clear < HALF_A_GAP {
                *seen = NARROW;
            }
        }
        cells
    }

    fn fill(&mut self, outline: &Outline, seen: u16) {
        let mut crossings: Vec<(usize, f64)> = Vec::new();
        for Line { p0, p1 } in outline.sides() {
            let (top, foot) = if p0.y <= p1.y { (p0, p1) } else { (p1, p0) };
            for row in self.row_at(top.y)..self.row_at(foot.y) {
                let y = self.middle(0, row).y;
                crossings.push((row, top.x + (foot.x - top.x) * (y - top.y) / (foot.y - top.y)));
            }
        }
        crossings.sort_by(|one, other| one.0.cmp(&other.0).then(one.1.total_cmp(&other.1)));
        for pair in crossings.chunks_exact(2) {
            self.fill_row(pair[0].0, (pair[0].1, pair[1].1), seen);
        }
    }

    fn fill_circle(&mut self, centre: Point, radius: f64, seen: u16) {
        for row in self.row_at(centre.y - radius)..self.row_at(centre.y + radius) {
            let off = self.middle(0, row).y - centre.y;
            let half = (radius * radius - off * off).max(0.0).sqrt();
            self.fill_row(row, (centre.x - half, centre.x + half), seen);
        }
    }

    fn fill_row(&mut self, row: usize, (from, to): (f64, f64), seen: u16) {
        let column = |x: f64| self.index_at(x - self.corner.x, self.columns);
        let (from, to) = (row * self.columns + column(from), row * self.columns + column(to));
        self.seen[from..to.max(from)].fill(seen);
    }

    /// The first row whose middle lies at or below a height.
    fn row_at(&self, y: f64) -> usize {
        self.index_at(y - self.corner.y, self.rows)
    }

    fn index_at(&self, off: f64, count: usize) -> usize {
        ((off / self.side - 0.5).ceil().max(0.0) as usize).min(count)
    }

    /// The middle of a cell.
    fn middle(&self, column: usize, row: usize) -> Point {
        self.corner + at(column as f64 + 0.5, row as f64 + 0.5).to_vec2() * self.side
    }

    /// How much of a line lies over anything but nothing and this part, in millimetres; more than `enough` where it is more
    /// than that.
    pub fn over_others(&self, part: usize, line: Line, enough: f64) -> f64 {
        let length = line.p0.distance(line.p1);
        let count = (length / (1.5 * self.side)).ceil().max(1.0);
        let own = code(part);
        let (start, step) = ((line.p0 - self.corner) / self.side, (line.p1 - line.p0) / (self.side * count));
        let others = (0..count as usize).filter(|index| {
            let seen = self.at(start + step * (*index as f64 + 0.5));
            seen != NOTHING && seen & !PAINTED != own
        });
        let most = (enough * count / length) as usize;
        others.take(most.saturating_add(1)).count() as f64 * length / count
    }

    /// Whether a straight way leads from a place up, down or to a side out of the object.
    pub fn is_open(&self, place: Point) -> bool {
        let end = self.corner + at(self.columns as f64, self.rows as f64).to_vec2() * self.side;
        let (x, y) = (place.x, place.y);
        let out = [at(x, self.corner.y), at(end.x, y), at(x, end.y), at(self.corner.x, y)];
        let beyond = [y - self.corner.y, end.x - x, end.y - y, x - self.corner.x];
        out.into_iter().zip(beyond).any(|(edge, far)| far <= 0.0 || self.is_empty(Line::new(place, edge)))
    }

    fn is_empty(&self, line: Line) -> bool {
        let count = (line.length() / self.side).ceil().max(1.0) as usize;
        let at = |index: usize| line.p0.lerp(line.p1, index as f64 / count as f64);
        (0..=count).all(|index| self.at((at(index) - self.corner) / self.side) == NOTHING)
    }

    /// What is seen so many cells from the corner.
    fn at(&self, off: Vec2) -> u16 {
        let inside = off.x >= 0.0 && off.y >= 0.0;
        let (column, row) = (off.x as usize, off.y as usize);
        if inside && column < self.columns && row < self.rows {
            self.seen[row * self.columns + column]
        } else {
            NOTHING
        }
    }

    /// How far the nearest place is where something else is seen, by steps from cell to cell, there and back.
    fn measured(&self) -> Vec<f64> {
        // With a frame of cells round all, so that each has neighbours on every side.
        let width = self.columns + 2;
        let mut seen = vec![OUTSIDE; width * (self.rows + 2)];
        let row_of = |row: usize| (row + 1) * width + 1..(row + 2) * width - 1;
        for (row, cells) in self.seen.chunks(self.columns).enumerate() {
            seen[row_of(row)].copy_from_slice(cells);
        }
        let mut clear = vec![f64::INFINITY; seen.len()];
        for row in 0..self.rows {
            for cell in row_of(row) {
                near(&seen, &mut clear, cell, [cell - 1, cell - width, cell - width - 1, cell - width + 1]);
            }
        }
        for row in (0..self.rows).rev() {
            for cell in row_of(row).rev() {
                near(&seen, &mut clear, cell, [cell + 1, cell + width, cell + width + 1, cell + width - 1]);
            }
        }
        let inside = (0..self.rows).flat_map(|row| &clear[row_of(row)]);
        inside.map(|cells| cells * self.side).collect()
    }

    /// Each of these cells that shows a part, going inward from a side.
    pub fn inward_from(&self, band: Band, wanted: &[bool], mut found: impl FnMut(Met)) {
        let (lines, deep) =
            if band.is_level() { (self.columns, self.rows) } else { (self.rows, self.columns) };
        let mut of_part = vec![0_u32; self.parts()];
        for line in 0..lines {
            let cell_at = |depth: usize| match band {
                Band::Above => depth * self.columns + line,
                Band::Below => (deep - 1 - depth) * self.columns + line,
                Band::Left => line * self.columns + depth,
                Band::Right => line * self.columns + deep - 1 - depth,
            };
            let mut all = 0;
            of_part.fill(0);
            for cell in (0..deep).map(cell_at) {
                all += u32::from(self.seen[cell] != NOTHING);
                let Some(part) = self.part(cell) else { continue };
                of_part[part] += 1;
                if wanted[cell] {
                    let over = f64::from(all - of_part[part]) * self.side;
                    found(Met { part, line, cell, place: self.middle_of(cell), over });
                }
            }
        }
    }

    /// One more than the highest number of a part that is seen.
    fn parts(&self) -> usize {
        let all = (0..self.seen.len()).filter_map(|cell| self.part(cell));
        all.max().map_or(0, |part| part + 1)
    }

    /// The part that a cell shows.
    pub fn part(&self, cell: usize) -> Option<usize> {
        let seen = self.seen[cell] & !PAINTED;
        (seen >= FIRST_PART).then(|| usize::from(seen - FIRST_PART))
    }

    /// Whether a cell shows a mark.
    pub fn is_painted(&self, cell: usize) -> bool {
        self.seen[cell] & PAINTED != 0
    }

    /// The middle of the cell of this number.
    pub fn middle_of(&self, cell: usize) -> Point {
        self.middle(cell % self.columns, cell / self.columns)
    }
}

/// What neighbours on one side, already measured, say of a cell: half a cell off, where they show something else. Two of
/// them lie beside it, two at its corners.
fn near(seen: &[u16], clear: &mut [f64], cell: usize, [side, end, corner, other]: [usize; 4]) {
    let (own, mut least) = (seen[cell], clear[cell]);
    for (next, far) in [(side, 1.0), (end, 1.0), (corner, DIAGONAL), (other, DIAGONAL)] {
        let here = if seen[next] == own { clear[next] + far } else { 0.5 * far };
        // Quicker than the library's least of two, which looks for what is no number.
        if here < least {
            least = here;
        }
    }
    clear[cell] = least;
}

fn code(part: usize) -> u16 {
    FIRST_PART + u16::try_from(part).unwrap_or(u16::MAX).min(PAINTED - FIRST_PART - 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sketch::appearance::Appearance;

    /// One part from 0 to 10 mm, with others over it from 2 to 4 and from 6 to 9: five millimetres of a way along it.
    #[test]
    fn a_way_over_others_is_measured_as_far_as_is_asked() {
        let mut scene = Scene::default();
        for (part, x0, x1) in [(0, 0.0, 10.0), (1, 2.0, 4.0), (2, 6.0, 9.0)] {
            let outline = Outline::rectangle(crate::sketch::plane::Rect::new(x0, 0.0, x1, 5.0));
            scene.area(Purpose::Cut(part), outline, Appearance::solid(Tone::Paper));
        }
        let (cells, way) = (Cells::of(&scene), Line::new(at(0.1, 2.6), at(9.9, 2.6)));
        let whole = cells.over_others(0, way, f64::INFINITY);
        assert!((whole - 5.0).abs() < 0.5, "{whole}");
        for enough in [0.0, 0.3, 1.0, 2.2, 4.0, 4.9, 5.6, 20.0] {
            let over = cells.over_others(0, way, enough);
            if whole <= enough {
                assert!((over - whole).abs() < 1e-9, "{enough}: {over}");
            } else {
                assert!(over > enough && over <= whole, "{enough}: {over}");
            }
        }
    }
}
