//! What tells two conductors of one diameter apart.

use crate::mixups::{LookAlike, STOP, STOP_LABELLED_ALIKE, look_alikes, same_by_hand};
use crate::notes::address;
use crate::training::Input;
use crate::training::question::{About, Answer, Kind, Question};
use crate::units::Length;

/// Each two conductors that a caliper can't tell apart. What is offered as wrong is known of both, and the same on both.
pub(in crate::training) fn what_tells_them_apart(input: Input<'_>) -> Vec<Question> {
    let numerals = input.numerals();
    let question = |alike: &LookAlike| {
        let (one, other) = (&alike.one, &alike.other);
        let right = match alike.clues.first() {
            Some(clue) => Answer::new(capital(clue.what), clue.what, clue.words()),
            None if alike.labelled_alike() => Answer::new(
                "Nothing by hand: stop, read the line record",
                "stop",
                format!("It {STOP_LABELLED_ALIKE}."),
            ),
            None => Answer::new(
                "Nothing by hand: stop, read the line record or the drum tag",
                "stop",
                format!("It {STOP}."),
            ),
        };
        let wrong = same_by_hand(one, other, numerals).into_iter();
        let middle = Length::from_mm(f64::midpoint(alike.overlap.least().mm(), alike.overlap.most().mm()));
        Question {
            kind: Kind::Alike,
            about: About { conductor: one.id.clone(), other: other.id.clone(), ..About::default() },
            asks: format!(
                "A caliper reads {}. It can be {} or {}. What settles which it is?",
                numerals.length(middle, 1),
                one.name,
                other.name
            ),
            picture: None,
            right,
            wrong: wrong.map(|what| Answer::new(capital(what), what, "It is the same on both.")).collect(),
            card: String::new(),
            page: address::conductor(&one.id).file(),
        }
    };
    look_alikes(input.catalogue()).iter().map(question).collect()
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
