//! Wear of contact wires: the table, and the fine table that the calculator looks up.

use super::figures;
use super::frame::Draft;
use super::input::Booklet;
use super::view::{conductor_link, fact, facts, script_json};
use crate::catalogue::{Conductor, WearBasis, WearLimits};
use crate::facts::{wear_height, worn_row};
use crate::section::{
    Construction, Grooved, Profile, WearHeights, WearStage, WearTable, profile, wear_table, worn,
};
use crate::units::Length;
use serde_json::{Value, json};

/// Rows of the table on the page, at most.
const MOST_ROWS: usize = 40;
/// Step of the fine table in hundredths of a millimetre: what a caliper reads.
const FINE_STEP: f64 = 0.01;
/// How far the fine table runs: to this part of the new height.
const LOWEST: f64 = 0.5;

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let wires = booklet.input.catalogue.conductors.values();
    let wires: Vec<Value> = wires.filter_map(|conductor| wire(booklet, conductor)).collect();
    Draft {
        layout: "wear",
        title: "Wear of contact wire".to_owned(),
        kind: "Look-up",
        values: json!({ "wires": wires }),
    }
}

/// A contact wire's part of the page; `None` for anything else.
fn wire(booklet: &Booklet<'_>, conductor: &Conductor) -> Option<Value> {
    let Construction::Grooved(grooved) = &conductor.construction else { return None };
    let profile = profile(grooved).ok()?;
    let heights = heights(conductor);
    let table = wear_table(&profile, &heights).ok()?;
    let of = basis(conductor);
    let mut block = conductor_link(booklet, conductor);
    block["id"] = conductor.id.as_str().into();
    block["facts"] = limits(booklet, conductor).into();
    block["caption"] = format!("Remaining height against section; percent worn {of}").into();
    block["rows"] = rows(booklet, conductor, &table);
    block["figures"] = figures::worn(booklet, conductor).into();
    block["wearing"] = figures::wearing(booklet, conductor);
    block["data"] = script_json(&fine(booklet, conductor, grooved, &profile, &table)).into();
    Some(block)
}

fn heights(conductor: &Conductor) -> WearHeights {
    let limits = conductor.wear.as_ref();
    WearHeights {
        basis: conductor.wear_basis(),
        plan: limits.and_then(|limits| limits.plan_height),
        replace: limits.and_then(|limits| limits.replace_height),
        stop: limits.and_then(|limits| limits.stop_height),
        limit_percent: limits.and_then(|limits| limits.limit_percent),
        most_rows: MOST_ROWS,
    }
}

fn basis(conductor: &Conductor) -> &'static str {
    match (conductor.wear.as_ref().map(|limits| limits.basis), conductor.nominal_size) {
        (Some(WearBasis::Nominal), Some(_)) => "of the nominal size",
        _ => "of the section when new",
    }
}

fn limits(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    let numerals = booklet.numerals;
    let height = |key: &str, of: fn(&WearLimits) -> Option<Length>| {
        wear_height(conductor, key, conductor.wear.as_ref().and_then(of), numerals).unwrap_or_default()
    };
    let percent = conductor.wear.as_ref().and_then(|limits| limits.limit_percent);
    let percent = percent.map_or_else(String::new, |percent| {
        let field = "construction.grooved.wear.limit_percent";
        format!("{} {}", conductor.origin.with_unit(field, percent, "%", numerals), basis(conductor))
    });
    facts([
        fact("Plan its replacement at", height("plan_height_mm", |limits| limits.plan_height)),
        fact("Replace at", height("replace_height_mm", |limits| limits.replace_height)),
        fact("Stop at", height("stop_height_mm", |limits| limits.stop_height)),
        fact("Loss allowed", percent),
    ])
}

fn rows(booklet: &Booklet<'_>, conductor: &Conductor, table: &WearTable) -> Value {
    let row = |row: &crate::section::WearRow| {
        let words = worn_row(conductor, row, booklet.numerals);
        json!({
            "height": format!("{}\u{a0}mm", words.height),
            "flat": format!("{}\u{a0}mm", words.flat),
            "section": format!("{}\u{a0}mm²", words.section),
            "worn": format!("{}\u{a0}%", words.worn),
            "action": row.stage.map_or("", action),
        })
    };
    table.rows.iter().map(row).collect()
}

fn action(stage: WearStage) -> &'static str {
    match stage {
        WearStage::New => "New",
        WearStage::Plan => "Plan its replacement",
        WearStage::Replace => "Replace",
        WearStage::Limit => "Loss allowed is reached: replace",
        WearStage::Stop => "Stop",
    }
}

/// Rows of height, flat, section and percent, so close that what lies between two of them is on a straight line
/// as far as a caliper reads.
fn fine(
    booklet: &Booklet<'_>,
    conductor: &Conductor,
    grooved: &Grooved,
    profile: &Profile,
    table: &WearTable,
) -> Value {
    let area = conductor.wear_basis();
    let lowest = grooved.height * LOWEST;
    let heights = (0_u32..).map(|step| grooved.height - Length::from_mm(f64::from(step) * FINE_STEP));
    let rows = heights.take_while(|height| *height >= lowest).filter_map(|height| worn(profile, height).ok());
    let rows = rows.map(|left| {
        let numbers = [left.height.mm(), left.flat_width.mm(), left.section.mm2(), left.percent_of(area)];
        Value::from(numbers.map(thousandths).to_vec())
    });
    let stages = table.rows.iter().filter_map(|row| row.stage.map(|stage| (row.height, stage)));
    let stages = stages.filter(|(_, stage)| *stage != WearStage::New);
    let stages: Vec<_> = stages.collect();
    let has_limits = !stages.is_empty();
    json!({
        "rows": rows.collect::<Vec<_>>(),
        "limits": stages
            .into_iter()
            .map(|(height, stage)| json!({ "height": thousandths(height.mm()), "text": format!("{}.", action(stage)) }))
            .collect::<Vec<_>>(),
        "mark": booklet.input.catalogue.settings.decimal_mark,
        "basis": basis(conductor),
        "above": "That is more than the new wire has: measure again.",
        "below": format!(
            "That is beyond this table, which ends at {}: stop.",
            booklet.numerals.length(lowest, 2)
        ),
        "none": if has_limits { "No limit is reached." } else { "No limit is stated: ask whoever runs the line." },
    })
}

/// To the thousandth; never -0.
fn thousandths(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0 + 0.0
}
