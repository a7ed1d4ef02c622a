//! The pieces of fittings.

use super::{Conductor, Origin};
use crate::colour::Mark;
use crate::grip::Geometry;
use crate::records::{Reuse, Role, StampPlace, Status};
use crate::section::Material;
use crate::units::Force;
use jiff::civil::Date;
use std::sync::Arc;

/// One piece of a fitting.
#[derive(Debug, Clone)]
pub struct Part {
    /// Its number.
    pub number: String,
    /// Its name.
    pub name: String,
    /// What it does in its fitting.
    pub role: Role,
    /// What it is made of.
    pub material: Arc<Material>,
    /// Drawing number with revision; empty where not stated.
    pub drawing: String,
    /// Characters found on it; empty where not stated.
    pub stamp: String,
    /// Where it stands on a gripping part, where stated.
    pub stamp_on: Option<StampPlace>,
    /// The mark stated on it.
    pub mark: Option<Mark>,
    /// Whether the mark can be seen on the assembled fitting, where stated.
    pub mark_seen_after_assembly: Option<bool>,
    /// Whether it may be used again, where stated.
    pub reuse: Option<Reuse>,
    /// Whether it may be used at all.
    pub status: Status,
    /// Parts of the same role and interface go into the same place; empty where not stated.
    pub interface: String,
    /// Conductors it has been tested on, beside its own.
    pub proven_on: Vec<Proof>,
    /// Its measurements.
    pub geometry: Option<Geometry>,
    /// Where it stands.
    pub origin: Origin,
}

impl Role {
    /// Whether parts of this role hold the conductor; a thimble only guides.
    #[must_use]
    pub fn grips(self) -> bool {
        matches!(self, Self::Cone | Self::Wedge | Self::Sleeve | Self::Ferrule | Self::RopeGrip)
    }
}

/// A test of a part on a conductor.
#[derive(Debug, Clone)]
pub struct Proof {
    /// The conductor it was tested on.
    pub conductor: Arc<Conductor>,
    /// The number of the body that it was tested in; empty where not stated.
    pub body: String,
    /// What it held.
    pub holding_load: Option<Force>,
    /// The report; empty where not stated.
    pub report: String,
    /// When.
    pub date: Option<Date>,
    /// Whether that day is after the date that catalogue.yaml states: then nobody has made the test yet.
    pub to_come: bool,
}
