//! What every run begins with: records read and checked, everything computed, layouts and fonts at hand.

use crate::audit;
use crate::booklet;
use crate::cards;
use crate::catalogue::{self, Catalogue, RecordHashes, Training};
use crate::diagnostics::{Finding, Findings};
use crate::facts::{self, CardFacts, TagFacts};
use crate::installed::{self, Installed};
use crate::layouts::{self, Layouts};
use crate::mixups::{self, Mixups};
use crate::notes;
use crate::records::Seen;
use crate::register::{self, Comparison, Register, Reissue, Standing, State};
use crate::sheets::{self, PrintKind, SheetFile};
use crate::sketch;
use crate::source::{Folder, World, WorldError};
use crate::training;
use crate::typeset::{FontSource, Fonts};
use crate::units::{Length, Numerals};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Everything that outputs are made from.
pub(super) struct Prepared {
    pub(super) catalogue: Catalogue,
    pub(super) mixups: Mixups,
    pub(super) register: Register,
    /// What each card prints, by its number, which is also the cards' order.
    pub(super) facts: BTreeMap<String, CardFacts>,
    pub(super) tags: Vec<TagFacts>,
    pub(super) installed: Vec<Installed>,
    /// What the records hold, to know what has changed.
    pub(super) hashes: RecordHashes,
    pub(super) fonts: Arc<Fonts>,
    pub(super) design: cards::Design,
    pub(super) booklet_layouts: Layouts,
    pub(super) register_layouts: Layouts,
    /// Whether a layout does not compile; it is then not there to be filled.
    layouts_failed: bool,
    /// The present state as the next edition would hold it.
    pub(super) present: State,
    /// What each edition changed, and what waits to be issued.
    pub(super) history: Vec<Comparison>,
    issues: BTreeMap<String, String>,
    state: &'static str,
    card_sheets: Vec<String>,
    sheet_of: BTreeMap<String, String>,
    tag_sheets: Vec<String>,
}

/// Reads and computes, and shows the records as they are written; with everything that is found on the way.
pub(super) fn prepare(world: &dyn World, seen: &Seen<'_>) -> Result<(Prepared, Findings), WorldError> {
    let loaded = catalogue::load_seen(world, seen)?;
    let (catalogue, mut findings) = (loaded.catalogue, loaded.findings);
    let ((mixups, found), (fonts, found_in_texts)) =
        rayon::join(|| confused(&catalogue), || texts(world, &catalogue));
    findings.extend(found);
    findings.extend(found_in_texts);
    let (installed, found) = installed::installed(&catalogue, &mixups);
    findings.extend(found);
    findings.extend(world.unread(Folder::Layouts)?.iter().map(Finding::of_unread));
    let (design, mut found) = cards::Design::load(world, &[])?;
    let (booklet_layouts, more) = Layouts::load(world, "booklet", &[])?;
    found.extend(more);
    let (register_layouts, more) = Layouts::load_together(world, &["register", "paper"], &[])?;
    found.extend(more);
    let layouts_failed = found.has_errors();
    findings.extend(found);
    findings.extend(layouts::unused(world)?);
    let register = Register::of(&catalogue);
    let facts = facts::of_catalogue(&catalogue, &mixups);
    let tags = facts::tags(&catalogue);
    findings.extend(too_large_for_the_sheet(&catalogue));
    let issues = issues(&facts, &register);
    let present = register.next(&catalogue, &facts, "", Reissue::default());
    let history = register::history(&register, &present);
    let prepared = Prepared {
        state: if issues.len() < facts.len() { "Draft, not issued" } else { "" },
        issues,
        card_sheets: file_names(PrintKind::Cards, facts.len()),
        sheet_of: sheet_of(&facts),
        tag_sheets: file_names(PrintKind::Tags, tags.len()),
        hashes: RecordHashes::of(&catalogue),
        catalogue,
        mixups,
        register,
        facts: facts.into_iter().map(|card| (card.number.clone(), card)).collect(),
        tags,
        installed,
        fonts,
        design,
        booklet_layouts,
        register_layouts,
        layouts_failed,
        history,
        present,
    };
    Ok((prepared, findings))
}

/// What can be confused, with what an inspector finds.
fn confused(catalogue: &Catalogue) -> (Mixups, Findings) {
    let mixups = mixups::find(catalogue);
    let findings = audit::check(audit::Context { catalogue, mixups: &mixups });
    (mixups, findings)
}

/// What texts are set with, with what is found in notes and fonts.
fn texts(world: &dyn World, catalogue: &Catalogue) -> (Arc<Fonts>, Findings) {
    let mut findings = notes::check(catalogue);
    let sources: Vec<FontSource> = catalogue.fonts.iter().map(font_source).collect();
    let (fonts, found) = Fonts::new(&world.fonts(), &sources);
    findings.extend(found);
    (Arc::new(fonts), findings)
}

impl Prepared {
    /// Whether a finding adds something: a layout that does not compile is found once, not once more for
    /// every card and page that lacks it.
    pub(super) fn is_news(&self, finding: &Finding) -> bool {
        !(self.layouts_failed && finding.code == "layout-missing")
    }

    /// Whether the user brings layouts of pages.
    pub(super) fn has_own_pages(&self) -> bool {
        self.booklet_layouts.own().next().is_some()
    }

    pub(super) fn cards(&self) -> cards::Input<'_> {
        cards::Input {
            catalogue: &self.catalogue,
            mixups: &self.mixups,
            register: &self.register,
            design: &self.design,
            fonts: &self.fonts,
        }
    }

    pub(super) fn booklet(&self) -> booklet::Input<'_> {
        booklet::Input {
            catalogue: &self.catalogue,
            mixups: &self.mixups,
            facts: &self.facts,
            register: &self.register,
            history: &self.history,
            layouts: &self.booklet_layouts,
            drawing: self.drawing(),
            state: self.state,
            issues: &self.issues,
            sheets: &self.card_sheets,
            sheet_of: &self.sheet_of,
            tag_sheets: &self.tag_sheets,
        }
    }

    /// What is made for the training cell: what the catalogue chooses, else the defaults where it is asked for.
    pub(super) fn training(&self, asked: bool) -> Option<Training> {
        self.catalogue.settings.training.clone().or_else(|| asked.then(Training::default))
    }

    pub(super) fn for_training<'a>(&'a self, training: &'a Training) -> training::Input<'a> {
        training::Input { cards: self.cards(), facts: &self.facts, training }
    }

    /// Drawings take the room that each page gives them; none is larger than an A4 page.
    fn drawing(&self) -> sketch::Options<'_> {
        let (width, height) = (Length::from_mm(210.0), Length::from_mm(297.0));
        let numerals = Numerals::new(self.catalogue.settings.decimal_mark);
        sketch::Options { numerals, ..sketch::Options::new(&self.fonts, width, height) }
    }

    /// What the card of this number prints.
    pub(super) fn card(&self, number: &str) -> Option<&CardFacts> {
        self.facts.get(number)
    }

    /// Where the card of this number stands; a draft where there is none.
    pub(super) fn standing(&self, number: &str) -> Standing {
        self.card(number).map_or(Standing::Draft, |card| self.register.standing(card))
    }

    /// What is said of a card that no edition holds, where that is not to be.
    pub(super) fn not_issued(&self, number: &str) -> Finding {
        let fitting = self.catalogue.fittings.get(number).map(|fitting| &fitting.origin);
        let origin = fitting.or_else(|| self.catalogue.parts.get(number).map(|part| &part.origin));
        let place = origin.unwrap_or(&self.catalogue.settings.origin).place.clone();
        Finding::error("card-not-issued", place, format!("no edition holds what card {number} prints"))
            .record(number)
            .help(
                "`fittingcards compare` says what has changed, `fittingcards issue` puts it on the register",
            )
    }

    pub(super) fn sheets(&self, kind: PrintKind) -> sheets::Options<'_> {
        let settings = &self.catalogue.settings;
        sheets::Options {
            title: &settings.title,
            edition: &settings.edition,
            date: settings.date,
            language: &settings.language,
            format: settings.sheet,
            trim: match kind {
                PrintKind::Cards => settings.card.trim(),
                PrintKind::Tags => cards::TAG.trim(),
                PrintKind::Slips => cards::A5.trim,
                PrintKind::Gauges => training::GAUGE.trim,
                PrintKind::Labels => training::LABEL.trim,
            },
            fonts: &self.fonts,
        }
    }
}

fn font_source(file: &catalogue::FontFile) -> FontSource {
    FontSource { bytes: file.bytes.clone(), place: file.place.clone() }
}

fn file_names(kind: PrintKind, records: usize) -> Vec<String> {
    sheets::files(kind, records).into_iter().map(|file| file.name).collect()
}

/// The file of the sheets that each card is on.
fn sheet_of(facts: &[CardFacts]) -> BTreeMap<String, String> {
    let files = sheets::files(PrintKind::Cards, facts.len()).into_iter();
    let on = |file: SheetFile| {
        facts[file.records].iter().map(move |card| (card.number.clone(), file.name.clone()))
    };
    files.flat_map(on).collect()
}

/// The issue and check code of each issued card, in words.
fn issues(facts: &[CardFacts], register: &Register) -> BTreeMap<String, String> {
    let in_words = |card: &CardFacts| match register.standing(card) {
        Standing::Issued(issued) => {
            let words = format!("issue {}, check code {}", issued.issue, issued.check_code);
            Some((card.number.clone(), words))
        }
        Standing::Draft => None,
    };
    facts.par_iter().filter_map(in_words).collect()
}

fn too_large_for_the_sheet(catalogue: &Catalogue) -> Option<Finding> {
    let settings = &catalogue.settings;
    if sheets::capacity(settings.card.trim(), &settings.sheet).is_some() {
        return None;
    }
    let (card, sheet) = (settings.card.size.word(), settings.sheet.size.word());
    let message = format!("not one card of size {card} fits a sheet of size {sheet}");
    let help = "choose a larger sheet, a smaller card, or less bleed";
    Some(
        Finding::error("card-larger-than-sheet", settings.origin.of("sheet"), message)
            .field("sheet")
            .help(help),
    )
}
