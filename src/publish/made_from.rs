//! What each output is made from: as long as that stays, so does the output.

use super::cache::{self, Inputs};
use super::prepared::Prepared;
use crate::booklet::UnfilledPage;
use crate::cards::Form;
use crate::facts::{CardFacts, TagFacts};
use crate::sheets::SheetFile;
use crate::training::Gauge;
use rayon::prelude::*;

/// What is drawn from a part's or fitting's record.
const DRAWN: &str = "the records that it is drawn from";
/// What a card or tag says.
pub(super) const SAYS: &str = "what it says";
/// Where a card stands.
const STANDING: &str = "its standing in the register";

impl Prepared {
    /// What all outputs are made from.
    pub(super) fn common(&self) -> Option<Inputs> {
        let fonts: Vec<blake3::Hash> =
            self.catalogue.fonts.iter().map(|font| blake3::hash(&font.bytes)).collect();
        let layout = |(name, text): (&str, &str)| (format!("layouts/{name}"), cache::hash(&text));
        let mut common: Inputs = self
            .design
            .own()
            .chain(self.booklet_layouts.own())
            .chain(self.register_layouts.own())
            .map(layout)
            .collect();
        common.insert(cache::PROGRAM.to_owned(), cache::program()?);
        common.insert(cache::FONTS.to_owned(), cache::hash(&fonts));
        common.insert("the settings in catalogue.yaml".to_owned(), cache::hash(&self.catalogue.settings));
        Some(common)
    }

    /// What a card is made from, beside what all have in common; of a copy, also which it is.
    pub(super) fn card_from(&self, facts: &CardFacts, copy: &str) -> Inputs {
        from([
            (SAYS, cache::hash(facts)),
            (STANDING, cache::hash(&(self.register.standing(facts), copy))),
            (DRAWN, self.drawn_from(&facts.number)),
        ])
    }

    /// What a kit tag is made from.
    fn tag_from(&self, facts: &TagFacts) -> Inputs {
        from([
            (SAYS, cache::hash(facts)),
            (STANDING, cache::hash(&self.standing(&facts.number))),
            (DRAWN, self.drawn_from(&facts.number)),
        ])
    }

    /// What a file of sheets is made from, whose cards are made from these.
    pub(super) fn sheet_from(&self, file: &SheetFile, cards: &[Inputs]) -> Inputs {
        from([
            ("its cards", cache::hash(&cards)),
            (PLACE, cache::hash(&(file, self.catalogue.settings.sheet))),
        ])
    }

    /// What a file of forms is made from.
    pub(super) fn forms_from(&self, file: &SheetFile, forms: &[Form]) -> Inputs {
        let forms: Vec<Inputs> = forms.par_iter().map(|form| self.form_from(form)).collect();
        from([
            ("its forms", cache::hash(&forms)),
            (PLACE, cache::hash(&(file, self.catalogue.settings.sheet))),
        ])
    }

    /// What a form is made from.
    fn form_from(&self, form: &Form) -> Inputs {
        from([(SAYS, cache::hash(form)), (DRAWN, self.drawn_from(&form.number))])
    }

    /// The fitting of this number with the wrong parts that are drawn beside its own, or the body and the parts that decide
    /// in it.
    fn drawn_from(&self, number: &str) -> String {
        let fitting = self.catalogue.fittings.get(number).map(|fitting| {
            let wrong = self.mixups.wrong_parts(fitting).into_iter();
            let wrong = wrong
                .map(|case| (self.hashes.part(&case.part), &case.conductor.id, &case.outcome, case.worn));
            (self.hashes.fitting_as_drawn(fitting), wrong.collect::<Vec<_>>())
        });
        let body = self.mixups.body(number).map(|found| {
            let parts = found.parts.iter().map(|part| self.hashes.part(part));
            (self.hashes.part(&found.body), parts.collect::<Vec<_>>())
        });
        cache::hash(&(fitting, body))
    }

    /// What the files of a gauge are made from.
    pub(super) fn gauge_from(&self, gauge: &Gauge) -> Inputs {
        let mut inputs = self.form_from(&gauge.form);
        inputs.insert("its outline".to_owned(), cache::hash(&(&gauge.dxf, self.catalogue.settings.sheet)));
        inputs
    }

    /// What the sheet of outlines is made from.
    pub(super) fn proof_from(&self) -> Inputs {
        from([("its size", cache::hash(&self.catalogue.settings.card.trim()))])
    }

    /// What a file of sheets of these kit tags is made from.
    pub(super) fn tag_sheet_from(&self, file: &SheetFile, tags: &[&TagFacts]) -> Inputs {
        let tags: Vec<Inputs> = tags.par_iter().map(|facts| self.tag_from(facts)).collect();
        from([("its kit tags", cache::hash(&tags)), (PLACE, cache::hash(&file))])
    }
}

/// Which of several files it is, and what is cut from it.
const PLACE: &str = "its place among the sheets";

/// What pictures are made from, beside what their card is.
pub(super) fn pictures_from(card: &Inputs, dpi: f64) -> Inputs {
    let mut inputs = card.clone();
    inputs.insert("the resolution of pictures".to_owned(), cache::hash(&dpi));
    inputs
}

/// What a page is made from, beside the layouts.
pub(super) fn page_from(page: &UnfilledPage) -> Inputs {
    let (values, rest) = (cache::hash_json(&page.values), cache::hash(&(&page.layout, &page.shows)));
    from([("what the page says and shows", values), ("what it is held to", rest)])
}

fn from<const N: usize>(inputs: [(&str, String); N]) -> Inputs {
    inputs.map(|(name, hash)| (name.to_owned(), hash)).into()
}
