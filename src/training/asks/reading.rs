//! What a reading of stand-out calls for: to go on, or what the record says of a check that fails.

use crate::catalogue::{Fitting, StandOutFrom};
use crate::facts::{FittingFacts, IfWrongFacts};
use crate::notes::address;
use crate::training::Input;
use crate::training::question::{About, Answer, Kind, Question};
use crate::units::{Length, Numerals, Range};

/// Beside a reading that is no nearer to its window than this, nobody argues about the rule.
const CLEAR_OF_THE_WINDOW: f64 = 1.0;

/// Readings in and outside the windows of each fitting, and such as are both in their windows but drawn in too far.
pub(in crate::training) fn what_a_reading_calls_for(input: Input<'_>) -> Vec<Question> {
    let mut questions = Vec::new();
    for (fitting, _, facts) in input.built() {
        let Some(stated) = &fitting.stand_out else { continue };
        if !matches!(stated.from, StandOutFrom::ConeFace | StandOutFrom::WedgeEnd) {
            continue;
        }
        let asked = Asked { fitting, facts, numerals: input.numerals() };
        questions.extend(stated.seated.into_iter().flat_map(|window| asked.seated(window)));
        questions.extend(stated.tensioned.into_iter().flat_map(|window| asked.tensioned(window)));
        if let (Some(seated), Some(tensioned), Some(most)) =
            (stated.seated, stated.tensioned, stated.draw_in_max)
        {
            questions.extend(asked.drawn_in(seated, tensioned, most));
        }
    }
    questions
}

const FORCE: &str = "Force does not make it right, and torque does not prove grip.";
const NOTHING_OPENED: &str = "Nothing is loosened or opened under tension.";

struct Asked<'a> {
    fitting: &'a Fitting,
    facts: &'a FittingFacts,
    numerals: Numerals,
}

impl Asked<'_> {
    fn seated(&self, window: Range<Length>) -> Vec<Question> {
        let IfWrongFacts { before_load, .. } = &self.facts.if_wrong;
        let go = |why: &str| Answer::new("Go on with the next step", "go-on", why);
        let apart = |why: &str| Answer::new(sentence(before_load), "before-load", why);
        let force = Answer::new("Tighten or tap on until it reads otherwise, then go on", "force", FORCE);
        let again =
            Answer::new("Loosen it and seat the same part again", "again", "Nothing is to be mended.");
        let note = Answer::new("Write the reading down and go on", "note", "What is no go stays no go.");
        let (is_in, is_out) = ("The reading lies in its window.", "The reading lies outside its window.");
        let mut questions = Vec::new();
        if let Some(inside) = inside(window) {
            let readings = [("seated", inside)];
            let wrong = vec![apart(is_in), force.clone(), again];
            questions.push(self.question(&readings, self.asks(&readings), go(is_in), wrong));
        }
        for outside in outside(window) {
            let readings = [("seated", outside)];
            let wrong = vec![force.clone(), note.clone(), go(is_out)];
            questions.push(self.question(&readings, self.asks(&readings), apart(is_out), wrong));
        }
        questions.retain(|question| !question.right.text.is_empty());
        questions
    }

    fn tensioned(&self, window: Range<Length>) -> Vec<Question> {
        let questions = outside(window).into_iter().map(|outside| {
            let readings = [("tensioned", outside)];
            self.under_load(&readings, self.asks(&readings), "The reading lies outside its window.")
        });
        questions.flatten().collect()
    }

    /// Both readings lie in their windows, and yet the part was drawn in too far.
    fn drawn_in(&self, seated: Range<Length>, tensioned: Range<Length>, most: Length) -> Option<Question> {
        let (before, after) = (seated.most().mm(), tensioned.least().mm());
        if before - after < most.mm() + CLEAR_OF_THE_WINDOW {
            return None;
        }
        let readings = [("seated", before), ("tensioned", after)];
        let why = format!(
            "Both readings lie in their windows, but {} is drawn in, and no more than {} may be.",
            self.numerals.length(Length::from_mm(before - after), 1),
            self.numerals.length(most, 1)
        );
        self.under_load(&readings, self.asks(&readings), &why)
    }

    fn under_load(&self, readings: &[(&'static str, f64)], asks: String, why: &str) -> Option<Question> {
        let IfWrongFacts { before_load, under_load } = &self.facts.if_wrong;
        if under_load.is_empty() || under_load == before_load {
            return None;
        }
        let right = Answer::new(sentence(under_load), "under-load", why);
        let wrong = vec![
            Answer::new(sentence(before_load), "before-load", NOTHING_OPENED),
            Answer::new("Go on: it holds", "go-on", why),
            Answer::new("Loosen it a little, let it seat, and measure again", "again", NOTHING_OPENED),
        ];
        Some(self.question(readings, asks, right, wrong))
    }

    fn asks(&self, readings: &[(&'static str, f64)]) -> String {
        // What is done next depends on it: before the line is tensioned a fitting may be opened.
        let seated = if readings.len() == 1 { "Seated, with no line tension on it yet" } else { "Seated" };
        let reading = |(state, level): &(&'static str, f64)| {
            let size = self.numerals.length(Length::from_mm(level.abs()), 1);
            let size = if *level < 0.0 { format!("sunk {size}") } else { size };
            let word = if *state == "seated" { seated } else { "Under line tension" };
            format!("{word}, its stand-out reads {size}.")
        };
        let readings = readings.iter().map(reading).collect::<Vec<_>>().join(" ");
        format!("{} {}. {readings} What do you do now?", self.fitting.number, self.fitting.name)
    }

    fn question(
        &self,
        readings: &[(&'static str, f64)],
        asks: String,
        right: Answer,
        wrong: Vec<Answer>,
    ) -> Question {
        Question {
            kind: Kind::Reading,
            about: About {
                fitting: self.fitting.number.clone(),
                readings: readings.to_vec(),
                ..About::default()
            },
            asks,
            picture: None,
            right,
            wrong,
            card: self.fitting.number.clone(),
            page: address::fitting(&self.fitting.number).file(),
        }
    }
}

/// A level in the middle of a window, as a rule reads it; none where the window is too narrow for that.
fn inside(window: Range<Length>) -> Option<f64> {
    let (least, most) = (window.least().mm(), window.most().mm());
    let middle = (f64::midpoint(least, most) * 10.0).round() / 10.0;
    (middle - least >= 0.3 && most - middle >= 0.3).then_some(middle)
}

/// Levels clear of a window: further out, and deeper.
fn outside(window: Range<Length>) -> [f64; 2] {
    let clear = |level: f64| (level * 10.0).round() / 10.0;
    [clear(window.most().mm() + CLEAR_OF_THE_WINDOW), clear(window.least().mm() - CLEAR_OF_THE_WINDOW)]
}

/// A text with a capital and without a stop at its end, as answers have them.
fn sentence(text: &str) -> String {
    let mut letters = text.trim_end_matches('.').chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
