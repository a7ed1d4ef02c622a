//! A note made HTML in both forms of the booklet, and read as browsers read it.

use super::demo::DEMO;
use super::{file, findings};
use fittingcards::catalogue::{Catalogue, Note, NoteAbout};
use fittingcards::notes::address::Form;
use fittingcards::notes::{Notes, to_html};
use fittingcards::source::{FilePath, MemoryWorld, Place};
use html5gum::{Token, Tokenizer};

const PATHS: [&str; 2] = ["notes/ST-4100.md", "notes/chapters/01-first.md"];

/// Elements that a note may become, with the attributes that each may have beside `dir` and `class`. None of them
/// runs or fetches anything (HTML Living Standard).
const ALLOWED: [(&str, &[&str]); 27] = [
    ("a", &["href"]),
    ("blockquote", &[]),
    ("br", &[]),
    ("code", &[]),
    ("div", &["tabindex", "role", "aria-label"]),
    ("em", &[]),
    ("h2", &["id"]),
    ("h3", &["id"]),
    ("h4", &["id"]),
    ("h5", &["id"]),
    ("h6", &["id"]),
    ("hr", &[]),
    ("li", &[]),
    ("ol", &["start"]),
    ("p", &[]),
    ("pre", &[]),
    ("span", &[]),
    ("bdi", &[]),
    ("strong", &[]),
    ("table", &[]),
    ("tbody", &[]),
    ("td", &[]),
    ("th", &["scope"]),
    ("thead", &[]),
    ("tr", &[]),
    ("ul", &[]),
    ("cite", &[]),
];

pub fn run(input: &[u8]) {
    let (path, bytes) = file::taken(input, &PATHS);
    let Ok(markdown) = std::str::from_utf8(bytes) else { return };
    let place = Place::whole(FilePath::catalogue(path));
    let about = match path {
        "notes/ST-4100.md" => NoteAbout::Record("ST-4100".to_owned()),
        _ => NoteAbout::Chapter("01-first".to_owned()),
    };
    let note = Note { about, markdown: markdown.into(), place };
    let catalogue = Catalogue { notes: vec![note.clone()], ..DEMO.catalogue.clone() };
    let notes = Notes::new(&catalogue);
    let world = MemoryWorld::new().with(FilePath::catalogue(path), bytes);
    for form in [Form::Folder, Form::SingleFile] {
        let (html, found) = to_html(&note, &notes, form);
        safe(&html.body, form);
        findings::sound(&found, &world);
    }
}

/// Only elements and attributes that are allowed, opened and closed in order, and links that stay in the booklet.
fn safe(html: &str, form: Form) {
    let mut open: Vec<String> = Vec::new();
    for Ok(token) in Tokenizer::new(html) {
        match token {
            Token::StartTag(tag) => {
                let name = text(&tag.name);
                let allowed = ALLOWED.iter().find(|(element, _)| *element == name);
                let (_, attributes) = allowed.unwrap_or_else(|| panic!("<{name}> in {html}"));
                for (attribute, value) in &tag.attributes {
                    let (attribute, value) = (text(attribute), text(value));
                    let known = ["dir", "class"].contains(&&*attribute) || attributes.contains(&&*attribute);
                    assert!(known, "{attribute}={value} of <{name}> in {html}");
                    assert!(attribute != "href" || stays(&value, form), "{value} leads out in {html}");
                }
                if !["br", "hr"].contains(&&*name) {
                    open.push(name);
                }
            }
            Token::EndTag(tag) => assert_eq!(open.pop(), Some(text(&tag.name)), "{html}"),
            Token::Comment(_) | Token::Doctype(_) => panic!("more than elements and text in {html}"),
            Token::String(_) | Token::Error(_) => {}
        }
    }
    assert!(open.is_empty(), "{open:?} in {html}");
}

/// Whether a link leads to a page of the booklet: no scheme, no host, no folder above (RFC 3986).
fn stays(link: &str, form: Form) -> bool {
    let path = link.split(['#', '?']).next().unwrap_or_default();
    let inside = !path.contains([':', '/', '\\']) && (path.is_empty() || path.ends_with(".html"));
    inside && (form == Form::Folder || link.starts_with('#'))
}

fn text(bytes: &html5gum::HtmlString) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

pub fn seeds() -> Vec<Vec<u8>> {
    let written = [
        "| a | b |\n|:--|--:|\n| `1` | *2* |\n\n1. one\n2. two\n   - three\n\n> said\n",
        "<script>alert(1)</script>\n\n<img src=x onerror=alert(1)>\n\n[a](javascript:alert(1))\n",
        "[[ST-4103#care]] [b](chapters/01-first.md#x) ![p](p.png) <http://example.org> [c]: data:text/html,x\n",
        "# One\n\nSetext\n===\n\n```html\n<b>\n```\n\nالمخروط **TE** &lt;b&gt; \\<i\\>\n\n***\n",
    ];
    let files =
        ["content", "tests/cases/scripts/in", "tests/scripts/added"].into_iter().flat_map(file::below);
    let files = files.filter(|(path, _)| path.ends_with(".md")).map(|(_, bytes)| bytes);
    let texts: Vec<Vec<u8>> = files.chain(written.map(|text| text.as_bytes().to_vec())).collect();
    PATHS.iter().flat_map(|path| texts.iter().map(|text| file::given(path, text))).collect()
}
