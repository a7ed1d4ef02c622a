//! Tables of text as spreadsheets write them: rows of cells below a head, each cell with its place.

use super::cell::as_it_was;
use crate::diagnostics::{Finding, Findings};
use crate::source::{FilePath, Place};
use csv::{ReaderBuilder, StringRecord};

/// How many rows are read of a table.
pub const MOST_ROWS: usize = 200_000;

/// A table: the first row that is not empty is its head.
#[derive(Debug, Clone, Default)]
pub struct Table {
    /// The names of the columns.
    pub head: Vec<Cell>,
    /// The rows below, those that are wholly empty left out; each has as many cells as the head.
    pub rows: Vec<Vec<Cell>>,
    /// Whether a comma can stand before decimals: where it does not part cells.
    pub decimal_commas: bool,
}

/// A cell, without spaces round it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell {
    /// What stands in it.
    pub text: String,
    /// Its line in the file, or row of the sheet, counted from 1.
    pub line: u32,
    /// Its first character in the line, or column of the sheet, counted from 1.
    pub column: u32,
}

impl Cell {
    /// Where it stands.
    #[must_use]
    pub fn place(&self, file: &FilePath) -> Place {
        Place::at(file.clone(), self.line, self.column)
    }
}

/// The table in a text. Commas, semicolons or tabs part its cells: whichever its first line has most of. A row that
/// has more or fewer cells than the head is left out, and told.
///
/// ```
/// use fittingcards::diagnostics::Findings;
/// use fittingcards::records::table;
/// use fittingcards::source::FilePath;
/// let (file, mut findings) = (FilePath::catalogue("installed/a.csv"), Findings::new());
/// let table = table(&file, "place;fitting\n\"mast 1;\nleft\";F-1\n", &mut findings);
/// let cell = &table.rows[0][1];
/// assert_eq!((cell.text.as_str(), cell.line, cell.column), ("F-1", 3, 7));
/// ```
#[must_use]
pub fn table(file: &FilePath, text: &str, findings: &mut Findings) -> Table {
    let delimiter = delimiter(text);
    let mut table = Table { decimal_commas: delimiter != b',', ..Table::default() };
    let mut reader = ReaderBuilder::new()
        .delimiter(delimiter)
        .has_headers(false)
        .flexible(true)
        .from_reader(text.as_bytes());
    let (mut record, mut cursor) = (StringRecord::new(), Cursor::start(text, delimiter));
    while let Ok(true) = reader.read_record(&mut record) {
        let start = record.position().map_or(0, csv::Position::byte);
        cursor.skip_to(usize::try_from(start).unwrap_or(usize::MAX));
        let places = cursor.cells();
        let cells: Vec<Cell> = record.iter().zip(&places).map(|(text, place)| cell(text, *place)).collect();
        if let Some((line, column)) = cursor.unclosed {
            findings.push(not_closed(Place::at(file.clone(), line, column)));
        }
        if cells.iter().all(|cell| cell.text.is_empty()) {
            continue;
        }
        if table.head.is_empty() {
            table.head = cells;
        } else if table.rows.len() == MOST_ROWS {
            findings.push(too_many(cells[0].place(file)));
            break;
        } else {
            match fitted(cells, table.head.len(), file) {
                Ok(cells) => table.rows.push(cells),
                Err(finding) => findings.push(*finding),
            }
        }
    }
    table
}

/// A row with as many cells as the head. An empty cell too many may be the last of a row that a stray comma has moved.
fn fitted(cells: Vec<Cell>, wanted: usize, file: &FilePath) -> Result<Vec<Cell>, Box<Finding>> {
    let count = cells.len();
    if count == wanted {
        return Ok(cells);
    }
    let message = "this row has not as many cells as there are columns";
    let help = "put a cell that holds a comma, a semicolon or a line break into double quotes; leave a cell empty \
                where there is nothing to say";
    let finding = Finding::error("wrong-number-of-cells", cells[0].place(file), message)
        .found(format!("{count} cells"))
        .expected(format!("{wanted}, as many as the head has"))
        .help(help);
    Err(Box::new(finding))
}

fn cell(text: &str, (line, column): (u32, u32)) -> Cell {
    Cell { text: as_it_was(text.trim()).to_owned(), line, column }
}

fn not_closed(place: Place) -> Finding {
    Finding::error("quote-not-closed", place, "the quote that opens here is never closed")
        .help("close it at the end of its cell; a quote within a cell is written twice")
}

fn too_many(place: Place) -> Finding {
    Finding::error("too-many-records", place, "there are too many rows, from here on they are not read")
        .expected(format!("at most {MOST_ROWS} rows"))
        .help("take out what is no longer in the line, or split the catalogue")
}

/// What parts cells: whichever the first line has most of.
fn delimiter(text: &str) -> u8 {
    let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    let count = |delimiter: u8| first.bytes().filter(|byte| *byte == delimiter).count();
    [b',', b';', b'\t'].into_iter().rev().max_by_key(|delimiter| count(*delimiter)).unwrap_or(b',')
}

/// Walks through a table's text, for the places of cells, which the reader of their texts does not give.
struct Cursor<'t> {
    text: &'t str,
    delimiter: char,
    at: usize,
    line: u32,
    column: u32,
    /// Where a quote opens that nothing closes.
    unclosed: Option<(u32, u32)>,
}

impl<'t> Cursor<'t> {
    fn start(text: &'t str, delimiter: u8) -> Self {
        Self { text, delimiter: char::from(delimiter), at: 0, line: 1, column: 1, unclosed: None }
    }

    fn skip_to(&mut self, start: usize) {
        while self.at < start && self.next().is_some() {}
        while self.peek().is_some_and(|letter| matches!(letter, '\r' | '\n')) {
            self.next();
        }
    }

    /// The places of the cells of the row that begins here; goes to its end.
    fn cells(&mut self) -> Vec<(u32, u32)> {
        let mut places = vec![(self.line, self.column)];
        let mut quoted = self.opens();
        while let Some(letter) = self.peek() {
            if quoted.is_some() {
                self.next();
                // A doubled quote is one letter of the cell.
                if letter == '"' && self.peek() == Some('"') {
                    self.next();
                } else if letter == '"' {
                    quoted = None;
                }
            } else if matches!(letter, '\r' | '\n') {
                break;
            } else {
                self.next();
                if letter == self.delimiter {
                    places.push((self.line, self.column));
                    quoted = self.opens();
                }
            }
        }
        self.unclosed = quoted;
        places
    }

    /// Where a quote opens here.
    fn opens(&mut self) -> Option<(u32, u32)> {
        let place = (self.line, self.column);
        (self.peek() == Some('"')).then(|| self.next()).map(|_| place)
    }

    fn peek(&self) -> Option<char> {
        self.text[self.at..].chars().next()
    }

    fn next(&mut self) -> Option<char> {
        let letter = self.peek()?;
        self.at += letter.len_utf8();
        // A line ends with either of the two, or with both.
        let ends = letter == '\n' || letter == '\r' && self.peek() != Some('\n');
        (self.line, self.column) = if ends { (self.line + 1, 1) } else { (self.line, self.column + 1) };
        Some(letter)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> (Table, Vec<String>) {
        let mut findings = Findings::new();
        let table = table(&FilePath::catalogue("installed/a.csv"), text, &mut findings);
        let found = findings.sorted();
        let found =
            found.iter().map(|found| format!("{}:{} {}", found.place.line, found.place.column, found.code));
        (table, found.collect())
    }

    fn places(table: &Table) -> Vec<(u32, u32, &str)> {
        table.rows.iter().flatten().map(|cell| (cell.line, cell.column, cell.text.as_str())).collect()
    }

    // Counted by hand in each text.
    #[test]
    fn each_cell_has_the_line_and_column_that_an_editor_shows() {
        let expected = [(2, 1, "x\ny"), (3, 4, "ö, \""), (5, 1, "ü"), (5, 3, "2")];
        for line_end in ["\n", "\r\n"] {
            let text = "a,b\n\"x\ny\",\"ö, \"\"\"\n\nü,2\n".replace('\n', line_end);
            let (table, found) = read(&text);
            let read = places(&table);
            let read: Vec<_> = read
                .iter()
                .map(|(line, column, text)| (*line, *column, text.replace("\r\n", "\n")))
                .collect();
            assert_eq!(
                read,
                expected.map(|(line, column, text)| (line, column, text.to_owned())),
                "{line_end:?}"
            );
            assert!(found.is_empty(), "{found:?}");
        }
        let (table, _) = read("a,b\r1,2\r3,4");
        assert_eq!(places(&table), [(2, 1, "1"), (2, 3, "2"), (3, 1, "3"), (3, 3, "4")]);
    }

    #[test]
    fn semicolons_and_tabs_part_cells_too() {
        for (text, commas) in [("a;b\n1,5;2\n", true), ("a\tb\n1,5\t2\n", true), ("a,b\n\"1,5\",2\n", false)]
        {
            let (table, found) = read(text);
            assert_eq!(table.rows[0][0].text, "1,5");
            assert_eq!((table.head.len(), table.decimal_commas, found.len()), (2, commas, 0));
        }
    }

    #[test]
    fn rows_of_another_length_are_told_and_empty_ones_passed_over() {
        let (table, found) = read("a,b\n1,2\n,\n1\n1,2,\n\n3,4\n");
        assert_eq!(places(&table), [(2, 1, "1"), (2, 3, "2"), (7, 1, "3"), (7, 3, "4")]);
        assert_eq!(found, ["4:1 wrong-number-of-cells", "5:1 wrong-number-of-cells"]);
    }

    #[test]
    fn a_quote_that_nothing_closes_is_told_where_it_opens() {
        let (_, found) = read("a,b\n1,\"2\n3,4\n");
        assert_eq!(found, ["2:3 quote-not-closed"]);
    }

    #[test]
    fn an_apostrophe_that_kept_a_formula_from_running_goes() {
        let (table, _) = read("a,b\n'=1,'90\n");
        assert_eq!(places(&table), [(2, 1, "=1"), (2, 5, "'90")]);
    }
}
