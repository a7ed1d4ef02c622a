//! Cells in which a spreadsheet may have put other letters than somebody typed.

use super::cells::{CellValue, as_written_out};
use super::columns::{Columns, Sort};
use super::figures::{are_one_number, number};
use super::looks::{could_be_a_day, like_a_day, like_a_long_number};
use super::misread::{as_written, has_lost_letters};
use super::tables::{Held, ReadCell};
use crate::diagnostics::{Finding, shortened};
use crate::source::{FilePath, Place};
use jiff::civil::Date;

/// A cell, with what it is compared with.
pub(super) struct Compared<'a> {
    /// The number or id of the record.
    pub(super) record: &'a str,
    /// The name of the column.
    pub(super) column: &'a str,
    /// The cell.
    pub(super) read: &'a ReadCell,
    /// What the record says.
    pub(super) current: Option<&'a CellValue>,
    /// The file.
    pub(super) file: &'a FilePath,
}

impl Compared<'_> {
    /// What is to be said of a cell that changes nothing: it may have other letters of the same number.
    pub(super) fn of_same(&self, columns: &Columns) -> Option<Finding> {
        let current = self.current.filter(|_| columns.sort(self.column) == Sort::Letters)?;
        let is = match columns.is_list(self.column) {
            true => as_written_out(self.column, &self.read.cell.text),
            false => self.read.cell.text.clone(),
        };
        let is_other = !is.is_empty() && is != current.text.trim() && are_one_number(&is, &current.text);
        let message = "this cell has other letters than the record, which stays as it is";
        is_other.then(|| {
            Finding::warning("letters-changed", self.place(), message)
                .record(self.record).field(self.column)
                .found(shortened(&is))
                .expected(shortened(&current.text))
                .help("where the record is wrong, change it by hand, or format the cell as text in records.xlsx")
        })
    }

    /// What is to be said of a cell that changes its record to this text.
    pub(super) fn of_changed(&self, is: &str, columns: &Columns) -> Option<Finding> {
        let sort = columns.sort(self.column);
        let by_letters = || self.misread(is).or_else(|| self.letters(is));
        match self.read.held {
            Held::Figure | Held::Percent | Held::Day if sort == Sort::Letters => Some(self.figure_for_text()),
            Held::Percent => Some(
                self.percent("this cell is formatted as a percentage: it holds a hundredth of what it shows"),
            ),
            Held::Letters | Held::Text if sort == Sort::Number && self.is_thousandth(is) => {
                Some(self.thousands(is))
            }
            _ if self.column.ends_with("_percent") && number(is).is_some_and(is_fraction) => {
                Some(self.percent("this looks like a fraction, and the key is in percent"))
            }
            Held::Letters if sort == Sort::Letters => by_letters(),
            Held::Text => self.misread(is),
            _ => None,
        }
    }

    /// A spreadsheet that holds a text for a number or a day has changed it already: 14.0 to 14, 3-4 to a day.
    fn figure_for_text(&self) -> Finding {
        let message = "the spreadsheet holds this cell for a number or a day, and the column is a text, letter by letter";
        let finding =
            Finding::error("wrong-type", self.place(), message).record(self.record).field(self.column);
        finding.found(self.read.cell.text.clone()).help("format the column as text, and type the cell again")
    }

    /// A cell that shows 25 % holds 0.25.
    fn percent(&self, message: &str) -> Finding {
        Finding::error("fraction-for-percent", self.place(), message)
            .record(self.record)
            .field(self.column)
            .found(self.read.cell.text.clone())
            .expected("the number as it is, such as 25 for 25 %")
            .help("format the cell as a number, and type the number again")
    }

    /// Whether a number may have a mark between its thousands: 1,060 where the record has 1060 or so.
    fn is_thousandth(&self, is: &str) -> bool {
        let is_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
        let Some((whole, behind)) = is.split_once('.') else { return false };
        let is_grouped =
            (1..=3).contains(&whole.len()) && behind.len() == 3 && is_digits(whole) && is_digits(behind);
        let was = self.current.and_then(|current| number(&current.text));
        let times = was.zip(number(is)).map(|(was, is)| was / is);
        is_grouped && times.is_some_and(|times| (200.0..5000.0).contains(&times))
    }

    fn thousands(&self, is: &str) -> Finding {
        let message = "the mark in this number may stand behind its thousands or before its decimals";
        let was = self.current.map_or("", |current| current.text.as_str());
        let help = format!(
            "write it without a mark, such as {}, or with other decimals, such as {is}0",
            is.replace('.', "")
        );
        Finding::error("wrong-type", self.place(), message)
            .record(self.record)
            .field(self.column)
            .found(self.read.cell.text.clone())
            .expected(format!("a number that can be read in one way; the record has {was}"))
            .help(help)
    }

    /// A text of a CSV that looks like what a spreadsheet makes of another: 02-Jan of 1-2. Where the record could have
    /// been taken for that, it is an error.
    fn letters(&self, is: &str) -> Option<Finding> {
        if self.current.is_none() && ["number", "id"].contains(&self.column) {
            // Of a record that is new, `made_of_another` says it.
            return None;
        }
        let was = self.current.map_or("", |current| current.text.trim());
        let is_day = like_a_day(is) && !like_a_day(was);
        let is_long = like_a_long_number(is) && !like_a_long_number(was);
        let is_rounded = are_one_number(was, is);
        let is_made = is_day && could_be_a_day(was) || is_long && was.parse::<f64>().is_ok() || is_rounded;
        let message = "this looks like what a spreadsheet makes of other letters";
        let finding = match (is_made, is_day || is_long) {
            (true, _) => Finding::error("letters-changed", self.place(), message),
            (false, true) => Finding::warning("letters-changed", self.place(), message),
            (false, false) => return None,
        };
        let finding = if was.is_empty() { finding } else { finding.expected(shortened(was)) };
        Some(finding.record(self.record).field(self.column).found(shortened(is)).help(
            "make the change in records.xlsx, where such columns are texts; where these are the letters, write them \
             into the record by hand",
        ))
    }

    /// A text with the letters that a program shows that takes UTF-8 for another code, or without those that it can't keep.
    fn misread(&self, is: &str) -> Option<Finding> {
        let was = self.current.map(|current| current.text.as_str());
        let lost = was.filter(|was| has_lost_letters(was, is)).map(str::to_owned);
        let written = as_written(is).or(lost)?;
        let message = "some program has read this text in another code than UTF-8, and saved what it saw";
        let finding =
            Finding::error("not-utf8", self.place(), message).record(self.record).field(self.column);
        Some(finding.found(shortened(is)).expected(shortened(&written)).help(
            "take the file from before; open a CSV file with the code UTF-8 said, or make the change in records.xlsx",
        ))
    }

    fn place(&self) -> Place {
        self.read.cell.place(self.file)
    }
}

/// Whether a number is less than one percent, and more than nothing.
fn is_fraction(number: f64) -> bool {
    0.0 < number && number < 1.0
}

/// A number or id of a CSV that is new, and may be what a spreadsheet has made of another: 410 of 41E1, 02-Jan of 1-2.
pub(super) fn made_of_another<'s>(
    own: &ReadCell,
    mut standing: impl Iterator<Item = &'s String>,
    file: &FilePath,
) -> Option<Finding> {
    if own.held != Held::Letters {
        return None;
    }
    let text = own.cell.text.as_str();
    let is_day = like_a_day(text) && text.parse::<Date>().is_err();
    let message = match standing.find(|id| are_one_number(id, text)) {
        Some(other) => format!("this may be what a spreadsheet has made of {}", shortened(other)),
        None if is_day => "this may be the day that a spreadsheet has made of a number or id".to_owned(),
        None => return None,
    };
    let finding = Finding::error("letters-changed", own.cell.place(file), message).found(shortened(text));
    Some(finding.help("make the change in records.xlsx, where this column is a text"))
}
