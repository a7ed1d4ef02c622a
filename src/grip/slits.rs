//! Slits against the circumference that they are cut into.

use super::Geometry;
use crate::units::Length;
use std::f64::consts::PI;

/// The most that slits may take together of the circumference of their bore or hole (own rule). From all of it on nothing
/// is left of the part; of half of it so little that the number is taken for a misplaced digit.
const MOST_OF_CIRCUMFERENCE: f64 = 0.5;

/// The slits of a part that closes by them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slits {
    /// How many there are.
    pub number: u32,
    /// Width of one.
    pub width: Length,
    /// Diameter of the bore or hole that they are cut into.
    pub diameter: Length,
}

impl Slits {
    /// The slits of a collet or a spreading cone, where number, width and the bore or hole are stated.
    #[must_use]
    pub fn of(geometry: &Geometry) -> Option<Self> {
        let (number, width, diameter) = match geometry {
            Geometry::Collet(cone) => (cone.slits, cone.slit_width, cone.bore),
            Geometry::SpreadingCone(cone) => (cone.slits, cone.slit_width, cone.hole_diameter),
            _ => return None,
        };
        Some(Self { number: number?, width: width?, diameter: diameter? })
    }

    /// How wide one may be: all together take half of the circumference then.
    ///
    /// # Examples
    /// ```
    /// use fittingcards::grip::Slits;
    /// use fittingcards::units::Length;
    ///
    /// let mm = Length::from_mm;
    /// let slits = Slits { number: 3, width: mm(1.0), diameter: mm(14.3) };
    /// // Half of π·14.3 mm = 44.9 mm, by three.
    /// assert_eq!(format!("{:.2}", slits.widest().mm()), "7.49");
    /// assert!(slits.leave_metal());
    /// assert!(!Slits { width: mm(7.5), ..slits }.leave_metal());
    /// ```
    #[must_use]
    pub fn widest(&self) -> Length {
        self.diameter * (PI * MOST_OF_CIRCUMFERENCE / f64::from(self.number))
    }

    /// Whether enough metal is left between them.
    #[must_use]
    pub fn leave_metal(&self) -> bool {
        self.number == 0 || self.width <= self.widest()
    }
}
