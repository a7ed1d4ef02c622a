//! The measurements of a part that a drawing office can change, one at a time.

use crate::grip::{Adjustment, Geometry, Measured, Slits};

/// A measurement of a part that can be changed in steps.
pub(super) struct AdjustableDimension<'a> {
    geometry: &'a Geometry,
    /// Its key in the record.
    key: &'static str,
    /// What it is.
    pub(super) measured: Measured,
    /// How it can be changed.
    pub(super) adjustment: Adjustment,
}

impl<'a> AdjustableDimension<'a> {
    /// What can be changed on a part, of all that it states.
    pub(super) fn all(geometry: &'a Geometry) -> impl Iterator<Item = Self> {
        geometry.measurements().iter().filter_map(move |measurement| {
            let key = measurement.key;
            let (measured, adjustment) = (geometry.measured(key)?, measurement.adjustment?);
            Some(Self { geometry, key, measured, adjustment })
        })
    }

    /// Its path in the record.
    pub(super) fn path(&self) -> String {
        format!("geometry.{}.{}", self.geometry.key(), self.key)
    }

    /// The part's geometry after a number of steps, and what is then measured; `None` where nothing
    /// would be left of it.
    pub(super) fn stepped(&self, steps: i32) -> Option<(Geometry, Measured)> {
        let Adjustment { step, above, .. } = self.adjustment;
        let bare = ((self.measured.bare()? + step * f64::from(steps)) * 1e6).round() / 1e6;
        if bare <= above {
            return None;
        }
        let geometry = self.geometry.adjusted(self.key, bare);
        if Slits::of(&geometry).is_some_and(|slits| !slits.leave_metal()) {
            return None;
        }
        let measured = geometry.measured(self.key)?;
        Some((geometry, measured))
    }
}
