//! The index of all that there is for training, and what there is none for.

use super::Input;
use super::page::{Page, cards};
use crate::catalogue::Status;
use crate::facts::words;
use serde_json::{Value, json};

/// The index. `gauges` are names of files with the number that each is about; `assessed` are pages with what each is
/// about.
pub(super) fn page(input: Input<'_>, gauges: &[(String, String)], assessed: &[(String, Page)]) -> Page {
    let quizzes = input.training.groups.iter().map(|group| {
        json!({
            "name": group.name, "quiz": format!("quiz-{}.html", group.id), "key": format!("key-{}.html", group.id),
        })
    });
    let barred = input.catalogue().fittings.values().filter(|fitting| fitting.status != Status::Current);
    let barred = barred.map(|fitting| {
        let status = words::status(fitting.status, fitting.use_instead.as_deref());
        json!({ "number": fitting.number, "name": fitting.name, "status": status })
    });
    let built: Vec<&str> = input.built().map(|(_, card, _)| card.number.as_str()).collect();
    let gauges: Vec<Value> =
        gauges.iter().map(|(name, number)| json!({ "name": name, "number": number })).collect();
    let assessed: Vec<Value> =
        assessed.iter().map(|(about, page)| json!({ "about": about, "page": page.name })).collect();
    let values = json!({
        "heading": "Training", "quizzes": quizzes.collect::<Vec<_>>(), "barred": barred.collect::<Vec<_>>(),
        "slips": built.len(), "gauges": gauges, "labels": input.catalogue().parts.len(), "assessments": assessed,
        "cards": cards(input, built.into_iter()),
    });
    Page { name: "index.html".to_owned(), layout: "training/index.html", values }
}
