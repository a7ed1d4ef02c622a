#![doc = include_str!("../explain/codes/rope-grips-outside-standard.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::{Fitting, Item, Role};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::grip::{Geometry, RopeGrips, grip_spacing, rope_grips};
use crate::units::{Length, Numerals};

const CODE: &str = "rope-grips-outside-standard";

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let Some((nth, item)) = grips(fitting) else { continue };
        for conductor in &fitting.conductors {
            let rope = conductor.section.overall_diameter;
            let Some(asked) = rope_grips(rope) else { continue };
            let found = [
                too_few(fitting, nth, item, asked),
                torque(fitting, asked, numerals),
                spacing(fitting, nth, item, rope, numerals),
            ];
            for finding in found.into_iter().flatten() {
                findings.push(finding.help(
                    "take number and torque from the standard, and the spacing from the maker's instructions",
                ));
            }
        }
    }
}

fn grips(fitting: &Fitting) -> Option<(usize, &Item)> {
    fitting.items.iter().enumerate().find(|(_, item)| item.part.role == Role::RopeGrip)
}

fn too_few(fitting: &Fitting, nth: usize, item: &Item, asked: RopeGrips) -> Option<Finding> {
    (item.quantity < asked.number).then(|| {
        let message = format!("there are too few of {} for this rope", item.part.number);
        on_fitting(Severity::Error, CODE, fitting, &format!("parts.{nth}"), message)
            .found(item.quantity.to_string())
            .expected(format!("at least {} (EN 13411-5)", asked.number))
    })
}

fn torque(fitting: &Fitting, asked: RopeGrips, numerals: Numerals) -> Option<Finding> {
    let nth = fitting.tightening.iter().position(|tightening| tightening.torque.is_some())?;
    let torque = fitting.tightening[nth].torque?;
    (!torque.contains(asked.torque)).then(|| {
        let message = "the torque is not the one of the standard".to_owned();
        let (least, most) = (torque.least().nm(), torque.most().nm());
        on_fitting(Severity::Warning, CODE, fitting, &format!("tightening.{nth}.torque_Nm"), message)
            .found(format!("{} to {} N·m", numerals.shortest(least, 1), numerals.shortest(most, 1)))
            .expected(format!("{} N·m (EN 13411-5)", numerals.shortest(asked.torque.nm(), 1)))
    })
}

fn spacing(fitting: &Fitting, nth: usize, item: &Item, rope: Length, numerals: Numerals) -> Option<Finding> {
    let Some(Geometry::RopeGrip(grip)) = &item.part.geometry else { return None };
    let (stated, usual) = (grip.spacing?, grip_spacing(rope));
    (!usual.contains(stated)).then(|| {
        let message = format!("{} stand closer or further apart than usual", item.part.number);
        on_fitting(Severity::Warning, CODE, fitting, &format!("parts.{nth}"), message)
            .found(numerals.length(stated, 1))
            .expected(numerals.range(usual.map(Length::mm), 1, "mm"))
            .related(item.part.origin.of("geometry.rope_grip.spacing_mm"), "the spacing")
    })
}
