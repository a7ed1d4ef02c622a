//! What a fitting holds: efficiency of terminations, the weakest link, factors, sanity of a torque.

use crate::units::{Force, Length, Torque};
use std::ops::RangeInclusive;

/// Nut factors that a thread can have, from well greased to dry. Common practice, no source.
pub const NUT_FACTOR: RangeInclusive<f64> = 0.12..=0.30;

/// What ends a rope.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Termination {
    /// A pressed ferrule (EN 13411-3).
    PressedFerrule,
    /// Screwed U-bolt grips (EN 13411-5).
    RopeGrips,
    /// A wedge socket (EN 13411-6, from memory).
    WedgeSocket,
}

impl Termination {
    /// What it keeps of the rope's breaking load, as a factor.
    ///
    /// ```
    /// use fittingcards::grip::Termination;
    /// assert_eq!(Termination::PressedFerrule.efficiency(), 0.9);
    /// ```
    #[must_use]
    pub fn efficiency(self) -> f64 {
        match self {
            Self::PressedFerrule => 0.9,
            Self::RopeGrips | Self::WedgeSocket => 0.8,
        }
    }
}

/// What a termination keeps of a rope's breaking load.
///
/// ```
/// use fittingcards::grip::{Termination, termination_load};
/// use fittingcards::units::Force;
/// let kept = termination_load(Force::from_kn(40.0), Termination::RopeGrips);
/// assert!((kept.kn() - 32.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn termination_load(breaking_load: Force, termination: Termination) -> Force {
    breaking_load * termination.efficiency()
}

/// The link of a chain that gives first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weakest<'a> {
    /// Which one.
    pub link: &'a str,
    /// What it holds.
    pub load: Force,
}

/// The link that holds least; `None` where there is none, the first of two that hold the same.
///
/// ```
/// use fittingcards::grip::weakest_link;
/// use fittingcards::units::Force;
/// let links = [("fitting", Force::from_kn(36.0)), ("rope", Force::from_kn(40.0))];
/// assert_eq!(weakest_link(&links).unwrap().link, "fitting");
/// ```
#[must_use]
pub fn weakest_link<'a>(links: &[(&'a str, Force)]) -> Option<Weakest<'a>> {
    links.iter().min_by(|a, b| a.1.total_cmp(&b.1)).map(|(link, load)| Weakest { link, load: *load })
}

/// Holding load in percent of the conductor's breaking load (IEC 61284 asks 95 of tension clamps).
///
/// ```
/// use fittingcards::grip::holding_percent;
/// use fittingcards::units::Force;
/// assert!((holding_percent(Force::from_kn(64.5), Force::from_kn(67.6)) - 95.41).abs() < 0.005);
/// ```
#[must_use]
pub fn holding_percent(holding_load: Force, breaking_load: Force) -> f64 {
    holding_load / breaking_load * 100.0
}

/// Breaking load over line tension.
///
/// ```
/// use fittingcards::grip::working_factor;
/// use fittingcards::units::Force;
/// assert!((working_factor(Force::from_kn(67.6), Force::from_kn(21.0)) - 3.219).abs() < 0.001);
/// ```
#[must_use]
pub fn working_factor(breaking_load: Force, line_tension: Force) -> f64 {
    breaking_load / line_tension
}

/// The nut factor that a torque and a stated preload imply on a thread, T/(F·d); sane within
/// [`NUT_FACTOR`]. A torque never proves grip.
///
/// ```
/// use fittingcards::grip::{NUT_FACTOR, nut_factor};
/// use fittingcards::units::{Force, Length, Torque};
/// let factor = nut_factor(Torque::from_nm(80.0), Force::from_kn(25.0), Length::from_mm(16.0));
/// assert!((factor - 0.2).abs() < 1e-12 && NUT_FACTOR.contains(&factor));
/// ```
#[must_use]
pub fn nut_factor(torque: Torque, preload: Force, thread_diameter: Length) -> f64 {
    torque.nm() * 1000.0 / (preload.newtons() * thread_diameter.mm())
}
