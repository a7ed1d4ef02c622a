//! Tables of published figures: reading them, and comparing them within what they print.
//!
//! The column `DIFFERENCE` of a table names the columns of a row where the program departs, each with the reason:
//! `mass_kg_per_km: reason; breaking_kN: reason`. What departs without a reason fails, and so does a reason
//! without a departure.

use std::collections::BTreeMap;

/// One row by its column names.
pub struct Row {
    cells: BTreeMap<String, String>,
}

/// The rows of a table.
pub fn rows(table: &str) -> Vec<Row> {
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    let names = reader.headers().expect("a heading").clone();
    let cells = |record: csv::StringRecord| {
        names
            .iter()
            .zip(record.iter())
            .map(|(name, cell)| (name.to_owned(), cell.trim().to_owned()))
            .collect()
    };
    reader.records().map(|record| Row { cells: cells(record.expect("a row")) }).collect()
}

impl Row {
    /// A cell as it is printed.
    pub fn text(&self, column: &str) -> &str {
        self.cells.get(column).map(String::as_str).unwrap_or_else(|| panic!("no column {column}"))
    }

    /// A cell as a number, where there is one.
    pub fn number(&self, column: &str) -> Option<f64> {
        self.text(column).parse().ok()
    }

    /// A cell as a whole number, 0 where there is none.
    pub fn count(&self, column: &str) -> u32 {
        self.text(column).parse().unwrap_or(0)
    }

    /// Half of the last digit that a cell prints.
    fn half_digit(&self, column: &str) -> f64 {
        let text = self.text(column);
        let decimals = text.find('.').map_or(0, |point| text.len() - point - 1);
        0.5 * 10_f64.powi(-i32::try_from(decimals).unwrap())
    }

    /// Whether a column is marked as one where the program departs.
    pub fn is_marked(&self, column: &str) -> bool {
        let marks = self.cells.get("DIFFERENCE").map_or("", String::as_str);
        marks
            .split(';')
            .any(|mark| mark.trim_start().strip_prefix(column).is_some_and(|rest| rest.starts_with(':')))
    }
}

/// Counts what agrees and what departs, and gathers what may not.
#[derive(Default)]
pub struct Tally {
    agree: usize,
    depart: usize,
    wrong: Vec<String>,
}

impl Tally {
    /// Compares a printed value with a computed one: within half the last printed digit or a part of the value,
    /// whichever is larger.
    pub fn compare(&mut self, row: &Row, name: &str, column: &str, computed: Option<f64>, part: f64) {
        self.judge(row, name, (column, row.is_marked(column)), computed, part);
    }

    /// The same of a value that must agree whatever the row marks.
    pub fn compare_unmarked(
        &mut self,
        row: &Row,
        name: &str,
        column: &str,
        computed: Option<f64>,
        part: f64,
    ) {
        self.judge(row, name, (column, false), computed, part);
    }

    fn judge(&mut self, row: &Row, name: &str, at: (&str, bool), computed: Option<f64>, part: f64) {
        let (column, marked) = at;
        let Some(printed) = row.number(column) else { return };
        let allowed = row.half_digit(column).max(printed.abs() * part) * (1.0 + 1e-9);
        let agrees = computed.is_some_and(|computed| (computed - printed).abs() <= allowed);
        match (agrees, marked) {
            (true, false) => self.agree += 1,
            (false, true) => self.depart += 1,
            (true, true) => {
                self.wrong.push(format!("{name}: {column} is marked but agrees: {printed}, {computed:?}"))
            }
            (false, false) => {
                let percent = computed.map(|computed| 100.0 * (computed / printed - 1.0));
                self.wrong.push(format!(
                    "{name}: {column} printed {printed}, computed {computed:?} ({percent:+.3?} %)"
                ));
            }
        }
    }

    /// Prints the counts; fails where something departs without a reason.
    pub fn close(self, table: &str) {
        println!("{table}: {} figures agree, {} marked DIFFERENCE", self.agree, self.depart);
        assert!(self.wrong.is_empty(), "{table}:\n{}", self.wrong.join("\n"));
        assert!(self.agree > 0, "{table}: nothing was compared");
    }
}
