//! Quizzes: questions that the records settle, drawn for a group, with their answers in an order of their own.

use super::dice::Dice;
use super::question::{Answer, Kind, Question};
use super::{Input, asks};
use std::collections::BTreeSet;

/// Wrong answers beside the right one, at most.
const WRONG: usize = 3;
/// Wrong answers that are taken from the front of their list, where those stand that are most easily taken for right.
const LIKELY: usize = 2;

/// Every question that the records settle.
#[derive(Debug, Clone)]
pub struct Pool {
    questions: Vec<Question>,
}

/// A question as it is asked.
#[derive(Debug, Clone)]
pub struct Asked {
    /// The question.
    pub question: Question,
    /// The answers in the order in which they are offered.
    pub options: Vec<Answer>,
    /// Which of them is right, counted from 0.
    pub right: usize,
}

impl Pool {
    /// The questions of a catalogue.
    #[must_use]
    pub fn of(input: Input<'_>) -> Self {
        let questions = asks::all(input).into_iter().filter_map(Question::sound).collect();
        Self { questions }
    }

    /// The questions, kind by kind.
    #[must_use]
    pub fn questions(&self) -> &[Question] {
        &self.questions
    }

    /// At most so many questions for a group: the same edition and group always get the same, and other groups others.
    /// Kinds take turns; nothing that one question says answers another.
    #[must_use]
    pub fn quiz(&self, edition: &str, group: &str, most: usize) -> Vec<Asked> {
        let mut dice = Dice::of(&[edition, group]);
        let mut kinds: Vec<Vec<&Question>> = Kind::ALL
            .iter()
            .map(|kind| self.questions.iter().filter(|question| question.kind == *kind).collect())
            .collect();
        kinds.iter_mut().for_each(|questions| dice.shuffle(questions));
        dice.shuffle(&mut kinds);
        let mut asked = Vec::new();
        let mut told: BTreeSet<Told<'_>> = BTreeSet::new();
        while asked.len() < most && kinds.iter().any(|questions| !questions.is_empty()) {
            for questions in &mut kinds {
                let next = next(questions, &mut told);
                asked.extend(next.filter(|_| asked.len() < most));
            }
        }
        asked.into_iter().map(|question| offered(question, &mut dice)).collect()
    }
}

/// The next of these questions that tells of nothing that was told.
fn next<'q>(questions: &mut Vec<&'q Question>, told: &mut BTreeSet<Told<'q>>) -> Option<&'q Question> {
    while let Some(question) = questions.pop() {
        let things = tells(question);
        if !things.iter().any(|thing| told.contains(thing)) {
            told.extend(things);
            return Some(question);
        }
    }
    None
}

/// Something that a question tells of.
type Told<'a> = (Option<Kind>, &'a str, &'a str);

/// What a question tells of: two that tell of one thing answer each other, or are all but the same.
fn tells(question: &Question) -> Vec<Told<'_>> {
    let (about, kind) = (&question.about, Some(question.kind));
    match question.kind {
        Kind::Which => vec![(None, &about.fitting, "")],
        Kind::Comes | Kind::Seen => vec![(None, &about.fitting, ""), (kind, "", &about.other)],
        Kind::Alike => vec![(kind, &about.conductor, &about.other)],
        Kind::Reading | Kind::Torque => vec![(kind, &about.fitting, "")],
    }
}

/// A question with a few of its wrong answers: the likeliest first, then any.
fn offered(question: &Question, dice: &mut Dice) -> Asked {
    let likely = question.wrong.len().min(LIKELY);
    let (first, rest) = question.wrong.split_at(likely);
    let mut rest: Vec<&Answer> = rest.iter().collect();
    dice.shuffle(&mut rest);
    let mut options: Vec<&Answer> = first.iter().chain(rest).take(WRONG).collect();
    options.push(&question.right);
    dice.shuffle(&mut options);
    let right = options.iter().position(|option| std::ptr::eq(*option, &raw const question.right));
    Asked {
        right: right.unwrap_or_default(),
        options: options.into_iter().cloned().collect(),
        question: question.clone(),
    }
}
