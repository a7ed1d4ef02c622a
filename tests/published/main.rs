//! What is computed against what others have published.

mod colour;
