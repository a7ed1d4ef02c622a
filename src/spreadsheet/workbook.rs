//! Tables as one XLSX file, the same bytes for the same records.

use super::export::Sheet;
use crate::spreadsheet::cells::{CellValue, is_as_it_stands};
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
    workbook.save_to_buffer()
}

fn fill(page: &mut Worksheet, sheet: &Sheet) -> Result<(), XlsxError> {
    let head = Format::new().set_bold();
    page.set_name(sheet.kind.folder())?;
    page.set_freeze_panes(1, 1)?;
    for (column, name) in (0_u16..).zip(&sheet.head) {
        page.write_string_with_format(0, column, name, &head)?;
        page.set_column_width(column, width(sheet, usize::from(column), name))?;
        if is_as_it_stands(name) {
            // Whoever types 14.0 into it has 14.0 there, not 14.
            page.set_column_format(column, &Format::new().set_num_format("@"))?;
        }
    }
    for (row, cells) in (1_u32..).zip(&sheet.rows) {
        for ((column, name), cell) in (0_u16..).zip(&sheet.head).zip(cells) {
            if let Some(cell) = cell {
                write(page, (row, column), name, cell)?;
            }
        }
    }
    Ok(())
}

/// A number as a number that shows the digits of the record, a day as a day, all else as text, which nothing runs.
fn write(
    page: &mut Worksheet,
    (row, column): (u32, u16),
    name: &str,
    cell: &CellValue,
) -> Result<(), XlsxError> {
    let day = cell.text.parse::<Date>().ok().filter(|_| name.ends_with("date") && cell.text.len() == 10);
    match (cell.number, day) {
        (Some(number), _) if number.is_finite() => {
            page.write_number_with_format(row, column, number, &digits(&cell.text))?
        }
        (_, Some(day)) => {
            let format = Format::new().set_num_format("yyyy-mm-dd");
            page.write_datetime_with_format(row, column, excel_date(day)?, &format)?
        }
        _ if cell.is_truth && ["true", "false"].contains(&cell.text.as_str()) => {
            page.write_boolean(row, column, cell.text == "true")?
        }
        _ if is_as_it_stands(name) => {
            page.write_string_with_format(row, column, &cell.text, &Format::new().set_num_format("@"))?
        }
        _ => page.write_string(row, column, &cell.text)?,
    };
    Ok(())
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
