//! The files of `data/`, written side by side.

use super::tables::table;
use super::{card_list, catalogue_json};
use crate::diagnostics::{self, Findings};
use crate::publish::options::Fault;
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
) -> Result<(), Fault> {
    let Prepared { catalogue, mixups, facts, register, .. } = prepared;
    let put = |path: &str, bytes: &[u8]| staging.write(path, bytes).map_err(Fault::from);
    let computed = || {
        let pieces = catalogue_json(catalogue, mixups, facts, register);
        staging.write_pieces("data/catalogue.json", &pieces).map_err(Fault::from)
    };
    let listed = || {
        put("data/findings.json", format!("{:#}\n", diagnostics::to_json(findings)).as_bytes())?;
        put(
            "data/cards.csv",
            &card_list(facts, register).map_err(|error| unwritable("data/cards.csv", &error))?,
        )
    };
    let tables = gathered.sheets();
    let apart = |sheet: &Sheet| {
        let path = format!("data/{}.csv", sheet.kind.folder());
        put(&path, &table(sheet).map_err(|error| unwritable(&path, &error))?)
    };
    let apart = || tables.iter().try_for_each(apart);
    let whole = || {
        let path = "data/records.xlsx";
        put(path, &workbook(&tables, catalogue.settings.date).map_err(|error| unwritable(path, &error))?)
    };
    // The workbook is written by one thread: where it is begun first, nobody waits for it at the end.
    let (whole, (computed, (apart, listed))) =
        rayon::join(whole, || rayon::join(computed, || rayon::join(apart, listed)));
    whole.and(computed).and(apart).and(listed)
}

fn unwritable(path: &str, error: &dyn Display) -> Fault {
    Fault::Machine(WorldError { path: path.to_owned(), reason: error.to_string() })
}
