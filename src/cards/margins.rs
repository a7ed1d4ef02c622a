//! The parts of a card that stay clear. Lengths are millimetres.

/// How far inside the trim everything that is read must stay.
pub(super) const SAFE: f64 = 3.0;
/// Side of the clear corner for a punched hole: upper right on the front, so upper left on the back.
pub(super) const PUNCH: f64 = 12.0;
