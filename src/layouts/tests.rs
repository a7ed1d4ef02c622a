//! Overriding, escaping, and places of faults.

use super::*;
use crate::diagnostics::{Finding, Findings};
use crate::source::{FilePath, MemoryWorld};
use serde_json::json;

fn load(files: &[(&str, &str)]) -> (Layouts, Findings) {
    let world = files
        .iter()
        .fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::layouts(path), text));
    Layouts::load(&world, "trial", &[]).expect("a readable world")
}

fn at(finding: &Finding) -> (&'static str, &str, u32) {
    (finding.code, &finding.place.file.path, finding.place.line)
}

#[test]
fn every_file_of_the_layouts_folder_is_built_in() {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/layouts");
    let mut on_disk: Vec<String> = walkdir::WalkDir::new(root)
        .into_iter()
        .filter_map(Result::ok)
        .filter(|entry| entry.file_type().is_file())
        .map(|entry| {
            entry.path().strip_prefix(root).expect("below").to_str().expect("text").replace('\\', "/")
        })
        .collect();
    on_disk.sort();
    let built_in: Vec<&str> = super::built_in::all().map(|(path, _)| path).collect();
    assert_eq!(built_in, on_disk);
}

#[test]
fn a_missing_value_stops_with_file_and_line() {
    let (layouts, _) = load(&[("trial/a.svg", "<svg>\n  <text>{{ stamp }}</text>\n</svg>")]);
    let finding = layouts.fill("trial/a.svg", &json!({})).expect_err("no stamp");
    assert_eq!(at(&finding), ("layout-value", "trial/a.svg", 2));
    assert!(finding.message.contains("stamp"), "{}", finding.message);
}

#[test]
fn a_missing_value_that_is_not_to_be_escaped_stops_too() {
    let (layouts, _) = load(&[("trial/a.svg", "<svg>\n{{ part.drawing | safe }}</svg>")]);
    let finding = layouts.fill("trial/a.svg", &json!({ "part": {} })).expect_err("no drawing");
    assert_eq!(at(&finding), ("layout-value", "trial/a.svg", 2));
    let drawn = layouts.fill("trial/a.svg", &json!({ "part": { "drawing": "<g/>" } }));
    assert_eq!(drawn.expect("a drawing"), "<svg>\n<g/></svg>");
}

#[test]
fn a_missing_value_in_an_included_file_is_found_there() {
    let (layouts, _) =
        load(&[("trial/a.svg", "\n{% include \"trial/b.svg\" %}"), ("trial/b.svg", "\n\n{{ stamp }}")]);
    let finding = layouts.fill("trial/a.svg", &json!({})).expect_err("no stamp");
    assert_eq!(at(&finding), ("layout-value", "trial/b.svg", 3));
}

#[test]
fn faults_of_all_files_are_found_at_once() {
    let (_, findings) = load(&[
        ("trial/a.svg", "ok\n{% if %}"),
        ("trial/b.svg", "{{ name"),
        ("trial/c.svg", "\n{{ name | backwards }}"),
        ("trial/d.svg", "{% include \"trial/none.svg\" %}"),
    ]);
    let places: Vec<_> = findings.sorted().into_iter().map(at).collect();
    assert_eq!(
        places,
        [
            ("layout-syntax", "trial/a.svg", 2),
            ("layout-syntax", "trial/b.svg", 1),
            ("layout-name", "trial/c.svg", 2),
            ("layout-name", "trial/d.svg", 1),
        ]
    );
}

#[test]
fn what_goes_in_is_escaped_in_drawings_and_pages() {
    let (layouts, _) = load(&[("trial/a.svg", "{{ t }}"), ("trial/a.html", "{{ t }}")]);
    for name in ["trial/a.svg", "trial/a.html"] {
        let filled = layouts.fill(name, &json!({ "t": "<script>\"&" })).expect("filled");
        assert_eq!(filled, "&lt;script&gt;&quot;&amp;");
    }
}

#[test]
fn style_sheets_and_scripts_are_handed_on() {
    let (layouts, _) = load(&[("trial/page.css", "a{{}}"), ("other/page.css", "b")]);
    assert_eq!(layouts.text("trial/page.css"), Some("a{{}}"));
    assert_eq!(layouts.texts().collect::<Vec<_>>(), ["trial/page.css"]);
}

#[test]
fn a_layout_that_is_not_text_is_found() {
    let world = MemoryWorld::new().with(FilePath::layouts("trial/a.svg"), [0xff, 0xfe]);
    let (_, findings) = Layouts::load(&world, "trial", &[]).expect("a readable world");
    assert_eq!(findings.sorted()[0].code, "layout-encoding");
}
