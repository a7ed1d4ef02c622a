//! `output/register` of a small catalogue. What must stand there follows from the records below, and from the editions'
//! files as a YAML library reads them.

use super::Desk;
use fittingcards::publish::{self, AuditOptions, RenderOptions, Strictness};
use fittingcards::register::copies_of_issue;
use fittingcards::source::FilePath;
use html5gum::{DefaultEmitter, Token, Tokenizer};
use serde_yaml::Value;
use std::collections::BTreeMap;
use std::fs;
use std::sync::LazyLock;

const SETTINGS: &str = "\
title: Small
owner: Example railway
edition: e2
date: 2026-02-01
caution: Example, not for use.
";
const WIRE: &str = "\
id: wire-95
name: Wire 95
duty: other
material: copper-hard-drawn
construction: { stranded: { wires: 19, wire_diameter_mm: 2.50 } }
";
const HOLDERS: &str = "\
id: depot
name: Depot
copies: { F-1: 2, \"*\": 4 }
---
id: gang
name: Gang
copies: { \"*\": 1 }
";
const RECEIPT: &str = "\
receipts:
  - { card: F-1, issue: 1, copies: 1, what: returned, date: 2026-02-03, by: J. Marsh }
";

pub(super) fn fitting(number: u32, name: &str, step: &str, more: &str) -> (String, String) {
    let text = format!(
        "\
number: F-{number}
name: \"{name}\"
family: cone-dead-end
conductor: wire-95
parts: [B-{number}, C-{number}]
steps: [\"{step}\"]
complete_without: {{ keys: [reject_if, line_tension_max_kN, holding_load_kN, proven_on, insertion_mm, tail_mm, stand_out], because: an example }}
{more}"
    );
    (format!("fittings/{number}.yaml"), text)
}

fn parts(number: u32) -> (String, String) {
    let text = format!(
        "\
number: B-{number}
name: Body
role: body
material: aluminium-bronze
---
number: C-{number}
name: Cone
role: cone
material: bronze-soft
stamp: \"12.{number}\"
geometry:
  collet: {{ bore_mm: 12.8, slits: 3, slit_width_mm: 1.0, half_angle_deg: 5, stand_out_at_bore_mm: 6.0 }}
"
    );
    (format!("parts/{number}.yaml"), text)
}

/// Two editions: by N-1 a step of F-1 changed, F-2 was withdrawn, F-3 is new, F-4 stayed, and F-5 got another name. Of
/// F-4 a change waits that nothing explains.
pub(super) fn desk() -> Desk {
    let mut desk = Desk { files: BTreeMap::new() };
    let fixed = [("catalogue.yaml", SETTINGS), ("conductors/wire.yaml", WIRE), ("holders/all.yaml", HOLDERS)];
    desk.files.extend(fixed.map(|(path, text)| (path.to_owned(), text.to_owned())));
    desk.files.extend((1..=5).map(parts));
    for (number, name) in [(1, "First"), (2, "Second"), (4, "Fourth"), (5, "Fifth")] {
        desk.files.extend([fitting(number, name, "Read the tag.", "")]);
    }
    desk.issue("e1", "2026-01-01", "");
    let notice = "number: N-1\ndate: 2026-01-20\ntitle: Read the tag twice\n";
    desk.files.insert("notices/1.yaml".to_owned(), notice.to_owned());
    desk.files.extend([
        fitting(1, "First", "Read the tag twice.", "notices: [N-1]\n"),
        fitting(2, "Second", "Read the tag.", "notices: [N-1]\nstatus: withdrawn\nin_service: may-stay\n"),
        fitting(3, "=1+1", "Read the tag.", ""),
        fitting(5, "Fifth & last", "Read the tag.", ""),
    ]);
    desk.issue("e2", "2026-02-01", "");
    desk.files.extend([fitting(4, "Fourth", "Read the drum tag.", "")]);
    desk.files.get_mut("holders/all.yaml").unwrap().push_str(RECEIPT);
    desk
}

/// The files of `register/` as `render` makes them, but for PDF.
static FILES: LazyLock<BTreeMap<String, String>> = LazyLock::new(|| made(&desk()));

pub(super) fn made(desk: &Desk) -> BTreeMap<String, String> {
    let folder = tempfile::tempdir().unwrap();
    let output = folder.path().join("output");
    let options = RenderOptions { preview_dpi: 30.0, ..RenderOptions::into_folder(&output) };
    let report = publish::render(&desk.world(), &options, &|_| {}).unwrap();
    assert!(report.put.is_some(), "{:#?}", report.findings.sorted());
    let files = fs::read_dir(output.join("register")).unwrap().map(|file| file.unwrap().path());
    let name = |path: &std::path::Path| path.file_name().unwrap().to_string_lossy().into_owned();
    let texts =
        files.map(|path| (name(&path), String::from_utf8_lossy(&fs::read(&path).unwrap()).into_owned()));
    texts.collect()
}

/// The tables of a page: rows of cells, as texts; before each row the heading of its section and list.
fn rows(page: &str) -> Vec<Vec<String>> {
    let mut rows: Vec<Vec<String>> = Vec::new();
    let (mut text, mut section, mut list) = (String::new(), String::new(), String::new());
    let emitter: DefaultEmitter = DefaultEmitter::default();
    for Ok(token) in Tokenizer::new_with_emitter(FILES[page].as_str(), emitter) {
        match token {
            Token::StartTag(tag) => match &**tag.name {
                b"tr" => rows
                    .push([&section, &list].into_iter().filter(|text| !text.is_empty()).cloned().collect()),
                b"h2" | b"h3" | b"caption" | b"th" | b"td" => text.clear(),
                _ => text.push(' '),
            },
            Token::EndTag(tag) => match &**tag.name {
                b"h2" => section = plain(&text),
                b"h3" | b"caption" => list = plain(&text),
                b"th" | b"td" => rows.last_mut().unwrap().push(plain(&text)),
                _ => text.push(' '),
            },
            Token::String(piece) => text.push_str(&String::from_utf8_lossy(&piece)),
            _ => {}
        }
    }
    rows.retain(|row| row.len() > 2);
    rows
}

fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn expected(rows: &[&[&str]]) -> Vec<Vec<String>> {
    rows.iter().map(|row| row.iter().map(|cell| (*cell).to_owned()).collect()).collect()
}

fn csv_rows(file: &str) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(FILES[file].as_bytes());
    reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect()
}

#[test]
fn what_changed_says_old_and_new_in_words_by_notice() {
    let head: &[&str] = &["Card", "Issue", "What changed"];
    let by_notice = "by N-1 Read the tag twice:";
    let told = rows("what-changed.html");
    let told: Vec<Vec<String>> = told.into_iter().filter(|row| row[2..] != *head).collect();
    let waits = "Waits to be issued, since edition e2";
    let (second, first) =
        ("Issued as edition e2 of 2026-02-01, since edition e1", "Issued as edition e1 of 2026-01-01");
    assert_eq!(
        told[0],
        [
            waits,
            "Print again",
            "F-4 Fourth UNEXPLAINED",
            "1 → 2",
            "no notice explains: step 1 Read the tag. → Read the drum tag."
        ]
    );
    assert_eq!(told[1][..4], [second, "Print again", "F-1 First", "1 → 2"]);
    // Who newly cites a notice prints its number and its day too.
    for said in [by_notice, "step 1 Read the tag. → Read the tag twice.", "notice, new: N-1"] {
        assert!(told[1][4].contains(said), "{said} in {}", told[1][4]);
    }
    assert_eq!(
        told[2],
        [second, "Print again", "F-5 Fifth & last", "1 → 2", "without a notice: name Fifth → Fifth & last"]
    );
    assert_eq!(told[3], [second, "New", "F-3 =1+1", "1, new", ""]);
    assert_eq!(told[4][..4], [second, "Withdraw", "F-2 Second", "1 → 2"]);
    assert!(told[4][4].starts_with(&format!("{by_notice} status, new: Withdrawn")), "{}", told[4][4]);
    let new: Vec<&str> = told[5..].iter().map(|row| row[2].as_str()).collect();
    assert!(told[5..].iter().all(|row| row[..2] == [first, "New"]), "{told:#?}");
    assert_eq!(new, ["F-1 First", "F-2 Second", "F-4 Fourth", "F-5 Fifth"]);
}

#[test]
fn crews_are_told_of_the_newest_edition_alone_safety_first() {
    let told = rows("notice-to-crews.html");
    let told: Vec<&[String]> = told.iter().skip(1).map(|row| &row[1..]).collect();
    let cards: Vec<[&str; 4]> =
        told.iter().map(|row| [0, 1, 2, 4].map(|cell: usize| row[cell].as_str())).collect();
    assert_eq!(
        cards,
        [
            ["F-2 Second", "1", "withdrawn", "N-1"],
            ["F-1 First", "1", "2", "N-1"],
            ["F-3 =1+1", "none", "1", ""],
            ["F-5 Fifth & last", "1", "2", ""],
        ]
    );
    assert!(told[1][3].contains("step 1 Read the tag. → Read the tag twice."), "{}", told[1][3]);
}

/// Of F-1 the depot has two old copies and the gang's one came back; all of F-2 goes; of F-5 the older issue goes. Who
/// gives back gets the new ones; where all came back, most likely it has them.
#[test]
fn each_holder_has_a_list_of_what_it_gives_back_and_gets() {
    let list = |holder: &str| -> Vec<Vec<String>> {
        let rows = rows(&format!("call-in-{holder}.html")).into_iter();
        rows.filter(|row| row[1] != "Card")
            .map(|row| row.into_iter().filter(|cell| !cell.is_empty()).collect())
            .collect()
    };
    let (back, out) = ("To be handed in", "Handed out with it");
    let exchanged = "The old copies are accounted for: hand out only what did not go out then.";
    assert_eq!(
        list("depot"),
        expected(&[
            &[back, "F-1 First", "1", "2"],
            &[back, "F-2 Second", "1", "4"],
            &[back, "F-5 Fifth & last", "1", "4"],
            &[out, "F-1 First", "2", "2"],
            &[out, "F-3 =1+1", "1", "4"],
            &[out, "F-5 Fifth & last", "2", "4"],
        ])
    );
    assert_eq!(
        list("gang"),
        expected(&[
            &[back, "F-2 Second", "1", "1"],
            &[back, "F-5 Fifth & last", "1", "1"],
            &[out, &format!("F-1 First {exchanged}"), "2", "1"],
            &[out, "F-3 =1+1", "1", "1"],
            &[out, "F-5 Fifth & last", "2", "1"],
        ])
    );
    for page in ["call-in-depot.html", "call-in-gang.html"] {
        let heads = rows(page).into_iter().find(|row| row[1] == "Card").unwrap();
        assert_eq!(heads[1..], ["Card", "Issue", "Copies", "Returned", "Destroyed", "Lost"]);
        assert_eq!(FILES[page].matches("Date, name, signature").count(), 2);
    }
    let table = expected(&[
        &["holder", "name", "number", "issue", "copies", "good until"],
        &["depot", "Depot", "F-1", "1", "2", ""],
        &["depot", "Depot", "F-2", "1", "4", ""],
        &["depot", "Depot", "F-5", "1", "4", ""],
        &["gang", "Gang", "F-2", "1", "1", ""],
        &["gang", "Gang", "F-5", "1", "1", ""],
    ]);
    assert_eq!(csv_rows("call-in.csv"), table);
}

#[test]
fn the_approval_sheet_holds_what_waits_and_what_nothing_explains() {
    let told = rows("approval.html");
    assert_eq!(told[0][1..], ["Card", "Issue", "Grade", "Explained by", "Looked at"]);
    assert_eq!(told[1][1..], ["F-4 Fourth", "1 → 2", "safety", "UNEXPLAINED", ""]);
    assert_eq!(told.len(), 2);
    assert!(FILES["approval.html"].contains("What waits to be issued"));
}

/// Numbers, issues and codes are those of the newest edition's file.
#[test]
fn the_list_of_current_cards_is_that_of_the_newest_edition() {
    let edition: Value = serde_yaml::from_str(&desk().files["register/e2.yaml"]).unwrap();
    let text =
        |value: &Value| value.as_str().map_or_else(|| value.as_u64().unwrap().to_string(), str::to_owned);
    let cards = edition["cards"].as_sequence().unwrap();
    let cards: Vec<[String; 4]> = cards
        .iter()
        .map(|card| ["number", "issue", "check_code", "since"].map(|key| text(&card[key])))
        .collect();
    assert_eq!(cards.len(), 5);
    let names = ["First", "Second", "=1+1", "Fourth", "Fifth & last"];
    let statuses =
        ["current", "withdrawn: do not use, and hand the card in", "current", "current", "current"];
    let on_page: Vec<Vec<String>> = rows("current-cards.html").into_iter().skip(1).collect();
    let in_table: Vec<Vec<String>> = csv_rows("current-cards.csv").into_iter().skip(1).collect();
    for (nth, [number, issue, code, since]) in cards.iter().enumerate() {
        let (name, status) = (names[nth], statuses[nth]);
        let named = format!("{number} {name}");
        assert_eq!(on_page[nth][1..], [&named, issue, code, since, status].map(|cell: &str| cell.to_owned()));
        let harmless = if name.starts_with('=') { format!("'{name}") } else { name.to_owned() };
        assert_eq!(
            in_table[nth],
            [number, &harmless, issue, code, since, status].map(|cell: &str| cell.to_owned())
        );
    }
    assert_eq!((on_page.len(), in_table.len()), (5, 5));
}

/// The list hangs on the wall: a hold that waits to be issued must not read *current* there. What it says is what the
/// booklet says where the card is looked up (`cards-and-booklet.md`: a hold notice overrules).
#[test]
fn a_hold_that_waits_to_be_issued_stands_in_the_list_of_current_cards() {
    let mut held = desk();
    let notice = "number: N-2\ndate: 2026-02-02\ntitle: Hold the fifth\n";
    held.files.insert("notices/2.yaml".to_owned(), notice.to_owned());
    held.files.extend([fitting(5, "Fifth & last", "Read the tag.", "notices: [N-2]\nstatus: on-hold\n")]);
    let made = made(&held);
    for file in ["current-cards.html", "current-cards.csv"] {
        let lines = made[file].lines().filter(|line| line.contains("F-5")).collect::<String>();
        assert!(lines.contains("on hold: stop until told") && !lines.contains("current"), "{file}: {lines}");
        assert!(FILES[file].lines().any(|line| line.contains("F-5") && line.contains("current")), "{file}");
    }
    let crews = "notice-to-crews.html";
    assert!(made[crews].contains("F-5 Fifth &amp; last (N-2: Hold the fifth)"), "{}", made[crews]);
    assert!(!FILES[crews].contains("On hold"), "{}", FILES[crews]);
}

/// A holder that is to have fewer copies than before still has the others: what it has is the most that any edition gave
/// it. How many those gave is written here.
#[test]
fn copies_of_an_issue_are_the_most_that_a_holder_had_by_any_edition() {
    let mut desk = desk();
    for (edition, was, is) in [("e3", "\"*\": 4", "\"*\": 6"), ("e4", "\"*\": 6", "\"*\": 3")] {
        desk.edit("holders/all.yaml", was, is);
        desk.issue(edition, "2026-03-01", "Read the drum tag, not any tag.");
    }
    let read = desk.read();
    let copies = |holder| copies_of_issue(&read.register, holder, "F-3", 1);
    assert_eq!((copies("depot"), copies("gang")), (6, 1));
}

/// A name that a spreadsheet would run stands behind an apostrophe.
#[test]
fn the_table_of_changes_has_a_line_a_change_and_runs_nothing() {
    let told = csv_rows("what-changed.csv");
    let head =
        ["edition", "list", "number", "title", "issue", "becomes", "grade", "what", "was", "is", "notices"];
    assert_eq!(told[0], head);
    let expected = expected(&[
        &[
            "",
            "print again",
            "F-4",
            "Fourth",
            "1",
            "2",
            "safety",
            "step 1",
            "Read the tag.",
            "Read the drum tag.",
            "",
        ],
        &[
            "e2",
            "print again",
            "F-1",
            "First",
            "1",
            "2",
            "safety",
            "step 1",
            "Read the tag.",
            "Read the tag twice.",
            "N-1",
        ],
        &["e2", "print again", "F-5", "Fifth & last", "1", "2", "text", "name", "Fifth", "Fifth & last", ""],
        &["e2", "new", "F-3", "'=1+1", "", "1", "safety", "card", "", "", ""],
    ]);
    for row in expected {
        assert!(told.contains(&row), "{row:?} in {told:#?}");
    }
    let runs = |cell: &String| cell.starts_with(['=', '+', '-', '@']);
    assert!(told.iter().flatten().all(|cell| !runs(cell)), "{told:#?}");
}

/// `audit` finds in the register's pages what `render` finds there, each once.
#[test]
fn audit_fills_the_pages_as_render_does() {
    for (layout, page) in [
        ("call-in.html", "{{ holder.nobody }}"),
        ("approval.html", "{{ nothing }}"),
        ("notice-to-crews.html", "{% if %}"),
    ] {
        let world = desk().world().with(FilePath::layouts(&format!("register/{layout}")), page);
        let found = |findings: &fittingcards::diagnostics::Findings| -> Vec<String> {
            let own =
                findings.sorted().into_iter().filter(|finding| finding.place.file.path.ends_with(layout));
            own.map(|finding| format!("{} {}", finding.code, finding.message)).collect()
        };
        let audit = publish::check(&world, &AuditOptions::default(), &|_| {}).unwrap();
        let folder = tempfile::tempdir().unwrap();
        let options = RenderOptions {
            preview_dpi: 30.0,
            strictness: Strictness::Errors,
            ..RenderOptions::into_folder(folder.path().join("output"))
        };
        let report = publish::render(&world, &options, &|_| {}).unwrap();
        assert!(report.put.is_none());
        assert_eq!(found(&audit).len(), 1, "{layout}: {:#?}", audit.sorted());
        assert_eq!(found(&audit), found(&report.findings), "{layout}");
    }
}
