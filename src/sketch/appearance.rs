//! What drawings are drawn with: pens, tones and text colour, for light paper and for dark screens.

use super::number::number;
use super::tones::{grip, shades};
use crate::colour::ColourCode;
use crate::section::MaterialGroup;
use std::fmt::Write;

/// A line: how wide it is and what it means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Pen {
    /// Outlines of the gripping part.
    Heavy,
    /// Visible outlines and cut edges.
    Thick,
    /// Dimensions, leaders, hatching, lay lines.
    Thin,
    /// Axes: dash-dot.
    Centre,
    /// What is no longer there or lies behind: dashed.
    Gone,
    /// The colour of the paper, under a line that crosses ink.
    Halo,
}

/// A fill.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Tone {
    /// A material, in one of three shades of rising depth.
    Metal(MaterialGroup, Shade),
    /// A gripping part: darker than all metal beside it.
    Grip(MaterialGroup),
    /// The paint of a mark, which is the same on paper and on a dark screen.
    Paint(ColourCode),
    /// Letters on the paint of a mark.
    OnPaint(ColourCode),
    /// Empty space that hides what lies behind.
    Paper,
    /// Line ink: arrowheads, dots.
    Ink,
    /// A slip mark, or metal that has worn away.
    Signal,
}

/// Depth of a tone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Shade {
    Pale,
    Plain,
    Deep,
}

/// How a primitive looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Appearance {
    pub fill: Option<Tone>,
    pub pen: Option<Pen>,
}

impl Appearance {
    pub fn line(pen: Pen) -> Self {
        Self { fill: None, pen: Some(pen) }
    }

    pub fn area(fill: Tone, pen: Pen) -> Self {
        Self { fill: Some(fill), pen: Some(pen) }
    }

    pub fn solid(fill: Tone) -> Self {
        Self { fill: Some(fill), pen: None }
    }

    /// Classes and presentation attributes, for lines whose thick pen is `thick` millimetres wide.
    pub fn attributes(self, thick: f64) -> String {
        let mut classes = Vec::new();
        let mut looks = String::new();
        match self.fill {
            Some(tone) => {
                classes.push(tone.class());
                let _ = write!(looks, " fill=\"{}\"", tone.light());
            }
            None => looks.push_str(" fill=\"none\""),
        }
        if let Some(pen) = self.pen {
            classes.push(pen.class().to_owned());
            let width = pen.width(thick);
            let ink = if pen == Pen::Halo { PAPER } else { INK };
            let _ = write!(looks, " stroke=\"{ink}\" stroke-width=\"{}\"", number(width));
            looks.push_str(" stroke-linejoin=\"round\" stroke-linecap=\"round\"");
            if let Some(dashes) = pen.dashes() {
                let lengths: Vec<String> = dashes.iter().map(|&dash| number(dash * width)).collect();
                let _ = write!(looks, " stroke-dasharray=\"{}\"", lengths.join(" "));
            }
        }
        format!("class=\"{}\"{looks}", classes.join(" "))
    }
}

/// Lines and texts on light paper.
pub(crate) const INK: &str = "#16181a";
/// Lines and texts on a dark screen.
pub(crate) const INK_DARK: &str = "#f4f5f6";
/// Light paper.
pub(crate) const PAPER: &str = "#ffffff";
/// A dark screen.
pub(crate) const PAPER_DARK: &str = "#14171a";

impl Pen {
    fn class(self) -> &'static str {
        match self {
            Self::Heavy => "sk-heavy",
            Self::Thick => "sk-thick",
            Self::Thin => "sk-thin",
            Self::Centre => "sk-centre",
            Self::Gone => "sk-gone",
            Self::Halo => "sk-halo",
        }
    }

    /// Wide to narrow is two to one (ISO 128-2); a gripping part's outline is half as wide again.
    pub fn width(self, thick: f64) -> f64 {
        match self {
            Self::Heavy => 1.5 * thick,
            Self::Thick | Self::Halo => thick,
            Self::Thin | Self::Centre | Self::Gone => thick / 2.0,
        }
    }

    /// Dashes and gaps in line widths (ISO 128-2).
    fn dashes(self) -> Option<&'static [f64]> {
        match self {
            Self::Centre => Some(&[24.0, 4.0, 0.5, 4.0]),
            Self::Gone => Some(&[8.0, 4.0]),
            Self::Heavy | Self::Thick | Self::Thin | Self::Halo => None,
        }
    }
}

impl Tone {
    /// Every tone that changes on a dark screen, in a fixed order.
    pub fn all() -> Vec<Self> {
        let groups = super::tones::groups().flat_map(|group| {
            let metals = [Shade::Pale, Shade::Plain, Shade::Deep].map(|shade| Self::Metal(group, shade));
            metals.into_iter().chain([Self::Grip(group)])
        });
        groups.chain([Self::Paper, Self::Ink, Self::Signal]).collect()
    }

    pub fn class(self) -> String {
        match self {
            Self::Metal(group, shade) => format!("sk-{}-{}", word(group), shade as u8 + 1),
            Self::Grip(group) => format!("sk-{}-grip", word(group)),
            Self::Paint(_) | Self::OnPaint(_) => "sk-paint".to_owned(),
            Self::Paper => "sk-paper".to_owned(),
            Self::Ink => "sk-ink".to_owned(),
            Self::Signal => "sk-signal".to_owned(),
        }
    }

    /// On light paper.
    pub fn light(self) -> String {
        match self {
            Self::Metal(group, shade) => shades(group).0[shade as usize].to_owned(),
            Self::Grip(group) => grip(group).0.to_owned(),
            Self::Paint(code) => code.printed().hex(),
            Self::OnPaint(code) => code.printed().text_on_it().hex(),
            Self::Paper => PAPER.to_owned(),
            Self::Ink => INK.to_owned(),
            Self::Signal => "#8a1c4a".to_owned(),
        }
    }

    /// On a dark screen.
    pub fn dark(self) -> String {
        match self {
            Self::Metal(group, shade) => shades(group).1[shade as usize].to_owned(),
            Self::Grip(group) => grip(group).1.to_owned(),
            Self::Paint(code) => code.printed().hex(),
            Self::OnPaint(code) => code.printed().text_on_it().hex(),
            Self::Paper => PAPER_DARK.to_owned(),
            Self::Ink => INK_DARK.to_owned(),
            Self::Signal => "#ff9ec4".to_owned(),
        }
    }
}

/// The material's word in class names and keys.
pub(crate) fn word(group: MaterialGroup) -> &'static str {
    group.word()
}

/// Style rules that turn drawings dark, one selector and one rule a line: put them where a page is dark, such as within
/// `@media (prefers-color-scheme: dark)`. Drawings carry the light look themselves.
///
/// ```
/// assert!(fittingcards::sketch::dark_rules().contains(".sk-thick"));
/// ```
#[must_use]
pub fn dark_rules() -> String {
    let mut rules = String::new();
    for pen in [Pen::Heavy, Pen::Thick, Pen::Thin, Pen::Centre, Pen::Gone] {
        let _ = writeln!(rules, ".{} {{ stroke: {INK_DARK}; }}", pen.class());
    }
    let _ = writeln!(rules, ".{} {{ stroke: {PAPER_DARK}; }}", Pen::Halo.class());
    let _ = writeln!(rules, ".sk-text {{ fill: {INK_DARK}; }}");
    for tone in Tone::all() {
        let _ = writeln!(rules, ".{} {{ fill: {}; }}", tone.class(), tone.dark());
    }
    rules
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{Model, Sight, Srgb as Srgb8, simulate};
    use palette::Srgb;
    use palette::color_difference::Wcag21RelativeContrast;

    fn contrast(one: impl AsRef<str>, other: impl AsRef<str>) -> f32 {
        let colour = |hex: &str| hex.parse::<Srgb<u8>>().unwrap().into_format::<f32>();
        colour(one.as_ref()).relative_contrast(colour(other.as_ref()))
    }

    /// WCAG 2.2, 1.4.3: 4.5:1.
    #[test]
    fn lines_and_texts_stand_out_from_every_tone() {
        for tone in Tone::all().into_iter().filter(|tone| !matches!(tone, Tone::Ink | Tone::Signal)) {
            assert!(contrast(INK, tone.light()) >= 4.5, "{tone:?} on light paper");
            assert!(contrast(INK_DARK, tone.dark()) >= 4.5, "{tone:?} on a dark screen");
        }
    }

    /// WCAG 2.2, 1.4.11: 3:1 for what must be seen of a graphic.
    #[test]
    fn slip_marks_stand_out_from_wires_and_paper() {
        let wires = Tone::all().into_iter().filter(|tone| matches!(tone, Tone::Metal(..) | Tone::Paper));
        for tone in wires {
            assert!(contrast(Tone::Signal.light(), tone.light()) >= 3.0, "{tone:?} on light paper");
            assert!(contrast(Tone::Signal.dark(), tone.dark()) >= 3.0, "{tone:?} on a dark screen");
        }
    }

    /// WCAG 2.2, 1.4.11: 3:1 for what must be seen of a graphic. Contrast is of luminance, so grey copies keep it.
    #[test]
    fn gripping_parts_stand_out_from_bodies() {
        for tone in Tone::all().into_iter().filter(|tone| matches!(tone, Tone::Grip(_))) {
            assert!(contrast(tone.light(), Tone::Paper.light()) >= 3.0, "{tone:?} on light paper");
            assert!(contrast(tone.dark(), Tone::Paper.dark()) >= 3.0, "{tone:?} on a dark screen");
        }
    }

    /// The same as people with a colour vision deficiency see it, by both models (Machado, Oliveira and Fernandes 2009;
    /// Brettel, Viénot and Mollon 1997).
    #[test]
    fn gripping_parts_stand_out_from_bodies_in_every_sight() {
        let sights = [Sight::Protan, Sight::Deutan, Sight::Tritan];
        let seen = |hex: &str, sight, model| simulate(Srgb8::from_hex(hex).unwrap(), sight, model);
        for tone in super::super::tones::groups().map(Tone::Grip) {
            for (sight, model) in sights.iter().flat_map(|sight| Model::ALL.map(|model| (*sight, model))) {
                for (grip, body) in [(tone.light(), PAPER), (tone.dark(), PAPER_DARK)] {
                    let found = crate::colour::contrast(seen(&grip, sight, model), seen(body, sight, model));
                    assert!(found >= 3.0, "{tone:?} {grip} on {body}, {sight:?}, {model:?}: {found:.2}");
                }
            }
        }
    }

    /// Beside wires and other parts, which are never as dark (common practice, no source: a step of 1.15).
    #[test]
    fn gripping_parts_are_darker_than_any_metal() {
        for metal in Tone::all().into_iter().filter(|tone| matches!(tone, Tone::Metal(..))) {
            for grip in super::super::tones::groups().map(Tone::Grip) {
                let (off, from) = (contrast(grip.light(), PAPER), contrast(metal.light(), PAPER));
                assert!(off >= 1.15 * from, "{grip:?} and {metal:?}");
            }
        }
    }

    #[test]
    fn shades_of_one_material_differ_in_grey() {
        for group in super::super::tones::groups() {
            for shades in [shades(group).0, shades(group).1] {
                assert!(contrast(shades[0], shades[1]) >= 1.15, "{group:?}");
                assert!(contrast(shades[1], shades[2]) >= 1.25, "{group:?}");
            }
        }
    }
}
