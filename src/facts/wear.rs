//! The wear table of a contact wire in words.

use super::{WearFacts, WearRow, forms};
use crate::catalogue::{Conductor, WearBasis, WearLimits};
use crate::section::{self, Construction, WearHeights, WearStage};
use crate::units::Numerals;

/// As many rows as a pocket card has room for.
const MOST_ROWS: usize = 12;

pub(super) fn facts(conductor: &Conductor, limits: &WearLimits, numerals: Numerals) -> WearFacts {
    let heights = [
        ("plan", "plan_height_mm", limits.plan_height),
        ("replace", "replace_height_mm", limits.replace_height),
        ("stop", "stop_height_mm", limits.stop_height),
    ];
    let mut stated: Vec<(String, String)> = heights
        .into_iter()
        .filter_map(|(name, key, height)| {
            Some((name.to_owned(), forms::wear_height(conductor, key, height, numerals)?))
        })
        .collect();
    if let Some(percent) = limits.limit_percent {
        let field = "construction.grooved.wear.limit_percent";
        stated.push(("limit".to_owned(), conductor.origin.with_unit(field, percent, "%", numerals)));
    }
    let basis = basis(conductor, limits, numerals);
    WearFacts { basis, limits: stated, rows: rows(conductor, limits, numerals) }
}

fn basis(conductor: &Conductor, limits: &WearLimits, numerals: Numerals) -> String {
    match (limits.basis, conductor.nominal_size) {
        (WearBasis::Nominal, Some(size)) => {
            let size = conductor.origin.with_unit("nominal_size_mm2", size.mm2(), "mm²", numerals);
            format!("% of nominal {size}")
        }
        _ => "% of the section when new".to_owned(),
    }
}

fn rows(conductor: &Conductor, limits: &WearLimits, numerals: Numerals) -> Vec<WearRow> {
    let Construction::Grooved(grooved) = &conductor.construction else { return Vec::new() };
    let marks = WearHeights {
        basis: conductor.wear_basis(),
        plan: limits.plan_height,
        replace: limits.replace_height,
        stop: limits.stop_height,
        limit_percent: limits.limit_percent,
        most_rows: MOST_ROWS,
    };
    // A height that the wire can't have is a finding of its own; the card is not made while it stands.
    let table = section::profile(grooved).and_then(|profile| section::wear_table(&profile, &marks));
    let row = |found: &section::WearRow| worn_row(conductor, found, numerals);
    table.map(|table| table.rows.iter().map(row).collect()).unwrap_or_default()
}

/// A row of a contact wire's wear table in words, without units. A height that is stated has the digits of its record; what
/// is computed never says that more is left than is.
#[must_use]
pub fn worn_row(conductor: &Conductor, row: &section::WearRow, numerals: Numerals) -> WearRow {
    WearRow {
        height: height(conductor, row, numerals),
        // A wider flat is less wire: who measures as much as the row says has reached it.
        flat: numerals.at_most(row.flat_width.mm(), 1),
        section: numerals.at_most(row.section.mm2(), 1),
        worn: numerals.at_least(row.percent, 1),
        action: row.stage.map(action).unwrap_or_default().to_owned(),
    }
}

fn height(conductor: &Conductor, row: &section::WearRow, numerals: Numerals) -> String {
    let stated = match row.stage {
        Some(WearStage::New) => "height_mm",
        Some(WearStage::Plan) => "wear.plan_height_mm",
        Some(WearStage::Replace) => "wear.replace_height_mm",
        Some(WearStage::Stop) => "wear.stop_height_mm",
        Some(WearStage::Limit) => return numerals.at_least(row.height.mm(), 2),
        None => "",
    };
    let tenths = row.height.mm() * 10.0;
    let places = if (tenths - tenths.round()).abs() < 1e-6 { 1 } else { 2 };
    let decimals = conductor.origin.decimals(&format!("construction.grooved.{stated}"));
    numerals.fixed(row.height.mm(), decimals.map_or(places, |decimals| decimals.max(places)))
}

fn action(stage: WearStage) -> &'static str {
    match stage {
        WearStage::New => "new",
        WearStage::Plan => "plan",
        WearStage::Replace => "replace",
        WearStage::Limit => "limit",
        WearStage::Stop => "stop",
    }
}
