//! Reading a catalogue folder: every file by the folder it lies in.

use super::document::{Document, Seen, read_documents};
use super::file_kind::{FileKind, file_kind};
use super::kinds::{
    CatalogueRecord, ConductorRecord, EditionRecord, FittingRecord, HolderRecord, MaterialRecord,
    NoticeRecord, PartRecord, ProcedureRecord, read_edition,
};
use super::lost::Lost;
use super::text::{decode, forbidden, utf8};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::source::{FilePath, Folder, Place, World, WorldError};
use rayon::prelude::*;
use std::sync::Arc;

/// A catalogue folder as written: records of each kind in the order of file and line, sound or not.
#[derive(Debug, Default)]
pub struct Records {
    /// `catalogue.yaml`, where it could be read.
    pub settings: Option<Document<CatalogueRecord>>,
    /// Materials of the catalogue's own.
    pub materials: Vec<Document<MaterialRecord>>,
    /// Conductors.
    pub conductors: Vec<Document<ConductorRecord>>,
    /// Parts.
    pub parts: Vec<Document<PartRecord>>,
    /// Fittings.
    pub fittings: Vec<Document<FittingRecord>>,
    /// Notices.
    pub notices: Vec<Document<NoticeRecord>>,
    /// Holders.
    pub holders: Vec<Document<HolderRecord>>,
    /// Procedures.
    pub procedures: Vec<Document<ProcedureRecord>>,
    /// Markdown files.
    pub notes: Vec<TextFile>,
    /// Font files.
    pub fonts: Vec<(FilePath, Arc<[u8]>)>,
    /// Lists of installed fittings, as bytes: what asks for them reads them.
    pub installed: Vec<(FilePath, Arc<[u8]>)>,
    /// Editions on the register, in the order of their files' names.
    pub editions: Vec<EditionRecord>,
    /// What can't be read.
    pub lost: Lost,
    /// Every regular file of the folder, for links between files.
    pub files: Vec<FilePath>,
    /// What is the matter.
    pub findings: Findings,
}

/// A text file that is not a record.
#[derive(Debug, Clone)]
pub struct TextFile {
    /// The file.
    pub file: FilePath,
    /// Its text.
    pub text: Arc<str>,
}

/// Reads a catalogue folder.
///
/// # Errors
/// Where the machine can't read the folder. What is wrong with files in it is in [`Records::findings`].
///
/// ```
/// use fittingcards::source::{FilePath, MemoryWorld};
/// let cone = "number: C-1\nname: Cone\nrole: cone\nmaterial: brass\n";
/// let world = MemoryWorld::new().with(FilePath::catalogue("parts/cone.yaml"), cone);
/// let records = fittingcards::records::read(&world)?;
/// assert_eq!(records.parts[0].id.as_deref(), Some("C-1"));
/// # Ok::<(), fittingcards::source::WorldError>(())
/// ```
pub fn read(world: &dyn World) -> Result<Records, WorldError> {
    read_seen(world, &|_, _| {})
}

/// The same, where somebody looks at the values of each file of records as they are read.
///
/// # Errors
/// As [`read`].
pub fn read_seen(world: &dyn World, seen: &Seen<'_>) -> Result<Records, WorldError> {
    let files = world.files(Folder::Catalogue)?;
    let read: Vec<Records> = files.par_iter().map(|file| read_file(world, file, seen)).collect();
    let mut records = Records::with_room_for(&read);
    for unread in world.unread(Folder::Catalogue)? {
        records.findings.push(Finding::of_unread(&unread));
        records.lost.put_file(&unread.file);
    }
    read.into_iter().for_each(|one| records.add(one));
    if !files.iter().any(|file| file_kind(&file.path) == FileKind::Settings) {
        records.findings.push(no_settings("there is no catalogue.yaml"));
        records.lost.put_file(&FilePath::catalogue("catalogue.yaml"));
    }
    records.files = files;
    Ok(records)
}

fn read_file(world: &dyn World, file: &FilePath, seen: &Seen<'_>) -> Records {
    let mut records = Records::default();
    let kind = file_kind(&file.path);
    if let FileKind::Misplaced(fault) = &kind {
        let finding = fault.finding(file);
        if finding.severity == Severity::Error {
            records.lost.put_file(file);
        }
        records.findings.push(finding);
    }
    if matches!(kind, FileKind::Ignored | FileKind::Misplaced(_)) {
        return records;
    }
    let bytes = match world.read(file) {
        Ok(bytes) => bytes,
        Err(error) => {
            records.findings.push(Finding::of_world_error(file, &error));
            records.lost.put_file(file);
            return records;
        }
    };
    if kind == FileKind::Font {
        records.fonts.push((file.clone(), bytes));
        return records;
    }
    if kind == FileKind::Installed {
        records.installed.push((file.clone(), bytes));
        return records;
    }
    if kind == FileKind::Register {
        match utf8(file, &bytes).and_then(|text| read_edition(file, text)) {
            Ok(edition) => records.editions.push(edition),
            Err(finding) => {
                records.findings.push(*finding);
                records.lost.put_file(file);
            }
        }
        return records;
    }
    match text_of(&kind, file, &bytes) {
        Ok(text) => records.take(&kind, file, text, seen),
        Err(findings) => {
            records.findings.extend(findings);
            records.lost.put_text(file, &String::from_utf8_lossy(&bytes));
        }
    }
    records
}

/// The text of a file, where it can be read as what it is.
fn text_of<'a>(kind: &FileKind, file: &FilePath, bytes: &'a [u8]) -> Result<&'a str, Vec<Finding>> {
    let text = decode(file, bytes).map_err(|finding| vec![*finding])?;
    let forbidden = if *kind == FileKind::Note { Vec::new() } else { forbidden(file, text) };
    if forbidden.is_empty() { Ok(text) } else { Err(forbidden) }
}

impl Records {
    /// None yet, with room for what there may be very many of.
    fn with_room_for(all: &[Self]) -> Self {
        Self {
            parts: Vec::with_capacity(all.iter().map(|one| one.parts.len()).sum()),
            fittings: Vec::with_capacity(all.iter().map(|one| one.fittings.len()).sum()),
            ..Self::default()
        }
    }

    fn take(&mut self, kind: &FileKind, file: &FilePath, text: &str, seen: &Seen<'_>) {
        match kind {
            FileKind::Settings => self.take_settings(file, text, seen),
            FileKind::Material => {
                self.materials = read_documents(file, text, seen, &mut self.findings, &mut self.lost)
            }
            FileKind::Conductor => {
                self.conductors = read_documents(file, text, seen, &mut self.findings, &mut self.lost)
            }
            FileKind::Part => {
                self.parts = read_documents(file, text, seen, &mut self.findings, &mut self.lost)
            }
            FileKind::Fitting => {
                self.fittings = read_documents(file, text, seen, &mut self.findings, &mut self.lost)
            }
            FileKind::Notice => {
                self.notices = read_documents(file, text, seen, &mut self.findings, &mut self.lost)
            }
            FileKind::Holder => {
                self.holders = read_documents(file, text, seen, &mut self.findings, &mut self.lost)
            }
            FileKind::Procedure => {
                self.procedures = read_documents(file, text, seen, &mut self.findings, &mut self.lost)
            }
            FileKind::Note => self.notes.push(TextFile { file: file.clone(), text: text.into() }),
            FileKind::Register
            | FileKind::Font
            | FileKind::Installed
            | FileKind::Ignored
            | FileKind::Misplaced(_) => {}
        }
    }

    fn take_settings(&mut self, file: &FilePath, text: &str, seen: &Seen<'_>) {
        let mut documents = read_documents(file, text, seen, &mut self.findings, &mut self.lost);
        if let Some(second) = documents.get(1) {
            let message = "catalogue.yaml holds only one document, and this is a second one";
            let help = "put it all into one, without `---` between";
            self.lost.put_file(file);
            self.findings.push(Finding::error("second-document", second.place.clone(), message).help(help));
        }
        if documents.is_empty() && !self.findings.has_errors() {
            self.findings = Findings::new();
            self.findings.push(no_settings("catalogue.yaml holds no record"));
            self.lost.put_file(file);
        }
        self.settings = (!documents.is_empty()).then(|| documents.swap_remove(0));
    }

    fn add(&mut self, other: Self) {
        self.settings = self.settings.take().or(other.settings);
        self.materials.extend(other.materials);
        self.conductors.extend(other.conductors);
        self.parts.extend(other.parts);
        self.fittings.extend(other.fittings);
        self.notices.extend(other.notices);
        self.holders.extend(other.holders);
        self.procedures.extend(other.procedures);
        self.notes.extend(other.notes);
        self.fonts.extend(other.fonts);
        self.installed.extend(other.installed);
        self.editions.extend(other.editions);
        self.lost.add(other.lost);
        self.findings.extend(other.findings);
    }
}

fn no_settings(message: &str) -> Finding {
    Finding::error("missing-file", Place::whole(FilePath::catalogue("catalogue.yaml")), message)
        .expected("a file with title, owner, edition and caution")
        .help("`fittingcards start` writes a small working catalogue into an empty folder")
}
