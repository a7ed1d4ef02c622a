//! Assemblies of parts.

use super::{Conductor, IfWrong, Notice, Origin, Part, Procedure, Step, Tightening, Wording};
use crate::colour::Mark;
use crate::records::{CardKey, Family, Role, StandOutFrom, Status};
use crate::source::Place;
use crate::units::{Force, Length, Numerals, Range};
use jiff::civil::Date;
use std::sync::Arc;

/// An assembly of parts that ends, anchors or joins a conductor.
#[derive(Debug, Clone)]
pub struct Fitting {
    /// Its number.
    pub number: String,
    /// Its name.
    pub name: String,
    /// How it works.
    pub family: Family,
    /// The conductor, or the two of a joint.
    pub conductors: Vec<Arc<Conductor>>,
    /// Parts in item order.
    pub items: Vec<Item>,
    /// Its mark: stated on it, else its gripping part's.
    pub mark: Option<Mark>,
    /// Whether the mark can be seen on the assembled fitting, where stated on it or on its gripping part.
    pub mark_seen_after_assembly: Option<bool>,
    /// What must be readable on the assembled fitting; empty where not stated.
    pub stamp: String,
    /// Stand-out to be measured.
    pub stand_out: Option<StandOut>,
    /// How far the conductor goes in.
    pub insertion: Option<Length>,
    /// How much of it sticks out behind.
    pub tail: Option<Length>,
    /// Proven without slip.
    pub holding_load: Option<Force>,
    /// What it may be used at.
    pub line_tension_max: Option<Force>,
    /// The procedure that it takes what it does not state from.
    pub procedure: Option<Arc<Procedure>>,
    /// What is tightened and how: its own, else the procedure's, as are the texts below.
    pub tightening: Vec<Tightening>,
    /// What a second person checks before it is closed, where stated.
    pub witness: Option<Wording>,
    /// Assembly steps.
    pub steps: Vec<Step>,
    /// Whether a slip mark is painted on the conductor, where stated.
    pub slip_mark: Option<bool>,
    /// What makes it unfit.
    pub reject_if: Vec<Wording>,
    /// What a check that fails calls for, where stated.
    pub if_wrong: IfWrong,
    /// What its card has no need of, where stated.
    pub complete_without: CompleteWithout,
    /// Notices that concern it.
    pub notices: Vec<Arc<Notice>>,
    /// Whether it may be used.
    pub status: Status,
    /// What replaces it.
    pub superseded_by: Option<String>,
    /// What replaces that, and so on, up to the last.
    pub use_instead: Option<String>,
    /// What becomes of fittings already in the line, where stated.
    pub in_service: Option<InService>,
    /// Where it stands.
    pub origin: Origin,
}

impl Fitting {
    /// The first conductor: the only one, but for joints.
    ///
    /// # Panics
    /// Never: the catalogue keeps no fitting without a conductor.
    #[must_use]
    pub fn conductor(&self) -> &Arc<Conductor> {
        &self.conductors[0]
    }

    /// Its texts that may name values, in the order of its record.
    pub fn wordings(&self) -> impl Iterator<Item = &Wording> {
        let if_wrong = self.if_wrong.before_load.iter().chain(&self.if_wrong.under_load);
        let steps = self.steps.iter().map(|step| &step.wording);
        self.witness.iter().chain(steps).chain(&self.reject_if).chain(if_wrong)
    }

    /// The place of a field's value; in the procedure where it is taken from there.
    #[must_use]
    pub fn place_of(&self, field: &str) -> Place {
        let root = field.split('.').next().unwrap_or(field);
        match &self.procedure {
            Some(procedure) if !self.origin.has(root) && procedure.origin.has(root) => {
                procedure.origin.of(field)
            }
            _ => self.origin.of(field),
        }
    }

    /// How many decimals the record writes a number with; the procedure where it is taken from there.
    #[must_use]
    pub fn decimals(&self, field: &str) -> Option<usize> {
        let taken = || self.procedure.as_ref().and_then(|procedure| procedure.origin.decimals(field));
        self.origin.decimals(field).or_else(taken)
    }

    /// A number of a field as it is written, never rounded, with its unit.
    #[must_use]
    pub fn with_unit(&self, field: &str, value: f64, unit: &str, numerals: Numerals) -> String {
        format!("{}\u{a0}{unit}", numerals.stated(value, self.decimals(field)))
    }

    /// The procedure that a text of this fitting is taken from; `None` where its own record states it.
    #[must_use]
    pub fn procedure_of(&self, wording: &Wording) -> Option<&Procedure> {
        self.procedure.as_deref().filter(|_| !self.origin.has(&wording.field))
    }

    /// The items whose parts hold the conductor, in item order.
    pub fn gripping(&self) -> impl Iterator<Item = &Item> {
        self.items.iter().filter(|item| item.part.role.grips())
    }

    /// The items that are bodies, in item order.
    pub fn bodies(&self) -> impl Iterator<Item = &Item> {
        self.items.iter().filter(|item| item.part.role == Role::Body)
    }
}

/// A part in a fitting.
#[derive(Debug, Clone)]
pub struct Item {
    /// The part.
    pub part: Arc<Part>,
    /// How many of it.
    pub quantity: u32,
}

/// The stand-out that is measured on a fitting.
#[derive(Debug, Clone, PartialEq)]
pub struct StandOut {
    /// Between what it is measured.
    pub from: StandOutFrom,
    /// Window after tightening.
    pub seated: Option<Range<Length>>,
    /// Window after line tension has drawn the gripping part in.
    pub tensioned: Option<Range<Length>>,
    /// The most that line tension may draw the gripping part in.
    pub draw_in_max: Option<Length>,
}

/// What the card of a fitting has no need of.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct CompleteWithout {
    /// The record keys that are left out on purpose.
    pub keys: Vec<CardKey>,
    /// Why; empty where nothing is left out.
    pub because: String,
}

/// What becomes of fittings already in the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum InService {
    MayStay,
    Inspect,
    ReplaceBy(Date),
    StopNow,
}
