//! Drawings that were refused stop the run.

use crate::diagnostics::{Finding, Place};
use crate::sketch;

/// What is found where one of the texts that an output is made of holds such a drawing.
pub(super) fn found<'t>(
    output: &str,
    place: &Place,
    mut texts: impl Iterator<Item = &'t str>,
) -> Option<Finding> {
    let message = || format!("{output}: a size in a drawing is not a number");
    texts.any(sketch::is_refused).then(|| {
        Finding::error("drawing-refused", place.clone(), message())
            .help("this is a mistake in the program, not in the records; please report it, with the records")
    })
}

#[cfg(test)]
mod tests {
    use super::found;
    use crate::diagnostics::{Place, Severity};
    use crate::section::{Construction, compute};
    use crate::sketch::{Options, Subject, section_of};
    use crate::source::{FilePath, MemoryWorld, World};
    use crate::typeset::Fonts;
    use crate::units::Length;

    #[test]
    fn a_refused_drawing_is_an_error_wherever_it_stands() {
        let tube = |diameter: f64| Construction::Tube {
            outside_diameter: Length::from_mm(diameter),
            wall: Length::from_mm(3.0),
        };
        let section = compute(&tube(40.0), None).unwrap();
        let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
        let options = Options::new(&fonts, Length::from_mm(60.0), Length::from_mm(60.0));
        let page = |diameter: f64| {
            let drawing = section_of(&Subject::new("Tube", &tube(diameter), &section), &options);
            format!("<figure>{}</figure>", drawing.body)
        };
        let place = Place::whole(FilePath::catalogue("catalogue.yaml"));
        let finding = found("a page", &place, ["", &page(f64::NAN)].into_iter()).unwrap();
        assert_eq!((finding.code, finding.severity), ("drawing-refused", Severity::Error));
        assert!(found("a page", &place, [page(40.0).as_str()].into_iter()).is_none());
    }
}
