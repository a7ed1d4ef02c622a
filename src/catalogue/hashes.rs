//! What records hold, as hashes: to know whether something that is made from them has changed.

use super::{Catalogue, Conductor, Fitting, Part};
use blake3::Hash;
use std::collections::BTreeMap;
use std::fmt::Debug;
use std::ptr;
use std::sync::{Arc, OnceLock};

/// The hash of each record with all that it refers to, as `Debug` shows it, so that no field is forgotten. Places in
/// files are left out. Each is worked out once, when it is first asked for.
#[derive(Debug, Default)]
pub struct RecordHashes {
    fittings: Known<Fitting>,
    parts: Known<Part>,
    conductors: Known<Conductor>,
}

impl RecordHashes {
    /// Those of the records of a catalogue.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> Self {
        Self {
            fittings: Known::of(&catalogue.fittings),
            parts: Known::of(&catalogue.parts),
            conductors: Known::of(&catalogue.conductors),
        }
    }

    /// The hash of a fitting.
    #[must_use]
    pub fn fitting(&self, fitting: &Fitting) -> Hash {
        self.fittings.hash(&fitting.number, fitting)
    }

    /// The hash of a part.
    #[must_use]
    pub fn part(&self, part: &Part) -> Hash {
        self.parts.hash(&part.number, part)
    }

    /// The hash of a conductor.
    #[must_use]
    pub fn conductor(&self, conductor: &Conductor) -> Hash {
        self.conductors.hash(&conductor.id, conductor)
    }
}

/// Records of a kind by number or id, with the hashes that were asked for.
#[derive(Debug)]
struct Known<T>(BTreeMap<String, (Arc<T>, OnceLock<Hash>)>);

impl<T> Default for Known<T> {
    fn default() -> Self {
        Self(BTreeMap::new())
    }
}

impl<T: Debug> Known<T> {
    fn of(records: &BTreeMap<String, Arc<T>>) -> Self {
        let entry = |(id, record): (&String, &Arc<T>)| (id.clone(), (Arc::clone(record), OnceLock::new()));
        Self(records.iter().map(entry).collect())
    }

    /// That of a record which is no other than the one of that id; what is like it in its id alone is looked at anew.
    fn hash(&self, id: &str, record: &T) -> Hash {
        match self.0.get(id) {
            Some((known, hash)) if ptr::eq(&**known, record) => *hash.get_or_init(|| of_debug(record)),
            _ => of_debug(record),
        }
    }
}

fn of_debug(record: &impl Debug) -> Hash {
    // At once: a hash of many small pieces takes longer than the pieces.
    blake3::hash(format!("{record:-?}").as_bytes())
}
