//! The tables for a spreadsheet: what changed, the current cards, the copies to call in.

use super::{Told, lists};
use crate::installed::{FOLLOW_UP_HEAD, follow_up_rows};
use crate::publish::options::RenderError;
use crate::publish::staging::Staging;
use crate::records::written_table;
use crate::register::{self, CardChange, Comparison};
use crate::source::WorldError;
use serde_json::Value;

impl Told<'_> {
    pub(super) fn tables(&self, staging: &Staging) -> Result<(), RenderError> {
        let head = [
            "edition", "list", "number", "title", "issue", "becomes", "grade", "what", "was", "is", "notices",
        ];
        let mut rows = Vec::new();
        for stage in &self.stages {
            for (list, cards) in lists(stage) {
                cards.iter().for_each(|card| rows.extend(rows_of(stage, list, card)));
            }
        }
        staging.write("register/what-changed.csv", &table("what-changed", &head, &rows)?)?;
        let head = ["number", "title", "issue", "check code", "edition", "status"];
        let text = |line: &Value, key: &str| line[key].as_str().unwrap_or_default().to_owned();
        let current: Vec<Vec<String>> = self
            .current()
            .iter()
            .map(|line| {
                ["number", "title", "issue", "code", "edition", "status"].map(|key| text(line, key)).into()
            })
            .collect();
        staging.write("register/current-cards.csv", &table("current-cards", &head, &current)?)?;
        let head = ["holder", "name", "number", "issue", "copies", "good until"];
        let call_in = self.newest.iter().flat_map(|newest| &newest.holders).flat_map(|lists| {
            lists.call_in.iter().map(|line| {
                let (issue, copies) = (line.issue.to_string(), line.copies.to_string());
                let (id, name, number) = (lists.id.clone(), lists.name.clone(), line.number.clone());
                vec![id, name, number, issue, copies, self.good_until(line)]
            })
        });
        if let Some(found) = &self.follow_up {
            let rows = follow_up_rows(found);
            staging.write("register/follow-up.csv", &table("follow-up", &FOLLOW_UP_HEAD, &rows)?)?;
        }
        Ok(staging.write("register/call-in.csv", &table("call-in", &head, &call_in.collect::<Vec<_>>())?)?)
    }
}

/// A line a change; one without a change for a new card.
fn rows_of(stage: &Comparison, list: &str, card: &CardChange) -> Vec<Vec<String>> {
    let number = |issue: Option<u32>| issue.map(|issue| issue.to_string()).unwrap_or_default();
    let head = || {
        let edition = stage.with.clone().unwrap_or_default();
        let issues = [number(card.issue), number(card.becomes)];
        let [was, is] = issues;
        vec![edition, list.to_lowercase(), card.number.clone(), card.title.clone(), was, is]
    };
    let change = |change: &register::Change| {
        let own = [change.grade.word(), &change.what, &change.was, &change.is, &change.notices.join(" ")];
        head().into_iter().chain(own.map(str::to_owned)).collect()
    };
    if card.changes.is_empty() {
        let own = [card.grade().word(), "card", "", "", ""];
        return vec![head().into_iter().chain(own.map(str::to_owned)).collect()];
    }
    card.changes.iter().map(change).collect()
}

fn table(name: &str, head: &[&str], rows: &[Vec<String>]) -> Result<Vec<u8>, WorldError> {
    let fault = |reason: String| WorldError { path: format!("register/{name}.csv"), reason };
    written_table(head, rows).map_err(|error| fault(error.to_string()))
}
