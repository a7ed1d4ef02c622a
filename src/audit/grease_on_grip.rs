#![doc = include_str!("../explain/codes/grease-on-grip.md")]

use super::Context;
use super::clauses_of_text::{ClauseWord, clauses, sentences};
use super::inspected::{built, on_fitting, on_wording};
use super::load_orders::BEFORE_ORDER;
use super::load_words::is_negating;
use super::verb_forms::is_form;
use crate::catalogue::{Family, Fitting, Wording};
use crate::diagnostics::{Finding, Findings, Severity};

/// What holds by friction, as texts call it.
const GRIPS: [&str; 8] = ["bore", "wire", "wires", "conductor", "rope", "strand", "jaws", "teeth"];
/// Verbs for greasing.
const GREASING: [&str; 4] = ["grease", "oil", "lubricate", "wax"];

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context).filter(|fitting| holds_by_friction(fitting.family)) {
        findings.extend(listed(fitting));
        findings.extend(told(fitting));
    }
}

/// Clamps and sleeves are greased inside against corrosion; these hold by dry friction.
fn holds_by_friction(family: Family) -> bool {
    matches!(family, Family::ConeDeadEnd | Family::WedgeDeadEnd | Family::RopeThimble)
}

/// What a list of what is greased names.
fn listed(fitting: &Fitting) -> Vec<Finding> {
    let lines = fitting.tightening.iter().enumerate();
    let entries = lines.flat_map(|(nth, line)| line.grease.iter().map(move |entry| (nth, entry)));
    let finding = |(nth, entry): (usize, &String)| {
        let gripped = clauses(entry).iter().find_map(|clause| gripping(clause))?;
        let field = format!("tightening.{nth}.grease");
        let finding = on_fitting(Severity::Error, CODE, fitting, &field, SAID.to_owned());
        Some(helped(finding.found(gripped.text)))
    };
    entries.filter_map(finding).collect()
}

/// What a step orders.
fn told(fitting: &Fitting) -> Vec<Finding> {
    let of_step = |wording: &Wording| {
        let (at, word) = ordered(&wording.text)?;
        let finding = on_wording(Severity::Error, CODE, fitting, wording, at, SAID.to_owned());
        Some(helped(finding.found(word)))
    };
    fitting.steps.iter().filter_map(|step| of_step(&step.wording)).collect()
}

const CODE: &str = "grease-on-grip";
const SAID: &str = "this greases what must hold the conductor by friction";

fn helped(finding: Finding) -> Finding {
    finding
        .expected("thread, outside taper or face of the screw alone; what grips stays dry")
        .help("take it out; what never is greased may be said: `keep bore and wire dry`")
}

/// The first word of a text that orders to grease what grips, and its place.
fn ordered(text: &str) -> Option<(usize, String)> {
    sentences(text).into_iter().find_map(|(from, sentence)| {
        let mut greases = false;
        for clause in clauses(&sentence) {
            let first = clause.iter().find(|word| !BEFORE_ORDER.contains(&word.text.as_str()));
            let first = first.map_or("", |word| &*word.text);
            let is_list = GRIPS.contains(&first) || first == "the";
            greases = GREASING.iter().any(|verb| is_form(first, verb)) || greases && is_list;
            if let Some(word) = gripping(&clause).filter(|_| greases) {
                return Some((from + word.at, word.text));
            }
        }
        None
    })
}

/// The first word of a clause for what grips; none where it is denied, or where it is another thing's: a wire brush.
fn gripping(clause: &[ClauseWord]) -> Option<ClauseWord> {
    if clause.iter().any(|word| is_negating(&word.text) || word.text == "dry") {
        return None;
    }
    let is_brush = |nth: usize| clause.get(nth + 1).is_some_and(|next| next.text.starts_with("brush"));
    let all = clause.iter().enumerate();
    let mut found = all.filter(|(nth, word)| GRIPS.contains(&word.text.as_str()) && !is_brush(*nth));
    found.next().map(|(_, word)| word.clone())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_grips_is_not_greased() {
        let word = |text: &str| ordered(text).map(|(_, word)| word);
        assert_eq!(word("Grease bore, thread, taper.").as_deref(), Some("bore"));
        assert_eq!(word("Clean it. Then grease thread and the wire.").as_deref(), Some("wire"));
        assert_eq!(ordered("Dry it; oil the rope."), Some((8 + 8, "rope".to_owned())));
        for sound in [
            "Grease thread, keep bore dry.",
            "Grease thread, not the bore.",
            "Never grease the wire.",
            "Brush the wire. Grease thread.",
            "Grease thread with a wire brush.",
        ] {
            assert_eq!(ordered(sound), None, "{sound}");
        }
    }
}
