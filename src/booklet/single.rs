//! The whole booklet in one file: pages become articles, links become places in it, nothing lies outside it.

use super::Page;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

/// Attributes whose values are ids, or lists of them, within their page.
const ID_ATTRIBUTES: [&str; 5] =
    [" id=\"", " for=\"", " aria-labelledby=\"", " aria-describedby=\"", " data-table=\""];
/// Between these lie links to files that are not in the one file.
const FILES: (&str, &str) = ("<!--files-->", "<!--/files-->");

/// One HTML file that holds all pages, with styles, scripts and cards in it.
///
/// `cards` are the faces as SVG by their file name, such as `ST-4100-front.svg`. With scripts on, one page is shown
/// at a time; with scripts off, and in print, all of them one after another.
#[must_use]
pub fn single_file(pages: &[Page], cards: &BTreeMap<String, String>) -> String {
    let known: BTreeSet<&str> = html(pages).map(|page| page.path.as_str()).collect();
    let Some(first) = html(pages).next() else { return String::new() };
    let (Some(head), Some(tail)) = (until(&first.text, "<main"), after(&first.text, "</main>")) else {
        return first.text.clone();
    };
    let nonce = nonce(pages);
    let mut file = head_of(head, pages, &nonce);
    file = links(&file, &known);
    file.push_str("<main id=\"main\" tabindex=\"-1\">\n");
    for page in html(pages) {
        file.push_str(&article(page, &known, cards));
    }
    file.push_str("</main>");
    file.push_str(&links(until(tail, "</body>").unwrap_or(tail), &known));
    for script in ["index.js", "booklet.js", "tools.js"] {
        let text = links(text_of(pages, script), &known);
        let _ = write!(file, "<script nonce=\"{nonce}\">\n{text}</script>\n");
    }
    file.push_str("</body>\n</html>\n");
    file
}

fn html(pages: &[Page]) -> impl Iterator<Item = &Page> {
    pages.iter().filter(|page| page.path.ends_with(".html"))
}

fn text_of<'a>(pages: &'a [Page], path: &str) -> &'a str {
    pages.iter().find(|page| page.path == path).map_or("", |page| &page.text)
}

fn until<'a>(text: &'a str, mark: &str) -> Option<&'a str> {
    text.split_once(mark).map(|(before, _)| before)
}

fn after<'a>(text: &'a str, mark: &str) -> Option<&'a str> {
    text.split_once(mark).map(|(_, after)| after)
}

/// What styles and scripts must carry to be let through: it stands for the file's own text.
fn nonce(pages: &[Page]) -> String {
    let mut hasher = blake3::Hasher::new();
    for page in pages {
        hasher.update(page.text.as_bytes());
    }
    hasher.finalize().to_hex()[..32].to_owned()
}

/// The head and the top of the body, with the styles in it and a policy for what is in the file alone.
fn head_of(head: &str, pages: &[Page], nonce: &str) -> String {
    let policy = format!(
        "default-src 'none'; style-src 'nonce-{nonce}'; script-src 'nonce-{nonce}'; img-src data:; base-uri 'none'; form-action 'none'"
    );
    let mut out = String::new();
    for line in head.lines() {
        if line.contains("Content-Security-Policy") {
            let _ = writeln!(out, "<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
        } else if line.starts_with("<link rel=\"stylesheet\"") {
            let _ = writeln!(out, "<style nonce=\"{nonce}\">\n{}</style>", text_of(pages, "booklet.css"));
        } else if line.starts_with("<body") {
            out.push_str("<body data-single>\n");
        } else if !line.starts_with("<script src=") {
            out.push_str(line);
            out.push('\n');
        }
    }
    out
}

fn article(page: &Page, known: &BTreeSet<&str>, cards: &BTreeMap<String, String>) -> String {
    let stem = stem(&page.path);
    let title = after(&page.text, "<title>").and_then(|rest| until(rest, "</title>")).unwrap_or_default();
    let main = after(&page.text, "<main").and_then(|rest| after(rest, ">"));
    let main = main.and_then(|rest| until(rest, "</main>")).unwrap_or_default();
    let body = images(&links(&ids(&without_files(main), stem), known), cards);
    format!("<article class=\"page\" id=\"{stem}\" data-title=\"{title}\">{body}</article>\n")
}

fn stem(path: &str) -> &str {
    path.strip_suffix(".html").unwrap_or(path)
}

fn without_files(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, inside)) = rest.split_once(FILES.0) {
        out.push_str(before);
        rest = after(inside, FILES.1).unwrap_or_default();
    }
    out + rest
}

/// Puts the page's name before each of its ids, so that no two pages share one.
fn ids(text: &str, stem: &str) -> String {
    let mut text = text.replace(" href=\"#", &format!(" href=\"#{stem}--"));
    for attribute in ID_ATTRIBUTES {
        text = with_values(&text, attribute, |value| {
            value.split(' ').map(|id| format!("{stem}--{id}")).collect::<Vec<_>>().join(" ")
        });
    }
    text
}

/// Replaces every value of an attribute.
fn with_values(text: &str, attribute: &str, replace: impl Fn(&str) -> String) -> String {
    let mut out = String::with_capacity(text.len());
    let mut pieces = text.split(attribute);
    out.push_str(pieces.next().unwrap_or_default());
    for piece in pieces {
        let (value, rest) = piece.split_once('"').unwrap_or((piece, ""));
        let _ = write!(out, "{attribute}{}\"{rest}", replace(value));
    }
    out
}

/// Turns addresses of pages into places in this file, wherever they stand between quotes: in links and in data.
fn links(text: &str, known: &BTreeSet<&str>) -> String {
    let place = |quoted: &str| {
        let (path, anchor) = quoted.split_once('#').unwrap_or((quoted, ""));
        known.contains(path).then(|| match anchor {
            "" => format!("#{}", stem(path)),
            anchor => format!("#{}--{anchor}", stem(path)),
        })
    };
    let pieces = text.split('"').map(|quoted| place(quoted).unwrap_or_else(|| quoted.to_owned()));
    pieces.collect::<Vec<_>>().join("\"")
}

/// Puts the cards themselves where their files were named.
fn images(text: &str, cards: &BTreeMap<String, String>) -> String {
    with_values(text, " src=\"", |source| {
        let card = source.strip_prefix("../cards/").and_then(|name| cards.get(name));
        card.map_or_else(|| source.to_owned(), |svg| format!("data:image/svg+xml,{}", percent(svg)))
    })
}

/// Percent-encodes what a data address can't hold as it is (RFC 3986).
fn percent(text: &str) -> String {
    let mut out = String::with_capacity(text.len() * 5 / 4);
    for byte in text.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._~/:=;,()'* ".contains(&byte) {
            out.push(char::from(byte));
        } else {
            let _ = write!(out, "%{byte:02X}");
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(path: &str, main: &str) -> Page {
        let text = format!(
            "<html>\n<head>\n<title>{path}</title>\n</head>\n<body>\n<main id=\"main\">{main}</main>\n</body>\n</html>\n"
        );
        Page { path: path.to_owned(), text }
    }

    #[test]
    fn links_and_ids_become_places_in_the_file() {
        let one = page("a.html", "<h2 id=\"x\">X</h2><a href=\"b.html#y\">b</a><a href=\"#x\">x</a>");
        let other = page("b.html", "<p id=\"y\" aria-labelledby=\"y z\">{\"href\":\"a.html\"}</p>");
        let file = single_file(&[one, other], &BTreeMap::new());
        for piece in [
            "<article class=\"page\" id=\"a\" data-title=\"a.html\"><h2 id=\"a--x\">",
            "<a href=\"#b--y\">b</a><a href=\"#a--x\">x</a>",
            "<p id=\"b--y\" aria-labelledby=\"b--y b--z\">{\"href\":\"#a\"}</p>",
        ] {
            assert!(file.contains(piece), "{piece} in {file}");
        }
    }

    #[test]
    fn cards_are_put_in_and_links_to_files_left_out() {
        let text = "<img src=\"../cards/C-front.svg\"><!--files--><a href=\"../x.pdf\">x</a><!--/files-->!";
        let cards = BTreeMap::from([("C-front.svg".to_owned(), "<svg id=\"é\"/>".to_owned())]);
        let file = single_file(&[page("a.html", text)], &cards);
        assert!(file.contains("<img src=\"data:image/svg+xml,%3Csvg id=%22%C3%A9%22/%3E\">!"), "{file}");
        assert!(!file.contains("x.pdf"));
    }
}
