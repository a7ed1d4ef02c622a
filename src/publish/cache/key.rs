//! What an output is made from, as hashes by name.

use std::collections::BTreeMap;
use std::fmt::Debug;

/// Everything that an output is made from: the hash of each thing by what it is called.
pub(in crate::publish) type Inputs = BTreeMap<String, String>;

/// The hash of all that a value holds, without the places of records in their files.
pub(in crate::publish) fn hash(value: &dyn Debug) -> String {
    // At once: a hash of many small pieces takes longer than the pieces.
    short(blake3::Hasher::new().update(format!("{value:-?}").as_bytes()))
}

/// The hash of a layout's values.
pub(in crate::publish) fn hash_json(value: &serde_json::Value) -> String {
    short(blake3::Hasher::new().update(value.to_string().as_bytes()))
}

/// Sixteen bytes: no two inputs meet by chance.
pub(super) fn short(hasher: &blake3::Hasher) -> String {
    hasher.finalize().to_hex()[..32].to_owned()
}

#[cfg(test)]
mod tests {
    use super::hash;

    #[test]
    fn values_that_differ_have_other_hashes() {
        assert_eq!(hash(&("a", 1.5)), hash(&("a", 1.5)));
        assert_ne!(hash(&("a", 1.5)), hash(&("a", 1.500_000_000_000_000_2)));
        assert_ne!(hash(&["a, b"]), hash(&["a", "b"].as_slice()));
    }
}
