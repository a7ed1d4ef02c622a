//! The parts that decide whether a fitting holds, and which of them can be taken for each other.

use crate::catalogue::{Fitting, Part, Role};
use crate::grip::Geometry;
use std::sync::Arc;

/// Whether a part decides if its fitting holds: gripping parts, sockets, and whatever else a verdict
/// looks at. Bodies do too, but a body is what a mix-up is looked for in.
#[must_use]
pub fn decides(part: &Part) -> bool {
    let looked_at =
        matches!(part.geometry, Some(Geometry::Body(_) | Geometry::Socket(_) | Geometry::WedgeBody(_)));
    part.role != Role::Body && (part.role.grips() || part.role == Role::Socket || looked_at)
}

/// The parts of a fitting that decide whether it holds, in item order.
pub(super) fn deciding(fitting: &Fitting) -> impl Iterator<Item = &Arc<Part>> {
    fitting.items.iter().map(|item| &item.part).filter(|part| decides(part))
}

/// Whether two parts go into the same place, so that one can be put in for the other: of one role, or
/// both gripping.
#[must_use]
pub fn alike_in_place(one: &Part, other: &Part) -> bool {
    one.role == other.role || one.role.grips() && other.role.grips()
}

/// The own part that another takes the place of: itself, else one of the same role and interface, else
/// of the same role, else, for a gripping part, the first that grips.
pub(super) fn counterpart<'a>(part: &Part, own: &[&'a Arc<Part>]) -> Option<&'a Arc<Part>> {
    let same_role = |own: &&&Arc<Part>| own.role == part.role;
    own.iter()
        .find(|own| own.number == part.number)
        .or_else(|| own.iter().find(|own| own.role == part.role && own.interface == part.interface))
        .or_else(|| own.iter().find(same_role))
        .or_else(|| own.iter().find(|own| part.role.grips() && own.role.grips()))
        .copied()
}
