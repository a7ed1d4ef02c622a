//! The page and the table of fittings in the line that call for something.

use super::{options, render, rendered, tree, world};
use fittingcards::source::{FilePath, MemoryWorld};

const LIST: &str = "place,fitting,gripping_part,built\n\
                    \"Mast <1>, left\",F-1,P-1,2026-01-01\n\
                    Mast 2,F-2,P-2,2026-01-01\n";

fn with_list(list: &str) -> MemoryWorld {
    let held = "number: F-1\nname: Dead-end\nfamily: cone-dead-end\nconductor: wire-95\nparts: [P-1, P-2]\n\
                status: on-hold\nin_service: stop-now\n";
    let world = world(2).with(FilePath::catalogue("fittings/0001.yaml"), held);
    world.with(FilePath::catalogue("installed/line.csv"), list)
}

#[test]
fn the_page_and_the_table_hold_what_calls_for_something() {
    let folder = tempfile::tempdir().unwrap();
    let list = LIST.replace("F-1,P-1", "F-1,");
    rendered(&with_list(&list), &options(folder.path()));
    let files = tree(folder.path());
    let page = String::from_utf8(files["register/follow-up.html"].clone()).unwrap();
    for said in
        ["Mast &lt;1&gt;, left", "OVERDUE", "on hold: stop until told; those in the line: stop now, report"]
    {
        assert!(page.contains(said), "{said}: {page}");
    }
    assert!(!page.contains("Mast 2"), "{page}");
    let mut table = csv::Reader::from_reader(files["register/follow-up.csv"].as_slice());
    let rows: Vec<csv::StringRecord> = table.records().map(Result::unwrap).collect();
    let cells: Vec<&str> = rows.iter().flat_map(|row| row.iter().take(7)).collect();
    assert_eq!(cells, ["Mast <1>, left", "F-1", "Dead-end", "yes", "", "", "stop-now"]);
}

#[test]
fn without_a_list_there_is_no_page_and_a_list_with_a_fault_stops_the_run() {
    let folder = tempfile::tempdir().unwrap();
    rendered(&world(2), &options(folder.path()));
    let before = tree(folder.path());
    assert!(!before.keys().any(|path| path.contains("follow-up")));
    let report = render(&with_list(LIST), &options(folder.path())).unwrap();
    let codes: Vec<&str> = report.findings.sorted().iter().map(|found| found.code).collect();
    assert!(report.put.is_none() && codes.contains(&"not-a-gripping-part"), "{codes:?}");
    assert_eq!(tree(folder.path()), before);
    // Once the row is put right, the next run has the page, though nothing else has changed.
    rendered(&with_list(&LIST.replace("F-1,P-1", "F-1,P-2")), &options(folder.path()));
    assert!(tree(folder.path()).contains_key("register/follow-up.html"));
}
