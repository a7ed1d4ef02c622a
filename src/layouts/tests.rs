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
        // Not told once more where they are taken in.
        ("trial/e.svg", "{% include \"trial/a.svg\" %}{% include \"trial/b.svg\" %}"),
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

/// What is told of a layout that goes further than it may: the code and the line.
fn stopped(layout: &str, more: &[(&str, &str)]) -> (&'static str, u32) {
    let mut files = vec![("trial/a.xml", layout)];
    files.extend(more);
    let (layouts, findings) = load(&files);
    let found = findings.sorted().first().map(|finding| (finding.code, finding.place.line));
    let long = json!({ "note": "x".repeat(100_000) });
    found.unwrap_or_else(|| match layouts.fill("trial/a.xml", &long) {
        Ok(filled) => panic!("{} bytes were filled", filled.len()),
        Err(finding) => (finding.code, finding.place.line),
    })
}

#[test]
fn a_layout_that_goes_on_and_on_is_stopped_at_its_line() {
    let loops = "{% for a in range(end=10000) %}";
    let ends = "{% endfor %}";
    let doubled = "{% set_global t = t ~ t %}";
    let nested = "{% set_global t = [t, t] %}";
    let bombs = [
        (format!("\n{loops}{loops}{loops}\nx{ends}{ends}{ends}"), 2),
        (format!("\n{loops}{loops}{loops}{ends}{ends}{ends}"), 2),
        (format!("{{% set t = \"xx\" %}}\n{loops}\n{doubled}{ends}"), 3),
        (format!("{{% set t = \"xx\" %}}\n{}", doubled.repeat(60)), 2),
        (format!("{{% set t = [\"xx\"] %}}\n{loops}{nested}{ends}{{{{ t }}}}"), 2),
        (format!("\n{loops}{{{{ note }}}}{ends}"), 2),
        (format!("\n{loops}{{{{ note | safe }}}}{ends}"), 2),
        (format!("{{% set t %}}\n{loops}{{{{ note }}}}{ends}{{% endset %}}"), 2),
        (format!("{{% set t %}}\n{loops}{{{{ note | safe }}}}{ends}{{% endset %}}"), 2),
        (
            format!(
                "{{% set n %}}{{{{ note }}}}{{% endset %}}{{% set t %}}\n{loops}{{{{ n }}}}{ends}{{% endset %}}"
            ),
            2,
        ),
        (format!("{{% filter trim %}}\n{loops}{{{{ note | safe }}}}{ends}{{% endfilter %}}"), 2),
        ("\n{{ note | replace(from=\"x\", to=note) }}".to_owned(), 2),
        ("\n{{ note | split(pat=\"x\") | join(sep=note) }}".to_owned(), 2),
        ("\n{{ [x for x in note] }}".to_owned(), 2),
    ];
    for (layout, line) in &bombs {
        assert_eq!(stopped(layout, &[]), ("layout-endless", *line), "{}", &layout[..layout.len().min(200)]);
    }
}

#[test]
fn files_that_take_each_other_in_again_and_again_are_stopped() {
    let names: Vec<String> = (0..40).map(|number| format!("trial/{number:02}.xml")).collect();
    let twice: Vec<String> = (1..41)
        .map(|next| {
            format!("\n{{% include \"trial/{next:02}.xml\" %}}{{% include \"trial/{next:02}.xml\" %}}")
        })
        .collect();
    let mut files: Vec<(&str, &str)> =
        names.iter().map(String::as_str).zip(twice.iter().map(String::as_str)).collect();
    files.push(("trial/40.xml", "x"));
    assert_eq!(stopped(&twice[0], &files).0, "layout-endless");
    let itself =
        "{% component again() %}{{ <again/> }}{{ <again/> }}{% endcomponent again %}\n{{ <again/> }}";
    assert_eq!(stopped(itself, &[]).0, "layout-endless");
}

#[test]
fn a_range_counts_as_far_as_a_layout_needs() {
    let (layouts, _) = load(&[
        ("trial/a.svg", "{% for a in range(start=1, end=8, step_by=3) %}{{ a }}{% endfor %}"),
        ("trial/b.svg", "\n{{ range(end=10001) | length }}"),
    ]);
    assert_eq!(layouts.fill("trial/a.svg", &json!({})).expect("filled"), "147");
    assert_eq!(at(&layouts.fill("trial/b.svg", &json!({})).expect_err("too far")).2, 2);
}

#[test]
fn texts_are_joined_and_replaced_as_the_library_does_it() {
    let layout = "{{ [\"a\", \"<\"] | join(sep=\", \") }} {{ \"a-b\" | replace(from=\"-\", to=\"&\") }} {{ [\"<\" | safe, \"<\", 1] | join(sep=\"-\") }}";
    let (layouts, _) = load(&[("trial/a.svg", layout)]);
    let filled = layouts.fill("trial/a.svg", &json!({})).expect("filled");
    let mut library = tera::Tera::new();
    library.autoescape_on(vec![".svg"]);
    library.add_raw_template("a.svg", layout).expect("sound");
    assert_eq!(filled, library.render("a.svg", &tera::Context::new()).expect("filled"));
}

#[test]
fn a_fault_s_column_is_that_of_the_file_as_it_was_written() {
    let (layouts, _) = load(&[("trial/a.html", "<p>{% for a in [1] %}<b>{{ stamp }}</b>{% endfor %}</p>")]);
    let finding = layouts.fill("trial/a.html", &json!({})).expect_err("no stamp");
    assert_eq!((finding.place.line, finding.place.column), (1, 28));
}

#[test]
fn a_fault_in_a_file_that_is_taken_in_says_where_that_is() {
    let (layouts, _) =
        load(&[("trial/a.svg", "\n\n {% include \"trial/b.svg\" %}"), ("trial/b.svg", "\n{{ stamp }}")]);
    let finding = layouts.fill("trial/a.svg", &json!({})).expect_err("no stamp");
    let place = &finding.related[0].place;
    assert_eq!((&*place.file.path, place.line, place.column), ("trial/a.svg", 3, 13));
}

#[test]
fn a_layout_that_is_too_large_is_refused() {
    let (_, findings) = load(&[("trial/a.svg", &"x".repeat((8 << 20) + 1))]);
    assert_eq!(findings.sorted()[0].code, "too-large");
}
