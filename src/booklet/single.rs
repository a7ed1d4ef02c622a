//! The whole booklet in one file: its pages one after another, with styles, scripts and cards in it.

use super::frame::{self, Draft};
use super::input::{Booklet, Input};
use super::pages::Page;
use crate::diagnostics::{Finding, Findings};
use rayon::prelude::*;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// The scripts of a page, in the order that they run in.
const SCRIPTS: [&str; 8] =
    ["index.js", "booklet.js", "asks.js", "find.js", "lookup.js", "tools.js", "hand.js", "closed.js"];
/// The style sheets of a page, in the order that they apply in.
const STYLES: [&str; 5] = ["booklet.css", "tables.css", "tools.css", "narrow.css", "print.css"];

/// One HTML file that holds all pages.
///
/// `cards` are the faces as SVG by their file name, such as `ST-4100-front.svg`. With scripts on, one page is shown
/// at a time; with scripts off, and in print, all of them one after another.
///
/// # Errors
/// All faults of all layouts.
pub fn single_file(input: Input<'_>, cards: &BTreeMap<String, String>) -> Result<String, Findings> {
    let booklet = Booklet::new(input).in_one_file(cards);
    let pages = all(&booklet)?;
    let nonce = nonce(&pages);
    let values = bind(&booklet, &pages, &nonce);
    let text = input.layouts.fill("booklet/single.html", &values).map_err(Findings::from)?;
    let findings =
        booklet.check_single(&text, &nonce, &SCRIPTS.map(|path| text_of(&pages, path)), &style(&pages));
    if findings.has_errors() { Err(findings) } else { Ok(text) }
}

fn text_of<'p>(pages: &'p [Page], path: &str) -> &'p str {
    pages.iter().find(|page| page.path == path).map_or("", |page| &page.text)
}

fn style(pages: &[Page]) -> String {
    STYLES.map(|path| text_of(pages, path)).concat()
}

fn all(booklet: &Booklet<'_>) -> Result<Vec<Page>, Findings> {
    let made: Vec<Result<Page, Box<Finding>>> =
        booklet.subjects().par_iter().map(|subject| booklet.page(subject).map_err(Box::new)).collect();
    let (mut pages, mut findings) = (Vec::with_capacity(made.len()), Findings::new());
    for page in made {
        match page {
            Ok(page) => pages.push(page),
            Err(finding) => findings.push(*finding),
        }
    }
    if findings.has_errors() { Err(findings) } else { Ok(pages) }
}

/// What the outer layout is filled with.
fn bind(booklet: &Booklet<'_>, pages: &[Page], nonce: &str) -> Value {
    let title = booklet.input.catalogue.settings.title.clone();
    let mut values =
        frame::values(booklet, Draft { layout: "single", title, kind: "Booklet", values: json!({}) });
    let articles = pages.iter().filter(|page| page.path.ends_with(".html"));
    values["nonce"] = nonce.into();
    values["style"] = style(pages).into();
    values["scripts"] = SCRIPTS.map(|path| text_of(pages, path)).to_vec().into();
    values["articles"] = articles.map(|page| page.text.as_str()).collect();
    values
}

/// What styles and scripts must carry to be let through: it stands for the file's own text.
fn nonce(pages: &[Page]) -> String {
    let mut hasher = blake3::Hasher::new();
    for page in pages {
        hasher.update(page.text.as_bytes());
    }
    hasher.finalize().to_hex()[..32].to_owned()
}
