//! `register/`: what an edition changes, for people: printable pages, tables for a spreadsheet, and the sheets to print
//! again.

mod crews;
mod follow_up;
mod pages;
mod tables;

use super::copies::{self, Copy};
use super::made::Making;
use super::options::RenderError;
use super::prepared::Prepared;
use crate::catalogue::Edition;
use crate::diagnostics::{Finding, Findings};
use crate::installed::{FollowUp, follow_up};
use crate::register::{self, CardChange, Comparison, Standing, compare, text_of};
use serde_json::Value;

/// What the pages tell of.
struct Told<'a> {
    prepared: &'a Prepared,
    /// What each edition changed, the newest first; before them what waits to be issued, where anything does.
    stages: Vec<Comparison>,
    /// What the newest edition changed, with what each holder gets and gives back.
    newest: Option<Comparison>,
    /// Which fittings in the line call for something, where there are lists of them.
    follow_up: Option<FollowUp<'a>>,
}

/// The pages, filled, before they are written.
struct RegisterPages<'a> {
    told: Told<'a>,
    /// Where each goes, with its text.
    texts: Vec<(String, String)>,
    /// What is wrong with the layouts of the others.
    findings: Findings,
}

impl<'a> RegisterPages<'a> {
    /// Fills them from what is known before anything is drawn.
    fn filled(prepared: &'a Prepared) -> Self {
        let told = Told::of(prepared);
        let mut pages = vec![told.what_changed(), told.to_crews(), told.approval(), told.current_cards()];
        pages.extend(told.call_in());
        pages.extend(told.follow_up_page());
        let (mut texts, mut findings) = (Vec::new(), Findings::new());
        for page in &pages {
            match told.filled(page) {
                Ok(text) => texts.push((format!("register/{}.html", page.name), text)),
                Err(finding) => findings.extend(Some(*finding).filter(|found| prepared.is_news(found))),
            }
        }
        Self { told, texts, findings }
    }
}

impl Making<'_> {
    /// Makes the booklet and what is told of the register. One thread fills the register's pages, while another puts
    /// together the booklet's longest lists.
    pub(super) fn booklet_and_register(&self) -> Result<Findings, RenderError> {
        let (booklet, register) = rayon::join(|| self.booklet(), || RegisterPages::filled(self.prepared));
        let mut findings = booklet?;
        findings.extend(self.register(register)?);
        Ok(findings)
    }

    /// Writes the pages, and makes the tables and sheets of the register; gives what is wrong with all of them. Where
    /// nothing is written, one copy of each card is looked over: its others differ from it by a shorter number.
    fn register(&self, pages: RegisterPages<'_>) -> Result<Findings, RenderError> {
        let RegisterPages { told, texts, findings: mut found } = pages;
        let mut copies = told.to_print_again();
        if self.staging().is_none() {
            copies = copies::widest(copies);
        }
        found.extend(self.copies("register/print-again.pdf", &copies)?);
        if let Some(staging) = self.staging() {
            for (path, text) in &texts {
                staging.write(path, text.as_bytes())?;
            }
            told.tables(staging)?;
        }
        Ok(found)
    }
}

/// A page before its frame.
struct Page {
    name: String,
    layout: &'static str,
    heading: String,
    values: Value,
}

fn page(name: &str, heading: impl Into<String>, values: Value) -> Page {
    let layout = match name {
        "what-changed" => "what-changed",
        "notice-to-crews" => "notice-to-crews",
        "approval" => "approval",
        "current-cards" => "current-cards",
        "follow-up" => "follow-up",
        _ => "call-in",
    };
    Page { name: name.to_owned(), layout, heading: heading.into(), values }
}

impl<'a> Told<'a> {
    fn of(prepared: &'a Prepared) -> Self {
        let Prepared { register, catalogue, mixups, installed, present, .. } = prepared;
        let mut stages = prepared.history.clone();
        if register.editions().is_empty() {
            stages.push(register::changes(register, (None, None), (present, "")));
        }
        stages.reverse();
        stages.retain(|stage| stage.with.is_some() || stage.changed().next().is_some());
        let last = register.editions().len().checked_sub(1);
        let between = last.map(|last| (last.checked_sub(1), Some(last)));
        let newest = between.map(|between| compare(register, catalogue, between, (present, "")));
        let lists = !catalogue.installed.is_empty();
        let follow_up = lists.then(|| follow_up(catalogue, mixups, installed, None));
        Self { prepared, stages, newest, follow_up }
    }

    fn filled(&self, page: &Page) -> Result<String, Box<Finding>> {
        let settings = &self.prepared.catalogue.settings;
        let mut values = page.values.clone();
        values["heading"] = page.heading.as_str().into();
        values["title"] = settings.title.as_str().into();
        values["owner"] = settings.owner.as_str().into();
        values["language"] = settings.language.as_str().into();
        values["caution"] = settings.caution.as_str().into();
        values["state"] = self.edition().map_or_else(|| "no edition issued".to_owned(), named).into();
        let layout = format!("register/{}.html", page.layout);
        self.prepared.register_layouts.fill(&layout, &values).map_err(Box::new)
    }

    fn edition(&self) -> Option<&Edition> {
        self.prepared.register.newest()
    }

    /// The title of a card; of one whose record is gone, what its last issue said.
    fn title(&self, number: &str) -> String {
        let last = || self.prepared.register.issues(number).last().map(|(_, card)| text_of(card, "name"));
        let present = self.prepared.card(number).map(|card| card.title.clone());
        present.or_else(last).unwrap_or_default()
    }

    /// Copies of the cards that the newest edition changed and that still are as it says. None after a first edition:
    /// nobody has a card yet that is printed again, and each holder's own sheets have all.
    fn to_print_again(&self) -> Vec<Copy<'a>> {
        let prepared = self.prepared;
        let mut copies = Vec::new();
        let newest = self.newest.iter().filter(|newest| newest.since.is_some());
        for lists in newest.flat_map(|newest| &newest.holders) {
            let Some(holder) = prepared.catalogue.holders.get(&lists.id) else { continue };
            for line in &lists.print {
                let issued = prepared
                    .card(&line.number)
                    .filter(|card| prepared.register.standing(card) != Standing::Draft);
                copies
                    .extend(issued.into_iter().flat_map(|card| copies::numbered(card, holder, line.copies)));
            }
        }
        copies
    }
}

fn lists(stage: &Comparison) -> [(&'static str, &[CardChange]); 3] {
    [("Print again", &stage.print_again), ("New", &stage.new), ("Withdraw", &stage.withdraw)]
}

fn named(edition: &Edition) -> String {
    format!("edition {} of {}", edition.name, edition.date)
}
