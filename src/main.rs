//! The `fittingcards` program.
#![cfg_attr(not(test), deny(clippy::disallowed_methods, clippy::unwrap_used))]

fn main() {}
