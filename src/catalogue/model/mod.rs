//! The domain model: every link resolved, every size positive, every number a quantity.

mod conductor;
mod fitting;
mod note;
mod notice;
mod part;
mod settings;

pub use crate::records::{
    CardSize, Duty, Family, FlipEdge, Orientation, Reuse, Role, SheetSize, StandOutFrom, Status, WearBasis,
};
pub use conductor::{Conductor, Identity, Stated, WearLimits};
pub use fitting::{Fitting, InService, Item, StandOut, Tightening, Window};
pub use note::{FontFile, Note, NoteAbout};
pub use notice::{Holder, Notice};
pub use part::{Part, Proof};
pub use settings::{CardFormat, Limits, Settings, SheetFormat};

use crate::section::Material;
use crate::source::Place;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// A whole catalogue: settings, and the records that are sound, each sorted by id or number.
#[derive(Debug, Clone)]
pub struct Catalogue {
    /// Title, owner, edition, sizes, limits, caution.
    pub settings: Settings,
    /// Materials by id, built-in ones among them.
    pub materials: BTreeMap<String, Arc<Material>>,
    /// Conductors by id.
    pub conductors: BTreeMap<String, Arc<Conductor>>,
    /// Parts by number.
    pub parts: BTreeMap<String, Arc<Part>>,
    /// Fittings by number.
    pub fittings: BTreeMap<String, Arc<Fitting>>,
    /// Notices by number.
    pub notices: BTreeMap<String, Arc<Notice>>,
    /// Holders by id.
    pub holders: BTreeMap<String, Arc<Holder>>,
    /// Markdown of records and chapters, in order of file name.
    pub notes: Vec<Note>,
    /// Fonts beside the built-in ones, in order of file name.
    pub fonts: Vec<FontFile>,
    /// Ids and numbers of records that are left out, because they or what they need are faulty. Whatever
    /// names one of them is not at fault.
    pub left_out: BTreeSet<String>,
}

/// A record's own place and the places of its fields, for findings that come later.
#[derive(Debug, Clone)]
pub struct Origin {
    /// Where the record starts.
    pub place: Place,
    /// Where each field's value stands, by dotted path such as `stated.section_mm2` or `parts.2`.
    pub fields: BTreeMap<String, Place>,
}

impl Origin {
    /// The place of a field's value; of the nearest field around it, else of the record, where the
    /// record does not have it.
    #[must_use]
    pub fn of(&self, field: &str) -> Place {
        let mut path = field;
        loop {
            if let Some(place) = self.fields.get(path) {
                return place.clone();
            }
            match path.rfind('.') {
                Some(dot) => path = &path[..dot],
                None => return self.place.clone(),
            }
        }
    }
}
