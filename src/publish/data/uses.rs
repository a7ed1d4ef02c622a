//! Which fittings a conductor or a part belongs to.

use crate::catalogue::Catalogue;
use std::collections::BTreeMap;

/// Numbers of fittings by the id of a conductor or the number of a part in them.
pub(super) type Uses<'a> = BTreeMap<&'a str, Vec<&'a str>>;

pub(super) fn uses(catalogue: &Catalogue) -> Uses<'_> {
    let mut uses = Uses::new();
    for fitting in catalogue.fittings.values() {
        let conductors = fitting.conductors.iter().map(|conductor| conductor.id.as_str());
        for id in conductors.chain(fitting.items.iter().map(|item| item.part.number.as_str())) {
            let users = uses.entry(id).or_default();
            if users.last() != Some(&fitting.number.as_str()) {
                users.push(&fitting.number);
            }
        }
    }
    uses
}
