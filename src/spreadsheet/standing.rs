//! Records where they stand in their files.

use super::cells::{CellValue, cells};
use super::kind::SheetKind;
use crate::records::nodes;
use crate::source::FilePath;
use std::collections::BTreeMap;

/// A record where it stands.
pub(super) struct Standing {
    pub(super) file: FilePath,
    /// Which of the file's records it is.
    pub(super) nth: usize,
    pub(super) cells: BTreeMap<String, CellValue>,
}

/// The records of a kind by number or id; of one that is there twice, the first.
pub(super) fn standing(texts: &[(FilePath, String)], kind: SheetKind) -> BTreeMap<String, Standing> {
    let mut standing = BTreeMap::new();
    for (file, text) in texts {
        for (nth, node) in nodes(text.trim_start_matches('\u{feff}')).iter().enumerate() {
            if let Some(id) = node.get(kind.id()).and_then(|id| id.written()) {
                let here = || Standing { file: file.clone(), nth, cells: cells(node).into_iter().collect() };
                standing.entry(id.to_owned()).or_insert_with(here);
            }
        }
    }
    standing
}
