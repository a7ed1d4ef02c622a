//! How many screwed grips end a rope, how tight, how far apart.

use crate::units::{Length, Range, Torque};

/// What a rope of some thickness is ended with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RopeGrips {
    /// How many grips at least.
    pub number: u32,
    /// Torque of their nuts.
    pub torque: Torque,
}

/// Rope diameter in mm up to which a row holds, grips, torque in N·m: EN 13411-5, from memory.
const ROWS: [(f64, u32, f64); 14] = [
    (5.0, 3, 2.0),
    (6.5, 3, 3.5),
    (8.0, 4, 6.0),
    (10.0, 4, 9.0),
    (12.0, 4, 20.0),
    (13.0, 4, 33.0),
    (14.0, 4, 33.0),
    (16.0, 4, 49.0),
    (19.0, 4, 67.7),
    (22.0, 5, 107.0),
    (26.0, 5, 147.0),
    (30.0, 6, 212.0),
    (34.0, 6, 296.0),
    (40.0, 6, 363.0),
];

/// Distance from grip to grip in rope diameters. Common practice, no source: the standard counts in
/// widths of the grip's jaw.
const SPACING: (f64, f64) = (4.0, 8.0);

/// What EN 13411-5 asks for a rope; `None` for one thicker than its table.
///
/// ```
/// use fittingcards::grip::rope_grips;
/// use fittingcards::units::Length;
/// let asked = rope_grips(Length::from_mm(8.0)).unwrap();
/// assert_eq!((asked.number, asked.torque.nm()), (4, 6.0));
/// ```
#[must_use]
pub fn rope_grips(rope: Length) -> Option<RopeGrips> {
    let row = ROWS.iter().find(|(most, ..)| rope.mm() <= most + 1e-9)?;
    Some(RopeGrips { number: row.1, torque: Torque::from_nm(row.2) })
}

/// How far apart grips stand on a rope.
#[must_use]
pub fn grip_spacing(rope: Length) -> Range<Length> {
    Range::between(rope * SPACING.0, rope * SPACING.1)
}
