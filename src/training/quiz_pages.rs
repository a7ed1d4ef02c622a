//! A quiz as two pages: one for pupils, in which nothing tells what is right, and its key.

use super::page::{Page, cards};
use super::question::{About, Answer, Picture, Question};
use super::quiz::Asked;
use super::{Input, swatch};
use crate::catalogue::TaughtGroup;
use crate::facts::{CheckCode, PrintedText};
use crate::sketch::{Drawing, Options, conductor_section, end_view, number};
use crate::units::Length;
use serde_json::{Value, json};

/// The most room for a picture, in millimetres.
const ROOM: (f64, f64) = (70.0, 50.0);
/// Pixels a millimetre, as style sheets count them: 96 an inch (CSS Values 4).
const PIXELS_PER_MM: f64 = 96.0 / 25.4;

/// The page for pupils, and the key.
pub(super) fn pages(input: Input<'_>, group: &TaughtGroup, asked: &[Asked]) -> [Page; 2] {
    let numbers = asked.iter().map(|asked| asked.question.card.as_str());
    let cards = cards(input, numbers);
    let pass = least_right(asked.len(), input.training.pass_percent);
    let paper = paper(asked);
    let of = |heading: &str, questions: Vec<Value>| {
        json!({
            "heading": format!("{heading}: {}", group.name), "questions": questions, "cards": cards, "count": asked.len(),
            "pass": pass, "group": group.id, "paper": paper.as_str(),
        })
    };
    let questions = asked.iter().zip(1..).map(|(asked, nth)| open(input, asked, nth)).collect();
    let answers: Vec<Value> = asked.iter().zip(1..).map(|(asked, nth)| answered(asked, nth)).collect();
    let page = |name: &str, layout, values| {
        let mut page = Page::new(format!("{name}-{}.html", group.id), layout, values);
        page.shows.push(("the code that quiz and key have in common", paper.to_string()));
        page
    };
    [
        page("quiz", "training/quiz.html", of("Quiz", questions)),
        page("key", "training/key.html", of("Key to the quiz", answers)),
    ]
}

/// What a quiz and its key have in common, and no other quiz: records change within an edition, and questions with them.
fn paper(asked: &[Asked]) -> CheckCode {
    let texts = asked.iter().flat_map(|asked| {
        let About { fitting, conductor, other, .. } = &asked.question.about;
        let about = PrintedText::new("about", format!("{fitting}|{conductor}|{other}"));
        let options = asked.options.iter().enumerate().map(|(nth, option)| {
            let name = if nth == asked.right { "right" } else { "wrong" };
            PrintedText::new(name, format!("{} {}", option.value, option.text))
        });
        [PrintedText::new("asks", &*asked.question.asks), about].into_iter().chain(options)
    });
    CheckCode::of(&texts.collect::<Vec<_>>())
}

/// How many of so many must be right.
pub(super) fn least_right(count: usize, percent: f64) -> usize {
    // What rounding of binary fractions may take is less than this.
    ((count as f64 * percent / 100.0) - 1e-9).ceil().max(0.0) as usize
}

/// A question as pupils see it: nothing in it says which answer is right.
fn open(input: Input<'_>, asked: &Asked, nth: usize) -> Value {
    let options = asked.options.iter().enumerate().map(|(index, option)| {
        json!({ "letter": letter(index), "text": option.text, "mark": option.mark.as_ref().map(swatch::mark) })
    });
    json!({
        "n": nth, "asks": asked.question.asks, "safety": asked.question.kind.is_of_safety(),
        "options": options.collect::<Vec<_>>(),
        "picture": picture(input, &asked.question).map(|drawing| drawn(&drawing, nth)),
    })
}

fn answered(asked: &Asked, nth: usize) -> Value {
    let option = |(index, option): (usize, &Answer)| {
        let mark = option.mark.as_ref().map(|mark| format!(" ({})", mark.text)).unwrap_or_default();
        json!({
            "letter": letter(index), "text": format!("{}{mark}", option.text), "why": option.why,
            "right": index == asked.right,
        })
    };
    json!({
        "n": nth, "asks": asked.question.asks, "letter": letter(asked.right), "page": asked.question.page,
        "safety": asked.question.kind.is_of_safety(), "card": asked.question.card,
        "options": asked.options.iter().enumerate().map(option).collect::<Vec<_>>(),
    })
}

/// A, B, C, …
fn letter(index: usize) -> String {
    u8::try_from(index).map_or_else(|_| String::new(), |index| char::from(b'A' + index % 26).to_string())
}

fn picture(input: Input<'_>, question: &Question) -> Option<Drawing> {
    let (width, height) = (Length::from_mm(ROOM.0), Length::from_mm(ROOM.1));
    let options = Options { numerals: input.numerals(), ..Options::new(input.cards.fonts, width, height) };
    match question.picture.as_ref()? {
        Picture::Conductor(conductor) => Some(conductor_section(conductor, &options)),
        Picture::End(body, part) => end_view(body, part, &options),
    }
}

fn drawn(drawing: &Drawing, nth: usize) -> Value {
    let pixels = |length: Length| format!("{:.0}", length.mm() * PIXELS_PER_MM);
    json!({
        "id": format!("picture-{nth}"), "title": drawing.title, "description": drawing.description,
        "scale": drawing.scale, "body": drawing.body,
        "width": number(drawing.width.mm()), "height": number(drawing.height.mm()),
        "shown_width": pixels(drawing.width), "shown_height": pixels(drawing.height),
    })
}
