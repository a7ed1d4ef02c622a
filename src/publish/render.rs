//! The two runs over a whole catalogue: `render` makes all outputs, `check` only finds what stands in the way.

use super::apart;
use super::cache::{self, Ended, Memory, Whole};
use super::clock::Clock;
use super::copies::{self, Copy};
use super::data;
use super::grouped::grouped;
use super::made::{Making, Single};
use super::options::{
    AuditOptions, BookletForm, Drafts, Extent, Progress, RenderError, RenderOptions, Report, Stage,
    Strictness, Unchanged, Why,
};
use super::plan::Leftovers;
use super::prepared::{Prepared, prepare};
use super::put::PutInPlace;
use super::staging::Staging;
use super::why;
use crate::diagnostics::{Finding, Findings, nearest};
use crate::facts::{CardFacts, TagFacts};
use crate::records::{Node, Seen};
use crate::register::Standing;
use crate::source::{FilePath, World, WorldError};
use crate::spreadsheet::Gathered;
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::atomic::AtomicBool;

/// Makes every output of a catalogue and puts all of them in place at once. Where the findings refuse that,
/// the output stays as it is.
///
/// # Errors
/// Where something is wrong with the machine or the options; the output stays as it is then too.
pub fn render(
    world: &dyn World,
    options: &RenderOptions,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Report, RenderError> {
    apart::refuse_what_is_read(&options.output, &options.read)?;
    on_threads(options.jobs, || {
        let clock = Clock::start();
        let memory = || match options.unchanged {
            Unchanged::Kept => Memory::of(&options.output),
            Unchanged::MadeAgain => Memory::empty(&options.output),
        };
        let (memory, key) = rayon::join(memory, || clock.records(|| key(world, options)));
        let key = key?;
        // Whoever asks why is answered from the records.
        let asked = key.as_deref().filter(|_| options.why.is_none());
        match asked.and_then(|key| clock.output(|| memory.whole(key))) {
            Some(whole) => {
                // A run that was killed after it had put all in place leaves its folder; opening it clears that.
                drop(Staging::open(&options.output)?);
                Ok(as_it_is(whole, &clock))
            }
            None => made(world, options, progress, &clock, memory, key),
        }
    })
}

/// The hash of all that is read and asked for; None where the program can't be told from others.
fn key(world: &dyn World, options: &RenderOptions) -> Result<Option<String>, WorldError> {
    let RenderOptions { preview_dpi, only, booklet, strictness, drafts, training, holder, .. } = options;
    let asked = cache::hash(&(preview_dpi, only, booklet, strictness, drafts, training, holder));
    let world = cache::of_world(world)?;
    Ok(cache::program().map(|program| cache::hash(&(program, world, asked))))
}

/// The report of a run that would change nothing.
fn as_it_is(whole: Whole, clock: &Clock) -> Report {
    let Whole { findings, cards, written, bytes, .. } = whole;
    let put = PutInPlace { written, kept: written, bytes, ..PutInPlace::default() };
    Report { findings, put: Some(put), cards, why: Vec::new(), timings: clock.timings() }
}

fn made(
    world: &dyn World,
    options: &RenderOptions,
    progress: &(dyn Fn(Progress) + Sync),
    clock: &Clock,
    mut memory: Memory,
    key: Option<String>,
) -> Result<Report, RenderError> {
    let gathered = Gathered::default();
    let gather = |file: &FilePath, records: &[Node]| {
        if options.is_of_all() {
            gathered.take(file, records);
        }
    };
    let (prepared, mut findings) = reading(world, clock, progress, &gather)?;
    let cards_wanted = wanted(&prepared, &options.only, &findings)?;
    let copies = match &options.holder {
        Some(id) => Some(copies_for(&prepared, id, &cards_wanted, &findings)?),
        None => None,
    };
    findings.extend(denied(&prepared, &cards_wanted, options.drafts));
    memory.begin(prepared.common());
    let why = reasons(&prepared, &memory, options, &findings)?;
    let staging = Staging::open(&options.output)?;
    let making = Making {
        prepared: &prepared,
        memory: &memory,
        staging: Some(&staging),
        strictness: options.strictness,
        stopped: AtomicBool::new(options.strictness.refuses(&findings)),
        preview_dpi: options.preview_dpi,
        single: (options.booklet == BookletForm::PagesAndSingleFile).then(Single::default),
        clock,
        progress,
    };
    findings.extend(match (&copies, &options.holder) {
        (Some(copies), Some(holder)) => making.copies(&format!("sheets/holder-{holder}.pdf"), copies)?,
        _ => cards_and_tags(&making, &cards_wanted)?,
    });
    if options.is_of_all() {
        findings.extend(beside_cards(&making, options.training)?);
    }
    let findings = grouped(findings);
    if options.strictness.refuses(&findings) {
        return Ok(Report { findings, put: None, cards: 0, why, timings: clock.timings() });
    }
    let cards = copies.map_or(cards_wanted.len(), |copies| copies.len());
    progress(Progress { stage: Stage::Output, done: 0, of: 1 });
    if options.is_of_all() {
        clock.output(|| data::write(gathered, &prepared, &findings, &staging))?;
    }
    // A large catalogue is taken out of memory, and what is remembered written as text, while the disk is waited for.
    let put = || clock.output(|| staging.put_in_place(leftovers(options)));
    let (put, ended) = rayon::join(put, || {
        drop(prepared);
        memory.ended(options.is_of_all())
    });
    let put = put?;
    clock.output(|| remember(ended, &put, &findings, cards, key));
    progress(Progress { stage: Stage::Output, done: 1, of: 1 });
    Ok(Report { findings, put: Some(put), cards, why, timings: clock.timings() })
}

/// Why the card that is asked about was made again.
fn reasons(
    prepared: &Prepared,
    memory: &Memory,
    options: &RenderOptions,
    findings: &Findings,
) -> Result<Vec<Why>, RenderError> {
    let Some(number) = &options.why else { return Ok(Vec::new()) };
    let cards = wanted(prepared, std::slice::from_ref(number), findings)?;
    Ok(cards.iter().flat_map(|card| why::of(card, prepared, memory, options.preview_dpi)).collect())
}

fn cards_and_tags(making: &Making<'_>, cards: &[&CardFacts]) -> Result<Findings, RenderError> {
    let mut findings = making.cards(cards)?;
    findings.extend(making.tags(&tags_of(making.prepared, cards))?);
    Ok(findings)
}

/// What is made of all cards together; forms for training where they are asked for.
fn beside_cards(making: &Making<'_>, training: bool) -> Result<Findings, RenderError> {
    let mut findings = Findings::new();
    findings.extend(making.proof()?);
    findings.extend(making.booklet_and_register()?);
    if let Some(training) = making.prepared.training(training) {
        findings.extend(making.training(&training)?);
    }
    Ok(findings)
}

/// Remembers a run for the next. One that left a file of ours alone is not whole: the next says so again.
fn remember(ended: Ended, put: &PutInPlace, findings: &Findings, cards: usize, key: Option<String>) {
    let whole = key.filter(|_| put.left_alone.is_empty());
    let whole = whole.map(|key| Whole {
        key,
        findings: findings.clone(),
        cards,
        written: put.written,
        bytes: put.bytes,
    });
    ended.save(&put.files, whole);
}

/// Everything that `render` would find, with nothing written.
///
/// # Errors
/// Where something is wrong with the machine or the options.
pub fn check(
    world: &dyn World,
    options: &AuditOptions,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Findings, RenderError> {
    on_threads(options.jobs, || {
        let clock = Clock::start();
        let (prepared, mut findings) = reading(world, &clock, progress, &|_, _| {})?;
        if options.extent == Extent::Records {
            return Ok(grouped(findings));
        }
        let output = options.output.as_deref();
        let mut memory = output.map_or_else(|| Memory::empty(Path::new("")), Memory::of);
        memory.begin(prepared.common());
        let making = Making {
            prepared: &prepared,
            memory: &memory,
            staging: None,
            strictness: Strictness::Errors,
            stopped: AtomicBool::new(findings.has_errors()),
            preview_dpi: 0.0,
            // A built-in single file holds what the pages hold; one of the user's is filled to be looked over.
            single: prepared.has_own_pages().then(Single::default),
            clock: &clock,
            progress,
        };
        findings.extend(making.cards(&prepared.facts.values().collect::<Vec<_>>())?);
        findings.extend(making.tags(&prepared.tags.iter().collect::<Vec<_>>())?);
        findings.extend(beside_cards(&making, false)?);
        Ok(grouped(findings))
    })
}

pub(super) fn on_threads<T: Send>(
    jobs: Option<usize>,
    work: impl FnOnce() -> Result<T, RenderError> + Send,
) -> Result<T, RenderError> {
    let threads = rayon::ThreadPoolBuilder::new().num_threads(jobs.unwrap_or(0)).build();
    threads.map_err(|error| RenderError::Jobs(error.to_string()))?.install(work)
}

pub(super) fn reading(
    world: &dyn World,
    clock: &Clock,
    progress: &(dyn Fn(Progress) + Sync),
    seen: &Seen<'_>,
) -> Result<(Prepared, Findings), WorldError> {
    progress(Progress { stage: Stage::Records, done: 0, of: 1 });
    let prepared = clock.records(|| prepare(world, seen));
    progress(Progress { stage: Stage::Records, done: 1, of: 1 });
    prepared
}

/// The cards to make. A number without a card is a fault, unless its record may be among those in error.
fn wanted<'a>(
    prepared: &'a Prepared,
    only: &[String],
    findings: &Findings,
) -> Result<Vec<&'a CardFacts>, RenderError> {
    let numbers = || prepared.facts.keys().map(String::as_str);
    let unknown = only.iter().find(|number| !numbers().any(|known| known == number.as_str()));
    if let Some(number) = unknown.filter(|_| !findings.has_errors()) {
        let nearest = nearest(number, numbers()).map(str::to_owned);
        return Err(RenderError::UnknownCard { number: number.clone(), nearest });
    }
    let named = |card: &&CardFacts| only.is_empty() || only.contains(&card.number);
    Ok(prepared.facts.values().filter(named).collect())
}

/// The copies of a holder, card by card.
fn copies_for<'a>(
    prepared: &'a Prepared,
    id: &str,
    wanted: &[&'a CardFacts],
    findings: &Findings,
) -> Result<Vec<Copy<'a>>, RenderError> {
    match prepared.catalogue.holders.get(id) {
        Some(holder) => Ok(copies::of_holder(holder, wanted)),
        // Its record may be among those in error.
        None if findings.has_errors() => Ok(Vec::new()),
        None => {
            let nearest = nearest(id, prepared.catalogue.holders.keys().map(String::as_str));
            Err(RenderError::UnknownHolder { id: id.to_owned(), nearest: nearest.map(str::to_owned) })
        }
    }
}

/// Drafts among these cards, where they are not to be.
fn denied(prepared: &Prepared, wanted: &[&CardFacts], drafts: Drafts) -> Vec<Finding> {
    let denied = wanted.iter().filter(|_| drafts == Drafts::Denied);
    let is_draft = |card: &&&CardFacts| prepared.standing(&card.number) == Standing::Draft;
    denied.filter(is_draft).map(|card| prepared.not_issued(&card.number)).collect()
}

/// The tags of the fittings among these cards.
pub(super) fn tags_of<'a>(prepared: &'a Prepared, cards: &[&CardFacts]) -> Vec<&'a TagFacts> {
    let numbers: BTreeSet<&str> = cards.iter().map(|card| card.number.as_str()).collect();
    prepared.tags.iter().filter(|tag| numbers.contains(tag.number.as_str())).collect()
}

/// What becomes of files of an earlier run that this one does not make.
fn leftovers(options: &RenderOptions) -> Leftovers {
    match options {
        options if options.holder.is_some() => Leftovers::Kept,
        options if !options.only.is_empty() => Leftovers::KeptExceptIn("sheets/cards"),
        _ => Leftovers::Removed,
    }
}
