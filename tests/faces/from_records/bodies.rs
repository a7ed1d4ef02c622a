//! What the card of a shared body must print: its gripping parts, and in signs or words what each does in each fitting.

use super::records::{Records, text};
use super::wrong_parts::{self, called};
use super::{Needed, On, words};
use crate::faces::lines;
use crate::faces::said::squeezed;
use fittingcards::cards::{Card, Face, Item, ItemMark, Sign};
use serde_json::Value as Json;
use serde_yaml::Value;
use std::collections::BTreeSet;

/// A shared body with the fittings that it is in and the gripping parts that go in, each by number.
pub struct Body<'a> {
    records: &'a Records,
    record: &'a Value,
    fittings: Vec<&'a Value>,
    parts: Vec<&'a Value>,
    cases: Vec<&'a Json>,
}

/// A fitting with one of its conductors.
struct Column<'a> {
    fitting: &'a Value,
    conductor: &'a Value,
}

impl<'a> Body<'a> {
    pub fn of(records: &'a Records, number: &'a str) -> Self {
        let has =
            |fitting: &&Value| records.items(fitting).iter().any(|(part, _)| text(part, "number") == number);
        let cases: Vec<&Json> = wrong_parts::all(records, "cases", |body| body == number).collect();
        let parts: BTreeSet<&str> = cases.iter().map(|case| case["part"].as_str().unwrap()).collect();
        Self {
            records,
            record: records.part(number),
            fittings: records.fittings.values().filter(has).collect(),
            parts: parts.into_iter().map(|part| records.part(part)).collect(),
            cases,
        }
    }

    pub fn needed(&self) -> Vec<Needed> {
        let mut list = Vec::new();
        for on in [On::Front, On::Back] {
            list.push(Needed::new("number", on, text(self.record, "number")));
            list.push(Needed::new("status", on, words::status(self.record)));
        }
        list.push(Needed::new("title", On::Front, text(self.record, "name")));
        for line in super::records::texts(&self.records.settings, "before_work") {
            list.push(Needed::new("before work", On::Back, line));
        }
        list.push(Needed::new("caution", On::Back, text(&self.records.settings, "caution")));
        list.push(Needed::new("stamp on the body", On::Front, text(self.record, "stamp")));
        for part in &self.parts {
            list.push(Needed::new("part", On::Front, called(part)));
            list.push(Needed::new("part's mark", On::Front, text(&part["mark"], "text")));
            list.push(Needed::new("part's status", On::Front, words::status(part)));
            for case in self.cases.iter().filter(|case| case["right"] == true && is_of(case, part)) {
                let conductor = &self.records.conductors[case["conductor"].as_str().unwrap()];
                list.push(Needed::new("part's conductor", On::Front, text(conductor, "name")));
            }
        }
        for fitting in &self.fittings {
            list.push(Needed::new("fitting", On::Back, text(fitting, "number")));
            list.push(Needed::new("fitting's status", On::Back, words::status(fitting)));
            for conductor in self.records.conductors(fitting) {
                list.push(Needed::new("fitting's conductor", On::Back, text(conductor, "name")));
            }
        }
        list
    }

    /// Each fitting with each of its conductors once.
    fn columns(&self) -> Vec<Column<'a>> {
        let each = self.fittings.iter().flat_map(|fitting| {
            let mut columns: Vec<Column<'a>> = Vec::new();
            for conductor in self.records.conductors(fitting) {
                if !columns.iter().any(|column| column.conductor["id"] == conductor["id"]) {
                    columns.push(Column { fitting, conductor });
                }
            }
            columns
        });
        each.collect()
    }

    /// Cells of the table on the back that are not there or say something else. In every size rows are parts and columns
    /// fittings with their conductors; a table in words says in each row what its signs say.
    pub fn wrong_cells(&self, card: &Card) -> Vec<String> {
        let rows = rows(&card.back);
        let columns = self.columns();
        let parts: Vec<String> = self.parts.iter().map(|part| called(part)).collect();
        let heads: Vec<[String; 3]> = columns.iter().map(Column::head).collect();
        if !is_headed(&rows, &parts, &heads) {
            return vec![format!("no table of {parts:?} by {heads:?}: {rows:?}")];
        }
        let mut faults = wrong_key(&card.back, &rows);
        faults.extend(wrong_figures(&card.back, &heads));
        faults.extend(wrong_frames(&card.back));
        for (nth, part) in self.parts.iter().enumerate() {
            for (column, place) in columns.iter().enumerate() {
                let expected =
                    self.case(part, place).map_or(UNKNOWN, |case| words::meaning(case, place.fitting));
                let said = rows[nth].signs.get(column).copied().unwrap_or("nothing");
                if said != expected {
                    faults.push(format!("{} in {:?}: {said}, not {expected}", parts[nth], heads[column]));
                }
            }
        }
        if is_in_words(&rows) {
            faults.extend(self.wrong_words(&rows, &columns));
        }
        faults
    }

    /// Rows of a table in words that do not say the summary of each case, in the order of the columns.
    fn wrong_words(&self, rows: &[Row], columns: &[Column<'_>]) -> Vec<String> {
        let expected = |part: &Value| -> String {
            let cases = columns.iter().map(|place| {
                self.case(part, place).map_or(UNKNOWN, |case| words::to_build(case, place.fitting))
            });
            cases.map(squeezed).collect()
        };
        let rows = self.parts.iter().zip(rows).map(|(part, row)| (expected(part), row.label.concat()));
        rows.filter(|(expected, said)| !said.ends_with(expected))
            .map(|(expected, said)| format!("{said} does not end with {expected}"))
            .collect()
    }

    fn case(&self, part: &Value, column: &Column<'_>) -> Option<&'a Json> {
        let (number, wire) = (text(column.fitting, "number"), text(column.conductor, "id"));
        let here = |case: &&&Json| case["fitting"] == *number && case["conductor"] == *wire;
        self.cases.iter().filter(here).find(|case| is_of(case, part)).copied()
    }
}

impl Column<'_> {
    /// Its fitting, conductor and status; that is empty while the fitting is current.
    fn head(&self) -> [String; 3] {
        [text(self.fitting, "number"), text(self.conductor, "name"), words::status(self.fitting)]
    }
}

fn is_of(case: &Json, part: &Value) -> bool {
    case["part"] == *text(part, "number")
}

/// Whether the table on the back of a body's card says in words what its signs say; nothing of a card without one.
pub fn in_words(card: &Card) -> Option<bool> {
    let has_table = card.back.blocks.iter().any(|block| block.name == KEY);
    has_table.then(|| is_in_words(&rows(&card.back)))
}

/// Each table has a right part in each of its rows.
fn is_in_words(rows: &[Row]) -> bool {
    rows.iter().any(|row| row.label.concat().contains(&squeezed("right part")))
}

/// What is said of a part that nothing is known of.
const UNKNOWN: &str = "not known: treat as wrong";

/// The block that says what the signs of a table mean.
const KEY: &str = "key";

/// Signs of the key that stand beside other words, and signs of the table that it does not explain.
fn wrong_key(face: &Face, rows: &[Row]) -> Vec<String> {
    let pairs = explained(face);
    let wrong = pairs.iter().filter(|(sign, words)| squeezed(sign) != *words);
    let wrong = wrong.map(|(sign, words)| format!("the key calls “{sign}” “{words}”"));
    let used: BTreeSet<&str> = rows.iter().flat_map(|row| row.signs.iter().copied()).collect();
    let missing = used.into_iter().filter(|sign| !pairs.iter().any(|(explained, _)| explained == sign));
    wrong.chain(missing.map(|sign| format!("the key lacks “{sign}”"))).collect()
}

/// The signs of the key, each with the words behind it, on however many lines.
fn explained(face: &Face) -> Vec<(&'static str, String)> {
    let mut pairs: Vec<(&'static str, String)> = Vec::new();
    for item in face.blocks.iter().filter(|block| block.name == KEY).flat_map(|block| &block.items) {
        match (&item.mark, pairs.last_mut()) {
            (ItemMark::Sign(sign), _) => pairs.push((sign.meaning(), String::new())),
            (ItemMark::Line { words, .. }, Some((_, said))) => said.push_str(&squeezed(words)),
            _ => {}
        }
    }
    pairs
}

/// Right parts of a table that no frame of their own stands round, and others in such a frame.
fn wrong_frames(face: &Face) -> Vec<String> {
    let rows = face.blocks.iter().filter(|block| block.name.starts_with("part-"));
    let cells = rows.flat_map(|block| block.items.iter().map(move |item| (block, item)));
    let wrong = cells.filter_map(|(block, cell)| {
        let ItemMark::Sign(sign) = cell.mark else { return None };
        let holds = |item: &Item| is_cell_frame(&item.mark) && item.bounds.contains(cell.bounds.center());
        let framed = block.items.iter().any(holds);
        (framed != (sign == Sign::Right))
            .then(|| format!("{}: “{}” framed: {framed}", block.name, sign.meaning()))
    });
    wrong.collect()
}

fn is_cell_frame(mark: &ItemMark) -> bool {
    matches!(mark, ItemMark::Frame(name) if ["diagonal", "small-plate"].contains(&name.as_str()))
}

/// A row of signs, with what is said before it.
#[derive(Debug)]
struct Row {
    label: Vec<String>,
    signs: Vec<&'static str>,
}

/// Each row of the table is a block; what heads the columns stands in the block before the first.
fn rows(face: &Face) -> Vec<Row> {
    let table = face.blocks.iter().filter(|block| block.name != KEY);
    let mut rows = vec![Row { label: Vec::new(), signs: Vec::new() }];
    for block in table {
        let row = rows.last_mut().unwrap();
        row.label.extend(lines::texts(block).into_iter().map(squeezed));
        row.signs = lines::signs(block);
        if !row.signs.is_empty() {
            rows.push(Row { label: Vec::new(), signs: Vec::new() });
        }
    }
    rows.retain(|row| !row.signs.is_empty());
    rows
}

/// Whether there is a row for each part under its name, and the columns are headed in order, each by its fitting, conductor and status.
fn is_headed(rows: &[Row], parts: &[String], heads: &[[String; 3]]) -> bool {
    let named = |(row, part): (&Row, &String)| {
        row.signs.len() == heads.len() && row.label.concat().contains(&squeezed(part))
    };
    let before = rows.first().map(|row| row.label.concat()).unwrap_or_default();
    rows.len() == parts.len() && rows.iter().zip(parts).all(named) && stand_in_order(&before, heads)
}

fn stand_in_order(said: &str, heads: &[[String; 3]]) -> bool {
    let mut from = 0;
    heads.iter().flatten().all(|name| {
        let name = squeezed(name);
        let found = said[from..].find(&name);
        from += found.map_or(0, |at| at + name.len());
        found.is_some()
    })
}

/// Where columns are headed by figures, those that stand before another fitting and conductor than theirs.
fn wrong_figures(face: &Face, heads: &[[String; 3]]) -> Vec<String> {
    let said = |name: &str| {
        let texts = face.blocks.iter().filter(|block| block.name == name).flat_map(lines::texts);
        texts.map(squeezed).collect::<Vec<_>>()
    };
    let bare = |text: &str| text.replace([':', '(', ')'], "");
    let (figures, list) = (said("columns"), bare(&said("fittings").concat()));
    let listed = |(nth, head): (usize, &[String; 3])| {
        let figure = (nth + 1).to_string();
        let is_right =
            figures.get(nth) == Some(&figure) && list.contains(&(figure + &bare(&squeezed(&head.concat()))));
        (!is_right).then(|| format!("column {} is not that of {head:?}: {figures:?}, {list}", nth + 1))
    };
    if figures.is_empty() { Vec::new() } else { heads.iter().enumerate().filter_map(listed).collect() }
}
