#![doc = include_str!("../explain/codes/insertion-too-long.md")]

use super::Context;
use super::inspected::{built, grip_length, half_sleeve, numerals, on_fitting};
use crate::catalogue::{Family, Fitting, Part, Role};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::grip::Geometry;
use crate::units::{Length, Numerals};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let Some(insertion) = fitting.insertion else { continue };
        findings.extend(in_sleeve(fitting, insertion, numerals));
        findings.extend(in_dead_end(fitting, insertion, numerals));
    }
}

fn in_sleeve(fitting: &Fitting, insertion: Length, numerals: Numerals) -> Option<Finding> {
    let (sleeve, half) = half_sleeve(fitting).filter(|(_, half)| insertion > *half)?;
    let message = format!("the conductors go in further than half the length of {}", sleeve.number);
    let finding = on_fitting(Severity::Error, "insertion-too-long", fitting, "insertion_mm", message)
        .found(fitting.with_unit("insertion_mm", insertion.mm(), "mm", numerals))
        .expected(format!("at most {}\u{a0}mm", numerals.at_most(half.mm(), 1)))
        .related(sleeve.origin.of("geometry"), "the sleeve");
    Some(finding.help("at most half the sleeve's length for each conductor"))
}

fn in_dead_end(fitting: &Fitting, insertion: Length, numerals: Numerals) -> Option<Finding> {
    let most = room(fitting).filter(|most| insertion > *most)?;
    let message = "the conductor goes in further than its parts and the tail are long".to_owned();
    let finding = on_fitting(Severity::Warning, "insertion-too-long", fitting, "insertion_mm", message)
        .found(fitting.with_unit("insertion_mm", insertion.mm(), "mm", numerals))
        .expected(format!("at most {}\u{a0}mm", numerals.at_most(most.mm(), 1)));
    Some(finding.help("check insertion, tail and the lengths of body and gripping part"))
}

/// All that a conductor can lie in, with its tail: bodies, sockets and gripping parts one behind the other, which
/// is more than they come to. `None` where the length of a body or gripping part is not known.
fn room(fitting: &Fitting) -> Option<Length> {
    if !matches!(fitting.family, Family::ConeDeadEnd | Family::WedgeDeadEnd) {
        return None;
    }
    fitting.bodies().next()?;
    let bodies = fitting.bodies().map(|item| seat_length(&item.part)).sum::<Option<Length>>()?;
    let gripping = fitting.gripping().map(|item| grip_length(&item.part)).sum::<Option<Length>>()?;
    let sockets = fitting.items.iter().map(|item| item.part.as_ref());
    let sockets = sockets.filter(|part| part.role == Role::Socket).filter_map(seat_length).sum::<Length>();
    Some(bodies + sockets + gripping + fitting.tail.unwrap_or_default())
}

fn seat_length(part: &Part) -> Option<Length> {
    match part.geometry.as_ref()? {
        Geometry::Body(body) => body.length,
        Geometry::WedgeBody(body) => body.length,
        Geometry::Socket(socket) => socket.length,
        _ => None,
    }
}
