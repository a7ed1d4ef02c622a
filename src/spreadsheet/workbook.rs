//! Tables as one XLSX file, the same bytes for the same records.

use super::as_exported::{EXPORTED_HEAD, EXPORTED_SHEET, hash_of};
use super::cells::CellValue;
use super::columns::{Columns, Sort};
use super::export::Sheet;
use super::figures::{number, rounded};
use jiff::civil::Date;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Workbook, Worksheet, XlsxError};

/// A sheet has this many letters in a line at most before it breaks.
const WIDEST: usize = 60;

/// The bytes of the file. `date` is that of the catalogue, which the file has for its own: nothing asks a clock.
///
/// # Errors
/// Where a text is longer than a cell can be.
pub fn workbook(sheets: &[Sheet], date: Option<Date>) -> Result<Vec<u8>, XlsxError> {
    let mut workbook = Workbook::new();
    let day = date.unwrap_or(Date::constant(2000, 1, 1));
    let created = excel_date(day)?;
    workbook.set_properties(&DocProperties::new().set_creation_datetime(&created));
    for sheet in sheets {
        fill(workbook.add_worksheet(), sheet)?;
    }
    fill_exported(workbook.add_worksheet(), sheets)?;
    workbook.save_to_buffer()
}

fn fill(page: &mut Worksheet, sheet: &Sheet) -> Result<(), XlsxError> {
    let head = Format::new().set_bold();
    let columns = Columns::of(sheet.kind);
    let sorts: Vec<Sort> = sheet.head.iter().map(|name| columns.sort(name)).collect();
    page.set_name(sheet.kind.folder())?;
    page.set_freeze_panes(1, 1)?;
    for ((column, name), sort) in (0_u16..).zip(&sheet.head).zip(&sorts) {
        page.write_string_with_format(0, column, name, &head)?;
        page.set_column_width(column, width(sheet, usize::from(column), name))?;
        if is_text(*sort) {
            // Whoever types 14.0 into it has 14.0 there, not 14, and 3/4, not a day.
            page.set_column_format(column, &as_text())?;
        }
    }
    for (row, cells) in (1_u32..).zip(&sheet.rows) {
        for ((column, sort), cell) in (0_u16..).zip(&sorts).zip(cells) {
            if let Some(cell) = cell {
                write(page, (row, column), *sort, cell)?;
            }
        }
    }
    Ok(())
}

/// What the records are that the tables are written from, for `import`.
fn fill_exported(page: &mut Worksheet, sheets: &[Sheet]) -> Result<(), XlsxError> {
    page.set_name(EXPORTED_SHEET)?.set_hidden(true);
    page.write_row(0, 0, EXPORTED_HEAD)?;
    let mut line = 0;
    for sheet in sheets {
        let columns = Columns::of(sheet.kind);
        let Some(id) = sheet.head.iter().position(|name| name == sheet.kind.id()) else { continue };
        for row in &sheet.rows {
            let Some(record) = &row[id] else { continue };
            let named = sheet.head.iter().zip(row);
            let cells = named.filter_map(|(name, cell)| Some((name.as_str(), cell.as_ref()?.text.as_str())));
            line += 1;
            page.write_row(line, 0, [sheet.kind.folder(), &record.text, &hash_of(cells, &columns)])?;
        }
    }
    Ok(())
}

/// A number as a number that shows the digits of the record, a day as a day, all else as text, which nothing runs and
/// nothing turns into a number: an id may be 41E1, and a stamp 14.0.
fn write(
    page: &mut Worksheet,
    (row, column): (u32, u16),
    sort: Sort,
    cell: &CellValue,
) -> Result<(), XlsxError> {
    let day = || cell.text.parse::<Date>().ok().filter(|_| cell.text.len() == 10);
    match sort {
        Sort::Number => match figure(cell) {
            Some(number) => page.write_number_with_format(row, column, number, &digits(&cell.text))?,
            None => page.write_string(row, column, &cell.text)?,
        },
        Sort::Day => match day() {
            Some(day) => {
                let format = Format::new().set_num_format("yyyy-mm-dd");
                page.write_datetime_with_format(row, column, excel_date(day)?, &format)?
            }
            None => page.write_string(row, column, &cell.text)?,
        },
        Sort::Truth if cell.is_truth && ["true", "false"].contains(&cell.text.as_str()) => {
            page.write_boolean(row, column, cell.text == "true")?
        }
        Sort::Truth => page.write_string(row, column, &cell.text)?,
        Sort::Letters | Sort::Other => page.write_string_with_format(row, column, &cell.text, &as_text())?,
    };
    Ok(())
}

/// Whether the cells of a column are texts.
fn is_text(sort: Sort) -> bool {
    matches!(sort, Sort::Letters | Sort::Other)
}

/// The format of a cell that holds what is typed into it, letter by letter.
fn as_text() -> Format {
    Format::new().set_num_format("@")
}

/// The number that a spreadsheet can hold for what a record writes, with all of its digits.
fn figure(cell: &CellValue) -> Option<f64> {
    let own = cell.number.filter(|number| rounded(*number).total_cmp(number).is_eq())?;
    number(&cell.text).filter(|written| written.total_cmp(&own).is_eq())
}

/// As many decimals as the record writes.
fn digits(text: &str) -> Format {
    let decimals = text.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let plain = !text.contains(['e', 'E']);
    match decimals {
        _ if !plain => Format::new(),
        0 => Format::new().set_num_format("0"),
        decimals => Format::new().set_num_format(format!("0.{}", "0".repeat(decimals.min(15)))),
    }
}

fn excel_date(day: Date) -> Result<ExcelDateTime, XlsxError> {
    let part = |value: i8| u8::try_from(value).unwrap_or(1);
    ExcelDateTime::from_ymd(u16::try_from(day.year()).unwrap_or(2000), part(day.month()), part(day.day()))
}

fn width(sheet: &Sheet, column: usize, name: &str) -> f64 {
    let cells = sheet.rows.iter().filter_map(|row| row.get(column)?.as_ref());
    let longest = cells.flat_map(|cell| cell.text.lines()).map(|line| line.chars().count());
    let letters = longest.chain([name.chars().count()]).max().unwrap_or(0).min(WIDEST);
    f64::from(u32::try_from(letters).unwrap_or(0)) + 2.0
}
