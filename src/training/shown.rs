//! What a finished page for training must show, whatever a layout leaves out.

use super::page::Page;
use html5gum::{Token, Tokenizer};

/// What a page does not show and must, by what it is called; each once.
#[must_use]
pub fn lacking(page: &Page, html: &str) -> Vec<&'static str> {
    let mut shown = String::new();
    let mut tokens = Tokenizer::new(html);
    while let Some(Ok(token)) = tokens.next() {
        if let Token::String(piece) = token {
            shown.push_str(&String::from_utf8_lossy(&piece));
        }
    }
    let shown = plain(&shown);
    let is_lacking = |(_, text): &&(&str, String)| !shown.contains(&plain(text));
    let mut lacking: Vec<&'static str> =
        page.shows.iter().filter(is_lacking).map(|(what, _)| *what).collect();
    lacking.dedup();
    lacking
}

/// A text without what lines are broken at.
fn plain(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_whitespace()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_that_leaves_the_caution_out_is_found() {
        let shows =
            vec![("the caution", "Demo & not for use.".to_owned()), ("the edition", "2026-2".to_owned())];
        let page = Page {
            name: String::new(),
            layout: "training/quiz.html",
            values: serde_json::Value::Null,
            shows,
        };
        assert_eq!(lacking(&page, "<p>Demo &amp; not\nfor use.</p><p title=\"2026-2\">"), ["the edition"]);
        assert_eq!(lacking(&page, "<p>edition 2026-2</p>"), ["the caution"]);
        assert!(lacking(&page, "<p>Demo &amp; not for <b>use</b>. 2026-2</p>").is_empty());
    }
}
