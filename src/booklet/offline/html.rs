//! A finished page read as browsers read it, by a tokenizer of the HTML standard.

use super::address::{Use, stays};
use super::elements::{holds_address, is_of_html, is_of_svg, is_refused};
use super::state::Where;
use super::{OnlineUse, style};
use crate::notes::address::Form;
use html5gum::{HtmlString, Token, Tokenizer};

type StartTag = html5gum::StartTag<()>;

/// What a page is held to.
#[derive(Debug)]
pub(in crate::booklet) struct Expected<'a> {
    /// How it is handed on.
    pub form: Form,
    /// Its policy.
    pub policy: &'a str,
    /// Scripts: names of files, or of a single file the texts that stand in it.
    pub scripts: &'a [&'a str],
    /// Style sheets in the same way.
    pub styles: &'a [&'a str],
    /// Texts that it must show, with what they are called.
    pub texts: &'a [(&'a str, &'a str)],
}

/// Everything that a page takes in, follows or runs that it must not, and what it lacks.
pub(in crate::booklet) fn page(text: &str, expected: &Expected<'_>) -> Vec<OnlineUse> {
    let mut reading = Reading {
        expected,
        faults: Vec::new(),
        place: Where::default(),
        has_policy: false,
        shown: String::new(),
        inline: None,
    };
    let mut tokens = Tokenizer::new(text);
    while let Some(Ok(token)) = tokens.next() {
        if let Some(state) = reading.take(token) {
            tokens.set_state(state);
        }
    }
    reading.finish()
}

struct Reading<'a> {
    expected: &'a Expected<'a>,
    faults: Vec<OnlineUse>,
    place: Where,
    has_policy: bool,
    shown: String,
    /// The script or style that stands in the page, while it is read.
    inline: Option<(&'static str, String)>,
}

impl Reading<'_> {
    fn find(&mut self, said: impl Into<String>, written: impl Into<String>) {
        self.faults.push(OnlineUse::new(said, written));
    }

    /// Takes a token; answers with how what follows is read, where not as elements.
    fn take(&mut self, token: Token) -> Option<html5gum::State> {
        match token {
            Token::StartTag(tag) => return self.open(&tag),
            Token::EndTag(tag) => self.close(&text(&tag.name)),
            Token::String(piece) => self.text(&text(&piece)),
            Token::Comment(comment) if comment.starts_with(b"[CDATA[") => {
                self.find("a page may not have a CDATA section", "<![CDATA[");
            }
            _ => {}
        }
        None
    }

    fn open(&mut self, tag: &StartTag) -> Option<html5gum::State> {
        let name = text(&tag.name);
        let in_drawing = self.place.drawings > 0;
        let is_known = if in_drawing { is_of_svg(&name) } else { is_of_html(&name) };
        if !is_known || self.place.in_drawing_title {
            let within = if in_drawing { ", not in a drawing" } else { "" };
            self.find(format!("a page may not have <{name}>{within}"), format!("<{name}"));
        }
        self.has_policy |= self.is_policy(&name, tag);
        if !self.has_policy && !matches!(&*name, "html" | "head" | "meta" | "title") {
            self.late(&format!("<{name}"));
        }
        for (attribute, value) in &tag.attributes {
            self.attribute(&name, &text(attribute), &text(value), in_drawing || name == "svg");
        }
        match &*name {
            "script" if !in_drawing => self.script(tag),
            "style" if !in_drawing => self.inline = Some(("style", String::new())),
            "link" => self.link(tag),
            "meta" => self.meta(tag),
            _ => {}
        }
        let is_hidden = value(tag, "hidden").is_some() && !tag.self_closing && !is_void(&name);
        let state = self.place.open(&name, is_hidden);
        if tag.self_closing && in_drawing {
            self.place.close(&name);
        }
        state
    }

    fn close(&mut self, name: &str) {
        if let Some((kind, text)) = self.inline.take() {
            let known = if kind == "style" { self.expected.styles } else { self.expected.scripts };
            let is_known = known.iter().any(|known| known.trim() == text.trim());
            if self.expected.form == Form::Folder || !is_known {
                self.find(
                    format!("a {kind} stands in a page: it belongs in a file of the layouts folder"),
                    format!("<{kind}"),
                );
            }
        }
        if name == "head" && !self.has_policy {
            self.late("</head");
        }
        self.place.close(name);
    }

    fn text(&mut self, piece: &str) {
        if !self.has_policy && !self.place.in_title && !piece.trim().is_empty() {
            self.late(piece.trim());
        }
        if let Some((_, text)) = &mut self.inline {
            text.push_str(piece);
        } else if self.place.is_shown() {
            self.shown.push_str(piece);
        }
    }

    /// What stands before the policy is loaded without it, and text before it ends the head.
    fn late(&mut self, written: &str) {
        self.has_policy = true;
        self.find("a page lacks the policy that forbids the network, or has it too late", written);
    }

    fn is_policy(&self, name: &str, tag: &StartTag) -> bool {
        let is_policy = name == "meta"
            && value(tag, "http-equiv")
                .is_some_and(|kind| kind.eq_ignore_ascii_case("content-security-policy"))
            && value(tag, "content").as_deref() == Some(self.expected.policy);
        is_policy && self.shown.trim().is_empty()
    }

    fn attribute(&mut self, element: &str, name: &str, value: &str, in_drawing: bool) {
        let said = || format!("`{name}` of <{element}> is “{}”", value.chars().take(60).collect::<String>());
        let form = self.expected.form;
        let is_style_sheet = element == "link" && self.expected.styles.contains(&value);
        let is_script = element == "script" && self.expected.scripts.contains(&value);
        if is_refused(name) {
            self.find(said(), name);
        } else if holds_address(name) && !is_style_sheet && !is_script {
            let purpose = if matches!(element, "img" | "image") { Use::Picture } else { Use::Link };
            if !stays(value, form, purpose) {
                self.find(said() + ", which leads out of the booklet", value);
            }
        } else if in_drawing
            && value.contains(['(', '\\'])
            && !is_told(name)
            && !style::sheet(value, form).is_empty()
        {
            self.find(said() + ", which leads out of the booklet", value);
        }
    }

    /// A script is a file of the booklet, data for one, or, in a single file, one of the booklet's own.
    fn script(&mut self, tag: &StartTag) {
        let kind = value(tag, "type").unwrap_or_default();
        if value(tag, "src").is_some() {
            if !kind.is_empty() {
                self.find(format!("a script is of the type “{kind}”: pages have classic scripts"), kind);
            }
            return;
        }
        if kind != "application/json" {
            self.inline = Some(("script", String::new()));
        }
    }

    fn link(&mut self, tag: &StartTag) {
        let relation = value(tag, "rel").unwrap_or_default();
        if relation != "stylesheet" {
            self.find(
                format!("a <link> is a “{relation}”: pages may link to style sheets only"),
                format!("\"{relation}\""),
            );
        }
    }

    fn meta(&mut self, tag: &StartTag) {
        let kind = value(tag, "http-equiv");
        let is_policy =
            kind.as_deref().is_some_and(|kind| kind.eq_ignore_ascii_case("content-security-policy"));
        if let Some(kind) = kind.filter(|_| !is_policy) {
            self.find(format!("a page may not have <meta http-equiv=\"{kind}\">"), "http-equiv");
        }
        let charset = value(tag, "charset").unwrap_or_else(|| "utf-8".to_owned());
        if !charset.eq_ignore_ascii_case("utf-8") {
            self.find(format!("a page says that it is in {charset}; it is in UTF-8"), charset);
        }
    }

    fn finish(mut self) -> Vec<OnlineUse> {
        if !self.has_policy {
            self.late("");
        }
        let shown = plain(&self.shown);
        for (what, text) in self.expected.texts {
            let said = format!("a page does not show {what}");
            let is_told = self.faults.iter().any(|fault| fault.is_lack && fault.said == said);
            if !is_told && !shown.contains(&plain(text)) {
                self.faults.push(OnlineUse { is_lack: true, ..OnlineUse::new(said, "") });
            }
        }
        self.faults
    }
}

/// Whether an element has no end.
fn is_void(name: &str) -> bool {
    matches!(name, "br" | "col" | "hr" | "img" | "input" | "link" | "meta" | "wbr")
}

/// Attributes that say something to people or scripts, and are no style.
fn is_told(name: &str) -> bool {
    matches!(name, "id" | "class" | "title") || name.starts_with("aria-") || name.starts_with("data-")
}

/// A text without what pages put into texts: spaces that differ, and signs that keep codes in order.
fn plain(text: &str) -> String {
    let is_kept = |letter: &char| !letter.is_whitespace() && !('\u{2066}'..='\u{2069}').contains(letter);
    text.chars().filter(is_kept).collect()
}

fn value(tag: &StartTag, name: &str) -> Option<String> {
    tag.attributes.iter().find(|(known, _)| known.as_slice() == name.as_bytes()).map(|(_, value)| text(value))
}

fn text(bytes: &HtmlString) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}
