//! Links lead somewhere, ids are there once, every page carries what it must, nothing is fetched.

use super::made::{PAGES, html};
use std::collections::{BTreeMap, BTreeSet};

/// The values of an attribute, in order.
fn values<'a>(text: &'a str, attribute: &str) -> Vec<&'a str> {
    let start = format!(" {attribute}=\"");
    text.split(start.as_str()).skip(1).filter_map(|rest| rest.split('"').next()).collect()
}

#[test]
fn every_link_leads_somewhere() {
    let ids: BTreeMap<&str, BTreeSet<&str>> =
        html().map(|page| (page.path.as_str(), values(&page.text, "id").into_iter().collect())).collect();
    let files: BTreeSet<&str> = PAGES.iter().map(|page| page.path.as_str()).collect();
    for page in html() {
        for link in values(&page.text, "href").into_iter().chain(values(&page.text, "src")) {
            if ["../cards/", "../sheets/", "../training/"].iter().any(|folder| link.starts_with(folder)) {
                continue;
            }
            let (file, anchor) = link.split_once('#').unwrap_or((link, ""));
            let file = if file.is_empty() { page.path.as_str() } else { file };
            assert!(files.contains(file), "{}: {link} leads nowhere", page.path);
            if !anchor.is_empty() {
                assert!(ids[file].contains(anchor), "{}: {link} has no such place", page.path);
            }
        }
    }
}

#[test]
fn ids_are_there_once() {
    for page in html() {
        let ids = values(&page.text, "id");
        let once: BTreeSet<&str> = ids.iter().copied().collect();
        assert_eq!(ids.len(), once.len(), "{}: {ids:?}", page.path);
    }
}

#[test]
fn every_page_carries_edition_date_state_and_caution() {
    for page in html() {
        for text in [
            "2026-2",
            "2026-11-25",
            "Draft, not issued",
            "printed copy: check the register",
            "Cards never authorise work",
        ] {
            assert!(page.text.contains(text), "{} lacks {text:?}", page.path);
        }
    }
}

#[test]
fn nothing_is_asked_of_a_network_and_nothing_is_styled_inline() {
    for page in html() {
        assert!(page.text.contains("default-src 'none'"), "{}", page.path);
        for never in [" style=\"", "http://", "https://", "javascript:", "@import", "type=\"module\""] {
            assert!(!page.text.contains(never), "{} has {never}", page.path);
        }
    }
}

#[test]
fn there_is_a_page_for_every_record() {
    let paths: BTreeSet<&str> = PAGES.iter().map(|page| page.path.as_str()).collect();
    for path in
        ["index.html", "index.js", "booklet.css", "booklet.js", "fitting-ST-4100.html", "part-ST-4103.html"]
    {
        assert!(paths.contains(path), "{path} in {paths:?}");
    }
    assert_eq!(paths.len(), PAGES.len());
}

#[test]
fn the_same_records_give_the_same_bytes() {
    assert!(super::made::of_folder("content") == *PAGES);
}

/// The numbers and texts of the demo's procedure, each under the stage that the procedure names for it.
#[test]
fn each_stage_has_the_steps_that_name_it() {
    let page = html().find(|page| page.path == "fitting-ST-4100.html").unwrap();
    let stages: Vec<&str> = page.text.split("<div class=\"stage\">").skip(1).collect();
    let [apart, entered, seated] = stages[..] else { panic!("{} stages", stages.len()) };
    for (stage, name, steps) in
        [(apart, "apart", [1, 2].as_slice()), (entered, "entered", &[3, 4]), (seated, "seated", &[5, 6, 7])]
    {
        assert!(stage.contains(&format!("figure-stage-{name}")), "{name}");
        let numbers: Vec<&str> = values(stage, "value");
        assert_eq!(numbers, steps.iter().map(ToString::to_string).collect::<Vec<_>>(), "{name}");
    }
    assert!(seated.contains(
        "<li value=\"6\" dir=\"auto\">Measure 3.0\u{a0}to\u{a0}5.5\u{a0}mm. Paint slip mark.</li>"
    ));
}

/// By the demo's records ST-4080 is superseded, and ST-4100 is of the same family and may be built.
#[test]
fn what_must_not_be_built_is_drawn_assembled_and_not_in_stages() {
    let page = |number: &str| {
        let path = format!("fitting-{number}.html");
        &html().find(|page| page.path == path).unwrap().text
    };
    let staged = |text: &str| {
        ["figure-stage-", "How it goes together", "class=\"stages\""].map(|said| text.contains(said))
    };
    assert_eq!(staged(page("ST-4080")), [false; 3]);
    assert!(page("ST-4080").contains("figure-assembly"));
    assert!(page("ST-4100").contains("figure-stage-apart"));
}

/// Each wrong part of a body that can be built in stands on its teaching sheet once, with both marks in its drawing, in
/// the words of the case where it is worst; the body's page leads to the sheet.
#[test]
fn teaching_sheets_have_every_dangerous_part() {
    let catalogue = fittingcards::catalogue::load(&super::made::content()).unwrap().catalogue;
    let mixups = fittingcards::mixups::find(&catalogue);
    let mut taught = 0;
    for body in &mixups.bodies {
        let current = |case: &&fittingcards::mixups::Case| case.fitting.status.word() == "current";
        let dangers: Vec<_> = body.cases.iter().filter(|case| case.danger).filter(current).collect();
        let parts: BTreeSet<&str> = dangers.iter().map(|case| case.part.number.as_str()).collect();
        let sheet = html().find(|page| page.path == format!("teaching-{}.html", body.body.number));
        assert_eq!(sheet.is_some(), !parts.is_empty(), "{}", body.body.number);
        let Some(sheet) = sheet else { continue };
        let sections: Vec<&str> = sheet.text.split("<section class=\"taught\"").skip(1).collect();
        assert_eq!(sections.len(), parts.len(), "{}", sheet.path);
        for number in &parts {
            let own =
                sections.iter().find(|section| section.contains(&format!("href=\"part-{number}.html\"")));
            let own = own.unwrap_or_else(|| panic!("{} lacks {number}", sheet.path));
            let comes = dangers.iter().filter(|case| case.part.number == *number);
            assert!(comes.clone().any(|case| own.contains(&case.summary.heading())), "{number}");
            // Every other fitting that it is wrong in is named.
            assert!(comes.into_iter().all(|case| own.contains(&case.fitting.number)), "{number}");
            taught += 1;
        }
        let page = html().find(|page| page.path == format!("body-{}.html", body.body.number)).unwrap();
        assert!(page.text.contains(&format!("href=\"{}\"", sheet.path)), "{}", page.path);
    }
    assert!(taught >= 10, "{taught} wrong parts are taught");
}
