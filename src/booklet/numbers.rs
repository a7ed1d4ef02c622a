//! All numbers and stamps, for paper and without scripts.

use super::addresses;
use super::find::records;
use super::frame::Draft;
use super::input::Booklet;
use super::long::{MOST_LINES, section, sections};
use super::view::part_link;
use serde_json::{Value, json};

/// The sections that have a page of their own, from 1; none where all go on one page.
pub(super) fn parts_of_it(booklet: &Booklet<'_>) -> std::ops::RangeInclusive<usize> {
    let count = All::of(booklet).sections().len();
    1..=if count > 2 { count } else { 0 }
}

/// The page of all numbers and stamps: the lists, or links to their sections.
pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let all = All::of(booklet);
    let parts = all.sections();
    if parts.len() <= 2 {
        return draft(&all.numbers, &all.stamps, &[]);
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
    match All::of(booklet).sections().get(nth.saturating_sub(1)) {
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

/// Every line, in order.
struct All {
    numbers: Vec<Value>,
    stamps: Vec<Value>,
}

impl All {
    fn of(booklet: &Booklet<'_>) -> Self {
        let mut numbers = records(booklet);
        numbers.sort_by(|a, b| a.number.cmp(&b.number));
        let lines = numbers.iter().map(|entry| {
            json!({
                "href": entry.href, "number": entry.number, "kind": entry.kind, "name": entry.name,
                "status": entry.status, "standing": entry.standing, "stamp": entry.stamp,
            })
        });
        let mut stamped: Vec<_> =
            booklet.input.catalogue.parts.values().filter(|part| !part.stamp.is_empty()).collect();
        stamped.sort_by(|a, b| (&a.stamp, &a.number).cmp(&(&b.stamp, &b.number)));
        let stamps =
            stamped.into_iter().map(|part| json!({ "stamp": part.stamp, "link": part_link(booklet, part) }));
        Self { numbers: lines.collect(), stamps: stamps.collect() }
    }

    fn sections(&self) -> Vec<Section<'_>> {
        let both = self.numbers.len() + self.stamps.len() <= MOST_LINES;
        if both {
            return vec![Section::Numbers(&self.numbers), Section::Stamps(&self.stamps)];
        }
        let numbers = sections(&self.numbers).map(Section::Numbers);
        numbers.chain(sections(&self.stamps).map(Section::Stamps)).collect()
    }
}
