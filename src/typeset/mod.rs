//! Fonts, and measuring and breaking text.
