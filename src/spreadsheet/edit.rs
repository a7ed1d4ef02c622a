//! Changing single values in the text of a record, while all else stays as it is.

use super::cells::{CellValue, below, items};
use super::columns::Columns;
use super::lines::{Edit, behind_line, line_start};
use super::plain::{paragraph, scalar};
use super::take_out::{TakenOut, entries_out, lines_out};
use super::value::{Branch, Tree, Value};
use crate::records::{Laid, LaidShape, Quoting};
use std::collections::BTreeMap;
use std::ops::Range;

/// A record in the text of its file.
pub(super) struct Editing<'a> {
    text: &'a str,
    columns: &'a Columns,
    /// What the record says, cell by cell.
    cells: &'a BTreeMap<String, CellValue>,
    edits: Vec<Edit>,
    /// Comments that stay where a value goes, each with its column.
    comments: Vec<(String, String)>,
    /// Columns that can't be changed in place.
    failed: Vec<String>,
}

/// What a tree of changes makes of a record.
pub(super) struct Edits {
    /// The edits of its text.
    pub(super) edits: Vec<Edit>,
    /// The comments that stay where a value goes, each with its column.
    pub(super) comments: Vec<(String, String)>,
}

/// The edits that make a tree of changes of a record.
///
/// # Errors
/// The column that can't be changed in place.
pub(super) fn edits(
    text: &str,
    record: &Laid,
    tree: &Tree,
    columns: &Columns,
    cells: &BTreeMap<String, CellValue>,
) -> Result<Edits, String> {
    let (edits, comments, failed) = (Vec::new(), Vec::new(), Vec::new());
    let mut editing = Editing { text, columns, cells, edits, comments, failed };
    editing.walk("", record, tree, false);
    match editing.failed.pop() {
        None => Ok(Edits { edits: editing.edits, comments: editing.comments }),
        Some(column) => Err(column),
    }
}

impl Editing<'_> {
    fn walk(&mut self, path: &str, laid: &Laid, tree: &Tree, in_brackets: bool) {
        let in_brackets = in_brackets || laid.is_in_brackets(self.text);
        for (here, step, branch) in tree.ordered(path, self.columns) {
            let nth = match &laid.shape {
                LaidShape::Map(entries) => entries.iter().position(|(key, _)| key.is(step)),
                LaidShape::List(items) => step
                    .parse::<usize>()
                    .ok()
                    .and_then(|nth| nth.checked_sub(1))
                    .filter(|nth| *nth < items.len()),
                _ => return self.failed.push(here),
            };
            match nth {
                Some(nth) if self.is_cleared(&here, branch) => self.take_out(laid, nth, in_brackets, &here),
                Some(nth) => self.change(&here, value_of(laid, nth), branch, in_brackets),
                None => {
                    if let Some(value) = Value::of_branch(&here, branch, self.columns) {
                        self.put_in(laid, &here, step, &value, in_brackets);
                    }
                }
            }
        }
    }

    /// Whether all that the record says there is cleared, and nothing set.
    fn is_cleared(&self, here: &str, branch: &Branch) -> bool {
        let start = format!("{here}.");
        let is_there = |path: &str| path == here || path.starts_with(&start);
        let mut said = self.cells.keys().filter(|path| is_there(path));
        !branch.sets() && said.all(|path| is_cleared(path.strip_prefix(here).unwrap_or_default(), branch))
    }

    fn change(&mut self, here: &str, value: &Laid, branch: &Branch, in_brackets: bool) {
        match (&branch.own, &value.shape) {
            (Some(Some(text)), _) if branch.below.is_empty() => self.replace(here, value, text, in_brackets),
            (None, LaidShape::Map(_) | LaidShape::List(_)) => {
                self.walk(here, value, &branch.below, in_brackets);
            }
            // A single value becomes one with sides or ends.
            (None | Some(None), LaidShape::Scalar(_, quoting)) if *quoting != Quoting::Block => {
                match Value::of_branch(here, branch, self.columns) {
                    Some(new) => self.edits.push((value.start..value.end, new.in_line(in_brackets))),
                    None => self.failed.push(here.to_owned()),
                }
            }
            _ => self.failed.push(here.to_owned()),
        }
    }

    fn replace(&mut self, here: &str, value: &Laid, text: &str, in_brackets: bool) {
        match &value.shape {
            LaidShape::List(old) if self.columns.is_list(here) => {
                self.replace_list(here, value, old, text, in_brackets)
            }
            LaidShape::Scalar(_, Quoting::Block) => self.replace_paragraph(value, text),
            LaidShape::Scalar(_, quoting) if !self.columns.is_list(here) => {
                let new = scalar(text, *quoting, in_brackets);
                // Nothing stands there: a space parts it from the colon.
                let space = if value.start == value.end { " " } else { "" };
                self.edits.push((value.start..value.end, format!("{space}{new}")));
            }
            _ => self.failed.push(here.to_owned()),
        }
    }

    fn replace_paragraph(&mut self, value: &Laid, text: &str) {
        let old = &self.text[value.start..value.end];
        let indent = old.lines().skip(1).find(|line| !line.trim().is_empty());
        let indent = indent.map_or(2, |line| line.len() - line.trim_start().len());
        let new = match text.contains('\n') {
            true => scalar(text, Quoting::Double, false),
            false => paragraph(text, indent, self.line_end()),
        };
        self.edits.push((value.start..value.end, new));
    }

    /// Entry by entry where there are as many, else what differs between those that stay.
    fn replace_list(&mut self, here: &str, value: &Laid, old: &[Laid], text: &str, in_brackets: bool) {
        let was = self.cells.get(here).map(|cell| items(here, &cell.text)).unwrap_or_default();
        let is = items(here, text);
        let is_flow = value.is_in_brackets(self.text);
        if was.len() != old.len() || old.iter().any(|item| holds_several(here, item)) {
            // An entry with a comma in it looks like two.
            return match is_flow && old.is_empty() {
                true => self.edits.push((
                    value.start..value.end,
                    Value::of_cell(here, text, self.columns).in_line(in_brackets),
                )),
                false => self.failed.push(here.to_owned()),
            };
        }
        for Gap { gone, come } in gaps(&was, &is) {
            let both = gone.len().min(come.len());
            for (old, new) in old[gone.clone()].iter().zip(&is[come.clone()]) {
                self.replace_item(here, old, new, is_flow || in_brackets);
            }
            if gone.len() > both {
                self.take_out_items(value, old, gone.start + both..gone.end, here);
            }
            for new in &is[come.start + both..come.end] {
                let new = Value::of_item(here, new).in_line(is_flow || in_brackets);
                self.put_in_item(value, old, gone.start + both, &new, is_flow);
            }
        }
    }

    fn replace_item(&mut self, here: &str, old: &Laid, new: &str, in_brackets: bool) {
        let new = match (&old.shape, Value::of_item(here, new)) {
            (LaidShape::Map(_), Value::Map(new)) if self.replace_both(old, &new) => return,
            (LaidShape::Scalar(_, Quoting::Block), Value::Text(text)) => {
                return self.replace_paragraph(old, &text);
            }
            (LaidShape::Scalar(_, quoting), Value::Text(text)) => scalar(&text, *quoting, in_brackets),
            (_, value) => value.in_line(in_brackets),
        };
        self.edits.push((old.start..old.end, new));
    }

    /// Changes the values of an entry that has both keys; whether it has.
    fn replace_both(&mut self, old: &Laid, new: &[(String, Value)]) -> bool {
        let in_brackets = old.is_in_brackets(self.text);
        let edit = |(key, value): &(String, Value)| match (old.get(key), value) {
            (Some(Laid { start, end, shape: LaidShape::Scalar(was, quoting) }), Value::Text(is)) => {
                Some((was != is).then(|| (*start..*end, scalar(is, *quoting, in_brackets))))
            }
            _ => None,
        };
        let edits: Option<Vec<Option<Edit>>> = new.iter().map(edit).collect();
        let is_whole = edits.is_some();
        self.edits.extend(edits.into_iter().flatten().flatten());
        is_whole
    }

    fn take_out(&mut self, laid: &Laid, nth: usize, in_brackets: bool, here: &str) {
        let is_flow = laid.is_in_brackets(self.text);
        match &laid.shape {
            LaidShape::List(items) => self.take_out_items(laid, items, nth..nth + 1, here),
            LaidShape::Map(entries) if is_flow => {
                let spans: Vec<Range<usize>> =
                    entries.iter().map(|entry| entry.0.start..end_of(entry)).collect();
                let out = entries_out(self.text, laid.start..laid.end, &spans, nth..nth + 1);
                self.taken_out(out, here);
            }
            LaidShape::Map(entries) if !in_brackets => {
                let start = entries[nth].0.start;
                // The first key of an entry of a list stands behind its dash.
                if !self.text[line_start(self.text, start)..start].trim().is_empty() {
                    return self.failed.push(here.to_owned());
                }
                self.taken_out(lines_out(self.text, start..end_of(&entries[nth])), here);
            }
            _ => self.failed.push(here.to_owned()),
        }
    }

    fn take_out_items(&mut self, list: &Laid, items: &[Laid], gone: Range<usize>, here: &str) {
        let spans: Vec<Range<usize>> = items.iter().map(|item| item.start..item.end).collect();
        let out = match spans.get(gone.clone()) {
            Some(lines) if !lines.is_empty() && !list.is_in_brackets(self.text) => {
                lines_out(self.text, lines[0].start..lines[lines.len() - 1].end)
            }
            _ => entries_out(self.text, list.start..list.end, &spans, gone),
        };
        self.taken_out(out, here);
    }

    fn taken_out(&mut self, out: TakenOut, here: &str) {
        self.edits.extend(out.edits);
        self.comments.extend(out.comments.into_iter().map(|comment| (here.to_owned(), comment)));
    }

    /// Puts an entry into a list, behind so many.
    fn put_in_item(&mut self, list: &Laid, items: &[Laid], behind: usize, new: &str, is_flow: bool) {
        let before = behind.checked_sub(1).and_then(|nth| items.get(nth));
        match (is_flow, before) {
            (true, Some(before)) => self.edits.push((before.end..before.end, format!(", {new}"))),
            (true, None) => {
                let space = if items.is_empty() { "" } else { ", " };
                self.edits.push((list.start + 1..list.start + 1, format!("{new}{space}")));
            }
            (false, before) => {
                let start = line_start(self.text, items.first().map_or(list.start, |first| first.start));
                let dash = self.text[start..].find('-').unwrap_or(0);
                let line = format!("{}- {new}", " ".repeat(dash));
                match before {
                    Some(before) => self.put_in_line(before.end, &line),
                    None => self.edits.push((start..start, format!("{line}{}", self.line_end()))),
                }
            }
        }
    }

    /// Puts a key into a mapping, or an entry at the end of a list of mappings.
    fn put_in(&mut self, laid: &Laid, here: &str, step: &str, value: &Value, in_brackets: bool) {
        let is_flow = laid.is_in_brackets(self.text);
        let entries = match &laid.shape {
            LaidShape::Map(entries) => entries,
            LaidShape::List(items) => {
                return self.put_in_item(laid, items, items.len(), &value.in_line(true), is_flow);
            }
            _ => return self.failed.push(here.to_owned()),
        };
        let new = format!("{step}: {}", value.in_line(is_flow || in_brackets));
        let place = self.columns.place(here);
        let parent = here.strip_suffix(step).unwrap_or_default().trim_end_matches('.');
        let comes_before = |key: &Laid| match &key.shape {
            LaidShape::Scalar(key, _) => self.columns.place(&below(parent, key)) < place,
            _ => false,
        };
        let before = entries
            .iter()
            .rfind(|(key, _)| comes_before(key))
            .or_else(|| entries.first().filter(|_| !is_flow));
        match (before, entries.first()) {
            (Some(before), _) if is_flow => {
                self.edits.push((end_of(before)..end_of(before), format!(", {new}")));
            }
            (Some(before), Some((first, _))) => {
                let indent = first.start - line_start(self.text, first.start);
                let indent = self.text[line_start(self.text, first.start)..].chars().take(indent).count();
                self.put_in_line(end_of(before), &format!("{}{new}", " ".repeat(indent)));
            }
            (None, Some((first, _))) => self.edits.push((first.start..first.start, format!("{new}, "))),
            _ => self.edits.push((laid.start..laid.end, format!("{{ {new} }}"))),
        }
    }

    /// Puts a line in below the one that holds a place.
    fn put_in_line(&mut self, at: usize, line: &str) {
        let at = behind_line(self.text, at);
        let end = self.line_end();
        let new = match self.text[..at].ends_with('\n') || at == 0 {
            true => format!("{line}{end}"),
            false => format!("{end}{line}"),
        };
        self.edits.push((at..at, new));
    }

    /// How lines end in this file.
    fn line_end(&self) -> &'static str {
        if self.text.contains("\r\n") { "\r\n" } else { "\n" }
    }
}

/// Whether an entry of a list in one cell would be taken for several.
fn holds_several(path: &str, item: &Laid) -> bool {
    matches!(&item.shape, LaidShape::Scalar(text, quoting) if *quoting != Quoting::Block && items(path, text).len() > 1)
}

/// What stands between entries that two lists have in common.
struct Gap {
    gone: Range<usize>,
    come: Range<usize>,
}

/// The gaps between the longest row of entries that both lists have, in order.
fn gaps(was: &[&str], is: &[&str]) -> Vec<Gap> {
    // How many entries the rests behind two places have in common.
    let mut common = vec![vec![0_usize; is.len() + 1]; was.len() + 1];
    for (a, one) in was.iter().enumerate().rev() {
        for (b, other) in is.iter().enumerate().rev() {
            common[a][b] = match one == other {
                true => common[a + 1][b + 1] + 1,
                false => common[a + 1][b].max(common[a][b + 1]),
            };
        }
    }
    let (mut gaps, mut from, mut at) = (Vec::new(), (0, 0), (0, 0));
    while at.0 < was.len() && at.1 < is.len() {
        if was[at.0] == is[at.1] {
            gaps.push(Gap { gone: from.0..at.0, come: from.1..at.1 });
            at = (at.0 + 1, at.1 + 1);
            from = at;
        } else if common[at.0 + 1][at.1] >= common[at.0][at.1 + 1] {
            at.0 += 1;
        } else {
            at.1 += 1;
        }
    }
    gaps.push(Gap { gone: from.0..was.len(), come: from.1..is.len() });
    gaps
}

/// Whether what a record says at a place below a branch is cleared by it.
fn is_cleared(rest: &str, branch: &Branch) -> bool {
    match rest.strip_prefix('.') {
        None => branch.own == Some(None),
        Some(rest) => {
            let (step, after) = rest.split_at(rest.find('.').unwrap_or(rest.len()));
            branch.below.get(step).is_some_and(|branch| is_cleared(after, branch))
        }
    }
}

fn value_of(laid: &Laid, nth: usize) -> &Laid {
    match &laid.shape {
        LaidShape::Map(entries) => &entries[nth].1,
        LaidShape::List(items) => &items[nth],
        _ => laid,
    }
}

/// The end of an entry; an empty value ends with its key.
fn end_of((key, value): &(Laid, Laid)) -> usize {
    if value.start == value.end { key.end } else { value.end.max(key.end) }
}
