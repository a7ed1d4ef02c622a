//! The pieces that pages are made of: links to records, named facts, marks, notes, cards.

use super::input::Booklet;
use crate::catalogue::{Conductor, Fitting, Mark, Notice, Part, Status};
use crate::facts::words;
use crate::notes::{self, address};
use crate::register::{CardChange, Change, of_card};
use serde_json::{Value, json};
use std::fmt::Write;
use std::sync::Arc;

/// A name and a text; `None` where there is no text, so that what a record lacks is left out.
pub(super) fn fact(name: &str, text: impl Into<String>) -> Option<Value> {
    let text = text.into();
    (!text.is_empty()).then(|| json!({ "name": name, "text": text }))
}

/// Facts that there are, as a list.
pub(super) fn facts<const N: usize>(facts: [Option<Value>; N]) -> Vec<Value> {
    facts.into_iter().flatten().collect()
}

fn link(href: String, number: &str, name: &str, standing: Standing) -> Value {
    json!({ "href": href, "number": number, "name": name, "status": standing.words, "standing": standing.kind })
}

pub(super) fn fitting_link(booklet: &Booklet<'_>, fitting: &Fitting) -> Value {
    let words = words::status(fitting.status, fitting.use_instead.as_deref());
    let href = booklet.link(&address::fitting(&fitting.number));
    link(href, &fitting.number, &fitting.name, Standing { words, kind: standing(fitting.status) })
}

pub(super) fn fitting_links(booklet: &Booklet<'_>, fittings: Option<&Vec<Arc<Fitting>>>) -> Vec<Value> {
    fittings.into_iter().flatten().map(|fitting| fitting_link(booklet, fitting)).collect()
}

pub(super) fn part_link(booklet: &Booklet<'_>, part: &Part) -> Value {
    let href = booklet.link(&address::part(&part.number));
    let standing = Standing { words: status(part.status), kind: standing(part.status) };
    link(href, &part.number, &part.name, standing)
}

/// The page of a body that several fittings share; of any other its page as a part.
pub(super) fn body_link(booklet: &Booklet<'_>, part: &Part) -> Value {
    if booklet.shared_body(&part.number).is_none() {
        return part_link(booklet, part);
    }
    let href = booklet.link(&address::body(&part.number));
    let name = format!("{}: {}", part.name, body_tells(booklet, part));
    link(href, &part.number, &name, Standing::default())
}

/// What the page of a shared body tells.
pub(super) fn body_tells(booklet: &Booklet<'_>, part: &Part) -> &'static str {
    match booklet.input.mixups.body(&part.number) {
        Some(_) => "what goes into it",
        None => "which fittings share it",
    }
}

pub(super) fn notice_link(booklet: &Booklet<'_>, notice: &Notice) -> Value {
    let href = booklet.link(&address::notice(&notice.number));
    link(href, &notice.number, &notice.title, Standing::default())
}

pub(super) fn conductor_link(booklet: &Booklet<'_>, conductor: &Conductor) -> Value {
    let href = booklet.link(&address::conductor(&conductor.id));
    json!({ "href": href, "name": conductor.name })
}

/// How a record stands, in words and as the form that pages give it; both empty while it is current.
#[derive(Default)]
struct Standing {
    words: String,
    kind: &'static str,
}

/// The form that pages give a status, by the end of its class; empty while a record is current.
pub(super) fn standing(status: Status) -> &'static str {
    match status {
        Status::Current => "",
        Status::OnHold => "held",
        Status::Withdrawn => "withdrawn",
        Status::Superseded => "superseded",
    }
}

/// From when the card of a record holds that waits for its day, with what holds until then; empty where it holds already.
pub(super) fn waiting(booklet: &Booklet<'_>, number: &str, status: Status) -> String {
    let waiting = booklet.input.register.waiting(number).filter(|_| status == Status::Current);
    waiting.map_or_else(String::new, |waiting| format!("{}.", waiting.words()))
}

/// A part's status in words; empty while it is current.
pub(super) fn status(status: Status) -> String {
    words::status(status, None)
}

/// A mark as words, and as a swatch with its notches cut into the lower edge of a 48 × 26 box.
pub(super) fn mark(mark: &Mark) -> Value {
    let notches = words::notches(mark.notches);
    let texts = [mark.colour.word(), &mark.text, &notches];
    let words: Vec<&str> = texts.into_iter().filter(|text| !text.is_empty()).collect();
    let ground = mark.colour.printed();
    json!({
        "words": words.join(", "),
        "text": mark.text,
        "fill": ground.hex(),
        "ink": ground.text_on_it().hex(),
        "outline": outline(mark.notches),
    })
}

pub(super) fn optional_mark(of: Option<&Mark>) -> Value {
    of.map_or(Value::Null, mark)
}

fn outline(notches: u32) -> String {
    let pitch = 9_u32.min(44 / notches.max(1));
    let mut path = "M1 1H47V25".to_owned();
    for notch in 0..notches {
        // Twice the distance from the middle, so that even numbers stay whole.
        let centre = 24.0 + f64::from(pitch) * (f64::from(notches - 1) / 2.0 - f64::from(notch));
        let half = f64::from(pitch) / 3.0;
        let _ = write!(path, "L{:.1} 25L{centre:.1} 19L{:.1} 25", centre + half, centre - half);
    }
    path + "H1Z"
}

/// The note about a record as HTML; empty where there is none.
pub(super) fn note(booklet: &Booklet<'_>, record: &str) -> String {
    let note = booklet.notes.about(record);
    note.map_or_else(String::new, |note| notes::to_html(note, &booklet.notes, booklet.form()).0.body)
}

/// The card of a fitting or shared body: its faces, its files, its issue, and its size on the screen.
pub(super) fn card(booklet: &Booklet<'_>, number: &str) -> Value {
    let (width, height) = booklet.input.catalogue.settings.card.trim();
    let pixels = |length: crate::units::Length| format!("{:.0}", length.mm() * CARD_PIXELS_PER_MM);
    json!({
        "number": number,
        "front": booklet.face(&format!("{number}-front.svg")),
        "back": booklet.face(&format!("{number}-back.svg")),
        "issue": booklet.input.issues.get(number).map_or("Draft, not issued.", String::as_str),
        "width": pixels(width),
        "height": pixels(height),
        "history": history(booklet, number),
        "files": card_files(booklet, number),
        "sheets": sheet_links(booklet, booklet.input.sheet_of.get(number).map(std::slice::from_ref).unwrap_or_default()),
    })
}

/// The issues of a card, the newest first: edition, date, what changed and by which notice.
fn history(booklet: &Booklet<'_>, number: &str) -> Vec<Value> {
    let issues = booklet.input.register.issues(number).map(|(edition, card)| {
        let changes = booklet.input.history.iter().find(|found| found.with.as_deref() == Some(&edition.name));
        let changed = changes.and_then(|found| of_card(found, number));
        let words = changed.into_iter().flat_map(|card| card.changes.iter().map(Change::words));
        json!({
            "issue": card.issue, "edition": edition.name, "date": edition.date.to_string(),
            "changes": words.collect::<Vec<_>>(),
            "notices": changed.map(CardChange::notices).unwrap_or_default().join(", "),
        })
    });
    let mut issues: Vec<Value> = issues.collect();
    issues.reverse();
    issues
}

/// Links to the pictures of a card; none where no file lies beside the booklet.
fn card_files(booklet: &Booklet<'_>, number: &str) -> Vec<Value> {
    let link = |name: String| booklet.link_to_file("cards", &name);
    let row = |(side, word): (&str, &str)| {
        let (svg, png) = (link(format!("{number}-{word}.svg"))?, link(format!("{number}-{word}.png"))?);
        Some(json!({ "side": side, "svg": { "href": svg }, "png": { "href": png } }))
    };
    [("Front", "front"), ("Back", "back")].into_iter().filter_map(row).collect()
}

/// Links to sheets to print, with their file names; none where no file lies beside the booklet.
pub(super) fn sheet_links(booklet: &Booklet<'_>, sheets: &[String]) -> Vec<Value> {
    let row = |name: &String| {
        booklet.link_to_file("sheets", name).map(|href| json!({ "href": href, "name": name }))
    };
    sheets.iter().filter_map(row).collect()
}

/// A little over life size, for a screen at arm's length.
const CARD_PIXELS_PER_MM: f64 = 4.6;

/// A text, or a word where there is none.
pub(super) fn or_else(text: &str, otherwise: &str) -> String {
    if text.is_empty() { otherwise.to_owned() } else { text.to_owned() }
}

/// A text that begins with a capital letter.
pub(super) fn capital(text: &str) -> String {
    let mut characters = text.chars();
    characters.next().map_or_else(String::new, |first| first.to_uppercase().chain(characters).collect())
}

/// Data for the script of a page as JSON; in an outline their hash.
pub(super) fn script_data(booklet: &Booklet<'_>, value: &Value) -> String {
    match booklet.outlines {
        Some(_) => blake3::hash(value.to_string().as_bytes()).to_string(),
        None => script_json(value),
    }
}

/// JSON as it may stand inside a script element.
pub(super) fn script_json(value: &Value) -> String {
    let escape = |text: String| text.replace('<', "\\u003c").replace('\u{2028}', "\\u2028");
    escape(value.to_string()).replace('\u{2029}', "\\u2029")
}
