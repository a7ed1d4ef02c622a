//! Whether a proof counts.

use crate::catalogue::{Conductor, Fitting, Limits, Part, Proof, Role};
use crate::grip::{Outcome, Termination, Verdict, holding_percent, termination_load};
use crate::section::Construction;
use crate::units::Force;

/// Why a proof does not count.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shortfall {
    /// It names no report that somebody could look up.
    NoReport,
    /// Its day is still to come.
    ToCome,
    /// It names no body, and the fitting has one.
    NoBody,
    /// It was made in another body.
    OtherBody,
    /// It states no load.
    NoLoad,
    /// The conductor's breaking load is neither stated nor computed.
    BreakingLoadNotKnown,
    /// It shows too little of the conductor's breaking load.
    TooLittle {
        /// What it shows, percent.
        shown: f64,
        /// What is asked, percent.
        asked: f64,
    },
}

/// Whether a proof of a part counts in a body; `None` for fittings that have none.
///
/// It does with a report that can be looked up, made before the catalogue's date in that body, and with a load of at least the holding percentage of the
/// conductor's breaking load; for a rope's end times what its termination keeps (EN 13411-3, -5; -6
/// from memory).
///
/// # Errors
/// Why it does not count.
pub fn proof_counts(
    proof: &Proof,
    part: &Part,
    body: Option<&Part>,
    limits: &Limits,
) -> Result<(), Shortfall> {
    if !can_be_looked_up(&proof.report) {
        return Err(Shortfall::NoReport);
    }
    if proof.to_come {
        return Err(Shortfall::ToCome);
    }
    match body {
        Some(_) if proof.body.is_empty() => return Err(Shortfall::NoBody),
        Some(body) if proof.body != body.number => return Err(Shortfall::OtherBody),
        _ => {}
    }
    let load = proof.holding_load.ok_or(Shortfall::NoLoad)?;
    let breaking = proof.conductor.breaking_load().ok_or(Shortfall::BreakingLoadNotKnown)?;
    let kept = termination(part, &proof.conductor).map_or(1.0, Termination::efficiency);
    let (shown, asked) = (holding_percent(load, breaking), limits.holding_percent_of_breaking_load * kept);
    if shown >= asked - 1e-9 { Ok(()) } else { Err(Shortfall::TooLittle { shown, asked }) }
}

/// Words that stand where a report is still lacking. English alone: common practice, no source.
const NO_REPORT: [&str; 23] = [
    "none", "no", "not", "nil", "na", "pending", "tbd", "tba", "tbc", "todo", "open", "later", "unknown",
    "missing", "waiting", "awaited", "awaiting", "soon", "yet", "planned", "expected", "ordered", "x",
];

/// Whether a report is more than a sign or a word for "there is none". One with a figure has a number.
fn can_be_looked_up(report: &str) -> bool {
    let report = report.to_lowercase().replace('/', "");
    let mut words = report.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    let has_number = report.contains(char::is_numeric);
    report.contains(char::is_alphanumeric) && (has_number || !words.any(|word| NO_REPORT.contains(&word)))
}

/// Whether a part is proven on a conductor in a body: any proof that counts will do.
#[must_use]
pub fn proven(part: &Part, conductor: &Conductor, body: Option<&Part>, limits: &Limits) -> bool {
    counting(part, conductor, body, limits).next().is_some()
}

/// Whether a fitting's own part is proven on one of its conductors, in any of its bodies.
#[must_use]
pub fn proven_in(fitting: &Fitting, part: &Part, conductor: &Conductor, limits: &Limits) -> bool {
    best_proof(fitting, part, conductor, limits).is_some()
}

/// Of the proofs of a fitting's own part on one of its conductors, in any of its bodies: the one with the most load.
#[must_use]
pub fn best_proof<'a>(
    fitting: &Fitting,
    part: &'a Part,
    conductor: &Conductor,
    limits: &Limits,
) -> Option<&'a Proof> {
    let bodies: Vec<Option<&Part>> = fitting.bodies().map(|item| Some(item.part.as_ref())).collect();
    let bodies = if bodies.is_empty() { vec![None] } else { bodies };
    let proofs = bodies.into_iter().flat_map(|body| counting(part, conductor, body, limits));
    proofs.max_by(|one, other| load_of(one).total_cmp(&load_of(other)))
}

fn load_of(proof: &Proof) -> f64 {
    proof.holding_load.map_or(0.0, Force::newtons)
}

/// The proofs of a part on a conductor in a body that count.
fn counting<'a>(
    part: &'a Part,
    conductor: &Conductor,
    body: Option<&Part>,
    limits: &Limits,
) -> impl Iterator<Item = &'a Proof> {
    let on_it = part.proven_on.iter().filter(|proof| proof.conductor.id == conductor.id);
    on_it.filter(move |proof| proof_counts(proof, part, body, limits).is_ok())
}

/// Whether geometry says that what a proof shows can't be.
#[must_use]
pub fn contradicted(outcome: &Outcome) -> bool {
    matches!(
        outcome.verdict,
        Verdict::TipContact | Verdict::ClosesWithoutGripping | Verdict::CoreNotHeld | Verdict::WillNotEnter
    )
}

/// What a fitting's rope end keeps of the breaking load; `None` for other conductors.
#[must_use]
pub fn rope_end_keeps(fitting: &Fitting, conductor: &Conductor) -> Option<Force> {
    let end = fitting.gripping().find_map(|item| termination(&item.part, conductor))?;
    Some(termination_load(conductor.breaking_load()?, end))
}

/// What a gripping part ends a rope with; `None` on other conductors.
#[must_use]
pub fn termination(part: &Part, conductor: &Conductor) -> Option<Termination> {
    if !matches!(conductor.construction, Construction::Rope(_)) {
        return None;
    }
    match part.role {
        Role::Ferrule => Some(Termination::PressedFerrule),
        Role::RopeGrip => Some(Termination::RopeGrips),
        Role::Wedge => Some(Termination::WedgeSocket),
        _ => None,
    }
}
