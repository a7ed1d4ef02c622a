//! What is made for a training cell and its stores.

mod assessments;
mod gauges;
mod labels;
mod made;
mod quizzes;
mod records;
mod slips;
