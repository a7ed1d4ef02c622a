//! What `fittingcards explain` and the schemas say of keys and codes, against the readers, the checks and the sources.

mod codes;
mod defaults;
mod keys;
mod written;
