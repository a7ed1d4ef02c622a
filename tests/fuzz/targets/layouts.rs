//! Layouts and style of cards, and layouts of the booklet: any text in the place of one file.

use super::demo::DEMO;
use super::{file, findings};
use fittingcards::booklet::{Booklet, Subject};
use fittingcards::cards::{self, Design, plan_tags};
use fittingcards::diagnostics::Findings;
use fittingcards::layouts::Layouts;
use fittingcards::register::Standing;
use fittingcards::source::{FilePath, MemoryWorld};

const FACES: [&str; 10] = [
    "cards/fitting-front.xml",
    "cards/fitting-back.xml",
    "cards/body-front.xml",
    "cards/body-back.xml",
    "cards/tag.xml",
    "cards/style.yaml",
    "cards/not-these.xml",
    "cards/parts.xml",
    "cards/mark.xml",
    "cards/checks.xml",
];
const PAGES: [&str; 8] = [
    "booklet/fitting.html",
    "booklet/body.html",
    "booklet/conductor.html",
    "booklet/part.html",
    "booklet/notice.html",
    "booklet/start.html",
    "booklet/wear.html",
    "booklet/base.html",
];

pub fn faces(input: &[u8]) {
    let (path, text) = file::taken(input, &FACES);
    let world = MemoryWorld::new().with(FilePath::layouts(path), text);
    let (design, found) = Design::load(&world, &[]).expect("what lies in memory is read");
    findings::sound(&found, &world);
    let input = DEMO.cards(&design);
    if path == "cards/tag.xml" {
        match plan_tags(input, &DEMO.tags[0], &Standing::Draft) {
            Ok(plans) => plans.iter().for_each(|plan| findings::sound(&plan.draw(input).1, &world)),
            Err(found) => findings::sound(&found, &world),
        }
        return;
    }
    let number = if path.contains("body") { "ST-4101" } else { "ST-4100" };
    let facts = DEMO.by_number.get(number).or(DEMO.facts.first()).unwrap();
    let (card, found) = cards::make(input, facts);
    findings::sound(&found, &world);
    if let Some(card) = card.filter(|_| !found.has_errors()) {
        DEMO.printed(card);
    }
}

pub fn pages(input: &[u8]) {
    let (path, text) = file::taken(input, &PAGES);
    let world = MemoryWorld::new().with(FilePath::layouts(path), text);
    let (layouts, found) = Layouts::load(&world, "booklet", &[]).expect("what lies in memory is read");
    findings::sound(&found, &world);
    let booklet = Booklet::new(DEMO.booklet(&layouts));
    let Some(subject) = booklet.subjects().into_iter().find(|subject| is_of(path, subject)) else { return };
    if let Err(finding) = booklet.page(&subject) {
        let mut found = Findings::new();
        found.push(finding);
        findings::sound(&found, &world);
    }
}

fn is_of(path: &str, subject: &Subject) -> bool {
    match path {
        "booklet/fitting.html" => matches!(subject, Subject::Fitting(_)),
        "booklet/body.html" => matches!(subject, Subject::Body(_)),
        "booklet/conductor.html" => matches!(subject, Subject::Conductor(_)),
        "booklet/part.html" => matches!(subject, Subject::Part(_)),
        "booklet/notice.html" => matches!(subject, Subject::Notice(_)),
        "booklet/wear.html" => matches!(subject, Subject::Wear),
        _ => matches!(subject, Subject::Start),
    }
}

pub fn seeds_of_faces() -> Vec<Vec<u8>> {
    seeds("cards/", &FACES)
}

pub fn seeds_of_pages() -> Vec<Vec<u8>> {
    seeds("booklet/", &PAGES)
}

/// The built-in files; what they take in stands for a whole layout too.
fn seeds(folder: &str, known: &[&str]) -> Vec<Vec<u8>> {
    let files = file::below("layouts").into_iter().filter(|(path, _)| path.starts_with(folder));
    let files = files.filter(|(path, _)| !path.ends_with(".js") && !path.ends_with(".css"));
    let name = |path: String| if known.contains(&&*path) { path } else { known[0].to_owned() };
    files.map(|(path, bytes)| file::given(&name(path), &bytes)).collect()
}
