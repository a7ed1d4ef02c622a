//! Which mix-ups of a body are taught: those that can be assembled, part by part.

use crate::catalogue::{Part, Status};
use crate::mixups::{BodyMixups, Case};

/// Whether there is anything to teach of a body: a wrong part that can be built in.
pub(super) fn has_sheet(found: &BodyMixups) -> bool {
    !wrong_parts(found).is_empty()
}

/// Of each wrong part the cases that can be assembled in a fitting that may be built, the worst first; parts by their
/// worst case.
pub(super) fn wrong_parts(found: &BodyMixups) -> Vec<Vec<&Case>> {
    let of_part = |part: &Part| {
        let own = found.cases.iter().filter(|case| case.part.number == part.number && case.danger);
        let mut cases: Vec<&Case> = own.filter(|case| case.fitting.status == Status::Current).collect();
        cases.sort_by_key(|case| case.weight());
        cases
    };
    let mut parts: Vec<Vec<&Case>> = found.parts.iter().map(|part| of_part(part)).collect();
    parts.retain(|cases| !cases.is_empty());
    parts.sort_by_key(|cases| cases.first().map(|case| case.weight()));
    parts
}
