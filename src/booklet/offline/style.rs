//! Style sheets that take nothing in: no `@import`, and no address but of the booklet's own files.

use super::OnlineUse;
use super::address::{Use, stays};
use crate::notes::address::Form;

/// Functions whose addresses may stand in them without `url()`.
const TAKING: [&str; 4] = ["image(", "image-set(", "src(", "cross-fade("];

/// Everything in a style sheet that takes something in from elsewhere.
///
/// Comments and the letters of strings are passed over as CSS does it (CSS Syntax 3); an escape outside a string could
/// hide any of the words that are looked for, and is refused.
pub(in crate::booklet) fn sheet(text: &str, form: Form) -> Vec<OnlineUse> {
    let (mut faults, mut at) = (Vec::new(), 0);
    while let Some(letter) = text[at..].chars().next() {
        let rest = &text[at..];
        at += match letter {
            '/' if rest.starts_with("/*") => rest[2..].find("*/").map_or(rest.len(), |end| end + 4),
            '"' | '\'' => string(rest),
            _ => {
                let begins = !text[..at].ends_with(is_of_name);
                let (fault, length) = outside(rest, begins, form);
                faults.extend(fault.map(|fault| OnlineUse { at, ..fault }));
                length.max(letter.len_utf8())
            }
        };
    }
    faults
}

/// How long the string at the beginning of a text is, with its quotes.
fn string(text: &str) -> usize {
    let quote = text.chars().next();
    let mut escaped = false;
    for (at, letter) in text.char_indices().skip(1) {
        match letter {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '\n' => return at,
            _ if Some(letter) == quote => return at + 1,
            _ => {}
        }
    }
    text.len()
}

/// What is wrong where a text outside strings begins, and how much of it that takes.
fn outside(text: &str, begins: bool, form: Form) -> (Option<OnlineUse>, usize) {
    let says = |word: &str| text.get(..word.len()).is_some_and(|start| start.eq_ignore_ascii_case(word));
    if text.starts_with('\\') {
        return (Some(OnlineUse::new("an escape outside quotes, which could hide an address", "\\")), 1);
    }
    if says("@import") {
        return (Some(OnlineUse::new("an @import takes in another style sheet", &text[..7])), 7);
    }
    if begins && says("url(") {
        return address(text, form);
    }
    let taking = TAKING.iter().find(|taking| says(taking)).filter(|_| begins || text.starts_with("image"));
    taking.map_or((None, 0), |taking| {
        let said = format!("`{taking})` names pictures: write `url()`, of one file");
        (Some(OnlineUse::new(said, &text[..taking.len()])), taking.len())
    })
}

/// The address in a `url()`.
fn address(text: &str, form: Form) -> (Option<OnlineUse>, usize) {
    let inside = text[4..].trim_start();
    let before = text.len() - inside.len();
    let (address, length) = if inside.starts_with(['"', '\'']) {
        let length = string(inside);
        (inside[..length].trim_matches(['"', '\'']), before + length)
    } else {
        let length = inside.find(')').unwrap_or(inside.len());
        (inside[..length].trim_end(), before + length)
    };
    let fault = || OnlineUse::new(format!("`url({address})` leads out of the booklet"), &text[..length]);
    let is_refused = address.contains('\\') || !stays(address, form, Use::Picture);
    (is_refused.then(fault), length)
}

fn is_of_name(letter: char) -> bool {
    letter.is_alphanumeric() || matches!(letter, '-' | '_')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(text: &str) -> Vec<String> {
        sheet(text, Form::Folder).into_iter().map(|fault| fault.said).collect()
    }

    /// By the tokens of CSS Syntax 3 (from memory).
    #[test]
    fn what_takes_something_in_is_found_and_what_only_looks_like_it_is_not() {
        for bad in [
            "@import 'x.css';",
            "@IMPORT url(x.css);",
            "a { background: url(https://example.org/a.png) }",
            "a { background: URL( \"//example.org/a.png\" ) }",
            "a { background: url('https:\\\n//example.org') }",
            "a { background: u\\72l(//example.org) }",
            "@\\69mport 'x.css';",
            "a { background: image-set('//example.org/a.png' 1x) }",
            "a { background: -webkit-image-set(url(a.png) 1x) }",
            "a { content: \"/*\"; background: url(//example.org) } /* */",
            "a { background: url(/*) } b { background: url(//example.org) } /* */",
            "a { content: \"\n; background: url(//example.org) }",
            "@font-face { src: src('//example.org/a.woff2') }",
            "a { fill: url(../../x) }",
        ] {
            assert!(!said(bad).is_empty(), "{bad}");
        }
        for good in [
            "a { background: url(x.png); fill: url(#a); mask: url('../cards/a.svg') }",
            "a { background: url(data:image/png;base64,AA==) }",
            "a::after { content: \"@import url(//example.org) \\2713\" }",
            "/* @import url(//example.org) */ a { color: #123456 }",
            "a { --curl: curl(1); object-fit: cover }",
        ] {
            assert_eq!(said(good), Vec::<String>::new(), "{good}");
        }
        assert_eq!(sheet("a {}\n@import 'b';", Form::Folder)[0].at, 5);
    }
}
