//! All numbers and stamps, for paper and without scripts.

use super::addresses;
use super::entry::Entry;
use super::find::numbered;
use super::frame::Draft;
use super::input::Booklet;
use super::long::{MOST_LINES, section, sections};
use super::view::part_link;
use serde_json::{Value, json};

/// The sections that have a page of their own, from 1; none where all go on one page.
pub(super) fn parts_of_it(booklet: &Booklet<'_>) -> std::ops::RangeInclusive<usize> {
    let count = all_sections(booklet).len();
    1..=if count > 2 { count } else { 0 }
}

/// The page of all numbers and stamps: the lists, or links to their sections.
pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let parts = all_sections(booklet);
    if parts.len() <= 2 {
        let [numbers, stamps] = lines(booklet);
        return draft(numbers, stamps, &[]);
    }
    let links = parts.iter().zip(1..).map(|(part, nth)| {
        let (of, lines, key) = match part {
            Section::Numbers(lines) => ("Numbers", lines, "number"),
            Section::Stamps(lines) => ("Stamps", lines, "stamp"),
        };
        let end =
            |line: Option<&Value>| line.and_then(|line| line[key].as_str()).unwrap_or_default().to_owned();
        let text = format!("{of} {} to {}", end(lines.first()), end(lines.last()));
        json!({ "href": booklet.link(&section(&addresses::numbers(), nth)), "text": text })
    });
    draft(&[], &[], &links.collect::<Vec<_>>())
}

/// The page of a section.
pub(super) fn section_page(booklet: &Booklet<'_>, nth: usize) -> Draft {
    match all_sections(booklet).get(nth.saturating_sub(1)) {
        Some(Section::Numbers(lines)) => draft(lines, &[], &[]),
        Some(Section::Stamps(lines)) => draft(&[], lines, &[]),
        None => draft(&[], &[], &[]),
    }
}

fn draft(numbers: &[Value], stamps: &[Value], sections: &[Value]) -> Draft {
    let values = json!({ "numbers": numbers, "stamps": stamps, "sections": sections });
    Draft { layout: "numbers", title: "Numbers and stamps".to_owned(), kind: "Booklet", values }
}

/// Lines of a page's length, of one list.
enum Section<'a> {
    Numbers(&'a [Value]),
    Stamps(&'a [Value]),
}

fn all_sections<'b>(booklet: &'b Booklet<'_>) -> Vec<Section<'b>> {
    let [numbers, stamps] = lines(booklet);
    if numbers.len() + stamps.len() <= MOST_LINES {
        return vec![Section::Numbers(numbers), Section::Stamps(stamps)];
    }
    sections(numbers).map(Section::Numbers).chain(sections(stamps).map(Section::Stamps)).collect()
}

fn lines<'b>(booklet: &'b Booklet<'_>) -> &'b [Vec<Value>; 2] {
    booklet.lines.get_or_init(|| [numbers(booklet), stamps(booklet)])
}

/// The lines of all records, in the order of their numbers.
fn numbers(booklet: &Booklet<'_>) -> Vec<Value> {
    let mut numbers: Vec<&Entry> = numbered(booklet).iter().collect();
    numbers.sort_by(|a, b| a.number.cmp(&b.number));
    let lines = numbers.into_iter().map(|entry| {
        json!({
            "href": entry.href, "number": entry.number, "kind": entry.kind, "name": entry.name,
            "status": entry.status, "standing": entry.standing, "stamp": entry.stamp,
        })
    });
    lines.collect()
}

/// The lines of all stamped parts, in the order of their stamps.
fn stamps(booklet: &Booklet<'_>) -> Vec<Value> {
    let mut stamped: Vec<_> =
        booklet.input.catalogue.parts.values().filter(|part| !part.stamp.is_empty()).collect();
    stamped.sort_by(|a, b| (&a.stamp, &a.number).cmp(&(&b.stamp, &b.number)));
    let lines =
        stamped.into_iter().map(|part| json!({ "stamp": part.stamp, "link": part_link(booklet, part) }));
    lines.collect()
}
