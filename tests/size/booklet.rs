//! The booklet of a large catalogue: its lists go by section, and everything is reached from the first page by links.

use super::catalogue::write_catalogue;
use fittingcards::booklet::{Booklet, Input};
use fittingcards::layouts::Layouts;
use fittingcards::sketch::Options;
use fittingcards::source::{DiskWorld, World};
use fittingcards::typeset::Fonts;
use fittingcards::units::Length;
use fittingcards::{catalogue, facts, mixups};
use std::collections::{BTreeMap, BTreeSet};

/// More than a page lists.
const FITTINGS: usize = 404;
/// What a phone opens at once: common practice, no source.
const MOST_BYTES: usize = 250_000;

/// Pages that list others, by their names' first words.
const LISTS: [&str; 5] = ["index", "closed", "numbers", "hand", "look-alikes"];

#[test]
fn a_large_booklet_goes_by_section_and_everything_is_reached_by_links() {
    let pages = pages();
    let too_large: Vec<_> = pages.iter().filter(|(_, text)| text.len() > MOST_BYTES).collect();
    assert!(too_large.is_empty(), "{:?}", too_large.iter().map(|(name, _)| name).collect::<Vec<_>>());
    assert!(pages.contains_key("closed-B-0100.html") && pages.contains_key("numbers-2.html"));
    let (mut reached, mut ahead) = (BTreeSet::new(), vec!["index.html".to_owned()]);
    while let Some(name) = ahead.pop() {
        if reached.insert(name.clone()) {
            ahead.extend(pages.get(&name).into_iter().flat_map(|text| links(text)));
        }
    }
    let lost = pages.keys().filter(|name| !reached.contains(*name));
    assert_eq!(lost.collect::<Vec<_>>(), Vec::<&String>::new(), "pages that no link leads to");
    for fitting in 0..FITTINGS {
        let name = format!("fitting-F-{:04}-{}.html", fitting / 4, fitting % 4);
        assert!(reached.contains(&name), "no link leads to {name}");
    }
}

/// The pages that list others, and those of conductors.
fn pages() -> BTreeMap<String, String> {
    let folder = tempfile::tempdir().expect("a folder for the catalogue");
    write_catalogue(folder.path(), FITTINGS).expect("the catalogue is written");
    let world = DiskWorld::new(folder.path(), folder.path().join("layouts"));
    let (layouts, _) = Layouts::load(&world, "booklet", &[]).expect("layouts");
    let catalogue = catalogue::load(&world).expect("records").catalogue;
    let mixups = mixups::find(&catalogue);
    let (facts, issues) = (facts::of_catalogue(&catalogue, &mixups), BTreeMap::new());
    let facts: BTreeMap<_, _> = facts.into_iter().map(|facts| (facts.number.clone(), facts)).collect();
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let booklet = Booklet::new(Input {
        catalogue: &catalogue,
        mixups: &mixups,
        facts: &facts,
        layouts: &layouts,
        state: "Draft, not issued",
        issues: &issues,
        drawing: Options::new(&fonts, Length::from_mm(80.0), Length::from_mm(80.0)),
        sheets: &[],
        tag_sheets: &[],
    });
    let listed = |name: &str| {
        name.ends_with(".html") && LISTS.iter().chain(&["conductor"]).any(|list| name.starts_with(list))
    };
    let subjects = booklet.subjects().into_iter().filter(|subject| listed(&subject.path()));
    subjects
        .map(|subject| booklet.page(&subject).expect("a page"))
        .map(|page| (page.path, page.text))
        .collect()
}

/// The files that a page leads to.
fn links(text: &str) -> impl Iterator<Item = String> {
    text.split("href=\"").skip(1).filter_map(|rest| {
        let address = rest.split('"').next()?.split('#').next()?;
        address.ends_with(".html").then(|| address.to_owned())
    })
}
