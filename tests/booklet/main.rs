//! The booklet of the demo catalogue: whole, linked, and asking for nothing.

mod made;
mod pages;
