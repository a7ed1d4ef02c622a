//! Pages and tables of `output/register` where a card holds only from a later day: an old copy is handed in on that day,
//! and until then stands among the current ones, or still says that nobody may build.

use super::pages::{desk, fitting, made};

fn notice(number: &str, effective: &str) -> (String, String) {
    let text =
        format!("number: {number}\ndate: 2026-02-10\neffective: {effective}\ntitle: Notice {number}\n");
    (format!("notices/{number}.yaml"), text)
}

fn lines<'t>(table: &'t str, start: &str) -> Vec<&'t str> {
    table.lines().filter(|line| line.starts_with(start)).collect()
}

#[test]
fn what_holds_later_is_listed_beside_what_holds_until_then() {
    let mut desk = desk();
    desk.files.extend([notice("N-2", "2026-02-10"), notice("N-3", "2026-06-01")]);
    desk.files.extend([
        fitting(4, "Fourth", "Read the tag.", ""),
        fitting(5, "Fifth & last", "Read the tag.", "notices: [N-2]\nstatus: on-hold\n"),
    ]);
    desk.issue("e3", "2026-03-01", "");
    desk.files.extend([
        fitting(1, "First", "Read the tag three times.", "notices: [N-1, N-3]\n"),
        fitting(5, "Fifth & last", "Read the tag.", "notices: [N-3]\n"),
    ]);
    desk.issue("e4", "2026-04-01", "");
    let files = made(&desk);
    let ends = |start: &str| -> Vec<String> {
        let cells = lines(&files["current-cards.csv"], start).into_iter().map(|line| {
            let cells: Vec<&str> = line.split(',').collect();
            format!("{}: {}", cells[2], cells[5])
        });
        cells.collect()
    };
    assert_eq!(ends("F-1,"), ["2: current until 2026-06-01", "3: current from 2026-06-01 on"]);
    assert_eq!(ends("F-5,"), ["3: on-hold until 2026-06-01", "4: current from 2026-06-01 on"]);
    assert_eq!(ends("F-4,"), ["1: current"]);
    // Issue 2 of F-1 is good until the day; issue 2 of F-5 was called back by the hold.
    let copies = |start: &str| lines(&files["call-in.csv"], start).join("\n");
    assert_eq!(copies("depot,Depot,F-1,2"), "depot,Depot,F-1,2,2,2026-06-01");
    assert_eq!(copies("depot,Depot,F-5,2"), "depot,Depot,F-5,2,4,");
    let list = &files["call-in-depot.html"];
    assert!(list.contains("F-1 First: on 2026-06-01, good until then"), "{list}");
    assert!(list.contains("F-1 First: holds from 2026-06-01 on"), "{list}");
    let crews = &files["notice-to-crews.html"];
    assert!(crews.contains("F-5 Fifth &amp; last, until 2026-06-01"), "{crews}");
    assert!(crews.contains("holds from 2026-06-01 on"), "{crews}");
}
