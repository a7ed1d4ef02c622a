//! What is made for a training cell and its stores.

mod assessments;
mod labels;
mod made;
mod quizzes;
mod records;
mod slips;
