//! `data/`: everything computed, for other programs.
//!
//! `data/catalogue.json` is one object:
//!
//! | key | what it holds |
//! | --- | --- |
//! | `title`, `owner`, `edition`, `date`, `language`, `decimal_mark`, `before_work`, `caution` | as in the catalogue |
//! | `card`, `sheet`, `limits` | settings, defaults filled in |
//! | `materials` | by id, built-in ones among them, with `contact_wire_strength_N_per_mm2` by nominal section |
//! | `conductors` | by id: `construction` as recorded, `stated` as the specification prints it, `computed` as worked out here, `fittings` |
//! | `parts` | by number: `geometry` as recorded, `fittings` that they belong to |
//! | `fittings` | by number: conductors, parts, stand-out, tightening, checks, notices; texts with their values put in |
//! | `bodies` | every mix-up of every body, as the command `mixups` gives it |
//! | `procedures` | by id: texts as written, which fittings put their values into |
//! | `notices`, `holders` | by number and id |
//! | `cards` | by number: status, issue and check code, and what the card `prints`, name by name |
//!
//! Keys carry their unit and are those of the records. Numbers are not rounded, but for the noise of binary
//! fractions. What is not known is absent. Lists that are not empty keep the order of the records.

mod conductors;
mod construction;
mod fittings;
mod materials;
mod object;
mod object_text;
mod parts;
mod settings;
mod tables;
mod uses;
mod written;

use crate::catalogue::Catalogue;
use crate::facts::{CardFacts, PrintedText};
use crate::mixups::{self, Mixups};
use crate::records::harmless;
use crate::register::{Register, Standing};
use crate::units::Numerals;
use object::Object;
use object_text::ObjectText;
use serde_json::Value;
use uses::uses;
pub(super) use written::write;

/// The text of `data/catalogue.json` in pieces, one behind the other.
#[must_use]
pub fn catalogue_json<'f>(
    catalogue: &Catalogue,
    mixups: &Mixups,
    cards: impl IntoIterator<Item = &'f CardFacts>,
    register: &Register,
) -> Vec<Vec<u8>> {
    let uses = uses(catalogue);
    let numerals = Numerals::new(catalogue.settings.decimal_mark);
    let mut text = ObjectText::of(settings::object(&catalogue.settings));
    text.list("materials", catalogue.materials.values(), |material| materials::object(material));
    text.list("conductors", catalogue.conductors.values(), |conductor| conductors::object(conductor, &uses));
    text.list("parts", catalogue.parts.values(), |part| parts::object(part, &uses));
    text.list("fittings", catalogue.fittings.values(), |fitting| fittings::object(fitting, numerals));
    text.list("bodies", &mixups.bodies, mixups::body_to_json);
    text.list("without_body", &mixups.without_body, mixups::interface_to_json);
    text.list("procedures", catalogue.procedures.values(), |procedure| fittings::procedure(procedure));
    text.list("notices", catalogue.notices.values(), |notice| fittings::notice(notice));
    text.list("holders", catalogue.holders.values(), |holder| fittings::holder(holder));
    text.list("cards", cards, |card| self::card(card, register));
    text.whole()
}

fn card(card: &CardFacts, register: &Register) -> Value {
    let mut object = Object::new();
    object.put("number", card.number.as_str());
    object.put("title", card.title.as_str());
    object.put("status", card.status.word());
    if let Standing::Issued(issued) = register.standing(card) {
        object.put("issue", issued.issue);
        object.put("edition", issued.edition);
        object.put("check_code", issued.check_code);
    }
    object.list("prints", card.printed().iter().map(printed_text));
    object.into()
}

fn printed_text(printed: &PrintedText) -> Value {
    let mut object = Object::new();
    object.put("name", printed.name.as_str());
    object.put("text", printed.text.as_str());
    object.into()
}

/// `data/cards.csv`: number, title, issue, status, check code; issue and check code are empty for a draft. A text
/// that a spreadsheet would run begins with an apostrophe.
///
/// # Errors
/// Never with cards that the catalogue made: a record of five texts can be written into memory.
pub fn card_list<'f>(
    cards: impl IntoIterator<Item = &'f CardFacts>,
    register: &Register,
) -> Result<Vec<u8>, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(["number", "title", "issue", "status", "check code"])?;
    for card in cards {
        let (issue, check_code) = match register.standing(card) {
            Standing::Issued(issued) => (issued.issue.to_string(), issued.check_code),
            Standing::Draft => (String::new(), String::new()),
        };
        let row = [&*card.number, &*card.title, &*issue, card.status.word(), &*check_code];
        writer.write_record(row.map(harmless).iter().map(AsRef::as_ref))?;
    }
    writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))
}
