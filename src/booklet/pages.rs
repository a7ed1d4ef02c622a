//! Which pages there are, and how each is made.

use super::frame::{self, Draft};
use super::input::{Booklet, Input};
use super::{
    addresses, bodies, chapters, closed, conductors, current, find, fittings, glossary, hand, key, long,
    look_alikes, notices, numbers, parts, shown, start, taught, teaching, wear,
};
use crate::catalogue::{Conductor, Fitting, Notice, Part};
use crate::diagnostics::{Finding, Findings};
use crate::layouts::is_given_out;
use crate::notes::address::{self, Address};
use crate::notes::check;
use crate::sketch;
use serde_json::Value;
use std::sync::Arc;

/// A file of the booklet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// Its name in the booklet's folder.
    pub path: String,
    /// Its text.
    pub text: String,
    /// The file of the layouts that it comes from; empty of what comes from none.
    pub layout: String,
    /// What it must show, each with what it is called.
    pub shows: Vec<(&'static str, String)>,
}

/// A page before its layout is filled: with the layouts, all that it comes from.
#[derive(Debug, Clone, PartialEq)]
pub struct UnfilledPage {
    /// The path of its layout.
    pub layout: String,
    /// What the layout is filled with.
    pub values: Value,
    /// What the page must show, each with what it is called.
    pub shows: Vec<(&'static str, String)>,
}

/// What a file of the booklet is about.
#[derive(Debug, Clone)]
pub enum Subject {
    /// The first page.
    Start,
    /// A fitting.
    Fitting(Arc<Fitting>),
    /// A conductor.
    Conductor(Arc<Conductor>),
    /// A part.
    Part(Arc<Part>),
    /// All that goes into a shared body.
    Body(Arc<Part>),
    /// What is wrong in a shared body, on one sheet of paper.
    Teaching(Arc<Part>),
    /// A notice.
    Notice(Arc<Notice>),
    /// A chapter, by its file name without `.md`.
    Chapter(String),
    /// Conductors and parts that can be taken for others.
    LookAlikes,
    /// Materials and lines.
    Key,
    /// The trade's words.
    Glossary,
    /// All numbers and stamps.
    Numbers,
    /// A section of them, from 1, where they are too many for one page.
    NumbersSection(usize),
    /// Wear of contact wires.
    Wear,
    /// What a measured conductor can be.
    Hand,
    /// What a closed fitting can hold.
    Closed,
    /// The same of one body, where they are too many for one page.
    ClosedBody(Arc<Part>),
    /// Whether a printed card is current.
    Current,
    /// What *Find* looks through.
    Index,
    /// A file that is handed on as it is.
    File(String),
}

/// Every file of the booklet.
///
/// # Errors
/// All faults of all pages: of the notes that they show, and of their layouts.
pub fn make(input: Input<'_>) -> Result<Vec<Page>, Findings> {
    let booklet = Booklet::new(input);
    let mut findings = check(input.catalogue);
    let mut pages = Vec::new();
    for subject in booklet.subjects() {
        match booklet.page(&subject) {
            Ok(page) => {
                findings.extend(booklet.check(&subject, &page));
                pages.push(page);
            }
            Err(finding) => findings.push(finding),
        }
    }
    if findings.has_errors() { Err(findings) } else { Ok(pages) }
}

impl Booklet<'_> {
    /// What there is a file about, in the booklet's order.
    #[must_use]
    pub fn subjects(&self) -> Vec<Subject> {
        let catalogue = self.input.catalogue;
        let mut subjects = vec![Subject::Start];
        subjects.extend(self.chapters().map(|stem| Subject::Chapter(stem.to_owned())));
        subjects.extend(catalogue.fittings.values().cloned().map(Subject::Fitting));
        subjects.extend(self.shared_bodies().cloned().map(Subject::Body));
        subjects.extend(self.taught_bodies().map(Subject::Teaching));
        subjects.extend(catalogue.conductors.values().cloned().map(Subject::Conductor));
        subjects.extend(catalogue.parts.values().cloned().map(Subject::Part));
        subjects.extend(catalogue.notices.values().cloned().map(Subject::Notice));
        subjects.extend(closed::bodies(self).into_iter().cloned().map(Subject::ClosedBody));
        subjects.extend(numbers::parts_of_it(self).map(Subject::NumbersSection));
        subjects.extend([
            Subject::LookAlikes,
            Subject::Hand,
            Subject::Wear,
            Subject::Closed,
            Subject::Current,
            Subject::Numbers,
            Subject::Key,
            Subject::Glossary,
            Subject::Index,
        ]);
        let given_out = self.input.layouts.texts().filter(|path| is_given_out(path));
        subjects.extend(given_out.map(|path| Subject::File(path.to_owned())));
        subjects
    }

    /// The shared bodies that have a teaching sheet.
    fn taught_bodies(&self) -> impl Iterator<Item = Arc<Part>> {
        let found = |body: &&Arc<Part>| self.input.mixups.body(&body.number).is_some_and(taught::has_sheet);
        self.shared_bodies().filter(found).cloned()
    }

    /// One file.
    ///
    /// # Errors
    /// Where its layout asks for what isn't there.
    #[expect(clippy::result_large_err, reason = "a finding is what stops the run")]
    pub fn page(&self, subject: &Subject) -> Result<Page, Finding> {
        if let Some(unfilled) = self.unfilled(subject) {
            return self.fill(subject, &unfilled);
        }
        let (layout, text) = match subject {
            Subject::File(name) => (name.clone(), self.handed_on(name)),
            _ => (String::new(), find::script(self)),
        };
        Ok(Page { path: subject.path(), text, layout, shows: Vec::new() })
    }

    /// A page before its layout is filled; none for files that are no pages.
    #[must_use]
    pub fn unfilled(&self, subject: &Subject) -> Option<UnfilledPage> {
        let address = subject.address()?;
        let draft = self.draft(subject);
        let layout = format!("booklet/{}.html", draft.layout);
        let mut shows = self.must_show(subject);
        shows.extend(shown::decisive(draft.layout, &draft.values));
        let values = frame::of_page(self, &address, draft);
        Some(UnfilledPage { layout, values, shows })
    }

    /// A page with its layout filled.
    ///
    /// # Errors
    /// Where its layout asks for what isn't there.
    #[expect(clippy::result_large_err, reason = "a finding is what stops the run")]
    pub fn fill(&self, subject: &Subject, page: &UnfilledPage) -> Result<Page, Finding> {
        let text = self.input.layouts.fill(&page.layout, &page.values)?;
        Ok(Page { path: subject.path(), text, layout: page.layout.clone(), shows: page.shows.clone() })
    }

    /// A file of the layouts as it is; the style sheet also gets what turns drawings dark.
    fn handed_on(&self, name: &str) -> String {
        let mut text = self.input.layouts.text(name).unwrap_or_default().to_owned();
        if name.ends_with("/booklet.css") {
            let rules = sketch::dark_rules();
            text.push_str(&format!("\n@media screen and (prefers-color-scheme: dark) {{\n{rules}}}\n"));
        }
        text
    }

    fn draft(&self, subject: &Subject) -> Draft {
        match subject {
            Subject::Fitting(fitting) => fittings::page(self, fitting),
            Subject::Conductor(conductor) => conductors::page(self, conductor),
            Subject::Part(part) => parts::page(self, part),
            Subject::Body(part) => bodies::page(self, part),
            Subject::Teaching(part) => teaching::page(self, part),
            Subject::Notice(notice) => notices::page(self, notice),
            Subject::Chapter(stem) => chapters::page(self, stem),
            Subject::LookAlikes => look_alikes::page(self),
            Subject::Key => key::page(self),
            Subject::Glossary => glossary::page(self),
            Subject::Numbers => numbers::page(self),
            Subject::NumbersSection(nth) => numbers::section_page(self, *nth),
            Subject::Hand => hand::page(self),
            Subject::Wear => wear::page(self),
            Subject::Closed => closed::page(self),
            Subject::ClosedBody(part) => closed::body_page(self, part),
            Subject::Current => current::page(self),
            Subject::Start | Subject::Index | Subject::File(_) => start::page(self),
        }
    }
}

impl Subject {
    /// Name of the file in the booklet's folder.
    #[must_use]
    pub fn path(&self) -> String {
        match (self.address(), self) {
            (Some(address), _) => address.file(),
            (None, Self::File(name)) => name.rsplit('/').next().unwrap_or(name).to_owned(),
            (None, _) => "index.js".to_owned(),
        }
    }

    /// Where it is, if it is a page.
    fn address(&self) -> Option<Address> {
        Some(match self {
            Self::Start => addresses::start(),
            Self::Fitting(fitting) => address::fitting(&fitting.number),
            Self::Conductor(conductor) => address::conductor(&conductor.id),
            Self::Part(part) => address::part(&part.number),
            Self::Body(part) => address::body(&part.number),
            Self::Teaching(part) => addresses::teaching(part),
            Self::Notice(notice) => address::notice(&notice.number),
            Self::Chapter(stem) => address::chapter(stem),
            Self::LookAlikes => addresses::look_alikes(),
            Self::Key => address::key(),
            Self::Glossary => addresses::glossary(),
            Self::Numbers => addresses::numbers(),
            Self::NumbersSection(nth) => long::section(&addresses::numbers(), *nth),
            Self::Hand => addresses::hand(),
            Self::Wear => addresses::wear(),
            Self::Closed => addresses::closed(),
            Self::ClosedBody(part) => addresses::closed_body(&part.number),
            Self::Current => addresses::current(),
            Self::Index | Self::File(_) => return None,
        })
    }
}
