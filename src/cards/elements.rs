//! The attributes of an element of a layout, read with a finding for each that is not sound.

use super::description::{Edges, Measure, Track};
use crate::colour::Srgb;
use crate::diagnostics::{Finding, Findings, Place, nearest};
use crate::layouts::{MARK, marked_place};
use std::fmt::Display;
use usvg::roxmltree::Node as Element;

/// What can be done about an attribute or element that is not known.
const LISTED: &str = "DEVELOPERS.md lists the elements of a layout with their attributes";

/// An element whose attributes are being read.
pub(super) struct Reading<'a, 'b> {
    pub element: Element<'a, 'a>,
    pub at: Place,
    asked: Vec<&'static str>,
    findings: &'b mut Findings,
}

impl<'a, 'b> Reading<'a, 'b> {
    pub fn of(element: Element<'a, 'a>, parent: &Place, findings: &'b mut Findings) -> Self {
        let at = element.attribute(MARK).and_then(marked_place).unwrap_or_else(|| parent.clone());
        Self { element, at, asked: vec![MARK], findings }
    }

    /// The value of an attribute; empty where there is none.
    pub fn text(&mut self, name: &'static str) -> &'a str {
        self.asked.push(name);
        self.element.attribute(name).unwrap_or_default().trim()
    }

    pub fn number(&mut self, name: &'static str) -> Option<f64> {
        self.parsed(name, "a number of millimetres", |text| {
            text.parse::<f64>().ok().filter(|n| n.is_finite())
        })
    }

    pub fn count(&mut self, name: &'static str) -> Option<u32> {
        self.parsed(name, "a whole number", |text| text.parse().ok())
    }

    pub fn measure(&mut self, name: &'static str) -> Option<Measure> {
        self.parsed(name, "millimetres, or a percentage", |text| match text.strip_suffix('%') {
            Some(percent) => percent.parse().ok().map(Measure::Percent),
            None => text.parse().ok().map(Measure::Mm),
        })
    }

    pub fn colour(&mut self, name: &'static str) -> Option<Srgb> {
        self.parsed(name, "a colour such as #1a2b3c", Srgb::from_hex)
    }

    /// Whether an attribute says "yes".
    pub fn yes(&mut self, name: &'static str) -> bool {
        self.parsed(name, "yes or no", |text| match text {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        })
        .unwrap_or_default()
    }

    /// Two numbers.
    pub fn pair(&mut self, name: &'static str) -> Option<(f64, f64)> {
        self.parsed(name, "two numbers, the smaller first", |text| {
            let mut numbers = text.split_whitespace().map(str::parse);
            match (numbers.next(), numbers.next(), numbers.next()) {
                (Some(Ok(least)), Some(Ok(most)), None) if least <= most => Some((least, most)),
                _ => None,
            }
        })
    }

    pub fn tracks(&mut self, name: &'static str) -> Vec<Track> {
        self.parsed(name, "widths such as “4 auto 1fr”", |text| {
            text.split_whitespace().map(track).collect()
        })
        .unwrap_or_default()
    }

    pub fn edges(&mut self, name: &'static str) -> Edges {
        self.parsed(name, "some of top, right, bottom, left", |text| {
            let mut edges = Edges::default();
            for word in text.split_whitespace() {
                match word {
                    "top" => edges.top = true,
                    "right" => edges.right = true,
                    "bottom" => edges.bottom = true,
                    "left" => edges.left = true,
                    _ => return None,
                }
            }
            Some(edges)
        })
        .unwrap_or_default()
    }

    /// One of these words; the first where the attribute is missing.
    pub fn one_of<T: Copy>(&mut self, name: &'static str, words: &[(&str, T)]) -> T {
        let first = words[0].1;
        let text = self.text(name);
        if text.is_empty() {
            return first;
        }
        if let Some((_, value)) = words.iter().find(|(word, _)| *word == text) {
            return *value;
        }
        let known: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        self.unknown(name, text, &known);
        first
    }

    /// An attribute whose value is none of these.
    pub fn unknown(&mut self, name: &str, text: &str, known: &[&str]) {
        let help = nearest(text, known.iter().copied())
            .map_or_else(|| LISTED.to_owned(), |word| format!("did you mean `{word}`?"));
        let said = format!("`{name}` of <{}> is “{text}”", self.name());
        self.find(said, |finding| finding.found(text).expected(known.join(", ")).help(help));
    }

    fn parsed<T>(
        &mut self,
        name: &'static str,
        expected: &str,
        read: impl FnOnce(&str) -> Option<T>,
    ) -> Option<T> {
        let text = self.text(name);
        if text.is_empty() {
            return None;
        }
        let value = read(text);
        if value.is_none() {
            let said = format!("`{name}` of <{}> is “{text}”", self.name());
            self.find(said, |finding| finding.found(text).expected(expected).help(LISTED));
        }
        value
    }

    /// A finding about this element.
    pub fn find(&mut self, said: impl Display, more: impl FnOnce(Finding) -> Finding) {
        self.findings.push(more(Finding::error("layout-element", self.at.clone(), said.to_string())));
    }

    pub fn name(&self) -> &'a str {
        self.element.tag_name().name()
    }

    /// Attributes that nothing asked for are mistyped.
    pub fn finish(mut self) -> &'b mut Findings {
        let unasked: Vec<&str> = self
            .element
            .attributes()
            .map(|attribute| attribute.name())
            .filter(|name| !self.asked.contains(name))
            .collect();
        for name in unasked {
            let known: Vec<&str> = self.asked.iter().copied().filter(|asked| *asked != MARK).collect();
            let help = nearest(name, known.iter().copied())
                .map_or_else(|| LISTED.to_owned(), |word| format!("did you mean `{word}`?"));
            let said = format!("<{}> has no attribute `{name}`", self.name());
            self.find(said, |finding| finding.found(name).expected(known.join(", ")).help(help));
        }
        self.findings
    }
}

fn track(text: &str) -> Option<Track> {
    match text.strip_suffix("fr") {
        Some(part) => part.parse().ok().map(Track::Part),
        None if text == "auto" => Some(Track::Auto),
        None => text.parse().ok().map(Track::Mm),
    }
}
