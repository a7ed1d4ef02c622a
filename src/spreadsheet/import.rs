//! Rows back into the files of their records.

use super::cells::{CellValue, cells};
use super::change::RecordChange;
use super::columns::Columns;
use super::edit::{Edits, edits};
use super::export::files;
use super::insert::{new_record, path};
use super::kind::SheetKind;
use super::letters::made_of_another;
use super::lines::edited;
use super::row::{RowChange, Since, changed_since, row_change, since_export};
use super::standing::{Standing, standing};
use super::tables::ReadTable;
use super::told::{CellPlaces, Edited};
use super::value::Tree;
use crate::catalogue::load;
use crate::diagnostics::{Finding, Findings, Severity, nearest, shortened};
use crate::records::{CUT_OFF, Cell, Node, laid, nodes};
use crate::source::{FilePath, Folder, Place, World, WorldError};
use std::collections::{BTreeMap, BTreeSet};

/// What tables make of a catalogue.
#[derive(Debug, Clone)]
pub struct Import {
    /// What changes, record by record in the order of the rows.
    pub changes: Vec<RecordChange>,
    /// The files that change, with what they hold now, nothing where they are new, and what they would hold.
    pub files: Vec<(FilePath, Option<String>, String)>,
    /// The records that were changed since their table was written, and their rows were not: they stay as they are.
    pub newer: Vec<String>,
    /// The records that have no row in the table of their kind: they stay as they are.
    pub without_row: Vec<String>,
    /// What is wrong. While an error is among it, nothing is to be written.
    pub findings: Findings,
}

/// What tables would change, checked as records are: the catalogue is read as it would be, and what is found is told at
/// the cells.
///
/// # Errors
/// Where the machine can't read the catalogue.
pub fn import(world: &dyn World, tables: &[ReadTable]) -> Result<Import, WorldError> {
    let mut importing = Importing {
        findings: Findings::new(),
        changes: Vec::new(),
        files: BTreeMap::new(),
        new: BTreeMap::new(),
        newer: Vec::new(),
        without_row: Vec::new(),
    };
    for table in tables {
        importing.table(world, table)?;
    }
    let before = load(world)?.findings;
    let Importing { mut findings, changes, files, new, newer, without_row } = importing;
    let texts = || files.iter().map(|(file, (_, is))| (file, is)).chain(&new);
    let edited =
        Edited { world, files: texts().map(|(file, text)| (file.clone(), text.as_bytes().into())).collect() };
    findings.extend(unreadable(&before, tables));
    let rows = changes.iter().filter(|change| change.is_new);
    let new_files = rows.map(|change| (change.file.clone(), change.record.clone())).collect();
    findings.extend(CellPlaces::of(tables).told(&load(&edited)?.findings, &before, &new_files));
    let was = |file: &FilePath| files.get(file).map(|(was, _)| was.clone());
    let files = texts().map(|(file, text)| (file.clone(), was(file), text.clone())).collect();
    Ok(Import { changes, files, newer, without_row, findings })
}

struct Importing {
    findings: Findings,
    changes: Vec<RecordChange>,
    /// Files that change: what they hold, and what they would hold.
    files: BTreeMap<FilePath, (String, String)>,
    new: BTreeMap<FilePath, String>,
    newer: Vec<String>,
    without_row: Vec<String>,
}

impl Importing {
    fn table(&mut self, world: &dyn World, table: &ReadTable) -> Result<(), WorldError> {
        let columns = Columns::of(table.kind);
        let texts = files(world, table.kind)?;
        let standing = standing(&texts, table.kind);
        if table.head.is_empty() && !standing.is_empty() {
            self.findings.push(empty(table, standing.len()));
        }
        let Some(id) = self.head(table, &columns) else { return Ok(()) };
        let taken: BTreeSet<FilePath> = world.files(Folder::Catalogue)?.into_iter().collect();
        let mut edits_of: BTreeMap<&FilePath, Vec<(usize, Tree, &Standing, usize)>> = BTreeMap::new();
        let mut seen: BTreeMap<&str, &Cell> = BTreeMap::new();
        for row in &table.rows {
            let own = &row[id].cell;
            if !self.is_row(own, table, &mut seen) {
                continue;
            }
            let here = standing.get(own.text.as_str());
            let since = since_export(row, id, table, here, &columns);
            if since == Since::OtherRecord {
                self.newer.push(own.text.clone());
                continue;
            }
            let change = row_change(row, id, table, here, &columns);
            if since == Since::OtherBoth && !change.keys.is_empty() {
                self.findings.push(changed_since(row, id, table, here, &change));
                continue;
            }
            let RowChange { tree, keys, findings } = change;
            self.findings.extend(findings);
            if here.is_none() {
                self.findings.extend(made_of_another(&row[id], standing.keys(), &table.file));
            }
            if keys.is_empty() {
                continue;
            }
            let file = match here {
                Some(here) => {
                    edits_of.entry(&here.file).or_default().push((here.nth, tree, here, self.changes.len()));
                    here.file.clone()
                }
                None => self.new_file(table.kind, own, &tree, &columns, &taken),
            };
            self.changes.push(RecordChange { record: own.text.clone(), file, is_new: here.is_none(), keys });
        }
        let has_no_row = |id: &&String| {
            let was_there = table.exported.as_ref().is_none_or(|exported| exported.contains_key(*id));
            !seen.is_empty() && was_there && !seen.contains_key(id.as_str())
        };
        self.without_row.extend(standing.keys().filter(has_no_row).cloned());
        for (file, changes) in edits_of {
            let text = texts.iter().find(|(other, _)| other == file).map_or("", |(_, text)| text.as_str());
            self.edit(file, text, &changes, &columns);
        }
        Ok(())
    }

    /// Tells of columns that are wrong; gives the one that records are known by.
    fn head(&mut self, table: &ReadTable, columns: &Columns) -> Option<usize> {
        let file = &table.file;
        for (nth, head) in table.head.iter().enumerate() {
            if head.text.is_empty() {
                let stray = table.rows.iter().map(|row| &row[nth].cell).find(|cell| !cell.text.is_empty());
                self.findings.extend(stray.map(|cell| {
                    Finding::error("unknown-key", cell.place(file), "the column of this cell has no name")
                        .found(shortened(&cell.text))
                        .help("name it in the first row, or clear its cells")
                }));
            } else if table.head[..nth].iter().any(|before| before.text == head.text) {
                let finding = Finding::error("duplicate-key", head.place(file), "this column is there twice");
                self.findings.push(finding.field(shortened(&head.text)).help("keep only one of the two"));
            } else if !columns.knows(&head.text) {
                let message = format!("{} have no column `{}`", table.kind.folder(), shortened(&head.text));
                let finding = Finding::error("unknown-key", head.place(file), message);
                self.findings.push(match nearest(&head.text, columns.names()) {
                    Some(name) => finding.help(format!("did you mean `{name}`?")),
                    None => {
                        finding.help(format!("`fittingcards explain {}` names the keys", table.kind.folder()))
                    }
                });
            }
        }
        let id = table.head.iter().position(|head| head.text == table.kind.id());
        if let (None, Some(first)) = (id, table.head.first()) {
            let message = format!("there is no column `{}`", table.kind.id());
            let finding = Finding::error("missing-key", first.place(file), message);
            self.findings.push(finding.help("it says which record a row is of"));
        }
        id
    }

    /// Whether a row says which record it is of, and is the first that does.
    fn is_row<'t>(
        &mut self,
        own: &'t Cell,
        table: &ReadTable,
        seen: &mut BTreeMap<&'t str, &'t Cell>,
    ) -> bool {
        let (place, id) = (own.place(&table.file), table.kind.id());
        if own.text.is_empty() {
            let finding = Finding::error("missing-key", place, format!("this row has no `{id}`"));
            self.findings.push(finding.help(format!("fill in the cell in column `{id}`, or clear the row")));
            return false;
        }
        if let Some(first) = seen.get(own.text.as_str()) {
            let finding = Finding::error("duplicate-id", place, "another row is of the same record");
            let finding = finding.found(shortened(&own.text)).help("keep only one of the two");
            self.findings.push(finding.related(first.place(&table.file), "it is already here"));
            return false;
        }
        seen.insert(&own.text, own);
        true
    }

    fn new_file(
        &mut self,
        kind: SheetKind,
        own: &Cell,
        tree: &Tree,
        columns: &Columns,
        taken: &BTreeSet<FilePath>,
    ) -> FilePath {
        // What can't be a number can't be a file's name; the record's own finding says so.
        let name: String = own
            .text
            .chars()
            .filter(|letter| letter.is_ascii_alphanumeric() || "._-".contains(*letter))
            .take(40)
            .collect();
        let is_taken = |path: &str| {
            let file = FilePath::catalogue(path);
            taken.iter().any(|other| other.path.eq_ignore_ascii_case(path)) || self.new.contains_key(&file)
        };
        let file = FilePath::catalogue(&path(kind.folder(), &name, is_taken));
        self.new.insert(file.clone(), new_record(tree, columns));
        file
    }

    /// Changes the records of a file, and holds what comes of it against what the rows say.
    fn edit(
        &mut self,
        file: &FilePath,
        text: &str,
        changes: &[(usize, Tree, &Standing, usize)],
        columns: &Columns,
    ) {
        let (mark, body) = text.split_at(text.len() - text.trim_start_matches('\u{feff}').len());
        let documents = laid(body).unwrap_or_default();
        let (mut all, mut failed) = (Vec::new(), Vec::new());
        for (nth, tree, here, change) in changes {
            let found = documents.get(*nth).ok_or_else(String::new);
            match found.and_then(|document| edits(body, document, tree, columns, &here.cells)) {
                Ok(Edits { edits, comments }) => {
                    all.extend(edits);
                    comments.iter().for_each(|(column, comment)| self.comment_left(*change, column, comment));
                }
                Err(column) => failed.push((*change, column)),
            }
        }
        let new = edited(body, all);
        if failed.is_empty() && !self.says(&new, body, changes) {
            failed.extend(changes.iter().map(|(.., change)| (*change, String::new())));
        }
        failed.iter().for_each(|(change, column)| self.not_editable(*change, column));
        if failed.is_empty() {
            self.files.insert(file.clone(), (text.to_owned(), format!("{mark}{new}")));
        }
    }

    /// Whether a new text says what the rows say of the records that change, and of all others what the old one says.
    fn says(&self, new: &str, old: &str, changes: &[(usize, Tree, &Standing, usize)]) -> bool {
        let said = |node: &Node| texts(&cells(node).into_iter().collect());
        let mut expected: Vec<BTreeMap<String, String>> = nodes(old).iter().map(said).collect();
        for (nth, _, here, change) in changes {
            if let Some(record) = expected.get_mut(*nth) {
                *record = self::expected(&here.cells, &self.changes[*change]);
            }
        }
        nodes(new).iter().map(said).eq(expected)
    }

    /// A comment may have been about a value that goes, and speaks of another if nobody looks.
    fn comment_left(&mut self, change: usize, column: &str, comment: &str) {
        let change = &self.changes[change];
        let Some(key) = change.key(column) else { return };
        let message =
            format!("a comment stays in the file of {} where this value is taken out", change.record);
        let help = format!("look in {} whether it still holds there", change.file.path);
        let finding = Finding::warning("comment-left", key.cell.clone(), message);
        let finding = finding.record(change.record.as_str()).field(key.column.as_str());
        self.findings.push(finding.found(shortened(comment)).help(help));
    }

    fn not_editable(&mut self, change: usize, column: &str) {
        let change = &self.changes[change];
        let Some(key) = change.key(column) else { return };
        let message = format!("this can't be changed in the file of {} without changing more", change.record);
        let help = format!("change it by hand in {}, or leave the cell as it was", change.file.path);
        let finding = Finding::error("record-not-editable", key.cell.clone(), message);
        self.findings.push(finding.record(change.record.as_str()).field(key.column.as_str()).help(help));
    }
}

/// Files of these kinds that can't be read as they should: a record in one would be taken for a new one. So might one of
/// an import that was cut off.
fn unreadable(before: &Findings, tables: &[ReadTable]) -> Vec<Finding> {
    let is_of_a_table = |finding: &&Finding| {
        let is_half_done = finding.place.file.path.as_ref() == CUT_OFF;
        is_half_done
            || tables
                .iter()
                .any(|table| finding.place.file.path.starts_with(&format!("{}/", table.kind.folder())))
    };
    let no_record = |finding: &&Finding| finding.severity == Severity::Error && finding.record.is_none();
    before.sorted().into_iter().filter(no_record).filter(is_of_a_table).cloned().collect()
}

/// Nothing in a table is no comparison that went well, but an export that did not. Only a kind without records has an
/// empty table.
fn empty(table: &ReadTable, records: usize) -> Finding {
    let message = format!("this table is empty, but the catalogue has {records} {}", table.kind.folder());
    Finding::error("empty-document", Place::whole(table.file.clone()), message)
        .expected("a first line with the names of keys, and a row a record below it")
        .help("save it from the spreadsheet again, or leave it out where nothing in it changes")
}

fn texts(cells: &BTreeMap<String, CellValue>) -> BTreeMap<String, String> {
    let word = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    cells
        .iter()
        .map(|(path, cell)| (path.clone(), word(&cell.text)))
        .filter(|(_, text)| !text.is_empty())
        .collect()
}

/// What a record must say once it is changed: what it said, but for the cells that differ.
fn expected(cells: &BTreeMap<String, CellValue>, change: &RecordChange) -> BTreeMap<String, String> {
    let mut cells = cells.clone();
    for key in &change.keys {
        match &key.is {
            Some(text) => {
                let cell = CellValue { text: text.clone(), number: None, is_truth: false };
                cells.insert(key.column.clone(), cell);
            }
            None => drop(cells.remove(&key.column)),
        }
    }
    texts(&cells)
}
