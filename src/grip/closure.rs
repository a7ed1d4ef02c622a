//! How far slits can shut, and how unsure that is.

use crate::units::Length;
use std::f64::consts::PI;

/// How far the bore of a slit part can close, or be prised open: n·w/π and its tolerance.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Closure {
    pub(super) stated: Length,
    pub(super) tolerance: Length,
}

impl Closure {
    /// Without slits nothing closes; `None` where slits or their width are not stated.
    pub(super) fn of(slits: Option<u32>, width: Option<Length>, tolerance: Option<Length>) -> Option<Self> {
        let slits = slits?;
        if slits == 0 {
            return Some(Self::default());
        }
        let each = f64::from(slits) / PI;
        Some(Self { stated: width? * each, tolerance: tolerance.unwrap_or_default() * each })
    }

    pub(super) fn least(self) -> Length {
        self.stated - self.tolerance
    }

    pub(super) fn most(self) -> Length {
        self.stated + self.tolerance
    }
}
