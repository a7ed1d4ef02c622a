//! Torques and loads that a text states and its fitting does not have.

use super::clauses_of_text::sentence;
use super::figures_of_gear::{MassOf, is_of_gear, is_of_wrench, mass_of};
use super::figures_of_text::{Figures, figures};
use super::stretch_of_text::{Contradiction, Stretch};
use super::units_of_text::Unit;
use crate::catalogue::{Fitting, Tightening};
use crate::diagnostics::{Place, Severity};
use crate::units::{Force, Torque};

/// How words begin that say of a load that nobody tensions the line to it.
const NOT_A_TENSION: [&str; 6] = ["break", "holding", "proof", "proven", "strength", "test"];
/// Words before "hold" that make it no order: "must hold 60 kN" against "hold 60 kN".
const NO_ORDER: [&str; 8] = ["must", "can", "will", "does", "should", "shall", "would", "to"];

/// How many letters before and behind a mass tell what it is of.
const NEAR: usize = 200;

/// What a stretch says of torques and loads otherwise than the record.
pub(super) fn torques_and_loads(stretch: &Stretch<'_>) -> Vec<Contradiction> {
    let figures = figures(stretch.letters);
    let has_mass = figures.iter().any(|stated| stated.unit == Unit::Mass);
    // A text of a card is short, and its values may part a sentence.
    let is_short = !stretch.text.tells_of_others();
    let (round, before) = if is_short { (stretch.text.whole(), stretch.at) } else { (stretch.letters, 0) };
    let round: Vec<char> = if has_mass { round.chars().collect() } else { Vec::new() };
    let contradiction = |stated: &Figures| match stated.unit {
        Unit::Torque => torque(stretch, stated),
        Unit::Load => load(stretch, stated),
        Unit::Mass => mass(stretch, stated, (&round, before + stated.at)),
        Unit::Other(_) => None,
    };
    figures.iter().filter_map(contradiction).collect()
}

fn torque(stretch: &Stretch<'_>, stated: &Figures) -> Option<Contradiction> {
    let fitting = stretch.fitting;
    if has_torque(fitting, stated) {
        return None;
    }
    let (place, is) = torque_place(fitting);
    let message = if stated.values.is_empty() {
        "the figure of this torque can't be read"
    } else {
        "the fitting has no such torque"
    };
    let severity = if is_of_wrench(&stretch.words, stated) { Severity::Note } else { Severity::Error };
    Some(contradiction(severity, stated, message, (place, is), "torque"))
}

/// Whether figures are those of a window, or one of its ends.
pub(super) fn has_torque(fitting: &Fitting, stated: &Figures) -> bool {
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
    let applied = applied(fitting);
    let (severity, message) = if stated.values.is_empty() {
        (severity(stretch, stated), "the figure of this load can't be read")
    } else if !has_load(fitting, stated) {
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

/// Whether each of these loads is one of the fitting's.
pub(super) fn has_load(fitting: &Fitting, stated: &Figures) -> bool {
    let loads: Vec<f64> = applied(fitting).into_iter().chain(withstood(fitting)).collect();
    let is_one = |value: &f64| loads.iter().any(|load| same(*load, *value));
    !stated.values.is_empty() && stated.values.iter().all(is_one)
}

/// The words of the sentence round a letter, of a long one those that stand near.
fn words_round(letters: &[char], at: usize) -> Vec<String> {
    let from = at.saturating_sub(NEAR);
    let near: String = letters[from..letters.len().min(at + NEAR)].iter().collect();
    sentence(&near, at - from)
}

/// A mass is a load where its sentence is about one, and otherwise that of a drum or a tool.
fn mass(stretch: &Stretch<'_>, stated: &Figures, (letters, at): (&[char], usize)) -> Option<Contradiction> {
    let words = words_round(letters, at);
    let severity = match mass_of(&stretch.words, stated, &words) {
        MassOf::Line => Severity::Error,
        MassOf::Gear => return None,
        MassOf::Unknown if stretch.text.tells_of_others() => return None,
        MassOf::Unknown => Severity::Note,
    };
    let message = "this is a mass: loads are stated in kN, and torques in N·m";
    let place = (stretch.fitting.place_of("line_tension_max_kN"), "its line tension");
    Some(contradiction(severity, stated, message, place, "tension_max"))
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

/// Whether the sentence says that a load is that of a test or of breaking. To hold it for a while says nothing of that.
fn says_what_it_is(stretch: &Stretch<'_>, stated: &Figures) -> bool {
    let (whole, at) = (stretch.text.whole(), stretch.at + stated.at);
    let words = sentence(whole, at);
    let before: String = whole.chars().take(at + 1).collect();
    let before = sentence(&before, at);
    let holds = |nth: usize| match before[nth].as_str() {
        "holds" | "held" => true,
        "hold" => nth > 0 && NO_ORDER.contains(&before[nth - 1].as_str()),
        _ => false,
    };
    words.iter().any(|word| NOT_A_TENSION.iter().any(|start| word.starts_with(start)))
        || (0..before.len()).any(holds)
}

/// A load of what the work is done with may be another.
fn severity(stretch: &Stretch<'_>, stated: &Figures) -> Severity {
    if is_of_gear(&stretch.words, stated) { Severity::Note } else { Severity::Error }
}

fn contradiction(
    severity: Severity,
    stated: &Figures,
    message: &str,
    (place, is): (Place, &'static str),
    value: &'static str,
) -> Contradiction {
    let (message, found) = (format!("{message}{}", in_which_unit(stated)), stated.written.clone());
    Contradiction { severity, at: stated.at, message, found, place, is, is_of_wrong_part: false, value }
}

/// What to say of a torque or load in a unit that no record states one in.
fn in_which_unit(stated: &Figures) -> &'static str {
    match stated.unit {
        Unit::Torque if !stated.written.contains('N') => "; write torques in N·m",
        Unit::Load if !stated.written.to_lowercase().contains("kn") => "; write loads in kN",
        _ => "",
    }
}

fn same(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-9
}
