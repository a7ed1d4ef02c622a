//! Pages of the booklet and their indexes.
