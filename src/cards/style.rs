//! How cards look: sizes of type, gaps, frames and colours, read from `cards/style.yaml`.

use super::shape::{A5, Shape};
use super::tightness::Tightness;
use super::type_class::TypeClass;
use crate::catalogue::CardSize;
use crate::colour::Srgb;
use crate::diagnostics::{FilePath, Finding, Findings, Place};
use crate::units::Length;
use serde::Deserialize;
use std::collections::BTreeMap;

/// The file that holds it, below the layouts folder.
pub(super) const STYLE: &str = "cards/style.yaml";

/// Sizes that a class of type has, in points.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
struct TypeSize {
    /// Where there is room.
    size: f64,
    /// The least that it shrinks to.
    least: f64,
}

/// A painted box that items stand in. Lengths are millimetres.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Frame {
    /// The colour of its ground, as `#rrggbb`; without one the paper shows.
    #[serde(default)]
    fill: Option<Colour>,
    /// The colour of texts in it that say none of their own.
    #[serde(default)]
    ink: Option<Colour>,
    /// The colour of its outline.
    #[serde(default)]
    stroke: Option<Colour>,
    /// Width of the outline.
    #[serde(default)]
    pub line: f64,
    /// Radius of its corners.
    #[serde(default)]
    pub radius: f64,
    /// Between its edge and what stands in it: top, right, bottom, left.
    #[serde(default)]
    pub pad: [f64; 4],
}

/// The notches that mark a swatch: cut into its free edge. Lengths are millimetres.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Notch {
    /// Half its width.
    pub half: f64,
    /// How deep it is cut.
    pub depth: f64,
    /// From one to the next, and to the side.
    pub apart: f64,
}

/// From one base line to the next, in type sizes.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
struct Leading {
    roomy: f64,
    tight: f64,
}

/// What the file says; one for a size of card says what is different there.
#[derive(Debug, Clone, PartialEq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    #[serde(default)]
    types: BTreeMap<TypeClass, TypeSize>,
    leading: Option<Leading>,
    air_mm: Option<f64>,
    #[serde(default)]
    frames: BTreeMap<String, Frame>,
    #[serde(default)]
    notches: BTreeMap<String, Notch>,
    /// By size ("A6"), by size and orientation ("A6-landscape"), or by name ("tag", "slip").
    #[serde(default)]
    sizes: BTreeMap<String, Written>,
}

/// How faces of one format look.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct CardStyle {
    /// By the number of their class: they are asked for again and again.
    types: [Option<TypeSize>; TypeClass::Foot as usize + 1],
    leading: Leading,
    /// Most that a gap widens where there is room to spare, in millimetres.
    pub air: f64,
    frames: BTreeMap<String, Frame>,
    notches: BTreeMap<String, Notch>,
    smallest: Length,
}

/// A colour as the style and layouts write it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(try_from = "String")]
pub(super) struct Colour(pub Srgb);

impl TryFrom<String> for Colour {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        Srgb::from_hex(&text).map(Self).ok_or_else(|| format!("“{text}” is not a colour such as #1a2b3c"))
    }
}

/// The built-in style with what the user's own file says differently.
#[derive(Debug, Clone, Default)]
pub(super) struct Styles(Vec<Written>);

impl Styles {
    /// Reads the built-in style and the user's, which may be the same text.
    pub fn read(built_in: &str, user: &str) -> (Self, Findings) {
        let (mut styles, mut findings) = (Vec::new(), Findings::new());
        let texts = if built_in == user { vec![user] } else { vec![built_in, user] };
        for text in texts {
            match serde_yaml::from_str::<Option<Written>>(text) {
                Ok(written) => styles.extend(written),
                Err(error) => findings.push(unsound(&error)),
            }
        }
        let styles = Self(styles);
        if !findings.has_errors() {
            findings.extend(styles.too_small(user));
            let written =
                styles.0.iter().flat_map(|written| std::iter::once(written).chain(written.sizes.values()));
            findings.extend(written.flat_map(Written::beyond).map(|beyond| beyond.finding(user)));
            let sizes = styles.0.iter().flat_map(|written| written.sizes.keys());
            findings.extend(sizes.filter(|size| !is_a_size(size)).map(|size| no_size(size, user)));
        }
        (styles, findings)
    }

    /// The style of a shape; `special` is what its faces are called beside their size, such as "tag".
    pub fn of(&self, shape: Shape, special: Option<&str>, smallest: Length) -> CardStyle {
        let mut style = CardStyle::bare(smallest);
        let size = shape.size;
        let keys = [size.to_owned(), format!("{size}-{}", shape.orientation.word())];
        let keys: Vec<String> = keys.into_iter().chain(special.map(str::to_owned)).collect();
        for written in &self.0 {
            style.take(written);
            keys.iter().filter_map(|key| written.sizes.get(key)).for_each(|written| style.take(written));
        }
        style
    }

    fn too_small(&self, text: &str) -> Vec<Finding> {
        let all = self.0.iter().flat_map(|written| std::iter::once(written).chain(written.sizes.values()));
        let types = all.flat_map(|written| &written.types);
        let low = types.filter(|(class, size)| size.size.min(size.least) < class.least_legible());
        low.map(|(class, size)| too_small(*class, *size, text)).collect()
    }
}

fn unsound(error: &serde_yaml::Error) -> Finding {
    let file = FilePath::layouts(STYLE);
    let place = error.location().map_or_else(
        || Place::whole(file.clone()),
        |at| Place::at(file.clone(), counted(at.line()), counted(at.column())),
    );
    let said = error.to_string();
    let said = said.split(" at line ").next().unwrap_or_default().to_owned();
    Finding::error("layout-style", place, format!("the style of cards can't be read: {said}"))
        .help("DEVELOPERS.md lists what a style may say; the built-in one is layouts/cards/style.yaml")
}

/// What faces beside cards are called in the style.
const KINDS: [&str; 4] = ["tag", "slip", "label", "gauge"];

/// The sizes of cards and of what is made beside them.
fn sizes() -> impl Iterator<Item = &'static str> {
    CardSize::ALL.iter().map(|size| size.word()).chain([A5.size])
}

fn is_a_size(name: &str) -> bool {
    let bare = name.strip_suffix("-portrait").or_else(|| name.strip_suffix("-landscape"));
    KINDS.contains(&name) || sizes().any(|size| size == bare.unwrap_or(name))
}

fn no_size(name: &str, text: &str) -> Finding {
    Finding::error("layout-style", at_key(name, text), format!("no face is of the size “{name}”"))
        .expected(format!(
            "{}, with -portrait or -landscape or without, or {}",
            sizes().collect::<Vec<_>>().join(", "),
            KINDS.join(", ")
        ))
        .help("write it as catalogue.yaml has it; what stands under another name changes nothing")
}

/// The first line that has a key; the whole file where none has it by itself.
fn at_key(key: &str, text: &str) -> Place {
    let says = |line: &str| {
        let line = line.trim_start().trim_start_matches(['"', '{', ' ']);
        line.strip_prefix(key).is_some_and(|rest| rest.trim_start_matches(['"', ' ']).starts_with(':'))
    };
    let line = text.lines().position(says).map_or(0, |index| counted(index + 1));
    Place { file: FilePath::layouts(STYLE), line, column: u32::from(line > 0) }
}

/// A figure that no face can be drawn with, or that hides what it should show.
struct Beyond {
    key: String,
    what: &'static str,
    found: f64,
    bounds: (f64, f64),
}

impl Beyond {
    fn finding(self, text: &str) -> Finding {
        let Self { key, what, found, bounds: (least, most) } = self;
        Finding::error("layout-style", at_key(&key, text), format!("the {what} of {key} is out of bounds"))
            .found(found.to_string())
            .expected(format!("from {least} to {most}"))
            .help("sizes are in points, lengths in millimetres; read the figure and its point again")
    }
}

impl Written {
    /// Every figure of its own that is out of bounds. Sizes that it states for sizes of card are their own.
    fn beyond(&self) -> Vec<Beyond> {
        let mut beyond = Vec::new();
        let mut look = |key: &str, what, found: f64, least, most| {
            if !(least..=most).contains(&found) {
                beyond.push(Beyond { key: key.to_owned(), what, found, bounds: (least, most) });
            }
        };
        for (class, size) in &self.types {
            look(class.word(), "size", size.size, 1.0, 100.0);
            look(class.word(), "least size", size.least, 1.0, size.size);
        }
        if let Some(leading) = &self.leading {
            look("leading", "roomy", leading.roomy, leading.tight, 2.0);
            look("leading", "tight", leading.tight, 0.9, 2.0);
        }
        look("air_mm", "length", self.air_mm.unwrap_or_default(), 0.0, 20.0);
        for (name, frame) in &self.frames {
            // Thinner than 0.1 mm no printer draws; thicker than 2 mm covers what stands inside.
            look(name, "line", if frame.line == 0.0 { 0.1 } else { frame.line }, 0.1, 2.0);
            look(name, "radius", frame.radius, 0.0, 20.0);
            frame.pad.iter().for_each(|pad| look(name, "pad", *pad, -3.0, 20.0));
        }
        for (name, notch) in &self.notches {
            // A notch is counted with wet gloves on.
            look(name, "half", notch.half, 0.3, 5.0);
            look(name, "depth", notch.depth, 0.5, 8.0);
            look(name, "apart", notch.apart, 0.2, 8.0);
        }
        beyond
    }
}

/// At the line that says it, which is the first in the file that has the class with this size.
fn too_small(class: TypeClass, size: TypeSize, text: &str) -> Finding {
    let says = |line: &str| {
        let line = line.trim_start();
        let figure = size.size.min(size.least).to_string();
        line.strip_prefix(class.word()).is_some_and(|rest| rest.starts_with(':') && rest.contains(&figure))
    };
    let line = text.lines().position(says).map_or(0, |index| counted(index + 1));
    let place = Place { file: FilePath::layouts(STYLE), line, column: u32::from(line > 0) };
    Finding::error("layout-style", place, format!("the class {} would be set too small", class.word()))
        .found(format!("{} pt", size.size.min(size.least)))
        .expected(format!("at least {} pt", class.least_legible()))
        .help("cards are read at arm's length in bad light; give it the size that it needs")
}

fn counted(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

impl CardStyle {
    fn bare(smallest: Length) -> Self {
        Self {
            types: [None; TypeClass::Foot as usize + 1],
            leading: Leading { roomy: 1.2, tight: 1.0 },
            air: 0.0,
            frames: BTreeMap::new(),
            notches: BTreeMap::new(),
            smallest,
        }
    }

    fn take(&mut self, written: &Written) {
        for (class, size) in &written.types {
            self.types[*class as usize] = Some(*size);
        }
        self.leading = written.leading.unwrap_or(self.leading);
        self.air = written.air_mm.unwrap_or(self.air);
        self.frames.extend(written.frames.iter().map(|(name, frame)| (name.clone(), frame.clone())));
        self.notches.extend(written.notches.iter().map(|(name, notch)| (name.clone(), *notch)));
    }

    /// The size of a class's type, up to the next hundredth of a millimetre, which is as fine as drawings write
    /// numbers.
    pub fn size(&self, class: TypeClass, tightness: Tightness) -> Length {
        let least = self.smallest.pt().max(class.least_legible());
        let TypeSize { size, least } = self.types[class as usize].unwrap_or(TypeSize { size: least, least });
        let least = least.max(self.smallest.pt());
        let roomy = size.max(least);
        let size = Length::from_pt(roomy + (least - roomy) * tightness.type_scale);
        Length::from_mm((size.mm() * 100.0 - 1e-6).ceil() / 100.0)
    }

    /// The least that a text of a class shrinks to where it must stand in one line and that is too short for it.
    pub fn least_in_one_line(&self, class: TypeClass) -> Length {
        Length::from_pt(self.smallest.pt().max(class.least_in_one_line()))
    }

    /// From one base line to the next, in type sizes; steps are never closed up as far as others.
    pub fn leading(&self, class: TypeClass, tightness: Tightness) -> f64 {
        let leading = self.leading.roomy + (self.leading.tight - self.leading.roomy) * tightness.spacing;
        leading.max(class.least_leading())
    }

    /// The frame of this name.
    pub fn frame(&self, name: &str) -> Option<&Frame> {
        self.frames.get(name)
    }

    /// The notches of this name.
    pub fn notch(&self, name: &str) -> Option<Notch> {
        self.notches.get(name).copied()
    }

    /// The names of all frames, or of all notches, for a finding that suggests one.
    pub fn names(&self) -> (impl Iterator<Item = &str>, impl Iterator<Item = &str>) {
        (self.frames.keys().map(String::as_str), self.notches.keys().map(String::as_str))
    }
}

impl Frame {
    /// The colour of its ground.
    pub fn ground(&self) -> Option<Srgb> {
        self.fill.map(|colour| colour.0)
    }

    /// The colour of texts in it.
    pub fn ink(&self) -> Option<Srgb> {
        self.ink.map(|colour| colour.0)
    }

    /// The colour of its outline, where it has one.
    pub fn outline(&self) -> Option<Srgb> {
        self.stroke.map(|colour| colour.0).filter(|_| self.line > 0.0)
    }
}
