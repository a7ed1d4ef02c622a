//! The booklet of a large catalogue: its lists go by section, and everything is reached from the first page by links.

use super::catalogue::write_catalogue;
use super::made::with_booklet;
use fittingcards::booklet::Booklet;
use fittingcards::source::DiskWorld;
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
    with_booklet(&world, lists_of)
}

fn lists_of(booklet: &Booklet<'_>) -> BTreeMap<String, String> {
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
