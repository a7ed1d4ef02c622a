//! A whole catalogue rendered: what lies in the output, that it is the same every time, and that it stays
//! whole when something is in the way.

mod data;
mod hostile;
mod installed;
mod kept;

use fittingcards::publish::{
    self, AuditOptions, BookletForm, Manifest, RenderError, RenderOptions, Report, Strictness,
};
use fittingcards::source::{FilePath, MemoryWorld, World};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

/// A face that any record fills, with nothing but what it must show.
const FACE: &str = r#"<face>
<block id="number" kind="heading"><text class="title" style="bold">{{ number }}</text></block>
<block id="stamp">{% if gripping is defined and gripping.stamp %}<text class="stamp">{{ gripping.stamp }}</text>{% endif %}
{% if stamps is defined %}{% for stamp in stamps %}<text class="stamp">{{ stamp }}</text>{% endfor %}{% endif %}
{% if body_words is defined %}{% for part in parts %}<text>{{ part.stamp }}</text>{% if part.mark %}<text>{{ part.mark.text }}</text>{% endif %}{% endfor %}{% endif %}</block>
{% if mark is defined and mark %}<block id="mark"><text>{{ mark.text }}</text><text>{{ mark.colour }}</text></block>{% endif %}
{% if if_wrong is defined or body_words is defined %}{% if barred %}<block id="strike" kind="ornament"><strike/></block>{% endif %}{% endif %}
{% if if_wrong is defined %}<block id="held">{% for held in conductors %}<text>{{ held.name }}</text>{% if held.alike %}<text class="foot">{{ held.alike }}</text>{% endif %}{% if held.caution %}<text class="foot">{{ held.caution }}</text>{% endif %}{% endfor %}</block>
<block id="if-wrong">{% for line in if_wrong %}<text class="foot">{{ line.text }}</text>{% endfor %}</block>{% endif %}
{% if status %}<block id="status"><text class="foot">{{ status }}</text></block>{% endif %}
<block id="foot"><text class="foot">{{ foot.standing }}, {{ foot.edition }}</text><text class="foot">{{ caution }}</text></block>
</face>"#;

/// The plain catalogue with so many fittings, each like the first, on cards with nothing but their number.
fn world(fittings: usize) -> MemoryWorld {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases/plain/in");
    let mut world = MemoryWorld::new();
    for path in ["catalogue.yaml", "conductors/wire.yaml", "parts/parts.yaml"] {
        world = world.with(FilePath::catalogue(path), fs::read(folder.join(path)).unwrap());
    }
    let first = fs::read_to_string(folder.join("fittings/end.yaml")).unwrap();
    for number in 1..=fittings {
        let text = first.replace("F-1", &format!("F-{number}"));
        world = world.with(FilePath::catalogue(&format!("fittings/{number:04}.yaml")), text);
    }
    for kind in ["fitting", "body"] {
        for side in ["front", "back"] {
            world = world.with(FilePath::layouts(&format!("cards/{kind}-{side}.xml")), FACE);
        }
    }
    world.with(FilePath::layouts("cards/tag.xml"), FACE)
}

fn options(output: &Path) -> RenderOptions {
    RenderOptions { preview_dpi: 30.0, ..RenderOptions::into_folder(output) }
}

fn render(world: &dyn World, options: &RenderOptions) -> Result<Report, RenderError> {
    publish::render(world, options, &|_| {})
}

fn rendered(world: &dyn World, options: &RenderOptions) -> Report {
    let report = render(world, options).unwrap();
    assert!(report.put.is_some(), "{:#?}", report.findings.sorted());
    report
}

/// Every file below a folder with its bytes, but for what the run remembers.
fn tree(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    walkdir::WalkDir::new(folder)
        .into_iter()
        .map(Result::unwrap)
        .filter(|entry| entry.file_type().is_file() && !entry.path().starts_with(folder.join(".cache")))
        .map(|entry| {
            let below = entry.path().strip_prefix(folder).unwrap().to_str().unwrap().replace('\\', "/");
            (below, fs::read(entry.path()).unwrap())
        })
        .collect()
}

fn manifest(folder: &Path) -> Manifest {
    serde_json::from_slice(&fs::read(folder.join("manifest.json")).unwrap()).unwrap()
}

#[test]
fn every_file_is_in_the_manifest_with_its_size_and_hash() {
    let folder = tempfile::tempdir().unwrap();
    let report = rendered(&world(3), &options(folder.path()));
    let mut tree = tree(folder.path());
    tree.remove("manifest.json");
    let files = manifest(folder.path()).files;
    assert_eq!(report.put.unwrap().written, files.len() + 1);
    assert_eq!(files.iter().map(|file| &file.path).collect::<Vec<_>>(), tree.keys().collect::<Vec<_>>());
    for file in &files {
        assert_eq!(file.size, tree[&file.path].len() as u64);
        assert_eq!(file.blake3, blake3::hash(&tree[&file.path]).to_hex().to_string());
    }
    for path in [
        "cards/F-1-front.svg",
        "cards/F-1-back.svg",
        "cards/F-1-front.png",
        "cards/F-1-back.png",
        "sheets/cards.pdf",
        "sheets/proof.pdf",
        "sheets/tags.pdf",
        "booklet/index.html",
        "data/catalogue.json",
        "data/findings.json",
        "data/cards.csv",
    ] {
        assert!(tree.contains_key(path), "{path}");
    }
}

#[test]
fn the_booklet_links_the_cards_and_sheets_that_are_there() {
    let folder = tempfile::tempdir().unwrap();
    rendered(&world(2), &options(folder.path()));
    let tree = tree(folder.path());
    let pages = tree.iter().filter(|(path, _)| path.ends_with(".html"));
    let texts: String = pages.map(|(_, bytes)| String::from_utf8_lossy(bytes)).collect();
    let links: BTreeSet<&str> =
        texts.split("\"../").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    for sheets in ["sheets/cards.pdf", "sheets/tags.pdf"] {
        assert!(links.contains(sheets), "{sheets} is not linked");
    }
    for link in links {
        assert!(tree.contains_key(link), "{link} leads nowhere");
    }
}

#[test]
fn one_thread_and_many_give_the_same_bytes() {
    let (one, many) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    rendered(&world(30), &RenderOptions { jobs: Some(1), ..options(one.path()) });
    rendered(&world(30), &RenderOptions { jobs: Some(4), ..options(many.path()) });
    assert!(tree(one.path()) == tree(many.path()));
}

#[test]
fn above_four_hundred_cards_there_are_several_files_of_sheets() {
    let folder = tempfile::tempdir().unwrap();
    let report = rendered(&world(401), &options(folder.path()));
    assert_eq!(report.cards, 402, "one a fitting, and one for the body that they share");
    let tree = tree(folder.path());
    assert_eq!(
        tree.keys().filter(|path| path.starts_with("sheets/")).collect::<Vec<_>>(),
        [
            "sheets/cards-001.pdf",
            "sheets/cards-002.pdf",
            "sheets/cards-003.pdf",
            "sheets/proof.pdf",
            "sheets/tags-001.pdf",
            "sheets/tags-002.pdf",
            "sheets/tags-003.pdf",
        ]
    );
    let mut named: BTreeMap<String, usize> = BTreeMap::new();
    let of_cards = |path: &str| path.starts_with("booklet/fitting-") || path.starts_with("booklet/body-");
    for (path, bytes) in tree.iter().filter(|(path, _)| of_cards(path)) {
        let text = String::from_utf8_lossy(bytes);
        let sheets: Vec<&str> = text.split("\"../sheets/").skip(1).collect();
        assert_eq!(sheets.len(), 1, "{path} names the one file that its card is on");
        *named.entry(sheets[0].split('"').next().unwrap().to_owned()).or_default() += 1;
    }
    let counted: Vec<_> = named.into_iter().collect();
    let [one, two, three] = ["cards-001.pdf", "cards-002.pdf", "cards-003.pdf"].map(str::to_owned);
    assert_eq!(counted, [(one, 200), (two, 200), (three, 2)]);
}

#[test]
fn the_data_says_what_was_computed_and_what_each_card_prints() {
    let folder = tempfile::tempdir().unwrap();
    rendered(&world(1), &options(folder.path()));
    let data: Value =
        serde_json::from_slice(&fs::read(folder.path().join("data/catalogue.json")).unwrap()).unwrap();
    assert_eq!(data["title"], "Plain");
    assert_eq!(data["fittings"][0]["number"], "F-1");
    assert_eq!(data["conductors"][0]["fittings"], serde_json::json!(["F-1"]));
    assert!(data["conductors"][0]["computed"]["section_mm2"].as_f64().unwrap() > 0.0);
    assert_eq!(data["cards"][0]["prints"][0], serde_json::json!({ "name": "card number", "text": "F-1" }));
    let list = fs::read_to_string(folder.path().join("data/cards.csv")).unwrap();
    assert_eq!(list, "number,title,issue,status,check code\nF-1,Dead-end,,current,\n");
}

#[test]
fn findings_leave_the_output_as_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let output = folder.path().join("output");
    rendered(&world(2), &options(&output));
    let before = tree(&output);
    let broken = world(2).with(FilePath::catalogue("fittings/bad.yaml"), "number: F-9\n");
    let full = world(2).with(
        FilePath::layouts("cards/fitting-back.xml"),
        FACE.replace("kind=\"heading\"", "kind=\"heading\" height=\"500\""),
    );
    let unknown = world(2)
        .with(FilePath::layouts("cards/fitting-back.xml"), FACE.replace("{{ number }}", "{{ nothing }}"));
    for world in [broken, unknown, full] {
        let report = render(&world, &options(&output)).unwrap();
        assert!(report.put.is_none(), "{:#?}", report.findings.sorted());
        assert!(tree(&output) == before);
        let found = publish::check(&world, &AuditOptions::default(), &|_| {}).unwrap();
        let codes = |findings: &fittingcards::diagnostics::Findings| {
            findings.sorted().iter().map(|finding| finding.code).collect::<Vec<_>>()
        };
        assert_eq!(codes(&found), codes(&report.findings), "audit finds what render finds");
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1, "nothing is left beside the output");
}

#[test]
fn warnings_stop_a_strict_run() {
    let folder = tempfile::tempdir().unwrap();
    let notice = world(1).with(
        FilePath::catalogue("conductors/wire.yaml"),
        "id: wire-95\nname: Wire 95\nduty: messenger\nmaterial: copper-hard-drawn\n\
         construction: { stranded: { wires: 19, wire_diameter_mm: 2.50 } }\nstated: { section_mm2: 122.72 }\n",
    );
    let report = render(&notice, &options(folder.path())).unwrap();
    let strict = RenderOptions { strictness: Strictness::Warnings, ..options(folder.path()) };
    let again = render(&notice, &strict).unwrap();
    let warned = report.findings.count(fittingcards::diagnostics::Severity::Warning) > 0;
    assert!(warned || report.findings.has_errors(), "the circle area stated as section is found");
    assert!(again.put.is_none());
}

#[test]
fn only_some_cards_leave_everything_else_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    rendered(&world(3), &options(folder.path()));
    let before = tree(folder.path());
    let only = RenderOptions { only: vec!["F-2".to_owned()], ..options(folder.path()) };
    assert_eq!(rendered(&world(3), &only).cards, 1);
    let after = tree(folder.path());
    let changed: Vec<&String> = before.keys().filter(|path| after.get(*path) != before.get(*path)).collect();
    assert_eq!(changed, ["manifest.json", "sheets/cards.pdf", "sheets/tags.pdf"]);
    for sheets in ["sheets/cards.pdf", "sheets/tags.pdf"] {
        assert!(after[sheets].len() < before[sheets].len(), "{sheets}");
    }
    let listed = manifest(folder.path()).files.len();
    assert_eq!(listed + 1, after.len(), "the manifest lists what stayed too");
}

#[test]
fn a_body_alone_has_a_card_and_no_tag() {
    let folder = tempfile::tempdir().unwrap();
    rendered(&world(3), &options(folder.path()));
    let only = RenderOptions { only: vec!["P-1".to_owned()], ..options(folder.path()) };
    assert_eq!(rendered(&world(3), &only).cards, 1);
    let sheets = |path: &String| path.starts_with("sheets/");
    // The booklet links to the tags of an earlier run.
    assert_eq!(
        tree(folder.path()).into_keys().filter(sheets).collect::<Vec<_>>(),
        ["sheets/cards.pdf", "sheets/proof.pdf", "sheets/tags.pdf"]
    );
}

#[test]
fn the_single_file_holds_pages_and_faces() {
    let folder = tempfile::tempdir().unwrap();
    let single = RenderOptions { booklet: BookletForm::PagesAndSingleFile, ..options(folder.path()) };
    rendered(&world(2), &single);
    let text = fs::read_to_string(folder.path().join("booklet.html")).unwrap();
    assert!(text.contains("F-2") && text.contains("</html>"));
    rendered(&world(2), &options(folder.path()));
    assert!(!folder.path().join("booklet.html").exists(), "it no longer belongs");
}

#[test]
fn a_card_that_is_not_there_is_a_fault_with_the_nearest_named() {
    let folder = tempfile::tempdir().unwrap();
    let only = RenderOptions { only: vec!["f-2".to_owned()], ..options(folder.path()) };
    let fault = render(&world(3), &only).unwrap_err();
    assert_eq!(fault.to_string(), "there is no card f-2; did you mean F-2?");
}

#[test]
fn a_file_that_is_not_ours_is_a_fault() {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join("data")).unwrap();
    fs::write(folder.path().join("data/cards.csv"), "mine").unwrap();
    let fault = render(&world(1), &options(folder.path())).unwrap_err();
    assert!(matches!(fault, RenderError::Machine(_)), "{fault}");
    assert_eq!(tree(folder.path()).into_keys().collect::<Vec<_>>(), ["data/cards.csv"]);
}

#[test]
fn a_resolution_that_makes_no_picture_is_a_fault() {
    let folder = tempfile::tempdir().unwrap();
    let fault = render(&world(1), &RenderOptions { preview_dpi: 1e9, ..options(folder.path()) }).unwrap_err();
    assert!(matches!(fault, RenderError::Resolution(_)), "{fault}");
}

/// An audit looks over what `render --single-file` would write, where the layouts of pages are the user's own.
#[test]
fn an_audit_finds_what_is_wrong_with_the_single_file() {
    let single = fittingcards::layouts::Layouts::built_in("booklet/single.html").unwrap();
    let single = single.replace("</body>", "<iframe src=\"#main\"></iframe></body>");
    let world = world(1).with(FilePath::layouts("booklet/single.html"), single);
    let findings = publish::check(&world, &AuditOptions::default(), &|_| {}).unwrap();
    let found: Vec<(&str, &str)> =
        findings.sorted().iter().map(|finding| (finding.code, &*finding.place.file.path)).collect();
    let found: Vec<(&str, &str)> = found.into_iter().filter(|(code, _)| *code != "incomplete").collect();
    assert_eq!(found, [("page-not-offline", "booklet/single.html")]);
}
