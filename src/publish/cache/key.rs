//! What an output is made from, as hashes by name.

use std::collections::BTreeMap;
use std::fmt::{self, Debug, Write};

/// Everything that an output is made from: the hash of each thing by what it is called.
pub(in crate::publish) type Inputs = BTreeMap<String, String>;

/// The hash of all that a value holds, without the places of records in their files.
pub(in crate::publish) fn hash(value: &dyn Debug) -> String {
    let mut hashing = Hashing(blake3::Hasher::new());
    // A hasher takes whatever is written to it.
    let _ = write!(hashing, "{value:-?}");
    short(&hashing.0)
}

/// The hash of a layout's values.
pub(in crate::publish) fn hash_json(value: &serde_json::Value) -> String {
    let mut hasher = blake3::Hasher::new();
    let _ = serde_json::to_writer(&mut hasher, value);
    short(&hasher)
}

/// Sixteen bytes: no two inputs meet by chance.
pub(super) fn short(hasher: &blake3::Hasher) -> String {
    let mut bytes = [0; 16];
    hasher.finalize_xof().fill(&mut bytes);
    bytes.iter().fold(String::with_capacity(32), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}

struct Hashing(blake3::Hasher);

impl fmt::Write for Hashing {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        self.0.update(text.as_bytes());
        Ok(())
    }
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
