//! Why cards or tags could not be put on sheets.

use super::options::Options;
use super::print_item::PrintKind;
use krilla::configure::ValidationError;
use krilla::error::KrillaError;

/// What stands in the way of a PDF.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SheetFault {
    /// Not one item of this size, with its bleed, marks and margin, fits the sheet.
    DoesNotFit {
        /// What it is, with its width and height in words.
        item: String,
        /// The paper's name.
        sheet: &'static str,
    },
    /// What was drawn breaks PDF/A-2b.
    NotArchivable {
        /// What is wrong.
        reason: String,
    },
}

impl std::fmt::Display for SheetFault {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::DoesNotFit { item, sheet } => {
                write!(out, "a {item} with its bleed and margins does not fit a sheet of {sheet}")
            }
            Self::NotArchivable { reason } => {
                write!(out, "the sheets can't be made an archivable PDF: {reason}")
            }
        }
    }
}

impl std::error::Error for SheetFault {}

impl SheetFault {
    pub(super) fn does_not_fit(kind: PrintKind, options: &Options<'_>) -> Self {
        let (width, height) = options.trim;
        let item = format!("{} of {} × {} mm", kind.one(), width.mm(), height.mm());
        Self::DoesNotFit { item, sheet: options.format.size.word() }
    }

    /// The first thing that the library found.
    pub(super) fn from_library(error: &KrillaError) -> Self {
        let reason = match error {
            KrillaError::Validation(violations) => {
                violations.first().map(|(violation, _)| in_words(violation))
            }
            _ => None,
        };
        Self::NotArchivable { reason: reason.unwrap_or_else(|| error.to_string()) }
    }
}

fn in_words(violation: &ValidationError) -> String {
    match violation {
        ValidationError::ContainsNotDefGlyph(_, _, text) => {
            let codes: Vec<String> = text.chars().map(|c| format!("U+{:04X}", u32::from(c))).collect();
            format!("no font has all of the characters of “{text}” ({})", codes.join(", "))
        }
        ValidationError::RestrictedLicense(_) => "a font's licence forbids embedding it".to_owned(),
        ValidationError::ContainsPostScript(_) => "a colour gradient of a layout repeats".to_owned(),
        ValidationError::TooHighQNestingLevel => "groups of a layout are nested too deep".to_owned(),
        other => name_of(other),
    }
}

/// The library's name of a violation, without the fonts and places that follow it.
fn name_of(violation: &ValidationError) -> String {
    let text = format!("{violation:?}");
    text.split(['(', ' ']).next().unwrap_or_default().to_owned()
}
