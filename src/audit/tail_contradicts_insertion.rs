#![doc = include_str!("../explain/codes/tail-contradicts-insertion.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::{Family, Fitting, StandOutFrom};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::grip::Geometry;
use crate::units::{Length, Numerals};

/// What a rule laid on reads alike. A rule of this program, no source.
const SAME: Length = Length::from_mm(1.0);

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    findings.extend(built(context).filter_map(|fitting| at_odds(fitting, numerals)));
}

fn at_odds(fitting: &Fitting, numerals: Numerals) -> Option<Finding> {
    let (insertion, tail) = (fitting.insertion?, fitting.tail?);
    let mut bodies = fitting.bodies();
    let (Some(body), None) = (bodies.next(), bodies.next()) else { return None };
    let length = match (fitting.family, body.part.geometry.as_ref()?) {
        (Family::ConeDeadEnd, Geometry::Body(body)) => body.length?,
        (Family::WedgeDeadEnd, Geometry::WedgeBody(body)) => body.length?,
        _ => return None,
    };
    let starts = insertion - tail;
    let (nearest, farthest) = faces(fitting);
    let is_same = |from: Length, to: Length| starts >= from - SAME && starts <= to + SAME;
    if is_same(length, length) || is_same(length + nearest, length + farthest) {
        return None;
    }
    let message = "insertion less tail is not the length of the body".to_owned();
    let finding = on_fitting(Severity::Warning, "tail-contradicts-insertion", fitting, "tail_mm", message)
        .found(numerals.length(starts, 1))
        .expected(numerals.length(length, 1))
        .related(fitting.origin.of("insertion_mm"), "the insertion")
        .related(body.part.origin.of("geometry"), "the body");
    Some(
        finding
            .help("count the insertion from where the wire goes in, the tail from the face it comes out of"),
    )
}

/// How far the gripping part's face stands beyond the body's: the window of the stand-out, where that is measured.
fn faces(fitting: &Fitting) -> (Length, Length) {
    let measured = fitting.stand_out.as_ref();
    let measured = measured.filter(|out| matches!(out.from, StandOutFrom::ConeFace | StandOutFrom::WedgeEnd));
    let seated = measured.and_then(|out| out.seated);
    seated.map_or((Length::ZERO, Length::ZERO), |window| (window.least(), window.most()))
}
