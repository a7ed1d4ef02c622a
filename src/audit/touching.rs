//! Which parts of a fitting touch its conductors.

use crate::catalogue::{Conductor, Family, Fitting, Part, Role};
use crate::grip::Geometry;

/// Each part that touches a conductor, with that conductor: what grips, what guides, what the wires are
/// pressed on, and the halves of clamps.
pub(super) fn touching(fitting: &Fitting) -> impl Iterator<Item = (&Part, &Conductor)> {
    let parts = fitting.items.iter().map(|item| item.part.as_ref()).filter(|part| touches(part, fitting));
    parts.flat_map(|part| fitting.conductors.iter().map(move |conductor| (part, conductor.as_ref())))
}

fn touches(part: &Part, fitting: &Fitting) -> bool {
    let clamp = fitting.family == Family::ParallelGroove || fitting.gripping().next().is_none();
    match part.role {
        role if role.grips() => true,
        Role::Thimble | Role::Socket => true,
        Role::Body => clamp || matches!(part.geometry, Some(Geometry::WedgeBody(_))),
        Role::Keeper => clamp,
        _ => false,
    }
}
