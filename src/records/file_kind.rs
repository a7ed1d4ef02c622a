//! What a file of a catalogue is, by its path.

use crate::diagnostics::nearest;
use crate::diagnostics::{Finding, Severity};
use crate::source::{FilePath, Place};

/// What a file is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum FileKind {
    Settings,
    Material,
    Conductor,
    Part,
    Fitting,
    Notice,
    Holder,
    Procedure,
    Register,
    Note,
    Font,
    /// A list of installed fittings.
    Installed,
    /// Nothing of ours, and nothing to be said about it.
    Ignored,
    /// It would not be read where it is, or as it is called.
    Misplaced(Misplaced),
}

/// Why a file would not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Misplaced {
    severity: Severity,
    code: &'static str,
    message: String,
    help: String,
}

impl Misplaced {
    pub(super) fn finding(&self, file: &FilePath) -> Finding {
        let place = Place::whole(file.clone());
        let finding = match self.severity {
            Severity::Error => Finding::error(self.code, place, self.message.as_str()),
            _ => Finding::warning(self.code, place, self.message.as_str()),
        };
        finding.help(self.help.as_str())
    }
}

const FOLDERS: [(&str, FileKind); 8] = [
    ("materials", FileKind::Material),
    ("conductors", FileKind::Conductor),
    ("parts", FileKind::Part),
    ("fittings", FileKind::Fitting),
    ("notices", FileKind::Notice),
    ("holders", FileKind::Holder),
    ("procedures", FileKind::Procedure),
    ("register", FileKind::Register),
];

/// Where `import` lists its files while they take their places. It is there at no other time, unless one was cut off.
pub const CUT_OFF: &str = ".importing/placing";

/// What the file at a path below the catalogue folder is.
pub(super) fn file_kind(path: &str) -> FileKind {
    let (folder, name) = path.split_once('/').unwrap_or(("", path));
    let ending = name.rsplit_once('.').map_or("", |(_, ending)| ending);
    if path == CUT_OFF {
        return misplaced(
            Severity::Error,
            "import-cut-off",
            "an `import` was cut off: some files hold what it wrote, others what was there before",
            "run the same `import` again: it first puts the rest in place. Where one is at work now, wait for it",
        );
    }
    if is_nobodys(path) {
        return FileKind::Ignored;
    }
    if path == "catalogue.yaml" {
        return FileKind::Settings;
    }
    match (folder, ending.to_ascii_lowercase().as_str()) {
        ("notes", "md") => note(name),
        ("fonts", "ttf" | "otf") => FileKind::Font,
        ("installed", "csv") => FileKind::Installed,
        ("installed", _) => misplaced(
            Severity::Error,
            "file-ending",
            "lists of installed fittings are read from `.csv` files only",
            "save the list from the spreadsheet as CSV, in UTF-8",
        ),
        ("fonts", "txt" | "md" | "") | ("schemas", "json") => FileKind::Ignored,
        (_, "yaml" | "yml") => record(folder, name, ending),
        _ => unknown(path),
    }
}

/// Whether records are read from the file at a path, as those of a folder.
#[must_use]
pub fn holds_records(path: &str, folder: &str) -> bool {
    FOLDERS.iter().any(|(name, kind)| *name == folder && *kind == file_kind(path))
}

/// Hidden files, leavings of editors and systems, and readmes.
fn is_nobodys(path: &str) -> bool {
    let name = path.rsplit('/').next().unwrap_or(path);
    path.split('/').any(|part| part.starts_with('.'))
        || name.ends_with('~')
        || ["thumbs.db", "desktop.ini"].contains(&name.to_lowercase().as_str())
        || !path.starts_with("notes/") && name.to_uppercase().starts_with("README")
        || !path.contains('/') && ["LICENSE", "LICENCE"].iter().any(|start| name.starts_with(start))
}

fn note(name: &str) -> FileKind {
    match name.split_once('/') {
        None => FileKind::Note,
        Some(("chapters", chapter)) if !chapter.contains('/') => FileKind::Note,
        Some(_) => misplaced(
            Severity::Error,
            "unknown-file",
            "this note belongs to no record or chapter",
            "put it at `notes/<id or number>.md` or `notes/chapters/NN-title.md`",
        ),
    }
}

fn record(folder: &str, name: &str, ending: &str) -> FileKind {
    if ending != "yaml" {
        let help = format!("rename it to `{}yaml`", &name[..name.len() - ending.len()]);
        return misplaced(Severity::Error, "file-ending", "records are read from `.yaml` files only", &help);
    }
    if let Some((_, kind)) = FOLDERS.iter().find(|(known, _)| *known == folder) {
        return kind.clone();
    }
    let known = FOLDERS.iter().map(|(name, _)| *name);
    let help = match nearest(folder, known).filter(|_| !folder.is_empty()) {
        Some(known) => format!("did you mean the folder `{known}`?"),
        None if folder.is_empty() => "put it into the folder of its kind, such as `parts`".to_owned(),
        None => format!("records lie in {}", FOLDERS.map(|(name, _)| format!("`{name}`")).join(", ")),
    };
    misplaced(Severity::Error, "unknown-file", "no records are read from here", &help)
}

fn unknown(path: &str) -> FileKind {
    let help = match path.split('/').next() {
        Some("fonts") => "fonts are `.ttf` and `.otf` files",
        Some("notes") => "notes are `.md` files",
        _ if path.to_ascii_lowercase().ends_with(".csv") => {
            "lists of installed fittings are `.csv` files in `installed`"
        }
        _ => "records are `.yaml` files, notes are `.md` files in `notes`",
    };
    misplaced(Severity::Warning, "unknown-file", "this file is not read", help)
}

fn misplaced(severity: Severity, code: &'static str, message: &str, help: &str) -> FileKind {
    FileKind::Misplaced(Misplaced { severity, code, message: message.to_owned(), help: help.to_owned() })
}
