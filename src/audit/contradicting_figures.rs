//! Torques and loads that a text states and its fitting does not have.

use super::clauses_of_text::sentence;
use super::figures_of_text::{Figures, figures};
use super::stretch_of_text::{Contradiction, Stretch};
use super::units_of_text::Unit;
use crate::catalogue::{Fitting, Tightening};
use crate::diagnostics::{Place, Severity};
use crate::units::{Force, Torque};

/// What work is done with, besides the fitting.
const GEAR: [&str; 5] = ["puller", "pullers", "hoist", "sling", "winch"];
/// How words begin that say of a load that nobody tensions the line to it.
const NOT_A_TENSION: [&str; 6] = ["break", "hold", "proof", "proven", "strength", "test"];

/// What a stretch says of torques and loads otherwise than the record.
pub(super) fn torques_and_loads(stretch: &Stretch<'_>) -> Vec<Contradiction> {
    let contradiction = |stated: &Figures| match stated.unit {
        Unit::Torque => torque(stretch.fitting, stated),
        Unit::Load => load(stretch, stated),
        Unit::Other(_) => None,
    };
    figures(stretch.letters).iter().filter_map(contradiction).collect()
}

fn torque(fitting: &Fitting, stated: &Figures) -> Option<Contradiction> {
    if is_torque(fitting, stated) {
        return None;
    }
    let (place, is) = torque_place(fitting);
    let message = if stated.values.is_empty() {
        "the figure of this torque can't be read"
    } else {
        "the fitting has no such torque"
    };
    Some(contradiction(Severity::Error, stated, message, (place, is), "torque"))
}

/// Whether figures are those of a window, or one of its ends.
fn is_torque(fitting: &Fitting, stated: &Figures) -> bool {
    fitting.tightening.iter().filter_map(|line| line.torque).any(|window| {
        let ends = [window.least(), window.most()].map(Torque::nm);
        match stated.values[..] {
            [one] => ends.iter().any(|end| same(*end, one)),
            [least, most] => same(ends[0], least) && same(ends[1], most),
            _ => false,
        }
    })
}

fn torque_place(fitting: &Fitting) -> (Place, &'static str) {
    let stated = fitting.tightening.iter().position(|line| line.torque.is_some());
    let field = stated.map_or("tightening".to_owned(), |nth| format!("tightening.{nth}.torque_Nm"));
    (fitting.place_of(&field), if stated.is_some() { "its torque" } else { "it has no torque" })
}

fn load(stretch: &Stretch<'_>, stated: &Figures) -> Option<Contradiction> {
    let fitting = stretch.fitting;
    let place = fitting.place_of("line_tension_max_kN");
    let is = |loads: &[f64], value: f64| loads.iter().any(|load| same(*load, value));
    let (applied, withstood) = (applied(fitting), withstood(fitting));
    let is_known = |value: &f64| is(&applied, *value) || is(&withstood, *value);
    let (severity, message) = if stated.values.is_empty() {
        (severity(stretch, stated), "the figure of this load can't be read")
    } else if !stated.values.iter().all(is_known) {
        (severity(stretch, stated), "the fitting has no such load")
    } else {
        let most = fitting.line_tension_max?.kn();
        let is_too_high = |value: &f64| *value > most && !is(&applied, *value);
        let is_said_of_a_test = || says_what_it_is(stretch, stated);
        // What a load is, English words alone tell.
        let is_judged = stretch.is_english && stretch.text.is_instruction();
        if !is_judged || !stated.values.iter().any(is_too_high) || is_said_of_a_test() {
            return None;
        }
        (Severity::Warning, "this load is above the line tension, and the sentence does not say what it is")
    };
    Some(contradiction(severity, stated, message, (place, "its line tension"), "tension_max"))
}

/// What the fitting is tensioned or tightened to.
fn applied(fitting: &Fitting) -> Vec<f64> {
    let preload = |line: &Tightening| line.preload;
    let preloads = fitting.tightening.iter().filter_map(preload);
    fitting.line_tension_max.into_iter().chain(preloads).map(Force::kn).collect()
}

/// What it withstands, and nobody tensions it to: its holding load, the breaking loads of its conductors, and what its
/// parts held on them in tests. What a part held on another conductor says nothing of this fitting.
fn withstood(fitting: &Fitting) -> Vec<f64> {
    let held = || fitting.conductors.iter();
    let breaking = held().flat_map(|held| [held.stated.breaking_load, held.section.breaking_load]);
    let proofs = fitting.items.iter().flat_map(|item| &item.part.proven_on);
    let own = proofs.filter(|proof| held().any(|held| held.id == proof.conductor.id));
    let loads = fitting.holding_load.into_iter().chain(breaking.flatten());
    loads.chain(own.filter_map(|proof| proof.holding_load)).map(Force::kn).collect()
}

/// Whether the sentence says that a load is that of a test or of breaking.
fn says_what_it_is(stretch: &Stretch<'_>, stated: &Figures) -> bool {
    let words = sentence(stretch.text.whole(), stretch.at + stated.at);
    words.iter().any(|word| NOT_A_TENSION.iter().any(|start| word.starts_with(start)))
}

/// A load of what the work is done with may be another.
fn severity(stretch: &Stretch<'_>, stated: &Figures) -> Severity {
    if is_of_gear(stretch, stated) { Severity::Note } else { Severity::Error }
}

/// Whether a load is said of what the work is done with: such a word stands close before it, or behind its unit.
fn is_of_gear(stretch: &Stretch<'_>, stated: &Figures) -> bool {
    let words = &stretch.words;
    let word = words.partition_point(|word| word.at <= stated.at).saturating_sub(1);
    let from = word.saturating_sub(3);
    let near = words[from..].iter().take(word - from + 3);
    near.into_iter().any(|word| GEAR.contains(&word.text.to_lowercase().as_str()))
}

fn contradiction(
    severity: Severity,
    stated: &Figures,
    message: &str,
    (place, is): (Place, &'static str),
    value: &'static str,
) -> Contradiction {
    let (message, found) = (message.to_owned(), stated.written.clone());
    Contradiction { severity, at: stated.at, message, found, place, is, value }
}

fn same(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-9
}
