//! Pages that the chapters name in words are there under that name.

use super::made::html;
use pulldown_cmark::{Event, Parser, Tag, TagEnd};
use std::path::Path;

/// Emphasised texts of a note that begin with a capital letter and are no sentences: names of pages.
fn named(markdown: &str) -> Vec<String> {
    let (mut names, mut open) = (Vec::new(), false);
    for event in Parser::new(markdown) {
        match event {
            Event::Start(Tag::Emphasis) => {
                open = true;
                names.push(String::new());
            }
            Event::End(TagEnd::Emphasis) => open = false,
            Event::Text(text) if open => names.last_mut().unwrap().push_str(&text),
            _ => {}
        }
    }
    names.retain(|name| name.starts_with(char::is_uppercase) && !name.ends_with('.'));
    names
}

#[test]
fn pages_that_chapters_name_are_there() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("content/notes/chapters");
    let mut count = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        for name in named(&std::fs::read_to_string(&path).unwrap()) {
            count += 1;
            let heading = format!("<h1>{name}</h1>");
            assert!(html().any(|page| page.text.contains(&heading)), "{}: {name}", path.display());
        }
    }
    assert!(count > 0, "the demo's chapters name no page");
}
