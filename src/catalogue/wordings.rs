//! Texts that may name values, from records to the model.

use super::model::Wording;
use crate::records::{Field, Worded};

/// A text of a record; `None` where the record lacks it or leaves it empty.
pub(super) fn wording<T: AsRef<str>>(field: Option<&Field<Worded<T>>>) -> Option<Wording> {
    field.map(of).filter(|wording| !wording.text.is_empty())
}

/// The texts of a list.
pub(super) fn wordings<T: AsRef<str>>(field: Option<&Field<Vec<Field<Worded<T>>>>>) -> Vec<Wording> {
    field.iter().flat_map(|field| &field.value).map(of).collect()
}

fn of<T: AsRef<str>>(field: &Field<Worded<T>>) -> Wording {
    Wording {
        text: field.value.text.as_ref().to_owned(),
        field: field.path.clone(),
        letters: field.value.letters.clone(),
    }
}
