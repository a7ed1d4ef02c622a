#![doc = include_str!("../explain/codes/figure-not-in-record.md")]

use super::Context;
use super::figures_of_text::{Figures, figures};
use super::inspected::{list, on_wording};
use super::units_of_text::Unit;
use crate::catalogue::{Fitting, Origin, PieceKind, Wording};
use crate::diagnostics::{Finding, Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let known = known(fitting);
        findings.extend(fitting.wordings().filter_map(|wording| finding(fitting, wording, &known)));
    }
}

/// One finding a text, at the first of the figures.
fn finding(fitting: &Fitting, wording: &Wording, known: &[f64]) -> Option<Finding> {
    let mut unknown: Vec<(usize, String)> = Vec::new();
    for piece in wording.pieces() {
        let PieceKind::Words(text) = piece.kind else { continue };
        // Torques and loads have a rule of their own.
        let stated = figures(text).into_iter().filter(|stated| matches!(stated.unit, Unit::Other(_)));
        unknown.extend(
            stated
                .filter(|stated| !is_known(stated, known))
                .map(|stated| (piece.at + stated.at, stated.written)),
        );
    }
    let (first, _) = unknown.first()?;
    let written: Vec<&str> = unknown.iter().map(|(_, written)| written.as_str()).collect();
    let message = format!("no record of the fitting has {}", list(&written));
    let finding = on_wording(Severity::Note, "figure-not-in-record", fitting, wording, *first, message);
    Some(finding.help("compare it with the record, or name the value in braces where there is one"))
}

fn is_known(stated: &Figures, known: &[f64]) -> bool {
    let factor = match stated.unit {
        Unit::Other("m") => 1000.0,
        Unit::Other("cm") => 10.0,
        _ => 1.0,
    };
    // A length is written with a minus where it goes inwards; the record may say so in words.
    let same = |number: &f64, value: f64| (number.abs() - value.abs() * factor).abs() < 1e-9;
    stated.values.iter().all(|value| known.iter().any(|number| same(number, *value)))
}

/// The numbers of a fitting's own record, its procedure, parts and conductors, and how many wires lie in which layers.
fn known(fitting: &Fitting) -> Vec<f64> {
    let parts = fitting.items.iter().map(|item| &item.part.origin);
    let conductors = fitting.conductors.iter().map(|held| &held.origin);
    let procedure = fitting.procedure.iter().map(|procedure| &procedure.origin);
    let origins: Vec<&Origin> =
        [&fitting.origin].into_iter().chain(procedure).chain(parts).chain(conductors).collect();
    let mut known: Vec<f64> =
        origins.iter().flat_map(|origin| origin.numbers.values()).map(|written| written.value).collect();
    for held in &fitting.conductors {
        let layers: Vec<f64> = held.section.layers.iter().map(|layer| f64::from(layer.wires)).collect();
        for from in 0..layers.len() {
            known.extend((from..layers.len()).map(|to| layers[from..=to].iter().sum::<f64>()));
        }
    }
    known
}
