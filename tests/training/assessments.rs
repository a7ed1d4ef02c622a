//! Assessment sheets against the records as they are written.

use super::made::DEMO;
use super::records::{is_current, own_or_procedure, records};
use fittingcards::training::{self, Beside};
use std::collections::BTreeMap;

/// The text of every page, by its name, as its layout has it.
fn pages() -> BTreeMap<String, String> {
    let (pages, findings) = training::pages(DEMO.input(), &Beside::default());
    assert!(findings.is_empty(), "{:?}", findings.sorted());
    let fill = |page: &training::Page| DEMO.design.layouts.fill(page.layout, &page.values).unwrap();
    pages.iter().map(|page| (page.name.clone(), plain(&fill(page)))).collect()
}

fn plain(html: &str) -> String {
    html.replace('\u{a0}', " ").replace("&#39;", "'").replace("&quot;", "\"").replace("&amp;", "&")
}

/// The text of a step or of another line; a step may name its stage beside it.
fn text_of(line: &serde_yaml::Value) -> &str {
    line.as_str().or_else(|| line["text"].as_str()).unwrap()
}

#[test]
fn each_fitting_that_may_be_built_has_a_sheet_with_its_steps_and_rejects() {
    let (pages, procedures) = (pages(), records("procedures"));
    let mut texts = 0;
    for (number, fitting) in records("fittings") {
        let page = pages.get(&format!("assessment-{number}.html"));
        assert_eq!(page.is_some(), is_current(&fitting), "{number}");
        let Some(page) = page else { continue };
        for key in ["steps", "reject_if"] {
            let list = own_or_procedure(&fitting, &procedures, key);
            for text in list.as_sequence().into_iter().flatten().map(text_of) {
                // What stands in braces is a value; the words round it stand as they are.
                let words = text.split(['{', '}']).step_by(2);
                for words in words.map(str::trim).filter(|words| !words.is_empty()) {
                    assert!(page.contains(words), "{number}: {words}");
                    texts += 1;
                }
            }
        }
    }
    assert!(texts > 100, "{texts}");
}

/// Nobody passes who leaves out a step, be it one without a value such as "never in a tensioned span"; on the sheet of a
/// family there are two items besides, of which four fifths, rounded up, are two (the demo's pass_percent is 80).
#[test]
fn everything_that_a_card_says_must_be_passed() {
    let mut seen = 0;
    for (name, page) in
        pages().iter().filter(|(name, _)| name.contains("assessment-") || name.contains("family-"))
    {
        let items = page.matches("<td class=\"whole number\">").count();
        let others = if name.contains("family-") { 2 } else { 0 };
        assert!(page.contains(&format!("all {} items marked", items - others)), "{name}: {items} items");
        assert_eq!(page.contains("of the 2 not marked, at least 2"), others > 0, "{name}");
        assert_eq!(page.contains("not marked, at least"), others > 0, "{name}");
        assert!(page.contains("24 months from that date"), "{name}");
        assert!(page.contains("Nothing makes up for an item"), "{name}");
        seen += 1;
    }
    assert!(seen > 15, "{seen} sheets");
}

/// The demo's edition 2026-2 is on no register: nobody signs for it without being told so.
#[test]
fn pages_of_a_state_that_is_not_issued_say_so() {
    let pages = pages();
    assert!(!crate::fixtures::root().join("content/register/2026-2.yaml").exists());
    for (name, page) in &pages {
        assert_eq!(page.matches("Draft, not issued · edition 2026-2").count(), 2, "{name}: in head and foot");
    }
}

#[test]
fn each_family_has_a_sheet_that_names_all_of_its_fittings() {
    let pages = pages();
    for (number, fitting) in records("fittings").into_iter().filter(|(_, fitting)| is_current(fitting)) {
        let family = fitting["family"].as_str().unwrap();
        assert!(pages[&format!("family-{family}.html")].contains(&number), "{number} in {family}");
    }
    assert!(pages["family-cone-dead-end.html"].contains("stamped BZ2 14.0"));
}

#[test]
fn the_index_names_what_there_is_none_for() {
    let index = &pages()["index.html"];
    for (number, fitting) in records("fittings") {
        let said = index.split("What there is no slip").nth(1).unwrap();
        let said = said.split("</ul>").next().unwrap();
        assert_eq!(said.contains(&number), !is_current(&fitting) || number == "ST-4100", "{number}: {said}");
    }
    // The one that replaces the old dead-end is named with it.
    assert!(index.contains("Superseded by ST-4100: do not use"));
    assert!(index.contains("On hold: stop until told"));
}

/// A title with signs that HTML has a meaning for stays a text.
#[test]
fn texts_of_records_are_escaped() {
    use fittingcards::source::{FilePath, World};
    let disk = crate::fixtures::disk("content");
    let settings = FilePath::catalogue("catalogue.yaml");
    let text = String::from_utf8(disk.read(&settings).unwrap().to_vec()).unwrap();
    let text = text.replace("Tarn depot, spring course", "Tarn <script>alert(1)</script> & \\\"depot\\\"");
    let folder = crate::faces::made::folder("content");
    let world = crate::faces::made::world(&folder).with(settings, text);
    let made = super::made::Made::of(&world);
    let (pages, _) = training::pages(made.input(), &Beside::default());
    for page in pages.iter().filter(|page| page.name.ends_with("tarn-spring.html")) {
        let text = made.design.layouts.fill(page.layout, &page.values).unwrap();
        assert!(!text.contains("<script>") && text.contains("Tarn &lt;script&gt;"), "{}", page.name);
    }
}
