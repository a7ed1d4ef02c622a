//! What holds of findings whatever was read.

use fittingcards::diagnostics::{self, Colour, Findings};
use fittingcards::source::{Place, World};

/// Every finding is in words, stands in a file that is there, and can be printed.
pub fn sound(findings: &Findings, world: &dyn World) {
    let sorted = findings.sorted();
    for finding in &sorted {
        assert!(!finding.code.is_empty() && !finding.message.is_empty(), "{finding:?}");
        inside(&finding.place, world);
        finding.related.iter().for_each(|related| inside(&related.place, world));
    }
    let mut printed = Vec::new();
    diagnostics::print(findings, world, Colour::Without, &mut printed).unwrap();
    assert!(String::from_utf8(printed).is_ok());
    let listed = diagnostics::to_json(findings);
    assert_eq!(listed["findings"].as_array().map_or(0, Vec::len), sorted.len());
}

/// A place is a whole file, or a line and a column that the file has. A single CR ends a line in YAML and Markdown (YAML
/// 1.2.2, 5.4; CommonMark 0.31, 2.1), and nowhere else.
fn inside(place: &Place, world: &dyn World) {
    let Ok(bytes) = world.read(&place.file) else { return };
    let text = String::from_utf8_lossy(&bytes).replace("\r\n", "\n");
    assert!(has(&text, place) || has(&text.replace('\r', "\n"), place), "{place:?} in {text:?}");
}

/// The end of a file without a last line break may be called a line of its own.
fn has(text: &str, place: &Place) -> bool {
    let (line, column) = (usize::try_from(place.line).unwrap(), usize::try_from(place.column).unwrap());
    if line == 0 {
        return column == 0;
    }
    text.split('\n').chain([""]).nth(line - 1).is_some_and(|text| column <= text.chars().count() + 1)
}
