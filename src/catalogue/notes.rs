//! Notes and fonts: which file belongs to what.

use super::model::{FontFile, Note, NoteAbout};
use super::names::Names;
use super::record_kind::RecordKind;
use crate::diagnostics::{Finding, Findings};
use crate::records::{TextFile, nearest};
use crate::source::{FilePath, Place};
use std::sync::Arc;

/// The notes whose record or chapter there is.
pub(super) fn notes(files: &[TextFile], names: &Names, findings: &mut Findings) -> Vec<Note> {
    files.iter().filter_map(|file| note(file, names, findings)).collect()
}

fn note(file: &TextFile, names: &Names, findings: &mut Findings) -> Option<Note> {
    let path = file.file.path.strip_prefix("notes/").unwrap_or(&file.file.path);
    let stem = path.rsplit_once('.').map_or(path, |(stem, _)| stem);
    let place = Place::whole(file.file.clone());
    let about = match stem.strip_prefix("chapters/") {
        Some(chapter) => NoteAbout::Chapter(chapter.to_owned()),
        None if names.kind_of(stem) == Some(RecordKind::Procedure) => {
            let message = "a procedure has no page that could show this note";
            let finding = Finding::error("unknown-note", place, message);
            findings.push(finding.help("write it for the fittings that take the procedure, or as a chapter"));
            return None;
        }
        None if names.has_record(stem) => NoteAbout::Record(stem.to_owned()),
        None => {
            let message = format!("there is no record `{stem}` for this note");
            let finding = Finding::error("unknown-note", place, message);
            findings.push(match nearest(stem, names.records()) {
                Some(near) => finding.help(format!("did you mean `notes/{near}.md`?")),
                None => finding.help("name it after an id or number, or put it into `notes/chapters`"),
            });
            return None;
        }
    };
    Some(Note { about, markdown: file.text.clone(), place })
}

/// The font files.
pub(super) fn fonts(files: Vec<(FilePath, Arc<[u8]>)>) -> Vec<FontFile> {
    files.into_iter().map(|(file, bytes)| FontFile { bytes, place: Place::whole(file) }).collect()
}
