//! `training/`: what a training cell and its stores use beside cards.

use super::counted::Counted;
use super::made::{Making, path};
use super::options::{RenderError, Stage};
use super::refused;
use crate::cards::{self, Form};
use crate::catalogue::Training;
use crate::diagnostics::{FilePath, Finding, Findings, Place};
use crate::sheets::{self, PrintKind};
use crate::training::{self, Beside, Gauge, Input, Page};
use rayon::prelude::*;
use std::sync::atomic::{AtomicBool, Ordering};

impl Making<'_> {
    /// Makes all of it; gives what is wrong with it.
    pub(super) fn training(&self, chosen: &Training) -> Result<Findings, RenderError> {
        let input: Input<'_> = self.prepared.for_training(chosen);
        let (slips, labels) = (training::slips(input), training::labels(input));
        let (gauges, mut findings) = training::gauges(input);
        let plates: Vec<Form> = gauges.iter().map(|gauge| gauge.form.clone()).collect();
        let of = slips.len() + labels.len() + plates.len();
        let counted = Counted::new(self.progress, Stage::Training, of);
        findings.extend(self.forms(PrintKind::Slips, &slips, &counted)?);
        findings.extend(self.forms(PrintKind::Gauges, &plates, &counted)?);
        self.plates(&gauges)?;
        findings.extend(self.forms(PrintKind::Labels, &labels, &counted)?);
        let beside = Beside {
            slips: names(PrintKind::Slips, slips.len()),
            gauges: names(PrintKind::Gauges, plates.len()),
            labels: names(PrintKind::Labels, labels.len()),
            plates: gauges.iter().map(|gauge| (gauge.name.clone(), gauge.about.clone())).collect(),
        };
        let (pages, found) = self.clock.booklet(|| training::pages(input, &beside));
        findings.extend(found);
        findings.extend(self.training_pages(&pages)?);
        Ok(findings)
    }

    /// Fills the layouts of pages and writes them.
    fn training_pages(&self, pages: &[Page]) -> Result<Findings, RenderError> {
        let mut findings = Findings::new();
        let layouts = &self.prepared.design.layouts;
        let fill = |page: &Page| layouts.fill(page.layout, &page.values).map_err(Box::new);
        let filled: Vec<_> = self.clock.booklet(|| pages.par_iter().map(fill).collect());
        for (page, filled) in pages.iter().zip(filled) {
            match filled {
                Ok(text) => {
                    let name = format!("page {}", page.name);
                    findings.extend(refused::found(&name, self.place(), std::iter::once(text.as_str())));
                    findings.extend(incomplete(page, &text));
                    if let Some(staging) = self.staging() {
                        staging.write(&format!("{FOLDER}{}", page.name), text.as_bytes())?;
                    }
                }
                Err(finding) => findings.extend(Some(*finding).filter(|found| self.prepared.is_news(found))),
            }
        }
        self.stop_for(&findings);
        Ok(findings)
    }

    /// Writes each gauge as SVG and DXF, or keeps them. What is found in one is told with its page.
    fn plates(&self, gauges: &[Gauge]) -> Result<(), RenderError> {
        let Some(staging) = self.staging() else { return Ok(()) };
        gauges.par_iter().try_for_each(|gauge| {
            let path = |ending: &str| format!("{FOLDER}gauges/{}.{ending}", gauge.name);
            let (name, inputs) = (format!("gauge {}", gauge.name), self.prepared.gauge_from(gauge));
            if self.memory.keep(&name, &inputs, Some(staging)) {
                return Ok(());
            }
            let (face, found) = self.clock.drawing(|| cards::make_form(self.prepared.cards(), &gauge.form));
            let Some(face) = face.filter(|_| found.is_empty()) else { return Ok(()) };
            staging.write(&path("svg"), face.face.svg().as_bytes())?;
            staging.write(&path("dxf"), gauge.dxf.as_bytes())?;
            self.memory.note(&name, inputs, vec![path("svg"), path("dxf")]);
            Ok(())
        })
    }

    /// Makes forms and the files of them, or keeps what has not changed.
    fn forms(&self, kind: PrintKind, forms: &[Form], counted: &Counted<'_>) -> Result<Findings, RenderError> {
        let mut findings = Findings::new();
        for file in sheets::files(kind, forms.len()) {
            let forms = &forms[file.records.clone()];
            let (name, inputs) = (format!("sheet {}", file.name), self.prepared.forms_from(&file, forms));
            if self.memory.keep(&name, &inputs, self.staging()) {
                forms.iter().for_each(|_| counted.one_more());
                continue;
            }
            let sound = AtomicBool::new(true);
            let make = |form: &Form| {
                let made = self.clock.drawing(|| cards::make_form(self.prepared.cards(), form));
                self.stop_for(&made.1);
                sound.fetch_and(made.1.is_empty(), Ordering::Relaxed);
                counted.one_more();
                Ok(made)
            };
            let found = self.with_sheets(&file, forms, &make)?;
            if sound.into_inner() && found.is_empty() {
                self.memory.note(&name, inputs, vec![path(&file)]);
            }
            findings.extend(found);
        }
        Ok(findings)
    }
}

/// The folder of all that is made for training, with what stands behind it in paths.
const FOLDER: &str = "training/";

/// The files that so many forms go into, as pages beside them name them.
fn names(kind: PrintKind, count: usize) -> Vec<String> {
    let name = |file: sheets::SheetFile| file.name.trim_start_matches(FOLDER).to_owned();
    sheets::files(kind, count).into_iter().map(name).collect()
}

/// What is found of a page that leaves out what it must show.
fn incomplete(page: &Page, text: &str) -> Option<Finding> {
    let lacking = training::lacking(page, text);
    let said = format!("page training/{} does not show {}", page.name, lacking.join(", "));
    let place = Place::whole(FilePath::layouts(page.layout));
    (!lacking.is_empty()).then(|| {
        Finding::error("page-incomplete", place, said)
            .help("a page must show it: add what the built-in layout of the page has for it")
    })
}
