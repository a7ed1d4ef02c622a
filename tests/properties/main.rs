//! What holds for every value, not only for the printed ones.

mod grip;
mod polygons;
mod sections;
