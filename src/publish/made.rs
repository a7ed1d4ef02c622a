//! Making the outputs: cards with their pictures and sheets, kit tags, and the booklet, on all threads.

use super::clock::{Clock, Waiting};
use super::counted::Counted;
use super::options::{Fault, Progress, Stage, Strictness};
use super::prepared::Prepared;
use super::refused;
use super::staging::Staging;
use crate::booklet::{self, Booklet, Subject};
use crate::cards::{self, Card, Face};
use crate::diagnostics::{Finding, Findings, Place};
use crate::facts::CardFacts;
use crate::sheets::{self, PrintItem, PrintKind, SheetFault, SheetFile};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, sync_channel};
use std::sync::{Mutex, PoisonError};
use std::thread;

/// Cards or tags that are made before the next ones are begun, a thread.
const BATCH: usize = 8;
/// Cards or tags that wait for the sheets at most; what is made faster than it is printed waits no longer than that.
const WAITING: usize = 32;

/// How outputs are made.
pub(super) struct Making<'a> {
    pub(super) prepared: &'a Prepared,
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
    faces: Mutex<BTreeMap<String, String>>,
}

impl Making<'_> {
    fn staging(&self) -> Option<&Staging> {
        self.staging.filter(|_| !self.stopped())
    }

    fn stopped(&self) -> bool {
        self.stopped.load(Ordering::Relaxed)
    }

    /// Makes cards, their pictures and their sheets; gives what is found in them.
    pub(super) fn cards(&self, facts: &[&CardFacts]) -> Result<Findings, Fault> {
        let mut findings = Findings::new();
        let counted = Counted::new(self.progress, Stage::Cards, facts.len());
        for file in sheets::files(PrintKind::Cards, facts.len()) {
            let make = |facts: &&CardFacts| self.card(facts).inspect(|_| counted.one_more());
            findings.extend(self.with_sheets(&file, &facts[file.records.clone()], &make)?);
        }
        Ok(findings)
    }

    /// Makes an item from each of these side by side, and the sheets of them meanwhile.
    pub(super) fn with_sheets<T: Sync, P: Into<PrintItem> + Send>(
        &self,
        file: &SheetFile,
        from: &[T],
        make: &Make<'_, T, P>,
    ) -> Result<Findings, Fault> {
        let (sender, receiver) = sync_channel(WAITING);
        thread::scope(|scope| {
            let sheets = scope.spawn(|| self.sheets(file, from.len(), receiver));
            let made = self.batches(from, make, |item| {
                // Where the sheets have stopped, their own fault says why.
                if !self.stopped() {
                    let _ = sender.send(item);
                }
            });
            drop(sender);
            let sheets = sheets.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic));
            let mut findings = made?;
            findings.extend(sheets?);
            Ok(findings)
        })
    }

    /// Makes an item from each of these side by side and hands them on in order.
    fn batches<T: Sync, P: Send>(
        &self,
        from: &[T],
        make: &Make<'_, T, P>,
        mut hand_on: impl FnMut(P),
    ) -> Result<Findings, Fault> {
        let mut findings = Findings::new();
        for batch in from.chunks(BATCH * rayon::current_num_threads()) {
            let made: Vec<_> = batch.par_iter().map(make).collect::<Result<_, Fault>>()?;
            for (item, found) in made {
                findings.extend(found.into_iter().filter(|finding| self.prepared.is_news(finding)));
                item.into_iter().for_each(&mut hand_on);
            }
        }
        Ok(findings)
    }

    /// Draws nothing more where these findings stop the run.
    pub(super) fn stop_for(&self, findings: &Findings) {
        if self.strictness.refuses(findings) {
            self.stopped.store(true, Ordering::Relaxed);
        }
    }

    /// The place of what is found in outputs rather than in a record.
    fn place(&self) -> &Place {
        &self.prepared.catalogue.settings.origin.place
    }

    fn card(&self, facts: &CardFacts) -> Result<(Option<Card>, Findings), Fault> {
        let (card, mut findings) = self.clock.drawing(|| cards::make(self.prepared.cards(), facts));
        if let Some(card) = &card {
            let blocks = card.front.blocks.iter().chain(&card.back.blocks);
            let layers = blocks.flat_map(|block| &block.layers);
            let output = format!("card {}", card.number);
            findings.extend(refused::found(&output, self.place(), layers.map(|layer| &*layer.source)));
            let standing = self.prepared.standing(&card.number);
            findings.extend(cards::incomplete(self.prepared.cards(), facts, &standing, card));
        }
        self.stop_for(&findings);
        if let (Some(card), Some(staging)) = (&card, self.staging()) {
            for face in [&card.front, &card.back] {
                self.pictures(&card.number, face, staging)?;
            }
        }
        Ok((card, findings))
    }

    fn pictures(&self, number: &str, face: &Face, staging: &Staging) -> Result<(), Fault> {
        let name = format!("{number}-{}", face.side.word());
        let (svg, png) = self.clock.pictures(|| (face.svg(), face.png(self.preview_dpi)));
        let png = png.map_err(|error| Fault::Resolution(error.to_string()))?;
        self.clock.output(|| {
            staging.write(&format!("cards/{name}.svg"), svg.as_bytes())?;
            staging.write(&format!("cards/{name}.png"), &png)
        })?;
        if let Some(single) = &self.single {
            single.faces.lock().unwrap_or_else(PoisonError::into_inner).insert(format!("{name}.svg"), svg);
        }
        Ok(())
    }

    fn sheets<P: Into<PrintItem>>(
        &self,
        file: &SheetFile,
        count: usize,
        items: Receiver<P>,
    ) -> Result<Option<Finding>, Fault> {
        let mut items = Waiting::new(items.into_iter());
        let options = self.prepared.sheets(file.kind);
        let pdf = self.clock.pdf(&mut items, |items| sheets::pdf(file, count, items, &options));
        self.sheet(&format!("sheets/{}", file.name), pdf)
    }

    /// The sheet of outlines that shows how far a printer misses.
    pub(super) fn proof(&self) -> Result<Option<Finding>, Fault> {
        self.sheet("sheets/proof.pdf", sheets::proof(&self.prepared.sheets(PrintKind::Cards)))
    }

    fn sheet(&self, path: &str, pdf: Result<Vec<u8>, SheetFault>) -> Result<Option<Finding>, Fault> {
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
    pub(super) fn booklet(&self) -> Result<Findings, Fault> {
        let booklet = Booklet::new(self.prepared.booklet());
        let subjects = booklet.subjects();
        let counted = Counted::new(self.progress, Stage::Booklet, subjects.len());
        let made: Vec<Findings> = subjects
            .par_iter()
            .map(|subject| self.page(&booklet, subject).inspect(|_| counted.one_more()))
            .collect::<Result<_, Fault>>()?;
        let mut findings = Findings::new();
        findings.extend(made.into_iter().flatten().filter(|finding| self.prepared.is_news(finding)));
        self.stop_for(&findings);
        findings.extend(self.single_file()?);
        Ok(findings)
    }

    /// Makes one page; gives what is wrong with it.
    fn page(&self, booklet: &Booklet<'_>, subject: &Subject) -> Result<Findings, Fault> {
        let page = match self.clock.booklet(|| booklet.page(subject).map_err(Box::new)) {
            Ok(page) => page,
            Err(finding) => return Ok(Findings::from(*finding)),
        };
        let found = self.clock.booklet(|| booklet.check(subject, &page));
        if found.has_errors() {
            return Ok(found);
        }
        let output = format!("page {}", page.path);
        if let Some(finding) = refused::found(&output, self.place(), std::iter::once(page.text.as_str())) {
            return Ok(Findings::from(finding));
        }
        if let Some(staging) = self.staging() {
            let path = format!("booklet/{}", page.path);
            self.clock.output(|| staging.write(&path, page.text.as_bytes()))?;
        }
        Ok(Findings::new())
    }

    /// Makes the single file, where there is to be one and nothing stops the run; gives what is wrong with it.
    fn single_file(&self) -> Result<Findings, Fault> {
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

/// What makes one item, with what is found in it.
pub(super) type Make<'a, T, P> = dyn Fn(&T) -> Result<(Option<P>, Findings), Fault> + Sync + 'a;
