//! What a finished page is held to, and where in the layouts that which is wrong with it was written.

use super::input::Booklet;
use super::offline::{self, Expected, OnlineUse};
use super::pages::{Page, Subject};
use crate::diagnostics::{FilePath, Finding, Findings, Place};
use crate::facts::words;
use crate::layouts::place_in;
use crate::notes::address::Form;

/// The scripts and style sheets that pages name, beside those of the layouts.
const INDEX: &str = "index.js";

impl Booklet<'_> {
    /// What is wrong with a finished file of the booklet: what it takes in from elsewhere, and what it does not show.
    #[must_use]
    pub fn check(&self, subject: &Subject, page: &Page) -> Findings {
        let faults = match subject {
            Subject::File(name) if name.ends_with(".css") => offline::sheet(&page.text, self.form()),
            Subject::Index | Subject::File(_) => Vec::new(),
            _ => self.faults(page),
        };
        self.findings(&page.layout, &page.text, faults)
    }

    fn faults(&self, page: &Page) -> Vec<OnlineUse> {
        let files: Vec<&str> =
            self.input.layouts.texts().filter_map(|path| path.rsplit('/').next()).collect();
        let ending =
            |ending: &str| files.iter().copied().filter(|name| name.ends_with(ending)).collect::<Vec<_>>();
        let (mut scripts, styles) = (ending(".js"), ending(".css"));
        scripts.push(INDEX);
        let texts: Vec<(&str, &str)> = page.shows.iter().map(|(what, text)| (*what, text.as_str())).collect();
        let expected = Expected {
            form: Form::Folder,
            policy: offline::POLICY,
            scripts: &scripts,
            styles: &styles,
            texts: &texts,
        };
        offline::page(&page.text, &expected)
    }

    /// What is wrong with the finished single file, which holds these scripts and this style sheet.
    pub(super) fn check_single(&self, text: &str, nonce: &str, scripts: &[&str], style: &str) -> Findings {
        let texts = self.everywhere();
        let texts: Vec<(&str, &str)> = texts.iter().map(|(what, text)| (*what, text.as_str())).collect();
        let policy = offline::policy_of_single_file(nonce);
        let expected =
            Expected { form: Form::SingleFile, policy: &policy, scripts, styles: &[style], texts: &texts };
        let mut faults = offline::page(text, &expected);
        faults.extend(offline::sheet(style, Form::SingleFile));
        self.findings("booklet/single.html", style, faults)
    }

    /// What a page must show whatever its layout is filled with, each with what it is called.
    pub(super) fn must_show(&self, subject: &Subject) -> Vec<(&'static str, String)> {
        let mut texts = self.everywhere();
        texts.extend(own_texts(subject));
        texts
    }

    /// What every page shows.
    fn everywhere(&self) -> Vec<(&'static str, String)> {
        let settings = &self.input.catalogue.settings;
        vec![
            ("the caution", settings.caution.clone()),
            ("the edition", settings.edition.clone()),
            ("its state", self.input.state.to_owned()),
        ]
    }

    fn findings(&self, layout: &str, sheet: &str, faults: Vec<OnlineUse>) -> Findings {
        let mut findings = Findings::new();
        findings.extend(faults.into_iter().map(|fault| {
            let place = self.written(layout, sheet, &fault);
            if fault.is_lack {
                Finding::error("page-incomplete", place, fault.said).help(SHOW)
            } else {
                Finding::error("page-not-offline", place, fault.said).help(OFFLINE)
            }
        }));
        findings
    }

    /// Where in the layouts a fault was written: in the page's own layout, else in the first of the user's that has it.
    fn written(&self, layout: &str, sheet: &str, fault: &OnlineUse) -> Place {
        if layout.ends_with(".css") {
            return place_in(layout, sheet, fault.at);
        }
        let mut own: Vec<(&str, &str)> = self.input.layouts.own().collect();
        own.sort_by_key(|(name, _)| *name != layout);
        let found = own.iter().find_map(|(name, text)| Some((*name, *text, position(text, &fault.written)?)));
        if let Some((name, text, at)) = found {
            return place_in(name, text, at);
        }
        let frames =
            ["pieces", "base", "footer", "header", "single"].map(|name| format!("booklet/{name}.html"));
        let whole = frames.iter().map(String::as_str).find(|name| own.iter().any(|(known, _)| known == name));
        let is_own = own.iter().any(|(known, _)| *known == layout);
        Place::whole(FilePath::layouts(whole.filter(|_| !is_own).unwrap_or(layout)))
    }
}

const OFFLINE: &str = "the booklet must work without a network: name only its own files, keep scripts and styles in \
                       files of the layouts folder, and put the policy first in the head, as the built-in base.html does";
const SHOW: &str = "a page must show it: add what the built-in layout of the page has for it, and read the names in its `if` \
                    letter by letter";

/// What the page of a record shows of it.
fn own_texts(subject: &Subject) -> Vec<(&'static str, String)> {
    match subject {
        Subject::Fitting(fitting) => {
            let status = words::status(fitting.status, fitting.use_instead.as_deref());
            let stamps =
                fitting.gripping().map(|item| ("the gripping part's stamp", item.part.stamp.clone()));
            let own = [("the number", fitting.number.clone()), ("the status", status)];
            own.into_iter().chain(stamps.take(1)).collect()
        }
        Subject::Part(part) => vec![
            ("the number", part.number.clone()),
            ("the stamp", part.stamp.clone()),
            ("the status", words::status(part.status, None)),
        ],
        Subject::Body(part) | Subject::Teaching(part) => {
            vec![("the number", part.number.clone()), ("the status", words::status(part.status, None))]
        }
        Subject::Conductor(conductor) => vec![("the name", conductor.name.clone())],
        Subject::Notice(notice) => vec![("the number", notice.number.clone())],
        _ => Vec::new(),
    }
}

/// Where a text stands in another, whatever the case of its letters.
fn position(text: &str, written: &str) -> Option<usize> {
    if written.is_empty() {
        return None;
    }
    text.to_ascii_lowercase().find(&written.to_ascii_lowercase())
}
