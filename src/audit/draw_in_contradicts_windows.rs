#![doc = include_str!("../explain/codes/draw-in-contradicts-windows.md")]

use super::Context;
use super::inspected::{numerals, on_fitting};
use crate::catalogue::Fitting;
use crate::diagnostics::{Finding, Findings, Severity};
use crate::units::{Length, Numerals};

/// What rounding leaves.
const NOTHING: Length = Length::from_mm(1e-9);

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        findings.extend(contradiction(fitting, numerals(context)));
    }
}

/// A draw-in that both windows never leave room for, or that they always ask more than.
fn contradiction(fitting: &Fitting, numerals: Numerals) -> Option<Finding> {
    let stated = fitting.stand_out.as_ref()?;
    let (seated, tensioned, most) = (stated.seated?, stated.tensioned?, stated.draw_in_max?);
    let least = seated.least() - tensioned.most();
    let room = seated.most() - tensioned.least();
    let (message, expected) = if most > room + NOTHING {
        let expected = format!("at most {}\u{a0}mm", numerals.at_most(room.mm(), 2));
        ("no part that passes both windows is drawn in so far", expected)
    } else if most < least - NOTHING {
        let expected = format!("at least {}\u{a0}mm", numerals.at_least(least.mm(), 2));
        ("every part that passes both windows is drawn in further", expected)
    } else {
        return None;
    };
    let field = "stand_out.draw_in_max_mm";
    let finding =
        on_fitting(Severity::Warning, "draw-in-contradicts-windows", fitting, field, message.to_owned());
    Some(
        finding
            .found(numerals.length(most, 1))
            .expected(expected)
            .help("compare it with both windows, and look at its decimal point"),
    )
}
