//! Whether a taper draws itself in under tension.

use crate::units::Angle;

/// Friction at the two faces of a gripping part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Friction {
    /// Gripping part on wire; 0.30 where nothing is stated.
    pub wire: f64,
    /// Gripping part in its greased seat; 0.12 where nothing is stated.
    pub seat: f64,
}

impl Friction {
    /// The steepest taper that draws itself in: arctan(wire) − arctan(seat). First principles.
    ///
    /// ```
    /// use fittingcards::grip::Friction;
    /// let steepest = Friction { wire: 0.30, seat: 0.12 }.steepest_taper();
    /// assert!((steepest.degrees() - 9.857).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn steepest_taper(self) -> Angle {
        Angle::from_degrees((self.wire.atan() - self.seat.atan()).to_degrees())
    }

    /// Whether a taper draws itself in: tan(α + arctan seat) ≤ wire, α a round taper's half-angle or a
    /// wedge's taper. First principles.
    #[must_use]
    pub fn draws_in(self, taper: Angle) -> bool {
        taper.degrees() <= self.steepest_taper().degrees() + 1e-9
    }
}
