//! Lists as spreadsheets save them, and what is wrong with their rows.

use super::Line;

/// What each of these says, by hand.
const PLAIN: &str =
    "place,fitting,seated_mm,remark\n\"Mast 1, left\",ST-4100,4.2,\"öl \"\"zu\"\"\"\nMast 2,ST-4110,-0.5,\n";

#[test]
fn a_list_is_read_alike_however_a_spreadsheet_saves_it() {
    let expected = format!("{:-?}", Line::with_list(PLAIN).installed);
    assert!(expected.contains("Mast 1, left") && expected.contains("öl \\\"zu\\\""), "{expected}");
    let semicolons =
        "place;fitting;seated_mm;remark\nMast 1, left;ST-4100;4,2;\"öl \"\"zu\"\"\"\nMast 2;ST-4110;-0,5;\n";
    let tabs = semicolons.replace(';', "\t");
    let turned = "\u{feff}remark,seated_mm,fitting,place\r\n\"öl \"\"zu\"\"\",4.20,ST-4100,\"Mast 1, left\"\r\n,-.5,ST-4110,Mast 2\r\n";
    let padded = "place,fitting,seated_mm,remark,,\n\n\"Mast 1, left\", ST-4100 ,4.2,\"öl \"\"zu\"\"\",,\nMast 2,ST-4110,-0.5,,,\n,,,,,\n";
    for list in [semicolons, &tabs, turned, padded] {
        let line = Line::with_list(list);
        assert_eq!(format!("{:-?}", line.installed), expected, "{list}");
        assert_eq!(line.found(), [], "{list}");
    }
}

#[test]
fn every_fault_of_every_row_is_told_at_its_cell_and_the_other_rows_count() {
    // Lines and columns are counted by hand.
    let list = "place,fitting,gripping_part,seated_mm,built,issue,slip\n\
                Mast 1,ST-4100,ST-4103,4.2,2026-09-01,2,1\n\
                Mast 2,ST-410O,ST-4103,4.2,2026-09-01,2,2\n\
                Mast 3,ST-4100,ST-4102,4.2,2026-09-01,2,3\n\
                Mast 4,ST-4100,ST-4999,\"4,2\",2026-02-30,3,4\n\
                ,ST-4100,ST-4203,4.2 mm,01/02/2026,two,5\n\
                Mast 1,ST-4100,,4.2,2026-09-01,2,1\n\
                \"Mast\n6\",ST-4100,ST-4103,900,2026-01-01,2,7\n\
                Mast 7,ST-4100,ST-4103,4.0,2026-09-01,2,8\n";
    let line = Line::with_list(list);
    let expected = [
        ("unknown-fitting", 3, 8),
        ("not-a-gripping-part", 4, 16),
        ("unknown-part", 5, 16),
        ("wrong-type", 5, 24),
        ("not-a-date", 5, 30),
        ("unknown-issue", 5, 41),
        ("missing-key", 6, 1),
        ("not-a-gripping-part", 6, 10),
        ("wrong-type", 6, 18),
        ("not-a-date", 6, 25),
        ("wrong-type", 6, 36),
        ("installed-twice", 7, 1),
        ("bad-text", 8, 1),
        ("absurd", 9, 20),
        ("unknown-issue", 9, 35),
    ];
    assert_eq!(line.found(), expected);
    let places: Vec<&str> = line.installed.iter().map(|installed| installed.place.as_str()).collect();
    assert_eq!(places, ["Mast 1", "Mast 7"]);
}

#[test]
fn columns_are_known_once_and_needed() {
    let line = Line::with_list("plaze,fitting,Seated_mm,seated_mm,seated_mm\nMast 1,ST-4100,,4.2,\n");
    let expected =
        [("missing-key", 1, 1), ("unknown-key", 1, 1), ("unknown-key", 1, 15), ("duplicate-key", 1, 35)];
    assert_eq!(line.found(), expected);
    let helps: Vec<&str> = line.findings.sorted().iter().map(|found| found.help.as_str()).collect::<Vec<_>>();
    assert!(
        helps.contains(&"did you mean `place`?") && helps.contains(&"did you mean `seated_mm`?"),
        "{helps:?}"
    );
    let line = Line::with_list("place,fitting,\nMast 1,ST-4100,\nMast 2,ST-4100,4.2\n");
    assert_eq!(line.found(), [("unknown-key", 3, 16)]);
}

#[test]
fn a_list_has_a_limit_of_its_own_and_says_so() {
    let row = "Mast,ST-4100,\n";
    let large = format!("place,fitting,remark\n{}", row.repeat(17 * 1024 * 1024 / row.len()));
    let line = Line::with_list(&large);
    let findings = line.findings.sorted();
    assert_eq!(findings[0].code, "too-large");
    assert!(findings[0].expected.as_ref().unwrap().contains("16 MiB"), "{findings:?}");
    assert!(line.installed.is_empty());
}

#[test]
fn a_list_that_is_no_text_is_told_with_what_to_do() {
    let utf16: Vec<u8> = "\u{feff}place,fitting\n".encode_utf16().flat_map(u16::to_le_bytes).collect();
    let line =
        Line::of(&[("installed/a.csv", &utf16), ("installed/b.xlsx", b"PK"), ("installed/c.csv", b"")]);
    let findings = line.findings.sorted();
    let told: Vec<_> = findings.iter().map(|found| (found.code, found.help.as_str())).collect();
    assert_eq!(told[0], ("not-utf8", "the file is saved as UTF-16: save it as UTF-8"));
    assert_eq!(told[1].0, "file-ending");
    assert_eq!(told[2].0, "empty-document");
}
