//! Drawings that are refused: a place or size in them is not finite, and no other may stand for it.

/// What is lettered instead.
pub(crate) const WORDS: &str = "not drawn: a size is not a number";

/// The class of the group that it is in.
const CLASS: &str = "sk-refused";

/// The shapes of a refused drawing, marked as such.
pub(crate) fn marked(body: &str) -> String {
    format!("<g class=\"{CLASS}\">{body}</g>")
}

/// Whether a drawing that was refused is in this SVG or HTML, wherever a layout has put it.
///
/// ```
/// use fittingcards::section::{Construction, compute};
/// use fittingcards::sketch::{Options, Subject, is_refused, section_of};
/// use fittingcards::source::{MemoryWorld, World};
/// use fittingcards::typeset::Fonts;
/// use fittingcards::units::Length;
///
/// let tube = |diameter: f64| Construction::Tube {
///     outside_diameter: Length::from_mm(diameter),
///     wall: Length::from_mm(3.0),
/// };
/// let section = compute(&tube(40.0), None)?;
/// let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
/// let options = Options::new(&fonts, Length::from_mm(60.0), Length::from_mm(60.0));
/// let body = |diameter| section_of(&Subject::new("Tube", &tube(diameter), &section), &options).body;
/// assert!(is_refused(&body(f64::NAN)) && !is_refused(&body(40.0)));
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
#[must_use]
pub fn is_refused(text: &str) -> bool {
    text.contains(&format!("<g class=\"{CLASS}\">"))
}
