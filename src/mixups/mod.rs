//! Which parts and conductors can be confused, and what a measured conductor can be.

mod acceptance;
mod adjustable_dimension;
mod built;
mod case;
mod clues;
mod deciding;
mod design_fix;
mod draw_in;
mod features;
mod find;
mod identify;
mod inside;
mod json;
mod judging;
mod look_alikes;
mod marks;
mod measured;
mod proof;
mod right_inside;
mod seat;
mod summary;
mod visibility;
mod what_if;
pub mod words;
mod worn;

pub use case::{BodyMixups, Case, Consequence, InterfaceMixups, Kit, Mixups, Worn};
pub use clues::{Clue, STOP, STOP_LABELLED_ALIKE, clues, labelled_alike, same_by_hand, told_apart};
pub use deciding::{alike_in_place, decides};
pub use design_fix::{DangerPlace, DesignFix, Effect, design_fixes_to_json, without_design_fix};
pub use draw_in::Interval;
pub use features::{Scratch, Shape, outer_wires, shape};
pub use find::find;
pub use identify::{Candidate, Identified, Readings, Unanswerable, fittings_for, identify, measured_json};
pub use inside::{
    Closed, ClosedAnswer, LineLoad, Meaning, NONE_FITS, PossibleInside, STAND_OUT_TOLERANCE, closed_by_name,
    closed_json, closed_with, inside, inside_to_json,
};
pub use json::{body_to_json, interface_to_json, to_json};
pub use look_alikes::{LookAlike, look_alikes};
pub use marks::{mark_limits, marks};
pub use proof::{
    Shortfall, best_proof, contradicted, proof_counts, proven, proven_in, rope_end_keeps, termination,
};
pub use seat::{Own, held, own, own_worn};
pub use summary::Summary;
pub use visibility::SeenBy;
pub use what_if::design_fixes;
