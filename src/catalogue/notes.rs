//! Notes and fonts: which file belongs to what.

use super::model::{FontFile, InstalledFile, Note, NoteAbout};
use super::names::Names;
use super::record_kind::RecordKind;
use crate::diagnostics::{Finding, Findings, KnownNames};
use crate::records::TextFile;
use crate::source::{FilePath, Place};
use std::cell::OnceCell;
use std::sync::Arc;

/// The notes whose record or chapter there is.
pub(super) fn notes(files: &[TextFile], names: &Names, findings: &mut Findings) -> Vec<Note> {
    let known = OnceCell::new();
    files.iter().filter_map(|file| note(file, names, &known, findings)).collect()
}

fn note(
    file: &TextFile,
    names: &Names,
    known: &OnceCell<KnownNames>,
    findings: &mut Findings,
) -> Option<Note> {
    let path = file.file.path.strip_prefix("notes/").unwrap_or(&file.file.path);
    let stem = path.rsplit_once('.').map_or(path, |(stem, _)| stem);
    let place = Place::whole(file.file.clone());
    let about = match stem.strip_prefix("chapters/") {
        Some(chapter) => NoteAbout::Chapter(chapter.to_owned()),
        None if has_no_page(names.kind_of(stem)) => {
            let kind = names.kind_of(stem).map_or("record", RecordKind::word);
            let message = format!("{kind} {stem} has no page that could show this note");
            let finding = Finding::error("unknown-note", place, message);
            findings.push(finding.help("write it for the fittings that it is about, or as a chapter"));
            return None;
        }
        None if names.has_record(stem) => NoteAbout::Record(stem.to_owned()),
        None => {
            let message = format!("there is no record `{stem}` for this note");
            let finding = Finding::error("unknown-note", place, message);
            let known = known.get_or_init(|| KnownNames::new(names.records()));
            findings.push(match known.nearest(stem) {
                Some(near) => finding.help(format!("did you mean `notes/{near}.md`?")),
                None => finding.help("name it after an id or number, or put it into `notes/chapters`"),
            });
            return None;
        }
    };
    Some(Note { about, markdown: file.text.clone(), place })
}

/// Of holders there are call-in lists alone, and an edition's words are those that were printed.
fn has_no_page(kind: Option<RecordKind>) -> bool {
    matches!(kind, Some(RecordKind::Procedure | RecordKind::Holder | RecordKind::Edition))
}

/// The font files.
pub(super) fn fonts(files: Vec<(FilePath, Arc<[u8]>)>) -> Vec<FontFile> {
    files.into_iter().map(|(file, bytes)| FontFile { bytes, place: Place::whole(file) }).collect()
}

/// The lists of installed fittings.
pub(super) fn installed(files: Vec<(FilePath, Arc<[u8]>)>) -> Vec<InstalledFile> {
    files.into_iter().map(|(file, bytes)| InstalledFile { file, bytes }).collect()
}
