//! Where a record and its fields stand.

use crate::records::Written;
use crate::source::Place;
use crate::units::Numerals;
use std::collections::BTreeMap;

/// A record's own place and the places of its fields, for findings that come later.
#[derive(Debug, Clone)]
pub struct Origin {
    /// Where the record starts.
    pub place: Place,
    /// Where each field's value stands, by dotted path such as `stated.section_mm2` or `parts.2`.
    pub fields: BTreeMap<String, Place>,
    /// Each number as it is written, by dotted path.
    pub numbers: BTreeMap<String, Written>,
}

impl Origin {
    /// Whether the record has a field.
    #[must_use]
    pub fn has(&self, field: &str) -> bool {
        self.fields.contains_key(field)
    }

    /// How many decimals the record writes a number with; `None` where it has no such number.
    #[must_use]
    pub fn decimals(&self, field: &str) -> Option<usize> {
        self.numbers.get(field).map(|written| written.decimals)
    }

    /// A number of a field as the record writes it, never rounded; to a tenth where the record has no such number.
    #[must_use]
    pub fn written(&self, field: &str, value: f64, numerals: Numerals) -> String {
        numerals.stated(value, self.decimals(field))
    }

    /// The same with its unit.
    #[must_use]
    pub fn with_unit(&self, field: &str, value: f64, unit: &str, numerals: Numerals) -> String {
        format!("{}\u{a0}{unit}", self.written(field, value, numerals))
    }

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
