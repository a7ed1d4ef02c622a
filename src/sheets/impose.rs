//! Which card lies where on which sheet, so that a duplex print puts each back behind its front.

use crate::cards::Side;
use crate::catalogue::{FlipEdge, SheetFormat, SheetSize};
use crate::units::Length;

/// Strip along the sheet's edges that printers leave white.
pub(super) const UNPRINTABLE: Length = Length::from_mm(4.0);
/// Length of a crop mark.
pub(super) const MARK_LENGTH: Length = Length::from_mm(4.0);
/// Between the bleed and a crop mark.
pub(super) const MARK_GAP: Length = Length::from_mm(1.0);
/// Height of the strips above and below the cards that hold the texts and the bar.
pub(super) const TEXT_STRIP: Length = Length::from_mm(5.0);

/// A rectangle on a sheet or card, from the top left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rectangle {
    /// From the left edge.
    pub left: Length,
    /// From the top edge.
    pub top: Length,
    /// Across.
    pub width: Length,
    /// Down.
    pub height: Length,
}

impl Rectangle {
    /// The right edge.
    #[must_use]
    pub fn right(self) -> Length {
        self.left + self.width
    }

    /// The bottom edge.
    #[must_use]
    pub fn bottom(self) -> Length {
        self.top + self.height
    }

    /// The same rectangle, larger on every side.
    #[must_use]
    pub fn grown(self, by: Length) -> Self {
        Self {
            left: self.left - by,
            top: self.top - by,
            width: self.width + by * 2.0,
            height: self.height + by * 2.0,
        }
    }

    /// The smallest rectangle round both.
    #[must_use]
    pub fn round(self, other: Self) -> Self {
        let (left, top) = (self.left.min(other.left), self.top.min(other.top));
        let (right, bottom) = (self.right().max(other.right()), self.bottom().max(other.bottom()));
        Self { left, top, width: right - left, height: bottom - top }
    }
}

/// One sheet of paper: what is on its front and on its back.
#[derive(Debug, Clone, PartialEq)]
pub struct SheetPlan {
    /// Counted from 1 over all sheets.
    pub number: usize,
    /// Width and height of the sheet as it is read; wider than high where more cards fit that way.
    pub size: (Length, Length),
    /// Fronts, row by row.
    pub fronts: Vec<Slot>,
    /// Backs, in the order of the fronts that they lie behind.
    pub backs: Vec<Slot>,
}

/// The place of one face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slot {
    /// Which card, counted from 0 in the order of the cards.
    pub card: usize,
    /// Where it is cut.
    pub trim: Rectangle,
    /// Whether it stands on its head, so that the finished card turns like the page of a book.
    pub turned: bool,
}

impl SheetPlan {
    /// The places on one side, in the order of the cards.
    #[must_use]
    pub fn slots(&self, side: Side) -> &[Slot] {
        match side {
            Side::Front => &self.fronts,
            Side::Back => &self.backs,
        }
    }

    /// The smallest rectangle round all that is cut from one side.
    #[must_use]
    pub fn trim_bounds(slots: &[Slot]) -> Option<Rectangle> {
        slots.iter().map(|slot| slot.trim).reduce(Rectangle::round)
    }
}

/// How cards stand in rows and columns on one sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Grid {
    sheet: (Length, Length),
    trim: (Length, Length),
    pitch: (Length, Length),
    columns: usize,
    rows: usize,
    flip: FlipEdge,
}

/// Spreads cards over sheets, as many on each as fit in straight rows and columns, since a guillotine
/// cuts from edge to edge. The sheet lies across where more cards fit that way. Neighbours stand two
/// bleeds apart, and the block of cards stands in the middle of the sheet.
///
/// A sheet that is turned about a vertical edge has its backs mirrored left to right; one that is
/// turned about a horizontal edge has them mirrored top to bottom and standing on their heads.
/// None where not even one card fits.
///
/// ```
/// use fittingcards::catalogue::{FlipEdge, SheetFormat, SheetSize};
/// use fittingcards::{sheets::impose, units::Length};
/// let mm = Length::from_mm;
/// let format =
///     SheetFormat { size: SheetSize::A4, flip: FlipEdge::LongEdge, crop_marks: true, bleed: mm(2.0) };
/// let sheets = impose((mm(74.0), mm(105.0)), 5, &format).expect("a card of 74 × 105 mm fits A4");
/// assert_eq!(sheets.len(), 2);
/// assert_eq!(sheets[0].fronts.len(), 4);
/// let (front, back) = (sheets[0].fronts[0].trim, sheets[0].backs[0].trim);
/// assert!((front.left.mm() - (210.0 - back.right().mm())).abs() < 1e-9);
/// ```
#[must_use]
pub fn impose(trim: (Length, Length), count: usize, format: &SheetFormat) -> Option<Vec<SheetPlan>> {
    let grid = Grid::best(trim, format)?;
    let sheets = count.div_ceil(grid.capacity());
    Some((0..sheets).map(|index| grid.sheet_plan(index, count)).collect())
}

/// A page for each, as large as what is printed on it: paper that is not cut.
pub(super) fn whole_pages(trim: (Length, Length), count: usize) -> Vec<SheetPlan> {
    let whole = Rectangle { left: Length::ZERO, top: Length::ZERO, width: trim.0, height: trim.1 };
    let page = |card| {
        let slot = Slot { card, trim: whole, turned: false };
        SheetPlan { number: card + 1, size: trim, fronts: vec![slot], backs: Vec::new() }
    };
    (0..count).map(page).collect()
}

/// How many cards one sheet takes; None where not even one fits.
#[must_use]
pub fn capacity(trim: (Length, Length), format: &SheetFormat) -> Option<usize> {
    Grid::best(trim, format).map(|grid| grid.capacity())
}

impl Grid {
    fn best(trim: (Length, Length), format: &SheetFormat) -> Option<Self> {
        let (short, long) = paper(format.size);
        let upright = Self::fitted((short, long), trim, format);
        let across = Self::fitted((long, short), trim, format);
        let best = if across.capacity() > upright.capacity() { across } else { upright };
        (best.capacity() > 0).then_some(best)
    }

    fn fitted(sheet: (Length, Length), trim: (Length, Length), format: &SheetFormat) -> Self {
        let marks = if format.crop_marks { MARK_GAP + MARK_LENGTH } else { Length::ZERO };
        let side = UNPRINTABLE + marks + format.bleed;
        let gap = format.bleed * 2.0;
        Self {
            sheet,
            trim,
            pitch: (trim.0 + gap, trim.1 + gap),
            columns: how_many(sheet.0 - side * 2.0, trim.0, gap),
            rows: how_many(sheet.1 - (side + TEXT_STRIP) * 2.0, trim.1, gap),
            flip: format.flip,
        }
    }

    fn capacity(self) -> usize {
        self.columns * self.rows
    }

    fn sheet_plan(self, index: usize, count: usize) -> SheetPlan {
        let first = index * self.capacity();
        let last = count.min(first + self.capacity());
        let fronts: Vec<Slot> =
            (first..last).map(|card| Slot { card, trim: self.place(card - first), turned: false }).collect();
        let backs = fronts.iter().map(|front| self.behind(*front)).collect();
        SheetPlan { number: index + 1, size: self.sheet, fronts, backs }
    }

    fn place(self, position: usize) -> Rectangle {
        let (column, row) = (position % self.columns, position / self.columns);
        Rectangle {
            left: start(self.sheet.0, self.trim.0, self.pitch.0, self.columns) + self.pitch.0 * column as f64,
            top: start(self.sheet.1, self.trim.1, self.pitch.1, self.rows) + self.pitch.1 * row as f64,
            width: self.trim.0,
            height: self.trim.1,
        }
    }

    fn behind(self, front: Slot) -> Slot {
        let turned = !self.turns_about_a_vertical_edge();
        let mut trim = front.trim;
        if turned {
            trim.top = self.sheet.1 - trim.bottom();
        } else {
            trim.left = self.sheet.0 - trim.right();
        }
        Slot { card: front.card, trim, turned }
    }

    fn turns_about_a_vertical_edge(self) -> bool {
        let upright = self.sheet.1 >= self.sheet.0;
        upright == (self.flip == FlipEdge::LongEdge)
    }
}

/// Short and long edge (ISO 216; ANSI/ASME Y14.1 for Letter).
fn paper(size: SheetSize) -> (Length, Length) {
    match size {
        SheetSize::A4 => (Length::from_mm(210.0), Length::from_mm(297.0)),
        SheetSize::A3 => (Length::from_mm(297.0), Length::from_mm(420.0)),
        SheetSize::Letter => (Length::from_inches(8.5), Length::from_inches(11.0)),
    }
}

fn how_many(room: Length, trim: Length, gap: Length) -> usize {
    let fit = ((room + gap) / (trim + gap) + 1e-9).floor();
    if fit >= 1.0 { fit as usize } else { 0 }
}

fn start(sheet: Length, trim: Length, pitch: Length, count: usize) -> Length {
    let block = trim + pitch * (count as f64 - 1.0);
    (sheet - block) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{CardFormat, CardSize, Orientation};
    use proptest::prelude::*;

    fn format(size: SheetSize, flip: FlipEdge) -> SheetFormat {
        SheetFormat { size, flip, crop_marks: true, bleed: Length::from_mm(2.0) }
    }

    fn trim(size: CardSize, orientation: Orientation) -> (Length, Length) {
        CardFormat { size, orientation }.trim()
    }

    #[test]
    fn each_sheet_takes_as_many_as_the_paper_allows() {
        // Counted by hand: cards two bleeds apart, 11 mm left and right, 16 mm above and below.
        let cases = [
            (CardSize::A7, SheetSize::A4, 4),
            (CardSize::A7, SheetSize::A3, 10),
            (CardSize::A7, SheetSize::Letter, 4),
            (CardSize::A6, SheetSize::A4, 2),
            (CardSize::A6, SheetSize::A3, 4),
            (CardSize::Id1, SheetSize::A4, 9),
        ];
        for (card, sheet, expected) in cases {
            let found = capacity(trim(card, Orientation::Portrait), &format(sheet, FlipEdge::LongEdge));
            assert_eq!(found, Some(expected), "{card:?} on {sheet:?}");
        }
    }

    #[test]
    fn a_card_larger_than_the_sheet_is_refused() {
        let mut wide = format(SheetSize::A4, FlipEdge::LongEdge);
        wide.bleed = Length::from_mm(90.0);
        assert_eq!(impose(trim(CardSize::A6, Orientation::Portrait), 1, &wide), None);
    }

    #[test]
    fn backs_stand_on_their_heads_only_when_the_sheet_turns_over_the_top() {
        let turned = |card, flip| {
            impose(trim(card, Orientation::Portrait), 1, &format(SheetSize::A4, flip)).unwrap()[0].backs[0]
                .turned
        };
        assert!(!turned(CardSize::A7, FlipEdge::LongEdge));
        assert!(turned(CardSize::A7, FlipEdge::ShortEdge));
        assert!(turned(CardSize::A6, FlipEdge::LongEdge), "two A6 lie on A4 turned across");
        assert!(!turned(CardSize::A6, FlipEdge::ShortEdge));
    }

    proptest! {
        /// Turning the sheet over the named edge puts each back behind its front, inside the sheet.
        #[test]
        fn backs_lie_behind_their_fronts(
            width in 30.0..150.0f64, height in 30.0..150.0f64, bleed in 0.0..5.0f64, count in 1usize..50,
            long_edge: bool, crop_marks: bool,
            size in prop::sample::select(vec![SheetSize::A4, SheetSize::A3, SheetSize::Letter]),
        ) {
            let flip = if long_edge { FlipEdge::LongEdge } else { FlipEdge::ShortEdge };
            let bleed = Length::from_mm(bleed);
            let format = SheetFormat { size, flip, crop_marks, bleed };
            let sheets = impose((Length::from_mm(width), Length::from_mm(height)), count, &format).unwrap();
            let mut seen = 0;
            for sheet in &sheets {
                let upright = sheet.size.1.mm() > sheet.size.0.mm();
                for (front, back) in sheet.fronts.iter().zip(&sheet.backs) {
                    prop_assert_eq!(front.card, seen);
                    seen += 1;
                    let seen_through = if upright == long_edge {
                        Rectangle { left: sheet.size.0 - back.trim.right(), ..back.trim }
                    } else {
                        Rectangle { top: sheet.size.1 - back.trim.bottom(), ..back.trim }
                    };
                    prop_assert!((seen_through.left - front.trim.left).abs().mm() < 1e-9);
                    prop_assert!((seen_through.top - front.trim.top).abs().mm() < 1e-9);
                    let bled = front.trim.grown(bleed);
                    prop_assert!(bled.left.mm() > 3.9 && bled.top.mm() > 3.9);
                    prop_assert!(bled.right().mm() < sheet.size.0.mm() - 3.9);
                    prop_assert!(bled.bottom().mm() < sheet.size.1.mm() - 3.9);
                }
                for (index, one) in sheet.fronts.iter().enumerate() {
                    for other in &sheet.fronts[..index] {
                        let (a, b) = (one.trim.grown(bleed), other.trim.grown(bleed));
                        let apart = a.left.mm() >= b.right().mm() - 1e-9 || b.left.mm() >= a.right().mm() - 1e-9
                            || a.top.mm() >= b.bottom().mm() - 1e-9 || b.top.mm() >= a.bottom().mm() - 1e-9;
                        prop_assert!(apart);
                    }
                }
            }
            prop_assert_eq!(seen, count);
        }
    }
}
