//! The files of `data/`, written side by side.

use super::tables::table;
use super::{card_list, catalogue_json};
use crate::diagnostics::{self, Findings};
use crate::publish::options::RenderError;
use crate::publish::prepared::Prepared;
use crate::publish::staging::Staging;
use crate::source::WorldError;
use crate::spreadsheet::{Gathered, Sheet, workbook};
use std::fmt::Display;

/// Writes all of them.
pub(in crate::publish) fn write(
    gathered: Gathered,
    prepared: &Prepared,
    findings: &Findings,
    staging: &Staging,
) -> Result<(), RenderError> {
    let Prepared { catalogue, mixups, facts, register, .. } = prepared;
    let put = |path: &str, bytes: &[u8]| staging.write(path, bytes).map_err(RenderError::from);
    let computed = || {
        let pieces = catalogue_json(catalogue, mixups, facts.values(), register);
        staging.write_pieces("data/catalogue.json", &pieces).map_err(RenderError::from)
    };
    let listed = || {
        put("data/findings.json", format!("{:#}\n", diagnostics::to_json(findings)).as_bytes())?;
        put(
            "data/cards.csv",
            &card_list(facts.values(), register).map_err(|error| unwritable("data/cards.csv", &error))?,
        )
    };
    let apart = |sheet: &Sheet| {
        let path = format!("data/{}.csv", sheet.kind.folder());
        put(&path, &table(sheet).map_err(|error| unwritable(&path, &error))?)
    };
    let whole = |tables: &[Sheet]| {
        let path = "data/records.xlsx";
        put(path, &workbook(tables, catalogue.settings.date).map_err(|error| unwritable(path, &error))?)
    };
    let recorded = || {
        let tables = gathered.sheets();
        let (whole, apart) = rayon::join(|| whole(&tables), || tables.iter().try_for_each(apart));
        whole.and(apart)
    };
    // The workbook is written by one thread: where it is begun first, nobody waits for it at the end.
    let (recorded, (computed, listed)) = rayon::join(recorded, || rayon::join(computed, listed));
    recorded.and(computed).and(listed)
}

fn unwritable(path: &str, error: &dyn Display) -> RenderError {
    RenderError::Machine(WorldError { path: path.to_owned(), reason: error.to_string() })
}
