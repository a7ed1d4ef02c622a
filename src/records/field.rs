//! Values with their places, and the reader that gathers faults field by field.

use super::correction::after_decimal_comma;
use super::node::{Content, Entry, Node};
use crate::diagnostics::{Finding, Findings, nearest, shortened};
use crate::source::{FilePath, Place};
use schemars::JsonSchema;
use std::collections::BTreeMap;

/// A value, the dotted path of its field, and where it stands.
#[derive(Debug, Clone)]
pub struct Field<T> {
    /// The value.
    pub value: T,
    /// The field, such as `stated.section_mm2` or `parts.2`.
    pub path: String,
    /// Where the value stands.
    pub place: Place,
}

/// A kind of value that can be read from a node.
pub trait Read: Sized + JsonSchema {
    /// The value; where it is faulty, its faults go to the reader and the answer is `None`.
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self>;
}

/// A key that a mapping may have.
#[derive(Debug, Clone, Copy)]
pub struct Key {
    /// The key as written in records.
    pub name: &'static str,
    /// Whether it may be left out.
    pub need: Need,
}

/// Whether a key may be left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Need {
    /// It must be there.
    Required,
    /// It may be left out.
    Optional,
    /// Exactly one of all such keys of a mapping is there: that is for the schema alone; the catalogue checks it.
    Either,
}

/// Reads one record and gathers its faults.
#[derive(Debug)]
pub struct Reader<'a> {
    file: &'a FilePath,
    lines: &'a [&'a str],
    record: Option<String>,
    path: String,
    findings: &'a mut Findings,
    faults: usize,
    is_row: bool,
}

impl<'a> Reader<'a> {
    /// A reader of one record; `record` is the id that its findings carry.
    #[must_use]
    pub fn new(file: &'a FilePath, record: Option<String>, findings: &'a mut Findings) -> Self {
        Self { file, lines: &[], record, path: String::new(), findings, faults: 0, is_row: false }
    }

    /// The same reader with the lines of the file, in which the letters of texts are found.
    #[must_use]
    pub fn in_lines(self, lines: &'a [&'a str]) -> Self {
        Self { lines, ..self }
    }

    /// The same reader of a row of a table, whose keys are its columns.
    #[must_use]
    pub fn in_row(self) -> Self {
        Self { is_row: true, ..self }
    }

    /// Whether it reads a row of a table.
    #[must_use]
    pub fn is_row(&self) -> bool {
        self.is_row
    }

    /// The file that the record stands in.
    #[must_use]
    pub fn file(&self) -> &'a FilePath {
        self.file
    }

    /// The lines of that file.
    #[must_use]
    pub fn lines(&self) -> &'a [&'a str] {
        self.lines
    }

    /// How many faults were found so far.
    #[must_use]
    pub fn faults(&self) -> usize {
        self.faults
    }

    /// Adds a fault at a node, about the field that is being read.
    pub fn fault(
        &mut self,
        code: &'static str,
        node: &Node,
        message: impl Into<String>,
        more: impl FnOnce(Finding) -> Finding,
    ) {
        let place = node.place(self.file);
        let path = self.path.clone();
        self.push(more(Finding::error(code, place, message)), &path);
    }

    /// The value of a key; `None` where it is absent, empty or faulty.
    pub fn field<T: Read>(&mut self, entries: &[Entry], key: &str) -> Option<Field<T>> {
        self.value(entries.iter().find(|entry| entry.key == key)?)
    }

    /// The value of one entry; `None` where it is empty or faulty.
    pub fn value<T: Read>(&mut self, entry: &Entry) -> Option<Field<T>> {
        if entry.value.is_empty() {
            return None;
        }
        self.within(&entry.key, |reader| reader.here(&entry.value))
    }

    /// A node's value with its place and the present path.
    pub fn here<T: Read>(&mut self, node: &Node) -> Option<Field<T>> {
        let value = T::read(node, self)?;
        Some(Field { value, path: self.path.clone(), place: node.place(self.file) })
    }

    /// The items of a list; the faulty ones are left out.
    pub fn items<T: Read>(&mut self, items: &[Node]) -> Vec<Field<T>> {
        items
            .iter()
            .enumerate()
            .filter_map(|(index, item)| self.within(&index.to_string(), |reader| reader.here(item)))
            .collect()
    }

    /// Reads with one step added to the path.
    pub fn within<T>(&mut self, step: &str, read: impl FnOnce(&mut Self) -> T) -> T {
        let length = self.path.len();
        self.path = self.path_of(step);
        let result = read(self);
        self.path.truncate(length);
        result
    }

    /// The entries of a mapping, after telling of doubled, unknown and missing keys.
    pub fn mapping<'n>(&mut self, node: &'n Node, called: &str, keys: &[Key]) -> Option<&'n [Entry]> {
        let Content::Map(entries) = &node.content else {
            let names: Vec<&str> = keys.iter().map(|key| key.name).collect();
            self.fault("wrong-type", node, format!("{called} is a mapping of keys to values"), |finding| {
                finding.found(node.described()).expected(format!("keys such as {}", listed(&names)))
            });
            return None;
        };
        self.doubled_keys(entries);
        self.unknown_keys(entries, called, keys);
        self.missing_keys(node, entries, called, keys);
        Some(entries)
    }

    /// The one key that a mapping has of several, with the mapping's entries.
    pub fn only_entry<'n>(
        &mut self,
        node: &'n Node,
        called: &str,
        keys: &[&'static str],
    ) -> Option<(&'static str, &'n [Entry])> {
        let found: Vec<&str> = node.entries().iter().map(|entry| entry.key.as_str()).collect();
        let known: Vec<&'static str> = keys.iter().copied().filter(|key| found.contains(key)).collect();
        let is_map = matches!(node.content, Content::Map(_));
        if is_map && known.len() != 1 && found.len() != 1 {
            self.fault("not-exactly-one", node, format!("{called} has exactly one of its keys"), |finding| {
                let found = if found.is_empty() { "none".to_owned() } else { shortened(&listed(&found)) };
                finding.found(found).expected(format!("one of {}", listed(keys)))
            });
            return None;
        }
        let names: Vec<Key> = keys.iter().map(|name| Key { name, need: Need::Optional }).collect();
        let entries = self.mapping(node, called, &names)?;
        Some((*known.first()?, entries))
    }

    /// Tells of keys that stand twice in one mapping.
    pub fn doubled_keys(&mut self, entries: &[Entry]) {
        let mut seen: BTreeMap<&str, &Entry> = BTreeMap::new();
        for entry in entries {
            let Some(first) = seen.get(entry.key.as_str()) else {
                seen.insert(&entry.key, entry);
                continue;
            };
            let next_record = self.path.is_empty() && ["id", "number"].contains(&entry.key.as_str());
            let help = match next_record {
                true => {
                    "if another record starts here, put a line `---` above it; if not, keep only one of the two"
                }
                false => "keep only one of the two",
            };
            let first = Place::at(self.file.clone(), first.line, first.column);
            let finding = Finding::error("duplicate-key", self.key_place(entry), "this key is there twice")
                .help(help)
                .related(first, "it is already here");
            let path = self.path_of(&entry.key);
            self.push(finding, &path);
            if next_record {
                return;
            }
        }
    }

    fn unknown_keys(&mut self, entries: &[Entry], called: &str, keys: &[Key]) {
        let names: Vec<&str> = keys.iter().map(|key| key.name).collect();
        for (index, entry) in entries.iter().enumerate() {
            if names.contains(&entry.key.as_str()) {
                continue;
            }
            let message = format!("{called} has no key `{}`", shortened(&entry.key));
            let finding = Finding::error("unknown-key", self.key_place(entry), message);
            let before = index.checked_sub(1).map(|index| &entries[index].value);
            if let Some(meant) = after_decimal_comma(&entry.key, &entry.value, before) {
                let help = format!("a comma ends a value inside braces: write {meant} with a decimal point");
                let path = self.path_of(&entry.key);
                self.push(finding.help(help), &path);
                continue;
            }
            let finding = match nearest(&entry.key, names.iter().copied()) {
                Some(name) => finding.help(format!("did you mean `{name}`?")),
                None => finding.help(format!("the keys of {called} are {}", listed(&names))),
            };
            let path = self.path_of(&entry.key);
            self.push(finding, &path);
        }
    }

    fn missing_keys(&mut self, node: &Node, entries: &[Entry], called: &str, keys: &[Key]) {
        for key in keys.iter().filter(|key| key.need == Need::Required) {
            let entry = entries.iter().find(|entry| entry.key == key.name);
            let (place, message) = match entry {
                Some(entry) if !entry.value.is_empty() => continue,
                Some(entry) => (self.key_place(entry), format!("`{}` has no value", key.name)),
                None => (node.place(self.file), format!("{called} must have the key `{}`", key.name)),
            };
            let help = match self.is_row {
                true => format!("fill in the cell in column `{}`", key.name),
                false => format!("add `{}: …`", key.name),
            };
            let finding = Finding::error("missing-key", place, message).help(help);
            let path = self.path_of(key.name);
            self.push(finding, &path);
        }
    }

    fn key_place(&self, entry: &Entry) -> Place {
        Place::at(self.file.clone(), entry.line, entry.column)
    }

    fn path_of(&self, step: &str) -> String {
        if self.path.is_empty() { step.to_owned() } else { format!("{}.{step}", self.path) }
    }

    fn push(&mut self, mut finding: Finding, path: &str) {
        self.faults += 1;
        finding.record.clone_from(&self.record);
        finding.field = (!path.is_empty()).then(|| path.to_owned());
        self.findings.push(finding);
    }
}

/// How many entries a list may have. Nothing on a fitting needs more, and nobody reads more.
pub(super) const LONGEST_LIST: usize = 200;

/// Words in backquotes with commas between.
pub(super) fn listed(words: &[&str]) -> String {
    words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ")
}

impl<T: Read> Read for Vec<Field<T>> {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        if let Content::List(items) = &node.content {
            if items.len() <= LONGEST_LIST {
                return Some(reader.items(items));
            }
            reader.fault("list-too-long", node, "this list is too long", |finding| {
                finding.found(format!("{} entries", items.len())).expected(format!("at most {LONGEST_LIST}"))
            });
            return None;
        }
        reader.fault("wrong-type", node, "a list is expected here", |finding| {
            finding.found(node.described()).help("put `[ ]` round it, or one line with `- ` for each item")
        });
        None
    }
}

impl<T: JsonSchema> JsonSchema for Field<T> {
    fn inline_schema() -> bool {
        T::inline_schema()
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        T::schema_name()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        T::json_schema(generator)
    }
}
