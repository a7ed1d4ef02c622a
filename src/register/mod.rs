//! Editions: which card had which issue and which check code.
