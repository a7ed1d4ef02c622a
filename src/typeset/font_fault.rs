//! Why a font file can't be used.

use crate::diagnostics::Finding;
use crate::source::Place;

/// What is wrong with a font file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct FontFault {
    message: &'static str,
    found: Option<String>,
    expected: &'static str,
    help: &'static str,
}

impl FontFault {
    /// Nothing in it looks like a font.
    pub fn no_font() -> Self {
        Self {
            message: "this file is not a font that can be read",
            found: None,
            expected: "a TrueType or OpenType font (.ttf, .otf)",
            help: "put a sound font file in its place, or take it out of the fonts folder",
        }
    }

    /// It is a font, but not as its maker wrote it.
    pub fn damaged(found: String) -> Self {
        Self {
            message: "this font file is damaged",
            found: Some(found),
            expected: "tables that lie in the file and agree with their checksums",
            help: "copy the file again from where it came from, or save it again with a font program",
        }
    }

    /// It holds several fonts.
    pub fn collection() -> Self {
        Self {
            message: "this file is a collection of fonts",
            found: None,
            expected: "a file with one font (.ttf, .otf)",
            help: "save the font that you need as a file of its own",
        }
    }

    /// The trial did not come to its end.
    pub fn unusable(found: &str) -> Self {
        Self {
            message: "this font can't be used: texts can't be drawn in it",
            found: Some(found.to_owned()),
            expected: "a font that the program can draw with",
            help: "use another version of this font, or another font",
        }
    }

    /// The same as a finding.
    pub fn finding(self, place: Place) -> Finding {
        let mut finding = Finding::error("font-unreadable", place, self.message);
        finding.found = self.found;
        finding.expected(self.expected).help(self.help)
    }
}
