//! Lists that are damaged, or made to do harm.

use super::Line;
use fittingcards::diagnostics::Findings;
use fittingcards::installed::{follow_up, follow_up_rows};
use fittingcards::records::{read_installed, written_table};
use fittingcards::source::FilePath;

/// The demo's list with bytes changed, left out and put in anywhere: nothing breaks off, and every place is in the text.
#[test]
fn damaged_lists_are_read_as_far_as_they_go() {
    let list = std::fs::read(crate::fixtures::root().join("content/installed/selbrook-tarn.csv")).unwrap();
    let file = FilePath::catalogue("installed/a.csv");
    let mut random = fastrand::Rng::with_seed(7);
    for _ in 0..2000 {
        let mut bytes = list.clone();
        for _ in 0..random.usize(1..12) {
            let at = random.usize(..bytes.len().max(1));
            bytes.resize(bytes.len().max(1), b',');
            match random.usize(..4) {
                0 => bytes[at] = random.u8(..),
                1 => drop(bytes.remove(at)),
                2 => bytes.insert(at, [b'"', b',', b';', b'\n', b'\r', b'\t', 0, b'\''][random.usize(..8)]),
                _ => bytes.truncate(at + 1),
            }
        }
        let mut findings = Findings::new();
        let rows = read_installed(&file, &bytes, &mut findings);
        assert!(rows.len() <= bytes.iter().filter(|byte| matches!(byte, b'\n' | b'\r')).count() + 1);
        let lines = String::from_utf8_lossy(&bytes).split(['\n', '\r']).count();
        for finding in findings.sorted() {
            assert!(finding.place.line as usize <= lines, "{finding:?}");
        }
    }
}

#[test]
fn random_bytes_are_no_list_and_break_nothing() {
    let mut random = fastrand::Rng::with_seed(11);
    for _ in 0..2000 {
        let bytes: Vec<u8> = (0..random.usize(..300)).map(|_| random.u8(..)).collect();
        let ascii: Vec<u8> = bytes.iter().map(|byte| byte & 0x7f).collect();
        for bytes in [bytes, ascii] {
            let rows = read_installed(&FilePath::catalogue("installed/a.csv"), &bytes, &mut Findings::new());
            assert!(rows.is_empty());
        }
    }
}

#[test]
fn long_cells_are_told_short() {
    let long = "x".repeat(1_000_000);
    let line = Line::with_list(&format!("place,fitting,by\n{long},{long},{long}\nMast 1,ST-4100,{long}\n"));
    assert_eq!(line.installed.len(), 0);
    for finding in line.findings.sorted() {
        let text = format!("{} {:?} {:?} {}", finding.message, finding.record, finding.found, finding.help);
        assert!(text.len() < 1000, "{}", text.len());
    }
    let many = format!("{}\n", "a,".repeat(100_000));
    assert!(!Line::with_list(&many).findings.is_empty());
}

/// A text that begins like a formula comes in as it is and goes out as a text.
#[test]
fn cells_that_a_spreadsheet_would_run_go_out_harmless() {
    let line = Line::with_list("place,fitting,seated_mm,by\n=1+1,ST-4110,0.6,'@SUM(A1)\n");
    assert_eq!((line.installed[0].place.as_str(), line.installed[0].by.as_str()), ("=1+1", "@SUM(A1)"));
    let found = follow_up(&line.catalogue, &line.mixups, &line.installed, None);
    let head: Vec<String> = (0..18).map(|nth| nth.to_string()).collect();
    let head: Vec<&str> = head.iter().map(String::as_str).collect();
    let text = String::from_utf8(written_table(&head, &follow_up_rows(&found)).unwrap()).unwrap();
    let row = text.lines().nth(1).unwrap();
    assert!(row.starts_with("'=1+1,ST-4110") && row.contains(",'@SUM(A1),"), "{row}");
}
