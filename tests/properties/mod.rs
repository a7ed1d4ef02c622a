//! What holds for every value, not only for the printed ones.

mod grip;
mod pixels;
mod polygons;
mod sections;
