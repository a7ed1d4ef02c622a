//! A comparison in words.

use super::{CardChange, Change, Comparison, HolderLists};
use crate::catalogue::{Catalogue, Grade};
use std::fmt::Write;

/// A comparison for people: what to print again, what is new, what to withdraw, each change in words, and whose
/// copies. Changes of grade safety come first, each under the notice that explains it.
#[must_use]
pub fn comparison_text(comparison: &Comparison, catalogue: &Catalogue) -> String {
    let mut text = comparison.incomplete.as_ref().map(|stop| format!("{stop}\n")).unwrap_or_default();
    text.push_str(&heading(comparison));
    let lists = [
        ("print again", &comparison.print_again),
        ("new", &comparison.new),
        ("withdraw", &comparison.withdraw),
    ];
    for (name, cards) in lists.into_iter().filter(|(_, cards)| !cards.is_empty()) {
        let _ = writeln!(text, "\n{name}");
        cards.iter().for_each(|card| text.push_str(&card_text(card, catalogue)));
    }
    if comparison.changed().next().is_none() {
        text.push_str(match comparison.incomplete {
            Some(_) => "\nno change was found in what could be read\n",
            None => "\nnothing that a card prints has changed\n",
        });
    }
    let _ = writeln!(text, "\nunchanged: {}", cards_in_words(comparison.unchanged.len()));
    if !comparison.not_compared.is_empty() {
        let numbers = comparison.not_compared.join(", ");
        let _ = writeln!(text, "\nnot compared, since what they print now is not known: {numbers}");
    }
    text.push_str(&holders_text(&comparison.holders));
    text
}

fn heading(comparison: &Comparison) -> String {
    let with = comparison.with.as_deref().map_or("now".to_owned(), |with| format!("edition {with}"));
    match &comparison.since {
        Some(since) => format!("from edition {since} to {with}\n"),
        None => format!("there is no edition before; {with}\n"),
    }
}

fn cards_in_words(count: usize) -> String {
    if count == 1 { "1 card".to_owned() } else { format!("{count} cards") }
}

fn card_text(card: &CardChange, catalogue: &Catalogue) -> String {
    let issue = match (card.issue, card.becomes) {
        (Some(was), Some(is)) if was != is => format!("issue {was} becomes {is}"),
        (Some(was), None) => format!("issue {was}, no longer on the register"),
        (_, issue) => issue.map(|issue| format!("issue {issue}")).unwrap_or_default(),
    };
    let unexplained = if card.explained { "" } else { ", UNEXPLAINED" };
    let mut text =
        format!("  {} {}: {issue}, {}{unexplained}\n", card.number, card.title, card.grade().word());
    for (by, changes) in explained_by(card, catalogue) {
        let _ = writeln!(text, "    {by}");
        for words in changes {
            let _ = writeln!(text, "      {words}");
        }
    }
    text
}

/// The changes of a card in words, those of grade safety first, under what explains them.
#[must_use]
pub fn explained_by(card: &CardChange, catalogue: &Catalogue) -> Vec<(String, Vec<String>)> {
    let groups = by_notice(&card.changes).into_iter().map(|(notices, changes)| {
        let by = heading_of(&notices, &changes, card.explained, catalogue);
        (by, changes.into_iter().map(Change::words).collect())
    });
    groups.collect()
}

/// Changes under the notices that explain them, those of grade safety first.
fn by_notice(changes: &[Change]) -> Vec<(Vec<String>, Vec<&Change>)> {
    let mut groups: Vec<(Vec<String>, Vec<&Change>)> = Vec::new();
    for change in changes {
        match groups.iter_mut().find(|(notices, _)| *notices == change.notices) {
            Some((_, group)) => group.push(change),
            None => groups.push((change.notices.clone(), vec![change])),
        }
    }
    groups
}

fn heading_of(notices: &[String], changes: &[&Change], explained: bool, catalogue: &Catalogue) -> String {
    if notices.is_empty() {
        let safety = changes.iter().any(|change| change.grade == Grade::Safety);
        return match (safety, explained) {
            (true, false) => "no notice explains:".to_owned(),
            (true, true) => "by a reason that was given, without a notice:".to_owned(),
            (false, _) => "without a notice:".to_owned(),
        };
    }
    let named = notices.iter().map(|number| match catalogue.notices.get(number) {
        Some(notice) => format!("{number} {}", notice.title),
        None => number.clone(),
    });
    format!("by {}:", named.collect::<Vec<_>>().join("; "))
}

fn holders_text(holders: &[HolderLists]) -> String {
    let mut text = String::new();
    for holder in holders {
        let _ = writeln!(text, "\n{} ({})", holder.name, holder.id);
        let print = holder.print.iter().map(|copies| format!("{} × {}", copies.copies, copies.number));
        let call_in = holder
            .call_in
            .iter()
            .map(|copies| format!("{} × {} issue {}", copies.copies, copies.number, copies.issue));
        for (name, list) in [("print", print.collect::<Vec<_>>()), ("call in", call_in.collect())] {
            if !list.is_empty() {
                let _ = writeln!(text, "  {name}: {}", list.join(", "));
            }
        }
    }
    text
}
