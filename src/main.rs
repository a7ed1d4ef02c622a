//! The `fittingcards` program.

fn main() {}
