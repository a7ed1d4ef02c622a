//! The YAML as written, with positions.
