//! `issue`: the present state becomes an edition on the register.

use super::cache::Memory;
use super::clock::Clock;
use super::copies;
use super::grouped::grouped;
use super::made::Making;
use super::options::{Progress, RenderError, Strictness};
use super::prepared::Prepared;
use super::register_folder::RegisterFolder;
use super::render::{on_threads, reading, tags_of};
use crate::catalogue::Catalogue;
use crate::diagnostics::{Finding, Findings, Severity};
use crate::register::{
    Asked, Comparison, Refusal, Reissue, State, compare, days_differ, edition_text, refusals, unexplained,
};
use crate::source::{World, WorldError};
use std::path::{Path, PathBuf};
use std::sync::atomic::AtomicBool;

/// Where an edition goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum IssueInto<'a> {
    /// Nowhere: only what would be done is said.
    Nothing,
    /// The register of the catalogue in this folder.
    Catalogue(&'a Path),
}

/// What came of it.
#[derive(Debug)]
pub struct IssueReport {
    /// Everything that was found in the catalogue, and what of it keeps the edition back.
    pub findings: Findings,
    /// What is wrong with what was asked for.
    pub refusals: Vec<Refusal>,
    /// What changes with the edition.
    pub comparison: Comparison,
    /// The catalogue, for the titles of notices.
    pub catalogue: Catalogue,
    /// How many cards the edition holds.
    pub cards: usize,
    /// The file that was written.
    pub written: Option<PathBuf>,
}

impl IssueReport {
    /// Whether the edition is refused.
    #[must_use]
    pub fn is_refused(&self) -> bool {
        self.findings.has_errors() || !self.refusals.is_empty()
    }
}

/// Puts the present state on the register as an edition, whole or not at all. Cards that get a new issue are made and
/// looked over first, as `render` does; those that print the same were when they were issued.
///
/// # Errors
/// Where something is wrong with the machine, or another `issue` is at work; the register stays as it is.
pub fn issue(
    world: &dyn World,
    asked: &Asked,
    into: IssueInto<'_>,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<IssueReport, RenderError> {
    let mut folder = match into {
        IssueInto::Nothing => None,
        IssueInto::Catalogue(catalogue) => Some(RegisterFolder::open(catalogue)?),
    };
    on_threads(None, || {
        let clock = Clock::start();
        let (mut prepared, mut findings) = reading(world, &clock, progress, &|_, _| {})?;
        let reissue = Reissue { numbers: &asked.reissue, because: &asked.because };
        let next =
            prepared.register.next(&prepared.catalogue, prepared.facts.values(), &asked.edition, reissue);
        let after = prepared.register.with(asked, next.clone());
        let register = std::mem::replace(&mut prepared.register, after);
        findings.extend(looked_over(&prepared, &next, asked, &findings, &clock, progress)?);
        prepared.register = register;
        let mut report = judged(&prepared, &next, asked, grouped(findings));
        if let Some(folder) = folder.as_mut().filter(|_| !report.is_refused()) {
            let text = edition_text(&prepared.register, &prepared.catalogue, &next, asked)
                .map_err(|error| unwritable(&asked.edition, &error))?;
            report.written = Some(folder.put(&asked.edition, &text)?);
        }
        Ok(report)
    })
}

/// What is found on cards that get a new issue, and on the tags of their kits.
fn looked_over(
    prepared: &Prepared,
    next: &State,
    asked: &Asked,
    findings: &Findings,
    clock: &Clock,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Findings, RenderError> {
    let mut found = Findings::new();
    if findings.has_errors() {
        return Ok(found);
    }
    let memory = Memory::empty(Path::new(""));
    let making = Making {
        prepared,
        memory: &memory,
        staging: None,
        strictness: Strictness::Errors,
        stopped: AtomicBool::new(false),
        preview_dpi: 0.0,
        single: None,
        clock,
        progress,
    };
    let is_new = |number: &str| next.get(number).is_some_and(|card| card.since == asked.edition);
    let cards: Vec<_> = prepared.facts.values().filter(|card| is_new(&card.number)).collect();
    // A copy's number takes room, and nothing else tells it from the card without one: what holds it holds that too.
    let holders = prepared.catalogue.holders.values().map(AsRef::as_ref);
    found.extend(making.cards_as_copies(copies::as_handed_out(holders, &cards))?);
    found.extend(making.tags(&tags_of(prepared, &cards))?);
    Ok(found)
}

fn judged(prepared: &Prepared, next: &State, asked: &Asked, findings: Findings) -> IssueReport {
    let Prepared { catalogue, register, facts, .. } = prepared;
    let newest = register.editions().len().checked_sub(1);
    let comparison = compare(register, catalogue, (newest, None), (next, &asked.because));
    let mut all = Findings::new();
    all.extend(findings.into_iter().map(|finding| kept_back_by(finding, catalogue)));
    all.extend(unexplained(&comparison, catalogue));
    all.extend(days_differ(&comparison, catalogue, asked.date));
    all.extend(otherwise_in_settings(asked, catalogue));
    IssueReport {
        findings: all,
        refusals: refusals(asked, register, catalogue, facts.values()),
        comparison,
        catalogue: catalogue.clone(),
        cards: next.len(),
        written: None,
    }
}

/// A card that lacks what it must not lack is no card to be issued: what `render` lets pass is an error here.
fn kept_back_by(mut finding: Finding, catalogue: &Catalogue) -> Finding {
    let of_current = finding.record.as_ref().and_then(|number| catalogue.fittings.get(number));
    if finding.code == "incomplete"
        && of_current.is_some_and(|fitting| fitting.status == crate::catalogue::Status::Current)
    {
        finding.severity = Severity::Error;
        finding.help = format!("{}; an incomplete card is not issued", finding.help);
    }
    finding
}

/// `issue` goes by its options; a catalogue that says otherwise is told of.
fn otherwise_in_settings(asked: &Asked, catalogue: &Catalogue) -> Vec<Finding> {
    let settings = &catalogue.settings;
    let stated = settings.origin.has("date").then_some(settings.date).flatten();
    let date = stated.map_or_else(|| asked.date.to_string(), |date| date.to_string());
    [("edition", &settings.edition, &asked.edition), ("date", &date, &asked.date.to_string())]
        .into_iter()
        .filter(|(_, stated, asked)| stated != asked)
        .map(|(key, stated, asked)| {
            let message = format!("the {key} here is {stated}, and {asked} is issued");
            Finding::note("issued-otherwise", settings.origin.of(key), message)
                .field(key)
                .help("`issue` goes by its options; write here what is true after it")
        })
        .collect()
}

fn unwritable(edition: &str, error: &serde_json::Error) -> WorldError {
    WorldError { path: format!("register/{edition}.yaml"), reason: error.to_string() }
}
