//! Texts that look like markup, in every text of the records: pages, cards and the single file have the same elements
//! and attributes as with plain words.

use fittingcards::publish::{self, BookletForm, RenderOptions};
use fittingcards::source::{FilePath, MemoryWorld};
use html5gum::{Token, Tokenizer};
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use usvg::roxmltree::Document;

/// What tries to get out of a text, an attribute, a comment, a script, a style, a template.
const HOSTILE: [&str; 14] = [
    "<script>go()</script>",
    "\"><img src=x onerror=go()>",
    "' onload='go()' x='",
    "</title></svg><b>x",
    "]]>&amp;<![CDATA[",
    "<!-- x",
    "--></script><b>",
    "{{ number }}{% x %}",
    "&#60;b&#62;&lt;",
    "javascript:go()",
    "\\u003cb\\u003e\\",
    "${go()}`x`",
    "url(//example.org)",
    "</style><style>a{}",
];

/// Every text that a record takes, with `§` for it, and for its beginning, as far as they have room, `¢` in a stamp and
/// `¤` in a mark, `‡` in texts that may name values and so double a brace; identifiers and words of a list are no free texts.
const RECORDS: [(&str, &str); 6] = [
    (
        "catalogue.yaml",
        "title: §\nowner: §\nedition: \"1\"\ndate: 2026-01-01\ncaution: §\ncard: { size: A6, orientation: portrait }\n",
    ),
    (
        "materials/a.yaml",
        "id: bronze-x\nname: §\ngroup: copper\ndensity_kg_per_m3: 8800\nsource: { standard: §, edition: §, table: §, note: § }\n",
    ),
    (
        "conductors/a.yaml",
        "id: wire-8\nname: §8\nduty: earth\nmaterial: copper-hard-drawn\nconstruction: { stranded: { wires: 7, wire_diameter_mm: 2.67 } }\n\
         identity: { drum_tag: §, tracer: § }\nsource: { standard: §, edition: §, table: §, note: § }\ncaution: §\n---\n\
         id: wire-9\nname: §9\nduty: earth\nmaterial: copper-hard-drawn\nconstruction: { stranded: { wires: 7, wire_diameter_mm: 3.0 } }\n",
    ),
    (
        "parts/a.yaml",
        "number: P-1\nname: §\nrole: body\nmaterial: steel-galvanised\nstamp: §\ndrawing: §\n---\n\
         number: P-2\nname: §\nrole: cone\nmaterial: bronze-x\nstamp: ¢2\ndrawing: §\ninterface: §\n\
         mark: { colour: BU, text: ¤, notches: 2 }\nproven_on: [{ conductor: wire-8, holding_load_kN: 20, report: § }]\n---\n\
         number: P-3\nname: §\nrole: cone\nmaterial: bronze-x\nstamp: ¢3\ninterface: §\nmark: { colour: YE, text: ¤3, notches: 3 }\n",
    ),
    (
        "fittings/a.yaml",
        "number: F-1\nname: §\nfamily: cone-dead-end\nconductor: wire-8\nparts: [P-1, P-2]\nstamp: §\nwitness: ‡\nsteps: [‡, ‡]\n\
         reject_if: [‡]\nnotices: [N-1]\ntightening: [{ item: §, thread: §, torque_Nm: { min: 70, max: 90 }, grease: [§] }]\n---\n\
         number: F-2\nname: §\nfamily: cone-dead-end\nconductor: wire-9\nparts: [P-1, P-3]\nwitness: ‡\n",
    ),
    ("notices/a.yaml", "number: N-1\ndate: 2026-01-01\ntitle: §\nreference: §\nsummary: §\n"),
];

/// Names of elements with those of their attributes, and how many there are of each, by the file that they stand in.
type Elements = BTreeMap<String, BTreeMap<String, usize>>;

fn world(text: &str) -> MemoryWorld {
    let filled = |record: &str| {
        let lengths = [('§', 80), ('¢', 9), ('¤', 2), ('‡', 80)];
        lengths.iter().fold(record.to_owned(), |record, (sign, length)| {
            let short: String = text.chars().take(*length).collect();
            let short = if *sign == '‡' { short.replace('{', "{{") } else { short };
            let quoted = |suffix: &str| serde_json::to_string(&format!("{short}{suffix}")).unwrap();
            let record = ["2", "3", "8", "9"]
                .iter()
                .fold(record, |record, digit| record.replace(&format!("{sign}{digit}"), &quoted(digit)));
            record.replace(*sign, &quoted(""))
        })
    };
    RECORDS.iter().fold(MemoryWorld::new(), |world, (path, record)| {
        world.with(FilePath::catalogue(path), filled(record))
    })
}

/// What pages and cards are made of, and whether the text is seen in them.
fn rendered(text: &str) -> (Elements, bool) {
    let folder = tempfile::tempdir().unwrap();
    let options = RenderOptions {
        preview_dpi: 30.0,
        booklet: BookletForm::PagesAndSingleFile,
        ..RenderOptions::into_folder(folder.path())
    };
    let report = publish::render(&world(text), &options, &|_| {}).unwrap();
    assert!(report.put.is_some(), "{text}: {:#?}", report.findings.sorted());
    let (mut elements, mut is_seen) = (Elements::new(), true);
    for file in
        ["booklet", "cards"].iter().flat_map(|name| std::fs::read_dir(folder.path().join(name)).unwrap())
    {
        read(&file.unwrap().path(), text, &mut elements, &mut is_seen);
    }
    read(&folder.path().join("booklet.html"), text, &mut elements, &mut is_seen);
    (elements, is_seen)
}

fn read(path: &Path, text: &str, elements: &mut Elements, is_seen: &mut bool) {
    let name = path.file_name().unwrap().to_string_lossy().into_owned();
    let all = elements.entry(name.clone()).or_default();
    // A word joiner is never drawn: it keeps stamps in one line.
    let is_drawn = |letter: &char| !letter.is_whitespace() && *letter != '\u{2060}';
    let plain = |text: &str| text.chars().filter(is_drawn).collect::<String>();
    if name.ends_with(".html") {
        let (names, shown) = of_page(&std::fs::read_to_string(path).unwrap());
        names.into_iter().for_each(|name| *all.entry(name).or_default() += 1);
        *is_seen &= plain(&shown).contains(&plain(text));
    } else if name.ends_with(".svg") {
        let (names, shown) = of_face(&std::fs::read_to_string(path).unwrap());
        // How many lines a text takes is its own affair.
        names.into_iter().for_each(|name| {
            all.insert(name, 1);
        });
        *is_seen &= plain(&shown).contains(&plain(text)) || name.starts_with("P-");
    }
}

fn of_page(page: &str) -> (Vec<String>, String) {
    let (mut names, mut shown) = (Vec::new(), String::new());
    let mut emitter = html5gum::DefaultEmitter::default();
    emitter.naively_switch_states(true);
    for Ok(token) in Tokenizer::new_with_emitter(page, emitter) {
        match token {
            Token::StartTag(tag) => {
                let words = std::iter::once(&tag.name).chain(tag.attributes.keys());
                names.push(words.map(|word| String::from_utf8_lossy(word)).collect::<Vec<_>>().join(" "));
            }
            Token::String(text) => shown.push_str(&String::from_utf8_lossy(&text)),
            Token::Comment(comment) => names.push(format!("comment {comment:?}")),
            _ => {}
        }
    }
    (names, shown)
}

fn of_face(svg: &str) -> (BTreeSet<String>, String) {
    let document = Document::parse(svg).unwrap();
    let elements = document.descendants().filter(|node| node.is_element());
    let names = elements.map(|element| {
        let words =
            std::iter::once(element.tag_name().name()).chain(element.attributes().map(|known| known.name()));
        words.collect::<Vec<_>>().join(" ")
    });
    let shown = document.descendants().filter(|node| node.is_text()).filter_map(|node| node.text()).collect();
    (names.collect(), shown)
}

/// Plain texts as long and as hard to break as those that try something: a drawing has the room that texts leave to it,
/// and so balloons or not.
const PLAIN: [&str; 5] =
    ["plain words x", "urlurlexampleorg", "word word wordgowordx wordgo", "u003cbu003e", "xstylexstylexaxx"];

/// What pages and cards are made of with any of the plain texts.
fn plain_elements() -> Elements {
    let mut all = Elements::new();
    for text in PLAIN {
        let (elements, is_seen) = rendered(text);
        assert!(is_seen, "{text}");
        for (file, names) in elements {
            let known = all.entry(file).or_default();
            for (name, count) in names {
                let most = known.entry(name).or_default();
                *most = count.max(*most);
            }
        }
    }
    all
}

#[test]
fn texts_that_look_like_markup_add_no_element_and_no_attribute() {
    let plain = plain_elements();
    assert!(plain.len() > 20, "{} files", plain.len());
    HOSTILE.par_iter().for_each(|text| {
        let (elements, is_seen) = rendered(text);
        assert!(is_seen, "{text} is not shown everywhere");
        for (file, expected) in &plain {
            let found = &elements[file];
            let added: Vec<_> = found
                .iter()
                .filter(|(name, count)| expected.get(*name).is_none_or(|known| known < count))
                .collect();
            assert!(added.is_empty(), "{text} adds to {file}: {added:?}");
        }
    });
}
