//! A question of a quiz, with everything that could be its answer.

use crate::catalogue::{Conductor, Part};
use crate::facts::MarkFacts;
use std::sync::Arc;

/// What a question asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// Which part is right and proven in a body on a conductor.
    Which,
    /// What a wrong part comes to.
    Comes,
    /// By what a wrong part is found once the fitting is closed.
    Seen,
    /// What a reading of stand-out calls for.
    Reading,
    /// Which torque a fitting is closed with.
    Torque,
    /// What tells two conductors of one diameter apart.
    Alike,
}

impl Kind {
    /// Every one of them.
    pub const ALL: [Self; 6] =
        [Self::Which, Self::Comes, Self::Seen, Self::Reading, Self::Torque, Self::Alike];

    /// Whether a wrong answer to it costs a life: it can't be traded for right ones.
    #[must_use]
    pub fn is_of_safety(self) -> bool {
        matches!(self, Self::Which | Self::Comes | Self::Seen | Self::Reading)
    }
}

/// What a question is about, for whoever holds it against the records.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct About {
    /// The fitting's number; empty where it is about none.
    pub fitting: String,
    /// The conductor's id.
    pub conductor: String,
    /// The wrong part's number, or the other conductor's id.
    pub other: String,
    /// The readings that it states: "seated" or "tensioned", and millimetres.
    pub readings: Vec<(&'static str, f64)>,
}

/// Something that a question may be answered with.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// What it says.
    pub text: String,
    /// The mark that is drawn beside it.
    pub mark: Option<MarkFacts>,
    /// What it stands for: a part's number, a summary, or what is done, in a word.
    pub value: String,
    /// Why it is right or wrong.
    pub why: String,
}

impl Answer {
    pub(super) fn new(text: impl Into<String>, value: impl Into<String>, why: impl Into<String>) -> Self {
        Self { text: text.into(), mark: None, value: value.into(), why: why.into() }
    }
}

/// What is drawn above a question.
#[derive(Debug, Clone)]
pub(super) enum Picture {
    /// A conductor's section.
    Conductor(Arc<Conductor>),
    /// The large end of a part that goes into a body.
    End(Arc<Part>, Arc<Part>),
}

/// A question that the records settle.
#[derive(Debug, Clone)]
pub struct Question {
    /// What it asks.
    pub kind: Kind,
    /// What it is about.
    pub about: About,
    /// The question in words.
    pub asks: String,
    pub(super) picture: Option<Picture>,
    /// The one right answer.
    pub right: Answer,
    /// Answers that are wrong, those that are most easily taken for right first.
    pub wrong: Vec<Answer>,
    /// The number of the card that it goes by; empty where it goes by none.
    pub card: String,
    /// The file of the booklet that says more.
    pub page: String,
}

/// Fewer wrong answers than this leave nothing to choose from.
const LEAST_WRONG: usize = 2;

impl Question {
    /// The question with each answer once, where enough is left to choose from.
    pub(super) fn sound(mut self) -> Option<Self> {
        let mut said = vec![self.right.text.clone()];
        self.wrong.retain(|answer| {
            let is_new = !answer.text.is_empty() && !said.contains(&answer.text);
            said.push(answer.text.clone());
            is_new
        });
        (!self.right.text.is_empty() && self.wrong.len() >= LEAST_WRONG).then_some(self)
    }
}
