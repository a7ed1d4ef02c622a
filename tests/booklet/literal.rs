//! Texts that look like markup are shown as they are written, and harm no link, in both forms of the booklet.

use super::made::{Made, content};
use super::markup::{Markup, read};
use fittingcards::notes::address::slug;
use fittingcards::source::{FilePath, MemoryWorld};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

/// What used to be taken for markup where finished pages were read again.
const TEXT: &str =
    "id=\"abc href=\"#x\" \"index.html\" src=\"../cards/x.svg\" <!--files--> </main> <main id=\"y\"";

/// Letters beyond ASCII, some of which run from right to left.
const CHAPTER: &str = "90-Größe سلك 95";

static MADE: LazyLock<Made> = LazyLock::new(|| Made::of(&world()));

static PAGES: LazyLock<BTreeMap<String, Markup>> = LazyLock::new(|| {
    let pages = MADE.pages.iter().filter(|page| page.path.ends_with(".html"));
    pages.map(|page| (page.path.clone(), read(&page.text))).collect()
});

static SINGLE: LazyLock<Markup> = LazyLock::new(|| read(&MADE.single));

/// The demo with a notice, its note, a conductor and a chapter that hold the text.
fn world() -> MemoryWorld {
    let notice = format!("number: N-X\ndate: 2026-02-01\ntitle: 'A {TEXT}'\nsummary: 'B {TEXT}'\n");
    let wire = format!(
        "id: wire-x\nname: 'W {TEXT}'\nduty: stay\nmaterial: steel-st1a\nconstruction: {{ solid: {{ diameter_mm: 8 }} }}\n"
    );
    let links = "[one](#two-words) [two](ST-4103) [[wire-x]]";
    let note = format!("C {TEXT}\n\n### Two words\n\n{links} `{TEXT}`\n\n### {}\n", TEXT.replace('<', "\\<"));
    let chapter = format!(
        "# D {}\n\n## Größe سلك\n\n## More\n\n[up](#größe-سلك) [over](N-X#two-words)\n",
        TEXT.replace('<', "\\<")
    );
    content()
        .with(FilePath::catalogue("notices/n-x.yaml"), notice)
        .with(FilePath::catalogue("conductors/wire-x.yaml"), wire)
        .with(FilePath::catalogue("notes/N-X.md"), note)
        .with(FilePath::catalogue(&format!("notes/chapters/{CHAPTER}.md")), chapter)
}

#[test]
fn texts_are_shown_as_they_are_written() {
    let shown = |path: &str| PAGES[path].main.matches(TEXT).count();
    assert_eq!(shown("notice-N-X.html"), 5);
    assert!(shown("conductor-wire-x.html") >= 1 && shown("index.html") >= 3);
    assert!(shown(&chapter_file()) >= 1);
    let everywhere: usize = PAGES.values().map(|page| page.main.matches(TEXT).count()).sum();
    assert_eq!(SINGLE.main.matches(TEXT).count(), everywhere);
    assert!(PAGES.values().chain([&*SINGLE]).all(|page| page.ends == 1));
}

#[test]
fn links_of_pages_lead_to_places_that_are_there() {
    for (path, page) in PAGES.iter() {
        assert!(once(&page.ids), "{path}: {:?}", page.ids);
        let files = |link: &str| {
            ["../cards/", "../sheets/", "../training/"].iter().any(|folder| link.starts_with(folder))
        };
        for link in page
            .links
            .iter()
            .chain(data_links(page).iter())
            .filter(|link| !files(link) && !STYLES.contains(&link.as_str()))
        {
            let (file, id) = link.split_once('#').unwrap_or((link, ""));
            let file = if file.is_empty() { path.clone() } else { decoded(file) };
            let target = PAGES.get(&file).unwrap_or_else(|| panic!("{path}: {link}"));
            assert!(id.is_empty() || target.ids.contains(&decoded(id)), "{path}: {link}");
        }
        let lost = page.named.iter().find(|name| !page.ids.contains(name));
        assert_eq!(lost, None, "{path}");
    }
}

#[test]
fn links_and_ids_become_places_in_the_file() {
    assert!(once(&SINGLE.ids));
    let ids: BTreeSet<&str> = SINGLE.ids.iter().map(String::as_str).collect();
    for link in SINGLE.links.iter().chain(data_links(&SINGLE).iter()) {
        let id = link.strip_prefix('#').unwrap_or_else(|| panic!("{link} leads out of the file"));
        assert!(ids.contains(decoded(id).as_str()), "{link} leads nowhere");
    }
    assert_eq!(SINGLE.named.iter().find(|name| !ids.contains(name.as_str())), None);
    assert!(PAGES.keys().all(|path| ids.contains(path.trim_end_matches(".html"))));
    let links = |markup: &Markup| markup.links.iter().filter(|link| !link.starts_with("../")).count();
    let of_pages: usize = PAGES.values().map(|page| links(page) - outside_pages(page)).sum();
    assert_eq!(links(&SINGLE) - 11, of_pages, "each link of the pages is there");
}

/// The style sheets of a page.
const STYLES: [&str; 5] = ["booklet.css", "tables.css", "tools.css", "narrow.css", "print.css"];

/// The links of a page's head and header: the style sheets, the one past the header, the title, nine pages.
fn outside_pages(page: &Markup) -> usize {
    assert_eq!(page.links[..STYLES.len()], STYLES);
    assert_eq!(page.links[STYLES.len()], "#main");
    STYLES.len() + 11
}

#[test]
fn what_is_found_leads_to_places_in_the_single_file() {
    let index = MADE.single.split("<script").find(|script| script.contains("var bookletIndex")).unwrap();
    let rows = index.split_once("bookletIndex = ").unwrap().1.split_once(";\n</script>").unwrap().0;
    let rows: Vec<Vec<Value>> = serde_json::from_str(rows).unwrap();
    assert!(rows.len() > 100);
    for row in &rows {
        let place = row[3].as_str().unwrap().strip_prefix('#').unwrap();
        assert!(SINGLE.ids.iter().any(|id| id == place), "{row:?}");
    }
    assert!(rows.iter().any(|row| row[2] == format!("W {TEXT}")));
}

#[test]
fn cards_are_put_in_and_links_to_files_left_out() {
    let of_pages = PAGES.values().flat_map(|page| &page.pictures);
    let of_pages = of_pages.filter(|picture| picture.starts_with("../cards/")).count();
    assert!(of_pages > 0);
    assert_eq!(SINGLE.pictures.len(), of_pages);
    for picture in &SINGLE.pictures {
        assert!(picture.starts_with("data:image/svg+xml,%3Csvg id=%22"), "{picture}");
    }
    assert!(PAGES.values().any(|page| page.links.iter().any(|link| link == "../sheets/cards.pdf")));
    assert!(SINGLE.links.iter().all(|link| link.starts_with('#')));
    assert!(!SINGLE.main.contains("as PNG"));
}

fn chapter_file() -> String {
    format!("chapter-{}.html", slug(CHAPTER))
}

fn once(ids: &[String]) -> bool {
    ids.iter().collect::<BTreeSet<_>>().len() == ids.len()
}

/// The addresses in the data of a page's calculators.
fn data_links(page: &Markup) -> Vec<String> {
    let mut links = Vec::new();
    for data in page.scripts.iter().filter_map(|script| serde_json::from_str::<Value>(script).ok()) {
        gather(&data, &mut links);
    }
    links
}

fn gather(value: &Value, links: &mut Vec<String>) {
    match value {
        Value::Object(fields) => {
            links.extend(fields.get("href").and_then(Value::as_str).map(str::to_owned));
            fields.values().for_each(|value| gather(value, links));
        }
        Value::Array(values) => values.iter().for_each(|value| gather(value, links)),
        _ => {}
    }
}

/// An address as a browser reads it: without percent signs.
fn decoded(address: &str) -> String {
    let mut bytes = Vec::new();
    let mut rest = address.as_bytes();
    while let Some((first, after)) = rest.split_first() {
        let hex = after.get(..2).filter(|_| *first == b'%').and_then(|hex| std::str::from_utf8(hex).ok());
        let byte = hex.and_then(|hex| u8::from_str_radix(hex, 16).ok());
        bytes.push(byte.unwrap_or(*first));
        rest = if byte.is_some() { &after[2..] } else { after };
    }
    String::from_utf8(bytes).unwrap()
}
