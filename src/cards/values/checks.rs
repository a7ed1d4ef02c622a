//! Checks, side by side and below each other.

use super::{joined, sentence};
use crate::facts::CheckFacts;
use serde_json::{Value, json};

/// Checks line by line: what is right; and, once for all that share it, what is wrong.
pub(super) fn rows(facts: &[CheckFacts]) -> Vec<Value> {
    let mut lines = Vec::new();
    for (index, check) in facts.iter().enumerate() {
        let what = joined(&[&check.when, &check.what], ": ");
        lines.push(json!({ "what": what, "go": check.go, "no_go": "", "later": index > 0 }));
        let shared = facts.get(index + 1).is_some_and(|next| next.no_go == check.no_go);
        if !shared && !check.no_go.is_empty() {
            lines.push(
                json!({ "what": "", "go": "", "no_go": sentence(&format!("no-go: {}", check.no_go)), "later": false }),
            );
        }
    }
    lines
}

/// The same lines for a narrow column: what is right below what is looked at.
pub(super) fn stacked(facts: &[CheckFacts]) -> Vec<Value> {
    let apart = |line: Value| {
        let part = |key: &str| {
            (!line[key].as_str().unwrap_or_default().is_empty())
                .then(|| json!({ key: line[key], "later": key == "what" && line["later"] == true }))
        };
        ["what", "go", "no_go"].into_iter().filter_map(part).collect::<Vec<_>>()
    };
    rows(facts).into_iter().flat_map(apart).collect()
}

/// Checks without what is wrong, which is said once for all.
pub(super) fn cells(facts: &[CheckFacts]) -> Vec<Value> {
    facts
        .iter()
        .map(|check| json!({ "what": joined(&[&check.when, &check.what], ": "), "go": check.go }))
        .collect()
}

/// What is wrong, each once.
pub(super) fn no_go(facts: &[CheckFacts]) -> String {
    let mut said: Vec<&str> =
        facts.iter().map(|check| check.no_go.as_str()).filter(|text| !text.is_empty()).collect();
    said.dedup();
    let sentences: Vec<String> = said.into_iter().map(|text| sentence(&format!("no-go: {text}"))).collect();
    sentences.join(" ")
}
