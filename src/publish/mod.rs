//! The plan of all outputs, made side by side and put in place at once.
