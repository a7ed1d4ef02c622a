//! The index of all that there is for training, and what there is none for.

use super::page::{Page, cards};
use super::{Input, ungauged};
use crate::catalogue::Status;
use crate::facts::words;
use serde_json::{Value, json};

/// Files that lie beside the pages, by their names there.
#[derive(Debug, Clone, Default)]
pub struct Beside {
    /// Of assembly slips.
    pub slips: Vec<String>,
    /// Of gauges, to print.
    pub gauges: Vec<String>,
    /// Of bin labels.
    pub labels: Vec<String>,
    /// What the files of single gauges are called, without their endings, and what each is for.
    pub plates: Vec<(String, String)>,
}

/// The index; `assessed` are pages with what each is about.
pub(super) fn page(input: Input<'_>, beside: &Beside, assessed: &[(String, Page)]) -> Page {
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
    let assessed: Vec<Value> =
        assessed.iter().map(|(about, page)| json!({ "about": about, "page": page.name })).collect();
    let plates: Vec<Value> =
        beside.plates.iter().map(|(name, about)| json!({ "name": name, "about": about })).collect();
    let values = json!({
        "heading": "Training", "quizzes": quizzes.collect::<Vec<_>>(), "barred": barred.collect::<Vec<_>>(),
        "slips": beside.slips, "gauges": beside.gauges, "labels": beside.labels, "plates": plates,
        "ungauged": ungauged::reasons(input, beside.plates.iter().map(|(name, _)| name.as_str())),
        "assessments": assessed,
        "cards": cards(input, built.into_iter()),
    });
    Page::new("index.html".to_owned(), "training/index.html", values)
}
