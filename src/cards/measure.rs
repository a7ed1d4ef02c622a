//! How much room what stands on a face takes: texts broken into lines, drawings, signs.

use super::description::{Content, Node, Text};
use super::setting::Setting;
use super::style::CardStyle;
use super::tightness::Tightness;
use super::type_class::TypeClass;
use crate::sketch::Drawing;
use crate::typeset::{Fonts, Line, Style};
use crate::units::Length;
use std::collections::{BTreeMap, HashMap};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use taffy::{AvailableSpace, Size};

/// Something that is measured and not made of others.
#[derive(Debug, Clone, Copy)]
pub(super) enum Leaf<'a> {
    Text(&'a Text),
    /// A text that shrinks in a row of a table, and the width that it has there: the library asks for base lines before it
    /// knows widths.
    Shrunk(&'a Text, f32),
    Sign,
    Rule(f64),
    /// A drawing whose size is known, by its name.
    Drawn(&'a str),
    /// The drawing whose height the program settles.
    Flexible,
    /// As large as the layout says.
    Fixed,
}

/// What a leaf takes.
pub(super) struct Measured {
    pub size: Size<f32>,
    /// From its top down to its first base line.
    pub base: Option<f32>,
}

/// A text broken into lines. Lengths are millimetres.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SetText {
    pub lines: Arc<[Line]>,
    pub size: Length,
    /// From one base line to the next, where nothing rises higher than plain letters.
    leading: f64,
    /// The least from one base line to the next, which a text below this one keeps too.
    least: f64,
}

/// Measures what stands on one face; a text that has been broken at a width is not broken again.
pub(super) struct Measurer<'a> {
    pub fonts: &'a Fonts,
    pub style: &'a CardStyle,
    /// Width and height inside the safe area.
    pub inside: (f64, f64),
    /// Whether the punched corner is on the left.
    pub corner_left: bool,
    /// Drawings whose size is known.
    pub drawn: &'a BTreeMap<String, Drawing>,
    broken: BrokenTexts,
}

/// Lines by their text's address in the description, their width and their size.
type LinesByText = HashMap<(usize, u64, u64), Arc<[Line]>>;

/// What has been broken on a face, for all who measure it.
pub(super) type BrokenTexts = Arc<Mutex<LinesByText>>;

/// Room beyond the longest line, so that single precision breaks no line.
const HAIR: f64 = 0.004;
/// Wider than any card.
const ENDLESS: f64 = 1.0e4;
/// Height of the tallest plain letters above the base line, in type sizes; the deepest lie below it by the rest of one.
const RISE: f64 = 0.76;
/// Least room between the ink of two lines, in type sizes.
const BETWEEN: f64 = 0.05;
/// Side of a sign, in type sizes of a check.
const SIGN: f64 = 0.8;

impl<'a> Leaf<'a> {
    pub fn of(node: &'a Node) -> Option<Self> {
        match &node.content {
            Content::Text(text) => Some(Self::Text(text)),
            Content::Sign(_) => Some(Self::Sign),
            Content::Rule { line, .. } => Some(Self::Rule(*line)),
            Content::Drawing(drawing) if drawing.heights.is_some() => Some(Self::Flexible),
            Content::Drawing(drawing) => Some(Self::Drawn(&drawing.of)),
            Content::Svg { .. } | Content::Space | Content::Strike => Some(Self::Fixed),
            _ => None,
        }
    }
}

impl<'a> Measurer<'a> {
    pub fn new(
        fonts: &'a Fonts,
        style: &'a CardStyle,
        inside: (f64, f64),
        corner_left: bool,
        drawn: &'a BTreeMap<String, Drawing>,
        broken: BrokenTexts,
    ) -> Self {
        Self { fonts, style, inside, corner_left, drawn, broken }
    }

    fn broken(&self) -> MutexGuard<'_, LinesByText> {
        self.broken.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// What a leaf takes in a width that is known, or available.
    pub fn leaf(
        &self,
        leaf: Leaf<'_>,
        setting: &Setting,
        known: Size<Option<f32>>,
        available: Size<AvailableSpace>,
    ) -> Measured {
        let plain = |width: f64, height: f64, base: Option<f64>| Measured {
            size: Size {
                width: known.width.unwrap_or(width as f32),
                height: known.height.unwrap_or(height as f32),
            },
            base: base.map(|base| base as f32),
        };
        match leaf {
            Leaf::Text(text) => self.text(text, setting.tightness, known, available),
            Leaf::Shrunk(text, width) => {
                let set = self.set(text, setting.tightness, f64::from(width));
                let base = set.bases().next().map(|base| base as f32);
                Measured { base, ..self.text(text, setting.tightness, known, available) }
            }
            Leaf::Sign => {
                let side = self.sign_side(setting.tightness);
                plain(side, side, Some(side * 0.86))
            }
            Leaf::Rule(line) => plain(0.0, line, None),
            Leaf::Drawn(name) => {
                let size = self
                    .drawn
                    .get(name)
                    .map_or((0.0, 0.0), |drawing| (drawing.width.mm(), drawing.height.mm()));
                plain(size.0, size.1, None)
            }
            Leaf::Flexible => plain(0.0, setting.drawing.unwrap_or_default(), None),
            Leaf::Fixed => plain(0.0, 0.0, None),
        }
    }

    /// Side of a drawn sign.
    pub fn sign_side(&self, tightness: Tightness) -> f64 {
        self.style.size(TypeClass::Check, tightness).mm() * SIGN
    }

    fn text(
        &self,
        text: &Text,
        tightness: Tightness,
        known: Size<Option<f32>>,
        available: Size<AvailableSpace>,
    ) -> Measured {
        let size = self.style.size(text.class, tightness);
        let (mut narrowest, widest) = self.extents(text, size);
        if text.shrinks {
            narrowest = self.extents(text, self.style.least_in_one_line(text.class)).1.min(widest);
        }
        let width = match (known.width, available.width) {
            (Some(width), _) | (None, AvailableSpace::Definite(width)) => f64::from(width),
            (None, AvailableSpace::MinContent) => narrowest,
            (None, AvailableSpace::MaxContent) => widest,
        };
        if text.upward {
            let set = self.set(text, tightness, ENDLESS);
            return Measured {
                size: Size { width: set.height() as f32, height: set.extent() as f32 },
                base: None,
            };
        }
        let set = self.set(text, tightness, width);
        let in_a_row = widest * (set.size.mm() / size.mm());
        let taken = if set.lines.len() == 1 { set.extent().max(in_a_row) } else { set.extent() };
        Measured {
            size: Size {
                width: known.width.unwrap_or((taken + HAIR) as f32),
                height: known.height.unwrap_or(set.height() as f32),
            },
            base: set.bases().next().map(|base| base as f32),
        }
    }

    /// A text broken at a width; one that shrinks is set as large as it stands there in one line.
    pub fn set(&self, text: &Text, tightness: Tightness, width: f64) -> SetText {
        let mut size = self.style.size(text.class, tightness);
        if text.shrinks {
            size = self.in_one_line(text, size, width);
        }
        let leading = size.mm() * self.style.leading(text.class, tightness);
        let least = size.mm() * text.class.least_leading();
        SetText { lines: self.lines(text, size, width), size, leading, least }
    }

    /// The size in which a text stands in one line, down to a hundredth of a millimetre.
    fn in_one_line(&self, text: &Text, size: Length, width: f64) -> Length {
        let (_, widest) = self.extents(text, Length::from_mm(1.0));
        if widest * size.mm() <= width + HAIR {
            return size;
        }
        let mm = (width / widest * 100.0).floor() / 100.0;
        Length::from_mm(mm.max(self.style.least_in_one_line(text.class).mm()).min(size.mm()))
    }

    /// How narrow and how wide a text is.
    fn extents(&self, text: &Text, size: Length) -> (f64, f64) {
        let em = Style { font_style: text.font_style, size: Length::from_mm(1.0) };
        let measured = || {
            let (narrowest, widest) = self.fonts.extents(&text.words, em);
            (narrowest.mm(), widest.mm())
        };
        let (narrowest, widest) = *text.extents.get_or_init(measured);
        (narrowest * size.mm(), widest * size.mm())
    }

    fn lines(&self, text: &Text, size: Length, width: f64) -> Arc<[Line]> {
        // All widths that a text has room in on one line are the same to it.
        let width = if width >= self.extents(text, size).1 { ENDLESS } else { width };
        let key = (std::ptr::from_ref(text).addr(), width.to_bits(), size.mm().to_bits());
        if let Some(lines) = self.broken().get(&key) {
            return lines.clone();
        }
        let style = Style { font_style: text.font_style, size };
        let lines: Arc<[Line]> = self.fonts.lines(&text.words, style, Length::from_mm(width + HAIR)).into();
        self.broken().insert(key, lines.clone());
        lines
    }
}

impl SetText {
    /// The base line of each line, from the top: further apart than plain letters need where accents or another script
    /// rise higher.
    pub fn bases(&self) -> impl Iterator<Item = f64> {
        let (mm, mut base, mut before) = (self.size.mm(), 0.0, None::<&Line>);
        self.lines.iter().map(move |line| {
            base += match before.replace(line) {
                None => (mm * RISE).max(line.ink.above.mm()),
                Some(before) => self.leading.max(before.ink.below.mm() + line.ink.above.mm() + mm * BETWEEN),
            };
            base
        })
    }

    pub fn height(&self) -> f64 {
        let least = self.least - self.size.mm() * RISE;
        let fall = self.lines.last().map_or(0.0, |line| least.max(line.ink.below.mm()));
        self.bases().last().unwrap_or_default() + fall
    }

    /// The longest line.
    pub fn extent(&self) -> f64 {
        self.lines.iter().map(|line| line.extent().mm()).fold(0.0, f64::max)
    }
}
