//! The templates: finding, compiling and filling them.
