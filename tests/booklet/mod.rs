//! The booklet of the demo catalogue: whole, linked, and asking for nothing.

mod digits;
mod literal;
mod made;
mod markup;
mod named;
mod offline;
mod pages;
mod shared_bodies;
