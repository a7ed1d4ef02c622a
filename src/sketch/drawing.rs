//! A finished drawing.

use crate::units::Length;

/// A drawing: SVG shapes in millimetres with what a reader who can't see it needs.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Width on paper.
    pub width: Length,
    /// Height on paper.
    pub height: Length,
    /// The scale in words, such as "5:1" or "not to scale".
    pub scale: String,
    /// What it is.
    pub title: String,
    /// What it shows, in sentences.
    pub description: String,
    /// SVG elements without a root, drawn from (0, 0) to (width, height), one unit a millimetre; looks
    /// are presentation attributes beside `class`, so that a style sheet can restyle them.
    pub body: String,
    /// The dimensions printed in it, in reading order.
    pub dimensions: Vec<Dimension>,
}

/// A dimension that a drawing prints.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Dimension {
    /// What is measured, such as "overall diameter".
    pub name: String,
    /// The text in the drawing, such as "14.0 mm".
    pub text: String,
}
