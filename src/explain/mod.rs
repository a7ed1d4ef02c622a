//! What a key of the records or the code of a finding means, and how to write it or put it right.
//!
//! Keys come from the declarations that read the records; codes from a text each in `codes/`, which the rules of
//! `audit` take in as their documentation.

mod answer;
mod code;
mod json;
mod key;
mod names;
mod unit;

pub use answer::{Answer, Kind, answer, everything};
pub use code::{Code, codes};
pub use json::to_json;
pub use key::{Key, KeyDefault, keys};
