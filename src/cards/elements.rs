//! The attributes of an element of a layout, read with a finding for each that is not sound.

use super::description::{Edges, Measure, Track};
use crate::colour::Srgb;
use crate::diagnostics::{Finding, Findings, Place, nearest};
use crate::layouts::{MARK, marked_place};
use serde::Deserialize;
use serde::de::value::BorrowedStrDeserializer;
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
        self.parsed(name, "a number of millimetres, 0 or more", length)
    }

    pub fn count(&mut self, name: &'static str) -> Option<u32> {
        self.parsed(name, "a whole number up to 100", |text| text.parse().ok().filter(|count| *count <= MOST))
    }

    pub fn measure(&mut self, name: &'static str) -> Option<Measure> {
        self.parsed(name, "millimetres, 0 or more, or a percentage", |text| match text.strip_suffix('%') {
            Some(percent) => length(percent).map(Measure::Percent),
            None => length(text).map(Measure::Mm),
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
            let mut numbers = text.split_whitespace().map(length);
            match (numbers.next(), numbers.next(), numbers.next()) {
                (Some(Some(least)), Some(Some(most)), None) if least <= most => Some((least, most)),
                _ => None,
            }
        })
    }

    pub fn tracks(&mut self, name: &'static str) -> Vec<Track> {
        self.parsed(name, "widths such as “4 auto 1fr”", |text| {
            let tracks: Option<Vec<Track>> = text.split_whitespace().map(track).collect();
            tracks.filter(|tracks| tracks.len() <= MOST as usize)
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

    /// One of the words of a list; the list's own choice where the attribute is missing.
    pub fn word<T: Deserialize<'a> + Default>(&mut self, name: &'static str) -> T {
        let text = self.text(name);
        if text.is_empty() {
            return T::default();
        }
        T::deserialize(BorrowedStrDeserializer::new(text)).unwrap_or_else(|Unlisted(known)| {
            self.unknown(name, text, known);
            T::default()
        })
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

    /// Where what is found about the element goes.
    pub fn findings(&mut self) -> &mut Findings {
        self.findings
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

/// The most that is counted, such as columns and notches.
const MOST: u32 = 100;
/// The most of a length in millimetres, of a percentage, of parts of a width: more than any card has.
const LONGEST: f64 = 1000.0;

/// A word that is not on its list, with those that are.
#[derive(Debug)]
struct Unlisted(&'static [&'static str]);

impl std::fmt::Display for Unlisted {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(out, "none of {}", self.0.join(", "))
    }
}

impl std::error::Error for Unlisted {}

impl serde::de::Error for Unlisted {
    fn custom<T: Display>(_: T) -> Self {
        Self(&[])
    }

    fn unknown_variant(_: &str, known: &'static [&'static str]) -> Self {
        Self(known)
    }
}

fn length(text: &str) -> Option<f64> {
    // What is less than nothing draws one thing over another.
    text.parse().ok().filter(|length| (0.0..=LONGEST).contains(length))
}

fn track(text: &str) -> Option<Track> {
    match text.strip_suffix("fr") {
        Some(part) => length(part).map(Track::Part),
        None if text == "auto" => Some(Track::Auto),
        None => length(text).map(Track::Mm),
    }
}
