//! Comments where a value is taken out: those of others stay with them. Were brackets cut from value to value, a comment
//! would go that nobody touched, or stand behind a number that it is not about.

use super::{FITTINGS, PARTS, errors, imported, small, text};
use fittingcards::source::FilePath;

const COLLET: &str = "geometry:\n  collet: {\n    bore_mm: 14.30,\n    length_mm: 60, # new saw\n    stand_out_at_bore_mm: 6.0   # measured T-311\n  }\n";

/// The parts with that collet, and what clearing a column of it leaves.
fn cleared(column: &str) -> (String, usize) {
    let start = PARTS.find("geometry:").unwrap();
    let end = PARTS.find("proven_on:").unwrap();
    let parts = PARTS.replace(&PARTS[start..end], COLLET);
    let world = small().with(FilePath::catalogue("parts/cones.yaml"), parts);
    let table = format!("number,{column}\nC-1,\n");
    let import = imported(&world, &[("parts.csv", table.as_bytes())]);
    assert_eq!(errors(&import), []);
    let is = text(&import, "parts/cones.yaml");
    let (start, end) = (is.find("geometry:").unwrap(), is.find("proven_on:").unwrap());
    (is[start..end].to_owned(), import.findings.sorted().len())
}

#[test]
fn a_comment_goes_with_its_own_value_alone() {
    let last = COLLET.replace("60, # new saw", "60 # new saw");
    let last = last.replace("    stand_out_at_bore_mm: 6.0   # measured T-311\n", "");
    assert_eq!(cleared("geometry.collet.stand_out_at_bore_mm"), (last, 0));
    let middle = COLLET.replace("    length_mm: 60, # new saw\n", "");
    assert_eq!(cleared("geometry.collet.length_mm"), (middle, 0));
}

/// The comment behind the bracket may be about the last entry, or about all.
#[test]
fn a_comment_that_may_be_of_what_goes_stays_and_is_told() {
    let list = "parts: [B-1,\n  C-1, # not the old screw\n  N-1] # nut of brass";
    let fittings = FITTINGS.replace("parts: [B-1, C-1, { part: N-1, quantity: 4 }] # in order", list);
    let world = small().with(FilePath::catalogue("fittings/ends.yaml"), &fittings);
    let import = imported(&world, &[("fittings.csv", b"number,parts\nF-1,\"B-1, C-1\"\n")]);
    let expected = fittings.replace("C-1, # not", "C-1 # not").replace("  N-1] # nut", "  ] # nut");
    assert_eq!((text(&import, "fittings/ends.yaml"), errors(&import)), (expected.as_str(), vec![]));
    let told = import.findings.sorted();
    let told: Vec<_> = told.iter().map(|told| (told.code, told.place.line, told.found.as_deref())).collect();
    assert_eq!(told, [("comment-left", 2, Some("# nut of brass"))]);
}

/// A line of comment above a key is often about it, and about the next one as soon as that key is gone.
#[test]
fn a_comment_above_what_goes_is_told() {
    let parts = PARTS.replace("stamp: ", "# old stamp until May\nstamp: ");
    let world = small().with(FilePath::catalogue("parts/cones.yaml"), &parts);
    let import = imported(&world, &[("parts.csv", b"number,stamp\nC-1,\n")]);
    assert_eq!(text(&import, "parts/cones.yaml"), parts.replace("stamp: \"14.0\"\n", ""));
    let told = import.findings.sorted();
    let told: Vec<_> = told.iter().map(|told| (told.code, told.found.as_deref())).collect();
    assert_eq!(told, [("comment-left", Some("# old stamp until May"))]);
}
