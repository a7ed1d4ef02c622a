//! A finished drawing.

use super::number::number;
use super::write::escaped;
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

impl Drawing {
    /// A standalone SVG: one unit is a millimetre, title and description are there for screen readers.
    ///
    /// ```
    /// use fittingcards::sketch::Drawing;
    /// use fittingcards::units::Length;
    ///
    /// let drawing = Drawing {
    ///     width: Length::from_mm(20.0),
    ///     height: Length::from_mm(10.0),
    ///     scale: "1:1".into(),
    ///     title: "Wire & cone".into(),
    ///     description: "A wire.".into(),
    ///     body: String::new(),
    ///     dimensions: Vec::new(),
    /// };
    /// let svg = drawing.to_svg();
    /// assert!(svg.contains("viewBox=\"0 0 20 10\"") && svg.contains("<title>Wire &amp; cone</title>"));
    /// ```
    #[must_use]
    pub fn to_svg(&self) -> String {
        let (width, height) = (number(self.width.mm()), number(self.height.mm()));
        let (title, description) = (escaped(&self.title), escaped(&self.description));
        let body = &self.body;
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{width}mm\" height=\"{height}mm\" \
             viewBox=\"0 0 {width} {height}\"><title>{title}</title><desc>{description}</desc>{body}</svg>\n"
        )
    }
}
