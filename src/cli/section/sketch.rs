//! The sketch of the conductor asked about.

use super::answer::Answer;
use super::question::Question;
use crate::sketch::{Drawing, Options, Subject, conductor_section, section_of, worn_section};
use crate::source::World;
use crate::typeset::Fonts;
use crate::units::Length;

/// The room that a sketch on its own has.
const ROOM_MM: f64 = 120.0;

pub(super) fn drawn(world: &dyn World, question: &Question, answer: &Answer) -> Drawing {
    // The built-in fonts are sound: what they find is about fonts of a catalogue.
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let room = Length::from_mm(ROOM_MM);
    draw(question, answer, &Options::new(&fonts, room, room))
}

fn draw(question: &Question, answer: &Answer, options: &Options<'_>) -> Drawing {
    let worn_to = answer.worn.as_ref().map(|worn| worn.worn.height);
    match (question, worn_to) {
        (Question::Recorded(conductor), Some(height)) => worn_section(conductor, height, options),
        (Question::Recorded(conductor), None) => conductor_section(conductor, options),
        (Question::Built { construction, .. }, _) => {
            let subject = Subject::new("Conductor section", construction, &answer.section);
            section_of(&Subject { worn_to, ..subject }, options)
        }
    }
}
