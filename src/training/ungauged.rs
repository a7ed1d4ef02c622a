//! What no gauge is made for, and why: nobody should look for one that there can't be.

use super::Input;
use crate::catalogue::{Fitting, Part, StandOutFrom, Status};
use crate::grip::Geometry;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

/// Each reason with the numbers of what it holds for, those of stand-out first. `made` are the names of the gauges that
/// there are.
pub(super) fn reasons<'a>(input: Input<'_>, made: impl Iterator<Item = &'a str>) -> Vec<Value> {
    let made: BTreeSet<&str> = made.collect();
    let fittings =
        input.built().filter(|(fitting, ..)| !made.contains(&*format!("stand-out-{}", fitting.number)));
    let stand_outs = together(fittings.map(|(fitting, ..)| (no_stand_out(fitting), fitting.number.as_str())));
    let bores = together(bored(input).filter_map(|part| Some((no_bore(part)?, part.number.as_str()))));
    [("Stand-out of", stand_outs), ("Bore of", bores)]
        .into_iter()
        .flat_map(|(of, reasons)| {
            let line = move |(why, numbers): (&str, BTreeSet<&str>)| {
                json!({ "of": of, "numbers": numbers.into_iter().collect::<Vec<_>>().join(", "), "why": why })
            };
            reasons.into_iter().map(line)
        })
        .collect()
}

fn together<'a>(
    all: impl Iterator<Item = (&'static str, &'a str)>,
) -> BTreeMap<&'static str, BTreeSet<&'a str>> {
    let mut together: BTreeMap<_, BTreeSet<_>> = BTreeMap::new();
    for (why, number) in all {
        together.entry(why).or_default().insert(number);
    }
    together
}

fn no_stand_out(fitting: &Fitting) -> &'static str {
    let stated = fitting.stand_out.as_ref();
    match stated.map(|stated| (stated.from, stated.seated.or(stated.tensioned))) {
        Some((StandOutFrom::None, _)) => "its record says that it is not measured",
        None | Some((_, None)) => "its record states no window",
        Some((StandOutFrom::ScrewGap, _)) => "a gap under a screw is measured with feelers",
        Some(_) => "its window is too narrow or too far out: the run says which",
    }
}

/// Parts with a bore that hold the conductors of a body which several fittings share.
fn bored(input: Input<'_>) -> impl Iterator<Item = &Part> {
    let bodies = input.cards.mixups.bodies.iter().filter(|body| body.body.status == Status::Current);
    let shared = bodies.filter(|body| body.fittings.len() > 1);
    let fittings = shared.flat_map(|body| &body.fittings).filter(|fitting| fitting.status == Status::Current);
    fittings.flat_map(|fitting| fitting.gripping().map(|item| &*item.part))
}

/// Why the bore of a part has no gauge; none where it has one, or no bore.
fn no_bore(part: &Part) -> Option<&'static str> {
    let (bore, tolerance) = match part.geometry.as_ref()? {
        Geometry::Collet(collet) => (collet.bore, collet.bore_tolerance),
        Geometry::SpreadingCone(cone) => (cone.hole_diameter, cone.hole_diameter_tolerance),
        _ => return None,
    };
    match (bore, tolerance) {
        (None, _) => Some("its record states no bore"),
        (Some(_), None) => Some("its record states no tolerance of it: measure it by caliper"),
        (Some(_), Some(_)) => None,
    }
}
