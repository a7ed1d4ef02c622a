//! Making the outputs: cards with their pictures and sheets, kit tags, and the booklet, on all threads.

use super::cache::Memory;
use super::clock::Clock;
use super::counted::Counted;
use super::in_order::in_order;
use super::made_from;
use super::options::{Progress, RenderError, Stage, Strictness};
use super::prepared::Prepared;
use super::refused;
use super::staging::Staging;
use crate::booklet::{self, Booklet, Subject};
use crate::diagnostics::{Finding, Findings, Place};
use crate::sheets::{self, PrintKind, SheetFault, SheetFile};
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Mutex, PoisonError};

/// What the sheet of outlines is called.
const PROOF: &str = "sheet proof.pdf";

/// How outputs are made.
pub(super) struct Making<'a> {
    pub(super) prepared: &'a Prepared,
    /// What is kept of the last run.
    pub(super) memory: &'a Memory,
    /// Where they go; nowhere in an audit.
    pub(super) staging: Option<&'a Staging>,
    /// What stops the run; once something does, nothing more is drawn that would not be written.
    pub(super) strictness: Strictness,
    pub(super) stopped: AtomicBool,
    pub(super) preview_dpi: f64,
    /// Faces that are kept for the single file, where there is to be one.
    pub(super) single: Option<Single>,
    pub(super) clock: &'a Clock,
    pub(super) progress: &'a (dyn Fn(Progress) + Sync),
}

/// What goes into the booklet's single file.
#[derive(Debug, Default)]
pub(super) struct Single {
    /// Faces as SVG by their file name.
    pub(super) faces: Mutex<BTreeMap<String, String>>,
}

impl Making<'_> {
    pub(super) fn staging(&self) -> Option<&Staging> {
        self.staging.filter(|_| !self.stopped())
    }

    pub(super) fn stopped(&self) -> bool {
        self.stopped.load(Ordering::Relaxed)
    }

    /// Draws nothing more where these findings stop the run.
    pub(super) fn stop_for(&self, findings: &Findings) {
        if self.strictness.refuses(findings) {
            self.stopped.store(true, Ordering::Relaxed);
        }
    }

    /// The place of what is found in outputs rather than in a record.
    pub(super) fn place(&self) -> &Place {
        &self.prepared.catalogue.settings.origin.place
    }

    /// The sheet of outlines that shows how far a printer misses.
    pub(super) fn proof(&self) -> Result<Option<Finding>, RenderError> {
        let inputs = self.prepared.proof_from();
        if self.memory.keep(PROOF, &inputs, self.staging()) {
            return Ok(None);
        }
        let proof = sheets::proof(&self.prepared.sheets(PrintKind::Cards));
        let found = self.sheet("sheets/proof.pdf", proof)?;
        if found.is_none() {
            self.memory.note(PROOF, inputs, vec!["sheets/proof.pdf".to_owned()]);
        }
        Ok(found)
    }

    /// Writes a file of sheets, or says why there is none.
    pub(super) fn sheet(
        &self,
        path: &str,
        pdf: Result<Vec<u8>, SheetFault>,
    ) -> Result<Option<Finding>, RenderError> {
        let bytes = match pdf {
            Ok(bytes) => bytes,
            Err(fault) => {
                let place = self.place().clone();
                return Ok(Some(Finding::error("sheet-not-made", place, fault.to_string())));
            }
        };
        if let Some(staging) = self.staging() {
            self.clock.output(|| staging.write(path, &bytes))?;
        }
        Ok(None)
    }

    /// Makes every page of the booklet, and the single file of them.
    pub(super) fn booklet(&self) -> Result<Findings, RenderError> {
        let booklet = Booklet::new(self.prepared.booklet());
        // The longest lists come last in the booklet: whoever begins with them has nobody wait for them at the end.
        let subjects: Vec<Subject> = booklet.subjects().into_iter().rev().collect();
        let outlined = booklet.clone().in_outline(&self.prepared.hashes);
        let counted = Counted::new(self.progress, Stage::Booklet, subjects.len());
        let mut findings = Findings::new();
        let make =
            |subject: &Subject| self.page(&booklet, &outlined, subject).inspect(|_| counted.one_more());
        in_order(&subjects, &make, |found| {
            findings.extend(found.into_iter().filter(|finding| self.prepared.is_news(finding)));
        })?;
        self.stop_for(&findings);
        findings.extend(self.single_file()?);
        Ok(findings)
    }

    /// Makes one page; gives what is wrong with it.
    fn page(
        &self,
        booklet: &Booklet<'_>,
        outlined: &Booklet<'_>,
        subject: &Subject,
    ) -> Result<Findings, RenderError> {
        let outline = self.clock.booklet(|| outlined.unfilled(subject));
        let name = format!("page {}", subject.path());
        let inputs = outline.as_ref().map(|page| self.clock.booklet(|| made_from::page_from(page)));
        if inputs.as_ref().is_some_and(|inputs| self.memory.keep(&name, inputs, self.staging())) {
            return Ok(Findings::new());
        }
        let filled = || booklet.page(subject).map_err(Box::new);
        let page = match self.clock.booklet(filled) {
            Ok(page) => page,
            Err(finding) => return Ok(Findings::from(*finding)),
        };
        let found = self.clock.booklet(|| booklet.check(subject, &page));
        if found.has_errors() {
            return Ok(found);
        }
        if let Some(finding) = refused::found(&name, self.place(), std::iter::once(page.text.as_str())) {
            return Ok(Findings::from(finding));
        }
        if let Some(staging) = self.staging() {
            let path = format!("booklet/{}", page.path);
            self.clock.output(|| staging.write(&path, page.text.as_bytes()))?;
            if let Some(inputs) = inputs {
                self.memory.note(&name, inputs, vec![path]);
            }
        }
        Ok(Findings::new())
    }

    /// Makes the single file, where there is to be one and nothing stops the run; gives what is wrong with it.
    fn single_file(&self) -> Result<Findings, RenderError> {
        let Some(single) = self.single.as_ref().filter(|_| !self.stopped()) else {
            return Ok(Findings::new());
        };
        let faces = single.faces.lock().unwrap_or_else(PoisonError::into_inner);
        match self.clock.booklet(|| booklet::single_file(self.prepared.booklet(), &faces)) {
            Ok(text) => {
                if let Some(staging) = self.staging() {
                    self.clock.output(|| staging.write("booklet.html", text.as_bytes()))?;
                }
                Ok(Findings::new())
            }
            Err(findings) => Ok(findings),
        }
    }
}

/// Where a file of sheets goes: below `sheets`, unless its name says where.
pub(super) fn path(file: &SheetFile) -> String {
    if file.name.contains('/') { file.name.clone() } else { format!("sheets/{}", file.name) }
}
