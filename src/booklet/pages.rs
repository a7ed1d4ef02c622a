//! Which pages there are, and how each is made.

use super::frame::{self, Draft};
use super::uses::Uses;
use super::{
    bodies, chapters, closed, conductors, find, fittings, glossary, hand, key, look_alikes, notices, parts,
    start, wear,
};
use crate::catalogue::{Catalogue, Conductor, Fitting, Mark, NoteAbout, Notice, Part};
use crate::diagnostics::{Finding, Findings};
use crate::facts::{CardFacts, Content};
use crate::layouts::Layouts;
use crate::mixups::{self, LookAlike, Mixups};
use crate::notes::{self, address};
use crate::sketch::{self, Options};
use crate::units::Numerals;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What the booklet is made from.
#[derive(Debug, Clone, Copy)]
pub struct Input<'a> {
    /// The records.
    pub catalogue: &'a Catalogue,
    /// What can be confused.
    pub mixups: &'a Mixups,
    /// What each card prints, by the number of its fitting or body.
    pub facts: &'a BTreeMap<String, CardFacts>,
    /// The layouts of the folder `booklet`.
    pub layouts: &'a Layouts,
    /// "Draft, not issued" or the like; empty where the edition stands on the register as it is.
    pub state: &'a str,
    /// Issue and check code in words, by card number; a card that is not here is a draft.
    pub issues: &'a BTreeMap<String, String>,
    /// The fonts that drawings are lettered with, and their type size; each drawing takes its own room.
    pub drawing: Options<'a>,
    /// File names of the sheets of cards, in order.
    pub sheets: &'a [String],
    /// File names of the sheets of kit tags, in order.
    pub tag_sheets: &'a [String],
}

/// A file of the booklet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// Its name in the booklet's folder.
    pub path: String,
    /// Its text.
    pub text: String,
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
    /// Wear of contact wires.
    Wear,
    /// What a measured conductor can be.
    Hand,
    /// What a closed fitting can hold.
    Closed,
    /// What *Find* looks through.
    Index,
    /// A file that is handed on as it is.
    File(String),
}

/// A booklet whose pages can be made one by one, in any order, so that a large one need not be held whole.
#[derive(Debug)]
pub struct Booklet<'a> {
    pub(super) input: Input<'a>,
    pub(super) uses: Uses,
    pub(super) numerals: Numerals,
    pub(super) look_alikes: Vec<LookAlike>,
    marks: BTreeMap<&'a str, &'a Mark>,
}

/// Every file of the booklet.
///
/// # Errors
/// All faults of all pages: of the notes that they show, and of their layouts.
pub fn make(input: Input<'_>) -> Result<Vec<Page>, Findings> {
    let booklet = Booklet::new(input);
    let mut findings = notes::check(input.catalogue);
    let mut pages = Vec::new();
    for subject in booklet.subjects() {
        match booklet.page(&subject) {
            Ok(page) => pages.push(page),
            Err(finding) => findings.push(finding),
        }
    }
    if findings.has_errors() { Err(findings) } else { Ok(pages) }
}

impl<'a> Booklet<'a> {
    /// Looks up what belongs together.
    #[must_use]
    pub fn new(input: Input<'a>) -> Self {
        let numerals = Numerals::new(input.catalogue.settings.decimal_mark);
        Self {
            input,
            uses: Uses::of(&input),
            numerals,
            look_alikes: mixups::look_alikes(input.catalogue),
            marks: mixups::marks(input.catalogue),
        }
    }

    /// What there is a file about, in the booklet's order.
    #[must_use]
    pub fn subjects(&self) -> Vec<Subject> {
        let catalogue = self.input.catalogue;
        let mut subjects = vec![Subject::Start];
        subjects.extend(self.chapters().map(|stem| Subject::Chapter(stem.to_owned())));
        subjects.extend(catalogue.fittings.values().cloned().map(Subject::Fitting));
        subjects.extend(self.shared_bodies().cloned().map(Subject::Body));
        subjects.extend(catalogue.conductors.values().cloned().map(Subject::Conductor));
        subjects.extend(catalogue.parts.values().cloned().map(Subject::Part));
        subjects.extend(catalogue.notices.values().cloned().map(Subject::Notice));
        subjects.extend([
            Subject::LookAlikes,
            Subject::Hand,
            Subject::Wear,
            Subject::Closed,
            Subject::Numbers,
            Subject::Key,
            Subject::Glossary,
            Subject::Index,
        ]);
        subjects.extend(self.input.layouts.texts().map(|path| Subject::File(path.to_owned())));
        subjects
    }

    /// One file.
    ///
    /// # Errors
    /// Where its layout asks for what isn't there.
    #[expect(clippy::result_large_err, reason = "a finding is what stops the run")]
    pub fn page(&self, subject: &Subject) -> Result<Page, Finding> {
        let path = subject.path();
        let draft = match subject {
            Subject::Index => return Ok(Page { path, text: find::script(self) }),
            Subject::File(name) => return Ok(Page { path, text: self.handed_on(name) }),
            subject => self.draft(subject),
        };
        let layout = format!("booklet/{}.html", draft.layout);
        let text = self.input.layouts.fill(&layout, &frame::values(self, &path, draft))?;
        Ok(Page { path, text })
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
            Subject::Notice(notice) => notices::page(self, notice),
            Subject::Chapter(stem) => chapters::page(self, stem),
            Subject::LookAlikes => look_alikes::page(self),
            Subject::Key => key::page(self),
            Subject::Glossary => glossary::page(),
            Subject::Numbers => find::page(self),
            Subject::Hand => hand::page(self),
            Subject::Wear => wear::page(self),
            Subject::Closed => closed::page(self),
            Subject::Start | Subject::Index | Subject::File(_) => start::page(self),
        }
    }

    /// The mark of a gripping part: its own, else that of the fittings it is right for.
    pub(super) fn mark_of(&self, part: &Part) -> Option<&'a Mark> {
        self.marks.get(part.number.as_str()).copied()
    }

    /// The chapters' file names without `.md`, in order.
    pub(super) fn chapters(&self) -> impl Iterator<Item = &'a str> {
        self.input.catalogue.notes.iter().filter_map(|note| match &note.about {
            NoteAbout::Chapter(stem) => Some(stem.as_str()),
            NoteAbout::Record(_) => None,
        })
    }

    /// The bodies that have a card of their own, in the order of their numbers.
    pub(super) fn shared_bodies(&self) -> impl Iterator<Item = &'a Arc<Part>> {
        let catalogue = self.input.catalogue;
        let cards = self.input.facts.iter().filter(|(_, facts)| matches!(facts.content, Content::Body(_)));
        cards.filter_map(|(number, _)| catalogue.parts.get(number))
    }
}

impl Subject {
    /// Name of the file in the booklet's folder.
    #[must_use]
    pub fn path(&self) -> String {
        match self {
            Self::Start => "index.html".to_owned(),
            Self::Fitting(fitting) => address::fitting(&fitting.number),
            Self::Conductor(conductor) => address::conductor(&conductor.id),
            Self::Part(part) => address::part(&part.number),
            Self::Body(part) => address::body(&part.number),
            Self::Notice(notice) => address::notice(&notice.number),
            Self::Chapter(stem) => address::chapter(stem),
            Self::LookAlikes => "look-alikes.html".to_owned(),
            Self::Key => address::KEY.to_owned(),
            Self::Glossary => "glossary.html".to_owned(),
            Self::Numbers => "numbers.html".to_owned(),
            Self::Hand => "hand.html".to_owned(),
            Self::Wear => "wear.html".to_owned(),
            Self::Closed => "closed.html".to_owned(),
            Self::Index => "index.js".to_owned(),
            Self::File(name) => name.rsplit('/').next().unwrap_or(name).to_owned(),
        }
    }
}
