//! Making cards: their faces, their pictures, and the sheets of them.

use super::cache::Inputs;
use super::copies::Copy;
use super::counted::Counted;
use super::made::{self, Making};
use super::made_from;
use super::on_sheets::Begun;
use super::options::{RenderError, Stage};
use super::refused;
use super::staging::Staging;
use crate::cards::{self, Card, Face};
use crate::diagnostics::Findings;
use crate::facts::CardFacts;
use crate::sheets::{self, PrintKind, SheetFile};
use rayon::prelude::*;
use std::sync::PoisonError;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::{self, Scope};

/// A card that is to be made or kept.
struct Wanted<'a> {
    facts: &'a CardFacts,
    /// Which copy it is and whose; empty of a card that is nobody's yet.
    copy: String,
    /// What it is called among what is remembered.
    name: String,
    inputs: Inputs,
}

/// A file of sheets of cards whose cards are made.
enum FileOfCards<'scope, 'env> {
    /// As it was, with what was found in cards that were made again.
    Kept(Findings),
    Begun {
        file: &'env SheetFile,
        begun: Begun<'scope>,
        /// What it is made from, where its cards are sound.
        inputs: Option<Inputs>,
    },
}

/// So many cards are looked at by one thread at a time, so that no thread has many left while others wait.
const A_FEW: usize = 50;

/// What a file of sheets is called among what is remembered.
fn entry(file: &SheetFile) -> String {
    format!("sheet {}", file.name)
}

impl Making<'_> {
    /// Makes cards, their pictures and their sheets; gives what is found in them.
    pub(super) fn cards(&self, facts: &[&CardFacts]) -> Result<Findings, RenderError> {
        self.cards_as_copies(facts.iter().map(|facts| Copy { facts, words: String::new() }).collect())
    }

    /// The same of cards as they are handed out.
    pub(super) fn cards_as_copies(&self, copies: Vec<Copy<'_>>) -> Result<Findings, RenderError> {
        let mut findings = Findings::new();
        let counted = Counted::new(self.progress, Stage::Cards, copies.len());
        let wanted = copies.into_par_iter().with_max_len(A_FEW).map(|copy| self.wanted(copy));
        let wanted: Vec<Wanted<'_>> = self.clock.drawing(|| wanted.collect());
        let files = sheets::files(PrintKind::Cards, wanted.len());
        thread::scope(|scope| {
            let mut earlier: Option<FileOfCards<'_, '_>> = None;
            for file in &files {
                let begun = self.file(scope, file, &wanted[file.records.clone()], &counted)?;
                if let Some(earlier) = earlier.replace(begun) {
                    findings.extend(self.finish(earlier)?);
                }
            }
            findings.extend(earlier.map(|last| self.finish(last)).transpose()?.into_iter().flatten());
            Ok(findings)
        })
    }

    fn wanted<'a>(&self, Copy { facts, words }: Copy<'a>) -> Wanted<'a> {
        let inputs = self.prepared.card_from(facts, &words);
        Wanted { facts, copy: words, name: format!("card {}", facts.number), inputs }
    }

    /// Makes the cards of a file and begins its sheets, or keeps what has not changed.
    fn file<'scope, 'env>(
        &'env self,
        scope: &'scope Scope<'scope, 'env>,
        file: &'env SheetFile,
        wanted: &[Wanted<'_>],
        counted: &Counted<'_>,
    ) -> Result<FileOfCards<'scope, 'env>, RenderError> {
        let cards: Vec<Inputs> = wanted.iter().map(|wanted| wanted.inputs.clone()).collect();
        let inputs = self.prepared.sheet_from(file, &cards);
        if self.memory.keep(&entry(file), &inputs, self.staging()) {
            let make = |wanted: &Wanted<'_>| self.kept_or_made(wanted).inspect(|_| counted.one_more());
            return Ok(FileOfCards::Kept(self.side_by_side(wanted, &make, drop)?));
        }
        let sound = AtomicBool::new(true);
        let make = |wanted: &Wanted<'_>| {
            let (card, found) = self.card(wanted)?;
            sound.fetch_and(found.is_empty(), Ordering::Relaxed);
            counted.one_more();
            Ok((card, found))
        };
        let begun = self.begin_sheets(scope, file, wanted, &make)?;
        Ok(FileOfCards::Begun { file, begun, inputs: sound.into_inner().then_some(inputs) })
    }

    /// Waits for the sheets of a file, which is remembered where it is sound.
    fn finish(&self, file: FileOfCards<'_, '_>) -> Result<Findings, RenderError> {
        match file {
            FileOfCards::Kept(findings) => Ok(findings),
            FileOfCards::Begun { file, begun, inputs } => {
                let findings = begun.finish()?;
                if let Some(inputs) = inputs.filter(|_| findings.is_empty()) {
                    self.memory.note(&entry(file), inputs, vec![made::path(file)]);
                }
                Ok(findings)
            }
        }
    }

    /// A card whose sheet is there already.
    fn kept_or_made(&self, wanted: &Wanted<'_>) -> Result<(Option<Card>, Findings), RenderError> {
        if self.keeps(wanted) { Ok((None, Findings::new())) } else { self.card(wanted) }
    }

    /// Whether a card and its pictures are kept. Its faces go into the single file, where there is one.
    fn keeps(&self, wanted: &Wanted<'_>) -> bool {
        self.single.is_none()
            && self.memory.knows(&wanted.name, &wanted.inputs)
            && self.keeps_pictures(wanted)
    }

    fn keeps_pictures(&self, wanted: &Wanted<'_>) -> bool {
        let Some(staging) = self.staging() else { return true };
        let pictures = made_from::pictures_from(&wanted.inputs, self.preview_dpi);
        let name = format!("pictures of {}", wanted.name);
        self.memory.knows(&name, &pictures)
            && self.memory.keep(&wanted.name, &wanted.inputs, Some(staging))
            && self.memory.keep(&name, &pictures, Some(staging))
    }

    fn card(&self, wanted: &Wanted<'_>) -> Result<(Option<Card>, Findings), RenderError> {
        let (card, mut findings) =
            self.clock.drawing(|| cards::make_copy(self.prepared.cards(), wanted.facts, &wanted.copy));
        if let Some(card) = &card {
            let blocks = card.front.blocks.iter().chain(&card.back.blocks);
            let layers = blocks.flat_map(|block| &block.layers);
            findings.extend(refused::found(&wanted.name, self.place(), layers.map(|layer| &*layer.source)));
            let standing = self.prepared.standing(&card.number);
            findings.extend(cards::incomplete(self.prepared.cards(), wanted.facts, &standing, card));
        }
        self.stop_for(&findings);
        if let (Some(card), Some(staging)) = (&card, self.staging())
            && !self.keeps(wanted)
        {
            self.pictures(card, staging, wanted, findings.is_empty())?;
        }
        Ok((card, findings))
    }

    /// Makes the pictures of a card; they are remembered where it is sound.
    fn pictures(
        &self,
        card: &Card,
        staging: &Staging,
        wanted: &Wanted<'_>,
        sound: bool,
    ) -> Result<(), RenderError> {
        for face in [&card.front, &card.back] {
            self.pictures_of(face, &path(&card.number, face), staging)?;
        }
        if sound {
            let paths = |ending: &str| {
                [&card.front, &card.back].map(|face| path(&card.number, face) + ending).to_vec()
            };
            self.memory.note(&wanted.name, wanted.inputs.clone(), paths(".svg"));
            let inputs = made_from::pictures_from(&wanted.inputs, self.preview_dpi);
            self.memory.note(&format!("pictures of {}", wanted.name), inputs, paths(".png"));
        }
        Ok(())
    }

    fn pictures_of(&self, face: &Face, path: &str, staging: &Staging) -> Result<(), RenderError> {
        let (svg, png) = self.clock.pictures(|| (face.svg(), face.png(self.preview_dpi)));
        let png = png.map_err(|error| RenderError::Resolution(error.to_string()))?;
        self.clock.output(|| {
            staging.write(&format!("{path}.svg"), svg.as_bytes())?;
            staging.write(&format!("{path}.png"), &png)
        })?;
        if let Some(single) = &self.single {
            let name = path.rsplit('/').next().unwrap_or(path);
            let mut faces = single.faces.lock().unwrap_or_else(PoisonError::into_inner);
            faces.insert(format!("{name}.svg"), svg);
        }
        Ok(())
    }
}

/// The path of a face's pictures without their endings.
fn path(number: &str, face: &Face) -> String {
    format!("cards/{number}-{}", face.side.word())
}
