//! `register/`: what an edition changes, for people: printable pages, tables for a spreadsheet, and the sheets to print
//! again.

use super::copies::{self, Copy};
use super::data::harmless;
use super::made::Making;
use super::options::Fault;
use super::prepared::Prepared;
use super::staging::Staging;
use crate::catalogue::{Edition, Grade};
use crate::diagnostics::{Finding, Findings};
use crate::register::{self, CardChange, Comparison, Reissue, Standing, compare, explained_by};
use crate::source::WorldError;
use serde_json::{Value, json};

/// So many lines have room in the table of the notice to crews, which is one page; a card takes one for its edges.
const LINES_ON_THE_NOTICE: usize = 36;
/// So many letters stand in a line of a card's title there.
const LETTERS_OF_TITLE: usize = 18;
/// So many letters stand in a line of what is different.
const LETTERS_OF_CHANGE: usize = 30;
/// So many changes of a card stand there.
const CHANGES_THERE: usize = 4;

/// What the pages tell of.
struct Told<'a> {
    prepared: &'a Prepared,
    /// What each edition changed, the newest first; before them what waits to be issued, where anything does.
    stages: Vec<Comparison>,
    /// What the newest edition changed, with what each holder gets and gives back.
    newest: Option<Comparison>,
}

impl Making<'_> {
    /// Makes the pages, tables and sheets of the register; gives what is wrong with them. Where nothing is written,
    /// one copy of each card is looked over: its others differ from it by a shorter number.
    pub(super) fn register(&self) -> Result<Findings, Fault> {
        let told = Told::of(self.prepared);
        let mut copies = told.to_print_again();
        if self.staging().is_none() {
            copies = copies::widest(copies);
        }
        let mut findings = self.copies("register/print-again.pdf", &copies)?;
        let mut pages = vec![told.what_changed(), told.to_crews(), told.approval(), told.current_cards()];
        pages.extend(told.call_in());
        let mut texts = Vec::new();
        for page in &pages {
            match told.filled(page) {
                Ok(text) => texts.push((format!("register/{}.html", page.name), text)),
                Err(finding) => findings.extend(Some(*finding).filter(|found| self.prepared.is_news(found))),
            }
        }
        if let Some(staging) = self.staging() {
            for (path, text) in &texts {
                staging.write(path, text.as_bytes())?;
            }
            told.tables(staging)?;
        }
        Ok(findings)
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
        _ => "call-in",
    };
    Page { name: name.to_owned(), layout, heading: heading.into(), values }
}

impl<'a> Told<'a> {
    fn of(prepared: &'a Prepared) -> Self {
        let Prepared { register, catalogue, facts, .. } = prepared;
        let present = register.next(catalogue, facts, "", Reissue::default());
        let mut stages = register::history(register, &present);
        if register.editions().is_empty() {
            stages.push(register::changes(register, (None, None), (&present, "")));
        }
        stages.reverse();
        stages.retain(|stage| stage.with.is_some() || stage.changed().next().is_some());
        let last = register.editions().len().checked_sub(1);
        let between = last.map(|last| (last.checked_sub(1), Some(last)));
        let newest = between.map(|between| compare(register, catalogue, between, (&present, "")));
        Self { prepared, stages, newest }
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

    fn what_changed(&self) -> Page {
        let stages: Vec<Value> = self.stages.iter().map(|stage| self.stage(stage)).collect();
        page("what-changed", "What changed", json!({ "stages": stages }))
    }

    fn stage(&self, stage: &Comparison) -> Value {
        let edition = stage.with.as_deref().and_then(|name| self.prepared.register.edition(name));
        let heading = edition.map_or_else(
            || "Waits to be issued".to_owned(),
            |edition| format!("Issued as {}", named(edition)),
        );
        let since = stage.since.as_ref().map(|since| format!(", since edition {since}")).unwrap_or_default();
        let lists = lists(stage).into_iter().filter(|(_, cards)| !cards.is_empty()).map(|(name, cards)| {
            json!({ "name": name, "cards": cards.iter().map(|card| self.card(card)).collect::<Vec<_>>() })
        });
        json!({
            "heading": format!("{heading}{since}"), "because": edition.map_or("", |edition| &edition.because),
            "lists": lists.collect::<Vec<_>>(),
        })
    }

    fn card(&self, card: &CardChange) -> Value {
        let groups = explained_by(card, &self.prepared.catalogue).into_iter();
        let groups = groups.map(|(by, changes)| json!({ "by": by, "changes": changes }));
        json!({
            "number": card.number, "title": card.title, "issue": issue(card), "unexplained": !card.explained,
            "groups": groups.collect::<Vec<_>>(),
        })
    }

    fn to_crews(&self) -> Page {
        let all: Vec<&CardChange> = self.newest.iter().flat_map(Comparison::changed).collect();
        let mut told: Vec<&&CardChange> = all.iter().filter(|card| card.grade() == Grade::Safety).collect();
        told.extend(all.iter().filter(|card| card.grade() == Grade::Text));
        let withdrawn = || self.newest.iter().flat_map(|newest| &newest.withdraw);
        let is_withdrawn = |card: &CardChange| withdrawn().any(|other| other.number == card.number);
        let number = |issue: Option<u32>| issue.map_or_else(|| "none".to_owned(), |issue| issue.to_string());
        let mut lines = 0;
        let mut cards = Vec::new();
        for card in &told {
            let changes = changes_for_crews(card);
            let title = lines_of(&format!("{} {}", card.number, card.title), LETTERS_OF_TITLE);
            let different = changes.iter().map(|words| lines_of(words, LETTERS_OF_CHANGE)).sum();
            lines += title.max(different) + 1;
            if lines > LINES_ON_THE_NOTICE {
                break;
            }
            cards.push(json!({
                "number": card.number, "title": card.title, "was": number(card.issue),
                "is": if is_withdrawn(card) { "withdrawn".to_owned() } else { number(card.becomes) },
                "changes": changes, "notices": card.notices().join(", "),
            }));
        }
        let values = json!({ "more": told.len() - cards.len(), "cards": cards });
        page("notice-to-crews", "Notice to crews", values)
    }

    fn approval(&self) -> Page {
        let stage = self.stages.first();
        let edition = stage.and_then(|stage| self.prepared.register.edition(stage.with.as_deref()?));
        let cards = stage.into_iter().flat_map(Comparison::changed).map(|card| {
            let notices = card.notices().join(", ");
            let explained = match (card.explained, notices.is_empty()) {
                (false, _) => "UNEXPLAINED".to_owned(),
                (true, true) => "no notice needed, or a reason given".to_owned(),
                (true, false) => notices,
            };
            json!({
                "number": card.number, "title": card.title, "issue": issue(card),
                "grade": card.grade().word(), "explained": explained,
            })
        });
        let what = match edition {
            Some(edition) => format!("{}, as issued", named(edition)),
            None => "What waits to be issued. After it is signed: `fittingcards issue`.".to_owned(),
        };
        let values = json!({
            "what": what, "cards": cards.collect::<Vec<_>>(),
            "checked_by": edition.map_or("", |edition| &edition.checked_by),
            "approved_by": edition.map_or("", |edition| &edition.approved_by),
        });
        page("approval", "Approval sheet", values)
    }

    fn current_cards(&self) -> Page {
        page("current-cards", "List of current cards", json!({ "cards": self.current() }))
    }

    /// Number, title, issue, check code, edition and status of every card on the register.
    fn current(&self) -> Vec<Value> {
        let cards = self.edition().into_iter().flat_map(|edition| &edition.cards);
        let line = |(number, card): (&String, &crate::catalogue::CardIssue)| {
            let text = |name| card.texts.iter().find(|text| text.name == name).map_or("", |text| &text.text);
            let status = text("status");
            json!({
                "number": number, "title": text("name"), "issue": card.issue.to_string(),
                "code": card.check_code, "edition": card.since,
                "status": if status.is_empty() { card.status.word() } else { status },
            })
        };
        cards.map(line).collect()
    }

    /// A list for each holder that gets or gives back anything, to be signed.
    fn call_in(&self) -> Vec<Page> {
        let lists = self.newest.iter().flat_map(|newest| &newest.holders);
        let page_of = |lists: &register::HolderLists| {
            let print = lists.print.iter().map(|line| {
                json!({ "number": line.number, "title": self.title(&line.number), "copies": line.copies })
            });
            let call_in = lists.call_in.iter().map(|line| {
                json!({
                    "number": line.number, "title": self.title(&line.number), "issue": line.issue,
                    "copies": line.copies,
                })
            });
            let values = json!({
                "holder": { "id": lists.id, "name": lists.name },
                "print": print.collect::<Vec<_>>(), "call_in": call_in.collect::<Vec<_>>(),
            });
            page(&format!("call-in-{}", lists.id), format!("Call-in list, {}", lists.name), values)
        };
        lists.map(page_of).collect()
    }

    fn title(&self, number: &str) -> &str {
        self.prepared.card(number).map_or("", |card| &card.title)
    }

    /// Copies of the cards that the newest edition changed and that still are as it says.
    fn to_print_again(&self) -> Vec<Copy<'a>> {
        let prepared = self.prepared;
        let mut copies = Vec::new();
        for lists in self.newest.iter().flat_map(|newest| &newest.holders) {
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

    fn tables(&self, staging: &Staging) -> Result<(), Fault> {
        let head = [
            "edition", "list", "number", "title", "issue", "becomes", "grade", "what", "was", "is", "notices",
        ];
        let mut rows = Vec::new();
        for stage in &self.stages {
            for (list, cards) in lists(stage) {
                cards.iter().for_each(|card| rows.extend(rows_of(stage, list, card)));
            }
        }
        staging.write("register/what-changed.csv", &table("what-changed", &head, &rows)?)?;
        let head = ["number", "title", "issue", "check code", "edition", "status"];
        let text = |line: &Value, key: &str| line[key].as_str().unwrap_or_default().to_owned();
        let current: Vec<Vec<String>> = self
            .current()
            .iter()
            .map(|line| {
                ["number", "title", "issue", "code", "edition", "status"].map(|key| text(line, key)).into()
            })
            .collect();
        staging.write("register/current-cards.csv", &table("current-cards", &head, &current)?)?;
        let head = ["holder", "name", "number", "issue", "copies"];
        let call_in = self.newest.iter().flat_map(|newest| &newest.holders).flat_map(|lists| {
            lists.call_in.iter().map(|line| {
                let (issue, copies) = (line.issue.to_string(), line.copies.to_string());
                vec![lists.id.clone(), lists.name.clone(), line.number.clone(), issue, copies]
            })
        });
        Ok(staging.write("register/call-in.csv", &table("call-in", &head, &call_in.collect::<Vec<_>>())?)?)
    }
}

/// The weightiest changes of a card in words.
fn changes_for_crews(card: &CardChange) -> Vec<String> {
    let mut changes: Vec<String> =
        card.changes.iter().take(CHANGES_THERE).map(register::Change::words).collect();
    if card.changes.len() > CHANGES_THERE {
        changes.push(format!("and {} more", card.changes.len() - CHANGES_THERE));
    }
    if card.issue.is_none() {
        changes.push("new card".to_owned());
    }
    changes
}

/// Lines that a text takes where so many letters stand in one.
fn lines_of(text: &str, letters: usize) -> usize {
    text.chars().count().div_ceil(letters).max(1)
}

fn lists(stage: &Comparison) -> [(&'static str, &[CardChange]); 3] {
    [("Print again", &stage.print_again), ("New", &stage.new), ("Withdraw", &stage.withdraw)]
}

fn named(edition: &Edition) -> String {
    format!("edition {} of {}", edition.name, edition.date)
}

fn issue(card: &CardChange) -> String {
    match (card.issue, card.becomes) {
        (Some(was), Some(is)) => format!("{was} → {is}"),
        (None, Some(is)) => format!("{is}, new"),
        (Some(was), None) => format!("{was}, gone"),
        (None, None) => String::new(),
    }
}

/// A line a change; one without a change for a new card.
fn rows_of(stage: &Comparison, list: &str, card: &CardChange) -> Vec<Vec<String>> {
    let number = |issue: Option<u32>| issue.map(|issue| issue.to_string()).unwrap_or_default();
    let head = || {
        let edition = stage.with.clone().unwrap_or_default();
        let issues = [number(card.issue), number(card.becomes)];
        let [was, is] = issues;
        vec![edition, list.to_lowercase(), card.number.clone(), card.title.clone(), was, is]
    };
    let change = |change: &register::Change| {
        let own = [change.grade.word(), &change.what, &change.was, &change.is, &change.notices.join(" ")];
        head().into_iter().chain(own.map(str::to_owned)).collect()
    };
    if card.changes.is_empty() {
        let own = [card.grade().word(), "card", "", "", ""];
        return vec![head().into_iter().chain(own.map(str::to_owned)).collect()];
    }
    card.changes.iter().map(change).collect()
}

fn table(name: &str, head: &[&str], rows: &[Vec<String>]) -> Result<Vec<u8>, WorldError> {
    let fault = |reason: String| WorldError { path: format!("register/{name}.csv"), reason };
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(head).map_err(|error| fault(error.to_string()))?;
    for row in rows {
        let row: Vec<_> = row.iter().map(|text| harmless(text)).collect();
        writer.write_record(row.iter().map(AsRef::as_ref)).map_err(|error| fault(error.to_string()))?;
    }
    writer.into_inner().map_err(|error| fault(error.to_string()))
}
